/* search/arrange_verify.c: is this arrangement really one, and as light as it says? */
#include "search/arrange_verify.h"

#include <math.h>

#define SLACK 1e-9

enum { ROW_MOST = TS_ARRANGE_ROW, CONDITIONS_MOST = 64 };

typedef struct placed {
    int32_t  front, rear;
    uint32_t z;
    double   width;
    uint32_t z_step; /* teeth of its second gear, which meshes outwards; 0: it has none */
    double   step_width;
    uint32_t module;     /* of its gear that meshes inwards          */
    uint32_t out_module; /* of the one that meshes outwards          */
    uint32_t step;       /* row of the step shaft inwards of it; 0: none */
    int      depth;      /* meshes from the input */
    int      way;        /* -1 left, 0 input, +1 right */
    double   angle;      /* from the input, left negative */
    uint32_t outboard;   /* accessories here and beyond; at the input: none */
} placed;

typedef struct layout {
    const ts_arrange_problem *p;
    const ts_arrange_box     *frame;
    const ts_arrange_choice  *choice;
    uint32_t                  box;
    size_t                    count;
    placed row[ROW_MOST]; /* the input, then left outwards, then right outwards */
} layout;

static uint32_t bits_of(const placed *s)
{
    return (s->front >= 0 ? 1u << s->front : 0) | (s->rear >= 0 ? 1u << s->rear : 0);
}

static placed *inner_of(layout *l, size_t i)
{
    return l->row[i].depth == 1 ? &l->row[0] : &l->row[i - 1];
}

/* Of its gear that meshes outwards. */
static uint32_t outer_teeth(const placed *s)
{
    return s->z_step > 0 ? s->z_step : s->z;
}

/* Teeth of a gear on the input shaft that would turn this one's mesh inwards as fast. */
static double teeth_that_turn(const layout *l, const placed *s)
{
    const double z_in = (double)l->choice->z_in;
    return s->step == 0 ? z_in : z_in * (double)l->row[s->step].z_step / (double)l->row[s->step].z;
}

/* Does the first gear of a step shaft cover an axis so far away? */
static bool runs_over(const layout *l, const placed *s, double apart)
{
    const double tip = l->p->modules[s->module] * (0.5 * (double)s->z + l->frame->addendum);
    return s->z_step > 0 && apart < tip + l->frame->step_gap - SLACK;
}

static ts_arrange_rule lay(layout *l, const ts_arranged_box *b)
{
    l->row[0] = (placed){
        .front = b->input.front, .rear = b->input.rear, .z = b->input.z, .width = b->input.width};
    l->row[0].module = l->row[0].out_module = l->choice->module;
    l->count                                = 1;
    for (int side = 0; side < 2; side++) {
        const ts_arranged_branch *branch = &b->branches[side];
        if (branch->count > TS_ARRANGE_SHAFTS)
            return TS_RULE_IDLERS;
        for (uint32_t i = 0; i < branch->count; i++) {
            const ts_arranged_shaft *from = &branch->shafts[i];
            placed                  *s    = &l->row[l->count++];
            *s                            = (placed){.front      = from->front,
                                                     .rear       = from->rear,
                                                     .z          = from->z,
                                                     .width      = from->width,
                                                     .z_step     = from->z_step,
                                                     .step_width = from->step_width,
                                                     .depth      = (int)i + 1,
                                                     .way        = side == 0 ? -1 : 1};
            const placed *inner           = inner_of(l, l->count - 1);
            s->module                     = inner->out_module;
            s->out_module                 = from->z_step > 0 ? from->step_module : s->module;
            s->step = inner->z_step > 0 ? (uint32_t)(inner - l->row) : inner->step;
            if (s->out_module >= l->p->module_count)
                return TS_RULE_STEP;
            const double m = l->p->modules[s->module];
            const double half =
                0.5 * m * (double)(s->z + outer_teeth(inner)) / (2.0 * l->frame->radius);
            if (runs_over(l, inner, m * 0.5 * (double)(s->z + outer_teeth(inner))))
                return TS_RULE_STEP;
            s->angle = inner->angle + (double)s->way * 2.0 * asin(half);
        }
    }
    for (size_t i = l->count - 1; i > 0; i--) {
        placed *s = &l->row[i];
        s->outboard |= bits_of(s);
        if (s->depth > 1)
            inner_of(l, i)->outboard |= s->outboard;
    }
    return TS_RULE_NONE;
}

