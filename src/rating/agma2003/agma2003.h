/* rating/agma2003/agma2003.h: does a pair of bevel gears hold, by ANSI/AGMA 2003-C10?  The second
 * opinion beside rating/iso10300.
 *
 * Shapes    What depends on the pair alone is prepared once; each load case is then rated by
 *           itself. [0] is gear 1, [1] gear 2; the one with fewer teeth is the pinion of the
 *           standard.
 * Units     SI: m, N, Pa, rad, m/s, K.
 * Missing   The geometry factors Z_I and Y_J come from the standard's charts.  They are inputs
 *           here, for no procedure could be recalled that gives back the charts: where one is not
 *           given, what hangs on it is NaN, never a guess, and `missing` says so.  Other NaN
 *           inputs say "not given" where that is written.  NaN never compares as a pass.
 * Remarks   Bits of ts_agma2003_remark: where the standard's range is left.
 * Sources   docs/method/agma2003.md lists what is used, left out and doubted; all recalled.
 */
#ifndef TS_RATING_AGMA2003_H
#define TS_RATING_AGMA2003_H

#include "base/workings.h"
#include "catalog/agma2003_allowable.h"
#include "element/bevel_pair.h"
#include "rating/agma2003/agma2003_factor.h"
#include "rating/agma2003/agma2003_remark.h"
#include "rating/agma2003/agma2003_stress.h"

#include <stdbool.h>
#include <stdint.h>

typedef enum ts_agma2003_scale {
    TS_AGMA2003_ACCURACY_A_V, /* transmission accuracy of C10: 6 fine .. 12 coarse               */
    TS_AGMA2003_ACCURACY_Q_V, /* quality number of A86 and B97: 11 fine .. 5 coarse              */
    TS_AGMA2003_ACCURACY_K_V  /* `accuracy` is K_v itself, >= 1, known from elsewhere            */
} ts_agma2003_scale;

typedef struct ts_agma2003_gear {
    double sigma_Hlim, sigma_Flim; /* Pa   of this standard: ts_agma2003_allowable_of            */
    double hardness;               /* HB   through-hardened gears; NaN: no credit for Z_W        */
    bool   hard;                   /*      surface hardened                                      */
    bool   overhung;               /*      bearings on one side only                             */
    double E, nu;                  /* Pa, 1                                                      */
    double Z_W;                    /* 1    NaN: from both hardnesses                             */
    double Y_J;                    /* 1    from the charts; NaN: this root is not rated          */
} ts_agma2003_gear;

typedef struct ts_agma2003_input {
    const ts_bevel_pair *geometry; /* solved                                                     */
    ts_agma2003_gear     gear[2];
    double               Z_I; /* 1    from the charts; NaN: contact is not rated            */
    ts_agma2003_scale    scale;
    double               accuracy;
    bool                 crowned;
    double               r_c0;     /* m    cutter radius; NaN: not given                         */
    double               R;        /* 1    reliability; NaN: 0.99                                */
    bool                 critical; /*      the lower line of Y_NT above its knee                 */
} ts_agma2003_input;

typedef struct ts_agma2003_pair {
    ts_agma2003_input   in;
    ts_bevel_pair       geometry;
    int                 pinion; /*      0 or 1                                                 */
    ts_agma2003_dynamic dynamic;
    double              K_v; /* 1    where it was given; else NaN                           */
    double              K_mb, K_Hbeta;
    double              Z_E, Z_x, Z_xc, Y_x, Y_beta, R, Y_Z, Z_Z;
    double              Z_W[2];
    double              d_e; /* m    of the pinion                                          */
    uint32_t            remarks;
    const char         *missing;  /* NULL, or what keeps the pair or a part of it from its rating */
    bool                rateable; /* false: nothing at all can be rated                          */
} ts_agma2003_pair;

/* False when nothing can be rated. */
bool ts_agma2003_pair_prepare(const ts_agma2003_input *in, ts_agma2003_pair *pair,
                              ts_workings *workings);

typedef struct ts_agma2003_load {
    double T_1;     /* N.m    torque of gear 1, >= 0                                             */
    double omega_1; /* rad/s  speed of gear 1, >= 0                                              */
    double K_A;     /* 1      overload factor, > 0                                               */
    double n_L[2];  /*        load cycles of a tooth of each gear, > 0                           */
    double Y_M[2];  /* 1      loaded on both flanks: 0.7 for equal loads; 1: on one              */
    double T_M;     /* K      temperature of the teeth; NaN: not above 120 degC                  */
} ts_agma2003_load;

typedef struct ts_agma2003_gear_rating {
    double Z_NT, sigma_HP, S_H; /* S_H: of the stress; compare S_F with S_H^2 */
    double sigma_F, Y_NT, sigma_FP, S_F;
} ts_agma2003_gear_rating;

typedef struct ts_agma2003_rating {
    double                  F_et, v_et; /* N, m/s  at the outer pitch diameter */
    double                  K_v, K_theta, sigma_H;
    ts_agma2003_gear_rating gear[2];
    uint32_t                remarks; /* those of the pair included */
    const char             *missing;
} ts_agma2003_rating;

/* False where anything is missing; what does not hang on that is rated all the same.  A case
 * without torque has no stress and safeties of INFINITY. */
bool ts_agma2003_rate(const ts_agma2003_pair *pair, const ts_agma2003_load *load,
                      ts_agma2003_rating *rating, ts_workings *workings);

#endif
