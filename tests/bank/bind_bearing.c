/* bank/bind_bearing.c: published cases about the inside and the capacity of rolling bearings. */
#include "bank/bank_case.h"
#include "element/bearing_geometry.h"
#include "element/hertz.h"
#include "rating/bearing/dynamic_capacity.h"
#include "rating/bearing/equivalent_load.h"
#include "rating/bearing/least_load.h"
#include "rating/bearing/paired_thrust.h"
#include "rating/bearing/static_capacity.h"

#include <math.h>

/* The cases say f for both races; today's deep groove bearings have 0.52. */
#define GROOVE 0.52

static ts_ball_set read_balls(ts_case *c)
{
    const ts_ball_set set = {
        .i     = ts_case_whole(c, "i"),
        .Z     = ts_case_whole(c, "Z"),
        .D_w   = ts_case_given(c, "Dw", TS_KIND_LENGTH),
        .alpha = ts_case_given(c, "alpha", TS_KIND_ANGLE),
        .b_m   = ts_case_given(c, "bm", TS_KIND_NUMBER),
    };

    return set;
}

static void ball_capacity(ts_case *c)
{
    ts_ball_set  set = read_balls(c);
    const double gamma =
        ts_bearing_gamma(set.D_w, ts_case_given(c, "Dpw", TS_KIND_LENGTH), set.alpha, NULL);

    set.f_c = ts_ball_f_c(gamma, GROOVE, GROOVE, TS_BALL_LEVEL, NULL);
    set.f_c = ts_case_given_or(c, "fc", TS_KIND_NUMBER, set.f_c);
    ts_case_computed(c, "Cr", ts_ball_capacity(&set, NULL), TS_KIND_FORCE);
}

static void ball_factors(ts_case *c)
{
    const double level = ts_case_given(c, "K", TS_KIND_NUMBER);

    for (int k = 1; k <= 5; k++) {
        const char   name[] = {'g', (char)('0' + k), '\0'};
        const double gamma  = ts_case_given(c, name, TS_KIND_NUMBER);

        ts_case_computed_as(c, ts_ball_f_c(gamma, GROOVE, GROOVE, level, NULL), TS_KIND_NUMBER,
                            "fc%d", k);
    }
}

static void roller_factors(ts_case *c)
{
    for (int k = 1; k <= 5; k++) {
        const char   name[] = {'g', (char)('0' + k), '\0'};
        const double gamma  = ts_case_given(c, name, TS_KIND_NUMBER);

        ts_case_computed_as(c, ts_roller_f_c(gamma, NULL), TS_KIND_NUMBER, "fc%d", k);
    }
}

