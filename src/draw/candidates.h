/* draw/candidates.h: arrangements side by side, at one scale, with what less wrap costs below. */
#ifndef TS_DRAW_CANDIDATES_H
#define TS_DRAW_CANDIDATES_H

#include "search/drive_problem.h"

/* One arrangement and what is known of it. */
typedef struct ts_candidate {
    const char               *name;    /* "1", or "in the file"                             */
    const ts_arrangement     *found;   /* its choices count in `problem`                    */
    const ts_arrange_problem *problem; /* the question; for what stands in the file, its own */
    double                    mass;    /* kg; NaN: not known                                */
    bool                      judged, read, holds;
    size_t                    warnings;
    const char               *finding; /* what the first open refusal says; NULL            */
} ts_candidate;

/* The lightest within a wrap. */
typedef struct ts_front_mark {
    double wrap, mass;
    bool   proven, holds;
} ts_front_mark;

typedef struct ts_candidates {
    const ts_drive_problem *made;
    const ts_candidate     *items;
    size_t                  count;
    size_t                  reference; /* the item that the others are told apart from */
    const ts_front_mark    *front;     /* by falling wrap; may be empty                */
    size_t                  front_count;
    double                  nothing_below; /* rad: nothing fits within it; NaN: not found out */
} ts_candidates;

#endif