/* ---- rules ------------------------------------------------------------------------------------
 */

static ts_arrange_rule check_pad(const layout *l, const placed *s, int accessory, bool front)
{
    const ts_arrange_accessory *a     = &l->p->accessories[accessory];
    const uint32_t              face  = front ? TS_FACE_FRONT : TS_FACE_REAR;
    const int                   sense = (s->depth % 2 == 0 ? 1 : -1) * l->frame->input_sense;

    if ((a->boxes >> l->box & 1u) == 0)
        return TS_RULE_PLACED;
    if ((a->faces & face) == 0 || (s->way == 0 && (l->frame->input_faces & face) == 0))
        return TS_RULE_FACE;
    if ((a->side == TS_SIDE_LEFT && s->way != -1) || (a->side == TS_SIDE_RIGHT && s->way != 1))
        return TS_RULE_SIDE;
    if ((a->input && s->way != 0) || (a->with & ~bits_of(s)) != 0)
        return TS_RULE_SIDE;
    if (a->sense != 0 && a->sense != (front ? sense : -sense))
        return TS_RULE_SENSE;
    for (size_t c = 0; c < l->p->condition_count; c++) {
        const double n = l->choice->speed[c] * teeth_that_turn(l, s) / (double)s->z;
        if (!(n >= a->speed_least[c] - 1e-12 * fabs(a->speed_least[c])) ||
            !(n <= a->speed_most[c] + 1e-12 * fabs(a->speed_most[c])))
            return TS_RULE_SPEED;
    }
    return TS_RULE_NONE;
}

static ts_arrange_rule check_pads(const layout *l)
{
    for (size_t i = 0; i < l->count; i++) {
        const placed   *s    = &l->row[i];
        ts_arrange_rule rule = s->front >= 0 ? check_pad(l, s, s->front, true) : TS_RULE_NONE;
        if (rule == TS_RULE_NONE && s->rear >= 0)
            rule = check_pad(l, s, s->rear, false);
        if (rule != TS_RULE_NONE)
            return rule;
    }
    return TS_RULE_NONE;
}

static bool is_idler_number(const ts_arrange_problem *p, uint32_t z)
{
    for (size_t i = 0; i < p->idler_teeth_count; i++)
        if (p->idler_teeth[i] == z)
            return true;
    return false;
}

/* May that shaft have a second gear, of that module, there? */
static ts_arrange_rule check_step(const layout *l, const placed *s, bool end)
{
    if (s->z_step == 0)
        return TS_RULE_NONE;
    if (s->step != 0 || end)
        return TS_RULE_STEP;
    for (size_t i = 0; i < l->frame->step_count; i++) {
        const ts_arrange_step *allowed = &l->frame->steps[i];
        const uint32_t         module =
            allowed->module == TS_MODULE_SAME ? l->choice->module : allowed->module;
        if (allowed->z == s->z && allowed->z_step == s->z_step && module == s->out_module)
            return TS_RULE_NONE;
    }
    return TS_RULE_STEP;
}

static ts_arrange_rule check_teeth(layout *l)
{
    const ts_arrange_problem *p      = l->p;
    uint32_t                  idlers = 0;

    if (l->row[0].z != l->choice->z_in)
        return TS_RULE_TEETH;
    for (size_t i = 1; i < l->count; i++) {
        const placed         *s     = &l->row[i];
        const bool            idler = bits_of(s) == 0;
        const bool            end   = i + 1 == l->count || l->row[i + 1].depth == 1;
        const ts_arrange_rule step  = check_step(l, s, end);
        if (step != TS_RULE_NONE)
            return step;
        if (idler ? s->z_step == 0 && !is_idler_number(p, s->z)
                  : s->z < p->z_least || s->z > p->z_most)
            return TS_RULE_TEETH;
        const double tip = l->p->modules[s->module] * ((double)s->z + 2.0 * l->frame->addendum);
        if (!idler && l->frame->tip_most > 0.0 && tip > l->frame->tip_most)
            return TS_RULE_TEETH;
        idlers = (s->depth == 1 ? 0 : idlers) + 1;
        if (!idler)
            idlers = 0;
        if (idlers > p->idlers_in_row || (idler && end))
            return TS_RULE_IDLERS;
        uint32_t a = s->z, b = outer_teeth(inner_of(l, i));
        while (b != 0) {
            const uint32_t rest = a % b;
            a                   = b;
            b                   = rest;
        }
        if (p->hunting && a != 1)
            return TS_RULE_HUNTING;
    }
    return TS_RULE_NONE;
}

