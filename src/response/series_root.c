/* response/series_root.c: where in a step does a power series fall below 0? */
#include "response/series_root.h"

#include <math.h>
#include <stdbool.h>

enum { HALVINGS_MOST = 40, NEWTON_MOST = 60 };

typedef struct falling {
    const double *c;
    size_t        degree, stride;
    double        sense, shift;
    double        bend;  /* bound of |f''| on the whole step       */
    bool          above; /* has it not been below so far, or risen */
} falling;

double ts_series_at(const double *c, size_t degree, size_t stride, double x, double *slope)
{
    double f = c[degree * stride], f1 = 0.0;

    for (size_t k = degree; k-- > 0;) {
        f1 = f1 * x + f;
        f  = f * x + c[k * stride];
    }
    if (slope != NULL)
        *slope = f1;
    return f;
}

static double value(const falling *p, double x, double *slope)
{
    const double f = ts_series_at(p->c, p->degree, p->stride, x, slope);

    *slope *= p->sense;
    return p->sense * f + p->shift;
}

/* f is above 0 at a, below at b and falls all the way. */
static double close_in(const falling *p, double a, double b)
{
    double x = (a + b) / 2.0;

    for (int i = 0; i < NEWTON_MOST; i++) {
        double       slope;
        const double f = value(p, x, &slope);
        if (f > 0.0)
            a = x;
        else
            b = x;
        const double next = slope < 0.0 ? x - f / slope : a;
        const double to   = next > a && next < b ? next : (a + b) / 2.0;
        if (fabs(to - x) <= 1e-16 || !(b > a))
            return to;
        x = to;
    }
    return x;
}

static double fall_between(falling *p, double a, double b, int halvings)
{
    const double middle = (a + b) / 2.0, half = (b - a) / 2.0;
    double       slope, at_end;
    const double f = value(p, middle, &slope);

    if (fabs(f) > half * (fabs(slope) + p->bend * half / 2.0)) {
        const bool fell = p->above && f < 0.0; /* in a piece too short to be looked into */
        p->above        = f > 0.0;
        return fell ? a : TS_NO_FALL;
    }
    if (fabs(slope) > p->bend * half) {
        const double end = value(p, b, &at_end);
        if (end >= 0.0)
            p->above = true;
        if (slope > 0.0 || end >= 0.0 || !p->above)
            return TS_NO_FALL;
        return value(p, a, &at_end) <= 0.0 ? a : close_in(p, a, b);
    }
    if (halvings == HALVINGS_MOST)
        return TS_NO_FALL;
    const double first = fall_between(p, a, middle, halvings + 1);
    return first < TS_NO_FALL ? first : fall_between(p, middle, b, halvings + 1);
}

double ts_series_fall(const double *c, size_t degree, size_t stride, double sense, double shift)
{
    falling p    = {c, degree, stride, sense, shift, 0.0, true};
    double  most = 0.0;

    for (size_t k = 1; k <= degree; k++) {
        const double size = fabs(c[k * stride]);
        most += size;
        p.bend += (double)(k * (k - 1)) * size;
    }
    const double first = sense * c[0] + shift;
    if (first > most)
        return TS_NO_FALL;
    if (first < 0.0 && !(sense * c[stride] > 0.0))
        return 0.0;
    p.above = first >= 0.0;
    return fall_between(&p, 0.0, 1.0, 0);
}

double ts_series_turn(const double *c, size_t degree, size_t stride, double a, double b)
{
    double slope_a, slope;

    (void)ts_series_at(c, degree, stride, a, &slope_a);
    for (int i = 0; i < NEWTON_MOST && b - a > 1e-9; i++) {
        const double x = (a + b) / 2.0;
        (void)ts_series_at(c, degree, stride, x, &slope);
        if (slope * slope_a > 0.0)
            a = x;
        else
            b = x;
    }
    return (a + b) / 2.0;
}
