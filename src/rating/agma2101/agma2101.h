/* rating/agma2101/agma2101.h: does a pair of cylindrical gears hold, by ANSI/AGMA 2101-D04 with the
 * geometry factors of AGMA 908-B89?  The second opinion beside rating/iso6336.
 *
 * Shapes    What depends on the pair alone is prepared once; each load case is then rated by
 *           itself.
 * Units     SI: m, N, Pa, rad, m/s, K.
 * Missing   NaN in an input means "not given".  Where the standard has a value for that, it is
 *           taken and noted as an assumption; where it has none, what hangs on it is NaN and
 *           `missing` says what it lacked.  NaN never compares as a pass.
 * Remarks   Bits of ts_agma_remark: where the standard's range is left.
 * Speed     About 1.5 us to prepare a spur pair, 0.2 us a case, without workings.
 * Sources   docs/method/agma2101.md lists what is used, left out and doubted.
 */
#ifndef TS_RATING_AGMA2101_H
#define TS_RATING_AGMA2101_H

#include "rating/agma2101/agma908_bending.h"
#include "rating/agma2101/agma_dynamic.h"
#include "rating/agma2101/agma_face_load.h"
#include "rating/agma2101/agma_life.h"
#include "rating/agma2101/agma_remark.h"

#include <stdint.h>

/* Where the load of spur gears acts when it bends most.  Helical gears are loaded at the tip. */
typedef enum ts_agma_load_point {
    TS_AGMA_LOAD_HIGHEST_SINGLE, /* accurate teeth share the load                              */
    TS_AGMA_LOAD_TIP             /* they do not                                                */
} ts_agma_load_point;

typedef enum ts_agma_accuracy_scale {
    TS_AGMA_ACCURACY_A_V, /* transmission accuracy of 2101-D04: 5 fine .. 12 coarse             */
    TS_AGMA_ACCURACY_Q_V, /* quality number of C95 and before: 12 fine .. 5 coarse              */
    TS_AGMA_ACCURACY_K_V  /* `accuracy` is K_v itself, known from elsewhere                     */
} ts_agma_accuracy_scale;

typedef struct ts_agma2101_gear {
    ts_agma_tool      tool;     /*      what cut the root; h_a0 NaN: the pair's rack            */
    double            delta_sn; /* 1    thinning for backlash in normal modules; NaN: 0         */
    double            sigma_HP; /* Pa   allowable contact stress number                         */
    double            sigma_FP; /* Pa   allowable bending stress number                         */
    ts_agma_life_line line;     /*      which lines of Y_N and Z_N                              */
    double            hardness; /* HB   for the lines of through-hardened steel, and for Z_W    */
    bool              hard;     /*      surface hardened                                        */
    double            R_a;      /* m    of the flank, for Z_W of a soft wheel under a hard pinion */
    double            t_R;      /* m    rim thickness; NaN: solid                               */
    double            E, nu;    /* Pa, 1                                                        */
    double            K_s;      /* 1    size factor; NaN: 1                                     */
    double            Y_J;      /* 1    NaN: computed                                           */
} ts_agma2101_gear;

typedef struct ts_agma2101_input {
    const ts_cylindrical_pair *geometry; /* solved, TS_PAIR_FINE or TS_PAIR_POINTED               */
    ts_agma2101_gear           gear[2];
    ts_agma_load_point         load_point;
    ts_agma_accuracy_scale     scale;
    double                     accuracy;
    double                     K_H; /* 1  known from a computed deflection; NaN: by `mounting`   */
    ts_agma_mounting           mounting;
    bool                       overhung;
    double                     Z_R;      /* 1  surface condition factor; NaN: 1                   */
    double                     Z_I;      /* 1  NaN: computed                                      */
    double                     R;        /* 1  reliability; NaN: 0.99                             */
    bool                       critical; /*    the lower lines of Y_N and Z_N above their knees   */
} ts_agma2101_input;

/* An input with nothing given but the geometry: two carburised steel gears between bearings in an
 * extra precision box, judged as critical service.  The caller fills in what it knows. */
ts_agma2101_input ts_agma2101_input_of(const ts_cylindrical_pair *geometry);

/* The part of one gear that no load changes. */
typedef struct ts_agma2101_tooth {
    ts_agma_root    root;
    ts_agma_bending bending;
    ts_agma_life    life;
    double          Y_J, K_B, K_s, Z_W;
    double          sigma_HP, sigma_FP; /* Pa */
} ts_agma2101_tooth;

typedef struct ts_agma2101_pair {
    ts_agma_mesh      mesh;
    ts_agma_dynamic   dynamic;
    ts_agma_face_load face; /* NaN when K_H was given                                            */
    double            Z_I, K_H, Z_E, Z_R, Y_Z, R;
    double            m_t; /* m */
    ts_agma2101_tooth tooth[2];
    uint32_t          remarks;
    const char       *missing; /* static; NULL, or what could not be computed for want of what    */
} ts_agma2101_pair;

/* False when the pair cannot run at all (eps_alpha < 1, no face width): `missing` says why, and
 * every rating of it is NaN. */
bool ts_agma2101_pair_prepare(const ts_agma2101_input *in, ts_agma2101_pair *pair,
                              ts_workings *workings);

typedef struct ts_agma2101_load {
    double F_t;    /* N    tangential force at the operating pitch circles, >= 0                 */
    double v;      /* m/s  their speed, >= 0                                                     */
    double n_L[2]; /*      load cycles of a tooth of each gear, > 0                              */
    double q[2];   /* 1    bending of the other flank over the bending of this one, 0 .. 1: 0 where
                           one flank alone is loaded, 1 for an idler                              */
    double K_o;    /* 1    overload factor; NaN: 1, for the forces are the peaks of a condition  */
    double K_H;    /* 1    of this case; NaN: that of the pair                                   */
    double T_M;    /* K    temperature of the teeth; NaN: not above 120 degC                     */
} ts_agma2101_load;

typedef struct ts_agma2101_gear_rating {
    double sigma_H, sigma_F; /* Pa   contact and bending stress numbers                         */
    double Z_N, Y_N, Y_M;
    double S_H, S_F; /* 1    capacity over demand; compare S_F with S_H^2               */
} ts_agma2101_gear_rating;

typedef struct ts_agma2101_rating {
    double                  K_v, K_o, K_H, Y_theta;
    ts_agma2101_gear_rating gear[2];
    uint32_t                remarks; /* those of the pair included                               */
    const char             *missing;
} ts_agma2101_rating;

void ts_agma2101_rate(const ts_agma2101_pair *pair, const ts_agma2101_load *load,
                      ts_agma2101_rating *rating, ts_workings *workings);

#endif
