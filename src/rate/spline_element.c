/* rate/spline_element.c: how large is a spline of a rate file, and how hard is it worked? */
#include "element/spline_tolerance.h"
#include "rate/rate_desk.h"
#include "rating/spline/spline_stress.h"

static const char *const asked_size[] = {"D",    "D_b",  "s_v",  "D_ri", "D_o", "D_i",
                                         "D_re", "D_Fi", "D_Fe", "M_i",  "M_e", NULL};

static const ts_rated_section size_inch = {
    .title     = "Geometry",
    .standard  = "ANSI B92.1-1970 (R1993)",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked_size,
};
static const ts_rated_section size_metric = {
    .title     = "Geometry",
    .standard  = "ISO 4156:2005",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked_size,
};

static const char *const asked_limits[] = {"lambda", "T_lambda", "E_min",  "E_max",
                                           "S_max",  "S_min",    "c_vmax", NULL};

static const ts_rated_section limit_section = {
    .title     = "Limits, fit H/h",
    .standard  = "ISO 4156:2005",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked_limits,
};

static const char *const asked_stress[] = {"S_s", "S_sp", "S_c", "K_m", "K_f", "K_w", NULL};

static const ts_rated_section stress_section = {
    .title     = "Stress",
    .standard  = "after D. W. Dudley",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked_stress,
};

static const ts_formula pitch_formula = {
    .symbol  = "P_d",
    .meaning = "diametral pitch per metre",
    .unit    = "1",
    .text    = "P/0.0254",
    .source  = "exact: inch 0.0254 m",
};

static bool rate_size(ts_rate_desk *desk, ts_spline *spline)
{
    const bool           inch = ts_rate_is_given(desk, "P");
    const ts_spline_root root = (ts_spline_root)ts_rate_choose(desk, "root");
    bool                 made = false;

    ts_rate_open_section(desk, inch ? &size_inch : &size_metric);
    const double N = ts_rate_take(desk, "N"), d_i = ts_rate_take(desk, "d_i");
    const double d_e = ts_rate_take(desk, "d_e"), alpha_D = ts_rate_take(desk, "alpha_D");
    if (desk->failed)
        return false;
    if (inch) {
        const double P   = ts_rate_take(desk, "P");
        const double P_d = TS_STEP(desk->workings, pitch_formula, P / 0.0254, P);

        made = ts_spline_b921(N, P_d, alpha_D, root, spline, desk->workings);
    } else {
        ts_rate_borrow(desk, "z", N, "N");
        made = ts_spline_iso4156(N, ts_rate_take(desk, "m"), alpha_D, root, spline, desk->workings);
    }
    if (!made)
        ts_rate_cannot(desk, "the spline",
                       "teeth or pitch are out of the standard's range, or it has no such root at "
                       "this angle");
    if (made && !isnan(d_i)) {
        ts_rate_borrow(desk, "s", spline->s_v, "s_v");
        if (isnan(ts_spline_between_pins(spline, spline->s_v, d_i, desk->workings)))
            ts_rate_cannot(desk, "the measurement between pins",
                           "the pin does not touch the flanks");
    }
    if (made && !isnan(d_e)) {
        ts_rate_borrow(desk, "t", spline->s_v, "s_v");
        if (isnan(ts_spline_over_pins(spline, spline->s_v, d_e, desk->workings)))
            ts_rate_cannot(desk, "the measurement over pins", "the pin does not touch the flanks");
    }
    return ts_rate_close_section(desk) && made;
}

/* Spaces of the hub and teeth of the shaft, by class. */
static void rate_limits(ts_rate_desk *desk, const ts_spline *spline)
{
    ts_spline_limits limits;

    if (!ts_rate_is_given(desk, "class"))
        return;
    ts_rate_open_section(desk, &limit_section);
    if (ts_rate_is_given(desk, "P"))
        ts_rate_cannot(desk, "the limits of spaces and teeth",
                       "classes of ANSI B92.1 are not rated; tell `m` for those of ISO 4156");
    else if (!ts_rate_is_given(desk, "L_e"))
        ts_rate_cannot(desk, "the limits of spaces and teeth",
                       "it needs `L_e`, the engaged length");
    else {
        const double g = ts_rate_take(desk, "L_e");
        ts_rate_borrow(desk, "g", g, "L_e");
        if (!desk->failed)
            (void)ts_spline_limits_of(spline, g, (int)ts_rate_take(desk, "class"), &limits,
                                      desk->workings);
    }
    (void)ts_rate_close_section(desk);
}

