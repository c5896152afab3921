/* draw/dimension.h: dimension lines as in ISO 129-1 (from memory). */
#ifndef TS_DRAW_DIMENSION_H
#define TS_DRAW_DIMENSION_H

#include "draw/scene.h"

typedef struct ts_dimension {
    double      a, b; /* from x = a to x = b                                              */
    double      y;    /* height of the line; the number stands above it                   */
    double      away; /* where the line moves to when it would cover words: -1 up, +1 down */
    bool        bold;
    bool        beside; /* a number too wide for its gap may stand beside it               */
    const char *text;
} ts_dimension;

/* A level dimension line with its text, clear of all words and symbols so far.  Where the gap is
 * too small for the arrows they come from outside. */
void ts_draw_dimension(ts_scene *scene, const ts_dimension *what);

#endif
