/* rating/iso6336/iso6336.h: are the teeth of a cylindrical pair strong enough?
 * ISO 6336-1, -2, -3:2019 (or 2006), method B, with -5 for strengths and -6 for spectra.
 *
 * Shapes    What depends on the mesh alone is prepared once; then every load case is rated by
 *           itself.  A case loads one flank: call once a flank and condition.
 * Units     SI, rad.  Stresses in Pa, reserves are S/S_min - 1.
 * Signs     As in the pair: an internal gear 2 has z_2, d_2, u < 0.
 * Missing   What cannot be computed is NaN and never passes; `missing` says what it lacked.
 * Ranges    What lies outside the standard's range is computed where a formula goes on, and told in
 *           `remarks`, each with its clause (remark.h).
 * Workings  Results are bit-equal with and without.  Inputs are noted by the caller under the names
 *           below, gear 1 and gear 2 with their index (sigma_Hlim1, R_z1, N_L1 ...).
 * Sources   docs/method/iso6336.md: clauses used, left out and doubted; all recalled.
 */
#ifndef TS_RATING_ISO6336_H
#define TS_RATING_ISO6336_H

#include "base/workings.h"
#include "catalog/gear_material.h"
#include "element/cylindrical_pair.h"
#include "rating/iso6336/dynamic_factor.h"
#include "rating/iso6336/face_load.h"
#include "rating/iso6336/remark.h"
#include "rating/iso6336/root_form.h"
#include "rating/iso6336/root_strength.h"
#include "rating/iso6336/root_stress.h"
#include "rating/iso6336/single_contact.h"
#include "rating/iso6336/stress_cycle.h"

#include <stdbool.h>

typedef enum ts_iso6336_year { TS_ISO6336_2019, TS_ISO6336_2006, TS_ISO6336_YEARS } ts_iso6336_year;

/* ---- what is rated --------------------------------------------------------------------------- */

/* One gear.  A length or factor of 0 says "none" only where that is written. */
typedef struct ts_iso6336_gear {
    ts_gear_class class;
    double sigma_Hlim, sigma_Flim; /* Pa     allowable stress numbers, ISO 6336-5 */
    double yield;              /* Pa     sigma_y; through-hardened and normalised steel only   */
    double HB;                 /* HBW    0: not known; asked of a soft gear with a hard mate   */
    double E, nu, rho;         /* Pa, 1, kg/m3                                                 */
    bool   shot_peened;        /*        the root                                              */
    bool   pitting;            /*        some pitting is permitted                             */
    double Z_NTlong, Y_NTlong; /* 1      life factors at 1e10 cycles, 0.85 to 1                */

    int    accuracy;  /*        grade of ISO 1328-1, 0 to 12                                   */
    double f_pt;      /* m      single pitch deviation                                         */
    double f_falpha;  /* m      profile form deviation                                         */
    double C_a;       /* m      tip relief; 0: none                                            */
    double R_z, R_zF; /* m      roughness of flank and of fillet                                */

    double E_sni;      /* m      lower allowance of the normal tooth thickness, < 0: thinner    */
    double s_pr;       /* m      residual undercut of a protuberance tool; 0: none              */
    double t_g, rho_g; /* m      grinding notch, depth and radius; t_g 0: none                  */
    double z_0, x_0;   /*        pinion cutter of an internal gear; z_0 0: rack as given         */

    double s_R;   /* m      rim thickness below the roots; 0: a solid gear                 */
    double b_s;   /* m      web thickness; read when s_R > 0; 0: as wide as the rim         */
    double d_web; /* m      bore of the web                                                */
    double Js;    /* kg.m   moment of inertia per unit face width; 0: from the shape       */
} ts_iso6336_gear;

typedef struct ts_iso6336_mesh {
    ts_iso6336_year year;
    ts_iso6336_gear gear[2];
    double          nu_40; /* m2/s  viscosity at 40 degrees Celsius                             */
    ts_profile_design
                   profile; /*       helical gears in 2019: who looked after the ends of contact */
    ts_lead_design lead;
    bool           relief_matched; /* does the relief suit the load?  Then half of f_pb counts   */
} ts_iso6336_mesh;

/* ---- what loads it --------------------------------------------------------------------------- */

/* Where K_Hbeta comes from. */
typedef enum ts_face_load_rule {
    TS_FACE_LOAD_GIVEN,      /* K_Hbeta                                                        */
    TS_FACE_LOAD_MISALIGNED, /* F_betax, the misalignment of the mesh before running in        */
    TS_FACE_LOAD_PARTS       /* f_sh and f_ma, by the lead design of the mesh                  */
} ts_face_load_rule;

