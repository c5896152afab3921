/* search/drive_step.c: which second gears may `arrange` try, and which are there? */
#include "search/drive_step.h"

#include <math.h>

typedef struct steps {
    const ts_step_wish *wish;
    ts_arrange_step    *list; /* NULL: counting alone */
    size_t              count;
} steps;

static bool is_listed(const steps *s, const ts_arrange_step *one)
{
    for (size_t i = 0; s->list != NULL && i < s->count; i++)
        if (s->list[i].z == one->z && s->list[i].z_step == one->z_step &&
            s->list[i].module == one->module)
            return true;
    return false;
}

static void add(steps *s, int64_t z, int64_t z_step, uint32_t module)
{
    const ts_arrange_step one = {(uint32_t)z, (uint32_t)z_step, module};
    if (z < 1 || z > TS_ARRANGE_TEETH || z_step < 1 || z_step > TS_ARRANGE_TEETH ||
        is_listed(s, &one))
        return;
    if (s->list != NULL)
        s->list[s->count] = one;
    s->count++;
}

/* The index of a normal module among those of the search, where it is put if it is new. */
static uint32_t module_of(const ts_step_wish *w, double m_n)
{
    const double beta = w->box->gears.helix_angle.value;
    for (size_t i = 0; i < *w->module_count; i++)
        if (!(w->m_n[i] < m_n) && !(w->m_n[i] > m_n))
            return (uint32_t)i;
    const size_t at = (*w->module_count)++;
    w->m_n[at]      = m_n;
    w->m_t[at]      = m_n / cos(beta);
    return (uint32_t)at;
}

/* ---- those that the box has ------------------------------------------------------------------ */

static void add_standing(steps *s, const ts_box_shaft *shafts, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const ts_box_shaft *shaft = &shafts[i];
        for (size_t k = 0; k < shaft->step_count && shaft->teeth.standing == TS_GIVEN; k++) {
            const ts_step_gear *gear = &shaft->steps[k];
            if (gear->teeth.standing != TS_GIVEN)
                continue;
            add(s, shaft->teeth.value, gear->teeth.value,
                ts_measure_known(gear->module) ? module_of(s->wish, gear->module.value)
                                               : TS_MODULE_SAME);
        }
        add_standing(s, shaft->branch, shaft->branch_count);
    }
}

/* ---- those that are allowed ------------------------------------------------------------------ */

static void add_second(steps *s, int64_t z, uint32_t module)
{
    const ts_tally_spans *seconds = &s->wish->freedom->step_teeth;
    for (size_t i = 0; i < seconds->count; i++)
        for (int64_t z_step = seconds->items[i].low; z_step <= seconds->items[i].high; z_step++)
            add(s, z, z_step, module);
}

static void add_first(steps *s, uint32_t module)
{
    const ts_tally_spans *firsts = &s->wish->freedom->stepped_teeth;
    for (size_t i = 0; i < firsts->count; i++)
        for (int64_t z = firsts->items[i].low; z <= firsts->items[i].high; z++)
            add_second(s, z, module);
    for (size_t i = 0; firsts->count == 0 && i < s->wish->idler_count; i++)
        add_second(s, s->wish->idlers[i], module);
}

static void add_all(steps *s)
{
    const ts_step_wish *w = s->wish;
    if (w->drive->arrange.steps.value < 1)
        return;
    if (w->freedom == NULL || w->freedom->step_teeth.count == 0) {
        add_standing(s, w->box->clockwise, w->box->clockwise_count);
        add_standing(s, w->box->anticlockwise, w->box->anticlockwise_count);
        return;
    }
    const ts_measures *modules = &w->freedom->step_modules;
    for (size_t i = 0; i < modules->count; i++)
        add_first(s, module_of(w, modules->items[i].value));
    if (modules->count == 0)
        add_first(s, TS_MODULE_SAME);
}

const ts_arrange_step *ts_drive_steps(const ts_step_wish *wish, ts_arena *arena, size_t *count)
{
    steps s = {.wish = wish};
    add_all(&s); /* how many, and some of them twice */
    s.list  = TS_TAKE(arena, ts_arrange_step, s.count + 1);
    s.count = 0;
    if (s.list != NULL)
        add_all(&s);
    *count = s.count;
    return s.list;
}
