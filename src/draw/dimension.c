/* draw/dimension.c: how long is it from here to there? */
#include "draw/dimension.h"

#include "draw/lettering.h"

#include <math.h>

static void arrow(ts_canvas *canvas, ts_point tip, bool to_the_right)
{
    ts_draw_head(canvas, tip, to_the_right ? 0.0 : M_PI, TS_LOOK_FIGURE_ARROW_HEAD, TS_COLOUR_INK);
}

/* One level up, and another, until the number covers no other. */
static double free_level(ts_canvas *canvas, double x, double y, const char *text,
                         const ts_lettering *how)
{
    for (int level = 0; level < 4; level++) {
        const ts_area area = ts_text_area(canvas, (ts_point){x, y - 4.0}, text, how);
        if (ts_place_free(&canvas->places, ts_area_inset(area, 1.5)))
            return y;
        y -= 15.0;
    }
    return y;
}

void ts_draw_dimension(ts_scene *scene, double a, double b, double y, const char *text, bool bold)
{
    ts_canvas         *canvas = &scene->canvas;
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .bold   = bold,
                                 .halo   = true,
                                 .anchor = TS_ANCHOR_MIDDLE,
                                 .colour = TS_COLOUR_INK};
    y                         = free_level(canvas, 0.5 * (a + b), y, text, &how);
    const double left = fmin(a, b), right = fmax(a, b), tail = 2.2 * TS_LOOK_FIGURE_ARROW_HEAD;
    const bool   inside = right - left > 3.0 * TS_LOOK_FIGURE_ARROW_HEAD;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    if (inside) {
        ts_draw_line(canvas, (ts_point){left, y}, (ts_point){right, y});
    } else {
        ts_draw_line(canvas, (ts_point){left - tail, y}, (ts_point){left, y});
        ts_draw_line(canvas, (ts_point){right, y}, (ts_point){right + tail, y});
    }
    arrow(canvas, (ts_point){left, y}, !inside);
    arrow(canvas, (ts_point){right, y}, inside);
    ts_write(canvas, (ts_point){0.5 * (left + right), y - 4.0}, text, &how);
}
