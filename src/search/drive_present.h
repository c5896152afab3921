/* search/drive_present.h: which arrangement stands in a drive file already?
 *
 * The boxes of the file in the words of the search, so that an answer can be held against them.
 */
#ifndef TS_SEARCH_DRIVE_PRESENT_H
#define TS_SEARCH_DRIVE_PRESENT_H

#include "search/drive_problem.h"

typedef struct ts_present {
    bool stands; /* any shaft with an accessory in any box? */
    /* NULL, or what the search has no words for, so that shafts are not compared: "side branches",
     * ... */
    const char        *beyond;
    ts_arrangement     shafts;  /* without its mass; `choice` counts in `problem`               */
    ts_arrange_problem problem; /* the question, with the inputs that stand as only choices      */
    double   mass;     /* kg as the search weighs it; NaN: a face or a module is not known       */
    uint32_t placed;   /* accessories that stand somewhere, as bits                              */
    size_t   pads_off; /* covers and hand-turning pads on branches, which an answer leaves out   */
} ts_present;

/* Of the drive of the question; what it takes is in `arena`.  False without memory. */
bool ts_drive_present(const ts_drive *drive, const ts_drive_problem *made, ts_arena *arena,
                      ts_present *out);

#endif
