/* check/rule/static_torque_borne.c: does what stands behind a pad without a neck bear the static
 * torque of its accessory? */
#include "check/guard.h"

static void judge(ts_check *check, const ts_guard *guard)
{
    const ts_accessory *accessory =
        &check->drive->accessories[check->train->pads[guard->pad].accessory];
    const ts_node about  = accessory->torque.statically.node;
    const double  T_wall = guard->once.T;

    if (!ts_wall_known(check, guard, about))
        return;
    ts_borrow(check, about, (ts_input){"T_wall", T_wall}, ts_guard_wall_node(check, guard),
              "T_wall");
    ts_question question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value       = T_wall;
    question.limit       = guard->T_static;
    question.bound       = TS_AT_LEAST;
    question.kind        = TS_KIND_TORQUE;
    question.symbol      = "T_wall";
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "the drive of %s holds %s and has no neck, and %s",
            ts_guard_name(check, guard),
            ts_shown_apart(check, question.limit, T_wall, TS_KIND_TORQUE),
            ts_wall_says(check, &guard->once, question.limit));
    ts_remedy(check, finding, "make what gives way %s stronger",
              ts_shown_percent(check, question.limit / T_wall - 1.0));
}

/* A static torque that is not stated asks nothing; one that is stated as unknown does. */
static void unknown(ts_check *check, const ts_guard *guard)
{
    const int32_t    accessory = check->train->pads[guard->pad].accessory;
    const ts_measure stated    = check->drive->accessories[accessory].torque.statically;

    if (stated.standing == TS_UNKNOWN)
        ts_not_computable(check, stated.node, TS_EVERY_CONDITION, "the static torque of %s",
                          ts_guard_name(check, guard));
}

static void run(ts_check *check)
{
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++) {
        const ts_guard *guard = &check->select->guards[i];

        if (guard->pad == TS_NOWHERE || guard->neck != TS_NOWHERE)
            continue;
        if (guard->T_static > 0.0)
            judge(check, guard);
        else
            unknown(check, guard);
    }
    ts_skip(check, "no accessory without a neck states a static torque");
}

const ts_rule ts_rule_static_torque_borne = {
    .id    = "G2-static-torque-borne",
    .title = "Static torque borne",
    .question =
        "Does everything behind a pad without a neck bear the static torque of its accessory?",
    .why    = "Where nothing is meant to shear, the accessory's own drive shaft limits what a "
              "jam can put into the gearbox; the teeth must not be the weaker part.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "widen the teeth that give way",
    .run    = run,
};
