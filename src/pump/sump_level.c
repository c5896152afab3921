/* pump/sump_level.c: where does the oil of a sump lie when the engine is not level? */
#include "pump/sump_level.h"

#include <math.h>

#define ROUNDS 200
#define WITHIN 1e-13

ts_pull ts_pull_of(double pitch, double roll)
{
    return (ts_pull){sin(pitch), cos(pitch) * sin(roll), -cos(pitch) * cos(roll)};
}

/* ---- how much lies below a plane --------------------------------------------------------------
 */

/* The box with its lowest corner at the origin: of an edge, its length and how fast the height
 * against the pull grows along it, >= 0. */
typedef struct edge {
    double length, slope;
} edge;

/* Length of the edge whose height is at most t. */
static double along(edge c, double t)
{
    if (!(t > 0.0))
        return 0.0;
    return c.slope * c.length > t ? t / c.slope : c.length;
}

/* The integral of f from 0 to most, which is a polynomial of degree 3 or less between breaks: exact
 * by the two points of Gauss, which leave out the breaks, where f may jump. */
static double sorted_sum(const double *breaks, int count, double most,
                         double (*f)(const void *, double), const void *of)
{
    double from = 0.0, sum = 0.0;

    while (from < most) {
        double to = most;
        for (int i = 0; i < count; i++)
            if (breaks[i] > from && breaks[i] < to)
                to = breaks[i];
        const double middle = (from + to) / 2.0, half = (to - from) / 2.0;
        const double aside = half * 0.57735026918962576451; /* 1/sqrt(3) */
        sum += half * (f(of, middle - aside) + f(of, middle + aside));
        from = to;
    }
    return sum;
}

typedef struct face {
    edge   b, c;
    double t;
} face;

static double strip(const void *of, double y)
{
    const face *at = of;

    return along(at->c, at->t - at->b.slope * y);
}

/* Area of b by c below t. */
static double area(edge b, edge c, double t)
{
    const face   at        = {b, c, t};
    const double breaks[2] = {b.slope > 0.0 ? t / b.slope : -1.0,
                              b.slope > 0.0 ? (t - c.slope * c.length) / b.slope : -1.0};

    return sorted_sum(breaks, 2, b.length, strip, &at);
}

typedef struct body {
    edge   a, b, c;
    double t;
} body;

static double slice(const void *of, double x)
{
    const body *at = of;

    return area(at->b, at->c, at->t - at->a.slope * x);
}

static double volume(edge a, edge b, edge c, double t)
{
    const body   at        = {a, b, c, t};
    const double fall[2]   = {b.slope * b.length, c.slope * c.length};
    double       breaks[4] = {-1.0, -1.0, -1.0, -1.0};

    for (int i = 0; i < 4 && a.slope > 0.0; i++)
        breaks[i] = (t - (i & 1 ? fall[0] : 0.0) - (i & 2 ? fall[1] : 0.0)) / a.slope;
    return sorted_sum(breaks, 4, a.length, slice, &at);
}

double ts_sump_share(const ts_sump_box *box, const ts_pull *pull, double t)
{
    const edge a = {box->length, fabs(pull->rearward)}, b = {box->width, fabs(pull->rightward)},
               c = {box->height, fabs(pull->upward)};

    return volume(a, b, c, t) / (box->length * box->width * box->height);
}

/* ---- the surface ------------------------------------------------------------------------------
 */

/* Height of a place above the lowest corner, against the pull. */
static double height_of(const ts_sump_box *box, const ts_pull *pull, const ts_sump_place *place)
{
    const double lowest = (pull->rearward > 0.0 ? pull->rearward * box->length : 0.0) +
                          fabs(pull->rightward) * box->width / 2.0 +
                          (pull->upward > 0.0 ? pull->upward * box->height : 0.0);

    return lowest - (pull->rearward * place->rearward + pull->rightward * place->rightward +
                     pull->upward * place->above);
}

/* By the rule of Illinois: the share grows with t and never turns back. */
double ts_sump_surface(const ts_sump_box *box, const ts_pull *pull)
{
    const double held = fmin(fmax(box->depth / box->height, 0.0), 1.0);
    const double top  = fabs(pull->rearward) * box->length + fabs(pull->rightward) * box->width +
                       fabs(pull->upward) * box->height;
    double low = 0.0, high = top, below = -held, beyond = 1.0 - held;

    for (int i = 0; i < ROUNDS && high - low > WITHIN * top; i++) {
        const double t = beyond > below ? (low * beyond - high * below) / (beyond - below) : high;
        const double f = ts_sump_share(box, pull, t) - held;

        if (f < 0.0) {
            low   = t;
            below = f;
            beyond *= 0.5;
        } else {
            high   = t;
            beyond = f;
            below *= 0.5;
        }
        if (fabs(f) < WITHIN)
            return t;
    }
    return high;
}

double ts_sump_cover(const ts_sump_box *box, const ts_pull *pull, double surface,
                     const ts_sump_place *place)
{
    return surface - height_of(box, pull, place);
}
