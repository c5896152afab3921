/* response/torsion.c: how does a train of bodies and springs swing in torsion?
 */
#include "response/torsion.h"

#include <lapacke.h>
#include <math.h>
#include <string.h>

#define COORDINATES_MOST 2000
#define LOOSE            1e-9 /* relative; a stretch below this is none */

const char *ts_twist_fault_says(ts_twist_fault fault)
{
    static const char *const says[] = {
        [TS_TWIST_FINE]       = "nothing is wrong",
        [TS_TWIST_BAD_NUMBER] = "an inertia or a stiffness is no number, or below 0",
        [TS_TWIST_NO_INERTIA] = "a part that turns has no inertia",
        [TS_TWIST_BAD_LINK]   = "a spring leads nowhere",
        [TS_TWIST_TOO_MANY]   = "there are more than 2000 parts that turn by themselves",
        [TS_TWIST_NO_ANSWER]  = "the eigenvalues did not converge",
        [TS_TWIST_NO_MEMORY]  = "there is no memory",
    };
    return says[fault];
}

/* ---- is it sound? -----------------------------------------------------------------------------
 */

static ts_twist_fault check(const ts_twist_model *model, double *M)
{
    const size_t n = model->coordinate_count;

    if (n > COORDINATES_MOST)
        return TS_TWIST_TOO_MANY;
    for (size_t i = 0; i < model->body_count; i++) {
        const ts_twist_body *body = &model->bodies[i];
        if (!(body->J >= 0.0) || !isfinite(body->J) || !isfinite(body->factor))
            return TS_TWIST_BAD_NUMBER;
        if (body->at >= n)
            return TS_TWIST_BAD_LINK;
        M[body->at] += body->J * body->factor * body->factor;
    }
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *spring = &model->springs[i];
        if (!(spring->k > 0.0) || !isfinite(spring->k) || !isfinite(spring->g_a) ||
            !isfinite(spring->g_b))
            return TS_TWIST_BAD_NUMBER;
        if (spring->a >= n || (spring->b >= n && spring->b != TS_HELD))
            return TS_TWIST_BAD_LINK;
    }
    for (size_t i = 0; i < n; i++)
        if (!(M[i] > 0.0))
            return TS_TWIST_NO_INERTIA;
    return TS_TWIST_FINE;
}

/* ---- what can turn without a stretch -----------------------------------------------------------
 */

static double stretch_of(const ts_twist_spring *spring, const double *q)
{
    const double far = spring->b == TS_HELD ? 0.0 : spring->g_b * q[spring->b];

    return spring->g_a * q[spring->a] - far;
}

/* Follows the springs from a coordinate; `seen` gets the number of the component. */
static void follow(const ts_twist_model *model, double *q, size_t *seen, size_t number)
{
    bool moved = true;

    while (moved) {
        moved = false;
        for (size_t i = 0; i < model->spring_count; i++) {
            const ts_twist_spring *s = &model->springs[i];
            if (s->b == TS_HELD || (seen[s->a] == number) == (seen[s->b] == number))
                continue;
            const bool   from_a        = seen[s->a] == number;
            const double g             = from_a ? s->g_a / s->g_b : s->g_b / s->g_a;
            q[from_a ? s->b : s->a]    = g * q[from_a ? s->a : s->b];
            seen[from_a ? s->b : s->a] = number;
            moved                      = true;
        }
    }
}

/* A spring to something that stands, or a loop whose ratios do not close, holds the component. */
static bool is_free(const ts_twist_model *model, const double *q, const size_t *seen, size_t number)
{
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s = &model->springs[i];
        if (seen[s->a] != number)
            continue;
        if (s->b == TS_HELD || fabs(stretch_of(s, q)) > LOOSE * fabs(s->g_a * q[s->a]))
            return false;
    }
    return true;
}

