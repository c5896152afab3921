/* response/elastic_series.c: how does an elastic train move until something next happens to it? */
#include "response/elastic_series.h"
#include "response/series_root.h"

#include <math.h>
#include <string.h>

#define MOTION_LEAST 1e-15 /* rad; what moves less within a step is not followed closer */
#define LONGER_MOST  2.0
#define SHORTER      0.98

enum { TAIL = TS_SERIES_ORDER, LANES = 4 };

/* Gauss-Legendre of ten points on -1 ... 1 (Abramowitz and Stegun, table 25.4). */
static const double gauss_x[TS_GAUSS / 2] = {0.97390652851717172, 0.86506336668898451,
                                             0.67940956829902441, 0.43339539412924719,
                                             0.14887433898163121};
static const double gauss_w[TS_GAUSS / 2] = {0.066671344308688138, 0.14945134915058059,
                                             0.21908636251598204, 0.26926671930999636,
                                             0.29552422471475287};

double ts_series_point(size_t i)
{
    return i < TS_GAUSS / 2 ? (1.0 - gauss_x[i]) / 2.0 : (1.0 + gauss_x[TS_GAUSS - 1 - i]) / 2.0;
}

/* Rounded up to whole lanes; what is beyond stays 0. */
static size_t in_lanes(size_t count)
{
    return (count + LANES - 1) / LANES * LANES;
}

static double weight_of(size_t i)
{
    return gauss_w[i < TS_GAUSS / 2 ? i : TS_GAUSS - 1 - i] / 2.0;
}

/* Four at a time, for the registers of the machine. */
static void add_scaled(double *restrict sum, const double *restrict from, double by, size_t count)
{
    for (size_t i = 0; i < count; i += LANES) {
        sum[i] += by * from[i];
        sum[i + 1] += by * from[i + 1];
        sum[i + 2] += by * from[i + 2];
        sum[i + 3] += by * from[i + 3];
    }
}

static void scale(double *c, double by, size_t count)
{
    for (size_t i = 0; i < count; i += LANES) {
        c[i] *= by;
        c[i + 1] *= by;
        c[i + 2] *= by;
        c[i + 3] *= by;
    }
}

/* ---- opening ----------------------------------------------------------------------------------
 */

/* Over a step of two turns of the phase angle of the stiffest body the series surely ends. */
static double first_step(const ts_elastic_train *train, double *stiffness)
{
    double most = 0.0;

    for (uint32_t i = 0; i < train->bond_count; i++) {
        const ts_bond *b = &train->bonds[i];
        stiffness[b->a] += b->k * b->g_a * b->g_a;
        stiffness[b->b] += b->k * b->g_b * b->g_b;
    }
    for (uint32_t i = 0; i < train->body_count; i++)
        most = fmax(most, stiffness[i] / train->bodies[i].J);
    return most > 0.0 ? fmin(train->until, 2.0 / sqrt(most)) : train->until;
}

bool ts_series_open(ts_train_series *it, const ts_elastic_train *train, ts_arena *arena)
{
    const size_t n = train->body_count, m = train->bond_count;

    const size_t wide = in_lanes(n), span = in_lanes(m + 1);

    *it = (ts_train_series){.bodies   = n,
                            .bonds    = m,
                            .q_stride = wide,
                            .s_stride = span,
                            .q        = TS_TAKE(arena, double, (TS_SERIES_ORDER + 1) * wide),
                            .s        = TS_TAKE(arena, double, (TS_SERIES_ORDER + 1) * span),
                            .torque   = TS_TAKE(arena, double, wide),
                            .inside   = TS_TAKE(arena, double, TS_GAUSS *wide),
                            .press    = TS_TAKE(arena, double, span),
                            .reach    = TS_TAKE(arena, double, span),
                            .pulse    = TS_TAKE(arena, double, 3 * train->pulse_count + 1),
                            .touching = TS_TAKE(arena, uint32_t, span)};
    if (it->q == NULL || it->s == NULL || it->torque == NULL || it->inside == NULL ||
        it->press == NULL || it->reach == NULL || it->pulse == NULL || it->touching == NULL)
        return false;
    it->trial = first_step(train, it->torque);
    return true;
}

/* ---- coefficients -----------------------------------------------------------------------------
 */

static void list_touching(ts_train_series *it, const ts_moving *m)
{
    it->touching_count = 0;
    for (uint32_t i = 0; i < it->bonds; i++) {
        if (m->state[i] == TS_BOND_BROKEN || m->state[i] == TS_BOND_APART)
            continue;
        it->press[it->touching_count] =
            (m->state[i] == TS_BOND_TRAILING ? m->train->bonds[i].gap : 0.0) - m->offset[i];
        it->touching[it->touching_count++] = i;
    }
}

