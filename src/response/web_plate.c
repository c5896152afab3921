/* response/web_plate.c: with which frequencies does a gear swing across its plane?
 *
 * Mindlin's plate in Ritz's way: w cos(n theta), psi_r cos(n theta), psi_theta sin(n theta), each a
 * sum of the same terms of x = r/R.  A thin plate has psi_r = -w_r.  w is counted in R.
 */
#include "response/web_plate.h"

#include <math.h>
#include <string.h>

enum { TERMS = TS_WEB_TERMS, SIZE = 3 * TERMS, POINTS = 5, PANELS = 3 };

static const double two_pi = 6.28318530717958647693;
static const double kappa  = 5.0 / 6.0; /* shear of a rectangle: E. Reissner (from memory) */

/* Gauss's rule with five points on -1..1; Abramowitz and Stegun, table 25.4 (from memory). */
static const double place[POINTS] = {-0.906179845938664, -0.538469310105683, 0.0, 0.538469310105683,
                                     0.906179845938664};
static const double weight[POINTS] = {0.236926885056189, 0.478628670499366, 0.568888888888889,
                                      0.478628670499366, 0.236926885056189};

/* ---- what does not depend on n ----------------------------------------------------------------
 */

static bool is_plate(const ts_web_plate *p)
{
    return p->b > 0.0 && p->b <= p->a && p->a <= p->R && p->b < p->R && p->h > 0.0 && p->w > 0.0 &&
           p->E > 0.0 && p->rho > 0.0 && p->nu >= 0.0 && p->nu < 0.5 && p->teeth >= 0.0 &&
           p->arm >= 0.0 && isfinite(p->R + p->h + p->w + p->E + p->rho + p->teeth + p->arm);
}

static bool is_stepped(const ts_web_plate *p)
{
    return p->b < p->a && p->a < p->R && p->h != p->w;
}

/* s^(i+1) from the hub, and t^(i+1) from the rim on, where curvatures jump. */
static void terms_at(const ts_web_modes *of, double x, double *f, double *slope)
{
    const double from[2] = {of->plate.b / of->plate.R, of->plate.a / of->plate.R};

    for (int i = 0; i < of->count; i++) {
        const bool   rim  = i >= TS_WEB_POWERS;
        const double span = 1.0 - from[rim], s = fmax(0.0, (x - from[rim]) / span);
        const int    first = rim ? TS_WEB_POWERS : 0;
        const double below = i == first ? (double)(s > 0.0) : f[i - 1];
        slope[i]           = (i - first + 1) * below / span;
        f[i]               = below * s;
    }
}

static void add_point(ts_web_modes *out, double x, double dx, double thickness)
{
    const double share = thickness / out->plate.w;
    const double by[2] = {share * dx, share * share * share * dx};
    double       f[TERMS], d[TERMS];

    terms_at(out, x, f, d);
    for (int k = 0; k < 2; k++)
        for (int i = 0; i < out->count; i++)
            for (int j = 0; j < out->count; j++) {
                ts_web_integrals *sum = &out->by[k];
                const double      fg = f[i] * f[j] * by[k], dg = d[i] * f[j] * by[k];
                sum->slopes_x[i][j] += d[i] * d[j] * x * by[k];
                sum->slope_x[i][j] += dg * x;
                sum->slope[i][j] += dg;
                sum->terms_x[i][j] += fg * x;
                sum->terms[i][j] += fg;
                sum->terms_r[i][j] += fg / x;
            }
}

static void add_zone(ts_web_modes *out, double from, double to, double thickness)
{
    const double step = (to - from) / PANELS;

    for (int p = 0; to > from && p < PANELS * POINTS; p++) {
        const int panel = p / POINTS;
        add_point(out, from + step * (panel + (1.0 + place[p % POINTS]) / 2.0),
                  weight[p % POINTS] * step / 2.0, thickness);
    }
}

void ts_web_open(const ts_web_plate *plate, ts_web_modes *out)
{
    double slope[TERMS];

    memset(out, 0, sizeof *out);
    if (!is_plate(plate))
        return;
    out->plate = *plate;
    out->count = is_stepped(plate) ? TERMS : TS_WEB_POWERS;
    add_zone(out, plate->b / plate->R, plate->a / plate->R, plate->h);
    add_zone(out, plate->a / plate->R, 1.0, plate->w);
    terms_at(out, 1.0, out->edge, slope);
}

/* ---- energies of n diameters ------------------------------------------------------------------
 */

/* Of the fields w, psi_r, psi_theta one behind the other. */
typedef struct pencil {
    int    terms, size;
    double K[SIZE][SIZE], M[SIZE][SIZE];
} pencil;

static void both(pencil *p, int row, int column, double value)
{
    p->K[row][column] += value;
    p->K[column][row] += value;
}

