/* rating/agma2101/agma_dynamic.c: which curve belongs to an accuracy, and what does it say? */
#include "rating/agma2101/agma_dynamic.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

/* The standard's speed is in ft/min, 0.00508 m/s exactly; its metric text rounds to 196.85 v.  It
 * prints the exponent 2/3 as 0.667. */
#define CLAUSE_8 AGMA_2101 "8" RECALLED
#define C95      "ANSI/AGMA 2101-C95, clause 8" RECALLED

#define DYNAMIC(name, letters, what, how, expression, where)                                       \
    static const ts_formula name##_formula = {.symbol  = (letters),                                \
                                              .meaning = (what),                                   \
                                              .unit    = (how),                                    \
                                              .text    = (expression),                             \
                                              .source  = (where)}

DYNAMIC(B_D04, "B_v", "exponent of the dynamic factor", "1", "0.25*(A_v - 5)^(2/3)", CLAUSE_8);
DYNAMIC(C_D04, "C_v", "constant of the dynamic factor", "1", "50 + 56*(1 - B_v)", CLAUSE_8);
DYNAMIC(v_max_D04, "v_max", "end of the curve", "m/s", "(C_v + 14 - A_v)^2*0.00508", CLAUSE_8);
DYNAMIC(K_v_D04, "K_v", "dynamic factor", "1", "((C_v + sqrt(v/0.00508))/C_v)^B_v", CLAUSE_8);

DYNAMIC(B_C95, "B_v", "exponent of the dynamic factor", "1", "0.25*(12 - Q_v)^(2/3)", C95);
DYNAMIC(C_C95, "C_v", "constant A of the dynamic factor", "1", "50 + 56*(1 - B_v)", C95);
DYNAMIC(v_max_C95, "v_max", "end of the curve", "m/s", "(C_v + Q_v - 3)^2*0.00508", C95);
DYNAMIC(K_v_C95, "K_v", "dynamic factor", "1", "((C_v + sqrt(v/0.00508))/C_v)^B_v", C95);

#define VERY_ACCURATE 1.11
#define GRANTED                                                                                    \
    "the standard grants very accurate gears 1.02 to 1.11 by experience, whatever the speed; the " \
    "upper end is taken, "

static ts_agma_dynamic very_accurate(bool Q_v, ts_workings *workings)
{
    ts_workings_assumed(workings, "K_v", VERY_ACCURATE, "1", Q_v ? GRANTED C95 : GRANTED CLAUSE_8);
    return (ts_agma_dynamic){
        .B = NAN, .C = NAN, .v_max = INFINITY, .K_v = VERY_ACCURATE, .Q_v = Q_v};
}

static const ts_agma_dynamic unknown = {.B = NAN, .C = NAN, .v_max = NAN, .K_v = NAN};

ts_agma_dynamic ts_agma_dynamic_D04(double A_v, ts_workings *workings)
{
    if (isnan(A_v))
        return unknown;
    if (A_v < 6.0)
        return very_accurate(false, workings);
    const double root  = cbrt(A_v - 5.0);
    const double B_v   = TS_STEP(workings, B_D04_formula, 0.25 * (root * root), A_v);
    const double C_v   = TS_STEP(workings, C_D04_formula, 50.0 + 56.0 * (1.0 - B_v), B_v);
    const double rest  = C_v + 14.0 - A_v;
    const double v_max = TS_STEP(workings, v_max_D04_formula, rest * rest * 0.00508, C_v, A_v);

    return (ts_agma_dynamic){.B = B_v, .C = C_v, .v_max = v_max, .K_v = NAN, .outside = A_v > 12.0};
}

