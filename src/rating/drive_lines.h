/* rating/drive_lines.h: how does every shaft of a drive lie in its bearings, how does it bend, and
 * how long do both last?
 *
 * Lines     A line is one body that turns in bearings of its own: a box shaft; the gearshaft at
 *           either end of a radial shaft and the tube between them, which splines join, so that
 *           only torque passes; the shaft of a take-off's bevel gear that the spool turns by a
 *           spline or a spur.  A bevel gear on the spool itself lies in the engine's bearings.
 * Frame     x along the line: rearwards, of a radial shaft outwards; x = 0 at that end from which
 *           the sections are counted.  Box: y to the right and z upwards as seen from behind.
 *           Radial shaft: y the way its flanks move at the mesh with the spool (tau), z square to
 *           both.  Right-handed, as element/shaft_beam.h.
 * Shape     What the file leaves open follows from loads and few lengths; every number of it is an
 *           assumption (docs/method/drive_lines.md).
 * Method    One beam a line is solved for a unit force and a unit couple at each gear; conditions
 *           are sums of those.  Loads act at the middle of each face.  Weight, gyroscopic moments
 *           and clearance are left out.
 * Workings  Under addresses of their own, `shaft` below the record of a shaft, and `bearings/...`.
 */
#ifndef TS_RATING_DRIVE_LINES_H
#define TS_RATING_DRIVE_LINES_H

#include "base/memo.h"
#include "element/shaft_beam.h"
#include "model/source.h"
#include "power/power.h"
#include "rating/bearing/bearing_rate.h"
#include "rating/shaft/din743.h"

#define TS_LINE_GEARS_MOST    5
#define TS_LINE_BEARINGS_MOST 2
#define TS_LINE_SECTIONS_MOST 16
#define TS_LINE_NOTCHES_MOST  14
#define TS_LINE_EXITS_MOST    12 /* ways by which torque may leave a line */
#define TS_LINE_SITES_MOST    (3 * TS_LINE_GEARS_MOST + TS_LINE_NOTCHES_MOST)

#define TS_LINE_SPLINE 18e-3 /* m, beyond a bearing where a spline takes the torque */

typedef enum ts_line_kind {
    TS_LINE_STUB,  /* of a take-off's bevel gear that is not on the spool itself */
    TS_LINE_INNER, /* gearshaft of a radial shaft at the spool                   */
    TS_LINE_TUBE,  /* the radial shaft between its gearshafts                    */
    TS_LINE_OUTER, /* gearshaft at the box                                       */
    TS_LINE_BOX
} ts_line_kind;

typedef struct ts_line_gear {
    uint32_t gear;
    ts_node  node;    /* of its own workings        */
    double   x;       /* m   middle of its face     */
    double   width;   /* m   of the face, along x   */
    double   d_f;     /* m   root diameter          */
    double   r;       /* m   radius of the tooth force */
    double   k_twist; /* N.m/rad  of the body from end to end of the face */
} ts_line_gear;

typedef struct ts_line_bearing {
    const char            *place; /* "front", "inner gear" */
    ts_node                node;
    const ts_bearing_seat *seat;
    double                 x;          /* m, its middle                                        */
    double                 width;      /* m, of all rows                                       */
    double                 laid_width; /* m, by which its line is laid out; 0: none is chosen */
    double             bulk; /* m3, by its own row of the table, whatever `width` the file tells */
    double             least_bulk; /* m3, of any that may still be chosen: line_settle.c  */
    double             k_r;        /* N/m                                                  */
    bool               there;      /* false: the file says `none`                          */
    bool               locates;    /* carries the axial load                               */
    bool               given;      /* form, bore and series (or an inside) stand in the file */
    const char        *fault;      /* NULL, or why there is no rating                      */
    const char        *series;     /* of ISO 15, or NULL                                   */
    ts_bearing         bearing;
    ts_bearing_ability ability;
    ts_bearing_rating  rating;     /* of the whole life */
    double             F_ref;      /* N, at which k_r stands */
    double             F_follow;   /* N, load with which its elements follow the box's limits */
    double             slip_start; /* radial load over what keeps the elements rolling at the
                                      box's acceleration limits, the least of all conditions */
    int32_t slip_start_at;
} ts_line_bearing;

