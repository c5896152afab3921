/* model/drive.h: the accessory drive as its file describes it.
 *
 * These structs mirror the notation of docs/drive-file.md key by key (blanks become underscores);
 * src/model/field_*.c holds the one field table of each, from which the reader, `set`, the manual,
 * the JSON Schema and the TypeScript types run.  Order of everything is the order of the file.
 *
 * Sight.  Clock angles and `cw`/`ccw` in the file are as seen in the file's `sight`.  In the
 * structs every clock angle is radians clockwise from 12:00 AS SEEN FROM BEHIND (looking forward),
 * and every rotation of an engine-parallel shaft is as seen from behind; the reader converts once.
 * Accessory rotations stay as the file has them: seen by somebody who faces the pad.
 */
#ifndef TS_MODEL_DRIVE_H
#define TS_MODEL_DRIVE_H

#include "model/freedom.h"
#include "model/oil_units.h"
#include "model/value.h"

#include <stddef.h>
#include <stdint.h>

typedef enum ts_sight { TS_FROM_BEHIND, TS_FROM_FRONT } ts_sight;
/* How an accessory loads its spline: the rows of Machinery's Handbook, involute splines. */
typedef enum ts_shock {
    TS_SHOCK_UNIFORM,
    TS_SHOCK_LIGHT,
    TS_SHOCK_INTERMITTENT,
    TS_SHOCK_HEAVY
} ts_shock;
typedef enum ts_turn { TS_CW, TS_CCW, TS_EITHER } ts_turn;
typedef enum ts_answer_yes { TS_YES, TS_NO } ts_answer_yes;
typedef enum ts_purpose { TS_FOR_ENGINE, TS_FOR_AIRCRAFT, TS_FOR_START } ts_purpose;
typedef enum ts_clutch { TS_CLUTCH_NONE, TS_CLUTCH_OVERRUNNING } ts_clutch;
typedef enum ts_hand { TS_LEFT_HAND, TS_RIGHT_HAND } ts_hand;
typedef enum ts_face_side { TS_FRONT, TS_REAR } ts_face_side;
typedef enum ts_float_scheme {
    TS_FLOAT_FIXED_BEVEL,  /* bevel held by the rotor's location bearing */
    TS_FLOAT_SPLINED_STUB, /* bevel on a splined stub shaft with its own bearings */
    TS_FLOAT_WIDE_SPUR     /* wide-faced spur idler, the bevel located in its bearing */
} ts_float_scheme;
typedef enum ts_support { TS_STRADDLED, TS_OVERHUNG } ts_support;

#define TS_CONDITIONS_MOST 40 /* a drive file tells no more of them */

/* conditions: name: {hp: 2600 rpm, lp: 0 rpm, events: 18000 | hours: 4200 h} */
typedef struct ts_condition {
    const char *name;
    ts_node     node;
    ts_measure *speed;  /* one a spool, rad/s, >= 0; known for every spool that carries a drive */
    ts_tally    events; /* how often it is met in the life of the drive */
    ts_measure  hours;  /* s, time spent in it */
    ts_measure  lasts;  /* s, of one event; TS_ABSENT where there are no events, or hours */
} ts_condition;

/* A corner of a torque curve. */
typedef struct ts_torque_point {
    ts_node    node;
    ts_measure speed;  /* rad/s */
    ts_measure torque; /* N.m   */
} ts_torque_point;

/* spools: hp: {turns: ccw, inertia: ..., axial travel: -0.2..0.7 mm, cranked: yes} */
typedef struct ts_spool {
    const char      *name;
    ts_node          node;
    ts_pick          turns;         /* ts_turn, from behind; cw or ccw */
    ts_measure       inertia;       /* kg.m2 */
    ts_span          axial_travel;  /* m, + rearward, cold build = 0 */
    ts_span          radial_travel; /* m */
    ts_pick          cranked;       /* ts_answer_yes: does the starter turn this spool? */
    ts_torque_point *unlit; /* key `unlit drag`, against its speed, rising; none: not told */
    size_t           unlit_count;
    ts_torque_point *lit; /* key `lit torque`: net of its own losses */
    size_t           lit_count;
    ts_measure       air;      /* N.m, key `air torque`: of the cranked spool's air on it */
    ts_measure       oil_drag; /* N.m, of the oil in its own bearings, at idle and 100 degC */
} ts_spool;

