/* rating/shaft/din743_rate.c: how far are the stresses of a section from fatigue and from yield? */
#include "rating/shaft/din743.h"

#include <math.h>

#define DIN_743(what) "DIN 743-" what " (from memory)"

static const double pi = 3.14159265358979323846;

static const ts_formula axial_formula = {
    .symbol  = "sigma_zd",
    .meaning = "nominal stress of pull or push",
    .unit    = "Pa",
    .text    = "4*N/(pi*(d^2 - d_i^2))",
    .source  = DIN_743("1:2012, table 1"),
};
static const ts_formula bending_formula = {
    .symbol  = "sigma_b",
    .meaning = "nominal stress of bending",
    .unit    = "Pa",
    .text    = "32*M*d/(pi*(d^4 - d_i^4))",
    .source  = DIN_743("1:2012, table 1"),
};
static const ts_formula torsion_formula = {
    .symbol  = "tau_t",
    .meaning = "nominal stress of torsion",
    .unit    = "Pa",
    .text    = "16*T*d/(pi*(d^4 - d_i^4))",
    .source  = DIN_743("1:2012, table 1"),
};
static const ts_formula mean_formula = {
    .symbol  = "sigma_mv",
    .meaning = "equivalent mean stress",
    .unit    = "Pa",
    .text    = "sqrt((sigma_zdm + sigma_bm)^2 + 3*tau_tm^2)",
    .source  = DIN_743("1:2012, 4.2"),
};
static const ts_formula fatigue_formula = {
    .symbol  = "S_D",
    .meaning = "safety against fatigue",
    .unit    = "1",
    .text    = "1/sqrt((sigma_zda/sigma_ADKzd + sigma_ba/sigma_ADKb)^2 + (tau_ta/sigma_ADKt)^2)",
    .source  = DIN_743("1:2012, 4.2"),
};
static const ts_formula yield_formula = {
    .symbol  = "S_F",
    .meaning = "safety against lasting deformation",
    .unit    = "1",
    .text    = "1/sqrt((sigma_zdmax/sigma_FKzd + sigma_bmax/sigma_FKb)^2 + "
               "(tau_tmax/sigma_FKt)^2)",
    .source  = DIN_743("1:2012, 4.3"),
};

static bool is_ring(double d, double d_i)
{
    return d > d_i && d_i >= 0.0;
}

double ts_nominal_axial(double N, double d, double d_i, ts_workings *workings)
{
    if (!is_ring(d, d_i) || isnan(N))
        return NAN;
    return TS_STEP(workings, axial_formula, 4.0 * N / (pi * (d * d - d_i * d_i)), N, d, d_i);
}

static double fourths(double d, double d_i)
{
    return d * d * d * d - d_i * d_i * d_i * d_i;
}

double ts_nominal_bending(double M, double d, double d_i, ts_workings *workings)
{
    if (!is_ring(d, d_i) || isnan(M))
        return NAN;
    return TS_STEP(workings, bending_formula, 32.0 * M * d / (pi * fourths(d, d_i)), M, d, d_i);
}

double ts_nominal_torsion(double T, double d, double d_i, ts_workings *workings)
{
    if (!is_ring(d, d_i) || isnan(T))
        return NAN;
    return TS_STEP(workings, torsion_formula, 16.0 * T * d / (pi * fourths(d, d_i)), T, d, d_i);
}

/* Bearable amplitude at the mean stress, both equivalent ones of the part; never below 0. */
static double bearable(const ts_din_section *section, const ts_din_ability *ability,
                       ts_din_part part, double mean, double amplitude)
{
    const double WK = ability->sigma_WK[part], FK = ability->sigma_FK[part];
    const double psi = WK / (2.0 * ability->sigma_BK - WK);

    if (section->mean_follows) {
        const double ratio = mean / amplitude;
        const double limit = FK / (1.0 + ratio), fatigue = WK / (1.0 + psi * ratio);

        return fmin(limit, fatigue);
    }
    return fmax(0.0, fmin(WK - psi * mean, FK - mean));
}

static const char *bearable_words(const ts_din_section *section)
{
    return section->mean_follows
               ? DIN_743(
                     "1:2012, 4.2.5, case 2: the smaller of sigma_WK/(1 + psi*sigma_mv/sigma_a) "
                     "and sigma_FK/(1 + sigma_mv/sigma_a), psi = sigma_WK/(2*sigma_BK - "
                     "sigma_WK)")
               : DIN_743("1:2012, 4.2.5, case 1: the smaller of sigma_WK - psi*sigma_mv and "
                         "sigma_FK - sigma_mv, psi = sigma_WK/(2*sigma_BK - sigma_WK)");
}

