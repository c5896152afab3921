/* check/rule/take_off_backlash.c: is play left between the bevels on every spool, whatever moves?
 */
#include "check/visit.h"

static const ts_formula reserve_formula = {
    .symbol  = "reserve_j_least",
    .meaning = "reserve of the least backlash of the take-off bevels",
    .unit    = "1",
    .text    = "j_least/j_bn_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static void say(ts_check *check, ts_finding *finding, const ts_drive_float *item, double j,
                double least)
{
    const char *moved = ts_phrase(
        check, "axial travel of %s to %s, %s radially, building and warmth",
        ts_shown(check, item->s[0], TS_KIND_LENGTH), ts_shown(check, item->s[1], TS_KIND_LENGTH),
        ts_shown(check, item->r, TS_KIND_LENGTH));
    if (j > 0.0)
        ts_says(check, finding, "%s may leave %s of backlash between the bevels, less than %s",
                moved, ts_shown_apart(check, j, least, TS_KIND_LENGTH),
                ts_shown(check, least, TS_KIND_LENGTH));
    else
        ts_says(check, finding, "%s may close the bevels: their teeth would overlap by %s", moved,
                ts_shown(check, -j, TS_KIND_LENGTH));
    ts_remedy(check, finding, "build them with at least %s of backlash",
              ts_shown_outward(check,
                               check->drive->drive[item->drive].take_off.backlash.value + least - j,
                               TS_KIND_LENGTH, 1));
}

static void judge(ts_check *check, const ts_drive_float *item, double least)
{
    const ts_take_off     *take_off = &check->drive->drive[item->drive].take_off;
    const ts_float_option *option   = ts_float_chosen(item);
    if (take_off->backlash.standing == TS_ABSENT) /* of a fixed bevel F1-float-travel asks for it */
        return;
    if (!ts_measure_known(take_off->backlash) || !ts_measure_known(take_off->tolerance)) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION,
                          "the backlash of the take-off bevels, or its tolerance,");
        return;
    }
    if (item->missing != NULL || option == NULL) {
        ts_not_computable(check, take_off->node, TS_EVERY_CONDITION, "%s",
                          item->missing != NULL ? item->missing : "how the bevels float (`float`)");
        return;
    }
    ts_borrow(check, take_off->node, (ts_input){"j_least", option->j[0]}, option->node, "j_least");
    ts_question question  = ts_question_about(check, take_off->node, TS_EVERY_CONDITION);
    question.level        = option->j[0] > 0.0 ? TS_WARN : TS_REFUSE;
    question.value        = option->j[0];
    question.limit        = least;
    question.bound        = TS_AT_LEAST;
    question.kind         = TS_KIND_LENGTH;
    question.symbol       = "j_least";
    question.limit_symbol = "j_bn_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, item, question.value, least);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.backlash;
    if (!ts_limit_known(check, limit, "backlash", "j_bn_least", TS_KIND_LENGTH))
        return;
    for (uint32_t d = 0; check->floats != NULL && d < check->floats->count; d++)
        judge(check, &check->floats->items[d], limit->value);
    ts_skip(check, "no backlash of a take-off is told");
}

const ts_rule ts_rule_take_off_backlash = {
    .id       = "E10-take-off-backlash",
    .title    = "Backlash of the take-off",
    .question = "Is play left between the bevels of every take-off, wherever the spool stands, "
                "however they are built and as warm as they get?",
    .why    = "Each of them takes a little; the bevels bind only when all come together, which is "
              "on the coldest start of the tightest build.",
    .level  = TS_REFUSE,
    .source = "derived: sum of all that closes the teeth, docs/method/float.md",
    .hint   = "build the bevels with more backlash, or give them a place that moves less",
    .run    = run,
};
