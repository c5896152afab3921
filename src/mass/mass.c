/* mass/mass.c: which parts has a drive, and what do they weigh together?
 */
#include "mass/mass_parts.h"

#include "motion/value_note.h"

#include <math.h>

static const char *const kinds[TS_MASS_KINDS] = {
    "gears", "bevels", "shafts", "bearings", "radial shafts", "casings", "accessories"};
static const char *const parts[TS_MASS_KINDS] = {"gear", "bevel",  "shaft",    "bearings",
                                                 "tube", "casing", "accessory"};
static const char *const shakes[TS_SHAKES] = {"down", "up", "forward", "rearward", "left", "right"};

const char *ts_mass_kind_says(ts_mass_kind kind)
{
    return kinds[kind];
}

const char *ts_mass_part_says(ts_mass_kind kind)
{
    return parts[kind];
}

const char *ts_shake_says(ts_shake shake)
{
    return shakes[shake];
}

/* ---- which parts there are --------------------------------------------------------------------
 */

static ts_mass_part *add(ts_mass *mass, ts_mass_kind kind, uint32_t drive, uint32_t shaft)
{
    ts_mass_part *part = &mass->parts[mass->part_count++];

    *part = (ts_mass_part){.kind = kind, .drive = drive, .shaft = shaft};
    return part;
}

static void name_part(ts_mass_part *part, ts_node node, const char *m, const char *J,
                      const char *name)
{
    part->node   = node;
    part->m_name = m;
    part->J_name = J;
    part->name   = name;
}

static void list_gears(ts_mass *mass, const ts_train *train, uint32_t drive)
{
    for (uint32_t g = 0; g < train->gear_count; g++) {
        const ts_gear  *gear  = &train->gears[g];
        const ts_shaft *shaft = &train->shafts[gear->shaft];
        if (gear->role != TS_GEAR_BEVEL && shaft->drive == drive)
            name_part(add(mass, TS_MASS_GEAR, drive, gear->shaft), gear->node, "m_gear", "J_gear",
                      shaft->name);
    }
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *mesh = &train->meshes[m];
        if (mesh->kind != TS_MESH_BEVEL || train->shafts[mesh->driven_shaft].drive != drive)
            continue;
        name_part(add(mass, TS_MASS_BEVEL, drive, mesh->driver_shaft), mesh->node, "m_bevel1",
                  "J_bevel1", train->shafts[mesh->driver_shaft].name);
        name_part(add(mass, TS_MASS_BEVEL, drive, mesh->driven_shaft), mesh->node, "m_bevel2",
                  "J_bevel2", train->shafts[mesh->driven_shaft].name);
    }
}

static void list_shafts(ts_mass *mass, const ts_train *train, uint32_t drive, ts_shaft_kind which)
{
    const bool tower = which == TS_SHAFT_TOWER;

    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == which && train->shafts[s].drive == drive)
            name_part(add(mass, tower ? TS_MASS_TOWER : TS_MASS_SHAFT, drive, s),
                      train->shafts[s].node, "m_shaft", "J_shaft", train->shafts[s].name);
}

static void list_bearings(ts_mass *mass, const ts_train *train, uint32_t drive)
{
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind != TS_SHAFT_SPOOL && train->shafts[s].drive == drive)
            name_part(add(mass, TS_MASS_BEARINGS, drive, s), train->shafts[s].node, "m_bearings",
                      "J_bearings", train->shafts[s].name);
}

static void list_accessories(ts_mass *mass, const ts_drive *drive, const ts_train *train,
                             uint32_t d)
{
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const ts_pad *pad = &train->pads[p];
        if (pad->accessory < 0 || train->shafts[pad->shaft].drive != d)
            continue;
        const ts_accessory *accessory = &drive->accessories[pad->accessory];
        ts_mass_part       *part      = add(mass, TS_MASS_ACCESSORY, d, pad->shaft);
        name_part(part, accessory->node, "m", "J", pad->name);
        part->clutch =
            ts_pick_known(accessory->clutch) && accessory->clutch.value == TS_CLUTCH_OVERRUNNING;
    }
}

