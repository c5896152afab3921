/* draw/mass_chart.c: which parts make the drive heavy, and how sure is that?
 */
#include "draw/mass_chart.h"

#include "draw/lettering.h"
#include "draw/sheet.h"
#include "mass/mass.h"

#include <math.h>

enum { ROWS_MOST = 28 };

/* px */
static const double label_wide = 300.0, number_wide = 150.0, row_least = 22.0, row_most = 32.0,
                    head = 64.0, title = 34.0, bar_height = 11.0, foot = 52.0;

typedef struct bar {
    const char *kind, *name;
    double      low, value, high; /* kg */
    size_t      parts;            /* how many stand in it */
} bar;

typedef struct chart {
    ts_scene *scene;
    bar       rows[ROWS_MOST];
    size_t    count;
    double    most;  /* kg at the right end of the scale */
    double    whole; /* kg of the drive itself           */
    double    row;
    ts_area   area;
} chart;

/* ---- which bars -------------------------------------------------------------------------------
 */

static void add_bar(bar *to, const ts_mass_part *part)
{
    to->low += part->m.low;
    to->value += part->m.value;
    to->high += part->m.high;
    to->parts++;
}

/* Heaviest first; what does not fit is one bar at the end. */
static void gather(chart *it, const ts_mass *mass)
{
    bar rest = {.kind = "further parts", .name = NULL};
    for (size_t i = 0; mass != NULL && i < mass->part_count; i++) {
        const ts_mass_part *part = &mass->parts[i];
        if (part->missing != NULL || part->kind == TS_MASS_ACCESSORY)
            continue;
        bar fresh = {.kind = ts_mass_part_says(part->kind), .name = part->name};
        add_bar(&fresh, part);
        for (size_t k = 0; k < it->count; k++)
            if (fresh.value > it->rows[k].value) {
                const bar out = it->rows[k];
                it->rows[k]   = fresh;
                fresh         = out;
            }
        if (it->count < ROWS_MOST - 1) {
            it->rows[it->count++] = fresh;
            continue;
        }
        rest.low += fresh.low;
        rest.value += fresh.value;
        rest.high += fresh.high;
        rest.parts += fresh.parts;
    }
    if (rest.parts > 0)
        it->rows[it->count++] = rest;
    for (size_t k = 0; k < it->count; k++)
        it->most = fmax(it->most, it->rows[k].high);
    it->whole = mass != NULL ? mass->metal.value : 0.0;
}

/* 1, 2 or 5 times a power of ten, so that four to nine fit under the whole; in the unit shown. */
static double tick_of(double most)
{
    const double raw = most / 6.0, ten = pow(10.0, floor(log10(raw))), share = raw / ten;
    return ten * (share < 1.5 ? 1.0 : share < 3.5 ? 2.0 : share < 7.5 ? 5.0 : 10.0);
}

/* ---- drawing ----------------------------------------------------------------------------------
 */

static double x_of(const chart *it, double kg)
{
    const double wide = it->area.w - label_wide - number_wide - 24.0;
    return it->area.x + label_wide + wide * kg / it->most;
}

static double y_of(const chart *it, size_t row)
{
    return it->area.y + head + it->row * (double)row;
}

static void draw_scale(const chart *it)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const double       unit   = ts_scene_in_unit(scene, 1.0, TS_KIND_MASS);
    const double       step   = tick_of(it->most * unit);
    const int          places = step < 0.1 ? 2 : step < 1.0 ? 1 : 0;
    const ts_lettering tick   = {
          .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};
    const double top = y_of(it, 0) - 4.0, bottom = y_of(it, it->count);
    for (int i = 0; step * i <= it->most * unit * (1.0 + 1e-9); i++) {
        const double x    = x_of(it, step * i / unit);
        ts_buffer   *line = ts_canvas_line(canvas);
        ts_use_pen(canvas, i == 0 ? TS_PEN_3 : TS_PEN_1, i == 0 ? TS_COLOUR_INK : TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){x, top}, (ts_point){x, bottom});
        ts_add_number(line, step * i, places);
        ts_write(canvas, (ts_point){x, top - 6.0}, ts_scene_kept(scene), &tick);
    }
}

static void draw_band(ts_canvas *canvas, double left, double right, double y)
{
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){left, y}, (ts_point){right, y});
    ts_draw_line(canvas, (ts_point){left, y - 4.0}, (ts_point){left, y + 4.0});
    ts_draw_line(canvas, (ts_point){right, y - 4.0}, (ts_point){right, y + 4.0});
}

