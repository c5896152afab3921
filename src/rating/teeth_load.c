/* rating/teeth_load.c: with what torque, how often, and on which flank do the teeth of a mesh work
 * in a condition? */
#include "rating/drive_teeth_parts.h"
#include "rating/iso6336/gear_step.h"

#include "motion/value_note.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_formula t_formula = {
    .symbol  = "t",
    .meaning = "time spent in the condition",
    .unit    = "s",
    .text    = "events*t_event",
    .source  = "derived: events times how long each lasts",
};
static const ts_formula T_1_formula = {
    .symbol  = "T_1",
    .meaning = "torque of the driver while power flows to it: of the side that power enters",
    .unit    = "N.m",
    .text    = "-T_2*z_1/z_2",
    .source  = "derived: the same tooth force on both gears",
};
#define CYCLES_TEXT(I) "max(omega_" I "/(2*pi)*t, 1)"
static const ts_formula N_L_formulas[2] =
    TS_OF_BOTH_GEARS("N_L", "load cycles by this mesh, at least the one", "1", CYCLES_TEXT,
                     ISO_6336_2 "11.2" RECALLED);
static const ts_formula w_formula = {
    .symbol  = "w",
    .meaning = "load per unit of face width",
    .unit    = "N/m",
    .text    = "2*T_1/(d_1*b)",
    .source  = ISO_6336_3 "annex B" RECALLED,
};

static const ts_formula w_bevel_formula = {
    .symbol  = "w",
    .meaning = "load per unit of face width, at the mean pitch diameter",
    .unit    = "N/m",
    .text    = "2*T_1/(d_m1*b)",
    .source  = "derived: as ISO 6336-3, annex B, has it for cylindrical gears",
};

/* ---- time ------------------------------------------------------------------------------------ */

double ts_condition_seconds(const ts_condition *condition)
{
    if (ts_measure_known(condition->hours))
        return condition->hours.value;
    if (condition->events.standing != TS_GIVEN || !ts_measure_known(condition->lasts))
        return (double)NAN;
    return (double)condition->events.value * condition->lasts.value;
}

static double time_of(const ts_teeth_case *c, const ts_condition *condition)
{
    const double t = ts_condition_seconds(condition);

    if (c->workings == NULL || isnan(t))
        return t;
    if (ts_measure_known(condition->hours)) {
        TS_NOTE_MEASURE(c->workings, c->drive, "t", condition->hours, "s", "hours");
        return t;
    }
    const double events = (double)condition->events.value, t_event = condition->lasts.value;
    ts_workings_given(c->workings, "events", events, "1", condition->events.node);
    TS_NOTE_MEASURE(c->workings, c->drive, "t_event", condition->lasts, "s", "lasts");
    return TS_STEP(c->workings, t_formula, events * t_event, events, t_event);
}

/* ---- one mesh in one condition --------------------------------------------------------------- */

static double torque_of(const ts_teeth_case *c, uint32_t m, const ts_mesh_load *load,
                        ts_subject lender)
{
    if (load->flow != TS_FLOW_INWARD) {
        ts_workings_borrow(c->workings, "T_1", load->T[0], lender, "T_1");
        return load->T[0];
    }
    const ts_mesh *mesh = &c->train->meshes[m];
    const double   z_1  = (double)c->train->gears[mesh->driver].teeth.value;
    const double   z_2  = (double)c->train->gears[mesh->driven].teeth.value;
    const double   T_2  = load->T[1];

    ts_workings_borrow(c->workings, "T_2", T_2, lender, "T_2");
    return TS_STEP(c->workings, T_1_formula, -T_2 * z_1 / z_2, T_2, z_1, z_2);
}

static void count_cycles(const ts_teeth_case *c, double omega, double t, int gear,
                         ts_mesh_case *one)
{
    one->load.N_L[gear] = TS_GEAR_STEP(c->workings, N_L_formulas, fmax(omega / (2.0 * pi) * t, 1.0),
                                       TS_OWN("omega_", omega), TS_ALL(t));
}

