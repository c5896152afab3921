/* rating/agma2101/agma217_index.h: the scoring index of aerospace gears, AGMA 217.01 (1965): how
 * hot would a flash of contact make the flanks?  Kept as an indication beside the methods of today.
 *
 * The index is a temperature by regression over tests of aircraft gears with thin synthetic oil.
 * Its risk bands for carburised AMS 6260 and 9310: low below 276 degF, high above 338 degF (Dudley,
 * from memory).
 */
#ifndef TS_RATING_AGMA217_INDEX_H
#define TS_RATING_AGMA217_INDEX_H

#include "base/workings.h"

/* At one point of the path of contact. */
typedef struct ts_agma217_point {
    double rho_1, rho_2;     /* m    curvatures of pinion and wheel there                       */
    double u;                /* 1    teeth of the wheel over those of the pinion                */
    double m_t;              /* m    transverse module                                          */
    double alpha_t, alpha_n; /* rad                                                             */
} ts_agma217_point;

/* Z_t, the scoring geometry factor; negative where the wheel is the faster flank. */
double ts_agma217_geometry(const ts_agma217_point *at, ts_workings *workings);

typedef struct ts_agma217_load {
    double T_i;     /* K      temperature of the gears before contact                           */
    double W_te;    /* N      effective tangential load                                         */
    double b_e;     /* m      effective face width                                              */
    double s_rms;   /* m      roughness of the flanks, rms, below 50 microinches                */
    double omega_1; /* rad/s  of the pinion                                                     */
} ts_agma217_load;

/* T_f, K.  NaN outside the ranges above. */
double ts_agma217_flash(double Z_t, double m_t, const ts_agma217_load *load, ts_workings *workings);

#endif
