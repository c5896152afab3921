/* solid/body_parts.h: what the files of the scene share. */
#ifndef TS_SOLID_BODY_PARTS_H
#define TS_SOLID_BODY_PARTS_H

#include "solid/bodies.h"
#include "solid/gear_place.h"

typedef struct ts_scene_job {
    const ts_drive      *drive;
    const ts_train      *train;
    const ts_motion     *motion;
    const ts_mass       *mass;
    const ts_gear_place *places; /* [gear] */
    double               chord_error;
    ts_arena            *arena;
} ts_scene_job;

/* Each shapes what `of` weighs into `part`, whose kind, name, node, drive and shaft stand there.
 * NULL, or what is missing: a noun.  Without memory the arena says so. */
const char *ts_shape_gear(const ts_scene_job *job, const ts_mass_part *of, ts_part *part);
const char *ts_shape_bevel(const ts_scene_job *job, const ts_mass_part *of, ts_part *part);
const char *ts_shape_shaft(const ts_scene_job *job, const ts_mass_part *of, ts_part *part);
const char *ts_shape_casing(const ts_scene_job *job, const ts_mass_part *of, ts_part *part);
const char *ts_shape_body(const ts_scene_job *job, const ts_mass_part *of, ts_part *part);

/* m, of the middle of the depth of a box, which is its radial shaft's axis; NaN: not known. */
double ts_scene_station(const ts_scene_job *job, uint32_t drive);
/* On the axis of an engine-parallel shaft, seen along +z, or -z for `sign` -1. */
void ts_place_along(const ts_scene_job *job, ts_part *part, double sign);
/* On a radial axis at `clock`, at `radius` from the engine axis, outwards, or inwards. */
void ts_place_across(const ts_scene_job *job, ts_part *part, double clock, double radius,
                     double sign);
/* Copies a section, points that repeat left out, and computes its volume. */
void ts_keep_section(const ts_scene_job *job, const ts_section_point *points, size_t count,
                     ts_part *part);

#endif
