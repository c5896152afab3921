/* rating/line_capacity.h: which torque do the shafts of a drive, with their splines and bearings,
 * bear once?
 *
 * Shaft
 *   Every section whose outline changes, and every spline, in bending, pull and torsion: the torque
 *   at which it yields, DIN 743 (from memory).
 *
 * Bearings
 *   The torque at which the one that is loaded most has its static capacity, ISO 76.
 *
 * Ways
 *   Of a box shaft and of a take-off's shaft the torque that leaves it by one mesh or pad, beside
 *   the worst of the others (rating/line_branch.h); of a radial shaft its own.  Either way of the
 *   power, inwards where it is met.
 *
 * Left out
 *   A line that could not be computed: its own finding says so.
 */
#ifndef TS_RATING_LINE_CAPACITY_H
#define TS_RATING_LINE_CAPACITY_H

#include "rating/drive_lines.h"
#include "rating/part_capacity.h"

/* How many parts ts_lines_capacities may add. */
uint32_t ts_lines_capacity_count(const ts_lines *lines);
/* Adds what is known behind solved lines.  Allocates nothing. */
void ts_lines_capacities(const ts_lines *lines, ts_part_capacities *list, ts_workings *workings);

#endif
