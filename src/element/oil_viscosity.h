/* element/oil_viscosity.h: how thick, how heavy and how stiff under pressure is an oil at a
 * temperature?  ASTM D341 (Walther) by two points, and the oil of ISO/TS 6336-22 by four numbers.
 *
 * Units     SI, K.
 * Ranges    Above about 2 mm2/s.  Drawn to the cold from 40 and 100 degrees Celsius the law makes
 *           ester oils up to 70 % too thick at -40 (from memory, no source): take a cold point.
 */
#ifndef TS_ELEMENT_OIL_VISCOSITY_H
#define TS_ELEMENT_OIL_VISCOSITY_H

#include "base/workings.h"
#include "element/contact_friction.h"

#include <stdbool.h>

/* log10(log10(nu + 0.7)) = A - B log10(theta), nu in mm2/s, theta in K. */
typedef struct ts_viscosity_law {
    double A, B;
} ts_viscosity_law;

/* NaN unless nu_a, nu_b > 0.4 mm2/s and theta_a, theta_b > 0 differ. */
ts_viscosity_law ts_viscosity_law_of(double nu_a, double theta_a, double nu_b, double theta_b,
                                     ts_workings *workings);
/* By what a sheet tells, at 40 and 100 degrees Celsius. */
ts_viscosity_law ts_viscosity_law_of_oil(double nu_40, double nu_100, ts_workings *workings);
double           ts_viscosity_at(const ts_viscosity_law *law, double theta, ts_workings *workings);

/* ---- an oil ---------------------------------------------------------------------------------- */

typedef struct ts_film_oil {
    double nu_40, nu_100; /* m2/s   kinematic viscosity at 40 and 100 degrees Celsius           */
    double rho_15;        /* kg/m3  density at 15 degrees Celsius                               */
    double alpha_38;      /* 1/Pa   pressure-viscosity coefficient at 38 degrees Celsius        */
} ts_film_oil;

typedef struct ts_film_law {
    ts_film_oil      oil;
    ts_viscosity_law viscosity;
} ts_film_law;

/* False, and *law untouched, when the numbers are of no oil: nu_40 > nu_100 > 0.4 mm2/s, density
 * between 500 and 2000 kg/m3, 0 < alpha_38 < 1e-6/Pa. */
bool ts_film_law_of(const ts_film_oil *oil, ts_film_law *law, ts_workings *workings);

/* The same of a kind of oil, from which alpha_38 follows; what the oil has of it does not count. */
bool ts_film_law_of_kind(const ts_film_oil *oil, ts_lubricant kind, ts_film_law *law,
                         ts_workings *workings);

/* kg/m3 at theta (K). */
double ts_film_density(const ts_film_law *law, double theta, ts_workings *workings);
/* Dynamic viscosity, Pa.s, and pressure-viscosity coefficient, 1/Pa, at theta (K, 200 to 800). */
double ts_film_viscosity(const ts_film_law *law, double theta, ts_workings *workings);
double ts_film_pressure_coefficient(const ts_film_law *law, double theta, ts_workings *workings);

#endif