ts_status ts_mass_prepare(const ts_drive *drive, const ts_power *power, ts_arena *arena,
                          ts_mass *out)
{
    const ts_train *train = power->motion->train;
    const size_t    most  = (size_t)train->gear_count + 2 * (size_t)train->shaft_count +
                        train->pad_count + drive->drive_count;

    *out          = (ts_mass){.power = power};
    out->parts    = TS_TAKE(arena, ts_mass_part, most);
    out->boxes    = TS_TAKE(arena, ts_box_mass, drive->drive_count);
    out->spools   = TS_TAKE(arena, ts_spool_inertia, drive->spool_count);
    out->shape    = TS_TAKE(arena, ts_mass_shape, train->shaft_count);
    out->outlines = TS_TAKE(arena, ts_mass_outline, train->shaft_count);
    out->inputs   = TS_TAKE(arena, ts_input, 2 * (most + TS_MASS_SECTIONS_MOST) + 1);
    if (out->outlines == NULL || out->inputs == NULL || out->parts == NULL || out->boxes == NULL ||
        out->spools == NULL || out->shape == NULL)
        return TS_NO_MEMORY;
    for (uint32_t d = 0; d < drive->drive_count; d++) {
        list_gears(out, train, d);
        list_shafts(out, train, d, TS_SHAFT_BOX);
        list_bearings(out, train, d);
        list_shafts(out, train, d, TS_SHAFT_TOWER);
        name_part(add(out, TS_MASS_CASING, d, TS_NOWHERE), drive->drive[d].box.node, "m_casing",
                  NULL, drive->spools[drive->drive[d].spool].name);
        list_accessories(out, drive, train, d);
    }
    return TS_OK;
}

/* ---- where they are ---------------------------------------------------------------------------
 */

/* Middle of the box's depth: the radial shaft's axis. */
static double station_of(const ts_mass_job *job, uint32_t drive)
{
    const ts_measure station = job->drive->drive[drive].tower_shaft.station;

    return ts_measure_known(station) ? station.value : (double)NAN;
}

static void place_at(ts_mass_part *part, double x, double y, double z)
{
    part->x = x;
    part->y = y;
    part->z = z;
}

/* A bevel gear stands off the other axis by the mean radius of its mate: along the engine where its
 * own axis lies so, out along the radial shaft where that is its own. */
static void place_bevel(const ts_mass_job *job, uint32_t m, int side, ts_mass_part *part)
{
    const ts_mesh         *mesh  = &job->train->meshes[m];
    const ts_bevel_pair   *pair  = &job->motion->meshes[m].bevel;
    const uint32_t         own   = side == 0 ? mesh->driver_shaft : mesh->driven_shaft;
    const ts_shaft_motion *at    = &job->motion->shafts[own];
    const double           away  = (side == 0 ? pair->d_m2 : pair->d_m1) / 2.0;
    const double           z     = station_of(job, part->drive);
    const bool             front = mesh->bevels->side.value == TS_FRONT;

    if (job->train->shafts[own].kind != TS_SHAFT_TOWER) {
        place_at(part, at->x, at->y, z + (front ? -away : away));
        return;
    }
    const double R = side == 0 ? at->radius - away : away; /* outer end, or the spool's */
    place_at(part, R * sin(at->clock), R * cos(at->clock), z);
}

static void place_part(const ts_mass_job *job, ts_mass_part *part)
{
    const ts_shaft_motion *at = &job->motion->shafts[part->shaft];
    const double           z  = station_of(job, part->drive);

    if (job->train->shafts[part->shaft].kind == TS_SHAFT_TOWER)
        place_at(part, at->x / 2.0, at->y / 2.0, z); /* from the engine axis to its outer end */
    else
        place_at(part, at->x, at->y, z);
}

/* ---- accessories ------------------------------------------------------------------------------
 */

