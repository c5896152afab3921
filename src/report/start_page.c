/* How is the engine started, and what bears it? */
#include "report/start_report.h"

#include "report/check_page.h"
#include "report/register.h"

#include <math.h>
#include <stdio.h>

enum { INDENT = 2, NAME_WIDE = 43, CELL = 12, GRID_CELL = 11 };

static const double rpm = 9.54929658551372015;

const char *const ts_start_outcome_words[] = {
    [TS_START_IDLE]     = "idle",
    [TS_START_NO_TURN]  = "no start: it does not turn",
    [TS_START_NO_LIGHT] = "no start: it does not reach light-off",
    [TS_START_HUNG]     = "hung start",
    [TS_START_TIME_UP]  = "too slow",
    [TS_START_FAULT]    = "not computed",
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

static void sentence(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, 2 * INDENT, INDENT);
}

static const ts_unit *unit(const ts_page *page, ts_kind kind)
{
    return ts_kind_shown(kind, page->units);
}

/* The double nearest to 273.15 K is 2e-14 K off 0 degC, which nobody wants to read. */
static void add_temperature(const ts_page *page, ts_buffer *text, double kelvin)
{
    const ts_unit *shown = unit(page, TS_KIND_TEMPERATURE);

    ts_page_short(text, round(ts_from_si(kelvin, shown) * 10.0) / 10.0 + 0.0, 4);
    ts_buffer_print(text, " %s", shown->name);
}

static void add_seconds(ts_buffer *text, double t)
{
    ts_buffer_fixed(text, t, 2);
    ts_buffer_add(text, " s");
}

static void add_speed(const ts_page *page, ts_buffer *text, double w)
{
    ts_page_speed_text(page, text, w);
    ts_buffer_add(text, " rpm");
}

static void title(const ts_start_answer *start, ts_page *page)
{
    ts_buffer text;

    ts_page_heading(page, "Start");
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, "from rest, in air of ");
    add_temperature(page, &text, start->ambient);
    ts_buffer_add(&text, ", oil in the bearings at ");
    add_temperature(page, &text, start->oil);
    if (isfinite(start->nu)) {
        ts_buffer_add(&text, " (");
        ts_page_short(&text, 1e6 * start->nu, 3);
        ts_buffer_add(&text, " cSt)");
    }
    sentence(page, &text);
}

static void outcome(const ts_start_answer *start, const ts_answer *answer, ts_page *page)
{
    const ts_start_run *run   = &start->it->run;
    const char         *spool = answer->drive->spools[start->it->spool].name;
    ts_buffer           text;

    ts_buffer_open(&text, page->out->allocator);
    if (run->fault == TS_START_BAD_NUMBER) { /* no speed is there to tell */
        ts_buffer_print(&text, "not computed: %s", ts_start_fault_says(run->fault));
        sentence(page, &text);
        return;
    }
    if (run->outcome == TS_START_IDLE)
        ts_buffer_print(&text, "the %s spool comes to idle, ", spool);
    else if (run->outcome == TS_START_NO_TURN)
        ts_buffer_print(&text, "no start: the starter does not turn the %s spool", spool);
    else
        ts_buffer_print(&text, "%s: the %s spool is left at ", ts_start_outcome_words[run->outcome],
                        spool);
    if (run->outcome != TS_START_NO_TURN) {
        add_speed(page, &text, run->w[start->it->spool]);
        ts_buffer_add(&text, run->outcome == TS_START_IDLE ? ", in " : " after ");
        add_seconds(&text, run->t);
    }
    if (run->outcome == TS_START_FAULT)
        ts_buffer_print(&text, "; refused: %s", ts_start_fault_says(run->fault));
    sentence(page, &text);
}

/* ---- tables -----------------------------------------------------------------------------------
 */

static void cell(ts_page *page, double value, int digits)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    if (isfinite(value))
        ts_page_short(&text, value, digits);
    else
        ts_buffer_add(&text, "-");
    ts_page_right(page, ts_text_of(text.failed ? "" : text.bytes), CELL);
    page->out->failed = page->out->failed || text.failed;
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void torque_cell(ts_page *page, double T)
{
    cell(page, isfinite(T) ? ts_from_si(T, unit(page, TS_KIND_TORQUE)) : T, 4);
}

static void fixed_cell(ts_page *page, double value, int decimals, const char *unit)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    if (isfinite(value))
        ts_buffer_fixed(&text, value, decimals);
    ts_buffer_add(&text, isfinite(value) ? unit : "-");
    ts_page_right(page, ts_text_of(text.failed ? "" : text.bytes), CELL);
    page->out->failed = page->out->failed || text.failed;
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

/* Nothing where it is not known what bears it. */
static void share_cell(ts_page *page, const ts_start_peak *peak, const ts_start_wall *wall)
{
    fixed_cell(page, isfinite(wall->T) ? 100.0 * fabs(peak->T) / wall->T : (double)NAN, 1, " %");
}

