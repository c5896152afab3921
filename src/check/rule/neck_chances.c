/* check/rule/neck_chances.c: how likely is a designed neck to break in service, or not to break
 * when it should? */
#include "check/guard.h"
#include "rating/neck_life.h"

static const ts_formula worse_formula = {
    .symbol  = "P_worse",
    .meaning = "the greater chance of the two",
    .unit    = "1",
    .text    = "max(P_early, P_late)",
    .source  = "derived",
};

/* Which swings or events tire it most: a piece of a sentence. */
static const char *tired_by(ts_check *check, const ts_neck_life *life)
{
    if (life->worst < 0)
        return "";
    const int32_t condition = life->condition[life->worst];

    if (condition == TS_EVERY_CONDITION)
        return ", most of it by starts and other events";
    return ts_phrase(check, ", most of it by %s swings of %s about %s at %s",
                     ts_shown(check, life->cycles[life->worst].cycles, TS_KIND_NUMBER),
                     ts_shown(check, life->cycles[life->worst].T_a, TS_KIND_TORQUE),
                     ts_shown(check, life->cycles[life->worst].T_m, TS_KIND_TORQUE),
                     ts_condition_name(check, condition));
}

static void say(ts_check *check, ts_finding *finding, const ts_guard *guard,
                const ts_neck_life *life)
{
    const ts_neck_chance *chance  = &life->chance;
    const double          balance = ts_neck_life_balance(life);

    ts_says(check, finding,
            "the neck of %s breaks too early with a chance of %s in its life (%s at once, %s by "
            "fatigue%s) and too late with one of %s",
            ts_guard_name(check, guard), ts_shown(check, chance->early, TS_KIND_NUMBER),
            ts_shown(check, chance->static_early, TS_KIND_NUMBER),
            ts_shown(check, chance->fatigue_early, TS_KIND_NUMBER), tired_by(check, life),
            ts_shown(check, chance->late, TS_KIND_NUMBER));
    if (!isnan(balance))
        ts_remedy(check, finding, "a diameter of %s, where it is %s, balances the two",
                  ts_shown(check, balance, TS_KIND_LENGTH),
                  ts_shown(check, life->make.d_0, TS_KIND_LENGTH));
}

static void judge(ts_check *check, const ts_guard *guard)
{
    const ts_node about = ts_guard_node(check, guard);
    ts_neck_life  life;

    if (!ts_wall_known(check, guard, about))
        return;
    ts_neck_life_of(check->select, guard, &life, check->workings);
    if (life.missing != NULL) {
        ts_not_computable(check, about, TS_EVERY_CONDITION, "%s of %s", life.missing,
                          ts_guard_name(check, guard));
        return;
    }
    const double P_early = life.chance.early, P_late = life.chance.late;
    ts_question  question = ts_question_about(check, about, TS_EVERY_CONDITION);
    question.value =
        TS_STEP(check->workings, worse_formula, fmax(P_early, P_late), P_early, P_late);
    question.limit      = check->drive->limits.neck_chance.value;
    question.bound      = TS_AT_MOST;
    question.kind       = TS_KIND_NUMBER;
    question.symbol     = "P_worse";
    ts_finding *finding = ts_judge(check, &question);
    if (finding != NULL)
        say(check, finding, guard, &life);
}

static void run(ts_check *check)
{
    const ts_measure *limit = &check->drive->limits.neck_chance;

    if (!ts_limit_known(check, limit, "neck chance", "P_most", TS_KIND_NUMBER))
        return;
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++) {
        const ts_guard *guard = &check->select->guards[i];

        if (guard->neck != TS_NOWHERE && check->select->necks->items[guard->neck].designed)
            judge(check, guard);
    }
    ts_skip(check, "no neck has a diameter");
}

const ts_rule ts_rule_neck_chances = {
    .id    = "G4-neck-chances",
    .title = "Chances of a neck",
    .question =
        "Is the chance that a designed neck breaks in service, or holds when it should break, "
        "small enough?",
    .why    = "A larger diameter lowers the one chance and raises the other; starts, surges and "
              "torsional vibration wear a neck that no single load would break.",
    .level  = TS_WARN,
    .source = "common practice, no source",
    .hint   = "move the diameter towards the one that balances both chances, or narrow the scatter",
    .run    = run,
};