static void stretch(ts_train_series *it, const ts_moving *m, size_t k)
{
    const double *q = &it->q[k * it->q_stride];
    double       *s = &it->s[k * it->s_stride];

    for (size_t i = 0; i < it->bonds; i++) {
        const ts_bond *b = &m->train->bonds[i];
        s[i]             = b->g_a * q[b->a] - b->g_b * q[b->b];
    }
}

/* Torques on the bodies, the power k of theta. */
static void torque_outside(ts_train_series *it, const ts_moving *m, size_t k)
{
    const ts_elastic_train *train = m->train;
    const double            rate  = (double)(k + 1) / it->h;
    const double           *v     = &it->q[(k + 1) * it->q_stride];

    for (size_t i = 0; i < it->bodies; i++)
        it->torque[i] = train->bodies[i].slope * v[i] * rate;
    for (size_t i = 0; k == 0 && i < it->bodies; i++)
        it->torque[i] += train->bodies[i].torque;
}

static void torque_bonds(ts_train_series *it, const ts_moving *m, size_t k)
{
    const double *s = &it->s[k * it->s_stride], *s1 = &it->s[(k + 1) * it->s_stride];
    const double  rate = (double)(k + 1) / it->h;

    for (size_t j = 0; j < it->touching_count; j++) {
        const uint32_t i = it->touching[j];
        const ts_bond *b = &m->train->bonds[i];
        const double   x = k == 0 ? s[i] + it->press[j] : s[i];
        const double   F = b->k * x + b->c * s1[i] * rate;
        it->torque[b->a] -= b->g_a * F;
        it->torque[b->b] += b->g_b * F;
    }
}

/* A pulse A e^(-d t) cos(w t + p) is the real part of A e^(ip) e^(zt), z = -d + iw; while it rises
 * that is times t/rise, a line, which asks for the coefficient before. */
static void torque_pulses(ts_train_series *it, const ts_moving *m, double t, size_t k)
{
    double *before = &it->pulse[2 * m->train->pulse_count];

    for (size_t i = 0; i < m->train->pulse_count; i++) {
        const ts_torque_pulse *pulse = &m->train->pulses[i];
        const double           re = it->pulse[2 * i], im = it->pulse[2 * i + 1];
        const double           by = it->h / (double)(k + 1);
        it->torque[pulse->body] += ts_pulse_left(pulse, t) > 0.0
                                       ? (re * t + (k > 0 ? before[i] * it->h : 0.0)) / pulse->rise
                                       : re;
        before[i]            = re;
        it->pulse[2 * i]     = (-pulse->decay * re - pulse->omega * im) * by;
        it->pulse[2 * i + 1] = (pulse->omega * re - pulse->decay * im) * by;
    }
}

static void torque_stop(ts_train_series *it, const ts_moving *m, double t, size_t k)
{
    if (m->stop == TS_STOP_SLIPS && k < 2)
        it->torque[m->train->stops] -=
            m->sense * (k == 0 ? ts_stop_friction(m, t) : m->friction * it->h);
}

static bool accelerate(ts_train_series *it, ts_moving *m, size_t k)
{
    const double by   = it->h * it->h / (double)((k + 1) * (k + 2));
    double      *next = &it->q[(k + 2) * it->q_stride];

    for (size_t i = 0; i < it->bodies; i++)
        next[i] = it->torque[i] / m->train->bodies[i].J * by;
    if (m->stop == TS_STOP_STANDS)
        next[m->train->stops] = 0.0;
    for (uint32_t i = 0; k == 0 && i < it->bodies; i++)
        if (!isfinite(next[i])) {
            m->bad = i;
            return false;
        }
    return true;
}

/* By how much the step may be longer, or must be shorter, for its tail to stay below the tolerance
 * of what moves within it. */
static double fitting(const ts_train_series *it, double tolerance)
{
    const size_t n    = it->q_stride;
    double       last = 0.0, before = 0.0;

    for (size_t i = 0; i < it->bodies; i++) {
        double moves = 0.0;
        for (size_t k = 1; k <= TS_SERIES_ORDER; k++)
            moves += fabs(it->q[k * n + i]);
        const double bearable = tolerance * moves + MOTION_LEAST;
        last                  = fmax(last, fabs(it->q[TAIL * n + i]) / bearable);
        before                = fmax(before, fabs(it->q[(TAIL - 1) * n + i]) / bearable);
    }
    if (!isfinite(last + before))
        return (double)NAN;
    return fmin(fmin(pow(last, -1.0 / TAIL), pow(before, -1.0 / (TAIL - 1))), LONGER_MOST);
}