static void name_cell(ts_page *page, const char *before, const char *name, const char *after)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "  %s%s%s", before, name, after);
    ts_page_left(page, ts_text_of(text.failed ? "" : text.bytes), NAME_WIDE);
    page->out->failed = page->out->failed || text.failed;
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void events(const ts_start_answer *start, const ts_answer *answer, ts_page *page)
{
    const ts_start_run *run = &start->it->run;

    ts_page_left(page, ts_text_of("  what happens"), NAME_WIDE);
    ts_page_right(page, ts_text_of("s"), CELL);
    ts_page_right(page, ts_text_of("rpm"), CELL);
    ts_page_line_end(page);
    for (size_t i = 0; i < run->event_count; i++) {
        const ts_start_event *event = &run->events[i];
        name_cell(page, ts_start_event_of(start, answer, event), ": ",
                  ts_start_event_words[event->what]);
        fixed_cell(page, event->t, 2, "");
        fixed_cell(page, rpm * event->w, 0, "");
        ts_page_line_end(page);
    }
    for (uint32_t k = 0; k < start->it->start.spool_count; k++) {
        if (k == start->it->spool)
            continue;
        name_cell(page, answer->drive->spools[k].name,
                  run->w[k] > 0.0 ? ": turns at the end" : ": stands still", "");
        fixed_cell(page, run->t, 2, "");
        fixed_cell(page, rpm * run->w[k], 0, "");
        ts_page_line_end(page);
    }
}

static void heads(ts_page *page, const char *first, const char *const *words, size_t count)
{
    ts_page_left(page, ts_text_of(first), NAME_WIDE);
    for (size_t i = 0; i < count; i++)
        ts_page_right(page, ts_text_of(words[i]), CELL);
    ts_page_line_end(page);
}

static void torques(const ts_start_answer *start, const ts_answer *answer, ts_page *page)
{
    const char *const   words[] = {unit(page, TS_KIND_TORQUE)->name, "at s", "at rpm", "bears",
                                   "share"};
    const ts_start_run *run     = &start->it->run;

    heads(page, "  largest torques, + outwards; at the shaft", words, 5);
    for (uint32_t s = 0; s < start->it->start.shaft_count; s++) {
        const ts_start_peak *peak = &run->shafts[s];
        if (start->it->start.shafts[s].driver == TS_NO_DRIVER || !(fabs(peak->T) > 0.0))
            continue;
        name_cell(page, "mesh to ", answer->train->shafts[s].name, "");
        torque_cell(page, peak->T);
        fixed_cell(page, peak->t, 2, "");
        fixed_cell(page, rpm * peak->w, 0, "");
        torque_cell(page, start->walls[s].T);
        share_cell(page, peak, &start->walls[s]);
        ts_page_line_end(page);
    }
}

static void pads(const ts_start_answer *start, const ts_answer *answer, ts_page *page)
{
    const char *const   words[] = {unit(page, TS_KIND_TORQUE)->name, "at s", "at rpm", "bears",
                                   "share"};
    const ts_start_run *run     = &start->it->run;

    heads(page, "  at the pads; negative: put in", words, 5);
    for (uint32_t p = 0; p < start->it->start.pad_count; p++) {
        const ts_start_wall *wall = &start->pad_walls[start->it->pad_of[p]];
        if (!(fabs(run->pads[p].T) > 0.0))
            continue;
        name_cell(page, answer->train->pads[start->it->pad_of[p]].name, "", "");
        torque_cell(page, run->pads[p].T);
        fixed_cell(page, run->pads[p].t, 2, "");
        fixed_cell(page, rpm * run->pads[p].w, 0, "");
        torque_cell(page, wall->T);
        share_cell(page, &run->pads[p], wall);
        ts_page_line_end(page);
    }
}

static void necks(const ts_start_answer *start, ts_page *page)
{
    static const char *const words[] = {"passes", "breaks from", "margin"};
    char                     first[NAME_WIDE];

    if (start->neck_count == 0)
        return;
    snprintf(first, sizeof first, "  necks, %s", unit(page, TS_KIND_TORQUE)->name);
    heads(page, first, words, 3);
    for (size_t i = 0; i < start->neck_count; i++) {
        const ts_start_neck *neck = &start->necks[i];
        name_cell(page, neck->name, "", neck->T >= neck->low ? "  MAY BREAK" : "");
        torque_cell(page, neck->T);
        torque_cell(page, neck->low);
        fixed_cell(page, neck->T > 0.0 ? neck->low / neck->T : (double)NAN, 2, "");
        ts_page_line_end(page);
    }
}

static void add_energy(ts_buffer *text, const char *before, double J)
{
    ts_buffer_add(text, before);
    ts_page_short(text, J / 1e3, 4);
    ts_buffer_add(text, " kJ");
}

