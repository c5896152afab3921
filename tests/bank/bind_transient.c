/* bank/bind_transient.c: published cases about stops, necks, impacts and steps in time. */
#include "bank/bank_case.h"
#include "response/elastic_train.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Two bodies on one spring: what runs, and what stops, or is pushed. */
typedef struct rig {
    ts_turning_body  bodies[2];
    ts_bond          bond;
    ts_elastic_train train;
    ts_train_run     run;
    ts_arena        *arena;
} rig;

static rig rig_of(double J_1, double J_2, double k)
{
    return (rig){
        .bodies = {{.J = J_1}, {.J = J_2}},
        .bond   = {TS_BOND_SHAFT, 0, 1, 1.0, 1.0, k, 0.0, 0.0, (double)INFINITY},
        .train  = {.body_count = 2, .bond_count = 1, .stops = TS_NO_BODY, .tolerance = 1e-12}};
}

static void run_for(ts_case *c, rig *it, double until)
{
    it->train.bodies = it->bodies;
    it->train.bonds  = &it->bond;
    it->train.until  = until;
    it->arena        = ts_arena_open(NULL);
    ts_elastic_train_run(&it->train, it->arena, &it->run);
    if (it->run.fault == TS_RUN_FINE)
        return;
    ts_arena_close(it->arena);
    ts_case_spoil(c, ts_run_fault_says(it->run.fault), "the run");
}

static double given(ts_case *c, const char *name, ts_kind kind)
{
    return ts_case_given(c, name, kind);
}

/* A body at speed whose far end stops at once; the first quarter of its swing, and a bit. */
static rig stopped(ts_case *c, double J, double k, double speed)
{
    rig it             = rig_of(J, J * 1e-3, k);
    it.bodies[0].speed = it.bodies[1].speed = speed;
    it.train.stops                          = 1;
    run_for(c, &it, 0.6 * pi * sqrt(J / k));
    return it;
}

static void far_end_locked(ts_case *c)
{
    const double k = given(c, "k", TS_KIND_TORSIONAL_STIFFNESS);
    rig it = stopped(c, given(c, "J", TS_KIND_INERTIA), k, given(c, "n", TS_KIND_ROTATIONAL_SPEED));

    ts_case_computed(c, "T_peak", it.run.peaks[0].before, TS_KIND_TORQUE);
    ts_case_computed(c, "t_peak", it.run.peaks[0].t_before, TS_KIND_TIME);
    ts_case_computed(c, "twist_deg", it.run.peaks[0].before / k, TS_KIND_ANGLE);
    ts_arena_close(it.arena);
}

static void shear_neck(ts_case *c)
{
    const double g    = given(c, "ratio", TS_KIND_NUMBER),
                 k    = given(c, "k", TS_KIND_TORSIONAL_STIFFNESS);
    const double J    = given(c, "J_source", TS_KIND_INERTIA) / (g * g);
    const double w    = given(c, "n_pad", TS_KIND_ROTATIONAL_SPEED);
    rig          bare = stopped(c, J, k, w);

    ts_case_computed(c, "T_peak_if_no_neck", bare.run.peaks[0].before, TS_KIND_TORQUE);
    ts_arena_close(bare.arena);
    rig it             = rig_of(J, J * 1e-3, k);
    it.bodies[0].speed = it.bodies[1].speed = w;
    it.train.stops                          = 1;
    it.bond.breaks                          = given(c, "T_shear", TS_KIND_TORQUE);
    run_for(c, &it, 0.6 * pi * sqrt(J / k));
    for (size_t i = 0; i < it.run.event_count; i++)
        if (it.run.events[i].what == TS_HAPPENS_BREAK)
            ts_case_computed(c, "t_to_shear", it.run.events[i].t, TS_KIND_TIME);
    ts_case_computed(c, "pad_speed_after_rpm", w + it.run.v[0], TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "energy_in_neck_side", it.run.energy.broken, TS_KIND_ENERGY);
    ts_arena_close(it.arena);
}

