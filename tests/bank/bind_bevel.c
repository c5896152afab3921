/* bank/bind_bevel.c: published cases about bevel gears: cones, blanks and forces. */
#include "bank/bank_case.h"
#include "element/bevel_depth.h"
#include "element/bevel_force.h"
#include "element/bevel_pair.h"
#include "element/tooth_force.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* Pressure and spiral angle do not enter the cones; cases leave them out. */
static ts_bevel_pair read_pair(ts_case *c)
{
    const ts_bevel_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_et    = ts_case_gives(c, "P") ? 1.0 / ts_case_per(c, "P", TS_KIND_LENGTH)
                                         : ts_case_given(c, "m", TS_KIND_LENGTH),
        .Sigma   = ts_case_given(c, "Sigma", TS_KIND_ANGLE),
        .alpha_n = ts_case_given_or(c, "alpha_n", TS_KIND_ANGLE, pi / 9.0),
        .beta_m  = ts_case_given_or(c, "beta_m", TS_KIND_ANGLE, 0.0),
        .b       = ts_case_given_or(c, "b", TS_KIND_LENGTH, 0.0),
    };
    ts_bevel_pair        pair;
    const ts_bevel_fault fault = ts_bevel_pair_solve(&in, &pair, NULL);

    if (fault != TS_BEVEL_FINE)
        ts_case_spoil(c, ts_bevel_fault_says(fault), "the pair:");
    return pair;
}

static void give_cones(ts_case *c, const ts_bevel_pair *pair)
{
    ts_case_computed(c, "delta_1", pair->delta_1, TS_KIND_ANGLE);
    ts_case_computed(c, "delta_2", pair->delta_2, TS_KIND_ANGLE);
    ts_case_computed(c, "R_e", pair->R_e, TS_KIND_LENGTH);
    ts_case_computed(c, "R_m", pair->R_m, TS_KIND_LENGTH);
    ts_case_computed(c, "R_m_mm", pair->R_m, TS_KIND_LENGTH);
    ts_case_computed(c, "m_et", pair->in.m_et, TS_KIND_LENGTH);
    ts_case_computed(c, "m_mn", pair->m_mn, TS_KIND_LENGTH);
    ts_case_computed(c, "z_v1", pair->z_v1, TS_KIND_NUMBER);
    ts_case_computed(c, "z_v2", pair->z_v2, TS_KIND_NUMBER);
}

static void give_blank(ts_case *c, const ts_bevel_depth *depth)
{
    const struct {
        const char *name;
        double      value;
        ts_kind     kind;
    } results[] = {
        {"h_a1", depth->h_a1, TS_KIND_LENGTH},
        {"h_a2", depth->h_a2, TS_KIND_LENGTH},
        {"h_f1", depth->h_f1, TS_KIND_LENGTH},
        {"h_f2", depth->h_f2, TS_KIND_LENGTH},
        {"theta_a1", depth->theta_a1, TS_KIND_ANGLE},
        {"theta_a2", depth->theta_a2, TS_KIND_ANGLE},
        {"theta_f1", depth->theta_f1, TS_KIND_ANGLE},
        {"theta_f2", depth->theta_f2, TS_KIND_ANGLE},
        {"delta_a1", depth->delta_a1, TS_KIND_ANGLE},
        {"delta_a2", depth->delta_a2, TS_KIND_ANGLE},
        {"delta_f1", depth->delta_f1, TS_KIND_ANGLE},
        {"delta_f2", depth->delta_f2, TS_KIND_ANGLE},
        {"face_angle_1", depth->delta_a1, TS_KIND_ANGLE},
        {"face_angle_2", depth->delta_a2, TS_KIND_ANGLE},
        {"root_angle_1", depth->delta_f1, TS_KIND_ANGLE},
        {"root_angle_2", depth->delta_f2, TS_KIND_ANGLE},
        {"d_ae1", depth->d_ae1, TS_KIND_LENGTH},
        {"d_ae2", depth->d_ae2, TS_KIND_LENGTH},
        {"X1", depth->X_1, TS_KIND_LENGTH},
        {"X2", depth->X_2, TS_KIND_LENGTH},
        {"X_b1", depth->X_b1, TS_KIND_LENGTH},
        {"X_b2", depth->X_b2, TS_KIND_LENGTH},
        {"d_i1", depth->d_ai1, TS_KIND_LENGTH},
        {"d_i2", depth->d_ai2, TS_KIND_LENGTH},
    };

    for (size_t i = 0; i < sizeof results / sizeof results[0]; i++)
        ts_case_computed(c, results[i].name, results[i].value, results[i].kind);
}

static void bevel_cone(ts_case *c)
{
    ts_bevel_depth depth;

    const ts_bevel_pair pair = read_pair(c);
    give_cones(c, &pair);
    if (!ts_case_gives(c, "h_a"))
        return;
    const double           h_a     = ts_case_given(c, "h_a", TS_KIND_LENGTH);
    const double           h_f     = ts_case_given(c, "h_f", TS_KIND_LENGTH);
    const ts_bevel_heights heights = {h_a, h_a, h_f, h_f};
    ts_bevel_depth_solve(&pair, TS_BEVEL_HEIGHTS_GIVEN, &heights, &depth, NULL);
    give_blank(c, &depth);
}

