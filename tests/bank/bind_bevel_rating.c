/* bank/bind_bevel_rating.c: published cases about the strength of bevel gears. */
#include "bank/bank_case.h"
#include "element/tooth_force.h"
#include "rating/agma2003/agma2003.h"

#include <math.h>

static const double psi = 6894.757293168361; /* Pa */

/* What one member may carry, by the lower line of lives.  The textbook's letters: K_s Y_x, K_m
 * K_Hbeta, C_s Z_x, C_xc Z_xc, K_L Y_NT, C_L Z_NT, K_R Y_Z, C_R Z_Z; its teeth are straight and its
 * steel through-hardened. */
static void bevel_agma2003(ts_case *c)
{
    const double m_et  = 1.0 / ts_case_per(c, "P", TS_KIND_LENGTH);
    const double d_e1  = ts_case_whole(c, "z1") * m_et;
    const double b     = ts_case_given(c, "F", TS_KIND_LENGTH);
    const double omega = ts_case_given(c, "n1", TS_KIND_ROTATIONAL_SPEED);
    const double n_L   = ts_case_given(c, "N", TS_KIND_NUMBER);
    const double v     = ts_pitch_line_velocity(omega, d_e1, NULL);
    const double Y_Z   = ts_agma2003_reliability(ts_case_given(c, "R", TS_KIND_NUMBER), NULL);

    const ts_agma2003_dynamic curve =
        ts_agma2003_dynamic_Q_v(ts_case_given(c, "Q_v", TS_KIND_NUMBER), NULL);
    const ts_agma2003_allowable steel = ts_agma2003_allowable_of(
        TS_AGMA2003_THROUGH_HARDENED, 1, ts_case_given(c, "HB", TS_KIND_NUMBER), 0, NULL);
    if (isnan(curve.B) || isnan(steel.sigma_Hlim) || !(n_L > 0.0) || !(v >= 0.0))
        ts_case_spoil(c, "is outside the standard's range", "accuracy, hardness, life or speed");
    const double Y_NT = ts_agma2003_life_bending(n_L, true, 0, NULL);
    const double Z_NT = ts_agma2003_life_contact(n_L, 0, NULL);

    ts_case_computed(c, "V", v, TS_KIND_VELOCITY);
    ts_case_computed(c, "V_max", curve.v_max, TS_KIND_VELOCITY);
    ts_case_computed(c, "K_L", Y_NT, TS_KIND_NUMBER);
    ts_case_computed(c, "C_L", Z_NT, TS_KIND_NUMBER);
    ts_case_computed(c, "s_at", steel.sigma_Flim, TS_KIND_STRESS);
    ts_case_computed(c, "s_ac", steel.sigma_Hlim, TS_KIND_STRESS);
    ts_case_computed(c, "K_R", Y_Z, TS_KIND_NUMBER);
    if (isnan(Y_Z)) /* no such reliability: nothing is permitted */
        return;
    const double            Z_Z   = ts_agma2003_reliability_contact(Y_Z, NULL);
    const ts_agma2003_force force = {
        .b       = b,
        .K_A     = 1.0,
        .K_v     = ts_agma2003_dynamic_factor(&curve, v, NULL),
        .K_Hbeta = ts_agma2003_face_load(ts_case_given(c, "K_mb", TS_KIND_NUMBER), b, NULL),
    };
    const ts_agma2003_bending root = {
        .m_et   = m_et,
        .Y_x    = ts_agma2003_size_bending(m_et, NULL),
        .Y_beta = ts_agma2003_curvature(NAN, 1.0, 0.0, NULL),
        .Y_J    = ts_case_given(c, "J", TS_KIND_NUMBER),
    };
    const ts_agma2003_contact flank = {
        .d_e  = d_e1,
        .Z_E  = ts_case_given(c, "C_p", TS_KIND_NUMBER) * sqrt(psi),
        .Z_x  = ts_agma2003_size_contact(b, NULL),
        .Z_xc = ts_case_given(c, "C_xc", TS_KIND_NUMBER),
        .Z_I  = ts_case_given(c, "I", TS_KIND_NUMBER),
    };
    const ts_agma2003_bending_strength bears  = {steel.sigma_Flim, Y_NT, 1.0, Y_Z, 1.0};
    const ts_agma2003_contact_strength wears  = {steel.sigma_Hlim, Z_NT, 1.0, 1.0, Z_Z};
    const double                       F_bend = ts_agma2003_bending_force(&force, &root,
                                                                          ts_agma2003_bending_permitted(&bears, 0, NULL) /
                                                                              ts_case_given(c, "S_F", TS_KIND_NUMBER));
    const double                       F_wear = ts_agma2003_contact_force(&force, &flank,
                                                                          ts_agma2003_contact_permitted(&wears, 0, NULL) /
                                                                              ts_case_given(c, "S_H", TS_KIND_NUMBER));

    ts_case_computed(c, "K_v", force.K_v, TS_KIND_NUMBER);
    ts_case_computed(c, "K_m", force.K_Hbeta, TS_KIND_NUMBER);
    ts_case_computed(c, "K_s", root.Y_x, TS_KIND_NUMBER);
    ts_case_computed(c, "C_s", flank.Z_x, TS_KIND_NUMBER);
    ts_case_computed(c, "C_R", Z_Z, TS_KIND_NUMBER);
    ts_case_computed(c, "W_t_bend", F_bend, TS_KIND_FORCE);
    ts_case_computed(c, "W_t_wear", F_wear, TS_KIND_FORCE);
    ts_case_computed(c, "H_bend", F_bend * v, TS_KIND_POWER);
    ts_case_computed(c, "H_wear", F_wear * v, TS_KIND_POWER);
}

static const ts_binding bindings[] = {
    {"bevel_agma2003", bevel_agma2003},
};
TS_BINDINGS(bindings);
