/* element/involute.c: which angle belongs to which involute function? */
#include "element/involute.h"

#include <math.h>

#define SERIES_BELOW 0.25

/* Terms of tan(x) - x = x^3/3 + 2x^5/15 + 17x^7/315 + ... (derived: Maclaurin series of tan; the
 * coefficients are B_2n 4^n (4^n - 1)/(2n)!).  At x = 0.25 the first term left out is 3e-18 of
 * the sum. */
static double series(double alpha)
{
    static const double term[] = {
        1.0 / 3.0,
        2.0 / 15.0,
        17.0 / 315.0,
        62.0 / 2835.0,
        1382.0 / 155925.0,
        21844.0 / 6081075.0,
        929569.0 / 638512875.0,
        6404582.0 / 10854718875.0,
        443861162.0 / 1856156927625.0,
        18888466084.0 / 194896477400625.0,
        113927491862.0 / 2900518163668125.0,
    };
    const double square = alpha * alpha;
    double       sum    = 0.0;

    for (int n = (int)(sizeof term / sizeof term[0]) - 1; n >= 0; n--)
        sum = sum * square + term[n];
    return alpha * square * sum;
}

double ts_inv(double alpha)
{
    return fabs(alpha) < SERIES_BELOW ? series(alpha) : tan(alpha) - alpha;
}

/* Within 1e-3 of the root for small values (derived: reversion of the series above in powers of
 * cbrt(3*inv)); above the root for large ones, where the tangent is inv + alpha < inv + pi/2. */
static double start(double value)
{
    if (value > 0.3)
        return atan(value + 1.5707963267948966);
    const double root = cbrt(3.0 * value), square = root * root;

    return root * (1.0 - square * (2.0 / 15.0 - square * (9.0 / 175.0 - square * 2.0 / 175.0)));
}

/* Newton: inv is convex and its slope is tan^2, so from the second step on alpha only falls; after
 * a step of 1e-9 the next would be below 1e-17. */
double ts_inv_inverse(double value)
{
    if (!(value >= 0.0 && value <= 1e12))
        return NAN;
    if (value <= 0.0)
        return 0.0;

    double alpha = start(value);
    for (int round = 0; round < 60; round++) {
        const double tangent = tan(alpha);
        const double reached = alpha < SERIES_BELOW ? series(alpha) : tangent - alpha;
        const double change  = (reached - value) / (tangent * tangent);

        alpha -= change;
        if (fabs(change) <= 1e-9 * alpha)
            break;
    }
    return alpha;
}
