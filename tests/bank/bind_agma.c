/* bank/bind_agma.c: published cases about ratings by AGMA, and the textbooks that follow it. */
#include "bank/bank_case.h"
#include "catalog/agma_allowable.h"
#include "element/cylindrical_pair.h"
#include "element/tooth_force.h"
#include "rating/agma2101/agma2101.h"
#include "rating/agma2101/agma_size.h"
#include "rating/agma2101/agma_strength.h"
#include "rating/agma2101/agma_stress.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double psi  = 6894.757293168361; /* Pa */
static const double inch = 0.0254;            /* m  */

static ts_cylindrical_pair solved(ts_case *c, const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair pair;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(in, &pair, NULL);

    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
        ts_case_spoil(c, ts_pair_fault_says(fault), "the pair:");
    return pair;
}

/* ---- dynamic factor, life, allowable numbers ---------------------------------------------------
 */

static void agma_kv(ts_case *c)
{
    const double          v = ts_case_given(c, "V", TS_KIND_VELOCITY);
    const ts_agma_dynamic curve =
        ts_agma_dynamic_C95(ts_case_given(c, "Q_v", TS_KIND_NUMBER), NULL);

    ts_case_computed(c, "B", curve.B, TS_KIND_NUMBER);
    ts_case_computed(c, "A", curve.C, TS_KIND_NUMBER);
    ts_case_computed(c, "K_v", ts_agma_dynamic_factor(&curve, v, NULL), TS_KIND_NUMBER);
    ts_case_computed(c, "V_max", curve.v_max, TS_KIND_VELOCITY);
}

/* The names carry the cycles as "%.2e" of the printed number. */
static void agma_life(ts_case *c)
{
    const ts_agma_life upper = ts_agma_life_of(TS_AGMA_LINE_CASE_CARBURISED, NAN, false, 0, NULL);
    const ts_agma_life lower = ts_agma_life_of(TS_AGMA_LINE_CASE_CARBURISED, NAN, true, 0, NULL);

    for (size_t i = 0; i < ts_case_length(c, "N_list"); i++) {
        const double n_L = ts_case_given_at(c, "N_list", i, TS_KIND_NUMBER);
        double       printed;
        if (sscanf(ts_case_printed_at(c, "N_list", i), "%lf", &printed) != 1)
            ts_case_spoil(c, "is not a number", "N_list");
        ts_case_computed_as(c, ts_agma_cycle_factor_bending(&upper, n_L, 0, NULL), TS_KIND_NUMBER,
                            "Y_N_%.2e", printed);
        ts_case_computed_as(c, ts_agma_cycle_factor_contact(&upper, n_L, 0, NULL), TS_KIND_NUMBER,
                            "Z_N_%.2e", printed);
        ts_case_computed_as(c, ts_agma_cycle_factor_bending(&lower, n_L, 0, NULL), TS_KIND_NUMBER,
                            "Y_N_critical_%.2e", printed);
        ts_case_computed_as(c, ts_agma_cycle_factor_contact(&lower, n_L, 0, NULL), TS_KIND_NUMBER,
                            "Z_N_critical_%.2e", printed);
    }
}

static void agma_allowables(ts_case *c)
{
    const double HB = ts_case_given(c, "HB", TS_KIND_NUMBER);

    for (int grade = 1; grade <= 2; grade++) {
        const ts_agma_steel steel = {
            .treatment = TS_AGMA_THROUGH_HARDENED, .grade = grade, .flank = HB, .core = NAN};
        ts_agma_allowable allowable;

        if (!ts_agma_allowable_of(&steel, TS_EITHER_GEAR, &allowable, NULL))
            ts_case_spoil(c, "is no hardness", "HB");
        ts_case_computed_as(c, allowable.sigma_FP, TS_KIND_STRESS, "S_t_g%d", grade);
        ts_case_computed_as(c, allowable.sigma_HP, TS_KIND_STRESS, "S_c_g%d", grade);
    }
}

/* ---- geometry factors --------------------------------------------------------------------------
 */

/* Full-depth spur teeth of equal addenda at their standard centre distance. */
static ts_cylindrical_pair table_pair(ts_case *c, size_t row)
{
    ts_cylindrical_pair_input in = {
        .z_1     = (int)ts_case_cell(c, "pairs", row, 0),
        .z_2     = (int)ts_case_cell(c, "pairs", row, 1),
        .m_n     = 1.0,
        .alpha_n = ts_case_given(c, "phi", TS_KIND_ANGLE),
        .beta    = ts_case_given_or(c, "psi", TS_KIND_ANGLE, 0.0),
        .b_1     = 1.0,
        .b_2     = 1.0,
    };

    in.rack = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    return solved(c, &in);
}

