/* bank/bind_bearing_life.c: published cases about the life of rolling bearings. */
#include "bank/bank_case.h"
#include "element/bearing_geometry.h"
#include "rating/bearing/equivalent_load.h"
#include "rating/bearing/life_modification.h"
#include "rating/bearing/life_weibull.h"
#include "rating/bearing/rolling_life.h"

#include <math.h>

static double force(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_FORCE);
}

static double number(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_NUMBER);
}

static double speed(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_ROTATIONAL_SPEED);
}

/* ---- the textbook's Weibull form ------------------------------------------------------------- */

/* Wanted life in millions of turns: given, or time and speed. */
static double wanted_turns(ts_case *c)
{
    if (ts_case_gives(c, "xD"))
        return number(c, "xD");
    return ts_life_in_turns(ts_case_given(c, "LD", TS_KIND_TIME), speed(c, "nD"), NULL);
}

static void scattered(ts_case *c, double p)
{
    const double x_D = wanted_turns(c);
    const char  *use = ts_case_gives(c, "FD_kN") ? "FD_kN" : "FD";

    ts_case_computed(c, "xD", x_D, TS_KIND_NUMBER);
    ts_case_computed(
        c, "C10",
        ts_scattered_capacity(&ts_shigley_scatter, force(c, "FD"), x_D, number(c, "R"), p, NULL),
        TS_KIND_FORCE);
    if (ts_case_expects(c, "R_use"))
        ts_case_computed(c, "R_use",
                         ts_scattered_reliability(&ts_shigley_scatter, force(c, use),
                                                  force(c, "C10_chosen"), x_D, p, NULL),
                         TS_KIND_NUMBER);
}

static void scattered_ball(ts_case *c)
{
    scattered(c, TS_LIFE_BALL);
}

static void scattered_roller(ts_case *c)
{
    scattered(c, TS_LIFE_ROLLER);
}

/* Capacity by the plain law, reliability by Weibull. */
static void roller_chosen(ts_case *c)
{
    const double x_D = number(c, "xD");

    ts_case_computed(c, "C10", ts_capacity_for_life(force(c, "FD"), x_D, 1.0, TS_LIFE_ROLLER, NULL),
                     TS_KIND_FORCE);
    ts_case_computed(c, "R_use",
                     ts_scattered_reliability(&ts_shigley_scatter, force(c, "FD_R"),
                                              force(c, "C10_chosen"), x_D, TS_LIFE_ROLLER, NULL),
                     TS_KIND_NUMBER);
}

static void ball_and_roller(ts_case *c)
{
    const double x_D = number(c, "xD"), R = number(c, "R");

    ts_case_computed(
        c, "C10_ball",
        ts_scattered_capacity(&ts_shigley_scatter, force(c, "FDball"), x_D, R, TS_LIFE_BALL, NULL),
        TS_KIND_FORCE);
    ts_case_computed(c, "C10_roller",
                     ts_scattered_capacity(&ts_shigley_scatter, force(c, "FDroller"), x_D, R,
                                           TS_LIFE_ROLLER, NULL),
                     TS_KIND_FORCE);
    ts_case_computed(c, "RB",
                     ts_scattered_reliability(&ts_shigley_scatter, force(c, "FDroller"),
                                              force(c, "C10roller"), x_D, TS_LIFE_ROLLER, NULL),
                     TS_KIND_NUMBER);
}

static void ball_in_use(ts_case *c)
{
    ts_case_computed(c, "RA",
                     ts_scattered_reliability(&ts_shigley_scatter, force(c, "FDball_kN"),
                                              force(c, "C10ball"), number(c, "xD"), TS_LIFE_BALL,
                                              NULL),
                     TS_KIND_NUMBER);
}

static void reliability_products(ts_case *c)
{
    const double R_1 = number(c, "R1"), R_2 = number(c, "R2");
    const double R_3 = number(c, "R3"), R_4 = number(c, "R4");

    ts_case_computed(c, "p1", ts_reliability_of_set((const double[]){R_1, R_2}, 2), TS_KIND_NUMBER);
    ts_case_computed(c, "p2", ts_reliability_of_set((const double[]){R_1, R_3}, 2), TS_KIND_NUMBER);
    ts_case_computed(c, "p3", ts_reliability_of_set((const double[]){R_2, R_4}, 2), TS_KIND_NUMBER);
}

/* ---- the plain law --------------------------------------------------------------------------- */

