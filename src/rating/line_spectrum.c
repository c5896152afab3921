/* rating/line_spectrum.c: how safe is the weakest section of a line for as long as its conditions
 * last?  Line of DIN 743-4, consequent form of Miner's rule (Haibach) in place of its sum, all from
 * memory: bending by the turns of every condition, the swing of the torque by all events. */
#include "rating/drive_lines_parts.h"
#include "rating/drive_teeth.h"
#include "rating/shaft/din743_spectrum.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_formula n_formula = {"n", "turns of the shaft in the condition", "1",
                                     "omega*t/(2*pi)", "derived: speed times time"};
static const ts_formula u_formula = {"u", "use of what the section bears for ever", "1", "1/S_D",
                                     "DIN 743-1:2012, 4.2 (from memory)"};
static const ts_formula t_formula = {"u", "use of what the section bears of torsion for ever", "1",
                                     "tau_ta/sigma_ADKt", "DIN 743-1:2012, 4.2 (from memory)"};
static const ts_formula swings_formula = {
    "n", "swings of the torque in the life", "1", "sum(events)",
    "derived: events of different conditions are different swings"};
static const ts_formula K_formula = {
    "S_K", "safety of the section against fatigue for as long as the conditions last", "1",
    "1/sqrt(1/S_Kb^2 + 1/S_Kt^2)",
    "DIN 743-1:2012, 4.2 (from memory): bending and torsion as there"};

/* Not told: for ever. */
static double turns_of(const ts_lines_case *c, const ts_line_case *one, uint32_t condition,
                       ts_workings *w)
{
    const double t     = ts_condition_seconds(&c->drive->conditions[condition]);
    const double omega = fabs(one->omega);

    if (!(t >= 0.0) || isnan(omega)) {
        ts_workings_assumed(w, "n", INFINITY, "1", "how long it lasts is not told: for ever");
        return INFINITY;
    }
    ts_workings_row(w, "t", t, "s", "derived: time of the condition in the life, from the file");
    ts_workings_row(w, "omega", omega, "rad/s", "derived: speed of the shaft");
    return TS_STEP(w, n_formula, omega * t / (2.0 * pi), omega, t);
}

static ts_din_step step_of(const ts_lines_case *c, uint32_t number, const ts_line_notch *notch,
                           uint32_t condition)
{
    const ts_line_case *one  = ts_line_case_at(c, number, condition);
    const ts_line_cut   here = ts_line_cut_at(&c->lines->lines[number], one, notch->x);

    const ts_din_stress stress =
        ts_line_stress_of(&notch->section, here.M_b, fabs(here.T), fabs(here.N), NULL);
    const double S_D = ts_din_rate(&notch->section, &notch->ability, &stress, NULL).S_D;
    ts_workings_about(c->workings, notch->node, (int32_t)condition);
    const double n = turns_of(c, one, condition, c->workings);
    if (isinf(S_D)) {
        ts_workings_row(c->workings, "u", 0.0, "1", "derived: nothing bends the section then");
        return (ts_din_step){0.0, n};
    }
    return (ts_din_step){TS_STEP(c->workings, u_formula, 1.0 / S_D, S_D), n};
}

/* Events of different conditions are different swings, and all count.  For ever where no condition
 * tells any, or one does not know how many. */
static double swings_of(const ts_lines_case *c, ts_workings *w)
{
    ts_input told[TS_CONDITIONS_MOST];
    size_t   count = 0;
    double   sum   = 0.0;

    for (size_t i = 0; i < c->drive->condition_count; i++) {
        const ts_tally *events = &c->drive->conditions[i].events;
        if (events->standing == TS_UNKNOWN) {
            ts_workings_assumed(w, "n", INFINITY, "1",
                                "how many `events` a condition has is unknown: for ever");
            return INFINITY;
        }
        if (events->standing == TS_ABSENT)
            continue;
        const double value = (double)events->value;
        sum += value;
        told[count++] = (ts_input){"events", value};
        ts_workings_given(w, "events", value, "1", events->node);
    }
    if (count == 0) {
        ts_workings_assumed(w, "n", INFINITY, "1", "no condition tells `events`: for ever");
        return INFINITY;
    }
    return ts_step_list(w, &swings_formula, sum, told, count);
}

