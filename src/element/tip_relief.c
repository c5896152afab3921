/* element/tip_relief.c: how much of the deflection of the teeth does tip relief take up? */
#include "element/tip_relief.h"

#include <math.h>

static const ts_formula C_eff_formula = {
    .symbol  = "C_eff",
    .meaning = "effective tip relief",
    .unit    = "m",
    .text    = "w_A/c_mesh",
    .source  = "ISO/TS 6336-21:2017, effective tip relief (from memory)",
};
static const ts_formula r_1_formula = {
    .symbol  = "r_1",
    .meaning = "part of the effective relief at the tip of gear 1",
    .unit    = "1",
    .text    = "min(1, C_a1/C_eff)",
    .source  = "ISO/TS 6336-20:2017, load sharing factor (from memory)",
};
static const ts_formula r_2_formula = {
    .symbol  = "r_2",
    .meaning = "part of the effective relief at the tip of gear 2",
    .unit    = "1",
    .text    = "min(1, C_a2/C_eff)",
    .source  = "ISO/TS 6336-20:2017, load sharing factor (from memory)",
};
static const ts_formula eps_max_formula = {
    .symbol  = "eps_max",
    .meaning = "larger contact ratio on one side of the pitch point",
    .unit    = "1",
    .text    = "max(eps_1, eps_2)",
    .source  = "ISO/TS 6336-21:2017, tip relief factor (from memory)",
};
static const ts_formula X_Ca_formula = {
    .symbol  = "X_Ca",
    .meaning = "tip relief factor",
    .unit    = "1",
    .text    = "1 + (0.06 + 0.18*r)*eps_max + (0.02 + 0.69*r)*eps_max^2",
    .source  = "ISO/TS 6336-21:2017, tip relief factor (from memory)",
};

double ts_effective_relief(double w_A, double c_mesh, ts_workings *workings)
{
    return TS_STEP(workings, C_eff_formula, w_A / c_mesh, w_A, c_mesh);
}

double ts_relief_part(double C_a, double C_eff, int gear, ts_workings *workings)
{
    const double C_a1 = C_a, C_a2 = C_a;

    if (!(C_eff > 0.0)) /* nothing bends, and any relief is enough */
        return C_a > 0.0 ? 1.0 : 0.0;
    if (gear == 1)
        return TS_STEP(workings, r_1_formula, fmin(1.0, C_a1 / C_eff), C_a1, C_eff);
    return TS_STEP(workings, r_2_formula, fmin(1.0, C_a2 / C_eff), C_a2, C_eff);
}

double ts_tip_relief_factor(double r, double eps_1, double eps_2, ts_workings *workings)
{
    const double eps_max = TS_STEP(workings, eps_max_formula, fmax(eps_1, eps_2), eps_1, eps_2);

    return TS_STEP(workings, X_Ca_formula,
                   1.0 + (0.06 + 0.18 * r) * eps_max + (0.02 + 0.69 * r) * eps_max * eps_max, r,
                   eps_max);
}

int ts_relief_that_counts(int driver, double eps_1, double eps_2)
{
    if (driver == 1)
        return eps_1 > 1.5 * eps_2 ? 1 : 2;
    return eps_2 > 1.5 * eps_1 ? 2 : 1;
}
