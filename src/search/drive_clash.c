/* search/drive_clash.c: what could no arrangement ever meet, as one look at the numbers tells? */
#include "search/drive_clash.h"

#include "model/source.h"
#include "quantity/quantity.h"

#include <math.h>
#include <string.h>

#define SPEED_SLACK                                                                                \
    1e-9               /* relative; more than the search forgives, so that it is never stricter    \
                        */
#define ARC_SLACK 1e-6 /* rad */
#define SLOWEST   1e-6 /* rad/s; below it a spool stands */

typedef struct teller {
    const ts_drive_question  *question;
    const ts_drive           *drive;
    const ts_arrange_problem *p;
    const ts_drive_problem   *made;
    ts_diagnostics           *list;
    ts_arena                 *arena;
    size_t                    told;
} teller;

/* ---- words ----------------------------------------------------------------------------------- */

/* "9600 rpm"; an empty text without memory, which the arena remembers. */
static const char *shown(const teller *t, double si, const char *unit, ts_kind kind)
{
    ts_buffer out;
    ts_buffer_open(&out, ts_arena_allocator(t->arena));
    ts_quantity_show(&out, si, ts_unit_named(ts_text_of(unit), kind), 5);
    const char *copy = ts_arena_copy(t->arena, out.bytes != NULL ? out.bytes : "", out.length);
    ts_buffer_close(&out);
    return copy != NULL ? copy : "";
}

static const char *rpm(const teller *t, double omega)
{
    return shown(t, omega, "rpm", TS_KIND_ROTATIONAL_SPEED);
}

static const char *deg(const teller *t, double angle)
{
    return shown(t, angle, "deg", TS_KIND_ANGLE);
}

static const char *worded(const teller *t, const char *format, ...)
    __attribute__((format(printf, 2, 3)));
static const char *worded(const teller *t, const char *format, ...)
{
    ts_buffer out;
    va_list   list;
    ts_buffer_open(&out, ts_arena_allocator(t->arena));
    va_start(list, format);
    ts_buffer_print_list(&out, format, list);
    va_end(list);
    const char *copy = ts_arena_copy(t->arena, out.bytes != NULL ? out.bytes : "", out.length);
    ts_buffer_close(&out);
    return copy != NULL ? copy : "";
}

static void tell(teller *t, ts_node node, const char *says, const char *expected)
{
    const ts_node_place *place = &t->drive->source->nodes[node];
    ts_diagnose_format(t->list,
                       &(ts_diagnostic){.code     = "demands-clash",
                                        .line     = node != 0 ? place->key_line : 0,
                                        .column   = node != 0 ? place->key_column : 0,
                                        .columns  = 1,
                                        .expected = expected},
                       "%s", says);
    t->told++;
}

/* ---- where one accessory may stand ----------------------------------------------------------- */

static const ts_accessory_freedom *freedom_of(const teller *t, size_t accessory)
{
    for (size_t i = 0; i < t->drive->arrange.accessory_count; i++)
        if (t->drive->arrange.accessories[i].accessory == (int32_t)accessory)
            return &t->drive->arrange.accessories[i];
    return NULL;
}

static const ts_extra_demand *kept_of(const teller *t, size_t accessory)
{
    for (size_t i = 0; i < t->question->extra_count; i++)
        if (t->question->extra[i].accessory == (int32_t)accessory)
            return &t->question->extra[i];
    return NULL;
}

