/* draw/start_chart.c: how does the engine come from rest to idle, or where does it hang?
 *
 * Above the speeds of the spools against time, below what turns the cranked one: the gases, the
 * radial shaft, and what of both is left to gain speed.
 */
#include "draw/start_chart.h"

#include "draw/chart_words.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/trace_panel.h"

#include <math.h>
#include <stdio.h>

enum { SPOOLS_MOST = 4, TORQUES = 3 };

/* px */
static const double title = 64.0, left_wide = 96.0, right_wide = 210.0, between = 64.0, foot = 70.0,
                    least_high = 560.0;

static const double rpm = 9.54929658551372015;

typedef struct chart {
    ts_scene             *scene;
    const ts_drive_start *it;          /* NULL: nothing was run */
    const ts_drive_start *asked;       /* ... as here it says why; NULL: nothing was asked */
    uint32_t              root, tower; /* shafts; TS_NOWHERE: none */
    ts_trace_panel        speed, torque;
    ts_trace_line         spools[SPOOLS_MOST];
    size_t                spool_count;
    ts_trace_line         torques[TORQUES];
    char                  torque_says[64];
} chart;

/* ---- lines ------------------------------------------------------------------------------------
 */

static void find_shafts(chart *it)
{
    it->root = it->tower = TS_NOWHERE;
    for (uint32_t s = 0; s < it->it->start.shaft_count; s++) {
        const ts_start_shaft *shaft = &it->it->start.shafts[s];
        if (shaft->spool != it->it->spool)
            continue;
        if (shaft->driver == TS_NO_DRIVER)
            it->root = s;
        else if (shaft->driver == it->root && it->tower == TS_NOWHERE)
            it->tower = s;
    }
}

static ts_trace_line line_of(const chart *it, const double *y, size_t stride, double factor)
{
    const ts_start_trace *trace = &it->it->run.trace;
    return (ts_trace_line){.t      = trace->t,
                           .y      = y,
                           .count  = trace->count,
                           .stride = stride,
                           .factor = factor,
                           .pen    = TS_PEN_3,
                           .colour = TS_COLOUR_INK};
}

static void lay_speeds(chart *it)
{
    static const ts_dash  dashes[SPOOLS_MOST] = {TS_DASH_HIDDEN, TS_DASH_CHAIN, TS_DASH_PHANTOM,
                                                 TS_DASH_HIDDEN};
    const ts_start_trace *trace               = &it->it->run.trace;
    const uint32_t        n                   = it->it->start.spool_count;
    for (uint32_t k = 0; k < n && it->spool_count < SPOOLS_MOST; k++) {
        ts_trace_line *line = &it->spools[it->spool_count];
        *line               = line_of(it, trace->w + k, n, rpm);
        line->pen           = k == it->it->spool ? TS_PEN_4 : TS_PEN_3;
        line->dash          = k == it->it->spool ? TS_DASH_NONE : dashes[it->spool_count];
        line->name          = it->scene->drive->spools[k].name;
        ts_trace_widen(&it->speed, line);
        it->spool_count++;
    }
}

static void lay_torques(chart *it)
{
    const ts_start_trace *trace  = &it->it->run.trace;
    const ts_start_shaft *shafts = it->it->start.shafts;
    const double          shown  = ts_scene_in_unit(it->scene, 1.0, TS_KIND_TORQUE);
    it->torques[0]               = line_of(it, trace->gas, 1, shown);
    it->torques[0].name          = "gases";
    it->torques[0].dash          = TS_DASH_CHAIN;
    it->torques[1]               = line_of(it, trace->alpha, 1, shafts[it->root].J * shown);
    it->torques[1].name          = "gains speed";
    it->torques[1].pen           = TS_PEN_4;
    if (it->tower != TS_NOWHERE) {
        it->torques[2]      = line_of(it, trace->T + it->tower, it->it->start.shaft_count,
                                      -shafts[it->tower].ratio * shown);
        it->torques[2].name = "radial shaft";
        it->torques[2].dash = TS_DASH_HIDDEN;
    }
    for (size_t i = 0; i < TORQUES; i++)
        ts_trace_widen(&it->torque, &it->torques[i]);
}

/* ---- words ------------------------------------------------------------------------------------
 */

static void write_reason(const chart *it, ts_buffer *line)
{
    const ts_drive_start *asked = it->asked;

    if (asked == NULL)
        ts_buffer_add(line, "It was not followed.");
    else if (asked->missing != NULL)
        ts_buffer_print(line, "The file does not tell %s%s%s.", asked->missing,
                        asked->lacks != NULL ? " of " : "",
                        asked->lacks != NULL ? asked->lacks : "");
    else if (asked->run.outcome == TS_START_NO_TURN)
        ts_buffer_add(line, "The starter does not turn it.");
    else if (asked->run.fault == TS_START_FINE)
        ts_buffer_add(line, "It ended at once.");
    else
        ts_buffer_print(line, "It could not be computed: %s.",
                        ts_start_fault_says(asked->run.fault));
}

