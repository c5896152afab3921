/* mass/mass.h: what does every part of a drive weigh, where is its centre, how hard is it to spin,
 * and what do the mounts bear?
 *
 * Shapes    Gears, bevels, radial shafts and bearings from their dimensions; box shafts and casings
 *           from shapes that are assumed (docs/method/mass.md).
 * Bands     Low and high are what the part would weigh with the extremes of what is assumed; they
 *           are equal where nothing is.  Sums of bands are guaranteed, not likely.
 * Frame     x to the right and y up seen from behind, from the engine axis; z rearward, from the
 *           engine's datum (`station` of the radial shaft).
 * Unknown   A part whose mass the file lacks has NaN and says what is missing; sums leave it out
 * and count it. Inertia   Of parts that turn, about their own axis; seen from the spool it is times
 * the square of the exact ratio.
 */
#ifndef TS_MASS_MASS_H
#define TS_MASS_MASS_H

#include "catalog/bearing_size.h"
#include "element/shaft_beam.h"
#include "power/power.h"

typedef enum ts_mass_kind {
    TS_MASS_GEAR,
    TS_MASS_BEVEL,
    TS_MASS_SHAFT,
    TS_MASS_BEARINGS, /* all of one shaft */
    TS_MASS_TOWER,
    TS_MASS_CASING,
    TS_MASS_ACCESSORY,
    TS_MASS_KINDS
} ts_mass_kind;

typedef struct ts_band {
    double low, value, high;
} ts_band;

typedef struct ts_mass_part {
    ts_mass_kind kind;
    uint32_t     drive;
    uint32_t     shaft;     /* that it turns with; TS_NOWHERE: it stands still                    */
    bool         clutch;    /* an accessory that stands still once it is overrun                  */
    ts_node      node;      /* what its workings are about ...                                    */
    const char  *m_name;    /* ... and the names of mass and inertia there                        */
    const char  *J_name;    /* NULL: it does not turn                                             */
    const char  *name;      /* of its shaft, accessory or spool                                   */
    double       rho;       /* kg/m3, of its metal; 0: it is of several, or bought               */
    ts_band      m;         /* kg                                                                 */
    ts_band      J;         /* kg.m2, about its own axis; 0: does not turn                        */
    double       x, y, z;   /* m, centre of mass; NaN: not known                                  */
    const char  *missing;   /* NULL, or what the mass lacks: a noun                               */
    const char  *J_missing; /* the same of the inertia                                          */
} ts_mass_part;

/* In which direction the engine shakes the box: a load factor pushes the box the other way than the
 * engine moves, so `down` loads it downwards. */
typedef enum ts_shake {
    TS_SHAKE_DOWN,
    TS_SHAKE_UP,
    TS_SHAKE_FORWARD,
    TS_SHAKE_REARWARD,
    TS_SHAKE_LEFT, /* seen from behind */
    TS_SHAKE_RIGHT,
    TS_SHAKES
} ts_shake;
const char *ts_shake_says(ts_shake shake); /* "down" */

typedef struct ts_mount_load {
    double   x, y, z; /* m                                                               */
    double   R[3];    /* N, on the box, under its weight at rest                         */
    double   rest;    /* N, the resultant of these                                        */
    double   most;    /* N, the greatest resultant under the load factors ...             */
    ts_shake shake;   /* ... and the way in which it comes                                */
    double   run;     /* N, the greatest resultant under its weight and the torque of the radial
                         shaft in any condition; NaN: a torque is not known                 */
    int32_t run_at;   /* ... in which; TS_EVERY_CONDITION: no torque adds to it             */
} ts_mount_load;

typedef struct ts_box_mass {
    ts_band       metal;     /* kg, of the box with its shafts, gears and bearings             */
    ts_band       installed; /* kg, with its accessories: what the mounts carry                */
    double        x, y, z;   /* m, centre of mass of that; NaN: not known                      */
    double        overhang;  /* m, of that from the middle of the box's depth, rearward +      */
    bool          mounts_assumed;
    ts_mount_load mounts[3];
    const char   *missing; /* NULL, or why mounts have no loads: a sentence's piece            */
} ts_box_mass;

