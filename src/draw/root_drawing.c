/* draw/root_drawing.c: how are chord, arm, load and fillet radius drawn into a tooth? */
#include "draw/dimension.h"
#include "draw/lettering.h"
#include "draw/mesh_choice.h"
#include "draw/root_view.h"

#include <math.h>

static const double thirty = M_PI / 6.0;

ts_point ts_root_point(const ts_root_panel *panel, ts_outline_point point)
{
    return (ts_point){panel->area.x + 0.5 * panel->area.w + point.x * panel->px,
                      panel->area.y + panel->area.h - (point.y - panel->base) * panel->px};
}

static ts_point at(const ts_root_panel *panel, double x, double y)
{
    return ts_root_point(panel, (ts_outline_point){x, y});
}

/* ---- the tooth between its neighbours ---------------------------------------------------- */

static void path_tooth(const ts_root_panel *panel, int tooth)
{
    const ts_root_section *section = &panel->section;
    const double           angle   = 2.0 * M_PI * tooth / section->form.z_n;
    for (size_t i = 0; i < 2 * section->count - 1; i++) {
        const bool       right = i < section->count;
        ts_outline_point p     = section->points[right ? i : 2 * section->count - 2 - i];
        if (!right)
            p.x = -p.x;
        ts_line_to(&panel->scene->canvas, at(panel, p.x * cos(angle) - p.y * sin(angle),
                                             p.x * sin(angle) + p.y * cos(angle)));
    }
}

static void path_teeth(const ts_root_panel *panel)
{
    for (int tooth = -1; tooth <= 1; tooth++)
        path_tooth(panel, tooth);
}

static void draw_outline(const ts_root_panel *panel)
{
    ts_canvas *canvas = &panel->scene->canvas;
    const int  sense =
        panel->scene->motion->shafts[panel->scene->train->gears[panel->gear].shaft].sense;
    path_teeth(panel);
    ts_line_to(canvas, at(panel, 0.0, 0.0));
    ts_fill(canvas, ts_tooth_tint(canvas, sense));
    path_teeth(panel);
    ts_use_pen(canvas, TS_PEN_3, TS_COLOUR_INK);
    ts_stroke(canvas);
}

static void draw_circles(const ts_root_panel *panel)
{
    ts_canvas     *canvas = &panel->scene->canvas;
    const ts_point axis   = at(panel, 0.0, 0.0);
    const struct {
        double  r;
        ts_dash dash;
    } circles[] = {{panel->section.r_tip, TS_DASH_NONE},
                   {0.5 * panel->section.form.d_en, TS_DASH_HIDDEN},
                   {0.5 * panel->section.form.d_n, TS_DASH_CHAIN}};
    for (size_t i = 0; i < sizeof circles / sizeof *circles; i++) {
        ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK3);
        ts_use_dash(canvas, circles[i].dash);
        ts_path_circle(canvas, axis, circles[i].r * panel->px);
        ts_stroke(canvas);
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK3);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    ts_draw_line(canvas, (ts_point){axis.x, panel->area.y},
                 (ts_point){axis.x, panel->area.y + panel->area.h});
}

/* ---- symbols with a number --------------------------------------------------------------- */

/* "s_Fn 5.012", its left end at `left`. */
static void write_value(const ts_root_panel *panel, ts_point left, const char *symbol,
                        const char *subscript, const char *value)
{
    ts_canvas         *canvas = &panel->scene->canvas;
    const ts_lettering how    = {.size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK};
    const double       right  = ts_write_symbol(canvas, left, symbol, subscript, TS_COLOUR_INK);
    if (value)
        ts_write(canvas, (ts_point){right + 5.0, left.y}, value, &how);
}

/* The same where circles run below it. */
static void write_on_paper(const ts_root_panel *panel, ts_point left, const char *symbol,
                           const char *subscript, const char *value)
{
    ts_canvas         *canvas = &panel->scene->canvas;
    const ts_lettering how    = {.size = TS_LOOK_TYPE_PX_SMALL};
    const double       wide   = ts_text_area(canvas, left, symbol, &how).w +
                        0.75 * ts_text_area(canvas, left, subscript, &how).w + 5.5;
    const ts_area area = ts_text_area(canvas, left, value, &how);
    ts_path_area(canvas, (ts_area){area.x - 2.0, area.y - 1.0, wide + area.w + 4.0, area.h + 3.0});
    ts_fill(canvas, TS_COLOUR_PAPER);
    write_value(panel, left, symbol, subscript, value);
}

