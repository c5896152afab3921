/* check/cowl.h: which point of the cowl's inside is nearest to an axis? */
#ifndef TS_CHECK_COWL_H
#define TS_CHECK_COWL_H

#include "model/drive.h"

#include <stdbool.h>

typedef struct ts_cowl_place {
    double clock;   /* rad, of the nearest point of the line                                     */
    double radius;  /* m, of that point                                                          */
    bool   outside; /* the axis itself stands outside the line                                   */
    bool   reached; /* the line reaches the clock angle of the axis; without it nothing is known */
} ts_cowl_place;

/* The cowl line runs from its first point to its last, in the file's order, the shorter way round
 * from each to the next; between two points its radius is linear in the clock angle.
 *
 * R, phi    m and rad clockwise from 12:00 from behind: the axis */
ts_cowl_place ts_cowl_nearest(const ts_engine *engine, double R, double phi);

#endif
