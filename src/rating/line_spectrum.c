/* rating/line_spectrum.c: how safe is the weakest section of a line for as long as its conditions
 * last?  DIN 743-4 (from memory): bending by the turns of every condition, the swing of the torque
 * by the starts. */
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
static const ts_formula K_formula = {
    "S_K", "safety of the section against fatigue for as long as the conditions last", "1",
    "1/sqrt(1/S_Kb^2 + 1/S_Kt^2)", "DIN 743-4:2012 with DIN 743-1:2012, 4.2 (from memory)"};

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

/* The most events of any condition: starts, or what comes more often.  None: for ever. */
static double swings_of(const ts_lines_case *c, ts_workings *w)
{
    const ts_condition *most = NULL;

    for (size_t i = 0; i < c->drive->condition_count; i++) {
        const ts_condition *one = &c->drive->conditions[i];
        if (one->events.standing == TS_GIVEN &&
            (most == NULL || one->events.value > most->events.value))
            most = one;
    }
    if (most == NULL) {
        ts_workings_assumed(w, "n", INFINITY, "1", "no condition tells `events`: for ever");
        return INFINITY;
    }
    ts_workings_given(w, "n", (double)most->events.value, "1", most->events.node);
    return (double)most->events.value;
}

double ts_line_last(const ts_lines_case *c, uint32_t number, const ts_line_notch *notch)
{
    const ts_din_steel_kind kind    = TS_DIN_CASE_HARDENED;
    const ts_din_spectrum   bent    = {TS_DIN_B, ts_din_slope(kind, TS_DIN_B), TS_DIN_DAMAGE};
    const ts_din_spectrum   twisted = {TS_DIN_T, ts_din_slope(kind, TS_DIN_T), TS_DIN_DAMAGE};
    ts_din_step             steps[TS_DIN_STEPS_MOST], swing;
    ts_workings            *w = c->workings;

    for (uint32_t i = 0; i < c->drive->condition_count; i++)
        steps[i] = step_of(c, number, notch, i);
    ts_workings_about(w, notch->node, TS_EVERY_CONDITION);
    const double S_Kb   = ts_din_spectrum_safety(steps, (int)c->drive->condition_count, &bent, w);
    const double tau_ta = notch->swing.a[TS_DIN_T];
    const double sigma_ADKt =
        ts_din_rate(&notch->section, &notch->ability, &notch->swing, NULL).sigma_ADK[TS_DIN_T];
    swing.n           = swings_of(c, w);
    swing.u           = TS_STEP(w, t_formula, tau_ta / sigma_ADKt, tau_ta, sigma_ADKt);
    const double S_Kt = ts_din_spectrum_safety(&swing, 1, &twisted, w);
    return TS_STEP(w, K_formula, 1.0 / sqrt(1.0 / (S_Kb * S_Kb) + 1.0 / (S_Kt * S_Kt)), S_Kb, S_Kt);
}