static void find_reach(ts_train_series *it)
{
    memset(it->reach, 0, it->bonds * sizeof *it->reach);
    for (size_t k = 1; k <= TS_SERIES_ORDER; k++)
        for (size_t i = 0; i < it->bonds; i++)
            it->reach[i] += fabs(it->s[k * it->s_stride + i]);
}

bool ts_series_expand(ts_train_series *it, ts_moving *m, double t, const double *y)
{
    const size_t n = it->bodies;

    it->h = fmin(it->trial, m->train->until - t);
    for (size_t i = 0; i < m->train->pulse_count; i++) {
        const double left = ts_pulse_left(&m->train->pulses[i], t);
        it->h             = left > 0.0 ? fmin(it->h, left) : it->h;
    }
    list_touching(it, m);
    for (size_t i = 0; i < n; i++) {
        it->q[i]                = y[i];
        it->q[it->q_stride + i] = y[n + i] * it->h;
    }
    stretch(it, m, 0);
    stretch(it, m, 1);
    ts_pulses_at(m, t, it->pulse);
    for (size_t k = 0; k + 2 <= TS_SERIES_ORDER; k++) {
        torque_outside(it, m, k);
        torque_bonds(it, m, k);
        torque_pulses(it, m, t, k);
        torque_stop(it, m, t, k);
        if (!accelerate(it, m, k))
            return false;
        stretch(it, m, k + 2);
    }
    /* A step that is much too long moves much too far by its own terms: it is judged again. */
    double by = fitting(it, m->train->tolerance);
    while (by < 1.0) {
        ts_series_shrink(it, SHORTER * by);
        by = fitting(it, m->train->tolerance);
    }
    it->trial = it->h * by;
    find_reach(it);
    return isfinite(by);
}

void ts_series_shrink(ts_train_series *it, double share)
{
    double power = 1.0;

    for (size_t k = 1; k <= TS_SERIES_ORDER; k++) {
        power *= share;
        scale(&it->q[k * it->q_stride], power, it->q_stride);
        scale(&it->s[k * it->s_stride], power, it->s_stride);
    }
    it->h *= share;
}

/* ---- the state --------------------------------------------------------------------------------
 */

void ts_series_inside(const ts_train_series *it, const ts_moving *m, double theta, double *y)
{
    const size_t n = it->bodies;

    for (size_t i = 0; i < n; i++) {
        double slope;
        y[i]     = ts_series_at(&it->q[i], TS_SERIES_ORDER, it->q_stride, theta, &slope);
        y[n + i] = slope / it->h;
    }
    if (m->stop == TS_STOP_STANDS)
        y[n + m->train->stops] = -m->train->bodies[m->train->stops].speed;
}

/* ---- energies ---------------------------------------------------------------------------------
 */

/* Speeds off the steady state at Gauss's points. */
static void find_speeds(ts_train_series *it)
{
    memset(it->inside, 0, TS_GAUSS * it->q_stride * sizeof *it->inside);
    for (size_t p = 0; p < TS_GAUSS; p++) {
        const double x     = ts_series_point(p);
        double       power = 1.0 / it->h;
        for (size_t k = 1; k <= TS_SERIES_ORDER; k++) {
            add_scaled(&it->inside[p * it->q_stride], &it->q[k * it->q_stride], power * (double)k,
                       it->q_stride);
            power *= x;
        }
    }
}

static double damp(const ts_train_series *it, const ts_moving *m, const double *v)
{
    double heat = 0.0;

    for (size_t j = 0; j < it->touching_count; j++) {
        const ts_bond *b    = &m->train->bonds[it->touching[j]];
        const double   rate = b->g_a * v[b->a] - b->g_b * v[b->b];
        heat += b->c * rate * rate;
    }
    return heat;
}

void ts_series_energies(ts_train_series *it, const ts_moving *m, double t, double *energies)
{
    const ts_elastic_train *train = m->train;

    if (!(it->h > 0.0))
        return;
    find_speeds(it);
    for (size_t p = 0; p < TS_GAUSS; p++) {
        const double *v  = &it->inside[p * it->q_stride];
        const double  by = weight_of(p) * it->h, now = t + ts_series_point(p) * it->h;
        energies[TS_STATE_DAMPED] += by * damp(it, m, v);
        energies[TS_STATE_WORK] += by * ts_moving_power(m, now, v);
        if (m->stop == TS_STOP_SLIPS)
            energies[TS_STATE_STOPPED] += by * m->sense * ts_stop_friction(m, now) *
                                          (train->bodies[train->stops].speed + v[train->stops]);
    }
}