static void agma908_I(ts_case *c)
{
    for (size_t i = 0; i < ts_case_length(c, "pairs"); i++) {
        const ts_cylindrical_pair pair = table_pair(c, i);
        ts_agma_mesh              mesh;

        ts_agma_mesh_solve(&pair, &mesh, NULL);
        ts_case_computed_as(c, mesh.Z_I, TS_KIND_NUMBER, "I_%d_%d",
                            ts_case_printed_cell(c, "pairs", i, 0),
                            ts_case_printed_cell(c, "pairs", i, 1));
    }
}

static void agma908_J(ts_case *c)
{
    const bool   tip      = ts_case_gives(c, "load") && strcmp(ts_case_word(c, "load"), "TIP") == 0;
    const double delta_sn = ts_case_given(c, "delta_sn", TS_KIND_NUMBER);
    const ts_agma_tool tool = {
        .h_a0   = ts_case_given(c, "h_a0", TS_KIND_NUMBER),
        .rho_a0 = ts_case_given(c, "rho_a0", TS_KIND_NUMBER),
    };

    for (size_t i = 0; i < ts_case_length(c, "pairs"); i++) {
        const ts_cylindrical_pair geometry = table_pair(c, i);
        ts_agma2101_input         in       = ts_agma2101_input_of(&geometry);
        ts_agma2101_pair          pair;

        in.load_point = tip ? TS_AGMA_LOAD_TIP : TS_AGMA_LOAD_HIGHEST_SINGLE;
        for (int gear = 0; gear < 2; gear++) {
            in.gear[gear].tool     = tool;
            in.gear[gear].delta_sn = delta_sn;
        }
        if (!ts_agma2101_pair_prepare(&in, &pair, NULL))
            ts_case_spoil(c, pair.missing, "the pair:");
        for (int gear = 0; gear < 2; gear++)
            ts_case_computed_as(c, pair.tooth[gear].Y_J, TS_KIND_NUMBER, "J_%s_%d_%d",
                                gear == 0 ? "P" : "G", ts_case_printed_cell(c, "pairs", i, 0),
                                ts_case_printed_cell(c, "pairs", i, 1));
    }
}

/* ---- textbook examples -------------------------------------------------------------------------
 */

/* C_ma as it was read off a chart, or its coefficients in inches. */
static ts_agma_alignment read_alignment(ts_case *c)
{
    if (ts_case_gives(c, "Cma"))
        return (ts_agma_alignment){.A = ts_case_given(c, "Cma", TS_KIND_NUMBER)};
    return (ts_agma_alignment){
        .A = ts_case_given_at(c, "Cma_abc", 0, TS_KIND_NUMBER),
        .B = ts_case_given_at(c, "Cma_abc", 1, TS_KIND_NUMBER) / inch,
        .C = ts_case_given_at(c, "Cma_abc", 2, TS_KIND_NUMBER) / (inch * inch),
    };
}

typedef struct example {
    ts_cylindrical_pair pair;
    double              b, m_G, Z_I, Z_E;
    ts_agma_overload    load;
} example;

/* m_N of spur gears is 1; the textbook shortens the path of helical gears by 5 %. */
static double read_load_share(const ts_cylindrical_pair *pair)
{
    const double p_bn = pair->p_bt * cos(pair->beta_b);

    return pair->in.beta > 0.0 ? ts_agma_load_share_simple(p_bn, pair->g_alpha, NULL) : 1.0;
}

