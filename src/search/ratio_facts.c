/* search/ratio_facts.c: which tooth numbers give a ratio, and which come nearest? */
#include "search/ratio_facts.h"

#include "element/involute.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

int ts_ratio_compare(int64_t a, int64_t b, int64_t c, int64_t d)
{
    /* Both as continued fractions: the first term that differs decides. */
    for (int sign = 1;; sign = -sign) {
        if (a / b != c / d)
            return a / b < c / d ? -sign : sign;
        const int64_t left = a % b, right = c % d;
        if (left == 0 || right == 0)
            return left == right ? 0 : (left == 0 ? -sign : sign);
        a = b;
        b = left;
        c = d;
        d = right;
    }
}

double ts_ratio_shift(const ts_ratio_centre *centre, int z_1, int z_2)
{
    const double sum = (double)z_1 + (double)z_2;
    const double c   = 0.5 * centre->m_n * sum * cos(centre->alpha) / centre->a_w;

    if (!(c < 1.0))
        return (double)NAN;
    return (ts_inv(acos(c)) - ts_inv(centre->alpha)) * sum / (2.0 * tan(centre->alpha));
}

/* ---- the order of trains ----------------------------------------------------------------------
 */

static int by_teeth(const ts_ratio_teeth *a, const ts_ratio_teeth *b)
{
    for (int i = 0; i < 4; i++)
        if (a->z[i] != b->z[i])
            return a->z[i] < b->z[i] ? -1 : 1;
    return 0;
}

static int by_miss(const ts_ratio_teeth *a, const ts_ratio_teeth *b)
{
    return ts_ratio_compare(a->miss, a->under, b->miss, b->under);
}

static int by_weight(const ts_ratio_teeth *a, const ts_ratio_teeth *b)
{
    return (a->weight > b->weight) - (a->weight < b->weight);
}

static int closer(const ts_ratio_teeth *a, const ts_ratio_teeth *b)
{
    int order = by_miss(a, b);
    if (order == 0)
        order = by_weight(a, b);
    return order != 0 ? order : by_teeth(a, b);
}

static int lighter(const ts_ratio_teeth *a, const ts_ratio_teeth *b)
{
    int order = by_weight(a, b);
    if (order == 0)
        order = by_miss(a, b);
    return order != 0 ? order : by_teeth(a, b);
}

static void offer(ts_ratio_list *list, size_t room, const ts_ratio_teeth *fresh,
                  int (*order)(const ts_ratio_teeth *, const ts_ratio_teeth *))
{
    size_t at = list->count;

    while (at > 0 && order(fresh, &list->items[at - 1]) < 0)
        at--;
    if (at >= room)
        return;
    if (list->count < room)
        list->count++;
    memmove(&list->items[at + 1], &list->items[at], (list->count - 1 - at) * sizeof list->items[0]);
    list->items[at] = *fresh;
}

/* ---- every train ------------------------------------------------------------------------------
 */

typedef struct finder {
    const ts_ratio_wish *wish;
    ts_ratio_facts      *facts;
    ts_ratio_visit       visit;
    void                *context;
    bool                 ended;
} finder;

static int gcd_of(int a, int b)
{
    return (int)ts_gcd((uint64_t)a, (uint64_t)b);
}

/* The tooth numbers k with low <= over*k/under <= high; an empty span when there are none. */
static void span_of(const ts_ratio_wish *w, int64_t over, int64_t under, int *from, int *to)
{
    const double scale = (double)under / (double)over;
    int          a     = (int)fmax(floor(ts_rational_value(w->low) * scale) - 1.0, 1.0);
    int          b     = (int)fmin(ceil(ts_rational_value(w->high) * scale) + 1.0, 1e9);

    if (a < w->z_least)
        a = w->z_least;
    if (b > w->z_most)
        b = w->z_most;
    while (a <= b && ts_ratio_compare(over * a, under, w->low.over, w->low.under) < 0)
        a++;
    while (a <= b && ts_ratio_compare(over * b, under, w->high.over, w->high.under) > 0)
        b--;
    *from = a;
    *to   = b;
}