/* Curvatures psi_r', (psi_r + n psi_t)/x, and twice the twist, psi_t' - (psi_t + n psi_r)/x. */
static void add_bending(const ts_web_modes *of, double n, pencil *out)
{
    const ts_web_plate     *p  = &of->plate;
    const ts_web_integrals *t  = &of->by[1];
    const double            nu = p->nu, twist = (1.0 - nu) / 2.0;
    const double            D = p->E * p->w * p->w * p->w / (12.0 * (1.0 - nu * nu));
    const int               r = out->terms, q = 2 * out->terms;

    for (int i = 0; i < out->terms; i++)
        for (int j = 0; j < out->terms; j++) {
            const double cross = t->slope[i][j] + t->slope[j][i];
            out->K[r + i][r + j] +=
                D * (t->slopes_x[i][j] + nu * cross + (1.0 + twist * n * n) * t->terms_r[i][j]);
            out->K[q + i][q + j] += D * (n * n * t->terms_r[i][j] +
                                         twist * (t->slopes_x[i][j] - cross + t->terms_r[i][j]));
            both(out, r + i, q + j,
                 D * n *
                     ((1.0 + twist) * t->terms_r[i][j] + nu * t->slope[i][j] -
                      twist * t->slope[j][i]));
        }
}

/* Shear w' + psi_r and psi_t - n w/x; mass and its turning. */
static void add_shear_and_mass(const ts_web_modes *of, double n, pencil *out)
{
    const ts_web_plate     *p = &of->plate;
    const ts_web_integrals *t = &of->by[0], *cubed = &of->by[1];
    const double            R2 = p->R * p->R, S = kappa * p->E / (2.0 * (1.0 + p->nu)) * p->w * R2;
    const double            m = p->rho * p->w * R2 * R2, J = m * p->w * p->w / (12.0 * R2);
    const int               r = out->terms, q = 2 * out->terms;

    for (int i = 0; i < out->terms; i++)
        for (int j = 0; j < out->terms; j++) {
            out->K[i][j] += S * (t->slopes_x[i][j] + n * n * t->terms_r[i][j]);
            out->K[r + i][r + j] += S * t->terms_x[i][j];
            out->K[q + i][q + j] += S * t->terms_x[i][j];
            both(out, i, r + j, S * t->slope_x[i][j]);
            both(out, i, q + j, -S * n * t->terms[i][j]);
            out->M[i][j] += m * t->terms_x[i][j];
            out->M[r + i][r + j] += J * cubed->terms_x[i][j];
            out->M[q + i][q + j] += J * cubed->terms_x[i][j];
        }
}

/* The teeth go along with w - arm psi_r of the edge. */
static void add_teeth(const ts_web_modes *of, pencil *out)
{
    const ts_web_plate *p    = &of->plate;
    const double        m    = p->teeth * p->R * p->R * p->R;
    const double        w[2] = {1.0, -p->arm / p->R};
    const int           n    = out->terms;

    for (int i = 0; i < 2 * n; i++)
        for (int j = 0; j < 2 * n; j++)
            out->M[i][j] += m * w[i / n] * w[j / n] * of->edge[i % n] * of->edge[j % n];
}

/* ---- the slowest ------------------------------------------------------------------------------
 */

/* K = L L', in place. */
static bool factor(pencil *p)
{
    for (int j = 0; j < p->size; j++) {
        for (int i = j; i < p->size; i++)
            for (int k = 0; k < j; k++)
                p->K[i][j] -= p->K[i][k] * p->K[j][k];
        if (!(p->K[j][j] > 0.0))
            return false;
        const double root = sqrt(p->K[j][j]);
        for (int i = j; i < p->size; i++)
            p->K[i][j] /= root;
    }
    return true;
}

static void solve(const pencil *p, double *x)
{
    for (int i = 0; i < p->size; i++) {
        for (int k = 0; k < i; k++)
            x[i] -= p->K[i][k] * x[k];
        x[i] /= p->K[i][i];
    }
    for (int i = p->size; i-- > 0;) {
        x[i] /= p->K[i][i];
        for (int k = 0; k < i; k++)
            x[k] -= p->K[i][k] * x[i];
    }
}

static void weigh(const pencil *p, const double *x, double *out)
{
    for (int i = 0; i < p->size; i++) {
        out[i] = 0.0;
        for (int j = 0; j < p->size; j++)
            out[i] += p->M[i][j] * x[j];
    }
}

/* omega^2 by inverse iteration, with the quotient that it converges to; NaN: it does not. */
static double slowest(pencil *p)
{
    double load[SIZE], x[SIZE], next[SIZE], last = 0.0;

    if (!factor(p))
        return (double)NAN;
    for (int i = 0; i < p->size; i++)
        x[i] = i < p->terms ? 1.0 : -1.0;
    weigh(p, x, load);
    for (int round = 0; round < 100; round++) {
        double up = 0.0, down = 0.0;
        memcpy(x, load, sizeof x);
        solve(p, x); /* K x = load, so that x K x = x load */
        weigh(p, x, next);
        for (int i = 0; i < p->size; i++) {
            up += x[i] * load[i];
            down += x[i] * next[i];
        }
        if (fabs(up / down - last) <= 1e-10 * last)
            return up / down;
        last = up / down;
        for (int i = 0; i < p->size; i++)
            load[i] = next[i] / sqrt(down);
    }
    return (double)NAN;
}

double ts_web_frequency(const ts_web_modes *modes, int n)
{
    /* Without diameters nothing turns about the radius: that field stands apart. */
    pencil p = {.terms = modes->count, .size = (n == 0 ? 2 : 3) * modes->count};

    if (modes->count == 0 || n < 0)
        return (double)NAN;
    memset(p.K, 0, sizeof p.K);
    memset(p.M, 0, sizeof p.M);
    add_bending(modes, n, &p);
    add_shear_and_mass(modes, n, &p);
    add_teeth(modes, &p);
    return sqrt(slowest(&p)) / two_pi;
}