static void read_example(ts_case *c, example *e)
{
    const ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = 1.0 / ts_case_per(c, "P_n", TS_KIND_LENGTH),
        .alpha_n = ts_case_given(c, "phi_n", TS_KIND_ANGLE),
        .beta    = ts_case_given_or(c, "psi", TS_KIND_ANGLE, 0.0),
        .rack    = ts_basic_rack_C,
    };
    const double omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const double P     = ts_case_given(c, "H", TS_KIND_POWER);

    e->pair                   = solved(c, &in);
    e->b                      = ts_case_given(c, "F", TS_KIND_LENGTH);
    e->m_G                    = e->pair.u;
    const double          m_N = read_load_share(&e->pair);
    const double          v   = ts_pitch_line_velocity(omega, e->pair.d_1, NULL);
    const ts_agma_dynamic curve =
        ts_agma_dynamic_C95(ts_case_given(c, "Q_v", TS_KIND_NUMBER), NULL);
    const ts_agma_mounting  mounting = {.alignment = read_alignment(c)};
    const ts_agma_face_load face     = ts_agma_face_load_of(e->b, e->pair.d_1, &mounting, NULL);

    e->Z_I  = ts_agma_pitch_point_factor(e->pair.alpha_t, e->m_G, m_N, false, NULL);
    e->Z_E  = ts_case_given(c, "C_p", TS_KIND_NUMBER) * sqrt(psi);
    e->load = (ts_agma_overload){
        .F_t = ts_tangential_force(ts_torque_of_power(P, omega, NULL), e->pair.d_1, NULL),
        .K_o = ts_case_given_or(c, "K_o", TS_KIND_NUMBER, 1.0),
        .K_v = ts_agma_dynamic_factor(&curve, v, NULL),
        .K_H = face.K_H,
    };
    ts_case_computed(c, "V", v, TS_KIND_VELOCITY);
    ts_case_computed(c, "W_t", e->load.F_t, TS_KIND_FORCE);
    ts_case_computed(c, "A", curve.C, TS_KIND_NUMBER);
    ts_case_computed(c, "B", curve.B, TS_KIND_NUMBER);
    ts_case_computed(c, "K_v", e->load.K_v, TS_KIND_NUMBER);
    ts_case_computed(c, "C_pf", face.K_Hpf, TS_KIND_NUMBER);
    ts_case_computed(c, "C_ma", face.K_Hma, TS_KIND_NUMBER);
    ts_case_computed(c, "K_m", face.K_H, TS_KIND_NUMBER);
    ts_case_computed(c, "m_N", m_N, TS_KIND_NUMBER);
    ts_case_computed(c, "I", e->Z_I, TS_KIND_NUMBER);
}

static void rate_example_gear(ts_case *c, const example *e, int gear)
{
    const char        *J[] = {"J1", "J2"}, *Y[] = {"Y1", "Y2"};
    const char        *S_t[] = {"S_t1", "S_t2"}, *S_c[] = {"S_c1", "S_c2"};
    const double       Y_Z  = ts_case_given(c, "K_R", TS_KIND_NUMBER);
    const double       A_W  = ts_case_given_or(c, "A_H", TS_KIND_NUMBER, 0.0);
    const double       n_L  = ts_case_given(c, "N", TS_KIND_NUMBER) / (gear == 0 ? 1.0 : e->m_G);
    const double       form = ts_case_given(c, Y[gear], TS_KIND_NUMBER);
    const double       K_s  = ts_agma_size_factor_beam(e->b, e->pair.m_t, form, gear, NULL);
    const double       C_H  = ts_agma_hardness_ratio(A_W, e->m_G, NULL);
    const ts_agma_life life = ts_agma_life_of(TS_AGMA_LINE_BY_HARDNESS, NAN, false, gear, NULL);
    const ts_agma_contact_input        contact = {K_s, e->Z_E, 1.0, e->pair.d_1, e->b, e->Z_I};
    const ts_agma_bending_stress_input bending = {K_s, 1.0, e->pair.m_t, e->b,
                                                  ts_case_given(c, J[gear], TS_KIND_NUMBER)};
    const double                       Z_N   = ts_agma_cycle_factor_contact(&life, n_L, gear, NULL);
    const double                       Y_N   = ts_agma_cycle_factor_bending(&life, n_L, gear, NULL);
    const ts_agma_contact_strength     flank = {ts_case_given(c, S_c[gear], TS_KIND_STRESS), Z_N,
                                            gear == 0 ? 1.0 : C_H, 1.0, Y_Z};
    const ts_agma_bending_strength root    = {ts_case_given(c, S_t[gear], TS_KIND_STRESS), Y_N, 1.0,
                                              1.0, Y_Z};
    const double                   sigma_H = ts_agma_contact_stress(&e->load, &contact, gear, NULL);
    const double                   sigma_F = ts_agma_bending_stress(&e->load, &bending, gear, NULL);

    ts_case_computed_as(c, K_s, TS_KIND_NUMBER, "K_s%d", gear + 1);
    ts_case_computed_as(c, Y_N, TS_KIND_NUMBER, "Y_N%d", gear + 1);
    ts_case_computed_as(c, Z_N, TS_KIND_NUMBER, "Z_N%d", gear + 1);
    ts_case_computed_as(c, sigma_F, TS_KIND_STRESS, "sigma_%d", gear + 1);
    ts_case_computed_as(c, sigma_H, TS_KIND_STRESS, "sigma_c%d", gear + 1);
    ts_case_computed_as(c, ts_agma_safety_bending(sigma_F, &root, gear, NULL), TS_KIND_NUMBER,
                        "S_F%d", gear + 1);
    ts_case_computed_as(c, ts_agma_safety_contact(sigma_H, &flank, gear, NULL), TS_KIND_NUMBER,
                        "S_H%d", gear + 1);
    ts_case_computed(c, "C_H", C_H, TS_KIND_NUMBER);
}

