/* element/tooth_outline.h: the transverse outline of an external gear tooth, as cut by its rack. */
#ifndef TS_ELEMENT_TOOTH_OUTLINE_H
#define TS_ELEMENT_TOOTH_OUTLINE_H

#include "base/arena.h"
#include "element/cylindrical_gear.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_outline_point {
    double x, y; /* m */
} ts_outline_point;

/* Half a tooth.  The gear's axis is the origin and the middle of the tooth lies on +y; the points
 * go from the middle of the space on the right, along root circle, fillet, flank and tip circle,
 * to the middle of the tooth.  The other half is its mirror image in x. */
typedef struct ts_tooth_shape {
    ts_outline_point *points;
    size_t            count;
    size_t            fillet; /* first point of the fillet                              */
    size_t            flank;  /* first point of the involute; also the last of the fillet */
    size_t            tip;    /* first point of the tip circle; also the last of the flank */
    double            r_form; /* m, where the fillet meets the involute                 */
    double            r_tip;  /* m, tip circle, or the point where both flanks meet     */
    double            r_root; /* m                                                      */
    int               z;
    bool              undercut;
    bool              pointed;
} ts_tooth_shape;

typedef enum ts_outline_fault {
    TS_OUTLINE_FINE,
    TS_OUTLINE_INTERNAL,     /* an internal gear is not cut by a rack                     */
    TS_OUTLINE_CUT_THROUGH,  /* the root trochoids of both flanks meet: no tooth is left  */
    TS_OUTLINE_NO_FLANK,     /* the tip circle lies below the end of the involute         */
    TS_OUTLINE_OUT_OF_RANGE, /* chord error not between 1e-9 m and half a module          */
    TS_OUTLINE_NO_MEMORY
} ts_outline_fault;

#define TS_OUTLINE_CHORD_ERROR 1e-6 /* m, fine enough for drawings and clash tests */

/* Traces the outline.  No point is further than `chord_error` (m) from the true curve, and the
 * points themselves lie on it.
 *
 * Involute and root trochoid are exact: the trochoid is the envelope of the rack's tip round (in
 * the transverse section of a helical gear an ellipse).  With undercut the outline leaves the
 * involute where the trochoid crosses it.  The points are taken from the arena. */
ts_outline_fault ts_tooth_outline(const ts_cylindrical_frame *frame,
                                  const ts_cylindrical_gear *gear, double chord_error,
                                  ts_arena *arena, ts_tooth_shape *shape);

const char *ts_outline_fault_says(ts_outline_fault fault);

/* The outline of the whole gear is closed and anticlockwise.  Point `index` of 0 .. size - 1, with
 * the middle of tooth 0 turned by `phase` (rad, anticlockwise) from +y and the axis at `axis`. */
size_t           ts_gear_outline_size(const ts_tooth_shape *shape);
ts_outline_point ts_gear_outline_at(const ts_tooth_shape *shape, size_t index, double phase,
                                    ts_outline_point axis);

#endif
