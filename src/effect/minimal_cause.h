/* effect/minimal_cause.h: which single events, and which pairs, bring something about?
 *
 * By exhaustion: every event and every pair is asked.  A pair is a cause only where neither of its
 * events is one alone, so the list is minimal and, up to two at once, complete.  Effects of a
 * system that more failures never mend (a coherent one) have their minimal cut sets of order 1
 * and 2 here.
 */
#ifndef TS_EFFECT_MINIMAL_CAUSE_H
#define TS_EFFECT_MINIMAL_CAUSE_H

#include "base/arena.h"

#include <stdint.h>

#define TS_EFFECTS_MOST 64 /* that are sought at once */
#define TS_NO_EVENT     UINT32_MAX

typedef struct ts_cause {
    uint32_t first, second; /* numbers of events; second TS_NO_EVENT: a single cause */
} ts_cause;

typedef struct ts_causes {
    ts_cause *items; /* singles first, each in the order of the events: all of them, and minimal */
    size_t    count, singles;
} ts_causes;

/* What happens when these events (one or two) have come about: one bit an effect. */
typedef struct ts_system {
    uint64_t (*happens)(const void *context, const uint32_t *events, size_t count);
    const void *context;
    uint32_t    event_count, effect_count; /* effects beyond TS_EFFECTS_MOST have no causes */
} ts_system;

/* causes: [effect].  TS_OK or TS_NO_MEMORY. */
ts_status ts_minimal_causes(const ts_system *system, ts_arena *arena, ts_causes *causes);

#endif
