/* Does a start follow its closed forms, an integrator of fixed steps that knows no roots, and does
 * it tell why when it does not come to idle? */
#include "response/rigid_start.h"
#include "support/close.h"

#include <string.h>

enum { POINTS = 2001 };

typedef struct rig {
    double         w[4][POINTS], T[4][POINTS];
    ts_start_shaft shafts[4];
    ts_start_pad   pads[3];
    ts_start_spool spools[2];
    ts_rigid_start start;
    ts_start_run   run;
    ts_arena      *arena;
} rig;

/* A spool of 2 kg.m2 with its starter, 1:1 and without loss. */
static void lay(rig *it)
{
    memset(it, 0, sizeof *it);
    it->shafts[0]         = (ts_start_shaft){.driver = TS_NO_DRIVER, .ratio = 1.0, .J = 2.0};
    it->shafts[1]         = (ts_start_shaft){.ratio = 1.0};
    it->pads[0]           = (ts_start_pad){.shaft = 1, .starter = true, .J = 0.1};
    it->spools[0].idle    = 500.0;
    it->spools[0].cranked = true;
    it->start             = (ts_rigid_start){.shafts      = it->shafts,
                                             .shaft_count = 2,
                                             .pads        = it->pads,
                                             .pad_count   = 1,
                                             .spools      = it->spools,
                                             .spool_count = 1,
                                             .theta       = 1.0,
                                             .delta       = 1.0,
                                             .light_off   = 200.0,
                                             .cut_out     = 1e9,
                                             .least       = 0.0,
                                             .until       = 100.0,
                                             .tolerance   = 1e-11};
}

static ts_torque_curve straight(rig *it, int k, double w_0, double T_0, double w_1, double T_1)
{
    it->w[k][0] = w_0;
    it->T[k][0] = T_0;
    it->w[k][1] = w_1;
    it->T[k][1] = T_1;
    return (ts_torque_curve){it->w[k], it->T[k], 2};
}

static void run(rig *it)
{
    it->arena = ts_arena_open(NULL);
    assert_non_null(it->arena);
    ts_rigid_start_run(&it->start, it->arena, &it->run);
}

static void shut(rig *it)
{
    ts_arena_close(it->arena);
}

/* derived: t = J w/T, and the mesh passes what the starter's own rotor leaves. */
static void a_constant_torque_takes_J_w_over_T(void **state)
{
    (void)state;
    rig it;
    lay(&it);
    it.pads[0].drive = straight(&it, 0, 0.0, 42.0, 1000.0, 42.0);
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_IDLE);
    assert_close(it.run.t, 2.1 * 500.0 / 42.0, 1e-10);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_LIGHT_OFF), 2.1 * 200.0 / 42.0, 1e-10);
    assert_close(it.run.shafts[1].T, -42.0 + 0.1 * 20.0, 1e-12);
    assert_close(it.run.energy.starters, 2.1 * 500.0 * 500.0 / 2.0, 1e-10);
    assert_true(it.run.energy.balance < 1e-9);
    shut(&it);
}

/* Source: reference/systems.json, trn-start-through-gear-ratio: a straight torque curve through a
 * ratio with losses, t = J/k ln(T_b/(T_b - k w)). */
static void lay_ratio(rig *it)
{
    lay(it);
    it->shafts[0].J     = 1.8;
    it->shafts[1].ratio = 8.5;
    it->shafts[1].loss  = 0.07;
    it->pads[0].J       = 0.004;
    it->pads[0].drive   = straight(it, 0, 0.0, 30.0, 7500.0, 0.0);
    it->spools[0].unlit = straight(it, 1, 0.0, 45.0, 1000.0, 45.0);
    it->spools[0].lit   = straight(it, 2, 0.0, -45.0, 1000.0, -45.0);
    it->spools[0].idle  = 620.0;
}

static void a_straight_torque_curve_ends_in_an_exponential(void **state)
{
    (void)state;
    rig it;
    lay_ratio(&it);
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_IDLE);
    assert_close(it.run.t, 15.5413978925, 1e-9);
    assert_true(it.run.energy.balance < 1e-9);
    assert_true(it.run.energy.meshes > 0.0);
    shut(&it);
}

