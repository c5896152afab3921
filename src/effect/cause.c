/* effect/cause.c: which single failures, and which pairs, bring an effect about? */
#include "effect/effect_parts.h"

typedef struct scene {
    const ts_effects *effects;
    ts_outcome       *room;
} scene;

/* One bit an effect; TS_EFFECTS_MOST of them. */
static uint64_t bits_of(const ts_effects *effects, const ts_outcome *outcome)
{
    uint64_t bits = 0;

    for (uint32_t e = 0; e < effects->effect_count && e < TS_EFFECTS_MOST; e++)
        if (ts_effect_of(effects, &effects->effects[e], outcome) != TS_GOES_ON)
            bits |= UINT64_C(1) << e;
    return bits;
}

static uint64_t happens(const void *context, const uint32_t *events, size_t count)
{
    const scene     *s       = context;
    const ts_failure both[2] = {s->effects->failures[events[0]],
                                s->effects->failures[events[count - 1]]};

    if (count == 1)
        return bits_of(s->effects, &s->effects->outcomes[events[0]]);
    ts_outcome_solve(s->effects, both, count, s->room);
    return bits_of(s->effects, s->room);
}

ts_status ts_causes_list(ts_effects *effects, ts_arena *arena)
{
    ts_outcome      room;
    const scene     s      = {effects, &room};
    const ts_system system = {happens, &s, effects->failure_count, effects->effect_count};

    effects->causes = TS_TAKE(arena, ts_causes, (size_t)effects->effect_count + 1);
    if (effects->causes == NULL || ts_outcome_take(effects->motion->train, arena, &room) != TS_OK)
        return TS_NO_MEMORY;
    return ts_minimal_causes(&system, arena, effects->causes);
}