typedef struct ts_overload { /* 34 N.m for 5 s */
    double      torque;      /* N.m */
    double      time;        /* s */
    ts_node     node;
    ts_standing standing;
} ts_overload;

typedef struct ts_torque_limits {
    ts_node     node;
    ts_overload overload;
    ts_measure  statically; /* key `static`: N.m that it must hold without yielding */
} ts_torque_limits;

typedef struct ts_body {
    ts_node    node;
    ts_measure radius; /* m, of the envelope about the pad axis */
    ts_measure length; /* m */
} ts_body;

typedef enum ts_neck_break { TS_NECK_TOUGH, TS_NECK_BRITTLE } ts_neck_break;
typedef enum ts_neck_fragments { TS_FRAGMENTS_RETAINED, TS_FRAGMENTS_LOOSE } ts_neck_fragments;

/* A band that somebody states, a neck that is made, or both: then the one is held to the other. */
typedef struct ts_neck {
    ts_node    node;
    ts_span    breaks;       /* N.m, break torque band: least..greatest; TS_ABSENT: not stated */
    ts_measure diameter;     /* m, at its root; TS_ABSENT: not designed, and nothing below has a
                                default */
    ts_measure tolerance;    /* m, plus or minus */
    ts_measure bore;         /* m */
    ts_measure shank;        /* m, outside diameter beside it */
    ts_measure notch_radius; /* m */
    ts_measure blank;        /* m, as thick as it was when it was heat-treated; TS_ABSENT */
    ts_pick    metal;        /* row of catalog/metal.h */
    ts_span    strength;     /* Pa, tensile strength; TS_ABSENT: from metal and scatter */
    ts_measure scatter;      /* 1, coefficient of variation of the tensile strength */
    ts_span    shear_ratio;  /* 1, shear over tensile strength */
    ts_span    yielding;     /* 1, 0: outside alone, 1: the whole section */
    ts_span    temperature;  /* K */
    ts_pick    breaking;     /* ts_neck_break */
    ts_measure ripple;       /* 1, amplitude over steady torque, once a turn */
    ts_measure overloads;    /* 1, overloads a start */
    ts_measure from_tip;     /* m, from the tip of the shaft to the neck */
    ts_pick    fragments;    /* ts_neck_fragments */
    ts_word    why;          /* reason for a neck where none is allowed */
} ts_neck;

typedef struct ts_accessory {
    const char *name;
    ts_node     node;
    ts_pick     purpose;     /* key `for`: ts_purpose */
    ts_pick     turns;       /* ts_turn, seen by somebody facing the pad */
    ts_span    *speed;       /* one a condition, rad/s; TS_ABSENT: no demand in that condition.
                                Key `always` fills every condition that is not named */
    ts_measure *power;       /* one a condition, W absorbed, >= 0.  A condition that is not named
                                keeps the torque of the named condition nearest in spool speed
                                (TS_ASSUMED, in the register); no `power` at all, or a condition
                                in which the accessory drives: TS_ABSENT */
    ts_measure      *drives; /* one a condition, N.m with which it drives the pad; TS_ABSENT: not */
    ts_torque_limits torque;
    ts_body          body;
    ts_measure       mass;
    ts_measure       overhang; /* m, centre of mass from the pad face */
    ts_measure       inertia;  /* kg.m2 at the pad */
    ts_measure       ripple;   /* 1, amplitude of its torque over the torque; TS_ABSENT: not told */
    ts_tally         ripple_order; /* so many times a turn of its pad; TS_ABSENT: once */
    ts_pick          clutch;       /* ts_clutch */
    ts_torque_point *curve;        /* of what it drives with, against the speed of its pad; none:
                                      as `drives` */
    size_t       curve_count;
    ts_neck      neck;          /* neck.node 0: no neck */
    ts_word      spline;        /* public standard number of the pad spline */
    ts_measure   spline_length; /* m, of it that is engaged */
    ts_measure   sleeve;        /* m, outside of the sleeve about it */
    ts_pick      shock;         /* ts_shock */
    ts_word      serves;        /* what it serves, free text */
    ts_pumps     pumps;         /* pumps.node 0: it is no pump pack */
    ts_separator separator;     /* separator.node 0: it is no breather */
} ts_accessory;

