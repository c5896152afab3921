/* rating/line_capacity.h: which torque does a radial shaft, with its gearshafts, splines and
 * bearings, bear once?
 *
 * Shaft     At the splines of its three parts only torque passes: the torque at which their notched
 *           section yields, DIN 743 (from memory).
 * Bearings  Of its gearshafts, which carry nothing but one bevel each, so that their load grows
 * with the torque: the torque at which the one that is loaded most has its static capacity, ISO 76,
 * either way of the power as it is met. Left out  Box shafts: their bearings and sections carry
 * loads of several meshes, which do not grow with the torque of one pad.
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
