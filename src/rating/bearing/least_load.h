/* rating/bearing/least_load.h: below which load do the rolling elements slip instead of rolling?
 *
 * Units     SI; n rad/s, nu m2/s, d_m m.
 * Source    Forms of bearing makers' catalogues (from memory); k_r stands in the maker's table of
 *           the bearing.  They hold for steady running: fast changes of speed ask for more.
 */
#ifndef TS_RATING_LEAST_LOAD_H
#define TS_RATING_LEAST_LOAD_H

#include "base/workings.h"

/* Deep groove ball bearings, k_r about 0.015 to 0.04. */
double ts_least_load_ball(double k_r, double nu, double n, double d_m, ts_workings *workings);
/* Cylindrical roller bearings, k_r about 0.1 to 0.2; n_r: reference speed of the bearing. */
double ts_least_load_roller(double k_r, double n, double n_r, double d_m, ts_workings *workings);
/* Where no k_r is known: 0.01 C (balls), 0.02 C (rollers). */
double ts_least_load_share(double share, double C, ts_workings *workings);

#endif