static ts_arrange_rule check_arc(const layout *l)
{
    double left = 0.0, right = 0.0;
    for (size_t i = 1; i < l->count; i++) {
        if (isnan(l->row[i].angle))
            return TS_RULE_ARC;
        left  = fmax(left, -l->row[i].angle);
        right = fmax(right, l->row[i].angle);
    }
    const bool fits = left <= l->frame->side_most + SLACK && right <= l->frame->side_most + SLACK &&
                      left + right <= l->frame->wrap_most + SLACK;
    return fits ? TS_RULE_NONE : TS_RULE_ARC;
}

/* Radius of the body of that shaft on that face, negative when there is none. */
static double body(const layout *l, size_t i, int face)
{
    const int32_t on = face == 0 ? l->row[i].front : l->row[i].rear;
    if (on >= 0)
        return l->p->accessories[on].body_radius;
    return i == 0 && l->frame->input_body[face] > 0.0 ? l->frame->input_body[face] : -1.0;
}

static ts_arrange_rule check_clearance(const layout *l)
{
    const double R = l->frame->radius, g = l->p->gap;
    for (int face = 0; face < 2; face++)
        for (size_t i = 0; i < l->count; i++)
            for (size_t k = 0; k < i; k++) {
                const double a = body(l, i, face), b = body(l, k, face);
                const double apart = fabs(l->row[i].angle - l->row[k].angle);
                if (a < 0.0 || b < 0.0)
                    continue;
                const double least = l->p->clearance == TS_CLEARANCE_CHORD
                                         ? 2.0 * asin((a + b + g) / (2.0 * R))
                                         : asin((a + 0.5 * g) / R) + asin((b + 0.5 * g) / R);
                if (!(apart >= least - SLACK))
                    return TS_RULE_CLEARANCE;
            }
    return TS_RULE_NONE;
}

static double power_of(const ts_arrange_problem *p, uint32_t set, size_t c)
{
    double sum = 0.0;
    for (size_t a = 0; a < p->accessory_count; a++)
        if ((set >> a & 1u) != 0)
            sum += p->accessories[a].power[c];
    return sum;
}

/* Is the gear of shaft i that meshes that way loaded on both flanks?  As the driver of what is
 * outboard, as driven from inboard; the gears of a step shaft have one of these meshes each. */
static bool is_reversed(const layout *l, size_t i, bool outward)
{
    const bool stepped = l->row[i].z_step > 0;
    bool       leading = false, trailing = false;
    for (size_t c = 0; c < l->p->condition_count; c++) {
        for (size_t k = 1; k < l->count; k++) {
            const placed *s     = &l->row[k];
            const double  power = power_of(l->p, s->outboard, c);
            const size_t  inner = s->depth == 1 ? 0 : k - 1;
            if (fabs(power) <= 1e-6 || (k != i && inner != i))
                continue;
            if (stepped && outward != (inner == i))
                continue;
            const bool ahead = (power > 0.0) == (inner == i);
            leading          = leading || ahead;
            trailing         = trailing || !ahead;
        }
    }
    return leading && trailing;
}

static double need_of_mesh(const layout *l, size_t outer)
{
    const placed *s     = &l->row[outer];
    const size_t  inner = s->depth == 1 ? 0 : outer - 1;
    const double  lever = 0.5 * l->p->modules[s->module] * teeth_that_turn(l, s);
    double        force[CONDITIONS_MOST];

    for (size_t c = 0; c < l->p->condition_count; c++)
        force[c] = power_of(l->p, s->outboard, c) / (lever * l->choice->speed[c]);
    const ts_arrange_mesh mesh = {.box             = l->box,
                                  .module          = s->module,
                                  .z_in            = l->choice->z_in,
                                  .take_off        = l->choice->take_off,
                                  .z_first         = s->step > 0 ? l->row[s->step].z : 0,
                                  .z_second        = s->step > 0 ? l->row[s->step].z_step : 0,
                                  .z_inner         = outer_teeth(&l->row[inner]),
                                  .z_outer         = s->z,
                                  .reversed_inner  = is_reversed(l, inner, true),
                                  .reversed_outer  = is_reversed(l, outer, false),
                                  .force           = force,
                                  .condition_count = l->p->condition_count};
    return l->p->model.width(l->p->model.context, &mesh);
}

