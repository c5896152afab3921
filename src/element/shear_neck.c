/* element/shear_neck.c: at which torque does a shear neck break, at least and at most? */
#include "element/shear_neck.h"

#include "base/counter_random.h"
#include "base/normal_law.h"
#include "element/round_torsion.h"

#include <math.h>

static const ts_formula tau_u_formula = {
    .symbol  = "tau_u",
    .meaning = "shear strength",
    .unit    = "Pa",
    .text    = "ratio*Ftu",
    .source  = "MMPDS-01 (2003), table 2.3.1.0(g2): ratio 0.60 in every column (read)",
};
static const ts_formula tau_formula = {
    .symbol  = "tau",
    .meaning = "shear strength at temperature",
    .unit    = "Pa",
    .text    = "warmth*ratio*Ftu",
    .source  = "MMPDS-01 (2003), table 2.3.1.0(g2): ratio 0.60 in every column (read)",
};
static const ts_formula brittle_formula = {
    .symbol  = "T_brittle",
    .meaning = "break torque of a brittle neck",
    .unit    = "N.m",
    .text    = "T_el/K_ts",
    .source  = "derived: the notch's root reaches the shear strength",
};
static const ts_formula share_formula = {
    .symbol  = "dT_T",
    .meaning = "rise of the break torque, first order",
    .unit    = "1",
    .text    = "3*dd/d",
    .source  = "derived: the torque grows with the cube of the diameter",
};
static const ts_formula cov_formula = {
    .symbol  = "cov",
    .meaning = "coefficient of variation of the break torque",
    .unit    = "1",
    .text    = "sqrt(cov_F^2 + cov_ratio^2 + (3*tol/3/d)^2)",
    .source  = "derived: first order, independent causes; tol is three standard deviations",
};
static const ts_formula low_formula = {
    .symbol  = "T_low",
    .meaning = "least break torque",
    .unit    = "N.m",
    .text    = "T_el + y_low*(T_pl - T_el)",
    .source  = "derived: elastic and plastic bound at the weakest corner",
};
static const ts_formula high_formula = {
    .symbol  = "T_high",
    .meaning = "greatest break torque",
    .unit    = "N.m",
    .text    = "T_el + y_high*(T_pl - T_el)",
    .source  = "derived: elastic and plastic bound at the strongest corner",
};

double ts_neck_shear_strength(double Ftu, double ratio, ts_workings *workings)
{
    if (!(Ftu > 0.0 && ratio > 0.0))
        return NAN;
    return TS_STEP(workings, tau_u_formula, ratio * Ftu, ratio, Ftu);
}

ts_neck_torques ts_neck_torques_of(double tau_u, double d, double d_i, double K_ts,
                                   ts_workings *workings)
{
    const double T_el = ts_torque_elastic(tau_u, d, d_i, workings);

    if (!(K_ts >= 1.0 && T_el >= 0.0))
        return (ts_neck_torques){NAN, NAN, NAN};
    return (ts_neck_torques){
        .T_el      = T_el,
        .T_pl      = ts_torque_plastic(tau_u, d, d_i, workings),
        .T_brittle = TS_STEP(workings, brittle_formula, T_el / K_ts, T_el, K_ts),
    };
}

double ts_neck_diameter_share(double dd, double d, ts_workings *workings)
{
    if (!(d > 0.0) || isnan(dd))
        return NAN;
    return TS_STEP(workings, share_formula, 3.0 * dd / d, dd, d);
}

ts_neck_scatter ts_neck_scatter_of(double T, double cov_F, double cov_ratio, double d, double tol,
                                   ts_workings *workings)
{
    if (!(T > 0.0 && cov_F >= 0.0 && cov_ratio >= 0.0 && d > 0.0 && tol >= 0.0))
        return (ts_neck_scatter){NAN, NAN, NAN, NAN};
    const double of_d  = 3.0 * tol / 3.0 / d;
    const double total = sqrt(cov_F * cov_F + cov_ratio * cov_ratio + of_d * of_d);
    const double cov   = TS_STEP(workings, cov_formula, total, cov_F, cov_ratio, tol, d);
    const double z_99 = ts_normal_place(0.99), z_90 = ts_normal_place(0.90);

    return (ts_neck_scatter){
        .cov  = cov,
        .T_A  = T * (1.0 - z_99 * cov),
        .T_B  = T * (1.0 - z_90 * cov),
        .T_hi = T * (1.0 + z_99 * cov),
    };
}

/* ---- spreads --------------------------------------------------------------------------------- */

bool ts_spread_is_sound(const ts_spread *spread)
{
    if (!(spread->low <= spread->high && fabs(spread->low) < 1e15 && fabs(spread->high) < 1e15))
        return false;
    return spread->law == TS_SPREAD_UNIFORM ||
           (spread->sigma > 0.0 && spread->mean >= spread->low && spread->mean <= spread->high);
}

/* The shares of the whole normal law that lie below the limits: the same for every sample. */
typedef struct cut {
    const ts_spread *spread;
    double           from, to;
} cut;

static cut cut_of(const ts_spread *spread)
{
    cut made = {.spread = spread};

    if (spread->law == TS_SPREAD_NORMAL) {
        made.from = ts_normal_share((spread->low - spread->mean) / spread->sigma);
        made.to   = ts_normal_share((spread->high - spread->mean) / spread->sigma);
    }
    return made;
}

