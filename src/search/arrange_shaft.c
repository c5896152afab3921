/* search/arrange_shaft.c: how is one shaft put inwards of a branch, and is that worth keeping? */
#include "search/arrange_grow.h"

#include <string.h>

/* ---- keeping the best -------------------------------------------------------------------------
 */

static bool make_place(ts_bench *b)
{
    ts_desk *d = b->d;
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

/* How near the next body inwards can come to this last shaft. */
static double nearest_of(const ts_bench *b, const ts_label *l)
{
    if (b->ended >= 0)
        return 0.0; /* it may sit on the input itself */
    return b->pair->angle[l->z + b->pair->z_smallest];
}

/* With several shapes wanted, a label goes when one of its own shape beats it or when as many
 * others of different shapes do as are wanted. */
static bool is_beaten(const ts_bench *b, uint32_t first, const ts_label *l, double nearest)
{
    const uint32_t wanted = b->g->wish->shapes;
    uint64_t       seen[TS_ARRANGE_ACCESSORIES];
    uint32_t       count = 0;

    for (uint32_t i = first; i != TS_NO_LABEL; i = ts_label_at(b, i)->next) {
        const ts_label *other = ts_label_at(b, i);
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
static void drop_beaten(ts_bench *b, uint32_t *first, const ts_label *l, double nearest)
{
    const bool one = b->g->wish->shapes == 1;
    for (uint32_t *link = first; *link != TS_NO_LABEL;) {
        ts_label *other = ts_label_at(b, *link);
        if ((one || other->shape == l->shape) && ts_label_beats(&b->ahead, nearest, l, other)) {
            other->dead = 1;
            b->d->counts.cut_by_dominance++;
            *link = other->next;
        } else {
            link = &other->next;
        }
    }
}

/* Is the draft too heavy, or too long, whatever its bodies?  Most are, and what a draft owes to
 * bodies takes longer to work out; ts_rest_bound would say the same. */
static bool is_hopeless(ts_bench *b, double last)
{
    const ts_branch_wish *wish = b->g->wish;
    ts_label             *l    = b->d->draft;

    if (wish->rest == NULL || wish->weightless)
        return false;
    const double bound = b->ended >= 0 ? ts_rest_ended_glance(wish->rest, b->set, l)
                                       : ts_rest_glance(wish->rest, b->plane, b->set, l, last);
    if (bound < wish->cutoff)
        return false;
    b->d->counts.made++;
    b->d->counts.cut_by_bound++;
    return true;
}

/* Looks at the draft: is it worth keeping?  `last` is the least mass that its last gear may have.
 */
static void offer(ts_bench *b, double last)
{
    ts_desk              *d    = b->d;
    ts_label             *l    = d->draft;
    const ts_branch_wish *wish = b->g->wish;

    d->counts.made++;
    if (wish->weightless)
        l->mass = 0.0;
    if (wish->rest != NULL) {
        const double bound = b->ended >= 0 ? ts_rest_ended_bound(wish->rest, b->set, l)
                                           : ts_rest_bound(wish->rest, b->plane, b->set, l, last);
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
    memcpy(ts_label_at(b, d->count), l, b->g->out->label_size);
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

/* A narrow search may leave tooth numbers out; an exact one has none to spare. */
static uint32_t stride_of(const ts_bench *b, uint32_t count)
{
    const uint32_t teeth = b->g->wish->beam > 0 ? b->g->wish->teeth : 0;
    return teeth > 0 && count > teeth ? count / teeth : 1;
}

static uint32_t stride_in(const ts_bench *b, ts_window w)
{
    return w.least <= w.most ? stride_of(b, (uint32_t)(w.most - w.least) + 1) : 1;
}

/* Teeth with which everything on one shaft is inside of its bands. */
static ts_window window_of(const ts_pair_tables *pair, const ts_carry *c)
{
    ts_window w = {1, TS_ARRANGE_TEETH};

    for (int face = 0; face < 2; face++) {
        if (c->on[face] < 0)
            continue;
        const ts_window own = pair->window[c->on[face]];
        w.least             = own.least > w.least ? own.least : w.least;
        w.most              = own.most < w.most ? own.most : w.most;
    }
    return w;
}

void ts_bench_start(ts_bench *b, const ts_carry *c)
{
    const ts_pair_tables    *pair = b->pair;
    const ts_arrange_tables *t    = pair->tables;
    ts_label                *l    = b->d->draft;
    const ts_window          w    = window_of(pair, c);

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
        l->fronts   = c->on[0] >= 0;
        ts_label_move(&b->ahead, NULL, 0.0, c->on, nearest_of(b, l), l);
        for (uint8_t sense = 0; sense < 2; sense++) {
            if ((c->senses >> sense & 1u) == 0)
                continue;
            l->sense = sense;
            offer(b, ts_least_last(b, l));
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

static uint8_t fronts_with(const ts_label *from, const shaft *s)
{
    return (uint8_t)(from->fronts + (s->on[0] >= 0 ? 1 : 0));
}

/* The same before the mesh was asked how wide it must be, with the least that it may say. */
static bool is_hopeless_already(ts_bench *b, const ts_label *from, const shaft *s, double arc)
{
    const ts_pair_tables *pair  = b->pair;
    ts_label             *l     = b->d->draft;
    const uint32_t        least = ts_pair_least(pair, s->outer, from->z, from->reversed != 0);
    const uint32_t        last  = least > from->need ? least : from->need;

    if (last > pair->module->steps_most[from->z])
        return false; /* no face will do, which is for the mesh to say */
    l->need = (uint16_t)pair->tables->steps_least;
    l->mass = from->mass + s->mass + ts_gear_mass(pair, from->z, last) + pair->box->casing * arc;
    return is_hopeless(b, s->input ? 0.0 : ts_least_last(b, l));
}

static bool put_inward(ts_bench *b, const ts_label *from, uint32_t from_index, const shaft *s,
                       uint32_t z)
{
    const ts_pair_tables    *pair = b->pair;
    const ts_arrange_tables *t    = pair->tables;
    ts_label                *l    = b->d->draft;
    const double             arc  = pair->angle[z + from->z];
    const double             side = from->angle + arc;

    if (side > pair->frame->side_most + TS_ANGLE_SLACK ||
        side > pair->frame->wrap_most + TS_ANGLE_SLACK)
        return false; /* more teeth would make it worse */
    if (arc < s->owed || t->coprime[z * t->stride + from->z] == 0)
        return true;
    l->angle    = side;
    l->z        = (uint16_t)z;
    l->sense    = (uint8_t)(1 - from->sense);
    l->reversed = s->reversed;
    if (!t->problem->model.proportional && is_hopeless_already(b, from, s, arc))
        return true; /* such a model takes its time */
    const uint32_t need =
        ts_pair_steps(pair, s->outer, z, from->z, s->reversed, from->reversed != 0);
    const uint32_t last = need > from->need ? need : from->need;
    if (last > pair->module->steps_most[from->z] || need > pair->module->steps_most[z] ||
        t->steps_least > pair->module->steps_most[z])
        return true;
    l->mass   = from->mass + s->mass + ts_gear_mass(pair, from->z, last) + pair->box->casing * arc;
    l->shape  = s->idler || s->input ? from->shape : shape_with(from->shape, s->on);
    l->parent = from_index;
    l->parent_set           = (uint16_t)s->outer;
    l->step                 = 0;
    l->need                 = (uint16_t)(need > t->steps_least ? need : t->steps_least);
    l->on[0]                = s->on[0];
    l->on[1]                = s->on[1];
    l->idlers               = (uint8_t)(s->idler ? from->idlers + 1 : 0);
    l->fronts               = fronts_with(from, s);
    const double least_last = s->input ? 0.0 : ts_least_last(b, l);
    if (is_hopeless(b, least_last))
        return true;
    ts_label_move(&b->ahead, from, arc, s->on, nearest_of(b, l), l);
    offer(b, least_last);
    return true;
}

/* What the accessories of a shaft count as for being in the way of those of a label. */
static double in_way_of(const ts_bench *b, const ts_label *from, uint32_t outer, const int8_t on[2])
{
    return ts_in_way(b->pair->box, on, from->fronts, ts_set_size(outer) - from->fronts);
}

static double owed_to(const ts_bench *b, const ts_label *from, const int8_t on[2])
{
    const ts_box_tables *box  = b->pair->box;
    double               owed = -(double)INFINITY;
    for (int face = 0; face < 2; face++)
        if (on[face] >= 0)
            owed = fmax(owed, ts_label_owed(box, from, face, box->key[on[face]]));
    return owed - TS_ANGLE_SLACK;
}

void ts_bench_extend(ts_bench *b, const ts_carry *c)
{
    const ts_pair_tables *pair  = b->pair;
    const uint32_t        outer = b->set & ~c->set;
    const ts_label_list  *from  = &b->grown[outer];
    const ts_window       w     = window_of(pair, c);

    const double bare = pair->frame->shaft_mass + c->pad_mass;
    shaft        s    = {
                  .on = c->on, .outer = outer, .reversed = ts_is_reversed(pair->tables, outer, b->set)};
    const uint32_t step = stride_in(b, w);
    for (uint32_t i = 0; w.least <= w.most && i < from->count && !ts_is_halted(b); i++) {
        const ts_label *l = ts_label_in(b->g->out, from, i);
        if ((c->senses >> (1 - l->sense) & 1u) == 0)
            continue;
        s.owed = owed_to(b, l, c->on);
        s.mass = bare + in_way_of(b, l, outer, c->on);
        for (uint32_t z = w.least; z <= w.most; z += step)
            if (!put_inward(b, l, i, &s, z))
                break;
    }
}

/* Labels of this set, each with one more idler. */
void ts_bench_add_idlers(ts_bench *b, uint8_t before)
{
    static const int8_t       nothing[2] = {-1, -1};
    const ts_pair_tables     *pair       = b->pair;
    const ts_arrange_problem *p          = pair->tables->problem;
    const uint32_t            count      = b->d->count;
    shaft                     s          = {.on       = nothing,
                                            .outer    = b->set,
                                            .mass     = pair->frame->idler_mass,
                                            .idler    = true,
                                            .reversed = ts_is_reversed(pair->tables, b->set, b->set),
                                            .owed     = -(double)INFINITY};

    const uint32_t step = stride_of(b, (uint32_t)p->idler_teeth_count);
    for (uint32_t i = 0; i < count && !ts_is_halted(b); i++) {
        if (ts_label_at(b, i)->dead != 0 || ts_label_at(b, i)->idlers != before)
            continue;
        for (size_t k = 0; k < p->idler_teeth_count; k += step)
            (void)put_inward(b, ts_label_at(b, i), i, &s, p->idler_teeth[k]);
    }
}

/* Do the tips of the first gear reach the axis of the next shaft outboard, which is in another
 * plane? */
static bool runs_over(const ts_pair_tables *pair, const ts_pair_tables *plane,
                      const ts_plane_step *step, uint32_t z_outer)
{
    const double apart = 0.5 * plane->module->m * (double)(step->z_step + z_outer);
    const double tip   = pair->module->m * (0.5 * (double)step->z + pair->frame->addendum);
    return tip + pair->frame->step_gap > apart + TS_REACH_SLACK;
}

/* The step shaft `at`, whose second gear meshes with the last gear of a label of its plane.  This
 * label's own last gear is the first one, and nothing has asked for its width yet. */
static void put_step(ts_bench *b, const ts_label *from, uint32_t from_index, const shaft *s,
                     uint16_t at)
{
    const ts_pair_tables    *pair  = b->pair;
    const ts_plane_step     *step  = &pair->steps[at];
    const ts_pair_tables    *plane = ts_plane_of(pair, step->plane);
    const ts_arrange_tables *t     = pair->tables;
    ts_label                *l     = b->d->draft;
    const double             arc   = plane->angle[step->z_step + from->z];
    const double             side  = from->angle + arc;

    if (side > pair->frame->side_most + TS_ANGLE_SLACK ||
        side > pair->frame->wrap_most + TS_ANGLE_SLACK || arc < s->owed ||
        t->coprime[step->z_step * t->stride + from->z] == 0 ||
        runs_over(pair, plane, step, from->z))
        return;
    const uint32_t mesh   = ts_pair_steps(plane, s->outer, step->z_step, from->z,
                                          ts_is_reversed(t, s->outer, 0), from->reversed != 0);
    const uint32_t last   = mesh > from->need ? mesh : from->need;
    const uint32_t second = mesh > t->steps_least ? mesh : t->steps_least;
    if (last > plane->module->steps_most[from->z] ||
        second > plane->module->steps_most[step->z_step] ||
        t->steps_least > pair->module->steps_most[step->z])
        return;
    l->mass = from->mass + s->mass + ts_gear_mass(plane, from->z, last) +
              ts_gear_mass(plane, step->z_step, second) + pair->box->casing * arc;
    l->angle      = side;
    l->shape      = s->idler ? from->shape : shape_with(from->shape, s->on);
    l->parent     = from_index;
    l->parent_set = (uint16_t)s->outer;
    l->step       = (uint16_t)(at + 1);
    l->z          = step->z;
    l->need       = (uint16_t)t->steps_least;
    l->on[0]      = s->on[0];
    l->on[1]      = s->on[1];
    l->sense      = (uint8_t)(1 - from->sense);
    l->reversed   = s->reversed;
    l->idlers     = (uint8_t)(s->idler ? from->idlers + 1 : 0);
    l->fronts     = fronts_with(from, s);
    ts_label_move(&b->ahead, from, arc, s->on, nearest_of(b, l), l);
    offer(b, ts_least_last(b, l));
}

void ts_bench_step(ts_bench *b, uint16_t at, const ts_carry *c)
{
    static const int8_t   nothing[2] = {-1, -1};
    const ts_pair_tables *pair       = b->pair;
    const ts_plane_step  *step       = &pair->steps[at];
    const uint32_t        outer      = c != NULL ? b->set & ~c->set : b->set;
    const ts_label_list  *from       = &ts_grown_in(b->g->out, step->plane)[outer];
    const uint32_t        most       = pair->tables->problem->idlers_in_row;
    const ts_window       w = c != NULL ? window_of(pair, c) : (ts_window){1, TS_ARRANGE_TEETH};
    const double bare = pair->frame->step_mass + (c != NULL ? pair->frame->shaft_mass + c->pad_mass
                                                            : pair->frame->idler_mass);
    shaft        s    = {.on       = c != NULL ? c->on : nothing,
                         .outer    = outer,
                         .idler    = c == NULL,
                         .mass     = bare,
                         .reversed = ts_is_reversed(pair->tables, 0, b->set),
                         .owed     = -(double)INFINITY};

    if (step->z < w.least || step->z > w.most)
        return;
    for (uint32_t i = 0; i < from->count && !ts_is_halted(b); i++) {
        const ts_label *l = ts_label_in(b->g->out, from, i);
        if (c == NULL && l->idlers >= most)
            continue;
        if (c != NULL && (c->senses >> (1 - l->sense) & 1u) == 0)
            continue;
        if (c != NULL) {
            s.owed = owed_to(b, l, c->on);
            s.mass = bare + in_way_of(b, l, outer, c->on);
        }
        put_step(b, l, i, &s, at);
    }
}

void ts_bench_end(ts_bench *b)
{
    static const int8_t   nothing[2] = {-1, -1};
    const ts_pair_tables *pair       = b->pair;
    const ts_label_list  *from       = &b->grown[b->set];
    shaft                 s          = {.on       = nothing,
                                        .outer    = b->set,
                                        .input    = true,
                                        .reversed = b->ended == 1,
                                        .owed     = -(double)INFINITY};

    for (uint32_t i = 0; i < from->count && !ts_is_halted(b); i++) {
        const ts_label *l = ts_label_in(b->g->out, from, i);
        if (l->sense != pair->input_sense)
            (void)put_inward(b, l, i, &s, pair->z_in);
    }
}
