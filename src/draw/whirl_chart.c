/* draw/whirl_chart.c: whirl speeds, shapes and unbalance of a radial shaft, and the map of what it
 * might be.
 *
 * Shown is the radial shaft whose first critical speed is nearest to its highest speed.
 */
#include "draw/whirl_chart.h"

#include "draw/chart_words.h"
#include "draw/lettering.h"
#include "draw/sheet.h"
#include "draw/trace_panel.h"

#include <math.h>

enum { LINES_MOST = 2 * TS_CAMPBELL_MODES + 1 };

/* px */
static const double title = 64.0, left_wide = 96.0, right_wide = 190.0, between = 62.0, foot = 64.0,
                    least_high = 640.0;

static const double rpm = 9.54929658551372015;

typedef struct chart {
    ts_scene              *scene;
    const ts_whirl_course *course; /* NULL: there is none */
    double                *scaled; /* abscissae in what is shown */
} chart;

static const ts_whirl_course *course_of(const ts_scene *scene)
{
    const ts_whirls *whirls  = scene->subject->whirls;
    const uint32_t   nearest = whirls != NULL ? ts_whirls_nearest(whirls) : UINT32_MAX;

    if (nearest == UINT32_MAX || scene->subject->courses == NULL ||
        scene->subject->courses[nearest].speeds == 0)
        return NULL;
    return &scene->subject->courses[nearest];
}

static void write_words(const chart *it, const char *question, const char *below)
{
    ts_scene  *scene = it->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);

    if (it->course == NULL) {
        ts_buffer_add(line, "No radial shaft has a critical speed that could be computed.");
    } else {
        ts_buffer_print(line, "%s  %s: first critical ", question, it->course->item->name);
        ts_add_number(line, it->course->item->forward * rpm, 0);
        ts_buffer_add(line, " rpm, ");
        ts_add_number(line, it->course->item->forward / it->course->item->top, 2);
        ts_buffer_add(line, " of its highest speed");
    }
    ts_chart_title(scene);
    ts_chart_foot(scene, 28.0, 2, below);
}

/* Room, sheet and canvas; false: not enough memory, or the picture ends with its words. */
static ts_status begin(chart *it, ts_scene *scene)
{

    *it = (chart){.scene = scene, .course = course_of(scene)};
    if (it->course != NULL) {
        it->scaled = TS_TAKE(scene->arena, double, (size_t)it->course->speeds + 128);
        if (it->scaled == NULL)
            return TS_NO_MEMORY;
    }
    return ts_chart_begin(scene, least_high);
}

static ts_area area_of(const chart *it, double from, double share)
{
    const ts_area field = it->scene->field;
    const double  high  = field.h - title - foot - 2.0 * between;

    return (ts_area){field.x + left_wide, field.y + title + from, field.w - left_wide - right_wide,
                     high * share};
}

static void note(const ts_scene *scene, ts_area area, uint32_t row)
{
    ts_note_area(&((ts_scene *)scene)->canvas.places, TS_PLACE_ROW, row, area);
}

/* ---- whirl over speed -------------------------------------------------------------------------
 */

static void mark_speed(const chart *it, const ts_trace_panel *panel, double omega, const char *word,
                       bool left)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       x      = ts_trace_x(panel, omega * rpm);
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .halo   = true,
                                 .anchor = left ? TS_ANCHOR_RIGHT : TS_ANCHOR_LEFT,
                                 .colour = TS_COLOUR_INK};

    if (!isfinite(x) || x > panel->area.x + panel->area.w)
        return;
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK2);
    ts_use_dash(canvas, TS_DASH_PHANTOM);
    ts_draw_line(canvas, (ts_point){x, panel->area.y},
                 (ts_point){x, panel->area.y + panel->area.h});
    ts_write(canvas, (ts_point){x + (left ? -5.0 : 5.0), panel->area.y + 14.0}, word, &how);
}