static void above_its_balance_it_hangs_where_the_torques_meet(void **state)
{
    (void)state;
    rig it;
    lay_ratio(&it);
    it.spools[0].idle = 800.0;
    it.start.until    = 1e3;
    it.start.least    = 1e-3;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_HUNG);
    assert_close(it.run.w[0], 714.923540574, 1e-4);
    assert_true(it.run.w[0] < 714.923540574);
    assert_close(it.run.alpha, 1e-3, 1e-6);
    shut(&it);
}

/* derived: J dw/dt = T_0 (1 - w/w_f) - c w^2 with roots w_p, w_m:
 * t = J/(c (w_p - w_m)) (ln((w - w_m)/(w_p - w)) - ln(-w_m/w_p)); the square by 2000 lines. */
static void a_square_drag_ends_in_its_logarithms(void **state)
{
    (void)state;
    rig          it;
    const double T_0 = 200.0, w_f = 900.0, c = 2e-4;
    lay(&it);
    for (int i = 0; i < POINTS; i++) {
        it.w[1][i] = 0.3 * i;
        it.T[1][i] = c * it.w[1][i] * it.w[1][i];
        it.T[2][i] = -it.T[1][i];
    }
    it.pads[0].drive   = straight(&it, 0, 0.0, T_0, w_f, 0.0);
    it.spools[0].unlit = (ts_torque_curve){it.w[1], it.T[1], POINTS};
    it.spools[0].lit   = (ts_torque_curve){it.w[1], it.T[2], POINTS};
    it.start.tolerance = 1e-9;
    run(&it);
    const double b = T_0 / w_f, root = sqrt(b * b + 4.0 * c * T_0);
    const double w_p = (-b + root) / (2.0 * c), w_m = (-b - root) / (2.0 * c);
    assert_int_equal(it.run.outcome, TS_START_IDLE);
    assert_close(it.run.t,
                 2.1 / (c * (w_p - w_m)) * (log((500.0 - w_m) / (w_p - 500.0)) - log(-w_m / w_p)),
                 1e-6);
    shut(&it);
}

/* ---- a whole start against fixed steps ----------------------------------------------------------
 */

/* Two spools, a starter that its clutch lets go, an accessory, oil, losses, another day. */
static void lay_whole(rig *it)
{
    lay(it);
    it->shafts[0].J = 1.3;
    it->shafts[1]   = (ts_start_shaft){.spool    = 0,
                                       .driver   = 0,
                                       .ratio    = 2.5,
                                       .J        = 0.02,
                                       .loss     = 0.03,
                                       .oil_slow = 0.4,
                                       .oil_fast = 0.02};
    it->shafts[2]   = (ts_start_shaft){.spool    = 0,
                                       .driver   = 1,
                                       .ratio    = 1.5,
                                       .J        = 0.01,
                                       .loss     = 0.02,
                                       .oil_slow = 0.1,
                                       .oil_fast = 0.01};
    it->shafts[3]   = (ts_start_shaft){.spool    = 1,
                                       .driver   = TS_NO_DRIVER,
                                       .ratio    = 1.0,
                                       .J        = 4.0,
                                       .loss     = 0.0,
                                       .oil_slow = 1.0,
                                       .oil_fast = 0.05};
    it->pads[0]     = (ts_start_pad){
            .shaft = 2, .starter = true, .drive = straight(it, 0, 0.0, 90.0, 900.0, 0.0), .J = 0.05};
    it->pads[1] =
        (ts_start_pad){.shaft = 1, .load = straight(it, 1, 0.0, 2.0, 1000.0, 8.0), .J = 0.004};
    it->spools[0].unlit   = straight(it, 2, 0.0, 4.0, 500.0, 60.0);
    it->spools[0].lit     = straight(it, 3, 100.0, -10.0, 500.0, 55.0);
    it->spools[1]         = (ts_start_spool){.idle = 80.0, .air = 60.0};
    it->start.shaft_count = 4;
    it->start.pad_count   = 2;
    it->start.spool_count = 2;
    it->start.cut_out     = 320.0;
    it->start.theta       = 0.9;
    it->start.delta       = 0.95;
    it->start.least       = 1.0;
}

typedef struct plain {
    double w, lp, t;
    bool   lit, cut, free;
} plain;

