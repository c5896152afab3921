/* Where does every part stand, how does it turn, and what does it carry? */
#include "draw/view.h"

#include "check/cowl.h"

#include <math.h>

enum { COWL_STEPS = 24 };

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

/* ---- over the conditions -------------------------------------------------------------------- */

typedef double (*asked_value)(const ts_view *view, uint32_t item, uint32_t condition);

static void list_over(const ts_view *view, const char *key, ts_kind kind, asked_value value,
                      uint32_t item)
{
    ts_json_key(view->json, key);
    ts_json_array(view->json);
    for (uint32_t c = 0; c < view->scene->drive->condition_count; c++) {
        const double shown = ts_scene_in_unit(view->scene, value(view, item, c), kind);
        if (isfinite(shown))
            ts_json_number(view->json, shown);
        else
            ts_json_null(view->json);
    }
    ts_json_end(view->json, ']');
}

static double speed_of(const ts_view *view, uint32_t shaft, uint32_t c)
{
    return view->scene->motion->speed[(size_t)c * view->scene->train->shaft_count + shaft];
}

static double power_of_mesh(const ts_view *view, uint32_t mesh, uint32_t c)
{
    return view->scene->power->mesh[(size_t)c * view->scene->train->mesh_count + mesh].P[0];
}

static double power_of_pad(const ts_view *view, uint32_t pad, uint32_t c)
{
    return view->scene->power->pad[(size_t)c * view->scene->train->pad_count + pad].P;
}

static double torque_of_pad(const ts_view *view, uint32_t pad, uint32_t c)
{
    return view->scene->power->pad[(size_t)c * view->scene->train->pad_count + pad].T;
}

static double power_of_spool(const ts_view *view, uint32_t spool, uint32_t c)
{
    return view->scene->power->spool[(size_t)c * view->scene->power->spool_count + spool].P;
}

static void point(const ts_view *view, double x, double y)
{
    ts_json_array(view->json);
    ts_json_number(view->json, x);
    ts_json_number(view->json, y);
    ts_json_end(view->json, ']');
}

/* ---- round the drive ------------------------------------------------------------------------ */

static void write_cowl(const ts_view *view)
{
    const ts_engine *engine = &view->scene->drive->engine;
    ts_json_key(view->json, "cowl");
    ts_json_array(view->json);
    for (size_t i = 1; i < engine->cowl_count; i++) {
        const ts_cowl_point *a = &engine->cowl[i - 1], *b = a + 1;
        const double         turn = remainder(b->clock.value - a->clock.value, 2.0 * M_PI);
        for (int k = i == 1 ? 0 : 1; k <= COWL_STEPS; k++) {
            const double share = (double)k / COWL_STEPS;
            const double clock = a->clock.value + share * turn;
            const double r     = a->radius.value + share * (b->radius.value - a->radius.value);
            if (isfinite(clock) && isfinite(r))
                point(view, r * sin(clock), r * cos(clock));
        }
    }
    ts_json_end(view->json, ']');
}

static void write_keep_outs(const ts_view *view)
{
    static const char *const faces[] = {"front", "rear", "both"};
    const ts_engine         *engine  = &view->scene->drive->engine;
    ts_json_key(view->json, "keep_outs");
    ts_json_array(view->json);
    for (size_t i = 0; i < engine->keep_out_count; i++) {
        const ts_keep_out *one = &engine->keep_out[i];
        ts_json_object(view->json);
        ts_view_word(view, "name", one->name.text);
        ts_view_address(view, "address", one->node);
        ts_view_number(view, "x", known(one->radius) * sin(known(one->clock)));
        ts_view_number(view, "y", known(one->radius) * cos(known(one->clock)));
        ts_view_number(view, "r", known(one->size));
        ts_view_word(view, "face", one->face.value >= 0 ? faces[one->face.value] : "both");
        ts_json_end(view->json, '}');
    }
    ts_json_end(view->json, ']');
}

static void write_engine(const ts_view *view)
{
    ts_json_key(view->json, "engine");
    ts_json_object(view->json);
    ts_view_number(view, "casing", known(view->scene->drive->engine.casing));
    write_cowl(view);
    write_keep_outs(view);
    ts_json_end(view->json, '}');
}

static void write_spools(const ts_view *view)
{
    const ts_train *train = view->scene->train;
    ts_json_key(view->json, "spools");
    ts_json_array(view->json);
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        if (train->shafts[s].kind != TS_SHAFT_SPOOL)
            continue;
        ts_json_object(view->json);
        ts_view_word(view, "name", view->scene->drive->spools[train->shafts[s].spool].name);
        ts_view_address(view, "address", train->shafts[s].node);
        ts_view_count(view, "sense", view->scene->motion->shafts[s].sense);
        list_over(view, "speed", TS_KIND_ROTATIONAL_SPEED, speed_of, s);
        list_over(view, "power", TS_KIND_POWER, power_of_spool, train->shafts[s].spool);
        ts_json_end(view->json, '}');
    }
    ts_json_end(view->json, ']');
}

/* ---- shafts --------------------------------------------------------------------------------- */

static void write_place(const ts_view *view, uint32_t s)
{
    const ts_shaft_motion *turn = &view->scene->motion->shafts[s];
    ts_view_number(view, "x", turn->placed ? turn->x : (double)NAN);
    ts_view_number(view, "y", turn->placed ? turn->y : (double)NAN);
    ts_view_number(view, "r", view->face->shafts[s].r_gear);
    ts_view_number(view, "r_main", view->face->shafts[s].r_main);
    ts_view_number(view, "turns", ts_rational_value(turn->ratio));
    ts_view_count(view, "sense", turn->sense);
}