static void pair_capacity(ts_case *c)
{
    const double i = ts_case_whole(c, "i");

    if (!(i >= 1.0))
        ts_case_spoil(c, "must be at least 1", "i");
    ts_case_computed(c, "ball", ts_ball_rows_gain(i, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "roller", ts_roller_rows_gain(i, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "static", ts_static_rows_gain(i, NULL), TS_KIND_NUMBER);
}

static void static_loads(ts_case *c)
{
    const double F_r = ts_case_given(c, "Fr", TS_KIND_FORCE);
    const double F_a = ts_case_given(c, "Fa", TS_KIND_FORCE);
    const double a_1 = ts_case_given(c, "a1", TS_KIND_ANGLE);
    const double a_2 = ts_case_given(c, "a2", TS_KIND_ANGLE);
    const double a_3 = ts_case_given(c, "a3", TS_KIND_ANGLE);

    ts_case_computed(c, "s15", ts_static_load(ts_static_angular_contact(a_1, 1), F_r, F_a, NULL),
                     TS_KIND_FORCE);
    ts_case_computed(c, "s25", ts_static_load(ts_static_angular_contact(a_2, 1), F_r, F_a, NULL),
                     TS_KIND_FORCE);
    ts_case_computed(c, "s40", ts_static_load(ts_static_angular_contact(a_3, 1), F_r, F_a, NULL),
                     TS_KIND_FORCE);
    ts_case_computed(c, "p40", ts_static_load(ts_static_angular_contact(a_3, 2), F_r, F_a, NULL),
                     TS_KIND_FORCE);
}

/* The most loaded roller carries five times its share. */
static void static_rollers(ts_case *c)
{
    const double gamma = ts_case_given(c, "g", TS_KIND_NUMBER);
    const double D_we  = ts_case_given(c, "Dwe", TS_KIND_LENGTH);
    const double L_we  = ts_case_given(c, "Lwe", TS_KIND_LENGTH);
    const double E     = ts_case_given(c, "E", TS_KIND_STRESS);
    const double nu    = ts_case_given(c, "nu", TS_KIND_NUMBER);
    const int    Z     = ts_case_whole(c, "Z");

    if (!(gamma > 0.0 && gamma < 1.0 && Z >= 1 && L_we > 0.0 && E > 1.0 && nu >= 0.0 && nu < 0.5))
        ts_case_spoil(c, "are out of range", "g, Z, Lwe, E or nu");
    const ts_static_rollers rollers = {
        .i = 1, .Z = Z, .D_we = D_we, .L_we = L_we, .D_pw = D_we / gamma};
    const double C_0r = ts_roller_static_capacity(&rollers, NULL);
    const double R    = ts_reduced_radius(D_we / 2.0, (D_we / gamma - D_we) / 2.0, NULL);
    const double E_r  = ts_reduced_modulus(E, nu, E, nu, NULL);

    ts_case_computed(c, "C0r", C_0r, TS_KIND_FORCE);
    ts_case_computed(c, "p0", ts_hertz_line(5.0 * C_0r / Z / L_we, R, E_r, NULL).p_max,
                     TS_KIND_STRESS);
}

/* The load at e by both branches, a hair below and above it. */
static double branch_ratio(double e, double X_2, double Y_1, double Y_2)
{
    const ts_load_factors factors = {.e = e, .X_1 = 1.0, .Y_1 = Y_1, .X_2 = X_2, .Y_2 = Y_2};

    return ts_bearing_load(&factors, 1.0, nextafter(e, INFINITY), NULL) /
           ts_bearing_load(&factors, 1.0, e, NULL);
}

static void branches_meet(ts_case *c)
{
    const double e = ts_case_given(c, "e", TS_KIND_NUMBER);

    if (!(e > 0.0))
        ts_case_spoil(c, "must be above 0", "e");
    ts_case_computed(c, "single_ratio",
                     branch_ratio(e, ts_case_given(c, "X1", TS_KIND_NUMBER), 0.0,
                                  ts_case_given(c, "Y1", TS_KIND_NUMBER)),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "pair_ratio",
                     branch_ratio(e, ts_case_given(c, "Xp", TS_KIND_NUMBER),
                                  ts_case_given(c, "Yp", TS_KIND_NUMBER),
                                  ts_case_given(c, "Ypp", TS_KIND_NUMBER)),
                     TS_KIND_NUMBER);
}

static void axial_rule(ts_case *c)
{
    const double           R_a = ts_case_given(c, "R", TS_KIND_NUMBER);
    const double           K_a = ts_case_given(c, "Ka", TS_KIND_FORCE);
    const ts_paired_thrust first =
        ts_paired_thrust_of(R_a, ts_case_given(c, "FrA", TS_KIND_FORCE),
                            ts_case_given(c, "FrB", TS_KIND_FORCE), K_a, NULL);
    const ts_paired_thrust second =
        ts_paired_thrust_of(R_a, ts_case_given(c, "FrA2", TS_KIND_FORCE),
                            ts_case_given(c, "FrB2", TS_KIND_FORCE), K_a, NULL);

    ts_case_computed(c, "FaA_1a", first.F_aA, TS_KIND_FORCE);
    ts_case_computed(c, "FaB_1a", first.F_aB, TS_KIND_FORCE);
    ts_case_computed(c, "FaA_1c", second.F_aA, TS_KIND_FORCE);
    ts_case_computed(c, "FaB_1c", second.F_aB, TS_KIND_FORCE);
}

static void least_loads(ts_case *c)
{
    const double n   = ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED);
    const double d_m = ts_case_given(c, "dm", TS_KIND_LENGTH);

    ts_case_computed(c, "ball",
                     ts_least_load_ball(ts_case_given(c, "kr", TS_KIND_NUMBER),
                                        ts_case_given(c, "nu", TS_KIND_KINEMATIC_VISCOSITY), n, d_m,
                                        NULL),
                     TS_KIND_FORCE);
    ts_case_computed(c, "roller",
                     ts_least_load_roller(ts_case_given(c, "kr2", TS_KIND_NUMBER), n,
                                          ts_case_given(c, "nr", TS_KIND_ROTATIONAL_SPEED), d_m,
                                          NULL),
                     TS_KIND_FORCE);
}

/* Curvatures are printed in 1/mm, or in 1/in and so on: the unit is the ball's. */
static void curvature_computed(ts_case *c, const char *name, double per_metre)
{
    if (ts_case_expects_in(c, name, "1/mm"))
        ts_case_counted(c, name, per_metre / 1000.0);
}

static void curvatures(ts_case *c)
{
    const double            D_w   = ts_case_given(c, "D", TS_KIND_LENGTH);
    const double            f     = ts_case_given(c, "f", TS_KIND_NUMBER);
    const double            gamma = ts_bearing_gamma(D_w, ts_case_given(c, "dm", TS_KIND_LENGTH),
                                                     ts_case_given(c, "alpha", TS_KIND_ANGLE), NULL);
    const ts_race_curvature inner = ts_inner_race_curvature(D_w, f, gamma, NULL);
    const ts_race_curvature outer = ts_outer_race_curvature(D_w, f, gamma, NULL);

    ts_case_computed(c, "gamma", gamma, TS_KIND_NUMBER);
    curvature_computed(c, "rho_i", inner.sum_rho);
    curvature_computed(c, "rho_o", outer.sum_rho);
    ts_case_computed(c, "F_i", inner.F_rho, TS_KIND_NUMBER);
    ts_case_computed(c, "F_o", outer.F_rho, TS_KIND_NUMBER);
    if (ts_case_expects(c, "Pd"))
        ts_case_computed(c, "Pd",
                         ts_bearing_clearance(ts_case_given(c, "di", TS_KIND_LENGTH),
                                              ts_case_given(c, "do", TS_KIND_LENGTH), D_w, NULL),
                         TS_KIND_LENGTH);
}

static void speed_number(ts_case *c)
{
    const double d_m = ts_bearing_mean_diameter(ts_case_given(c, "d", TS_KIND_LENGTH),
                                                ts_case_given(c, "D", TS_KIND_LENGTH), NULL);

    ts_case_computed(
        c, "ndm",
        ts_bearing_speed_number(ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED), d_m, NULL),
        TS_KIND_NUMBER);
}

static const ts_binding bindings[] = {
    {"brg-6208-dynamic-geometry", ball_capacity},
    {"brg-6206-dynamic-geometry", ball_capacity},
    {"brg-ball-fc-table", ball_factors},
    {"brg-roller-fc-table", roller_factors},
    {"brg-pair-capacity", pair_capacity},
    {"brg-static-xy", static_loads},
    {"brg-iso76-roller-4000", static_rollers},
    {"brg-xy-consistency", branches_meet},
    {"brg-ac-axial-rule", axial_rule},
    {"brg-min-load", least_loads},
    {"brg-harris-209-curvature", curvatures},
    {"brg-harris-218-curvature", curvatures},
    {"brg-ndm", speed_number},
};
TS_BINDINGS(bindings);