static const char *length_words(const ts_root_panel *panel, double si)
{
    ts_scene  *scene = panel->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);
    ts_add_number(line, ts_scene_in_unit(scene, si, TS_KIND_LENGTH),
                  scene->units == TS_UNITS_US ? 4 : 3);
    return ts_scene_kept(scene);
}

static const char *angle_words(const ts_root_panel *panel, double rad)
{
    ts_buffer *line = ts_canvas_line(&panel->scene->canvas);
    ts_add_number(line, rad * 180.0 / M_PI, 2);
    ts_buffer_add(line, "\xC2\xB0");
    return ts_scene_kept(panel->scene);
}

/* ---- the section ------------------------------------------------------------------------- */

/* From a little below where they touch up to the middle of the tooth. */
static void draw_tangents(const ts_root_panel *panel)
{
    ts_canvas             *canvas  = &panel->scene->canvas;
    const ts_root_section *section = &panel->section;
    const double           half    = 0.5 * section->form.s_Fn;
    const double           rise = half / tan(thirty), below = 22.0 / panel->px;
    const ts_point         apex = at(panel, 0.0, section->chord_y + rise);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    for (int side = -1; side <= 1; side += 2)
        ts_draw_line(
            canvas, apex,
            at(panel, side * (half + below * sin(thirty)), section->chord_y - below * cos(thirty)));
    const double r = 46.0;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    cairo_new_sub_path(canvas->cr);
    cairo_arc(canvas->cr, apex.x, apex.y, r, 0.5 * M_PI, 0.5 * M_PI + thirty);
    ts_stroke(canvas);
    const ts_lettering how = {
        .size = TS_LOOK_TYPE_PX_SMALL, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK};
    ts_write(canvas, (ts_point){apex.x - 0.30 * r - 2.0, apex.y + r + 14.0}, "30\xC2\xB0", &how);
}

static void draw_chord(const ts_root_panel *panel)
{
    ts_scene              *scene   = panel->scene;
    ts_canvas             *canvas  = &scene->canvas;
    const ts_root_section *section = &panel->section;
    const double           half    = 0.5 * section->form.s_Fn;
    const ts_point         left    = at(panel, -half, section->chord_y),
                   right           = at(panel, half, section->chord_y);
    const double y                 = left.y + 40.0;
    ts_use_pen(canvas, TS_PEN_5, TS_COLOUR_INK);
    ts_draw_line(canvas, left, right);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    for (int side = 0; side < 2; side++) {
        const ts_point end = side ? right : left;
        ts_draw_line(canvas, (ts_point){end.x, end.y + 4.0}, (ts_point){end.x, y + 4.0});
        ts_path_circle(canvas, end, 3.6);
        ts_fill_and_stroke(canvas, TS_COLOUR_PAPER, TS_PEN_2, TS_COLOUR_INK);
    }
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){left.x, y}, (ts_point){right.x, y});
    ts_draw_head(canvas, (ts_point){left.x, y}, M_PI, TS_LOOK_FIGURE_ARROW_HEAD, TS_COLOUR_INK);
    ts_draw_head(canvas, (ts_point){right.x, y}, 0.0, TS_LOOK_FIGURE_ARROW_HEAD, TS_COLOUR_INK);
    write_value(panel, (ts_point){left.x + 14.0, y - 6.0}, "s", "Fn",
                length_words(panel, section->form.s_Fn));
}

