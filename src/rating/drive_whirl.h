/* rating/drive_whirl.h: at which speeds do the shafts of a drive whirl?
 *
 * Rotors    A box shaft between its bearings.  A radial shaft: both gearshafts and the tube as one
 *           line from bevel apex to bevel apex, joined by the splines, which tilt as `spline
 *           stiffness` lets them.  The shaft of a take-off that is not on the spool.
 * Shape     The lines of rating/drive_lines.h: sections, bearings and their stiffness; gears are
 *           discs of their mass and inertia.  Accessories lie in bearings of their own.
 * Frame     x along the rotor; of a radial shaft outwards from the apex of the take-off.
 * Limits    Housings are rigid, bearings alike in all directions, forces of teeth left out.
 * Sources   docs/method/whirl.md
 */
#ifndef TS_RATING_DRIVE_WHIRL_H
#define TS_RATING_DRIVE_WHIRL_H

#include "base/memo.h"
#include "mass/mass.h"
#include "rating/drive_lines.h"
#include "response/rotor.h"

#define TS_WHIRL_PARTS_MOST    3
#define TS_WHIRL_SECTIONS_MOST (3 * TS_LINE_SECTIONS_MOST)
#define TS_WHIRL_DISCS_MOST    (2 * TS_LINE_GEARS_MOST)
#define TS_WHIRL_BEARINGS_MOST 5

/* A line and where it lies along the rotor. */
typedef struct ts_whirl_part {
    uint32_t line;
    double   offset;   /* of its own x      */
    double   from, to; /* of what counts    */
} ts_whirl_part;

typedef struct ts_whirl_item {
    bool          radial;
    const char   *name; /* "hp tower shaft", "fuel pump" */
    ts_node       node; /* its record                    */
    uint32_t      shaft;
    uint32_t      drive;
    const char   *fault;   /* NULL, or why it is not computed: a sentence        */
    const char   *missing; /* NULL, or what the file lacks for it: a noun ...     */
    const char   *lacks;   /* ... and whose that is                               */
    ts_whirl_part parts[TS_WHIRL_PARTS_MOST];
    int           part_count;

    ts_rotor_section sections[TS_WHIRL_SECTIONS_MOST];
    ts_rotor_disc    discs[TS_WHIRL_DISCS_MOST];
    ts_rotor_bearing bearings[TS_WHIRL_BEARINGS_MOST];
    const char      *bearing_names[TS_WHIRL_BEARINGS_MOST]; /* "inner gear" */
    ts_rotor_joint   joints[TS_ROTOR_JOINTS_MOST];
    ts_rotor         rotor;  /* points into the above */
    bool             stated; /* does the file state every stiffness?           */
    double           mid;    /* m, of the mid bearing; NaN: none               */
    double           length; /* m */

    double  top;     /* rad/s, the highest speed of all conditions; NaN: not known */
    int32_t top_at;  /* in which                                                 */
    double  forward; /* rad/s, first forward critical; INFINITY: none; NaN        */
} ts_whirl_item;

typedef struct ts_whirls {
    const ts_drive *drive;
    const ts_lines *lines;
    const ts_mass  *mass;
    ts_whirl_item  *items;
    uint32_t        count;
    ts_rotor_frame *frame; /* room for one */
    ts_memo        *memo;  /* of the last solve; NULL: none */
} ts_whirls;

ts_status ts_whirls_prepare(const ts_drive *drive, const ts_lines *lines, const ts_mass *mass,
                            ts_arena *arena, ts_whirls *out);
/* Behind solved lines and masses.  Allocates nothing. */
void ts_whirls_solve(ts_whirls *whirls, ts_workings *workings);

/* A radial shaft as it might be. */
typedef struct ts_whirl_trial {
    double outside, bore; /* m, of the tube                             */
    double length;        /* m, from apex to apex                        */
    double mid;           /* share of the length at which it has a mid bearing; NaN: none */
} ts_whirl_trial;

/* rad/s, its first forward critical; NaN: it cannot be built. */
double ts_whirl_try(const ts_whirls *whirls, uint32_t item, const ts_whirl_trial *trial);
/* m, the greatest length at which that critical is at least `least`; NaN: none is. */
double ts_whirl_longest(const ts_whirls *whirls, uint32_t item, const ts_whirl_trial *trial,
                        double least);

#endif