static void bear(const ts_din_section *section, const ts_din_ability *ability,
                 const ts_din_stress *stress, ts_din_safety *safety, ts_workings *workings)
{
    static const char *const names[TS_DIN_PARTS] = {"sigma_ADKzd", "sigma_ADKb", "sigma_ADKt"};
    const double             sigma_zdm = stress->m[TS_DIN_ZD], sigma_bm = stress->m[TS_DIN_B];
    const double             tau_tm = stress->m[TS_DIN_T];
    const double             sum    = sigma_zdm + sigma_bm;
    const double sigma_mv = TS_STEP(workings, mean_formula, sqrt(sum * sum + 3.0 * tau_tm * tau_tm),
                                    sigma_zdm, sigma_bm, tau_tm);

    for (int part = 0; part < TS_DIN_PARTS; part++) {
        const double mean      = part == TS_DIN_T ? sigma_mv / sqrt(3.0) : sigma_mv;
        const double amplitude = stress->a[part];

        safety->sigma_ADK[part] = ability->sigma_WK[part];
        if (amplitude > 0.0)
            safety->sigma_ADK[part] =
                bearable(section, ability, (ts_din_part)part, mean, amplitude);
        ts_workings_row(workings, names[part], safety->sigma_ADK[part], "Pa",
                        bearable_words(section));
    }
}

static bool all_given(const double parts[TS_DIN_PARTS])
{
    return parts[0] >= 0.0 && parts[1] >= 0.0 && parts[2] >= 0.0;
}

static double safety_of(double along, double across)
{
    const double used = sqrt(along * along + across * across);

    if (used > 0.0)
        return 1.0 / used;
    return (double)INFINITY;
}

ts_din_safety ts_din_rate(const ts_din_section *section, const ts_din_ability *ability,
                          const ts_din_stress *stress, ts_workings *workings)
{
    ts_din_safety safety = {NAN, NAN, {NAN, NAN, NAN}};

    if (!(all_given(stress->a) && all_given(stress->m) && all_given(stress->most)))
        return safety;
    bear(section, ability, stress, &safety, workings);
    const double sigma_zda = stress->a[TS_DIN_ZD], sigma_ba = stress->a[TS_DIN_B];
    const double tau_ta = stress->a[TS_DIN_T], sigma_ADKzd = safety.sigma_ADK[TS_DIN_ZD];
    const double sigma_ADKb = safety.sigma_ADK[TS_DIN_B];
    const double sigma_ADKt = safety.sigma_ADK[TS_DIN_T];
    const bool   none =
        !((sigma_zda > 0.0 && sigma_ADKzd <= 0.0) || (sigma_ba > 0.0 && sigma_ADKb <= 0.0) ||
          (tau_ta > 0.0 && sigma_ADKt <= 0.0));

    safety.S_D = 0.0; /* the mean stress alone is too much */
    if (none) {
        safety.S_D =
            safety_of(sigma_zda / sigma_ADKzd + sigma_ba / sigma_ADKb, tau_ta / sigma_ADKt);
        if (isfinite(safety.S_D))
            TS_STEP(workings, fatigue_formula, safety.S_D, sigma_zda, sigma_ADKzd, sigma_ba,
                    sigma_ADKb, tau_ta, sigma_ADKt);
    }
    const double sigma_zdmax = stress->most[TS_DIN_ZD], sigma_bmax = stress->most[TS_DIN_B];
    const double tau_tmax = stress->most[TS_DIN_T], sigma_FKzd = ability->sigma_FK[TS_DIN_ZD];
    const double sigma_FKb = ability->sigma_FK[TS_DIN_B], sigma_FKt = ability->sigma_FK[TS_DIN_T];

    safety.S_F = safety_of(sigma_zdmax / sigma_FKzd + sigma_bmax / sigma_FKb, tau_tmax / sigma_FKt);
    if (isfinite(safety.S_F))
        TS_STEP(workings, yield_formula, safety.S_F, sigma_zdmax, sigma_FKzd, sigma_bmax, sigma_FKb,
                tau_tmax, sigma_FKt);
    return safety;
}