/* Free to the other side of its play, then the strike. */
static void impact(ts_case *c)
{
    const double b  = given(c, "b", TS_KIND_ANGLE);
    rig          it = rig_of(given(c, "J1", TS_KIND_INERTIA), given(c, "J2", TS_KIND_INERTIA),
                             given(c, "k", TS_KIND_TORSIONAL_STIFFNESS));

    it.bodies[0].torque = given(c, "T", TS_KIND_TORQUE);
    it.bodies[0].q      = -b;
    it.bond.kind        = TS_BOND_MESH;
    it.bond.gap         = b * (1.0 + 1e-9);
    run_for(c, &it, 4.5e-3);
    ts_case_computed(c, "T_peak", it.run.peaks[0].before, TS_KIND_TORQUE);
    const double t = it.run.events[0].t;
    ts_case_computed(c, "t_cross", t, TS_KIND_TIME);
    ts_arena_close(it.arena);
    run_for(c, &it, t);
    ts_case_computed(c, "dw_impact", it.run.v[0] - it.run.v[1], TS_KIND_ROTATIONAL_SPEED);
    ts_arena_close(it.arena);
}

static void step(ts_case *c)
{
    rig it = rig_of(given(c, "J1", TS_KIND_INERTIA), given(c, "J2", TS_KIND_INERTIA),
                    given(c, "k", TS_KIND_TORSIONAL_STIFFNESS));

    it.bodies[0].torque = given(c, "T", TS_KIND_TORQUE);
    run_for(c, &it, 8e-3);
    ts_case_computed(c, "T_shaft_peak", it.run.peaks[0].before, TS_KIND_TORQUE);
    ts_case_computed(c, "omega_n", pi / it.run.peaks[0].t_before, TS_KIND_ROTATIONAL_SPEED);
    ts_arena_close(it.arena);
}

/* Where it comes to rest when it is damped: what rigid bodies would carry. */
static void step_and_mean(ts_case *c)
{
    const double J_1 = given(c, "J1", TS_KIND_INERTIA), J_2 = given(c, "J2", TS_KIND_INERTIA);
    const double k  = given(c, "k", TS_KIND_TORSIONAL_STIFFNESS);
    const double J  = J_1 * J_2 / (J_1 + J_2);
    rig          it = rig_of(J_1, J_2, k);

    step(c);
    it.bodies[0].torque = given(c, "T", TS_KIND_TORQUE);
    it.bond.c           = sqrt(k * J); /* half of critical */
    run_for(c, &it, 50.0 * sqrt(J / k));
    ts_case_computed(c, "T_shaft_mean", k * (it.run.q[0] - it.run.q[1]), TS_KIND_TORQUE);
    ts_arena_close(it.arena);
}

/* ---- friction clutches ------------------------------------------------------------------------
 */

/* Two free bodies that a pair of torques pulls together until an overrunning clutch, which turns
 * free while the first is the faster one, takes hold; the work that the pair takes out is heat. */
typedef struct drag {
    double t, heat, w; /* s, J, rad/s when both turn alike */
} drag;

static drag dragged(ts_case *c, double I_1, double I_2, double w_1, double w_2, double T)
{
    const ts_torque_pulse pair[2] = {{.body = 0, .A = -T}, {.body = 1, .A = T}};
    rig                   it      = rig_of(I_1, I_2, 1e3 * T);

    if (!(w_1 > w_2 && w_2 >= 0.0 && w_1 < 1e4 && fmin(I_1, I_2) > 1e-6 * fmax(I_1, I_2)))
        ts_case_spoil(c, "nothing slips, or far too fast", "the clutch");
    it.bodies[0].v       = w_1;
    it.bodies[1].v       = w_2;
    it.bond.kind         = TS_BOND_CLUTCH;
    it.train.pulses      = pair;
    it.train.pulse_count = 2;
    run_for(c, &it, 2.0 * (w_1 - w_2) * fmin(I_1, I_2) / T);
    const double t = it.run.event_count > 0 ? it.run.events[0].t : (double)NAN;
    ts_arena_close(it.arena);
    run_for(c, &it, t);
    const drag out = {t, -it.run.energy.work, it.run.v[1]};
    ts_arena_close(it.arena);
    return out;
}

static void clutch(ts_case *c)
{
    const drag it =
        dragged(c, given(c, "I1", TS_KIND_INERTIA), given(c, "I2", TS_KIND_INERTIA),
                given(c, "w1", TS_KIND_ROTATIONAL_SPEED), given(c, "w2", TS_KIND_ROTATIONAL_SPEED),
                given(c, "T", TS_KIND_TORQUE));

    ts_case_computed(c, "t", it.t, TS_KIND_TIME);
    ts_case_computed(c, "E", it.heat, TS_KIND_ENERGY);
    ts_case_computed(c, "w_common", it.w, TS_KIND_ROTATIONAL_SPEED);
}

