/* search/clash_room.c: for which bodies and gears is there no arc, whatever the order? */
#include "search/clash_teller.h"

#include <math.h>

/* ---- room along the arc ---------------------------------------------------------------------- */

static double arc_within(const ts_arrange_box *box)
{
    return fmin(box->wrap_most, 2.0 * box->side_most);
}

/* Where the file says how much room there is. */
static ts_node node_of_room(const ts_clash_teller *t, size_t b)
{
    const ts_box_freedom *f = ts_clash_box_freedom(t, b);
    if (f != NULL && t->p->boxes[b].side_most < t->p->boxes[b].wrap_most && f->side.node != 0)
        return f->side.node;
    return f != NULL && f->wrap.node != 0 ? f->wrap.node
                                          : t->drive->drive[t->made->tapped[b]].box.node;
}

/* "a wrap of 40 deg at least and a `side` of 20 deg at least": those that are too small. */
static const char *room_for(const ts_clash_teller *t, const ts_arrange_box *box, double wrap,
                            double side)
{
    const bool narrow = wrap > box->wrap_most, one_sided = side > box->side_most;
    if (narrow && one_sided)
        return ts_clash_worded(t, "a wrap of %s at least with a `side` of %s at least",
                               ts_clash_deg(t, wrap), ts_clash_deg(t, side));
    return one_sided ? ts_clash_worded(t, "a `side` of %s at least", ts_clash_deg(t, side))
                     : ts_clash_worded(t, "a wrap of %s at least", ts_clash_deg(t, wrap));
}

/* How near to the input its shaft can stand on a branch, with teeth that its speeds allow: in mesh
 * with the input, or beyond the smallest gear that there is, or beyond a step shaft. */
static double nearest_on(const ts_clash_teller *t, const ts_arrange_accessory *a,
                         const ts_arrange_box *box)
{
    const double small = (double)ts_clash_smallest_gear(t->p);
    double       least = (double)INFINITY;

    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_arrange_choice *choice = &box->choices[i];
        const double             m = t->p->modules[choice->module], z_in = (double)choice->z_in;
        for (uint32_t z = t->p->z_least; z <= t->p->z_most; z++)
            if (ts_clash_turns_right(t->p, a, choice, z_in, (double)z)) {
                least = fmin(least, ts_clash_mesh_angle(box, m, z_in + (double)z));
                least = fmin(least, ts_clash_mesh_angle(box, m, z_in + small) +
                                        ts_clash_mesh_angle(box, m, small + (double)z));
            }
        for (size_t k = 0; k < box->step_count; k++) {
            const ts_arrange_step *step  = &box->steps[k];
            const double           turns = z_in * (double)step->z_step / (double)step->z;
            if (ts_clash_plane_has_teeth(t, a, choice, turns) ||
                ts_clash_turns_right(t->p, a, choice, z_in, (double)step->z))
                least = fmin(least, ts_clash_mesh_angle(box, m, z_in + (double)step->z));
        }
    }
    return least;
}

static bool may_sit_on_input(const ts_clash_teller *t, const ts_arrange_accessory *a,
                             const ts_arrange_box *box)
{
    const uint32_t faces = a->faces & box->input_faces;
    bool           fits  = false;

    for (uint32_t i = 0; i < box->choice_count && !fits; i++) {
        const double z_in = (double)box->choices[i].z_in;
        fits              = ts_clash_turns_right(t->p, a, &box->choices[i], z_in, z_in);
    }
    return fits && a->side == TS_SIDE_ANY &&
           (((faces & TS_FACE_FRONT) != 0 && a->sense != -box->input_sense) ||
            ((faces & TS_FACE_REAR) != 0 && a->sense != box->input_sense));
}

/* Told for the box where the least is missing. */
static void reach_clash(ts_clash_teller *t, size_t accessory)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    size_t                      worst = 0;
    double                      least = (double)INFINITY;

    for (size_t b = 0; b < t->p->box_count; b++) {
        const ts_arrange_box *box = &t->p->boxes[b];
        if ((a->boxes >> b & 1u) == 0)
            continue;
        const double near = nearest_on(t, a, box);
        if (near <= ts_clash_reach(box) + TS_CLASH_ARC_SLACK || may_sit_on_input(t, a, box))
            return;
        if (near < least) {
            least = near;
            worst = b;
        }
    }
    if (isinf(least))
        return; /* no teeth at all, or no arc: which demands conflict is for the search to say */
    const ts_arrange_box *box = &t->p->boxes[worst];
    ts_clash_tell(
        t, node_of_room(t, worst),
        ts_clash_worded(
            t,
            "with the teeth that its speeds ask for, `%s` stands %s or more from the input of "
            "the box of `%s`, which reaches %s to either side",
            a->name, ts_clash_deg(t, least), box->name, ts_clash_deg(t, ts_clash_reach(box))),
        room_for(t, box, least, least));
}

/* ---- bodies ---------------------------------------------------------------------------------- */

/* Arc from the axis of the first body of a face to that of the last, at least: neighbours are never
 * nearer than the sum of their half-widths, for the arc sine is convex. */
