/* draw/rail.h: the table below the face, one column a shaft, and the leaders that come down to it.
 */
#ifndef TS_DRAW_RAIL_H
#define TS_DRAW_RAIL_H

#include "draw/face.h"
#include "draw/obstacles.h"

typedef struct ts_rail {
    uint32_t *order; /* box shafts, from left to right, row by row */
    ts_point *start; /* where each leader begins; x NaN: none      */
    size_t    count;
    size_t    columns; /* in a row                                   */
    size_t    rows;
    double    label;   /* px, of the column with the captions        */
    double    name[2]; /* px, height of the names of near and far pads; 0: there are none */
    double    height;  /* px, of one row                             */
} ts_rail;

/* Counts and measures.  The order is that of the shaft numbers until leaders are led. */
ts_status ts_rail_measure(ts_scene *scene, double width, bool front, ts_rail *rail);
double    ts_rail_height(const ts_rail *rail);

/* Chooses where leaders start and the order of the columns, so that no leader crosses another:
 * each goes straight down to the routing band, on its own x, and in the band the columns follow
 * the same order. */
void ts_rail_lead(const ts_face *face, ts_rail *rail);
void ts_rail_draw_leaders(const ts_face *face, const ts_rail *rail);
/* Engine, boxes, leaders, and before them gears, hub and radial shafts; the picture stays clipped
 * for what lies upon them, until ts_clip_end. */
void ts_rail_draw_machine(const ts_face *face, const ts_rail *rail);
void ts_rail_draw(const ts_face *face, const ts_rail *rail);

#endif
