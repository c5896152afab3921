/* draw/symbol.c: what does a state look like?  The shapes stand on a grid of 16 by 16. */
#include "draw/symbol.h"

ts_symbol ts_symbol_of(const ts_finding *finding)
{
    if (finding->state == TS_WAIVED)
        return TS_SYMBOL_WAIVED;
    if (finding->state == TS_NOT_COMPUTABLE)
        return TS_SYMBOL_NOTCOMP;
    return finding->level == TS_REFUSE ? TS_SYMBOL_REFUSE
           : finding->level == TS_WARN ? TS_SYMBOL_WARN
                                       : TS_SYMBOL_NOTE;
}

const char *ts_symbol_word(ts_symbol symbol)
{
    static const char *const words[] = {TS_LOOK_SYMBOL_REFUSE_WORD,  TS_LOOK_SYMBOL_WARN_WORD,
                                        TS_LOOK_SYMBOL_NOTE_WORD,    TS_LOOK_SYMBOL_WAIVED_WORD,
                                        TS_LOOK_SYMBOL_NOTCOMP_WORD, TS_LOOK_SYMBOL_PASS_WORD};
    return words[symbol];
}

/* Draws on the grid; widths are grid units. */
static void grid_stroke(ts_canvas *canvas, ts_colour colour, double width)
{
    ts_use_pen(canvas, TS_PEN_1, colour);
    cairo_set_line_width(canvas->cr, width);
    ts_stroke(canvas);
}

static void draw_refuse(ts_canvas *canvas)
{
    static const ts_point octagon[8] = {{5, 0.8},   {11, 0.8}, {15.2, 5}, {15.2, 11},
                                        {11, 15.2}, {5, 15.2}, {0.8, 11}, {0.8, 5}};
    ts_path_polygon(canvas, octagon, 8);
    ts_fill(canvas, TS_COLOUR_ST_REFUSE);
    ts_path_area(canvas, (ts_area){3.4, 6.7, 9.2, 2.6});
    ts_fill(canvas, TS_COLOUR_PAPER);
}

static void draw_warn(ts_canvas *canvas)
{
    static const ts_point triangle[3] = {{8, 0.8}, {15.6, 14.8}, {0.4, 14.8}};
    ts_path_polygon(canvas, triangle, 3);
    ts_fill(canvas, TS_COLOUR_ST_WARN);
    ts_path_area(canvas, (ts_area){7, 5.4, 2, 4.6});
    ts_path_area(canvas, (ts_area){7, 11.2, 2, 2});
    ts_fill(canvas, TS_COLOUR_PAPER);
}

static void draw_note(ts_canvas *canvas)
{
    ts_path_circle(canvas, (ts_point){8, 8}, 6.4);
    grid_stroke(canvas, TS_COLOUR_ST_NOTE, 1.9);
    ts_draw_dot(canvas, (ts_point){8, 8}, 2.2, TS_COLOUR_ST_NOTE);
}

static void draw_waived(ts_canvas *canvas)
{
    static const ts_point octagon[8] = {{5.2, 1.6},   {10.8, 1.6}, {14.4, 5.2}, {14.4, 10.8},
                                        {10.8, 14.4}, {5.2, 14.4}, {1.6, 10.8}, {1.6, 5.2}};
    ts_path_polygon(canvas, octagon, 8);
    grid_stroke(canvas, TS_COLOUR_ST_WAIVED, 1.7);
    ts_move_to(canvas, (ts_point){1, 15});
    ts_line_to(canvas, (ts_point){15, 1});
    grid_stroke(canvas, TS_COLOUR_ST_WAIVED, 1.9);
}

static void draw_notcomp(ts_canvas *canvas)
{
    static const double dash[2] = {3.2, 1.9};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_ST_NOTCOMP);
    cairo_set_line_width(canvas->cr, 1.8);
    cairo_set_dash(canvas->cr, dash, 2, 0.0);
    ts_path_area(canvas, (ts_area){1.4, 1.4, 13.2, 13.2});
    ts_stroke(canvas);
    cairo_move_to(canvas->cr, 5.6, 6.1);
    cairo_curve_to(canvas->cr, 5.6, 2.8, 10.5, 3.0, 10.5, 5.9);
    cairo_curve_to(canvas->cr, 10.5, 7.9, 8.0, 7.8, 8.0, 9.9);
    ts_move_to(canvas, (ts_point){8, 11.1});
    ts_line_to(canvas, (ts_point){8, 12.9});
    grid_stroke(canvas, TS_COLOUR_ST_NOTCOMP, 1.7);
}

static void draw_pass(ts_canvas *canvas)
{
    ts_move_to(canvas, (ts_point){2, 8.6});
    ts_line_to(canvas, (ts_point){6.2, 13});
    ts_line_to(canvas, (ts_point){14, 3});
    grid_stroke(canvas, TS_COLOUR_ST_PASS, 2.0);
}

void ts_draw_symbol(ts_canvas *canvas, ts_symbol symbol, ts_point at, double size)
{
    cairo_save(canvas->cr);
    cairo_translate(canvas->cr, at.x, at.y);
    cairo_scale(canvas->cr, size / 16.0, size / 16.0);
    switch (symbol) {
    case TS_SYMBOL_REFUSE:
        draw_refuse(canvas);
        break;
    case TS_SYMBOL_WARN:
        draw_warn(canvas);
        break;
    case TS_SYMBOL_NOTE:
        draw_note(canvas);
        break;
    case TS_SYMBOL_WAIVED:
        draw_waived(canvas);
        break;
    case TS_SYMBOL_NOTCOMP:
        draw_notcomp(canvas);
        break;
    case TS_SYMBOL_PASS:
        draw_pass(canvas);
        break;
    }
    cairo_restore(canvas->cr);
}
