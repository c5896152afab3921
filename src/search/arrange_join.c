/* search/arrange_join.c: what can be put together without a clash, and how light is it? */
#include "search/arrange_join.h"

#include <math.h>
#include <string.h>

/* What stands between two branches. */
typedef struct middle {
    const ts_branches *branches;
    const ts_carry    *carry;  /* NULL: none */
    uint32_t           beyond; /* how many are on the branches */
    int                key[2]; /* class of the body on the input shaft per face, -1: none */
    double             mass;   /* without the input gear */
} middle;

static bool make_middle(const ts_branches *branches, uint32_t set, const ts_carry *carry, middle *m)
{
    const ts_pair_tables *pair = branches->pair;
    const ts_arrange_box *box  = pair->frame;

    *m = (middle){.branches = branches,
                  .carry    = carry,
                  .beyond   = ts_set_size(carry != NULL ? set & ~carry->set : set),
                  .key      = {pair->box->input_key[0], pair->box->input_key[1]},
                  .mass     = box->mass + box->choices[pair->choice].mass};
    if (carry == NULL)
        return true;
    if ((carry->set & ~pair->input_fits) != 0 || (carry->senses >> pair->input_sense & 1u) == 0)
        return false;
    for (uint32_t face = 0; face < 2; face++) {
        if (carry->on[face] < 0)
            continue;
        if ((box->input_faces >> face & 1u) == 0)
            return false;
        m->key[face] = pair->box->key[carry->on[face]];
    }
    m->mass += carry->pad_mass;
    return true;
}

static bool clears_input(const middle *m, const ts_label *l)
{
    const ts_box_tables *box = m->branches->pair->box;
    for (int face = 0; face < 2; face++)
        if (m->key[face] >= 0 &&
            ts_label_owed(box, l, face, (uint32_t)m->key[face]) > TS_ANGLE_SLACK)
            return false;
    return true;
}

static bool clear_each_other(const middle *m, const ts_label *left, const ts_label *right)
{
    const ts_box_tables *box = m->branches->pair->box;
    for (int face = 0; face < 2; face++) {
        const ts_reach *r = &right->reach[(size_t)face * box->reach_most];
        for (uint32_t i = 0; i < right->reaches[face]; i++)
            if (ts_label_owed(box, left, face, r[i].key) > r[i].distance + TS_ANGLE_SLACK)
                return false;
    }
    return true;
}

static double input_gear(const ts_pair_tables *pair, uint32_t need)
{
    const ts_module_tables *module = pair->module;
    return module->gear_mass[pair->z_in * (module->steps_top + 1) + need];
}

/* What stands on the input is in the way of both branches. */
static double in_way_of(const middle *m, const ts_label *left, const ts_label *right)
{
    const uint32_t fronts = (uint32_t)left->fronts + right->fronts;
    return m->carry == NULL
               ? 0.0
               : ts_in_way(m->branches->pair->box, m->carry->on, fronts, m->beyond - fronts);
}

static double joint_mass(const middle *m, const ts_label *left, const ts_label *right)
{
    const uint32_t need = left->need > right->need ? left->need : right->need;
    return m->mass + left->mass + right->mass + input_gear(m->branches->pair, need) +
           in_way_of(m, left, right);
}

static bool fit_together(const middle *m, const ts_label *left, const ts_label *right)
{
    const double most = m->branches->pair->frame->wrap_most + TS_ANGLE_SLACK;
    return left->angle + right->angle <= most && clears_input(m, right) &&
           clear_each_other(m, left, right);
}

static uint64_t mixed(uint64_t a, uint64_t b)
{
    uint64_t z = a * UINT64_C(0x9E3779B97F4A7C15) + b;
    z          = (z ^ z >> 30) * UINT64_C(0xBF58476D1CE4E5B9);
    z          = (z ^ z >> 27) * UINT64_C(0x94D049BB133111EB);
    return z ^ z >> 31;
}

static bool sides_are_free(const ts_pair_tables *pair)
{
    return (pair->box->left_only | pair->box->right_only) == 0;
}

