/* base/formula_rounding.h: one operation of a formula text, and how far rounding goes through it.
 *
 * For the two ways of working a text out: down its tree (formula.c), and along its nodes with every
 * symbol's input known (formula_bound.c).
 */
#ifndef TS_BASE_FORMULA_ROUNDING_H
#define TS_BASE_FORMULA_ROUNDING_H

#include "base/formula.h"

#include <float.h>
#include <math.h>

/* Half a unit in the last place of 1: the relative error of one correctly rounded operation. */
#define TS_ROUNDING (0.5 * DBL_EPSILON)

#define TS_FORMULA_PI_VALUE 3.14159265358979323846

static inline ts_rounded ts_rounded_of(double value, double carried)
{
    return (ts_rounded){value, carried + TS_ROUNDING * fabs(value)};
}

/* Addends of both sizes count, because another order of adding rounds at theirs. */
static inline ts_rounded ts_rounded_sum(ts_rounded a, ts_rounded b, double value)
{
    const double addends = TS_ROUNDING * (fabs(a.value) + fabs(b.value));
    return (ts_rounded){value, a.rounding + b.rounding + addends};
}

static inline ts_rounded ts_rounded_power(ts_rounded a, ts_rounded b)
{
    if (b.value == 2.0 && b.rounding == 0.0)
        return ts_rounded_of(a.value * a.value, 2.0 * fabs(a.value) * a.rounding);
    const double value   = pow(a.value, b.value);
    double       carried = TS_ROUNDING * fabs(value);
    if (a.rounding > 0.0)
        carried += fabs(b.value * pow(a.value, b.value - 1.0)) * a.rounding;
    if (b.rounding > 0.0)
        carried += fabs(value * log(fabs(a.value))) * b.rounding;
    return ts_rounded_of(value, carried);
}

static inline ts_rounded ts_rounded_pair(ts_formula_part part, ts_rounded a, ts_rounded b)
{
    double value = 0.0;

    switch (part) {
    case TS_FORMULA_ADD:
        return ts_rounded_sum(a, b, a.value + b.value);
    case TS_FORMULA_SUBTRACT:
        return ts_rounded_sum(a, b, a.value - b.value);
    case TS_FORMULA_MULTIPLY:
        return ts_rounded_of(a.value * b.value,
                             fabs(a.value) * b.rounding + fabs(b.value) * a.rounding);
    case TS_FORMULA_DIVIDE:
        value = a.value / b.value;
        return ts_rounded_of(value, (a.rounding + fabs(value) * b.rounding) / fabs(b.value));
    default:
        return ts_rounded_power(a, b);
    }
}

/* The root of a difference loses half its digits where the difference goes to nought, so the slope
 * alone would be too much there. */
static inline double ts_rounded_root(double slope, double rounding)
{
    return fmin(slope * rounding, sqrt(2.0 * rounding));
}

static inline double ts_formula_apply(ts_formula_function function, double x)
{
    switch (function) {
    case TS_FUNCTION_SQRT:
        return sqrt(x);
    case TS_FUNCTION_SIN:
        return sin(x);
    case TS_FUNCTION_COS:
        return cos(x);
    case TS_FUNCTION_TAN:
        return tan(x);
    case TS_FUNCTION_ASIN:
        return asin(x);
    case TS_FUNCTION_ACOS:
        return acos(x);
    case TS_FUNCTION_ATAN:
        return atan(x);
    case TS_FUNCTION_INV:
        return tan(x) - x;
    case TS_FUNCTION_EXP:
        return exp(x);
    case TS_FUNCTION_LN:
        return log(x);
    default: /* abs */
        return fabs(x);
    }
}

/* How far rounding of the operand moves the function. */
static inline double ts_rounded_carried(ts_formula_function function, double x, double e)
{
    switch (function) {
    case TS_FUNCTION_SQRT:
        return ts_rounded_root(0.5 / sqrt(x), e);
    case TS_FUNCTION_SIN:
        return fabs(cos(x)) * e;
    case TS_FUNCTION_COS:
        return fabs(sin(x)) * e;
    case TS_FUNCTION_TAN:
        return (1.0 + tan(x) * tan(x)) * e;
    case TS_FUNCTION_ASIN:
    case TS_FUNCTION_ACOS:
        return ts_rounded_root(1.0 / sqrt(1.0 - x * x), e);
    case TS_FUNCTION_ATAN:
        return e / (1.0 + x * x);
    case TS_FUNCTION_INV:
        return tan(x) * tan(x) * e;
    case TS_FUNCTION_EXP:
        return exp(x) * e;
    case TS_FUNCTION_LN:
        return e / fabs(x);
    default: /* abs */
        return e;
    }
}

static inline ts_rounded ts_rounded_one(ts_formula_function function, ts_rounded a)
{
    const double value   = ts_formula_apply(function, a.value);
    double       carried = 0.0;
    if (a.rounding > 0.0)
        carried = ts_rounded_carried(function, a.value, a.rounding);
    if (function == TS_FUNCTION_INV) /* of nearly equal terms, each rounded at its own size */
        carried += 2.0 * TS_ROUNDING * fabs(a.value);
    return ts_rounded_of(value, carried);
}

static inline ts_rounded ts_rounded_atan2(ts_rounded y, ts_rounded x)
{
    const double square  = x.value * x.value + y.value * y.value;
    const double carried = fabs(x.value) * y.rounding + fabs(y.value) * x.rounding;

    return ts_rounded_of(atan2(y.value, x.value), carried > 0.0 ? carried / square : 0.0);
}

/* The better of what was best and the next.  fmin and fmax would pass over a NaN; here it stays. */
static inline ts_rounded ts_rounded_extreme(ts_formula_function function, ts_rounded best,
                                            ts_rounded next)
{
    const bool   smallest = function == TS_FUNCTION_MIN;
    const bool   wins     = smallest ? next.value < best.value : next.value > best.value;
    const double rounding = fmax(best.rounding, next.rounding);

    if (isnan(next.value) || (wins && !isnan(best.value)))
        best = next;
    return (ts_rounded){best.value, rounding};
}

/* Where a slope is infinite nothing can be said, so nothing is conceded. */
static inline ts_rounded ts_rounded_conceded(ts_rounded out)
{
    return (ts_rounded){out.value, isfinite(out.rounding) ? out.rounding : 0.0};
}

#endif
