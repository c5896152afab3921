/* search/tooth_width.c: which meshes of a drive are sized, between what widths, and with what
 * result? */
#include "search/tooth_width.h"

#include "search/tooth_width_parts.h"

#include <math.h>

#define STEPS_MOST 1000000 /* of a width */

/* ---- between what ---------------------------------------------------------------------------- */

static void bound(ts_sizing *s, uint32_t m)
{
    const ts_train            *train  = s->rig->train;
    const ts_limits           *limits = &s->rig->drive->limits;
    const ts_cylindrical_pair *pair   = &s->rig->motion->meshes[m].pair;
    const bool                 first  = pair->d_1 <= pair->d_2;
    const uint32_t   shaft = first ? train->meshes[m].driver_shaft : train->meshes[m].driven_shaft;
    const bool       over  = train->shafts[shaft].record->support.value == TS_OVERHUNG;
    const ts_measure slender = over ? limits->face_to_diameter_overhung : limits->face_to_diameter;
    const ts_measure narrow  = limits->face_to_module;
    const double     d       = first ? pair->d_1 : pair->d_2;
    const double     least   = ts_measure_known(narrow) ? narrow.value * pair->in.m_n : s->step;
    const double     most    = ts_measure_known(slender) ? slender.value * d : 10.0 * d;

    /* A hair of rounding must not cost a step; what refuses a drive outranks what is wished. */
    s->most[m]  = (long)floor(fmin(most / s->step, STEPS_MOST) + 1e-9);
    s->most[m]  = s->most[m] < 1 ? 1 : s->most[m];
    s->least[m] = (long)ceil(fmin(least / s->step, STEPS_MOST) - 1e-9);
    s->least[m] = s->least[m] < 1 ? 1 : s->least[m];
    s->least[m] = s->least[m] > s->most[m] ? s->most[m] : s->least[m];
}

/* ---- what is sized --------------------------------------------------------------------------- */

static const ts_mesh_case *case_of(const ts_sizing *s, uint32_t m, size_t condition)
{
    return &s->rig->teeth->cases[condition * s->rig->train->mesh_count + m];
}

static bool is_loaded(const ts_sizing *s, uint32_t m)
{
    for (size_t c = 0; c < s->rig->drive->condition_count; c++)
        if (case_of(s, m, c)->loaded)
            return true;
    return false;
}

static void choose(ts_sizing *s)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
        ts_mesh_width *mesh = &s->plan->meshes[m];

        *mesh = (ts_mesh_width){.common = (double)NAN, .least = (double)NAN, .most = (double)NAN};
        if (s->rig->train->meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        if (!s->rig->motion->meshes[m].solved)
            mesh->missing = "its geometry";
        else if (!is_loaded(s, m))
            mesh->fault = "it carries nothing in any condition";
        if (mesh->missing != NULL || mesh->fault != NULL)
            continue;
        mesh->state = TS_MESH_SIZED;
        bound(s, m);
    }
}

/* Every gear at the least that its meshes allow; those of a mesh that is not sized keep what they
 * have. */
static void begin(ts_sizing *s)
{
    const ts_train *train = s->rig->train;

    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const ts_gear_width *width = &s->plan->gears[i];
        long                 least = 0;
        bool                 keeps = false;

        for (uint32_t m = 0; m < train->mesh_count; m++) {
            if (!ts_sizing_touches(s, m, width->gear))
                continue;
            if (ts_sizing_free(s, m))
                least = s->least[m] > least ? s->least[m] : least;
            else
                keeps = true;
        }
        keeps                       = keeps || least == 0;
        s->w[width->gear]           = least;
        s->floor_steps[width->gear] = least;
        s->floor[width->gear]       = keeps && !isnan(width->before) ? width->before : 0.0;
    }
}