static void write_row(const chart *it, const bar *one, double y)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const ts_lettering label  = {
         .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK, .width = label_wide - 24.0};
    const ts_lettering number = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .anchor = TS_ANCHOR_RIGHT,
                                 .colour = TS_COLOUR_INK,
                                 .width  = 74.0};
    ts_buffer         *line   = ts_canvas_line(canvas);
    if (one->name != NULL)
        ts_buffer_print(line, "%s, %s", one->name, one->kind);
    else
        ts_buffer_print(line, "%zu %s", one->parts, one->kind);
    ts_write(canvas, (ts_point){it->area.x + 10.0, y + 4.0}, ts_scene_kept(scene), &label);
    const double value = ts_scene_in_unit(scene, one->value, TS_KIND_MASS);
    ts_add_number(ts_canvas_line(canvas), value, value < 0.1 ? 3 : value < 10.0 ? 2 : 1);
    ts_write(canvas, (ts_point){it->area.x + it->area.w - 80.0, y + 4.0}, ts_scene_kept(scene),
             &number);
    line = ts_canvas_line(canvas);
    ts_add_number(line, 100.0 * one->value / it->whole, 1);
    ts_buffer_add(line, " %");
    ts_write(canvas, (ts_point){it->area.x + it->area.w - 10.0, y + 4.0}, ts_scene_kept(scene),
             &number);
}

static void draw_row(const chart *it, size_t row)
{
    ts_canvas    *canvas = &it->scene->canvas;
    const bar    *one    = &it->rows[row];
    const double  y = y_of(it, row) + 0.5 * it->row, zero = x_of(it, 0.0);
    const ts_area area = {zero, y - 0.5 * bar_height, x_of(it, one->value) - zero, bar_height};
    ts_path_area(canvas, area);
    ts_fill_and_stroke(canvas, TS_COLOUR_SELECT_BG, TS_PEN_1, TS_COLOUR_INK2);
    ts_note_area(&canvas->places, TS_PLACE_ROW, (uint32_t)row, area);
    if (one->high - one->low > 1e-9 * one->value)
        draw_band(canvas, x_of(it, one->low), x_of(it, one->high), y);
    write_row(it, one, y);
}

static void draw_heads(const chart *it)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const ts_lettering left   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .bold   = true,
                                 .colour = TS_COLOUR_INK,
                                 .width  = label_wide - 24.0};
    const ts_lettering right  = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .bold   = true,
                                 .anchor = TS_ANCHOR_RIGHT,
                                 .colour = TS_COLOUR_INK,
                                 .width  = 74.0};
    const double       y      = y_of(it, 0) - 26.0;
    ts_write(canvas, (ts_point){it->area.x + 10.0, y}, "part", &left);
    ts_write(canvas, (ts_point){it->area.x + it->area.w - 80.0, y},
             ts_scene_unit(scene, TS_KIND_MASS), &right);
    ts_write(canvas, (ts_point){it->area.x + it->area.w - 10.0, y}, "share", &right);
}

static void add_band(ts_buffer *line, const ts_scene *scene, ts_band band)
{
    const double unit = ts_scene_in_unit(scene, 1.0, TS_KIND_MASS);
    ts_add_number(line, band.value * unit, 1);
    ts_buffer_add(line, " (");
    ts_add_number(line, band.low * unit, 1);
    ts_buffer_add(line, " to ");
    ts_add_number(line, band.high * unit, 1);
    ts_buffer_print(line, ") %s", ts_scene_unit(scene, TS_KIND_MASS));
}

static void write_title(const chart *it, const ts_mass *mass)
{
    ts_scene          *scene = it->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = scene->field.w - 24.0};
    if (it->count == 0) {
        ts_buffer_add(line, "Nothing was weighed.");
    } else {
        ts_buffer_add(line, "What weighs?  The drive itself ");
        add_band(line, scene, mass->metal);
        ts_buffer_add(line, ", with its accessories ");
        ts_add_number(line, ts_scene_in_unit(scene, mass->total.value, TS_KIND_MASS), 1);
        ts_buffer_print(line, " %s", ts_scene_unit(scene, TS_KIND_MASS));
    }
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             ts_scene_kept(scene), &lead);
}

static void write_foot(const chart *it, const ts_mass *mass)
{
    ts_scene          *scene = it->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = scene->field.w - 24.0,
                                .lines  = 2};
    ts_buffer_add(line, "Bar: mass of the part by its shape, accessories left out; whisker: from "
                        "the least to the most that it may weigh by what is assumed of it, none "
                        "where the file says all.  A gear without a rim counts as solid.");
    if (mass != NULL && mass->missing > 0)
        ts_buffer_print(line, "  Not weighed, for want of data: %zu.", mass->missing);
    ts_write(&scene->canvas,
             (ts_point){scene->field.x + 12.0, scene->field.y + scene->field.h - foot + 22.0},
             ts_scene_kept(scene), &how);
}

ts_status ts_draw_mass(ts_scene *scene)
{
    const ts_mass *mass = scene->subject->mass;
    chart          it   = {.scene = scene, .row = row_most};
    gather(&it, mass);
    const double rows   = (double)it.count;
    const double height = ts_sheet_height(scene, title + head + row_least * rows + foot);
    ts_sheet_divide(scene, height);
    it.area = scene->field;
    it.area.y += title;
    while (it.row > row_least && title + head + it.row * rows + foot > scene->field.h)
        it.row -= 1.0;
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    write_title(&it, mass);
    if (it.count > 0) {
        draw_scale(&it);
        draw_heads(&it);
    }
    for (size_t row = 0; row < it.count; row++)
        draw_row(&it, row);
    write_foot(&it, mass);
    ts_sheet_draw(scene, "Mass", "parts of the drive itself");
    return TS_OK;
}
