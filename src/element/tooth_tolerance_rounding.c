/* element/tooth_tolerance_rounding.c: how does a tolerance become a value for a drawing? */
#include "element/tooth_tolerance_rounding.h"

#include <math.h>

static const char *const rule_says[] = {
    [TS_ROUND_TO_TENTHS] = "ISO 1328-1, rule of rounding (from memory): what is taken off to reach "
                           "a whole um above 10 um, half a um down to 5 um, a tenth below",
    [TS_ROUND_TO_HALVES] = "ISO 1328-2:1997, rule of rounding (from memory): what is taken off to "
                           "reach a whole um above 10 um, half a um below",
};

/* How many steps of rounding there are in a metre; whole numbers, so that dividing by them gives
 * the double that is nearest to the decimal. */
static double steps_per_metre(double exact, ts_rounding_rule rule)
{
    if (exact > 10e-6)
        return 1e6;
    return exact >= 5e-6 || rule == TS_ROUND_TO_HALVES ? 2e6 : 1e7;
}

double ts_tolerance_rounded(const ts_rounded_formula *formula, double exact, ts_rounding_rule rule,
                            ts_workings *workings)
{
    /* A half that binary arithmetic leaves a hair short of a half is still rounded up. */
    const double hair    = 1e-9;
    const double steps   = steps_per_metre(exact, rule);
    const double rounded = floor(exact * steps + 0.5 + hair) / steps;
    const double rest    = exact - rounded;

    ts_workings_row(workings, formula->rest, rest, "m", rule_says[rule]);
    const ts_input inputs[] = {{formula->exact.symbol, exact}, {formula->rest, rest}};
    return ts_step_list(workings, &formula->rounded, rounded, inputs, 2);
}

double ts_class_step(int class, const ts_formula *formula, ts_workings *workings)
{
    const double A = class;

    return TS_STEP(workings, *formula, exp2((A - 5.0) / 2.0), A);
}