typedef struct ts_iso6336_load {
    double            T_1;     /* N.m    torque of gear 1, >= 0                                 */
    double            omega_1; /* rad/s  speed of gear 1, >= 0                                  */
    double            K_A, K_gamma;
    ts_face_load_rule face;
    double            K_Hbeta;    /* 1                                                        */
    double            F_betax;    /* m                                                        */
    double            f_sh, f_ma; /* m                                                        */
    double            N_L[2];     /* load cycles of each gear, > 0                            */
    double            R[2];       /* ratio of stresses of each root: 0, or ts_stress_ratio    */
    double            S_Hmin, S_Fmin;
} ts_iso6336_load;

/* ---- what comes out -------------------------------------------------------------------------- */

/* Of one gear, from the mesh alone. */
typedef struct ts_iso6336_gear_prepared {
    double               C_R;    /* blank                                              */
    double               Js, ms; /* kg.m, kg/m                                         */
    double               x_E;    /* generating profile shift that shapes the root              */
    ts_root_form         form;
    ts_root_notch        notch;
    double               Y_F, Y_S; /* with f_eps; with the grinding notch                */
    double               Y_B, b_F; /* 1, m                                               */
    double               rho_p;    /* m                                                  */
    double               Y_deltarelT, Y_RrelT, Y_X, Y_deltastat;
    ts_mean_stress_ratio mean;
    ts_life_lines        life_H, life_F;
    bool                 softened; /* is Z_W its own?                                    */
} ts_iso6336_gear_prepared;

typedef struct ts_iso6336_prepared {
    ts_iso6336_mesh          mesh;
    ts_cylindrical_pair      pair;
    ts_iso6336_gear_prepared gear[2];

    double               b;                   /* m     the common face width                      */
    double               f_pb, f_falpha, C_a; /* m     of the pair; C_a NaN: grade 6 and coarser  */
    double               cp_100;              /* Pa                                               */
    double               m_red;               /* kg/m                                             */
    ts_dynamic_constants C_v;
    double Z_H, Z_E, Z_eps, Z_beta; /* Z_E in sqrt(Pa)                                  */
    ts_single_contact ends;         /* Z_B, Z_D                                         */
    double            rho_red;      /* m                                                */
    double            Z_L, C_Zv, Z_R;
    double            Z_Wstat, Z_W; /* of the soft gear; Z_W NaN: it depends on speed   */
    double            f_eps, Y_beta, Y_DT;
    double            N_F; /* exponent of K_Fbeta                              */
    ts_remarks        remarks;
    const char       *missing; /* NULL, or what makes the rating impossible        */
} ts_iso6336_prepared;

typedef struct ts_iso6336_gear_rating {
    double        Z_W, Z_NT, sigma_H, sigma_HG, sigma_HP, S_H;
    double        Y_M, Y_Mstat, Y_NT, sigma_F0, sigma_F, sigma_FG, sigma_FP, S_F;
    ts_life_curve contact, bending; /* for spectra */
} ts_iso6336_gear_rating;

typedef struct ts_iso6336_rating {
    double F_t, v; /* N, m/s  at the reference circle                         */
    double w_t;    /* N/m     F_t K_A K_gamma/b                               */
    double cp, c_gamma_alpha, c_gamma_beta; /* Pa                                                */
    double n_E1, N, N_S; /* rad/s, 1, 1                                             */
    ts_speed_range range;
    double         y_alpha, y_f, f_pbeff; /* m                                                   */
    ts_dynamic_parameters B;
    double                K_v;
    double                F_mb;      /* N/m     w_t K_v                                         */
    double F_betax, y_beta, F_betay; /* m       NaN where K_Hbeta is given                      */
    double K_Hbeta, K_Fbeta, q_alpha, K_Halpha, K_Falpha;
    double Z_v, sigma_H0;             /* 1, Pa                                                   */
    ts_cycles              cycles[2]; /* of each gear */
    ts_iso6336_gear_rating gear[2];
    ts_remarks             remarks; /* of this case; those of the mesh are in the prepared one */
    const char            *missing; /* NULL, or what makes the rating impossible               */
} ts_iso6336_rating;

/* `pair` must have been solved without a fault other than TS_PAIR_POINTED.  False, with `missing`
 * set, when an input is outside its range or a formula does not exist for it: every later rating is
 * then NaN and says the same. */
bool ts_iso6336_prepare(const ts_cylindrical_pair *pair, const ts_iso6336_mesh *mesh,
                        ts_iso6336_prepared *prepared, ts_workings *workings);

/* About a microsecond without workings.  A case without torque has no stress and safeties of
 * INFINITY; its load factors are NaN. */
bool ts_iso6336_rate(const ts_iso6336_prepared *prepared, const ts_iso6336_load *load,
                     ts_iso6336_rating *rating, ts_workings *workings);

/* The least of S_H/S_Hmin and S_F/S_Fmin over both gears, less 1; NaN where any is NaN.  *stress
 * and *gear (may be NULL) tell what decides. */
double ts_iso6336_reserve(const ts_iso6336_rating *rating, const ts_iso6336_load *load,
                          ts_rated_stress *stress, int *gear);

#endif
