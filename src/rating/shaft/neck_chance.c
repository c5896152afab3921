/* rating/shaft/neck_chance.c: how likely does a neck break too early, or too late? */
#include "rating/shaft/neck_chance.h"

#include "base/normal_law.h"
#include "rating/shaft/din743.h"

#include <math.h>
#include <stdbool.h>

static const ts_formula harm_formula = {
    .symbol  = "harm",
    .meaning = "sum of the shares of life that all cycles use up, of a neck that bears T_eq",
    .unit    = "1",
    .text    = "sum(n*min((T_a/(1 - T_m/T_mid)/T_eq)^k, (T_a/(1 - T_m/T_mid)/T_eq)^(2*k - 1)))/N_W",
    .source  = "Palmgren and Miner, slope 2k - 1 below T_eq by E. Haibach (from memory); steady "
               "torque by Goodman",
};

static bool is_sound(const ts_neck_make *make, const ts_neck_duty *duty, double d)
{
    return make->d_0 > 0.0 && make->T_mid > 0.0 && make->cov > 0.0 && make->cov < 1.0 &&
           make->T_W > 0.0 && make->N_W > 0.0 && make->k >= 1.0 && make->k < 100.0 &&
           make->s_ln > 0.0 && duty->T_legit >= 0.0 && duty->T_capacity > 0.0 &&
           duty->cycle_count >= 0 && duty->cycle_count <= TS_NECK_CYCLES_MOST && d > 0.0 &&
           d < 1e3 * make->d_0 && make->d_0 < 1e3 * d;
}

/* Amplitudes over T_W and cycles over N_W, as logarithms: the k-th power of a ratio may leave the
 * doubles. */
typedef struct strains {
    double k;
    double y[TS_NECK_CYCLES_MOST], n[TS_NECK_CYCLES_MOST];
    int    count;
} strains;

/* False: a number is out of range, or a steady torque reaches the break torque. */
static bool list_strains(const ts_neck_make *make, const ts_neck_duty *duty, double T_mid,
                         double T_W, double k, strains *out)
{
    *out = (strains){.k = k};
    for (int i = 0; i < duty->cycle_count; i++) {
        const ts_neck_cycles *c = &duty->cycles[i];

        if (!(c->T_a >= 0.0 && c->T_m >= 0.0 && c->cycles >= 0.0 && c->T_m < T_mid))
            return false;
        if (!(c->T_a > 0.0 && c->cycles > 0.0))
            continue;
        out->y[out->count]   = log(c->T_a / (1.0 - c->T_m / T_mid) / T_W);
        out->n[out->count++] = log(c->cycles / make->N_W);
    }
    return true;
}

/* Logarithm of the harm that a neck takes which is e^u times as strong. */
static double log_harm(const strains *s, double u)
{
    double most = -(double)INFINITY, sum = 0.0, each[TS_NECK_CYCLES_MOST];

    for (int i = 0; i < s->count; i++) {
        const double y = s->y[i] - u;

        each[i] = s->n[i] + fmin(s->k * y, (2.0 * s->k - 1.0) * y);
        most    = fmax(most, each[i]);
    }
    for (int i = 0; i < s->count; i++)
        sum += exp(each[i] - most);
    return sum > 0.0 ? most + log(sum) : most;
}

/* u at which the harm is 1.  Its logarithm falls by k to 2k - 1 for each u: both ends of where it
 * may lie are known, and false position between them, halving the end that stays (the Illinois
 * rule), ends in a few steps. */
static double even_strength(const strains *s)
{
    const double at_0 = log_harm(s, 0.0), steep = 2.0 * s->k - 1.0;
    const double flat = fmin(s->k, steep), fall = fmax(s->k, steep);
    double       low = at_0 / (at_0 > 0.0 ? fall : flat), high = at_0 / (at_0 > 0.0 ? flat : fall);
    double       f_low = log_harm(s, low), f_high = log_harm(s, high);
    int          side = 0;

    if (!(f_low > 0.0))
        return low;
    if (!(f_high < 0.0))
        return high;
    for (int i = 0; i < 60 && high - low > 1e-15 * (1.0 + fabs(low)); i++) {
        const double u = (low * f_high - high * f_low) / (f_high - f_low), f = log_harm(s, u);

        if (!(fabs(f) > 1e-14))
            return u;
        if (f > 0.0) {
            low    = u;
            f_low  = f;
            f_high = side > 0 ? f_high / 2.0 : f_high;
            side   = 1;
        } else {
            high   = u;
            f_high = f;
            f_low  = side < 0 ? f_low / 2.0 : f_low;
            side   = -1;
        }
    }
    return (low + high) / 2.0;
}

