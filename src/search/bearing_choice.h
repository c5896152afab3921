/* search/bearing_choice.h: which bearings of the table are the lightest that hold?
 *
 * Demands   Of `limits`: life in all conditions together, static safety, speed number, and rollers
 *           that carry enough to roll where most time is spent.  Where the file tells no times or
 *           no oil, no life is asked.
 * Choice    Series and bore, also where the file has them; form and rows as it has them, else as
 *           the place asks for: rollers beside a locating pair, and balls where no roller holds.
 *           Bearings of which the file tells more than that are kept.
 * Method    Shafts do not load each other's bearings differently with other bearings, so each is
 *           taken by itself: every pair of bearings that its two seats may have, in the order of
 *           their mass, is put in, placed, loaded and rated, until one holds.
 * Proof     Every lighter pair was tried and fails.  Where none holds, the one that falls short by
 *           least is named.
 * Mass      mass/mass.h.
 */
#ifndef TS_SEARCH_BEARING_CHOICE_H
#define TS_SEARCH_BEARING_CHOICE_H

#include "rating/drive_lines.h"

typedef enum ts_bearing_demand {
    TS_DEMAND_LIFE,
    TS_DEMAND_STATIC,
    TS_DEMAND_SPEED,
    TS_DEMAND_LEAST_LOAD,
    TS_DEMAND_ROOM /* the shaft finds no room with it */
} ts_bearing_demand;
const char *ts_bearing_demand_says(ts_bearing_demand demand); /* "static safety" */

/* What a bearing has over the demand that is nearest to failing. */
typedef struct ts_bearing_margin {
    ts_bearing_demand demand;
    double            reserve;      /* >= 0: it holds                                       */
    double            value, limit; /* NaN: of TS_DEMAND_ROOM                               */
    int32_t           condition;    /* TS_EVERY_CONDITION: of none                          */
    const char       *fault;        /* of TS_DEMAND_ROOM: why the shaft cannot be laid so */
} ts_bearing_margin;

typedef struct ts_bearing_kind {
    ts_bearing_form form;
    int             rows;
    const char     *series; /* NULL: none of the table                                      */
    double          d, D;   /* m                                                            */
    double          mass;   /* kg; NaN: not known                                           */
} ts_bearing_kind;

typedef enum ts_bearing_state {
    TS_BEARING_KEPT,   /* for the reason `why`                                              */
    TS_BEARING_CHOSEN, /* the lightest that holds                                           */
    TS_BEARING_NONE    /* none holds: `after` is the nearest                                */
} ts_bearing_state;

typedef struct ts_bearing_choice {
    uint32_t          line;
    int               k; /* of its bearings */
    ts_bearing_state  state;
    const char       *why;       /* TS_BEARING_KEPT: a piece of a sentence                     */
    bool              stated;    /* the file told the one before                               */
    bool              was;       /* was there a bearing that could be rated?                   */
    ts_bearing_kind   before;    /* where there was one                                        */
    ts_bearing_kind   after;     /* not of TS_BEARING_KEPT                                     */
    ts_line_pick      pick;      /* the same                                                   */
    ts_bearing_margin margin;    /* of `after`                                                 */
    bool              lightest;  /* there is no lighter one to try                           */
    ts_bearing_margin lighter;   /* else what fails with the next lighter one ...             */
    int               lighter_k; /* ... of which bearing of the shaft                        */
} ts_bearing_choice;

typedef struct ts_bearing_plan {
    ts_bearing_choice *choices; /* in the order of the lines                                */
    size_t             count;
    double             mass_before, mass_after; /* kg, of all; NaN: one is not known        */
    size_t             trials;                  /* shafts that were rated                   */
    bool               fits;                    /* is there one that holds for every seat?  */
    bool               life_asked;              /* are times and oil known?                 */
} ts_bearing_plan;

/* Lines of a solved drive; they end with the bearings that were chosen in their seats, rated, and
 * with outlines as they were. */
ts_status ts_find_bearings(const ts_drive *drive, ts_lines *lines, ts_arena *arena,
                           ts_bearing_plan *plan);

#endif