typedef struct stress_words {
    const char *rule, *symbol, *limit, *what;
} stress_words;

static void judge_stress(ts_rate_desk *desk, const stress_words *words, double stress)
{
    const double permitted = ts_rate_take(desk, words->limit);

    if (isnan(permitted))
        return;
    ts_finding *finding = ts_rate_judge(desk, stress <= permitted, words->rule, TS_REFUSE);
    ts_rate_limit(finding, words->symbol, stress, permitted, TS_KIND_STRESS);
    ts_rate_says(desk, finding, "%s is %s, more than %s", words->what,
                 ts_rate_shown(desk, stress, TS_KIND_STRESS),
                 ts_rate_shown(desk, permitted, TS_KIND_STRESS));
    ts_rate_remedy(desk, finding, "lengthen the spline, or take one of more or larger teeth");
}

/* Depth over which the flanks touch. */
static double contact_depth(const ts_spline *spline, bool flat)
{
    if (spline->alpha_D > 0.55) /* 37.5 and 45 degrees */
        return (spline->D_o - spline->D_i) / 2.0;
    return (flat ? 0.9 : 1.0) * spline->D / spline->N;
}

static void rate_stress(ts_rate_desk *desk, const ts_spline *spline)
{
    static const stress_words root  = {"rate-spline-root-shear", "S_s", "S_sP",
                                       "the shear stress under the roots"};
    static const stress_words teeth = {"rate-spline-tooth-shear", "S_sp", "S_sP",
                                       "the shear stress of the teeth"};
    static const stress_words flank = {"rate-spline-pressure", "S_c", "S_cP",
                                       "the pressure on the flanks"};

    ts_rate_open_section(desk, &stress_section);
    const bool     fixed = ts_rate_choose(desk, "fixed") == TS_YES;
    const bool     flat  = ts_rate_choose(desk, "root") == TS_SPLINE_FLAT_ROOT;
    ts_spline_load load  = {
         .T    = ts_rate_take(desk, "T"),
         .N    = ts_rate_take(desk, "N"),
         .D    = spline->D,
         .D_re = spline->D_re,
         .D_h  = ts_rate_take(desk, "D_h"),
         .L_e  = ts_rate_need(desk, "L_e"),
         .t    = spline->s_v,
         .h    = contact_depth(spline, flat),
         .K_a  = ts_rate_take(desk, "K_a"),
    };
    const double slope  = ts_rate_take(desk, "slope");
    const double cycles = ts_rate_take(desk, "torque_cycles");
    const double turns  = ts_rate_take(desk, "revolutions");

    if (!desk->failed && !ts_rate_lacks(desk)) {
        ts_rate_borrow(desk, "t", load.t, "s_v");
        ts_workings_row(desk->workings, "h", load.h, "m",
                        "of 30 degrees D/N with a fillet, 0.9 D/N flat (from memory); of others by "
                        "its own diameters, (D_o - D_i)/2");
        load.K_m = ts_spline_misalignment_factor(load.L_e, slope, desk->workings);
        load.K_f = ts_spline_fatigue_factor(cycles, false, desk->workings);
        load.K_w = ts_spline_wear_factor(turns, desk->workings);
        if (!(load.D_h < load.D_re)) {
            ts_rate_cannot(desk, "the stress", "the bore is not below the minor diameter");
        } else {
            judge_stress(desk, &root, ts_spline_root_shear(&load, desk->workings));
            judge_stress(desk, &teeth, ts_spline_pitch_shear(&load, desk->workings));
            judge_stress(desk, &flank,
                         fixed ? ts_spline_pressure_fixed(&load, desk->workings)
                               : ts_spline_pressure_flexible(&load, desk->workings));
        }
    }
    (void)ts_rate_close_section(desk);
}

void ts_rate_spline_element(ts_rate_desk *desk, const ts_rate_spline *given)
{
    ts_spline spline;

    ts_rate_open_element(desk, "spline", &ts_table_rate_spline, given);
    const bool sized = rate_size(desk, &spline) && !desk->failed;
    if (sized)
        rate_limits(desk, &spline);
    if (sized && ts_rate_is_given(desk, "T"))
        rate_stress(desk, &spline);
    ts_rate_close_element(desk);
}
