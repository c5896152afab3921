/* draw/teeth_view.c: how does one mesh fill the sheet? */
#include "draw/teeth_view.h"

#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/mesh_choice.h"
#include "draw/sheet.h"

#include <math.h>

/* px: tables beside the drawing; words over and under it; names of circles at its sides. */
static const double tables = 384.0, head = 74.0, foot = 40.0, names = 84.0;
/* In modules, from the pitch point to the upper and lower edge: the base circles where they are
 * near, and the roots of the teeth in any case. */
static const double reach_least = 2.9, reach_most = 3.7;

/* ---- the mesh ---------------------------------------------------------------------------- */

static void trace(ts_teeth_view *view, int gear)
{
    const ts_outline_fault fault =
        ts_tooth_outline(&view->pose.frame, &view->pose.gear[gear],
                         fmax(TS_LOOK_FIGURE_OUTLINE_ERROR / view->px, 1e-9), view->scene->arena,
                         &view->shape[gear]);
    if (fault == TS_OUTLINE_FINE)
        return;
    view->shape[gear].count = 0;
    view->fault             = ts_outline_fault_says(fault);
}

static void pose_mesh(ts_teeth_view *view)
{
    const ts_mesh *mesh  = &view->scene->train->meshes[view->mesh];
    const int      sense = view->scene->motion->shafts[mesh->driver_shaft].sense;
    view->motion         = &view->scene->motion->meshes[view->mesh];
    view->load           = ts_scene_mesh_load(view->scene, view->mesh);
    view->fault          = view->motion->fault;
    view->posed          = view->motion->solved &&
                  ts_pair_pose_of(&view->motion->pair,
                                  (ts_pair_drive){.turn_1   = sense != 0 ? sense : 1,
                                                  .backward = ts_teeth_backward(view)},
                                  &view->pose);
    if (!view->posed && !view->fault)
        view->fault = "the geometry of this mesh is not known";
}

/* ---- words over and under the drawing ---------------------------------------------------- */

static void add_side(ts_buffer *line, const ts_scene *scene, uint32_t gear)
{
    ts_add_gear_name(line, scene, gear);
    ts_buffer_add(line, " (");
    ts_buffer_integer(line, scene->train->gears[gear].teeth.value);
    ts_buffer_add(line, " teeth)");
}

static const char *title_words(const ts_teeth_view *view)
{
    ts_scene      *scene = view->scene;
    const ts_mesh *mesh  = &scene->train->meshes[view->mesh];
    ts_buffer     *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "Mesh ");
    ts_add_mesh_name(line, scene, view->mesh);
    ts_buffer_add(line, ": ");
    add_side(line, scene, mesh->driver);
    ts_buffer_add(line, " below, ");
    add_side(line, scene, mesh->driven);
    ts_buffer_add(line, " above");
    return ts_scene_kept(scene);
}

static void add_line_load(ts_buffer *line, const ts_scene *scene, double load)
{
    const double pound_an_inch = 0.45359237 * 9.80665 / 0.0254; /* N/m, exact */
    const bool   us            = scene->units == TS_UNITS_US;
    if (!isfinite(load))
        return;
    ts_buffer_add(line, ", ");
    ts_add_number(line, us ? load / pound_an_inch : 1e-3 * load, load < 1e5 ? 1 : 0);
    ts_buffer_add(line, us ? "\xC2\xA0lbf/in of face width" : "\xC2\xA0N/mm of face width");
}

/* "take-off: 2310 N, 96.3 N/mm, 18.2 m/s; idler 4 drives with its leading flanks". */
static const char *load_words(const ts_teeth_view *view)
{
    ts_scene      *scene = view->scene;
    const ts_mesh *mesh  = &scene->train->meshes[view->mesh];
    ts_buffer     *line  = ts_canvas_line(&scene->canvas);
    ts_buffer_print(line, "%s: tangential force ", scene->drive->conditions[scene->condition].name);
    ts_add_shown(line, scene, view->load->F_t, TS_KIND_FORCE);
    add_line_load(line, scene, ts_mesh_line_load(scene, view->mesh, scene->condition));
    if (scene->motion->velocity) {
        ts_buffer_add(line, ", ");
        ts_add_shown(line, scene,
                     scene->motion->velocity[(size_t)scene->condition * scene->train->mesh_count +
                                             view->mesh],
                     TS_KIND_VELOCITY);
    }
    if (view->load->flow == TS_FLOW_NONE) {
        ts_buffer_add(line, "; it carries nothing here and is drawn as if the lower gear drove");
    } else {
        ts_buffer_add(line, "; ");
        ts_add_gear_name(line, scene, ts_teeth_backward(view) ? mesh->driven : mesh->driver);
        ts_buffer_add(line, " drives with the flanks that run ahead");
    }
    return ts_scene_kept(scene);
}

