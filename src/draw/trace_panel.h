/* draw/trace_panel.h: one panel of lines against time, with round ticks. */
#ifndef TS_DRAW_TRACE_PANEL_H
#define TS_DRAW_TRACE_PANEL_H

#include "draw/scene.h"

typedef struct ts_trace_panel {
    ts_area     area;        /* of the lines themselves                    */
    double      until;       /* s, or `unit`, at its right edge            */
    double      least, most; /* of y, in what is shown               */
    const char *says;        /* "speed, rpm", above its left edge          */
    bool        times;       /* does it carry the words of the time axis? */
    const char *unit;        /* of what runs to the right; NULL: s         */
} ts_trace_panel;

typedef struct ts_trace_line {
    const double *t, *y; /* y[i * stride] */
    size_t        count, stride;
    double        factor; /* on y */
    ts_pen        pen;
    ts_dash       dash;
    ts_colour     colour;
    const char   *name; /* written beside its end; NULL: none */
} ts_trace_line;

/* Takes in the values of a line, so that all of it stands in the panel. */
void ts_trace_widen(ts_trace_panel *panel, const ts_trace_line *line);
/* Ticks, frame and words; limits are rounded outwards to ticks. */
void   ts_trace_frame(ts_scene *scene, ts_trace_panel *panel);
void   ts_trace_draw(ts_scene *scene, const ts_trace_panel *panel, const ts_trace_line *line);
double ts_trace_x(const ts_trace_panel *panel, double t);
double ts_trace_y(const ts_trace_panel *panel, double value);
/* Names of lines at the right edge, pushed apart; of `count` lines. */
void ts_trace_names(ts_scene *scene, const ts_trace_panel *panel, const ts_trace_line *lines,
                    size_t count);

#endif