typedef enum ts_bevel_mounting {
    TS_BEVELS_STRADDLED,
    TS_BEVELS_ONE_OVERHUNG,
    TS_BEVELS_BOTH_OVERHUNG
} ts_bevel_mounting;
typedef enum ts_bevel_check {
    TS_BEVELS_FULL_LOAD,
    TS_BEVELS_LIGHT_LOAD,
    TS_BEVELS_SAMPLE
} ts_bevel_check;
typedef enum ts_bevel_crowning {
    TS_BEVELS_LITTLE_CROWNED,
    TS_BEVELS_MUCH_CROWNED
} ts_bevel_crowning;

/* One bearing of a shaft; what is absent the program chooses (rating/drive_lines.h). */
typedef enum ts_seat_form { /* ts_bearing_form, and one more */
                            TS_SEAT_DEEP_GROOVE,
                            TS_SEAT_ANGULAR_CONTACT,
                            TS_SEAT_CYLINDRICAL_ROLLER,
                            TS_SEAT_NONE
} ts_seat_form;

typedef struct ts_bearing_seat {
    ts_node    node;
    ts_measure at;     /* m, its middle from the front (inner) end of the shaft */
    ts_pick    form;   /* ts_seat_form */
    ts_pick    series; /* 19, 10, 02, 03 of ISO 15 */
    ts_tally   rows;
    ts_measure angle;
    ts_measure bore, outside, width;      /* m */
    ts_tally   elements;                  /* in a row */
    ts_measure ball, length;              /* m, element diameter, effective length of a roller */
    ts_measure capacity, static_capacity; /* N, of all rows */
    ts_measure stiffness;                 /* N/m, radial */
    ts_pick    locates;                   /* ts_answer_yes */
} ts_bearing_seat;

typedef struct ts_shaft_section { /* from the front (inner) end on */
    ts_node    node;
    ts_measure length, outside, bore; /* m */
    ts_pick    undercut; /* row of ts_undercut_at, where the next section is wider; TS_ABSENT */
} ts_shaft_section;

typedef struct ts_two_seats { /* front and rear, or next to the bevel gear and away from it */
    ts_node         node;
    ts_bearing_seat seat[2];
} ts_two_seats;

typedef struct ts_tower_seats {
    ts_node         node;
    ts_bearing_seat inner[2], mid, outer[2]; /* [0] next to the gear, [1] away from it */
} ts_tower_seats;

typedef struct ts_bevel_gears { /* bevels: {teeth: [43, 46], ...}; spool side first */
    ts_node    node;
    ts_tally   teeth[2];
    ts_measure module;         /* m, outer transverse m_et */
    ts_measure pressure_angle; /* normal */
    ts_measure spiral;         /* mean spiral angle beta_m */
    ts_pick    hand;           /* ts_hand of the first gear; the second has the other */
    ts_measure face;           /* m, both */
    ts_measure shaft_angle;    /* 90 deg unless said */
    ts_pick    side;           /* ts_face_side: the gear on the engine-parallel shaft lies on this
                                  side of the radial shaft's axis (front: towards the inlet) */
    ts_measure loss;           /* 1, share of the transmitted power lost in this mesh */
    /* their teeth, in mean normal modules where no unit is told */
    ts_pick    depth_taper;                /* ts_bevel_taper */
    ts_measure addendum, dedendum;         /* k_hap, k_hfp of the basic crown gear */
    ts_measure profile_shift;              /* x_hm1 of the first gear; TS_ABSENT: as is usual */
    ts_measure thickness_shift;            /* x_smn of the first gear */
    ts_measure cutter_radius, edge_radius; /* m, r_c0; rho_a0 / m_mn */
    /* what their strength hangs on */
    ts_pick    mounting;                         /* ts_bevel_mounting */
    ts_pick    pattern_checked;                  /* ts_bevel_check */
    ts_measure pattern_length;                   /* over the face width */
    ts_pick    profile_crowning;                 /* ts_bevel_crowning */
    ts_pick    material;                         /* of both: row of catalog/gear_material.h */
    ts_tally   accuracy;                         /* grade of ISO 17485 */
    ts_measure flank_roughness, root_roughness;  /* m, R_z */
    ts_measure run_in;                           /* phi_E, 0 as made to 1 */
    ts_measure long_life_factor;                 /* Z_NT and Y_NT at 1e10 cycles */
    ts_measure application_factor;               /* K_A */
    ts_measure I_factor, J_factor_1, J_factor_2; /* from the charts of AGMA 2003; TS_ABSENT: its
                                                    opinion is not asked for */
} ts_bevel_gears;

