/* element/bevel_spiral.c: which spiral angles does a face mill leave at the ends of the teeth? */
#include "element/bevel_spiral.h"

#include "element/bevel_step.h"

#include <math.h>

#define ISO_23509 "ISO 23509:2016, clause 7 (formula from memory)"
#define MILLED    "derived: the cutter's centre keeps its distance from the apex; as " ISO_23509

static const ts_formula beta_e_formula = {
    .symbol  = "beta_e",
    .meaning = "outer spiral angle",
    .unit    = "rad",
    .text    = "asin((2*R_m*r_c0*sin(beta_m) - R_m^2 + R_e^2)/(2*R_e*r_c0))",
    .source  = MILLED,
};
static const ts_formula beta_i_formula = {
    .symbol  = "beta_i",
    .meaning = "inner spiral angle",
    .unit    = "rad",
    .text    = "asin((2*R_m*r_c0*sin(beta_m) - R_m^2 + R_i^2)/(2*R_i*r_c0))",
    .source  = MILLED,
};

static double sine_at(double R, double R_m, double beta_m, double r_c0)
{
    return (2.0 * R_m * r_c0 * sin(beta_m) - R_m * R_m + R * R) / (2.0 * R * r_c0);
}

static void solve_ends(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                       ts_bevel_spiral *spiral, ts_workings *workings)
{
    const double R_m = pair->R_m, R_e = pair->R_e, R_i = teeth->R_i;
    const double beta_m = pair->in.beta_m, r_c0 = teeth->in.r_c0;

    spiral->beta_e = NAN;
    spiral->beta_i = NAN;
    if (isnan(r_c0) && !(beta_m > 0.0)) {
        spiral->beta_e = 0.0;
        spiral->beta_i = 0.0;
        ts_workings_assumed(workings, "beta_e", 0.0, "rad", "straight teeth have no spiral");
        ts_workings_assumed(workings, "beta_i", 0.0, "rad", "straight teeth have no spiral");
        return;
    }
    const double outer = sine_at(R_e, R_m, beta_m, r_c0), inner = sine_at(R_i, R_m, beta_m, r_c0);

    if (!(fabs(outer) < 1.0 && fabs(inner) < 1.0))
        return;
    spiral->beta_e = TS_STEP(workings, beta_e_formula, asin(outer), R_m, r_c0, beta_m, R_e);
    spiral->beta_i = TS_STEP(workings, beta_i_formula, asin(inner), R_m, r_c0, beta_m, R_i);
}

/* ---- undercut -------------------------------------------------------------------------------- */

/* The crown gear's tip reaches 1.1 times as deep as the mate's at this cone distance; it must not
 * pass below the foot of the path of contact on the virtual gear in the normal section. */
#define LIMIT_TEXT(REACH, R, BETA, I)                                                              \
    "1.1*" REACH " - " R "*tan(delta_" I ")*sin(alpha_n)^2/((1 - sin(" BETA                        \
    ")^2*cos(alpha_n)^2)*m_mn)"
#define MEAN_LIMIT_TEXT(I, M) LIMIT_TEXT("k_hap", "R_m", "beta_m", I)
#define INNER_LIMIT_TEXT(I, M)                                                                     \
    LIMIT_TEXT("(k_hap + (R_i - R_m)*tan(theta_a" M ")/m_mn)", "R_i", "beta_i", I)

static const ts_formula mean_limit_formulas[2] =
    TS_BEVEL_BOTH("x_hmmin_m", "least profile shift without undercut, mean section", "1",
                  MEAN_LIMIT_TEXT, ISO_23509);
static const ts_formula inner_limit_formulas[2] =
    TS_BEVEL_BOTH("x_hmmin_i", "least profile shift without undercut, inner end", "1",
                  INNER_LIMIT_TEXT, ISO_23509);

typedef struct undercut {
    double mean, inner, clear;
} undercut;

static double limit_at(double reach, double R, double beta, double delta, const ts_bevel_pair *pair)
{
    const double alpha_n = pair->in.alpha_n, base = sin(beta) * cos(alpha_n);
    const double foot = R * tan(delta) * (sin(alpha_n) * sin(alpha_n)) / (1.0 - base * base);

    return 1.1 * reach - foot / pair->m_mn;
}

static undercut undercut_of(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth, double beta_i,
                            int gear, ts_workings *workings)
{
    const double delta = gear == 0 ? pair->delta_1 : pair->delta_2;
    const double R_m = pair->R_m, R_i = teeth->R_i, m_mn = pair->m_mn;
    const double alpha_n = pair->in.alpha_n, beta_m = pair->in.beta_m;
    const double k_hap = teeth->in.profile.k_hap, theta_a = teeth->theta_a[1 - gear];
    const double reach_i = k_hap + (R_i - R_m) * tan(theta_a) / m_mn;

    const double mean =
        TS_BEVEL_STEP(workings, mean_limit_formulas, limit_at(k_hap, R_m, beta_m, delta, pair),
                      TS_BEVEL_PAIR(k_hap), TS_BEVEL_PAIR(R_m), TS_BEVEL_SELF("delta_", delta),
                      TS_BEVEL_PAIR(alpha_n), TS_BEVEL_PAIR(beta_m), TS_BEVEL_PAIR(m_mn));
    double inner = NAN;

    if (!isnan(beta_i))
        inner = TS_BEVEL_STEP(workings, inner_limit_formulas,
                              limit_at(reach_i, R_i, beta_i, delta, pair), TS_BEVEL_PAIR(k_hap),
                              TS_BEVEL_PAIR(R_i), TS_BEVEL_PAIR(R_m),
                              TS_BEVEL_MATE("theta_a", theta_a), TS_BEVEL_SELF("delta_", delta),
                              TS_BEVEL_PAIR(alpha_n), TS_BEVEL_PAIR(beta_i), TS_BEVEL_PAIR(m_mn));
    /* fmax passes over a NaN, which is what is wanted of an inner end that is not known. */
    return (undercut){mean, inner, teeth->x_hm[gear] - fmax(mean, inner)};
}

void ts_bevel_spiral_solve(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                           ts_bevel_spiral *spiral, ts_workings *workings)
{
    solve_ends(pair, teeth, spiral, workings);

    const undercut first  = undercut_of(pair, teeth, spiral->beta_i, 0, workings);
    const undercut second = undercut_of(pair, teeth, spiral->beta_i, 1, workings);

    spiral->x_hmmin_m1       = first.mean;
    spiral->x_hmmin_i1       = first.inner;
    spiral->clear_undercut_1 = first.clear;
    spiral->x_hmmin_m2       = second.mean;
    spiral->x_hmmin_i2       = second.inner;
    spiral->clear_undercut_2 = second.clear;
}
