/* rating/scuffing/scuffing.h: will the flanks of a cylindrical pair weld and tear?
 * ISO/TS 6336-20:2017 (flash temperature) and -21:2017 (integral temperature).
 *
 * Shapes    What depends on the mesh alone is prepared once; then every load case is rated by
 *           itself, for one flank and one driver.
 * Units     SI, rad; temperatures in K.
 * Signs     As in the pair: an internal gear 2 has z_2, u, a_w < 0.
 * Missing   What cannot be computed is NaN and never passes; `missing` says what it lacked.
 * Ranges    What lies outside is computed where a formula goes on, and told in `remarks`.
 * Meaning   Both standards call S < 1 a high and S > 2 a low risk; between them the risk depends on
 *           how well loads, oil and surfaces are known.
 * Workings  Results are bit-equal with and without; of the path only the hottest point is noted.
 *           Inputs are noted by the caller under the names below.
 * Sources   docs/method/scuffing.md: clauses used, left out and doubted; all recalled.
 */
#ifndef TS_RATING_SCUFFING_H
#define TS_RATING_SCUFFING_H

#include "base/workings.h"
#include "catalog/gear_material.h"
#include "element/cylindrical_pair.h"
#include "rating/scuffing/flash_temperature.h"

#include <stdbool.h>

typedef struct ts_scuffing_gear {
    ts_flash_body body; /*    E, nu, B_M                                                     */
    double        Ra;   /* m  roughness of the flank, > 0                                     */
    double        C_a;  /* m  tip relief, 0: none                                             */
    double        X_W;  /* 1  structure: 1 case- or through-hardened, see ts_structure_factor  */
} ts_scuffing_gear;

typedef struct ts_scuffing_mesh {
    ts_scuffing_gear gear[2];
    int              driver; /*   1 or 2: which gear drives                                     */
    int              grade;  /*   coarser tolerance class of both, ISO 1328-1                    */
    int              mates;  /*   how many gears the busier of the two meshes with, >= 1         */
    double           X_S;    /* 1 1.2 oil jets, 1.0 dip or jets that cool, 0.2 submerged          */
    double           X_L;    /* 1 see ts_lubricant_friction                                     */
    double           phi_E;  /* 1 0 as made .. 1 run in; the integral method asks               */

    /* What the oil stands: a load stage of test A/8.3/90 (ISO 14635-1), or temperatures, which
     * then go before it.  NaN: not known. */
    double S_FZG;               /* 1                                               */
    double nu_40;               /* m2/s   asked for the stage                      */
    double theta_S, theta_intS; /* K                                               */
} ts_scuffing_mesh;

typedef struct ts_scuffing_load {
    double T_1;     /* N.m    torque of gear 1, >= 0                                          */
    double omega_1; /* rad/s  speed of gear 1, >= 0                                           */
    double K_A, K_gamma, K_v, K_Hbeta, K_Halpha;
    double cp; /* Pa     single stiffness c', asked of spur pairs                        */
    double c_gamma_alpha; /* Pa     mesh stiffness, asked of helical pairs */
    double theta_oil; /* K      oil that reaches the mesh                                       */
    double eta_oil;   /* Pa.s   its dynamic viscosity there                                     */
    double theta_M;   /* K      bulk temperature from a loss model; NaN: by each method itself  */
} ts_scuffing_load;

/* Sets of these. */
typedef enum ts_scuffing_remark {
    TS_SCUFFING_HIGH_RATIO   = 1 << 0, /* no load share in the clause                    */
    TS_SCUFFING_OVERLAP      = 1 << 1, /* no contact ratio factor                        */
    TS_SCUFFING_PITCH_POINT  = 1 << 2, /* C is not on the path                           */
    TS_SCUFFING_RELIEF_OVER  = 1 << 3, /* C_a beyond C_eff                               */
    TS_SCUFFING_GRADE        = 1 << 4, /* relief not counted for coarse gears            */
    TS_SCUFFING_SPEED_HELD   = 1 << 5, /* above 50 m/s                                   */
    TS_SCUFFING_LOAD_HELD    = 1 << 6, /* below 150 N/mm                                 */
    TS_SCUFFING_STAGE        = 1 << 7, /* load stage beyond the test                     */
    TS_SCUFFING_NO_LIMIT     = 1 << 8, /* nothing is known of the oil: no safety         */
    TS_SCUFFING_NOTHING_RUBS = 1 << 9  /* no torque or no speed                          */
} ts_scuffing_remark;
#define TS_SCUFFING_REMARKS 10

