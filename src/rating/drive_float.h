/* rating/drive_float.h: what does the movement of a spool do to its take-off, by each of the three
 * ways to bear it?
 *
 * Schemes   The bevel held by the rotor moves with it.  On a splined stub, or driven through a wide
 *           spur, it stands in bearings of its own, and spline or spur faces slide instead.
 * Bounds    Every quantity is bounded over all positions between the ends of the axial travel, any
 *           way of the radial travel, the backlash as it may be built and the temperatures of the
 *           file: each enters once and monotonically, so that the ends of the sums are exact.
 * Stops     The travel, from the cold build, beyond which a scheme no longer works, and the one at
 *           which the drive is interrupted; each with all else at its worst.
 * Made up   What the file does not say of a scheme (all of those that are not chosen) is made for
 *           the loads: docs/method/float.md.
 * Workings  About `fixed bevel`, `splined stub`, `wide spur` below the record of the take-off.
 */
#ifndef TS_RATING_DRIVE_FLOAT_H
#define TS_RATING_DRIVE_FLOAT_H

#include "element/bevel_shift.h"
#include "rating/drive_lines.h"

enum { TS_FLOAT_SCHEMES = 3 }; /* of ts_float_scheme */

typedef enum ts_float_cause {
    TS_FLOAT_BINDS,   /* the backlash is gone                                  */
    TS_FLOAT_TIPS,    /* tips meet roots                                       */
    TS_FLOAT_HANDS,   /* less than one pair of teeth at a time                 */
    TS_FLOAT_EDGE,    /* the contact pattern runs off the face                 */
    TS_FLOAT_BOTTOMS, /* the spline has no slide left and pushes the bevel     */
    TS_FLOAT_NARROW,  /* the faces of the spurs overlap less than their load needs */
    TS_FLOAT_CAUSES
} ts_float_cause;
const char *ts_float_cause_says(ts_float_cause cause); /* "the bevels bind" */
/* "fixed bevel", "splined stub", "wide spur": the words of the file */
const char *ts_float_scheme_name(ts_float_scheme scheme);

typedef struct ts_float_option {
    ts_node        node;     /* of its workings                                             */
    bool           chosen;   /* by the file                                                 */
    bool           made;     /* slide, overlap or length are made up, not told              */
    double         j[2];     /* m    least and greatest normal backlash                     */
    double         dj[2];    /* m    ... and what the axial travel alone adds to it         */
    double         shift[2]; /* m    of the teeth of gear 1 along the face, + outwards      */
    double         b_left;   /* m    least common face                                      */
    double         eps;      /* 1    least transverse contact ratio of the virtual gears    */
    double         slide[2]; /* m    that spline or spur faces allow; 0: nothing slides     */
    double         left;     /* m    ... of it at the worse end; NaN: nothing slides        */
    double         engaged;  /* m    least length of spline, or of spur faces; NaN: none    */
    double         F_a;      /* N    greatest push along the spool on what locates bevel 1  */
    double         F_r;      /* N    ... and across, on its bearings together, at most      */
    double         m;        /* kg   more than the fixed bevel                              */
    int            parts;    /*      more than the fixed bevel                              */
    int            meshes;   /*      more in the path of the start                          */
    double         stop[2];  /* m    forward (<= 0) and rearward (>= 0)                     */
    ts_float_cause cause[2];
    double apart[2]; /* m    travel at which the drive is interrupted; infinite: not that way  */
    double r_stop;   /* m    radial travel that it bears, at the worst axial travel */
} ts_float_option;

typedef struct ts_drive_float {
    uint32_t        drive;
    uint32_t        mesh;    /* of the bevels                           */
    const char     *missing; /* NULL, or what is not known: a noun      */
    double          s[2];    /* m    axial travel, + rearward           */
    double          r;       /* m    radial travel, any way             */
    double          warm[2]; /* m    closing by growth                  */
    ts_bevel_seat   seat;
    ts_float_option options[TS_FLOAT_SCHEMES];
} ts_drive_float;

typedef struct ts_floats {
    const ts_power *power;
    const ts_lines *lines;
    ts_drive_float *items; /* [drive] */
    uint32_t        count;
} ts_floats;

/* Memory, and the addresses of the workings: `source` grows by them; it may be NULL. */
ts_status ts_floats_prepare(const ts_drive *drive, const ts_power *power, const ts_lines *lines,
                            ts_source *source, ts_arena *arena, ts_floats *out);
/* Everything behind solved lines.  Allocates nothing. */
void ts_floats_solve(const ts_drive *drive, ts_floats *floats, ts_workings *workings);

/* The option that the file chose, or NULL. */
static inline const ts_float_option *ts_float_chosen(const ts_drive_float *item)
{
    for (int i = 0; i < TS_FLOAT_SCHEMES; i++)
        if (item->options[i].chosen)
            return &item->options[i];
    return NULL;
}

/* How much of its way an option has left, at the worse end; < 0: it stops before. */
double ts_float_reserve(const ts_drive_float *item, const ts_float_option *option);

#endif