static bool spools_clash(teller *t, size_t accessory, const ts_extra_demand *kept,
                         const ts_accessory_freedom *f)
{
    const ts_accessory *a    = &t->drive->accessories[accessory];
    const int32_t       keep = kept != NULL ? kept->spool : -1, only = f != NULL ? f->only : -1;
    const bool   essential = a->purpose.value == TS_FOR_ENGINE || a->purpose.value == TS_FOR_START;
    const size_t told      = t->told;

    if (keep >= 0 && only >= 0 && keep != only)
        tell(t, f->node,
             worded(t,
                    "`%s` is to be kept on the box of `%s`, and `arrange` puts it on that of `%s`",
                    a->name, t->drive->spools[keep].name, t->drive->spools[only].name),
             worded(t, "`box of: %s`, or not to keep it", t->drive->spools[keep].name));
    if (essential && only >= 0 && t->drive->spools[only].cranked.value != TS_YES)
        tell(t, f->node,
             worded(t,
                    "`arrange` puts `%s` on the box of `%s`, which is not cranked, and the start "
                    "needs it",
                    a->name, t->drive->spools[only].name),
             "a spool that is cranked");
    if (essential && keep >= 0 && t->drive->spools[keep].cranked.value != TS_YES)
        tell(t, a->node,
             worded(t,
                    "`%s` is to be kept on the box of `%s`, which is not cranked, and the start "
                    "needs it",
                    a->name, t->drive->spools[keep].name),
             "not to keep it there");
    return t->told > told;
}

static const char *face_of(int choice)
{
    return choice == TS_CHOOSE_FRONT ? "front" : "rear";
}

static const char *side_of(int choice)
{
    return choice == TS_CHOOSE_CLOCKWISE ? "clockwise" : "anticlockwise";
}

bool ts_drive_place_clash(const ts_drive_question *question, size_t accessory, ts_diagnostics *list,
                          ts_arena *arena)
{
    teller      t = {.question = question, .drive = question->drive, .list = list, .arena = arena};
    const char *name                 = t.drive->accessories[accessory].name;
    const ts_accessory_freedom *f    = freedom_of(&t, accessory);
    const ts_extra_demand      *kept = kept_of(&t, accessory);

    (void)spools_clash(&t, accessory, kept, f);
    if (f == NULL || kept == NULL)
        return t.told > 0;
    if (f->face.value != TS_CHOOSE_EITHER_FACE && kept->face != TS_CHOOSE_EITHER_FACE &&
        f->face.value != (int)kept->face)
        tell(&t, f->node,
             worded(&t, "`%s` is to be kept on the %s, and `arrange` puts it on the %s", name,
                    face_of((int)kept->face), face_of(f->face.value)),
             worded(&t, "`face: %s`, or not to keep it", face_of((int)kept->face)));
    if (f->side.value != TS_CHOOSE_EITHER_SIDE && kept->side != TS_CHOOSE_EITHER_SIDE &&
        f->side.value != (int)kept->side)
        tell(&t, f->node,
             worded(&t, "`%s` is to be kept on the %s side, and `arrange` puts it on the %s one",
                    name, side_of((int)kept->side), side_of(f->side.value)),
             worded(&t, "`side: %s`, or not to keep it", side_of((int)kept->side)));
    return t.told > 0;
}

/* ---- the speeds of one accessory ------------------------------------------------------------- */

static const char *condition(const teller *t, size_t c)
{
    return t->drive->conditions[c].name;
}

/* Is there a condition whose own band, with all that was asked of it, is empty? */
static bool band_clash(teller *t, size_t accessory)
{
    const ts_arrange_accessory *a    = &t->p->accessories[accessory];
    const ts_extra_demand      *kept = kept_of(t, accessory);

    for (size_t c = 0; c < t->p->condition_count; c++) {
        const double low = a->speed_least[c], high = a->speed_most[c];
        if (!(low > high * (1.0 + SPEED_SLACK)))
            continue;
        const ts_node node = t->drive->accessories[accessory].node;
        if (kept == NULL || !(kept->ratio > 0.0) || kept->spool < 0) {
            tell(t, node,
                 worded(t,
                        "with the reserve that `limits` asks for, the band of `%s` in `%s` begins "
                        "at %s and ends at %s",
                        a->name, condition(t, c), rpm(t, low), rpm(t, high)),
                 "a wider band, or a smaller reserve");
            return true;
        }
        const double n = kept->ratio * t->drive->conditions[c].speed[kept->spool].value;
        tell(t, node,
             worded(t, "`%s` is to keep its ratio, which is %s in `%s`, and there its band %s %s",
                    a->name, rpm(t, n), condition(t, c),
                    n < 0.5 * (low + high) ? "begins at" : "ends at",
                    rpm(t, n < 0.5 * (low + high) ? low : high)),
             worded(t, "a band that reaches %s, with its reserve, or not to keep it", rpm(t, n)));
        return true;
    }
    return false;
}

