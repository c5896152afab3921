/* rating/iso10300/bevel_share.c: what does the most loaded place carry over the mean? */
#include "rating/iso10300/bevel_share.h"

#include "base/assert.h"
#include "rating/iso10300/bevel_source.h"

#include <math.h>

/* ---- over the face --------------------------------------------------------------------------- */

double ts_bevel_mounting_factor(ts_bevel_pattern pattern, int overhung, ts_workings *workings)
{
    static const double table[TS_BEVEL_PATTERN_COUNT][3] = {
        [TS_BEVEL_PATTERN_FULL_LOAD]  = {1.00, 1.00, 1.00},
        [TS_BEVEL_PATTERN_LIGHT_LOAD] = {1.05, 1.10, 1.25},
        [TS_BEVEL_PATTERN_SAMPLE]     = {1.20, 1.32, 1.50},
    };
    TS_ASSERT(pattern < TS_BEVEL_PATTERN_COUNT && overhung >= 0 && overhung <= 2);

    const double K_Hbeta_be = table[pattern][overhung];
    ts_workings_row(workings, "K_Hbeta_be", K_Hbeta_be, "1",
                    ISO_10300_1 "8.4, table of mounting factors (from memory)");
    return K_Hbeta_be;
}

BEVEL_FORMULA(K_Hbeta, "face load factor (contact), crowned teeth", "1",
              "1.5*K_Hbeta_be*max(1, 0.85*b_v/b_veff)", ISO_10300_1 "8.4");
BEVEL_FORMULA(q, "exponent of the lengthwise curvature factor", "1", "0.279*ln(10)/ln(sin(beta_m))",
              ISO_10300_1 "8.5");
BEVEL_FORMULA(K_F0, "lengthwise curvature factor", "1",
              "max(1, min(1.15, 0.211*(r_c0/R_m)^q + 0.789))", ISO_10300_1 "8.5");
BEVEL_FORMULA(K_Fbeta, "face load factor (bending)", "1", "K_Hbeta/K_F0", ISO_10300_1 "8.5");

double ts_bevel_face_load(double K_Hbeta_be, double b_v, double b_veff, ts_workings *workings)
{
    return TS_STEP(workings, K_Hbeta_formula, 1.5 * K_Hbeta_be * fmax(1.0, 0.85 * b_v / b_veff),
                   K_Hbeta_be, b_v, b_veff);
}

double ts_bevel_curvature_factor(double r_c0, double R_m, double beta_m, ts_workings *workings)
{
    if (!(beta_m > 0.0)) {
        ts_workings_row(workings, "K_F0", 1.0, "1",
                        "teeth without spiral, " ISO_10300_1 "8.5" BEVEL_RECALLED);
        return 1.0;
    }
    if (isnan(r_c0)) {
        ts_workings_assumed(workings, "K_F0", 1.0, "1",
                            "the cutter radius is not given; 1 is on the safe side");
        return 1.0;
    }
    const double q = TS_STEP(workings, q_formula, 0.279 * log(10.0) / log(sin(beta_m)), beta_m);

    return TS_STEP(workings, K_F0_formula,
                   fmax(1.0, fmin(1.15, 0.211 * pow(r_c0 / R_m, q) + 0.789)), r_c0, R_m, q);
}

double ts_bevel_face_load_root(double K_Hbeta, double K_F0, ts_workings *workings)
{
    return TS_STEP(workings, K_Fbeta_formula, K_Hbeta / K_F0, K_Hbeta, K_F0);
}

/* ---- over the teeth in contact --------------------------------------------------------------- */

#define K_ALPHA(name, expression)                                                                  \
    static const ts_formula name##_formula = {.symbol = "K_alpha",                                 \
                                              .meaning =                                           \
                                                  "transverse load factor from the deviations",    \
                                              .unit   = "1",                                       \
                                              .text   = (expression),                              \
                                              .source = ISO_10300_1 "9.4" BEVEL_RECALLED}
K_ALPHA(short_overlap, "eps_vgamma/2*(0.9 + 0.4*c_gamma*f_peff*b_v/F_mtH)");
K_ALPHA(long_overlap, "0.9 + 0.4*sqrt(2*(eps_vgamma - 1)/eps_vgamma)*c_gamma*f_peff*b_v/F_mtH");

BEVEL_FORMULA(K_Halpha, "transverse load factor (contact)", "1",
              "max(1, min(eps_vgamma/(eps_valpha*Z_LS^2), K_alpha))", ISO_10300_1 "9.4");
BEVEL_FORMULA(K_Falpha, "transverse load factor (bending)", "1",
              "max(1, min(eps_vgamma/(eps_valpha*Y_eps), K_alpha))", ISO_10300_1 "9.4");

ts_bevel_transverse ts_bevel_transverse_load(const ts_bevel_transverse_input *in,
                                             ts_workings                     *workings)
{
    const double eps_valpha = in->eps_valpha, eps_vgamma = in->eps_vgamma;
    const double c_gamma = in->c_gamma, f_peff = in->f_peff, b_v = in->b_v, F_mtH = in->F_mtH;
    const double Z_LS = in->Z_LS, Y_eps = in->Y_eps;
    const double off = c_gamma * f_peff * b_v / F_mtH;

    const double K_alpha =
        eps_vgamma <= 2.0
            ? TS_STEP(workings, short_overlap_formula, eps_vgamma / 2.0 * (0.9 + 0.4 * off),
                      eps_vgamma, c_gamma, f_peff, b_v, F_mtH)
            : TS_STEP(workings, long_overlap_formula,
                      0.9 + 0.4 * sqrt(2.0 * (eps_vgamma - 1.0) / eps_vgamma) * off, eps_vgamma,
                      c_gamma, f_peff, b_v, F_mtH);

    return (ts_bevel_transverse){
        .K_alpha  = K_alpha,
        .K_Halpha = TS_STEP(workings, K_Halpha_formula,
                            fmax(1.0, fmin(eps_vgamma / (eps_valpha * (Z_LS * Z_LS)), K_alpha)),
                            eps_vgamma, eps_valpha, Z_LS, K_alpha),
        .K_Falpha = TS_STEP(workings, K_Falpha_formula,
                            fmax(1.0, fmin(eps_vgamma / (eps_valpha * Y_eps), K_alpha)), eps_vgamma,
                            eps_valpha, Y_eps, K_alpha),
    };
}
