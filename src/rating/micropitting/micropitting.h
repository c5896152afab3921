/* rating/micropitting/micropitting.h: is the oil film thick enough to keep the flanks from turning
 * grey?  ISO/TS 6336-22:2018, method B: an indication, not a rating; it never governs by itself.
 *
 * Shapes    What depends on the mesh alone is prepared once; then every load case is rated by
 *           itself, for one flank and one driver.
 * Units     SI, rad; temperatures in K.
 * Missing   What cannot be computed is NaN and never passes; `missing` says what it lacked.
 * Workings  Results are bit-equal with and without; of the path only the point with the least film
 *           is noted.  Inputs are noted by the caller under the names below.
 * Sources   docs/method/micropitting.md: clauses used, left out and doubted; all recalled.
 */
#ifndef TS_RATING_MICROPITTING_H
#define TS_RATING_MICROPITTING_H

#include "base/workings.h"
#include "catalog/gear_material.h"
#include "element/cylindrical_pair.h"
#include "element/flank_path.h"
#include "element/load_share.h"
#include "element/oil_viscosity.h"

#include <stdbool.h>

typedef struct ts_film_gear {
    double E, nu; /* Pa, 1                                                                     */
    double B_M;   /* J/(m2.K.s^0.5)   see ts_thermal_contact                                   */
    double Ra;    /* m                > 0                                                      */
    double C_a;   /* m                tip relief, 0: none                                      */
    double W_W;   /* 1                material: 1 case-carburised with up to 25 % austenite,
                                      0.95 with more, 1.5 nitrided above 850 HV, 0.65 induction
                                      hardened, 0.5 through-hardened (from memory)              */
} ts_film_gear;

typedef struct ts_micropitting_mesh {
    ts_film_gear gear[2];
    int          driver; /*   1 or 2                                                           */
    int          grade;  /*   coarser tolerance class of both, ISO 1328-1                      */
    double       X_S;    /* 1 1.2 oil jets, 1.0 dip, 0.2 submerged                              */
    double       X_L;    /* 1 see ts_lubricant_friction                                        */
    ts_film_oil  oil;

    /* What the flanks need: lambda_GFP as it is known, or the stage at which the oil fails in the
     * micropitting test, from which it follows.  NaN: not known. */
    double lambda_GFP;
    int    SKS;        /*   failing stage, 5 to 10; 0: not known                               */
    double theta_test; /* K oil temperature of the test, 333.15 or 363.15                      */
} ts_micropitting_mesh;

typedef struct ts_micropitting_load {
    double T_1;     /* N.m    >= 0                                                             */
    double omega_1; /* rad/s  >= 0                                                             */
    double K_A, K_gamma, K_v, K_Hbeta, K_Halpha;
    double cp, c_gamma_alpha; /* Pa     asked of spur and of helical pairs with tip relief     */
    double theta_oil;         /* K                                                             */
    double theta_M;           /* K      from a loss model; NaN: by this method itself          */
} ts_micropitting_load;

typedef enum ts_micropitting_remark {
    TS_MICROPITTING_HIGH_RATIO   = 1 << 0, /* no load share in the clause                 */
    TS_MICROPITTING_THIN_OIL     = 1 << 1, /* below 2 mm2/s at the bulk temperature        */
    TS_MICROPITTING_NO_LIMIT     = 1 << 2, /* nothing is known of the oil                  */
    TS_MICROPITTING_NOTHING_RUBS = 1 << 3  /* no torque or no speed                        */
} ts_micropitting_remark;
#define TS_MICROPITTING_REMARKS 4
const char *ts_micropitting_remark_says(ts_micropitting_remark remark);
const char *ts_micropitting_remark_clause(ts_micropitting_remark remark);

typedef struct ts_micropitting_prepared {
    ts_micropitting_mesh mesh;
    ts_cylindrical_pair  pair;
    ts_flank_path        path;
    ts_load_share        share;
    ts_film_law          law;
    double               b, E_r, Ra, rho_redC, K_Bgamma;
    double               eps_1, eps_2, H_v;
    double               lambda_GFP; /* NaN: not known                                         */
    unsigned             remarks;
    const char          *missing;
} ts_micropitting_prepared;

typedef struct ts_micropitting {
    double      v, w_Bt;                  /* m/s, N/m                                   */
    double      mu_m;                     /* 1                                          */
    double      theta_M;                  /* K                                          */
    double      lambda[TS_FLANK_POINTS];  /* specific film along the path               */
    double      theta_B[TS_FLANK_POINTS]; /* K   contact temperature                    */
    double      lambda_GFmin;             /* 1                                          */
    double      h_min;                    /* m   film at that point                     */
    int         thinnest;                 /*     the point                              */
    const char *where;
    double      lambda_GFP, S_lambda; /* 1                                          */
    unsigned    remarks;
    const char *missing;
} ts_micropitting;

/* `pair` must have been solved without a fault other than TS_PAIR_POINTED.  False, with `missing`
 * set, when an input is outside its range. */
bool ts_micropitting_prepare(const ts_cylindrical_pair *pair, const ts_micropitting_mesh *mesh,
                             ts_micropitting_prepared *prepared, ts_workings *workings);

/* Without torque or speed there is no film to judge: lambda is NaN and S_lambda INFINITY. */
bool ts_micropitting_rate(const ts_micropitting_prepared *prepared,
                          const ts_micropitting_load *load, ts_micropitting *rating,
                          ts_workings *workings);

/* W_W of a steel and the hardness (HV) of its flanks; 1 of case-hardened steel, whose austenite is
 * not known. */
double ts_film_material_factor(ts_gear_class class, double hardness);

/* lambda_GFT, the least specific film of the test gears C-GF at the failing stage SKS (5 to 10) and
 * the oil temperature theta_test (K); NaN for any other stage. */
double ts_test_gear_film(const ts_film_oil *oil, double X_L, int SKS, double theta_test,
                         ts_workings *workings);

#endif
