/* solid/wall.h: the outline of discs joined by their common tangents, as lines and arcs.
 *
 * A casing seen along the engine: a disc about each axis, joined to the disc of the axis that
 * drives it.  Lengths in m, angles in rad counter-clockwise from the x axis.
 */
#ifndef TS_SOLID_WALL_H
#define TS_SOLID_WALL_H

#include "base/arena.h"
#include "element/tooth_outline.h"
#include "towershaft/status.h"

typedef struct ts_wall_disc {
    ts_outline_point at;
    double           r;
    size_t           joined; /* to that disc; its own index: to none */
} ts_wall_disc;

typedef struct ts_wall_piece {
    ts_outline_point a, b;     /* its ends                                              */
    ts_outline_point at;       /* centre of an arc                                      */
    double           r;        /* of an arc; 0: a straight line                         */
    double           from, to; /* of an arc; clockwise where `to` is less than `from`    */
    bool             opens;    /* first of a closed loop; set by ts_wall_chain           */
} ts_wall_piece;

typedef struct ts_wall_line {
    ts_wall_piece *pieces;
    size_t         count;
} ts_wall_line;

/* The pieces in no order, arcs counter-clockwise.  TS_NO_MEMORY or TS_OK. */
ts_status ts_wall_trace(const ts_wall_disc *discs, size_t count, ts_arena *arena,
                        ts_wall_line *out);

/* Puts them end to end, loop by loop.  False when they do not close. */
bool ts_wall_chain(ts_wall_line *wall);

/* m2, of chained pieces without holes. */
double ts_wall_area(const ts_wall_line *wall);

#endif
