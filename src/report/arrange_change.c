/* What would an answer change against what stands in the file? */
#include "report/arrange_report.h"

#include <math.h>

/* Less than this is no difference of mass, kg, or of arc, rad: as arrangements are told apart. */
#define SAME_MASS 1e-9
#define SAME_WRAP 1e-9

/* Where an accessory stands; side 0 clockwise, 1 anticlockwise, 2 the input. */
typedef struct where {
    bool     found, rear;
    size_t   box;
    int      side;
    uint32_t place; /* from the input outwards, from 1 */
    uint32_t z;
    double   turns; /* teeth of a gear on the input that would turn its plane as fast */
} where;

typedef struct changes {
    const ts_arrange_told *told;
    const ts_page         *page;
    const ts_arrangement  *found;
    ts_buffer             *out;
    size_t                 count;
} changes;

/* Further sentences stand on lines of their own. */
static ts_buffer *begin(changes *c)
{
    if (c->count++ > 0)
        ts_buffer_add(c->out, "\n");
    return c->out;
}

/* ---- where it stands ------------------------------------------------------------------------- */

static void look_at(where *w, const ts_arranged_shaft *s, int8_t accessory, where here)
{
    if (w->found || (s->front != accessory && s->rear != accessory))
        return;
    *w       = here;
    w->found = true;
    w->rear  = s->rear == accessory;
    w->z     = s->z;
}

static where find(const ts_arrange_problem *p, const ts_arrangement *a, int8_t accessory)
{
    where w = {0};
    for (size_t b = 0; b < p->box_count; b++) {
        const ts_arranged_box *box = &a->boxes[b];
        if (!box->present)
            continue;
        look_at(&w, &box->input, accessory,
                (where){.box = b, .side = 2, .turns = (double)box->input.z});
        for (int side = 0; side < 2; side++) {
            double turns = (double)box->input.z;
            for (uint32_t i = 0; i < box->branches[side].count; i++) {
                const ts_arranged_shaft *s = &box->branches[side].shafts[i];
                look_at(&w, s, accessory,
                        (where){.box = b, .side = side, .place = i + 1, .turns = turns});
                if (s->z_step > 0)
                    turns *= (double)s->z_step / (double)s->z;
            }
        }
    }
    return w;
}

static void add_place(const changes *c, const where *w, bool box)
{
    static const char *const sides[] = {"clockwise", "anticlockwise"};
    if (w->side == 2)
        ts_buffer_add(c->out, "the input");
    else
        ts_buffer_print(c->out, "place %u %s", (unsigned)w->place, sides[w->side]);
    if (box)
        ts_buffer_print(c->out, " of the %s box", c->told->problem->problem.boxes[w->box].name);
}

static const char *face_of(const where *w)
{
    return w->rear ? "rear" : "front";
}

/* ---- one accessory --------------------------------------------------------------------------- */

static void add_speeds(const changes *c, const where *before, const where *after)
{
    const ts_arranged_box   *box = &c->found->boxes[after->box];
    const ts_arrange_choice *choice =
        &c->told->problem->problem.boxes[after->box].choices[box->choice];
    const double then =
        ts_arranged_speed(c->told, c->told->problem->speed[before->box], before->z, before->turns);
    const double now = ts_arranged_speed(c->told, choice->speed, after->z, after->turns);
    if (before->z != after->z)
        ts_buffer_print(c->out, "; %u -> %u teeth", (unsigned)before->z, (unsigned)after->z);
    if (!(fabs(now - then) > 1e-9 * then))
        return;
    ts_buffer_add(c->out, before->z != after->z ? ", at most " : "; at most ");
    ts_page_speed_text(c->page, c->out, then);
    ts_buffer_add(c->out, " -> ");
    ts_page_speed_text(c->page, c->out, now);
    ts_buffer_print(c->out, " %s", ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, c->page->units)->name);
}

