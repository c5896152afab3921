/* rating/bearing/least_load.c: below which load do the rolling elements slip instead of rolling? */
#include "rating/bearing/least_load.h"

#include <math.h>

#define MAKERS "bearing makers' catalogues (from memory)"

static const double pi = 3.14159265358979323846;

static const ts_formula ball_formula = {
    .symbol  = "F_rmin",
    .meaning = "least radial load",
    .unit    = "N",
    .text    = "1000*k_r*(1e6*nu*n*(30/pi)/1000)^(2/3)*(1000*d_m/100)^2",
    .source  = MAKERS,
};
static const ts_formula roller_formula = {
    .symbol  = "F_rmin",
    .meaning = "least radial load",
    .unit    = "N",
    .text    = "1000*k_r*(6 + 4*n/n_r)*(1000*d_m/100)^2",
    .source  = MAKERS,
};
static const ts_formula share_formula = {
    .symbol  = "F_rmin",
    .meaning = "least radial load",
    .unit    = "N",
    .text    = "share*C",
    .source  = "common practice, no source: 1 % of the capacity for balls, 2 % for rollers",
};

double ts_least_load_ball(double k_r, double nu, double n, double d_m, ts_workings *workings)
{
    if (!(k_r > 0.0 && nu > 0.0 && n >= 0.0 && d_m > 0.0))
        return NAN;
    const double flow = 1e6 * nu * n * (30.0 / pi) / 1000.0, size = 1000.0 * d_m / 100.0;

    return TS_STEP(workings, ball_formula, 1000.0 * k_r * pow(flow, 2.0 / 3.0) * size * size, k_r,
                   nu, n, d_m);
}

double ts_least_load_roller(double k_r, double n, double n_r, double d_m, ts_workings *workings)
{
    if (!(k_r > 0.0 && n >= 0.0 && n_r > 0.0 && d_m > 0.0))
        return NAN;
    const double size = 1000.0 * d_m / 100.0;

    return TS_STEP(workings, roller_formula, 1000.0 * k_r * (6.0 + 4.0 * n / n_r) * size * size,
                   k_r, n, n_r, d_m);
}

double ts_least_load_share(double share, double C, ts_workings *workings)
{
    if (!(share >= 0.0 && C > 0.0))
        return NAN;
    return TS_STEP(workings, share_formula, share * C, share, C);
}
