/* rating/iso10300/iso10300.h: are the teeth of a bevel pair strong enough?
 * ISO 10300-1, -2, -3:2014, method B1, pairs without offset, with ISO 6336-5 for strengths.
 *
 * Shapes    What depends on the mesh alone is prepared once; then every load case is rated by
 *           itself.  Both flanks of such a pair are rated alike: method B1 does not ask which one
 *           carries (the thrust does, element/bevel_force.h).  [0] is gear 1, [1] gear 2; nothing
 *           asks which of them is the smaller one.
 * Units     SI, rad.  Stresses in Pa, reserves are S/S_min - 1.
 * Missing   What cannot be computed is NaN and never passes; `missing` says what it lacked.
 * Ranges    What lies outside the standard's range is computed where a formula goes on, and told in
 *           `remarks`, each with its clause (bevel_remark.h).
 * Workings  Results are bit-equal with and without.  Inputs are noted by the caller under the names
 *           below, gear 1 and gear 2 with their index (sigma_Hlim1, R_z1, N_L1 ...).
 * Speed     Preparing takes about 2 us with the geometry, a case 0.3 us.
 * Sources   docs/method/iso10300.md: clauses used, left out and doubted; all recalled.
 */
#ifndef TS_RATING_ISO10300_H
#define TS_RATING_ISO10300_H

#include "base/workings.h"
#include "catalog/gear_material.h"
#include "element/bevel_pair.h"
#include "element/bevel_teeth.h"
#include "element/bevel_virtual.h"
#include "rating/iso10300/bevel_contact.h"
#include "rating/iso10300/bevel_dynamic.h"
#include "rating/iso10300/bevel_life.h"
#include "rating/iso10300/bevel_remark.h"
#include "rating/iso10300/bevel_root.h"
#include "rating/iso10300/bevel_share.h"
#include "rating/iso10300/contact_line.h"

#include <stdbool.h>

/* ---- what is rated --------------------------------------------------------------------------- */

typedef struct ts_iso10300_gear {
    ts_gear_class class;
    double sigma_Hlim, sigma_Flim; /* Pa     allowable stress numbers, ISO 6336-5               */
    double yield;              /* Pa     through-hardened and normalised steel only             */
    double E, nu, rho;         /* Pa, 1, kg/m3                                                  */
    bool   pitting;            /*        some pitting is permitted                              */
    double Z_NTlong, Y_NTlong; /* 1      life factors at 1e10 cycles, 0.85 to 1                 */
    double Z_W;                /* 1      work hardening by the mate; 1: none                    */

    double f_pt;      /* m      single pitch deviation (ts_bevel_pitch_tolerance)               */
    double R_z, R_zF; /* m      roughness of flank and of fillet                                */
    double rho_a0;    /* m      edge radius of the cutter                                       */
    double s_pr;      /* m      protuberance left after grinding; 0: none                       */
    bool   formed;    /*        cut without generation                                          */
    bool   overhung;  /*        bearings on one side only                                       */
} ts_iso10300_gear;

typedef struct ts_iso10300_mesh {
    ts_iso10300_gear gear[2];
    double           nu_40;        /* m2/s  viscosity at 40 degrees Celsius                     */
    double           b_veff_share; /* 1     contact pattern over face, 0 < share <= 1            */
    double           e;            /* 1     exponent of the peak load, by the profile crowning   */
    double           Z_K;          /* 1     bevel factor                                         */
    ts_bevel_pattern pattern;      /*       how the contact pattern was looked after             */
} ts_iso10300_mesh;

#define TS_ISO10300_SHARE 0.85 /* the standard's usual b_veff_share */

/* ---- what loads it --------------------------------------------------------------------------- */

typedef struct ts_iso10300_load {
    double T_1;     /* N.m    torque of gear 1, >= 0                                            */
    double omega_1; /* rad/s  speed of gear 1, >= 0                                             */
    double K_A;     /* 1      > 0                                                               */
    double N_L[2];  /*        load cycles of each gear, > 0                                     */
    double Y_M[2];  /* 1      influence of the other flank's load on each root, 0 < Y_M <= 1; 1:
                              loaded on one flank only                                          */
    double S_Hmin, S_Fmin;
} ts_iso10300_load;

/* ---- what comes out -------------------------------------------------------------------------- */

typedef struct ts_iso10300_gear_prepared {
    double        ms;    /* kg/m                                                       */
    ts_bevel_root root;  /*      form and notch                                        */
    double        rho_p; /* m                                                          */
    double        Y_deltarelT, Y_RrelT, Y_X;
    ts_bevel_life life_H, life_F;
} ts_iso10300_gear_prepared;

typedef struct ts_iso10300_prepared {
    ts_iso10300_mesh           mesh;
    ts_bevel_pair              pair;
    ts_bevel_virtual           virt;
    ts_contact_lines           lines;
    ts_iso10300_gear_prepared  gear[2];
    ts_bevel_dynamic_constants c_v;
    ts_bevel_mid_zone          mid;
    ts_bevel_slant             slant;
    double                     f_pt;  /* m    of the pair: the larger one                     */
    double                     m_red; /* kg/m                                                 */
    double                     K_Hbeta, K_F0, K_Fbeta;
    double                     Z_E; /* sqrt(Pa)                                             */
    double                     Z_L, C_Zv, Z_R, Z_X, Z_Hyp;
    double                     Y_eps;
    ts_bevel_remarks           remarks;
    const char                *missing; /* NULL, or what makes the rating impossible            */
} ts_iso10300_prepared;

typedef struct ts_iso10300_gear_rating {
    double Z_NT, sigma_HP, S_H;
    double sigma_F0, sigma_F, Y_NT, sigma_FP, S_F;
    double N_H, N_F; /* cycles that this load may last at safety 1; INFINITY: for ever          */
} ts_iso10300_gear_rating;

typedef struct ts_iso10300_rating {
    double         F_mt, v_mt;       /* N, m/s  at the mean pitch diameter                      */
    double         C_F, cp, c_gamma; /* 1, Pa                                                   */
    double         n_E1, N;          /* rad/s, 1                                                */
    ts_bevel_speed range;
    double         y_p, f_peff, B_p; /* m, m, 1                                                 */
    double         K_v, K_Hbeta, K_Fbeta, K_Halpha, K_Falpha;
    double         Z_v, F_n, sigma_H0, sigma_H;
    ts_iso10300_gear_rating gear[2];
    ts_bevel_remarks        remarks; /* of this case; those of the mesh are in the prepared one */
    const char             *missing;
} ts_iso10300_rating;

/* `pair` and `teeth` must have been solved without a fault.  False, with `missing` set, when an
 * input is outside its range or a formula does not exist for it: every later rating is then NaN and
 * says the same. */
bool ts_iso10300_prepare(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                         const ts_iso10300_mesh *mesh, ts_iso10300_prepared *prepared,
                         ts_workings *workings);

/* A case without torque has no stress and safeties of INFINITY; its load factors are NaN. */
bool ts_iso10300_rate(const ts_iso10300_prepared *prepared, const ts_iso10300_load *load,
                      ts_iso10300_rating *rating, ts_workings *workings);

/* The least of S_H/S_Hmin and S_F/S_Fmin over both gears, less 1; NaN where any is NaN.  *stress
 * and *gear (may be NULL) tell what decides. */
double ts_iso10300_reserve(const ts_iso10300_rating *rating, const ts_iso10300_load *load,
                           ts_bevel_stress *stress, int *gear);

#endif