typedef struct ts_spool_inertia {
    ts_band J;       /* kg.m2 of all that it drives, seen from the spool, running               */
    ts_band cranked; /* the same with what its clutches let go when the engine runs            */
    double  own;     /* kg.m2 of the spool itself; NaN: not known                               */
} ts_spool_inertia;

/* What somebody who lays a box shaft in its bearings knows of it (rating/drive_lines.h).  Sections
 * thicker than the seat are bodies of gears, which are weighed as gears. */
#define TS_MASS_SECTIONS_MOST 32

#define TS_MASS_BEARINGS_MOST 6

/* A bearing that somebody chose or told for a shaft. */
typedef struct ts_mass_bearing {
    int               rows;
    ts_bearing_size   size; /* of one row */
    ts_bearing_inside inside;
} ts_mass_bearing;

typedef struct ts_mass_outline {
    const ts_beam_section *sections;
    int                    count;                     /* 0: nothing is known */
    double                 d_seat, d_journal, d_bore; /* m, under gears, in bearings, inside */
    ts_mass_bearing        bearings[TS_MASS_BEARINGS_MOST]; /* of a radial shaft those of its
                                                               gearshafts too */
    int bearing_count; /* 0: not known, two or three generic ones are weighed */
} ts_mass_outline;

typedef struct ts_mass_shape ts_mass_shape; /* mass/mass_parts.h */

typedef struct ts_mass {
    const ts_power   *power;
    ts_mass_part     *parts; /* drive by drive, in the order of the kinds within */
    size_t            part_count;
    ts_band           metal;       /* kg, of all but the accessories    */
    ts_band           accessories; /* kg                                */
    ts_band           total;
    double            x, y, z; /* m, centre of mass of the total        */
    size_t            missing; /* parts without a mass                  */
    size_t            J_missing;
    ts_box_mass      *boxes;    /* [drive]                                */
    ts_spool_inertia *spools;   /* [spool]                                */
    ts_mass_outline  *outlines; /* [shaft] for whoever knows better to fill in before it is solved;
                                   empty ones are replaced by tubes as thick as torsion asks */
    ts_mass_shape *shape;       /* [shaft] what shafts are taken to be    */
    ts_input      *inputs;      /* room for the terms of one sum          */
} ts_mass;

/* kg, one row of a generic bearing: rings up to their shoulders at 0.35 of the rolling elements'
 * diameter from the pitch circle, grooves and cage set off against each other (common practice, no
 * source), and its balls or rollers.  Steel 52100. */
double ts_mass_of_one_bearing(const ts_bearing_size *size, const ts_bearing_inside *inside);

const char *ts_mass_kind_says(ts_mass_kind kind); /* "gears" */
const char *ts_mass_part_says(ts_mass_kind kind); /* "gear" */

/* What a shaft is taken to be between a gear and a pad; NaN: not known. */
ts_beam_section ts_mass_section(const ts_mass *mass, uint32_t shaft);

/* What a cylindrical gear is below its roots, m: solid from the shaft on, or a rim s_R thick on a
 * web b_s wide. */
typedef struct ts_gear_blank {
    double r_f, r_s, b, s_R, b_s; /* s_R 0: solid */
} ts_gear_blank;
ts_gear_blank ts_mass_gear_blank(const ts_mass *mass, const ts_gear *gear, double r_f);
bool          ts_gear_blank_is_light(const ts_gear_blank *blank);

/* m, of the tips of the largest gear of a shaft; NaN: not known, or it has none. */
double ts_mass_tip_radius(const ts_mass *mass, uint32_t shaft);

/* m, radius of the hole in a bevel gear that stands on `shaft`. */
double ts_mass_bevel_bore(const ts_mass *mass, const ts_train *train, uint32_t shaft, double R_toe);

/* N.m about the face of its pad, of its weight at rest; NaN: mass or overhang are not known. */
double ts_overhung_moment(const ts_accessory *accessory);

/* Memory for one drive. */
ts_status ts_mass_prepare(const ts_drive *drive, const ts_power *power, ts_arena *arena,
                          ts_mass *out);

/* Weighs everything behind a solved power.  Allocates nothing. */
void ts_mass_solve(const ts_drive *drive, ts_mass *mass, ts_workings *workings);

#endif
