/* Do seizures, impacts, necks and clutches in time follow their closed forms, and an integrator of
 * fixed steps that knows nothing of roots? */
#include "response/elastic_train.h"
#include "support/close.h"

#include <complex.h>

static const double pi = 3.14159265358979323846;

typedef struct rig {
    ts_turning_body  bodies[4];
    ts_bond          bonds[4];
    ts_elastic_train train;
    ts_train_run     run;
    ts_arena        *arena;
} rig;

static ts_bond shaft(uint32_t a, uint32_t b, double k)
{
    return (ts_bond){TS_BOND_SHAFT, a, b, 1.0, 1.0, k, 0.0, 0.0, (double)INFINITY};
}

static void run(rig *it, uint32_t bodies, uint32_t bonds, double until)
{
    it->train.bodies     = it->bodies;
    it->train.bonds      = it->bonds;
    it->train.body_count = bodies;
    it->train.bond_count = bonds;
    it->train.until      = until;
    if (it->train.tolerance == 0.0)
        it->train.tolerance = 1e-10;
    it->arena = ts_arena_open(NULL);
    assert_non_null(it->arena);
    ts_elastic_train_run(&it->train, it->arena, &it->run);
}

static void shut(rig *it)
{
    ts_arena_close(it->arena);
}

/* Source: reference/systems.json, trn-seizure-far-end-locked. */
static rig locked(double tolerance)
{
    rig it       = {.train = {.stops = 1, .tolerance = tolerance}};
    it.bodies[0] = (ts_turning_body){.J = 0.015, .speed = 12000.0 * pi / 30.0};
    it.bodies[1] = (ts_turning_body){.J = 1e-4, .speed = 12000.0 * pi / 30.0};
    it.bonds[0]  = shaft(0, 1, 22000.0);
    return it;
}

static void a_rotor_whose_far_end_locks_winds_up_to_w_sqrt_kJ(void **state)
{
    (void)state;
    rig it = locked(1e-10);
    run(&it, 2, 1, 2e-3);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_close(it.run.peaks[0].before, 22827.9458642, 1e-6);
    assert_close(it.run.peaks[0].t_before, 0.00129704237865, 1e-5);
    assert_true(it.run.stands);
    assert_true(it.run.energy.balance < 1e-7);
    shut(&it);
}

static void a_tighter_tolerance_comes_nearer(void **state)
{
    (void)state;
    double off[3];
    for (int i = 0; i < 3; i++) {
        rig it = locked(i == 0 ? 1e-8 : i == 1 ? 1e-10 : 1e-12);
        run(&it, 2, 1, 1e-2); /* nearly two swings */
        off[i] = fabs(it.run.v[0] + it.bodies[0].speed -
                      it.bodies[0].speed * cos(sqrt(22000.0 / 0.015) * 1e-2));
        shut(&it);
    }
    assert_true(off[1] < off[0] / 10.0 && off[2] < off[1] / 10.0);
    assert_true(off[2] < 1e-8);
}

/* Source: reference/systems.json, trn-seizure-shear-neck; J_eq = J_source/g^2 = 0.0006/0.55^2. */
static rig necked(void)
{
    rig it             = {.train = {.stops = 1}};
    it.bodies[0]       = (ts_turning_body){.J = 0.0006 / 0.3025, .speed = 7800.0 * pi / 30.0};
    it.bodies[1]       = (ts_turning_body){.J = 1e-4, .speed = 7800.0 * pi / 30.0};
    it.bonds[0]        = shaft(0, 1, 9000.0);
    it.bonds[0].breaks = 1200.0;
    return it;
}

static void a_neck_breaks_when_its_torque_is_reached_and_leaves_the_rest_turning(void **state)
{
    (void)state;
    rig it = necked();
    run(&it, 2, 1, 1e-3);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_int_equal(it.run.event_count, 1);
    assert_int_equal(it.run.events[0].what, TS_HAPPENS_BREAK);
    assert_close(it.run.events[0].t, 0.000166718213522, 1e-7);
    assert_close(it.run.events[0].T, 1200.0, 1e-9);
    assert_close((it.bodies[0].speed + it.run.v[0]) * 30.0 / pi, 7313.28121075, 1e-8);
    assert_close(it.run.energy.broken, 80.0, 1e-8);
    shut(&it);
}