typedef struct ts_take_off {
    ts_node        node;
    ts_pick        scheme; /* key `float`: ts_float_scheme */
    ts_bevel_gears bevels;
    ts_measure     backlash;    /* m, normal backlash of the bevels as built, cold */
    ts_measure     tolerance;   /* m, key `backlash tolerance`: plus or minus, as built */
    ts_measure     engaged;     /* m, length of the stub's spline that is engaged, cold build */
    ts_span        slide;       /* m, spline slide allowed either way (splined stub) */
    ts_measure     overlap;     /* m, spur face width beyond what the load needs (wide spur) */
    ts_two_seats   bearings;    /* of a shaft of its own: splined stub and wide spur */
    ts_pick        lubrication; /* ts_lubrication */
    ts_pick        chip_plug;   /* ts_answer_yes; TS_ABSENT: not told */
    ts_word        drains_to;   /* name of a sump of the oil pump pack */
    const ts_sump *sump;        /* ... that one; NULL: not told */
} ts_take_off;

typedef struct ts_tower_shaft {
    ts_node    node;
    ts_measure clock;       /* rad, from behind */
    ts_measure length;      /* m, bevel apex to bevel apex */
    ts_measure outside;     /* m, diameter */
    ts_measure bore;        /* m, diameter; 0 solid */
    ts_measure mid_bearing; /* m from the spool end; TS_ABSENT: none */
    ts_measure station;     /* m, of its axis, rearward of the engine's datum; 0 */
    ts_pick    turns; /* statement to be checked, seen from outside looking to the engine axis */
    ts_neck    neck;
    ts_tower_seats bearings;
} ts_tower_shaft;

/* temperatures: {gears: -40..120 degC, casing above gears: -25..0 K, ...} */
typedef struct ts_temperatures {
    ts_node    node;
    ts_span    gears;            /* K, from the coldest to the warmest   */
    ts_span    casing;           /* K, key `casing above gears`          */
    ts_measure gears_expansion;  /* 1/K, key `expansion of gears`        */
    ts_measure casing_expansion; /* 1/K, key `expansion of casing`       */
} ts_temperatures;

/* What a gear needs; `gears:` of a box gives what its shafts do not say themselves. */
typedef struct ts_tooth_system {
    ts_node         node;
    ts_measure      module;         /* m, normal m_n */
    ts_measure      pressure_angle; /* rad, normal alpha_n */
    ts_measure      helix_angle;    /* rad, beta; 0 spur */
    ts_pick         hand;     /* ts_hand of the box input's gear (helical only); mates alternate */
    ts_measure      addendum; /* h_aP / m_n */
    ts_measure      dedendum; /* h_fP / m_n */
    ts_measure      root_radius; /* rho_fP / m_n */
    ts_span         thickness;   /* m, key `tooth thickness allowance`: E_sni..E_sns, normal */
    ts_span         centre;      /* m, key `centre distance allowance`: A_ai..A_ae */
    ts_temperatures temperatures;
    ts_measure      loss;     /* 1, share of the transmitted power lost a mesh */
    ts_pick         material; /* row of catalog/gear_material.h */
    ts_tally        accuracy; /* class of ISO 1328-1 */
    ts_measure      flank_roughness, root_roughness; /* m, R_z */
    ts_measure      run_in;                          /* phi_E, 0 as made to 1 */
    ts_measure      tip_relief;                      /* m, C_a */
    ts_measure      long_life_factor;                /* Z_NT and Y_NT at 1e10 cycles */
    ts_measure      application_factor;              /* K_A */
    ts_measure      face_load_factor; /* K_Hbeta; TS_ABSENT: it follows from the misalignment */
    ts_measure      misalignment;     /* m, F_betax; TS_ABSENT: what the tolerances allow */
    ts_pick         lead;             /* ts_lead_design of rating/iso6336/face_load.h */
} ts_tooth_system;
/* What `lead` may say, in a drive file and in a rate file. */
extern const char *const ts_lead_keys[];

