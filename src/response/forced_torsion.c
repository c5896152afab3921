/* response/forced_torsion.c: how far does a branched train swing when something shakes it? */
#include "response/forced_torsion.h"

#include "base/complex_pair.h"

#include <math.h>

typedef double complex number;

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

    *out = (ts_forced_tree){.model = model,
                            .c     = c,
                            .order = TS_TAKE(arena, uint32_t, model->spring_count + 1),
                            .work  = TS_TAKE(arena, double, 4 * (n + 1))};
    if (reached == NULL || out->order == NULL || out->work == NULL)
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

static number stiffness(const ts_forced_tree *tree, size_t spring, double omega)
{
    return ts_complex(tree->model->springs[spring].k, omega * tree->c[spring]);
}

/* What acts on the bodies by themselves, and their own diagonal. */
static void load(const ts_forced_tree *tree, const ts_torsion_shake *shake, number *d, number *f)
{
    const ts_twist_model *model = tree->model;

    for (size_t i = 0; i < model->body_count; i++) {
        d[i] = -shake->omega * shake->omega * model->bodies[i].J;
        f[i] = shake->body == i ? shake->T : 0.0;
    }
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s = &model->springs[i];
        const number           k = stiffness(tree, i, shake->omega);
        d[s->a] += k * s->g_a * s->g_a;
        d[s->b] += k * s->g_b * s->g_b;
        if (shake->spring == i) {
            f[s->a] -= k * s->g_a * shake->e;
            f[s->b] += k * s->g_b * shake->e;
        }
    }
}

/* 1/z: nothing here is so large or small that its square would not be a number. */
static number over(number z)
{
    const double re = creal(z), im = cimag(z), square = re * re + im * im;

    return ts_complex(re / square, -im / square);
}

static number times(number a, number b)
{
    return ts_complex(creal(a) * creal(b) - cimag(a) * cimag(b),
                      creal(a) * cimag(b) + cimag(a) * creal(b));
}

static double size(number z)
{
    return sqrt(creal(z) * creal(z) + cimag(z) * cimag(z));
}

/* Inwards, and back out again: f becomes the angles. */
static void eliminate(const ts_forced_tree *tree, double omega, number *d, number *f)
{
    const ts_twist_model *model = tree->model;

    for (size_t i = model->spring_count; i-- > 0;) {
        const ts_twist_spring *s    = &model->springs[tree->order[i]];
        const number           k_ab = -stiffness(tree, tree->order[i], omega) * (s->g_a * s->g_b);
        d[s->b]                     = over(d[s->b]);
        const number share          = times(k_ab, d[s->b]);
        d[s->a] -= times(k_ab, share);
        f[s->a] -= times(share, f[s->b]);
    }
    f[0] = times(f[0], over(d[0]));
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s    = &model->springs[tree->order[i]];
        const number           k_ab = -stiffness(tree, tree->order[i], omega) * (s->g_a * s->g_b);
        f[s->b]                     = times(f[s->b] - times(k_ab, f[s->a]), d[s->b]);
    }
}

bool ts_forced_tree_shake(const ts_forced_tree *tree, const ts_torsion_shake *shake, double *force,
                          double *angle)
{
    const ts_twist_model *model = tree->model;
    number               *d     = (number *)(void *)tree->work;
    number               *f     = d + model->body_count;
    double                sum   = 0.0;

    load(tree, shake, d, f);
    eliminate(tree, shake->omega, d, f);
    for (size_t i = 0; i < model->spring_count; i++) {
        const ts_twist_spring *s = &model->springs[i];
        const double           e = shake->spring == i ? shake->e : 0.0;
        force[i] =
            size(times(stiffness(tree, i, shake->omega), s->g_a * f[s->a] - s->g_b * f[s->b] + e));
        sum += force[i];
    }
    for (size_t i = 0; angle != NULL && i < model->body_count; i++)
        angle[i] = size(f[i]);
    return isfinite(sum);
}