static double line(double x, double x0, double y0, double x1, double y1)
{
    return y0 + (y1 - y0) * (x - x0) / (x1 - x0);
}

/* The same start written out by hand: which way power flows is tried both ways. */
static double plain_alpha(const plain *p, double w, bool *pushes)
{
    const double q = w / sqrt(0.9), n1 = 2.5 * w, n2 = 1.5 * w;
    const double gas =
        0.95 * (p->lit ? line(q, 100.0, -10.0, 500.0, 55.0) : -line(q, 0.0, 4.0, 500.0, 60.0));
    const double oil_2 = fmax(0.1, 0.01 * pow(n2, 2.0 / 3.0));
    const double oil_1 = fmax(0.4, 0.02 * pow(n1, 2.0 / 3.0));
    const double start = p->free || p->cut ? 0.0 : fmax(0.0, line(n2, 0.0, 90.0, 900.0, 0.0));
    const double load  = line(n1, 0.0, 2.0, 1000.0, 8.0);
    for (int in_2 = 0; in_2 < 2; in_2++)
        for (int in_1 = 0; in_1 < 2; in_1++) {
            const double e2 = in_2 ? 0.98 : 1.0 / 0.98, e1 = in_1 ? 0.97 : 1.0 / 0.97;
            const double J2 = 0.01 + (p->free ? 0.0 : 0.05), J1 = 0.02 + 0.004;
            const double fixed_1 = oil_1 + load + (oil_2 - start) * (1.5 / 2.5) * e2;
            const double mass_1  = J1 * 2.5 + J2 * 1.5 * (1.5 / 2.5) * e2;
            const double alpha   = (gas - fixed_1 * 2.5 * e1) / (1.3 + mass_1 * 2.5 * e1);
            const double T2 = oil_2 - start + J2 * 1.5 * alpha, T1 = fixed_1 + mass_1 * alpha;
            if ((T2 < 0.0) == (in_2 == 1) && (T1 < 0.0) == (in_1 == 1)) {
                *pushes = start > 0.05 * 1.5 * alpha;
                return alpha;
            }
        }
    fail();
    return 0.0;
}

static double plain_lp(double w, double lp, double drag)
{
    const double oil = fmax(1.0, 0.05 * pow(lp, 2.0 / 3.0));
    const double day = 0.95 / 0.9; /* delta/theta */
    const double air = day * (60.0 * (w / 500.0) * (w / 500.0) - drag * (lp / 80.0) * (lp / 80.0));

    return lp > 0.0 || air > oil ? (air - oil) / 4.0 : 0.0;
}

static double plain_step(plain *p, double h, double drag)
{
    bool         on;
    const double k1 = plain_alpha(p, p->w, &on), k2 = plain_alpha(p, p->w + h / 2.0 * k1, &on);
    const double k3 = plain_alpha(p, p->w + h / 2.0 * k2, &on);
    const double k4 = plain_alpha(p, p->w + h * k3, &on);
    const double a = p->w, b = p->w + h / 2.0 * k2, c = p->w + h * k3;
    const double l1 = plain_lp(a, p->lp, drag), l2 = plain_lp(b, p->lp + h / 2.0 * l1, drag);
    const double l3 = plain_lp(b, p->lp + h / 2.0 * l2, drag);
    const double l4 = plain_lp(c, p->lp + h * l3, drag);
    p->w += h / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
    p->lp += h / 6.0 * (l1 + 2.0 * l2 + 2.0 * l3 + l4);
    p->t += h;
    return k1;
}

/* Steps of 0.1 ms; the time at which `w` is passed within a step by a straight line. */
static double passes(plain *p, double w, double drag)
{
    for (;;) {
        const plain before = *p;
        (void)plain_step(p, 1e-4, drag);
        if (p->w >= w) {
            const double share = (w - before.w) / (p->w - before.w);
            *p                 = before;
            (void)plain_step(p, share * 1e-4, drag);
            return p->t;
        }
    }
}

static double plain_drag(void)
{
    return 60.0 - fmax(1.0, 0.05 * pow(80.0, 2.0 / 3.0));
}