static void basic_life(ts_case *c)
{
    const double P = force(c, "P"), n = speed(c, "n");
    const double L_10 = ts_basic_life(force(c, "C"), P, TS_LIFE_BALL, NULL);

    ts_case_computed(c, "L10", L_10, TS_KIND_NUMBER);
    ts_case_computed(c, "L10h", ts_life_in_time(L_10, n, NULL), TS_KIND_TIME);
    if (ts_case_expects(c, "C2"))
        ts_case_computed(c, "C2", ts_capacity_for_life(P, number(c, "L2"), 1.0, TS_LIFE_BALL, NULL),
                         TS_KIND_FORCE);
    if (ts_case_expects(c, "dm"))
        ts_case_computed(c, "dm",
                         ts_bearing_mean_diameter(ts_case_given(c, "d", TS_KIND_LENGTH),
                                                  ts_case_given(c, "D", TS_KIND_LENGTH), NULL),
                         TS_KIND_LENGTH);
    if (ts_case_expects(c, "kappa"))
        ts_case_computed(c, "kappa",
                         ts_viscosity_ratio(ts_case_given(c, "nu", TS_KIND_KINEMATIC_VISCOSITY),
                                            ts_case_given(c, "nu1", TS_KIND_KINEMATIC_VISCOSITY),
                                            NULL),
                         TS_KIND_NUMBER);
    if (ts_case_expects(c, "Pu_P"))
        ts_case_computed(c, "Pu_P", ts_fatigue_load_share(1.0, force(c, "Pu"), P, NULL),
                         TS_KIND_NUMBER);
}

static void roller_for_reliability(ts_case *c)
{
    const double L = ts_life_in_turns(ts_case_given(c, "LD", TS_KIND_TIME), speed(c, "n"), NULL);

    ts_case_computed(c, "L", L, TS_KIND_NUMBER);
    ts_case_computed(c, "C",
                     ts_capacity_for_life(number(c, "Ks") * force(c, "P"), L, number(c, "a1"),
                                          TS_LIFE_ROLLER, NULL),
                     TS_KIND_FORCE);
}

