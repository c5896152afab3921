/* element/bevel_pair.c: which pitch cones do two bevel gears have? */
#include "element/bevel_pair.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

#define ISO_23509 "ISO 23509:2016 (formula from memory)"

static const ts_formula u_formula = {
    .symbol  = "u",
    .meaning = "ratio of teeth",
    .unit    = "1",
    .text    = "z_2/z_1",
    .source  = ISO_23509,
};
static const ts_formula delta_1_formula = {
    .symbol  = "delta_1",
    .meaning = "pitch angle of gear 1",
    .unit    = "rad",
    .text    = "atan2(sin(Sigma), u + cos(Sigma))",
    .source  = ISO_23509,
};
static const ts_formula delta_2_formula = {
    .symbol  = "delta_2",
    .meaning = "pitch angle of gear 2",
    .unit    = "rad",
    .text    = "Sigma - delta_1",
    .source  = ISO_23509,
};
static const ts_formula d_e1_formula = {
    .symbol  = "d_e1",
    .meaning = "outer pitch diameter of gear 1",
    .unit    = "m",
    .text    = "z_1*m_et",
    .source  = ISO_23509,
};
static const ts_formula d_e2_formula = {
    .symbol  = "d_e2",
    .meaning = "outer pitch diameter of gear 2",
    .unit    = "m",
    .text    = "z_2*m_et",
    .source  = ISO_23509,
};
static const ts_formula R_e_formula = {
    .symbol  = "R_e",
    .meaning = "outer cone distance",
    .unit    = "m",
    .text    = "d_e2/(2*sin(delta_2))",
    .source  = ISO_23509,
};
static const ts_formula R_m_formula = {
    .symbol  = "R_m",
    .meaning = "mean cone distance",
    .unit    = "m",
    .text    = "R_e - b/2",
    .source  = ISO_23509,
};
static const ts_formula d_m1_formula = {
    .symbol  = "d_m1",
    .meaning = "mean pitch diameter of gear 1",
    .unit    = "m",
    .text    = "d_e1 - b*sin(delta_1)",
    .source  = ISO_23509,
};
static const ts_formula d_m2_formula = {
    .symbol  = "d_m2",
    .meaning = "mean pitch diameter of gear 2",
    .unit    = "m",
    .text    = "d_e2 - b*sin(delta_2)",
    .source  = ISO_23509,
};
static const ts_formula m_mt_formula = {
    .symbol  = "m_mt",
    .meaning = "mean transverse module",
    .unit    = "m",
    .text    = "m_et*R_m/R_e",
    .source  = ISO_23509,
};
static const ts_formula m_mn_formula = {
    .symbol  = "m_mn",
    .meaning = "mean normal module",
    .unit    = "m",
    .text    = "m_mt*cos(beta_m)",
    .source  = ISO_23509,
};
static const ts_formula z_v1_formula = {
    .symbol  = "z_v1",
    .meaning = "teeth of the virtual cylindrical gear 1",
    .unit    = "1",
    .text    = "z_1/cos(delta_1)",
    .source  = ISO_23509,
};
static const ts_formula z_v2_formula = {
    .symbol  = "z_v2",
    .meaning = "teeth of the virtual cylindrical gear 2",
    .unit    = "1",
    .text    = "z_2/cos(delta_2)",
    .source  = ISO_23509,
};
static const ts_formula b_over_R_e_formula = {
    .symbol  = "b_over_R_e",
    .meaning = "face width over outer cone distance",
    .unit    = "1",
    .text    = "b/R_e",
    .source  = ISO_23509,
};

static bool in_range(const ts_bevel_pair_input *in)
{
    return in->z_1 > 0 && in->z_2 > 0 && in->z_1 <= 1000000 && in->z_2 <= 1000000 &&
           in->m_et >= 1e-9 && in->m_et <= 1e3 && in->Sigma >= 1e-6 && in->Sigma < pi &&
           in->alpha_n >= 0.01 && in->alpha_n <= 1.5 && in->beta_m >= 0.0 && in->beta_m <= 1.5 &&
           in->b >= 0.0;
}

double ts_bevel_pitch_angle_1(double Sigma, double u, ts_workings *workings)
{
    return TS_STEP(workings, delta_1_formula, atan2(sin(Sigma), u + cos(Sigma)), Sigma, u);
}

double ts_bevel_mean_diameter_1(double d_e1, double b, double delta_1, ts_workings *workings)
{
    return TS_STEP(workings, d_m1_formula, d_e1 - b * sin(delta_1), d_e1, b, delta_1);
}

double ts_bevel_mean_diameter_2(double d_e2, double b, double delta_2, ts_workings *workings)
{
    return TS_STEP(workings, d_m2_formula, d_e2 - b * sin(delta_2), d_e2, b, delta_2);
}

