/* bank/bind_scuffing.c: published cases about hot flanks. */
#include "bank/bank_case.h"
#include "element/cylindrical_contact.h"
#include "element/hertz.h"
#include "rating/scuffing/flash_temperature.h"
#include "rating/scuffing/integral_temperature.h"
#include "rating/scuffing/scoring_index.h"

#include <math.h>

/* E in MPa and B_M in N/(mm s^1/2 K); X_M in the unit of the standard, in which 1000 is 1 in SI. */
static void x_m(ts_case *c)
{
    const double E   = ts_case_given(c, "E", TS_KIND_STRESS);
    const double nu  = ts_case_given(c, "nu", TS_KIND_NUMBER);
    const double B_M = 1000.0 * ts_case_given(c, "B_M", TS_KIND_NUMBER);

    if (!(E > 0.0 && nu >= 0.0 && nu < 0.5 && B_M > 0.0))
        ts_case_spoil(c, "are out of range", "E, nu or B_M");
    const double E_r = ts_reduced_modulus(E, nu, E, nu, NULL);
    ts_case_computed(c, "E_r", E_r, TS_KIND_STRESS);
    ts_case_computed(c, "X_M", 1000.0 * ts_thermoelastic_factor(E_r, B_M, NULL), TS_KIND_NUMBER);
}

static ts_cylindrical_pair read_pair(ts_case *c)
{
    ts_cylindrical_pair_input in = {
        .z_1     = ts_case_whole(c, "z1"),
        .z_2     = ts_case_whole(c, "z2"),
        .m_n     = ts_case_given(c, "m", TS_KIND_LENGTH),
        .alpha_n = ts_case_given(c, "alpha", TS_KIND_ANGLE),
        .a_w     = ts_case_given(c, "a_w", TS_KIND_LENGTH),
        .tip     = TS_TIP_DIAMETERS,
        .d_a1    = ts_case_given(c, "d_a1", TS_KIND_LENGTH),
        .d_a2    = ts_case_given(c, "d_a2", TS_KIND_LENGTH),
    };
    ts_cylindrical_pair pair;

    in.b_1 = in.b_2 = ts_case_given(c, "b", TS_KIND_LENGTH);
    in.rack         = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    if (ts_cylindrical_pair_solve(&in, &pair, NULL) > TS_PAIR_POINTED || !(in.b_1 > 1e-9))
        ts_case_spoil(c, "does not mesh", "the pair");
    return pair;
}

/* Sliding, pressure and flash temperature at the ends of double and of single contact.  The case
 * gives the shares there, and B_M in N/(m s^1/2 K). */