ts_agma_dynamic ts_agma_dynamic_C95(double Q_v, ts_workings *workings)
{
    if (isnan(Q_v))
        return unknown;
    if (Q_v > 11.0)
        return very_accurate(true, workings);
    const double root  = cbrt(12.0 - Q_v);
    const double B_v   = TS_STEP(workings, B_C95_formula, 0.25 * (root * root), Q_v);
    const double C_v   = TS_STEP(workings, C_C95_formula, 50.0 + 56.0 * (1.0 - B_v), B_v);
    const double rest  = C_v + Q_v - 3.0;
    const double v_max = TS_STEP(workings, v_max_C95_formula, rest * rest * 0.00508, C_v, Q_v);

    return (ts_agma_dynamic){
        .B = B_v, .C = C_v, .v_max = v_max, .K_v = NAN, .Q_v = true, .outside = Q_v < 5.0};
}

ts_agma_dynamic ts_agma_dynamic_known(double K_v)
{
    return (ts_agma_dynamic){.B = NAN, .C = NAN, .v_max = INFINITY, .K_v = K_v};
}

double ts_agma_dynamic_factor(const ts_agma_dynamic *curve, double v, ts_workings *workings)
{
    const double B_v = curve->B, C_v = curve->C;

    if (isnan(B_v))
        return v >= 0.0 ? curve->K_v : (double)NAN;
    if (!(v >= 0.0) || !(C_v > 0.0))
        return NAN;
    const double K_v = pow((C_v + sqrt(v / 0.00508)) / C_v, B_v);
    if (curve->Q_v)
        return TS_STEP(workings, K_v_C95_formula, K_v, C_v, v, B_v);
    return TS_STEP(workings, K_v_D04_formula, K_v, C_v, v, B_v);
}

/* ---- accuracy from a measured deviation ------------------------------------------------------ */

#define LN_ROOT_2 "0.3466"
DYNAMIC(A_v_small, "A_v", "transmission accuracy, before rounding up, d_T <= 400 mm", "1",
        "ln(f_pt*1e6/(0.3*m_n*1e3 + 0.003*d_T*1e3 + 5.2))/" LN_ROOT_2 " + 5", CLAUSE_8);
DYNAMIC(A_v_large, "A_v", "transmission accuracy, before rounding up, d_T > 400 mm", "1",
        "ln(f_pt*1e6/(0.3*m_n*1e3 + 0.12*sqrt(d_T*1e3) + 4))/" LN_ROOT_2 " + 5", CLAUSE_8);

double ts_agma_accuracy_of(double f_pt, double m_n, double d_T, ts_workings *workings)
{
    if (!(f_pt > 0.0) || !(m_n > 0.0) || !(d_T >= 0.0) || !isfinite(f_pt + m_n + d_T))
        return NAN;
    const double module = 0.3 * m_n * 1e3;
    double       A_v;
    if (d_T <= 0.4)
        A_v = TS_STEP(workings, A_v_small_formula,
                      log(f_pt * 1e6 / (module + 0.003 * d_T * 1e3 + 5.2)) / 0.3466 + 5.0, f_pt,
                      m_n, d_T);
    else
        A_v = TS_STEP(workings, A_v_large_formula,
                      log(f_pt * 1e6 / (module + 0.12 * sqrt(d_T * 1e3) + 4.0)) / 0.3466 + 5.0,
                      f_pt, m_n, d_T);
    A_v = ceil(A_v);
    ts_workings_row(workings, "A_v", A_v, "1", "rounded up to a whole number, " CLAUSE_8);
    return A_v;
}

DYNAMIC(K_v_barth, "K_v", "velocity factor of cut or milled teeth", "1",
        "(1200*0.00508 + v)/(1200*0.00508)",
        "Barth's equation as in Shigley's Mechanical Engineering Design, chapter 14 (from memory)");

double ts_agma_dynamic_barth(double v, ts_workings *workings)
{
    const double unit = 1200.0 * 0.00508; /* 1200 ft/min */

    if (!(v >= 0.0))
        return NAN;
    return TS_STEP(workings, K_v_barth_formula, (unit + v) / unit, v);
}