static void bevel_gleason(ts_case *c)
{
    static const struct {
        const char         *word;
        ts_bevel_depth_rule rule;
    } kinds[] = {
        {"straight", TS_BEVEL_LONG_ADDENDUM},
        {"spiral", TS_BEVEL_LONG_SPIRAL},
        {"standard", TS_BEVEL_EQUAL_ADDENDA},
    };
    const char    *kind = ts_case_word(c, "kind");
    ts_bevel_depth depth;

    const ts_bevel_pair pair = read_pair(c);
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        if (strcmp(kind, kinds[i].word) != 0)
            continue;
        ts_bevel_depth_solve(&pair, kinds[i].rule, NULL, &depth, NULL);
        give_cones(c, &pair);
        give_blank(c, &depth);
        return;
    }
    ts_case_spoil(c, "is not straight, spiral or standard", "kind");
}

/* ---- forces ---------------------------------------------------------------------------------- */

/* Pinion and gear on axes that cross at a right angle unless the case says otherwise; sense +1
 * loads the pinion's concave flank. */
static void bevel_forces(ts_case *c)
{
    const double F_t     = ts_case_given(c, "F_t", TS_KIND_FORCE);
    const double alpha_n = ts_case_given(c, "alpha_n", TS_KIND_ANGLE);
    const double beta_m  = ts_case_given(c, "beta_m", TS_KIND_ANGLE);
    const double delta_1 = ts_case_given(c, "delta_1", TS_KIND_ANGLE);
    const double Sigma   = ts_case_given_or(c, "Sigma", TS_KIND_ANGLE, pi / 2.0);
    const bool   concave = ts_case_sign(c, "sense") > 0;

    const ts_bevel_force first = ts_bevel_forces(F_t, alpha_n, beta_m, delta_1, concave, NULL);
    const ts_bevel_force second =
        ts_bevel_forces(F_t, alpha_n, beta_m, Sigma - delta_1, !concave, NULL);
    ts_case_computed(c, "F_a1", first.F_a, TS_KIND_FORCE);
    ts_case_computed(c, "F_r1", first.F_r, TS_KIND_FORCE);
    ts_case_computed(c, "F_a2", second.F_a, TS_KIND_FORCE);
    ts_case_computed(c, "F_r2", second.F_r, TS_KIND_FORCE);
}

/* Forces over the tangential force, named Fa_u1.5_b35_concave and the like. */
static void give_ratio(ts_case *c, double alpha_n, size_t i, size_t j)
{
    const double u       = ts_case_given_at(c, "u_list", i, TS_KIND_NUMBER);
    const double beta_m  = ts_case_given_at(c, "beta_list", j, TS_KIND_ANGLE);
    const double delta_1 = ts_bevel_pitch_angle_1(pi / 2.0, u, NULL);
    char         place[64];

    snprintf(place, sizeof place, "u%s", ts_case_printed_at(c, "u_list", i));
    const size_t length = strlen(place);
    snprintf(place + length, sizeof place - length, "_b%s", ts_case_printed_at(c, "beta_list", j));
    for (int concave = 0; concave <= 1; concave++) {
        const ts_bevel_force force =
            ts_bevel_forces(1.0, alpha_n, beta_m, delta_1, concave == 1, NULL);
        const char *flank = concave == 1 ? "concave" : "convex";

        ts_case_computed_as(c, force.F_a, TS_KIND_NUMBER, "Fa_%s_%s", place, flank);
        ts_case_computed_as(c, force.F_r, TS_KIND_NUMBER, "Fr_%s_%s", place, flank);
    }
}

static void bevel_force_table(ts_case *c)
{
    const double alpha_n = ts_case_given(c, "alpha_n", TS_KIND_ANGLE);

    for (size_t i = 0; i < ts_case_length(c, "u_list"); i++)
        for (size_t j = 0; j < ts_case_length(c, "beta_list"); j++)
            give_ratio(c, alpha_n, i, j);
}

static void bevel_force_power(ts_case *c)
{
    const double P     = ts_case_given(c, "P", TS_KIND_POWER);
    const double omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const double i     = ts_case_given(c, "i", TS_KIND_NUMBER); /* output speed over input speed */
    const double d_e1  = 2.0 * ts_case_given(c, "r_e1", TS_KIND_LENGTH);
    const double b     = ts_case_given(c, "b", TS_KIND_LENGTH);
    const double alpha = ts_case_given(c, "alpha", TS_KIND_ANGLE);

    const double         delta_1 = ts_bevel_pitch_angle_1(pi / 2.0, 1.0 / i, NULL);
    const double         d_m1    = ts_bevel_mean_diameter_1(d_e1, b, delta_1, NULL);
    const double         F_t = ts_tangential_force(ts_torque_of_power(P, omega, NULL), d_m1, NULL);
    const ts_bevel_force force = ts_bevel_forces(F_t, alpha, 0.0, delta_1, false, NULL);
    ts_case_computed(c, "F_t", F_t, TS_KIND_FORCE);
    ts_case_computed(c, "F_s", hypot(force.F_a, force.F_r), TS_KIND_FORCE);
    ts_case_computed(c, "F_r1", force.F_r, TS_KIND_FORCE);
    ts_case_computed(c, "F_a1", force.F_a, TS_KIND_FORCE);
}

