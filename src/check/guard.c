/* check/guard.c: what do the rules about necks and what stands behind them have in common? */
#include "check/guard.h"

const char *ts_guard_name(const ts_check *check, const ts_guard *guard)
{
    return guard->pad != TS_NOWHERE ? check->train->pads[guard->pad].name
                                    : check->train->shafts[guard->shaft].name;
}

ts_node ts_guard_wall_node(const ts_check *check, const ts_guard *guard)
{
    return guard->pad != TS_NOWHERE ? check->train->pads[guard->pad].node
                                    : check->select->necks->items[guard->neck].neck->node;
}

ts_node ts_guard_node(const ts_check *check, const ts_guard *guard)
{
    return guard->neck != TS_NOWHERE ? check->select->necks->items[guard->neck].neck->node
                                     : ts_guard_wall_node(check, guard);
}

/* "a tooth of idler 3 breaks", of bevels or not. */
static const char *gives_way(ts_check *check, const ts_part_capacity *part)
{
    const bool bevel = ts_part_is_bevel(check->train, part);

    switch (part->kind) {
    case TS_PART_ROOT:
        return ts_phrase(check, bevel ? "a bevel tooth of %s breaks" : "a tooth of %s breaks",
                         part->what);
    case TS_PART_FLANK:
        return ts_phrase(check, bevel ? "the bevel flanks of %s yield" : "the flanks of %s yield",
                         part->what);
    case TS_PART_SPLINE:
        return ts_phrase(check, "the spline of %s gives way", part->what);
    case TS_PART_SHAFT:
        return ts_phrase(check, "the shaft of %s yields", part->what);
    case TS_PART_BEARING:
        return ts_phrase(check, "a bearing of %s is dented", part->what);
    case TS_PART_NECK:
        break;
    }
    return ts_phrase(check, "the neck of %s breaks", part->what);
}

const char *ts_wall_says(ts_check *check, const ts_wall *wall, double other)
{
    const char *says =
        ts_phrase(check, "%s from %s on", gives_way(check, &check->select->parts.items[wall->part]),
                  ts_shown_apart(check, wall->T, other, TS_KIND_TORQUE));

    if (wall->with == TS_EVERY_CONDITION)
        return says;
    return ts_phrase(check, "%s, beside the %s that others take there at %s", says,
                     ts_shown(check, wall->L, TS_KIND_TORQUE),
                     ts_condition_name(check, wall->with));
}

/* Teeth stand first in the list of parts, two a mesh. */
const ts_part_capacity *ts_guard_blind(const ts_check *check, const ts_guard *guard)
{
    const ts_train *train = check->train;
    uint32_t        s     = guard->shaft;

    while (train->shafts[s].mesh != TS_NOWHERE) {
        const ts_part_capacity *part =
            &check->select->parts.items[2 * (size_t)train->shafts[s].mesh];

        if (part->missing != NULL)
            return part;
        s = train->meshes[train->shafts[s].mesh].driver_shaft;
    }
    return NULL;
}

bool ts_wall_known(ts_check *check, const ts_guard *guard, ts_node about)
{
    if (ts_guard_blind(check, guard) != NULL)
        return false;
    if (guard->once.part != TS_NOWHERE)
        return true;
    ts_not_computable(check, about, TS_EVERY_CONDITION,
                      "what the teeth between %s and its spool bear", ts_guard_name(check, guard));
    return false;
}
