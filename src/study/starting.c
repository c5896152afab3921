/* What does a study say of a start? */
#include "study/starting.h"

#include "study/figures.h"
#include "study/lone_chapter.h"
#include "study/outlet.h"
#include "study/say_quantity.h"
#include "towershaft/start.h"

#include "element/oil_viscosity.h"
#include "oil/drag.h"

#include <math.h>
#include <string.h>

static const double celsius_100 = 373.15;

enum { SAMPLES = 400 };

typedef struct asked {
    const ts_study  *study;
    ts_arena        *arena;
    ts_start_answer *out;
    double          *slow, *fast; /* [shaft], at the viscosity `nu` */
    ts_shaft_drag   *drag;        /* [shaft], at the temperature of the oil */
} asked;

/* ---- oil --------------------------------------------------------------------------------------
 */

static double viscosity(const ts_study *study, double theta)
{
    const ts_oil          *oil = &study->drive.oil;
    const ts_viscosity_law law = ts_viscosity_law_of_oil(oil->nu_40.value, oil->nu_100.value, NULL);

    return ts_viscosity_at(&law, theta, NULL);
}

/* One bearing: the torque of Palmgren at a standstill, and where it goes with n^(2/3). */
static void add_bearing(const asked *it, const ts_line *line, const ts_line_bearing *b, double nu)
{
    const double rows = (double)b->bearing.rows, d_m = b->ability.d_m;
    const double f_0 = it->study->drive.start.f_0.value * rows;
    const double n   = 1e3 / nu; /* rad/s, far above 2000 mm2/s times rpm */

    if (!b->there)
        return;
    if (line->fault != NULL || !(d_m > 0.0)) {
        it->out->bearings_left++;
        return;
    }
    it->slow[line->shaft] += ts_bearing_drag_0(f_0, nu, 0.0, d_m, NULL);
    it->fast[line->shaft] += ts_bearing_drag_0(f_0, nu, n, d_m, NULL) / pow(n, 2.0 / 3.0);
}

static void lay_oil(const asked *it, double nu)
{
    const ts_lines *lines = &it->study->lines;

    it->out->bearings_left = 0;
    for (uint32_t s = 0; s < it->study->train.shaft_count; s++)
        it->slow[s] = it->fast[s] = isfinite(nu) ? 0.0 : (double)NAN;
    for (uint32_t l = 0; isfinite(nu) && l < lines->count; l++)
        for (int b = 0; b < lines->lines[l].bearing_count; b++)
            add_bearing(it, &lines->lines[l], &lines->lines[l].bearings[b], nu);
}

/* Seals, air and the oil at the teeth: none where the losses are not known. */
static void lay_drag(const asked *it, double oil)
{
    it->out->drag_missing = it->study->heat.missing;
    for (uint32_t s = 0; s < it->study->train.shaft_count; s++)
        it->drag[s] = it->out->drag_missing == NULL ? ts_heat_shaft_drag(&it->study->heat, s, oil)
                                                    : (ts_shaft_drag){.full = (double)INFINITY};
}

/* ---- one start --------------------------------------------------------------------------------
 */

static ts_status start_at(const asked *it, const ts_start_wish *wish, ts_arena *arena,
                          ts_drive_start *out)
{
    const double            nu       = viscosity(it->study, wish->oil);
    const ts_start_question question = {.drive    = &it->study->drive,
                                        .mass     = &it->study->mass,
                                        .oil_slow = it->slow,
                                        .oil_fast = it->fast,
                                        .drag     = it->drag,
                                        .ambient  = wish->ambient,
                                        .nu_ratio = nu / viscosity(it->study, celsius_100),
                                        .beyond   = wish->beyond,
                                        .samples  = wish->samples};

    lay_oil(it, nu);
    lay_drag(it, wish->oil);
    return ts_drive_start_run(&question, arena, out);
}

/* ---- what bears it ----------------------------------------------------------------------------
 */

