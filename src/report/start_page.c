/* How is the engine started, and what bears it? */
#include "report/start_report.h"

#include "report/register.h"

#include <math.h>

static const double rpm = 9.54929658551372015;

const char *const ts_start_outcome_words[] = {
    [TS_START_IDLE]     = "idle",
    [TS_START_NO_TURN]  = "no start: it does not turn",
    [TS_START_NO_LIGHT] = "no start: it does not reach light-off",
    [TS_START_HUNG]     = "hung start",
    [TS_START_TIME_UP]  = "too slow",
    [TS_START_FAULT]    = "not computed",
    [TS_START_BEYOND]   = "beyond idle",
};

const char *const ts_start_event_words[] = {
    [TS_STARTS_LIGHT_OFF] = "lights",
    [TS_STARTS_CUT_OUT]   = "starter shut off",
    [TS_STARTS_LET_GO]    = "clutch lets go",
    [TS_STARTS_ENGAGE]    = "clutch engages again",
    [TS_STARTS_FOLLOW]    = "begins to follow",
    [TS_STARTS_STAND]     = "comes to rest again",
    [TS_STARTS_IDLE]      = "idles",
    [TS_STARTS_HANG]      = "hangs",
    [TS_STARTS_BEYOND]    = "has the speed of the condition",
    [TS_STARTS_WITH]      = "within 1 % of its speed there",
};

uint32_t ts_start_nearest(const ts_start_answer *start, const ts_start_run *run, double *share)
{
    uint32_t best = TS_NOWHERE;

    *share = 0.0;
    for (uint32_t s = 0; s < start->it->start.shaft_count; s++) {
        const double here = fabs(run->shafts[s].T) / start->walls[s].T;
        if (here > *share) {
            *share = here;
            best   = s;
        }
    }
    return best;
}

bool ts_start_is_done(const ts_start_answer *start)
{
    const ts_start_outcome outcome = start->it->run.outcome;

    return outcome == TS_START_IDLE || outcome == TS_START_BEYOND;
}

const ts_start_neck *ts_start_broken(const ts_start_answer *start)
{
    for (size_t i = 0; i < start->neck_count; i++)
        if (start->necks[i].T >= start->necks[i].low)
            return &start->necks[i];
    return NULL;
}

const char *ts_start_event_of(const ts_start_answer *start, const ts_answer *answer,
                              const ts_start_event *event)
{
    if (event->what == TS_STARTS_LET_GO || event->what == TS_STARTS_ENGAGE)
        return answer->train->pads[start->it->pad_of[event->of]].name;
    return answer->drive->spools[event->of].name;
}

/* ---- words ------------------------------------------------------------------------------------
 */

static const ts_unit *unit(const ts_chapter *chapter, ts_kind kind)
{
    return ts_kind_shown(kind, chapter->page.units);
}

