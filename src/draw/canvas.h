/* draw/canvas.h: a sheet to draw on: pens, shapes, and a note of what was drawn where.
 *
 * Lengths are px, y downwards.  A canvas that failed takes every further call and does nothing.
 */
#ifndef TS_DRAW_CANVAS_H
#define TS_DRAW_CANVAS_H

#include "base/buffer.h"
#include "draw/look.h"
#include "draw/places.h"

#include <cairo.h>
#include <pango/pango.h>

typedef struct ts_canvas {
    cairo_t          *cr;
    cairo_surface_t  *surface;
    PangoFontMap     *fonts;
    PangoContext     *letters;
    ts_buffer         bytes; /* what the surface wrote            */
    ts_buffer         line;  /* a text being put together         */
    ts_places         places;
    ts_ground         ground;
    ts_picture_format format;
    double            width, height; /* px */
    double            mm;            /* px a millimetre of paper */
    double            scale;         /* PNG pixels a px */
} ts_canvas;

/* Fonts and how letters are set, alike on every machine; both are the caller's to unref, also where
 * it returns false without memory. */
bool ts_letters_open(PangoFontMap **fonts, PangoContext **letters);

/* Measures texts only; nothing can be drawn until ts_canvas_sheet.  TS_NO_MEMORY leaves a canvas
 * that may be closed. */
ts_status ts_canvas_open(ts_canvas *canvas, const ts_draw_options *options, ts_arena *arena);
/* Lays out a sheet of the canvas's width and this height, filled with paper. */
ts_status ts_canvas_sheet(ts_canvas *canvas, double height, const char *title);
/* Ends the picture; its bytes are then in canvas->bytes. */
ts_status ts_canvas_finish(ts_canvas *canvas, const char *title);
void      ts_canvas_close(ts_canvas *canvas);

/* An empty text to put words together in. */
ts_buffer *ts_canvas_line(ts_canvas *canvas);

/* What the next strokes are drawn with; a pen always comes without dashes. */
void   ts_use_pen(ts_canvas *canvas, ts_pen pen, ts_colour colour);
void   ts_use_dash(ts_canvas *canvas, ts_dash dash);
void   ts_use_colour(ts_canvas *canvas, ts_colour colour, double alpha);
double ts_pen_width(const ts_canvas *canvas, ts_pen pen);

void ts_move_to(ts_canvas *canvas, ts_point at);
void ts_line_to(ts_canvas *canvas, ts_point at);
void ts_path_circle(ts_canvas *canvas, ts_point at, double radius);
void ts_path_area(ts_canvas *canvas, ts_area area);
void ts_path_polygon(ts_canvas *canvas, const ts_point *points, size_t count);
void ts_stroke(ts_canvas *canvas);
void ts_fill(ts_canvas *canvas, ts_colour colour);
void ts_fill_veiled(ts_canvas *canvas, ts_colour colour, double alpha);
/* Fills with one colour, keeps the path and strokes it with the pen set before. */
void ts_fill_and_stroke(ts_canvas *canvas, ts_colour fill, ts_pen pen, ts_colour ink);

void ts_draw_line(ts_canvas *canvas, ts_point a, ts_point b);
void ts_draw_dot(ts_canvas *canvas, ts_point at, double radius, ts_colour colour);

/* Everything until ts_clip_end stays inside. */
void ts_clip_area(ts_canvas *canvas, ts_area area);
void ts_clip_path(ts_canvas *canvas);
void ts_clip_end(ts_canvas *canvas);

/* 45 degree hatching of the present path, which it takes: what is hatched is forbidden. */
void ts_hatch(ts_canvas *canvas, ts_colour colour);
/* A wall along points: a strong line with 45 degree ticks on its forbidden side, the right hand of
 * somebody who walks along it on the sheet, or the left. */
void ts_draw_wall(ts_canvas *canvas, const ts_point *points, size_t count, bool ticks_right);
/* A solid arrow head whose point is at `tip`, pointing in `direction` (rad, y downwards). */
void ts_draw_head(ts_canvas *canvas, ts_point tip, double direction, double length,
                  ts_colour colour);

#endif
