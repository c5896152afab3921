/* rating/iso6336/transverse_load.c: does one pair of teeth take more than its share? */
#include "rating/iso6336/transverse_load.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

static const ts_formula q_alpha_formula = {
    .symbol  = "q_alpha",
    .meaning = "base pitch deviation over the deflection under load",
    .unit    = "1",
    .text    = "c_gamma_alpha*f_pbeff/F_tHb",
    .source  = ISO_6336_1 "8.3.2" RECALLED,
};
static const ts_formula share_formula = {
    .symbol  = "K_alpha",
    .meaning = "transverse load factor before its limits",
    .unit    = "1",
    .text    = "eps_gamma/2*(0.9 + 0.4*q_alpha)",
    .source  = ISO_6336_1 "8.3.2" RECALLED,
};
static const ts_formula share_long_formula = {
    .symbol  = "K_alpha",
    .meaning = "transverse load factor before its limits",
    .unit    = "1",
    .text    = "0.9 + 0.4*sqrt(2*(eps_gamma - 1)/eps_gamma)*q_alpha",
    .source  = ISO_6336_1 "8.3.2" RECALLED,
};
static const ts_formula K_Halpha_formula = {
    .symbol  = "K_Halpha",
    .meaning = "transverse load factor (contact)",
    .unit    = "1",
    .text    = "max(1, min(K_alpha, eps_gamma/(eps_alpha*Z_eps^2)))",
    .source  = ISO_6336_1 "8.3.4" RECALLED,
};
static const ts_formula K_Falpha_formula = {
    .symbol  = "K_Falpha",
    .meaning = "transverse load factor (bending)",
    .unit    = "1",
    .text    = "max(1, min(K_alpha, eps_gamma/(0.25*eps_alpha + 0.75)))",
    .source  = ISO_6336_1 "8.3.4" RECALLED,
};

ts_transverse_load ts_transverse_load_of(const ts_transverse_load_input *in, ts_workings *workings)
{
    const double eps_alpha = in->eps_alpha, eps_gamma = in->eps_gamma, Z_eps = in->Z_eps;
    const double c_gamma_alpha = in->c_gamma_alpha, f_pbeff = in->f_pbeff, F_tHb = in->F_tHb;
    const double ratio = c_gamma_alpha * f_pbeff / F_tHb;
    double       K_alpha;

    if (isnan(ratio))
        return (ts_transverse_load){NAN, NAN, NAN, false, false};
    const double q_alpha = TS_STEP(workings, q_alpha_formula, ratio, c_gamma_alpha, f_pbeff, F_tHb);
    if (eps_gamma > 2.0)
        K_alpha = TS_STEP(workings, share_long_formula,
                          0.9 + 0.4 * sqrt(2.0 * (eps_gamma - 1.0) / eps_gamma) * q_alpha,
                          eps_gamma, q_alpha);
    else
        K_alpha = TS_STEP(workings, share_formula, eps_gamma / 2.0 * (0.9 + 0.4 * q_alpha),
                          eps_gamma, q_alpha);

    const double       H_most = eps_gamma / (eps_alpha * (Z_eps * Z_eps));
    const double       F_most = eps_gamma / (0.25 * eps_alpha + 0.75);
    ts_transverse_load out    = {
           .q_alpha = q_alpha, .H_limited = K_alpha > H_most, .F_limited = K_alpha > F_most};
    out.K_Halpha = TS_STEP(workings, K_Halpha_formula, fmax(1.0, fmin(K_alpha, H_most)), K_alpha,
                           eps_gamma, eps_alpha, Z_eps);
    out.K_Falpha = TS_STEP(workings, K_Falpha_formula, fmax(1.0, fmin(K_alpha, F_most)), K_alpha,
                           eps_gamma, eps_alpha);
    return out;
}
