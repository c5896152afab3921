/* bank/bind_neck.c: published cases about shear necks, and about pads and their bolts. */
#include "bank/bank_case.h"
#include "element/pad_joint.h"
#include "element/shear_neck.h"

static void neck(ts_case *c)
{
    const double          d     = ts_case_given(c, "d", TS_KIND_LENGTH);
    const double          tau_u = ts_neck_shear_strength(ts_case_given(c, "Ftu", TS_KIND_STRESS),
                                                         ts_case_given(c, "ratio", TS_KIND_NUMBER), NULL);
    const ts_neck_torques torques =
        ts_neck_torques_of(tau_u, d, 0.0, ts_case_given(c, "Kt", TS_KIND_NUMBER), NULL);

    ts_case_computed(c, "T_el", torques.T_el, TS_KIND_TORQUE);
    ts_case_computed(c, "T_pl", torques.T_pl, TS_KIND_TORQUE);
    ts_case_computed(c, "T_brittle", torques.T_brittle, TS_KIND_TORQUE);
    /* The case means an error of a twentieth of a millimetre. */
    ts_case_computed(c, "dT_005", ts_neck_diameter_share(0.05e-3, d, NULL), TS_KIND_NUMBER);
}

static void scatter(ts_case *c)
{
    const ts_neck_scatter s = ts_neck_scatter_of(
        ts_case_given(c, "T", TS_KIND_TORQUE), ts_case_given(c, "cov_F", TS_KIND_NUMBER),
        ts_case_given(c, "cov_ratio", TS_KIND_NUMBER), ts_case_given(c, "d", TS_KIND_LENGTH),
        ts_case_given(c, "tol", TS_KIND_LENGTH), NULL);

    ts_case_computed(c, "cov", s.cov, TS_KIND_NUMBER);
    ts_case_computed(c, "T_A", s.T_A, TS_KIND_TORQUE);
    ts_case_computed(c, "T_B", s.T_B, TS_KIND_TORQUE);
    ts_case_computed(c, "T_hi", s.T_hi, TS_KIND_TORQUE);
}

static void shear_ultimate(ts_case *c)
{
    const double ratio = ts_case_given(c, "r", TS_KIND_NUMBER);

    for (int i = 1; i <= 4; i++) {
        const char name[] = {'F', (char)('0' + i), '\0'};

        ts_case_computed_as(
            c, ts_neck_shear_strength(ts_case_given(c, name, TS_KIND_STRESS), ratio, NULL),
            TS_KIND_STRESS, "S%d", i);
    }
}

static void tightened(ts_case *c)
{
    const double A_s = ts_case_given(c, "As", TS_KIND_AREA);
    const double F_i = ts_bolt_preload(0.85, A_s, ts_case_given(c, "Sp", TS_KIND_STRESS), NULL);

    ts_case_computed(c, "T",
                     ts_bolt_torque(ts_case_given(c, "K", TS_KIND_NUMBER),
                                    ts_case_given(c, "D", TS_KIND_LENGTH), F_i, NULL),
                     TS_KIND_TORQUE);
    ts_case_computed(c, "angle",
                     ts_bolt_turn(F_i, ts_case_given(c, "L", TS_KIND_LENGTH), A_s,
                                  ts_case_given(c, "E", TS_KIND_STRESS),
                                  ts_case_given(c, "pitch", TS_KIND_LENGTH), NULL),
                     TS_KIND_ANGLE);
}

static void overhang(ts_case *c)
{
    const double W   = ts_case_given(c, "W", TS_KIND_FORCE),
                 x   = ts_case_given(c, "x", TS_KIND_LENGTH);
    const double M_g = ts_overhang_moment(W, x, ts_case_given(c, "ng", TS_KIND_NUMBER), NULL);

    ts_case_computed(c, "M", ts_overhang_moment(W, x, 1.0, NULL), TS_KIND_TORQUE);
    ts_case_computed(c, "Mg", M_g, TS_KIND_TORQUE);
    ts_case_computed(c, "F",
                     ts_overhang_bolt_load(M_g, ts_case_whole(c, "Nb"),
                                           ts_case_given(c, "BC", TS_KIND_LENGTH), NULL),
                     TS_KIND_FORCE);
}

static void pad_power(ts_case *c)
{
    const double n_pad = ts_pad_speed(ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED),
                                      ts_case_given(c, "ratio", TS_KIND_NUMBER), NULL);

    ts_case_computed(c, "n_pad", n_pad, TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "P", ts_pad_power(ts_case_given(c, "T", TS_KIND_TORQUE), n_pad, NULL),
                     TS_KIND_POWER);
}

static const ts_binding bindings[] = {
    {"sft-shear-neck", neck},
    {"sft-neck-scatter", scatter},
    {"mat-lowalloy-fsu", shear_ultimate},
    {"fst-wentzell-6-1", tightened},
    {"fst-pad-overhang", overhang},
    {"fst-pad-torque-power", pad_power},
};
TS_BINDINGS(bindings);
