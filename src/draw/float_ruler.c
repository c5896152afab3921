/* draw/float_ruler.c: at which travel does each way to bear it stop working? */
#include "draw/float_view.h"

#include "draw/lettering.h"
#include "draw/value_table.h"

#include <math.h>

/* px */
static const double axis = 40.0, row = 72.0, bar = 18.0, names = 164.0, room = 76.0;

typedef struct ruler {
    ts_scene             *scene;
    const ts_drive_float *item;
    ts_area               plot;
    double                s[2]; /* m at both ends of the plot */
} ruler;

const char *ts_float_span_words(ts_scene *scene, double from, double to)
{
    const char *a = ts_value_length(scene, from), *b = ts_value_length(scene, to);

    ts_buffer_print(ts_canvas_line(&scene->canvas), "%s .. %s %s", a, b,
                    ts_scene_unit(scene, TS_KIND_LENGTH));
    return ts_scene_kept(scene);
}

double ts_float_ruler_height(void)
{
    return axis + row * (double)TS_FLOAT_SCHEMES + 4.0;
}

static double x_of(const ruler *it, double s)
{
    const double share = (s - it->s[0]) / (it->s[1] - it->s[0]);
    return it->plot.x + it->plot.w * fmin(1.0, fmax(0.0, share));
}

/* Every stop and the travel, and room for the words beside them. */
static void set_axis(ruler *it)
{
    double low = it->item->s[0], high = it->item->s[1];

    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        if (isfinite(it->item->options[i].stop[0]))
            low = fmin(low, it->item->options[i].stop[0]);
        if (isfinite(it->item->options[i].stop[1]))
            high = fmax(high, it->item->options[i].stop[1]);
    }
    if (!(high > low))
        low -= 1e-3, high += 1e-3;
    const double px = (it->plot.w - 2.0 * room) / (high - low);
    it->s[0]        = low - room / px;
    it->s[1]        = high + room / px;
}

static double tick_of(const ruler *it)
{
    const double unit   = ts_scene_in_unit(it->scene, 1.0, TS_KIND_LENGTH);
    const double wanted = (it->s[1] - it->s[0]) * unit / 9.0;
    const double decade = pow(10.0, floor(log10(wanted))), share = wanted / decade;

    return decade * (share > 5.0 ? 10.0 : share > 2.0 ? 5.0 : share > 1.0 ? 2.0 : 1.0);
}

static void draw_axis(const ruler *it)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       unit   = ts_scene_in_unit(it->scene, 1.0, TS_KIND_LENGTH);
    const double       tick   = tick_of(it);
    const int          places = (int)fmax(0.0, -floor(log10(tick) + 1e-9));
    const double       bottom = it->plot.y + it->plot.h;
    const ts_lettering mark   = {
          .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};
    const ts_lettering name = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK};
    const int          from = (int)ceil(it->s[0] * unit / tick);

    for (int i = from; i * tick <= it->s[1] * unit; i++) {
        const double x = x_of(it, i * tick / unit);
        ts_use_pen(canvas, i == 0 ? TS_PEN_2 : TS_PEN_1, i == 0 ? TS_COLOUR_RULE : TS_COLOUR_HAIR);
        ts_draw_line(canvas, (ts_point){x, it->plot.y}, (ts_point){x, bottom});
        if (x < it->plot.x + 12.0 || x > it->plot.x + it->plot.w - 12.0)
            continue;
        ts_add_number(ts_canvas_line(canvas), i * tick, places);
        ts_write(canvas, (ts_point){x, it->plot.y - 6.0}, ts_scene_kept(it->scene), &mark);
    }
    ts_buffer_print(ts_canvas_line(canvas), "travel, %s", ts_scene_unit(it->scene, TS_KIND_LENGTH));
    ts_write(canvas, (ts_point){it->plot.x - names + 2.0, it->plot.y - 6.0},
             ts_scene_kept(it->scene), &name);
}

/* The travel of the spool, through all rows. */
static void draw_travel(const ruler *it)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double a = x_of(it, it->item->s[0]), b = x_of(it, it->item->s[1]);

    ts_path_area(canvas, (ts_area){a, it->plot.y, b - a, it->plot.h});
    ts_fill_veiled(canvas, TS_COLOUR_POWER, 0.22);
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_POWER);
    ts_draw_line(canvas, (ts_point){a, it->plot.y}, (ts_point){a, it->plot.y + it->plot.h});
    ts_draw_line(canvas, (ts_point){b, it->plot.y}, (ts_point){b, it->plot.y + it->plot.h});
}

static void hatch_beyond(const ruler *it, double from, double to, double y)
{
    ts_canvas *canvas = &it->scene->canvas;

    if (to - from < 0.5)
        return;
    ts_path_area(canvas, (ts_area){from, y, to - from, bar});
    ts_hatch(canvas, TS_COLOUR_RULE);
}