static void bevel_force_us(ts_case *c)
{
    const double d_m   = 2.0 * ts_case_given(c, "r_mean", TS_KIND_LENGTH);
    const double omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const double P     = ts_case_given(c, "H", TS_KIND_POWER);
    const double alpha = ts_case_given(c, "phi", TS_KIND_ANGLE);
    const double delta = ts_case_given(c, "gamma", TS_KIND_ANGLE);

    const double         F_t   = ts_tangential_force(ts_torque_of_power(P, omega, NULL), d_m, NULL);
    const ts_bevel_force force = ts_bevel_forces(F_t, alpha, 0.0, delta, false, NULL);
    ts_case_computed(c, "V", ts_pitch_line_velocity(omega, d_m, NULL), TS_KIND_VELOCITY);
    ts_case_computed(c, "W_t", F_t, TS_KIND_FORCE);
    ts_case_computed(c, "W_r1", force.F_r, TS_KIND_FORCE);
    ts_case_computed(c, "W_a1", force.F_a, TS_KIND_FORCE);
}

/* The source takes the tangential force at the outer diameter, and its torque from the rounded
 * T = 63000*hp/rpm lbf.in: both are its own statements, and so inputs here. */
static void wentzell_bevel(ts_case *c)
{
    const ts_unit *torque = ts_unit_named(TS_TEXT("lbf.in"), TS_KIND_TORQUE);
    const ts_unit *power  = ts_unit_named(TS_TEXT("hp"), TS_KIND_POWER);
    const ts_unit *speed  = ts_unit_named(TS_TEXT("rpm"), TS_KIND_ROTATIONAL_SPEED);
    const double   hp     = ts_from_si(ts_case_given(c, "H", TS_KIND_POWER), power);
    const double   rpm    = ts_from_si(ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED), speed);
    const double   T      = ts_to_si(63000.0 * hp / rpm, torque);
    const double   d_e1   = ts_case_whole(c, "z1") / ts_case_per(c, "P", TS_KIND_LENGTH);
    const double   alpha  = ts_case_given(c, "alpha", TS_KIND_ANGLE);

    if (!(d_e1 > 0.0 && rpm > 0.0))
        ts_case_spoil(c, "must be above 0", "teeth and speed");
    const double F_t = ts_tangential_force(T, d_e1, NULL);

    ts_case_computed(c, "F_t", F_t, TS_KIND_FORCE);
    for (int gear = 1; gear <= 2; gear++) {
        const double delta = ts_case_given(c, gear == 1 ? "delta_1" : "delta_2", TS_KIND_ANGLE);
        const ts_bevel_force force = ts_bevel_forces(F_t, alpha, 0.0, delta, false, NULL);

        ts_case_computed_as(c, force.F_r, TS_KIND_FORCE, "F_r%d", gear);
        ts_case_computed_as(c, force.F_a, TS_KIND_FORCE, "F_a%d", gear);
    }
}

/* +1 where the spiral adds to the thrust away from the apex. */
static double spiral_thrust_sign(double beta_m, int hand, int turns, bool drives)
{
    const bool           concave  = ts_bevel_concave_loaded(hand, turns, drives);
    const ts_bevel_force spiral   = ts_bevel_forces(1.0, pi / 9.0, beta_m, pi / 4.0, concave, NULL);
    const ts_bevel_force straight = ts_bevel_forces(1.0, pi / 9.0, 0.0, pi / 4.0, concave, NULL);

    /* Along the cone, so that the part which presses into it drops out. */
    const double along = spiral.F_a - spiral.F_r, even = straight.F_a - straight.F_r;
    return along > even ? 1.0 : -1.0;
}

static void spiral_sense(ts_case *c)
{
    const double beta_m = ts_case_given(c, "beta_m", TS_KIND_ANGLE);

    for (int hand = -1; hand <= 1; hand += 2)
        for (int turns = -1; turns <= 1; turns += 2)
            for (int drives = 0; drives <= 1; drives++) {
                const double sign = spiral_thrust_sign(beta_m, hand, turns, drives == 1);

                ts_case_computed_as(c, sign, TS_KIND_NUMBER, "%s_%s_%s", hand < 0 ? "LH" : "RH",
                                    turns < 0 ? "CW" : "CCW", drives == 1 ? "driver" : "driven");
            }
}

static const ts_binding bindings[] = {
    {"bevel_cone", bevel_cone},
    {"bevel_gleason", bevel_gleason},
    {"bevel_forces", bevel_forces},
    {"bevel_force_table", bevel_force_table},
    {"bevel_force_power", bevel_force_power},
    {"bevel_force_us", bevel_force_us},
    {"wentzell_bevel", wentzell_bevel},
    {"spiral_sense", spiral_sense},
};
TS_BINDINGS(bindings);
