/* rating/drive_rubbing.c: in which order are heat and films of a drive computed, and what governs?
 */
#include "rating/drive_rubbing_parts.h"

#include <math.h>

/* ---- memory ---------------------------------------------------------------------------------- */

ts_status ts_rubbing_prepare(const ts_drive *drive, const ts_teeth *teeth, ts_arena *arena,
                             ts_rubbing *out)
{
    const size_t meshes = teeth->motion->train->mesh_count, conditions = drive->condition_count;

    *out               = (ts_rubbing){.teeth = teeth};
    out->mesh          = TS_TAKE(arena, ts_mesh_rubbing, meshes);
    out->cases         = TS_TAKE(arena, ts_scuffing_case, meshes * conditions);
    out->films         = TS_TAKE(arena, ts_film_of_case, meshes * conditions);
    out->oil.theta_oil = TS_TAKE(arena, double, conditions);
    out->oil.eta_oil   = TS_TAKE(arena, double, conditions);
    if (out->mesh == NULL || out->cases == NULL || out->films == NULL ||
        out->oil.theta_oil == NULL || out->oil.eta_oil == NULL)
        return TS_NO_MEMORY;
    return TS_OK;
}

/* ---- what governs ---------------------------------------------------------------------------- */

/* NaN stands only where nothing is known: what could be computed governs, and what could not is
 * told of its own condition. */
static void take_least(ts_least_safety *least, double S, uint32_t condition)
{
    const bool first = least->condition < 0;

    if (first ? !(S >= least->S) : isnan(least->S) ? !isnan(S) : S < least->S)
        *least = (ts_least_safety){S, (int32_t)condition};
}

static void lend(const ts_rubbing_desk *desk, uint32_t m, uint32_t condition, const char *symbol,
                 double value)
{
    if (isfinite(value))
        ts_workings_borrow(desk->workings, symbol, value,
                           ts_rubbing_subject(desk, m, (int32_t)condition), symbol);
}

/* The mesh has the least of all conditions under the same name. */
static void lend_least(const ts_rubbing_desk *desk, uint32_t m, const char *symbol,
                       const ts_least_safety *least)
{
    if (desk->workings == NULL || least->condition < 0 || !isfinite(least->S))
        return;
    ts_workings_about(desk->workings, desk->train->meshes[m].node, TS_EVERY_CONDITION);
    ts_workings_borrow(desk->workings, symbol, least->S,
                       ts_rubbing_subject(desk, m, least->condition), symbol);
}

static void govern(const ts_rubbing_desk *desk, uint32_t m)
{
    const bool       bevel = desk->train->meshes[m].kind == TS_MESH_BEVEL;
    ts_mesh_rubbing *out   = &desk->rubbing->mesh[m];

    out->S_B = out->S_intS = (ts_least_safety){INFINITY, TS_EVERY_CONDITION};
    for (uint32_t c = 0; c < desk->drive->condition_count; c++) {
        const ts_scuffing_case *one = ts_rubbing_case(desk, m, c);

        if (!ts_rubbing_stands(desk->rubbing, m, c))
            continue;
        if (!bevel)
            take_least(&out->S_B, out->missing != NULL ? (double)NAN : one->S_B, c);
        take_least(&out->S_intS, out->missing != NULL ? (double)NAN : one->S_intS, c);
        if (desk->workings == NULL || out->missing != NULL)
            continue;
        ts_workings_about(desk->workings, desk->train->meshes[m].node, (int32_t)c);
        lend(desk, m, c, "S_B", one->S_B);
        lend(desk, m, c, "S_intS", one->S_intS);
    }
    lend_least(desk, m, "S_B", &out->S_B);
    lend_least(desk, m, "S_intS", &out->S_intS);
}

static void govern_film(const ts_rubbing_desk *desk, uint32_t m)
{
    ts_mesh_rubbing *out = &desk->rubbing->mesh[m];

    out->lambda_GFmin = (ts_least_safety){INFINITY, TS_EVERY_CONDITION};
    for (uint32_t c = 0; c < desk->drive->condition_count; c++) {
        const ts_film_of_case *one = ts_rubbing_film(desk, m, c);

        if (!ts_rubbing_stands(desk->rubbing, m, c))
            continue;
        take_least(&out->lambda_GFmin, out->missing != NULL ? (double)NAN : one->lambda_GFmin, c);
        if (desk->workings == NULL || out->missing != NULL)
            continue;
        ts_workings_about(desk->workings, desk->train->meshes[m].node, (int32_t)c);
        lend(desk, m, c, "lambda_GFmin", one->lambda_GFmin);
        lend(desk, m, c, "S_lambda", one->S_lambda);
    }
    lend_least(desk, m, "lambda_GFmin", &out->lambda_GFmin);
}

/* ---- the whole drive ------------------------------------------------------------------------- */

static double known(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static ts_rubbing_desk desk_of(const ts_drive *drive, ts_rubbing *rubbing, ts_workings *workings)
{
    return (ts_rubbing_desk){drive, rubbing->teeth->motion->train, rubbing->teeth, rubbing,
                             workings};
}

void ts_rubbing_films(const ts_drive *drive, ts_rubbing *rubbing, ts_workings *workings)
{
    const ts_rubbing_desk desk = desk_of(drive, rubbing, workings);

    for (uint32_t m = 0; m < desk.train->mesh_count && !rubbing->filmed; m++)
        if (desk.train->meshes[m].kind == TS_MESH_CYLINDRICAL) {
            rubbing->mesh[m].missing = ts_rubbing_film_mesh(&desk, m);
            govern_film(&desk, m);
        }
    rubbing->filmed = true;
}

void ts_rubbing_solve(const ts_drive *drive, ts_rubbing *rubbing, ts_workings *workings)
{
    const ts_rubbing_desk desk = desk_of(drive, rubbing, workings);

    rubbing->S_Bmin      = known(drive->limits.flash_safety);
    rubbing->S_intSmin   = known(drive->limits.integral_safety);
    rubbing->S_lambdamin = known(drive->limits.film_safety);
    rubbing->filmed      = false;
    ts_rubbing_solve_oil(&desk);
    for (uint32_t m = 0; m < desk.train->mesh_count; m++)
        rubbing->mesh[m] = (ts_mesh_rubbing){.missing = NULL};
    if (workings != NULL || drive->oil.micropitting_stage.standing == TS_GIVEN)
        ts_rubbing_films(drive, rubbing, workings);
    for (uint32_t m = 0; m < desk.train->mesh_count; m++) {
        rubbing->mesh[m].missing = desk.train->meshes[m].kind == TS_MESH_CYLINDRICAL
                                       ? ts_rubbing_rate_mesh(&desk, m)
                                       : ts_rubbing_rate_bevels(&desk, m);
        govern(&desk, m);
    }
}
