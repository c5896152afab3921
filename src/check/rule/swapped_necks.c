/* check/rule/swapped_necks.c: would a neck that is fitted to the wrong pad let something behind it
 * break? */
#include "check/guard.h"

/* The strongest neck that fits and lets something break; NULL: none does. */
static const ts_guard *worst_guest(const ts_check *check, const ts_guard *guard)
{
    const ts_select *select = check->select;
    const ts_guard  *worst  = NULL;
    double           most   = 0.0;

    for (uint32_t i = 0; i < select->count; i++) {
        const ts_guard *other = &select->guards[i];

        if (other == guard || other->pad == TS_NOWHERE || other->neck == TS_NOWHERE)
            continue;
        const ts_swap swap = ts_select_swapped(select, guard, other);
        if (swap.fits && swap.verdict == TS_SWAP_LATE && swap.band.high > most) {
            most  = swap.band.high;
            worst = other;
        }
    }
    return worst;
}

static void judge(ts_check *check, const ts_guard *guard)
{
    const ts_node   about   = ts_guard_node(check, guard);
    const ts_guard *guest   = worst_guest(check, guard);
    ts_finding     *finding = ts_judge_fact(check, about, TS_EVERY_CONDITION, guest == NULL);

    if (finding == NULL || guest == NULL)
        return;
    const double most = check->select->necks->items[guest->neck].band.high;
    ts_says(check, finding,
            "with the neck of %s in the place of that of %s it may hold until %s, and %s",
            ts_guard_name(check, guest), ts_guard_name(check, guard),
            ts_shown_apart(check, most, guard->once.T, TS_KIND_TORQUE),
            ts_wall_says(check, &guard->once, most));
    ts_remedy(check, finding,
              "give %s and %s different splines (`spline`), so that they do not fit",
              ts_guard_name(check, guest), ts_guard_name(check, guard));
}

static void run(ts_check *check)
{
    if (check->select == NULL) {
        ts_skip(check, "necks were not looked at");
        return;
    }
    for (uint32_t i = 0; i < check->select->count; i++) {
        const ts_guard *guard = &check->select->guards[i];

        if (guard->pad != TS_NOWHERE && guard->neck != TS_NOWHERE)
            judge(check, guard);
    }
    ts_skip(check, "nothing on a pad has a neck");
}

const ts_rule ts_rule_swapped_necks = {
    .id       = "G6-swapped-necks",
    .title    = "Swapped necks",
    .question = "Would any neck that fits into another pad let something behind it break there?",
    .why      = "Drive shafts that look alike are swapped in the shop one day; a weak one tells at "
                "the first start, a strong one only when the accessory seizes.",
    .level    = TS_WARN,
    .source   = "common practice, no source",
    .hint     = "give accessories whose necks must not be swapped different splines",
    .run      = run,
};