static void write_title(const chart *it)
{
    static const char *const ends[] = {[TS_START_IDLE]    = "It comes to idle in ",
                                       [TS_START_NO_TURN] = "The starter does not turn it; ",
                                       [TS_START_NO_LIGHT] =
                                           "It does not reach light-off; ended at ",
                                       [TS_START_HUNG]    = "It hangs after ",
                                       [TS_START_TIME_UP] = "It is too slow; ended at ",
                                       [TS_START_FAULT]   = "It could not be computed beyond ",
                                       [TS_START_BEYOND]  = "It comes to idle, and on to "};
    ts_scene                *scene  = it->scene;
    ts_buffer               *line   = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "How does the engine start?  ");
    if (it->it == NULL) {
        write_reason(it, line);
    } else {
        ts_buffer_add(line, ends[it->it->run.outcome]);
        if (it->it->run.outcome == TS_START_BEYOND)
            ts_buffer_print(line, "%s in ", scene->subject->start_to);
        ts_add_number(line, it->it->run.t, 1);
        ts_buffer_add(line, " s");
    }
    ts_chart_title(scene);
}

static void write_foot(const chart *it)
{
    ts_scene *scene = it->scene;
    ts_chart_foot(
        scene, 28.0, 2,
        "Torques on the cranked spool, positive where they turn it; that of the radial shaft "
        "times its exact ratio, starter and accessories together.  Rigid meshes: the shock "
        "when the clutch takes hold is not shown.");
}

static const char *event_word(const chart *it, const ts_start_event *event)
{
    switch (event->what) {
    case TS_STARTS_LIGHT_OFF:
        return "light-off";
    case TS_STARTS_CUT_OUT:
        return "starter shut off";
    case TS_STARTS_FOLLOW:
        return "follows by air";
    case TS_STARTS_HANG:
        return "hangs";
    case TS_STARTS_IDLE:
        return "idle";
    case TS_STARTS_BEYOND:
        return it->scene->subject->start_to;
    case TS_STARTS_WITH:
        ts_buffer_print(ts_canvas_line(&it->scene->canvas), "%s within 1 %%",
                        it->scene->drive->spools[event->of].name);
        return ts_scene_kept(it->scene);
    default:
        return NULL;
    }
}

static void draw_events(const chart *it)
{
    ts_canvas          *canvas = &it->scene->canvas;
    const ts_start_run *run    = &it->it->run;
    const double        foot_y = it->torque.area.y + it->torque.area.h;
    for (size_t i = 0; i < run->event_count; i++) {
        const char  *word = event_word(it, &run->events[i]);
        const double x    = ts_trace_x(&it->speed, run->events[i].t);
        const bool   late = run->events[i].t > 0.9 * run->t;
        if (word == NULL)
            continue;
        ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK2);
        ts_use_dash(canvas, TS_DASH_PHANTOM);
        ts_draw_line(canvas, (ts_point){x, it->speed.area.y}, (ts_point){x, foot_y});
        const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                  .halo   = true,
                                  .anchor = late ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT,
                                  .colour = TS_COLOUR_INK};
        ts_write(
            canvas,
            (ts_point){x + (late ? -5.0 : 5.0), it->speed.area.y + 14.0 + 17.0 * (double)(i % 3)},
            word, &how);
    }
}

/* ---- the sheet --------------------------------------------------------------------------------
 */

static void lay_panels(chart *it)
{
    const ts_area field = it->scene->field;
    const double  high  = field.h - title - between - foot;
    it->speed           = (ts_trace_panel){.area  = {field.x + left_wide, field.y + title,
                                                     field.w - left_wide - right_wide, 0.5 * high},
                                           .until = it->it->run.t,
                                           .says  = "speed, rpm"};
    it->torque          = it->speed;
    snprintf(it->torque_says, sizeof it->torque_says, "torque on the cranked spool, %s",
             ts_scene_unit(it->scene, TS_KIND_TORQUE));
    it->torque.area.y += 0.5 * high + between;
    it->torque.says  = it->torque_says;
    it->torque.times = true;
}

static void draw_traces(chart *it)
{
    lay_panels(it);
    find_shafts(it);
    lay_speeds(it);
    lay_torques(it);
    ts_trace_frame(it->scene, &it->speed);
    ts_trace_frame(it->scene, &it->torque);
    ts_note_area(&it->scene->canvas.places, TS_PLACE_ROW, 0, it->speed.area);
    ts_note_area(&it->scene->canvas.places, TS_PLACE_ROW, 1, it->torque.area);
    draw_events(it);
    for (size_t i = 0; i < it->spool_count; i++)
        ts_trace_draw(it->scene, &it->speed, &it->spools[i]);
    for (size_t i = 0; i < TORQUES; i++)
        ts_trace_draw(it->scene, &it->torque, &it->torques[i]);
    ts_trace_names(it->scene, &it->speed, it->spools, it->spool_count);
    ts_trace_names(it->scene, &it->torque, it->torques, TORQUES);
}

ts_status ts_draw_start(ts_scene *scene)
{
    const ts_drive_start *start = scene->subject->start;
    chart                 it    = {.scene = scene, .it = start, .asked = start};
    if (start != NULL && (start->missing != NULL || start->run.trace.count < 2))
        it.it = NULL;
    const ts_status status = ts_chart_begin(scene, least_high);
    if (status != TS_OK)
        return status;
    if (it.it != NULL)
        draw_traces(&it);
    write_title(&it);
    write_foot(&it);
    ts_sheet_draw(scene, "Start",
                  scene->subject->start_to != NULL ? "from rest, over idle" : "from rest to idle");
    return TS_OK;
}
