/* rating/iso6336/first_size.c: which pinion diameter does the contact stress ask for? */
#include "rating/iso6336/first_size.h"

#include <math.h>

#define SOLVED "derived: ISO 6336-2, nominal contact stress, solved for the diameter"

static const ts_formula d_1_formula = {
    .symbol  = "d_1",
    .meaning = "pinion diameter that the contact stress asks for",
    .unit    = "m",
    .text    = "(2*K*T_1/phi_d*(u + 1)/u*(Z/sigma_HP)^2)^(1/3)",
    .source  = SOLVED,
};
static const ts_formula corrected_formula = {
    .symbol  = "d_1",
    .meaning = "pinion diameter with its own load factors",
    .unit    = "m",
    .text    = "d_1*(K/K_used)^(1/3)",
    .source  = SOLVED,
};

double ts_first_pinion_diameter(const ts_first_size_input *in, ts_workings *workings)
{
    const double T_1 = in->T_1, K = in->K, phi_d = in->phi_d, u = in->u, Z = in->Z;
    const double sigma_HP = in->sigma_HP, ratio = Z / sigma_HP;

    return TS_STEP(workings, d_1_formula,
                   cbrt(2.0 * K * T_1 / phi_d * (u + 1.0) / u * (ratio * ratio)), K, T_1, phi_d, u,
                   Z, sigma_HP);
}

double ts_corrected_diameter(double d_1, double K, double K_used, ts_workings *workings)
{
    return TS_STEP(workings, corrected_formula, d_1 * cbrt(K / K_used), d_1, K, K_used);
}
