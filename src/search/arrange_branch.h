/* search/arrange_branch.h: all branches of one pair that can still matter, set by set. */
#ifndef TS_SEARCH_ARRANGE_BRANCH_H
#define TS_SEARCH_ARRANGE_BRANCH_H

#include "search/arrange_rest.h"

typedef struct ts_label_list {
    char    *at;
    uint32_t count;
} ts_label_list;

/* Every label that came up was counted in exactly one of `cut_by_bound`, `cut_by_dominance`,
 * `kept`. */
typedef struct ts_label_count {
    uint64_t made, cut_by_bound, cut_by_dominance, kept;
} ts_label_count;

/* Of two branches, or one, and what is on the input: those that are light enough together to be
 * looked at, and of these those that clear each other within the wrap. */
typedef struct ts_join_tally {
    uint64_t light, fitting;
} ts_join_tally;

typedef struct ts_branch_wish {
    const ts_rest *rest;       /* NULL: no bound is used                                     */
    double         cutoff;     /* arrangements from this mass up are of no use               */
    uint32_t       beam;       /* keep only so many labels of a set; 0: all, which is exact  */
    uint32_t       teeth;      /* with a beam: try about so many tooth numbers a gear; 0: all */
    uint32_t       shapes;     /* keep the best of so many different orders; 0: keep each label */
    bool           weightless; /* no mass is counted: whether something fits is all that matters */
    size_t         workers;
    uint64_t       labels_most;  /* 0, or: more than so many end the search as if it were stopped */
    bool (*stop)(void *context); /* NULL or: asked now and then, true ends the search */
    void *context;
} ts_branch_wish;

typedef struct ts_branches {
    const ts_pair_tables *pair;
    size_t                label_size;
    ts_label_list        *grown;    /* [plane * sets + set], not yet meshed with the input */
    ts_label_list        *ended[2]; /* [input reversed][set], meshed with the input, by mass;
                                       the empty set has one label, of nothing          */
    ts_label_count count;
    bool           stopped, no_memory;
} ts_branches;

typedef struct ts_branch_room ts_branch_room;

/* Memory for `workers` threads; each pair's labels are given back when the next one is grown. */
ts_branch_room *ts_branch_room_open(const ts_allocator *allocator, size_t workers);
void            ts_branch_room_close(ts_branch_room *room);

/* False when it was stopped or had no memory; the lists are then not complete. */
bool ts_branches_grow(ts_branches *branches, const ts_pair_tables *pair, const ts_branch_wish *wish,
                      ts_branch_room *room);

static inline const ts_label *ts_label_in(const ts_branches *b, const ts_label_list *list,
                                          uint32_t i)
{
    return (const ts_label *)(const void *)(list->at + (size_t)i * b->label_size);
}

static inline ts_label_list *ts_grown_in(const ts_branches *b, uint32_t plane)
{
    return &b->grown[plane * ((size_t)b->pair->tables->all + 1)];
}

#endif
