/* draw/dimension.h: dimension lines as in ISO 129-1 (from memory). */
#ifndef TS_DRAW_DIMENSION_H
#define TS_DRAW_DIMENSION_H

#include "draw/scene.h"

/* A level dimension line between x = a and x = b at height y with its text above it.  Where the
 * gap is too small for the arrows they come from outside. */
void ts_draw_dimension(ts_scene *scene, double a, double b, double y, const char *text, bool bold);

#endif
