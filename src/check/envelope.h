/* check/envelope.h: which circles do gears and bodies fill, and in which planes do gears lie? */
#ifndef TS_CHECK_ENVELOPE_H
#define TS_CHECK_ENVELOPE_H

#include "base/arena.h"
#include "check/rule.h"
#include "model/train.h"
#include "motion/motion.h"

#include <stdbool.h>
#include <stdint.h>

/* Gears with the same plane lie side by side: those that mesh, and those that mesh with them; step
 * gears of one shaft differ.  TS_NOWHERE ends a list. */
typedef struct ts_envelope {
    double   *tip;     /* [gear] m, radius of the tip circle; NaN: not known, or a bevel       */
    uint32_t *plane;   /* [gear] number of its plane                                           */
    uint32_t *driver;  /* [gear] the gear that drives it; TS_NOWHERE: none                     */
    uint32_t *mesh;    /* [gear] the first of its meshes with a geometry; TS_NOWHERE: none     */
    uint32_t *first;   /* [shaft] its first gear                                               */
    uint32_t *next;    /* [gear] the next gear of the same shaft                               */
    uint32_t *drives;  /* [gear] the first mesh in which it is the driver                      */
    uint32_t *sibling; /* [mesh] the next mesh with the same driver                            */
    bool     *follows; /* [shaft] do its speeds follow the teeth in question? ts_nearest_teeth */
} ts_envelope;

ts_envelope *ts_envelope_prepare(const ts_train *train, ts_arena *arena);
size_t       ts_envelope_bytes(const ts_train *train);
void         ts_envelope_solve(const ts_train *train, const ts_motion *motion, ts_envelope *out);

/* A gear by itself, out of the first mesh that knows it. */
typedef struct ts_gear_geometry {
    uint32_t mesh;
    int      index; /* 1 or 2: which gear of the pair it is */
    double   x, x_min, s_an, d_a;
} ts_gear_geometry;

/* false when no mesh of the gear has a geometry. */
bool ts_gear_geometry_of(const ts_check *check, uint32_t gear, ts_gear_geometry *out);

/* Notes that `symbol` of `about` (every condition) is what the gear's mesh calls `first` (of its
 * gear 1) or `second`. */
void ts_borrow_of_gear(const ts_check *check, ts_node about, const ts_gear_geometry *geometry,
                       ts_input input, const char *const names[2]);

/* Distance between the axes of two shafts that are placed, noted about `about` by this formula in
 * X, Y, X_2 and Y_2. */
double ts_axes_apart(const ts_check *check, ts_node about, const ts_formula *formula,
                     uint32_t shaft, uint32_t other);

/* What a body fills on a face; false when the accessory states none. */
bool ts_body_radius(const ts_accessory *accessory, double *R);

#endif
