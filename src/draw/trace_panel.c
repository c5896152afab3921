/* draw/trace_panel.c: how does something change with time? */
#include "draw/trace_panel.h"

#include "draw/lettering.h"

#include <math.h>

enum { NAMES_MOST = 64 };

static const double gap_y = 44.0, gap_x = 90.0, name_high = 17.0; /* px */

/* 1, 2 or 5 times a power of ten, at least `least`. */
static double round_step(double least)
{
    const double ten = pow(10.0, floor(log10(least)));
    const double of  = least / ten;
    return ten * (of <= 1.0 ? 1.0 : of <= 2.0 ? 2.0 : of <= 5.0 ? 5.0 : 10.0);
}

double ts_trace_x(const ts_trace_panel *panel, double t)
{
    return panel->area.x + panel->area.w * t / panel->until;
}

double ts_trace_y(const ts_trace_panel *panel, double value)
{
    const double share = (value - panel->least) / (panel->most - panel->least);
    return panel->area.y + panel->area.h * (1.0 - share);
}

void ts_trace_widen(ts_trace_panel *panel, const ts_trace_line *line)
{
    for (size_t i = 0; i < line->count; i++) {
        const double y = line->factor * line->y[i * line->stride];
        if (!isfinite(y))
            continue;
        panel->least = fmin(panel->least, y);
        panel->most  = fmax(panel->most, y);
    }
}

static void tick_y(ts_scene *scene, const ts_trace_panel *panel, double value, int decimals)
{
    ts_canvas         *canvas = &scene->canvas;
    const double       y      = ts_trace_y(panel, value);
    const ts_lettering how    = {
           .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK2};
    ts_use_pen(canvas, fabs(value) > 0.0 ? TS_PEN_1 : TS_PEN_2,
               fabs(value) > 0.0 ? TS_COLOUR_HAIR : TS_COLOUR_INK2);
    ts_draw_line(canvas, (ts_point){panel->area.x, y},
                 (ts_point){panel->area.x + panel->area.w, y});
    ts_add_number(ts_canvas_line(canvas), value, decimals);
    ts_write(canvas, (ts_point){panel->area.x - 8.0, y + 4.0}, ts_scene_kept(scene), &how);
}

static void tick_x(ts_scene *scene, const ts_trace_panel *panel, double t, int decimals)
{
    ts_canvas         *canvas = &scene->canvas;
    const double       x = ts_trace_x(panel, t), foot = panel->area.y + panel->area.h;
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
    ts_draw_line(canvas, (ts_point){x, panel->area.y}, (ts_point){x, foot});
    if (!panel->times)
        return;
    ts_buffer *line = ts_canvas_line(canvas);
    ts_add_number(line, t, decimals);
    ts_buffer_print(line, " %s", panel->unit != NULL ? panel->unit : "s");
    ts_write(canvas, (ts_point){x, foot + 18.0}, ts_scene_kept(scene), &how);
}

static int decimals_of(double step)
{
    return step >= 1.0 ? 0 : (int)ceil(-log10(step) - 1e-9);
}

void ts_trace_frame(ts_scene *scene, ts_trace_panel *panel)
{
    ts_canvas         *canvas = &scene->canvas;
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_SMALL, .bold = true, .colour = TS_COLOUR_INK};
    const double       span   = panel->most > panel->least ? panel->most - panel->least : 1.0;
    const double       step_y = round_step(span * gap_y / panel->area.h);
    const double       step_x = round_step(panel->until * gap_x / panel->area.w);
    const long from = (long)floor(panel->least / step_y), to = (long)ceil(panel->most / step_y);

    panel->least = (double)from * step_y;
    panel->most  = (double)(to > from ? to : from + 1) * step_y;
    for (long i = 0; (double)i * step_x <= panel->until * (1.0 + 1e-9); i++)
        tick_x(scene, panel, (double)i * step_x, decimals_of(step_x));
    for (long i = from; i <= to; i++)
        tick_y(scene, panel, (double)i * step_y, decimals_of(step_y));
    ts_write(canvas, (ts_point){panel->area.x, panel->area.y - 10.0}, panel->says, &how);
}

void ts_trace_draw(ts_scene *scene, const ts_trace_panel *panel, const ts_trace_line *line)
{
    ts_canvas *canvas = &scene->canvas;

    if (line->count < 2)
        return;
    ts_use_pen(canvas, line->pen, line->colour);
    ts_use_dash(canvas, line->dash);
    for (size_t i = 0; i < line->count; i++) {
        const ts_point at = {ts_trace_x(panel, line->t[i]),
                             ts_trace_y(panel, line->factor * line->y[i * line->stride])};
        if (i == 0)
            ts_move_to(canvas, at);
        else
            ts_line_to(canvas, at);
    }
    ts_stroke(canvas);
}

void ts_trace_names(ts_scene *scene, const ts_trace_panel *panel, const ts_trace_line *lines,
                    size_t count)
{
    const double       x = panel->area.x + panel->area.w + 10.0;
    size_t             order[NAMES_MOST], n = 0;
    double             y[NAMES_MOST];
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .colour = TS_COLOUR_INK,
                              .width  = scene->field.x + scene->field.w - x - 8.0};
    for (size_t i = 0; i < count && n < NAMES_MOST; i++) {
        if (lines[i].name == NULL || lines[i].count == 0)
            continue;
        const double at =
            ts_trace_y(panel, lines[i].factor * lines[i].y[(lines[i].count - 1) * lines[i].stride]);
        size_t k = n++;
        for (; k > 0 && y[k - 1] > at; k--) {
            y[k]     = y[k - 1];
            order[k] = order[k - 1];
        }
        y[k]     = at;
        order[k] = i;
    }
    for (size_t k = 1; k < n; k++)
        y[k] = fmax(y[k], y[k - 1] + name_high);
    for (size_t k = 0; k < n; k++)
        ts_write(&scene->canvas, (ts_point){x, y[k] + 4.0}, lines[order[k]].name, &how);
}