static void comes_in(changes *c, const char *name, const where *after)
{
    ts_buffer_print(begin(c), "%s comes in: ", name);
    add_place(c, after, c->told->problem->problem.box_count > 1);
    ts_buffer_print(c->out, ", %s, %u teeth", face_of(after), (unsigned)after->z);
}

/* False when nothing of it changes. */
static bool accessory(changes *c, size_t index)
{
    const ts_arrange_problem *p      = &c->told->problem->problem;
    const char               *name   = p->accessories[index].name;
    const where               before = find(p, &c->told->present->shafts, (int8_t)index);
    const where               after  = find(p, c->found, (int8_t)index);
    if (!after.found)
        return false;
    if (!before.found) {
        comes_in(c, name, &after);
        return true;
    }
    const bool box   = before.box != after.box;
    const bool moves = box || before.side != after.side || before.place != after.place;
    if (!moves && before.rear == after.rear && before.z == after.z && before.turns == after.turns)
        return false;
    ts_buffer_print(begin(c), "%s ", name);
    if (moves) {
        ts_buffer_add(c->out, "goes from ");
        add_place(c, &before, box);
        ts_buffer_add(c->out, " to ");
        add_place(c, &after, box);
    } else {
        ts_buffer_add(c->out, "stays at ");
        add_place(c, &after, false);
    }
    if (before.rear != after.rear)
        ts_buffer_print(c->out, ", from %s to %s", face_of(&before), face_of(&after));
    add_speeds(c, &before, &after);
    return true;
}

/* ---- the way of the start -------------------------------------------------------------------- */

static bool drives(const ts_arrange_problem *p, size_t index)
{
    for (size_t c = 0; c < p->condition_count; c++)
        if (p->accessories[index].power[c] < 0.0)
            return true;
    return false;
}

static void add_meshes(changes *c, uint32_t count)
{
    if (count == 0)
        ts_buffer_add(c->out, "no mesh");
    else
        ts_buffer_print(c->out, "%u mesh%s", (unsigned)count, count == 1 ? "" : "es");
}

/* Whoever drives does so through every mesh between his shaft and the input. */
static void start_path(changes *c, size_t index)
{
    const ts_arrange_problem *p      = &c->told->problem->problem;
    const where               before = find(p, &c->told->present->shafts, (int8_t)index);
    const where               after  = find(p, c->found, (int8_t)index);
    if (!drives(p, index) || !before.found || !after.found)
        return;
    ts_buffer_print(begin(c), "the start by %s passes ", p->accessories[index].name);
    add_meshes(c, after.place);
    ts_buffer_print(c->out, " of the box%s", before.place == after.place ? ", as it does now" : "");
    if (before.place == after.place)
        return;
    ts_buffer_add(c->out, " instead of ");
    add_meshes(c, before.place);
}

/* ---- what carries nothing -------------------------------------------------------------------- */

static bool is_idler(const ts_arranged_shaft *s)
{
    return s->front < 0 && s->rear < 0 && s->z_step == 0;
}

static void count_shafts(const ts_arrangement *a, size_t boxes, size_t *idlers, size_t *steps)
{
    *idlers = *steps = 0;
    for (size_t b = 0; b < boxes; b++)
        for (int side = 0; a->boxes[b].present && side < 2; side++)
            for (uint32_t i = 0; i < a->boxes[b].branches[side].count; i++) {
                *idlers += is_idler(&a->boxes[b].branches[side].shafts[i]) ? 1 : 0;
                *steps += a->boxes[b].branches[side].shafts[i].z_step > 0 ? 1 : 0;
            }
}