/* Source: reference/systems.json, trn-backlash-impact. */
static rig rattling(void)
{
    rig it       = {.train = {.stops = TS_NO_BODY}};
    it.bodies[0] = (ts_turning_body){.J = 0.02, .torque = 40.0};
    it.bodies[1] = (ts_turning_body){.J = 0.35};
    it.bonds[0] =
        (ts_bond){TS_BOND_MESH, 0, 1, 1.0, 1.0, 15000.0, 0.0, 0.004 + 1e-12, (double)INFINITY};
    it.bodies[0].q = -0.004;
    return it;
}

/* derived: what bears 10 N.m cannot begin by carrying 20; nothing behind it feels the stop. */
static void a_neck_weaker_than_its_steady_torque_is_broken_from_the_start(void **state)
{
    (void)state;
    rig it             = locked(1e-10);
    it.bodies[0].q     = 20.0 / 22000.0; /* the shaft carries 20 N.m */
    it.bonds[0].breaks = 10.0;
    run(&it, 2, 1, 2e-3);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_int_equal(it.run.event_count, 1);
    assert_int_equal(it.run.events[0].what, TS_HAPPENS_BREAK);
    assert_close(it.run.events[0].t, 0.0, 1e-15);
    assert_close(it.run.events[0].T, 20.0, 1e-12);
    assert_close(it.run.v[0], 0.0, 1e-12); /* the other end turns on as it did */
    shut(&it);
}

/* derived: teeth without play are a spring that pulls and pushes, so the swing is a shaft's. */
static void teeth_without_play_swing_as_a_shaft(void **state)
{
    (void)state;
    rig teeth = locked(1e-10);
    rig whole = locked(1e-10);
    teeth.bonds[0] =
        (ts_bond){TS_BOND_MESH, 0, 1, 0.05, 0.05, 22000.0 / 0.0025, 0.0, 0.0, (double)INFINITY};
    run(&teeth, 2, 1, 9e-3);
    run(&whole, 2, 1, 9e-3); /* more than one whole swing, 5.2 ms */
    assert_int_equal(teeth.run.fault, TS_RUN_FINE);
    assert_true(teeth.run.touches > 1);
    assert_true(fabs(teeth.run.v[0] - whole.run.v[0]) < 1e-4 * whole.bodies[0].speed);
    shut(&teeth);
    shut(&whole);
}

static void flanks_meet_after_their_play_and_strike(void **state)
{
    (void)state;
    rig it = rattling();
    run(&it, 2, 1, 4.5e-3);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_int_equal(it.run.events[0].what, TS_HAPPENS_TOUCH_LEADING);
    assert_close(it.run.events[0].t, 0.002, 1e-8);
    assert_close(it.run.peaks[0].before, 115.118123246, 1e-6);
    shut(&it);
}

/* Source: reference/systems.json, trn-step-torque-two-inertia. */
static void a_sudden_torque_swings_to_twice_its_mean(void **state)
{
    (void)state;
    rig it       = {.train = {.stops = TS_NO_BODY}};
    it.bodies[0] = (ts_turning_body){.J = 0.02, .torque = 40.0};
    it.bodies[1] = (ts_turning_body){.J = 0.35};
    it.bonds[0]  = shaft(0, 1, 15000.0);
    run(&it, 2, 1, 2.0 * pi / 890.425259557);
    assert_close(it.run.peaks[0].before, 75.6756756757, 1e-6);
    assert_close(it.run.peaks[0].t_before, pi / 890.425259557, 1e-4);
    shut(&it);
}

/* Source: reference/systems.json, trn-damped-step-overshoot: zeta = 0.04; the far body is as good
 * as held. */
static void damping_takes_its_share_of_the_overshoot(void **state)
{
    (void)state;
    const double J = 0.02, k = 15000.0;
    rig          it = {.train = {.stops = TS_NO_BODY}};
    it.bodies[0]    = (ts_turning_body){.J = J, .torque = 40.0};
    it.bodies[1]    = (ts_turning_body){.J = 1e9};
    it.bonds[0]     = shaft(0, 1, k);
    it.bonds[0].c   = 2.0 * 0.04 * sqrt(k * J);
    run(&it, 2, 1, 8e-3);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_close(it.run.peaks[0].before, 40.0 * 1.88182261683, 1e-6);
    assert_true(it.run.energy.balance < 1e-7);
    shut(&it);
}

