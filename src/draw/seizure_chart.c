/* draw/seizure_chart.c: what do parts of a drive bear when an accessory seizes?
 *
 * A panel with its neck, one without: torques of the parts that come nearest to what they bear, as
 * shares of that, against time; what breaks is marked at its instant.
 */
#include "draw/seizure_chart.h"

#include "draw/drawn_seizure.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/trace_panel.h"

#include <math.h>

enum { LINES = 4 };

/* px */
static const double title = 64.0, left_wide = 96.0, right_wide = 250.0, between = 72.0, foot = 64.0,
                    least_high = 620.0;

typedef struct chart {
    ts_scene               *scene;
    const ts_drawn_seizure *it;
    size_t                  joints[LINES]; /* the same in both panels */
    size_t                  count;
    ts_trace_panel          panels[TS_DRAWN_RUNS];
} chart;

/* ---- which parts ------------------------------------------------------------------------------
 */

static double share_of(const ts_drawn_seizure *it, size_t joint)
{
    double most = 0.0;

    for (size_t r = 0; r < it->run_count; r++) {
        const ts_bond_peak *peak = &it->runs[r].run->peaks[joint];
        most = fmax(most, fmax(fabs(peak->before), fabs(peak->after)) / it->bears[joint]);
    }
    return most;
}

/* Those that come nearest to what they bear in either run, the nearest first. */
static void choose_joints(chart *c)
{
    double shares[LINES] = {0.0};

    for (size_t j = 0; j < c->it->twist->model.spring_count; j++) {
        const double share = share_of(c->it, j);
        size_t       at    = c->count;
        if (!isfinite(c->it->bears[j]) || !(share > 0.0))
            continue;
        while (at > 0 && shares[at - 1] < share)
            at--;
        if (at == LINES)
            continue;
        c->count += c->count < LINES;
        for (size_t k = c->count - 1; k > at; k--) {
            shares[k]    = shares[k - 1];
            c->joints[k] = c->joints[k - 1];
        }
        shares[at]    = share;
        c->joints[at] = j;
    }
}

static const char *name_of(const chart *c, size_t joint)
{
    const ts_twist_joint *one  = &c->it->twist->joints[joint];
    ts_buffer            *line = ts_canvas_line(&c->scene->canvas);

    ts_buffer_print(line, "%s > %s", c->it->twist->parts[one->from].name,
                    c->it->twist->parts[one->to].name);
    return ts_scene_kept(c->scene);
}

/* ---- drawing ----------------------------------------------------------------------------------
 */

static ts_trace_line line_of(const chart *c, size_t r, size_t k)
{
    static const ts_dash  dashes[LINES] = {TS_DASH_NONE, TS_DASH_HIDDEN, TS_DASH_CHAIN,
                                           TS_DASH_PHANTOM};
    const ts_train_trace *trace         = &c->it->runs[r].run->trace;
    const size_t          joint         = c->joints[k];

    return (ts_trace_line){.t      = c->it->runs[r].ms,
                           .y      = trace->T + joint,
                           .count  = trace->count,
                           .stride = c->it->twist->model.spring_count,
                           .factor = 100.0 / c->it->bears[joint],
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

    ts_buffer_print(line, "%s: torque over what the part bears once, %%", run->word);
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
    ts_trace_line lines[LINES];

    lay_panel(c, r);
    for (size_t k = 0; k < c->count; k++) {
        lines[k]      = line_of(c, r, k);
        lines[k].name = name_of(c, c->joints[k]);
        ts_trace_widen(&c->panels[r], &lines[k]);
    }
    ts_trace_frame(c->scene, &c->panels[r]);
    ts_note_area(&c->scene->canvas.places, TS_PLACE_ROW, (uint32_t)r, c->panels[r].area);
    for (size_t k = c->count; k-- > 0;)
        ts_trace_draw(c->scene, &c->panels[r], &lines[k]);
    draw_breaks(c, r);
    ts_trace_names(c->scene, &c->panels[r], lines, c->count);
}

/* ---- words ------------------------------------------------------------------------------------
 */

static void write_words(const chart *c)
{
    ts_scene          *scene = c->scene;
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = scene->field.w - 24.0};
    const ts_lettering small = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = scene->field.w - 24.0,
                                .lines  = 2};

    if (c->it == NULL || c->it->accessory == NULL)
        ts_buffer_add(line, "No accessory of this drive could be seized.");
    else
        ts_buffer_print(line, "What bears it when %s seizes at %s?%s%s", c->it->accessory,
                        c->it->condition, c->it->because != NULL ? "  Not followed: " : "",
                        c->it->because != NULL ? c->it->because : "");
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             ts_scene_kept(scene), &lead);
    ts_write(&scene->canvas,
             (ts_point){scene->field.x + 12.0, scene->field.y + scene->field.h - 26.0},
             "The rotor stops at once; the parts that come nearest to what they bear once, the "
             "nearest heavy, above 0 as they drive outwards.  At 100 % teeth break; flanks, "
             "bearings, shafts and splines yield and hold on.",
             &small);
}

static bool is_followed(const ts_drawn_seizure *it)
{
    return it != NULL && it->because == NULL && it->run_count > 0 &&
           it->runs[0].run->trace.count > 1;
}

ts_status ts_draw_seizure(ts_scene *scene)
{
    chart        c      = {.scene = scene, .it = scene->subject->seizure};
    const double height = ts_sheet_height(scene, least_high);

    ts_sheet_divide(scene, height);
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    if (is_followed(c.it)) {
        choose_joints(&c);
        for (size_t r = 0; r < c.it->run_count; r++)
            draw_panel(&c, r);
    }
    write_words(&c);
    ts_sheet_draw(scene, "Seizure", "torques in time");
    return TS_OK;
}
