/* rating/agma2101/agma_stress.h: which stress does a load make, and how far is it from what the
 * steel may bear?  ANSI/AGMA 2101-D04, clauses 5 (fundamental formulas) and 12 (Z_E).
 *
 * Units     SI: Pa, N, m; Z_E in sqrt(Pa): 190 sqrt(N/mm2) is 190e3 here.
 * Compare   S_F grows with the load's reciprocal, S_H with its square root: S_F against S_H^2.
 */
#ifndef TS_RATING_AGMA_STRESS_H
#define TS_RATING_AGMA_STRESS_H

#include "base/workings.h"

/* Z_E of two steels. */
double ts_agma_elastic_coefficient(double E_1, double nu_1, double E_2, double nu_2,
                                   ts_workings *workings);

/* What raises the load on the flanks and at the root alike. */
typedef struct ts_agma_overload {
    double F_t; /* N    at the operating pitch circle                                          */
    double K_o; /*      overload factor                                                        */
    double K_v; /*      dynamic factor                                                         */
    double K_H; /*      load distribution factor                                               */
} ts_agma_overload;

typedef struct ts_agma_contact_input {
    double K_s; /*      size factor                                                            */
    double Z_E; /*      sqrt(Pa)                                                               */
    double Z_R; /*      surface condition factor                                               */
    double d_w; /* m    operating pitch diameter of the pinion                                 */
    double b;   /* m                                                                           */
    double Z_I;
} ts_agma_contact_input;
/* gear: 0 or 1, the gear whose K_s it is. */
double ts_agma_contact_stress(const ts_agma_overload *load, const ts_agma_contact_input *in,
                              int gear, ts_workings *workings);

typedef struct ts_agma_bending_stress_input {
    double K_s;
    double K_B; /*      rim thickness factor                                                   */
    double m_t; /* m    transverse module                                                      */
    double b;   /* m                                                                           */
    double Y_J;
} ts_agma_bending_stress_input;
double ts_agma_bending_stress(const ts_agma_overload *load, const ts_agma_bending_stress_input *in,
                              int gear, ts_workings *workings);

/* S_H and S_F: capacity over demand. */
typedef struct ts_agma_contact_strength {
    double sigma_HP; /* Pa   allowable contact stress number, of the steel                      */
    double Z_N, Z_W, Y_theta, Y_Z;
} ts_agma_contact_strength;
double ts_agma_safety_contact(double sigma_H, const ts_agma_contact_strength *in, int gear,
                              ts_workings *workings);

typedef struct ts_agma_bending_strength {
    double sigma_FP; /* Pa   allowable bending stress number, of the steel                      */
    double Y_N, Y_M, Y_theta, Y_Z;
} ts_agma_bending_strength;
double ts_agma_safety_bending(double sigma_F, const ts_agma_bending_strength *in, int gear,
                              ts_workings *workings);

#endif
