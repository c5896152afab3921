/* check/rule/shaft_clash.c: does a gear cover the axis of another shaft? */
#include "check/envelope.h"
#include "check/visit.h"

static const ts_formula apart_formula = {
    .symbol  = "a_shaft",
    .meaning = "distance between the axes of the gear and another shaft",
    .unit    = "m",
    .text    = "sqrt((X - X_2)^2 + (Y - Y_2)^2)",
    .source  = "derived: Pythagoras",
};
static const ts_formula needed_formula = {
    .symbol  = "a_shaft_least",
    .meaning = "distance from the axis at which the tip circle has the gap that is wanted",
    .unit    = "m",
    .text    = "d_a/2 + gap_gears",
    .source  = "derived: a point beside a circle",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_a_shaft",
    .meaning = "reserve of the distance of a gear from another shaft's axis",
    .unit    = "1",
    .text    = "a_shaft/a_shaft_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static const char *const tip_names[2] = {"d_a1", "d_a2"};

static bool has_gear_in_plane(const ts_check *check, uint32_t shaft, uint32_t plane)
{
    const ts_envelope *envelope = check->envelope;
    for (uint32_t i = envelope->first[shaft]; i != TS_NOWHERE; i = envelope->next[i])
        if (envelope->plane[i] == plane)
            return true;
    return false;
}

/* The nearest axis of the same box that has no gear of its own in the gear's plane: gears of one
 * plane are the business of D2-gear-clash. */
static uint32_t nearest(const ts_check *check, uint32_t gear)
{
    const ts_train        *train = check->train;
    const ts_gear         *mine  = &train->gears[gear];
    const ts_shaft_motion *here  = &check->motion->shafts[mine->shaft];
    uint32_t               found = TS_NOWHERE;
    double                 least = INFINITY;
    for (uint32_t i = 0; i < train->shaft_count; i++) {
        const ts_shaft        *shaft = &train->shafts[i];
        const ts_shaft_motion *there = &check->motion->shafts[i];
        if (i == mine->shaft || shaft->kind != TS_SHAFT_BOX || !there->placed ||
            shaft->drive != train->shafts[mine->shaft].drive)
            continue;
        const double dx = here->x - there->x, dy = here->y - there->y;
        if (dx * dx + dy * dy < least &&
            !has_gear_in_plane(check, i, check->envelope->plane[gear])) {
            least = dx * dx + dy * dy;
            found = i;
        }
    }
    return found;
}

static double needed(const ts_check *check, uint32_t gear)
{
    const double     gap_gears = check->drive->limits.gear_gap.value;
    ts_gear_geometry mine;
    if (!ts_gear_geometry_of(check, gear, &mine))
        return NAN;
    const double d_a = mine.d_a;
    ts_borrow_of_gear(check, check->train->gears[gear].node, &mine, (ts_input){"d_a", d_a},
                      tip_names);
    return TS_STEP(check->workings, needed_formula, d_a / 2.0 + gap_gears, d_a, gap_gears);
}

static void judge_gear(ts_check *check, uint32_t gear)
{
    const uint32_t shaft = nearest(check, gear);
    if (shaft == TS_NOWHERE)
        return;
    const ts_gear *mine     = &check->train->gears[gear];
    ts_question    question = ts_question_about(check, mine->node, TS_EVERY_CONDITION);
    question.value          = ts_axes_apart(check, mine->node, &apart_formula, mine->shaft, shaft);
    question.limit          = needed(check, gear);
    question.bound          = TS_AT_LEAST;
    question.kind           = TS_KIND_LENGTH;
    question.symbol         = "a_shaft";
    question.limit_symbol   = "a_shaft_least";
    question.reserve        = &reserve_formula;
    ts_finding *finding     = ts_judge(check, &question);
    if (finding == NULL)
        return;
    ts_says(check, finding,
            "the gear of %s, %s in radius at its tips, runs over the axis of %s, %s away",
            ts_gear_name(check, gear), ts_shown(check, check->envelope->tip[gear], TS_KIND_LENGTH),
            check->train->shafts[shaft].name, ts_shown(check, question.value, TS_KIND_LENGTH));
    ts_remedy(check, finding, "move %s %s further away, or make the gear smaller",
              check->train->shafts[shaft].name,
              ts_shown_outward(check, question.limit - question.value, TS_KIND_LENGTH, +1));
}

static void run(ts_check *check)
{
    if (!ts_limit_known(check, &check->drive->limits.gear_gap, "gear gap", "gap_gears",
                        TS_KIND_LENGTH))
        return;
    for (uint32_t i = 0; i < check->train->gear_count; i++)
        if (!isnan(check->envelope->tip[i]) &&
            check->motion->shafts[check->train->gears[i].shaft].placed)
            judge_gear(check, i);
    ts_skip(check, "every shaft has a gear in every plane of its box");
}

const ts_rule ts_rule_shaft_clash = {
    .id       = "D2-shaft-clash",
    .title    = "Gear over a shaft",
    .question = "Does every gear leave the axes of the other shafts of its box free?",
    .why    = "Every shaft reaches through the box to its bearings in both walls, so a large gear "
              "in another plane may lie over gears, but never over a shaft.",
    .level  = TS_REFUSE,
    .source = "ISO 21771:2007 (tip diameter); the gap: common practice, no source",
    .hint   = "move the shaft out from under the gear, or make the gear smaller",
    .run    = run,
};
