/* draw/teeth_gears.c: what do the teeth of the two gears look like where they meet? */
#include "draw/lettering.h"
#include "draw/mesh_choice.h"
#include "draw/teeth_view.h"

#include <math.h>

/* In modules, across the flank. */
static const double band = 0.03, band_alone = 0.085;

/* ---- which teeth are in view ------------------------------------------------------------- */

typedef struct teeth_run {
    int  first, last; /* tooth 0 is the one that touches                  */
    bool all;         /* the whole gear                                   */
} teeth_run;

/* Direction from the axis of a gear to the mesh, rad ccw from +y. */
static double mesh_direction(int gear)
{
    return gear == 0 ? 0.0 : M_PI;
}

/* The widest angle off the mesh direction at which the picture is seen from the axis. */
static double seen_angle(const ts_teeth_view *view, int gear)
{
    const double x = 0.5 * view->picture.w / view->px, y = 0.5 * view->picture.h / view->px;
    double       most = 0.0;
    if (fabs(view->pose.axis[gear].y) <= y)
        return M_PI;
    for (int corner = 0; corner < 2; corner++) {
        const double up = (corner ? y : -y) - view->pose.axis[gear].y;
        most            = fmax(most, atan2(x, gear == 0 ? up : -up));
    }
    return most;
}

static teeth_run teeth_in_view(const ts_teeth_view *view, int gear)
{
    const int    z     = view->shape[gear].z;
    const double step  = 2.0 * M_PI / z;
    const double angle = seen_angle(view, gear) + step;
    if (angle >= M_PI)
        return (teeth_run){0, z - 1, true};
    const double from = remainder(mesh_direction(gear) - view->pose.middle[gear], 2.0 * M_PI);
    return (teeth_run){(int)ceil((from - angle) / step), (int)floor((from + angle) / step), false};
}

/* ---- outlines ---------------------------------------------------------------------------- */

/* A point of tooth 0's frame (its middle on +y), turned into its place. */
static ts_point placed(const ts_teeth_view *view, int gear, int tooth, ts_outline_point p)
{
    const double angle        = view->pose.middle[gear] + 2.0 * M_PI * tooth / view->shape[gear].z;
    const ts_outline_point at = {view->pose.axis[gear].x + p.x * cos(angle) - p.y * sin(angle),
                                 view->pose.axis[gear].y + p.x * sin(angle) + p.y * cos(angle)};
    return ts_teeth_point(view, at);
}

static void path_tooth(const ts_teeth_view *view, int gear, int tooth)
{
    const ts_tooth_shape *shape = &view->shape[gear];
    for (size_t i = 0; i < 2 * shape->count - 1; i++) {
        const bool       right = i < shape->count;
        ts_outline_point p     = shape->points[right ? i : 2 * shape->count - 2 - i];
        if (!right)
            p.x = -p.x;
        ts_line_to(&view->scene->canvas, placed(view, gear, tooth, p));
    }
}

static void path_teeth(const ts_teeth_view *view, int gear, teeth_run run)
{
    for (int tooth = run.first; tooth <= run.last; tooth++)
        path_tooth(view, gear, tooth);
    if (run.all)
        cairo_close_path(view->scene->canvas.cr);
}

static void draw_outline(const ts_teeth_view *view, int gear)
{
    ts_canvas      *canvas = &view->scene->canvas;
    const teeth_run run    = teeth_in_view(view, gear);
    path_teeth(view, gear, run);
    if (!run.all) /* the sides of the sector lie out of view */
        ts_line_to(canvas, ts_teeth_point(view, view->pose.axis[gear]));
    ts_fill(canvas, ts_tooth_tint(canvas, view->pose.turn[gear]));
    path_teeth(view, gear, run);
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    ts_stroke(canvas);
}

/* ---- where flanks work ------------------------------------------------------------------- */

enum { BAND_PIECES = 24 };

