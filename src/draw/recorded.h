/* draw/recorded.h: a figure kept as strokes, to be set on a page of something larger. */
#ifndef TS_DRAW_RECORDED_H
#define TS_DRAW_RECORDED_H

#include "draw/figure.h"

#include <cairo.h>

/* The figure on a surface of its own, width x height px; the caller destroys it.  The format of the
 * options is not read.  TS_NOT_UNDERSTOOD as ts_draw. */
ts_status ts_draw_recorded(const ts_drawing_subject *subject, const ts_draw_options *options,
                           cairo_surface_t **surface, double *width, double *height);

#endif
