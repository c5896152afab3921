/* search/arrange_problem.h: which accessory goes where, with which teeth? The question, stated.
 *
 * The search knows no standard and no file: tooth numbers, forces and demands stand here, and what
 * a mesh needs in width and what a gear weighs is asked of a `ts_arrange_model`.
 *
 * Units     m, rad, rad/s, W, N, kg.  Every list "per condition" has `condition_count` entries.
 * Senses    +1 is counter-clockwise seen from the front of the box, -1 clockwise.  A pad is seen by
 *           somebody facing it: on the front it shows the sense of its shaft, on the rear the
 * other. Names     are for sentences only; the search compares numbers. Ties      Masses within
 * 1e-10 of each other (relative) count as equal; the one found first stands, and the order of
 * search depends on the problem alone, never on the number of threads.
 */
#ifndef TS_SEARCH_ARRANGE_PROBLEM_H
#define TS_SEARCH_ARRANGE_PROBLEM_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

enum {
    TS_ARRANGE_ACCESSORIES = 16,  /* most accessories of one problem                  */
    TS_ARRANGE_BOXES       = 4,   /* most boxes                                        */
    TS_ARRANGE_TEETH       = 400, /* most teeth of any gear                           */
    TS_ARRANGE_IDLERS      = 2,   /* most idlers in a row                              */
    TS_ARRANGE_SHAFTS      = TS_ARRANGE_ACCESSORIES * (1 + TS_ARRANGE_IDLERS) /* of a branch */
};

enum { TS_FACE_FRONT = 1, TS_FACE_REAR = 2 }; /* bits of a set of faces */

typedef enum ts_arrange_side { TS_SIDE_ANY, TS_SIDE_LEFT, TS_SIDE_RIGHT } ts_arrange_side;

/* How far apart two bodies on one face must stand, as an angle at the centre of the box.
 * Sector: asin((R_a + gap/2)/R_box) + asin((R_b + gap/2)/R_box), each body in a sector of its own.
 * Chord:  2 asin((R_a + R_b + gap)/(2 R_box)), the straight distance of the axes. */
typedef enum ts_arrange_clearance { TS_CLEARANCE_SECTOR, TS_CLEARANCE_CHORD } ts_arrange_clearance;

typedef struct ts_arrange_accessory {
    const char     *name;
    uint32_t        boxes; /* bit b: may sit on box b                                  */
    uint32_t        faces; /* TS_FACE_ bits                                            */
    int             sense; /* of the pad as seen by somebody facing it; 0: either      */
    ts_arrange_side side;  /* left or right: in that branch only, not on the input     */
    bool            input; /* on the input shaft only                                  */
    uint32_t        with;  /* accessories that must share its shaft, as bits           */
    double          body_radius;
    double          pad_mass; /* whatever the pad adds, wherever it is                 */
    double          lift;     /* kg, what is lowered when it is taken off              */
    const double   *speed_least, *speed_most; /* per condition                         */
    const double   *power;                    /* per condition; negative: drives       */
} ts_arrange_accessory;

/* One way to drive a box: a module and the teeth of its input gear, and how fast that turns. */
typedef struct ts_arrange_choice {
    uint32_t      module; /* index into `modules`                         */
    uint32_t      z_in;
    uint32_t      take_off; /* the same for choices of one box with equal speeds; for the model */
    const double *speed;    /* of the input shaft, per condition; all > 0   */
    double        mass;     /* what this choice adds (bevels, radial shaft); may be below 0 */
} ts_arrange_choice;

/* A step shaft: its second gear, outboard of the first, drives all that is beyond it in a plane of
 * its own.  A branch has at most one; without a pad it counts as an idler in its row. */
typedef struct ts_arrange_step {
    uint32_t z, z_step; /* teeth of the first gear, which meshes inwards, and of the second */
    uint32_t module;    /* of the second plane: index into `modules`, or TS_MODULE_SAME      */
} ts_arrange_step;

#define TS_MODULE_SAME UINT32_MAX

typedef struct ts_arrange_box {
    const char              *name;
    int                      input_sense; /* +1 or -1 */
    const ts_arrange_choice *choices;
    uint32_t                 choice_count;
    double                   radius; /* of the arc of gear axes */
    double                   wrap_most, side_most;
    double                   tip_most;    /* tip diameter of a gear with a pad; 0: no limit */
    double                   addendum;    /* of a gear, in modules */
    uint32_t                 input_faces; /* faces of the input shaft open to accessories      */
    double input_body[2]; /* front, rear: a fixed body where no accessory is; 0: none */
    double mass;          /* of a box that is there: its input shaft too          */
    double shaft_mass;    /* of a shaft with accessories, not the input          */
    double idler_mass;
    const ts_arrange_step *steps; /* step shafts that its branches may have */
    size_t                 step_count;
    double                 step_mass; /* what a second gear brings with it beside itself */
    double
        step_gap;  /* from the tips of the first gear, with `addendum`, to the next axis outboard */
    double casing; /* kg per metre of arc */
} ts_arrange_box;