/* derived: friction grows to 2 J w/S in S and takes J w of a lone rotor: it stands at S. */
static void friction_brings_a_lone_rotor_to_rest_in_its_time(void **state)
{
    (void)state;
    rig it       = {.train = {.stops = 0, .ramp = 0.02}};
    it.bodies[0] = (ts_turning_body){.J = 0.001, .speed = 500.0};
    run(&it, 1, 0, 0.03);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_int_equal(it.run.events[0].what, TS_HAPPENS_STAND);
    assert_close(it.run.events[0].t, 0.02, 1e-9);
    assert_close(it.run.energy.stopped, 125.0, 1e-9);
    shut(&it);
}

/* A starter's clutch lets its pad run ahead when the starter seizes: nothing is wound up. */
static void a_clutch_lets_the_train_run_ahead_of_a_stopped_starter(void **state)
{
    (void)state;
    rig it         = {.train = {.stops = 1}};
    it.bodies[0]   = (ts_turning_body){.J = 0.5, .speed = 300.0, .torque = -20.0};
    it.bodies[1]   = (ts_turning_body){.J = 0.01, .speed = 300.0, .torque = 20.0};
    it.bonds[0]    = (ts_bond){TS_BOND_CLUTCH, 0, 1, 1.0, 1.0, 5e4, 0.0, 0.0, 100.0};
    it.bodies[1].q = 20.0 / 5e4;
    run(&it, 2, 1, 0.1);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_int_equal(it.run.events[0].what, TS_HAPPENS_PART);
    assert_close(fabs(it.run.peaks[0].before), 20.0, 1e-9);
    assert_false(it.run.peaks[0].broken);
    shut(&it);
}

/* derived: rigid limit: a stiff shaft between two bodies under a torque turns them as one. */
static void a_stiff_shaft_turns_both_as_one(void **state)
{
    (void)state;
    rig it       = {.train = {.stops = TS_NO_BODY}};
    it.bodies[0] = (ts_turning_body){.J = 0.3, .torque = 10.0};
    it.bodies[1] = (ts_turning_body){.J = 0.1};
    it.bonds[0]  = shaft(0, 1, 1e7);
    run(&it, 2, 1, 0.01);
    /* derived: what remains swings with T J1/(J0 (J0 + J1))/omega_n and T/(J0 + J1)/omega_n */
    assert_close_abs(it.run.v[0], 0.25, 7.3e-4);
    assert_close_abs(it.run.v[1], 0.25, 2.2e-3);
    assert_close(0.3 * it.run.v[0] + 0.1 * it.run.v[1], 0.1, 1e-9);
    shut(&it);
}

static void numbers_out_of_range_are_named(void **state)
{
    (void)state;
    rig it         = necked();
    it.bodies[1].J = 0.0;
    run(&it, 2, 1, 1e-3);
    assert_int_equal(it.run.fault, TS_RUN_BAD_NUMBER);
    assert_int_equal(it.run.at, 1);
    shut(&it);
    it            = necked();
    it.bonds[0].k = (double)NAN;
    run(&it, 2, 1, 1e-3);
    assert_int_equal(it.run.fault, TS_RUN_BAD_NUMBER);
    shut(&it);
    it                  = necked();
    it.bodies[0].torque = 1e308;
    it.bodies[0].J      = 1e-300;
    run(&it, 2, 1, 1e-3);
    assert_int_equal(it.run.fault, TS_RUN_NOT_FINITE);
    assert_int_equal(it.run.at, 0);
    shut(&it);
}

/* The slow body needs seconds and the light one would need 1e9 steps for that: it is seen early. */
static void what_cannot_reach_its_end_says_where_and_keeps_what_it_has(void **state)
{
    (void)state;
    rig it       = {.train = {.stops = TS_NO_BODY}};
    it.bodies[0] = (ts_turning_body){.J = 0.3, .torque = 6.0};
    it.bodies[1] = (ts_turning_body){.J = 0.1};
    it.bodies[2] = (ts_turning_body){.J = 1e-13};
    it.bonds[0]  = shaft(0, 1, 1e4);
    it.bonds[1]  = shaft(1, 2, 1e4);
    run(&it, 3, 2, 10.0);
    assert_int_equal(it.run.fault, TS_RUN_STUCK);
    assert_int_equal(it.run.at, 2);
    assert_true(it.run.steps <= 10000);
    assert_true(it.run.t > 0.0 && it.run.t < 0.01);
    assert_close(0.3 * it.run.v[0] + 0.1 * it.run.v[1], 6.0 * it.run.t, 1e-6);
    shut(&it);
}

