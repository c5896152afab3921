/* rate/neck_element.c: between which torques does a shear neck of a rate file break? */
#include "element/shear_neck.h"
#include "rate/rate_desk.h"

static const ts_formula least_formula = {
    .symbol  = "d_o",
    .meaning = "least diameter",
    .unit    = "m",
    .text    = "d - tol",
    .source  = "derived",
};
static const ts_formula most_formula = {
    .symbol  = "d_o",
    .meaning = "greatest diameter",
    .unit    = "m",
    .text    = "d + tol",
    .source  = "derived",
};

static const char *const asked_low[]  = {"T_el", "T_pl", "T_brittle", "T_low", NULL};
static const char *const asked_high[] = {"T_el", "T_pl", "T_high", NULL};

static const ts_rated_section weakest = {
    .title     = "Weakest neck",
    .standard  = "elastic bound",
    .condition = TS_RATED_WEAKEST,
    .asked     = asked_low,
};
static const ts_rated_section strongest = {
    .title     = "Strongest neck",
    .standard  = "plastic bound",
    .condition = TS_RATED_STRONGEST,
    .asked     = asked_high,
};

static ts_spread between(double low, double high)
{
    return (ts_spread){.law = TS_SPREAD_UNIFORM, .low = low, .high = high};
}

/* One after the other, for what is taken first is told first. */
static ts_spread take_between(ts_rate_desk *desk, const char *low_key, const char *high_key)
{
    const double low  = ts_rate_take(desk, low_key);
    const double high = ts_rate_take(desk, high_key);
    return between(low, high);
}

static ts_shear_neck take_neck(ts_rate_desk *desk)
{
    const double  d    = ts_rate_take(desk, "d");
    const double  tol  = ts_rate_take(desk, "tol");
    const double  d_i  = ts_rate_take(desk, "d_i");
    ts_shear_neck neck = {.d = between(d - tol, d + tol), .d_i = between(d_i, d_i)};

    neck.Ftu      = take_between(desk, "Ftu_min", "Ftu_max");
    neck.ratio    = take_between(desk, "ratio_min", "ratio_max");
    neck.warmth   = take_between(desk, "warmth_min", "warmth_max");
    neck.yielding = take_between(desk, "y_low", "y_high");
    neck.K_ts     = ts_rate_take(desk, "K_ts");
    neck.brittle  = ts_rate_choose(desk, "brittle") == TS_YES;
    return neck;
}

static void judge_least(ts_rate_desk *desk, double T_low)
{
    const double T_legit = ts_rate_take(desk, "T_legit"), S_T = ts_rate_take(desk, "S_T");

    if (isnan(T_legit))
        return;
    ts_finding *finding =
        ts_rate_judge(desk, T_low >= S_T * T_legit, "rate-neck-too-weak", TS_REFUSE);
    ts_rate_limit(finding, "T_low", T_low, S_T * T_legit, TS_KIND_TORQUE);
    ts_rate_says(desk, finding,
                 "the neck may break at %s, less than %s times the highest "
                 "legitimate torque %s",
                 ts_rate_shown(desk, T_low, TS_KIND_TORQUE),
                 ts_rate_shown(desk, S_T, TS_KIND_NUMBER),
                 ts_rate_shown(desk, T_legit, TS_KIND_TORQUE));
    ts_rate_remedy(desk, finding, "enlarge the neck, or take a stronger steel of less scatter");
}

static void judge_most(ts_rate_desk *desk, double T_high)
{
    const double T_capacity = ts_rate_take(desk, "T_capacity"), S_T = ts_rate_take(desk, "S_T");

    if (isnan(T_capacity))
        return;
    ts_finding *finding =
        ts_rate_judge(desk, T_high * S_T <= T_capacity, "rate-neck-too-strong", TS_REFUSE);
    ts_rate_limit(finding, "T_high", T_high, T_capacity / S_T, TS_KIND_TORQUE);
    ts_rate_says(desk, finding,
                 "the neck may hold until %s, and %s times that is more than the "
                 "%s that the part behind it withstands",
                 ts_rate_shown(desk, T_high, TS_KIND_TORQUE),
                 ts_rate_shown(desk, S_T, TS_KIND_NUMBER),
                 ts_rate_shown(desk, T_capacity, TS_KIND_TORQUE));
    ts_rate_remedy(desk, finding, "turn the neck down, or strengthen what is behind it");
}

static void note_corner(ts_rate_desk *desk, bool low)
{
    const double d = ts_rate_take(desk, "d"), tol = ts_rate_take(desk, "tol");

    ts_rate_borrow(desk, "Ftu", ts_rate_take(desk, low ? "Ftu_min" : "Ftu_max"),
                   low ? "Ftu_min" : "Ftu_max");
    ts_rate_borrow(desk, "ratio", ts_rate_take(desk, low ? "ratio_min" : "ratio_max"),
                   low ? "ratio_min" : "ratio_max");
    ts_rate_borrow(desk, "warmth", ts_rate_take(desk, low ? "warmth_min" : "warmth_max"),
                   low ? "warmth_min" : "warmth_max");
    if (desk->failed)
        return;
    if (low)
        TS_STEP(desk->workings, least_formula, d - tol, d, tol);
    else
        TS_STEP(desk->workings, most_formula, d + tol, d, tol);
}

void ts_rate_neck_element(ts_rate_desk *desk, const ts_rate_neck *given)
{
    ts_rate_open_element(desk, "shear neck", &ts_table_rate_neck, given);
    ts_rate_open_section(desk, &weakest);
    const ts_shear_neck neck = take_neck(desk);

    note_corner(desk, true);
    if (!desk->failed)
        judge_least(desk, ts_neck_least(&neck, desk->workings));
    (void)ts_rate_close_section(desk);
    ts_rate_open_section(desk, &strongest);
    note_corner(desk, false);
    if (!desk->failed)
        judge_most(desk, ts_neck_most(&neck, desk->workings));
    (void)ts_rate_close_section(desk);
    ts_rate_close_element(desk);
}
