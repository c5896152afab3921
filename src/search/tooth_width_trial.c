/* search/tooth_width_trial.c: what do the gears weigh at given widths, and do they hold? */
#include "search/tooth_width_parts.h"

#include "catalog/gear_material.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* Whole nanometres, so that 14.5 mm is the double that 14.5 mm reads as. */
double ts_sizing_width(const ts_sizing *s, long steps)
{
    return round((double)steps * s->step * 1e9) / 1e9;
}

double ts_sizing_gear(const ts_sizing *s, uint32_t gear)
{
    return fmax(ts_sizing_width(s, s->w[gear]), s->floor[gear]);
}

/* ---- rating ---------------------------------------------------------------------------------- */

ts_status ts_sizing_rate(const ts_sizing *s)
{
    const ts_width_rig *rig = s->rig;

    for (size_t i = 0; i < s->plan->gear_count; i++) {
        const uint32_t gear = s->plan->gears[i].gear;
        ts_measure    *face = &rig->train->gears[gear].face;
        const double   b    = ts_sizing_gear(s, gear);

        if (b > 0.0)
            *face = (ts_measure){b, face->node, TS_GIVEN};
    }
    s->plan->ratings++;
    ts_status status = ts_motion_solve(rig->drive, rig->motion, rig->list, NULL);
    if (status == TS_OK)
        status = ts_power_solve(rig->drive, rig->power, NULL);
    if (status == TS_OK && rig->lines != NULL)
        ts_lines_solve(rig->drive, rig->lines, NULL);
    if (status == TS_OK)
        ts_teeth_solve(rig->drive, rig->teeth, NULL);
    return status;
}

/* False for NaN. */
bool ts_sizing_holds(const ts_sizing *s, uint32_t mesh)
{
    return s->rig->teeth->strength[mesh].reserve >= 0.0;
}

bool ts_sizing_all_hold(const ts_sizing *s)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++)
        if (s->plan->meshes[m].state == TS_MESH_SIZED && !ts_sizing_holds(s, m))
            return false;
    return true;
}

/* ---- mass ------------------------------------------------------------------------------------ */

/* Reference and root diameter of a gear in any of its meshes; false when none has a geometry. */
static bool circles_of(const ts_sizing *s, uint32_t gear, double *d, double *d_f)
{
    for (uint32_t m = 0; m < s->rig->train->mesh_count; m++) {
        const ts_mesh             *mesh = &s->rig->train->meshes[m];
        const ts_cylindrical_pair *pair = &s->rig->motion->meshes[m].pair;

        if (mesh->kind != TS_MESH_CYLINDRICAL || !s->rig->motion->meshes[m].solved ||
            !ts_sizing_touches(s, m, gear))
            continue;
        *d   = mesh->driver == gear ? pair->d_1 : pair->d_2;
        *d_f = mesh->driver == gear ? pair->d_f1 : pair->d_f2;
        return true;
    }
    return false;
}

double ts_sizing_gear_mass(const ts_sizing *s, uint32_t gear, double b)
{
    const ts_gear         *record   = &s->rig->train->gears[gear];
    const ts_gear_material material = ts_gear_material_at((size_t)record->material.value);
    double                 d, d_f;

    if (!circles_of(s, gear, &d, &d_f))
        return (double)NAN;
    /* Inside the rim there is the web; a gear without a rim is solid. */
    const double inside =
        ts_measure_known(record->rim) ? fmax(0.0, d_f - 2.0 * record->rim.value) : 0.0;
    const double web = ts_measure_known(record->web) ? fmin(record->web.value, b) : b;
    return material.rho * pi / 4.0 * ((d * d - inside * inside) * b + inside * inside * web);
}
