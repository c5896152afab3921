/* draw/width_chart.h: the face width of every gear before and after sizing, on one scale. */
#ifndef TS_DRAW_WIDTH_CHART_H
#define TS_DRAW_WIDTH_CHART_H

#include "draw/scene.h"

ts_status ts_draw_widths(ts_scene *scene);

/* ---- between the parts of the figure ---- */

typedef struct ts_width_row {
    uint32_t             gear;
    const ts_gear_width *sized;         /* NULL: no widths were sought         */
    double               before, after; /* m; NaN: not known           */
    double most; /* m, that `face to diameter` allows its widest mesh; NaN: not known */
} ts_width_row;

typedef struct ts_width_strip {
    ts_scene     *scene;
    ts_width_row *rows;
    size_t        count;
    double        longest;  /* m, end of the scale                      */
    int           decimals; /* of lengths                              */
    ts_area       area;     /* of the strip: its left edge is zero      */
} ts_width_strip;

/* Rows of all cylindrical gears, in the order of the train. */
ts_status ts_width_gather(ts_scene *scene, ts_width_strip *out);

void ts_width_draw_scale(const ts_width_strip *strip, double foot);
void ts_width_draw_gear(const ts_width_strip *strip, const ts_width_row *row, ts_area area);
/* A length of the strip, with as many decimals as the steps need. */
void ts_width_add(ts_buffer *out, const ts_width_strip *strip, double si);

#endif