/* The share of its energy that disc A loses as heat to disc B at rest does not ask for sizes. */
static void clutch_heat(ts_case *c)
{
    const double I_B = 1.0, I_A = given(c, "IA_over_IB", TS_KIND_NUMBER) * I_B, w = 100.0;
    const drag   it = dragged(c, I_A, I_B, w, 0.0, 10.0);

    ts_case_computed(c, "K_max", given(c, "Q_max", TS_KIND_ENERGY) * I_A * w * w / 2.0 / it.heat,
                     TS_KIND_ENERGY);
}

/* The far body as good as held; damped so that it swings, for else there is no peak. */
static void damped_step(ts_case *c)
{
    const double J = 0.02, k = 15000.0, T = 40.0;
    const double zeta = given(c, "zeta", TS_KIND_NUMBER);

    if (!(zeta >= 0.0 && zeta < 1.0))
        return;
    rig it = rig_of(J, 1e9, k);

    it.bodies[0].torque = T;
    it.bond.c           = 2.0 * zeta * sqrt(k * J);
    run_for(c, &it, 8e-3);
    ts_case_computed(c, "peak_factor", it.run.peaks[0].before / T, TS_KIND_NUMBER);
    ts_arena_close(it.arena);
}

/* The far body as good as held; the load grows evenly in a share of the natural period. */
static void ramped_step(ts_case *c)
{
    const double J = 0.02, k = 15000.0, T = 40.0, T_n = 2.0 * pi * sqrt(J / k);

    for (size_t i = 0; i < ts_case_length(c, "tr_over_Tn"); i++) {
        const double          rise = ts_case_given_at(c, "tr_over_Tn", i, TS_KIND_NUMBER) * T_n;
        const ts_torque_pulse load = {.body = 0, .A = T, .rise = rise};
        rig                   it   = rig_of(J, 1e12, k);

        if (!(rise >= 0.0 && rise < 100.0 * T_n))
            ts_case_spoil(c, "is not between 0 and 100", "tr_over_Tn");
        it.train.pulses      = &load;
        it.train.pulse_count = 1;
        run_for(c, &it, rise + 1.25 * T_n);
        ts_case_listed(c, "peak_factor", it.run.peaks[0].before / T, TS_KIND_NUMBER);
        ts_arena_close(it.arena);
    }
}

/* A disc on a round shaft whose bearing freezes. */
static void frozen_bearing(ts_case *c)
{
    const double d = given(c, "d", TS_KIND_LENGTH);
    const double k =
        given(c, "G", TS_KIND_STRESS) * pi * d * d * d * d / (32.0 * given(c, "L", TS_KIND_LENGTH));
    rig it =
        stopped(c, given(c, "Im", TS_KIND_INERTIA), k, given(c, "n", TS_KIND_ROTATIONAL_SPEED));
    const double T = it.run.peaks[0].before;

    ts_case_computed(c, "phi", T / k, TS_KIND_ANGLE);
    ts_case_computed(c, "tau", 16.0 * T / (pi * d * d * d), TS_KIND_STRESS);
    ts_arena_close(it.arena);
}

static void seized_flywheel(ts_case *c)
{
    const double d = given(c, "d", TS_KIND_LENGTH), r = given(c, "k", TS_KIND_LENGTH);
    const double k =
        given(c, "G", TS_KIND_STRESS) * pi * d * d * d * d / (32.0 * given(c, "L", TS_KIND_LENGTH));
    rig it =
        stopped(c, given(c, "m", TS_KIND_MASS) * r * r, k, given(c, "n", TS_KIND_ROTATIONAL_SPEED));
    const double T = it.run.peaks[0].before;

    ts_case_computed(c, "twist_deg", T / k, TS_KIND_ANGLE);
    ts_case_computed(c, "tau_max_MPa", 16.0 * T / (pi * d * d * d), TS_KIND_STRESS);
    ts_arena_close(it.arena);
}

static const ts_binding bindings[] = {
    {"trn-seizure-far-end-locked", far_end_locked},
    {"trn-seizure-shear-neck", shear_neck},
    {"trn-backlash-impact", impact},
    {"trn-step-torque-two-inertia", step_and_mean},
    {"trn-clutch-two-inertia", clutch},
    {"trn-clutch-two-discs-heat-limit", clutch_heat},
    {"trn-damped-step-overshoot", damped_step},
    {"trn-ramp-torque-overshoot", ramped_step},
    {"trn-gere-3-9-11-frozen-bearing", frozen_bearing},
    {"trn-hearn-flywheel-seized-bearing", seized_flywheel},
};
TS_BINDINGS(bindings);
