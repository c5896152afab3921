/* draw/sliding_chart.c: how much do the flanks slide on each other along the path of contact? */
#include "draw/lettering.h"
#include "draw/teeth_view.h"
#include "draw/tick.h"

#include "element/cylindrical_contact.h"

#include <math.h>

enum { PIECES = 96, POINTS = 5 };

typedef struct chart {
    const ts_teeth_view *view;
    ts_area              area;      /* of the curves */
    double               from, to;  /* m, rho_1 at both ends      */
    double               low, high; /* specific sliding            */
} chart;

static double sliding(const chart *one, int gear, double rho)
{
    const ts_cylindrical_pair *pair = &one->view->motion->pair;
    return gear == 0 ? ts_specific_sliding_1(pair, rho) : ts_specific_sliding_2(pair, rho);
}

/* What is deeper than this belongs to flanks that nearly reach a base circle: the curve is cut. */
static const double deepest = -8.0;

static ts_point point_at(const chart *one, double rho, double value)
{
    const double x = (rho - one->from) / (one->to - one->from);
    const double y = (one->high - value) / (one->high - one->low);
    return (ts_point){one->area.x + x * one->area.w, one->area.y + y * one->area.h};
}

static void find_range(chart *one)
{
    for (int gear = 0; gear < 2; gear++)
        for (int i = 0; i <= PIECES; i++) {
            const double value = sliding(one, gear, one->from + (one->to - one->from) * i / PIECES);
            one->low           = fmin(one->low, value); /* passes NaN over */
            one->high          = fmax(one->high, value);
        }
    one->low  = fmax(floor(4.0 * one->low) / 4.0, deepest);
    one->high = ceil(4.0 * one->high) / 4.0;
}

static void draw_curve(const chart *one, int gear)
{
    ts_canvas *canvas = &one->view->scene->canvas;
    cairo_new_path(canvas->cr);
    bool drawing = false;
    for (int i = 0; i <= PIECES; i++) {
        const double rho   = one->from + (one->to - one->from) * i / PIECES;
        const double value = sliding(one, gear, rho);
        if (isnan(value)) {
            drawing = false;
            continue;
        }
        const ts_point at = point_at(one, rho, value);
        if (drawing)
            ts_line_to(canvas, at);
        else
            ts_move_to(canvas, at);
        drawing = true;
    }
    ts_use_pen(canvas, gear == 0 ? TS_PEN_4 : TS_PEN_3, TS_COLOUR_INK);
    if (gear == 1)
        ts_use_dash(canvas, TS_DASH_HIDDEN);
    ts_stroke(canvas);
}

static void draw_uprights(const chart *one)
{
    static const char *const   letters[POINTS] = {"A", "B", "C", "D", "E"};
    const ts_cylindrical_pair *pair            = &one->view->motion->pair;
    ts_canvas                 *canvas          = &one->view->scene->canvas;
    const double       rho[POINTS] = {pair->rho_A1, pair->rho_B1, pair->rho_C1, pair->rho_D1,
                                      pair->rho_E1};
    const ts_lettering how         = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                      .bold   = true,
                                      .anchor = TS_ANCHOR_MIDDLE,
                                      .colour = TS_COLOUR_INK};
    for (int i = 0; i < POINTS; i++) {
        const double x = point_at(one, rho[i], 0.0).x;
        if (!(x >= one->area.x - 0.5 && x <= one->area.x + one->area.w + 0.5))
            continue;
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
        ts_draw_line(canvas, (ts_point){x, one->area.y},
                     (ts_point){x, one->area.y + one->area.h + 3.0});
        const ts_point mid  = {x, one->area.y + one->area.h + 15.0};
        const ts_area  area = ts_text_area(canvas, mid, letters[i], &how);
        if (ts_place_free(&canvas->places, area))
            ts_write(canvas, mid, letters[i], &how);
    }
}

static void draw_levels(const chart *one)
{
    ts_scene          *scene  = one->view->scene;
    ts_canvas         *canvas = &scene->canvas;
    const double       range  = one->high - one->low;
    const double       step   = range > 5.0 ? 2.0 : range > 2.5 ? 1.0 : range > 1.2 ? 0.5 : 0.25;
    const ts_lettering how    = {
           .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK3};
    const ts_ticks ticks = ts_ticks_within(one->low, one->high + 1e-9, step);
    for (int i = 0; i < ticks.count; i++) {
        const double level = ts_tick_at(ticks, i);
        const double y     = point_at(one, one->from, level).y;
        const bool   zero  = fabs(level) < 0.5 * step;
        ts_use_pen(canvas, zero ? TS_PEN_2 : TS_PEN_1, zero ? TS_COLOUR_INK : TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){one->area.x, y}, (ts_point){one->area.x + one->area.w, y});
        ts_add_number(ts_canvas_line(canvas), zero ? 0.0 : level, step < 0.3 ? 2 : step < 0.9);
        ts_write(canvas, (ts_point){one->area.x - 6.0, y + 4.0}, ts_scene_kept(scene), &how);
    }
}

void ts_teeth_draw_sliding(const ts_teeth_view *view, ts_area area)
{
    ts_canvas                 *canvas = &view->scene->canvas;
    const ts_cylindrical_pair *pair   = &view->motion->pair;
    chart                      one    = {.view = view,
                                         .area = {area.x + 44.0, area.y + 30.0, area.w - 56.0, area.h - 52.0},
                                         .from = pair->rho_A1,
                                         .to   = pair->rho_E1};
    const ts_lettering         bold   = {
                  .size = TS_LOOK_TYPE_PX_SMALL, .bold = true, .colour = TS_COLOUR_INK};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK2};
    ts_write(canvas, (ts_point){area.x + 6.0, area.y + 14.0}, "Specific sliding", &bold);
    ts_write(canvas, (ts_point){area.x + area.w - 6.0, area.y + 14.0},
             "full line: gear 1, below; dashed: gear 2", &small);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){area.x, area.y + 20.0},
                 (ts_point){area.x + area.w, area.y + 20.0});
    if (!(one.to > one.from))
        return;
    find_range(&one);
    if (!(one.high > one.low))
        return;
    draw_levels(&one);
    draw_uprights(&one);
    ts_clip_area(canvas, ts_area_inset(one.area, -2.0));
    draw_curve(&one, 0);
    draw_curve(&one, 1);
    ts_clip_end(canvas);
}
