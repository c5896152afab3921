/* rate/pair_make.c: of what, and how exactly, are the gears of a pair made? */
#include "element/tooth_tolerance.h"
#include "rate/pair_parts.h"

static const char *const asked_steel[] = {"sigma_Hlim1", "sigma_Hlim2", "sigma_Flim1",
                                          "sigma_Flim2", NULL};
static const char *const asked_make[]  = {"f_pT", "f_falphaT", "F_pT", "F_alphaT", "F_betaT", NULL};

static const ts_rated_section steels = {
    .title     = "Materials",
    .standard  = "ISO 6336-5:2016",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked_steel,
};
static const ts_rated_section tolerances[2] = {
    {.title     = "Tolerances of gear 1",
     .standard  = "ISO 1328-1:2013",
     .condition = TS_RATED_GEAR_1,
     .asked     = asked_make},
    {.title     = "Tolerances of gear 2",
     .standard  = "ISO 1328-1:2013",
     .condition = TS_RATED_GEAR_2,
     .asked     = asked_make},
};

typedef struct make_keys {
    const char *accuracy, *symbol, *f_pt, *f_falpha, *d, *b;
} make_keys;

static const make_keys keys[2] = {
    {"accuracy 1", "accuracy_1", "f_pt1", "f_falpha1", "d_1", "b_1"},
    {"accuracy 2", "accuracy_2", "f_pt2", "f_falpha2", "d_2", "b_2"},
};

static void take_tolerances(ts_rate_desk *desk, int gear, const ts_cylindrical_pair *pair,
                            ts_rated_make *make)
{
    const make_keys         *key = &keys[gear];
    const ts_tolerance_input in  = {.m_n   = pair->in.m_n,
                                    .d     = gear == 0 ? pair->d_1 : pair->d_2,
                                    .b     = gear == 0 ? pair->in.b_1 : pair->in.b_2,
                                    .beta  = pair->in.beta,
                                    .class = make->accuracy};

    ts_rate_open_section(desk, &tolerances[gear]);
    ts_rate_borrow(desk, "A", in.class, key->symbol);
    ts_rate_borrow(desk, "d", in.d, key->d);
    ts_rate_borrow(desk, "b", in.b, key->b);
    if (!desk->failed) {
        const ts_tooth_tolerance out = ts_tooth_tolerance_2013(&in, desk->workings);
        make->f_pt                   = out.f_p;
        make->f_falpha               = out.f_falpha;
    }
    (void)ts_rate_close_section(desk);
}

/* Deviations are given, or are the tolerances of the class.  What they are in the end belongs to
 * the element. */
static void take_make(ts_rate_desk *desk, int gear, const ts_cylindrical_pair *pair,
                      ts_rated_make *make)
{
    const make_keys *key = &keys[gear];
    const bool   both = ts_rate_is_given(desk, key->f_pt) && ts_rate_is_given(desk, key->f_falpha);
    const double accuracy = ts_rate_take(desk, key->accuracy);
    const ts_subject own  = {desk->element->node, tolerances[gear].condition};

    *make = (ts_rated_make){
        .accuracy = isnan(accuracy) ? 0 : (int)accuracy, .f_pt = NAN, .f_falpha = NAN};
    if (make->accuracy > 0 && !both)
        take_tolerances(desk, gear, pair, make);
    if (desk->failed)
        return;
    if (ts_rate_is_given(desk, key->f_pt))
        make->f_pt = ts_rate_take(desk, key->f_pt);
    else if (!isnan(make->f_pt))
        ts_workings_borrow(desk->workings, key->f_pt, make->f_pt, own, "f_pT");
    if (ts_rate_is_given(desk, key->f_falpha))
        make->f_falpha = ts_rate_take(desk, key->f_falpha);
    else if (!isnan(make->f_falpha))
        ts_workings_borrow(desk->workings, key->f_falpha, make->f_falpha, own, "f_falphaT");
}

void ts_rate_pair_make(ts_rate_desk *desk, ts_rated_pair *rated)
{
    ts_rate_open_section(desk, &steels);
    ts_rate_gear_steel(desk, 0, &rated->steel[0]);
    ts_rate_gear_steel(desk, 1, &rated->steel[1]);
    (void)ts_rate_close_section(desk);
    if (desk->failed)
        return;
    take_make(desk, 0, &rated->pair, &rated->make[0]);
    take_make(desk, 1, &rated->pair, &rated->make[1]);
}