typedef struct crowd {
    size_t count;
    double sum, first, second; /* of half-widths; the two largest stand at the ends */
} crowd;

static void add_body(const ts_clash_teller *t, const ts_arrange_box *box, double radius, crowd *k)
{
    const bool   chord = t->p->clearance == TS_CLEARANCE_CHORD;
    const double sine  = (radius + 0.5 * t->p->gap) / (chord ? 2.0 * box->radius : box->radius);
    const double half  = (chord ? 2.0 : 1.0) * asin(fmin(sine, 1.0));

    k->count++;
    k->sum += half;
    if (half > k->first) {
        k->second = k->first;
        k->first  = half;
    } else {
        k->second = fmax(k->second, half);
    }
}

static double arc_of(const crowd *k)
{
    return k->count < 2 ? 0.0 : 2.0 * k->sum - k->first - k->second;
}

static void face_clash(ts_clash_teller *t, size_t b, uint32_t face)
{
    const ts_arrange_box *box = &t->p->boxes[b];
    crowd                 k   = {0};

    for (size_t a = 0; a < t->p->accessory_count; a++)
        if (t->p->accessories[a].boxes == 1u << b && t->p->accessories[a].faces == face)
            add_body(t, box, t->p->accessories[a].body_radius, &k);
    if (!(arc_of(&k) > arc_within(box) + TS_CLASH_ARC_SLACK))
        return;
    ts_clash_tell(
        t, node_of_room(t, b),
        ts_clash_worded(
            t,
            "the %u bodies that must stand on the %s of the box of `%s` take %s of arc at "
            "least, and it has %s",
            (unsigned)k.count, face == TS_FACE_FRONT ? "front" : "rear", box->name,
            ts_clash_deg(t, arc_of(&k)), ts_clash_deg(t, arc_within(box))),
        ts_clash_worded(t, "%s, or some of them on another face or box",
                        room_for(t, box, arc_of(&k), 0.5 * arc_of(&k))));
}

/* Of those that must stand on one side, none is on the input itself. */
static void side_clash(ts_clash_teller *t, size_t b, uint32_t face, ts_arrange_side side)
{
    const ts_arrange_box *box = &t->p->boxes[b];
    crowd                 k   = {0};

    for (size_t a = 0; a < t->p->accessory_count; a++) {
        const ts_arrange_accessory *one = &t->p->accessories[a];
        if (one->boxes == 1u << b && one->faces == face && one->side == side)
            add_body(t, box, one->body_radius, &k);
    }
    if (!(arc_of(&k) > ts_clash_reach(box) + TS_CLASH_ARC_SLACK))
        return;
    ts_clash_tell(
        t, node_of_room(t, b),
        ts_clash_worded(
            t,
            "the %u bodies that must stand on the %s of the %s side of the box of `%s` take %s "
            "of arc at least, and it reaches %s there",
            (unsigned)k.count, face == TS_FACE_FRONT ? "front" : "rear",
            side == TS_SIDE_LEFT ? "clockwise" : "anticlockwise", box->name,
            ts_clash_deg(t, arc_of(&k)), ts_clash_deg(t, ts_clash_reach(box))),
        ts_clash_worded(t, "%s, or some of them on another face or side",
                        room_for(t, box, arc_of(&k), arc_of(&k))));
}

/* Both faces together: each has two ends, and whatever is shared out between them adds up. */
static void box_clash(ts_clash_teller *t, size_t b)
{
    const ts_arrange_box *box  = &t->p->boxes[b];
    crowd                 k    = {0};
    double                ends = 0.0;

    for (size_t a = 0; a < t->p->accessory_count; a++)
        if (t->p->accessories[a].boxes == 1u << b)
            add_body(t, box, t->p->accessories[a].body_radius, &k);
    ends             = 2.0 * (k.first + k.second); /* no less than four of them */
    const double arc = 0.5 * (2.0 * k.sum - ends);
    if (!(arc > arc_within(box) + TS_CLASH_ARC_SLACK))
        return;
    ts_clash_tell(
        t, node_of_room(t, b),
        ts_clash_worded(
            t,
            "the bodies of the %u accessories that must stand on the box of `%s` take %s of "
            "arc at least, shared out to both faces, and it has %s",
            (unsigned)k.count, box->name, ts_clash_deg(t, arc), ts_clash_deg(t, arc_within(box))),
        ts_clash_worded(t, "%s, or fewer accessories", room_for(t, box, arc, 0.5 * arc)));
}

void ts_clash_room(ts_clash_teller *t)
{
    for (size_t a = 0; a < t->p->accessory_count && t->told == 0; a++)
        reach_clash(t, a);
    for (size_t b = 0; b < t->p->box_count; b++) {
        const size_t told = t->told;
        face_clash(t, b, TS_FACE_FRONT);
        face_clash(t, b, TS_FACE_REAR);
        for (int face = TS_FACE_FRONT; t->told == told && face <= TS_FACE_REAR; face++) {
            side_clash(t, b, (uint32_t)face, TS_SIDE_LEFT);
            side_clash(t, b, (uint32_t)face, TS_SIDE_RIGHT);
        }
        if (t->told == told)
            box_clash(t, b);
    }
}