/* derived: two branches alike that meet again swing as one branch of both. */
static void branches_that_meet_again_swing_as_one_of_both(void **state)
{
    (void)state;
    rig two = {.train = {.stops = 3}}, one = {.train = {.stops = 2}};
    for (uint32_t i = 0; i < 4; i++)
        two.bodies[i] = (ts_turning_body){.J = 0.02, .speed = 300.0};
    two.bodies[0].J = 0.5;
    two.bonds[0]    = shaft(0, 1, 3e4);
    two.bonds[1]    = shaft(0, 2, 3e4);
    two.bonds[2]    = shaft(1, 3, 2e4);
    two.bonds[3]    = shaft(2, 3, 2e4);
    for (uint32_t i = 0; i < 3; i++)
        one.bodies[i] = two.bodies[i];
    one.bodies[1].J = 0.04;
    one.bonds[0]    = shaft(0, 1, 6e4);
    one.bonds[1]    = shaft(1, 2, 4e4);
    run(&two, 4, 4, 0.02);
    run(&one, 3, 2, 0.02);
    assert_int_equal(two.run.fault, TS_RUN_FINE);
    for (uint32_t i = 0; i < 4; i++)
        assert_close(two.run.peaks[i].before, one.run.peaks[i / 2].before / 2.0, 1e-9);
    assert_close(two.run.v[0], one.run.v[0], 1e-9);
    assert_close(two.run.v[1], two.run.v[2], 1e-12);
    shut(&two);
    shut(&one);
}

/* ---- an integrator of fixed steps -------------------------------------------------------------
 */

typedef double (*pull)(double s);

static double neck_pull(double s)
{
    return 9000.0 * s;
}

static double tooth_pull(double s)
{
    return s > 0.0 ? 15000.0 * s : 0.0;
}

/* Two bodies by leapfrog in steps of 1e-9 s: the time at which their stretch passes s_end, with the
 * line through the last two steps. */
static double leapfrog(const rig *it, bool far_stands, double v0, pull pulls, double s_end)
{
    const double h = 1e-9, J0 = it->bodies[0].J, J1 = it->bodies[1].J;
    double       s = it->bodies[0].q, v = v0;
    const double T  = it->bodies[0].torque;
    double       v1 = 0.0, before = s;
    for (long i = 0; i < 5000000; i++) {
        const double F = pulls(s);
        v += h * (T - F) / J0 * (i == 0 ? 0.5 : 1.0);
        v1 += far_stands ? 0.0 : h * F / J1 * (i == 0 ? 0.5 : 1.0);
        before = s;
        s += h * (v - v1);
        if (s >= s_end)
            return h * ((double)i + (s_end - before) / (s - before));
    }
    return (double)NAN;
}

static void events_come_when_steps_of_a_nanosecond_say(void **state)
{
    (void)state;
    rig one = necked(), two = rattling();
    run(&one, 2, 1, 1e-3);
    assert_close(one.run.events[0].t,
                 leapfrog(&one, true, one.bodies[0].speed, neck_pull, 1200.0 / 9000.0), 1e-7);
    two.bonds[0].breaks = 90.0; /* of the blow that follows on the play */
    run(&two, 2, 1, 4.5e-3);
    assert_int_equal(two.run.events[1].what, TS_HAPPENS_BREAK);
    assert_close(two.run.events[1].t, leapfrog(&two, false, 0.0, tooth_pull, 90.0 / 15000.0), 1e-7);
    shut(&one);
    shut(&two);
}

/* derived: both turn as one, T t/(J_1 + J_2). */
static void a_clutch_that_begins_at_equal_speed_locks(void **state)
{
    (void)state;
    rig it       = {.train = {.stops = TS_NO_BODY}};
    it.bodies[0] = (ts_turning_body){.J = 2.0};
    it.bodies[1] = (ts_turning_body){.J = 0.5, .torque = 10.0};
    it.bonds[0]  = (ts_bond){TS_BOND_CLUTCH, 0, 1, 1.0, 1.0, 1e5, 300.0, 0.0, (double)INFINITY};
    run(&it, 2, 1, 0.5);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_close(it.run.v[0], 10.0 * 0.5 / 2.5, 1e-4);
    assert_close(it.run.v[1], it.run.v[0], 1e-4);
    shut(&it);
}

