/* response/rotor.c: at which speeds does a shaft whirl, and how far does its unbalance bend it? */
#include "response/rotor.h"

#include "base/complex_pair.h"

#include <math.h>

#define BAND       TS_ROTOR_BAND
#define HAIR       1e-9 /* relative; how sharply a whirl speed is counted on both sides */
#define SETTLED    1e-10
#define SPEED_MOST 1e9 /* rad/s; beyond there is no critical speed */

/* K - a M + b G, a = w^2 and b what gyroscopic moments make of it. */
typedef struct problem {
    const ts_rotor_frame *frame;
    double                factor; /* of G in units of w: Omega, or w itself at criticals */
    bool                  critical;
    double                sense;
} problem;

static double gyroscopic(const problem *p, double w)
{
    return p->sense * w * (p->critical ? w : p->factor);
}

/* ---- factors of the banded matrix -------------------------------------------------------------
 *
 * Every row has BAND entries; those left of the first column are 0 in the matrices, and four rows
 * of nothing stand before the first, so that no row is a special one.
 */

#define BEFORE (BAND - 1)

typedef struct factors {
    double L[TS_ROTOR_DOF_MOST + BEFORE][BAND]; /* below the diagonal */
    double over[TS_ROTOR_DOF_MOST + BEFORE];    /* 1/D                */
} factors;

typedef struct column {
    double at[TS_ROTOR_DOF_MOST + BEFORE];
} column;

/* Without pivots; returns how many of D are below zero. */
static int factorize(const problem *p, double w, factors *out)
{
    const ts_rotor_frame *frame = p->frame;
    const double          a = w * w, b = gyroscopic(p, w);
    int                   below = 0;

    for (int i = 0; i < BEFORE; i++) {
        out->over[i] = 0.0;
        for (int k = 0; k < BAND; k++)
            out->L[i][k] = 0.0;
    }
    for (int i = 0; i < frame->dofs; i++) {
        const double *K = frame->K[i], *M = frame->M[i], *G = frame->G[i];
        double(*L)[BAND]   = &out->L[i]; /* L[4 - k]: the row k above this one */
        const double *over = &out->over[i];
        double        row[BAND]; /* L D of this row */

        for (int k = 0; k < BAND; k++)
            row[k] = K[k] - a * M[k] + b * G[k];
        row[3] -= row[4] * L[1][1];
        row[2] -= row[4] * L[2][2] + row[3] * L[2][1];
        row[1] -= row[4] * L[3][3] + row[3] * L[3][2] + row[2] * L[3][1];
        for (int k = 1; k < BAND; k++) {
            out->L[i + BEFORE][k] = row[k] * over[BEFORE - k];
            row[0] -= row[k] * out->L[i + BEFORE][k];
        }
        /* Exactly on an eigenvalue: a hair beside it. */
        const double D        = row[0] != 0.0 ? row[0] : -1e-30 * K[0];
        out->over[i + BEFORE] = 1.0 / D;
        below += D < 0.0;
    }
    return below;
}

static void solve(const ts_rotor_frame *frame, const factors *f, double *x)
{
    column s;

    for (int i = 0; i < BEFORE; i++)
        s.at[i] = 0.0;
    for (int i = 0; i < frame->dofs; i++) {
        const double *L = f->L[i + BEFORE], *y = &s.at[i]; /* y[4 - k]: k before this one */
        s.at[i + BEFORE] = x[i] - L[1] * y[3] - L[2] * y[2] - L[3] * y[1] - L[4] * y[0];
    }
    for (int i = 0; i < frame->dofs; i++)
        x[i] = s.at[i + BEFORE] * f->over[i + BEFORE];
    for (int i = frame->dofs - 1; i >= 0; i--)
        for (int k = 1; k < BAND && k <= i; k++)
            x[i - k] -= f->L[i + BEFORE][k] * x[i];
}

/* Energies of a shape: x' K x, x' M x, x' G x. */
typedef struct energies {
    double K, M, G;
} energies;

static double of_row(const double *A, const double *y)
{
    return y[4] * (A[0] * y[4] + 2.0 * (A[1] * y[3] + A[2] * y[2] + A[3] * y[1] + A[4] * y[0]));
}

