/* model/freedom.h: what `arrange` may choose, as the file says it (field_arrange.c). */
#ifndef TS_MODEL_FREEDOM_H
#define TS_MODEL_FREEDOM_H

#include "model/value.h"

#include <stddef.h>
#include <stdint.h>

typedef enum ts_face_choice {
    TS_CHOOSE_FRONT,
    TS_CHOOSE_REAR,
    TS_CHOOSE_EITHER_FACE
} ts_face_choice;
typedef enum ts_side_choice {
    TS_CHOOSE_CLOCKWISE, /* in the file's sight */
    TS_CHOOSE_ANTICLOCKWISE,
    TS_CHOOSE_EITHER_SIDE
} ts_side_choice;

typedef struct ts_accessory_freedom {
    const char *name;
    ts_node     node;
    int32_t     accessory; /* index */
    int32_t     only;      /* index of `box of`; -1: any */
    ts_word     spool;
    ts_pick     face; /* ts_face_choice */
    ts_pick     side; /* ts_side_choice */
} ts_accessory_freedom;

typedef struct ts_bevel_choice { /* a pair of bevels that may stand where one stands now */
    ts_node    node;
    ts_tally   teeth[2];
    ts_measure module, face; /* m; absent: those of the pair that stands there */
} ts_bevel_choice;

typedef struct ts_tower_choice { /* a radial shaft that may stand where one stands now */
    ts_node    node;
    ts_measure outside, bore; /* m, diameters; bore absent: that of the shaft that stands there */
} ts_tower_choice;

typedef struct ts_box_freedom {
    const char    *name; /* of its spool */
    ts_node        node;
    int32_t        spool;   /* index */
    ts_measures    modules; /* m, m_n; absent: that of the box */
    ts_tally_spans input_teeth;
    ts_measure     wrap, side;                /* rad */
    ts_pick        input_face;                /* ts_face_choice */
    ts_tally_spans stepped_teeth, step_teeth; /* of step shafts: first gear, second gear */
    ts_measures    step_modules;              /* m, m_n of the second; absent: as the box */
    /* Beside none of a kind, what stands there stays. */
    ts_bevel_choice *spool_bevels, *box_bevels;
    size_t           spool_bevel_count, box_bevel_count;
    ts_tower_choice *towers;
    size_t           tower_count;
} ts_box_freedom;

typedef struct ts_mass_scheme {
    ts_node    node;
    ts_measure density;                      /* kg/m3 */
    ts_measure fill;                         /* 1, share of the pitch cylinder */
    ts_measure shaft, idler, step, pad, box; /* kg */
    ts_measure wall, height;                 /* m */
    ts_measure casing_density;               /* kg/m3 */
} ts_mass_scheme;

typedef struct ts_weight_scheme { /* what counts beside mass */
    ts_node    node;
    ts_measure wrap;      /* kg/rad                              */
    ts_measure servicing; /* 1, kg for each kg to be lowered     */
} ts_weight_scheme;

typedef struct ts_freedom {
    ts_node               node;
    ts_box_freedom       *boxes;
    size_t                box_count;
    ts_accessory_freedom *accessories;
    size_t                accessory_count;
    ts_tally_span         teeth;
    ts_tally_spans        idler_teeth;
    ts_tally              idlers;
    ts_tally              steps;                 /* step shafts of a branch, 0 or 1 */
    ts_pick               hunting;               /* ts_answer_yes */
    ts_measure            face_step, least_face; /* m */
    ts_mass_scheme        mass;
    ts_weight_scheme      weights;
} ts_freedom;

#endif