/* What stands in chapter->cell, as a paragraph. */
static void paragraph(ts_chapter *chapter, ts_block_tone tone)
{
    if (!chapter->cell.failed && chapter->cell.length > 0)
        ts_manuscript_text(chapter->manuscript, tone, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* The double nearest to 273.15 K is 2e-14 K off 0 degC, which nobody wants to read. */
static void add_temperature(ts_chapter *chapter, double kelvin)
{
    const ts_unit *shown = unit(chapter, TS_KIND_TEMPERATURE);

    ts_page_short(&chapter->cell, round(ts_from_si(kelvin, shown) * 10.0) / 10.0 + 0.0, 4);
    ts_buffer_print(&chapter->cell, " %s", shown->name);
}

static void add_seconds(ts_buffer *text, double t)
{
    ts_buffer_fixed(text, t, 2);
    ts_buffer_add(text, " s");
}

static void add_speed(ts_chapter *chapter, double w)
{
    ts_page_speed_text(&chapter->page, &chapter->cell, w);
    ts_buffer_add(&chapter->cell, " rpm");
}

static void conditions(const ts_start_answer *start, ts_chapter *chapter)
{
    ts_buffer *text = &chapter->cell;

    ts_buffer_add(text, "From rest, in air of ");
    add_temperature(chapter, start->ambient);
    ts_buffer_add(text, ", oil in the bearings at ");
    add_temperature(chapter, start->oil);
    if (isfinite(start->nu)) {
        ts_buffer_add(text, " (");
        ts_page_short(text, 1e6 * start->nu, 3);
        ts_buffer_add(text, " cSt)");
    }
    ts_buffer_add(text, ".");
    paragraph(chapter, TS_BLOCK_PLAIN);
}

static void say_outcome(const ts_start_answer *start, ts_chapter *chapter)
{
    const ts_start_run *run   = &start->it->run;
    const char         *spool = chapter->answer->drive->spools[start->it->spool].name;
    ts_buffer          *text  = &chapter->cell;

    if (run->fault == TS_START_BAD_NUMBER) { /* no speed is there to tell */
        ts_buffer_print(text, "not computed: %s", ts_start_fault_says(run->fault));
        return;
    }
    if (run->outcome == TS_START_IDLE)
        ts_buffer_print(text, "the %s spool comes to idle, ", spool);
    else if (run->outcome == TS_START_BEYOND)
        ts_buffer_print(text, "the %s spool comes to idle and on to %s, ", spool, start->beyond);
    else if (run->outcome == TS_START_NO_TURN)
        ts_buffer_print(text, "no start: the starter does not turn the %s spool", spool);
    else
        ts_buffer_print(text, "%s: the %s spool is left at ", ts_start_outcome_words[run->outcome],
                        spool);
    if (run->outcome != TS_START_NO_TURN) {
        add_speed(chapter, run->w[start->it->spool]);
        ts_buffer_add(text, ts_start_is_done(start) ? ", in " : " after ");
        add_seconds(text, run->t);
    }
    if (run->outcome == TS_START_FAULT)
        ts_buffer_print(text, "; refused: %s", ts_start_fault_says(run->fault));
}

/* In a box, as nobody may overlook it. */
static void outcome(const ts_start_answer *start, ts_chapter *chapter)
{
    const bool fine = ts_start_is_done(start);

    say_outcome(start, chapter);
    if (!chapter->cell.failed)
        ts_manuscript_box(chapter->manuscript, fine ? TS_BLOCK_PLAIN : TS_BLOCK_WARNING,
                          chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* ---- tables -----------------------------------------------------------------------------------
 */

static void fixed_cell(ts_chapter *chapter, double value, int decimals, const char *unit)
{
    if (isfinite(value)) {
        ts_buffer_fixed(&chapter->cell, value, decimals);
        ts_buffer_add(&chapter->cell, unit);
    } else {
        ts_buffer_add(&chapter->cell, "-");
    }
    ts_chapter_cell(chapter);
}

static void torque_cell(ts_chapter *chapter, double T)
{
    if (isfinite(T))
        ts_page_short(&chapter->cell, ts_from_si(T, unit(chapter, TS_KIND_TORQUE)), 4);
    else
        ts_buffer_add(&chapter->cell, "-");
    ts_chapter_cell(chapter);
}

static void event_row(ts_chapter *chapter, const char *of, const char *what, double t, double w)
{
    ts_buffer_print(&chapter->cell, "%s: %s", of, what);
    ts_chapter_cell(chapter);
    fixed_cell(chapter, t, 2, "");
    fixed_cell(chapter, rpm * w, 0, "");
}

static void events(const ts_start_answer *start, ts_chapter *chapter)
{
    static const ts_column columns[] = {{"what happens", false}, {"s", true}, {"rpm", true}};
    const ts_start_run    *run       = &start->it->run;

    ts_manuscript_table(chapter->manuscript, "", columns, 3);
    for (size_t i = 0; i < run->event_count; i++) {
        const ts_start_event *event = &run->events[i];
        event_row(chapter, ts_start_event_of(start, chapter->answer, event),
                  ts_start_event_words[event->what], event->t, event->w);
    }
    for (uint32_t k = 0; k < start->it->start.spool_count; k++)
        if (k != start->it->spool)
            event_row(chapter, chapter->answer->drive->spools[k].name,
                      run->w[k] > 0.0 ? "turns at the end" : "stands still", run->t, run->w[k]);
}

/* What a part bears most, when, and what would be too much: nothing where that is not known. */
static void peak_row(ts_chapter *chapter, const ts_start_peak *peak, const ts_start_wall *wall)
{
    torque_cell(chapter, peak->T);
    fixed_cell(chapter, peak->t, 2, "");
    fixed_cell(chapter, rpm * peak->w, 0, "");
    torque_cell(chapter, wall->T);
    fixed_cell(chapter, isfinite(wall->T) ? 100.0 * fabs(peak->T) / wall->T : (double)NAN, 1, " %");
}

static void peak_table(ts_chapter *chapter, const char *caption, const char *of)
{
    const ts_column columns[] = {{of, false},     {unit(chapter, TS_KIND_TORQUE)->name, true},
                                 {"at s", true},  {"at rpm", true},
                                 {"bears", true}, {"share", true}};

    ts_manuscript_table(chapter->manuscript, caption, columns, 6);
}

static void torques(const ts_start_answer *start, ts_chapter *chapter)
{
    const ts_start_run *run = &start->it->run;

    peak_table(chapter, "largest torques, + outwards; at the shaft", "mesh to");
    for (uint32_t s = 0; s < start->it->start.shaft_count; s++) {
        if (start->it->start.shafts[s].driver == TS_NO_DRIVER || !(fabs(run->shafts[s].T) > 0.0))
            continue;
        ts_chapter_word(chapter, chapter->answer->train->shafts[s].name);
        peak_row(chapter, &run->shafts[s], &start->walls[s]);
    }
}

static void pads(const ts_start_answer *start, ts_chapter *chapter)
{
    const ts_start_run *run = &start->it->run;

    peak_table(chapter, "largest torques at the pads; negative: put in", "pad");
    for (uint32_t p = 0; p < start->it->start.pad_count; p++) {
        if (!(fabs(run->pads[p].T) > 0.0))
            continue;
        ts_chapter_word(chapter, chapter->answer->train->pads[start->it->pad_of[p]].name);
        peak_row(chapter, &run->pads[p], &start->pad_walls[start->it->pad_of[p]]);
    }
}

static void necks(const ts_start_answer *start, ts_chapter *chapter)
{
    static const ts_column columns[] = {
        {"neck", false}, {"passes", true}, {"breaks from", true}, {"margin", true}, {"", false}};

    if (start->neck_count == 0)
        return;
    ts_buffer_print(&chapter->cell, "Necks, %s", unit(chapter, TS_KIND_TORQUE)->name);
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, 5);
    ts_buffer_clear(&chapter->cell);
    for (size_t i = 0; i < start->neck_count; i++) {
        const ts_start_neck *neck = &start->necks[i];
        ts_chapter_word(chapter, neck->name);
        torque_cell(chapter, neck->T);
        torque_cell(chapter, neck->low);
        fixed_cell(chapter, neck->T > 0.0 ? neck->low / neck->T : (double)NAN, 2, "");
        ts_chapter_word(chapter, neck->T >= neck->low ? "MAY BREAK" : "");
    }
}

/* What the starter turns beside accessories and engine, at three speeds on the way. */
static void drags(const ts_start_answer *start, ts_chapter *chapter)
{
    const ts_rigid_start *it        = &start->it->start;
    const uint32_t        spool     = start->it->spool;
    const double          speeds[]  = {0.0, it->light_off, it->spools[spool].idle};
    const ts_column       columns[] = {{"rpm", true}, {"bearings", true},     {"seals", true},
                                       {"air", true}, {"oil at teeth", true}, {"all", true}};

    ts_buffer_print(&chapter->cell, "Drag of the oil at this temperature, at the cranked spool, %s",
                    unit(chapter, TS_KIND_TORQUE)->name);
    if (!chapter->cell.failed)
        ts_manuscript_table(chapter->manuscript, chapter->cell.bytes, columns, 6);
    ts_buffer_clear(&chapter->cell);
    for (size_t i = 0; i < sizeof speeds / sizeof speeds[0]; i++) {
        double sum = ts_start_bearing_drag(it, spool, speeds[i]);
        fixed_cell(chapter, rpm * speeds[i], 0, "");
        torque_cell(chapter, sum);
        for (int kind = 0; kind < TS_DRAG_KINDS; kind++) {
            const double T = ts_start_drag(it, spool, (ts_drag_kind)kind, speeds[i]);
            torque_cell(chapter, start->drag_missing == NULL ? T : (double)NAN);
            sum += T;
        }
        torque_cell(chapter, sum);
    }
}

static void add_energy(ts_buffer *text, const char *before, double J)
{
    ts_buffer_add(text, before);
    ts_page_short(text, J / 1e3, 4);
    ts_buffer_add(text, " kJ");
}

static void energies(const ts_start_answer *start, ts_chapter *chapter)
{
    const ts_start_energy *e    = &start->it->run.energy;
    ts_buffer             *text = &chapter->cell;

    add_energy(text, "Energies: starters put in ", e->starters);
    add_energy(text, ", gases ", e->gases);
    add_energy(text, "; pads took ", e->pads);
    add_energy(text, ", oil, seals and air ", e->oil);
    add_energy(text, ", meshes ", e->meshes);
    add_energy(text, ", and what turns has ", e->kinetic);
    ts_buffer_add(text, "; off by ");
    ts_buffer_significant(text, e->balance, 2);
    ts_buffer_add(text, ".");
    paragraph(chapter, TS_BLOCK_PLAIN);
}

static void left_out(ts_buffer *text, size_t count, const char *one, const char *many)
{
    if (count > 0)
        ts_buffer_print(text, " Not counted: the %s.", count == 1 ? one : many);
}

static void grounds(const ts_start_answer *start, ts_chapter *chapter)
{
    const ts_drive_start *it   = start->it;
    ts_buffer            *text = &chapter->cell;

    ts_register_cells(chapter, start->assumed, start->assumed_count);
    ts_buffer_add(text, "Meshes and shafts are rigid: the shock of the first milliseconds is not "
                        "in these torques. What an accessory takes follows its powers in the "
                        "conditions up to idle, whatever the temperature; air and fuel of the "
                        "starter are as told. Bearings: their oil, that of the spool's own with "
                        "it; what their load takes is left to the `loss` of the meshes. Seals, "
                        "air and the oil at the teeth by the first method of `oil`.");
    if (start->drag_missing != NULL)
        ts_buffer_print(text,
                        " Not counted: seals, air and the oil at the teeth, since the file "
                        "does not tell %s.",
                        start->drag_missing);
    if (start->beyond != NULL)
        ts_buffer_print(text,
                        " From idle on the control accelerates the cranked spool evenly, and the "
                        "gases put in what that takes; other spools follow the line between their "
                        "speeds at idle and in %s, and so do the accessories with what they take. "
                        "Air and oil stay as warm as they were.",
                        start->beyond);
    if (it->oil_left)
        ts_buffer_add(text, " Cold oil in the spool's own bearings is not counted: `oil drag` is "
                            "not told.");
    left_out(text, start->bearings_left, "oil of one bearing, which is not computed",
             "oil of bearings that are not computed");
    left_out(text, it->rotors_left, "rotor of an accessory whose inertia is not known",
             "rotors of accessories whose inertia is not known");
    left_out(text, it->loads_left, "load of an accessory whose power is not known",
             "loads of accessories whose power is not known");
    paragraph(chapter, TS_BLOCK_FAINT);
}

/* ---- the grid ---------------------------------------------------------------------------------
 */

static void grid_cell(ts_chapter *chapter, const ts_start_cell *one)
{
    static const char *const words[] = {[TS_START_NO_TURN]  = "no turn",
                                        [TS_START_NO_LIGHT] = "no light",
                                        [TS_START_HUNG]     = "hung",
                                        [TS_START_TIME_UP]  = "too slow",
                                        [TS_START_FAULT]    = "-"};

    if (one->outcome == TS_START_IDLE)
        add_seconds(&chapter->cell, one->t);
    else
        ts_buffer_add(&chapter->cell, words[one->outcome]);
    ts_chapter_cell(chapter);
}

/* A temperature as a text that lives as long as the manuscript. */
static const char *kept_temperature(ts_chapter *chapter, double kelvin)
{
    add_temperature(chapter, kelvin);
    const char *kept =
        chapter->cell.failed
            ? NULL
            : ts_arena_copy(chapter->manuscript->arena, chapter->cell.bytes, chapter->cell.length);
    ts_buffer_clear(&chapter->cell);
    return kept != NULL ? kept : "";
}

static void grid(const ts_start_answer *start, ts_chapter *chapter)
{
    const size_t n = start->steps;

    if (start->cells == NULL)
        return;
    ts_column *columns = TS_TAKE(chapter->manuscript->arena, ts_column, n + 1);
    if (columns == NULL) {
        chapter->manuscript->failed = true;
        return;
    }
    columns[0] = (ts_column){"air", true};
    for (size_t j = 0; j < n; j++)
        columns[j + 1] = (ts_column){kept_temperature(chapter, start->cells[j].oil), true};
    ts_manuscript_table(chapter->manuscript, "Time to idle: oil across, air down", columns, n + 1);
    for (size_t i = 0; i < n; i++) {
        ts_chapter_word(chapter, kept_temperature(chapter, start->cells[i * n].ambient));
        for (size_t j = 0; j < n; j++)
            grid_cell(chapter, &start->cells[i * n + j]);
    }
}

/* ---- the whole --------------------------------------------------------------------------------
 */

static void lack(const ts_drive_start *it, ts_chapter *chapter)
{
    ts_buffer_print(&chapter->cell, "not computed: the file does not tell %s%s%s", it->missing,
                    it->lacks != NULL ? " of " : "", it->lacks != NULL ? it->lacks : "");
    if (!chapter->cell.failed)
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

void ts_chapter_start(ts_chapter *chapter, const ts_start_answer *start)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Start");
    conditions(start, chapter);
    if (start->it->missing != NULL) {
        lack(start->it, chapter);
        return;
    }
    outcome(start, chapter);
    if (start->it->run.fault == TS_START_BAD_NUMBER)
        return;
    events(start, chapter);
    torques(start, chapter);
    pads(start, chapter);
    necks(start, chapter);
    drags(start, chapter);
    energies(start, chapter);
    grid(start, chapter);
    grounds(start, chapter);
}