static double draw_lines(chart *it, double from, double share)
{
    static const char *const names[2][TS_CAMPBELL_MODES] = {
        {"1 backward", "2 backward", "3 backward"}, {"1 forward", "2 forward", "3 forward"}};
    const ts_whirl_course *c = it->course;
    ts_trace_line          lines[LINES_MOST];
    size_t                 filled = 0;
    ts_trace_panel         panel  = {.area  = area_of(it, from, share),
                                     .until = c->Omega[c->speeds - 1] * rpm,
                                     .says  = "whirl, rpm, over the speed of the shaft",
                                     .times = true,
                                     .unit  = "rpm"};

    lines[filled++] = (ts_trace_line){.t      = it->scaled,
                                      .y      = c->Omega,
                                      .count  = (size_t)c->speeds,
                                      .stride = 1,
                                      .factor = rpm,
                                      .pen    = TS_PEN_2,
                                      .dash   = TS_DASH_CHAIN,
                                      .colour = TS_COLOUR_INK,
                                      .name   = "once a turn"};
    for (int m = 0; m < TS_CAMPBELL_MODES; m++)
        for (int sense = 0; sense < 2; sense++) {
            const double *y = &(sense ? c->forward : c->backward)[m * c->speeds];
            if (m > 0 && y[0] > 4.0 * c->Omega[c->speeds - 1] && y[0] > 1.5 * c->forward[0])
                continue;
            lines[filled++] = (ts_trace_line){.t      = it->scaled,
                                              .y      = y,
                                              .count  = (size_t)c->speeds,
                                              .stride = 1,
                                              .factor = rpm,
                                              .pen    = sense ? TS_PEN_4 : TS_PEN_3,
                                              .dash   = sense ? TS_DASH_NONE : TS_DASH_HIDDEN,
                                              .colour = TS_COLOUR_INK,
                                              .name   = names[sense][m]};
        }
    for (size_t i = 0; i < filled; i++)
        ts_trace_widen(&panel, &lines[i]);
    ts_trace_frame(it->scene, &panel);
    for (size_t i = 0; i < filled; i++)
        ts_trace_draw(it->scene, &panel, &lines[i]);
    ts_trace_names(it->scene, &panel, lines, filled);
    mark_speed(it, &panel, c->item->top, "highest speed", c->item->top < c->item->forward);
    mark_speed(it, &panel, c->item->forward, "first critical", c->item->top >= c->item->forward);
    note(it->scene, panel.area, 0);
    return from + panel.area.h + between;
}

static double draw_unbalance(chart *it, double from, double share)
{
    const ts_whirl_course *c     = it->course;
    const ts_trace_line    line  = {.t      = it->scaled,
                                    .y      = c->swing,
                                    .count  = (size_t)c->speeds,
                                    .stride = 1,
                                    .factor = 1e6,
                                    .pen    = TS_PEN_4,
                                    .colour = TS_COLOUR_INK,
                                    .name   = "unbalance"};
    ts_trace_panel         panel = {.area  = area_of(it, from, share),
                                    .until = c->Omega[c->speeds - 1] * rpm,
                                    .says  = "largest deflection by unbalance, um",
                                    .times = true,
                                    .unit  = "rpm"};

    ts_trace_widen(&panel, &line);
    ts_trace_frame(it->scene, &panel);
    ts_trace_draw(it->scene, &panel, &line);
    ts_trace_names(it->scene, &panel, &line, 1);
    mark_speed(it, &panel, c->item->top, "", false);
    note(it->scene, panel.area, 1);
    return from + panel.area.h + between;
}

/* ---- shapes -----------------------------------------------------------------------------------
 */

static void draw_bearings(const chart *it, const ts_trace_panel *panel, double unit)
{
    const ts_whirl_item *item   = it->course->item;
    ts_canvas           *canvas = &it->scene->canvas;
    const double         y      = ts_trace_y(panel, 0.0);

    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    for (int i = 0; i < item->rotor.bearing_count; i++) {
        const double x = ts_trace_x(panel, item->bearings[i].x * unit);
        ts_draw_line(canvas, (ts_point){x, y}, (ts_point){x - 6.0, y + 11.0});
        ts_draw_line(canvas, (ts_point){x, y}, (ts_point){x + 6.0, y + 11.0});
        ts_draw_line(canvas, (ts_point){x - 6.0, y + 11.0}, (ts_point){x + 6.0, y + 11.0});
    }
    for (int i = 0; i < item->rotor.joint_count; i++)
        ts_draw_dot(canvas, (ts_point){ts_trace_x(panel, item->joints[i].x * unit), y}, 3.6,
                    TS_COLOUR_INK2);
}

