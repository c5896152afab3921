/* rate/bevel_make.c: of what, and how exactly, are the gears of a bevel pair made? */
#include "element/bevel_tolerance.h"
#include "rate/bevel_parts.h"

static const char *const asked[] = {"sigma_Hlim1", "sigma_Hlim2", "sigma_Flim1", "sigma_Flim2",
                                    "f_pt1",       "f_pt2",       NULL};

static const ts_rated_section section = {
    .title     = "Materials and tolerances",
    .standard  = "ISO 6336-5:2016, ISO 17485:2006",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

typedef struct make_keys {
    const char *accuracy, *B, *f_pt, *overhung, *rule;
} make_keys;

static const make_keys keys[2] = {
    {"accuracy 1", "B_1", "f_pt1", "overhung 1", "rate-range-tolerance-1"},
    {"accuracy 2", "B_2", "f_pt2", "overhung 2", "rate-range-tolerance-2"},
};

/* As given, or the tolerance of the grade at the mean pitch diameter. */
static double deviation(ts_rate_desk *desk, const ts_bevel_pair *pair, int gear)
{
    const make_keys *key = &keys[gear];
    const double given = ts_rate_take(desk, key->f_pt), d_m = gear == 0 ? pair->d_m1 : pair->d_m2;
    const double B = isnan(given) ? ts_rate_take(desk, key->accuracy) : (double)NAN;
    const int    z = gear == 0 ? pair->in.z_1 : pair->in.z_2;

    if (!isnan(given) || isnan(B) || desk->failed)
        return given;
    ts_rate_borrow(desk, key->B, B, gear == 0 ? "accuracy_1" : "accuracy_2");
    ts_finding *finding =
        ts_rate_judge(desk, ts_bevel_tolerance_within(d_m, pair->m_mn, z), key->rule, TS_NOTE);
    if (finding != NULL)
        finding->source = "ISO 17485:2006, clause 1 (from memory)";
    ts_rate_says(desk, finding,
                 "gear %d lies outside the range of ISO 17485: 1 to 50 mm, 5 to 400 "
                 "teeth, up to 2500 mm",
                 gear + 1);
    return ts_bevel_pitch_tolerance(d_m, pair->m_mn, B, gear, desk->workings);
}

void ts_rate_bevel_make(ts_rate_desk *desk, ts_rated_bevels *rated)
{
    ts_rate_open_section(desk, &section);
    for (int gear = 0; gear < 2; gear++) {
        ts_rate_gear_steel(desk, gear, &rated->steel[gear]);
        rated->f_pt[gear]     = deviation(desk, &rated->pair, gear);
        rated->overhung[gear] = ts_rate_choose(desk, keys[gear].overhung) == (int)TS_YES;
    }
    (void)ts_rate_close_section(desk);
}
