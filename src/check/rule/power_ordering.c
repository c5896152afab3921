/* check/rule/power_ordering.c: do the heavy loads sit near the box input? */
#include "check/highest_load.h"
#include "check/visit.h"

/* W, the most that the pads of a shaft absorb in one condition; loads not known count for nothing,
 * for A2-power-known speaks of them. */
static double power_at(const ts_check *check, uint32_t shaft)
{
    const uint32_t *pads = check->train->shafts[shaft].pad;
    double          most = 0.0;
    if (pads[TS_FRONT] == TS_NOWHERE && pads[TS_REAR] == TS_NOWHERE)
        return 0.0;
    for (uint32_t c = 0; c < check->drive->condition_count; c++) {
        double sum = 0.0;
        for (int face = TS_FRONT; face <= TS_REAR; face++) {
            const uint32_t pad = pads[face];
            if (pad != TS_NOWHERE && ts_load_at(check, pad, c)->P > 0.0)
                sum += ts_load_at(check, pad, c)->P;
        }
        most = sum > most ? sum : most;
    }
    return most;
}

/* The nearest shaft inwards that carries a load, but not the box input itself. */
static uint32_t loaded_inwards(const ts_check *check, uint32_t shaft)
{
    for (uint32_t at = ts_driver_of(check->train, shaft); !ts_is_box_input(check->train, at);
         at          = ts_driver_of(check->train, at))
        if (power_at(check, at) > 0.0)
            return at;
    return TS_NOWHERE;
}

static void judge_shaft(ts_check *check, uint32_t index)
{
    const ts_shaft *shaft = &check->train->shafts[index];
    const double    power = power_at(check, index);
    const uint32_t  inner = power > 0.0 ? loaded_inwards(check, index) : TS_NOWHERE;
    if (inner == TS_NOWHERE)
        return;
    ts_question question = ts_question_about(check, shaft->node, TS_EVERY_CONDITION);
    question.value       = power;
    question.limit       = power_at(check, inner);
    question.bound       = TS_AT_MOST;
    question.kind        = TS_KIND_POWER;
    ts_finding *finding  = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding, "%s takes %s, more than the %s of %s, which stands nearer to the input",
            shaft->name, ts_shown_apart(check, power, question.limit, TS_KIND_POWER),
            ts_shown_apart(check, question.limit, power, TS_KIND_POWER),
            check->train->shafts[inner].name);
}

static void run(ts_check *check)
{
    for (uint32_t i = 0; i < check->train->shaft_count; i++)
        if (check->train->shafts[i].kind == TS_SHAFT_BOX && !ts_is_box_input(check->train, i))
            judge_shaft(check, i);
    ts_skip(check, "no train carries two loads one beyond the other");
}

const ts_rule ts_rule_power_ordering = {
    .id       = "D1-power-ordering",
    .title    = "Heavy loads inboard",
    .question = "Does the power of the shafts fall from the box input outwards?",
    .why    = "Every mesh carries all that lies beyond it. Light accessories outboard let the face "
              "widths fall outwards, and that is the lightest train.",
    .level  = TS_NOTE,
    .source = "common practice, no source",
    .hint   = "change the order of the two, if speeds and senses allow it",
    .run    = run,
};
