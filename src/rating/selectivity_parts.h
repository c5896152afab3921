/* rating/selectivity_parts.h: the steps of ts_select_solve.  For src/rating alone. */
#ifndef TS_RATING_SELECTIVITY_PARTS_H
#define TS_RATING_SELECTIVITY_PARTS_H

#include "rating/selectivity.h"

#define TS_OVERLOAD_TIMES 32 /* different durations of overloads that are told apart */

struct ts_select_scratch {
    double   *ratio;     /* [shaft] speed over that of its spool                                  */
    double   *keep;      /* [shaft] share of the spool's power that reaches it: 1 - loss of each  */
    uint32_t *first;     /* [shaft] its first part ...                                            */
    uint32_t *next;      /* [part] ... and the next one of the same shaft; TS_NOWHERE ends it     */
    double   *least;     /* [shaft] the least that a part of it bears                             */
    uint32_t *least_at;  /* [shaft] which one                                                     */
    double   *steady;    /* [shaft] wall without what others take ...                             */
    uint32_t *steady_at; /* ... and where it stands                                               */
    double   *rest;      /* [shaft] the same of one condition, less all that is taken there       */
    uint32_t *rest_at;
    uint32_t *input;   /* [shaft] the box input in whose tree it stands; itself elsewhere       */
    uint32_t *own;     /* [pad] the first part that its torque alone counts for; TS_NOWHERE     */
    ts_wall  *walls;   /* [guard] of one way through the train                                  */
    double   *lasting; /* [part] what it bears for a while                                      */
};

/* Loads, neck and reference of every guard. */
void ts_select_fill_guards(ts_select *select);
/* A neck in the radial shaft is not in its own way, nor in that of a torque of the start, which
 * flows towards it, nor of a starter that takes nothing once the engine runs: G1-start-path-neck
 * asks for that.  What takes torque from the spool meets it when it seizes. */
bool ts_select_passes(const ts_guard *guard, const ts_part_capacity *part, uint32_t shaft,
                      bool start);
/* Torque in a tower shaft over that of a pad behind it, taken from it or driven inwards. */
double ts_select_reach(const ts_select *select, const ts_guard *tower, uint32_t pad, bool inwards);
/* Does a pad drive with its overload above all else that it drives with?  Not known: yes. */
bool ts_select_overload_tops(const ts_guard *pad);
/* The workings of a guard, once its walls are known. */
void ts_select_note(const ts_select *select, const ts_guard *guard, ts_workings *workings);
/* T_run (in its condition) and T_start of a neck in a tower shaft that a pad raises. */
void ts_select_note_tower(const ts_select *select, const ts_guard *guard, ts_workings *workings);

#endif
