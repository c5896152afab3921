/* rating/bearing/life_weibull.c: which catalogue capacity does a bearing need for a reliability? */
#include "rating/bearing/life_weibull.h"

#include <math.h>
#include <stdbool.h>

#define SHIGLEY "Shigley's Mechanical Engineering Design, 8th ed., chapter 11"

static const ts_formula C_10_formula = {
    .symbol  = "C_10",
    .meaning = "capacity needed for a reliability",
    .unit    = "N",
    .text    = "F*(x_D/(x_0 + (theta - x_0)*ln(1/R)^(1/b)))^(1/p)",
    .source  = SHIGLEY,
};
static const ts_formula R_formula = {
    .symbol  = "R",
    .meaning = "reliability at the wanted life",
    .unit    = "1",
    .text    = "exp(-(max(0, x_D*(F/C_10)^p - x_0)/(theta - x_0))^b)",
    .source  = SHIGLEY,
};

const ts_life_scatter ts_shigley_scatter = {.x_0 = 0.02, .theta = 4.459, .b = 1.483};

static bool is_law(const ts_life_scatter *scatter)
{
    return scatter->x_0 >= 0.0 && scatter->theta > scatter->x_0 && scatter->b > 0.0;
}

double ts_scattered_capacity(const ts_life_scatter *scatter, double F, double x_D, double R,
                             double p, ts_workings *workings)
{
    const double x_0 = scatter->x_0, theta = scatter->theta, b = scatter->b;

    if (!(is_law(scatter) && F > 0.0 && x_D > 0.0 && R > 0.0 && R < 1.0 && p > 0.0))
        return NAN;
    const double life = x_0 + (theta - x_0) * pow(log(1.0 / R), 1.0 / b);

    return TS_STEP(workings, C_10_formula, F * pow(x_D / life, 1.0 / p), F, x_D, x_0, theta, R, b,
                   p);
}

double ts_scattered_reliability(const ts_life_scatter *scatter, double F, double C_10, double x_D,
                                double p, ts_workings *workings)
{
    const double x_0 = scatter->x_0, theta = scatter->theta, b = scatter->b;

    if (!(is_law(scatter) && F > 0.0 && C_10 > 0.0 && x_D > 0.0 && p > 0.0))
        return NAN;
    const double past = fmax(0.0, x_D * pow(F / C_10, p) - x_0);

    return TS_STEP(workings, R_formula, exp(-pow(past / (theta - x_0), b)), x_D, F, C_10, p, x_0,
                   theta, b);
}
