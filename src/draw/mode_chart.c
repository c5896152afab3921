/* draw/mode_chart.c: how do the parts of a drive swing in torsion, mode by mode?
 *
 * A panel a mode: parts from the spool outwards side by side, each with a stem as long as its angle
 * seen from the spool, joined as springs join them.
 */
#include "draw/mode_chart.h"

#include "draw/chart_words.h"
#include "draw/lettering.h"
#include "draw/sheet.h"

#include <math.h>

enum { PANELS_MOST = 5 };

/* px */
static const double title = 34.0, left_wide = 200.0, panel_least = 96.0, panel_most = 150.0,
                    names_high = 190.0, foot = 52.0;

static const double two_pi = 6.28318530717958647693;

typedef struct chart {
    ts_scene             *scene;
    const ts_drive_twist *twist;
    size_t                panels;
    ts_area               area;
    double                high;
} chart;

/* The first tree that could be computed. */
static const ts_drive_twist *tree_of(const ts_scene *scene)
{
    for (size_t i = 0; i < scene->subject->twist_count; i++) {
        const ts_drive_twist *twist = &scene->subject->twists[i];
        if (twist->missing == NULL && twist->fault == TS_TWIST_FINE &&
            twist->modes.count > twist->modes.rigid)
            return twist;
    }
    return NULL;
}

/* ---- places -----------------------------------------------------------------------------------
 */

static double x_of(const chart *it, size_t body)
{
    const double step = (it->area.w - left_wide - 40.0) / (double)it->twist->model.body_count;
    return it->area.x + left_wide + step * ((double)body + 0.5);
}

static double middle_of(const chart *it, size_t panel)
{
    return it->area.y + it->high * ((double)panel + 0.5);
}

/* Seen from the spool, the largest of the mode is 1. */
static double swing_of(const ts_drive_twist *twist, size_t mode, size_t body)
{
    const size_t  n     = twist->model.body_count;
    const double *shape = &twist->modes.shape[mode * n];
    double        most  = 0.0;
    for (size_t i = 0; i < n; i++)
        most = fmax(most, fabs(shape[i] / twist->parts[i].ratio));
    return shape[body] / twist->parts[body].ratio / most;
}

static ts_point point_of(const chart *it, size_t panel, size_t body)
{
    const size_t mode = it->twist->modes.rigid + panel;
    return (ts_point){x_of(it, body),
                      middle_of(it, panel) - 0.42 * it->high * swing_of(it->twist, mode, body)};
}

/* ---- drawing ----------------------------------------------------------------------------------
 */

static void draw_springs(const chart *it, size_t panel)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const size_t m      = it->twist->model.spring_count;
    const size_t mode   = it->twist->modes.rigid + panel;
    for (size_t i = 0; i < m; i++) {
        const bool soft = it->twist->modes.strain[mode * m + i] > 0.25;
        ts_use_pen(canvas, soft ? TS_PEN_4 : TS_PEN_1, soft ? TS_COLOUR_INK : TS_COLOUR_INK3);
        ts_draw_line(canvas, point_of(it, panel, it->twist->joints[i].from),
                     point_of(it, panel, it->twist->joints[i].to));
    }
}

static void draw_bodies(const chart *it, size_t panel)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double zero   = middle_of(it, panel);
    for (size_t i = 0; i < it->twist->model.body_count; i++) {
        const ts_point at = point_of(it, panel, i);
        ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK2);
        ts_draw_line(canvas, (ts_point){at.x, zero}, at);
        ts_draw_dot(canvas, at, 3.6, TS_COLOUR_INK);
    }
}