/* derived: friction of 20 N.m/s has grown to 2 N.m when 100 N.m have brought 10 rad/s to rest. */
static void a_rotor_that_is_torn_round_does_not_stand(void **state)
{
    (void)state;
    rig it       = {.train = {.stops = 0, .ramp = 1.0}};
    it.bodies[0] = (ts_turning_body){.J = 1.0, .speed = 10.0, .torque = -100.0};
    it.bodies[1] = (ts_turning_body){.J = 1e-3, .speed = 10.0};
    it.bonds[0]  = shaft(0, 1, 1e4);
    run(&it, 2, 1, 0.2);
    assert_int_equal(it.run.fault, TS_RUN_FINE);
    assert_false(it.run.stands);
    assert_true(it.run.v[0] + 10.0 < -9.0);
    assert_true(it.run.energy.balance < 1e-6);
    shut(&it);
}

/* derived: s'' + W^2 s = A/J0 Re e^(zt), z = -d + iw, from rest, is
 * s = A/J0 Re[(e^(zt) - cos W t - z/W sin W t)/(W^2 + z^2)]; W^2 = k/mu, mu the reduced inertia. */
static void a_pulse_swings_a_shaft_as_its_closed_form(void **state)
{
    (void)state;
    const double J0 = 0.02, J1 = 0.35, k = 15000.0, A = 40.0, w = 300.0, until = 7e-3;
    const double mu = J0 * J1 / (J0 + J1), W = sqrt(k / mu);
    for (int decaying = 0; decaying < 2; decaying++) {
        const ts_torque_pulse pulse = {0, A, decaying ? 150.0 : 0.0, w, 0.0, 0.0};
        rig it       = {.train = {.stops = TS_NO_BODY, .pulses = &pulse, .pulse_count = 1}};
        it.bodies[0] = (ts_turning_body){.J = J0, .speed = 50.0};
        it.bodies[1] = (ts_turning_body){.J = J1, .speed = 50.0};
        it.bonds[0]  = shaft(0, 1, k);
        run(&it, 2, 1, until);
        const double complex z = (double complex)I * w - pulse.decay;
        const double         s =
            A / J0 *
            creal((cexp(z * until) - cos(W * until) - z / W * sin(W * until)) / (W * W + z * z));
        assert_int_equal(it.run.fault, TS_RUN_FINE);
        assert_close(k * (it.run.q[0] - it.run.q[1]), k * s, 1e-9);
        assert_true(it.run.energy.balance < 1e-9);
        shut(&it);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_rotor_whose_far_end_locks_winds_up_to_w_sqrt_kJ),
        cmocka_unit_test(a_tighter_tolerance_comes_nearer),
        cmocka_unit_test(a_neck_breaks_when_its_torque_is_reached_and_leaves_the_rest_turning),
        cmocka_unit_test(a_neck_weaker_than_its_steady_torque_is_broken_from_the_start),
        cmocka_unit_test(teeth_without_play_swing_as_a_shaft),
        cmocka_unit_test(flanks_meet_after_their_play_and_strike),
        cmocka_unit_test(a_sudden_torque_swings_to_twice_its_mean),
        cmocka_unit_test(damping_takes_its_share_of_the_overshoot),
        cmocka_unit_test(friction_brings_a_lone_rotor_to_rest_in_its_time),
        cmocka_unit_test(a_clutch_lets_the_train_run_ahead_of_a_stopped_starter),
        cmocka_unit_test(a_stiff_shaft_turns_both_as_one),
        cmocka_unit_test(numbers_out_of_range_are_named),
        cmocka_unit_test(a_pulse_swings_a_shaft_as_its_closed_form),
        cmocka_unit_test(a_clutch_that_begins_at_equal_speed_locks),
        cmocka_unit_test(a_rotor_that_is_torn_round_does_not_stand),
        cmocka_unit_test(what_cannot_reach_its_end_says_where_and_keeps_what_it_has),
        cmocka_unit_test(branches_that_meet_again_swing_as_one_of_both),
        cmocka_unit_test(events_come_when_steps_of_a_nanosecond_say),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
