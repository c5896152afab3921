/* effect/minimal_cause.c: which single events, and which pairs, bring something about? */
#include "effect/minimal_cause.h"

/* Every cause is met twice, to count and to store: singles in order, then pairs of which neither
 * suffices alone. */
typedef struct seeker {
    const ts_system *system;
    uint64_t        *alone;  /* [event]  */
    ts_causes       *causes; /* [effect] */
    bool             store;
} seeker;

static void take(seeker *s, uint64_t bits, uint32_t first, uint32_t second)
{
    for (uint32_t e = 0; bits != 0; e++, bits >>= 1) {
        ts_causes *causes = &s->causes[e];
        if ((bits & 1) == 0)
            continue;
        if (s->store)
            causes->items[causes->count] = (ts_cause){first, second};
        causes->count++;
        causes->singles += second == TS_NO_EVENT;
    }
}

static void seek(seeker *s)
{
    const ts_system *system = s->system;

    for (uint32_t i = 0; i < system->event_count; i++)
        take(s, s->alone[i], i, TS_NO_EVENT);
    for (uint32_t i = 0; i < system->event_count; i++)
        for (uint32_t k = i + 1; k < system->event_count; k++) {
            const uint32_t both[2] = {i, k};
            take(s, system->happens(system->context, both, 2) & ~(s->alone[i] | s->alone[k]), i, k);
        }
}

static ts_status reserve(seeker *s, ts_arena *arena)
{
    for (uint32_t e = 0; e < s->system->effect_count; e++) {
        ts_causes *causes = &s->causes[e];
        causes->items     = TS_TAKE(arena, ts_cause, causes->count + 1);
        if (causes->items == NULL)
            return TS_NO_MEMORY;
        causes->count = causes->singles = 0;
    }
    return TS_OK;
}

ts_status ts_minimal_causes(const ts_system *system, ts_arena *arena, ts_causes *causes)
{
    seeker s = {.system = system,
                .alone  = TS_TAKE(arena, uint64_t, (size_t)system->event_count + 1),
                .causes = causes};

    if (s.alone == NULL)
        return TS_NO_MEMORY;
    for (uint32_t e = 0; e < system->effect_count; e++)
        causes[e] = (ts_causes){NULL, 0, 0};
    for (uint32_t i = 0; i < system->event_count; i++)
        s.alone[i] = system->happens(system->context, &i, 1);
    seek(&s);
    const ts_status status = reserve(&s, arena);
    s.store                = true;
    if (status == TS_OK)
        seek(&s);
    return status;
}