static void a_whole_start_is_that_of_fixed_steps(void **state)
{
    (void)state;
    rig    it;
    plain  p    = {0};
    double drag = plain_drag();
    lay_whole(&it);
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_IDLE);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_LIGHT_OFF), passes(&p, 200.0, drag), 1e-7);
    p.lit = true;
    assert_close(ts_start_time_of(&it.run, TS_STARTS_CUT_OUT), passes(&p, 320.0, drag), 1e-7);
    p.cut = p.free = true;
    assert_close(it.run.t, passes(&p, 500.0, drag), 1e-7);
    assert_close(it.run.w[1], p.lp, 1e-5);
    assert_true(ts_start_time_of(&it.run, TS_STARTS_FOLLOW) > 0.0);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_LET_GO),
                 ts_start_time_of(&it.run, TS_STARTS_CUT_OUT), 1e-12);
    assert_true(it.run.energy.balance < 1e-7);
    shut(&it);
}

/* Its starter is shut off before the gases carry it. */
static void a_hung_start_is_that_of_fixed_steps(void **state)
{
    (void)state;
    rig    it;
    plain  p    = {0};
    double drag = plain_drag(), alpha;
    lay_whole(&it);
    it.start.least   = 12.0;
    it.start.cut_out = 250.0;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_HUNG);
    (void)passes(&p, 200.0, drag);
    p.lit = true;
    (void)passes(&p, 250.0, drag);
    p.cut = true; /* its rotor, which slows down with the spool, still pushes */
    bool on;
    assert_true(plain_alpha(&p, p.w, &on) < 0.0);
    alpha = plain_alpha(&p, p.w, &on);
    assert_close(it.run.t, p.t, 1e-7);
    assert_close(it.run.alpha, alpha, 1e-7);
    shut(&it);
}

/* rad/s2 of the other spool, as the cranked one goes evenly from 500 to 900 rad/s in 5 s. */
static double plain_lp_beyond(double t, double lp)
{
    const double w = fmin(900.0, 500.0 + 80.0 * t), s = line(w, 500.0, 80.0, 900.0, 200.0) / 80.0;
    const double day  = 0.95 / 0.9;
    const double held = fmax(1.0, 0.05 * pow(80.0 * s, 2.0 / 3.0));
    const double drag = 60.0 - held / (day * s * s);
    const double oil  = fmax(1.0, 0.05 * pow(lp, 2.0 / 3.0));

    return (day * (60.0 * s * s - drag * (lp / 80.0) * (lp / 80.0)) - oil) / 4.0;
}

/* Steps of 0.1 ms from `lp` on; s until it has 198 rad/s. */
static double plain_lp_until(double lp)
{
    const double h = 1e-4;

    for (int i = 0;; i++) {
        const double t = h * i, a = plain_lp_beyond(t, lp);
        const double b    = plain_lp_beyond(t + h / 2.0, lp + h / 2.0 * a);
        const double c    = plain_lp_beyond(t + h / 2.0, lp + h / 2.0 * b);
        const double d    = plain_lp_beyond(t + h, lp + h * c);
        const double more = h / 6.0 * (a + 2.0 * b + 2.0 * c + d);
        if (lp + more >= 198.0)
            return t + h * (198.0 - lp) / more;
        lp += more;
    }
}

/* derived: an even acceleration takes dw/alpha; a pad then sees its load and J ratio alpha. */
static void beyond_idle_it_is_that_of_fixed_steps(void **state)
{
    (void)state;
    rig it, idle;
    lay_whole(&idle);
    run(&idle);
    lay_whole(&it);
    it.start.beyond     = 900.0;
    it.start.rate       = 80.0;
    it.spools[1].beyond = 200.0;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_BEYOND);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_IDLE), idle.run.t, 1e-12);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_BEYOND), idle.run.t + 5.0, 1e-10);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_WITH),
                 idle.run.t + plain_lp_until(idle.run.w[1]), 1e-7);
    assert_close(it.run.t, ts_start_time_of(&it.run, TS_STARTS_WITH), 1e-12);
    assert_close(it.run.w[0], 900.0, 1e-9);
    assert_close(it.run.pads[1].T, line(2250.0, 0.0, 2.0, 1000.0, 8.0) + 0.004 * 2.5 * 80.0, 1e-8);
    assert_close_abs(it.run.alpha, 0.0, 0.0);
    assert_true(it.run.energy.balance < 1e-7);
    shut(&it);
    shut(&idle);
}

