/* draw/mesh_choice.c: which mesh deserves the sheet when nobody asks for one? */
#include "draw/mesh_choice.h"

#include "draw/lettering.h"

#include <math.h>
#include <string.h>

static const ts_mesh_load *load_of(const ts_scene *scene, uint32_t mesh, uint32_t condition)
{
    return &scene->power->mesh[(size_t)condition * scene->train->mesh_count + mesh];
}

static double width_of(const ts_scene *scene, uint32_t mesh)
{
    const ts_gear *a = &scene->train->gears[scene->train->meshes[mesh].driver];
    const ts_gear *b = &scene->train->gears[scene->train->meshes[mesh].driven];
    if (!ts_measure_known(a->face) || !ts_measure_known(b->face))
        return (double)NAN;
    return fmin(a->face.value, b->face.value);
}

double ts_mesh_line_load(const ts_scene *scene, uint32_t mesh, uint32_t condition)
{
    const double b = width_of(scene, mesh);
    return b > 0.0 ? load_of(scene, mesh, condition)->F_t / b : (double)NAN;
}

/* The greatest over all conditions, or that of the one asked for; negative: there is none. */
static double highest_line_load(const ts_scene *scene, uint32_t mesh)
{
    double       most = -1.0;
    const size_t all  = scene->drive->condition_count;
    if (scene->options->condition >= 0)
        return fmax(most, ts_mesh_line_load(scene, mesh, (uint32_t)scene->options->condition));
    for (uint32_t c = 0; c < all; c++)
        most = fmax(most, ts_mesh_line_load(scene, mesh, c)); /* fmax passes NaN over */
    return most;
}

/* A solved mesh before one that is not; among them the one with the highest line load. */
static uint32_t find_highest(const ts_scene *scene)
{
    uint32_t best = TS_NOWHERE;
    double   most = -INFINITY;
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        if (scene->train->meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        const double load = scene->motion->meshes[m].solved ? highest_line_load(scene, m) : -2.0;
        if (load > most) {
            most = load;
            best = m;
        }
    }
    return best;
}

bool ts_judgement_of_teeth(const ts_judgement *judgement)
{
    return judgement->symbol && strncmp(judgement->symbol, "S_", 2) == 0;
}

static uint32_t mesh_at(const ts_scene *scene, ts_node node)
{
    for (uint32_t m = 0; m < scene->train->mesh_count; m++)
        if (scene->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            scene->train->meshes[m].node == node)
            return m;
    return TS_NOWHERE;
}

/* The judgement with the least reserve of the teeth of a cylindrical mesh; NULL: there is none. */
static const ts_judgement *governing(const ts_scene *scene)
{
    const ts_drawing_subject *subject = scene->subject;
    const int32_t             wanted  = scene->options->condition;
    const ts_judgement       *least   = NULL;
    for (size_t i = 0; subject->judgements && i < subject->judgement_count; i++) {
        const ts_judgement *one = &subject->judgements[i];
        if (ts_judgement_of_teeth(one) && one->condition >= 0 &&
            (wanted < 0 || one->condition == wanted) && !isnan(one->margin) &&
            mesh_at(scene, one->node) != TS_NOWHERE && (!least || one->margin < least->margin))
            least = one;
    }
    return least;
}

static void choose_condition(ts_scene *scene, uint32_t mesh)
{
    double most = -1.0;
    if (scene->options->condition >= 0)
        return;
    for (uint32_t c = 0; c < scene->drive->condition_count; c++) {
        const double force = load_of(scene, mesh, c)->F_t;
        if (force > most) {
            most             = force;
            scene->condition = c;
        }
    }
}

uint32_t ts_choose_mesh(ts_scene *scene)
{
    const ts_judgement *least = scene->options->mesh != 0 ? NULL : governing(scene);
    if (least) {
        scene->condition = (uint32_t)least->condition;
        return mesh_at(scene, least->node);
    }
    const uint32_t mesh =
        scene->options->mesh != 0 ? mesh_at(scene, scene->options->mesh) : find_highest(scene);
    if (mesh != TS_NOWHERE)
        choose_condition(scene, mesh);
    return mesh;
}

const char *ts_choice_says(const ts_scene *scene)
{
    const bool any = scene->options->condition < 0;
    if (scene->options->mesh != 0)
        return "";
    if (governing(scene))
        return any ? "with the least reserve of its teeth in any condition"
                   : "with the least reserve of its teeth in this condition";
    return any ? "with the highest load a width of face in any condition"
               : "with the highest load a width of face in this condition";
}

static void add_shaft(ts_buffer *out, const ts_scene *scene, uint32_t shaft)
{
    const ts_shaft *one = &scene->train->shafts[shaft];
    if (one->number > 0)
        ts_buffer_print(out, "%u", one->number);
    else
        ts_buffer_add(out, one->name);
}

void ts_add_mesh_name(ts_buffer *out, const ts_scene *scene, uint32_t mesh)
{
    add_shaft(out, scene, scene->train->meshes[mesh].driver_shaft);
    ts_buffer_add(out, "\xE2\x80\x93");
    add_shaft(out, scene, scene->train->meshes[mesh].driven_shaft);
}

void ts_add_gear_name(ts_buffer *out, const ts_scene *scene, uint32_t gear)
{
    const ts_gear *one = &scene->train->gears[gear];
    ts_buffer_add(out, scene->train->shafts[one->shaft].name);
    if (one->role == TS_GEAR_STEP)
        ts_buffer_add(out, ", step");
    if (one->role == TS_GEAR_STEP && one->step > 1)
        ts_buffer_print(out, " %u", one->step);
}

void ts_write_no_mesh(ts_scene *scene)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_LEAD,
                              .bold   = true,
                              .colour = TS_COLOUR_INK,
                              .width  = scene->field.w - 24.0};
    ts_write(&scene->canvas, (ts_point){scene->field.x + 12.0, scene->field.y + 24.0},
             scene->options->mesh != 0 ? "There is no cylindrical mesh of this name."
                                       : "This drive has no cylindrical mesh.",
             &how);
}

ts_colour ts_tooth_tint(const ts_canvas *canvas, int sense)
{
    if (canvas->ground == TS_GROUND_PRINT || canvas->ground == TS_GROUND_CONTRAST)
        return TS_COLOUR_SELECT_BG;
    return sense < 0 ? TS_COLOUR_GEAR_CW : sense > 0 ? TS_COLOUR_GEAR_CCW : TS_COLOUR_SELECT_BG;
}
