/* draw/dimension.c: how long is it from here to there? */
#include "draw/dimension.h"

#include "draw/lettering.h"

#include <math.h>

static const double tail = 2.2 * TS_LOOK_FIGURE_ARROW_HEAD; /* px, of an arrow from outside */

static void arrow(ts_canvas *canvas, ts_point tip, bool to_the_right)
{
    ts_draw_head(canvas, tip, to_the_right ? 0.0 : M_PI, TS_LOOK_FIGURE_ARROW_HEAD, TS_COLOUR_INK);
}

static ts_lettering letters_of(const ts_dimension *what, ts_anchor anchor)
{
    return (ts_lettering){.size   = TS_LOOK_TYPE_PX_SMALL,
                          .bold   = what->bold,
                          .halo   = true,
                          .anchor = anchor,
                          .colour = TS_COLOUR_INK};
}

/* Where the number stands: over the middle of its line, or beside it at the height of the line. */
typedef struct setting {
    ts_point  at;
    ts_anchor anchor;
} setting;

static setting over_line(const ts_dimension *what, double y)
{
    return (setting){{0.5 * (what->a + what->b), y - 4.0}, TS_ANCHOR_MIDDLE};
}

static setting beside_line(const ts_dimension *what, double y, bool right)
{
    const double end =
        right ? fmax(what->a, what->b) + tail + 3.0 : fmin(what->a, what->b) - tail - 3.0;
    return (setting){{end, y + 4.0}, right ? TS_ANCHOR_LEFT : TS_ANCHOR_RIGHT};
}

static bool is_free(ts_canvas *canvas, const ts_dimension *what, setting set, double apart)
{
    const ts_lettering how  = letters_of(what, set.anchor);
    const ts_area      area = ts_text_area(canvas, set.at, what->text, &how);
    return ts_place_free(&canvas->places, ts_area_inset(area, -apart));
}

static bool line_is_free(const ts_canvas *canvas, const ts_dimension *what, double y)
{
    const double left = fmin(what->a, what->b), right = fmax(what->a, what->b);
    return ts_place_free(&canvas->places, (ts_area){left + 1.0, y - 2.0, right - left - 2.0, 4.0});
}

/* One level away, and another, until line and number cover nothing. */
static double free_level(ts_canvas *canvas, const ts_dimension *what)
{
    double y = what->y;
    for (int level = 0; level < 4; level++) {
        if (line_is_free(canvas, what, y) && is_free(canvas, what, over_line(what, y), -1.5))
            break;
        y += 15.0 * what->away;
    }
    return y;
}

/* A number that is wider than its gap would stand on the lines that bound it. */
static setting find_setting(ts_canvas *canvas, const ts_dimension *what, double y)
{
    const setting      over = over_line(what, y);
    const ts_lettering how  = letters_of(what, over.anchor);
    const double       gap  = fabs(what->b - what->a);
    if (!what->beside || ts_text_area(canvas, over.at, what->text, &how).w + 4.0 <= gap)
        return over;
    for (int side = 0; side < 2; side++) {
        const setting beside = beside_line(what, y, side == 0);
        if (is_free(canvas, what, beside, 3.0))
            return beside;
    }
    return over;
}

void ts_draw_dimension(ts_scene *scene, const ts_dimension *what)
{
    ts_canvas         *canvas = &scene->canvas;
    const double       left = fmin(what->a, what->b), right = fmax(what->a, what->b);
    const bool         inside = right - left > 3.0 * TS_LOOK_FIGURE_ARROW_HEAD;
    const double       y      = free_level(canvas, what);
    const setting      set    = find_setting(canvas, what, y);
    const ts_lettering how    = letters_of(what, set.anchor);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    if (inside)
        ts_draw_line(canvas, (ts_point){left, y}, (ts_point){right, y});
    if (!inside || set.anchor == TS_ANCHOR_RIGHT)
        ts_draw_line(canvas, (ts_point){left - tail, y}, (ts_point){left, y});
    if (!inside || set.anchor == TS_ANCHOR_LEFT)
        ts_draw_line(canvas, (ts_point){right, y}, (ts_point){right + tail, y});
    arrow(canvas, (ts_point){left, y}, !inside);
    arrow(canvas, (ts_point){right, y}, inside);
    ts_write(canvas, set.at, what->text, &how);
}
