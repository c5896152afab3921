/* check/envelope.c: which circles do gears and bodies fill, and in which planes do gears lie? */
#include "check/envelope.h"

#include <math.h>

size_t ts_envelope_bytes(const ts_train *train)
{
    const size_t slack = 16 * 10; /* the arena aligns each of the ten pieces */
    return sizeof(ts_envelope) + train->gear_count * (sizeof(double) + 5 * sizeof(uint32_t)) +
           train->shaft_count * (sizeof(uint32_t) + sizeof(bool)) +
           train->mesh_count * sizeof(uint32_t) + slack;
}

ts_envelope *ts_envelope_prepare(const ts_train *train, ts_arena *arena)
{
    ts_envelope *envelope = TS_TAKE(arena, ts_envelope, 1);
    if (envelope == NULL)
        return NULL;
    *envelope = (ts_envelope){
        .tip     = TS_TAKE(arena, double, train->gear_count),
        .plane   = TS_TAKE(arena, uint32_t, train->gear_count),
        .driver  = TS_TAKE(arena, uint32_t, train->gear_count),
        .mesh    = TS_TAKE(arena, uint32_t, train->gear_count),
        .first   = TS_TAKE(arena, uint32_t, train->shaft_count),
        .next    = TS_TAKE(arena, uint32_t, train->gear_count),
        .drives  = TS_TAKE(arena, uint32_t, train->gear_count),
        .sibling = TS_TAKE(arena, uint32_t, train->mesh_count),
        .follows = TS_TAKE(arena, bool, train->shaft_count),
    };
    const bool whole =
        envelope->tip != NULL && envelope->plane != NULL && envelope->driver != NULL &&
        envelope->mesh != NULL && envelope->first != NULL && envelope->next != NULL &&
        envelope->drives != NULL && envelope->sibling != NULL && envelope->follows != NULL;
    return whole ? envelope : NULL;
}

/* Lists that are filled from the back run in the order of the train. */
static void thread_lists(const ts_train *train, ts_envelope *out)
{
    for (uint32_t i = 0; i < train->shaft_count; i++)
        out->first[i] = TS_NOWHERE;
    for (uint32_t i = train->gear_count; i-- > 0;) {
        const uint32_t shaft = train->gears[i].shaft;
        out->next[i]         = out->first[shaft];
        out->first[shaft]    = i;
        out->drives[i]       = TS_NOWHERE;
    }
    for (uint32_t i = train->mesh_count; i-- > 0;) {
        const uint32_t driver = train->meshes[i].driver;
        out->sibling[i]       = out->drives[driver];
        out->drives[driver]   = i;
    }
}

static void know_gear(ts_envelope *out, uint32_t gear, uint32_t mesh, double d_a)
{
    out->tip[gear] = 0.5 * d_a;
    if (out->mesh[gear] == TS_NOWHERE)
        out->mesh[gear] = mesh;
}

void ts_envelope_solve(const ts_train *train, const ts_motion *motion, ts_envelope *out)
{
    for (uint32_t i = 0; i < train->gear_count; i++) {
        out->tip[i]    = (double)NAN;
        out->plane[i]  = i;
        out->driver[i] = TS_NOWHERE;
        out->mesh[i]   = TS_NOWHERE;
    }
    thread_lists(train, out);
    /* A driver stands before what it drives, so one pass hands its plane on. */
    for (uint32_t i = 0; i < train->mesh_count; i++) {
        const ts_mesh *mesh = &train->meshes[i];
        if (mesh->kind != TS_MESH_CYLINDRICAL)
            continue;
        out->plane[mesh->driven]  = out->plane[mesh->driver];
        out->driver[mesh->driven] = mesh->driver;
        if (!motion->meshes[i].solved)
            continue;
        know_gear(out, mesh->driver, i, motion->meshes[i].pair.d_a1);
        know_gear(out, mesh->driven, i, motion->meshes[i].pair.d_a2);
    }
}

bool ts_gear_geometry_of(const ts_check *check, uint32_t gear, ts_gear_geometry *out)
{
    const uint32_t mesh = check->envelope->mesh[gear];
    if (mesh == TS_NOWHERE)
        return false;
    const ts_cylindrical_pair *pair  = &check->motion->meshes[mesh].pair;
    const bool                 first = check->train->meshes[mesh].driver == gear;
    *out                             = (ts_gear_geometry){
                                    .mesh  = mesh,
                                    .index = first ? 1 : 2,
                                    .x     = first ? pair->x_1 : pair->x_2,
                                    .x_min = first ? pair->x_min1 : pair->x_min2,
                                    .s_an  = first ? pair->s_an1 : pair->s_an2,
                                    .d_a   = first ? pair->d_a1 : pair->d_a2,
    };
    return true;
}

void ts_borrow_of_gear(const ts_check *check, ts_node about, const ts_gear_geometry *geometry,
                       ts_input input, const char *const names[2])
{
    if (check->workings != NULL)
        ts_borrow(check, about, input, check->train->meshes[geometry->mesh].node,
                  names[geometry->index - 1]);
}

double ts_axes_apart(const ts_check *check, ts_node about, const ts_formula *formula,
                     uint32_t shaft, uint32_t other)
{
    const ts_shaft_motion *mine = &check->motion->shafts[shaft];
    const ts_shaft_motion *its  = &check->motion->shafts[other];
    const double           X = mine->x, Y = mine->y, X_2 = its->x, Y_2 = its->y;
    if (check->workings != NULL) {
        const ts_node here  = check->train->shafts[shaft].node;
        const ts_node there = check->train->shafts[other].node;
        ts_borrow(check, about, (ts_input){"X", X}, here, "X");
        ts_borrow(check, about, (ts_input){"Y", Y}, here, "Y");
        ts_borrow(check, about, (ts_input){"X_2", X_2}, there, "X");
        ts_borrow(check, about, (ts_input){"Y_2", Y_2}, there, "Y");
    }
    const double a = sqrt((X - X_2) * (X - X_2) + (Y - Y_2) * (Y - Y_2));
    return TS_STEP(check->workings, *formula, a, X, X_2, Y, Y_2);
}

bool ts_body_radius(const ts_accessory *accessory, double *R)
{
    *R = accessory->body.radius.value;
    return accessory->body.node != 0 && ts_measure_known(accessory->body.radius);
}
