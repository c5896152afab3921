/* draw/seizure_chart.c: what do parts of a drive bear when an accessory seizes, or is jolted?
 *
 * A panel with its neck, of a jolt with all necks, one without: torques of the parts that come
 * nearest to what they bear, as shares of that, against time; what breaks is marked at its instant.
 */
#include "draw/seizure_chart.h"

#include "draw/chart_words.h"
#include "draw/drawn_seizure.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/trace_panel.h"

#include <math.h>

/* px */
static const double title = 64.0, left_wide = 96.0, right_wide = 250.0, between = 72.0, foot = 64.0,
                    least_high = 620.0;

typedef struct chart {
    ts_scene               *scene;
    const ts_drawn_seizure *it;
    ts_trace_panel          panels[TS_DRAWN_RUNS];
} chart;

static const char *name_of(const chart *c, const ts_drawn_line *shown)
{
    const ts_twist_joint *one  = &c->it->twist->joints[shown->joint];
    ts_buffer            *line = ts_canvas_line(&c->scene->canvas);

    ts_buffer_print(line, "%s > %s", shown->neck ? "neck" : c->it->twist->parts[one->from].name,
                    c->it->twist->parts[one->to].name);
    return ts_scene_kept(c->scene);
}

/* ---- drawing ----------------------------------------------------------------------------------
 */

static ts_trace_line line_of(const chart *c, size_t r, size_t k)
{
    static const ts_dash  dashes[TS_DRAWN_LINES] = {TS_DASH_NONE, TS_DASH_HIDDEN, TS_DASH_CHAIN,
                                                    TS_DASH_PHANTOM};
    const ts_train_trace *trace                  = &c->it->runs[r].run->trace;
    const ts_drawn_line  *shown                  = &c->it->runs[r].lines[k];

    return (ts_trace_line){.t      = c->it->runs[r].ms,
                           .y      = trace->T + shown->joint,
                           .count  = trace->count,
                           .stride = c->it->twist->model.spring_count,
                           .factor = 100.0 / shown->of,
                           .pen    = k == 0 ? TS_PEN_3 : TS_PEN_2,
                           .dash   = dashes[k],
                           .colour = k == 0 ? TS_COLOUR_INK : TS_COLOUR_INK2};
}

static void draw_break(const chart *c, const ts_trace_panel *panel, const ts_train_event *event,
                       size_t number)
{
    const ts_twist_joint *joint  = &c->it->twist->joints[event->bond];
    ts_canvas            *canvas = &c->scene->canvas;
    const double          x = ts_trace_x(panel, 1e3 * event->t), y = panel->area.y;
    const bool            late = 1e3 * event->t > 0.6 * panel->until;
    const ts_lettering    how  = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                  .halo   = true,
                                  .anchor = late ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT,
                                  .colour = TS_COLOUR_INK,
                                  .width  = 0.4 * panel->area.w};
    ts_buffer            *line = ts_canvas_line(canvas);

    ts_buffer_add(line, joint->link == TS_LINK_MESH ? "teeth break, " : "neck breaks, ");
    if (joint->link == TS_LINK_MESH)
        ts_buffer_print(line, "%s > ", c->it->twist->parts[joint->from].name);
    ts_buffer_print(line, "%s, ", c->it->twist->parts[joint->to].name);
    ts_add_number(line, 1e3 * event->t, event->t < 1e-5 ? 5 : 3);
    ts_buffer_add(line, " ms");
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_ST_REFUSE);
    ts_draw_line(canvas, (ts_point){x, y}, (ts_point){x, y + panel->area.h});
    ts_write(canvas, (ts_point){x + (late ? -6.0 : 6.0), y + 16.0 + 17.0 * (double)(number % 5)},
             ts_scene_kept(c->scene), &how);
}

