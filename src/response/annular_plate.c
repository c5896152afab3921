/* response/annular_plate.c: with which frequencies does the web of a gear swing? */
#include "response/annular_plate.h"

#include <lapacke.h>
#include <math.h>

enum { TERMS = 8, POINTS = 5, PANELS = 16, CIRCLES_MOST = 3 };

static const double two_pi = 6.28318530717958647693;

/* Gauss's rule with five points on -1..1; Abramowitz and Stegun, table 25.4 (from memory). */
static const double place[POINTS] = {-0.906179845938664, -0.538469310105683, 0.0, 0.538469310105683,
                                     0.906179845938664};
static const double weight[POINTS] = {0.236926885056189, 0.478628670499366, 0.568888888888889,
                                      0.478628670499366, 0.236926885056189};

typedef struct bend {
    double w, w_r, w_rr; /* with r over a */
} bend;

static double power(double x, int k)
{
    double out = 1.0;

    for (int i = 0; i < k; i++)
        out *= x;
    return out;
}

/* c x^k and its slopes. */
static bend monomial(double x, int k)
{
    return (bend){power(x, k), k > 0 ? k * power(x, k - 1) : 0.0,
                  k > 1 ? k * (k - 1) * power(x, k - 2) : 0.0};
}

static bend times(bend f, bend g)
{
    return (bend){f.w * g.w, f.w_r * g.w + f.w * g.w_r,
                  f.w_rr * g.w + 2.0 * f.w_r * g.w_r + f.w * g.w_rr};
}

/* Term i at x = r/a: at a hub (x - b/a)^2 times powers of what is beyond it, on a whole disc powers
 * that are smooth at the centre. */
static bend term(const ts_annular_plate *plate, int n, int i, double x)
{
    if (plate->hold == TS_PLATE_HUB) {
        const double span = 1.0 - plate->b / plate->a;
        bend         f    = monomial((x - plate->b / plate->a) / span, i + 2);
        f.w_r /= span;
        f.w_rr /= span * span;
        return f;
    }
    const bend smooth = monomial(x, n + 2 * i);
    const bend held = {(1.0 - x * x) * (1.0 - x * x), -4.0 * x * (1.0 - x * x), 12.0 * x * x - 4.0};
    return plate->hold == TS_PLATE_EDGE ? times(held, smooth) : smooth;
}

/* Energies of two terms at a radius, per area: bending and inertia. */
static double bending(const ts_annular_plate *plate, int n, const bend *f, const bend *g, double x)
{
    const double n2  = (double)n * n;
    const double f_t = f->w_r / x - n2 * f->w / (x * x), g_t = g->w_r / x - n2 * g->w / (x * x);
    const double f_rt = n * (f->w_r / x - f->w / (x * x)), g_rt = n * (g->w_r / x - g->w / (x * x));

    return f->w_rr * g->w_rr + f_t * g_t + plate->nu * (f->w_rr * g_t + g->w_rr * f_t) +
           2.0 * (1.0 - plate->nu) * f_rt * g_rt;
}

typedef struct problem {
    const ts_annular_plate *plate;
    int                     n;
    double                  K[TERMS * TERMS], M[TERMS * TERMS];
} problem;

static void add_plate(problem *p)
{
    const ts_annular_plate *plate = p->plate;
    const double            from  = plate->hold == TS_PLATE_HUB ? plate->b / plate->a : 0.0;
    const double            step  = (1.0 - from) / PANELS;
    const double            D =
        plate->E * plate->h * plate->h * plate->h / (12.0 * (1.0 - plate->nu * plate->nu));
    const double a2 = plate->a * plate->a, m = plate->rho * plate->h;

    for (int s = 0; s < PANELS * POINTS; s++) {
        const int    panel = s / POINTS;
        const double x     = from + step * (panel + (1.0 + place[s % POINTS]) / 2.0);
        const double dA    = weight[s % POINTS] * step / 2.0 * x;
        bend         f[TERMS];
        for (int i = 0; i < TERMS; i++)
            f[i] = term(plate, p->n, i, x);
        for (int i = 0; i < TERMS; i++)
            for (int j = 0; j < TERMS; j++) {
                p->K[i * TERMS + j] += D / a2 * bending(plate, p->n, &f[i], &f[j], x) * dA;
                p->M[i * TERMS + j] += m * a2 * f[i].w * f[j].w * dA;
            }
    }
}

/* The ring at the edge: its curvature w_r/a - n^2 w/a^2 and twist n (w_r/a - w/a^2). */
static void add_ring(problem *p)
{
    const ts_annular_plate *plate = p->plate;
    const double            a = plate->a, n = p->n;

    for (int i = 0; i < TERMS; i++)
        for (int j = 0; j < TERMS; j++) {
            const bend   f = term(plate, p->n, i, 1.0), g = term(plate, p->n, j, 1.0);
            const double f_b = f.w_r - n * n * f.w, g_b = g.w_r - n * n * g.w;
            const double f_t = n * (f.w_r - f.w), g_t = n * (g.w_r - g.w);
            p->K[i * TERMS + j] +=
                (plate->ring_bending * f_b * g_b + plate->ring_twist * f_t * g_t) / (a * a * a);
            p->M[i * TERMS + j] +=
                plate->ring_mass * a * f.w * g.w + plate->ring_turning / a * f.w_r * g.w_r;
        }
}

static bool is_plate(const ts_annular_plate *p)
{
    const bool sizes = p->a > 0.0 && p->h > 0.0 && p->E > 0.0 && p->rho > 0.0 && p->nu >= 0.0 &&
                       p->nu < 0.5 && p->ring_mass >= 0.0 && p->ring_turning >= 0.0 &&
                       p->ring_bending >= 0.0 && p->ring_twist >= 0.0;

    return sizes && (p->hold != TS_PLATE_HUB || (p->b > 0.0 && p->b < p->a)) &&
           isfinite(p->a + p->h + p->E + p->rho + p->ring_mass + p->ring_turning + p->ring_bending +
                    p->ring_twist);
}

double ts_plate_frequency(const ts_annular_plate *plate, int n, int circles)
{
    problem p = {.plate = plate, .n = n};
    double  w[TERMS];

    if (!is_plate(plate) || n < 0 || circles < 0 || circles > CIRCLES_MOST ||
        (plate->hold == TS_PLATE_FREE && n < 2 && circles < 1))
        return (double)NAN;
    add_plate(&p);
    add_ring(&p);
    if (LAPACKE_dsygv(LAPACK_COL_MAJOR, 1, 'N', 'U', TERMS, p.K, TERMS, p.M, TERMS, w) != 0)
        return (double)NAN;
    return w[circles] > 0.0 ? sqrt(w[circles]) / two_pi : (double)NAN;
}

double ts_wave_speed(double f_0, double B, int z, int n, int k, int sense)
{
    const double lines = (double)k * z - sense * n, rest = lines * lines - B;

    return lines > 0.0 && rest > 0.0 ? f_0 / sqrt(rest) : (double)INFINITY;
}

double ts_wave_frequency(double f_0, double B, double N, int n, int sense)
{
    return sqrt(f_0 * f_0 + B * N * N) + sense * n * N;
}