/* Its air does not bring the other spool along in the time that it has. */
static void beyond_idle_it_gives_up_and_keeps_what_it_reached(void **state)
{
    (void)state;
    rig it;
    lay_whole(&it);
    it.shafts[3].J      = 4000.0;
    it.start.beyond     = 900.0;
    it.start.rate       = 80.0;
    it.start.until      = 30.0;
    it.spools[1].beyond = 200.0;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_TIME_UP);
    assert_close(it.run.t, ts_start_time_of(&it.run, TS_STARTS_IDLE) + 30.0, 1e-12);
    assert_close(it.run.w[0], 900.0, 1e-9);
    assert_true(it.run.w[1] < 198.0);
    shut(&it);
}

static void a_tighter_tolerance_comes_nearer(void **state)
{
    (void)state;
    double off[3];
    for (int i = 0; i < 3; i++) {
        rig it;
        lay_ratio(&it);
        it.start.tolerance = i == 0 ? 1e-4 : i == 1 ? 1e-7 : 1e-11;
        run(&it);
        off[i] = fabs(it.run.t - 15.5413978925);
        shut(&it);
    }
    assert_true(off[1] < off[0] && off[2] < off[1] && off[2] < 1e-8);
}

/* ---- what may go wrong --------------------------------------------------------------------------
 */

static void a_starter_that_is_too_weak_turns_nothing(void **state)
{
    (void)state;
    rig it;
    lay_ratio(&it);
    it.pads[0].drive = straight(&it, 0, 0.0, 5.0, 7500.0, 0.0); /* 5 * 8.5 * 0.93 < 45 */
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_NO_TURN);
    assert_int_equal(it.run.fault, TS_START_FINE);
    assert_close_abs(it.run.w[0], 0.0, 0.0);
    shut(&it);
}

static void a_starter_that_fades_before_light_off_is_no_start(void **state)
{
    (void)state;
    rig it;
    lay_ratio(&it);
    it.pads[0].drive = straight(&it, 0, 0.0, 30.0, 1500.0, 0.0);
    it.start.least   = 0.5;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_NO_LIGHT);
    assert_true(it.run.w[0] < 200.0 && it.run.w[0] > 100.0);
    shut(&it);
}

static void what_is_too_slow_is_told_with_what_it_reached(void **state)
{
    (void)state;
    rig it;
    lay_ratio(&it);
    it.start.until = 10.0;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_TIME_UP);
    assert_close(it.run.t, 10.0, 1e-12);
    assert_true(it.run.w[0] > 200.0 && it.run.w[0] < 620.0);
    shut(&it);
}

/* A starter that is pulled by a gas torque of its own engine lets go, and its rotor keeps gaining.
 */
static void a_clutch_lets_go_when_the_spool_outruns_it_and_holds_again(void **state)
{
    (void)state;
    rig it;
    lay(&it);
    it.pads[0].drive   = straight(&it, 0, 0.0, 2.0, 2000.0, 2.0); /* 20 rad/s2 alone */
    it.spools[0].lit   = straight(&it, 1, 0.0, 60.0, 400.0, -40.0);
    it.start.light_off = 1e-6; /* reached at J w/T = 1e-6 s */
    it.start.least     = 0.0;
    run(&it);
    assert_close(ts_start_time_of(&it.run, TS_STARTS_LET_GO), 2.1 * 1e-6 / 2.0, 1e-6);
    assert_true(ts_start_time_of(&it.run, TS_STARTS_ENGAGE) > 0.1);
    assert_true(it.run.energy.balance < 1e-9);
    shut(&it);
}

