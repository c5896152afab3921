/* draw/teeth_path.c: along which line do the flanks touch, and where do they begin and end? */
#include "draw/lettering.h"
#include "draw/teeth_view.h"

#include <math.h>

enum { POINTS = 5 };

static const char *const letters[POINTS] = {"A", "B", "C", "D", "E"};

static void list_points(const ts_teeth_view *view, double *rho)
{
    const ts_cylindrical_pair *pair = &view->pose.pair;
    rho[0]                          = pair->rho_A1;
    rho[1]                          = pair->rho_B1;
    rho[2]                          = pair->rho_C1;
    rho[3]                          = pair->rho_D1;
    rho[4]                          = pair->rho_E1;
}

static ts_point action_point(const ts_teeth_view *view, double rho)
{
    return ts_teeth_point(view, ts_pair_action_point(&view->pose, rho));
}

/* The line of action through the picture, and that of the other flanks. */
static void draw_lines(const ts_teeth_view *view)
{
    ts_canvas     *canvas = &view->scene->canvas;
    const double   far    = (view->picture.w + view->picture.h) / view->px;
    const double   C      = view->pose.pair.rho_C1;
    const ts_point a = action_point(view, C - far), b = action_point(view, C + far);
    const ts_point axis[2] = {ts_teeth_point(view, view->pose.axis[0]),
                              ts_teeth_point(view, view->pose.axis[1])};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    ts_draw_line(canvas, axis[0], axis[1]);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_use_dash(canvas, TS_DASH_PHANTOM);
    ts_draw_line(canvas, (ts_point){a.x, b.y}, (ts_point){b.x, a.y});
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, a, b);
}

/* The foot of the perpendicular from an axis, where the line touches the base circle. */
static void draw_foot(const ts_teeth_view *view, int gear)
{
    ts_canvas     *canvas = &view->scene->canvas;
    const double   rho    = gear == 0 ? 0.0 : view->pose.pair.rho_T;
    const ts_point at     = action_point(view, rho);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK3);
    ts_draw_line(canvas, ts_teeth_point(view, view->pose.axis[gear]), at);
    ts_draw_dot(canvas, at, 2.4, TS_COLOUR_INK3);
}

static void draw_contact(const ts_teeth_view *view)
{
    ts_canvas                 *canvas = &view->scene->canvas;
    const ts_cylindrical_pair *pair   = &view->pose.pair;
    const ts_point from = action_point(view, pair->rho_A1), to = action_point(view, pair->rho_E1);
    ts_use_pen(canvas, TS_PEN_5, TS_COLOUR_PAPER);
    cairo_set_line_width(canvas->cr, 9.0);
    ts_draw_line(canvas, from, to);
    ts_use_pen(canvas, TS_PEN_5, TS_COLOUR_INK);
    ts_draw_line(canvas, from, to);
}

/* Pairs that touch in the pose drawn: a ring about the dot. */
static bool touches(const ts_teeth_view *view, double rho)
{
    const double off = (rho - view->pose.rho_1) / view->pose.pair.p_bt;
    return fabs(off - round(off)) < 1e-6;
}

/* Points nearer than a letter is wide get their letters on both sides by turns; C always stands
 * apart from the others. */
static void write_letters(const ts_teeth_view *view, const double *rho)
{
    ts_canvas         *canvas = &view->scene->canvas;
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                 .bold   = true,
                                 .halo   = true,
                                 .anchor = TS_ANCHOR_MIDDLE,
                                 .colour = TS_COLOUR_INK};
    const double       alpha  = view->pose.pair.alpha_wt;
    /* Square to the line, upwards. */
    const ts_point up = {-view->pose.lean * sin(alpha), -cos(alpha)};
    for (int i = 0; i < POINTS; i++) {
        const ts_point at   = action_point(view, rho[i]);
        double         off  = 22.0;
        ts_area        area = {0};
        for (int try = 0; try < 6; try++) {
            const double   far = (i == 2 ? -1.0 : 1.0) * (try % 2 ? -1.0 : 1.0) * off;
            const ts_point mid = {at.x + up.x * far, at.y + up.y * far + 0.36 * how.size};
            area               = ts_text_area(canvas, mid, letters[i], &how);
            if (ts_place_free(&canvas->places, area)) {
                ts_write(canvas, mid, letters[i], &how);
                break;
            }
            off += try % 2 ? 15.0 : 0.0;
        }
    }
}

static void draw_points(const ts_teeth_view *view, const double *rho)
{
    ts_canvas *canvas = &view->scene->canvas;
    for (int i = 0; i < POINTS; i++) {
        const ts_point at = action_point(view, rho[i]);
        if (touches(view, rho[i])) {
            ts_path_circle(canvas, at, 8.0);
            ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
            ts_stroke(canvas);
        }
        ts_path_circle(canvas, at, 4.2);
        ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_3, TS_COLOUR_INK);
    }
}

/* The contact runs from A to E when gear 1 drives, else from E to A. */
static void draw_direction(const ts_teeth_view *view)
{
    ts_canvas     *canvas = &view->scene->canvas;
    const bool     back   = ts_teeth_backward(view);
    const double   step   = 26.0 / view->px;
    const double   end    = back ? view->pose.pair.rho_A1 - step : view->pose.pair.rho_E1 + step;
    const double   before = back ? end + step : end - step;
    const ts_point tip = action_point(view, end), from = action_point(view, before);
    ts_draw_head(canvas, tip, atan2(tip.y - from.y, tip.x - from.x), 12.0, TS_COLOUR_INK);
}

void ts_teeth_draw_path(const ts_teeth_view *view)
{
    ts_canvas *canvas = &view->scene->canvas;
    double     rho[POINTS];
    list_points(view, rho);
    ts_clip_area(canvas, view->picture);
    draw_lines(view);
    draw_foot(view, 0);
    draw_foot(view, 1);
    draw_contact(view);
    draw_direction(view);
    draw_points(view, rho);
    ts_clip_end(canvas);
    write_letters(view, rho);
}
