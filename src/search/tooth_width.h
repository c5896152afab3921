/* search/tooth_width.h: which face widths, in steps, keep all safeties of the teeth at least mass?
 *
 * Method    From the least widths upwards: every mesh whose safeties are too small gets one step
 *           more, until all hold; then, mesh by mesh, every step that is not needed is taken back.
 *           The whole drive is rated anew each time, since meshes share gears, flanks and bending.
 * Proof     At the end all safeties hold, and no mesh alone can be a step narrower.  That wider
 *           teeth are safer ones is not assumed of the result, which is rated as it stands.
 * Width     A gear is as wide as the widest of its meshes needs.  Gears of meshes that cannot be
 *           rated, or that carry nothing, are not made narrower.
 */
#ifndef TS_SEARCH_TOOTH_WIDTH_H
#define TS_SEARCH_TOOTH_WIDTH_H

#include "base/diagnostic.h"
#include "rating/drive_teeth.h"

/* A solved drive, whose gears the search makes wider and narrower. */
typedef struct ts_width_rig {
    const ts_drive *drive;
    ts_train       *train;
    ts_motion      *motion;
    ts_power       *power;
    ts_teeth       *teeth;
    ts_diagnostics *list;
} ts_width_rig;

typedef struct ts_gear_width {
    uint32_t gear;
    double   before; /* m; NaN: not known                                                     */
    double   after;  /* m                                                                     */
    uint32_t mesh;   /* whose need it is; TS_NOWHERE: kept, for a mesh that is not sized      */
} ts_gear_width;

typedef enum ts_width_state {
    TS_MESH_NOT_SIZED, /* bevels, meshes that carry nothing or cannot be rated                */
    TS_MESH_SIZED,
    TS_MESH_AT_LEAST, /* it could be narrower than the least width                            */
    TS_MESH_TOO_WEAK  /* not even the greatest width is enough                                */
} ts_width_state;

typedef struct ts_width_plan {
    ts_gear_width  *gears; /* cylindrical gears, in the order of the train                     */
    size_t          gear_count;
    ts_width_state *meshes;      /* [mesh]                                                     */
    double          mass_before; /* kg, of all gears as solid discs at their reference circles */
    double          mass_after;  /*     NaN: a width or a geometry is not known                */
    size_t          ratings;     /* how often the drive was rated                              */
    bool            fits;        /* do all sized meshes hold?                                  */
} ts_width_plan;

/* step: m, > 0.  The rig ends with the new widths, rated. */
ts_status ts_find_tooth_widths(const ts_width_rig *rig, double step, ts_arena *arena,
                               ts_width_plan *plan);

#endif