/* The swing of the torque, as often as it comes. */
static ts_din_step swing_of(const ts_lines_case *c, const ts_line_notch *notch, ts_workings *w)
{
    const double tau_ta = notch->swing.a[TS_DIN_T];
    const double sigma_ADKt =
        ts_din_rate(&notch->section, &notch->ability, &notch->swing, NULL).sigma_ADK[TS_DIN_T];
    const double n = swings_of(c, w);

    return (ts_din_step){TS_STEP(w, t_formula, tau_ta / sigma_ADKt, tau_ta, sigma_ADKt), n};
}

/* Where it cannot be below `most`, that instead: every section is at least as safe as under its
 * worst step and its swing, both met for ever, and the search is spared.  INFINITY: always what it
 * is. */
static double last(const ts_lines_case *c, uint32_t number, const ts_line_notch *notch, double most)
{
    const ts_din_steel_kind kind    = TS_DIN_CASE_HARDENED;
    const ts_din_spectrum   bent    = {TS_DIN_B, ts_din_slope(kind, TS_DIN_B), TS_DIN_DAMAGE};
    const ts_din_spectrum   twisted = {TS_DIN_T, ts_din_slope(kind, TS_DIN_T), TS_DIN_DAMAGE};
    ts_din_step             steps[TS_DIN_STEPS_MOST];
    ts_workings            *w     = c->workings;
    double                  worst = 0.0;

    for (uint32_t i = 0; i < c->drive->condition_count; i++) {
        steps[i] = step_of(c, number, notch, i);
        if (!isnan(worst) && !(steps[i].u <= worst))
            worst = steps[i].u;
    }
    ts_workings_about(w, notch->node, TS_EVERY_CONDITION);
    const ts_din_step swing = swing_of(c, notch, w);
    if (!isinf(most) && 1.0 / hypot(worst, swing.u) >= most)
        return most;
    const double S_Kb = ts_din_spectrum_safety(steps, (int)c->drive->condition_count, &bent, w);
    const double S_Kt = ts_din_spectrum_safety(&swing, 1, &twisted, w);
    return TS_STEP(w, K_formula, 1.0 / sqrt(1.0 / (S_Kb * S_Kb) + 1.0 / (S_Kt * S_Kt)), S_Kb, S_Kt);
}

/* The least of all sections; what bears least for ever need not be what lasts least. */
static void find_least(const ts_lines_case *c, uint32_t number)
{
    ts_line      *line  = &c->lines->lines[number];
    ts_lines_case quiet = *c;

    quiet.workings  = NULL;
    line->weakest_K = line->weakest_D;
    line->S_K       = last(&quiet, number, &line->notches[line->weakest_D], INFINITY);
    for (int i = 0; i < line->notch_count && !isnan(line->S_K); i++) {
        if (i == line->weakest_D || isnan(line->notches[i].S_D))
            continue;
        const double S_K = last(&quiet, number, &line->notches[i], line->S_K);
        if (!(S_K >= line->S_K)) {
            line->S_K       = S_K;
            line->weakest_K = i;
        }
    }
}

static void note_least(const ts_lines_case *c, uint32_t number)
{
    const ts_line       *line = &c->lines->lines[number];
    const ts_line_notch *weak = &line->notches[line->weakest_K];

    if (line->weakest_K != line->weakest_D && line->weakest_K != line->weakest_F)
        ts_line_note_notch(c, number, line->weakest_K);
    (void)last(c, number, weak, INFINITY);
    ts_workings_about(c->workings, line->node, TS_EVERY_CONDITION);
    ts_workings_borrow(c->workings, "S_K", line->S_K, (ts_subject){weak->node, TS_EVERY_CONDITION},
                       "S_K");
}

void ts_line_last(const ts_lines_case *c, uint32_t number)
{
    if (c->lines->lines[number].weakest_D < 0)
        return;
    find_least(c, number);
    if (c->workings != NULL)
        note_least(c, number);
}