/* Ratios to the input shaft of a box that every band allows, and the two conditions that say so. */
typedef struct ratios {
    double least, most;
    size_t at_least, at_most;
} ratios;

static ratios ratios_on(const teller *t, const ts_arrange_accessory *a, const ts_arrange_box *box)
{
    const double *speed = box->choices[0].speed;
    ratios        r     = {.least = 0.0, .most = (double)INFINITY};

    for (size_t c = 0; c < t->p->condition_count; c++) {
        if (a->speed_least[c] / speed[c] > r.least) {
            r.least    = a->speed_least[c] / speed[c];
            r.at_least = c;
        }
        if (a->speed_most[c] / speed[c] < r.most) {
            r.most    = a->speed_most[c] / speed[c];
            r.at_most = c;
        }
    }
    return r;
}

static void tell_ratios(teller *t, size_t accessory, const ts_arrange_box *box, const ratios *r)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    const double               *speed = box->choices[0].speed;
    const ts_node               node  = t->drive->accessories[accessory].node;

    if (!(speed[r->at_least] > SLOWEST)) {
        tell(t, node,
             worded(t, "`%s` must turn at %s or more in `%s`, where the spool `%s` stands still",
                    a->name, rpm(t, a->speed_least[r->at_least]), condition(t, r->at_least),
                    box->name),
             "no lower end of its speed there, or another spool");
        return;
    }
    tell(
        t, node,
        worded(t,
               "no one ratio meets every band of `%s` on the box of `%s`: %s at least in `%s` asks "
               "for more than %s at most in `%s` allows",
               a->name, box->name, rpm(t, a->speed_least[r->at_least]), condition(t, r->at_least),
               rpm(t, a->speed_most[r->at_most]), condition(t, r->at_most)),
        worded(t, "%s or less there in `%s`, or %s or more in `%s`",
               rpm(t, r->most * speed[r->at_least]), condition(t, r->at_least),
               rpm(t, r->least * speed[r->at_most]), condition(t, r->at_most)));
}

/* Told for the box where the least is missing. */
static bool ratio_clash(teller *t, size_t accessory)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    const ts_arrange_box       *worst = NULL;
    ratios                      least = {.least = (double)INFINITY, .most = 1.0};

    for (size_t b = 0; b < t->p->box_count; b++) {
        const ts_arrange_box *box = &t->p->boxes[b];
        if ((a->boxes >> b & 1u) == 0)
            continue;
        const ratios r = ratios_on(t, a, box);
        if (!(r.least > r.most * (1.0 + SPEED_SLACK)))
            return false;
        if (worst == NULL || r.least * least.most < least.least * r.most) {
            least = r;
            worst = box;
        }
    }
    if (worst != NULL)
        tell_ratios(t, accessory, worst, &least);
    return worst != NULL;
}

/* ---- a ratio to keep ------------------------------------------------------------------------- */

/* turns: teeth of a gear on the input that would turn the plane as fast. */
static bool turns_right(const ts_arrange_problem *p, const ts_arrange_accessory *a,
                        const ts_arrange_choice *choice, double turns, double z)
{
    for (size_t c = 0; c < p->condition_count; c++) {
        const double n = choice->speed[c] * turns / z;
        if (n < a->speed_least[c] * (1.0 - SPEED_SLACK) ||
            n > a->speed_most[c] * (1.0 + SPEED_SLACK))
            return false;
    }
    return true;
}