static void note_harm(const ts_neck_make *make, const ts_neck_duty *duty, double T_mid, double k,
                      double T_eq, ts_workings *workings)
{
    if (!TS_STEP_NEEDS_INPUTS(workings) || duty->cycle_count == 0)
        return;
    ts_input inputs[3 * TS_NECK_CYCLES_MOST + 4] = {
        {"T_mid", T_mid}, {"k", k}, {"N_W", make->N_W}, {"T_eq", T_eq}};
    size_t at = 4;

    ts_workings_row(workings, "T_eq", T_eq, "N.m", "the strength for which the harm is 1: found");
    for (int i = 0; i < duty->cycle_count; i++) {
        inputs[at++] = (ts_input){"n", duty->cycles[i].cycles};
        inputs[at++] = (ts_input){"T_a", duty->cycles[i].T_a};
        inputs[at++] = (ts_input){"T_m", duty->cycles[i].T_m};
    }
    ts_step_list(workings, &harm_formula, 1.0, inputs, at);
}

/* By how much more a neck of diameter d than one of d_0 feels notch, size and surface: DIN 743-1,
 * 4.2 (from memory). */
static double felt_more(const ts_neck_make *make, double d)
{
    if (!(make->K_f > 0.0 && make->K_F > 0.0))
        return 1.0;
    const double rest = 1.0 / make->K_F - 1.0;

    return (make->K_f / ts_din_size_of_gradient(d) + rest) /
           (make->K_f / ts_din_size_of_gradient(make->d_0) + rest);
}

ts_neck_chance ts_neck_chance_of(const ts_neck_make *make, const ts_neck_duty *duty, double d,
                                 ts_workings *workings)
{
    const ts_neck_chance none = {NAN, NAN, NAN, NAN, NAN};
    const double         size = d / make->d_0, cube = size * size * size;
    const double         T_mid = make->T_mid * cube;
    ts_neck_chance       chance;
    strains              all;

    if (!is_sound(make, duty, d))
        return none;
    /* At 1e3 cycles neither notch nor size is felt: there the line stays where it is, as its knee
     * sinks by `more`, and so its slope is another. */
    const double more = felt_more(make, d), decades = 3.0 * log(10.0);
    const double T_W = make->T_W * cube / more, k = make->k / (1.0 + make->k * log(more) / decades);
    if (!list_strains(make, duty, T_mid, T_W, k, &all))
        return none;
    const double u       = all.count > 0 ? even_strength(&all) : -(double)INFINITY;
    chance.T_equivalent  = T_W * exp(u);
    chance.static_early  = ts_normal_share((duty->T_legit / T_mid - 1.0) / make->cov);
    chance.fatigue_early = ts_normal_share(u / make->s_ln);
    if (all.count > 0)
        note_harm(make, duty, T_mid, k, chance.T_equivalent, workings);
    chance.early =
        chance.static_early + chance.fatigue_early - chance.static_early * chance.fatigue_early;
    chance.late = ts_normal_share((1.0 - duty->T_capacity / T_mid) / make->cov);
    ts_workings_row(workings, "P_early", chance.early, "1",
                    "normal break torque, lognormal fatigue strength, independent: docs/method");
    ts_workings_row(workings, "P_late", chance.late, "1", "normal break torque: docs/method");
    return chance;
}

double ts_neck_harm_share(const ts_neck_make *make, const ts_neck_duty *duty,
                          const ts_neck_chance *chance, int i)
{
    const ts_neck_cycles *c = &duty->cycles[i];
    const double          x = c->T_a / (1.0 - c->T_m / make->T_mid) / chance->T_equivalent;

    if (!(x > 0.0) || !(chance->T_equivalent > 0.0))
        return 0.0;
    return c->cycles / make->N_W * fmin(pow(x, make->k), pow(x, 2.0 * make->k - 1.0));
}

/* Falls all the way with the diameter; on logarithms, for both chances may be tiny. */
static double lead_of_early(const ts_neck_make *make, const ts_neck_duty *duty, double d)
{
    const ts_neck_chance chance = ts_neck_chance_of(make, duty, d, NULL);

    return log(fmax(chance.early, 1e-300)) - log(fmax(chance.late, 1e-300));
}

double ts_neck_balance(const ts_neck_make *make, const ts_neck_duty *duty, double d_low,
                       double d_high)
{
    double low = d_low, high = d_high;

    if (!(low > 0.0 && high > low && lead_of_early(make, duty, low) > 0.0 &&
          lead_of_early(make, duty, high) < 0.0))
        return (double)NAN;
    for (int i = 0; i < 200 && high - low > 1e-15 * high; i++) {
        const double middle = (low + high) / 2.0;

        if (lead_of_early(make, duty, middle) > 0.0)
            low = middle;
        else
            high = middle;
    }
    return (low + high) / 2.0;
}