static void finish(finder *f, ts_ratio_teeth *t, int64_t over, int64_t under)
{
    const ts_rational r = f->wish->wanted;
    const int64_t     d = over * r.under - r.over * under;

    t->miss   = d < 0 ? -d : d;
    t->under  = under;
    t->error  = (double)d / ((double)r.over * (double)under);
    t->weight = 0;
    for (int i = 0; i < 4; i++)
        t->weight += (int64_t)t->z[i] * t->z[i];
}

static void take(finder *f, const ts_ratio_teeth *t)
{
    ts_ratio_facts *out = f->facts;

    if (t->shared != 1 && !f->wish->sharing)
        return;
    offer(&out->closest, f->wish->room, t, closer);
    offer(&out->lightest, f->wish->room, t, lighter);
    if (f->visit != NULL && !f->ended)
        f->ended = !f->visit(f->context, t);
}

static bool centre_allows(const ts_ratio_wish *w, int z_1, int z_2)
{
    if (!(w->centre.a_w > 0.0))
        return true;
    const double x = ts_ratio_shift(&w->centre, z_1, z_2);
    return x >= w->centre.x_least && x <= w->centre.x_most;
}

static void find_pairs(finder *f)
{
    const ts_ratio_wish *w = f->wish;
    int                  from, to;

    for (int z_1 = w->z_least; z_1 <= w->z_most; z_1++) {
        span_of(w, 1, z_1, &from, &to);
        f->facts->looked_at += (uint64_t)(w->z_most - w->z_least + 1);
        for (int z_2 = from; z_2 <= to; z_2++) {
            ts_ratio_teeth t = {.z = {z_1, z_2}, .shared = gcd_of(z_1, z_2)};
            if (!centre_allows(w, z_1, z_2)) {
                f->facts->too_far += t.shared == 1;
                continue;
            }
            f->facts->inside++;
            f->facts->hunting += t.shared == 1;
            finish(f, &t, z_2, z_1);
            take(f, &t);
        }
    }
}

/* Of a driver and a last wheel: the lightest idler that hunts with both, and how many there are. */
static void find_idlers(finder *f)
{
    const ts_ratio_wish *w     = f->wish;
    const uint64_t       range = (uint64_t)(w->z_most - w->z_least) + 1;
    int                  from, to;

    for (int z_1 = w->z_least; z_1 <= w->z_most; z_1++) {
        span_of(w, 1, z_1, &from, &to);
        f->facts->looked_at += range;
        for (int z_3 = from; z_3 <= to; z_3++) {
            ts_ratio_teeth t = {.z = {z_1, 0, z_3}, .shared = 1};
            for (int idler = w->z_least; idler <= w->z_most; idler++) {
                if (gcd_of(z_1, idler) != 1 || gcd_of(idler, z_3) != 1)
                    continue;
                t.z[1] = t.idlers == 0 ? idler : t.z[1];
                t.idlers++;
            }
            f->facts->inside += range;
            f->facts->hunting += t.idlers;
            if (t.idlers == 0)
                continue;
            finish(f, &t, z_3, z_1);
            take(f, &t);
        }
    }
}

static int larger(int a, int b)
{
    return a > b ? a : b;
}

static void find_clusters(finder *f)
{
    const ts_ratio_wish *w = f->wish;
    int                  from, to;

    for (int z_1 = w->z_least; z_1 <= w->z_most; z_1++)
        for (int z_2 = w->z_least; z_2 <= w->z_most; z_2++) {
            const int first = gcd_of(z_1, z_2);
            for (int z_3 = w->z_least; z_3 <= w->z_most; z_3++) {
                const int64_t under = (int64_t)z_1 * z_3;
                span_of(w, z_2, under, &from, &to);
                f->facts->looked_at += (uint64_t)(w->z_most - w->z_least + 1);
                for (int z_4 = from; z_4 <= to; z_4++) {
                    ts_ratio_teeth t = {.z      = {z_1, z_2, z_3, z_4},
                                        .shared = larger(first, gcd_of(z_3, z_4))};
                    f->facts->inside++;
                    f->facts->hunting += t.shared == 1;
                    finish(f, &t, (int64_t)z_2 * z_4, under);
                    take(f, &t);
                }
            }
        }
}

static void find_all(finder *f)
{
    static void (*const of_train[])(finder *) = {find_pairs, find_idlers, find_clusters};

    memset(f->facts, 0, sizeof *f->facts);
    of_train[f->wish->train](f);
}

