/* search/drive_place.h: what keeps an accessory from a place, and what would it cost to put it
 * there?
 *
 * The place stands instead of what the file says of box, face and side of that accessory; what the
 * file says against it is told as a bar.
 */
#ifndef TS_SEARCH_DRIVE_PLACE_H
#define TS_SEARCH_DRIVE_PLACE_H

#include "search/arrange_conflict.h"
#include "search/drive_problem.h"

typedef struct ts_drive_place {
    int32_t        accessory;
    int32_t        spool; /* -1: any */
    int32_t        with;  /* accessory whose shaft it shares; -1: anybody's */
    ts_face_choice face;
    ts_side_choice side;
    bool           input; /* on the input shaft */
} ts_drive_place;

enum {
    TS_BAR_START = 1, /* the engine or the start needs it, and that spool is not cranked        */
    TS_BAR_BOX   = 2, /* `arrange`, or what is kept, puts it on another box                       */
    TS_BAR_FACE  = 4,
    TS_BAR_SIDE  = 8
};

/* What the file says against it, as bits of TS_BAR_. */
uint32_t ts_drive_place_bars(const ts_drive *drive, const ts_drive_problem *made,
                             const ts_drive_place *place);

/* The problem with the accessory there; false without memory. */
bool ts_drive_place_force(const ts_drive_problem *made, const ts_drive_place *place,
                          ts_arena *arena, ts_arrange_problem *out);

/* Is the accessory there in this arrangement? */
bool ts_drive_place_is(const ts_drive_problem *made, const ts_drive_place *place,
                       const ts_arrangement *a);

/* Does a demand belong to the place itself? */
bool ts_drive_place_owns(const ts_drive_place *place, const ts_demand *demand);

#endif