/* Idlers and step shafts that stay where they are, with other teeth. */
static void same_places(changes *c, size_t box, int side)
{
    const ts_arranged_branch *before = &c->told->present->shafts.boxes[box].branches[side];
    const ts_arranged_branch *after  = &c->found->boxes[box].branches[side];
    for (uint32_t i = 0; i < before->count && i < after->count; i++) {
        const ts_arranged_shaft *x = &before->shafts[i], *y = &after->shafts[i];
        const where              here = {.box = box, .side = side, .place = i + 1};
        if (is_idler(x) && is_idler(y) && x->z != y->z) {
            ts_buffer_add(begin(c), "the idler at ");
            add_place(c, &here, c->told->problem->problem.box_count > 1);
            ts_buffer_print(c->out, ": %u -> %u teeth", (unsigned)x->z, (unsigned)y->z);
        }
        if (x->z_step > 0 && y->z_step > 0 && (x->z_step != y->z_step || x->z != y->z)) {
            ts_buffer_add(begin(c), "the step shaft at ");
            add_place(c, &here, c->told->problem->problem.box_count > 1);
            ts_buffer_print(c->out, ": %u and %u -> %u and %u teeth", (unsigned)x->z,
                            (unsigned)x->z_step, (unsigned)y->z, (unsigned)y->z_step);
        }
    }
}

/* ---- boxes ----------------------------------------------------------------------------------- */

static bool stands_in_both(const changes *c, size_t box)
{
    return c->told->present->shafts.boxes[box].present && c->found->boxes[box].present;
}

static double module_of(const ts_arrange_told *told, const ts_arrange_problem *p, size_t box,
                        const ts_arrangement *a)
{
    return told->problem->m_n[p->boxes[box].choices[a->boxes[box].choice].module];
}

static void input_of(changes *c, size_t box)
{
    const ts_present *present = c->told->present;
    const char       *name    = c->told->problem->problem.boxes[box].name;
    const uint32_t    x = present->shafts.boxes[box].input.z, y = c->found->boxes[box].input.z;
    const double      before = module_of(c->told, &present->problem, box, &present->shafts);
    const double      after  = module_of(c->told, &c->told->problem->problem, box, c->found);
    if (x != y)
        ts_buffer_print(begin(c), "the input of the %s box: %u -> %u teeth", name, (unsigned)x,
                        (unsigned)y);
    if (!isfinite(present->mass) || fabs(before - after) < 1e-9)
        return;
    ts_buffer_print(begin(c), "the gears of the %s box: module ", name);
    ts_page_value_text(c->page, c->out, before, TS_KIND_LENGTH, 4);
    ts_buffer_add(c->out, " -> ");
    ts_page_value_text(c->page, c->out, after, TS_KIND_LENGTH, 4);
    ts_buffer_print(c->out, " %s", ts_kind_shown(TS_KIND_LENGTH, c->page->units)->name);
}

static void take_off_of(changes *c, size_t box)
{
    const ts_arrange_box *frame = &c->told->problem->problem.boxes[box];
    ts_take_off_taken     t;
    if (!ts_arrange_take_off(c->told, box, frame->choices[c->found->boxes[box].choice].take_off,
                             &t))
        return;
    ts_buffer_print(begin(c), "between the %s spool and its box: ", frame->name);
    ts_arrange_take_off_says(c->page, &t, c->out);
    ts_buffer_add(c->out, t.more < 0.0 ? ", -" : ", +");
    ts_page_value_text(c->page, c->out, fabs(t.more), TS_KIND_MASS, 3);
    ts_buffer_print(c->out, " %s", ts_kind_shown(TS_KIND_MASS, c->page->units)->name);
}

static void shafts_elsewhere(changes *c)
{
    for (size_t b = 0; b < c->told->problem->problem.box_count; b++) {
        if (!stands_in_both(c, b))
            continue;
        take_off_of(c, b);
        input_of(c, b);
        for (int side = 0; side < 2; side++)
            same_places(c, b, side);
    }
}

/* ---- what it comes to ------------------------------------------------------------------------ */

static void add_count(changes *c, size_t before, size_t after, const char *what)
{
    const size_t by = before < after ? after - before : before - after;
    if (by > 0)
        ts_buffer_print(c->out, "; %zu %s%s %s", by, what, by == 1 ? "" : "s",
                        before < after ? "more" : "less");
}