static energies energies_of(const ts_rotor_frame *frame, const double *x)
{
    energies sum = {0.0, 0.0, 0.0};
    column   s;

    for (int i = 0; i < BEFORE; i++)
        s.at[i] = 0.0;
    for (int i = 0; i < frame->dofs; i++)
        s.at[i + BEFORE] = x[i];
    for (int i = 0; i < frame->dofs; i++) {
        sum.K += of_row(frame->K[i], &s.at[i]);
        sum.M += of_row(frame->M[i], &s.at[i]);
        sum.G += of_row(frame->G[i], &s.at[i]);
    }
    return sum;
}

static int count_below(const problem *p, double w)
{
    factors f;

    return factorize(p, w, &f);
}

/* ---- one speed --------------------------------------------------------------------------------
 */

/* The speed that belongs to a shape: the positive root of its own energies. */
static double quotient(const problem *p, const double *x)
{
    const energies e = energies_of(p->frame, x);
    const double   k = e.K, m = e.M, g = p->sense * e.G;

    if (p->critical)
        return m > g ? sqrt(k / (m - g)) : (double)NAN;
    const double b = p->factor * g;
    return (b + sqrt(b * b + 4.0 * m * k)) / (2.0 * m);
}

/* Scaled so that its largest deflection is 1. */
static void scale(const ts_rotor_frame *frame, double *x)
{
    double most = 0.0;

    for (int i = 0; i < frame->nodes; i++)
        most = fabs(x[frame->v[i]]) > fabs(most) * (1.0 + 1e-9) ? x[frame->v[i]] : most;
    for (int i = 0; i < frame->dofs; i++)
        x[i] /= most;
}

/* x becomes M x. */
static void weigh(const ts_rotor_frame *frame, double *x)
{
    column s;

    for (int i = 0; i < BEFORE; i++)
        s.at[i] = 0.0;
    for (int i = 0; i < frame->dofs; i++) {
        s.at[i + BEFORE] = x[i];
        x[i]             = 0.0;
    }
    for (int i = 0; i < frame->dofs; i++) {
        const double *M = frame->M[i], *y = &s.at[i];
        x[i] += M[0] * y[4] + M[1] * y[3] + M[2] * y[2] + M[3] * y[1] + M[4] * y[0];
        for (int k = 1; k < BAND && k <= i; k++)
            x[i - k] += M[k] * y[4];
    }
}

/* From a speed and a shape near to it; NaN when it does not settle. */
static double settle(const problem *p, double w, double *x)
{
    factors f;

    for (int round = 0; round < 12; round++) {
        (void)factorize(p, w, &f);
        weigh(p->frame, x);
        solve(p->frame, &f, x);
        scale(p->frame, x);
        const double next = quotient(p, x);
        if (!(next > 0.0) || !isfinite(next))
            return (double)NAN;
        if (fabs(next - w) <= SETTLED * w)
            return next;
        w = next;
    }
    return (double)NAN;
}

static bool is_that(const problem *p, double w, int number)
{
    return count_below(p, w * (1.0 - HAIR)) <= number && count_below(p, w * (1.0 + HAIR)) > number;
}

static void any_shape(const ts_rotor_frame *frame, double *x)
{
    for (int i = 0; i < frame->dofs; i++)
        x[i] = 1.0 + 0.37 * (double)((i * 7) % 11);
}

/* Between two speeds that enclose it: halved until a shape settles on it. */
static double enclose(const problem *p, int number, double low, double high, double *x)
{
    for (int round = 0; round < 200 && high - low > 1e-13 * high; round++) {
        const double middle = low > 0.0 && high > 4.0 * low ? sqrt(low * high) : (low + high) / 2.0;
        *(count_below(p, middle) > number ? &high : &low) = middle;
        if (round % 8 == 7) {
            any_shape(p->frame, x);
            const double w = settle(p, (low + high) / 2.0, x);
            if (w >= low && w <= high && is_that(p, w, number))
                return w;
        }
    }
    any_shape(p->frame, x);
    (void)settle(p, (low + high) / 2.0, x);
    return (low + high) / 2.0;
}

