/* element/tooth_tolerance_1995.c: how far may a flank deviate, by the editions of 1995 and 1997?
 *
 * Both give formulas for class 5 on the geometric means of ranges, so that all gears of a range
 * share one tolerance.
 */
#include "element/tooth_tolerance.h"

#include "element/tooth_tolerance_rounding.h"

#include <math.h>
#include <stdbool.h>
#include <stddef.h>

#define CLAUSE(number) "ISO 1328-1:1995, " number " (formula from memory)"
#define RADIAL(number) "ISO 1328-2:1997, " number " (formula from memory)"

static const ts_formula s_Q_formula = {
    .symbol  = "s_A",
    .meaning = "factor from class 5 to class A",
    .unit    = "1",
    .text    = "2^((A - 5)/2)",
    .source  = CLAUSE("6.1"),
};
static const ts_formula d_mean_formula = {
    .symbol  = "d_mean",
    .meaning = "geometric mean of the range of diameters",
    .unit    = "m",
    .text    = "sqrt(d_from*d_to)",
    .source  = CLAUSE("6.1"),
};
static const ts_formula m_mean_formula = {
    .symbol  = "m_mean",
    .meaning = "geometric mean of the range of modules",
    .unit    = "m",
    .text    = "sqrt(m_from*m_to)",
    .source  = CLAUSE("6.1"),
};
static const ts_formula b_mean_formula = {
    .symbol  = "b_mean",
    .meaning = "geometric mean of the range of face widths",
    .unit    = "m",
    .text    = "sqrt(b_from*b_to)",
    .source  = CLAUSE("6.1"),
};
static const ts_rounded_formula f_pt_formula =
    TS_ROUNDED_FORMULA("f_pt", "single pitch deviation allowed",
                       "(0.3*(1000*m_mean + 0.4*sqrt(1000*d_mean)) + 4)*s_A/1e6", CLAUSE("6.4"));
static const ts_rounded_formula F_p_formula =
    TS_ROUNDED_FORMULA("F_p", "total cumulative pitch deviation allowed",
                       "(0.3*1000*m_mean + 1.25*sqrt(1000*d_mean) + 7)*s_A/1e6", CLAUSE("6.4"));
static const ts_rounded_formula f_Halpha_formula = TS_ROUNDED_FORMULA(
    "f_Halpha", "profile slope deviation allowed",
    "(2*sqrt(1000*m_mean) + 0.14*sqrt(1000*d_mean) + 0.5)*s_A/1e6", CLAUSE("annex B"));
static const ts_rounded_formula f_falpha_formula = TS_ROUNDED_FORMULA(
    "f_falpha", "profile form deviation allowed",
    "(2.5*sqrt(1000*m_mean) + 0.17*sqrt(1000*d_mean) + 0.5)*s_A/1e6", CLAUSE("annex B"));
static const ts_rounded_formula F_alpha_formula = TS_ROUNDED_FORMULA(
    "F_alpha", "total profile deviation allowed",
    "(3.2*sqrt(1000*m_mean) + 0.22*sqrt(1000*d_mean) + 0.7)*s_A/1e6", CLAUSE("6.4"));
static const ts_rounded_formula f_Hbeta_formula = TS_ROUNDED_FORMULA(
    "f_Hbeta", "helix slope deviation allowed",
    "(0.07*sqrt(1000*d_mean) + 0.45*sqrt(1000*b_mean) + 3)*s_A/1e6", CLAUSE("annex B"));
static const ts_rounded_formula f_fbeta_formula = TS_ROUNDED_FORMULA(
    "f_fbeta", "helix form deviation allowed",
    "(0.07*sqrt(1000*d_mean) + 0.45*sqrt(1000*b_mean) + 3)*s_A/1e6", CLAUSE("annex B"));
static const ts_rounded_formula F_beta_formula = TS_ROUNDED_FORMULA(
    "F_beta", "total helix deviation allowed",
    "(0.1*sqrt(1000*d_mean) + 0.63*sqrt(1000*b_mean) + 4.2)*s_A/1e6", CLAUSE("6.4"));
static const ts_rounded_formula F_r_formula =
    TS_ROUNDED_FORMULA("F_r", "runout allowed", "0.8*F_px", RADIAL("annex B"));
static const ts_rounded_formula F_ipp_formula =
    TS_ROUNDED_FORMULA("F_ipp", "total radial composite deviation allowed",
                       "(3.2*1000*m_mean + 1.01*sqrt(1000*d_mean) + 6.4)*s_A/1e6", RADIAL("5.4"));
static const ts_rounded_formula f_ipp_formula =
    TS_ROUNDED_FORMULA("f_ipp", "radial composite deviation from tooth to tooth allowed",
                       "(2.96*1000*m_mean + 0.01*sqrt(1000*d_mean) + 0.8)*s_A/1e6", RADIAL("5.4"));

/* ---- ranges, mm ------------------------------------------------------------------------------ */

typedef struct ranges {
    const double *limits;
    size_t        count;
} ranges;

#define RANGES(limits)                                                                             \
    {                                                                                              \
        limits, sizeof(limits) / sizeof(limits)[0]                                                 \
    }