static void add_wrap(changes *c, size_t box)
{
    const ts_arrange_box *frame = &c->told->problem->problem.boxes[box];
    const double more = c->found->boxes[box].wrap - c->told->present->shafts.boxes[box].wrap;
    if (!isfinite(c->told->present->mass) || !(fabs(more) > SAME_WRAP))
        return;
    ts_buffer_add(c->out, "; ");
    if (c->told->problem->problem.box_count > 1)
        ts_buffer_print(c->out, "%s box ", frame->name);
    ts_page_value_text(c->page, c->out, fabs(more), TS_KIND_ANGLE, 3);
    ts_buffer_print(c->out, " %s (", ts_kind_shown(TS_KIND_ANGLE, c->page->units)->name);
    ts_page_value_text(c->page, c->out, fabs(more) * frame->radius, TS_KIND_LENGTH, 3);
    ts_buffer_print(c->out, " %s of arc) %s wrap",
                    ts_kind_shown(TS_KIND_LENGTH, c->page->units)->name,
                    more > 0.0 ? "more" : "less");
}

static void add_mass(const changes *c, double now)
{
    const double then = c->told->present->mass;
    if (!isfinite(then)) {
        ts_buffer_add(c->out, "its mass there is not known");
        return;
    }
    if (fabs(now - then) <= SAME_MASS) {
        ts_buffer_add(c->out, "no mass");
        return;
    }
    ts_buffer_add(c->out, now > then ? "+" : "-");
    ts_page_value_text(c->page, c->out, fabs(now - then), TS_KIND_MASS, 3);
    ts_buffer_print(c->out, " %s (from ", ts_kind_shown(TS_KIND_MASS, c->page->units)->name);
    ts_page_value_text(c->page, c->out, then, TS_KIND_MASS, 5);
    ts_buffer_add(c->out, ")");
}

static void totals(changes *c, double weighs)
{
    const size_t boxes = c->told->problem->problem.box_count;
    const size_t off   = c->told->present->pads_off;
    size_t       idlers_before, idlers_after, steps_before, steps_after;
    begin(c);
    add_mass(c, weighs);
    for (size_t b = 0; b < boxes; b++) {
        const bool now = c->found->boxes[b].present;
        if (stands_in_both(c, b))
            add_wrap(c, b);
        else if (now != c->told->present->shafts.boxes[b].present)
            ts_buffer_print(c->out, "; the %s box %s", c->told->problem->problem.boxes[b].name,
                            now ? "comes in" : "carries nothing any more");
    }
    count_shafts(&c->told->present->shafts, boxes, &idlers_before, &steps_before);
    count_shafts(c->found, boxes, &idlers_after, &steps_after);
    add_count(c, idlers_before, idlers_after, "idler");
    add_count(c, steps_before, steps_after, "step shaft");
    if (off > 0)
        ts_buffer_print(c->out, "; %zu cover%s or hand-turning pad%s on a branch left out", off,
                        off == 1 ? "" : "s", off == 1 ? "" : "s");
}

/* ---- all ------------------------------------------------------------------------------------- */

size_t ts_arrange_changes(const ts_arrange_told *told, const ts_page *page,
                          const ts_arrangement *found, double weighs, ts_buffer *out)
{
    changes      c     = {.told = told, .page = page, .found = found, .out = out};
    const size_t count = told->problem->problem.accessory_count;
    size_t       stay  = 0;
    if (told->present == NULL || !told->present->stands || told->present->beyond != NULL)
        return 0;
    totals(&c, weighs);
    for (size_t i = 0; i < count; i++)
        stay += accessory(&c, i) ? 0 : 1;
    if (stay == count)
        ts_buffer_add(begin(&c), "every accessory stays as it is");
    else if (stay > 0)
        ts_buffer_print(begin(&c), "%zu other accessor%s as %s", stay,
                        stay == 1 ? "y stays" : "ies stay", stay == 1 ? "it is" : "they are");
    shafts_elsewhere(&c);
    for (size_t i = 0; stay < count && i < count; i++)
        start_path(&c, i);
    return c.count;
}
