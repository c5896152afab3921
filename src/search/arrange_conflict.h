/* search/arrange_conflict.h: if nothing fits, which demands cannot all hold, and what must give?
 *
 * A minimal conflict: its members cannot be met together by any arrangement, with every demand that
 * is no member dropped; with any one member dropped too, they can.  There may be others.  Where
 * questions stayed open, what is said holds with the demands of `held` beside the members.
 */
#ifndef TS_SEARCH_ARRANGE_CONFLICT_H
#define TS_SEARCH_ARRANGE_CONFLICT_H

#include "search/arrange_search.h"

typedef enum ts_demand_kind {
    TS_DEMAND_BAND,        /* speed band of an accessory in a condition            */
    TS_DEMAND_SENSE,       /* sense of its pad                                     */
    TS_DEMAND_FACES,       /* faces that it may use                                */
    TS_DEMAND_SIDE,        /* side of the box                                      */
    TS_DEMAND_BOXES,       /* boxes that it may use                                */
    TS_DEMAND_BODY,        /* room for its body                                    */
    TS_DEMAND_WRAP,        /* arc of a box                                         */
    TS_DEMAND_BRANCH,      /* arc of each of its branches                          */
    TS_DEMAND_INPUT_FACES, /* faces of its input shaft that stay closed            */
    TS_DEMAND_INPUT_BODY,  /* the fixed bodies at its input                        */
    TS_DEMAND_GAP,         /* between two bodies; dropped, they may touch          */
    TS_DEMAND_HUNTING,     /* tooth numbers without a common divisor               */
    TS_DEMAND_IDLERS,      /* how many idlers in a row                             */
    TS_DEMAND_WIDTH        /* face width over diameter; dropped, up to 4           */
} ts_demand_kind;

typedef struct ts_demand {
    ts_demand_kind kind;
    uint32_t       index;     /* accessory (BAND to BODY) or box (WRAP to INPUT_BODY) */
    uint32_t       condition; /* of a band */
} ts_demand;

typedef struct ts_conflict_member {
    ts_demand demand;
    /* The least that this member alone would have to give, to a millionth of the range, every other
     * member kept; NaN where no number says it (a sense, a face), or where another end than the one
     * moved would have to give too.  rad/s, rad, m, or a ratio. */
    double from, to;
    bool   at_most; /* less may do: a question on the way stayed open */
} ts_conflict_member;

typedef struct ts_conflict {
    bool                found;    /* false: something fits, or the search was stopped         */
    bool                hopeless; /* nothing fits even with every demand dropped: teeth, modules */
    ts_conflict_member *members;
    size_t              count;
    /* Demands that had to be kept although nobody knows whether they are needed: without them the
     * ways to search are too many.  The members conflict with these beside them. */
    ts_demand *held;
    size_t     held_count;
    size_t     searches; /* that it took */
} ts_conflict;

/* Every demand of the problem that could be dropped; NULL without memory. */
ts_demand *ts_demands_of(const ts_arrange_problem *problem, size_t *count, ts_arena *arena);

/* The problem without those demands; it shares with the old one what does not change.  False
 * without memory. */
bool ts_demands_drop(const ts_arrange_problem *problem, const ts_demand *dropped, size_t count,
                     ts_arrange_problem *out, ts_arena *arena);

/* TS_NO_MEMORY also when a search met the limit of the wish.  Members are in the arena. */
ts_status ts_arrange_explain(const ts_arrange_problem *problem, const ts_arrange_wish *wish,
                             ts_conflict *conflict, ts_arena *arena);

#endif
