/* rating/agma2003/agma2003_factor.c: what do speed, mounting and size add to the load of bevels? */
#include "rating/agma2003/agma2003_factor.h"

#include "base/assert.h"
#include "rating/agma2003/agma2003_step.h"

#include <math.h>
#include <stddef.h>

static const double pi   = 3.14159265358979323846;
static const double inch = 0.0254;

/* ---- dynamic factor -------------------------------------------------------------------------- */

#define DYNAMIC "dynamic factor"
#define EXPONENT(name, expression)                                                                 \
    static const ts_formula name##_formula = {.symbol  = "B_v",                                    \
                                              .meaning = "exponent of the dynamic factor",         \
                                              .unit    = "1",                                      \
                                              .text    = (expression),                             \
                                              .source  = AGMA2003 ", " DYNAMIC AGMA2003_RECALLED}
EXPONENT(from_Q, "0.25*(12 - Q_v)^(2/3)");
EXPONENT(from_A, "0.25*(A_v - 5)^(2/3)");
AGMA2003_FORMULA(C_v, "constant of the dynamic factor", "1", "50 + 56*(1 - B_v)", DYNAMIC);
/* Feet a minute under the root. */
AGMA2003_FORMULA(K_v, "dynamic factor", "1", "((C_v + sqrt(v_et*60/0.3048))/C_v)^B_v", DYNAMIC);
#define END(name, expression)                                                                      \
    static const ts_formula name##_formula = {.symbol  = "v_max",                                  \
                                              .meaning = "speed where the curve ends",             \
                                              .unit    = "m/s",                                    \
                                              .text    = (expression),                             \
                                              .source  = AGMA2003 ", " DYNAMIC AGMA2003_RECALLED}
END(end_Q, "(C_v + Q_v - 3)^2*0.3048/60");
END(end_A, "(C_v + 14 - A_v)^2*0.3048/60");

static const ts_agma2003_dynamic no_curve = {NAN, NAN, NAN};

/* The standard leaves the factor of finer gears to experience. */
static double finest(ts_workings *workings, const char *symbol, double given, double curve)
{
    if (fabs(curve - given) > 0.0)
        ts_workings_assumed(workings, symbol, curve, "1",
                            "the gears are finer than any curve; the finest one, on the safe side");
    return curve;
}

ts_agma2003_dynamic ts_agma2003_dynamic_Q_v(double accuracy, ts_workings *workings)
{
    if (!(accuracy >= 5.0))
        return no_curve;
    const double Q_v  = finest(workings, "Q_v", accuracy, fmin(11.0, accuracy));
    const double root = cbrt(12.0 - Q_v);
    const double B_v  = TS_STEP(workings, from_Q_formula, 0.25 * (root * root), Q_v);
    const double C_v  = TS_STEP(workings, C_v_formula, 50.0 + 56.0 * (1.0 - B_v), B_v);
    const double most = C_v + Q_v - 3.0;

    return (ts_agma2003_dynamic){
        B_v, C_v, TS_STEP(workings, end_Q_formula, most * most * 0.3048 / 60.0, C_v, Q_v)};
}

ts_agma2003_dynamic ts_agma2003_dynamic_A_v(double accuracy, ts_workings *workings)
{
    if (!(accuracy <= 12.0))
        return no_curve;
    const double A_v  = finest(workings, "A_v", accuracy, fmax(6.0, accuracy));
    const double root = cbrt(A_v - 5.0);
    const double B_v  = TS_STEP(workings, from_A_formula, 0.25 * (root * root), A_v);
    const double C_v  = TS_STEP(workings, C_v_formula, 50.0 + 56.0 * (1.0 - B_v), B_v);
    const double most = C_v + 14.0 - A_v;

    return (ts_agma2003_dynamic){
        B_v, C_v, TS_STEP(workings, end_A_formula, most * most * 0.3048 / 60.0, C_v, A_v)};
}

double ts_agma2003_dynamic_factor(const ts_agma2003_dynamic *curve, double v_et,
                                  ts_workings *workings)
{
    const double B_v = curve->B, C_v = curve->A;

    if (isnan(B_v))
        return NAN;
    return TS_STEP(workings, K_v_formula, pow((C_v + sqrt(v_et * 60.0 / 0.3048)) / C_v, B_v), C_v,
                   v_et, B_v);
}