/* The first, from what the shaft's own weight makes of it: mostly at once. */
static double find_first(const problem *p, double *x)
{
    factors f;

    any_shape(p->frame, x);
    (void)factorize(p, 0.0, &f);
    for (int round = 0; round < 3; round++) {
        weigh(p->frame, x);
        solve(p->frame, &f, x);
        scale(p->frame, x);
    }
    const double near = quotient(p, x);
    const double w    = near > 0.0 ? settle(p, near, x) : (double)NAN;
    return w > 0.0 && is_that(p, w, 0) ? w : (double)NAN;
}

static double find(const problem *p, int number, double near, double *shape)
{
    double  own[TS_ROTOR_DOF_MOST];
    double *x   = shape != NULL ? shape : own;
    double  low = 0.0, high = 1e3;

    if (near > 0.0 && shape != NULL) {
        const double w = settle(p, near, x);
        if (w > 0.0 && is_that(p, w, number))
            return w;
    }
    const double first = number == 0 ? find_first(p, x) : (double)NAN;
    if (first > 0.0)
        return first;
    while (count_below(p, high) <= number) {
        low = high;
        high *= 2.0;
        if (high > SPEED_MOST)
            return (double)INFINITY;
    }
    return enclose(p, number, low, high, x);
}

double ts_rotor_whirl(const ts_rotor_frame *frame, double Omega, ts_whirl_sense sense, int number,
                      double near, double *shape)
{
    const problem p = {frame, Omega, false, (double)sense};

    return find(&p, number, near, shape);
}

double ts_rotor_critical(const ts_rotor_frame *frame, ts_whirl_sense sense, int number,
                         double *shape)
{
    const problem p = {frame, 0.0, true, (double)sense};

    return find(&p, number, 0.0, shape);
}

int ts_rotor_criticals_below(const ts_rotor_frame *frame, ts_whirl_sense sense, double w)
{
    const problem p = {frame, 0.0, true, (double)sense};

    return count_below(&p, w);
}

/* ---- unbalance --------------------------------------------------------------------------------
 */

typedef double complex number;

/* L D L' of a complex symmetric band, and the solution, in place. */
static void solve_complex(int n, number A[][BAND], number *x)
{
    for (int i = 0; i < n; i++) {
        const int first = i >= BAND ? i - BAND + 1 : 0;
        number    row[BAND];
        for (int j = first; j < i; j++) {
            number sum = A[i][i - j];
            for (int k = first; k < j; k++)
                if (j - k < BAND)
                    sum -= row[i - k] * A[j][j - k];
            row[i - j]  = sum;
            A[i][i - j] = sum / A[j][0];
            A[i][0] -= sum * A[i][i - j];
            x[i] -= A[i][i - j] * x[j];
        }
    }
    for (int i = 0; i < n; i++)
        x[i] /= A[i][0];
    for (int i = n - 1; i >= 0; i--)
        for (int k = i + 1; k < n && k < i + BAND; k++)
            x[i] -= A[k][k - i] * x[k];
}

bool ts_rotor_respond(const ts_rotor *rotor, const ts_rotor_frame *frame, double Omega,
                      const ts_rotor_unbalance *unbalance, int count, double *real,
                      double *imaginary)
{
    number A[TS_ROTOR_DOF_MOST][BAND], x[TS_ROTOR_DOF_MOST];
    double sum = 0.0;

    for (int i = 0; i < frame->dofs; i++) {
        x[i] = 0.0;
        for (int j = 0; j < BAND; j++)
            A[i][j] = frame->K[i][j] - Omega * Omega * (frame->M[i][j] - frame->G[i][j]);
    }
    for (int i = 0; i < rotor->bearing_count; i++) {
        const ts_rotor_bearing *b  = &rotor->bearings[i];
        const int               at = frame->v[ts_rotor_node(frame, b->x)];
        A[at][0] += ts_complex(0.0, b->k_r * b->loss + Omega * b->c_r);
    }
    for (int i = 0; i < count; i++)
        x[frame->v[unbalance[i].node]] += unbalance[i].U * Omega * Omega;
    solve_complex(frame->dofs, A, x);
    for (int i = 0; i < frame->nodes; i++) {
        real[i]      = creal(x[frame->v[i]]);
        imaginary[i] = cimag(x[frame->v[i]]);
        sum += fabs(real[i]) + fabs(imaginary[i]);
    }
    return isfinite(sum);
}

double ts_permissible_unbalance(double grade, double mass, double Omega)
{
    return grade * mass / Omega;
}
