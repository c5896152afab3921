/* check/rule/pad_spline.c: does the spline of every pad bear what it carries? */
#include "check/rule.h"

#include <math.h>

static const ts_formula reserve_formulas[TS_SPLINE_STRESSES] = {
    {"reserve_S_s", "reserve of the spline", "1", "S_P/S_s - 1", "reserve = capacity / demand - 1"},
    {"reserve_S_sp", "reserve of the spline", "1", "S_P/S_sp - 1",
     "reserve = capacity / demand - 1"},
    {"reserve_S_c", "reserve of the spline", "1", "S_P/S_c - 1", "reserve = capacity / demand - 1"},
    {"reserve_S_t", "reserve of the spline", "1", "S_P/S_t - 1", "reserve = capacity / demand - 1"},
};

/* The roots do not care for the length, and no length bears what the spin alone brings. */
static void help(ts_check *check, ts_finding *finding, const ts_drive_spline *item,
                 ts_spline_stress stress)
{
    const ts_spline_case *worst  = ts_spline_worst(item, stress);
    const double          length = ts_spline_length_for(item, worst, stress);
    const double          sleeve =
        stress == TS_SPLINE_BURSTING ? ts_spline_sleeve_for(item, worst) : (double)NAN;

    if (isfinite(length) && isfinite(sleeve))
        ts_remedy(check, finding,
                  "give it a sleeve of %s outside, engage at least %s of it, or take one of more "
                  "teeth or a coarser pitch",
                  ts_shown_outward(check, sleeve, TS_KIND_LENGTH, +1),
                  ts_shown_outward(check, length, TS_KIND_LENGTH, +1));
    else if (isfinite(sleeve))
        ts_remedy(check, finding,
                  "give it a sleeve of %s outside, or take one of more teeth or a coarser pitch",
                  ts_shown_outward(check, sleeve, TS_KIND_LENGTH, +1));
    else if (isfinite(length))
        ts_remedy(check, finding,
                  "engage at least %s of it, or take one of more teeth or a coarser pitch",
                  ts_shown_outward(check, length, TS_KIND_LENGTH, +1));
    else
        ts_remedy(check, finding, "take one of more teeth or a coarser pitch");
}

static void judge(ts_check *check, const ts_drive_spline *item, int i)
{
    const char   *name = check->train->pads[item->pad].name;
    const int32_t c    = item->at[i];

    if (!(item->most[i] > 0.0))
        return;
    const ts_node about    = c == TS_EVERY_CONDITION ? item->over : item->node;
    const double  P        = ts_spline_stress_permitted((ts_spline_stress)i);
    ts_question   question = ts_question_about(check, about, c);
    ts_workings_about(check->workings, about, c);
    ts_workings_assumed(check->workings, "S_P", P, "Pa",
                        "surface-hardened steel; Machinery's Handbook (from memory)");
    question.value        = item->most[i];
    question.limit        = P;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_STRESS;
    question.symbol       = ts_spline_stress_symbol((ts_spline_stress)i);
    question.limit_symbol = "S_P";
    question.reserve      = &reserve_formulas[i];
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the spline of %s (%s, %s engaged) carries %s at %s: %s is %s, more than %s", name,
            item->number, ts_shown(check, item->L_e, TS_KIND_LENGTH),
            ts_shown(check, c == TS_EVERY_CONDITION ? item->overload.T : item->cases[c].T,
                     TS_KIND_TORQUE),
            c == TS_EVERY_CONDITION ? "its overload" : ts_condition_name(check, c),
            ts_spline_stress_says((ts_spline_stress)i),
            ts_shown_apart(check, item->most[i], P, TS_KIND_STRESS),
            ts_shown_apart(check, P, item->most[i], TS_KIND_STRESS));
    help(check, finding, item, (ts_spline_stress)i);
}

static void run(ts_check *check)
{
    for (uint32_t k = 0; check->splines != NULL && k < check->splines->count; k++) {
        const ts_drive_spline *item = &check->splines->items[k];

        if (item->missing != NULL) {
            /* Shear and bursting of an overload are judged without starts and times. */
            for (int i = 0; i < TS_SPLINE_STRESSES && item->sized; i++)
                judge(check, item, i);
            (void)ts_not_computable(check, item->node, TS_EVERY_CONDITION, "%s %s of %s",
                                    item->missing, item->number,
                                    check->train->pads[item->pad].name);
            continue;
        }
        for (int i = 0; i < TS_SPLINE_STRESSES; i++)
            judge(check, item, i);
    }
    ts_skip(check, "no accessory says which `spline` it has");
}

const ts_rule ts_rule_pad_spline = {
    .id    = "E6-pad-spline",
    .title = "Splines of the pads",
    .question =
        "Does the spline of every pad bear shear, pressure and bursting in every condition?",
    .why   = "A spline that is pressed too hard frets through long before anything breaks, and a "
             "thin sleeve bursts under its own wedge.",
    .level = TS_WARN,
    .source =
        "Machinery's Handbook, involute splines (after D. W. Dudley 1957); permitted stresses "
        "from memory",
    .hint = "engage more of the spline, or take a larger one",
    .run  = run,
};
