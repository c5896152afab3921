/* element/notch_factor.c: how much higher is the stress at the root of a notch than the nominal
 * one? */
#include "element/notch_factor.h"

#include <math.h>
#include <stddef.h>

/* K = C_1 + C_2 u + C_3 u^2 + C_4 u^3, u = 2h/D, each C = a + b sqrt(h/r) + c h/r. */
typedef struct fit {
    double from, to; /* of h/r */
    double C[4][3];
} fit;

static const ts_formula K_formula = {
    .symbol  = "K_t",
    .meaning = "stress concentration factor",
    .unit    = "1",
    .text    = "C_1 + C_2*(2*h/D) + C_3*(2*h/D)^2 + C_4*(2*h/D)^3",
    .source  = "W. D. Pilkey, Peterson's Stress Concentration Factors; R. J. Roark, table 17",
};

static const fit groove_pilkey[] = {
    {0.25,
     2.0,
     {{0.966, 1.056, -0.022},
      {-0.192, -4.037, 0.674},
      {0.808, 5.321, -1.231},
      {-0.567, -2.364, 0.566}}},
    {2.0,
     50.0,
     {{1.089, 0.924, 0.018},
      {-1.504, -2.141, -0.047},
      {2.486, 2.289, 0.091},
      {-1.056, -1.104, -0.059}}},
};
static const fit groove_roark[] = {
    {0.25,
     2.0,
     {{1.245, 0.264, 0.491},
      {-3.030, 3.269, -3.633},
      {7.199, -11.286, 8.318},
      {-4.414, 7.753, -5.176}}},
};
/* From memory. */
static const fit shoulder_torsion[] = {
    {0.25,
     4.0,
     {{0.905, 0.783, -0.075},
      {-0.437, -1.969, 0.553},
      {1.557, 1.073, -0.578},
      {-1.061, 0.171, 0.086}}},
};
static const fit shoulder_bending[] = {
    {0.1,
     2.0,
     {{0.947, 1.206, -0.131},
      {0.022, -3.405, 0.915},
      {0.869, 1.777, -0.555},
      {-0.810, 0.422, -0.260}}},
    {2.0,
     20.0,
     {{1.232, 0.832, -0.008},
      {-3.813, 0.968, -0.260},
      {7.423, -4.868, 0.869},
      {-3.839, 3.070, -0.600}}},
};

static double factor_of(const fit *fits, size_t count, double D, double d, double r,
                        ts_workings *workings)
{
    const double h = (D - d) / 2.0, ratio = h / r, root = sqrt(ratio);
    size_t       which = 0;

    if (!(d > 0.0 && D > d && r > 0.0 && ratio >= fits[0].from && ratio <= fits[count - 1].to))
        return NAN;
    while (ratio > fits[which].to)
        which++;
    const double(*C)[3] = fits[which].C;
    const double C_1    = C[0][0] + C[0][1] * root + C[0][2] * ratio;
    const double C_2    = C[1][0] + C[1][1] * root + C[1][2] * ratio;
    const double C_3    = C[2][0] + C[2][1] * root + C[2][2] * ratio;
    const double C_4    = C[3][0] + C[3][1] * root + C[3][2] * ratio;
    const double u      = 2.0 * h / D;

    ts_workings_row(workings, "C_1", C_1, "1", "fit over the depth of the notch by its radius");
    ts_workings_row(workings, "C_2", C_2, "1", "fit over the depth of the notch by its radius");
    ts_workings_row(workings, "C_3", C_3, "1", "fit over the depth of the notch by its radius");
    ts_workings_row(workings, "C_4", C_4, "1", "fit over the depth of the notch by its radius");
    ts_workings_row(workings, "h", h, "m", "depth of the notch, half of D - d");
    return TS_STEP(workings, K_formula, C_1 + C_2 * u + C_3 * u * u + C_4 * u * u * u, C_1, C_2, h,
                   D, C_3, C_4);
}

double ts_groove_torsion_factor(ts_groove_fit which, double D, double d, double r,
                                ts_workings *workings)
{
    if (which == TS_GROOVE_ROARK)
        return factor_of(groove_roark, 1, D, d, r, workings);
    return factor_of(groove_pilkey, 2, D, d, r, workings);
}

double ts_shoulder_torsion_factor(double D, double d, double r, ts_workings *workings)
{
    return factor_of(shoulder_torsion, 1, D, d, r, workings);
}

double ts_shoulder_bending_factor(double D, double d, double r, ts_workings *workings)
{
    return factor_of(shoulder_bending, 2, D, d, r, workings);
}