static uint64_t joint_shape(const middle *m, const ts_label *left, const ts_label *right)
{
    const bool     turn = sides_are_free(m->branches->pair) && left->shape > right->shape;
    const uint64_t a    = turn ? right->shape : left->shape;
    const uint64_t b    = turn ? left->shape : right->shape;
    const uint64_t on =
        m->carry == NULL ? 0
                         : ((uint64_t)(m->carry->on[0] + 2) << 8 | (uint64_t)(m->carry->on[1] + 2));
    return mixed(mixed(mixed(a, b), on), m->branches->pair->box_index);
}

/* Keeps `best` sorted, one entry of each shape. */
static bool take(ts_joint *best, size_t room, const ts_joint *fresh)
{
    size_t end = room - 1; /* the entry that goes */
    size_t at  = 0;

    for (size_t i = 0; i < room; i++)
        if (best[i].branches[0] != NULL && best[i].shape == fresh->shape) {
            if (fresh->mass >= best[i].mass * (1.0 - TS_MASS_SLACK))
                return false;
            end = i;
            break;
        }
    if (fresh->mass >= best[end].mass * (1.0 - TS_MASS_SLACK))
        return false;
    while (at < end && best[at].mass <= fresh->mass)
        at++;
    memmove(&best[at + 1], &best[at], (end - at) * sizeof *best);
    best[at] = *fresh;
    return true;
}

static bool join_lists(const middle *m, const ts_label_list *lefts, const ts_label_list *rights,
                       ts_joint *best, size_t room, ts_join_tally *tally)
{
    const ts_branches *b     = m->branches;
    const double       least = m->mass + input_gear(b->pair, b->pair->tables->steps_least);
    bool               any   = false;

    if (lefts->count == 0 || rights->count == 0)
        return false;
    const double right_least = ts_label_in(b, rights, 0)->mass;
    for (uint32_t i = 0; i < lefts->count; i++) {
        const ts_label *left = ts_label_in(b, lefts, i);
        if (least + left->mass + right_least >= best[room - 1].mass)
            break;
        if (!clears_input(m, left))
            continue;
        for (uint32_t k = 0; k < rights->count; k++) {
            const ts_label *right = ts_label_in(b, rights, k);
            if (least + left->mass + right->mass >= best[room - 1].mass)
                break;
            tally->light++;
            if (!fit_together(m, left, right))
                continue;
            tally->fitting++;
            const ts_joint fresh = {.mass     = joint_mass(m, left, right),
                                    .shape    = joint_shape(m, left, right),
                                    .branches = {left, right},
                                    .input    = m->carry};
            any                  = take(best, room, &fresh) || any;
        }
    }
    return any;
}

static uint64_t count_lists(const middle *m, const ts_label_list *lefts,
                            const ts_label_list *rights)
{
    uint64_t count = 0;
    for (uint32_t i = 0; i < lefts->count; i++) {
        const ts_label *left = ts_label_in(m->branches, lefts, i);
        if (!clears_input(m, left))
            continue;
        for (uint32_t k = 0; k < rights->count; k++)
            count += fit_together(m, left, ts_label_in(m->branches, rights, k)) ? 1 : 0;
    }
    return count;
}

static int reversed_by(const ts_arrange_tables *t, uint32_t left, uint32_t right)
{
    return (t->loads[left] | t->loads[right]) == (TS_LOAD_AHEAD | TS_LOAD_BACK) ? 1 : 0;
}

static bool sides_hold(const ts_box_tables *box, uint32_t left, uint32_t right)
{
    return (left & box->right_only) == 0 && (right & box->left_only) == 0;
}

/* Does something with every way to share `set` out to left, input and right.  best NULL: counts. */
static bool share_out(const middle *m, uint32_t set, ts_joint *best, size_t room,
                      ts_join_tally *tally)
{
    const ts_branches       *b     = m->branches;
    const ts_arrange_tables *t     = b->pair->tables;
    const uint32_t           rest  = set & ~(m->carry != NULL ? m->carry->set : 0);
    const bool               twice = best != NULL && sides_are_free(b->pair);
    bool                     any   = false;

    for (uint32_t left = rest;; left = (left - 1) & rest) {
        const uint32_t right = rest & ~left;
        if (twice && left < right)
            return any; /* from here on, mirror images */
        if (sides_hold(b->pair->box, left, right)) {
            const int            which  = reversed_by(t, left, right);
            const ts_label_list *lefts  = &b->ended[which][left];
            const ts_label_list *rights = &b->ended[which][right];
            if (best != NULL)
                any = join_lists(m, lefts, rights, best, room, tally) || any;
            else
                tally->fitting += count_lists(m, lefts, rights);
        }
        if (left == 0)
            return any;
    }
}

