/* response/elastic_series.h: how does an elastic train move until something next happens to it? For
 * src/response alone.
 *
 * Method    Between two events the equations are linear with constant coefficients, and what comes
 *           from outside is a power, an exponential or a sine of time.  Taylor's series of the
 *           motion is then a recursion, without a matrix or an iteration: it is summed to
 *           TS_SERIES_ORDER, over a step so long that its last two terms are below the tolerance.
 *           All of the coefficients are of theta = (t - t_0)/h, 0 <= theta <= 1.
 * Energies  Heat and work are the integrals of squares of the series, by Gauss's rule of TS_GAUSS
 *           points, exact for a square up to the degree 2 TS_GAUSS - 1.
 */
#ifndef TS_RESPONSE_ELASTIC_SERIES_H
#define TS_RESPONSE_ELASTIC_SERIES_H

#include "response/elastic_parts.h"

enum { TS_SERIES_ORDER = 24, TS_GAUSS = 10 };

typedef struct ts_train_series {
    size_t    bodies, bonds;
    size_t    q_stride, s_stride; /* as many and more */
    double    h, trial;           /* s, the step and the next one to be tried    */
    double   *q;                  /* [k * q_stride + body] rad                    */
    double   *s;                  /* [k * s_stride + bond] stretch, touching or not */
    double   *torque;             /* [body] scratch                              */
    double   *inside;             /* [point * q_stride + body] speeds at Gauss's   */
    double   *reach;              /* [bond] most that its stretch may change     */
    double   *pulse; /* [2 * pulse] real and imaginary part; then [pulse] the real part before */
    uint32_t *touching;
    double   *press; /* [touching] what is added to the stretch */
    size_t    touching_count;
} ts_train_series;

bool ts_series_open(ts_train_series *series, const ts_elastic_train *train, ts_arena *arena);

/* From the state y at t; the step that it takes stands in series->h.  False, with m->bad, where an
 * acceleration is not finite. */
bool ts_series_expand(ts_train_series *series, ts_moving *m, double t, const double *y);
/* The same motion over the first `share` of the step, 0 ... 1. */
void ts_series_shrink(ts_train_series *series, double share);
/* State at theta; the step must be longer than nothing. */
void ts_series_inside(const ts_train_series *series, const ts_moving *m, double theta, double *y);

/* Adds heat and work of the step to energies[TS_STATE_ENERGIES]. */
void ts_series_energies(ts_train_series *series, const ts_moving *m, double t, double *energies);
/* Gauss's points, 0 ... 1. */
double ts_series_point(size_t i);

#endif
