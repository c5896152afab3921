/* solid/bodies.c: which bodies has a drive, and where do they stand? */
#include "solid/body_parts.h"

#include <math.h>

static const char *const kinds[TS_SOLID_KINDS] = {"gear",         "bevel",  "shaft",
                                                  "radial shaft", "casing", "body"};

const char *ts_solid_kind_says(ts_solid_kind kind)
{
    return kinds[kind];
}

/* ---- shafts and bodies ----------------------------------------------------------------------
 */

/* Along the outside, and back along the bore; no thicker than the seat, as it is weighed. */
static size_t outline_of(const ts_mass_outline *outline, ts_section_point *out)
{
    const double middle =
        0.5 * (outline->sections[0].x_1 + outline->sections[outline->count - 1].x_2);
    size_t count = 0;

    for (int i = 0; i < outline->count; i++) {
        const double r = 0.5 * fmin(outline->sections[i].d_o, outline->d_seat);
        out[count++]   = (ts_section_point){outline->sections[i].x_1 - middle, r};
        out[count++]   = (ts_section_point){outline->sections[i].x_2 - middle, r};
    }
    for (int i = outline->count - 1; i >= 0; i--) {
        const ts_beam_section *s = &outline->sections[i];
        const double           r = 0.5 * fmin(s->d_i, 0.95 * fmin(s->d_o, outline->d_seat));
        out[count++]             = (ts_section_point){s->x_2 - middle, r};
        out[count++]             = (ts_section_point){s->x_1 - middle, r};
    }
    return count;
}

static size_t tube_of(double z_1, double z_2, double r_i, double r_o, ts_section_point *out)
{
    out[0] = (ts_section_point){z_1, r_o};
    out[1] = (ts_section_point){z_2, r_o};
    out[2] = (ts_section_point){z_2, r_i};
    out[3] = (ts_section_point){z_1, r_i};
    return 4;
}

const char *ts_shape_shaft(const ts_scene_job *job, const ts_mass_part *of, ts_part *part)
{
    const ts_shaft_motion *at      = &job->motion->shafts[of->shaft];
    const ts_mass_outline *outline = &job->mass->outlines[of->shaft];
    const ts_beam_section  tube    = ts_mass_section(job->mass, of->shaft);
    ts_section_point       points[TS_SECTION_MOST];
    size_t                 count = 0;

    if (of->missing != NULL)
        return of->missing;
    if (!at->placed)
        return "its place";
    if (of->kind == TS_MASS_TOWER)
        ts_place_across(job, part, at->clock, 0.0, 1.0);
    else
        ts_place_along(job, part, 1.0);
    if (of->kind == TS_MASS_SHAFT && outline->count > 0 && outline->count <= TS_MASS_SECTIONS_MOST)
        count = outline_of(outline, points);
    else
        count = tube_of(tube.x_1, tube.x_2, 0.5 * tube.d_i, 0.5 * tube.d_o, points);
    ts_keep_section(job, points, count, part);
    return NULL;
}

const char *ts_shape_body(const ts_scene_job *job, const ts_mass_part *of, ts_part *part)
{
    const ts_measure depth = job->drive->drive[of->drive].box.depth;
    ts_section_point points[4];

    for (uint32_t p = 0; p < job->train->pad_count; p++) {
        const ts_pad *pad = &job->train->pads[p];
        if (pad->accessory < 0 || job->drive->accessories[pad->accessory].node != of->node)
            continue;
        const ts_body *body = &job->drive->accessories[pad->accessory].body;
        if (!ts_measure_known(body->radius) || !ts_measure_known(body->length))
            return "its envelope";
        if (!ts_measure_known(depth))
            return "the depth of its box";
        if (!job->motion->shafts[of->shaft].placed)
            return "its place";
        const double face = 0.5 * depth.value;
        ts_place_along(job, part, pad->face == TS_FRONT ? -1.0 : 1.0);
        ts_keep_section(job, points,
                        tube_of(face, face + body->length.value, 0.0, body->radius.value, points),
                        part);
        return NULL;
    }
    return "a pad";
}

/* ---- the whole ------------------------------------------------------------------------------ */

typedef const char *shaper(const ts_scene_job *job, const ts_mass_part *of, ts_part *part);

typedef struct form {
    ts_solid_kind kind;
    shaper       *shape; /* NULL: is not shown */
} form;

static const form forms[TS_MASS_KINDS] = {
    [TS_MASS_GEAR]      = {TS_SOLID_GEAR, ts_shape_gear},
    [TS_MASS_BEVEL]     = {TS_SOLID_BEVEL, ts_shape_bevel},
    [TS_MASS_SHAFT]     = {TS_SOLID_SHAFT, ts_shape_shaft},
    [TS_MASS_TOWER]     = {TS_SOLID_TOWER, ts_shape_shaft},
    [TS_MASS_CASING]    = {TS_SOLID_CASING, ts_shape_casing},
    [TS_MASS_ACCESSORY] = {TS_SOLID_BODY, ts_shape_body},
};

static void shape_part(const ts_scene_job *job, const ts_mass_part *of, ts_solids *out)
{
    const form *how  = &forms[of->kind];
    ts_part     part = {.kind  = how->kind,
                        .name  = of->name,
                        .node  = of->node,
                        .drive = of->drive,
                        .shaft = of->kind == TS_MASS_CASING ? TS_NOWHERE : of->shaft,
                        .gear  = TS_NOWHERE,
                        .m     = of->kind == TS_MASS_CASING ? of->m.low : of->m.value,
                        .rho   = of->rho > 0.0 ? of->rho : (double)NAN};

    if (how->shape == NULL)
        return;
    const char *missing =
        isnan(ts_scene_station(job, of->drive)) ? "its station" : how->shape(job, of, &part);
    if (missing != NULL)
        out->gaps[out->gap_count++] = (ts_gap){how->kind, of->name, missing};
    else
        out->parts[out->part_count++] = part;
}

ts_status ts_solids_of(const ts_drive *drive, const ts_mass *mass, double chord_error,
                       ts_arena *arena, ts_solids *out)
{
    const ts_motion *motion = mass->power->motion;
    const size_t     count  = mass->part_count;
    ts_gear_place   *places = TS_TAKE(arena, ts_gear_place, motion->train->gear_count);

    *out = (ts_solids){.drive  = drive,
                       .motion = motion,
                       .parts  = TS_TAKE(arena, ts_part, count),
                       .gaps   = TS_TAKE(arena, ts_gap, count)};
    if (places == NULL || out->parts == NULL || out->gaps == NULL)
        return TS_NO_MEMORY;
    ts_gear_places(motion, places);
    const ts_scene_job job = {drive, motion->train, motion, mass, places, chord_error, arena};
    for (size_t i = 0; i < count && !ts_arena_failed(arena); i++)
        shape_part(&job, &mass->parts[i], out);
    return ts_arena_failed(arena) ? TS_NO_MEMORY : TS_OK;
}