/* derived: J w_1/T_0 until the cut-out, J dw/(T_gas - T_load) from it on, with the same J. */
static void a_starter_without_a_clutch_becomes_a_load(void **state)
{
    (void)state;
    rig it;
    lay(&it);
    it.pads[0].coupled = true;
    it.pads[0].drive   = straight(&it, 0, 0.0, 42.0, 1000.0, 42.0);
    it.pads[0].load    = straight(&it, 1, 0.0, 9.0, 1000.0, 9.0);
    it.spools[0].lit   = straight(&it, 2, 0.0, 30.0, 1000.0, 30.0);
    it.start.cut_out   = 300.0;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_IDLE);
    assert_close(it.run.t, 2.1 * (200.0 / 42.0 + 100.0 / (42.0 + 30.0) + 200.0 / (30.0 - 9.0)),
                 1e-9);
    assert_close(it.run.energy.pads, 9.0 * (500.0 * 500.0 - 300.0 * 300.0) / 2.0 / 10.0, 1e-9);
    assert_nan(ts_start_time_of(&it.run, TS_STARTS_LET_GO));
    assert_true(it.run.energy.balance < 1e-9);
    shut(&it);
}

static void numbers_out_of_range_are_refused(void **state)
{
    (void)state;
    for (int k = 0; k < 12; k++) {
        rig it;
        lay_ratio(&it);
        it.start.beyond     = 2.0 * it.spools[0].idle;
        it.start.rate       = 10.0;
        double *const bad[] = {&it.shafts[0].J,     &it.shafts[1].ratio, &it.shafts[1].loss,
                               &it.pads[0].J,       &it.T[0][1],         &it.spools[0].idle,
                               &it.start.light_off, &it.start.theta,     &it.shafts[1].oil_fast,
                               &it.start.beyond,    &it.start.rate,      &it.shafts[1].drag.wind};
        *bad[k]             = (double)NAN;
        run(&it);
        assert_int_equal(it.run.outcome, TS_START_FAULT);
        assert_int_equal(it.run.fault, TS_START_BAD_NUMBER);
        shut(&it);
    }
}

/* Inertias as good as none, and a torque that a ratio makes larger than any number: caught where it
 * is born, in the equations, before a step is made. */
static void what_is_no_number_is_caught_at_birth(void **state)
{
    (void)state;
    for (int k = 0; k < 3; k++) {
        rig it;
        lay(&it);
        it.pads[0].drive   = straight(&it, 0, 0.0, 60.0, 1000.0, 60.0);
        it.spools[0].unlit = straight(&it, 1, 0.0, 10.0, 500.0, 10.0);
        if (k == 1)
            it.shafts[0].J = it.pads[0].J = 1e-310;
        if (k == 2) {
            it.T[0][0] = it.T[0][1] = 1e308;
            it.shafts[1].ratio      = 100.0;
        }
        run(&it);
        assert_int_equal(it.run.fault, k == 0 ? TS_START_FINE : TS_START_NOT_FINITE);
        assert_int_equal(it.run.outcome == TS_START_FAULT, k != 0);
        assert_true(k == 0 ? it.run.t > 1.0 : !(it.run.t > 0.0));
        shut(&it);
    }
}

/* derived: 12 + 0.2 w until the line of what brakes meets 0 at 150 rad/s, 42 N.m from there on. */
/* derived: t = int J dw/(T - drag(w)), by Simpson's rule; the drag stands on a shaft at 3:1 that
 * turns with the spool, a constant, a power of 1.8, a square up to 900 rad/s and an exponential. */
static double hand_drag(double w)
{
    const double n = 3.0 * w;

    return 3.0 * (0.8 + 2e-6 * pow(n, 1.8) + 1e-7 * n * fmin(n, 900.0) + 0.05 * exp(1e-3 * n));
}

static double simpson_time(double T, double J, double to, int steps)
{
    double sum = 0.0;

    for (int i = 0; i <= steps; i++)
        sum += (i == 0 || i == steps ? 1.0
                : i % 2 == 1         ? 4.0
                                     : 2.0) *
               J / (T - hand_drag(to * i / steps));
    return sum * to / steps / 3.0;
}