static bool width_is_allowed(const layout *l, uint32_t module, uint32_t z, double width)
{
    return width >= l->p->width_least - SLACK * l->p->width_step &&
           width <= l->p->width_over_diameter * l->p->modules[module] * (double)z * (1.0 + 1e-12);
}

static ts_arrange_rule check_widths(const layout *l)
{
    const double slack = 2.0 * SLACK * l->p->width_step;
    for (size_t i = 0; i < l->count; i++) {
        const placed *s = &l->row[i];
        if (!width_is_allowed(l, s->module, s->z, s->width) ||
            (s->z_step > 0 && !width_is_allowed(l, s->out_module, s->z_step, s->step_width)))
            return TS_RULE_WIDTH;
        for (size_t k = 1; k < l->count; k++) {
            const size_t inner = l->row[k].depth == 1 ? 0 : k - 1;
            const double has   = inner == i && s->z_step > 0 ? s->step_width : s->width;
            if ((k == i || inner == i) && !(need_of_mesh(l, k) <= has + slack))
                return TS_RULE_WIDTH;
        }
    }
    return TS_RULE_NONE;
}

static bool is_nearer(const placed *s, const placed *than)
{
    return s->depth == 0 || (s->way == than->way && s->depth < than->depth);
}

/* kg that must be lowered, summed over all accessories, before each of them can be. */
static double lowered_of(const layout *l)
{
    double sum = 0.0;
    for (size_t i = 1; i < l->count; i++)
        for (size_t k = 0; k < l->count; k++) {
            const placed *s = &l->row[i], *before = &l->row[k];
            if (!is_nearer(before, s))
                continue;
            if (s->front >= 0 && before->front >= 0)
                sum += l->p->accessories[before->front].lift;
            if (s->rear >= 0 && before->rear >= 0)
                sum += l->p->accessories[before->rear].lift;
        }
    return sum;
}

static double mass_of(const layout *l)
{
    double mass = l->frame->mass + l->choice->mass, left = 0.0, right = 0.0;
    for (size_t i = 0; i < l->count; i++) {
        const placed *s = &l->row[i];
        mass += l->p->model.gear_mass(l->p->model.context, s->module, s->z, s->width);
        if (s->z_step > 0)
            mass += l->frame->step_mass + l->p->model.gear_mass(l->p->model.context, s->out_module,
                                                                s->z_step, s->step_width);
        mass += s->front >= 0 ? l->p->accessories[s->front].pad_mass : 0.0;
        mass += s->rear >= 0 ? l->p->accessories[s->rear].pad_mass : 0.0;
        if (i > 0)
            mass += bits_of(s) != 0 ? l->frame->shaft_mass : l->frame->idler_mass;
        left  = fmax(left, -s->angle);
        right = fmax(right, s->angle);
    }
    return mass + (l->frame->casing * l->frame->radius + l->p->wrap_weight) * (left + right) +
           l->p->servicing_weight * lowered_of(l);
}

static ts_arrange_rule check_box(layout *l, const ts_arranged_box *b, uint32_t *seen, double *mass)
{
    if (b->choice >= l->frame->choice_count)
        return TS_RULE_TEETH;
    l->choice            = &l->frame->choices[b->choice];
    ts_arrange_rule rule = b->input.z_step > 0 ? TS_RULE_STEP : lay(l, b);
    if (rule != TS_RULE_NONE)
        return rule;
    uint32_t here = 0;
    for (size_t i = 0; i < l->count; i++) {
        const placed *s = &l->row[i];
        if ((s->front >= 0 && s->front == s->rear) || ((*seen | here) & bits_of(s)) != 0)
            return TS_RULE_PLACED;
        here |= bits_of(s);
    }
    *seen |= here;
    if (here == 0)
        return TS_RULE_PLACED;
    if ((rule = check_pads(l)) != TS_RULE_NONE || (rule = check_teeth(l)) != TS_RULE_NONE ||
        (rule = check_arc(l)) != TS_RULE_NONE || (rule = check_clearance(l)) != TS_RULE_NONE ||
        (rule = check_widths(l)) != TS_RULE_NONE)
        return rule;
    *mass += mass_of(l);
    return TS_RULE_NONE;
}