/* Which conditions load the other flanks? */
static const char *other_words(const ts_teeth_view *view)
{
    ts_scene  *scene = view->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);
    size_t     count = 0;
    for (uint32_t c = 0; c < scene->drive->condition_count; c++) {
        const ts_mesh_load *load =
            &scene->power->mesh[(size_t)c * scene->train->mesh_count + view->mesh];
        if (load->flow == TS_FLOW_NONE || load->flow == view->load->flow)
            continue;
        ts_buffer_print(line, count++ > 0 ? ", %s" : "The other flanks carry in: %s",
                        scene->drive->conditions[c].name);
    }
    if (count == 0)
        ts_buffer_add(line, "The same flanks carry in every condition that loads the mesh");
    if (scene->options->mesh == 0)
        ts_buffer_print(line, ". Shown as the cylindrical mesh %s", ts_choice_says(scene));
    ts_buffer_add(line, ".");
    return ts_scene_kept(scene);
}

static void write_head(const ts_teeth_view *view)
{
    ts_canvas         *canvas = &view->scene->canvas;
    const ts_area      field  = view->scene->field;
    const double       width  = field.w - tables - 36.0;
    const ts_lettering lead   = {
          .size = TS_LOOK_TYPE_PX_LEAD, .bold = true, .colour = TS_COLOUR_INK, .width = width};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_SMALL, .colour = TS_COLOUR_INK2, .width = width, .lines = 2};
    ts_point at = {field.x + 12.0, field.y + 24.0};
    ts_write(canvas, at, title_words(view), &lead);
    at.y += 17.0;
    const ts_area set = ts_write(canvas, at, load_words(view), &small);
    at.y              = set.y + set.h + 11.0;
    ts_write(canvas, at, other_words(view), &small);
}

static const char *touch_words(const ts_teeth_view *view)
{
    const ts_cylindrical_pair *pair = &view->pose.pair;
    if (pair->rho_D1 > pair->rho_E1)
        return "a pair of teeth touches at C";
    return "one pair of teeth touches at D, the next at A";
}

static const char *sense_words(const ts_teeth_view *view)
{
    const ts_mesh *mesh = &view->scene->train->meshes[view->mesh];
    return view->scene->motion->shafts[mesh->driver_shaft].sense != 0
               ? "seen from behind, turned until the line of centres stands upright"
               : "its sense of rotation is not known and was taken as that of the arrow";
}

/* What the picture shows, but a glance may miss. */
static void add_clashes(const ts_teeth_view *view, ts_buffer *line)
{
    for (int gear = 0; view->posed && gear < 2; gear++) {
        if (view->shape[gear].undercut)
            ts_buffer_print(line, " Gear %d is undercut.", gear + 1);
        if (ts_teeth_involute_left(view, gear) < -1e-9)
            ts_buffer_print(line, " The path reaches past the end of the involute of gear %d.",
                            gear + 1);
    }
}

static void write_foot(const ts_teeth_view *view)
{
    ts_scene          *scene = view->scene;
    const ts_lettering how   = {.size   = TS_LOOK_TYPE_PX_TICK,
                                .colour = TS_COLOUR_INK2,
                                .width  = scene->field.w - tables - 36.0,
                                .lines  = 3};
    ts_buffer         *line  = ts_canvas_line(&scene->canvas);
    if (view->posed)
        ts_buffer_print(line,
                        "Transverse section, %s. Teeth as the rack cuts them; %s. Band along a "
                        "flank: where it works; broad: where it carries alone.%s",
                        sense_words(view), touch_words(view),
                        scene->drive->sight.value == TS_FROM_FRONT
                            ? " The file itself is seen from the front."
                            : "");
    add_clashes(view, line);
    if (view->fault)
        ts_buffer_print(line, "%s%s: %s.", line->length ? " " : "",
                        view->posed ? "Of this mesh" : "There is no picture", view->fault);
    ts_write(&scene->canvas,
             (ts_point){scene->field.x + 12.0, scene->field.y + scene->field.h - foot + 14.0},
             ts_scene_kept(scene), &how);
}