/* A place where the outline changes, or where a spline takes the torque; DIN 743. */
typedef struct ts_line_notch {
    ts_node        node;
    double         x; /* m */
    ts_din_section section;
    ts_din_ability ability;
    double         S_D, S_F;   /* the least of all conditions                                  */
    int32_t        at_D, at_F; /* in which; at_D TS_EVERY_CONDITION: the swing of the torque   */
    ts_din_stress  swing;      /* of the torque over all conditions, with the greatest bending */
    double         M, T;       /* N.m, greatest bending and torque there                       */
    double         T_a, T_m;   /* N.m, half its swing with standstill, and its middle            */
} ts_line_notch;

typedef struct ts_line {
    ts_line_kind kind;
    uint32_t     shaft;   /* of the train                                              */
    ts_node      node;    /* of its own workings                                       */
    ts_node      subject; /* its record in the file: what findings are about           */
    const char  *name;    /* "fuel pump", "hp tower shaft, inner end"                  */
    const char  *fault;   /* NULL, or why it is not computed: a sentence               */
    const char  *missing; /* NULL, or what the file lacks for it: a noun               */
    bool         slides;  /* what is to hold it along its axis is a cylindrical roller bearing */
    const char  *quarrel; /* NULL, or how its bearings are told to hold it, which cannot be    */

    ts_line_gear    gears[TS_LINE_GEARS_MOST];
    int             gear_count;
    ts_line_bearing bearings[TS_LINE_BEARINGS_MOST];
    int             bearing_count;
    ts_beam_section sections[TS_LINE_SECTIONS_MOST];
    int             section_count;
    ts_line_notch   notches[TS_LINE_NOTCHES_MOST];
    ts_node         notch_nodes[TS_LINE_NOTCHES_MOST];
    int             notch_count;
    ts_node exit_nodes[TS_LINE_EXITS_MOST]; /* of what it bears by each way: line_branch.h */
    int     weakest_D, weakest_F;           /* notches; -1: none is stressed                     */
    int     weakest_K;                      /* notch of S_K, where weakest_D is one              */
    double  n_G; /* safety of the first by Goodman's line, the second opinion        */
    double  S_K; /* least of all for as long as the conditions last */
    double  d_ref, d_journal, d_seat, d_bore; /* m, what the outline was made from   */
    double  d_most;                           /* m, that a bearing may have as its bore */
    double  length;                           /* m                                      */
    bool    lies_as_told;  /* by places or sections of the file, or on one side */
    double  L_stack, L_ax; /* m, its gears and bearings along the axis, and with the walls
                              of its box; NaN: of no box, or not laid out               */
    double E, G, rho;
    double axis[3], across[3], up[3]; /* x, y, z of the line in engine axes */
    double sense;                     /* +1 or -1 about x; NaN: not known   */
    int    rounds;        /* of layout and choice, until both agreed                      */
    bool   settled;       /* false: they did not, and what was chosen last is kept        */
    double torque_end[2]; /* m, where a pad or spline at the front (inner) and rear (outer)
                             end takes torque */
} ts_line;

/* One line in one condition. */
typedef struct ts_line_gear_load {
    double F[3], M[3]; /* N, N.m in the frame of the line, all meshes of the gear; M[0] is the
                          torque by which the shaft is driven there                            */
} ts_line_gear_load;
typedef struct ts_line_gear_state {
    double v[2], theta[2]; /* m, rad at the middle of its face, in y and z              */
    double end[2][2];      /* m, v at both ends of the face                             */
    double dv[2];          /* m, v at the rear end less that at the front end           */
} ts_line_gear_state;
typedef struct ts_line_reaction {
    double F[3]; /* N, of the bearing on the shaft */
    double F_r;  /* N                              */
} ts_line_reaction;