/* One free turning for each component that has one, in the columns of `free_shapes`. */
static size_t find_rigid(const ts_twist_model *model, double *free_shapes, size_t *seen)
{
    const size_t n      = model->coordinate_count;
    size_t       number = 0, count = 0;

    for (size_t i = 0; i < n; i++) {
        if (seen[i] != 0)
            continue;
        double *q = &free_shapes[count * n];
        memset(q, 0, n * sizeof *q);
        q[i]    = 1.0;
        seen[i] = ++number;
        follow(model, q, seen, number);
        count += is_free(model, q, seen, number) ? 1 : 0;
    }
    return count;
}

/* ---- the problem -------------------------------------------------------------------------------
 */

static void fill_stiffness(const ts_twist_model *model, double *K)
{
    const size_t n = model->coordinate_count;

    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s = &model->springs[i];
        K[s->a * n + s->a] += s->k * s->g_a * s->g_a;
        if (s->b == TS_HELD)
            continue;
        K[s->b * n + s->b] += s->k * s->g_b * s->g_b;
        K[s->a * n + s->b] -= s->k * s->g_a * s->g_b;
        K[s->b * n + s->a] -= s->k * s->g_a * s->g_b;
    }
}

/* M is diagonal, so that K q = omega^2 M q is S K S z = omega^2 z with S = M^-1/2, q = S z. */
static void scale_both(double *K, size_t n, const double *scale)
{
    for (size_t i = 0; i < n; i++)
        for (size_t j = 0; j < n; j++)
            K[i * n + j] *= scale[i] * scale[j];
}

/* From z to q, shape by shape. */
static void scale_rows(double *shapes, size_t n, const double *scale)
{
    for (size_t mode = 0; mode < n; mode++)
        for (size_t i = 0; i < n; i++)
            shapes[mode * n + i] *= scale[i];
}

typedef struct bench {
    const ts_twist_model *model;
    const double         *M; /* the diagonal */
    ts_twist_modes       *modes;
} bench;

/* Energies of one shape, and from them its omega. */
static void weigh(const bench *b, size_t mode, const double *q)
{
    const ts_twist_model *model   = b->model;
    double               *shape   = &b->modes->shape[mode * model->body_count];
    double               *spin    = &b->modes->kinetic[mode * model->body_count];
    double               *strain  = &b->modes->strain[mode * model->spring_count];
    double                kinetic = 0.0, potential = 0.0, most = 0.0;

    for (size_t i = 0; i < model->body_count; i++) {
        shape[i] = model->bodies[i].factor * q[model->bodies[i].at];
        spin[i]  = model->bodies[i].J * shape[i] * shape[i];
        kinetic += spin[i];
        most = fabs(shape[i]) > fabs(most) * (1.0 + 1e-9) ? shape[i] : most;
    }
    for (size_t i = 0; i < model->spring_count; i++) {
        const double s = stretch_of(&model->springs[i], q);
        strain[i]      = model->springs[i].k * s * s;
        potential += strain[i];
    }
    const bool rigid      = mode < b->modes->rigid;
    b->modes->omega[mode] = rigid ? 0.0 : sqrt(potential / kinetic);
    for (size_t i = 0; i < model->body_count; i++) {
        shape[i] /= most;
        spin[i] /= kinetic;
    }
    for (size_t i = 0; i < model->spring_count; i++)
        strain[i] = rigid || !(potential > 0.0) ? 0.0 : strain[i] / potential;
}

/* One end of a spring: its force on a coordinate, and how large it would be without cancelling. */
static void add_end(double *sums, size_t at, double force, double size)
{
    sums[2 * at] += force;
    sums[2 * at + 1] += size;
}