static void flash_points(ts_case *c)
{
    const ts_cylindrical_pair pair   = read_pair(c);
    const ts_flash_body       body   = {.E   = ts_case_given(c, "E", TS_KIND_STRESS),
                                        .nu  = ts_case_given(c, "nu", TS_KIND_NUMBER),
                                        .B_M = ts_case_given(c, "B_M", TS_KIND_NUMBER)};
    const ts_flash_body       both[] = {body, body};
    const double              T_1    = ts_case_given(c, "T1", TS_KIND_TORQUE);
    const ts_flash_load       load   = {
                .w_n     = 2.0 * T_1 / (pair.d_b1 * pair.in.b_1),
                .omega_1 = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED),
                .mu_m    = ts_case_given(c, "mu", TS_KIND_NUMBER),
    };
    ts_flash_prepared prepared;
    ts_flash          flash;

    if (!(body.E > 1e6 && body.nu >= 0.0 && body.nu < 0.5 && body.B_M > 1e-3))
        ts_case_spoil(c, "are out of range", "E, nu or B_M");
    if (!(T_1 > 1e-9 && load.omega_1 > 1e-9 && load.mu_m >= 0.0))
        ts_case_spoil(c, "are out of range", "torque, speed or friction");
    ts_flash_prepare(&pair, both, 5, 1, &prepared, NULL);
    if (prepared.path.missing != NULL)
        ts_case_spoil(c, "is missing", prepared.path.missing);
    const ts_flank_path *path    = &prepared.path;
    const int            at[]    = {path->A, path->B, path->D, path->E};
    const char *const    name[]  = {"A", "B", "D", "E"};
    const char *const    share[] = {"X_A", "X_B", "X_D", "X_E"};

    for (int i = 0; i < 4; i++) {
        const double X = ts_case_given(c, share[i], TS_KIND_NUMBER);

        if (!(X >= 0.0 && X <= 1e3))
            ts_case_spoil(c, "is out of range", share[i]);
        prepared.share.bare[at[i]] = X < 1e-9 ? 0.0 : X;
    }
    ts_flash_along(&prepared, &load, &flash, NULL);
    for (int i = 0; i < 4; i++) {
        const double g   = path->rho_1[at[i]] - pair.rho_C1;
        const double v_g = ts_sliding_speed(load.omega_1, pair.u, g, NULL);

        ts_case_computed_as(c, fabs(v_g), TS_KIND_VELOCITY, "v_slide_%s", name[i]);
        ts_case_computed_as(c, flash.p_H[at[i]], TS_KIND_STRESS, "p_H_%s", name[i]);
        ts_case_computed_as(c, flash.theta_fl[at[i]], TS_KIND_TEMPERATURE_DIFFERENCE, "theta_%s",
                            name[i]);
    }
}

/* Roughness in microinches. */
static void agma217(ts_case *c)
{
    const ts_unit         *inch  = ts_unit_named(TS_TEXT("in"), TS_KIND_LENGTH);
    const double           force = ts_case_given(c, "W_te", TS_KIND_FORCE);
    const double           width = ts_case_given(c, "F_e", TS_KIND_LENGTH);
    const ts_scoring_input in    = {.rho_1   = ts_case_given(c, "rho_P", TS_KIND_LENGTH),
                                    .rho_2   = ts_case_given(c, "rho_G", TS_KIND_LENGTH),
                                    .z_1     = ts_case_whole(c, "z1"),
                                    .z_2     = ts_case_whole(c, "z2"),
                                    .alpha_t = ts_case_given(c, "phi", TS_KIND_ANGLE),
                                    .alpha_n = ts_case_given(c, "phi", TS_KIND_ANGLE),
                                    .m_n     = 1.0 / ts_case_per(c, "P_d", TS_KIND_LENGTH)};
    const double           micro = ts_case_given(c, "s_rms", TS_KIND_NUMBER);
    const ts_scoring_load  load  = {.w_te    = force / width,
                                    .omega_1 = ts_case_given(c, "n_P", TS_KIND_ROTATIONAL_SPEED),
                                    .s_rms   = ts_to_si(1e-6 * micro, inch),
                                    .T_i     = ts_case_given(c, "T_i", TS_KIND_TEMPERATURE),
                                    .m_n     = in.m_n};

    if (!(in.rho_1 > 0.0 && in.rho_2 > 0.0 && in.z_1 > 0.0 && in.z_2 > 0.0 && width > 0.0))
        ts_case_spoil(c, "must be above 0", "curvatures, teeth or width");
    if (!(fabs(in.alpha_t) < 1.5 && force >= 0.0 && load.omega_1 >= 0.0))
        ts_case_spoil(c, "are out of range", "angle, force or speed");
    const double Z_t = ts_scoring_geometry_factor(&in, NULL);
    ts_case_computed(c, "Z_t", Z_t, TS_KIND_NUMBER);
    ts_case_computed(c, "T_f", ts_scoring_index(Z_t, &load, NULL), TS_KIND_TEMPERATURE);
}

static const ts_binding bindings[] = {
    {"x_m", x_m},
    {"flash_points", flash_points},
    {"agma217", agma217},
};
TS_BINDINGS(bindings);