static ts_status lay_walls(const asked *it)
{
    const ts_study           *study = it->study;
    const ts_part_capacities *parts = &study->select.parts;
    ts_start_wall *walls = TS_TAKE(it->arena, ts_start_wall, study->train.shaft_count + 1);
    ts_start_wall *own   = TS_TAKE(it->arena, ts_start_wall, study->train.pad_count + 1);

    if (walls == NULL || own == NULL)
        return TS_NO_MEMORY;
    it->out->walls     = walls;
    it->out->pad_walls = own;
    for (uint32_t p = 0; p < study->train.pad_count; p++)
        own[p] = (ts_start_wall){(double)INFINITY, TS_PART_SPLINE};
    for (uint32_t s = 0; s < study->train.shaft_count; s++)
        walls[s] = (ts_start_wall){(double)INFINITY, TS_PART_ROOT};
    for (size_t i = 0; i < parts->count; i++) {
        const ts_part_capacity *part = &parts->items[i];
        ts_start_wall          *at =
            part->of_pad ? &own[part->pad] : &walls[ts_part_shaft(&study->train, part)];
        if (part->kind != TS_PART_NECK && part->T > 0.0 && part->T < at->T)
            *at = (ts_start_wall){part->T, part->kind};
    }
    return TS_OK;
}

/* The largest torque that passes a neck: at its pad, or in its radial shaft. */
static ts_start_peak through(const asked *it, const ts_drive_neck *neck)
{
    const ts_drive_start *start = it->out->it;

    if (neck->pad == TS_NOWHERE)
        return start->run.shafts[neck->shaft];
    for (uint32_t p = 0; p < start->start.pad_count; p++)
        if (start->pad_of[p] == neck->pad)
            return start->run.pads[p];
    return (ts_start_peak){0.0, 0.0, 0.0};
}

static ts_status lay_necks(const asked *it)
{
    const ts_necks *necks = &it->study->necks;
    ts_start_neck  *list  = TS_TAKE(it->arena, ts_start_neck, necks->count + 1);

    if (list == NULL)
        return TS_NO_MEMORY;
    it->out->necks = list;
    for (uint32_t i = 0; i < necks->count; i++) {
        const ts_drive_neck *neck = &necks->items[i];
        const ts_start_peak  peak = through(it, neck);
        list[it->out->neck_count++] =
            (ts_start_neck){neck->name, fabs(peak.T), peak.t, neck->band.low, neck->band.high};
    }
    return TS_OK;
}

/* ---- the grid ---------------------------------------------------------------------------------
 */

static double between(ts_span span, size_t i, size_t steps)
{
    return span.low + (span.high - span.low) * (double)i / (double)(steps - 1);
}

static void sum_up(const asked *it, const ts_drive_start *one, ts_start_cell *cell)
{
    const ts_start_run *run = &one->run;

    cell->outcome = TS_START_FAULT;
    cell->t = cell->w = cell->t_light = (double)NAN;
    cell->nearest                     = TS_NOWHERE;
    if (one->missing != NULL || run->fault == TS_START_BAD_NUMBER)
        return; /* nothing was run */
    cell->outcome = run->outcome;
    cell->t       = run->t;
    cell->w       = run->w[one->spool];
    cell->t_light = ts_start_time_of(run, TS_STARTS_LIGHT_OFF);
    cell->nearest = ts_start_nearest(it->out, run, &cell->share);
    for (uint32_t p = 0; p < one->start.pad_count; p++)
        if (one->start.pads[p].starter)
            cell->T = fmax(cell->T, -run->pads[p].T);
}

/* Every start takes its memory in an arena of its own: hundreds of them are forgotten again. */
static ts_status fill_cell(const asked *it, ts_start_cell *cell)
{
    ts_arena *arena = ts_arena_open(it->study->allocator);

    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_drive_start      one;
    const ts_start_wish wish   = {cell->ambient, cell->oil, 0, false, TS_NOWHERE};
    const ts_status     status = start_at(it, &wish, arena, &one);
    if (status == TS_OK)
        sum_up(it, &one, cell);
    ts_arena_close(arena);
    return status;
}

