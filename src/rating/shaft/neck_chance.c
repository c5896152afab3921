/* rating/shaft/neck_chance.c: how likely does a neck break too early, or too late? */
#include "rating/shaft/neck_chance.h"

#include "base/normal_law.h"

#include <math.h>
#include <stdbool.h>

static const ts_formula equivalent_formula = {
    .symbol  = "T_eq",
    .meaning = "amplitude of N_W cycles that does the same harm",
    .unit    = "N.m",
    .text    = "(sum(n*(T_a/(1 - T_m/T_mid))^k)/N_W)^(1/k)",
    .source  = "derived: Palmgren and Miner on a straight fatigue line, steady torque by Goodman",
};

static bool is_sound(const ts_neck_make *make, const ts_neck_duty *duty, double d)
{
    return make->d_0 > 0.0 && make->T_mid > 0.0 && make->cov > 0.0 && make->cov < 1.0 &&
           make->T_W > 0.0 && make->N_W > 0.0 && make->k > 0.0 && make->k < 100.0 &&
           make->s_ln > 0.0 && duty->T_legit >= 0.0 && duty->T_capacity > 0.0 &&
           duty->cycle_count >= 0 && duty->cycle_count <= 64 && d > 0.0 && d < 1e3 * make->d_0 &&
           make->d_0 < 1e3 * d;
}

/* The k-th power of a large ratio may leave the doubles: harm is summed over the strength. */
static double harm_of(const ts_neck_make *make, const ts_neck_duty *duty, double T_mid, double T_W)
{
    double harm = 0.0;

    for (int i = 0; i < duty->cycle_count; i++) {
        const ts_neck_cycles *c = &duty->cycles[i];

        if (!(c->T_a >= 0.0 && c->T_m >= 0.0 && c->cycles >= 0.0 && c->T_m < T_mid))
            return (double)NAN;
        harm += c->cycles * pow(c->T_a / (1.0 - c->T_m / T_mid) / T_W, make->k);
    }
    return harm / make->N_W;
}

static void note_equivalent(const ts_neck_make *make, const ts_neck_duty *duty, double T_mid,
                            double T_eq, ts_workings *workings)
{
    if (!TS_STEP_NEEDS_INPUTS(workings) || duty->cycle_count == 0)
        return;
    ts_input inputs[3 * 64 + 3] = {{"T_mid", T_mid}, {"k", make->k}, {"N_W", make->N_W}};
    size_t   at                 = 3;

    for (int i = 0; i < duty->cycle_count; i++) {
        inputs[at++] = (ts_input){"n", duty->cycles[i].cycles};
        inputs[at++] = (ts_input){"T_a", duty->cycles[i].T_a};
        inputs[at++] = (ts_input){"T_m", duty->cycles[i].T_m};
    }
    ts_step_list(workings, &equivalent_formula, T_eq, inputs, at);
}

ts_neck_chance ts_neck_chance_of(const ts_neck_make *make, const ts_neck_duty *duty, double d,
                                 ts_workings *workings)
{
    const ts_neck_chance none = {NAN, NAN, NAN, NAN, NAN};
    const double         size = d / make->d_0, cube = size * size * size;
    const double         T_mid = make->T_mid * cube, T_W = make->T_W * cube;
    ts_neck_chance       chance;

    if (!is_sound(make, duty, d))
        return none;
    const double harm = harm_of(make, duty, T_mid, T_W);
    if (!(harm >= 0.0 && harm < 1e250))
        return none;
    chance.T_equivalent = T_W * pow(harm, 1.0 / make->k);
    note_equivalent(make, duty, T_mid, chance.T_equivalent, workings);
    chance.static_early  = ts_normal_share((duty->T_legit / T_mid - 1.0) / make->cov);
    chance.fatigue_early = 0.0;
    if (harm > 0.0)
        chance.fatigue_early = ts_normal_share(log(harm) / make->k / make->s_ln);
    chance.early =
        chance.static_early + chance.fatigue_early - chance.static_early * chance.fatigue_early;
    chance.late = ts_normal_share((1.0 - duty->T_capacity / T_mid) / make->cov);
    ts_workings_row(workings, "P_early", chance.early, "1",
                    "normal break torque, lognormal fatigue strength, independent: docs/method");
    ts_workings_row(workings, "P_late", chance.late, "1", "normal break torque: docs/method");
    return chance;
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