static void write_shaft(const ts_view *view, uint32_t s)
{
    static const char *const kinds[] = {"spool", "tower", "box"};
    const ts_shaft          *shaft   = &view->scene->train->shafts[s];
    ts_json_object(view->json);
    ts_view_word(view, "name", shaft->name);
    ts_view_word(view, "kind", kinds[shaft->kind]);
    ts_view_address(view, "address", shaft->node);
    ts_view_count(view, "line", view->scene->subject->source->nodes[shaft->node].line);
    ts_view_count(view, "number", shaft->number);
    ts_view_word(view, "spool", view->scene->drive->spools[shaft->spool].name);
    ts_view_count(view, "driver",
                  shaft->mesh == TS_NOWHERE
                      ? -1
                      : (int64_t)view->scene->train->meshes[shaft->mesh].driver_shaft);
    write_place(view, s);
    list_over(view, "speed", TS_KIND_ROTATIONAL_SPEED, speed_of, s);
    if (shaft->kind == TS_SHAFT_TOWER)
        ts_view_number(view, "outside",
                       known(view->scene->drive->drive[shaft->drive].tower_shaft.outside));
    ts_json_end(view->json, '}');
}

/* ---- gears and meshes ----------------------------------------------------------------------- */

static void write_shape(const ts_view *view, const ts_tooth_shape *shape)
{
    ts_json_key(view->json, "half_tooth");
    ts_json_array(view->json);
    for (size_t i = 0; i < shape->count; i++)
        point(view, round(shape->points[i].x * 1e7) * 1e-7, round(shape->points[i].y * 1e7) * 1e-7);
    ts_json_end(view->json, ']');
}

static void write_gear(const ts_view *view, uint32_t g)
{
    static const char *const roles[] = {"bevel", "main", "step"};
    const ts_gear           *gear    = &view->scene->train->gears[g];
    const ts_face_gear      *drawn   = &view->face->gears[g];
    ts_json_object(view->json);
    ts_view_count(view, "shaft", gear->shaft);
    ts_view_word(view, "role", roles[gear->role]);
    ts_view_address(view, "address", gear->node);
    ts_view_count(view, "teeth", gear->teeth.value);
    ts_view_count(view, "plane", drawn->plane);
    ts_view_number(view, "face", known(gear->face));
    ts_view_number(view, "r", drawn->r);
    ts_view_number(view, "r_tip", drawn->r_tip);
    ts_view_number(view, "r_root", drawn->shape.count > 0 ? drawn->shape.r_root : (double)NAN);
    ts_view_number(view, "phase", drawn->phase);
    write_shape(view, &drawn->shape);
    ts_json_end(view->json, '}');
}

static void write_mesh(const ts_view *view, uint32_t m)
{
    const ts_mesh        *mesh   = &view->scene->train->meshes[m];
    const ts_mesh_motion *motion = &view->scene->motion->meshes[m];
    ts_json_object(view->json);
    ts_view_word(view, "kind", mesh->kind == TS_MESH_BEVEL ? "bevel" : "cylindrical");
    ts_view_address(view, "address", mesh->node);
    ts_view_count(view, "driver", mesh->driver_shaft);
    ts_view_count(view, "driven", mesh->driven_shaft);
    ts_view_word(view, "fault", motion->fault);
    ts_view_number(view, "r_1", motion->solved ? motion->r_1 : (double)NAN);
    list_over(view, "power", TS_KIND_POWER, power_of_mesh, m);
    ts_json_end(view->json, '}');
}

/* ---- pads ----------------------------------------------------------------------------------- */

static const char *turn_name(int sense)
{
    return sense > 0 ? "ccw" : sense < 0 ? "cw" : NULL;
}

static void write_accessory(const ts_view *view, const ts_accessory *accessory)
{
    ts_view_address(view, "accessory", accessory->node);
    const bool told = accessory->turns.standing == TS_GIVEN;
    ts_view_word(view, "wanted",
                 told && accessory->turns.value == TS_CCW  ? "ccw"
                 : told && accessory->turns.value == TS_CW ? "cw"
                                                           : NULL);
    ts_view_number(view, "radius", known(accessory->body.radius));
    ts_view_number(view, "length", known(accessory->body.length));
}

static void write_pad(const ts_view *view, uint32_t p)
{
    const ts_pad *pad = &view->scene->train->pads[p];
    ts_json_object(view->json);
    ts_view_word(view, "name", pad->name);
    ts_view_address(view, "address", pad->node);
    ts_view_count(view, "shaft", pad->shaft);
    ts_view_word(view, "face", pad->face == TS_FRONT ? "front" : "rear");
    ts_view_word(view, "turns", turn_name(ts_pad_sense(view->scene->motion, pad)));
    if (pad->accessory >= 0)
        write_accessory(view, &view->scene->drive->accessories[pad->accessory]);
    list_over(view, "power", TS_KIND_POWER, power_of_pad, p);
    list_over(view, "torque", TS_KIND_TORQUE, torque_of_pad, p);
    ts_json_end(view->json, '}');
}

void ts_view_machine(const ts_view *view)
{
    static const struct {
        const char *key;
        void (*write)(const ts_view *view, uint32_t item);
    } lists[]                = {{"shafts", write_shaft},
                                {"gears", write_gear},
                                {"meshes", write_mesh},
                                {"pads", write_pad}};
    const ts_train *train    = view->scene->train;
    const uint32_t  counts[] = {train->shaft_count, train->gear_count, train->mesh_count,
                                train->pad_count};
    write_engine(view);
    write_spools(view);
    for (size_t i = 0; i < sizeof lists / sizeof lists[0]; i++) {
        ts_json_key(view->json, lists[i].key);
        ts_json_array(view->json);
        for (uint32_t item = 0; item < counts[i]; item++)
            lists[i].write(view, item);
        ts_json_end(view->json, ']');
    }
}
