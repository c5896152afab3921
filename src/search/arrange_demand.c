/* search/arrange_demand.c: what does a problem ask for that could be let go? */
#include "search/arrange_conflict.h"

#include <string.h>

#define FULL_TURN    6.283185307179586
#define WIDTH_LET_GO 4.0
#define SPEED_LET_GO 1e9
enum { ALL_FACES = TS_FACE_FRONT | TS_FACE_REAR };

static uint32_t all_boxes(const ts_arrange_problem *p)
{
    return (1u << p->box_count) - 1u;
}

static void add(ts_demand *list, size_t *count, ts_demand_kind kind, size_t index, size_t condition)
{
    list[(*count)++] = (ts_demand){kind, (uint32_t)index, (uint32_t)condition};
}

static void add_accessory(const ts_arrange_problem *p, size_t i, ts_demand *list, size_t *count)
{
    const ts_arrange_accessory *a = &p->accessories[i];

    if ((a->faces & ALL_FACES) != ALL_FACES)
        add(list, count, TS_DEMAND_FACES, i, 0);
    if (a->side != TS_SIDE_ANY)
        add(list, count, TS_DEMAND_SIDE, i, 0);
    if ((a->boxes & all_boxes(p)) != all_boxes(p))
        add(list, count, TS_DEMAND_BOXES, i, 0);
    if (a->body_radius > 0.0)
        add(list, count, TS_DEMAND_BODY, i, 0);
}

static void add_box(const ts_arrange_problem *p, size_t i, ts_demand *list, size_t *count)
{
    const ts_arrange_box *b = &p->boxes[i];

    if (b->wrap_most < FULL_TURN)
        add(list, count, TS_DEMAND_WRAP, i, 0);
    if (b->side_most < FULL_TURN)
        add(list, count, TS_DEMAND_BRANCH, i, 0);
    if ((b->input_faces & ALL_FACES) != ALL_FACES)
        add(list, count, TS_DEMAND_INPUT_FACES, i, 0);
    if (b->input_body[0] > 0.0 || b->input_body[1] > 0.0)
        add(list, count, TS_DEMAND_INPUT_BODY, i, 0);
}

ts_demand *ts_demands_of(const ts_arrange_problem *problem, size_t *count, ts_arena *arena)
{
    const ts_arrange_problem *p = problem;
    const size_t most = p->accessory_count * (p->condition_count + 5) + 4 * p->box_count + 4;
    ts_demand   *list = TS_TAKE(arena, ts_demand, most);

    *count = 0;
    if (list == NULL)
        return NULL;
    if (p->width_over_diameter < WIDTH_LET_GO)
        add(list, count, TS_DEMAND_WIDTH, 0, 0);
    if (p->hunting)
        add(list, count, TS_DEMAND_HUNTING, 0, 0);
    if (p->idlers_in_row < TS_ARRANGE_IDLERS && p->idler_teeth_count > 0)
        add(list, count, TS_DEMAND_IDLERS, 0, 0);
    if (p->gap > 0.0)
        add(list, count, TS_DEMAND_GAP, 0, 0);
    for (size_t b = 0; b < p->box_count; b++)
        add_box(p, b, list, count);
    for (size_t a = 0; a < p->accessory_count; a++)
        add_accessory(p, a, list, count);
    /* Bands late: while they stand, the teeth are few and questions are quick.  What is asked about
     * last is kept first: a sense says more than a band. */
    for (size_t a = 0; a < p->accessory_count; a++)
        for (size_t c = 0; c < p->condition_count; c++)
            add(list, count, TS_DEMAND_BAND, a, c);
    for (size_t a = 0; a < p->accessory_count; a++)
        if (p->accessories[a].sense != 0)
            add(list, count, TS_DEMAND_SENSE, a, 0);
    return list;
}

/* ---- letting go -------------------------------------------------------------------------------
 */

static void drop_of_accessory(const ts_arrange_problem *p, ts_arrange_accessory *a, double *least,
                              double *most, const ts_demand *d)
{
    switch (d->kind) {
    case TS_DEMAND_BAND:
        least[d->condition] = 0.0;
        most[d->condition]  = SPEED_LET_GO;
        break;
    case TS_DEMAND_SENSE:
        a->sense = 0;
        break;
    case TS_DEMAND_FACES:
        a->faces = ALL_FACES;
        break;
    case TS_DEMAND_SIDE:
        a->side = TS_SIDE_ANY;
        break;
    case TS_DEMAND_BOXES:
        a->boxes = all_boxes(p);
        break;
    default:
        a->body_radius = 0.0;
        break;
    }
}

static void drop_of_box(ts_arrange_box *b, const ts_demand *d)
{
    switch (d->kind) {
    case TS_DEMAND_WRAP:
        b->wrap_most = FULL_TURN;
        break;
    case TS_DEMAND_BRANCH:
        b->side_most = FULL_TURN;
        break;
    case TS_DEMAND_INPUT_FACES:
        b->input_faces = ALL_FACES;
        break;
    default:
        b->input_body[0] = b->input_body[1] = 0.0;
        break;
    }
}

static void drop_of_all(ts_arrange_problem *p, const ts_demand *d)
{
    switch (d->kind) {
    case TS_DEMAND_GAP:
        p->gap = 0.0;
        break;
    case TS_DEMAND_HUNTING:
        p->hunting = false;
        break;
    case TS_DEMAND_IDLERS:
        p->idlers_in_row = TS_ARRANGE_IDLERS;
        break;
    default:
        p->width_over_diameter = WIDTH_LET_GO;
        break;
    }
}

bool ts_demands_drop(const ts_arrange_problem *problem, const ts_demand *dropped, size_t count,
                     ts_arrange_problem *out, ts_arena *arena)
{
    const size_t          n = problem->accessory_count, cs = problem->condition_count;
    ts_arrange_accessory *as    = TS_TAKE(arena, ts_arrange_accessory, n);
    ts_arrange_box       *bs    = TS_TAKE(arena, ts_arrange_box, problem->box_count);
    double               *least = TS_TAKE(arena, double, n *cs);
    double               *most  = TS_TAKE(arena, double, n *cs);

    if (as == NULL || bs == NULL || least == NULL || most == NULL)
        return false;
    *out             = *problem;
    out->accessories = as;
    out->boxes       = bs;
    memcpy(bs, problem->boxes, problem->box_count * sizeof *bs);
    for (size_t a = 0; a < n; a++) {
        as[a] = problem->accessories[a];
        memcpy(&least[a * cs], as[a].speed_least, cs * sizeof *least);
        memcpy(&most[a * cs], as[a].speed_most, cs * sizeof *most);
        as[a].speed_least = &least[a * cs];
        as[a].speed_most  = &most[a * cs];
    }
    for (size_t i = 0; i < count; i++) {
        const ts_demand *d = &dropped[i];
        if (d->kind <= TS_DEMAND_BODY)
            drop_of_accessory(problem, &as[d->index], &least[d->index * cs], &most[d->index * cs],
                              d);
        else if (d->kind <= TS_DEMAND_INPUT_BODY)
            drop_of_box(&bs[d->index], d);
        else
            drop_of_all(out, d);
    }
    return true;
}
