/* rating/agma2003/agma2003_stress.h: contact and bending stress numbers of bevel gears by
 * ANSI/AGMA 2003-C10, and what is permitted.
 *
 * Units     m, N, Pa.  The force F_et acts at the outer pitch diameter: 2 T_1/d_e1.
 */
#ifndef TS_RATING_AGMA2003_STRESS_H
#define TS_RATING_AGMA2003_STRESS_H

#include "base/workings.h"

/* What both stresses share. */
typedef struct ts_agma2003_force {
    double F_et, b;
    double K_A, K_v, K_Hbeta;
} ts_agma2003_force;

typedef struct ts_agma2003_contact {
    double d_e; /* m    outer pitch diameter of the pinion (the smaller gear)                    */
    double Z_E, Z_x, Z_xc, Z_I;
} ts_agma2003_contact;
double ts_agma2003_contact_stress(const ts_agma2003_force   *force,
                                  const ts_agma2003_contact *contact, ts_workings *workings);

typedef struct ts_agma2003_bending {
    double m_et, Y_x, Y_beta, Y_J;
} ts_agma2003_bending;
double ts_agma2003_bending_stress(const ts_agma2003_force   *force,
                                  const ts_agma2003_bending *bending, int gear,
                                  ts_workings *workings);

typedef struct ts_agma2003_contact_strength {
    double sigma_Hlim, Z_NT, Z_W, K_theta, Z_Z;
} ts_agma2003_contact_strength;
double ts_agma2003_contact_permitted(const ts_agma2003_contact_strength *s, int gear,
                                     ts_workings *workings);

typedef struct ts_agma2003_bending_strength {
    double sigma_Flim, Y_NT, K_theta, Y_Z, Y_M;
} ts_agma2003_bending_strength;
double ts_agma2003_bending_permitted(const ts_agma2003_bending_strength *s, int gear,
                                     ts_workings *workings);

/* F_et that brings a stress number to sigma_P: the inverse of the two stresses above.  force->F_et
 * is not read; for K_v at the same speed. */
double ts_agma2003_contact_force(const ts_agma2003_force *force, const ts_agma2003_contact *contact,
                                 double sigma_P);
double ts_agma2003_bending_force(const ts_agma2003_force *force, const ts_agma2003_bending *bending,
                                 double sigma_P);

#endif