static ts_status lay_grid(const asked *it)
{
    const ts_start *start = &it->study->drive.start;
    const size_t    n     = (size_t)start->grid.value;
    ts_start_cell  *cells = TS_TAKE(it->arena, ts_start_cell, n * n);
    const size_t    left  = it->out->bearings_left;

    if (cells == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < n * n; i++) {
        cells[i]               = (ts_start_cell){.ambient = between(start->ambients, i / n, n),
                                                 .oil     = between(start->oils, i % n, n)};
        const ts_status status = fill_cell(it, &cells[i]);
        if (status != TS_OK)
            return status;
    }
    it->out->bearings_left = left;
    it->out->cells         = cells;
    it->out->steps         = n;
    return TS_OK;
}

/* ---- the whole --------------------------------------------------------------------------------
 */

/* Is this the default of a temperature that the caller tells, or of what was not asked? */
static bool is_told(const ts_start_wish *wish, const char *key)
{
    const char *slash = strrchr(key, '/');
    const char *last  = slash != NULL ? slash + 1 : key;

    if (strcmp(last, "from idle in") == 0)
        return wish->beyond == TS_NOWHERE;
    return (strcmp(last, "ambient") == 0 && !isnan(wish->ambient)) ||
           (strcmp(last, "oil") == 0 && !isnan(wish->oil));
}

static bool keep_assumed(const ts_study *study, const ts_start_wish *wish, ts_arena *arena,
                         ts_start_answer *out)
{
    const size_t   count = study->drive.start_assumed_count;
    ts_assumption *kept  = TS_TAKE(arena, ts_assumption, count + 1);

    out->assumed = kept;
    for (size_t i = 0; kept != NULL && i < count; i++)
        if (!is_told(wish, study->drive.start_assumed[i].key))
            kept[out->assumed_count++] = study->drive.start_assumed[i];
    return kept != NULL;
}

ts_status ts_study_start(const ts_study *study, const ts_start_wish *wish, ts_arena *arena,
                         ts_start_answer *out)
{
    const ts_start *start = &study->drive.start;
    asked           it    = {.study = study,
                             .arena = arena,
                             .out   = out,
                             .slow  = TS_TAKE(arena, double, study->train.shaft_count + 1),
                             .fast  = TS_TAKE(arena, double, study->train.shaft_count + 1),
                             .drag  = TS_TAKE(arena, ts_shaft_drag, study->train.shaft_count + 1)};
    ts_drive_start *run   = TS_TAKE(arena, ts_drive_start, 1);

    *out = (ts_start_answer){
        .ambient = isnan(wish->ambient) ? start->ambient.value : wish->ambient,
        .oil     = isnan(wish->oil) ? start->oil.value : wish->oil,
        .beyond  = wish->beyond == TS_NOWHERE ? NULL : study->drive.conditions[wish->beyond].name};
    if (it.slow == NULL || it.fast == NULL || it.drag == NULL || run == NULL ||
        !keep_assumed(study, wish, arena, out))
        return TS_NO_MEMORY;
    out->it                    = run;
    out->nu                    = viscosity(study, out->oil);
    const ts_start_wish now    = {out->ambient, out->oil, wish->samples, false, wish->beyond};
    ts_status           status = start_at(&it, &now, arena, run);
    if (status != TS_OK || run->missing != NULL || run->run.fault == TS_START_BAD_NUMBER)
        return status;
    status = lay_walls(&it);
    if (status == TS_OK)
        status = lay_necks(&it);
    return status == TS_OK && wish->grid ? lay_grid(&it) : status;
}

static bool choose_temperature(ts_study *study, const char *text, double *kelvin)
{
    const ts_unit *unit;

    *kelvin = (double)NAN;
    if (text == NULL ||
        (ts_quantity_parse(ts_text_of(text), TS_KIND_TEMPERATURE, kelvin, &unit, NULL) &&
         *kelvin >= 200.0 && *kelvin <= 450.0))
        return true;
    ts_study_say_quantity(study, "that is no temperature of air or oil",
                          "a temperature from -73 to 176 degC, such as '-20 degC'", text,
                          TS_KIND_TEMPERATURE, "degC");
    return false;
}

