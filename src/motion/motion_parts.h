/* motion/motion_parts.h: the steps of ts_motion_solve, in their order. */
#ifndef TS_MOTION_MOTION_PARTS_H
#define TS_MOTION_MOTION_PARTS_H

#include "model/source.h"
#include "motion/motion.h"

/* Where a node stands in the file, from 1; 0 when the drive was not read from one. */
static inline uint32_t ts_node_line(const ts_drive *drive, ts_node node)
{
    const ts_source *source = drive->source;

    return source != NULL && node > 0 && node <= source->node_count ? source->nodes[node].line : 0;
}

static inline uint32_t ts_node_column(const ts_drive *drive, ts_node node)
{
    return ts_node_line(drive, node) > 0 ? drive->source->nodes[node].column : 0;
}

/* Ratio and sense of every shaft; ratios that overflow and contradicted statements go to `list`. */
void ts_motion_turning(const ts_drive *drive, ts_motion *motion, ts_diagnostics *list,
                       ts_workings *workings);
void ts_motion_statements(const ts_drive *drive, const ts_motion *motion, ts_diagnostics *list);

/* Geometry of every mesh by itself: centre distance, radii, angles. */
void ts_motion_meshes(const ts_drive *drive, ts_motion *motion, ts_workings *workings);
/* Bounds of its backlash, once the pair is solved. */
void ts_motion_backlash(const ts_drive *drive, const ts_gear *const gears[2], ts_mesh_motion *mesh,
                        ts_workings *workings);

/* Position of every axis, then the directions at every point of mesh. */
void ts_motion_places(const ts_drive *drive, ts_motion *motion, ts_workings *workings);
void ts_motion_directions(ts_motion *motion, ts_workings *workings);

/* Speeds of shafts and meshes in every condition. */
void ts_motion_speeds(const ts_drive *drive, ts_motion *motion, ts_workings *workings);

#endif
