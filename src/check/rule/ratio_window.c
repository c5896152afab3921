/* check/rule/ratio_window.c: is there any ratio at all that suits an accessory in every condition?
 */
#include "check/visit.h"

/* Speed of the pad over that of its spool: what the accessory's bands leave of it. */
typedef struct ratio_window {
    double   least, most;
    uint32_t of_least, of_most; /* the conditions that set the two ends */
    bool     asked;
} ratio_window;

static const ts_formula least_formula = {
    .symbol  = "i_least",
    .meaning = "least speed ratio of pad to spool that the bands allow",
    .unit    = "1",
    .text    = "n_least/n_spool",
    .source  = "derived: lower end of the band over spool speed, the largest of all conditions",
};
static const ts_formula most_formula = {
    .symbol  = "i_most",
    .meaning = "greatest speed ratio of pad to spool that the bands allow",
    .unit    = "1",
    .text    = "n_most/n_spool",
    .source  = "derived: upper end of the band over spool speed, the smallest of all conditions",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_i",
    .meaning = "width of the ratio window",
    .unit    = "1",
    .text    = "i_most/i_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* A spool at rest turns no pad at any ratio, so a least speed there is beyond every ratio. */
static void narrow(ratio_window *window, const ts_span *band, double n_spool, uint32_t condition)
{
    const double least = band->low > 0.0 ? band->low / n_spool : 0.0;
    const double most  = n_spool > 0.0 ? band->high / n_spool : (double)INFINITY;
    window->asked      = true;
    if (least > window->least) {
        window->least    = least;
        window->of_least = condition;
    }
    if (most < window->most) {
        window->most    = most;
        window->of_most = condition;
    }
}

static bool window_of(ts_check *check, const ts_pad *pad, ratio_window *window)
{
    const ts_accessory *accessory = ts_accessory_at(check, pad);
    const uint32_t      spool     = check->train->shafts[pad->shaft].spool;
    *window                       = (ratio_window){.most = INFINITY};
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        const ts_span *band = &accessory->speed[c];
        if (band->standing == TS_ABSENT)
            continue;
        const double n_spool = ts_spool_speed(check, spool, c);
        if (band->standing == TS_UNKNOWN || isnan(n_spool)) {
            ts_not_computable(check, pad->node, TS_EVERY_CONDITION, "%s of %s at %s",
                              band->standing == TS_UNKNOWN ? "the speed band" : "the spool speed",
                              accessory->name, ts_condition_name(check, (int32_t)c));
            return false;
        }
        narrow(window, band, n_spool, c);
    }
    return window->asked;
}

/* Borrows the spool's speed in the condition that sets one end, and returns it. */
static double note_spool(const ts_check *check, const ts_pad *pad, uint32_t condition)
{
    const uint32_t spool   = check->train->shafts[pad->shaft].spool;
    const double   n_spool = ts_spool_speed(check, spool, condition);
    ts_workings_borrow(check->workings, "n_spool", n_spool,
                       (ts_subject){check->drive->spools[spool].node, (int32_t)condition}, "n");
    return n_spool;
}

static void note_window(const ts_check *check, const ts_pad *pad, const ratio_window *window)
{
    const ts_span *bands    = ts_accessory_at(check, pad)->speed;
    ts_workings   *workings = check->workings;
    ts_workings_about(workings, pad->node, TS_EVERY_CONDITION);
    if (window->least > 0.0 && isfinite(window->least)) {
        const double n_spool = note_spool(check, pad, window->of_least);
        const double n_least = bands[window->of_least].low;
        ts_workings_given(workings, "n_least", n_least, "rad/s", bands[window->of_least].node);
        (void)TS_STEP(workings, least_formula, n_least / n_spool, n_least, n_spool);
    }
    if (isfinite(window->most)) {
        const double n_spool = note_spool(check, pad, window->of_most);
        const double n_most  = bands[window->of_most].high;
        ts_workings_given(workings, "n_most", n_most, "rad/s", bands[window->of_most].node);
        (void)TS_STEP(workings, most_formula, n_most / n_spool, n_most, n_spool);
    }
}