static bool plane_has_teeth(const teller *t, const ts_arrange_accessory *a,
                            const ts_arrange_choice *choice, double turns)
{
    for (uint32_t z = t->p->z_least; z <= t->p->z_most; z++)
        if (turns_right(t->p, a, choice, turns, (double)z))
            return true;
    return false;
}

/* In the plane of the input, or in one that a step shaft drives. */
static bool has_teeth(const teller *t, const ts_arrange_accessory *a, const ts_arrange_box *box)
{
    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_arrange_choice *choice = &box->choices[i];
        const double             z_in   = (double)choice->z_in;
        if (turns_right(t->p, a, choice, z_in, z_in) || plane_has_teeth(t, a, choice, z_in))
            return true;
        for (size_t k = 0; k < box->step_count; k++)
            if (plane_has_teeth(t, a, choice,
                                z_in * (double)box->steps[k].z_step / (double)box->steps[k].z))
                return true;
    }
    return false;
}

static void kept_ratio_clash(teller *t, size_t accessory)
{
    const ts_arrange_accessory *a    = &t->p->accessories[accessory];
    const ts_extra_demand      *kept = kept_of(t, accessory);

    if (kept == NULL || !(kept->ratio > 0.0))
        return;
    for (size_t b = 0; b < t->p->box_count; b++)
        if ((a->boxes >> b & 1u) != 0 && has_teeth(t, a, &t->p->boxes[b]))
            return;
    tell(t, t->drive->accessories[accessory].node,
         worded(t,
                "`%s` is to keep its ratio, and no gear of %u to %u teeth has it, on the input, "
                "along it, or beyond one step shaft that `arrange` may use",
                a->name, (unsigned)t->p->z_least, (unsigned)t->p->z_most),
         "`teeth`, `stepped teeth` and `step teeth` that allow it, or not to keep it");
}

/* ---- room along the arc ---------------------------------------------------------------------- */

/* On either side of the input, and on both together. */
static double reach_of(const ts_arrange_box *box)
{
    return fmin(box->side_most, box->wrap_most);
}

static double arc_within(const ts_arrange_box *box)
{
    return fmin(box->wrap_most, 2.0 * box->side_most);
}

/* Where the file says how much room there is. */
static ts_node node_of_room(const teller *t, size_t b)
{
    const ts_spool_drive *drive = &t->drive->drive[t->made->tapped[b]];
    for (size_t i = 0; i < t->drive->arrange.box_count; i++) {
        const ts_box_freedom *f = &t->drive->arrange.boxes[i];
        if (f->spool != drive->spool)
            continue;
        if (t->p->boxes[b].side_most < t->p->boxes[b].wrap_most && f->side.node != 0)
            return f->side.node;
        if (f->wrap.node != 0)
            return f->wrap.node;
    }
    return drive->box.node;
}

/* "a wrap of 40 deg at least and a `side` of 20 deg at least": those that are too small. */
static const char *room_for(const teller *t, const ts_arrange_box *box, double wrap, double side)
{
    const bool narrow = wrap > box->wrap_most, one_sided = side > box->side_most;
    if (narrow && one_sided)
        return worded(t, "a wrap of %s at least with a `side` of %s at least", deg(t, wrap),
                      deg(t, side));
    return one_sided ? worded(t, "a `side` of %s at least", deg(t, side))
                     : worded(t, "a wrap of %s at least", deg(t, wrap));
}

/* Between the axes of two gears with so many teeth together; infinite: the arc is too tight. */
static double mesh_angle(const ts_arrange_box *box, double m, double teeth)
{
    const double sine = m * teeth / (4.0 * box->radius);
    return sine < 1.0 ? 2.0 * asin(sine) : (double)INFINITY;
}

static uint32_t smallest_gear(const ts_arrange_problem *p)
{
    uint32_t least = p->z_least;
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        least = p->idler_teeth[i] < least ? p->idler_teeth[i] : least;
    return least;
}

/* How near to the input its shaft can stand on a branch, with teeth that its speeds allow: in mesh
 * with the input, or beyond the smallest gear that there is, or beyond a step shaft. */
