/* rating/agma2101/agma2101_case.h: what does a pair that ISO 6336 rates look like to AGMA 2101?
 *
 * Both standards are asked about the same gears and loads, in their own words: cycles and stress
 * ratios become n_L and q, torque a force at the operating pitch circle, the pitch deviations an
 * accuracy A_v, the class of a steel the lines of its life.
 */
#ifndef TS_RATING_AGMA2101_CASE_H
#define TS_RATING_AGMA2101_CASE_H

#include "catalog/gear_material.h"
#include "rating/agma2101/agma2101.h"

/* The line of Y_N and Z_N of a class of ISO 6336-5. */
ts_agma_life_line ts_agma_line_of(ts_gear_class class);

/* 0 or 1: the gear whose single pitch deviation f_pt (m, > 0) gives the coarser A_v; the first
 * when they are alike. */
int ts_agma_coarser_gear(const ts_cylindrical_pair *pair, const double f_pt[2]);

/* A_v of that gear.  The workings ask the caller for f_pt, which is that of this gear, and are
 * about `own`. */
double ts_agma_accuracy_of_gear(const ts_cylindrical_pair *pair, int gear, double f_pt,
                                ts_subject own, ts_workings *workings);

/* By how much a tooth is thinner at its lower allowance E_sni (m), in normal modules m_n (m); 0
 * when it is not.  The workings ask the caller for E_sni1 or E_sni2. */
double ts_agma_thinning_of(double E_sni, double m_n, int gear, ts_workings *workings);

/* A load case in the words of ISO 6336. */
typedef struct ts_agma2101_case {
    double T_1;     /* N.m    torque of gear 1, >= 0                                           */
    double omega_1; /* rad/s  >= 0                                                             */
    double d_w1;    /* m                                                                       */
    double N_L[2];  /*        load cycles                                                      */
    double R[2];    /*        stress ratio of each root, ts_stress_ratio                       */
    double K_A, K_gamma;
} ts_agma2101_case;

/* The workings ask the caller for T_1, omega_1, d_w1, R_1, R_2, K_A, K_gamma. */
ts_agma2101_load ts_agma2101_load_of(const ts_agma2101_case *in, ts_workings *workings);

#endif