static ts_bevel_fault solve_cones(ts_bevel_pair *pair, ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2, Sigma = pair->in.Sigma;
    const double m_et = pair->in.m_et, b = pair->in.b;

    const double u       = TS_STEP(workings, u_formula, z_2 / z_1, z_2, z_1);
    const double delta_1 = ts_bevel_pitch_angle_1(Sigma, u, workings);
    const double delta_2 = TS_STEP(workings, delta_2_formula, Sigma - delta_1, Sigma, delta_1);

    /* At the last ulp below a right angle the virtual tooth number is no longer a number. */
    if (!(delta_1 < pi / 2.0 - 1e-9 && delta_2 < pi / 2.0 - 1e-9))
        return TS_BEVEL_NO_CONE;
    const double d_e2 = TS_STEP(workings, d_e2_formula, z_2 * m_et, z_2, m_et);
    const double R_e  = TS_STEP(workings, R_e_formula, d_e2 / (2.0 * sin(delta_2)), d_e2, delta_2);

    if (!(b < R_e))
        return TS_BEVEL_TOO_WIDE;
    pair->u          = u;
    pair->delta_1    = delta_1;
    pair->delta_2    = delta_2;
    pair->d_e1       = TS_STEP(workings, d_e1_formula, z_1 * m_et, z_1, m_et);
    pair->d_e2       = d_e2;
    pair->R_e        = R_e;
    pair->R_m        = TS_STEP(workings, R_m_formula, R_e - b / 2.0, R_e, b);
    pair->b_over_R_e = TS_STEP(workings, b_over_R_e_formula, b / R_e, b, R_e);
    return TS_BEVEL_FINE;
}

static void solve_mean(ts_bevel_pair *pair, ts_workings *workings)
{
    const double R_e = pair->R_e, R_m = pair->R_m, b = pair->in.b;
    const double m_et = pair->in.m_et, beta_m = pair->in.beta_m;

    pair->d_m1 = ts_bevel_mean_diameter_1(pair->d_e1, b, pair->delta_1, workings);
    pair->d_m2 = ts_bevel_mean_diameter_2(pair->d_e2, b, pair->delta_2, workings);

    const double m_mt = TS_STEP(workings, m_mt_formula, m_et * R_m / R_e, m_et, R_m, R_e);
    pair->m_mt        = m_mt;
    pair->m_mn        = TS_STEP(workings, m_mn_formula, m_mt * cos(beta_m), m_mt, beta_m);
}

static void solve_virtual(ts_bevel_pair *pair, ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2;
    const double delta_1 = pair->delta_1, delta_2 = pair->delta_2;

    pair->z_v1 = TS_STEP(workings, z_v1_formula, z_1 / cos(delta_1), z_1, delta_1);
    pair->z_v2 = TS_STEP(workings, z_v2_formula, z_2 / cos(delta_2), z_2, delta_2);
}

/* Every result behind `in` is a double, so that "not computed" can be written over all of them. */
static void forget(const ts_bevel_pair_input *in, ts_bevel_pair *pair)
{
    const double   nothing = NAN;
    unsigned char *bytes   = (unsigned char *)pair;

    for (size_t at = offsetof(ts_bevel_pair, u); at < sizeof *pair; at += sizeof nothing)
        memcpy(bytes + at, &nothing, sizeof nothing);
    pair->in = *in;
}

ts_bevel_fault ts_bevel_pair_solve(const ts_bevel_pair_input *in, ts_bevel_pair *pair,
                                   ts_workings *workings)
{
    ts_bevel_fault fault = TS_BEVEL_OUT_OF_RANGE;

    forget(in, pair);
    if (in_range(in))
        fault = solve_cones(pair, workings);
    if (fault != TS_BEVEL_FINE)
        return fault;
    solve_mean(pair, workings);
    solve_virtual(pair, workings);
    return TS_BEVEL_FINE;
}

/* ISO 23509:2016, annex B, and ANSI/AGMA 2003 (both from memory). */
double ts_bevel_face_most(const ts_bevel_pair *pair)
{
    return fmin(0.3 * pair->R_e, 10.0 * pair->in.m_et);
}

const char *ts_bevel_fault_says(ts_bevel_fault fault)
{
    switch (fault) {
    case TS_BEVEL_FINE:
        return "the pair is in order";
    case TS_BEVEL_OUT_OF_RANGE:
        return "tooth numbers, module, angles or width are out of range";
    case TS_BEVEL_NO_CONE:
        return "at this shaft angle and ratio one pitch cone is flat or turned inside out";
    case TS_BEVEL_TOO_WIDE:
        return "the face is so wide that it reaches the apex";
    }
    return "";
}
