/* check/rule/low_confidence.c: which values does their own author doubt? */
#include "check/visit.h"

static const char *word_at(ts_check *check, ts_node node)
{
    const ts_text word = check->source->nodes[node].scalar;
    return ts_phrase(check, "%.*s", (int)word.length, word.at);
}

static void judge_value(ts_check *check, ts_node node)
{
    const ts_node_place *place = &check->source->nodes[node];
    const bool           low   = ts_text_is(check->source->nodes[place->confidence].scalar, "low");
    ts_finding          *finding = ts_judge_fact(check, node, TS_EVERY_CONDITION, !low);
    if (finding == NULL)
        return;
    if (place->source != 0)
        ts_says(check, finding, "this value is marked low in confidence; its source: %s",
                word_at(check, place->source));
    else
        ts_says(check, finding, "this value is marked low in confidence and names no source");
}

static void run(ts_check *check)
{
    for (ts_node node = 1; node <= check->source->node_count; node++)
        if (check->source->nodes[node].confidence != 0)
            judge_value(check, node);
    ts_skip(check, "no value states its confidence");
}

const ts_rule ts_rule_low_confidence = {
    .id       = "A4-low-confidence",
    .title    = "Values in doubt",
    .question = "Which values are marked low in confidence by whoever wrote them?",
    .why      = "Every number that rests on such a value is as doubtful, however many digits it "
                "shows.",
    .level    = TS_NOTE,
    .source   = "common practice, no source",
    .hint     = "find a better source for the value",
    .run      = run,
};