/* From the level of the chord up to where the line of the load crosses the middle. */
static void draw_arm(const ts_root_panel *panel)
{
    ts_canvas             *canvas  = &panel->scene->canvas;
    const ts_root_section *section = &panel->section;
    const double           half    = 0.5 * section->form.s_Fn;
    const ts_point foot = at(panel, half, section->chord_y), top = at(panel, 0.0, section->load_y);
    const double   x = foot.x + 74.0;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){foot.x + 5.0, foot.y}, (ts_point){x + 5.0, foot.y});
    ts_draw_line(canvas, (ts_point){top.x + 4.0, top.y}, (ts_point){x + 5.0, top.y});
    ts_draw_line(canvas, (ts_point){x, foot.y}, (ts_point){x, top.y});
    ts_draw_head(canvas, (ts_point){x, foot.y}, 0.5 * M_PI, TS_LOOK_FIGURE_ARROW_HEAD,
                 TS_COLOUR_INK);
    ts_draw_head(canvas, (ts_point){x, top.y}, -0.5 * M_PI, TS_LOOK_FIGURE_ARROW_HEAD,
                 TS_COLOUR_INK);
    write_on_paper(panel, (ts_point){x + 8.0, top.y + 20.0}, "h", "Fe",
                   length_words(panel, section->form.h_Fe));
}

static void draw_load(const ts_root_panel *panel)
{
    ts_canvas             *canvas  = &panel->scene->canvas;
    const ts_root_section *section = &panel->section;
    const double           alpha   = section->form.alpha_Fen;
    const ts_point         flank   = ts_root_point(panel, section->load);
    const ts_point         middle  = at(panel, 0.0, section->load_y);
    const ts_point         tail    = ts_polar(flank, 92.0, -alpha);
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_use_dash(canvas, TS_DASH_CHAIN);
    ts_draw_line(canvas, middle, flank);
    ts_use_pen(canvas, TS_PEN_5, TS_COLOUR_INK);
    ts_draw_line(canvas, tail, ts_polar(flank, 8.0, -alpha));
    ts_draw_head(canvas, flank, M_PI - alpha, 14.0, TS_COLOUR_INK);
    ts_draw_dot(canvas, middle, 3.0, TS_COLOUR_INK);
    write_value(panel, (ts_point){tail.x - 4.0, tail.y - 10.0}, "F", "bn", NULL);
    /* Outside of the tooth, between the load and the level of its crossing. */
    const double r = ts_distance(middle, flank) + 54.0;
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    cairo_new_sub_path(canvas->cr);
    cairo_arc_negative(canvas->cr, middle.x, middle.y, r, 0.0, -alpha);
    ts_stroke(canvas);
    const ts_point mid = ts_polar(middle, r, -0.5 * alpha);
    write_on_paper(panel, (ts_point){mid.x + 8.0, mid.y + 4.0}, "\xCE\xB1", "Fen",
                   angle_words(panel, alpha));
}

/* The circle that fits the fillet where the left tangent touches it. */
static void draw_fillet(const ts_root_panel *panel)
{
    ts_canvas             *canvas  = &panel->scene->canvas;
    const ts_root_section *section = &panel->section;
    const ts_point         foot    = at(panel, -0.5 * section->form.s_Fn, section->chord_y);
    const double           r       = section->form.rho_F * panel->px;
    const ts_point         centre  = ts_polar(foot, r, M_PI + thirty);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_use_dash(canvas, TS_DASH_HIDDEN);
    cairo_new_sub_path(canvas->cr);
    cairo_arc(canvas->cr, centre.x, centre.y, r, thirty - 0.7, thirty + 1.5);
    ts_stroke(canvas);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(canvas, centre, foot);
    ts_draw_head(canvas, foot, thirty, TS_LOOK_FIGURE_ARROW_HEAD, TS_COLOUR_INK);
    ts_draw_dot(canvas, centre, 2.4, TS_COLOUR_INK);
    write_value(panel, (ts_point){centre.x - 24.0, centre.y - 10.0}, "\xCF\x81", "F",
                length_words(panel, section->form.rho_F));
}

void ts_root_draw_section(const ts_root_panel *panel)
{
    ts_canvas *canvas = &panel->scene->canvas;
    ts_clip_area(canvas, panel->area);
    draw_outline(panel);
    draw_circles(panel);
    draw_fillet(panel);
    draw_tangents(panel);
    draw_arm(panel);
    draw_load(panel);
    draw_chord(panel);
    ts_clip_end(canvas);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_path_area(canvas, panel->area);
    ts_stroke(canvas);
}
