/* search/arrange_pack.c: which labels of a set are followed, and in which order do they stand? */
#include "search/arrange_grow.h"

#include <stdlib.h>
#include <string.h>

typedef struct ranking {
    double   value;
    uint32_t index;
} ranking;

static int by_value(const void *a, const void *b)
{
    const ranking *x = a, *y = b;
    if (x->value != y->value)
        return x->value < y->value ? -1 : 1;
    return x->index < y->index ? -1 : 1;
}

/* Of the labels without idlers, leaves as many as the beam is wide. */
void ts_bench_narrow(ts_bench *b, uint8_t idlers)
{
    const ts_branch_wish *wish  = b->g->wish;
    ts_desk              *d     = b->d;
    uint32_t              alive = 0;

    if (wish->beam == 0)
        return;
    ranking *rank = ts_desk_resize(d, NULL, ((size_t)d->count + 1) * sizeof *rank);
    if (rank == NULL) {
        d->no_memory = true;
        return;
    }
    for (uint32_t i = 0; i < d->count; i++) {
        const ts_label *l = ts_label_at(b, i);
        if (l->dead == 0 && l->idlers == idlers)
            rank[alive++] =
                (ranking){ts_rest_bound(wish->rest, b->plane, b->set, l, ts_least_last(b, l)), i};
    }
    qsort(rank, alive, sizeof *rank, by_value);
    for (uint32_t i = wish->beam; i < alive; i++)
        ts_label_at(b, rank[i].index)->dead = 1;
    (void)ts_desk_resize(d, rank, 0);
}

static void empty_buckets(ts_bench *b)
{
    for (uint32_t i = 0; i < b->d->count; i++) {
        const ts_label *l                                     = ts_label_at(b, i);
        b->d->bucket[4u * l->z + 2u * l->sense + l->reversed] = TS_NO_LABEL;
    }
    b->d->count = 0;
}

static bool make_order(ts_desk *d)
{
    if (d->count <= d->order_room)
        return true;
    uint32_t *fresh = ts_desk_resize(d, d->order, (size_t)d->count * sizeof *fresh);
    if (fresh == NULL) {
        d->no_memory = true;
        return false;
    }
    d->order      = fresh;
    d->order_room = d->count;
    return true;
}

/* Packs the living; an idler's parent in the same list moves with it. */
static void pack(ts_bench *b, ts_label_list *list)
{
    ts_desk     *d     = b->d;
    const size_t size  = b->g->out->label_size;
    uint32_t     alive = 0;

    if (!make_order(d))
        return;
    for (uint32_t i = 0; i < d->count; i++)
        d->order[i] = ts_label_at(b, i)->dead != 0 ? TS_NO_LABEL : alive++;
    list->at = ts_arena_take(d->kept, alive, size);
    if (list->at == NULL) {
        d->no_memory = true;
        return;
    }
    for (uint32_t i = 0; i < d->count; i++) {
        ts_label *l = ts_label_at(b, i);
        if (l->dead != 0)
            continue;
        if (b->ended < 0 && l->idlers > 0 && l->step == 0)
            l->parent = d->order[l->parent];
        memcpy(list->at + (size_t)d->order[i] * size, l, size);
    }
    list->count = alive;
    d->counts.kept += alive;
}

static void pack_by_mass(ts_bench *b, ts_label_list *list)
{
    ts_desk     *d     = b->d;
    const size_t size  = b->g->out->label_size;
    uint32_t     alive = 0;
    ranking     *rank  = ts_desk_resize(d, NULL, ((size_t)d->count + 1) * sizeof *rank);

    if (rank == NULL) {
        d->no_memory = true;
        return;
    }
    for (uint32_t i = 0; i < d->count; i++)
        if (ts_label_at(b, i)->dead == 0)
            rank[alive++] = (ranking){ts_label_at(b, i)->mass, i};
    qsort(rank, alive, sizeof *rank, by_value);
    list->at = ts_arena_take(d->kept, alive, size);
    if (list->at == NULL)
        d->no_memory = true;
    for (uint32_t i = 0; list->at != NULL && i < alive; i++)
        memcpy(list->at + (size_t)i * size, ts_label_at(b, rank[i].index), size);
    list->count = list->at != NULL ? alive : 0;
    d->counts.kept += alive;
    (void)ts_desk_resize(d, rank, 0);
}

void ts_bench_pack(ts_bench *b, ts_label_list *list)
{
    pack(b, list);
    empty_buckets(b);
}

void ts_bench_pack_by_mass(ts_bench *b, ts_label_list *list)
{
    pack_by_mass(b, list);
    empty_buckets(b);
}
