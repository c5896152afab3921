/* effect/cause.c: which single failures, and which pairs, bring an effect about? */
#include "effect/effect_parts.h"

/* One bit an effect; TS_EFFECTS_MOST of them. */
static uint64_t effects_of(const ts_effects *effects, const ts_outcome *outcome)
{
    uint64_t bits = 0;

    for (uint32_t e = 0; e < effects->effect_count && e < TS_EFFECTS_MOST; e++)
        if (ts_effect_of(effects, &effects->effects[e], outcome) != TS_GOES_ON)
            bits |= UINT64_C(1) << e;
    return bits;
}

/* Every cause is met twice, to count and to store: singles in order, then pairs of which neither
 * suffices alone. */
typedef struct seeker {
    ts_effects *effects;
    uint64_t   *alone; /* [failure] */
    ts_outcome  room;
    bool        store;
} seeker;

static void take(seeker *s, uint64_t bits, uint32_t first, uint32_t second)
{
    for (uint32_t e = 0; bits != 0; e++, bits >>= 1) {
        ts_causes *causes = &s->effects->causes[e];
        if ((bits & 1) == 0)
            continue;
        if (s->store)
            causes->items[causes->count] = (ts_cause){first, second};
        causes->count++;
        causes->singles += second == TS_NOWHERE;
    }
}

static void seek(seeker *s)
{
    const ts_effects *effects = s->effects;

    for (uint32_t i = 0; i < effects->failure_count; i++)
        take(s, s->alone[i], i, TS_NOWHERE);
    for (uint32_t i = 0; i < effects->failure_count; i++)
        for (uint32_t k = i + 1; k < effects->failure_count; k++) {
            const ts_failure both[2] = {effects->failures[i], effects->failures[k]};
            ts_outcome_solve(effects, both, 2, &s->room);
            take(s, effects_of(effects, &s->room) & ~(s->alone[i] | s->alone[k]), i, k);
        }
}

static ts_status reserve(seeker *s, ts_arena *arena)
{
    for (uint32_t e = 0; e < s->effects->effect_count; e++) {
        ts_causes *causes = &s->effects->causes[e];
        causes->items     = TS_TAKE(arena, ts_cause, causes->count + 1);
        if (causes->items == NULL)
            return TS_NO_MEMORY;
        causes->count = causes->singles = 0;
    }
    return TS_OK;
}

ts_status ts_causes_list(ts_effects *effects, ts_arena *arena)
{
    const size_t n = effects->failure_count;
    seeker       s = {.effects = effects, .alone = TS_TAKE(arena, uint64_t, n + 1)};

    effects->causes = TS_TAKE(arena, ts_causes, (size_t)effects->effect_count + 1);
    if (s.alone == NULL || effects->causes == NULL ||
        ts_outcome_take(effects->motion->train, arena, &s.room) != TS_OK)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < n; i++)
        s.alone[i] = effects_of(effects, &effects->outcomes[i]);
    seek(&s);
    ts_status status = reserve(&s, arena);
    s.store          = true;
    if (status == TS_OK)
        seek(&s);
    return status;
}
