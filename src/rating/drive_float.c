/* rating/drive_float.c: what does the movement of a spool do to its take-off, by each of the three
 * ways to bear it? */
#include "rating/drive_float.h"

#include "rating/float_parts.h"

#include <math.h>

static const char *const schemes[TS_FLOAT_SCHEMES] = {
    [TS_FLOAT_FIXED_BEVEL]  = "fixed bevel",
    [TS_FLOAT_SPLINED_STUB] = "splined stub",
    [TS_FLOAT_WIDE_SPUR]    = "wide spur",
};

const char *ts_float_scheme_name(ts_float_scheme scheme)
{
    return schemes[scheme];
}

const char *ts_float_cause_says(ts_float_cause cause)
{
    static const char *const says[TS_FLOAT_CAUSES] = {
        [TS_FLOAT_BINDS]   = "the bevels bind",
        [TS_FLOAT_TIPS]    = "tips meet roots",
        [TS_FLOAT_HANDS]   = "less than one pair of teeth carries",
        [TS_FLOAT_EDGE]    = "the contact pattern runs off the face",
        [TS_FLOAT_BOTTOMS] = "the spline bottoms and pushes the bevel",
        [TS_FLOAT_NARROW]  = "the spurs overlap less than their load needs",
    };
    return says[cause];
}

double ts_float_reserve(const ts_drive_float *item, const ts_float_option *option)
{
    return fmin(option->stop[1] - item->s[1], item->s[0] - option->stop[0]);
}

/* ---- memory ---------------------------------------------------------------------------------- */

ts_status ts_floats_prepare(const ts_drive *drive, const ts_power *power, const ts_lines *lines,
                            ts_source *source, ts_arena *arena, ts_floats *out)
{
    const uint32_t count = (uint32_t)drive->drive_count;
    const bool     told  = source != NULL && source->node_count > 0;

    *out       = (ts_floats){.power = power, .lines = lines, .count = count};
    out->items = TS_TAKE(arena, ts_drive_float, (size_t)count + 1);
    if (out->items == NULL)
        return TS_NO_MEMORY;
    if (told && ts_source_make_room(source, count * TS_FLOAT_SCHEMES, arena) != TS_OK)
        return TS_NO_MEMORY;
    for (uint32_t d = 0; d < count; d++) {
        const ts_node record = drive->drive[d].take_off.node;

        out->items[d] = (ts_drive_float){.drive = d, .mesh = TS_NOWHERE};
        for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
            const ts_node node            = told ? ts_source_make(source, record, schemes[i]) : 0;
            out->items[d].options[i].node = node != 0 ? node : record;
        }
    }
    return TS_OK;
}

/* ---- one take-off ---------------------------------------------------------------------------- */

static uint32_t mesh_of(const ts_train *train, const ts_take_off *take_off)
{
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].bevels == &take_off->bevels)
            return m;
    return TS_NOWHERE;
}

static bool is_known(const ts_span *span)
{
    return span->standing == TS_GIVEN || span->standing == TS_ASSUMED;
}

static const char *missing_of(const ts_floats *floats, const ts_spool *spool, uint32_t mesh)
{
    if (!is_known(&spool->axial_travel))
        return "the axial travel of the spool";
    if (spool->radial_travel.standing == TS_UNKNOWN)
        return "the radial travel of the spool";
    if (mesh == TS_NOWHERE || !floats->power->motion->meshes[mesh].solved ||
        floats->power->motion->meshes[mesh].teeth_fault != NULL)
        return "the geometry of the take-off bevels";
    return NULL;
}

static const ts_line *line_of(const ts_lines *lines, ts_line_kind kind, uint32_t shaft)
{
    for (uint32_t l = 0; l < lines->count; l++) {
        const ts_line *line = &lines->lines[l];
        if (line->kind == kind && line->shaft == shaft && line->fault == NULL &&
            line->missing == NULL)
            return line;
    }
    return NULL;
}

static void find_loads(ts_float_job *job)
{
    const ts_power *power = job->floats->power;
    const ts_train *train = power->motion->train;

    for (size_t c = 0; c < job->drive->condition_count; c++) {
        const ts_mesh_load *load = &power->mesh[c * train->mesh_count + job->item->mesh];
        const double        F_r  = hypot(load->F_t, load->F_r[0]);

        job->T_1 = fmax(job->T_1, fabs(load->T[0]));
        job->F_a = fmax(job->F_a, fabs(load->F_a[0]));
        job->F_r = fmax(job->F_r, F_r);
    }
}

static void empty(ts_float_option *option)
{
    option->made     = false;
    option->slide[0] = option->slide[1] = 0.0;
    option->left = option->engaged = (double)NAN;
    option->m                      = 0.0;
    option->parts = option->meshes = 0;
    option->stop[0] = option->apart[0] = -INFINITY;
    option->stop[1] = option->apart[1] = INFINITY;
    option->cause[0] = option->cause[1] = TS_FLOAT_BINDS;
}

static void solve_one(const ts_drive *drive, const ts_floats *floats, ts_drive_float *item,
                      ts_workings *workings)
{
    static void (*const solve[TS_FLOAT_SCHEMES])(ts_float_job *, ts_float_option *) = {
        ts_float_fixed, ts_float_stub, ts_float_spur};
    const ts_take_off *take_off = &drive->drive[item->drive].take_off;
    const ts_spool    *spool    = &drive->spools[drive->drive[item->drive].spool];
    const ts_train    *train    = floats->power->motion->train;
    const bool         chosen   = take_off->scheme.standing == TS_GIVEN;

    item->mesh    = mesh_of(train, take_off);
    item->missing = missing_of(floats, spool, item->mesh);
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        empty(&item->options[i]);
        item->options[i].chosen = chosen && (int)take_off->scheme.value == i;
    }
    if (item->missing != NULL)
        return;
    ts_float_job   job   = {.drive    = drive,
                            .floats   = floats,
                            .take_off = take_off,
                            .mesh     = &train->meshes[item->mesh],
                            .turn     = &floats->power->motion->meshes[item->mesh],
                            .item     = item,
                            .workings = workings,
                            .played   = ts_measure_known(take_off->backlash) &&
                                      ts_measure_known(take_off->tolerance),
                            .body = take_off->bevels.side.value == TS_REAR ? 1.0 : -1.0};
    const uint32_t tower = job.mesh->driven_shaft;

    item->s[0]   = spool->axial_travel.low;
    item->s[1]   = spool->axial_travel.high;
    item->r      = is_known(&spool->radial_travel)
                       ? fmax(fabs(spool->radial_travel.low), fabs(spool->radial_travel.high))
                       : 0.0;
    item->seat   = ts_bevel_seat_of(&job.turn->virt);
    job.inner    = line_of(floats->lines, TS_LINE_INNER, tower);
    job.stand_in = line_of(floats->lines, TS_LINE_STUB, job.mesh->driver_shaft);
    if (job.stand_in == NULL)
        job.stand_in = job.inner;
    find_loads(&job);
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++) {
        ts_workings_about(workings, item->options[i].node, TS_EVERY_CONDITION);
        ts_float_grow(&job, &item->options[i]);
        solve[i](&job, &item->options[i]);
    }
}

void ts_floats_solve(const ts_drive *drive, ts_floats *floats, ts_workings *workings)
{
    for (uint32_t d = 0; d < floats->count; d++)
        solve_one(drive, floats, &floats->items[d], workings);
}