/* Either end alone may give way; the smaller move is proposed first. */
static void say(ts_check *check, ts_finding *finding, const ts_pad *pad, const ratio_window *window)
{
    const ts_accessory *accessory = ts_accessory_at(check, pad);
    const uint32_t      spool     = check->train->shafts[pad->shaft].spool;
    const char         *low       = ts_condition_name(check, (int32_t)window->of_least);
    const char         *high      = ts_condition_name(check, (int32_t)window->of_most);
    ts_says(check, finding,
            "no ratio suits %s: %s asks for at least %s of the spool's speed, %s for at most %s",
            accessory->name, low,
            ts_shown_apart(check, window->least, window->most, TS_KIND_NUMBER), high,
            ts_shown_apart(check, window->most, window->least, TS_KIND_NUMBER));
    const double floor_speed = window->most * ts_spool_speed(check, spool, window->of_least);
    const double roof_speed  = window->least * ts_spool_speed(check, spool, window->of_most);
    ts_remedy(
        check, finding,
        "let the band reach down to %s at %s, or up to %s at %s (%s either way), or use another "
        "spool",
        ts_shown_outward(check, floor_speed, TS_KIND_ROTATIONAL_SPEED, -1), low,
        ts_shown_outward(check, roof_speed, TS_KIND_ROTATIONAL_SPEED, +1), high,
        ts_shown_percent(check, window->least / window->most - 1.0));
}

/* A band that begins above 0 where the spool stands still: no ratio at all meets it, whatever the
 * other end of the window is. */
static void refuse_at_rest(ts_check *check, const ts_pad *pad, const ratio_window *window)
{
    const ts_accessory *accessory = ts_accessory_at(check, pad);
    ts_finding         *finding   = ts_judge_fact(check, pad->node, TS_EVERY_CONDITION, false);
    if (finding == NULL)
        return;
    const char *condition = ts_condition_name(check, (int32_t)window->of_least);
    ts_says(check, finding,
            "no ratio suits %s: its spool stands still at %s, and the band there begins at %s",
            accessory->name, condition,
            ts_shown(check, accessory->speed[window->of_least].low, TS_KIND_ROTATIONAL_SPEED));
    ts_remedy(check, finding,
              "let the band at %s reach down to 0 rpm, or drive %s from the other spool", condition,
              accessory->name);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        const ts_pad *pad = &check->train->pads[i];
        ratio_window  window;
        if (ts_accessory_at(check, pad) == NULL || !window_of(check, pad, &window))
            continue;
        if (check->workings != NULL)
            note_window(check, pad, &window);
        if (!isfinite(window.least)) {
            refuse_at_rest(check, pad, &window);
            continue;
        }
        ts_question question  = ts_question_about(check, pad->node, TS_EVERY_CONDITION);
        question.value        = window.most;
        question.limit        = window.least;
        question.bound        = TS_AT_LEAST;
        question.kind         = TS_KIND_NUMBER;
        question.symbol       = "i_most";
        question.limit_symbol = "i_least";
        question.reserve      = &reserve_formula;
        ts_finding *finding   = ts_judge(check, &question);
        if (finding != NULL)
            say(check, finding, pad, &window);
    }
    ts_skip(check, "no accessory on a pad demands a speed");
}

const ts_rule ts_rule_ratio_window = {
    .id       = "B3-ratio-window",
    .title    = "Ratio window",
    .question = "Is there a speed ratio that suits every accessory in all conditions at once?",
    .why      = "A pad has one ratio to its spool. When the bands of two conditions ask for ratios "
                "that exclude each other, no tooth number helps.",
    .level    = TS_REFUSE,
    .source   = "derived: intersection of the bands over the spool speeds",
    .hint     = "widen a band, or drive the accessory from another spool",
    .run      = run,
};
