/* rating/micropitting/film_oil.h: how thick and how stiff is the oil at a temperature?  The oil of
 * ISO/TS 6336-22 by four numbers.
 *
 * Units     SI, K.
 * Ranges    The viscosity law holds above about 2 mm2/s; thinner oils are thicker than it says.
 */
#ifndef TS_RATING_FILM_OIL_H
#define TS_RATING_FILM_OIL_H

#include "base/workings.h"

#include <stdbool.h>

typedef struct ts_film_oil {
    double nu_40, nu_100; /* m2/s   kinematic viscosity at 40 and 100 degrees Celsius           */
    double rho_15;        /* kg/m3  density at 15 degrees Celsius                               */
    double alpha_38;      /* 1/Pa   pressure-viscosity coefficient at 38 degrees Celsius        */
} ts_film_oil;

/* The oil with the two constants of its viscosity law, log10(log10(nu + 0.7)) = A - B log10(T),
 * nu in mm2/s. */
typedef struct ts_film_law {
    ts_film_oil oil;
    double      A, B;
} ts_film_law;

/* False, and *law untouched, when the numbers are of no oil: nu_40 > nu_100 > 0.4 mm2/s, density
 * between 500 and 2000 kg/m3, 0 < alpha_38 < 1e-6/Pa. */
bool ts_film_law_of(const ts_film_oil *oil, ts_film_law *law, ts_workings *workings);

/* Dynamic viscosity, Pa.s, and pressure-viscosity coefficient, 1/Pa, at theta (K, 200 to 800). */
double ts_film_viscosity(const ts_film_law *law, double theta, ts_workings *workings);
double ts_film_pressure_coefficient(const ts_film_law *law, double theta, ts_workings *workings);

#endif
