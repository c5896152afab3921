/* search/clash_choice.c: where is nothing to choose from? */
#include "search/clash_teller.h"
#include "search/drive_cowl.h"

#include <math.h>

/* ---- an accessory without teeth -------------------------------------------------------------- */

/* The number of teeth nearest to those that gears may have, on which it turns within its bands
 * beside some input gear of a box; z 0: none does. */
typedef struct nearest {
    size_t   box;
    uint32_t z, z_in, apart;
} nearest;

static uint32_t apart(const ts_arrange_problem *p, uint32_t z)
{
    return z < p->z_least ? p->z_least - z : z > p->z_most ? z - p->z_most : 0;
}

static void look_in_box(const ts_clash_teller *t, const ts_arrange_accessory *a, size_t b,
                        nearest *best)
{
    const ts_arrange_box *box = &t->p->boxes[b];
    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_arrange_choice *choice = &box->choices[i];
        for (uint32_t z = 1; z <= TS_ARRANGE_TEETH; z++)
            if (ts_clash_turns_right(t->p, a, choice, (double)choice->z_in, (double)z) &&
                (best->z == 0 || apart(t->p, z) < best->apart))
                *best = (nearest){b, z, choice->z_in, apart(t->p, z)};
    }
}

static const char *number(const ts_clash_teller *t, double value)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(t->arena));
    ts_buffer_fixed(&out, value, 2);
    const char *copy = ts_arena_copy(t->arena, out.bytes != NULL ? out.bytes : "", out.length);
    ts_buffer_close(&out);
    return copy != NULL ? copy : "";
}

/* Teeth with which an accessory would turn within its bands beside an input gear of a box. */
typedef struct wanted {
    uint32_t z_in;
    double   least, most; /* most infinite: it may be as slow as one likes */
} wanted;

static bool leaves_more(wanted here, wanted best)
{
    const bool can = here.least <= TS_ARRANGE_TEETH, could = best.least <= TS_ARRANGE_TEETH;
    if (can != could)
        return can;
    return can ? here.most - here.least > best.most - best.least : here.least < best.least;
}

/* The input gear that leaves most between least and most; if all ask for more teeth than any gear
 * has, the one beside which least is least. */
static wanted widest(const ts_clash_teller *t, const ts_arrange_accessory *a,
                     const ts_arrange_box *box)
{
    wanted best = {0};
    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_clash_window r    = ts_clash_ratios(t, a, &box->choices[i]);
        const double          z_in = (double)box->choices[i].z_in;
        const wanted          here = {box->choices[i].z_in, z_in / r.most,
                             r.least > 0.0 ? z_in / r.least : (double)INFINITY};
        if (i == 0 || leaves_more(here, best))
            best = here;
    }
    return best;
}

static void tell_no_whole_number(ts_clash_teller *t, size_t accessory, size_t b)
{
    const ts_arrange_accessory *a    = &t->p->accessories[accessory];
    const ts_arrange_box       *box  = &t->p->boxes[b];
    const wanted                best = widest(t, a, box);
    const ts_node               node = t->drive->accessories[accessory].node;

    if (isinf(best.least))
        ts_clash_tell(
            t, node,
            ts_clash_worded(t, "a band of `%s` ends at rest, and the box of `%s` turns there",
                            a->name, box->name),
            "a band that reaches higher");
    else if (best.least > TS_ARRANGE_TEETH)
        ts_clash_tell(t, node,
                      ts_clash_worded(t,
                                      "`%s` turns within its bands in the box of `%s` on gears of "
                                      "%s teeth or more, beside the best input gear that it may "
                                      "have, of %u; no gear has more than %u",
                                      a->name, box->name, number(t, best.least),
                                      (unsigned)best.z_in, (unsigned)TS_ARRANGE_TEETH),
                      "fewer `input teeth`, or a band that reaches higher");
    else
        ts_clash_tell(t, node,
                      ts_clash_worded(t,
                                      "no whole number of teeth turns `%s` within its bands in the "
                                      "box of `%s`, beside any input gear that it may have: beside "
                                      "that of %u, which leaves most, they would be from %s to %s",
                                      a->name, box->name, (unsigned)best.z_in,
                                      number(t, best.least), number(t, best.most)),
                      "other `input teeth`, or a wider band");
}

/* Where teeth are asked for that it cannot have, the list of teeth is what would have to give. */
static void teeth_clash(ts_clash_teller *t, size_t accessory)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    const ts_extra_demand      *kept  = ts_clash_kept(t, accessory);
    const ts_tally_span        *teeth = &t->drive->arrange.teeth;
    nearest                     best  = {0};
    size_t                      any   = t->p->box_count;

    if (kept != NULL && kept->ratio > 0.0)
        return; /* is told with its ratio */
    for (size_t b = 0; b < t->p->box_count; b++) {
        if ((a->boxes >> b & 1u) == 0)
            continue;
        if (ts_clash_has_teeth(t, a, &t->p->boxes[b]))
            return;
        look_in_box(t, a, b, &best);
        any = b;
    }
    if (any == t->p->box_count)
        return;
    if (best.z == 0) {
        tell_no_whole_number(t, accessory, any);
        return;
    }
    ts_clash_tell(
        t, teeth->standing == TS_GIVEN ? teeth->node : t->drive->accessories[accessory].node,
        ts_clash_worded(t,
                        "`%s` turns within its bands on no gear of %u to %u teeth in the "
                        "box of `%s`; beside an input gear of %u it does with %u",
                        a->name, (unsigned)t->p->z_least, (unsigned)t->p->z_most,
                        t->p->boxes[best.box].name, (unsigned)best.z_in, (unsigned)best.z),
        ts_clash_worded(t, "`teeth` that reach %u, or other `input teeth` or bands",
                        (unsigned)best.z));
}

