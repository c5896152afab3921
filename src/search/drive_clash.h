/* search/drive_clash.h: which demands of a drive file contradict each other before any search?
 *
 * Each contradiction is told where it stands in the file, with its numbers and with the least that
 * would have to give.  What is found here can be seen from one accessory, or from the bodies of one
 * face, alone; what takes a whole arrangement to see is for arrange_conflict.h.
 */
#ifndef TS_SEARCH_DRIVE_CLASH_H
#define TS_SEARCH_DRIVE_CLASH_H

#include "search/drive_problem.h"

/* Why may this accessory stand on no box, on no face or on no side?  False: it may. */
bool ts_drive_place_clash(const ts_drive_question *question, size_t accessory, ts_diagnostics *list,
                          ts_arena *arena);

/* Ratios that no band leaves, ratios to keep that none does or no teeth give, bodies for which
 * there is no arc.  How many were told. */
size_t ts_drive_clashes(const ts_drive_question *question, const ts_drive_problem *made,
                        ts_diagnostics *list, ts_arena *arena);

#endif
