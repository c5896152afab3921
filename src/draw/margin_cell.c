/* draw/margin_cell.c: how does one reserve look in its cell? */
#include "draw/lettering.h"
#include "draw/margin_chart.h"
#include "draw/symbol.h"

#include <math.h>

static const double mark = 12.0, mark_room = 20.0, number_room = 56.0, bar_height = 11.0;

/* The scale between mark and number; narrow cells leave the number out of its way first. */
static ts_area scale_of(ts_area area)
{
    return (ts_area){area.x + mark_room, area.y, fmax(8.0, area.w - mark_room - number_room),
                     area.h};
}

double ts_margin_x(ts_area area, double margin)
{
    const ts_area scale = scale_of(area);
    const double  share = (margin - TS_MARGIN_LEAST) / (TS_MARGIN_MOST - TS_MARGIN_LEAST);
    return scale.x + scale.w * fmin(1.0, fmax(0.0, share));
}

/* A bar that is cut has no end: a gap in it says so. */
static void draw_bar(ts_canvas *canvas, const ts_margin_cell *cell, ts_area area)
{
    const double  zero = ts_margin_x(area, 0.0), end = ts_margin_x(area, cell->margin);
    const ts_area bar = {fmin(zero, end), area.y + 0.5 * (area.h - bar_height), fabs(end - zero),
                         bar_height};
    const bool    cut = cell->margin > TS_MARGIN_MOST || cell->margin < TS_MARGIN_LEAST;
    ts_path_area(canvas, bar);
    if (cell->margin < 0.0) {
        ts_hatch(canvas, TS_COLOUR_INK);
        ts_path_area(canvas, bar);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
        ts_stroke(canvas);
    } else {
        ts_fill(canvas, TS_COLOUR_SELECT_BG);
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
        ts_draw_line(canvas, (ts_point){bar.x, bar.y}, (ts_point){bar.x + bar.w, bar.y});
        ts_draw_line(canvas, (ts_point){bar.x, bar.y + bar.h},
                     (ts_point){bar.x + bar.w, bar.y + bar.h});
    }
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    if (!cut) {
        ts_draw_line(canvas, (ts_point){end, bar.y - 1.0}, (ts_point){end, bar.y + bar.h + 1.0});
        return;
    }
    const double way = cell->margin < 0.0 ? -1.0 : 1.0, x = end - way * 7.0;
    ts_path_area(canvas, (ts_area){x - 2.0, bar.y - 2.0, 4.0, bar.h + 4.0});
    ts_fill(canvas, TS_COLOUR_PAPER);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    for (int side = -1; side <= 1; side += 2)
        ts_draw_line(canvas, (ts_point){x + 2.0 * side - 1.5, bar.y + bar.h + 2.0},
                     (ts_point){x + 2.0 * side + 1.5, bar.y - 2.0});
}

/* Two digits that mean something, and more where fewer would show a reserve that is none. */
static void add_percent(ts_buffer *line, double margin)
{
    const double percent  = 100.0 * margin;
    int          decimals = fabs(percent) < 9.95 ? 1 : 0;
    if (percent > 999.5) {
        ts_buffer_add(line, "> 999 %");
        return;
    }
    while (decimals < 6 && fabs(percent) > 0.0 && fabs(percent) < 0.5 * pow(10.0, -decimals))
        decimals++;
    if (percent >= 0.0)
        ts_buffer_add(line, "+");
    ts_add_number(line, percent, decimals);
    ts_buffer_add(line, " %");
}

static void write_right(ts_scene *scene, ts_area area, bool bold, double room)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .bold   = bold,
                              .anchor = TS_ANCHOR_RIGHT,
                              .colour = TS_COLOUR_INK,
                              .width  = room};
    ts_write(&scene->canvas, (ts_point){area.x + area.w - 5.0, area.y + 0.5 * area.h + 4.0},
             ts_scene_kept(scene), &how);
}

static void draw_zero(ts_canvas *canvas, ts_area area)
{
    const double zero = ts_margin_x(area, 0.0);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){zero, area.y}, (ts_point){zero, area.y + area.h});
}

static void draw_mark(ts_canvas *canvas, const ts_margin_cell *cell, ts_area area)
{
    /* What holds without a number has its tick before the word, not next to the neighbour's. */
    const bool     word = cell->state == TS_MARGIN_HOLDS && !cell->finding;
    const double   x    = word ? area.x + area.w - number_room : area.x + 4.0;
    const ts_point at   = {x, area.y + 0.5 * (area.h - mark)};
    if (cell->finding)
        ts_draw_symbol(canvas, ts_symbol_of(cell->finding), at, mark);
    else if (cell->state == TS_MARGIN_HOLDS)
        ts_draw_symbol(canvas, TS_SYMBOL_PASS, at, mark);
    else if (cell->state == TS_MARGIN_UNKNOWN)
        ts_draw_symbol(canvas, TS_SYMBOL_NOTCOMP, at, mark);
}

void ts_margin_draw_cell(ts_scene *scene, const ts_margin_cell *cell, bool governs, ts_area area)
{
    ts_canvas *canvas = &scene->canvas;
    ts_buffer *line   = ts_canvas_line(canvas);
    draw_zero(canvas, area);
    draw_mark(canvas, cell, area);
    switch (cell->state) {
    case TS_MARGIN_ABSENT:
        ts_draw_dot(canvas, (ts_point){area.x + 0.5 * area.w, area.y + 0.5 * area.h}, 1.6,
                    TS_COLOUR_INK3);
        return;
    case TS_MARGIN_HOLDS:
        ts_buffer_add(line, "holds");
        break;
    case TS_MARGIN_FAILS:
        ts_buffer_add(line, "does not hold");
        break;
    case TS_MARGIN_UNKNOWN:
        ts_buffer_add(line, "not computable");
        break;
    case TS_MARGIN_RESERVE:
    case TS_MARGIN_SHORT:
        draw_bar(canvas, cell, area);
        add_percent(ts_canvas_line(canvas), cell->margin);
        break;
    }
    write_right(scene, area, governs || cell->state >= TS_MARGIN_SHORT,
                isnan(cell->margin) ? area.w - mark_room - 8.0 : number_room - 6.0);
}
