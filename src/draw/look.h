/* draw/look.h: which colours, pens and sizes are there?  All of them come from data/look.json. */
#ifndef TS_DRAW_LOOK_H
#define TS_DRAW_LOOK_H

#include "draw/figure.h"

#include "look.inc"

/* TS_COLOUR_PAPER, TS_COLOUR_INK, ...: one a name in data/look.json, in its order. */
typedef enum ts_colour { TS_LOOK_COLOUR_NAMES, TS_COLOUR_COUNT } ts_colour;

/* Each pen is sqrt(2) times as wide as the one before it, as in ISO 128-2 (from memory). */
typedef enum ts_pen { TS_PEN_1, TS_PEN_2, TS_PEN_3, TS_PEN_4, TS_PEN_5, TS_PEN_COUNT } ts_pen;

typedef enum ts_dash { TS_DASH_NONE, TS_DASH_HIDDEN, TS_DASH_CHAIN, TS_DASH_PHANTOM } ts_dash;

typedef struct ts_rgb {
    double red, green, blue; /* 0..1 */
} ts_rgb;

ts_rgb ts_look_rgb(ts_ground ground, ts_colour colour);

/* Width of a pen in px on a sheet whose millimetre of paper is `mm` px. */
double ts_look_pen(ts_ground ground, ts_pen pen, double mm);

/* Lengths of strokes and gaps in mm of paper; *count becomes their number, 0 for a full line. */
const double *ts_look_dash(ts_dash dash, int *count);

#endif