static void write_panel(const chart *it, size_t panel)
{
    ts_scene          *scene  = it->scene;
    ts_canvas         *canvas = &scene->canvas;
    const size_t       mode = it->twist->modes.rigid + panel, m = it->twist->model.spring_count;
    const double       y     = middle_of(it, panel);
    const ts_lettering bold  = {.bold = true, .colour = TS_COLOUR_INK, .width = left_wide - 24.0};
    const ts_lettering small = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                .colour = TS_COLOUR_INK2,
                                .width  = left_wide - 24.0,
                                .lines  = 3};
    size_t             soft  = 0;
    ts_buffer         *line  = ts_canvas_line(canvas);
    const double       f     = it->twist->modes.omega[mode] / two_pi;
    ts_buffer_print(line, "%zu:  ", panel + 1);
    ts_add_number(line, f, f < 100.0 ? 1 : 0);
    ts_buffer_add(line, " Hz");
    ts_write(canvas, (ts_point){it->area.x + 12.0, y - 14.0}, ts_scene_kept(scene), &bold);
    for (size_t i = 1; i < m; i++)
        if (it->twist->modes.strain[mode * m + i] > it->twist->modes.strain[mode * m + soft])
            soft = i;
    const ts_twist_joint *joint = &it->twist->joints[soft];
    line                        = ts_canvas_line(canvas);
    ts_add_number(line, 100.0 * it->twist->modes.strain[mode * m + soft], 0);
    ts_buffer_print(line, " %% of the strain from %s to %s", it->twist->parts[joint->from].name,
                    it->twist->parts[joint->to].name);
    ts_write(canvas, (ts_point){it->area.x + 12.0, y + 6.0}, ts_scene_kept(scene), &small);
}

static void draw_panel(const chart *it, size_t panel)
{
    ts_canvas   *canvas = &it->scene->canvas;
    const double left = it->area.x + left_wide, right = it->area.x + it->area.w - 40.0;
    const double zero = middle_of(it, panel), top = it->area.y + it->high * (double)panel;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
    ts_draw_line(canvas, (ts_point){it->area.x, top}, (ts_point){it->area.x + it->area.w, top});
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_draw_line(canvas, (ts_point){left, zero}, (ts_point){right, zero});
    draw_springs(it, panel);
    draw_bodies(it, panel);
    write_panel(it, panel);
    ts_note_area(&canvas->places, TS_PLACE_ROW, (uint32_t)panel,
                 (ts_area){it->area.x, top, it->area.w, it->high});
}

static void write_names(const chart *it)
{
    ts_canvas         *canvas = &it->scene->canvas;
    const double       y      = it->area.y + it->high * (double)it->panels;
    const double       step   = x_of(it, 1) - x_of(it, 0);
    const ts_lettering how    = {.size    = TS_LOOK_TYPE_PX_SMALL,
                                 .upright = true,
                                 .anchor  = TS_ANCHOR_RIGHT,
                                 .colour  = TS_COLOUR_INK,
                                 .width   = names_high - 16.0};
    if (step < 14.0)
        return;
    for (size_t i = 0; i < it->twist->model.body_count; i++)
        ts_write(canvas, (ts_point){x_of(it, i) + 4.0, y + 8.0}, it->twist->parts[i].name, &how);
}

static void write_words(const chart *it)
{
    ts_scene  *scene = it->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);
    if (it->twist == NULL)
        ts_buffer_add(line, "No torsional modes could be computed.");
    else
        ts_buffer_print(line,
                        "How does the %s drive swing in torsion?  %s, the %zu slowest of %zu modes",
                        scene->drive->spools[scene->drive->drive[it->twist->drive].spool].name,
                        it->twist->cranked ? "Its starter engaged" : "Running", it->panels,
                        it->twist->modes.count - it->twist->modes.rigid);
    ts_chart_title(scene);
    ts_chart_foot(
        scene, foot - 22.0, 2,
        "Stem: angle of the part seen from the spool, the largest of a mode full; up and down "
        "are opposite senses of swinging.  Lines join what springs join; heavy: more than a "
        "quarter of the strain energy.");
}

ts_status ts_draw_modes(ts_scene *scene)
{
    chart it = {.scene = scene, .twist = tree_of(scene)};
    if (it.twist != NULL)
        it.panels = it.twist->modes.count - it.twist->modes.rigid;
    it.panels              = it.panels > PANELS_MOST ? PANELS_MOST : it.panels;
    const double    rest   = title + foot + (it.twist != NULL ? names_high : 0.0);
    const ts_status status = ts_chart_begin(scene, rest + panel_least * (double)it.panels);
    if (status != TS_OK)
        return status;
    it.area = scene->field;
    it.area.y += title;
    if (it.panels > 0)
        it.high = fmin(panel_most, (scene->field.h - rest) / (double)it.panels);
    for (size_t panel = 0; panel < it.panels; panel++)
        draw_panel(&it, panel);
    if (it.panels > 0)
        write_names(&it);
    write_words(&it);
    ts_sheet_draw(scene, "Torsion", "shapes of the slowest modes");
    return TS_OK;
}
