/* element/oil_viscosity.h: how thick is an oil at a temperature, by two points?  ASTM D341
 * (Walther).
 *
 * Units     m2/s, K.
 * Ranges    Above about 2 mm2/s.  Drawn to the cold from 40 and 100 degrees Celsius the law makes
 *           ester oils up to 70 % too thick: take a cold point.
 */
#ifndef TS_ELEMENT_OIL_VISCOSITY_H
#define TS_ELEMENT_OIL_VISCOSITY_H

#include "base/workings.h"

/* log10(log10(nu + 0.7)) = A - B log10(T), nu in mm2/s, T in K. */
typedef struct ts_viscosity_law {
    double A, B;
} ts_viscosity_law;

/* NaN unless nu_1, nu_2 > 0.4 mm2/s and T_1, T_2 > 0 differ. */
ts_viscosity_law ts_viscosity_law_of(double nu_1, double T_1, double nu_2, double T_2,
                                     ts_workings *workings);
double           ts_viscosity_at(const ts_viscosity_law *law, double T, ts_workings *workings);

#endif