static void draw_shapes(chart *it, double from, double share)
{
    static const char *const names[]  = {"first", "second", "third"};
    static const ts_dash     dashes[] = {TS_DASH_NONE, TS_DASH_HIDDEN, TS_DASH_CHAIN};
    const ts_whirl_course   *c        = it->course;
    const double             unit     = ts_scene_in_unit(it->scene, 1.0, TS_KIND_LENGTH);
    double                  *x        = it->scaled + c->speeds;
    ts_trace_line            lines[TS_CAMPBELL_MODES];
    size_t                   filled = 0;
    ts_trace_panel           panel  = {.area  = area_of(it, from, share),
                                       .until = c->x[c->nodes - 1] * unit,
                                       .least = -1.0,
                                       .most  = 1.0,
                                       .says = "shapes at the forward criticals, along the shaft from the "
                                                          "spool; triangles: bearings, dots: splines",
                                       .times = true,
                                       .unit  = ts_scene_unit(it->scene, TS_KIND_LENGTH)};

    for (int i = 0; i < c->nodes; i++)
        x[i] = c->x[i] * unit;
    for (int m = 0; m < TS_CAMPBELL_MODES; m++)
        if (isfinite(c->criticals[1][m]))
            lines[filled++] = (ts_trace_line){.t      = x,
                                              .y      = &c->shapes[m * c->nodes],
                                              .count  = (size_t)c->nodes,
                                              .stride = 1,
                                              .factor = 1.0,
                                              .pen    = m == 0 ? TS_PEN_4 : TS_PEN_3,
                                              .dash   = dashes[m],
                                              .colour = TS_COLOUR_INK,
                                              .name   = names[m]};
    ts_trace_frame(it->scene, &panel);
    for (size_t i = 0; i < filled; i++)
        ts_trace_draw(it->scene, &panel, &lines[i]);
    ts_trace_names(it->scene, &panel, lines, filled);
    draw_bearings(it, &panel, unit);
    note(it->scene, panel.area, 2);
}

ts_status ts_draw_campbell(ts_scene *scene)
{
    chart           it;
    const ts_status status = begin(&it, scene);

    if (status != TS_OK)
        return status;
    if (it.course != NULL) {
        for (int i = 0; i < it.course->speeds; i++)
            it.scaled[i] = it.course->Omega[i] * rpm;
        double from = draw_lines(&it, 0.0, 0.5);
        from        = draw_unbalance(&it, from, 0.2);
        draw_shapes(&it, from, 0.3);
    }
    write_words(&it, "At which speeds does it whirl?",
                "Whirl in bearings alike in all directions; forward with the shaft, backward "
                "against it.  Unbalance bends it most where the forward line meets once a turn; "
                "what is taken for bearings, splines and balance stands in the assumptions.");
    ts_sheet_draw(scene, "Whirl", "whirl speeds, unbalance, shapes");
    return TS_OK;
}

/* ---- the map ----------------------------------------------------------------------------------
 */

static void draw_point(const chart *it, const ts_trace_panel *panel)
{
    const ts_whirl_course *c      = it->course;
    ts_canvas             *canvas = &it->scene->canvas;
    const double           unit   = ts_scene_in_unit(it->scene, 1.0, TS_KIND_LENGTH);
    const ts_tower_shaft  *tower  = &it->scene->drive->drive[c->item->drive].tower_shaft;
    const ts_point         at     = {ts_trace_x(panel, tower->outside.value * unit),
                                     ts_trace_y(panel, c->item->length * unit)};
    const ts_lettering     how    = {
               .size = TS_LOOK_TYPE_PX_SMALL, .bold = true, .halo = true, .colour = TS_COLOUR_INK};
    ts_buffer *line = ts_canvas_line(canvas);

    ts_draw_dot(canvas, at, 6.0, TS_COLOUR_INK);
    ts_buffer_add(line, "as it is");
    if (isfinite(c->item->mid)) {
        ts_buffer_add(line, ", mid bearing at ");
        ts_add_number(line, 100.0 * c->item->mid / c->item->length, 0);
        ts_buffer_add(line, " %");
    }
    ts_write(canvas, (ts_point){at.x + 10.0, at.y + 4.0}, ts_scene_kept(it->scene), &how);
}