static bool names_are_known(const ts_arrange_problem *p, const ts_arranged_box *b)
{
    const int n     = (int)p->accessory_count;
    bool      known = b->input.front < n && b->input.rear < n;
    for (int side = 0; side < 2; side++)
        for (uint32_t i = 0; i < b->branches[side].count && i < TS_ARRANGE_SHAFTS; i++)
            known = known && b->branches[side].shafts[i].front < n &&
                    b->branches[side].shafts[i].rear < n;
    return known;
}

ts_arrange_rule ts_arrange_verify(const ts_arrange_problem *problem, const ts_arrangement *a)
{
    uint32_t seen = 0;
    double   mass = 0.0;

    if (problem->condition_count > CONDITIONS_MOST)
        return TS_RULE_WIDTH;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        layout l = {.p = problem, .frame = &problem->boxes[b], .box = b};
        if (!a->boxes[b].present)
            continue;
        if (!names_are_known(problem, &a->boxes[b]))
            return TS_RULE_PLACED;
        const ts_arrange_rule rule = check_box(&l, &a->boxes[b], &seen, &mass);
        if (rule != TS_RULE_NONE)
            return rule;
    }
    if (seen != (1u << problem->accessory_count) - 1u)
        return TS_RULE_PLACED;
    return fabs(mass - a->mass) <= 1e-9 * mass ? TS_RULE_NONE : TS_RULE_MASS;
}

double ts_arrange_mass(const ts_arrange_problem *problem, const ts_arrangement *a)
{
    double mass = 0.0;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        layout l = {.p = problem, .frame = &problem->boxes[b], .box = b};
        if (!a->boxes[b].present || a->boxes[b].choice >= l.frame->choice_count)
            continue;
        l.choice = &l.frame->choices[a->boxes[b].choice];
        if (lay(&l, &a->boxes[b]) == TS_RULE_NONE)
            mass += mass_of(&l);
    }
    return mass;
}

const char *ts_arrange_rule_says(ts_arrange_rule rule)
{
    static const char *const says[] = {
        [TS_RULE_NONE]   = "every rule holds",
        [TS_RULE_PLACED] = "an accessory is placed twice, nowhere, or on a box that it may not use",
        [TS_RULE_FACE]   = "an accessory is on a face that is not open to it",
        [TS_RULE_SIDE]   = "an accessory is not on the side or shaft that it must be on",
        [TS_RULE_SENSE]  = "a pad turns the wrong way",
        [TS_RULE_SPEED]  = "a pad is outside of its speed band",
        [TS_RULE_TEETH]  = "a gear has teeth that it may not have",
        [TS_RULE_HUNTING]   = "a mesh has tooth numbers with a common divisor",
        [TS_RULE_IDLERS]    = "there are too many idlers in a row, or one at a free end",
        [TS_RULE_ARC]       = "a branch or the whole box takes too much arc",
        [TS_RULE_STEP]      = "a shaft has a second gear that it may not have there",
        [TS_RULE_CLEARANCE] = "two bodies on one face are too near",
        [TS_RULE_WIDTH]     = "a gear is narrower than it must be or wider than it may be",
        [TS_RULE_MASS]      = "the mass is not the sum of its parts",
    };
    return says[rule];
}

/* ---- what becomes of it when loads or bands are others ----------------------------------------
 */

static void widen(const layout *l, double need, uint32_t module, uint32_t z, double *width,
                  bool *fits)
{
    const double step = l->p->width_step;
    *width            = fmax(*width, ceil(need / step - SLACK) * step);
    *fits             = *fits && isfinite(need) && width_is_allowed(l, module, z, *width);
}

/* Every gear as narrow as its meshes let it be. */
static bool fit_widths(layout *l)
{
    bool fits = true;
    for (size_t i = 0; i < l->count; i++)
        l->row[i].width = l->row[i].step_width = l->p->width_least;
    for (size_t k = 1; k < l->count && fits; k++) {
        placed      *s = &l->row[k], *inner = inner_of(l, k);
        const double need = need_of_mesh(l, k);
        widen(l, need, s->module, s->z, &s->width, &fits);
        widen(l, need, inner->out_module, outer_teeth(inner),
              inner->z_step > 0 ? &inner->step_width : &inner->width, &fits);
    }
    return fits;
}

