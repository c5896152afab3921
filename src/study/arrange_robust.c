/* Which arrangement stays the lightest when loads and bands are not what they should be? */
#include "quantity/quantity.h"
#include "search/arrange_disturb.h"
#include "study/arranging.h"

#include <math.h>
#include <stdlib.h>

#define HALVINGS   30 /* to a thousand-millionth of the range */
#define STEPS_MOST 400
#define SHARE_MOST 0.5
#define BANDS_MOST 1000.0 /* rad/s */

/* ---- what was asked ----------------------------------------------------------------------------
 */

static bool read_one(ts_arranging *a, const char *text, ts_kind kind, double most, const char *such,
                     double *out)
{
    ts_quantity_fault fault;
    *out = 0.0;
    if (text == NULL)
        return true;
    if (ts_quantity_parse(ts_text_of(text), kind, out, NULL, &fault) && *out > 0.0 && *out <= most)
        return true;
    ts_study_say(a->study, "no-disturbance", "how far loads or bands may be off cannot be read",
                 such, NULL);
    return false;
}

bool ts_arranging_read_robust(ts_arranging *a)
{
    return read_one(a, a->options->loads, TS_KIND_NUMBER, SHARE_MOST,
                    "a share of the loads up to 50 %, such as 10 %", &a->robust.loads) &&
           read_one(a, a->options->bands, TS_KIND_ROTATIONAL_SPEED, BANDS_MOST,
                    "a speed that every band loses at each end, such as 50 rpm", &a->robust.bands);
}

/* ---- loads -------------------------------------------------------------------------------------
 */

/* What an answer weighs at that factor of the loads, its teeth and places staying. */
static double weigh(ts_arranging *a, size_t index, double factor)
{
    ts_arena          *arena = ts_arena_open(a->study->allocator);
    ts_arrange_problem p;
    ts_arrangement     copy = a->result.answers[index];
    const bool   made = arena != NULL && ts_arrange_disturb(&a->problem.problem, &a->loose.problem,
                                                            factor, 0.0, arena, &p);
    const double mass = made ? ts_arrange_refit(&p, &copy) : (double)NAN;
    ts_arena_close(arena);
    return mass;
}

typedef struct steps {
    double at[STEPS_MOST]; /* factors from which an answer is heavier */
    size_t count;
} steps;

static bool is_same(double a, double b)
{
    return a == b || fabs(a - b) <= 1e-10 * fabs(b);
}

/* Where an answer becomes heavier between two factors: masses never fall when loads grow, so that
 * equal ends have nothing between them. */
static void find_steps(ts_arranging *a, size_t index, double low, double high, double at_low,
                       double at_high, int deep, steps *out)
{
    if (is_same(at_low, at_high) || isnan(at_low) || isnan(at_high) || out->count == STEPS_MOST)
        return;
    if (deep == 0) {
        out->at[out->count++] = high;
        return;
    }
    const double middle = 0.5 * (low + high), mass = weigh(a, index, middle);
    find_steps(a, index, low, middle, at_low, mass, deep - 1, out);
    find_steps(a, index, middle, high, mass, at_high, deep - 1, out);
}

static int by_value(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* The lightest of the answers; the first of those that weigh the same; count: none fits. */
static size_t lightest_at(ts_arranging *a, double factor, double *mass)
{
    size_t best = a->result.count;
    *mass       = (double)INFINITY;
    for (size_t i = 0; i < a->result.count; i++) {
        const double own = weigh(a, i, factor);
        if (own < *mass * (1.0 - 1e-10)) {
            *mass = own;
            best  = i;
        }
    }
    return best;
}

static ts_status find_changes(ts_arranging *a, const steps *all)
{
    ts_robust   *r = &a->robust;
    double       mass;
    const double low = 1.0 - r->loads;
    size_t       now = r->first = lightest_at(a, low, &mass);
    for (size_t i = 0; i < all->count && r->change_count < TS_ROBUST_CHANGES; i++) {
        const size_t then = lightest_at(a, all->at[i], &mass);
        if (then == now)
            continue;
        r->changes[r->change_count++] =
            (ts_robust_change){.factor = all->at[i], .from = now, .to = then};
        now = then;
    }
    return TS_OK;
}

/* The lightest of all when loads and bands are disturbed so much. */
static ts_status search_corner(ts_arranging *a, double factor, double narrower,
                               ts_robust_corner *out)
{
    ts_arena          *arena = ts_arena_open(a->study->allocator);
    ts_arrange_problem p;
    ts_arrange_result  result;
    ts_arrange_wish    wish = ts_arranging_wish(a);
    wish.answers            = 1;
    ts_status status = arena != NULL && ts_arrange_disturb(&a->problem.problem, &a->loose.problem,
                                                           factor, narrower, arena, &p)
                           ? ts_arrange_search(&p, &wish, &result)
                           : TS_NO_MEMORY;
    if (status == TS_OK) {
        out->end  = result.end;
        out->fits = result.count > 0;
        if (out->fits)
            out->found = result.answers[0];
        ts_arrange_result_close(&result);
    }
    ts_arena_close(arena);
    return status;
}

static ts_status find_loads(ts_arranging *a)
{
    ts_robust *r   = &a->robust;
    steps     *all = TS_TAKE(a->arena, steps, 1);
    if (all == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < a->result.count; i++) {
        const double low = 1.0 - r->loads, high = 1.0 + r->loads;
        r->answers[i].less = weigh(a, i, low);
        r->answers[i].as   = weigh(a, i, 1.0);
        r->answers[i].more = weigh(a, i, high);
        find_steps(a, i, low, high, r->answers[i].less, r->answers[i].more, HALVINGS, all);
    }
    qsort(all->at, all->count, sizeof all->at[0], by_value);
    ts_status status = find_changes(a, all);
    if (status == TS_OK)
        status = search_corner(a, 1.0 - r->loads, 0.0, &r->corner_less);
    if (status == TS_OK)
        status = search_corner(a, 1.0 + r->loads, 0.0, &r->corner_more);
    return status;
}

/* ---- bands -------------------------------------------------------------------------------------
 */

static ts_status find_bands(ts_arranging *a)
{
    ts_robust *r = &a->robust;
    for (size_t i = 0; i < a->result.count; i++)
        r->answers[i].slack = ts_arrange_slack(&a->loose.problem, &a->result.answers[i],
                                               &r->answers[i].accessory, &r->answers[i].condition);
    return search_corner(a, 1.0, r->bands, &r->corner_bands);
}

ts_status ts_arranging_find_robust(ts_arranging *a)
{
    ts_status status = TS_OK;
    if (a->result.count == 0 || (!(a->robust.loads > 0.0) && !(a->robust.bands > 0.0)))
        return TS_OK;
    a->robust.asked = true;
    if (a->robust.loads > 0.0)
        status = find_loads(a);
    if (status == TS_OK && a->robust.bands > 0.0)
        status = find_bands(a);
    return status;
}
