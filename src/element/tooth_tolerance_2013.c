/* element/tooth_tolerance_2013.c: how far may a flank deviate, by the edition of 2013? */
#include "element/tooth_tolerance.h"

#include "element/tooth_tolerance_rounding.h"

#include <math.h>
#include <stdbool.h>

#define CLAUSE(number) "ISO 1328-1:2013, " number " (formula from memory)"

static const ts_formula s_A_formula = {
    .symbol  = "s_A",
    .meaning = "factor from class 5 to class A",
    .unit    = "1",
    .text    = "2^((A - 5)/2)",
    .source  = CLAUSE("5.2"),
};
static const ts_rounded_formula f_p_formula = TS_ROUNDED_FORMULA(
    "f_pT", "single pitch tolerance", "(0.001*1000*d + 0.4*1000*m_n + 5)*s_A/1e6", CLAUSE("5.3.2"));
static const ts_rounded_formula F_p_formula = TS_ROUNDED_FORMULA(
    "F_pT", "total cumulative pitch tolerance",
    "(0.002*1000*d + 0.55*sqrt(1000*d) + 0.7*1000*m_n + 12)*s_A/1e6", CLAUSE("5.3.3"));
static const ts_rounded_formula f_Halpha_formula =
    TS_ROUNDED_FORMULA("f_HalphaT", "profile slope tolerance",
                       "(0.4*1000*m_n + 0.001*1000*d + 4)*s_A/1e6", CLAUSE("5.3.4"));
static const ts_rounded_formula f_falpha_formula = TS_ROUNDED_FORMULA(
    "f_falphaT", "profile form tolerance", "(0.55*1000*m_n + 5)*s_A/1e6", CLAUSE("5.3.5"));
static const ts_rounded_formula F_alpha_formula = TS_ROUNDED_FORMULA(
    "F_alphaT", "total profile tolerance", "sqrt(f_HalphaTx^2 + f_falphaTx^2)", CLAUSE("5.3.6"));
static const ts_rounded_formula f_Hbeta_formula =
    TS_ROUNDED_FORMULA("f_HbetaT", "helix slope tolerance",
                       "(0.05*sqrt(1000*d) + 0.35*sqrt(1000*b) + 4)*s_A/1e6", CLAUSE("5.3.7"));
static const ts_rounded_formula f_fbeta_formula =
    TS_ROUNDED_FORMULA("f_fbetaT", "helix form tolerance",
                       "(0.07*sqrt(1000*d) + 0.45*sqrt(1000*b) + 4)*s_A/1e6", CLAUSE("5.3.8"));
static const ts_rounded_formula F_beta_formula = TS_ROUNDED_FORMULA(
    "F_betaT", "total helix tolerance", "sqrt(f_HbetaTx^2 + f_fbetaTx^2)", CLAUSE("5.3.9"));
static const ts_rounded_formula F_r_formula = TS_ROUNDED_FORMULA(
    "F_rT", "runout tolerance", "0.9*F_pTx", "ISO 1328-1:2013, annex E (formula from memory)");

static double rounded(const ts_rounded_formula *formula, double exact, ts_workings *workings)
{
    return ts_tolerance_rounded(formula, exact, TS_ROUND_TO_TENTHS, workings);
}

static void solve_pitch(double m_n, double d, double s_A, ts_tooth_tolerance *out,
                        ts_workings *workings)
{
    const double f_p =
        TS_STEP(workings, f_p_formula.exact,
                (0.001 * 1000.0 * d + 0.4 * 1000.0 * m_n + 5.0) * s_A / 1e6, d, m_n, s_A);
    const double sum   = 0.002 * 1000.0 * d + 0.55 * sqrt(1000.0 * d) + 0.7 * 1000.0 * m_n + 12.0;
    const double F_pTx = TS_STEP(workings, F_p_formula.exact, sum * s_A / 1e6, d, m_n, s_A);
    const double F_r   = TS_STEP(workings, F_r_formula.exact, 0.9 * F_pTx, F_pTx);

    out->f_p = rounded(&f_p_formula, f_p, workings);
    out->F_p = rounded(&F_p_formula, F_pTx, workings);
    out->F_r = rounded(&F_r_formula, F_r, workings);
}