/* What of the travel it does not bear. */
static void hatch_lost(const ruler *it, const ts_float_option *o, double y)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double a = x_of(it, it->item->s[0]), b = x_of(it, it->item->s[1]);
    const double left = fmin(b, x_of(it, o->stop[0])), right = fmax(a, x_of(it, o->stop[1]));

    if (left > a + 0.5) {
        ts_path_area(canvas, (ts_area){a, y, left - a, bar});
        ts_hatch(canvas, TS_COLOUR_ST_REFUSE);
    }
    if (right < b - 0.5) {
        ts_path_area(canvas, (ts_area){right, y, b - right, bar});
        ts_hatch(canvas, TS_COLOUR_ST_REFUSE);
    }
}

static const char *travel_words(const ruler *it, double s)
{
    ts_add_number(ts_canvas_line(&it->scene->canvas),
                  ts_scene_in_unit(it->scene, s, TS_KIND_LENGTH),
                  it->scene->units == TS_UNITS_US ? 4 : 3);
    return ts_scene_kept(it->scene);
}

static void write_stop(const ruler *it, const ts_float_option *o, int end, double y)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       x      = x_of(it, o->stop[end]);
    const ts_lettering number = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .bold   = o->chosen,
                                 .halo   = true,
                                 .anchor = end == 0 ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT,
                                 .colour = TS_COLOUR_INK};
    const ts_lettering why    = {.size   = TS_LOOK_TYPE_PX_TICK,
                                 .halo   = true,
                                 .colour = TS_COLOUR_INK2,
                                 .width  = it->plot.w - 12.0};

    if (!isfinite(o->stop[end]))
        return;
    ts_write(canvas, (ts_point){x + (end == 0 ? -5.0 : 5.0), y + bar - 4.5},
             travel_words(it, o->stop[end]), &number);
    const char *at = travel_words(it, o->stop[end]);
    ts_buffer_print(ts_canvas_line(canvas), "%s at %s: %s", end == 0 ? "forward" : "rearward", at,
                    ts_float_cause_says(o->cause[end]));
    ts_write(canvas, (ts_point){it->plot.x + 6.0, y + bar + 14.0 + 14.0 * end},
             ts_scene_kept(it->scene), &why);
}

static void write_name(const ruler *it, const ts_float_option *o, int scheme, double y)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       x      = it->plot.x - names + 2.0;
    const ts_lettering bold   = {.bold = o->chosen, .colour = TS_COLOUR_INK, .width = names - 12.0};
    const ts_lettering small  = {
         .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2, .width = names - 12.0, .lines = 2};
    const char *a = isfinite(o->apart[0]) ? travel_words(it, o->apart[0]) : "";
    const char *b = isfinite(o->apart[1]) ? travel_words(it, o->apart[1]) : "";

    ts_buffer_print(ts_canvas_line(canvas), "%s%s", ts_float_scheme_name((ts_float_scheme)scheme),
                    o->chosen ? ", chosen" : "");
    ts_write(canvas, (ts_point){x, y + 13.0}, ts_scene_kept(it->scene), &bold);
    ts_buffer_print(ts_canvas_line(canvas), "interrupted beyond %s%s%s", a,
                    *a != 0 && *b != 0 ? " and " : "", b);
    if (*a != 0 || *b != 0)
        ts_write(canvas, (ts_point){x, y + bar + 10.0}, ts_scene_kept(it->scene), &small);
}

static void draw_row(const ruler *it, int scheme)
{
    ts_canvas             *canvas = &it->scene->canvas;
    const ts_float_option *o      = &it->item->options[scheme];
    const double           y      = it->plot.y + row * (double)scheme + 6.0;
    const double           a = x_of(it, o->stop[0]), b = x_of(it, o->stop[1]);

    ts_path_area(canvas, (ts_area){it->plot.x, y, it->plot.w, bar});
    ts_fill(canvas, TS_COLOUR_PAPER);
    hatch_beyond(it, it->plot.x, a, y);
    hatch_beyond(it, b, it->plot.x + it->plot.w, y);
    if (b > a) {
        ts_path_area(canvas, (ts_area){a, y, b - a, bar});
        ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, o->chosen ? TS_PEN_4 : TS_PEN_2, TS_COLOUR_INK);
        const double left  = fmax(a, x_of(it, it->item->s[0]));
        const double right = fmin(b, x_of(it, it->item->s[1]));
        if (right > left) {
            ts_path_area(canvas, (ts_area){left, y + 1.5, right - left, bar - 3.0});
            ts_fill_veiled(canvas, TS_COLOUR_POWER, o->chosen ? 0.75 : 0.4);
        }
    }
    hatch_lost(it, o, y);
    write_stop(it, o, 0, y);
    write_stop(it, o, 1, y);
    write_name(it, o, scheme, y);
}

void ts_float_draw_ruler(ts_scene *scene, const ts_drive_float *item, ts_area area)
{
    ruler it = {.scene = scene,
                .item  = item,
                .plot  = {area.x + names, area.y + axis - 16.0, area.w - names,
                          row * (double)TS_FLOAT_SCHEMES}};

    set_axis(&it);
    draw_axis(&it);
    draw_travel(&it);
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++)
        draw_row(&it, i);
    ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(&scene->canvas, (ts_point){area.x, it.plot.y + it.plot.h},
                 (ts_point){area.x + area.w, it.plot.y + it.plot.h});
}