typedef struct ts_step_gear { /* a further gear on the same shaft */
    ts_node    node;
    ts_tally   teeth;
    ts_measure module; /* absent: as the box */
    ts_measure face;
    ts_measure shift;    /* x, in modules */
    ts_pick    material; /* absent: as the box */
    ts_measure rim, web; /* m, thickness below the roots, and of the web; absent: a solid gear */
} ts_step_gear;

/* A pad end: the name of an accessory, or one of the words below. */
typedef enum ts_pad_use {
    TS_PAD_NONE, /* key absent */
    TS_PAD_ACCESSORY,
    TS_PAD_COVER, /* `cover`: blanked with a sealed cover */
    TS_PAD_HAND,  /* `hand turning`: seals itself */
    TS_PAD_OPEN   /* `open`: neither driven nor covered (a finding) */
} ts_pad_use;

typedef struct ts_pad_end {
    ts_pad_use  use;
    int32_t     accessory; /* index, -1 unless TS_PAD_ACCESSORY */
    ts_node     node;
    ts_standing standing;
} ts_pad_end;

typedef struct ts_box_shaft {
    ts_node    node;
    ts_word    name;   /* absent: named after its accessories, else "idler" */
    ts_tally   teeth;  /* of the main gear */
    ts_measure module; /* absent: as the box */
    ts_measure face;
    ts_measure shift;           /* x, in modules */
    ts_pick    material;        /* of its main gear; absent: as the box */
    ts_measure rim, web;        /* m, of its main gear; absent: a solid gear */
    ts_measure toward;          /* clock direction in which this axis lies seen from its driver, rad
                                   from behind; absent: on the arc, further along the branch */
    ts_pick from;               /* driving gear on the driver: 0 gear, 1 step, 2 step 2, 3 step 3;
                                   absent: its last step if it has one, else its gear */
    ts_pick              turns; /* statement to be checked (ts_turn, from behind) */
    ts_pick              support; /* ts_support */
    ts_pad_end           front;
    ts_pad_end           rear;
    ts_step_gear        *steps; /* key `step`: one or a list, at most 3 */
    size_t               step_count;
    ts_measure           outside, bore; /* m, between its bearings; of its bore */
    ts_two_seats         bearings;
    ts_shaft_section    *sections; /* in place of the outline that the program makes */
    size_t               section_count;
    struct ts_box_shaft *branch; /* key `branch`: a side chain, outwards */
    size_t               branch_count;
} ts_box_shaft;

typedef struct ts_arc {
    ts_node    node;
    ts_measure radius; /* m, circle about the engine axis on which gear axes lie */
    ts_measure clock;  /* rad, from behind, of the box input */
} ts_arc;

typedef struct ts_mount { /* mounts: [{clock: "5:00", radius: 330 mm, aft: -35 mm}, ...] */
    ts_node    node;
    ts_measure clock;
    ts_measure radius; /* m, from the engine axis */
    ts_measure aft;    /* m, rearward of the radial shaft's axis */
} ts_mount;

