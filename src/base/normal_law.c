/* base/normal_law.c: which share of a normal law lies below a place, and where does a share end? */
#include "base/normal_law.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

double ts_normal_share(double z)
{
    return 0.5 * erfc(-z / sqrt(2.0));
}

/* P. J. Acklam's rational fits (from memory), good to 1e-9; what is left is taken by Halley's step
 * below, so that a wrong digit here would only slow the way. */
static double tail(double share)
{
    const double q = sqrt(-2.0 * log(share));

    return (((((-7.784894002430293e-03 * q - 3.223964580411365e-01) * q - 2.400758277161838) * q -
              2.549732539343734) *
                 q +
             4.374664141464968) *
                q +
            2.938163982698783) /
           ((((7.784695709041462e-03 * q + 3.224671290700398e-01) * q + 2.445134137142996) * q +
             3.754408661907416) *
                q +
            1.0);
}

static double middle(double share)
{
    const double q = share - 0.5, r = q * q;

    return (((((-3.969683028665376e+01 * r + 2.209460984245205e+02) * r - 2.759285104469687e+02) *
                  r +
              1.383577518672690e+02) *
                 r -
             3.066479806614716e+01) *
                r +
            2.506628277459239) *
           q /
           (((((-5.447609879822406e+01 * r + 1.615858368580409e+02) * r - 1.556989798598866e+02) *
                  r +
              6.680131188771972e+01) *
                 r -
             1.328068155288572e+01) *
                r +
            1.0);
}

double ts_normal_place(double share)
{
    if (!(share > 0.0 && share < 1.0))
        return NAN;
    const double least = fmin(share, 1.0 - share);
    double       z     = least < 0.02425 ? tail(least) : middle(least); /* in the lower half */
    const double off   = (ts_normal_share(z) - least) * sqrt(2.0 * pi) * exp(z * z / 2.0);

    z -= off / (1.0 + z * off / 2.0);
    return share <= 0.5 ? z : -z;
}