/* ---- the nearest of all, and why none is nearer ------------------------------------------------
 */

/* Wider and wider spans about the wanted ratio, until a hunting train lies in one: the closest of
 * that span is then the closest of all, for the spans reach equally far to both sides. */
static void find_nearest(const ts_ratio_wish *wish, ts_ratio_facts *facts)
{
    ts_ratio_wish  wide = *wish;
    ts_ratio_facts found;

    wide.sharing = false;
    wide.room    = 1;
    wide.centre  = (ts_ratio_centre){0};
    for (int64_t part = 4096; part >= 1; part /= 4) {
        const ts_rational r = wish->wanted;
        wide.low            = part > 1 ? (ts_rational){r.over * (part - 1), r.under * part}
                                       : (ts_rational){1, 1000000};
        wide.high           = part > 1 ? (ts_rational){r.over * (part + 1), r.under * part}
                                       : (ts_rational){1000000, 1};
        finder f            = {.wish = &wide, .facts = &found};
        find_all(&f);
        if (found.closest.count == 0)
            continue;
        facts->has_nearest = true;
        facts->nearest     = found.closest.items[0];
        return;
    }
}

typedef struct bracket {
    ts_rational low, high; /* neighbours in the Stern-Brocot tree; high may be 1/0 */
} bracket;

static bool is_nearer(const ts_ratio_wish *w, const ts_ratio_teeth *than, ts_rational r)
{
    const int64_t d = r.over * w->wanted.under - w->wanted.over * r.under;
    return ts_ratio_compare(d < 0 ? -d : d, r.under, than->miss, than->under) < 0;
}

static void keep_nearer(ts_ratio_facts *out, ts_rational r)
{
    size_t at = out->nearer_count < TS_RATIO_NEARER ? (size_t)out->nearer_count : TS_RATIO_NEARER;
    while (at > 0 && out->nearer[at - 1].over + out->nearer[at - 1].under > r.over + r.under) {
        if (at < TS_RATIO_NEARER)
            out->nearer[at] = out->nearer[at - 1];
        at--;
    }
    if (at < TS_RATIO_NEARER)
        out->nearer[at] = r;
    out->nearer_count++;
}

/* All ratios between the neighbours with terms up to z_most that are nearer.  Whatever lies between
 * two neighbours has terms at least as large as their sums, so that a sum above z_most closes it; a
 * mediant on the far side of the wanted ratio and no nearer closes all beyond itself. */
static void walk(const ts_ratio_wish *w, ts_ratio_facts *out, bracket b)
{
    for (;;) {
        const ts_rational m = {b.low.over + b.high.over, b.low.under + b.high.under};
        if (m.over > w->z_most || m.under > w->z_most)
            return;
        const bool near = is_nearer(w, &out->nearest, m);
        const int  side = ts_ratio_compare(m.over, m.under, w->wanted.over, w->wanted.under);
        if (near) {
            keep_nearer(out, m);
            walk(w, out, (bracket){b.low, m});
            b.low = m;
        } else if (side < 0) {
            b.low = m;
        } else {
            b.high = m;
        }
    }
}

void ts_ratio_find(const ts_ratio_wish *wish, ts_ratio_facts *facts, ts_ratio_visit visit,
                   void *context)
{
    finder f = {.wish = wish, .facts = facts, .visit = visit, .context = context};

    find_all(&f);
    find_nearest(wish, facts);
    if (wish->train == TS_RATIO_PAIR && facts->has_nearest)
        walk(wish, facts, (bracket){{0, 1}, {1, 0}});
}

int ts_ratio_nearest_wheel(ts_rational wanted, int kept, bool kept_drives, int z_least, int z_most)
{
    int     best      = 0;
    int64_t best_miss = 0, best_under = 1;

    for (int z = z_least; z <= z_most; z++) {
        const int64_t over = kept_drives ? z : kept, under = kept_drives ? kept : z;
        const int64_t d = llabs(over * wanted.under - wanted.over * under);
        if (ts_gcd((uint64_t)over, (uint64_t)under) != 1)
            continue;
        if (best == 0 || ts_ratio_compare(d, under, best_miss, best_under) < 0) {
            best       = z;
            best_miss  = d;
            best_under = under;
        }
    }
    return best;
}
