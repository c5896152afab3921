/* draw/pair_pose.h: two gears in mesh, turned so that their loaded flanks touch on the line of
 * action.
 *
 * The pitch point is the origin and the line of centres stands upright: gear 1, the one nearer to
 * the spool, below, gear 2 above.  x to the right, y up, lengths in m, angles in rad ccw from +y.
 */
#ifndef TS_DRAW_PAIR_POSE_H
#define TS_DRAW_PAIR_POSE_H

#include "element/cylindrical_pair.h"
#include "element/tooth_curve.h"
#include "element/tooth_outline.h"

typedef struct ts_pair_pose {
    ts_cylindrical_pair  pair;
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear[2];
    ts_tooth_curve       curve[2];
    ts_outline_point     axis[2];
    int                  turn[2]; /* +1 ccw, -1 cw                                              */
    int                  side[2]; /* +1: the flank on the ccw side of its teeth carries; -1     */
    int                  lean;    /* +1: the line of action rises to the right; -1 to the left  */
    double rho_1;     /* where a pair of teeth touches: at D, or at C where D lies past the path */
    double middle[2]; /* rad, of a tooth of each gear, both of the pair that touches there       */
} ts_pair_pose;

/* How the pair is driven. */
typedef struct ts_pair_drive {
    int  turn_1;   /* +1 ccw, -1 cw                      */
    bool backward; /* gear 2 drives gear 1               */
} ts_pair_drive;

/* False when the pair has no path of contact that could be drawn: internal gears, or numbers that
 * are not finite. */
bool ts_pair_pose_of(const ts_cylindrical_pair *pair, ts_pair_drive drive, ts_pair_pose *pose);

/* The point of the line of action where gear 1 has this radius of curvature. */
ts_outline_point ts_pair_action_point(const ts_pair_pose *pose, double rho_1);

/* The point of the loaded flank (`loaded`), or of the other one, of tooth `tooth` of gear 0 or 1,
 * where its radius of curvature is rho; it lies on the tooth's involute for rho >= 0. */
ts_outline_point ts_pair_flank_point(const ts_pair_pose *pose, int gear, int tooth, double rho);

/* Radii of curvature between which the flank works: 0 from, 1 to. */
void ts_pair_active_flank(const ts_pair_pose *pose, int gear, double rho[2]);
/* Where it works alone; false when two pairs at least always share the load. */
bool ts_pair_single_flank(const ts_pair_pose *pose, int gear, double rho[2]);

#endif
