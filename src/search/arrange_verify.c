/* search/arrange_verify.c: is this arrangement really one, and as light as it says? */
#include "search/arrange_layout.h"

#include <math.h>

static ts_arrange_rule check_pad(const ts_layout *l, const ts_laid_shaft *s, int accessory,
                                 bool front)
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
    if ((a->input && s->way != 0) || (a->with & ~ts_laid_set(s)) != 0)
        return TS_RULE_SIDE;
    if (a->sense != 0 && a->sense != (front ? sense : -sense))
        return TS_RULE_SENSE;
    for (size_t c = 0; c < l->p->condition_count; c++) {
        const double n = l->choice->speed[c] * ts_laid_turns(l, s) / (double)s->z;
        if (!(n >= a->speed_least[c] - 1e-12 * fabs(a->speed_least[c])) ||
            !(n <= a->speed_most[c] + 1e-12 * fabs(a->speed_most[c])))
            return TS_RULE_SPEED;
    }
    return TS_RULE_NONE;
}

static ts_arrange_rule check_pads(const ts_layout *l)
{
    for (size_t i = 0; i < l->count; i++) {
        const ts_laid_shaft *s    = &l->row[i];
        ts_arrange_rule      rule = s->front >= 0 ? check_pad(l, s, s->front, true) : TS_RULE_NONE;
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
static ts_arrange_rule check_step(const ts_layout *l, const ts_laid_shaft *s, bool end)
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

static ts_arrange_rule check_teeth(ts_layout *l)
{
    const ts_arrange_problem *p      = l->p;
    uint32_t                  idlers = 0;

    if (l->row[0].z != l->choice->z_in)
        return TS_RULE_TEETH;
    for (size_t i = 1; i < l->count; i++) {
        const ts_laid_shaft  *s     = &l->row[i];
        const bool            idler = ts_laid_set(s) == 0;
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
        uint32_t a = s->z, b = ts_laid_outer_teeth(ts_laid_inner(l, i));
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

static ts_arrange_rule check_arc(const ts_layout *l)
{
    double left = 0.0, right = 0.0;
    for (size_t i = 1; i < l->count; i++) {
        if (isnan(l->row[i].angle))
            return TS_RULE_ARC;
        left  = fmax(left, -l->row[i].angle);
        right = fmax(right, l->row[i].angle);
    }
    const bool fits = left <= l->frame->side_most + TS_LAYOUT_SLACK &&
                      right <= l->frame->side_most + TS_LAYOUT_SLACK &&
                      left + right <= l->frame->wrap_most + TS_LAYOUT_SLACK;
    return fits ? TS_RULE_NONE : TS_RULE_ARC;
}

/* Radius of the body of that shaft on that face, negative when there is none. */
static double body(const ts_layout *l, size_t i, int face)
{
    const int32_t on = face == 0 ? l->row[i].front : l->row[i].rear;
    if (on >= 0)
        return l->p->accessories[on].body_radius;
    return i == 0 && l->frame->input_body[face] > 0.0 ? l->frame->input_body[face] : -1.0;
}

static ts_arrange_rule check_clearance(const ts_layout *l)
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
                if (!(apart >= least - TS_LAYOUT_SLACK))
                    return TS_RULE_CLEARANCE;
            }
    return TS_RULE_NONE;
}

static ts_arrange_rule check_widths(const ts_layout *l)
{
    const double slack = 2.0 * TS_LAYOUT_SLACK * l->p->width_step;
    for (size_t i = 0; i < l->count; i++) {
        const ts_laid_shaft *s = &l->row[i];
        if (!ts_laid_width_is_allowed(l, s->module, s->z, s->width) ||
            (s->z_step > 0 &&
             !ts_laid_width_is_allowed(l, s->out_module, s->z_step, s->step_width)))
            return TS_RULE_WIDTH;
        for (size_t k = 1; k < l->count; k++) {
            const size_t inner = l->row[k].depth == 1 ? 0 : k - 1;
            const double has   = inner == i && s->z_step > 0 ? s->step_width : s->width;
            if ((k == i || inner == i) && !(ts_laid_need(l, k) <= has + slack))
                return TS_RULE_WIDTH;
        }
    }
    return TS_RULE_NONE;
}

static ts_arrange_rule check_box(ts_layout *l, const ts_arranged_box *b, uint32_t *seen,
                                 ts_arrange_account *sum)
{
    if (b->choice >= l->frame->choice_count)
        return TS_RULE_TEETH;
    l->choice            = &l->frame->choices[b->choice];
    ts_arrange_rule rule = b->input.z_step > 0 ? TS_RULE_STEP : ts_layout_fill(l, b);
    if (rule != TS_RULE_NONE)
        return rule;
    uint32_t here = 0;
    for (size_t i = 0; i < l->count; i++) {
        const ts_laid_shaft *s = &l->row[i];
        if ((s->front >= 0 && s->front == s->rear) || ((*seen | here) & ts_laid_set(s)) != 0)
            return TS_RULE_PLACED;
        here |= ts_laid_set(s);
    }
    *seen |= here;
    if (here == 0)
        return TS_RULE_PLACED;
    if ((rule = check_pads(l)) != TS_RULE_NONE || (rule = check_teeth(l)) != TS_RULE_NONE ||
        (rule = check_arc(l)) != TS_RULE_NONE || (rule = check_clearance(l)) != TS_RULE_NONE ||
        (rule = check_widths(l)) != TS_RULE_NONE)
        return rule;
    ts_layout_account(l, sum);
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
    uint32_t           seen = 0;
    ts_arrange_account sum  = {0};

    if (problem->condition_count > TS_LAYOUT_CONDITIONS)
        return TS_RULE_WIDTH;
    for (uint32_t b = 0; b < problem->box_count; b++) {
        ts_layout l = {.p = problem, .frame = &problem->boxes[b], .box = b};
        if (!a->boxes[b].present)
            continue;
        if (!names_are_known(problem, &a->boxes[b]))
            return TS_RULE_PLACED;
        const ts_arrange_rule rule = check_box(&l, &a->boxes[b], &seen, &sum);
        if (rule != TS_RULE_NONE)
            return rule;
    }
    if (seen != (1u << problem->accessory_count) - 1u)
        return TS_RULE_PLACED;
    return fabs(sum.sum - a->mass) <= 1e-9 * sum.sum ? TS_RULE_NONE : TS_RULE_MASS;
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