typedef struct ts_box {
    ts_node         node;
    ts_arc          arc;
    ts_bevel_gears  bevels; /* from the radial shaft to the box input */
    ts_tooth_system gears;
    ts_pick         lubrication; /* ts_lubrication */
    ts_pick         chip_plug;   /* ts_answer_yes; TS_ABSENT: not told */
    ts_word         drains_to;   /* name of a sump of the oil pump pack */
    const ts_sump  *sump;        /* ... that one; NULL: not told */
    ts_box_shaft    input;
    ts_box_shaft   *clockwise; /* as seen in the file's sight; see ts_shaft.way for from behind */
    size_t          clockwise_count;
    ts_box_shaft   *anticlockwise;
    size_t          anticlockwise_count;
    ts_measure      depth;  /* m, between the front and the rear pad faces */
    ts_mount       *mounts; /* none, or three: the first holds three ways, the second two, the third
                               one (mass/mounts.h) */
    size_t mount_count;
} ts_box;

typedef struct ts_spool_drive { /* drive: hp: ... */
    ts_node        node;
    int32_t        spool; /* index */
    ts_take_off    take_off;
    ts_tower_shaft tower_shaft;
    ts_box         box;
} ts_spool_drive;

typedef struct ts_cowl_point { /* cowl: [{clock: "6:00", radius: 560 mm}, ...]: linear between them
                                */
    ts_node    node;
    ts_measure clock;
    ts_measure radius;
} ts_cowl_point;

typedef struct ts_keep_out { /* a round region that nothing may enter, on one face or both */
    ts_node    node;
    ts_word    name;
    ts_measure clock;
    ts_measure radius; /* m, of its centre from the engine axis */
    ts_measure size;   /* m, its own radius */
    ts_pick    face;   /* 0 front, 1 rear, 2 both */
} ts_keep_out;

typedef struct ts_engine {
    ts_node        node;
    ts_measure     casing; /* m, radius of the engine casing under the box */
    ts_cowl_point *cowl;
    size_t         cowl_count;
    ts_keep_out   *keep_out;
    size_t         keep_out_count;
} ts_engine;

/* What the checks hold the drive to.  Every one has a documented default, shown as an assumption.
 */
typedef struct ts_limits {
    ts_node    node;
    ts_measure contact_ratio;             /* 1.2 */
    ts_measure face_to_diameter;          /* 1.0 straddled */
    ts_measure face_to_diameter_overhung; /* 0.5 */
    ts_measure face_to_module;            /* 3, what `size` goes down to */
    ts_measure body_gap;                  /* 5 mm */
    ts_measure gear_gap;                  /* 2 mm, between tip circles of gears not meshing */
    ts_measure wrap;                      /* deg of the arc, whole box */
    ts_measure start_path_meshes;         /* 4, cylindrical meshes from starter to box input */
    ts_measure pitch_line_velocity;       /* 80 m/s */
    ts_measure radial_shaft_speed;        /* m/s, surface */
    ts_measure neck_factor;               /* 1.25 */
    ts_measure neck_chance;               /* 1e-3, of a neck that breaks early or late */
    ts_measure speed_margin;              /* 0 %, reserve wanted inside every speed band */
    ts_measure contact_safety;            /* 1, S_Hmin */
    ts_measure bending_safety;            /* 1.25, S_Fmin */
    ts_measure time_at_resonance;         /* 20 % of the time that a mesh runs loaded */
    ts_measure time_with_parting;     /* 20 %, of the time, by torsion near a natural frequency */
    ts_measure whirl_margin;          /* 1.25, first critical over the highest speed */
    ts_measure web_clearance;         /* 10 %, of excitations from modes of webs */
    ts_measure rim_to_tooth;          /* 1.2, rim thickness over tooth height */
    ts_measure mass;                  /* kg, of the drive without accessories; none */
    ts_measure mass_overhang;         /* m, of a box's centre of mass; none */
    ts_measure standards_apart;       /* 15 %, of the safeties by two standards */
    ts_measure backlash;              /* 0.02 mm, normal, at its least */
    ts_measure bearing_life;          /* 1, over the life of the drive */
    ts_measure bearing_static_safety; /* 1.5 */
    ts_measure bearing_speed_number;  /* 2e6, mm times rpm */
    ts_measure bearing_slip;          /* 1, load over the least load */
    ts_measure shaft_fatigue_safety;  /* 1.5 */
    ts_measure shaft_static_safety;   /* 1.5 */
    ts_measure slope_at_mesh;         /* 0.0005 rad */
    ts_measure deflection_at_mesh;    /* 0.03 modules */
    ts_measure flash_safety;          /* S_B, against scuffing */
    ts_measure integral_safety;       /* S_intS, against scuffing */
    ts_measure film_safety;           /* S_lambda, against micropitting */
    ts_measure jet_speed;             /* 0.2, of jets over that of the teeth */
    ts_measure jet_drift;             /* 10 %, of jets over the gap that they cross */
    ts_measure power_above_rated;     /* 25 %, of a mesh, over what is rated    */
} ts_limits;