/* What one mesh is asked. */
typedef struct ts_arrange_mesh {
    uint32_t box, module, z_in; /* module: of the plane of this mesh */
    uint32_t take_off;          /* of the choice */
    uint32_t z_first, z_second; /* of the step shaft that drives this plane; 0: the input does */
    uint32_t z_inner, z_outer;  /* inner: nearer to the input */
    bool     reversed_inner, reversed_outer; /* is either flank of that gear loaded in turn? */
    const double *force; /* tangential force per condition, N, signed: > 0 when what is outboard
                            absorbs power */
    size_t condition_count;
} ts_arrange_mesh;

/* One gear, whichever of these mates it has, inwards or outwards of it. */
typedef struct ts_arrange_gear {
    uint32_t        box, module, z_in, take_off, z_first, z_second; /* as of a mesh */
    uint32_t        z;
    bool            reversed;
    const uint32_t *mates;
    size_t          mate_count;
    size_t          condition_count;
} ts_arrange_gear;

typedef struct ts_arrange_model {
    void *context;
    /* The width that a mesh needs, m; INFINITY when none will do.  A pure function; never less when
     * a gear is reversed or a force grows; called from several threads. */
    double (*width)(void *context, const ts_arrange_mesh *mesh);
    /* True: `width` is proportional to the largest |force| over the conditions and does not depend
     * on box and z_in; it is then asked once per pair of teeth. */
    bool proportional;
    /* NULL, or for a model that is not proportional: fills in, per condition, the least width per
     * newton of |force| that `width` can ever say for a mesh of that gear, m/N; infinite when it
     * has no mate.  Bounds are much higher with it. */
    void (*least)(void *context, const ts_arrange_gear *gear, double *per_newton);
    /* The mass of a gear of that width, kg; never less when the width grows. */
    double (*gear_mass)(void *context, uint32_t module, uint32_t z, double width);
} ts_arrange_model;

typedef struct ts_arrange_problem {
    size_t                      condition_count;
    const double               *modules; /* m */
    size_t                      module_count;
    const ts_arrange_accessory *accessories;
    size_t                      accessory_count;
    const ts_arrange_box       *boxes;
    size_t                      box_count;
    ts_arrange_clearance        clearance;
    double                      gap;
    uint32_t                    z_least, z_most; /* of gears with accessories, not of the input */
    const uint32_t             *idler_teeth;
    size_t                      idler_teeth_count;
    uint32_t                    idlers_in_row; /* 0 to TS_ARRANGE_IDLERS */
    bool   hunting;                 /* every mesh needs tooth numbers without a common divisor */
    double width_step, width_least; /* width_least: a multiple of the step */
    double width_over_diameter;
    /* What counts beside mass.  0: nothing. */
    double           wrap_weight;      /* kg for each rad of wrap, of every box alike */
    double           servicing_weight; /* kg for each kg that must be lowered         */
    ts_arrange_model model;
} ts_arrange_problem;

/* What is minimised: the mass of the parts, and what the weights make of wrap and of servicing.
 * Servicing is the sum, over all accessories, of what must be lowered before each can be: whatever
 * stands on the same face of the same branch nearer to the input, or on the input.  The input is
 * taken to hang lowest.  Where this house says mass of an arrangement, this sum is meant. */

/* ---- an arrangement ----------------------------------------------------------------------------
 */

typedef struct ts_arranged_shaft {
    int8_t   front, rear; /* accessory, or -1 */
    uint32_t z;
    double   width;
    uint32_t z_step, step_module; /* of its second gear; z_step 0: it has none */
    double   step_width;
} ts_arranged_shaft;

typedef struct ts_arranged_branch {
    uint32_t          count;
    ts_arranged_shaft shafts[TS_ARRANGE_SHAFTS]; /* from the input outwards */
} ts_arranged_branch;

typedef struct ts_arranged_box {
    bool               present; /* a box without accessories does not exist */
    uint32_t           choice;
    ts_arranged_shaft  input;
    ts_arranged_branch branches[2]; /* left, right */
    double             wrap;        /* of both branches together */
} ts_arranged_box;

typedef struct ts_arrangement {
    double          mass;
    uint64_t        shape; /* of an answer: alike where order, faces and boxes are */
    ts_arranged_box boxes[TS_ARRANGE_BOXES];
} ts_arrangement;

#endif
