/* search/tooth_width.c: which face widths, in steps, keep all safeties of the teeth at least mass?
 */
#include "search/tooth_width.h"

#include "catalog/gear_material.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define STEPS_MOST 100000 /* of a width */

typedef struct sizing {
    const ts_width_rig *rig;
    ts_width_plan      *plan;
    double              step;
    long               *c;            /* [mesh] common width in steps                          */
    long               *least, *most; /* [mesh]                                                */
    double             *floor;        /* [gear] m that it keeps for meshes that are not sized  */
} sizing;

/* Whole nanometres, so that 14.5 mm is the double that 14.5 mm reads as. */
static double width_of(const sizing *s, long steps)
{
    return round((double)steps * s->step * 1e9) / 1e9;
}

static bool is_free(const sizing *s, uint32_t m)
{
    return s->plan->meshes[m] != TS_MESH_NOT_SIZED;
}

/* ---- one trial ------------------------------------------------------------------------------- */

/* The mesh that needs most of a gear, or TS_NOWHERE. */
static uint32_t neediest(const sizing *s, uint32_t gear)
{
    const ts_train *train = s->rig->train;
    uint32_t        found = TS_NOWHERE;

    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *mesh = &train->meshes[m];
        if (is_free(s, m) && (mesh->driver == gear || mesh->driven == gear) &&
            (found == TS_NOWHERE || s->c[m] > s->c[found]))
            found = m;
    }
    return found;
}

static double gear_width(const sizing *s, uint32_t gear)
{
    const uint32_t m = neediest(s, gear);
    const double   b = m == TS_NOWHERE ? 0.0 : width_of(s, s->c[m]);

    return fmax(b, s->floor[gear]);
}

static ts_status rate(const sizing *s)
{
    const ts_width_rig *rig = s->rig;

    for (size_t i = 0; i < s->plan->gear_count; i++) {
        ts_measure *face = &rig->train->gears[s->plan->gears[i].gear].face;
        *face = (ts_measure){gear_width(s, s->plan->gears[i].gear), face->node, TS_GIVEN};
    }
    s->plan->ratings++;
    ts_status status = ts_motion_solve(rig->drive, rig->motion, rig->list, NULL);
    if (status == TS_OK)
        status = ts_power_solve(rig->drive, rig->power, NULL);
    if (status == TS_OK)
        ts_teeth_solve(rig->drive, rig->teeth, NULL);
    return status;
}

static bool holds(const sizing *s, uint32_t m)
{
    return s->rig->teeth->strength[m].reserve >= 0.0;
}

static bool all_hold(const sizing *s)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
        if (is_free(s, m) && s->plan->meshes[m] != TS_MESH_TOO_WEAK && !holds(s, m))
            return false;
    return true;
}

/* ---- what is sized --------------------------------------------------------------------------- */

static void bound(sizing *s, uint32_t m)
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

    /* A hair of rounding must not cost a step. */
    s->least[m] = (long)ceil(fmin(least / s->step, STEPS_MOST) - 1e-9);
    s->least[m] = s->least[m] < 1 ? 1 : s->least[m];
    s->most[m]  = (long)floor(fmin(most / s->step, STEPS_MOST) + 1e-9);
    s->most[m]  = s->most[m] < s->least[m] ? s->least[m] : s->most[m];
    s->c[m]     = s->least[m];
}

static bool is_loaded(const sizing *s, uint32_t m)
{
    for (size_t c = 0; c < s->rig->drive->condition_count; c++)
        if (s->rig->teeth->cases[c * s->rig->train->mesh_count + m].loaded)
            return true;
    return false;
}

static void choose(sizing *s)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
        s->plan->meshes[m] = TS_MESH_NOT_SIZED;
        if (s->rig->train->meshes[m].kind != TS_MESH_CYLINDRICAL ||
            !s->rig->motion->meshes[m].solved || !is_loaded(s, m))
            continue;
        s->plan->meshes[m] = TS_MESH_SIZED;
        bound(s, m);
    }
}

/* The gears of a mesh that is not sized keep what they have. */
static void keep_others(sizing *s)
{
    const ts_train *train = s->rig->train;

    for (size_t i = 0; i < s->plan->gear_count; i++)
        s->floor[s->plan->gears[i].gear] = 0.0;
    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const ts_gear_width *width = &s->plan->gears[i];
        bool                 keeps = neediest(s, width->gear) == TS_NOWHERE;

        for (uint32_t m = 0; m < train->mesh_count && !keeps; m++)
            keeps =
                train->meshes[m].kind == TS_MESH_CYLINDRICAL && !is_free(s, m) &&
                (train->meshes[m].driver == width->gear || train->meshes[m].driven == width->gear);
        if (keeps && !isnan(width->before))
            s->floor[width->gear] = width->before;
    }
}