/* Its own reason, or that of a mesh that loads the same gear. */
static void say_unrated(const ts_sizing *s, uint32_t m)
{
    const ts_mesh_strength *strength = &s->rig->teeth->strength[m];
    ts_mesh_width          *mesh     = &s->plan->meshes[m];

    mesh->missing = strength->missing;
    mesh->fault   = strength->fault;
    for (size_t c = 0; c < s->rig->drive->condition_count; c++) {
        const ts_mesh_case *one = case_of(s, m, c);

        if (mesh->missing != NULL || mesh->fault != NULL)
            return;
        mesh->missing = one->loaded ? one->missing : NULL;
        mesh->fault   = one->loaded ? one->fault : NULL;
    }
    if (mesh->missing != NULL || mesh->fault != NULL)
        return;
    if (isnan(s->rig->teeth->S_Hmin) || isnan(s->rig->teeth->S_Fmin))
        mesh->missing = "a safety to keep (`limits`)";
    else
        mesh->fault = "another mesh of its gears cannot be rated";
}

/* What turns out not to be rated is not sized, and what it leaves unsaid neither. */
static ts_status drop_unrated(ts_sizing *s)
{
    for (bool dropped = true; dropped;) {
        begin(s);
        const ts_status status = ts_sizing_rate(s);
        if (status != TS_OK)
            return status;
        dropped = false;
        for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
            if (ts_sizing_free(s, m) && isnan(s->rig->teeth->strength[m].reserve)) {
                s->plan->meshes[m].state = TS_MESH_NOT_SIZED;
                say_unrated(s, m);
                dropped = true;
            }
    }
    return TS_OK;
}

/* ---- the plan -------------------------------------------------------------------------------- */

static void list_gears(ts_sizing *s)
{
    const ts_train *train = s->rig->train;

    s->plan->gear_count = 0;
    for (uint32_t g = 0; g < train->gear_count; g++) {
        const ts_gear *gear = &train->gears[g];
        if (gear->role == TS_GEAR_BEVEL)
            continue;
        s->plan->gears[s->plan->gear_count++] =
            (ts_gear_width){.gear   = g,
                            .before = ts_measure_known(gear->face) ? gear->face.value : (double)NAN,
                            .after  = (double)NAN,
                            .mesh   = TS_NOWHERE};
    }
}

/* Heavy ones first: what is taken back there is worth most.  Equal ones in the order of the train.
 */
static void put_in_order(ts_sizing *s)
{
    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const uint32_t gear = s->plan->gears[i].gear;
        const double   mass = ts_sizing_gear_mass(s, gear, s->step);
        size_t         at   = i;

        for (; at > 0 && ts_sizing_gear_mass(s, s->order[at - 1], s->step) < mass; at--)
            s->order[at] = s->order[at - 1];
        s->order[at] = gear;
    }
}

/* ---- what came of it ------------------------------------------------------------------------- */

/* A mesh that was given up may hold after all by what the others became. */
static void finish_mesh(const ts_sizing *s, uint32_t m)
{
    ts_mesh_width *mesh = &s->plan->meshes[m];

    if (mesh->state == TS_MESH_NOT_SIZED)
        return;
    mesh->common = ts_sizing_width(s, ts_sizing_common(s, m));
    mesh->least  = ts_sizing_width(s, s->least[m]);
    mesh->most   = ts_sizing_width(s, s->most[m]);
    if (!ts_sizing_holds(s, m))
        mesh->state = TS_MESH_TOO_WEAK;
    else
        mesh->state = ts_sizing_common(s, m) == s->least[m] ? TS_MESH_AT_LEAST : TS_MESH_SIZED;
    s->plan->fits = s->plan->fits && mesh->state != TS_MESH_TOO_WEAK;
}

/* The mesh that holds a gear at its floor. */
static void explain_floor(const ts_sizing *s, ts_gear_width *width)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
        if (!ts_sizing_free(s, m) || !ts_sizing_touches(s, m, width->gear))
            continue;
        const bool weak = s->plan->meshes[m].state == TS_MESH_TOO_WEAK;
        if (s->w[width->gear] == (weak ? s->most[m] : s->least[m])) {
            width->need = weak ? TS_WIDTH_KEPT : TS_WIDTH_LEAST;
            width->mesh = m;
            return;
        }
    }
}