static void draw_breaks(const chart *c, size_t r)
{
    const ts_train_run *run    = c->it->runs[r].run;
    size_t              number = 0;

    for (size_t i = 0; i < run->event_count; i++)
        if (run->events[i].what == TS_HAPPENS_BREAK)
            draw_break(c, &c->panels[r], &run->events[i], number++);
}

static void lay_panel(chart *c, size_t r)
{
    const ts_area       field = c->scene->field;
    const double        high  = (field.h - title - between - foot) / (double)c->it->run_count;
    const ts_drawn_run *run   = &c->it->runs[r];
    ts_buffer          *line  = ts_canvas_line(&c->scene->canvas);

    ts_buffer_print(line, "%s: torque over what %s, %%", run->word,
                    run->line_count > 0 && run->lines[0].neck
                        ? "the part bears once, or breaks the neck"
                        : "the part bears once");
    c->panels[r] = (ts_trace_panel){.area  = {field.x + left_wide,
                                              field.y + title + (double)r * (high + between),
                                              field.w - left_wide - right_wide, high},
                                    .until = run->ms[run->run->trace.count - 1],
                                    .says  = ts_scene_kept(c->scene),
                                    .times = true,
                                    .unit  = "ms"};
}

static void draw_panel(chart *c, size_t r)
{
    const ts_drawn_run *run = &c->it->runs[r];
    ts_trace_line       lines[TS_DRAWN_LINES];

    lay_panel(c, r);
    for (size_t k = 0; k < run->line_count; k++) {
        lines[k]      = line_of(c, r, k);
        lines[k].name = name_of(c, &run->lines[k]);
        ts_trace_widen(&c->panels[r], &lines[k]);
    }
    ts_trace_frame(c->scene, &c->panels[r]);
    ts_note_area(&c->scene->canvas.places, TS_PLACE_ROW, (uint32_t)r, c->panels[r].area);
    for (size_t k = run->line_count; k-- > 0;)
        ts_trace_draw(c->scene, &c->panels[r], &lines[k]);
    draw_breaks(c, r);
    ts_trace_names(c->scene, &c->panels[r], lines, run->line_count);
}

/* ---- words ------------------------------------------------------------------------------------
 */

static void write_words(const chart *c)
{
    ts_scene  *scene = c->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);
    const bool jolt  = scene->options->figure == TS_FIGURE_JOLT;

    if (c->it == NULL || c->it->what == NULL)
        ts_buffer_print(line, "No accessory of this drive could be %s.",
                        jolt ? "jolted" : "seized");
    else
        ts_buffer_print(line, "What bears it when %s?%s%s", c->it->what,
                        c->it->because != NULL ? "  Not followed: " : "",
                        c->it->because != NULL ? c->it->because : "");
    ts_chart_title(scene);
    ts_chart_foot(scene, 26.0, 2,
                  jolt ? "A load that must be borne, and comes at once.  The neck that comes "
                         "nearest to breaking and the parts that come nearest to what they bear "
                         "once, the nearest heavy, above 0 as they drive outwards."
                       : "The rotor stops at once; the parts that come nearest to what they bear "
                         "once in that run, the nearest heavy, above 0 as they drive outwards.  At "
                         "100 % teeth break; flanks, bearings, shafts and splines yield and hold "
                         "on.");
}

static bool is_followed(const ts_drawn_seizure *it)
{
    return it != NULL && it->because == NULL && it->run_count > 0 &&
           it->runs[0].run->trace.count > 1;
}

ts_status ts_draw_seizure(ts_scene *scene)
{
    chart           c      = {.scene = scene, .it = scene->subject->seizure};
    const ts_status status = ts_chart_begin(scene, least_high);

    if (status != TS_OK)
        return status;
    for (size_t r = 0; is_followed(c.it) && r < c.it->run_count; r++)
        draw_panel(&c, r);
    write_words(&c);
    ts_sheet_draw(scene, scene->options->figure == TS_FIGURE_JOLT ? "Jolt" : "Seizure",
                  "torques in time");
    return TS_OK;
}
