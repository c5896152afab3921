/* rating/iso6336/root_thinning.c: which profile shift shapes the root of a tooth made thinner? */
#include "rating/iso6336/root_thinning.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

/* In modules.  A thickness of just the limit, give or take its last digits, is no thinner. */
static const double thin_teeth = 0.05, rounding = 1e-9;

#define THIN_TEXT(I) "x_" I " + E_sni" I "/(2*m_n*tan(alpha_n))"
#define FULL_TEXT(I) "x_" I
#define MEANING      "profile shift that shapes the root"
static const ts_formula thin_formulas[2] =
    TS_OF_BOTH_GEARS("x_E", MEANING, "1", THIN_TEXT,
                     ISO_6336_3 "6, teeth more than 0.05 modules thinner than nominal" RECALLED);
static const ts_formula full_formulas[2] =
    TS_OF_BOTH_GEARS("x_E", MEANING, "1", FULL_TEXT,
                     ISO_6336_3 "6, teeth at most 0.05 modules thinner than nominal" RECALLED);

bool ts_root_is_thinned(double E_sni, double m_n)
{
    return -E_sni > thin_teeth * (1.0 + rounding) * m_n;
}

double ts_root_shift(double x, double E_sni, double m_n, double alpha_n, int gear,
                     ts_workings *workings)
{
    if (!ts_root_is_thinned(E_sni, m_n))
        return TS_GEAR_STEP(workings, full_formulas, x, TS_OWN("x_", x));
    return TS_GEAR_STEP(workings, thin_formulas, x + E_sni / (2.0 * m_n * tan(alpha_n)),
                        TS_OWN("x_", x), TS_OWN("E_sni", E_sni), TS_ALL(m_n), TS_ALL(alpha_n));
}