/* ---- a box without gears --------------------------------------------------------------------- */

static size_t must_stand_on(const ts_clash_teller *t, size_t b)
{
    size_t count = 0;
    for (size_t a = 0; a < t->p->accessory_count; a++)
        count += t->p->accessories[a].boxes == 1u << b ? 1 : 0;
    return count;
}

static ts_node node_of_choices(const ts_clash_teller *t, size_t b)
{
    const ts_box_freedom *f = ts_clash_box_freedom(t, b);
    if (f != NULL && f->modules.node != 0)
        return f->modules.node;
    return f != NULL && f->input_teeth.node != 0 ? f->input_teeth.node
                                                 : t->drive->drive[t->made->tapped[b]].box.node;
}

static double diameter(const ts_clash_teller *t, const ts_arrange_choice *choice)
{
    return t->p->modules[choice->module] * (double)choice->z_in;
}

/* No input gear may be as wide as the narrowest face. */
static void width_clash(ts_clash_teller *t, size_t b)
{
    const ts_arrange_box *box  = &t->p->boxes[b];
    double                most = 0.0;
    for (uint32_t i = 0; i < box->choice_count; i++)
        most = fmax(most, t->p->width_over_diameter * diameter(t, &box->choices[i]));
    if (most * (1.0 + 1e-12) >= t->p->width_least)
        return;
    ts_clash_tell(
        t, t->drive->arrange.least_face.node,
        ts_clash_worded(t,
                        "the input gear of the box of `%s` may be %s wide at most, by `face to "
                        "diameter` of `limits`, and `least face` asks for %s",
                        box->name, ts_clash_mm(t, most), ts_clash_mm(t, t->p->width_least)),
        ts_clash_worded(t, "`least face` of %s or less, or larger `modules` or `input teeth`",
                        ts_clash_mm(t, most)));
}

/* Every input gear reaches into the engine casing. */
static void casing_clash(ts_clash_teller *t, size_t b)
{
    const ts_arrange_box    *box   = &t->p->boxes[b];
    const ts_arrange_choice *least = &box->choices[0];
    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_arrange_choice *choice = &box->choices[i];
        if (!ts_drive_gear_meets_casing(t->drive, t->made->tapped[b], t->p->modules[choice->module],
                                        t->made->m_n[choice->module], choice->z_in))
            return;
        if (diameter(t, choice) < diameter(t, least))
            least = choice;
    }
    ts_clash_tell(t, node_of_choices(t, b),
                  ts_clash_worded(t,
                                  "the input gear of the box of `%s` reaches into the engine "
                                  "casing, or nearer than `body gap`, with every module and number "
                                  "of teeth that it may have: the smallest has %u teeth of %s",
                                  box->name, (unsigned)least->z_in,
                                  ts_clash_mm(t, t->made->m_n[least->module])),
                  "smaller `modules` or `input teeth`, or an arc of a larger radius");
}

/* No two gears stand beside each other on the arc, and not all accessories have room on the input.
 */
static void mesh_clash(ts_clash_teller *t, size_t b)
{
    const ts_arrange_box *box   = &t->p->boxes[b];
    const double          small = (double)ts_clash_smallest_gear(t->p);
    for (uint32_t i = 0; i < box->choice_count; i++)
        if (isfinite(ts_clash_mesh_angle(box, t->p->modules[box->choices[i].module],
                                         (double)box->choices[i].z_in + small)))
            return;
    if (must_stand_on(t, b) <= 2)
        return;
    ts_clash_tell(
        t, node_of_choices(t, b),
        ts_clash_worded(t,
                        "no gear has room beside the input gear of the box of `%s`: their "
                        "axes would be further apart than the arc is wide",
                        box->name),
        "smaller `modules` or `input teeth`, or an arc of a larger radius");
}

void ts_clash_choice(ts_clash_teller *t)
{
    const size_t told = t->told;
    for (size_t b = 0; b < t->p->box_count; b++) {
        if (t->p->boxes[b].choice_count == 0 || must_stand_on(t, b) == 0)
            continue;
        width_clash(t, b);
        casing_clash(t, b);
        if (t->told == told)
            mesh_clash(t, b);
    }
    if (t->told > 0)
        return; /* what has no box or no band has no teeth either */
    for (size_t a = 0; a < t->p->accessory_count; a++)
        teeth_clash(t, a);
}