/* What turns out not to be rated is not sized, and what it leaves unsaid neither. */
static ts_status drop_unrated(sizing *s)
{
    for (bool dropped = true; dropped;) {
        keep_others(s);
        const ts_status status = rate(s);
        if (status != TS_OK)
            return status;
        dropped = false;
        for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
            if (is_free(s, m) && isnan(s->rig->teeth->strength[m].reserve)) {
                s->plan->meshes[m] = TS_MESH_NOT_SIZED;
                dropped            = true;
            }
    }
    return TS_OK;
}

/* ---- up and down ----------------------------------------------------------------------------- */

static ts_status widen(sizing *s)
{
    for (bool wider = true; wider;) {
        wider = false;
        for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
            if (!is_free(s, m) || holds(s, m) || s->plan->meshes[m] == TS_MESH_TOO_WEAK)
                continue;
            if (s->c[m] >= s->most[m])
                s->plan->meshes[m] = TS_MESH_TOO_WEAK;
            else
                s->c[m]++;
            wider = true;
        }
        const ts_status status = wider ? rate(s) : TS_OK;
        if (status != TS_OK)
            return status;
    }
    return TS_OK;
}

/* Takes back one step of that mesh if everything still holds. */
static ts_status narrow(sizing *s, uint32_t m, bool *narrower)
{
    *narrower = false;
    if (!is_free(s, m) || s->plan->meshes[m] == TS_MESH_TOO_WEAK || s->c[m] <= s->least[m])
        return TS_OK;
    s->c[m]--;
    const ts_status status = rate(s);
    if (status != TS_OK)
        return status;
    *narrower = all_hold(s);
    s->c[m] += *narrower ? 0 : 1;
    return TS_OK;
}

static ts_status trim(sizing *s)
{
    for (bool any = true; any;) {
        any = false;
        for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
            bool      narrower;
            ts_status status = narrow(s, m, &narrower);
            while (status == TS_OK && narrower) {
                any    = true;
                status = narrow(s, m, &narrower);
            }
            if (status != TS_OK)
                return status;
        }
    }
    return rate(s);
}

/* ---- the plan -------------------------------------------------------------------------------- */

/* The reference circle of a gear in any of its meshes; NaN when none has a geometry. */
static double diameter_of(const ts_width_rig *rig, uint32_t gear)
{
    for (uint32_t m = 0; m < rig->train->mesh_count; m++) {
        const ts_mesh *mesh = &rig->train->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !rig->motion->meshes[m].solved)
            continue;
        if (mesh->driver == gear)
            return rig->motion->meshes[m].pair.d_1;
        if (mesh->driven == gear)
            return rig->motion->meshes[m].pair.d_2;
    }
    return (double)NAN;
}

static double mass_of(const ts_width_rig *rig, uint32_t gear, double b)
{
    const double           d = diameter_of(rig, gear);
    const ts_gear_material material =
        ts_gear_material_at((size_t)rig->train->gears[gear].material.value);

    return material.rho * pi / 4.0 * d * d * b;
}

static void list_gears(sizing *s)
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

static void finish(sizing *s)
{
    ts_width_plan *plan = s->plan;

    plan->fits        = true;
    plan->mass_before = plan->mass_after = 0.0;
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
        if (plan->meshes[m] == TS_MESH_SIZED && s->c[m] == s->least[m])
            plan->meshes[m] = TS_MESH_AT_LEAST;
        plan->fits = plan->fits && plan->meshes[m] != TS_MESH_TOO_WEAK;
    }
    for (size_t i = 0; i < plan->gear_count; i++) {
        ts_gear_width *width = &plan->gears[i];
        const uint32_t m     = neediest(s, width->gear);

        width->after = gear_width(s, width->gear);
        if (!(width->after > 0.0))
            width->after = (double)NAN;
        width->mesh =
            m != TS_NOWHERE && width_of(s, s->c[m]) >= s->floor[width->gear] ? m : TS_NOWHERE;
        plan->mass_before += mass_of(s->rig, width->gear, width->before);
        plan->mass_after += mass_of(s->rig, width->gear, width->after);
    }
}

ts_status ts_find_tooth_widths(const ts_width_rig *rig, double step, ts_arena *arena,
                               ts_width_plan *plan)
{
    const size_t meshes = rig->train->mesh_count, gears = rig->train->gear_count;
    sizing       s = {rig, plan, step, NULL, NULL, NULL, NULL};

    *plan        = (ts_width_plan){0};
    plan->gears  = TS_TAKE(arena, ts_gear_width, gears);
    plan->meshes = TS_TAKE(arena, ts_width_state, meshes);
    s.c          = TS_TAKE(arena, long, meshes);
    s.least      = TS_TAKE(arena, long, meshes);
    s.most       = TS_TAKE(arena, long, meshes);
    s.floor      = TS_TAKE(arena, double, gears);
    if (plan->gears == NULL || plan->meshes == NULL || s.c == NULL || s.least == NULL ||
        s.most == NULL || s.floor == NULL)
        return TS_NO_MEMORY;
    list_gears(&s);
    choose(&s);
    ts_status status = drop_unrated(&s);
    if (status == TS_OK)
        status = widen(&s);
    if (status == TS_OK)
        status = trim(&s);
    if (status == TS_OK)
        finish(&s);
    return status;
}
