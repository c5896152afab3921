/* search/arrange_branch.c: how does a branch grow, shaft by shaft, from its free end inwards?
 *
 * Sets are worked through by their size.  The labels of a set come from those of smaller sets
 * alone, so that sets of one size may be worked on side by side and the result is the same whoever
 * does it.
 */
#include "search/arrange_branch.h"
#include "search/arrange_desk.h"

#include "search/crew.h"

#include <stdlib.h>
#include <string.h>

typedef ts_desk desk;

typedef struct grower {
    const ts_branch_wish *wish;
    const ts_pair_tables *pair;
    ts_branches          *out;
    ts_branch_room       *room;
    const uint32_t       *sets; /* of the size at hand */
    atomic_bool          *halt; /* somebody said stop */
} grower;

/* The set at hand. */
typedef struct bench {
    const grower *g;
    desk         *d;
    uint32_t      set;
    ts_ahead      ahead;
    int           ended; /* -1: growing; 0, 1: being joined to an input that is (not) reversed */
    size_t        worker;
    uint32_t      turns; /* since it was last asked whether to stop */
} bench;

/* Is the search to end?  One worker asks, now and then, and all of them hear it. */
#define TURNS_BETWEEN 64
static bool is_halted(bench *b)
{
    const ts_branch_wish *wish = b->g->wish;
    if (wish->stop != NULL && b->worker == 0 && ++b->turns >= TURNS_BETWEEN) {
        b->turns = 0;
        if (wish->stop(wish->context))
            atomic_store_explicit(b->g->halt, true, memory_order_relaxed);
    }
    return atomic_load_explicit(b->g->halt, memory_order_relaxed);
}

/* ---- memory -----------------------------------------------------------------------------------
 */

static ts_label *label_at(const bench *b, uint32_t i)
{
    return (ts_label *)(void *)(b->d->labels + (size_t)i * b->g->out->label_size);
}

static bool make_place(bench *b)
{
    desk *d = b->d;
    if (d->count < d->room)
        return true;
    const uint32_t room  = d->room == 0 ? 1024 : d->room * 2;
    char          *fresh = ts_desk_resize(d, d->labels, (size_t)room * b->g->out->label_size);
    if (fresh == NULL) {
        d->no_memory = true;
        return false;
    }
    d->labels = fresh;
    d->room   = room;
    return true;
}

/* ---- keeping the best -------------------------------------------------------------------------
 */

/* How near the next body inwards can come to this last shaft. */
static double nearest_of(const bench *b, const ts_label *l)
{
    if (b->ended >= 0)
        return 0.0; /* it may sit on the input itself */
    return b->g->pair->angle[l->z + b->g->pair->z_smallest];
}

/* With several shapes wanted, a label goes when one of its own shape beats it or when as many
 * others of different shapes do as are wanted. */
static bool is_beaten(const bench *b, uint32_t first, const ts_label *l, double nearest)
{
    const uint32_t wanted = b->g->wish->shapes;
    uint64_t       seen[TS_ARRANGE_ACCESSORIES];
    uint32_t       count = 0;

    for (uint32_t i = first; i != TS_NO_LABEL; i = label_at(b, i)->next) {
        const ts_label *other = label_at(b, i);
        if (!ts_label_beats(&b->ahead, nearest, other, l))
            continue;
        if (wanted == 1 || other->shape == l->shape)
            return true;
        uint32_t k = 0;
        while (k < count && seen[k] != other->shape)
            k++;
        if (k < count)
            continue;
        seen[count++] = other->shape;
        if (count == wanted)
            return true;
    }
    return false;
}

/* Takes those out of a bucket that the fresh label beats; with several shapes, of its own alone. */
static void drop_beaten(bench *b, uint32_t *first, const ts_label *l, double nearest)
{
    const bool one = b->g->wish->shapes == 1;
    for (uint32_t *link = first; *link != TS_NO_LABEL;) {
        ts_label *other = label_at(b, *link);
        if ((one || other->shape == l->shape) && ts_label_beats(&b->ahead, nearest, l, other)) {
            other->dead = 1;
            b->d->counts.cut_by_dominance++;
            *link = other->next;
        } else {
            link = &other->next;
        }
    }
}

