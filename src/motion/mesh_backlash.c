/* motion/mesh_backlash.c: what may the makers of a mesh leave between its flanks, cold and warm? */
#include "motion/motion_parts.h"
#include "motion/value_note.h"

#include <math.h>

static void note_span(const ts_drive *drive, const ts_span *span, const char *const symbols[2],
                      const char *unit, const char *key, ts_workings *workings)
{
    for (int end = 0; end < 2; end++)
        ts_note_value(workings, drive,
                      &(ts_value_note){symbols[end], end == 0 ? span->low : span->high, unit, key,
                                       span->standing, span->node});
}

static bool span_known(const ts_span *span)
{
    return span->standing == TS_GIVEN || span->standing == TS_ASSUMED;
}

static const char *allowance_lacks(const ts_tooth_system *driver, const ts_tooth_system *driven)
{
    if (!span_known(&driver->thickness) || !span_known(&driven->thickness))
        return "the tooth thickness allowance";
    if (!span_known(&driver->centre))
        return "the centre distance allowance";
    return NULL;
}

static const char *missing_of(const ts_tooth_system *driver, const ts_tooth_system *driven)
{
    const ts_temperatures *warm  = &driver->temperatures;
    const char            *lacks = allowance_lacks(driver, driven);

    if (lacks != NULL)
        return lacks;
    if (warm->gears.standing == TS_UNKNOWN || warm->casing.standing == TS_UNKNOWN)
        return "a temperature of gears or casing";
    if (warm->gears_expansion.standing == TS_UNKNOWN ||
        warm->casing_expansion.standing == TS_UNKNOWN)
        return "an expansion of gears or casing";
    return NULL;
}

static void note_temperatures(const ts_drive *drive, const ts_temperatures *warm,
                              ts_workings *workings)
{
    static const char *const theta[2]  = {"theta_min", "theta_max"};
    static const char *const dtheta[2] = {"dtheta_min", "dtheta_max"};

    note_span(drive, &warm->gears, theta, "K", "gears", workings);
    note_span(drive, &warm->casing, dtheta, TS_UNIT_DIFFERENCE, "casing above gears", workings);
    TS_NOTE_MEASURE(workings, drive, "alpha_gears", warm->gears_expansion, "1/K",
                    "expansion of gears");
    TS_NOTE_MEASURE(workings, drive, "alpha_casing", warm->casing_expansion, "1/K",
                    "expansion of casing");
}

static void note_allowances(const ts_drive *drive, const ts_tooth_system *driver,
                            const ts_tooth_system *driven, ts_workings *workings)
{
    static const char *const E[2][2] = {{"E_sni1", "E_sns1"}, {"E_sni2", "E_sns2"}};
    static const char *const A[2]    = {"A_ai", "A_ae"};

    note_span(drive, &driver->thickness, E[0], "m", "tooth thickness allowance", workings);
    note_span(drive, &driven->thickness, E[1], "m", "tooth thickness allowance", workings);
    note_span(drive, &driver->centre, A, "m", "centre distance allowance", workings);
}

static ts_backlash_allowance allowance_of(const ts_tooth_system *one, const ts_tooth_system *two)
{
    return (ts_backlash_allowance){.E_sn1 = {one->thickness.high, one->thickness.low},
                                   .E_sn2 = {two->thickness.high, two->thickness.low},
                                   .A_a   = {one->centre.low, one->centre.high}};
}

/* A warmth that the file lacks takes the play as built with it, so its allowances are asked again.
 */
const char *ts_motion_backlash_lacks(const ts_train *train, const ts_motion *motion, uint32_t mesh)
{
    const ts_tooth_system *one = train->gears[train->meshes[mesh].driver].system;
    const ts_tooth_system *two = train->gears[train->meshes[mesh].driven].system;

    return motion->meshes[mesh].solved ? allowance_lacks(one, two) : "the geometry";
}

void ts_motion_backlash_at(const ts_train *train, const ts_motion *motion, uint32_t mesh,
                           const ts_backlash_warmth *warmth, ts_backlash *out)
{
    const ts_backlash_allowance allowance =
        allowance_of(train->gears[train->meshes[mesh].driver].system,
                     train->gears[train->meshes[mesh].driven].system);

    ts_backlash_solve(&motion->meshes[mesh].pair, &allowance, warmth, out, NULL);
}

void ts_motion_backlash(const ts_drive *drive, const ts_gear *const gears[2], ts_mesh_motion *mesh,
                        ts_workings *workings)
{
    const ts_tooth_system      *one = gears[0]->system, *two = gears[1]->system;
    const ts_temperatures      *warm      = &one->temperatures;
    const ts_backlash_allowance allowance = allowance_of(one, two);
    const ts_backlash_warmth    warmth    = {.theta        = {warm->gears.low, warm->gears.high},
                                             .dtheta       = {warm->casing.low, warm->casing.high},
                                             .alpha_gears  = warm->gears_expansion.value,
                                             .alpha_casing = warm->casing_expansion.value};

    mesh->backlash_missing = missing_of(one, two);
    if (mesh->backlash_missing != NULL)
        return;
    if (workings != NULL)
        note_allowances(drive, one, two, workings);
    if (workings != NULL && warm->node != 0)
        note_temperatures(drive, warm, workings);
    ts_backlash_solve(&mesh->pair, &allowance, warm->node != 0 ? &warmth : NULL, &mesh->backlash,
                      workings);
}
