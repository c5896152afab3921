/* quantity/conversion.h: what parsing and printing share: one way from a decimal to SI. */
#ifndef TS_QUANTITY_CONVERSION_H
#define TS_QUANTITY_CONVERSION_H

#include "quantity/quantity.h"
#include "quantity/twofold.h"

#define TS_QUANTITY_LEAST 1e-200
#define TS_QUANTITY_MOST  1e200

/* digits * 10^exponent of that unit, in SI and rounded once; the decimal is 0 or lies between
 * TS_QUANTITY_LEAST and TS_QUANTITY_MOST. */
double ts_decimal_to_si(ts_decimal decimal, const ts_unit *unit);

/* The value in that unit to about 100 bits. */
twofold ts_twofold_from_si(double si, const ts_unit *unit);

#endif
