/* check/cowl.h: how far is an axis from the inside of the cowl? */
#ifndef TS_CHECK_COWL_H
#define TS_CHECK_COWL_H

#include "model/drive.h"

/* The cowl line runs from its first point to its last, in the file's order, the shorter way round
 * from each to the next; between two points its radius is linear in the clock angle.
 *
 * x, y      m, as seen from behind
 * clock     rad, receives the clock angle of the nearest point of the line
 * returns   m, distance of (x, y) from the nearest point of the line, negative when (x, y) lies
 *           outside; NaN when the line does not reach the clock angle of (x, y) */
double ts_cowl_distance(const ts_engine *engine, double x, double y, double *clock);

/* m, radius of the line at a clock angle; NaN where it does not reach. */
double ts_cowl_radius(const ts_engine *engine, double clock);

#endif
