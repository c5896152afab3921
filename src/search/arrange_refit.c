/* search/arrange_refit.c: what becomes of an arrangement when loads or bands are others? */
#include "search/arrange_layout.h"

#include <math.h>

static void widen(const ts_layout *l, double need, uint32_t module, uint32_t z, double *width,
                  bool *fits)
{
    const double step = l->p->width_step;
    *width            = fmax(*width, ceil(need / step - TS_LAYOUT_SLACK) * step);
    *fits             = *fits && isfinite(need) && ts_laid_width_is_allowed(l, module, z, *width);
}

/* Every gear as narrow as its meshes let it be. */
static bool fit_widths(ts_layout *l)
{
    bool fits = true;
    for (size_t i = 0; i < l->count; i++)
        l->row[i].width = l->row[i].step_width = l->p->width_least;
    for (size_t k = 1; k < l->count && fits; k++) {
        ts_laid_shaft *s = &l->row[k], *inner = ts_laid_inner(l, k);
        const double   need = ts_laid_need(l, k);
        widen(l, need, s->module, s->z, &s->width, &fits);
        widen(l, need, inner->out_module, ts_laid_outer_teeth(inner),
              inner->z_step > 0 ? &inner->step_width : &inner->width, &fits);
    }
    return fits;
}

static void take_widths(const ts_layout *l, ts_arranged_box *b)
{
    size_t k       = 1;
    b->input.width = l->row[0].width;
    for (int side = 0; side < 2; side++)
        for (uint32_t i = 0; i < b->branches[side].count; i++, k++) {
            b->branches[side].shafts[i].width = l->row[k].width;
            if (l->row[k].z_step > 0)
                b->branches[side].shafts[i].step_width = l->row[k].step_width;
        }
}

double ts_arrange_refit(const ts_arrange_problem *problem, ts_arrangement *a)
{
    ts_arrange_account sum = {0};
    for (uint32_t b = 0; b < problem->box_count; b++) {
        ts_layout l;
        if (!a->boxes[b].present)
            continue;
        if (!ts_layout_make(&l, problem, b, &a->boxes[b]) || !fit_widths(&l))
            return a->mass = (double)INFINITY;
        take_widths(&l, &a->boxes[b]);
        ts_layout_account(&l, &sum);
    }
    return a->mass = sum.sum;
}

static double slack_of(const ts_layout *l, const ts_laid_shaft *s, int32_t accessory,
                       size_t *condition)
{
    const ts_arrange_accessory *a     = &l->p->accessories[accessory];
    double                      least = (double)INFINITY;
    for (size_t c = 0; c < l->p->condition_count; c++) {
        const double n   = l->choice->speed[c] * ts_laid_turns(l, s) / (double)s->z;
        const double low = a->speed_least[c] > 0.0 ? n - a->speed_least[c] : (double)INFINITY;
        const double own = fmin(low, a->speed_most[c] - n);
        *condition       = own < least ? c : *condition;
        least            = fmin(least, own);
    }
    return least;
}

double ts_arrange_slack(const ts_arrange_problem *problem, const ts_arrangement *a,
                        size_t *accessory, size_t *condition)
{
    double least = (double)INFINITY;
    *accessory = *condition = 0;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        ts_layout l;
        if (!a->boxes[b].present || !ts_layout_make(&l, problem, b, &a->boxes[b]))
            continue;
        for (size_t i = 0; i < l.count; i++) {
            const int32_t on[2] = {l.row[i].front, l.row[i].rear};
            for (int face = 0; face < 2; face++) {
                size_t       c   = 0;
                const double own = on[face] < 0 ? least : slack_of(&l, &l.row[i], on[face], &c);
                if (!(own < least))
                    continue;
                least      = own;
                *accessory = (size_t)on[face];
                *condition = c;
            }
        }
    }
    return fmax(least, 0.0);
}
