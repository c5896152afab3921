/* rating/scuffing/scoring_index.h: the flash temperature index of AGMA 217.01 for aerospace spur
 * and helical gears, by which older drives were judged.
 *
 * Units     SI outside; the formula counts in inches, pounds and degrees Fahrenheit, and Z_t
 * carries them. Doubt     The form of Z_t is recalled, and where the diametral pitch stands in it
 * was not read.
 */
#ifndef TS_RATING_SCORING_INDEX_H
#define TS_RATING_SCORING_INDEX_H

#include "base/workings.h"

typedef struct ts_scoring_input {
    double rho_1, rho_2; /* m    curvatures at the point that is judged, usually a tip           */
    double z_1, z_2;
    double alpha_t, alpha_n; /* rad                                                              */
    double m_n;              /* m    reciprocal of the diametral pitch                           */
} ts_scoring_input;

/* Z_t, the scoring geometry factor; its sign says which flank slides ahead. */
double ts_scoring_geometry_factor(const ts_scoring_input *in, ts_workings *workings);

typedef struct ts_scoring_load {
    double w_te;    /* N/m    effective tangential load over effective face width              */
    double omega_1; /* rad/s                                                                   */
    double s_rms;   /* m      root mean square roughness, below 50 microinches                 */
    double T_i;     /* K      gear blank or oil-in temperature                                 */
    double m_n;     /* m                                                                       */
} ts_scoring_load;

/* T_f, K.  NaN for roughness of 50 microinches and more. */
double ts_scoring_index(double Z_t, const ts_scoring_load *load, ts_workings *workings);

#endif