static double drawn(const cut *at_limits, double u)
{
    const ts_spread *spread = at_limits->spread;

    if (spread->law == TS_SPREAD_UNIFORM)
        return fmin(spread->high, spread->low + u * (spread->high - spread->low));
    const double at = at_limits->from + u * (at_limits->to - at_limits->from);

    if (!(at > 0.0))
        return spread->low;
    if (!(at < 1.0))
        return spread->high;
    const double value = spread->mean + spread->sigma * ts_normal_place(at);

    return fmin(spread->high, fmax(spread->low, value));
}

double ts_spread_at(const ts_spread *spread, double u)
{
    if (!ts_spread_is_sound(spread) || !(u > 0.0 && u < 1.0))
        return NAN;
    const cut whole = cut_of(spread);

    return drawn(&whole, u);
}

/* ---- band and samples ------------------------------------------------------------------------ */

static bool is_sound(const ts_shear_neck *neck)
{
    return ts_spread_is_sound(&neck->d) && ts_spread_is_sound(&neck->d_i) &&
           ts_spread_is_sound(&neck->Ftu) && ts_spread_is_sound(&neck->ratio) &&
           ts_spread_is_sound(&neck->warmth) && ts_spread_is_sound(&neck->yielding) &&
           neck->d_i.low >= 0.0 && neck->d.low > neck->d_i.high && neck->Ftu.low > 0.0 &&
           neck->ratio.low > 0.0 && neck->warmth.low > 0.0 && neck->yielding.low >= 0.0 &&
           neck->yielding.high <= 1.0 && neck->K_ts >= 1.0;
}

static double torque_of(double tau, double d, double d_i, double yielding, double divisor)
{
    const double T_el = ts_torque_elastic(tau, d, d_i, NULL);

    return (T_el + yielding * (ts_torque_plastic(tau, d, d_i, NULL) - T_el)) / divisor;
}

/* The torque rises with strength, diameter and yielding and falls with the bore, so that its limits
 * lie at two corners; a dozen roundings of 1.1e-16 are covered by 1e-14. */
#define HAIR 1e-14

double ts_neck_least(const ts_shear_neck *neck, ts_workings *workings)
{
    if (!is_sound(neck))
        return NAN;
    const double Ftu = neck->Ftu.low, ratio = neck->ratio.low, warmth = neck->warmth.low;
    const double tau  = TS_STEP(workings, tau_formula, warmth * ratio * Ftu, warmth, ratio, Ftu);
    const double T_el = ts_torque_elastic(tau, neck->d.low, neck->d_i.high, workings);
    const double K_ts = neck->K_ts, y_low = neck->yielding.low;

    if (neck->brittle)
        return TS_STEP(workings, brittle_formula, T_el / K_ts, T_el, K_ts) * (1.0 - HAIR);
    const double T_pl = ts_torque_plastic(tau, neck->d.low, neck->d_i.high, workings);

    return TS_STEP(workings, low_formula, T_el + y_low * (T_pl - T_el), T_el, y_low, T_pl) *
           (1.0 - HAIR);
}

double ts_neck_most(const ts_shear_neck *neck, ts_workings *workings)
{
    if (!is_sound(neck))
        return NAN;
    const double Ftu = neck->Ftu.high, ratio = neck->ratio.high, warmth = neck->warmth.high;
    const double tau    = TS_STEP(workings, tau_formula, warmth * ratio * Ftu, warmth, ratio, Ftu);
    const double T_el   = ts_torque_elastic(tau, neck->d.high, neck->d_i.low, workings);
    const double T_pl   = ts_torque_plastic(tau, neck->d.high, neck->d_i.low, workings);
    const double y_high = neck->yielding.high;

    return TS_STEP(workings, high_formula, T_el + y_high * (T_pl - T_el), T_el, y_high, T_pl) *
           (1.0 + HAIR);
}

ts_neck_limits ts_neck_band(const ts_shear_neck *neck, ts_workings *workings)
{
    return (ts_neck_limits){ts_neck_least(neck, workings), ts_neck_most(neck, workings)};
}

/* A brittle neck may feel all of its notch or nothing of it: the divisor is drawn between. */
void ts_neck_sample(const ts_shear_neck *neck, uint64_t seed, uint64_t first, size_t count,
                    double *T)
{
    if (!is_sound(neck)) {
        for (size_t i = 0; i < count; i++)
            T[i] = (double)NAN;
        return;
    }
    const cut      Ftu = cut_of(&neck->Ftu), ratio = cut_of(&neck->ratio);
    const cut      warmth = cut_of(&neck->warmth), yielding = cut_of(&neck->yielding);
    const cut      d = cut_of(&neck->d), d_i = cut_of(&neck->d_i);
    const uint32_t draws = neck->brittle ? 4 : 3; /* only a brittle one feels its notch */

    for (size_t i = 0; i < count; i++) {
        double u[4][2];

        for (uint32_t draw = 0; draw < draws; draw++)
            ts_random_pair(seed, first + i, draw, u[draw]);
        const double tau  = drawn(&Ftu, u[0][0]) * drawn(&ratio, u[0][1]) * drawn(&warmth, u[1][0]);
        const double felt = neck->brittle ? u[3][0] : 0.0;

        T[i] = torque_of(tau, drawn(&d, u[1][1]), drawn(&d_i, u[2][0]), drawn(&yielding, u[2][1]),
                         1.0 + felt * (neck->K_ts - 1.0));
    }
}
