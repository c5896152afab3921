/* How does a caller look at masses, inertia and mounts? */
#include "study/study.h"

#include "towershaft/mass.h"

#include <math.h>

static const double none = (double)NAN;

static ts_weight weight_of(ts_band band)
{
    return (ts_weight){band.value, band.low, band.high};
}

ts_mass_view ts_study_mass(const ts_study *study)
{
    const ts_weight nothing = {none, none, none};
    if (!study->solved)
        return (ts_mass_view){nothing, nothing, none, none, none, 0};
    return (ts_mass_view){
        .drive   = weight_of(study->mass.metal),
        .total   = weight_of(study->mass.total),
        .x       = study->mass.x,
        .y       = study->mass.y,
        .z       = study->mass.z,
        .missing = study->mass.missing,
    };
}

size_t ts_study_part_count(const ts_study *study)
{
    return study->solved ? study->mass.part_count : 0;
}

ts_part_view ts_study_part(const ts_study *study, size_t index)
{
    const ts_mass_part *part = &study->mass.parts[index];
    return (ts_part_view){
        .kind    = ts_mass_part_says(part->kind),
        .name    = part->name,
        .spool   = study->drive.spools[study->drive.drive[part->drive].spool].name,
        .m       = weight_of(part->m),
        .J       = part->J_name != NULL ? weight_of(part->J) : (ts_weight){0.0, 0.0, 0.0},
        .x       = part->x,
        .y       = part->y,
        .z       = part->z,
        .missing = part->missing,
    };
}

size_t ts_study_inertia_count(const ts_study *study)
{
    return study->solved ? study->drive.spool_count : 0;
}

ts_inertia_view ts_study_inertia(const ts_study *study, size_t index)
{
    const ts_spool_inertia *seen = &study->mass.spools[index];
    return (ts_inertia_view){study->drive.spools[index].name, weight_of(seen->J),
                             weight_of(seen->cranked), seen->own};
}

size_t ts_study_mount_count(const ts_study *study)
{
    return study->solved ? 3 * study->drive.drive_count : 0;
}

ts_mount_view ts_study_mount(const ts_study *study, size_t index)
{
    const ts_box_mass   *box   = &study->mass.boxes[index / 3];
    const ts_mount_load *mount = &box->mounts[index % 3];
    const bool           known = box->missing == NULL;
    return (ts_mount_view){
        .spool   = study->drive.spools[study->drive.drive[index / 3].spool].name,
        .assumed = box->mounts_assumed,
        .x       = mount->x,
        .y       = mount->y,
        .z       = mount->z,
        .rest    = known ? mount->rest : none,
        .most    = known ? mount->most : none,
        .shaken  = ts_shake_says(mount->shake),
        .missing = box->missing,
    };
}