bool ts_start_is_beyond(const ts_study *study, uint32_t condition)
{
    for (size_t k = 0; k < study->drive.spool_count; k++)
        if (study->drive.spools[k].cranked.value == TS_YES &&
            study->drive.conditions[condition].speed[k].value > study->drive.start.idle.value)
            return true;
    return false;
}

static bool choose_beyond(ts_study *study, const char *text, uint32_t *beyond)
{
    int32_t condition;

    *beyond = TS_NOWHERE;
    if (!ts_study_choose_condition(study, text, &condition))
        return false;
    if (condition < 0)
        return true;
    *beyond = (uint32_t)condition;
    if (!isfinite(study->drive.start.idle.value) || ts_start_is_beyond(study, *beyond))
        return true;
    ts_study_say(study, "unknown-choice", "the engine is not faster there than at idle",
                 "a condition in which the cranked spool turns faster than at `idle`", NULL);
    return false;
}

static void write_chapter(ts_chapter *chapter, const void *start)
{
    ts_chapter_start(chapter, start);
}

typedef struct telling {
    const ts_start_options *options;
    ts_verdict              verdict;
} telling;

static ts_verdict verdict_of(const ts_start_answer *start)
{
    if (start->it->missing != NULL || start->it->run.outcome == TS_START_FAULT)
        return TS_VERDICT_NOT_COMPUTABLE;
    return ts_start_is_done(start) && ts_start_broken(start) == NULL ? TS_HOLDS : TS_DOES_NOT_HOLD;
}

static ts_status tell(ts_telling *it, void *about)
{
    telling                *what    = about;
    const ts_start_options *options = what->options;
    ts_start_wish           wish = {.samples = options->json ? SAMPLES : 0, .grid = options->grid};
    ts_start_answer         start;

    if (!choose_temperature(it->study, options->ambient, &wish.ambient) ||
        !choose_temperature(it->study, options->oil, &wish.oil) ||
        !choose_beyond(it->study, options->to, &wish.beyond))
        return ts_study_refused(it->study);
    ts_status status = ts_study_start(it->study, &wish, it->arena, &start);
    if (status == TS_OK && options->json)
        ts_start_json(&start, &it->answer, it->page.out);
    else if (status == TS_OK)
        status = ts_study_lone_chapter(it->study, it->arena, write_chapter, &start, &it->page);
    what->verdict = status == TS_OK ? verdict_of(&start) : TS_VERDICT_NOT_COMPUTABLE;
    return status;
}

ts_status ts_start_write(ts_study *study, const ts_start_options *options,
                         const ts_page_options *look, ts_verdict *verdict, const ts_sink *sink)
{
    telling what = {options, TS_VERDICT_NOT_COMPUTABLE};

    const ts_status status =
        options == NULL ? TS_NOT_UNDERSTOOD : ts_outlet_tell(study, look, tell, &what, sink);
    *verdict = status == TS_OK ? what.verdict : TS_VERDICT_NOT_COMPUTABLE;
    return status;
}

ts_start_view ts_study_start_view(ts_study *study)
{
    const double        none = (double)NAN;
    ts_start_view       view = {TS_START_FAULT, none, none, none, none, 0};
    const ts_start_wish wish = {.ambient = none, .oil = none, .beyond = TS_NOWHERE};
    ts_start_answer     start;
    ts_arena           *arena = study->solved ? ts_arena_open(study->allocator) : NULL;

    if (arena == NULL)
        return view;
    if (ts_study_start(study, &wish, arena, &start) == TS_OK && start.it->missing == NULL) {
        const ts_start_run *run = &start.it->run;
        view                    = (ts_start_view){.outcome   = (int)run->outcome,
                                                  .idle      = ts_start_time_of(run, TS_STARTS_IDLE),
                                                  .light_off = ts_start_time_of(run, TS_STARTS_LIGHT_OFF),
                                                  .cut_out   = ts_start_time_of(run, TS_STARTS_CUT_OUT),
                                                  .balance   = run->energy.balance,
                                                  .steps     = run->steps};
    }
    ts_arena_close(arena);
    return view;
}