/* How far K q is from omega^2 M q; `sums` has room for two numbers a coordinate. */
static double residual_of(const bench *b, size_t mode, const double *q, double *sums)
{
    const ts_twist_model *model = b->model;
    const double          w     = b->modes->omega[mode];
    double                off = 0.0, size = 0.0;

    memset(sums, 0, 2 * model->coordinate_count * sizeof *sums);
    for (size_t k = 0; k < model->spring_count; k++) {
        const ts_twist_spring *s    = &model->springs[k];
        const bool             held = s->b == TS_HELD;
        const double           F    = s->k * stretch_of(s, q);
        const double           far  = held ? 0.0 : fabs(s->g_b * q[s->b]);
        const double           most = s->k * (fabs(s->g_a * q[s->a]) + far);
        add_end(sums, s->a, s->g_a * F, fabs(s->g_a) * most);
        if (!held)
            add_end(sums, s->b, -s->g_b * F, fabs(s->g_b) * most);
    }
    for (size_t i = 0; i < model->coordinate_count; i++) {
        off  = fmax(off, fabs(sums[2 * i] - w * w * b->M[i] * q[i]));
        size = fmax(size, sums[2 * i + 1] + w * w * b->M[i] * fabs(q[i]));
    }
    return size > 0.0 ? off / size : 0.0;
}

static bool take_modes(const ts_twist_model *model, ts_arena *arena, ts_twist_modes *modes)
{
    const size_t n = model->coordinate_count;

    *modes         = (ts_twist_modes){.count = n};
    modes->omega   = TS_TAKE(arena, double, n);
    modes->shape   = TS_TAKE(arena, double, n * model->body_count);
    modes->kinetic = TS_TAKE(arena, double, n * model->body_count);
    modes->strain  = TS_TAKE(arena, double, n * model->spring_count);
    return modes->omega != NULL && modes->shape != NULL && modes->kinetic != NULL &&
           modes->strain != NULL;
}

/* Turns the rigid part of a shape out of it, so that a slow mode keeps none of LAPACK's mixture. */
static void sweep(const bench *b, double *q, const double *free_shapes)
{
    const size_t n = b->model->coordinate_count;

    for (size_t r = 0; r < b->modes->rigid; r++) {
        const double *v  = &free_shapes[r * n];
        double        qv = 0.0, vv = 0.0;
        for (size_t i = 0; i < n; i++) {
            qv += b->M[i] * q[i] * v[i];
            vv += b->M[i] * v[i] * v[i];
        }
        for (size_t i = 0; i < n; i++)
            q[i] -= qv / vv * v[i];
    }
}

ts_twist_fault ts_twist_solve(const ts_twist_model *model, ts_arena *arena, ts_twist_modes *modes)
{
    const size_t n    = model->coordinate_count;
    const size_t room = 64 * n + 64;

    if (n > COORDINATES_MOST)
        return TS_TWIST_TOO_MANY;
    double *M = TS_TAKE(arena, double, n), *K = TS_TAKE(arena, double, n *n);
    double *scale = TS_TAKE(arena, double, n), *w = TS_TAKE(arena, double, n);
    double *work = TS_TAKE(arena, double, room), *rigid = TS_TAKE(arena, double, n *(n + 1));
    size_t *seen = TS_TAKE(arena, size_t, n);
    if (M == NULL || K == NULL || scale == NULL || w == NULL || work == NULL || rigid == NULL ||
        seen == NULL || !take_modes(model, arena, modes))
        return TS_TWIST_NO_MEMORY;
    const ts_twist_fault fault = check(model, M);
    if (fault != TS_TWIST_FINE || n == 0)
        return fault;
    fill_stiffness(model, K);
    for (size_t i = 0; i < n; i++)
        scale[i] = 1.0 / sqrt(M[i]);
    scale_both(K, n, scale);
    const lapack_int order = (lapack_int)n;
    if (LAPACKE_dsyev_work(LAPACK_COL_MAJOR, 'V', 'U', order, K, order, w, work,
                           (lapack_int)room) != 0)
        return TS_TWIST_NO_ANSWER;
    scale_rows(K, n, scale);
    modes->rigid  = find_rigid(model, rigid, seen);
    const bench b = {model, M, modes};
    for (size_t mode = 0; mode < n; mode++) {
        double *q = mode < modes->rigid ? &rigid[mode * n] : &K[mode * n];
        if (mode >= modes->rigid)
            sweep(&b, q, rigid);
        weigh(&b, mode, q);
        modes->residual = fmax(modes->residual, residual_of(&b, mode, q, work));
    }
    return TS_TWIST_FINE;
}
