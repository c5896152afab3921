/* rating/bearing/life_weibull.h: which catalogue capacity does a bearing need for a reliability?
 * The textbook form with a three-parameter Weibull law, as a second opinion beside a_1.
 *
 * Units     x_D: wanted life over the million turns of the rating; loads in N.
 * Source    R. Budynas, K. Nisbett, Shigley's Mechanical Engineering Design, 8th ed., chapter 11.
 */
#ifndef TS_RATING_LIFE_WEIBULL_H
#define TS_RATING_LIFE_WEIBULL_H

#include "base/workings.h"

/* x_0 least life, theta characteristic life (both over L_10), b slope. */
typedef struct ts_life_scatter {
    double x_0, theta, b;
} ts_life_scatter;
/* The maker's column that the book's later chapters use: 0.02, 4.459, 1.483. */
extern const ts_life_scatter ts_shigley_scatter;

/* C_10 for life x_D at reliability R under F (application factor in it), exponent p. */
double ts_scattered_capacity(const ts_life_scatter *scatter, double F, double x_D, double R,
                             double p, ts_workings *workings);
/* The reliability that a bearing of capacity C_10 then has; 1 before the least life. */
double ts_scattered_reliability(const ts_life_scatter *scatter, double F, double C_10, double x_D,
                                double p, ts_workings *workings);

#endif