/* Looks at the draft: is it worth keeping?  `last` is the least mass that its last gear may have.
 */
static void offer(bench *b, double last)
{
    desk                 *d    = b->d;
    ts_label             *l    = d->draft;
    const ts_branch_wish *wish = b->g->wish;

    d->counts.made++;
    if (wish->weightless)
        l->mass = 0.0;
    if (wish->rest != NULL) {
        const double bound = b->ended >= 0 ? ts_rest_ended_bound(wish->rest, b->set, l)
                                           : ts_rest_bound(wish->rest, b->set, l, last);
        if (bound >= wish->cutoff) {
            d->counts.cut_by_bound++;
            return;
        }
    }
    uint32_t *first = &d->bucket[4u * l->z + 2u * l->sense + l->reversed];
    if (wish->shapes > 0) {
        const double nearest = nearest_of(b, l);
        if (is_beaten(b, *first, l, nearest)) {
            d->counts.cut_by_dominance++;
            return;
        }
        drop_beaten(b, first, l, nearest);
    }
    if (!make_place(b))
        return;
    l->dead = 0;
    l->next = *first;
    memcpy(label_at(b, d->count), l, b->g->out->label_size);
    *first = d->count++;
}

/* ---- shafts -----------------------------------------------------------------------------------
 */

/* One step of a row of accessories, turned into 64 bits: splitmix64 of what was and what comes. */
static uint64_t shape_with(uint64_t shape, const int8_t on[2])
{
    uint64_t z = shape * UINT64_C(31) + (uint64_t)(on[0] + 2) * 37 + (uint64_t)(on[1] + 2);
    z += UINT64_C(0x9E3779B97F4A7C15);
    z = (z ^ z >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    z = (z ^ z >> 27) * UINT64_C(0x94D049BB133111EB);
    return z ^ z >> 31;
}

static double gear_mass(const ts_pair_tables *pair, uint32_t z, uint32_t steps)
{
    return pair->module->gear_mass[z * (pair->module->steps_top + 1) + steps];
}

/* The width that the last gear will have at least, for the mesh inwards carries the whole set. */
static double least_last(const bench *b, const ts_label *l)
{
    const ts_pair_tables   *pair   = b->g->pair;
    const ts_module_tables *module = pair->module;
    uint32_t                steps  = l->need;

    if (module->unit_least[l->reversed] != NULL) {
        const uint32_t own =
            ts_steps_of(pair->force[b->set] * module->unit_least[l->reversed][l->z]);
        if (own > steps)
            steps = own;
    }
    return steps > module->steps_most[l->z] ? (double)INFINITY : gear_mass(pair, l->z, steps);
}

/* A narrow search may leave tooth numbers out; an exact one has none to spare. */
static uint32_t stride_of(const bench *b, uint32_t count)
{
    const uint32_t teeth = b->g->wish->beam > 0 ? b->g->wish->teeth : 0;
    return teeth > 0 && count > teeth ? count / teeth : 1;
}

static uint32_t stride_in(const bench *b, ts_window w)
{
    return w.least <= w.most ? stride_of(b, (uint32_t)(w.most - w.least) + 1) : 1;
}

static void start(bench *b, const ts_carry *c)
{
    const ts_pair_tables    *pair = b->g->pair;
    const ts_arrange_tables *t    = pair->tables;
    ts_label                *l    = b->d->draft;
    ts_window                w    = {1, TS_ARRANGE_TEETH};

    for (int face = 0; face < 2; face++) {
        if (c->on[face] < 0)
            continue;
        const ts_window own = pair->window[c->on[face]];
        w.least             = own.least > w.least ? own.least : w.least;
        w.most              = own.most < w.most ? own.most : w.most;
    }
    for (uint32_t z = w.least, step = stride_in(b, w); z <= w.most; z += step) {
        if (t->steps_least > pair->module->steps_most[z])
            continue;
        memset(l, 0, sizeof *l);
        l->mass     = pair->frame->shaft_mass + c->pad_mass;
        l->shape    = shape_with(0, c->on);
        l->z        = (uint16_t)z;
        l->need     = (uint16_t)t->steps_least;
        l->on[0]    = c->on[0];
        l->on[1]    = c->on[1];
        l->reversed = ts_is_reversed(t, 0, b->set);
        ts_label_move(&b->ahead, NULL, 0.0, c->on, nearest_of(b, l), l);
        for (uint8_t sense = 0; sense < 2; sense++) {
            if ((c->senses >> sense & 1u) == 0)
                continue;
            l->sense = sense;
            offer(b, least_last(b, l));
        }
    }
}

/* A shaft that is put inwards of a label. */
typedef struct shaft {
    const int8_t *on;
    uint32_t      outer; /* set beyond it */
    double        mass;
    bool          reversed, idler, input;
    double        owed; /* arc that clearance asks for, less its slack */
} shaft;

static bool put_inward(bench *b, const ts_label *from, uint32_t from_index, const shaft *s,
                       uint32_t z)
{
    const ts_pair_tables    *pair = b->g->pair;
    const ts_arrange_tables *t    = pair->tables;
    ts_label                *l    = b->d->draft;
    const double             arc  = pair->angle[z + from->z];
    const double             side = from->angle + arc;

    if (side > pair->frame->side_most + TS_ANGLE_SLACK ||
        side > pair->frame->wrap_most + TS_ANGLE_SLACK)
        return false; /* more teeth would make it worse */
    if (arc < s->owed || t->coprime[z * t->stride + from->z] == 0)
        return true;
    const uint32_t need =
        ts_pair_steps(pair, s->outer, z, from->z, s->reversed, from->reversed != 0);
    const uint32_t last = need > from->need ? need : from->need;
    if (last > pair->module->steps_most[from->z] || need > pair->module->steps_most[z] ||
        t->steps_least > pair->module->steps_most[z])
        return true;
    l->mass       = from->mass + s->mass + gear_mass(pair, from->z, last) + pair->box->casing * arc;
    l->angle      = side;
    l->shape      = s->idler || s->input ? from->shape : shape_with(from->shape, s->on);
    l->parent     = from_index;
    l->parent_set = s->outer;
    l->z          = (uint16_t)z;
    l->need       = (uint16_t)(need > t->steps_least ? need : t->steps_least);
    l->on[0]      = s->on[0];
    l->on[1]      = s->on[1];
    l->sense      = (uint8_t)(1 - from->sense);
    l->reversed   = s->reversed;
    l->idlers     = (uint8_t)(s->idler ? from->idlers + 1 : 0);
    ts_label_move(&b->ahead, from, arc, s->on, nearest_of(b, l), l);
    offer(b, s->input ? 0.0 : least_last(b, l));
    return true;
}

static double owed_to(const bench *b, const ts_label *from, const int8_t on[2])
{
    const ts_box_tables *box  = b->g->pair->box;
    double               owed = -(double)INFINITY;
    for (int face = 0; face < 2; face++)
        if (on[face] >= 0)
            owed = fmax(owed, ts_label_owed(box, from, face, box->key[on[face]]));
    return owed - TS_ANGLE_SLACK;
}

static void extend(bench *b, const ts_carry *c)
{
    const ts_pair_tables *pair  = b->g->pair;
    const uint32_t        outer = b->set & ~c->set;
    const ts_label_list  *from  = &b->g->out->grown[outer];
    ts_window             w     = {1, TS_ARRANGE_TEETH};

    for (int face = 0; face < 2; face++) {
        if (c->on[face] < 0)
            continue;
        const ts_window own = pair->window[c->on[face]];
        w.least             = own.least > w.least ? own.least : w.least;
        w.most              = own.most < w.most ? own.most : w.most;
    }
    shaft          s    = {.on       = c->on,
                           .outer    = outer,
                           .mass     = pair->frame->shaft_mass + c->pad_mass,
                           .reversed = ts_is_reversed(pair->tables, outer, b->set)};
    const uint32_t step = stride_in(b, w);
    for (uint32_t i = 0; w.least <= w.most && i < from->count && !is_halted(b); i++) {
        const ts_label *l = ts_label_in(b->g->out, from, i);
        if ((c->senses >> (1 - l->sense) & 1u) == 0)
            continue;
        s.owed = owed_to(b, l, c->on);
        for (uint32_t z = w.least; z <= w.most; z += step)
            if (!put_inward(b, l, i, &s, z))
                break;
    }
}

/* Labels of this set, each with one more idler. */
static void add_idlers(bench *b, uint8_t before)
{
    static const int8_t       nothing[2] = {-1, -1};
    const ts_pair_tables     *pair       = b->g->pair;
    const ts_arrange_problem *p          = pair->tables->problem;
    const uint32_t            count      = b->d->count;
    shaft                     s          = {.on       = nothing,
                                            .outer    = b->set,
                                            .mass     = pair->frame->idler_mass,
                                            .idler    = true,
                                            .reversed = ts_is_reversed(pair->tables, b->set, b->set),
                                            .owed     = -(double)INFINITY};

    const uint32_t step = stride_of(b, (uint32_t)p->idler_teeth_count);
    for (uint32_t i = 0; i < count && !is_halted(b); i++) {
        if (label_at(b, i)->dead != 0 || label_at(b, i)->idlers != before)
            continue;
        for (size_t k = 0; k < p->idler_teeth_count; k += step)
            (void)put_inward(b, label_at(b, i), i, &s, p->idler_teeth[k]);
    }
}

/* ---- lists ------------------------------------------------------------------------------------
 */

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
static void narrow(bench *b, uint8_t idlers)
{
    const ts_branch_wish *wish  = b->g->wish;
    desk                 *d     = b->d;
    uint32_t              alive = 0;

    if (wish->beam == 0)
        return;
    ranking *rank = ts_desk_resize(d, NULL, ((size_t)d->count + 1) * sizeof *rank);
    if (rank == NULL) {
        d->no_memory = true;
        return;
    }
    for (uint32_t i = 0; i < d->count; i++) {
        const ts_label *l = label_at(b, i);
        if (l->dead == 0 && l->idlers == idlers)
            rank[alive++] = (ranking){ts_rest_bound(wish->rest, b->set, l, least_last(b, l)), i};
    }
    qsort(rank, alive, sizeof *rank, by_value);
    for (uint32_t i = wish->beam; i < alive; i++)
        label_at(b, rank[i].index)->dead = 1;
    (void)ts_desk_resize(d, rank, 0);
}

static void empty_buckets(bench *b)
{
    for (uint32_t i = 0; i < b->d->count; i++) {
        const ts_label *l                                     = label_at(b, i);
        b->d->bucket[4u * l->z + 2u * l->sense + l->reversed] = TS_NO_LABEL;
    }
    b->d->count = 0;
}

static bool make_order(desk *d)
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
static void pack(bench *b, ts_label_list *list)
{
    desk        *d     = b->d;
    const size_t size  = b->g->out->label_size;
    uint32_t     alive = 0;

    if (!make_order(d))
        return;
    for (uint32_t i = 0; i < d->count; i++)
        d->order[i] = label_at(b, i)->dead != 0 ? TS_NO_LABEL : alive++;
    list->at = ts_arena_take(d->kept, alive, size);
    if (list->at == NULL) {
        d->no_memory = true;
        return;
    }
    for (uint32_t i = 0; i < d->count; i++) {
        ts_label *l = label_at(b, i);
        if (l->dead != 0)
            continue;
        if (b->ended < 0 && l->idlers > 0)
            l->parent = d->order[l->parent];
        memcpy(list->at + (size_t)d->order[i] * size, l, size);
    }
    list->count = alive;
    d->counts.kept += alive;
}

static void pack_by_mass(bench *b, ts_label_list *list)
{
    desk        *d     = b->d;
    const size_t size  = b->g->out->label_size;
    uint32_t     alive = 0;
    ranking     *rank  = ts_desk_resize(d, NULL, ((size_t)d->count + 1) * sizeof *rank);

    if (rank == NULL) {
        d->no_memory = true;
        return;
    }
    for (uint32_t i = 0; i < d->count; i++)
        if (label_at(b, i)->dead == 0)
            rank[alive++] = (ranking){label_at(b, i)->mass, i};
    qsort(rank, alive, sizeof *rank, by_value);
    list->at = ts_arena_take(d->kept, alive, size);
    if (list->at == NULL)
        d->no_memory = true;
    for (uint32_t i = 0; list->at != NULL && i < alive; i++)
        memcpy(list->at + (size_t)i * size, label_at(b, rank[i].index), size);
    list->count = list->at != NULL ? alive : 0;
    d->counts.kept += alive;
    (void)ts_desk_resize(d, rank, 0);
}

/* ---- sets -------------------------------------------------------------------------------------
 */

static void grow_set(void *context, size_t item, size_t worker)
{
    grower              *g    = context;
    const ts_box_tables *box  = g->pair->box;
    const uint32_t       most = g->pair->tables->problem->idlers_in_row;
    bench                b    = {
                          .g = g, .d = &g->room->desks[worker], .set = g->sets[item], .ended = -1, .worker = worker};

    if (b.d->no_memory || is_halted(&b))
        return;
    b.ahead = ts_ahead_of(box, b.set);
    for (size_t i = 0; i < box->carry_count; i++) {
        const ts_carry *c = &box->carries[i];
        if ((c->set & ~b.set) != 0)
            continue;
        if (c->set == b.set)
            start(&b, c);
        else if (g->out->grown[b.set & ~c->set].count > 0)
            extend(&b, c);
    }
    narrow(&b, 0);
    for (uint8_t idlers = 0; idlers < most; idlers++) {
        add_idlers(&b, idlers);
        narrow(&b, (uint8_t)(idlers + 1));
    }
    pack(&b, &g->out->grown[b.set]);
    empty_buckets(&b);
}

static void end_set(void *context, size_t item, size_t worker)
{
    static const int8_t   nothing[2] = {-1, -1};
    grower               *g          = context;
    const ts_pair_tables *pair       = g->pair;
    bench b = {.g = g, .d = &g->room->desks[worker], .set = (uint32_t)item + 1, .worker = worker};
    const ts_label_list *from = &g->out->grown[b.set];

    if (b.d->no_memory || is_halted(&b))
        return;
    b.ahead = ts_ahead_of(pair->box, b.set);
    for (b.ended = 0; b.ended < 2; b.ended++) {
        const bool both = pair->tables->loads[b.set] == (TS_LOAD_AHEAD | TS_LOAD_BACK);
        if (both && b.ended == 0)
            continue; /* the branch alone reverses the input */
        shaft s = {.on       = nothing,
                   .outer    = b.set,
                   .input    = true,
                   .reversed = b.ended == 1,
                   .owed     = -(double)INFINITY};
        for (uint32_t i = 0; i < from->count && !is_halted(&b); i++) {
            const ts_label *l = ts_label_in(g->out, from, i);
            if (l->sense != pair->input_sense)
                (void)put_inward(&b, l, i, &s, pair->z_in);
        }
        pack_by_mass(&b, &g->out->ended[b.ended][b.set]);
        empty_buckets(&b);
    }
}

static uint32_t size_of(uint32_t set)
{
    uint32_t size = 0;
    for (; set != 0; set &= set - 1)
        size++;
    return size;
}

static bool open_room(ts_branches *out, ts_branch_room *room)
{
    const size_t sets = (size_t)out->pair->tables->all + 1;

    ts_branch_room_clear(room);
    room->lists = ts_arena_open(&room->allocator);
    if (room->lists == NULL)
        return false;
    out->grown    = TS_TAKE(room->lists, ts_label_list, sets);
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

static bool grow_all(grower *g, uint32_t *sets)
{
    const uint32_t allowed = g->pair->box->allowed;
    const size_t   workers = g->room->workers;

    g->sets = sets;
    for (uint32_t size = 1; size <= size_of(allowed); size++) {
        size_t count = 0;
        for (uint32_t set = 1; set <= allowed; set++)
            if ((set & ~allowed) == 0 && size_of(set) == size)
                sets[count++] = set;
        ts_crew_run(workers, count, grow_set, g);
        if (!had_memory(g->room) || atomic_load(g->halt))
            break;
    }
    if (had_memory(g->room) && !atomic_load(g->halt))
        ts_crew_run(workers, g->pair->tables->all, end_set, g);
    g->out->stopped = atomic_load(g->halt);
    return had_memory(g->room) && !g->out->stopped;
}

bool ts_branches_grow(ts_branches *branches, const ts_pair_tables *pair, const ts_branch_wish *wish,
                      ts_branch_room *room)
{
    atomic_bool halt = false;
    grower      g    = {.wish = wish, .pair = pair, .out = branches, .room = room, .halt = &halt};

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