/* The strip of a loaded flank between two radii of curvature, `wide` m into the tooth. */
static void fill_band(const ts_teeth_view *view, int gear, int tooth, const double rho[2],
                      double wide)
{
    const ts_pair_pose    *pose = &view->pose;
    const ts_outline_point axis = pose->axis[gear];
    for (int i = 0; i <= 2 * BAND_PIECES + 1; i++) {
        const bool       back  = i > BAND_PIECES;
        const double     share = (double)(back ? 2 * BAND_PIECES + 1 - i : i) / BAND_PIECES;
        ts_outline_point p =
            ts_pair_flank_point(pose, gear, tooth, rho[0] + share * (rho[1] - rho[0]));
        if (back) { /* turned towards the middle of the tooth */
            const double x = p.x - axis.x, y = p.y - axis.y;
            const double angle = -pose->side[gear] * wide / hypot(x, y);
            p                  = (ts_outline_point){axis.x + x * cos(angle) - y * sin(angle),
                                                    axis.y + x * sin(angle) + y * cos(angle)};
        }
        ts_line_to(&view->scene->canvas, ts_teeth_point(view, p));
    }
    cairo_close_path(view->scene->canvas.cr);
    ts_fill(&view->scene->canvas, TS_COLOUR_INK2);
}

static void draw_bands(const ts_teeth_view *view, int gear)
{
    const teeth_run run    = teeth_in_view(view, gear);
    const double    m_n    = view->pose.frame.m_n;
    const double    r_form = view->shape[gear].r_form, r_b = view->pose.curve[gear].r_b;
    const double    end = sqrt(fmax(0.0, r_form * r_form - r_b * r_b)); /* of the involute */
    double          rho[2];
    ts_pair_active_flank(&view->pose, gear, rho);
    rho[0] = fmax(rho[0], end);
    for (int tooth = run.first; tooth <= run.last && rho[1] > rho[0]; tooth++)
        fill_band(view, gear, tooth, rho, band * m_n);
    if (!ts_pair_single_flank(&view->pose, gear, rho))
        return;
    rho[0] = fmax(rho[0], end);
    for (int tooth = run.first; tooth <= run.last && rho[1] > rho[0]; tooth++)
        fill_band(view, gear, tooth, rho, band_alone * m_n);
}

/* An arrow along the rim, in the middle of the picture. */
static void draw_sense(const ts_teeth_view *view, int gear)
{
    ts_canvas     *canvas = &view->scene->canvas;
    const ts_point axis   = ts_teeth_point(view, view->pose.axis[gear]);
    const double   rim =
        gear == 0 ? view->picture.y + view->picture.h - 48.0 : view->picture.y + 48.0;
    const double r = fabs(axis.y - rim), half = 42.0 / r;
    /* Angles as cairo has them: y downwards, so clockwise on the sheet is positive. */
    const double middle = gear == 0 ? -0.5 * M_PI : 0.5 * M_PI;
    const double way    = view->pose.turn[gear] < 0 ? 1.0 : -1.0;
    const double head = TS_LOOK_FIGURE_ARROW_HEAD, end = middle + way * half;
    if (!(r > 60.0))
        return;
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    cairo_new_sub_path(canvas->cr);
    if (way > 0.0)
        cairo_arc(canvas->cr, axis.x, axis.y, r, middle - half, end - 0.8 * head / r);
    else
        cairo_arc_negative(canvas->cr, axis.x, axis.y, r, middle + half, end + 0.8 * head / r);
    ts_stroke(canvas);
    ts_draw_head(canvas, ts_polar(axis, r, end), end + way * (0.5 * M_PI - 0.5 * head / r), head,
                 TS_COLOUR_INK);
}

void ts_teeth_draw_gears(const ts_teeth_view *view)
{
    for (int gear = 0; gear < 2; gear++)
        if (view->shape[gear].count > 0)
            draw_outline(view, gear);
    for (int gear = 0; gear < 2; gear++) {
        if (view->shape[gear].count > 0)
            draw_bands(view, gear);
        draw_sense(view, gear);
    }
}

/* ---- circles and their names ------------------------------------------------------------- */

typedef struct circle {
    const char *name;
    double      d; /* m */
    ts_dash     dash;
    ts_pen      pen;
    double      y; /* px, of its name */
    ts_point    from;
} circle;

enum { CIRCLES = 4 };