static const char *place_name(const chart *it, int place)
{
    ts_buffer *line = ts_canvas_line(&it->scene->canvas);

    if (isnan(ts_map_places[place])) {
        ts_buffer_add(line, "no mid bearing");
    } else {
        ts_buffer_add(line, "mid bearing at ");
        ts_add_number(line, 100.0 * ts_map_places[place], 0);
        ts_buffer_add(line, " %");
    }
    return ts_scene_kept(it->scene);
}

static void draw_map(chart *it)
{
    static const ts_dash   dashes[TS_MAP_PLACES] = {TS_DASH_NONE, TS_DASH_HIDDEN, TS_DASH_NONE,
                                                    TS_DASH_CHAIN};
    const ts_whirl_course *c                     = it->course;
    const double           unit                  = ts_scene_in_unit(it->scene, 1.0, TS_KIND_LENGTH);
    ts_area                area                  = area_of(it, 0.0, 1.0);
    ts_trace_line          lines[TS_MAP_PLACES];

    area.h += 2.0 * between - 30.0;
    ts_buffer *says = ts_canvas_line(&it->scene->canvas);
    ts_buffer_print(says, "greatest length, %s, over the outside diameter of the tube",
                    ts_scene_unit(it->scene, TS_KIND_LENGTH));
    ts_trace_panel panel = {.area  = area,
                            .until = c->outside[c->diameters - 1] * unit,
                            .most  = c->item->length * unit,
                            .says  = ts_scene_kept(it->scene),
                            .times = true,
                            .unit  = ts_scene_unit(it->scene, TS_KIND_LENGTH)};
    for (int i = 0; i < c->diameters; i++)
        it->scaled[i] = c->outside[i] * unit;
    for (int p = 0; p < TS_MAP_PLACES; p++) {
        lines[p] = (ts_trace_line){.t      = it->scaled,
                                   .y      = &c->longest[p * c->diameters],
                                   .count  = (size_t)c->diameters,
                                   .stride = 1,
                                   .factor = unit,
                                   .pen    = p == 2 ? TS_PEN_4 : TS_PEN_3,
                                   .dash   = dashes[p],
                                   .colour = TS_COLOUR_INK,
                                   .name   = place_name(it, p)};
        /* A thin tube that cannot be built has no point; the others follow it. */
        while (lines[p].count > 0 && isnan(lines[p].y[0])) {
            lines[p].y++;
            lines[p].t++;
            lines[p].count--;
        }
        ts_trace_widen(&panel, &lines[p]);
    }
    ts_trace_frame(it->scene, &panel);
    for (int p = 0; p < TS_MAP_PLACES; p++)
        ts_trace_draw(it->scene, &panel, &lines[p]);
    ts_trace_names(it->scene, &panel, lines, TS_MAP_PLACES);
    draw_point(it, &panel);
    note(it->scene, panel.area, 0);
}

ts_status ts_draw_reach(ts_scene *scene)
{
    chart           it;
    const ts_status status = begin(&it, scene);

    if (status != TS_OK)
        return status;
    if (it.course != NULL && it.course->diameters > 0)
        draw_map(&it);
    write_words(&it, "Which radial shaft would be allowed?",
                "Below a line the first critical speed is above `whirl margin` times the highest "
                "speed.  Gearshafts and bearings stay, the bore keeps its share of the outside, "
                "lengths run from bevel apex to bevel apex, up to 2.5 m.");
    ts_sheet_draw(scene, "Whirl", "length and diameter allowed");
    return TS_OK;
}