/* The old rotation factor V multiplies the radial load. */
static void rotation_factor(ts_case *c)
{
    const double C = force(c, "C"), F_r = force(c, "Fr"), F_a = force(c, "Fa"), V = number(c, "V2");
    const ts_load_factors factors = {.X_2 = number(c, "X"), .Y_2 = number(c, "Y")};
    const double          P_1     = ts_bearing_load(&factors, F_r, F_a, NULL);
    const double          P_2     = ts_bearing_load(&factors, V * F_r, F_a, NULL);

    ts_case_computed(c, "L1", ts_basic_life(C, P_1, TS_LIFE_BALL, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "L2", ts_basic_life(C, P_2, TS_LIFE_BALL, NULL), TS_KIND_NUMBER);
}

static void capacity_at_reliability(ts_case *c)
{
    const double L    = ts_life_in_turns(ts_case_given(c, "LD", TS_KIND_TIME), speed(c, "n"), NULL);
    const double gain = ts_life_at_reliability(1.0, number(c, "R"), number(c, "e"), NULL);

    ts_case_computed(c, "C", ts_capacity_for_life(force(c, "P"), L, gain, TS_LIFE_BALL, NULL),
                     TS_KIND_FORCE);
}

static void set_of_equals(ts_case *c)
{
    const int n = ts_case_whole(c, "n");

    if (n < 1)
        ts_case_spoil(c, "must be at least 1", "n");
    const double R    = pow(number(c, "Rsys"), 1.0 / n);
    const double gain = ts_life_at_reliability(1.0, R, number(c, "e"), NULL);

    ts_case_computed(c, "C",
                     ts_capacity_for_life(force(c, "P"), number(c, "L"), gain, TS_LIFE_BALL, NULL),
                     TS_KIND_FORCE);
}

static void spectrum(ts_case *c)
{
    const ts_bearing_step steps[] = {
        {force(c, "P1"), speed(c, "n1"), number(c, "t1")},
        {force(c, "P2"), speed(c, "n2"), number(c, "t2")},
        {force(c, "P3"), speed(c, "n3"), number(c, "t3")},
    };
    double turns = 0.0;

    for (int j = 0; j < 3; j++)
        turns += steps[j].n * steps[j].t;
    const double P_m = ts_mean_bearing_load(steps, 3, TS_LIFE_BALL, NULL);
    const double L   = ts_life_in_turns(ts_case_given(c, "LD", TS_KIND_TIME), turns, NULL);

    ts_case_computed(c, "C", ts_capacity_for_life(P_m, L, 1.0, TS_LIFE_BALL, NULL), TS_KIND_FORCE);
}

static void deep_groove(ts_case *c)
{
    const double F_r = force(c, "Fr"), F_a = force(c, "Fa");
    const double relative = ts_relative_axial_load(number(c, "f0"), F_a, force(c, "C0r"), NULL);
    const ts_load_factors factors = ts_deep_groove_factors(relative, NULL);
    const double          P       = ts_bearing_load(&factors, F_r, F_a, NULL);

    ts_case_computed(c, "rel", relative, TS_KIND_NUMBER);
    ts_case_computed(c, "e", factors.e, TS_KIND_NUMBER);
    ts_case_computed(c, "Y", factors.Y_2, TS_KIND_NUMBER);
    ts_case_computed(c, "P", P, TS_KIND_FORCE);
    ts_case_computed(c, "L10", ts_basic_life(force(c, "Cr"), P, TS_LIFE_BALL, NULL),
                     TS_KIND_NUMBER);
}

static void system_life(ts_case *c)
{
    const double lives[] = {ts_case_given(c, "L1", TS_KIND_TIME),
                            ts_case_given(c, "L2", TS_KIND_TIME)};

    ts_case_computed(c, "Lsys_ball", ts_life_of_set(lives, 2, number(c, "e_ball"), NULL),
                     TS_KIND_TIME);
    ts_case_computed(c, "Lsys_roller", ts_life_of_set(lives, 2, number(c, "e_roller"), NULL),
                     TS_KIND_TIME);
}

static void gearbox_in_the_field(ts_case *c)
{
    const double L_10  = ts_case_given(c, "L10", TS_KIND_TIME);
    const double field = ts_case_given(c, "L10f", TS_KIND_TIME);

    ts_case_computed(c, "L50", ts_life_at_reliability(L_10, 0.5, number(c, "beta"), NULL),
                     TS_KIND_TIME);
    ts_case_computed(c, "L50f", ts_life_at_reliability(field, 0.5, number(c, "betaf"), NULL),
                     TS_KIND_TIME);
    ts_case_computed(c, "ratio", L_10 / field, TS_KIND_NUMBER);
}

/* ---- modified life --------------------------------------------------------------------------- */

static void reliability_factors(ts_case *c)
{
    static const char *const given[] = {"S1", "S2", "S3", "S4", "S5", "S7", "S8"};
    static const char *const names[] = {"a95", "a96", "a97", "a98", "a99", "a999", "a9995"};

    for (int i = 0; i < 7; i++)
        ts_case_computed(c, names[i], ts_reliability_factor(number(c, given[i]), NULL),
                         TS_KIND_NUMBER);
}

/* Just below a joint over at it. */
static double jump(ts_rolling_element element, double kappa, double q)
{
    return ts_life_modification(element, kappa * (1.0 - 1e-12), q, NULL) /
           ts_life_modification(element, kappa, q, NULL);
}

static void modification_joints(ts_case *c)
{
    const double q = number(c, "q");

    ts_case_computed(c, "ball_04", ts_life_modification(TS_ROLLING_BALLS, 0.4, q, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "ball_1", ts_life_modification(TS_ROLLING_BALLS, 1.0, q, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "roller_04", ts_life_modification(TS_ROLLING_ROLLERS, 0.4, q, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "jump_ball_04", jump(TS_ROLLING_BALLS, 0.4, q), TS_KIND_NUMBER);
    ts_case_computed(c, "jump_ball_1", jump(TS_ROLLING_BALLS, 1.0, q), TS_KIND_NUMBER);
    ts_case_computed(c, "jump_roller_04", jump(TS_ROLLING_ROLLERS, 0.4, q), TS_KIND_NUMBER);
}

static void reference_viscosities(ts_case *c)
{
    const double D_pw = ts_case_given(c, "Dpw", TS_KIND_LENGTH), n_3 = speed(c, "n3");

    ts_case_computed(c, "nu1_500", ts_reference_viscosity(speed(c, "n1"), D_pw, NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
    ts_case_computed(c, "nu1_12000", ts_reference_viscosity(speed(c, "n2"), D_pw, NULL),
                     TS_KIND_KINEMATIC_VISCOSITY);
    ts_case_computed(c, "ratio_1000",
                     ts_reference_viscosity(n_3 * (1.0 - 1e-9), D_pw, NULL) /
                         ts_reference_viscosity(n_3, D_pw, NULL),
                     TS_KIND_NUMBER);
}

static void dirt(ts_case *c)
{
    const double D_pw = ts_case_given(c, "Dpw", TS_KIND_LENGTH);

    ts_case_computed(c, "Cu", ts_fatigue_load_limit(TS_ROLLING_BALLS, force(c, "C0"), D_pw, NULL),
                     TS_KIND_FORCE);
    ts_case_computed(
        c, "eC",
        ts_contamination_factor(number(c, "ac"), number(c, "b"), number(c, "kappa"), D_pw, NULL),
        TS_KIND_NUMBER);
}

static const ts_binding bindings[] = {
    {"brg-shigley8-p11-1", scattered_ball},
    {"brg-shigley8-p11-2", scattered_ball},
    {"brg-shigley8-p11-3", roller_chosen},
    {"brg-shigley10-p11-1", scattered_ball},
    {"brg-shigley10-p11-5", ball_and_roller},
    {"brg-shigley10-p11-5-RA", ball_in_use},
    {"brg-shigley8-p11-5-product", reliability_products},
    {"brg-shigley10-p11-6", scattered_roller},
    {"brg-skf-6309-example", basic_life},
    {"brg-6208-basic-life", basic_life},
    {"brg-wentzell-20-1", basic_life},
    {"brg-nu2210-95pct", roller_for_reliability},
    {"brg-jindal-18-2", rotation_factor},
    {"brg-jindal-18-7", capacity_at_reliability},
    {"brg-jindal-18-8", set_of_equals},
    {"brg-jindal-18-9", spectrum},
    {"brg-dgbb-f0-iso", deep_groove},
    {"brg-system-life", system_life},
    {"life-turboprop-field", gearbox_in_the_field},
    {"brg-a1-iso281-2007", reliability_factors},
    {"brg-aiso-continuity", modification_joints},
    {"brg-nu1-iso", reference_viscosities},
    {"brg-cu-ec", dirt},
};
TS_BINDINGS(bindings);