/* ---- the sheet --------------------------------------------------------------------------- */

static void divide(ts_teeth_view *view)
{
    const ts_area field = view->scene->field;
    view->column =
        (ts_area){field.x + field.w - tables - 8.0, field.y + 8.0, tables, field.h - 8.0};
    view->picture = (ts_area){field.x + 4.0 + names, field.y + head,
                              field.w - tables - 20.0 - 2.0 * names, field.h - head - foot};
    if (!view->posed)
        return;
    const ts_cylindrical_pair *pair = &view->pose.pair;
    const double               m_n  = view->pose.frame.m_n;
    const double base = 0.5 * fmax(pair->d_w1 - pair->d_b1, pair->d_w2 - pair->d_b2) / m_n + 0.35;
    const double path = cos(pair->alpha_wt) *
                        fmax(fabs(pair->rho_E1 - pair->rho_C1), fabs(pair->rho_C1 - pair->rho_A1));
    view->px = 0.5 * view->picture.h / (m_n * fmin(reach_most, fmax(reach_least, base)));
    if (path > 0.0) /* A and E in any case */
        view->px = fmin(view->px, (0.5 * view->picture.w - 34.0) / path);
    view->pitch = (ts_point){view->picture.x + 0.5 * view->picture.w,
                             view->picture.y + 0.5 * view->picture.h};
    trace(view, 0);
    trace(view, 1);
}

/* The scale of the sheet on its A3 paper, as "12.3 : 1". */
static void say_scale(ts_teeth_view *view)
{
    ts_scene  *scene = view->scene;
    ts_buffer *line  = ts_canvas_line(&scene->canvas);
    if (!view->posed)
        return;
    ts_buffer_fixed(line, view->px / (1e3 * scene->canvas.mm), 2);
    ts_buffer_add(line, " : 1 on A3");
    scene->scale = ts_scene_kept(scene);
}

static void draw_number(const ts_teeth_view *view, int gear)
{
    ts_canvas     *canvas = &view->scene->canvas;
    const ts_mesh *mesh   = &view->scene->train->meshes[view->mesh];
    const uint32_t shaft  = gear == 0 ? mesh->driver_shaft : mesh->driven_shaft;
    const double   r      = TS_LOOK_FIGURE_NUMBER_RADIUS;
    const ts_point at     = {view->pitch.x, gear == 0 ? view->picture.y + view->picture.h - 22.0
                                                      : view->picture.y + 22.0};
    ts_draw_number_circle(canvas, at, r, view->scene->train->shafts[shaft].number);
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .bold   = true,
                              .colour = TS_COLOUR_INK,
                              .width  = 0.5 * view->picture.w - 40.0};
    ts_add_gear_name(ts_canvas_line(canvas), view->scene, gear == 0 ? mesh->driver : mesh->driven);
    ts_write(canvas, (ts_point){at.x + r + 8.0, at.y + 4.0}, ts_scene_kept(view->scene), &how);
    ts_note_area(&canvas->places, TS_PLACE_NUMBER, shaft,
                 (ts_area){at.x - r, at.y - r, 2.0 * r, 2.0 * r});
}

static void draw_machine(const ts_teeth_view *view)
{
    ts_canvas *canvas = &view->scene->canvas;
    ts_clip_area(canvas, view->picture);
    ts_teeth_draw_gears(view);
    ts_clip_end(canvas);
    ts_teeth_draw_circles(view);
    ts_teeth_draw_path(view);
    draw_number(view, 0);
    draw_number(view, 1);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_path_area(canvas, view->picture);
    ts_stroke(canvas);
}

ts_status ts_draw_teeth(ts_scene *scene)
{
    ts_teeth_view view = {.scene = scene, .mesh = ts_choose_mesh(scene)};
    const double  height =
        ts_sheet_height(scene, fmax(ts_teeth_tables_height() + 190.0, head + foot + 500.0));
    ts_sheet_divide(scene, height);
    if (view.mesh != TS_NOWHERE) {
        pose_mesh(&view);
        divide(&view);
        say_scale(&view);
    }
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    if (view.mesh == TS_NOWHERE) {
        ts_write_no_mesh(scene);
    } else {
        write_head(&view);
        if (view.posed)
            draw_machine(&view);
        write_foot(&view);
        ts_teeth_draw_tables(&view);
    }
    ts_sheet_draw(scene, "Teeth in mesh", "transverse section, from behind");
    return TS_OK;
}
