/* check/rule/bearing_speed.c: does any bearing turn faster than its kind of oil feed allows? */
#include "check/bearing_visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_n_dm",
    .meaning = "reserve of the speed number",
    .unit    = "1",
    .text    = "n_dm_most/n_dm - 1",
    .source  = "reserve = capacity / demand - 1",
};

static int32_t fastest(const ts_check *check, const ts_bearing_at *at)
{
    int32_t found = 0;
    for (uint32_t c = 1; c < check->drive->condition_count; c++)
        if (ts_line_at(check->lines, at->number, c)->duty[at->k].n_dm >
            ts_line_at(check->lines, at->number, (uint32_t)found)->duty[at->k].n_dm)
            found = (int32_t)c;
    return found;
}

static void judge(ts_check *check, const ts_bearing_at *at, double most)
{
    const ts_line_bearing *b         = at->bearing;
    const int32_t          condition = fastest(check, at);
    const double           n_dm      = b->rating.n_dm;

    if (check->workings != NULL) {
        ts_workings_about(check->workings, b->node, TS_EVERY_CONDITION);
        ts_workings_borrow(check->workings, "n_dm", n_dm, (ts_subject){b->node, condition}, "n_dm");
    }
    ts_question question  = ts_question_about(check, b->node, TS_EVERY_CONDITION);
    question.value        = n_dm;
    question.limit        = most;
    question.bound        = TS_AT_MOST;
    question.kind         = TS_KIND_NUMBER;
    question.symbol       = "n_dm";
    question.limit_symbol = "n_dm_most";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s turns with %s mm times rpm at %s, more than %s",
            ts_bearing_name(check, at), ts_shown_apart(check, n_dm, most, TS_KIND_NUMBER),
            ts_condition_name(check, condition), ts_shown(check, most, TS_KIND_NUMBER));
    ts_remedy(check, finding, "make its mean diameter about %s where it is %s",
              ts_shown_outward(check, b->ability.d_m * most / n_dm, TS_KIND_LENGTH, -1),
              ts_shown(check, b->ability.d_m, TS_KIND_LENGTH));
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.bearing_speed_number;
    if (check->lines != NULL && check->lines->count > 0 &&
        !ts_limit_known(check, limit, "bearing speed number", "n_dm_most", TS_KIND_NUMBER))
        return;
    ts_each_bearing(check, limit->value, judge);
    ts_skip(check, "no bearing could be rated");
}

const ts_rule ts_rule_bearing_speed = {
    .id       = "E7-bearing-speed",
    .title    = "Speed of the bearings",
    .question = "Does every bearing stay below the speed number that its oil feed allows?",
    .why    = "Balls press outwards with the square of the speed, which no rating life knows, and "
              "oil from the side no longer reaches the inner race.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "take a lighter series or a smaller bore, or show the oil under the race and raise "
              "`bearing speed number` in `limits`",
    .run    = run,
};