void ts_mass_of_accessory(const ts_mass_job *job, uint32_t p, ts_mass_part *part)
{
    const ts_pad       *pad       = &job->train->pads[p];
    const ts_accessory *accessory = &job->drive->accessories[pad->accessory];
    const ts_measure    depth     = job->drive->drive[part->drive].box.depth;
    const double        out = ts_measure_known(accessory->overhang) ? accessory->overhang.value
                              : ts_measure_known(accessory->body.length)
                                  ? accessory->body.length.value / 2.0
                                  : 0.0;

    ts_workings_about(job->workings, part->node, TS_EVERY_CONDITION);
    TS_NOTE_MEASURE(job->workings, job->drive, "m", accessory->mass, "kg", "mass");
    TS_NOTE_MEASURE(job->workings, job->drive, "J", accessory->inertia, "kg.m2", "inertia");
    part->missing   = ts_measure_known(accessory->mass) ? NULL : "its mass";
    part->J_missing = ts_measure_known(accessory->inertia) ? NULL : "its inertia";
    const double m = accessory->mass.value, J = accessory->inertia.value;
    part->m = ts_band_of(m, m, m);
    part->J = ts_band_of(J, J, J);
    place_part(job, part);
    const double away = ts_measure_known(depth) ? depth.value / 2.0 + out : (double)NAN;
    part->z += pad->face == TS_FRONT ? -away : away;
}

/* ---- the whole --------------------------------------------------------------------------------
 */

static void weigh_gears(const ts_mass_job *job, ts_mass_part **next, uint32_t drive)
{
    const ts_train *train = job->train;

    for (uint32_t g = 0; g < train->gear_count; g++)
        if (train->gears[g].role != TS_GEAR_BEVEL &&
            train->shafts[train->gears[g].shaft].drive == drive) {
            place_part(job, *next);
            ts_mass_of_gear(job, g, (*next)++);
        }
    for (uint32_t m = 0; m < train->mesh_count; m++)
        for (int side = 0; side < 2 && train->meshes[m].kind == TS_MESH_BEVEL &&
                           train->shafts[train->meshes[m].driven_shaft].drive == drive;
             side++) {
            place_bevel(job, m, side, *next);
            ts_mass_of_bevel(job, m, side, (*next)++);
        }
}

static void weigh_rest(const ts_mass_job *job, ts_mass_part *part)
{
    switch (part->kind) {
    case TS_MASS_SHAFT:
    case TS_MASS_TOWER:
        place_part(job, part);
        ts_mass_of_shaft(job, part->shaft, part);
        break;
    case TS_MASS_BEARINGS:
        place_part(job, part);
        ts_mass_of_bearings(job, part->shaft, part);
        break;
    case TS_MASS_CASING:
        part->z = station_of(job, part->drive);
        ts_mass_of_casing(job, part->drive, part);
        break;
    default:
        break;
    }
}

static void weigh_drive(const ts_mass_job *job, ts_mass_part **next, uint32_t drive)
{
    const ts_mass_part *end = job->mass->parts + job->mass->part_count;

    weigh_gears(job, next, drive);
    while (*next < end && (*next)->drive == drive && (*next)->kind != TS_MASS_ACCESSORY)
        weigh_rest(job, (*next)++);
    for (uint32_t p = 0; p < job->train->pad_count; p++)
        if (job->train->pads[p].accessory >= 0 &&
            job->train->shafts[job->train->pads[p].shaft].drive == drive)
            ts_mass_of_accessory(job, p, (*next)++);
}

static void forget(ts_mass_part *part)
{
    part->missing = part->J_missing = NULL;
    part->m = part->J = ts_band_of((double)NAN, (double)NAN, (double)NAN);
    part->x = part->y = part->z = (double)NAN;
}

void ts_mass_solve(const ts_drive *drive, ts_mass *mass, ts_workings *workings)
{
    const ts_motion  *motion = mass->power->motion;
    const ts_mass_job job    = {.drive    = drive,
                                .train    = motion->train,
                                .motion   = motion,
                                .power    = mass->power,
                                .mass     = mass,
                                .workings = workings};
    ts_mass_part     *next   = mass->parts;

    for (size_t i = 0; i < mass->part_count; i++)
        forget(&mass->parts[i]);
    ts_mass_generate_shafts(&job);
    for (uint32_t d = 0; d < drive->drive_count; d++)
        weigh_drive(&job, &next, d);
    for (size_t i = 0; i < mass->part_count; i++)
        if (mass->parts[i].kind != TS_MASS_ACCESSORY)
            mass->parts[i].J_missing = mass->parts[i].missing;
    ts_mass_sums(&job);
    ts_mass_seen(&job);
    for (uint32_t d = 0; d < drive->drive_count; d++)
        ts_mass_mounts(&job, d);
}
