/* check/rule/speed_band.c: is every pad inside its speed band in every condition? */
#include "check/visit.h"

#include "check/nearest_teeth.h"

static const ts_formula low_formula = {
    .symbol  = "reserve_n",
    .meaning = "reserve of the pad speed above the low end of its band",
    .unit    = "1",
    .text    = "n/n_least - 1",
    .source  = "reserve = capacity / demand - 1",
};
static const ts_formula high_formula = {
    .symbol  = "reserve_n",
    .meaning = "reserve of the pad speed below the high end of its band",
    .unit    = "1",
    .text    = "n_most/n - 1",
    .source  = "reserve = capacity / demand - 1",
};

/* Is the low end the nearer one?  Reserves n/low - 1 and high/n - 1 compare like n*n and low*high.
 */
static bool low_end_decides(double n, const ts_span *band)
{
    if (!isfinite(band->low) || !(band->low > 0.0))
        return false;
    return !isfinite(band->high) || n * n < band->low * band->high;
}

static void note_band(const ts_check *check, const ts_pad *pad, const ts_span *band,
                      const ts_question *question)
{
    ts_borrow_in(check, (ts_subject){pad->node, question->condition},
                 (ts_input){"n", question->value}, check->train->shafts[pad->shaft].node, "n");
    ts_workings_given(check->workings, question->limit_symbol, question->limit, "rad/s",
                      band->node);
}

static const char *band_shown(ts_check *check, const ts_span *band)
{
    const ts_kind kind = TS_KIND_ROTATIONAL_SPEED;
    if (!isfinite(band->high))
        return ts_phrase(check, "at least %s", ts_shown(check, band->low, kind));
    if (!isfinite(band->low) || !(band->low > 0.0))
        return ts_phrase(check, "at most %s", ts_shown(check, band->high, kind));
    return ts_phrase(check, "%s to %s", ts_shown(check, band->low, kind),
                     ts_shown(check, band->high, kind));
}

static void say_remedy(ts_check *check, ts_finding *finding, uint32_t pad, bool low)
{
    const ts_pad *record  = &check->train->pads[pad];
    const double  wanted  = check->drive->limits.speed_margin.value;
    const double  end     = low ? finding->value / (1.0 + wanted) : finding->value * (1.0 + wanted);
    const char   *relaxed = ts_shown_outward(check, end, TS_KIND_ROTATIONAL_SPEED, low ? -1 : +1);
    const char   *share   = ts_shown_percent(check, end / finding->limit - 1.0);
    const int     teeth   = ts_nearest_teeth(check, record->shaft);
    const char   *shaft   = check->train->shafts[record->shaft].name;
    if (teeth > 0)
        ts_remedy(check, finding,
                  "let the band reach %s to %s (by %s), or give the gear of %s %d teeth",
                  low ? "down" : "up", relaxed, share, shaft, teeth);
    else
        ts_remedy(
            check, finding,
            "let the band reach %s to %s (by %s); no tooth number of %s alone fits every band "
            "that depends on it",
            low ? "down" : "up", relaxed, share, shaft);
}

static void say_place(ts_check *check, ts_finding *finding, const ts_accessory *accessory,
                      const ts_span *band)
{
    const double n = finding->value, end = finding->limit;
    const char  *speed  = ts_shown_apart(check, n, end, TS_KIND_ROTATIONAL_SPEED);
    const char  *where  = ts_condition_name(check, finding->condition);
    const char  *share  = ts_shown_percent(check, n / end - 1.0);
    const char  *whole  = band_shown(check, band);
    const double wanted = check->drive->limits.speed_margin.value;
    if (finding->margin < 0.0)
        ts_says(check, finding, "%s turns at %s at %s, %s %s its band of %s", accessory->name,
                speed, where, share, n < end ? "below" : "above", whole);
    else
        ts_says(check, finding,
                "%s turns at %s at %s, only %s inside its band of %s, where %s is wanted",
                accessory->name, speed, where, share, whole, ts_shown_percent(check, wanted));
}

static void judge_pad(ts_check *check, uint32_t pad, uint32_t condition)
{
    const ts_pad       *record    = &check->train->pads[pad];
    const ts_accessory *accessory = ts_accessory_on(check, record);
    const ts_span      *band      = &accessory->speed[condition];
    const double        n         = ts_shaft_speed(check, record->shaft, condition);
    const bool          low       = low_end_decides(n, band);
    ts_question         question  = ts_question_about(check, record->node, (int32_t)condition);
    question.value                = n;
    question.limit                = low ? band->low : band->high;
    question.bound                = low ? TS_AT_LEAST : TS_AT_MOST;
    question.wanted               = check->drive->limits.speed_margin.value;
    question.kind                 = TS_KIND_ROTATIONAL_SPEED;
    question.symbol               = "n";
    question.limit_symbol         = low ? "n_least" : "n_most";
    question.reserve              = low ? &low_formula : &high_formula;
    if (check->workings != NULL && isfinite(question.limit))
        note_band(check, record, band, &question);
    ts_finding *finding = ts_judge(check, &question);
    if (finding == NULL)
        return;
    say_place(check, finding, accessory, band);
    say_remedy(check, finding, pad, low);
}

static void ask_pad(ts_check *check, uint32_t pad, uint32_t condition)
{
    const ts_pad       *record    = &check->train->pads[pad];
    const ts_accessory *accessory = ts_accessory_on(check, record);
    const ts_standing   standing  = accessory->speed[condition].standing;
    const int32_t       where     = (int32_t)condition;
    if (standing == TS_ABSENT)
        return;
    if (standing == TS_UNKNOWN)
        ts_not_computable(check, record->node, where, "the speed band of %s at %s", accessory->name,
                          ts_condition_name(check, where));
    else if (isnan(ts_shaft_speed(check, record->shaft, condition)))
        ts_not_computable(check, record->node, where, "the speed of %s at %s",
                          check->drive->spools[check->train->shafts[record->shaft].spool].name,
                          ts_condition_name(check, where));
    else if (!ts_measure_known(check->drive->limits.speed_margin))
        ts_not_computable(check, record->node, where, "the speed margin that is wanted");
    else
        judge_pad(check, pad, condition);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->pad_count; i++) {
        if (ts_accessory_at(check, &check->train->pads[i]) == NULL)
            continue;
        for (uint32_t c = 0; c < check->drive->condition_count; c++)
            ask_pad(check, i, c);
    }
    ts_skip(check, "no accessory on a pad demands a speed");
}

const ts_rule ts_rule_speed_band = {
    .id       = "B2-speed-band",
    .title    = "Speed band",
    .question = "Is every pad inside the speed band of its accessory, in every condition?",
    .why      = "Below its band a pump starves and a generator drops its load; above it they burst "
                "or wear out. Bands are nearly as narrow as the travel of the spool.",
    .level    = TS_REFUSE,
    .source   = "the band that the file states for the accessory",
    .hint     = "change a tooth number between the spool and the pad",
    .run      = run,
};