static void energies(const ts_start_answer *start, ts_page *page)
{
    const ts_start_energy *e = &start->it->run.energy;
    ts_buffer              text;

    ts_buffer_open(&text, page->out->allocator);
    add_energy(&text, "Energies: starters put in ", e->starters);
    add_energy(&text, ", gases ", e->gases);
    add_energy(&text, "; pads took ", e->pads);
    add_energy(&text, ", oil ", e->oil);
    add_energy(&text, ", meshes ", e->meshes);
    add_energy(&text, ", and what turns has ", e->kinetic);
    ts_buffer_add(&text, "; off by ");
    ts_buffer_significant(&text, e->balance, 2);
    ts_buffer_add(&text, ".");
    sentence(page, &text);
}

static void left_out(ts_buffer *text, size_t count, const char *one, const char *many)
{
    if (count > 0)
        ts_buffer_print(text, "  Not counted: the %s.", count == 1 ? one : many);
}

static void grounds(const ts_start_answer *start, ts_page *page)
{
    const ts_drive_start *it = start->it;
    ts_buffer             text;

    ts_register_page(page, start->assumed, start->assumed_count);
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, "Meshes and shafts are rigid: the shock of the first milliseconds is not "
                         "in these torques.  What an accessory takes follows its powers in the "
                         "conditions up to idle, whatever the temperature; air and fuel of the "
                         "starter are as told; losses of bearings by load, seals, windage, "
                         "churned and thrown oil "
                         "are left out.");
    if (it->oil_left)
        ts_buffer_add(&text, "  Cold oil in the spool's own bearings is not counted: `oil drag` is "
                             "not told.");
    left_out(&text, start->bearings_left, "oil of one bearing, which is not computed",
             "oil of bearings that are not computed");
    left_out(&text, it->rotors_left, "rotor of an accessory whose inertia is not known",
             "rotors of accessories whose inertia is not known");
    left_out(&text, it->loads_left, "load of an accessory whose power is not known",
             "loads of accessories whose power is not known");
    sentence(page, &text);
}

/* ---- the grid ---------------------------------------------------------------------------------
 */

static void grid_cell(ts_page *page, const ts_start_cell *one)
{
    static const char *const words[] = {[TS_START_NO_TURN]  = "no turn",
                                        [TS_START_NO_LIGHT] = "no light",
                                        [TS_START_HUNG]     = "hung",
                                        [TS_START_TIME_UP]  = "too slow",
                                        [TS_START_FAULT]    = "-"};
    ts_buffer                text;

    ts_buffer_open(&text, page->out->allocator);
    if (one->outcome == TS_START_IDLE)
        add_seconds(&text, one->t);
    else
        ts_buffer_add(&text, words[one->outcome]);
    ts_page_right(page, ts_text_of(text.failed ? "" : text.bytes), GRID_CELL);
    page->out->failed = page->out->failed || text.failed;
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void degrees(ts_page *page, double kelvin, int width)
{
    ts_buffer text;

    ts_buffer_open(&text, page->out->allocator);
    add_temperature(page, &text, kelvin);
    ts_page_right(page, ts_text_of(text.failed ? "" : text.bytes), width);
    page->out->failed = page->out->failed || text.failed;
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void grid(const ts_start_answer *start, ts_page *page)
{
    const size_t n = start->steps;

    if (start->cells == NULL)
        return;
    ts_page_heading(page, "Time to idle: oil across, air down");
    ts_page_left(page, ts_text_of("  "), 14);
    for (size_t j = 0; j < n; j++)
        degrees(page, start->cells[j].oil, GRID_CELL);
    ts_page_line_end(page);
    for (size_t i = 0; i < n; i++) {
        degrees(page, start->cells[i * n].ambient, 14);
        for (size_t j = 0; j < n; j++)
            grid_cell(page, &start->cells[i * n + j]);
        ts_page_line_end(page);
    }
}

void ts_start_page(const ts_start_answer *start, const ts_answer *answer, ts_page *page)
{
    ts_answer_title(answer, page);
    ts_start_told(start, answer, page);
}

void ts_start_told(const ts_start_answer *start, const ts_answer *answer, ts_page *page)
{
    const ts_drive_start *it = start->it;

    title(start, page);
    if (it->missing != NULL) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "not computed: the file does not tell %s%s%s", it->missing,
                        it->lacks != NULL ? " of " : "", it->lacks != NULL ? it->lacks : "");
        sentence(page, &text);
        return;
    }
    outcome(start, answer, page);
    if (it->run.fault == TS_START_BAD_NUMBER)
        return;
    events(start, answer, page);
    torques(start, answer, page);
    pads(start, answer, page);
    necks(start, page);
    energies(start, page);
    grid(start, page);
    ts_page_heading(page, "Assumed");
    grounds(start, page);
}