typedef struct ts_oil { /* what runs through the boxes */
    ts_node     node;
    ts_pick     specification;      /* row of catalog/oil.h */
    ts_measure  nu_40, nu_100;      /* m2/s, kinematic viscosity at 40 and 100 degrees Celsius */
    ts_measure  rho_15;             /* kg/m3, density at 15 degrees Celsius */
    ts_measure  theta_S;            /* K, scuffing temperature; TS_ABSENT: from the load stage */
    ts_measure  scuffing_stage;     /* S_FZG; TS_ABSENT: the one that leads to theta_S */
    ts_tally    micropitting_stage; /* SKS; TS_ABSENT: nothing is asked of the film */
    ts_measure  micropitting_test;  /* K, oil temperature of that test */
    ts_measure  feed;               /* K, where it comes to the meshes */
    ts_measure *feed_at;            /* K, the same, one a condition; TS_ABSENT: as `feed` */
    ts_measure  bearing_rise;       /* K, of the oil in a bearing above its feed */
    ts_pick     cleanness;          /* ts_cleanness, of ISO 281 */
    ts_measure  rise;               /* K, that the oil may warm in the boxes */
    ts_measure  hottest;            /* K, that the oil may leave them with */
    ts_measure  jet_pressure;       /* Pa, that drops over the holes of the jets at full flow */
    ts_measure  least_jet;          /* m, smallest hole */
    ts_measure  jet_gap;            /* m, from the holes to the teeth and bearings */
    ts_measure  flow;               /* m3/s, full flow of all boxes; TS_ABSENT: what is needed */
} ts_oil;

/* K, of the oil that comes to the meshes in a condition. */
static inline ts_measure ts_oil_feed(const ts_oil *oil, size_t condition)
{
    if (oil->feed_at != NULL && oil->feed_at[condition].standing != TS_ABSENT)
        return oil->feed_at[condition];
    return oil->feed;
}

/* How oil comes to the meshes, in the order of the factor X_S of ISO/TS 6336-20. */
typedef enum ts_lubrication { TS_OILED_BY_JETS, TS_OILED_BY_DIPPING } ts_lubrication;

typedef struct ts_weighing { /* mass: what the weights and the loads of the mounts rest on */
    ts_node    node;
    ts_pick    shaft_metal, casing_metal; /* indices into the lists of field_mass.c */
    ts_measure shaft_stress;              /* Pa, of torsion, by which a shaft is thick */
    ts_measure casing_wall, casing_gap;   /* m */
    ts_measure casing_extra;              /* 1, for ribs, bosses and flanges */
    ts_measure down, up, forward, rearward, sideward; /* load factors */
} ts_weighing;

/* Rows of catalog/metal.h that the two picks may name; NULL-terminated. */
extern const char *const ts_shaft_metals[];
extern const char *const ts_casing_metals[];

typedef enum ts_teeth_method { TS_TEETH_ISO_2019, TS_TEETH_ISO_2006 } ts_teeth_method;

typedef struct ts_method { /* by which standard what is rated */
    ts_node node;
    ts_pick teeth; /* ts_teeth_method */
} ts_method;