/* ---- load and size --------------------------------------------------------------------------- */

double ts_agma2003_mounting(int overhung, ts_workings *workings)
{
    static const double table[] = {1.00, 1.10, 1.25};
    TS_ASSERT(overhung >= 0 && overhung <= 2);

    ts_workings_row(workings, "K_mb", table[overhung], "1",
                    AGMA2003 ", load distribution: both, one, no gear straddled (from memory)");
    return table[overhung];
}

AGMA2003_FORMULA(K_Hbeta, "load distribution factor", "1", "K_mb + 0.0036*(b/0.0254)^2",
                 "load distribution factor");
AGMA2003_FORMULA(Z_x, "size factor (contact)", "1", "max(0.5, min(1, 0.125*b/0.0254 + 0.4375))",
                 "size factor for pitting");
AGMA2003_FORMULA(Y_x, "size factor (bending)", "1", "max(0.5, 0.4867 + 0.2132*m_et/0.0254)",
                 "size factor for bending");
AGMA2003_FORMULA(q_x, "exponent of the lengthwise curvature factor", "1",
                 "0.279*ln(10)/ln(sin(beta_m))", "lengthwise curvature factor");
AGMA2003_FORMULA(Y_beta, "lengthwise curvature factor", "1",
                 "max(1, min(1.15, 0.211*(r_c0/R_m)^q_x + 0.789))", "lengthwise curvature factor");
AGMA2003_FORMULA(Z_E, "elastic coefficient", "sqrt(Pa)",
                 "sqrt(1/(pi*((1 - nu_1^2)/E_1 + (1 - nu_2^2)/E_2)))", "elastic coefficient");

double ts_agma2003_face_load(double K_mb, double b, ts_workings *workings)
{
    return TS_STEP(workings, K_Hbeta_formula, K_mb + 0.0036 * ((b / inch) * (b / inch)), K_mb, b);
}

double ts_agma2003_size_contact(double b, ts_workings *workings)
{
    return TS_STEP(workings, Z_x_formula, fmax(0.5, fmin(1.0, 0.125 * b / inch + 0.4375)), b);
}

double ts_agma2003_size_bending(double m_et, ts_workings *workings)
{
    return TS_STEP(workings, Y_x_formula, fmax(0.5, 0.4867 + 0.2132 * m_et / inch), m_et);
}

double ts_agma2003_crowning(bool crowned, ts_workings *workings)
{
    const double Z_xc = crowned ? 1.5 : 2.0;

    ts_workings_row(workings, "Z_xc", Z_xc, "1",
                    AGMA2003 ", crowning factor: crowned 1.5, not crowned 2 (from memory)");
    return Z_xc;
}

double ts_agma2003_curvature(double r_c0, double R_m, double beta_m, ts_workings *workings)
{
    if (!(beta_m > 0.0)) {
        ts_workings_row(workings, "Y_beta", 1.0, "1",
                        "teeth without spiral, " AGMA2003 AGMA2003_RECALLED);
        return 1.0;
    }
    if (isnan(r_c0)) {
        ts_workings_assumed(workings, "Y_beta", 1.0, "1",
                            "the cutter radius is not given; 1 is on the safe side");
        return 1.0;
    }
    const double q_x = TS_STEP(workings, q_x_formula, 0.279 * log(10.0) / log(sin(beta_m)), beta_m);

    return TS_STEP(workings, Y_beta_formula,
                   fmax(1.0, fmin(1.15, 0.211 * pow(r_c0 / R_m, q_x) + 0.789)), r_c0, R_m, q_x);
}

double ts_agma2003_elasticity(double E_1, double nu_1, double E_2, double nu_2,
                              ts_workings *workings)
{
    const double give = (1.0 - nu_1 * nu_1) / E_1 + (1.0 - nu_2 * nu_2) / E_2;

    return TS_STEP(workings, Z_E_formula, sqrt(1.0 / (pi * give)), nu_1, E_1, nu_2, E_2);
}