static bool visit(const ts_branches *b, uint32_t set, ts_joint *best, size_t room,
                  ts_join_tally *tally)
{
    const ts_pair_tables *pair = b->pair;
    middle                m;
    bool                  any = false;

    if (set == 0 || (set & ~pair->box->allowed) != 0 ||
        pair->tables->steps_least > pair->module->steps_most[pair->z_in])
        return false;
    if (make_middle(b, set, NULL, &m))
        any = share_out(&m, set, best, room, tally);
    for (size_t i = 0; i < pair->box->carry_count; i++) {
        const ts_carry *carry = &pair->box->carries[i];
        if ((carry->set & ~set) == 0 && make_middle(b, set, carry, &m))
            any = share_out(&m, set, best, room, tally) || any;
    }
    return any;
}

bool ts_join_set(const ts_branches *branches, uint32_t set, ts_joint *best, size_t room,
                 ts_join_tally *tally)
{
    return visit(branches, set, best, room, tally);
}

uint64_t ts_join_count(const ts_branches *branches, uint32_t set)
{
    ts_join_tally tally = {0};
    (void)visit(branches, set, NULL, 0, &tally);
    return tally.fitting;
}

/* ---- writing out ------------------------------------------------------------------------------
 */

static ts_arranged_shaft shaft_of(const ts_arrange_tables *t, const ts_label *l,
                                  uint32_t inner_need)
{
    const uint32_t need = l->need > inner_need ? l->need : inner_need;
    return (ts_arranged_shaft){.front = l->on[0],
                               .rear  = l->on[1],
                               .z     = l->z,
                               .width = (double)need * t->problem->width_step};
}

/* A gear is as wide as the wider of its two meshes; a label knows the outboard one of its last
 * gear, and the label inwards of it knows the other.  Second gears have one mesh, which no label
 * keeps. */
static void write_branch(const ts_branches *b, const ts_label *ended, ts_arranged_branch *out)
{
    const ts_arrange_tables *t     = b->pair->tables;
    const ts_label          *inner = ended;
    uint32_t                 at    = 0; /* number of the plane */

    out->count = 0;
    while (inner->parent_set != 0) {
        const ts_plane_step *step = inner->step > 0 ? &b->pair->steps[inner->step - 1] : NULL;
        if (step != NULL)
            at = step->plane;
        const ts_label *l = ts_label_in(b, &ts_grown_in(b, at)[inner->parent_set], inner->parent);
        uint32_t        need = inner->need;
        if (step != NULL) {
            ts_arranged_shaft    *s     = &out->shafts[out->count - 1];
            const ts_pair_tables *plane = ts_plane_of(b->pair, at);
            need = ts_pair_steps(plane, inner->parent_set, step->z_step, l->z,
                                 ts_is_reversed(t, inner->parent_set, 0), l->reversed != 0);
            if (need < t->steps_least)
                need = t->steps_least;
            s->z_step      = step->z_step;
            s->step_module = plane->module_index;
            s->step_width  = (double)need * t->problem->width_step;
        }
        out->shafts[out->count++] = shaft_of(t, l, need);
        inner                     = l;
    }
}

void ts_join_write(const ts_branches *branches, const ts_joint *joint, ts_arranged_box *box)
{
    const ts_pair_tables *pair = branches->pair;
    const ts_label       *l = joint->branches[0], *r = joint->branches[1];
    const uint32_t        need = l->need > r->need ? l->need : r->need;

    *box = (ts_arranged_box){.present = true, .choice = pair->choice, .wrap = l->angle + r->angle};
    box->input = (ts_arranged_shaft){.front = joint->input != NULL ? joint->input->on[0] : -1,
                                     .rear  = joint->input != NULL ? joint->input->on[1] : -1,
                                     .z     = pair->z_in,
                                     .width = (double)need * pair->tables->problem->width_step};
    write_branch(branches, l, &box->branches[0]);
    write_branch(branches, r, &box->branches[1]);
}
