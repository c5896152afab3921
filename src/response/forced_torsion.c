/* response/forced_torsion.c: how far does a branched train swing when something shakes it? */
#include "response/forced_torsion.h"

#include <math.h>

#define LANES TS_SHAKES_ABREAST

typedef ts_forced_lanes lanes;

/* A complex number of each lane: a record of the work. */
typedef struct number {
    lanes re, im;
} number;

/* Every spring once, each with its inner body already reached. */
static bool order_springs(const ts_twist_model *model, uint32_t *order, bool *reached)
{
    size_t count = 0;
    bool   moved = true;

    reached[0] = true;
    while (moved) {
        moved = false;
        for (size_t i = 0; i < model->spring_count; i++) {
            const ts_twist_spring *s = &model->springs[i];
            if (s->b == TS_HELD || !reached[s->a] || reached[s->b])
                continue;
            order[count++] = (uint32_t)i;
            reached[s->b]  = true;
            moved          = true;
        }
    }
    return count == model->spring_count && count + 1 == model->body_count;
}

ts_twist_fault ts_forced_tree_make(const ts_twist_model *model, const double *c, ts_arena *arena,
                                   ts_forced_tree *out)
{
    const size_t n       = model->body_count;
    bool        *reached = TS_TAKE(arena, bool, n + 1);

    *out = (ts_forced_tree){.model  = model,
                            .c      = c,
                            .order  = TS_TAKE(arena, uint32_t, model->spring_count + 1),
                            .work   = TS_TAKE(arena, lanes, 4 * (n + 1)),
                            .forces = TS_TAKE(arena, lanes, model->spring_count + 1)};
    if (reached == NULL || out->order == NULL || out->work == NULL || out->forces == NULL)
        return TS_TWIST_NO_MEMORY;
    for (size_t i = 0; i < n; i++)
        if (model->bodies[i].at != i || model->bodies[i].factor < 1.0 ||
            model->bodies[i].factor > 1.0)
            return TS_TWIST_BAD_LINK;
    for (size_t i = 0; i < model->spring_count; i++)
        if (!(c[i] >= 0.0) || !isfinite(c[i]))
            return TS_TWIST_BAD_NUMBER;
    return n > 0 && order_springs(model, out->order, reached) ? TS_TWIST_FINE : TS_TWIST_BAD_LINK;
}

/* ---- complex numbers, lane by lane: loops that a compiler makes into wide instructions --------
 */

static void clear(number *z)
{
    *z = (number){0};
}

/* z += (k + i c) g^2 */
static void add_spring(number *restrict z, double k, const lanes *restrict c, double g)
{
    for (size_t l = 0; l < LANES; l++) {
        z->re.at[l] += k * g * g;
        z->im.at[l] += c->at[l] * g * g;
    }
}

/* z -= a b */
static void take_product(number *restrict z, const number *restrict a, const number *restrict b)
{
    for (size_t l = 0; l < LANES; l++) {
        const double re = a->re.at[l] * b->re.at[l] - a->im.at[l] * b->im.at[l];
        const double im = a->re.at[l] * b->im.at[l] + a->im.at[l] * b->re.at[l];
        z->re.at[l] -= re;
        z->im.at[l] -= im;
    }
}

static void multiply(const number *restrict a, const number *restrict b, number *restrict out)
{
    for (size_t l = 0; l < LANES; l++) {
        out->re.at[l] = a->re.at[l] * b->re.at[l] - a->im.at[l] * b->im.at[l];
        out->im.at[l] = a->re.at[l] * b->im.at[l] + a->im.at[l] * b->re.at[l];
    }
}

/* z becomes 1/z: nothing here is so large or small that its square would not be a number. */
static void turn_over(number *z)
{
    for (size_t l = 0; l < LANES; l++) {
        const double re = z->re.at[l], im = z->im.at[l], square = re * re + im * im;
        z->re.at[l] = re / square;
        z->im.at[l] = -im / square;
    }
}

static void measure(const number *restrict z, lanes *restrict size)
{
    for (size_t l = 0; l < LANES; l++)
        size->at[l] = sqrt(z->re.at[l] * z->re.at[l] + z->im.at[l] * z->im.at[l]);
}

/* omega c of a spring's damper. */
static lanes damping(const lanes *omega, double c)
{
    lanes out;
    for (size_t l = 0; l < LANES; l++)
        out.at[l] = omega->at[l] * c;
    return out;
}

/* -(k + i omega c) g_a g_b: how a spring ties the equations of its bodies. */
static number tie(const ts_forced_tree *tree, size_t spring, const lanes *omega)
{
    const ts_twist_spring *s = &tree->model->springs[spring];
    const lanes            c = damping(omega, tree->c[spring]);
    number                 out;

    for (size_t l = 0; l < LANES; l++) {
        out.re.at[l] = -s->k * (s->g_a * s->g_b);
        out.im.at[l] = -c.at[l] * (s->g_a * s->g_b);
    }
    return out;
}

/* ---- the equations ----------------------------------------------------------------------------
 */