static double nearest_on(const teller *t, const ts_arrange_accessory *a, const ts_arrange_box *box)
{
    const double small = (double)smallest_gear(t->p);
    double       least = (double)INFINITY;

    for (uint32_t i = 0; i < box->choice_count; i++) {
        const ts_arrange_choice *choice = &box->choices[i];
        const double             m = t->p->modules[choice->module], z_in = (double)choice->z_in;
        for (uint32_t z = t->p->z_least; z <= t->p->z_most; z++)
            if (turns_right(t->p, a, choice, z_in, (double)z)) {
                least = fmin(least, mesh_angle(box, m, z_in + (double)z));
                least = fmin(least, mesh_angle(box, m, z_in + small) +
                                        mesh_angle(box, m, small + (double)z));
            }
        for (size_t k = 0; k < box->step_count; k++) {
            const ts_arrange_step *step  = &box->steps[k];
            const double           turns = z_in * (double)step->z_step / (double)step->z;
            if (plane_has_teeth(t, a, choice, turns) ||
                turns_right(t->p, a, choice, z_in, (double)step->z))
                least = fmin(least, mesh_angle(box, m, z_in + (double)step->z));
        }
    }
    return least;
}

static bool may_sit_on_input(const teller *t, const ts_arrange_accessory *a,
                             const ts_arrange_box *box)
{
    const uint32_t faces = a->faces & box->input_faces;
    bool           fits  = false;

    for (uint32_t i = 0; i < box->choice_count && !fits; i++) {
        const double z_in = (double)box->choices[i].z_in;
        fits              = turns_right(t->p, a, &box->choices[i], z_in, z_in);
    }
    return fits && a->side == TS_SIDE_ANY &&
           (((faces & TS_FACE_FRONT) != 0 && a->sense != -box->input_sense) ||
            ((faces & TS_FACE_REAR) != 0 && a->sense != box->input_sense));
}

/* Told for the box where the least is missing. */
static void reach_clash(teller *t, size_t accessory)
{
    const ts_arrange_accessory *a     = &t->p->accessories[accessory];
    size_t                      worst = 0;
    double                      least = (double)INFINITY;

    for (size_t b = 0; b < t->p->box_count; b++) {
        const ts_arrange_box *box = &t->p->boxes[b];
        if ((a->boxes >> b & 1u) == 0)
            continue;
        const double near = nearest_on(t, a, box);
        if (near <= reach_of(box) + ARC_SLACK || may_sit_on_input(t, a, box))
            return;
        if (near < least) {
            least = near;
            worst = b;
        }
    }
    if (isinf(least))
        return; /* no teeth at all, or no arc: which demands conflict is for the search to say */
    const ts_arrange_box *box = &t->p->boxes[worst];
    tell(t, node_of_room(t, worst),
         worded(t,
                "with the teeth that its speeds ask for, `%s` stands %s or more from the input of "
                "the box of `%s`, which reaches %s to either side",
                a->name, deg(t, least), box->name, deg(t, reach_of(box))),
         room_for(t, box, least, least));
}

/* ---- bodies ---------------------------------------------------------------------------------- */

/* Arc from the axis of the first body of a face to that of the last, at least: neighbours are never
 * nearer than the sum of their half-widths, for the arc sine is convex. */
typedef struct crowd {
    size_t count;
    double sum, first, second; /* of half-widths; the two largest stand at the ends */
} crowd;

static void add_body(const teller *t, const ts_arrange_box *box, double radius, crowd *k)
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