/* One sentence without a full stop, and its clause. */
const char *ts_scuffing_remark_says(ts_scuffing_remark remark);
const char *ts_scuffing_remark_clause(ts_scuffing_remark remark);

typedef struct ts_scuffing_prepared {
    ts_scuffing_mesh    mesh;
    ts_cylindrical_pair pair;
    ts_flash_prepared   flash;
    double              b;            /* m  the common face width                            */
    double              eps_1, eps_2; /*    contact ratios of recess and approach, gear 1 drives */
    double              rho_redC;     /* m                                                   */
    double              K_Bgamma;     /*                                                     */
    double              X_mp;         /*    multiple mating                                  */
    double              X_W;          /*    the smaller of both gears                        */
    double              X_M, X_BE, X_alphabeta, X_Q, X_eps, X_E;
    double              theta_S, theta_intS; /* K, NaN: not known                               */
    unsigned            remarks;
    const char         *missing; /* NULL, or what makes the rating impossible                  */
} ts_scuffing_prepared;

typedef struct ts_scuffing {
    double F_t, v;     /* N, m/s  at the reference circle                                 */
    double w_Bt, w_n;  /* N/m     specific load with all K factors; normal to the flanks   */
    double C_eff;      /* m                                                               */
    double r_1, r_2;   /* 1       part of it that each relief makes up for                 */
    double v_gA, v_gE; /* m/s     sliding where contact begins and ends                   */

    /* Flash temperature. */
    double      mu_m;
    ts_flash    flash;    /* along the path; point flash.hot is the hottest          */
    const char *hot_spot; /* where that is                                           */
    double      Gamma_hot;
    double      theta_M, theta_Bmax, theta_S; /* K                                   */
    double      S_B;

    /* Integral temperature. */
    double mu_mC, X_Ca, theta_flaint;         /* 1, 1, K                                       */
    double theta_Mint, theta_int, theta_intS; /* K                                     */
    double S_intS, S_Sl;

    unsigned    remarks;
    const char *missing;
} ts_scuffing;

/* `pair` must have been solved without a fault other than TS_PAIR_POINTED.  False, with `missing`
 * set, when an input is outside its range: every later rating is then NaN and says the same.  The
 * prepared mesh points into itself: it must not be copied. */
bool ts_scuffing_prepare(const ts_cylindrical_pair *pair, const ts_scuffing_mesh *mesh,
                         ts_scuffing_prepared *prepared, ts_workings *workings);

/* About a microsecond without workings.  Without torque or speed nothing gets hotter than the oil,
 * and safeties are INFINITY. */
bool ts_scuffing_rate(const ts_scuffing_prepared *prepared, const ts_scuffing_load *load,
                      ts_scuffing *rating, ts_workings *workings);

/* X_W of a surface. */
typedef enum ts_flank_structure {
    TS_STRUCTURE_THROUGH_HARDENED,
    TS_STRUCTURE_CASE_LOW,   /* case-hardened, less than 10 % austenite  */
    TS_STRUCTURE_CASE_USUAL, /* 10 % to 20 %                             */
    TS_STRUCTURE_CASE_HIGH,  /* 20 % to 30 %                             */
    TS_STRUCTURE_NITRIDED,   /* gas or bath                              */
    TS_STRUCTURE_PHOSPHATED,
    TS_STRUCTURE_COPPERED,
    TS_STRUCTURE_STAINLESS, /* austenitic                               */
    TS_STRUCTURE_COUNT
} ts_flank_structure;
double      ts_structure_factor(ts_flank_structure structure);
const char *ts_structure_name(ts_flank_structure structure);
/* What flanks of steels that are hardened so usually are. */
ts_flank_structure ts_usual_structure(ts_gear_class class);

#endif