static const double d_limits[]  = {5.0,    20.0,   50.0,   125.0,  280.0,  560.0,  1000.0,
                                   1600.0, 2500.0, 4000.0, 6000.0, 8000.0, 10000.0};
static const double m_limits[]  = {0.5, 2.0, 3.5, 6.0, 10.0, 16.0, 25.0, 40.0, 70.0};
static const double b_limits[]  = {4.0, 10.0, 20.0, 40.0, 80.0, 160.0, 250.0, 400.0, 650.0, 1000.0};
static const double dr_limits[] = {5.0, 20.0, 50.0, 125.0, 280.0, 560.0, 1000.0};
static const double mr_limits[] = {0.2, 0.5, 0.8, 1.0, 1.5, 2.5, 4.0, 6.0, 10.0};

static const ranges d_ranges = RANGES(d_limits), m_ranges = RANGES(m_limits);
static const ranges b_ranges        = RANGES(b_limits);
static const ranges radial_d_ranges = RANGES(dr_limits), radial_m_ranges = RANGES(mr_limits);

/* A limit belongs to the range below it.  A size that comes from mm through m may miss its limit
 * by a rounding.  False, also for NaN, outside of all ranges. */
static bool range_of(const ranges *all, double size, double *from, double *to)
{
    const double mm   = 1000.0 * size;
    const double hair = 1e-9;

    if (!(mm >= all->limits[0] * (1.0 - hair)))
        return false;
    for (size_t i = 1; i < all->count; i++) {
        if (mm > all->limits[i] * (1.0 + hair))
            continue;
        *from = all->limits[i - 1] / 1000.0;
        *to   = all->limits[i] / 1000.0;
        return true;
    }
    return false;
}

/* NaN outside of the ranges. */
static double mean_of_d(const ranges *all, double d, ts_workings *workings)
{
    double d_from, d_to;

    if (!range_of(all, d, &d_from, &d_to))
        return NAN;
    ts_workings_row(workings, "d_from", d_from, "m", CLAUSE("range of diameters"));
    ts_workings_row(workings, "d_to", d_to, "m", CLAUSE("range of diameters"));
    return TS_STEP(workings, d_mean_formula, sqrt(d_from * d_to), d_from, d_to);
}

static double mean_of_m(const ranges *all, double m_n, ts_workings *workings)
{
    double m_from, m_to;

    if (!range_of(all, m_n, &m_from, &m_to))
        return NAN;
    ts_workings_row(workings, "m_from", m_from, "m", CLAUSE("range of modules"));
    ts_workings_row(workings, "m_to", m_to, "m", CLAUSE("range of modules"));
    return TS_STEP(workings, m_mean_formula, sqrt(m_from * m_to), m_from, m_to);
}

static double mean_of_b(double b, ts_workings *workings)
{
    double b_from, b_to;

    if (!range_of(&b_ranges, b, &b_from, &b_to))
        return NAN;
    ts_workings_row(workings, "b_from", b_from, "m", CLAUSE("range of face widths"));
    ts_workings_row(workings, "b_to", b_to, "m", CLAUSE("range of face widths"));
    return TS_STEP(workings, b_mean_formula, sqrt(b_from * b_to), b_from, b_to);
}

/* ---- ISO 1328-1:1995 ------------------------------------------------------------------------- */

/* What the formulas share: roots of the means in mm, and the class. */
typedef struct means {
    double m_mean, d_mean, b_mean, s_A;
} means;

static double fine(const ts_rounded_formula *formula, double exact, ts_workings *workings)
{
    return ts_tolerance_rounded(formula, exact, TS_ROUND_TO_TENTHS, workings);
}

static void solve_pitch(const means *mean, ts_tooth_tolerance *out, ts_workings *workings)
{
    const double m_mean = mean->m_mean, d_mean = mean->d_mean, s_A = mean->s_A;
    const double root_d = sqrt(1000.0 * d_mean);

    const double f_ptx =
        TS_STEP(workings, f_pt_formula.exact,
                (0.3 * (1000.0 * m_mean + 0.4 * root_d) + 4.0) * s_A / 1e6, m_mean, d_mean, s_A);
    const double F_px =
        TS_STEP(workings, F_p_formula.exact,
                (0.3 * 1000.0 * m_mean + 1.25 * root_d + 7.0) * s_A / 1e6, m_mean, d_mean, s_A);
    const double F_rx = TS_STEP(workings, F_r_formula.exact, 0.8 * F_px, F_px);

    out->f_p = fine(&f_pt_formula, f_ptx, workings);
    out->F_p = fine(&F_p_formula, F_px, workings);
    out->F_r = ts_tolerance_rounded(&F_r_formula, F_rx, TS_ROUND_TO_HALVES, workings);
}