static double load_per_width(const ts_teeth_case *c, uint32_t m, double T_1)
{
    const ts_mesh_motion *turn = &c->teeth->motion->meshes[m];

    if (ts_teeth_is_bevel(c, m)) {
        const double d_m1 = turn->bevel.d_m1, b = turn->bevel.in.b;
        return TS_STEP(c->workings, w_bevel_formula, 2.0 * T_1 / (d_m1 * b), T_1, d_m1, b);
    }
    const double d_1 = turn->pair.d_1, b = c->teeth->prepared[m].b;
    return TS_STEP(c->workings, w_formula, 2.0 * T_1 / (d_1 * b), T_1, d_1, b);
}

/* f_sh; rating/line_askew.c has noted it about the same teeth. */
static double deflection_of(const ts_teeth_case *c, uint32_t m, uint32_t condition)
{
    const ts_lines *lines = c->teeth->lines;
    const double    askew =
        lines == NULL ? (double)NAN : lines->askew[(size_t)condition * c->train->mesh_count + m];

    if (!isnan(askew))
        return fabs(askew);
    ts_workings_assumed(c->workings, "f_sh", 0.0, "m",
                        "its shafts are not computed and are taken as stiff");
    return 0.0;
}

void ts_teeth_load(const ts_teeth_case *c, uint32_t m, uint32_t condition)
{
    const ts_mesh      *mesh   = &c->train->meshes[m];
    const ts_motion    *motion = c->teeth->motion;
    const ts_mesh_load *load = &c->teeth->power->mesh[(size_t)condition * c->train->mesh_count + m];
    const double       *speed   = &motion->speed[(size_t)condition * c->train->shaft_count];
    const double        omega_1 = speed[mesh->driver_shaft], omega_2 = speed[mesh->driven_shaft];
    const ts_subject    lender = {mesh->node, (int32_t)condition};
    const ts_subject    own    = ts_teeth_subject(c, m, (int32_t)condition);
    ts_mesh_case       *one    = ts_teeth_at(c, m, condition);

    if (load->flow == TS_FLOW_NONE)
        return;
    one->loaded = true;
    if (one->missing != NULL || one->fault != NULL)
        return;
    if (isnan(omega_1) || isnan(omega_2)) {
        one->missing = "its speed";
        return;
    }
    ts_workings_about(c->workings, own.object, own.condition);
    const double t = time_of(c, &c->drive->conditions[condition]);
    if (isnan(t)) {
        one->missing = "the time spent in this condition (`hours` or `events`)";
        return;
    }
    ts_workings_borrow(c->workings, "omega_1", omega_1, lender, "n_1");
    ts_workings_borrow(c->workings, "omega_2", omega_2, lender, "n_2");
    const double T_1  = torque_of(c, m, load, lender);
    one->load.T_1     = T_1;
    one->load.omega_1 = omega_1;
    count_cycles(c, omega_1, t, 0, one);
    count_cycles(c, omega_2, t, 1, one);
    one->w = load_per_width(c, m, T_1);
    if (one->load.face == TS_FACE_LOAD_PARTS && !ts_teeth_is_bevel(c, m))
        one->load.f_sh = deflection_of(c, m, condition);
}

/* ---- its rating ---------------------------------------------------------------------------------
 */

void ts_teeth_rate(const ts_teeth_case *c, uint32_t m, uint32_t condition)
{
    ts_mesh_case *one = ts_teeth_at(c, m, condition);

    if (!one->loaded || one->missing != NULL || one->fault != NULL)
        return;
    if (ts_teeth_is_bevel(c, m)) {
        ts_bevels_rate(c, m, condition);
        return;
    }
    ts_workings_about(c->workings, c->teeth->strength[m].subject, (int32_t)condition);
    one->load.R[0] = ts_teeth_stress_ratio(c, m, condition, 0);
    one->load.R[1] = ts_teeth_stress_ratio(c, m, condition, 1);
    if (!ts_iso6336_rate(&c->teeth->prepared[m], &one->load, &one->rating, c->workings))
        one->fault = one->rating.missing;
    else if (c->workings != NULL)
        ts_teeth_lend(c, m, condition);
}