typedef struct ts_line_case {
    ts_line_gear_load  load[TS_LINE_GEARS_MOST];
    ts_line_gear_state state[TS_LINE_GEARS_MOST];
    ts_line_reaction   reaction[TS_LINE_BEARINGS_MOST];
    double             pad[2]; /* N.m, torque on the shaft at its front (inner), rear (outer) end */
    double             omega;  /* rad/s                                                        */
    bool               known;  /* false: forces or speed are not known                         */
    ts_duty_rating     duty[TS_LINE_BEARINGS_MOST];
} ts_line_case;

typedef struct ts_lines_catalog ts_lines_catalog; /* made by ts_lines_prepare */

typedef struct ts_lines {
    const ts_motion  *motion;
    const ts_power   *power;
    ts_line          *lines; /* the train's order; of a radial shaft inner, tube, outer */
    uint32_t          count;
    ts_line_case     *cases;   /* [condition * count + line]                              */
    uint32_t         *of_gear; /* [gear]: its line, or TS_NOWHERE                     */
    int              *seat_of; /* [gear]: its number on that line                     */
    ts_lines_catalog *catalog;
    ts_memo          *memo;   /* of the last solve; NULL: none */
    double           *lives;  /* scratch */
    double           *askew;  /* [condition * mesh_count + mesh], m over the common face: by how
                                 much more bent and twisted shafts part the teeth at the rear ends;
                                 its amount is f_sh of ISO 6336-1.  NaN: not computed      */
    ts_node         oil_node; /* of the workings of the oil in the bearings              */
    double         *nu;       /* [condition] m2/s, of the oil in the bearings            */
    ts_bearing_want want;     /* how clean it is, and how many bearings are to last      */
    double          life;     /* s, that the drive must last: all conditions          */
    double          set_life; /* s, modified life of all bearings together            */
} ts_lines;

/* Generic bearings do not depend on the drive: who solves many opens them once, and lends them. */
ts_lines_catalog *ts_lines_catalog_open(ts_arena *arena);

/* Memory, and the addresses of what is computed: `source` grows by them (model/source.h); it may be
 * NULL.  catalog NULL: one of its own. */
ts_status ts_lines_prepare(const ts_drive *drive, const ts_power *power, ts_source *source,
                           ts_lines_catalog *catalog, ts_arena *arena, ts_lines *out);
/* Everything behind a solved power.  Allocates nothing. */
void ts_lines_solve(const ts_drive *drive, ts_lines *lines, ts_workings *workings);

/* ---- trying other bearings --------------------------------------------------------------------
 */

/* A generic bearing that a seat may have. */
typedef struct ts_line_pick {
    ts_bearing_form   form;
    int               rows;
    int               series; /* as the field of the file counts them: 19, 10, 02, 03 */
    ts_bearing_size   size;
    ts_bearing_inside inside;
} ts_line_pick;

#define TS_LINE_PICKS_MOST 84

/* Why no other bearing may stand there, a piece of a sentence; NULL: one may. */
const char *ts_lines_fixed_seat(const ts_line_bearing *b);
/* What may stand in the seat of bearing k of a line that was solved, whatever series and bore the
 * file has for it: bores from the journal that its loads ask for to what fits through the gears;
 * where the sections of the shaft are told, the bore that is told alone.  Form and rows as told;
 * else as the program chooses them, or with `balls` the balls that stand in for rollers.  Returns
 * how many. */
int ts_lines_list_picks(const ts_drive *drive, const ts_lines *lines, uint32_t line, int k,
                        bool balls, ts_line_pick picks[TS_LINE_PICKS_MOST]);
/* The seat as a file would have it that tells this bearing. */
void ts_line_put_pick(ts_bearing_seat *seat, const ts_line_pick *pick);
/* Places, loads and rates the bearings of one line anew, with the seats that it points at, until
 * layout and choice agree.  Its outline and what bends stay as they were. */
void ts_lines_try_bearings(const ts_drive *drive, ts_lines *lines, uint32_t line);

/* "stub", "inner", "tube", "outer", "box" */
const char *ts_line_kind_name(ts_line_kind kind);

static inline const ts_line_case *ts_line_at(const ts_lines *lines, uint32_t line,
                                             uint32_t condition)
{
    return &lines->cases[(size_t)condition * lines->count + line];
}

#endif
