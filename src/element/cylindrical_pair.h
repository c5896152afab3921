/* element/cylindrical_pair.h: two spur or helical gears in mesh, ISO 21771:2007.
 *
 * Units     m, rad.
 * Signs     An internal gear 2 has z_2 < 0; then d_2, d_b2, d_w2, d_a2, d_f2, a, a_w and u are
 *           negative and every formula stays as it is (see cylindrical_gear.h).
 * Speed     One pair takes about 1 us without workings.
 */
#ifndef TS_ELEMENT_CYLINDRICAL_PAIR_H
#define TS_ELEMENT_CYLINDRICAL_PAIR_H

#include "base/workings.h"
#include "element/basic_rack.h"
#include "element/cylindrical_gear.h"

/* Which profile shifts hold when a centre distance is given. */
typedef enum ts_shift_rule {
    TS_SHIFT_GIVEN,  /* x_1 and x_2 as given; a given a_w then leaves backlash (or a clash)  */
    TS_SHIFT_REST_1, /* x_1 follows from a_w and x_2 at zero backlash                        */
    TS_SHIFT_REST_2, /* x_2 follows from a_w and x_1                                         */
    TS_SHIFT_EQUAL_SLIDING /* both follow: greatest specific sliding equal on both gears     */
} ts_shift_rule;

/* How far the tips reach. */
typedef enum ts_tip_rule {
    TS_TIP_GIVEN,     /* k_1 and k_2 as given; 0 keeps the full addendum of the rack          */
    TS_TIP_CLEARANCE, /* k_1 = k_2 = y - x_1 - x_2: the tip clearance of the rack is kept    */
    TS_TIP_DIAMETERS  /* k_1 and k_2 follow from the given d_a1 and d_a2                     */
} ts_tip_rule;

/* Besides the ranges below: at most a million teeth, 1000 km, and coefficients of 1000. */
typedef struct ts_cylindrical_pair_input {
    int    z_1, z_2;     /* 1    teeth; z_1 > 0; z_2 < 0 for an internal gear, not 0           */
    double m_n;          /* m    normal module, 1e-9 <= m_n <= 1000                            */
    double alpha_n;      /* rad  normal pressure angle, 0.01 <= alpha_n <= 1.5                 */
    double beta;         /* rad  helix angle without its hand, 0 <= beta <= 1.5                */
    double b_1, b_2;     /* m    face widths, >= 0                                             */
    double x_1, x_2;     /* 1    profile shift coefficients                                    */
    double a_w;          /* m    centre distance wanted; 0: it follows from x_1 and x_2        */
    double k_1, k_2;     /* 1    tip alteration coefficients, read by TS_TIP_GIVEN             */
    double d_a1, d_a2;   /* m    tip diameters of z's sign, read by TS_TIP_DIAMETERS           */
    ts_shift_rule shift; /*      which of x_1 and x_2 are given                                */
    ts_tip_rule   tip;   /*      which of k and d_a are given                                  */
    ts_basic_rack rack;  /*      of both gears; see ts_basic_rack_fitted                       */
} ts_cylindrical_pair_input;

typedef enum ts_pair_fault {
    TS_PAIR_FINE,
    TS_PAIR_POINTED,      /* everything is computed, but a tooth ends in a point below its tip  */
    TS_PAIR_NO_CENTRE,    /* the gears cannot mesh at this centre distance or profile shift     */
    TS_PAIR_NO_TIP,       /* a tip circle lies inside its base circle: there is no flank        */
    TS_PAIR_NO_RACK,      /* the rack cannot exist at this pressure angle                       */
    TS_PAIR_OUT_OF_RANGE, /* an input is outside the range stated above                         */
    TS_PAIR_NO_SPLIT      /* no profile shifts between the limits give equal sliding            */
} ts_pair_fault;

typedef struct ts_cylindrical_pair {
    ts_cylindrical_pair_input in;

    double m_t, alpha_t, beta_b, p_bt; /* transverse module, pressure angle, base helix, pitch  */
    double u;                          /* z_2/z_1                                               */
    double a;                          /* m    reference centre distance                        */
    double a_w;                        /* m    working centre distance                          */
    double alpha_wt;                   /* rad  working transverse pressure angle                */
    double inv_alpha_wt;               /* 1    its involute function                            */
    double y;                          /* 1    centre distance modification coefficient         */
    double sum_x;                      /* 1    sum of shifts that closes the mesh at a_w        */
    double x_1, x_2, k_1, k_2;         /* 1    as given or as they follow                       */
    double d_1, d_2, d_b1, d_b2, d_w1, d_w2, d_a1, d_a2, d_f1, d_f2; /* m                       */
    double s_t1, s_t2, s_at1, s_at2, s_an1, s_an2; /* m    tooth thickness: reference, tip      */
    double x_min1, x_min2;   /* 1    undercut below these; NaN: internal              */
    double rho_Ff1, rho_Ff2; /* m    end of the involute at the root; < 0: undercut   */
    double d_Ff1, d_Ff2;     /* m    root form diameters; NaN: undercut or internal   */
    double c_1, c_2;         /* m    tip clearance: tip of 1 (2) to root of 2 (1)     */
    double j_bn, j_wt;       /* m    backlash: normal; circumferential at d_w         */

    /* The path of contact, as radii of curvature of gear 1: A tip of 2 enters, B lowest and D
     * highest point of single contact, C pitch point, E tip of 1 leaves.  rho_T is the length
     * between the two base circles; the radius of gear 2 is rho_T minus that of gear 1. */
    double rho_T, rho_A1, rho_B1, rho_C1, rho_D1, rho_E1; /* m                                  */
    double g_alpha, g_f, g_a;              /* m    path of contact: whole, approach, recess     */
    double eps_alpha, eps_beta, eps_gamma; /* 1    transverse, overlap, total contact ratio     */
    double zeta_A1, zeta_A2, zeta_E1, zeta_E2; /* 1    specific sliding at A and E; NaN where
                                                  the path reaches past a base circle           */
    double clear_Ff1, clear_Ff2; /* m    along the path, from the end of the involute at the root
                                    to where contact begins; < 0: the mating tip meets the fillet
                                    (interference); NaN: not known for an internal gear         */
} ts_cylindrical_pair;

/* Solves one pair.  On TS_PAIR_FINE and TS_PAIR_POINTED everything is filled in; otherwise the
 * results are NaN.  `workings` may be NULL; symbols carry the index of their gear. */
ts_pair_fault ts_cylindrical_pair_solve(const ts_cylindrical_pair_input *in,
                                        ts_cylindrical_pair *pair, ts_workings *workings);

/* One sentence without a full stop: "a tooth ends in a point below its tip circle". */
const char *ts_pair_fault_says(ts_pair_fault fault);

/* Gear 1 (index 1) or gear 2 (index 2) of a solved pair, by itself, for outlines and measures. */
void ts_cylindrical_pair_gear(const ts_cylindrical_pair *pair, ts_gear_index index,
                              ts_cylindrical_frame *frame, ts_cylindrical_gear *gear);

#endif