static void list_circles(const ts_teeth_view *view, int gear, circle *out)
{
    const ts_cylindrical_pair *pair = &view->pose.pair;
    out[0] = (circle){.name = "tip circle", .d = gear ? pair->d_a2 : pair->d_a1, .pen = TS_PEN_1};
    out[1] = (circle){.name = "pitch circle",
                      .d    = gear ? pair->d_w2 : pair->d_w1,
                      .pen  = TS_PEN_1,
                      .dash = TS_DASH_CHAIN};
    out[2] = (circle){.name = "base circle",
                      .d    = gear ? pair->d_b2 : pair->d_b1,
                      .pen  = TS_PEN_2,
                      .dash = TS_DASH_HIDDEN};
    out[3] = (circle){.name = "root form",
                      .d    = ts_teeth_root_form(view, gear),
                      .pen  = TS_PEN_1,
                      .dash = TS_DASH_PHANTOM};
}

/* Where the circle leaves the picture, walked from the mesh to the side where its name stands. */
static ts_point leave(const ts_teeth_view *view, int gear, double d)
{
    const double side = gear == 0 ? 1.0 : -1.0, up = gear == 0 ? 1.0 : -1.0;
    ts_point     last = {(double)NAN, (double)NAN};
    for (int i = 0; i <= 900; i++) {
        const double           a  = i * 0.1 * M_PI / 180.0;
        const ts_outline_point p  = {view->pose.axis[gear].x + 0.5 * d * side * sin(a),
                                     view->pose.axis[gear].y + 0.5 * d * up * cos(a)};
        const ts_point         at = ts_teeth_point(view, p);
        if (ts_area_distance(view->picture, at) > 0.0)
            break;
        last = at;
    }
    return last;
}

/* From the top downwards, apart from each other and inside of the picture's height. */
static size_t spread_names(const ts_teeth_view *view, circle *list, size_t count)
{
    const double apart = 15.0, top = view->picture.y + 8.0;
    const double foot = view->picture.y + view->picture.h - 4.0;
    size_t       kept = 0;
    for (size_t i = 0; i < count; i++) {
        const circle one = list[i];
        size_t       at  = kept;
        if (isnan(one.from.y))
            continue;
        for (; at > 0 && list[at - 1].from.y > one.from.y; at--)
            list[at] = list[at - 1];
        list[at] = one;
        kept++;
    }
    for (size_t i = 0; i < kept; i++)
        list[i].y = fmax(list[i].from.y, i > 0 ? list[i - 1].y + apart : top);
    for (size_t i = kept; i-- > 0;)
        list[i].y = fmin(list[i].y, i + 1 < kept ? list[i + 1].y - apart : foot);
    return kept;
}

static void write_names(const ts_teeth_view *view, int gear, circle *list)
{
    ts_canvas         *canvas = &view->scene->canvas;
    const bool         right  = gear == 0;
    const double       edge   = right ? view->picture.x + view->picture.w : view->picture.x;
    const double       way    = right ? 1.0 : -1.0;
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_TICK,
                                 .anchor = right ? TS_ANCHOR_LEFT : TS_ANCHOR_RIGHT,
                                 .colour = TS_COLOUR_INK2};
    const size_t       count  = spread_names(view, list, CIRCLES);
    for (size_t i = 0; i < count; i++) {
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
        ts_move_to(canvas, list[i].from);
        ts_line_to(canvas, (ts_point){edge + way * 12.0, list[i].y});
        ts_line_to(canvas, (ts_point){edge + way * 17.0, list[i].y});
        ts_stroke(canvas);
        ts_write(canvas, (ts_point){edge + way * 20.0, list[i].y + 4.0}, list[i].name, &how);
    }
}

void ts_teeth_draw_circles(const ts_teeth_view *view)
{
    ts_canvas *canvas = &view->scene->canvas;
    for (int gear = 0; gear < 2; gear++) {
        circle         list[CIRCLES];
        const ts_point axis = ts_teeth_point(view, view->pose.axis[gear]);
        list_circles(view, gear, list);
        ts_clip_area(canvas, view->picture);
        for (size_t i = 0; i < CIRCLES; i++) {
            list[i].from = (ts_point){(double)NAN, (double)NAN};
            if (!(list[i].d > 0.0) || !isfinite(list[i].d))
                continue;
            list[i].from = leave(view, gear, list[i].d);
            ts_use_pen(canvas, list[i].pen, TS_COLOUR_INK3);
            ts_use_dash(canvas, list[i].dash);
            ts_path_circle(canvas, axis, 0.5 * list[i].d * view->px);
            ts_stroke(canvas);
        }
        ts_clip_end(canvas);
        write_names(view, gear, list);
    }
}