/* The total is made of the parts before they are rounded. */
static void solve_profile(double m_n, double d, double s_A, ts_tooth_tolerance *out,
                          ts_workings *workings)
{
    const double f_HalphaTx =
        TS_STEP(workings, f_Halpha_formula.exact,
                (0.4 * 1000.0 * m_n + 0.001 * 1000.0 * d + 4.0) * s_A / 1e6, m_n, d, s_A);
    const double f_falphaTx = TS_STEP(workings, f_falpha_formula.exact,
                                      (0.55 * 1000.0 * m_n + 5.0) * s_A / 1e6, m_n, s_A);
    const double F_alpha =
        TS_STEP(workings, F_alpha_formula.exact,
                sqrt(f_HalphaTx * f_HalphaTx + f_falphaTx * f_falphaTx), f_HalphaTx, f_falphaTx);

    out->f_Halpha = rounded(&f_Halpha_formula, f_HalphaTx, workings);
    out->f_falpha = rounded(&f_falpha_formula, f_falphaTx, workings);
    out->F_alpha  = rounded(&F_alpha_formula, F_alpha, workings);
}

static void solve_helix(double d, double b, double s_A, ts_tooth_tolerance *out,
                        ts_workings *workings)
{
    const double slope     = 0.05 * sqrt(1000.0 * d) + 0.35 * sqrt(1000.0 * b) + 4.0;
    const double form      = 0.07 * sqrt(1000.0 * d) + 0.45 * sqrt(1000.0 * b) + 4.0;
    const double f_HbetaTx = TS_STEP(workings, f_Hbeta_formula.exact, slope * s_A / 1e6, d, b, s_A);
    const double f_fbetaTx = TS_STEP(workings, f_fbeta_formula.exact, form * s_A / 1e6, d, b, s_A);
    const double F_beta =
        TS_STEP(workings, F_beta_formula.exact, sqrt(f_HbetaTx * f_HbetaTx + f_fbetaTx * f_fbetaTx),
                f_HbetaTx, f_fbetaTx);

    out->f_Hbeta = rounded(&f_Hbeta_formula, f_HbetaTx, workings);
    out->f_fbeta = rounded(&f_fbeta_formula, f_fbetaTx, workings);
    out->F_beta  = rounded(&F_beta_formula, F_beta, workings);
}

/* Written so that a NaN is outside. */
static bool within(double value, double least, double most)
{
    return value >= least && value <= most;
}

static unsigned remarks_on(const ts_tolerance_input *in, double d)
{
    const double half_right = 0.78539816339744830962;
    /* 45 degrees in radians may have been rounded up, and so may z, a whole number. */
    const double hair = 1e-9;
    const double z    = d * cos(in->beta) / in->m_n;
    unsigned     told = 0;

    if (in->class < 1 || in->class > 11)
        told |= TS_TOLERANCE_CLASS;
    if (!within(in->m_n, 0.5e-3, 70e-3))
        told |= TS_TOLERANCE_MODULE;
    if (!within(d, 5e-3, 15.0))
        told |= TS_TOLERANCE_DIAMETER;
    if (!within(in->b, 4e-3, 1.2))
        told |= TS_TOLERANCE_WIDTH;
    if (!within(z, 5.0 - hair, 1000.0 + hair))
        told |= TS_TOLERANCE_TEETH;
    if (!within(fabs(in->beta), 0.0, half_right + hair))
        told |= TS_TOLERANCE_HELIX;
    return told;
}

/* Far beyond any gear, and near enough to keep every result finite. */
static bool computable(double length)
{
    return within(length, 1e-9, 1e6);
}

ts_tooth_tolerance ts_tooth_tolerance_2013(const ts_tolerance_input *in, ts_workings *workings)
{
    const double       none = NAN;
    const double       m_n = in->m_n, d = fabs(in->d), b = in->b;
    ts_tooth_tolerance out = {none, none, none, none, none, none, none, none, none, 0};

    out.remarks = remarks_on(in, d);
    if ((out.remarks & TS_TOLERANCE_CLASS) != 0 || !computable(d))
        return out;

    const double s_A = ts_class_step(in->class, &s_A_formula, workings);
    if (computable(m_n)) {
        solve_pitch(m_n, d, s_A, &out, workings);
        solve_profile(m_n, d, s_A, &out, workings);
    }
    if (computable(b))
        solve_helix(d, b, s_A, &out, workings);
    return out;
}
