/* rating/selectivity_way.c: which parts stand between a pad and its spool, and what does each
 * leave for the pad? */
#include "rating/selectivity_parts.h"

#include <math.h>

const char *ts_part_gives_way(ts_part_kind kind)
{
    static const char *const says[] = {
        [TS_PART_ROOT] = "a tooth of %s breaks",         [TS_PART_FLANK] = "the flanks of %s yield",
        [TS_PART_SPLINE] = "the spline of %s gives way", [TS_PART_SHAFT] = "the shaft of %s yields",
        [TS_PART_BEARING] = "a bearing of %s is dented", [TS_PART_NECK] = "the neck of %s breaks",
    };
    return says[kind];
}

double ts_select_transfer(const ts_select *select, const ts_guard *guard,
                          const ts_part_capacity *part)
{
    const ts_select_scratch *scratch = select->scratch;
    const uint32_t           p       = guard->shaft;
    const uint32_t           e       = ts_part_shaft(select->teeth->motion->train, part);

    return scratch->ratio[p] / scratch->ratio[e] * scratch->keep[e] / scratch->keep[p];
}

#define ROUNDING 1e-12 /* what is left of a torque less itself is nothing */

/* N.m that the guard itself takes there, + outwards. */
static double own_torque(const ts_select *select, const ts_guard *guard, size_t c)
{
    const ts_power *power = select->teeth->power;
    const ts_train *train = power->motion->train;

    return guard->pad == TS_NOWHERE ? power->T[c * train->shaft_count + guard->shaft]
                                    : power->pad[c * train->pad_count + guard->pad].T;
}

ts_wall ts_select_wall_of(const ts_select *select, const ts_guard *guard, uint32_t number)
{
    const ts_power         *power = select->teeth->power;
    const ts_train         *train = power->motion->train;
    const ts_part_capacity *part  = &select->parts.items[number];
    const uint32_t          e     = ts_part_shaft(train, part);
    const double            g     = ts_select_transfer(select, guard, part);
    ts_wall                 wall  = {part->T / g, number, g, 0.0, TS_EVERY_CONDITION};

    for (size_t c = 0; !part->of_pad && c < select->drive->condition_count; c++) {
        const double all = power->T[c * train->shaft_count + e];
        const double L   = all - own_torque(select, guard, c) * g;

        if (L > wall.L && L > ROUNDING * fabs(all)) {
            wall.L    = L;
            wall.T    = (part->T - L) / g;
            wall.with = (int32_t)c;
        }
    }
    return wall;
}

bool ts_select_passes(const ts_guard *guard, const ts_part_capacity *part, uint32_t shaft,
                      bool start)
{
    const bool own = guard->pad == TS_NOWHERE && shaft == guard->shaft;

    return part->kind == TS_PART_NECK && (own || start || !(guard->run.T > 0.0));
}

double ts_wall_bears(const ts_wall *wall)
{
    return wall->T * wall->g + wall->L;
}

size_t ts_select_upstream(const ts_select *select, const ts_guard *guard, uint32_t *parts,
                          size_t room)
{
    const ts_train *train = select->teeth->motion->train;
    size_t          count = 0;
    uint32_t        s     = guard->shaft;

    for (uint32_t i = guard->pad == TS_NOWHERE ? TS_NOWHERE : select->scratch->own[guard->pad];
         i != TS_NOWHERE && count < room; i = select->scratch->next[i])
        parts[count++] = i;
    for (;;) {
        for (uint32_t i = select->scratch->first[s]; i != TS_NOWHERE;
             i          = select->scratch->next[i]) {
            if (!ts_select_passes(guard, &select->parts.items[i], s, false) && count < room)
                parts[count++] = i;
        }
        if (train->shafts[s].mesh == TS_NOWHERE || count == room)
            return count;
        s = train->meshes[train->shafts[s].mesh].driver_shaft;
    }
}