static void solve_profile(const means *mean, ts_tooth_tolerance *out, ts_workings *workings)
{
    const double m_mean = mean->m_mean, d_mean = mean->d_mean, s_A = mean->s_A;
    const double root_m = sqrt(1000.0 * m_mean), root_d = sqrt(1000.0 * d_mean);

    out->f_Halpha =
        fine(&f_Halpha_formula,
             TS_STEP(workings, f_Halpha_formula.exact,
                     (2.0 * root_m + 0.14 * root_d + 0.5) * s_A / 1e6, m_mean, d_mean, s_A),
             workings);
    out->f_falpha =
        fine(&f_falpha_formula,
             TS_STEP(workings, f_falpha_formula.exact,
                     (2.5 * root_m + 0.17 * root_d + 0.5) * s_A / 1e6, m_mean, d_mean, s_A),
             workings);
    out->F_alpha =
        fine(&F_alpha_formula,
             TS_STEP(workings, F_alpha_formula.exact,
                     (3.2 * root_m + 0.22 * root_d + 0.7) * s_A / 1e6, m_mean, d_mean, s_A),
             workings);
}

static void solve_helix(const means *mean, ts_tooth_tolerance *out, ts_workings *workings)
{
    const double d_mean = mean->d_mean, b_mean = mean->b_mean, s_A = mean->s_A;
    const double root_d = sqrt(1000.0 * d_mean), root_b = sqrt(1000.0 * b_mean);
    const double part = (0.07 * root_d + 0.45 * root_b + 3.0) * s_A / 1e6;

    out->f_Hbeta =
        fine(&f_Hbeta_formula, TS_STEP(workings, f_Hbeta_formula.exact, part, d_mean, b_mean, s_A),
             workings);
    out->f_fbeta =
        fine(&f_fbeta_formula, TS_STEP(workings, f_fbeta_formula.exact, part, d_mean, b_mean, s_A),
             workings);
    out->F_beta =
        fine(&F_beta_formula,
             TS_STEP(workings, F_beta_formula.exact,
                     (0.1 * root_d + 0.63 * root_b + 4.2) * s_A / 1e6, d_mean, b_mean, s_A),
             workings);
}

static unsigned lacking(const means *mean)
{
    return (isnan(mean->m_mean) ? TS_TOLERANCE_MODULE : 0U) |
           (isnan(mean->d_mean) ? TS_TOLERANCE_DIAMETER : 0U);
}

ts_tooth_tolerance ts_tooth_tolerance_1995(const ts_tolerance_input *in, ts_workings *workings)
{
    const double       none = NAN;
    ts_tooth_tolerance out  = {none, none, none, none, none, none, none, none, none, 0};
    means              mean = {
                     .m_mean = mean_of_m(&m_ranges, in->m_n, workings),
                     .d_mean = mean_of_d(&d_ranges, fabs(in->d), workings),
                     .b_mean = mean_of_b(in->b, workings),
    };

    out.remarks = lacking(&mean) | (isnan(mean.b_mean) ? TS_TOLERANCE_WIDTH : 0U);
    if (in->class < 0 || in->class > 12)
        out.remarks |= TS_TOLERANCE_CLASS;
    if ((out.remarks & (TS_TOLERANCE_CLASS | TS_TOLERANCE_DIAMETER)) != 0)
        return out;
    mean.s_A = ts_class_step(in->class, &s_Q_formula, workings);
    if ((out.remarks & TS_TOLERANCE_MODULE) == 0) {
        solve_pitch(&mean, &out, workings);
        solve_profile(&mean, &out, workings);
    }
    if ((out.remarks & TS_TOLERANCE_WIDTH) == 0)
        solve_helix(&mean, &out, workings);
    return out;
}

/* ---- ISO 1328-2:1997 ------------------------------------------------------------------------- */

static double coarse(const ts_rounded_formula *formula, double exact, ts_workings *workings)
{
    return ts_tolerance_rounded(formula, exact, TS_ROUND_TO_HALVES, workings);
}

ts_radial_tolerance ts_radial_tolerance_1997(const ts_tolerance_input *in, ts_workings *workings)
{
    const double        none   = NAN;
    ts_radial_tolerance out    = {none, none, 0};
    const double        m_mean = mean_of_m(&radial_m_ranges, in->m_n, workings);
    const double        d_mean = mean_of_d(&radial_d_ranges, fabs(in->d), workings);
    const means         mean   = {.m_mean = m_mean, .d_mean = d_mean};

    out.remarks = lacking(&mean);
    if (in->class < 4 || in->class > 12)
        out.remarks |= TS_TOLERANCE_CLASS;
    if (out.remarks != 0)
        return out;

    const double s_A    = ts_class_step(in->class, &s_Q_formula, workings);
    const double root_d = sqrt(1000.0 * d_mean);
    out.F_ipp           = coarse(&F_ipp_formula,
                                 TS_STEP(workings, F_ipp_formula.exact,
                                         (3.2 * 1000.0 * m_mean + 1.01 * root_d + 6.4) * s_A / 1e6, m_mean,
                                         d_mean, s_A),
                                 workings);
    out.f_ipp           = coarse(&f_ipp_formula,
                                 TS_STEP(workings, f_ipp_formula.exact,
                                         (2.96 * 1000.0 * m_mean + 0.01 * root_d + 0.8) * s_A / 1e6, m_mean,
                                         d_mean, s_A),
                                 workings);
    return out;
}
