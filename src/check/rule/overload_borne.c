/* check/rule/overload_borne.c: does everything behind a pad bear the overload of its accessory for
 * as long as it lasts? */
#include "check/guard.h"

#include <math.h>

static void judge(ts_check *check, const ts_guard *guard)
{
    const ts_accessory *accessory =
        &check->drive->accessories[check->train->pads[guard->pad].accessory];
    const ts_node about = accessory->torque.overload.node;

    if (!ts_wall_known(check, guard, about))
        return;
    ts_question question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value       = guard->lasting.T;
    question.limit       = guard->T_over;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_TORQUE;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s may take %s for %s, and within that time %s",
            ts_guard_name(check, guard),
            ts_shown_apart(check, question.limit, question.value, TS_KIND_TORQUE),
            ts_shown(check, guard->t_over, TS_KIND_TIME),
            ts_wall_says(check, &guard->lasting, question.limit));
    ts_remedy(check, finding, "make what gives way %s stronger, or hold the overload to %s",
              ts_shown_percent(check, question.limit / question.value - 1.0),
              ts_shown_outward(check, question.value, TS_KIND_TORQUE, -1));
}

static void unknown(ts_check *check, const ts_guard *guard)
{
    const int32_t accessory = check->train->pads[guard->pad].accessory;

    ts_not_computable(check, check->drive->accessories[accessory].torque.overload.node,
                      TS_EVERY_CONDITION, "the overload of %s", ts_guard_name(check, guard));
}

static void run(ts_check *check)
{
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++) {
        const ts_guard *guard = &check->select->guards[i];

        if (isnan(guard->T_over))
            unknown(check, guard);
        else if (guard->T_over > 0.0)
            judge(check, guard);
    }
    ts_skip(check, "no accessory has an overload");
}

const ts_rule ts_rule_overload_borne = {
    .id    = "G2-overload-borne",
    .title = "Overloads borne",
    .question =
        "Does everything between a pad and its spool bear the overload of its accessory for "
        "as long as it lasts?",
    .why   = "An overload is legitimate: what it may do to the teeth on the way is theirs to bear, "
             "with all the other accessories at work.",
    .level = TS_REFUSE,
    .source = "ISO 6336-2, -3 and ISO 10300-2, -3: life factors of so many cycles; without a "
              "safety: common practice, no source",
    .hint   = "widen the teeth that give way, or shorten the overload",
    .run    = run,
};