static void face_clash(teller *t, size_t b, uint32_t face)
{
    const ts_arrange_box *box = &t->p->boxes[b];
    crowd                 k   = {0};

    for (size_t a = 0; a < t->p->accessory_count; a++)
        if (t->p->accessories[a].boxes == 1u << b && t->p->accessories[a].faces == face)
            add_body(t, box, t->p->accessories[a].body_radius, &k);
    if (!(arc_of(&k) > arc_within(box) + ARC_SLACK))
        return;
    tell(t, node_of_room(t, b),
         worded(t,
                "the %u bodies that must stand on the %s of the box of `%s` take %s of arc at "
                "least, and it has %s",
                (unsigned)k.count, face == TS_FACE_FRONT ? "front" : "rear", box->name,
                deg(t, arc_of(&k)), deg(t, arc_within(box))),
         worded(t, "%s, or some of them on another face or box",
                room_for(t, box, arc_of(&k), 0.5 * arc_of(&k))));
}

/* Of those that must stand on one side, none is on the input itself. */
static void side_clash(teller *t, size_t b, uint32_t face, ts_arrange_side side)
{
    const ts_arrange_box *box = &t->p->boxes[b];
    crowd                 k   = {0};

    for (size_t a = 0; a < t->p->accessory_count; a++) {
        const ts_arrange_accessory *one = &t->p->accessories[a];
        if (one->boxes == 1u << b && one->faces == face && one->side == side)
            add_body(t, box, one->body_radius, &k);
    }
    if (!(arc_of(&k) > reach_of(box) + ARC_SLACK))
        return;
    tell(t, node_of_room(t, b),
         worded(t,
                "the %u bodies that must stand on the %s of the %s side of the box of `%s` take %s "
                "of arc at least, and it reaches %s there",
                (unsigned)k.count, face == TS_FACE_FRONT ? "front" : "rear",
                side == TS_SIDE_LEFT ? "clockwise" : "anticlockwise", box->name, deg(t, arc_of(&k)),
                deg(t, reach_of(box))),
         worded(t, "%s, or some of them on another face or side",
                room_for(t, box, arc_of(&k), arc_of(&k))));
}

/* Both faces together: each has two ends, and whatever is shared out between them adds up. */
static void box_clash(teller *t, size_t b)
{
    const ts_arrange_box *box  = &t->p->boxes[b];
    crowd                 k    = {0};
    double                ends = 0.0;

    for (size_t a = 0; a < t->p->accessory_count; a++)
        if (t->p->accessories[a].boxes == 1u << b)
            add_body(t, box, t->p->accessories[a].body_radius, &k);
    ends             = 2.0 * (k.first + k.second); /* no less than four of them */
    const double arc = 0.5 * (2.0 * k.sum - ends);
    if (!(arc > arc_within(box) + ARC_SLACK))
        return;
    tell(t, node_of_room(t, b),
         worded(t,
                "the bodies of the %u accessories that must stand on the box of `%s` take %s of "
                "arc at least, shared out to both faces, and it has %s",
                (unsigned)k.count, box->name, deg(t, arc), deg(t, arc_within(box))),
         worded(t, "%s, or fewer accessories", room_for(t, box, arc, 0.5 * arc)));
}

size_t ts_drive_clashes(const ts_drive_question *question, const ts_drive_problem *made,
                        ts_diagnostics *list, ts_arena *arena)
{
    teller t = {.question = question,
                .drive    = question->drive,
                .p        = &made->problem,
                .made     = made,
                .list     = list,
                .arena    = arena};

    for (size_t a = 0; a < t.p->accessory_count; a++)
        if (!band_clash(&t, a) && !ratio_clash(&t, a))
            kept_ratio_clash(&t, a);
    for (size_t a = 0; a < t.p->accessory_count && t.told == 0; a++)
        reach_clash(&t, a);
    for (size_t b = 0; b < t.p->box_count; b++) {
        const size_t told = t.told;
        face_clash(&t, b, TS_FACE_FRONT);
        face_clash(&t, b, TS_FACE_REAR);
        for (int face = TS_FACE_FRONT; t.told == told && face <= TS_FACE_REAR; face++) {
            side_clash(&t, b, (uint32_t)face, TS_SIDE_LEFT);
            side_clash(&t, b, (uint32_t)face, TS_SIDE_RIGHT);
        }
        if (t.told == told)
            box_clash(&t, b);
    }
    return t.told;
}
