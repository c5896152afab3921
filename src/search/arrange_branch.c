/* search/arrange_branch.c: how do branches grow, set by set, from their free ends inwards?
 *
 * Sets are worked through by their size.  The labels of a set come from those of smaller sets
 * alone, so that sets of one size may be worked on side by side and the result is the same whoever
 * does it.
 */
#include "search/arrange_branch.h"
#include "search/arrange_grow.h"

#include "search/crew.h"

static ts_bench bench_of(const ts_grower *g, uint32_t set, size_t worker)
{
    return (ts_bench){.g      = g,
                      .d      = &g->room->desks[worker],
                      .set    = set,
                      .plane  = g->plane,
                      .pair   = ts_plane_of(g->pair, g->plane),
                      .grown  = ts_grown_in(g->out, g->plane),
                      .ended  = -1,
                      .worker = worker,
                      .told   = g->room->desks[worker].counts.made};
}

/* Labels of this set whose last shaft carries something, or drives another plane. */
static void put_shafts(ts_bench *b)
{
    const ts_box_tables *box = b->pair->box;

    for (size_t i = 0; i < box->carry_count; i++) {
        const ts_carry *c = &box->carries[i];
        if ((c->set & ~b->set) != 0)
            continue;
        if (c->set == b->set) {
            ts_bench_start(b, c);
            continue;
        }
        if (b->grown[b->set & ~c->set].count > 0)
            ts_bench_extend(b, c);
        for (uint16_t at = 0; at < b->pair->step_count; at++)
            ts_bench_step(b, at, c);
    }
    for (uint16_t at = 0; at < b->pair->step_count; at++)
        ts_bench_step(b, at, NULL);
}

static void grow_set(void *context, size_t item, size_t worker)
{
    ts_grower     *g    = context;
    const uint32_t most = g->pair->tables->problem->idlers_in_row;
    ts_bench       b    = bench_of(g, g->sets[item], worker);

    if (b.d->no_memory || ts_is_halted(&b))
        return;
    b.ahead = ts_ahead_of(g->pair->box, b.set);
    put_shafts(&b);
    ts_bench_narrow(&b, 0);
    for (uint8_t idlers = 0; idlers < most; idlers++) {
        ts_bench_add_idlers(&b, idlers);
        ts_bench_narrow(&b, (uint8_t)(idlers + 1));
    }
    ts_tell_made(&b);
    ts_bench_pack(&b, &b.grown[b.set]);
}

static void end_set(void *context, size_t item, size_t worker)
{
    ts_grower *g = context;
    ts_bench   b = bench_of(g, (uint32_t)item + 1, worker);

    if (b.d->no_memory || ts_is_halted(&b))
        return;
    b.ahead = ts_ahead_of(g->pair->box, b.set);
    for (b.ended = 0; b.ended < 2; b.ended++) {
        const bool both = g->pair->tables->loads[b.set] == (TS_LOAD_AHEAD | TS_LOAD_BACK);
        if (both && b.ended == 0)
            continue; /* the branch alone reverses the input */
        ts_bench_end(&b);
        ts_bench_pack_by_mass(&b, &g->out->ended[b.ended][b.set]);
    }
    ts_tell_made(&b);
}

static bool open_room(ts_branches *out, ts_branch_room *room)
{
    const size_t sets = (size_t)out->pair->tables->all + 1;

    ts_branch_room_clear(room);
    room->lists = ts_arena_open(&room->allocator);
    if (room->lists == NULL)
        return false;
    out->grown    = TS_TAKE(room->lists, ts_label_list, sets * (out->pair->plane_count + 1));
    out->ended[0] = TS_TAKE(room->lists, ts_label_list, sets);
    out->ended[1] = TS_TAKE(room->lists, ts_label_list, sets);
    for (size_t i = 0; i < room->workers; i++)
        if (!ts_desk_open(&room->desks[i], &room->allocator, out->pair, out->label_size))
            return false;
    return !ts_arena_failed(room->lists);
}

/* The branch that is not there. */
static bool make_empty(ts_branches *out, ts_branch_room *room)
{
    for (int i = 0; i < 2; i++) {
        ts_label *l = ts_arena_take(room->lists, 1, out->label_size);
        if (l == NULL)
            return false;
        l->tail[0] = l->tail[1] = -(double)INFINITY;
        l->need                 = (uint16_t)out->pair->tables->steps_least;
        out->ended[i][0]        = (ts_label_list){(char *)l, 1};
    }
    return true;
}

static bool had_memory(const ts_branch_room *room)
{
    for (size_t i = 0; i < room->workers; i++)
        if (room->desks[i].no_memory)
            return false;
    return true;
}

static bool goes_on(const ts_grower *g)
{
    return had_memory(g->room) && !atomic_load(g->halt);
}

static void grow_plane(ts_grower *g, uint32_t *sets)
{
    const uint32_t allowed = g->pair->box->allowed;

    g->sets = sets;
    for (uint32_t size = 1; size <= ts_set_size(allowed) && goes_on(g); size++) {
        size_t count = 0;
        for (uint32_t set = 1; set <= allowed; set++)
            if ((set & ~allowed) == 0 && ts_set_size(set) == size)
                sets[count++] = set;
        ts_crew_run(g->room->workers, count, grow_set, g);
    }
}

/* First the planes that step shafts drive, and that of the input last, which takes from them. */
static bool grow_all(ts_grower *g, uint32_t *sets)
{
    for (uint32_t plane = (uint32_t)g->pair->plane_count + 1; plane-- > 0 && goes_on(g);) {
        g->plane = plane;
        grow_plane(g, sets);
    }
    if (goes_on(g))
        ts_crew_run(g->room->workers, g->pair->tables->all, end_set, g);
    g->out->stopped = atomic_load(g->halt);
    return had_memory(g->room) && !g->out->stopped;
}

bool ts_branches_grow(ts_branches *branches, const ts_pair_tables *pair, const ts_branch_wish *wish,
                      ts_branch_room *room)
{
    atomic_bool          halt = false;
    atomic_uint_fast64_t made = 0;
    ts_grower            g    = {
                      .wish = wish, .pair = pair, .out = branches, .room = room, .halt = &halt, .made = &made};

    *branches = (ts_branches){.pair = pair, .label_size = ts_label_size(pair->box)};
    bool done = open_room(branches, room) && make_empty(branches, room);
    if (done) {
        uint32_t *sets = TS_TAKE(room->lists, uint32_t, (size_t)pair->tables->all + 1);
        done           = sets != NULL && grow_all(&g, sets);
    }
    for (size_t i = 0; i < room->workers; i++) {
        const ts_label_count *c = &room->desks[i].counts;
        branches->count.made += c->made;
        branches->count.cut_by_bound += c->cut_by_bound;
        branches->count.cut_by_dominance += c->cut_by_dominance;
        branches->count.kept += c->kept;
    }
    branches->no_memory = !done && !branches->stopped;
    return done;
}