static void take_widths(const layout *l, ts_arranged_box *b)
{
    size_t k       = 1;
    b->input.width = l->row[0].width;
    for (int side = 0; side < 2; side++)
        for (uint32_t i = 0; i < b->branches[side].count; i++, k++) {
            b->branches[side].shafts[i].width = l->row[k].width;
            if (l->row[k].z_step > 0)
                b->branches[side].shafts[i].step_width = l->row[k].step_width;
        }
}

static bool lay_box(layout *l, const ts_arrange_problem *p, uint32_t box, const ts_arranged_box *b)
{
    *l = (layout){.p = p, .frame = &p->boxes[box], .box = box};
    if (p->condition_count > CONDITIONS_MOST || b->choice >= l->frame->choice_count)
        return false;
    l->choice = &l->frame->choices[b->choice];
    return lay(l, b) == TS_RULE_NONE;
}

size_t ts_arrange_angles(const ts_arrange_problem *problem, const ts_arrangement *a, uint32_t box,
                         double angles[TS_ARRANGE_ROW])
{
    layout l;
    if (!a->boxes[box].present || !lay_box(&l, problem, box, &a->boxes[box]))
        return 0;
    for (size_t i = 0; i < l.count; i++) {
        if (isnan(l.row[i].angle))
            return 0;
        angles[i] = l.row[i].angle;
    }
    return l.count;
}

double ts_arrange_wrap(const ts_arrange_problem *problem, const ts_arrangement *a, uint32_t box)
{
    double       angles[TS_ARRANGE_ROW], least = 0.0, most = 0.0;
    const size_t count = ts_arrange_angles(problem, a, box, angles);
    for (size_t i = 0; i < count; i++) {
        least = fmin(least, angles[i]);
        most  = fmax(most, angles[i]);
    }
    return most - least;
}

double ts_arrange_lowered(const ts_arrange_problem *problem, const ts_arrangement *a)
{
    double sum = 0.0;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        layout l;
        if (a->boxes[b].present && lay_box(&l, problem, b, &a->boxes[b]))
            sum += lowered_of(&l);
    }
    return sum;
}

double ts_arrange_weighted(const ts_arrange_problem *problem, const ts_arrangement *a)
{
    double wrap = 0.0;
    for (uint32_t b = 0; b < problem->box_count; b++)
        wrap += ts_arrange_wrap(problem, a, b);
    return problem->wrap_weight * wrap + problem->servicing_weight * ts_arrange_lowered(problem, a);
}

double ts_arrange_refit(const ts_arrange_problem *problem, ts_arrangement *a)
{
    a->mass = 0.0;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        layout l;
        if (!a->boxes[b].present)
            continue;
        if (!lay_box(&l, problem, b, &a->boxes[b]) || !fit_widths(&l))
            return a->mass = (double)INFINITY;
        take_widths(&l, &a->boxes[b]);
        a->mass += mass_of(&l);
    }
    return a->mass;
}

static double slack_of(const layout *l, const placed *s, int32_t accessory, size_t *condition)
{
    const ts_arrange_accessory *a     = &l->p->accessories[accessory];
    double                      least = (double)INFINITY;
    for (size_t c = 0; c < l->p->condition_count; c++) {
        const double n   = l->choice->speed[c] * teeth_that_turn(l, s) / (double)s->z;
        const double low = a->speed_least[c] > 0.0 ? n - a->speed_least[c] : (double)INFINITY;
        const double own = fmin(low, a->speed_most[c] - n);
        *condition       = own < least ? c : *condition;
        least            = fmin(least, own);
    }
    return least;
}

double ts_arrange_slack(const ts_arrange_problem *problem, const ts_arrangement *a,
                        size_t *accessory, size_t *condition)
{
    double least = (double)INFINITY;
    *accessory = *condition = 0;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        layout l;
        if (!a->boxes[b].present || !lay_box(&l, problem, b, &a->boxes[b]))
            continue;
        for (size_t i = 0; i < l.count; i++) {
            const int32_t on[2] = {l.row[i].front, l.row[i].rear};
            for (int face = 0; face < 2; face++) {
                size_t       c   = 0;
                const double own = on[face] < 0 ? least : slack_of(&l, &l.row[i], on[face], &c);
                if (!(own < least))
                    continue;
                least      = own;
                *accessory = (size_t)on[face];
                *condition = c;
            }
        }
    }
    return fmax(least, 0.0);
}