static void shigley_pair(ts_case *c)
{
    example e;

    read_example(c, &e);
    for (int gear = 0; gear < 2; gear++)
        rate_example_gear(c, &e, gear);
}

static void shigley_lewis(ts_case *c)
{
    const double m     = 1.0 / ts_case_per(c, "P", TS_KIND_LENGTH);
    const double omega = ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED);
    const double b     = ts_case_given(c, "F", TS_KIND_LENGTH);
    const double Y     = ts_case_given(c, "Y", TS_KIND_NUMBER);
    const double sigma = ts_case_given(c, "sigma", TS_KIND_STRESS);
    const double v     = ts_pitch_line_velocity(omega, ts_case_whole(c, "z") * m, NULL);
    const double K_v   = ts_agma_dynamic_barth(v, NULL);
    const double F_t   = ts_agma_lewis_load(sigma, b, m, Y, K_v, NULL);

    ts_case_computed(c, "V", v, TS_KIND_VELOCITY);
    ts_case_computed(c, "K_v", K_v, TS_KIND_NUMBER);
    ts_case_computed(c, "W_t", F_t, TS_KIND_FORCE);
    ts_case_computed(c, "H", F_t * v, TS_KIND_POWER);
}

/* The source divides by a K_v <= 1 and multiplies an idler's stress by 1.42, its rounding of 1/0.7:
 * its own statements, and so inputs here. */
static void norton_idler(ts_case *c)
{
    const double          m     = 1.0 / ts_case_per(c, "P", TS_KIND_LENGTH);
    const double          d     = ts_case_whole(c, "z1") * m;
    const double          omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const double          T = ts_torque_of_power(ts_case_given(c, "H", TS_KIND_POWER), omega, NULL);
    const double          phi = ts_case_given(c, "phi", TS_KIND_ANGLE);
    const double          F_t = ts_tangential_force(T, d, NULL);
    const double          b   = ts_case_given(c, "F", TS_KIND_LENGTH);
    const double          K_m = ts_case_given(c, "K_m", TS_KIND_NUMBER);
    const double          v   = ts_pitch_line_velocity(omega, d, NULL);
    const ts_agma_dynamic curve =
        ts_agma_dynamic_C95(ts_case_given(c, "Q_v", TS_KIND_NUMBER), NULL);
    const ts_agma_overload load    = {F_t, 1.0, 1.0 / ts_case_given(c, "K_v_used", TS_KIND_NUMBER),
                                      K_m};
    const char            *names[] = {"sigma_pinion", "sigma_idler", "sigma_gear"};
    const char            *J[]     = {"J1", "J2", "J3"};
    const double           printed[] = {1.0, 1.42, 1.0};

    ts_case_computed(c, "T1", T, TS_KIND_TORQUE);
    ts_case_computed(c, "W_t", F_t, TS_KIND_FORCE);
    ts_case_computed(c, "W_r", F_t * tan(phi), TS_KIND_FORCE);
    ts_case_computed(c, "W", F_t / cos(phi), TS_KIND_FORCE);
    ts_case_computed(c, "K_v_old", 1.0 / ts_agma_dynamic_factor(&curve, v, NULL), TS_KIND_NUMBER);
    for (int i = 0; i < 3; i++) {
        if (!ts_case_gives(c, J[i]))
            continue;
        const ts_agma_bending_stress_input root = {1.0, 1.0, m, b,
                                                   ts_case_given(c, J[i], TS_KIND_NUMBER)};
        ts_case_computed(c, names[i], printed[i] * ts_agma_bending_stress(&load, &root, 0, NULL),
                         TS_KIND_STRESS);
    }
}

static const ts_binding bindings[] = {
    {"agma_kv", agma_kv},
    {"agma_life", agma_life},
    {"agma_allowables", agma_allowables},
    {"agma908_I", agma908_I},
    {"agma908_J", agma908_J},
    {"shigley_pair", shigley_pair},
    {"shigley_lewis", shigley_lewis},
    {"norton_idler", norton_idler},
};
TS_BINDINGS(bindings);
