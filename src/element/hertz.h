/* element/hertz.h: how hard do two smooth elastic bodies press where they touch?
 *
 * Units     m, N, Pa.  Radii are of curvature, negative for a hollow; the reduced radius of a pair
 *           must come out above 0, or the surfaces fit each other and the theory ends: NaN.
 * Sources   H. Hertz 1881; K. L. Johnson, Contact Mechanics (1985), chapter 4 (from memory).
 */
#ifndef TS_ELEMENT_HERTZ_H
#define TS_ELEMENT_HERTZ_H

#include "base/workings.h"

/* E_r, twice the "contact modulus" E* of some books: 2/((1 - nu_1^2)/E_1 + (1 - nu_2^2)/E_2). */
double ts_reduced_modulus(double E_1, double nu_1, double E_2, double nu_2, ts_workings *workings);

/* R = 1/(1/R_1 + 1/R_2). */
double ts_reduced_radius(double R_1, double R_2, ts_workings *workings);

/* Two parallel cylinders under w (N/m, >= 0); R reduced, m, > 0. */
typedef struct ts_line_contact {
    double b_H;   /* m   half the width of the band of contact; NaN for w < 0 or R <= 0 */
    double p_max; /* Pa  in its middle                                                  */
} ts_line_contact;
ts_line_contact ts_hertz_line(double w, double R, double E_r, ts_workings *workings);

/* Two bodies with reduced radii R_x and R_y (m, > 0) in two planes at right angles, under Q (N, >=
 * 0).  NaN outside of these. */
typedef struct ts_point_contact {
    double k;     /* 1   short over long semi-axis                                      */
    double a, b;  /* m   long and short semi-axis; long where the reduced radius is larger */
    double p_max; /* Pa                                                                 */
} ts_point_contact;
ts_point_contact ts_hertz_point(double Q, double R_x, double R_y, double E_r,
                                ts_workings *workings);

#endif
