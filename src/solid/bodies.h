/* solid/bodies.h: every part of a drive as a body in space.
 *
 * One description from which everything in three dimensions is made: the triangles of a viewer
 * (solid/glb.h), the numbers for a page or for another program (solid/bodies_json.h).
 *
 * Frame     Of the engine: x to the right and y up seen from behind, from the engine axis; z
 *           rearward, from the engine's datum.  A part has a frame of its own: `axis` is the axis
 *           about which its section turns, `right` stands square to it.
 * Forms     A section that turns about the axis (z along it, r from it); teeth on its outside; or a
 *           casing: the outlines of its outside and its inside with a floor at either end.
 * Shapes    Gears, shafts and casings are those that the statement of mass weighs
 *           (docs/method/mass.md); bevel gears are blanks by ISO 23509 between their crowns with a
 *           flat back; bodies are cylinders by their envelope.
 * Left out  Bearings, seals, splines, pads with their studs, ribs and bosses; teeth of bevel gears.
 */
#ifndef TS_SOLID_BODIES_H
#define TS_SOLID_BODIES_H

#include "element/revolved_solid.h"
#include "mass/mass.h"
#include "solid/wall.h"

typedef enum ts_solid_kind {
    TS_SOLID_GEAR,
    TS_SOLID_BEVEL,
    TS_SOLID_SHAFT,
    TS_SOLID_TOWER,
    TS_SOLID_CASING,
    TS_SOLID_BODY, /* of an accessory */
    TS_SOLID_KINDS
} ts_solid_kind;

/* Twice the sections of an outline, with both ends. */
#define TS_SECTION_MOST (4 * TS_MASS_SECTIONS_MOST + 4)

typedef struct ts_part_teeth {
    ts_tooth_shape shape; /* count 0: no outline could be traced                             */
    const char    *fault; /* NULL, or why not                                                */
    double         phase; /* rad, middle of tooth 0 from `up` of the part in the middle of the
                             face, ccw about the axis                                       */
    double z_1, z_2;      /* m along the axis                                                */
    double twist;         /* rad, by which the outline turns ccw from z_1 to z_2             */
    double r_root, r_tip; /* m                                                          */
    int    z;
} ts_part_teeth;

typedef struct ts_part {
    ts_solid_kind           kind;
    const char             *name; /* of its shaft, accessory or spool                           */
    ts_node                 node;
    uint32_t                drive, shaft; /* TS_NOWHERE: it does not turn                       */
    uint32_t                gear;         /* TS_NOWHERE: none                                   */
    double                  origin[3], axis[3], right[3];
    const ts_section_point *section; /* as it is turned: out to the tips; count 0: a casing     */
    size_t                  section_count;
    ts_part_teeth           teeth;           /* z 0: none                                       */
    ts_wall_line            outside, inside; /* chained; of a casing, in x and y of the part    */
    double                  z_1, z_2, floor; /* m: its depth, and how thick it is at either end */
    double                  V;               /* m3, as described                                */
    double                  m, rho; /* kg, kg/m3 of the statement of mass; NaN: not known, or
                                       bought.  Of a casing without ribs and bosses              */
} ts_part;

typedef struct ts_gap { /* a part that could not be shaped */
    ts_solid_kind kind;
    const char   *name;
    const char   *missing; /* a noun */
} ts_gap;

typedef struct ts_solids {
    const ts_drive  *drive;
    const ts_motion *motion;
    ts_part *parts; /* drive by drive: gears, bevels, shafts, radial shaft, casing, bodies */
    size_t   part_count;
    ts_gap  *gaps;
    size_t   gap_count;
} ts_solids;

const char *ts_solid_kind_says(ts_solid_kind kind); /* "gear" */

/* `mass` is solved.  Teeth are traced to `chord_error` (m).  TS_OK or TS_NO_MEMORY. */
ts_status ts_solids_of(const ts_drive *drive, const ts_mass *mass, double chord_error,
                       ts_arena *arena, ts_solids *out);

#endif