/* What acts on the bodies of one lane by itself. */
static void load(const ts_forced_tree *tree, const ts_torsion_shake *shake, size_t lane, number *f)
{
    if (shake->body < tree->model->body_count)
        f[shake->body].re.at[lane] = shake->T;
    if (shake->spring < tree->model->spring_count) {
        const ts_twist_spring *s = &tree->model->springs[shake->spring];
        const double           c = shake->omega * tree->c[shake->spring];
        f[s->a].re.at[lane] -= s->k * s->g_a * shake->e;
        f[s->a].im.at[lane] -= c * s->g_a * shake->e;
        f[s->b].re.at[lane] += s->k * s->g_b * shake->e;
        f[s->b].im.at[lane] += c * s->g_b * shake->e;
    }
}

/* The diagonal. */
static void stiffen(const ts_forced_tree *tree, const lanes *omega, number *d)
{
    const ts_twist_model *model = tree->model;

    for (size_t i = 0; i < model->body_count; i++) {
        clear(&d[i]);
        for (size_t l = 0; l < LANES; l++)
            d[i].re.at[l] = -omega->at[l] * omega->at[l] * model->bodies[i].J;
    }
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s = &model->springs[i];
        const lanes            c = damping(omega, tree->c[i]);
        add_spring(&d[s->a], s->k, &c, s->g_a);
        add_spring(&d[s->b], s->k, &c, s->g_b);
    }
}

/* Inwards, and back out again: f becomes the angles. */
static void eliminate(const ts_forced_tree *tree, const lanes *omega, number *d, number *f)
{
    const ts_twist_model *model = tree->model;
    number                share;

    for (size_t i = model->spring_count; i-- > 0;) {
        const ts_twist_spring *s    = &model->springs[tree->order[i]];
        const number           k_ab = tie(tree, tree->order[i], omega);
        turn_over(&d[s->b]);
        multiply(&k_ab, &d[s->b], &share);
        take_product(&d[s->a], &k_ab, &share);
        take_product(&f[s->a], &share, &f[s->b]);
    }
    turn_over(&d[0]);
    share = f[0];
    multiply(&share, &d[0], &f[0]);
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s    = &model->springs[tree->order[i]];
        const number           k_ab = tie(tree, tree->order[i], omega);
        share                       = f[s->b];
        take_product(&share, &k_ab, &f[s->a]);
        multiply(&share, &d[s->b], &f[s->b]);
    }
}

/* Force or torque of a spring with its damper. */
static void draw_spring(const ts_forced_tree *tree, const ts_torsion_shake *shakes, size_t count,
                        const lanes *omega, size_t i, const number *f)
{
    const ts_twist_spring *s       = &tree->model->springs[i];
    const lanes            c       = damping(omega, tree->c[i]);
    number                 stretch = {0}, force;

    for (size_t l = 0; l < count; l++)
        stretch.re.at[l] = shakes[l].spring == i ? shakes[l].e : 0.0;
    for (size_t l = 0; l < LANES; l++) {
        const double re = s->g_a * f[s->a].re.at[l] - s->g_b * f[s->b].re.at[l] + stretch.re.at[l];
        const double im = s->g_a * f[s->a].im.at[l] - s->g_b * f[s->b].im.at[l];
        force.re.at[l]  = s->k * re - c.at[l] * im;
        force.im.at[l]  = s->k * im + c.at[l] * re;
    }
    measure(&force, &tree->forces[i]);
}

void ts_forced_tree_shake_abreast(const ts_forced_tree *tree, const ts_torsion_shake *shakes,
                                  size_t count, bool *computed)
{
    const ts_twist_model *model = tree->model;
    number               *d     = (number *)(void *)tree->work;
    number               *f     = d + model->body_count;
    lanes                 omega, sum = {0};

    for (size_t l = 0; l < LANES; l++) /* a lane that nobody needs goes with the first */
        omega.at[l] = shakes[l < count ? l : 0].omega;
    stiffen(tree, &omega, d);
    for (size_t i = 0; i < model->body_count; i++)
        clear(&f[i]);
    for (size_t l = 0; l < count; l++)
        load(tree, &shakes[l], l, f);
    eliminate(tree, &omega, d, f);
    for (size_t i = 0; i < model->spring_count; i++) {
        draw_spring(tree, shakes, count, &omega, i, f);
        for (size_t l = 0; l < LANES; l++)
            sum.at[l] += tree->forces[i].at[l];
    }
    for (size_t l = 0; l < count; l++)
        computed[l] = isfinite(sum.at[l]);
}

bool ts_forced_tree_shake(const ts_forced_tree *tree, const ts_torsion_shake *shake, double *force,
                          double *angle)
{
    const number *angles = (const number *)(const void *)tree->work + tree->model->body_count;
    bool          computed;

    ts_forced_tree_shake_abreast(tree, shake, 1, &computed);
    for (size_t i = 0; i < tree->model->spring_count; i++)
        force[i] = tree->forces[i].at[0];
    for (size_t i = 0; angle != NULL && i < tree->model->body_count; i++) {
        lanes size;
        measure(&angles[i], &size);
        angle[i] = size.at[0];
    }
    return computed;
}