static void seals_air_and_oil_at_the_teeth_brake_as_an_integral_says(void **state)
{
    (void)state;
    rig it;
    lay(&it);
    it.pads[0].drive  = straight(&it, 0, 0.0, 42.0, 1000.0, 42.0);
    it.shafts[2]      = (ts_start_shaft){.driver = 0, .ratio = 3.0};
    it.shafts[2].drag = (ts_shaft_drag){
        .seal = 0.8, .wind = 2e-6, .thrown = 1e-7, .full = 900.0, .churn = 0.05, .rate = 1e-3};
    it.start.shaft_count = 3;
    run(&it);
    assert_int_equal(it.run.outcome, TS_START_IDLE);
    assert_close(it.run.t, simpson_time(42.0, 2.1, 500.0, 10000), 1e-7);
    assert_true(it.run.t > 1.05 * 2.1 * 500.0 / 42.0);
    assert_true(it.run.energy.balance < 1e-9);
    assert_close(ts_start_drag(&it.start, 0, TS_DRAG_SEAL, 77.0), 2.4, 1e-12);
    double sum = ts_start_bearing_drag(&it.start, 0, 400.0);
    for (int kind = 0; kind < TS_DRAG_KINDS; kind++)
        sum += ts_start_drag(&it.start, 0, (ts_drag_kind)kind, 400.0);
    assert_close(sum, hand_drag(400.0), 1e-12);
    shut(&it);
}

static void what_brakes_never_drives_beyond_its_curve(void **state)
{
    (void)state;
    for (int by_pad = 0; by_pad < 2; by_pad++) {
        rig it;
        lay(&it);
        it.pads[0].drive             = straight(&it, 0, 0.0, 42.0, 1000.0, 42.0);
        const ts_torque_curve brakes = straight(&it, 1, 50.0, 20.0, 100.0, 10.0);
        it.pads[1]                   = (ts_start_pad){.shaft = 1};
        it.start.pad_count           = 2;
        it.start.light_off           = 499.0;
        if (by_pad == 1)
            it.pads[1].load = brakes;
        else
            it.spools[0].unlit = brakes;
        run(&it);
        assert_int_equal(it.run.outcome, TS_START_IDLE);
        assert_close(it.run.t, 2.1 / 0.2 * log(42.0 / 12.0) + 2.1 * 350.0 / 42.0, 1e-8);
        assert_true(it.run.energy.balance < 1e-8);
        shut(&it);
    }
}

static void curves_go_on_beyond_their_ends(void **state)
{
    (void)state;
    const double          w[] = {1.0, 2.0, 4.0}, T[] = {10.0, 20.0, 10.0};
    const ts_torque_curve curve = {w, T, 3}, one = {w, T, 1};
    assert_close(ts_torque_curve_at(&curve, 1.5), 15.0, 1e-15);
    assert_close(ts_torque_curve_at(&curve, 3.0), 15.0, 1e-15);
    assert_close_abs(ts_torque_curve_at(&curve, 0.0), 0.0, 1e-15);
    assert_close(ts_torque_curve_at(&curve, 5.0), 5.0, 1e-15);
    assert_close(ts_torque_curve_at(&one, 5.0), 10.0, 1e-15);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_constant_torque_takes_J_w_over_T),
        cmocka_unit_test(a_straight_torque_curve_ends_in_an_exponential),
        cmocka_unit_test(above_its_balance_it_hangs_where_the_torques_meet),
        cmocka_unit_test(a_square_drag_ends_in_its_logarithms),
        cmocka_unit_test(a_whole_start_is_that_of_fixed_steps),
        cmocka_unit_test(a_hung_start_is_that_of_fixed_steps),
        cmocka_unit_test(beyond_idle_it_is_that_of_fixed_steps),
        cmocka_unit_test(beyond_idle_it_gives_up_and_keeps_what_it_reached),
        cmocka_unit_test(a_tighter_tolerance_comes_nearer),
        cmocka_unit_test(a_starter_that_is_too_weak_turns_nothing),
        cmocka_unit_test(a_starter_that_fades_before_light_off_is_no_start),
        cmocka_unit_test(what_is_too_slow_is_told_with_what_it_reached),
        cmocka_unit_test(a_clutch_lets_go_when_the_spool_outruns_it_and_holds_again),
        cmocka_unit_test(a_starter_without_a_clutch_becomes_a_load),
        cmocka_unit_test(numbers_out_of_range_are_refused),
        cmocka_unit_test(what_is_no_number_is_caught_at_birth),
        cmocka_unit_test(seals_air_and_oil_at_the_teeth_brake_as_an_integral_says),
        cmocka_unit_test(what_brakes_never_drives_beyond_its_curve),
        cmocka_unit_test(curves_go_on_beyond_their_ends),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