typedef struct ts_start { /* start: what `towershaft start` goes by */
    ts_node    node;
    ts_measure light_off, cut_out, idle; /* rad/s, of the cranked spool */
    ts_measure ambient, oil;             /* K */
    ts_measure tables;                   /* K, at which the curves of the spools hold */
    ts_measure pressure;                 /* 1, ambient over that of the curves */
    ts_span    ambients, oils;           /* K, of the grid */
    ts_tally   grid;                     /* steps of both */
    ts_measure hung;                     /* rad/s2, at and below which it hangs */
    ts_measure gives_up;                 /* s */
    ts_measure gains_in;                 /* s, from idle to the condition to which it goes on */
    ts_measure f_0;                      /* of the bearings of the boxes, Palmgren */
} ts_start;

typedef struct ts_seizure_wish { /* seizure: what `towershaft seize` goes by */
    ts_node    node;
    ts_measure mesh_damping, shaft_damping; /* 1, of critical */
    ts_measure play;                        /* modules, where it is not known */
} ts_seizure_wish;

typedef struct ts_jolt_wish { /* jolt: what `towershaft jolt` goes by */
    ts_node    node;
    ts_measure short_torque;    /* 1, crest over the continuous torque   */
    ts_measure short_frequency; /* Hz                                    */
    ts_measure short_decay;     /* s, time constant                      */
    ts_measure step_torque;     /* 1, where the file tells no overload   */
    ts_measure slam, chop;      /* rad/s2 at the input of the box, both > 0 */
    ts_measure slip;            /* rad/s at which a clutch takes hold    */
} ts_jolt_wish;
typedef struct ts_whirling { /* whirl: what `towershaft whirl` goes by */
    ts_node    node;
    ts_measure spline_stiffness; /* N.m/rad, of a spline of a radial shaft against tilting */
    ts_measure bearing_loss;     /* 1, loss factor of bearings                             */
    ts_measure grade;            /* balance quality G of ISO 21940-11, in mm/s             */
} ts_whirling;

typedef struct ts_assumption_line { /* assumptions: the user's own register */
    ts_node node;
    ts_word says;
    ts_word at;
    ts_word source;
    ts_date date;
} ts_assumption_line;

typedef struct ts_waiver { /* waived: [{rule, at, why, by, until}] */
    ts_node node;
    ts_word rule;
    ts_word at;
    ts_word why;
    ts_word by;
    ts_date until;
} ts_waiver;

/* What was assumed because the file does not say (made by the reader, in the order in which it
 * met the gaps). */
typedef struct ts_assumption {
    ts_node     node;   /* the record that lacks the value */
    const char *key;    /* the key it lacks */
    const char *value;  /* as one would write it in the file */
    const char *reason; /* from the field table, with its source */
} ts_assumption;

typedef struct ts_drive {
    ts_node             node;
    ts_tally            towershaft; /* version of the notation: 1 */
    ts_word             title;
    ts_word             revision;
    ts_pick             sight;
    ts_condition       *conditions;
    size_t              condition_count;
    ts_spool           *spools;
    size_t              spool_count;
    ts_accessory       *accessories;
    size_t              accessory_count;
    ts_engine           engine;
    ts_spool_drive     *drive;
    size_t              drive_count;
    ts_oil              oil;
    ts_method           method;
    ts_weighing         mass;
    ts_limits           limits;
    ts_freedom          arrange;
    ts_start            start;
    ts_seizure_wish     seizure;
    ts_jolt_wish        jolt;
    ts_whirling         whirl;
    ts_assumption_line *assumptions;
    size_t              assumption_count;
    ts_waiver          *waived;
    size_t              waived_count;

    ts_assumption *assumed; /* the register of defaults */
    size_t         assumed_count;
    ts_assumption *arrange_assumed; /* that of `arrange`, which no other command reads */
    size_t         arrange_assumed_count;
    ts_assumption *start_assumed; /* that of `start` */
    size_t         start_assumed_count;
    ts_assumption *seize_assumed; /* that of `seizure` */
    size_t         seize_assumed_count;
    ts_assumption *jolt_assumed; /* that of `jolt` */
    size_t         jolt_assumed_count;

    const struct ts_source *source; /* the file behind it (model/source.h); NULL: built by hand */
} ts_drive;

#endif
