/* element/involute.h: the involute function and its inverse. */
#ifndef TS_ELEMENT_INVOLUTE_H
#define TS_ELEMENT_INVOLUTE_H

/* inv(alpha) = tan(alpha) - alpha, for |alpha| < pi/2; ISO 21771:2007, "involute function".
 * Below 0.25 rad a power series is used, since the difference would lose up to ten digits. */
double ts_inv(double alpha);

/* The angle whose involute function is `value` >= 0, to 4e-15 of itself; 0 for 0.  A negative value
 * gives NaN, and so does one above 1e12, where the angle cannot be told from a right angle. */
double ts_inv_inverse(double value);

#endif
