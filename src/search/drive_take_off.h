/* search/drive_take_off.h: which bevels and radial shafts may drive a box, how fast does each turn
 * its input, and what does it weigh?
 *
 * Speeds    By the motion of the drive itself with those bevels in it.
 * Masses    Both pairs of bevels and the radial shaft as `check` weighs them, with nothing on the
 *           box, so that the bore of the outermost bevel is that of a bare input shaft.
 */
#ifndef TS_SEARCH_DRIVE_TAKE_OFF_H
#define TS_SEARCH_DRIVE_TAKE_OFF_H

#include "motion/motion.h"

enum { TS_TAKE_OFFS_MOST = 64 }; /* of one box */

typedef struct ts_drive_take_off {
    const ts_bevel_choice *spool, *box; /* NULL: the pair that stands there */
    const ts_tower_choice *tower;       /* NULL: the shaft that stands there */
    double                *speed;       /* of the box input, rad/s per condition */
    double                 mass;        /* kg, of bevels and radial shaft */
    double                 more;        /* kg, than those that stand there weigh */
} ts_drive_take_off;

typedef struct ts_take_off_list {
    ts_drive_take_off *items;
    size_t             count; /* 0: there would be more than TS_TAKE_OFFS_MOST */
    ts_node            at;    /* where something is wrong, and ... */
    const char        *fault; /* ... why, without its full stop; NULL: nothing is */
    bool               lacks; /* the fault is a noun that a mass lacks, no sentence */
} ts_take_off_list;

/* Does the freedom name bevels or radial shafts to choose from? */
bool ts_drive_may_take_off(const ts_box_freedom *freedom);

/* Every pair with every other and with every radial shaft.  False without memory. */
bool ts_drive_take_offs(const ts_drive *drive, size_t tapped, const ts_box_freedom *freedom,
                        ts_arena *arena, ts_take_off_list *out);

#endif
