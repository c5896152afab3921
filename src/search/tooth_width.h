/* search/tooth_width.h: which face widths, in steps, keep all safeties of the teeth at least mass?
 *
 * Method    From the least widths upwards, meshes whose safeties are too small get more, until all
 *           hold; then every step of a gear that is not needed is taken back, heavy gears first;
 *           then each gear is tried wider, as long as those near to it can be so much narrower for
 *           it that the whole becomes lighter.  The whole drive is rated anew each time, since
 *           meshes share gears, flanks and bending.
 * Proof     At the end all safeties hold, no gear alone can be a step narrower, and no gear that is
 *           made wider pays for itself by what those near to it then need less.  That wider teeth
 *           are safer ones is not assumed of the result, which is rated as it stands.
 * Widths    Of gears, not of meshes: a gear that is wider than its mate bends less, up to a module
 *           at each end (ISO 6336-3), and may be wide for another of its mates.  Gears of meshes
 *           that are not sized are not made narrower.
 * Limits    The common width goes from `face to module` to `face to diameter`, which outranks it.
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
    ts_lines       *lines; /* laid and bent anew with every width; NULL: as they are */
} ts_width_rig;

#define TS_WIDTH_STEP_USUAL 0.5e-3 /* m */

typedef enum ts_width_need {
    TS_WIDTH_KEPT,  /* for a mesh that is not sized, or cannot hold                           */
    TS_WIDTH_LEAST, /* it could be narrower than the least width                              */
    TS_WIDTH_NEEDED /* a step less, and a mesh does not hold                                  */
} ts_width_need;

typedef struct ts_gear_width {
    uint32_t         gear;
    double           before; /* m; NaN: not known                                             */
    double           after;  /* m; NaN likewise                                               */
    ts_width_need    need;
    uint32_t         mesh;  /* whose need it is; TS_NOWHERE where it is kept                  */
    ts_mesh_strength fails; /* TS_WIDTH_NEEDED: that mesh with the gear a step narrower       */
} ts_gear_width;

typedef enum ts_width_state {
    TS_MESH_NOT_SIZED, /* bevels, meshes that carry nothing or cannot be rated                */
    TS_MESH_SIZED,
    TS_MESH_AT_LEAST, /* it could be narrower than the least width                            */
    TS_MESH_TOO_WEAK  /* not even the greatest width is enough                                */
} ts_width_state;

typedef struct ts_mesh_width {
    ts_width_state state;
    double         common;  /* m, the narrower of the two gears; NaN when it is not sized        */
    double         least;   /* m, between which it was sought; NaN likewise                       */
    double         most;    /*                                                                    */
    const char    *missing; /* why a cylindrical mesh is not sized: what lacks, a noun; or ...    */
    const char    *fault;   /* ... a piece of a sentence; else NULL, both                         */
} ts_mesh_width;

typedef struct ts_width_plan {
    ts_gear_width *gears; /* cylindrical gears, in the order of the train                      */
    size_t         gear_count;
    ts_mesh_width *meshes;      /* [mesh]                                                      */
    double         mass_before; /* kg, of all gears as discs of their reference circles, with  */
    double         mass_after;  /*     rim and web where given; NaN: something is not known    */
    size_t         ratings;     /* how often the drive was rated                               */
    bool           fits;        /* do all sized meshes hold?                                   */
} ts_width_plan;

/* step: m, > 0.  The rig ends with the new widths, rated. */
ts_status ts_find_tooth_widths(const ts_width_rig *rig, double step, ts_arena *arena,
                               ts_width_plan *plan);

#endif
