/* rate/inverse_words.c: what does `inverse` want, and how is its answer put into words? */
#include "rate/inverse_words.h"

double ts_inverse_wanted(ts_rate_desk *desk, const ts_measure *wanted, const char *symbol,
                         const char *unit, double otherwise)
{
    if (wanted->standing != TS_GIVEN)
        return otherwise;
    if (!desk->failed)
        ts_workings_given(desk->workings, symbol, wanted->value, unit, wanted->node);
    return wanted->value;
}

static double limit_of(ts_rate_desk *desk, const ts_measure *given, const char *symbol,
                       double otherwise, const char *why)
{
    const double b = ts_inverse_wanted(desk, given, symbol, "m", NAN);

    if (!isnan(b) || desk->failed)
        return b;
    ts_workings_assumed(desk->workings, symbol, otherwise, "m", why);
    return otherwise;
}

ts_width_limits ts_inverse_widths(ts_rate_desk *desk, const ts_rate_inverse *given, double m_n,
                                  double d_1)
{
    return (ts_width_limits){
        limit_of(desk, &given->b_low, "b_low", m_n, "one module; common practice, no source"),
        limit_of(desk, &given->b_high, "b_high", 2.0 * d_1,
                 "twice the reference diameter of gear 1; common practice, no source")};
}

const char *ts_inverse_place_says(ts_iso6336_place place)
{
    static const char *const says[2][2] = {
        {"pitting of gear 1 (S_H1)", "pitting of gear 2 (S_H2)"},
        {"breakage of gear 1 (S_F1)", "breakage of gear 2 (S_F2)"}};

    return says[place.stress == TS_RATED_CONTACT ? 0 : 1][place.gear];
}

void ts_inverse_no_width(ts_rate_desk *desk, const ts_width_limits *limits, ts_iso6336_place place,
                         double reserve)
{
    ts_finding *finding = ts_rate_judge(desk, false, "rate-no-width", TS_REFUSE);

    ts_rate_limit(finding, "reserve", reserve, 0.0, TS_KIND_NUMBER);
    ts_rate_says(desk, finding,
                 "no common face width from %s to %s has the safeties wanted; at the greatest "
                 "%s decides, and %s of it is missing",
                 ts_rate_shown(desk, limits->least, TS_KIND_LENGTH),
                 ts_rate_shown(desk, limits->most, TS_KIND_LENGTH), ts_inverse_place_says(place),
                 ts_rate_shown(desk, -reserve, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding,
                   "choose a larger module, a stronger steel or less misalignment, or lower the "
                   "load");
}
