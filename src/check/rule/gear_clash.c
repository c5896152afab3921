/* check/rule/gear_clash.c: do gears of one plane that do not mesh keep clear of each other? */
#include "check/envelope.h"
#include "check/visit.h"

static const ts_formula apart_formula = {
    .symbol  = "a_gear",
    .meaning = "distance between the axes of two gears of one plane",
    .unit    = "m",
    .text    = "sqrt((X - X_2)^2 + (Y - Y_2)^2)",
    .source  = "derived: Pythagoras",
};
static const ts_formula needed_formula = {
    .symbol  = "a_gear_least",
    .meaning = "distance of the axes at which the tip circles have the gap that is wanted",
    .unit    = "m",
    .text    = "(d_a + d_a_2)/2 + gap_gears",
    .source  = "derived: two circles side by side",
};
static const ts_formula reserve_formula = {
    .symbol  = "reserve_a_gear",
    .meaning = "reserve of the distance between two gears that do not mesh",
    .unit    = "1",
    .text    = "a_gear/a_gear_least - 1",
    .source  = "reserve = capacity / demand - 1",
};

static const char *const tip_names[2] = {"d_a1", "d_a2"};

static bool is_rival(const ts_check *check, uint32_t gear, uint32_t other)
{
    const ts_envelope *envelope = check->envelope;
    const ts_gear     *its      = &check->train->gears[other];
    return envelope->plane[gear] == envelope->plane[other] && envelope->driver[gear] != other &&
           envelope->driver[other] != gear && its->shaft != check->train->gears[gear].shaft &&
           !isnan(envelope->tip[other]) && check->motion->shafts[its->shaft].placed;
}

/* The tightest of the gears that come before, or TS_NOWHERE. */
static uint32_t tightest(const ts_check *check, uint32_t gear)
{
    const double           gap      = check->drive->limits.gear_gap.value;
    const ts_envelope     *envelope = check->envelope;
    const ts_shaft_motion *mine     = &check->motion->shafts[check->train->gears[gear].shaft];
    uint32_t               found    = TS_NOWHERE;
    double                 least    = INFINITY; /* the square of distance over what is needed */
    for (uint32_t i = 0; i < gear; i++) {
        if (!is_rival(check, gear, i))
            continue;
        const ts_shaft_motion *its = &check->motion->shafts[check->train->gears[i].shaft];
        const double           dx = mine->x - its->x, dy = mine->y - its->y;
        const double           need = envelope->tip[gear] + envelope->tip[i] + gap;
        if (dx * dx + dy * dy < least * need * need) {
            least = (dx * dx + dy * dy) / (need * need);
            found = i;
        }
    }
    return found;
}

static double needed(const ts_check *check, uint32_t gear, uint32_t other)
{
    const double     gap_gears = check->drive->limits.gear_gap.value;
    ts_gear_geometry mine, its;
    if (!ts_gear_geometry_of(check, gear, &mine) || !ts_gear_geometry_of(check, other, &its))
        return NAN;
    const double  d_a = mine.d_a, d_a_2 = its.d_a;
    const ts_node about = check->train->gears[gear].node;
    ts_borrow_of_gear(check, about, &mine, (ts_input){"d_a", d_a}, tip_names);
    ts_borrow_of_gear(check, about, &its, (ts_input){"d_a_2", d_a_2}, tip_names);
    return TS_STEP(check->workings, needed_formula, (d_a + d_a_2) / 2.0 + gap_gears, d_a, d_a_2,
                   gap_gears);
}

static void say(ts_check *check, ts_finding *finding, uint32_t gear, uint32_t other)
{
    const double gap   = check->drive->limits.gear_gap.value;
    const double apart = finding->value - (finding->limit - gap);
    const char  *mine = ts_gear_name(check, gear), *its = ts_gear_name(check, other);
    if (apart < 0.0)
        ts_says(check, finding, "the gears of %s and %s lie in one plane and overlap by %s", mine,
                its, ts_shown(check, -apart, TS_KIND_LENGTH));
    else
        ts_says(check, finding,
                "the gears of %s and %s lie in one plane, %s apart, where %s is wanted", mine, its,
                ts_shown_apart(check, apart, gap, TS_KIND_LENGTH),
                ts_shown(check, gap, TS_KIND_LENGTH));
    ts_remedy(check, finding,
              "move their axes %s further apart, or let one run in a plane of its own",
              ts_shown_outward(check, finding->limit - finding->value, TS_KIND_LENGTH, +1));
}

static void judge_gear(ts_check *check, uint32_t gear)
{
    const uint32_t other = tightest(check, gear);
    if (other == TS_NOWHERE)
        return;
    const ts_gear *mine = &check->train->gears[gear], *its = &check->train->gears[other];
    ts_question    question = ts_question_about(check, mine->node, TS_EVERY_CONDITION);
    question.value  = ts_axes_apart(check, mine->node, &apart_formula, mine->shaft, its->shaft);
    question.limit  = needed(check, gear, other);
    question.bound  = TS_AT_LEAST;
    question.kind   = TS_KIND_LENGTH;
    question.symbol = "a_gear";
    question.limit_symbol = "a_gear_least";
    question.reserve      = &reserve_formula;
    ts_finding *finding   = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, gear, other);
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
    ts_skip(check, "no plane holds two gears that do not mesh");
}

const ts_rule ts_rule_gear_clash = {
    .id       = "D2-gear-clash",
    .title    = "Gears of one plane",
    .question = "Do the gears of one plane that do not mesh keep clear of each other?",
    .why      = "A train that bends round the engine can touch itself: the second gear reaches the "
                "fourth over a small idler.",
    .level    = TS_REFUSE,
    .source   = "ISO 21771:2007 (tip diameter); the gap: common practice, no source",
    .hint     = "use a larger idler between them, a larger arc, or a second plane",
    .run      = run,
};