/* The mesh that fails most with the gear a step narrower. */
static ts_status explain_need(const ts_sizing *s, ts_gear_width *width)
{
    double worst = 0.0;

    s->w[width->gear]--;
    const ts_status status = ts_sizing_rate(s);
    s->w[width->gear]++;
    for (uint32_t m = 0; m < s->rig->train->mesh_count && status == TS_OK; m++) {
        const ts_mesh_strength *strength = &s->rig->teeth->strength[m];

        if (s->plan->meshes[m].state != TS_MESH_SIZED || !(strength->reserve < worst))
            continue;
        worst        = strength->reserve;
        width->need  = TS_WIDTH_NEEDED;
        width->mesh  = m;
        width->fails = *strength;
    }
    return status;
}

static ts_status explain(const ts_sizing *s)
{
    ts_status status = TS_OK;

    for (size_t i = 0; i < s->plan->gear_count && status == TS_OK; i++) {
        ts_gear_width *width = &s->plan->gears[i];
        const long     w     = s->w[width->gear];

        if (w == 0 || ts_sizing_width(s, w) < s->floor[width->gear])
            continue;
        if (w == s->floor_steps[width->gear])
            explain_floor(s, width);
        else
            status = explain_need(s, width);
    }
    return status == TS_OK ? ts_sizing_rate(s) : status;
}

static ts_status finish(const ts_sizing *s)
{
    ts_width_plan  *plan   = s->plan;
    const ts_status status = explain(s);

    if (status != TS_OK)
        return status;
    plan->fits        = true;
    plan->mass_before = plan->mass_after = 0.0;
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
        finish_mesh(s, m);
    for (size_t i = 0; i < plan->gear_count; i++) {
        ts_gear_width *width = &plan->gears[i];
        const double   b     = ts_sizing_gear(s, width->gear);

        width->after = b > 0.0 ? b : (double)NAN;
        plan->mass_before += ts_sizing_gear_mass(s, width->gear, width->before);
        plan->mass_after += ts_sizing_gear_mass(s, width->gear, width->after);
    }
    return TS_OK;
}

static bool take_memory(ts_sizing *s, ts_arena *arena)
{
    const size_t meshes = s->rig->train->mesh_count, gears = s->rig->train->gear_count;

    s->plan->gears  = TS_TAKE(arena, ts_gear_width, gears);
    s->plan->meshes = TS_TAKE(arena, ts_mesh_width, meshes);
    s->w            = TS_TAKE(arena, long, gears);
    s->kept         = TS_TAKE(arena, long, gears);
    s->floor_steps  = TS_TAKE(arena, long, gears);
    s->order        = TS_TAKE(arena, uint32_t, gears);
    s->least        = TS_TAKE(arena, long, meshes);
    s->most         = TS_TAKE(arena, long, meshes);
    s->floor        = TS_TAKE(arena, double, gears);
    return s->plan->gears != NULL && s->plan->meshes != NULL && s->w != NULL && s->kept != NULL &&
           s->floor_steps != NULL && s->order != NULL && s->least != NULL && s->most != NULL &&
           s->floor != NULL;
}

ts_status ts_find_tooth_widths(const ts_width_rig *rig, double step, ts_arena *arena,
                               ts_width_plan *plan)
{
    ts_sizing s = {.rig = rig, .plan = plan, .step = step};

    *plan = (ts_width_plan){0};
    if (!take_memory(&s, arena))
        return TS_NO_MEMORY;
    list_gears(&s);
    choose(&s);
    ts_status status = drop_unrated(&s);
    put_in_order(&s);
    if (status == TS_OK)
        status = ts_sizing_climb(&s);
    return status == TS_OK ? finish(&s) : status;
}
