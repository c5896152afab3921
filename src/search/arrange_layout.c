/* search/arrange_layout.c: where do the shafts of an arrangement stand, and what do they weigh? */
#include "search/arrange_layout.h"

#include <math.h>

uint32_t ts_laid_set(const ts_laid_shaft *s)
{
    return (s->front >= 0 ? 1u << s->front : 0) | (s->rear >= 0 ? 1u << s->rear : 0);
}

ts_laid_shaft *ts_laid_inner(ts_layout *l, size_t i)
{
    return l->row[i].depth == 1 ? &l->row[0] : &l->row[i - 1];
}

uint32_t ts_laid_outer_teeth(const ts_laid_shaft *s)
{
    return s->z_step > 0 ? s->z_step : s->z;
}

double ts_laid_turns(const ts_layout *l, const ts_laid_shaft *s)
{
    const double z_in = (double)l->choice->z_in;
    return s->step == 0 ? z_in : z_in * (double)l->row[s->step].z_step / (double)l->row[s->step].z;
}

/* Does the first gear of a step shaft cover an axis so far away? */
static bool runs_over(const ts_layout *l, const ts_laid_shaft *s, double apart)
{
    const double tip = l->p->modules[s->module] * (0.5 * (double)s->z + l->frame->addendum);
    return s->z_step > 0 && apart < tip + l->frame->step_gap - TS_LAYOUT_SLACK;
}

ts_arrange_rule ts_layout_fill(ts_layout *l, const ts_arranged_box *b)
{
    l->row[0] = (ts_laid_shaft){
        .front = b->input.front, .rear = b->input.rear, .z = b->input.z, .width = b->input.width};
    l->row[0].module = l->row[0].out_module = l->choice->module;
    l->count                                = 1;
    for (int side = 0; side < 2; side++) {
        const ts_arranged_branch *branch = &b->branches[side];
        if (branch->count > TS_ARRANGE_SHAFTS)
            return TS_RULE_IDLERS;
        for (uint32_t i = 0; i < branch->count; i++) {
            const ts_arranged_shaft *from = &branch->shafts[i];
            ts_laid_shaft           *s    = &l->row[l->count++];
            *s                            = (ts_laid_shaft){.front      = from->front,
                                                            .rear       = from->rear,
                                                            .z          = from->z,
                                                            .width      = from->width,
                                                            .z_step     = from->z_step,
                                                            .step_width = from->step_width,
                                                            .depth      = (int)i + 1,
                                                            .way        = side == 0 ? -1 : 1};
            const ts_laid_shaft *inner    = ts_laid_inner(l, l->count - 1);
            s->module                     = inner->out_module;
            s->out_module                 = from->z_step > 0 ? from->step_module : s->module;
            s->step = inner->z_step > 0 ? (uint32_t)(inner - l->row) : inner->step;
            if (s->out_module >= l->p->module_count)
                return TS_RULE_STEP;
            const double m = l->p->modules[s->module];
            const double half =
                0.5 * m * (double)(s->z + ts_laid_outer_teeth(inner)) / (2.0 * l->frame->radius);
            if (runs_over(l, inner, m * 0.5 * (double)(s->z + ts_laid_outer_teeth(inner))))
                return TS_RULE_STEP;
            s->angle = inner->angle + (double)s->way * 2.0 * asin(half);
        }
    }
    for (size_t i = l->count - 1; i > 0; i--) {
        ts_laid_shaft *s = &l->row[i];
        s->outboard |= ts_laid_set(s);
        if (s->depth > 1)
            ts_laid_inner(l, i)->outboard |= s->outboard;
    }
    return TS_RULE_NONE;
}

/* ---- what a mesh needs ----------------------------------------------------------------------- */

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
static bool is_reversed(const ts_layout *l, size_t i, bool outward)
{
    const bool stepped = l->row[i].z_step > 0;
    bool       leading = false, trailing = false;
    for (size_t c = 0; c < l->p->condition_count; c++) {
        for (size_t k = 1; k < l->count; k++) {
            const ts_laid_shaft *s     = &l->row[k];
            const double         power = power_of(l->p, s->outboard, c);
            const size_t         inner = s->depth == 1 ? 0 : k - 1;
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

double ts_laid_need(const ts_layout *l, size_t outer)
{
    const ts_laid_shaft *s     = &l->row[outer];
    const size_t         inner = s->depth == 1 ? 0 : outer - 1;
    const double         lever = 0.5 * l->p->modules[s->module] * ts_laid_turns(l, s);
    double               force[TS_LAYOUT_CONDITIONS];

    for (size_t c = 0; c < l->p->condition_count; c++)
        force[c] = power_of(l->p, s->outboard, c) / (lever * l->choice->speed[c]);
    const ts_arrange_mesh mesh = {.box             = l->box,
                                  .module          = s->module,
                                  .z_in            = l->choice->z_in,
                                  .take_off        = l->choice->take_off,
                                  .z_first         = s->step > 0 ? l->row[s->step].z : 0,
                                  .z_second        = s->step > 0 ? l->row[s->step].z_step : 0,
                                  .z_inner         = ts_laid_outer_teeth(&l->row[inner]),
                                  .z_outer         = s->z,
                                  .reversed_inner  = is_reversed(l, inner, true),
                                  .reversed_outer  = is_reversed(l, outer, false),
                                  .force           = force,
                                  .condition_count = l->p->condition_count};
    return l->p->model.width(l->p->model.context, &mesh);
}

bool ts_laid_width_is_allowed(const ts_layout *l, uint32_t module, uint32_t z, double width)
{
    return width >= l->p->width_least - TS_LAYOUT_SLACK * l->p->width_step &&
           width <= l->p->width_over_diameter * l->p->modules[module] * (double)z * (1.0 + 1e-12);
}

/* ---- what it weighs -------------------------------------------------------------------------- */

static bool is_nearer(const ts_laid_shaft *s, const ts_laid_shaft *than)
{
    return s->depth == 0 || (s->way == than->way && s->depth < than->depth);
}

/* kg that must be lowered, summed over all accessories, before each of them can be. */
static double lowered_of(const ts_layout *l)
{
    double sum = 0.0;
    for (size_t i = 1; i < l->count; i++)
        for (size_t k = 0; k < l->count; k++) {
            const ts_laid_shaft *s = &l->row[i], *before = &l->row[k];
            if (!is_nearer(before, s))
                continue;
            if (s->front >= 0 && before->front >= 0)
                sum += l->p->accessories[before->front].lift;
            if (s->rear >= 0 && before->rear >= 0)
                sum += l->p->accessories[before->rear].lift;
        }
    return sum;
}

static void account_gears(const ts_layout *l, const ts_laid_shaft *s, ts_arrange_account *sum)
{
    const ts_arrange_model *model = &l->p->model;
    sum->gears += model->gear_mass(model->context, s->module, s->z, s->width);
    sum->gear_count++;
    if (s->z_step == 0)
        return;
    sum->gears += model->gear_mass(model->context, s->out_module, s->z_step, s->step_width);
    sum->steps += l->frame->step_mass;
    sum->gear_count++;
    sum->step_count++;
}

static void account_pad(const ts_layout *l, int32_t accessory, ts_arrange_account *sum)
{
    if (accessory < 0)
        return;
    sum->pads += l->p->accessories[accessory].pad_mass;
    sum->pad_count++;
}

static void account_shaft(const ts_layout *l, const ts_laid_shaft *s, ts_arrange_account *sum)
{
    const bool idler = ts_laid_set(s) == 0;
    sum->shafts += idler ? 0.0 : l->frame->shaft_mass;
    sum->idlers += idler ? l->frame->idler_mass : 0.0;
    sum->shaft_count += idler ? 0 : 1;
    sum->idler_count += idler ? 1 : 0;
}

void ts_layout_account(const ts_layout *l, ts_arrange_account *sum)
{
    double left = 0.0, right = 0.0;
    sum->boxes += l->frame->mass + l->choice->mass;
    for (size_t i = 0; i < l->count; i++) {
        const ts_laid_shaft *s = &l->row[i];
        account_gears(l, s, sum);
        account_pad(l, s->front, sum);
        account_pad(l, s->rear, sum);
        if (i > 0)
            account_shaft(l, s, sum);
        left  = fmax(left, -s->angle);
        right = fmax(right, s->angle);
    }
    sum->wrap += left + right;
    sum->lowered += lowered_of(l);
    sum->casing += l->frame->casing * l->frame->radius * (left + right);
    sum->mass =
        sum->boxes + sum->pads + sum->shafts + sum->idlers + sum->steps + sum->gears + sum->casing;
    sum->for_wrap      = l->p->wrap_weight * sum->wrap;
    sum->for_servicing = l->p->servicing_weight * sum->lowered;
    sum->sum           = sum->mass + sum->for_wrap + sum->for_servicing;
}

bool ts_layout_make(ts_layout *l, const ts_arrange_problem *p, uint32_t box,
                    const ts_arranged_box *b)
{
    *l = (ts_layout){.p = p, .frame = &p->boxes[box], .box = box};
    if (p->condition_count > TS_LAYOUT_CONDITIONS || b->choice >= l->frame->choice_count)
        return false;
    l->choice = &l->frame->choices[b->choice];
    return ts_layout_fill(l, b) == TS_RULE_NONE;
}

ts_arrange_account ts_arrange_account_of(const ts_arrange_problem *problem, const ts_arrangement *a)
{
    ts_arrange_account sum = {0};
    for (uint32_t b = 0; b < problem->box_count; b++) {
        ts_layout l;
        if (a->boxes[b].present && ts_layout_make(&l, problem, b, &a->boxes[b]))
            ts_layout_account(&l, &sum);
    }
    return sum;
}

ts_arrange_account ts_arrange_account_as_found(const ts_arrange_problem *problem,
                                               const ts_arrangement     *a)
{
    ts_arrange_account sum     = ts_arrange_account_of(problem, a);
    const double       widened = sum.sum - a->mass;
    sum.gears -= widened;
    sum.mass -= widened;
    sum.sum -= widened;
    return sum;
}

size_t ts_arrange_angles(const ts_arrange_problem *problem, const ts_arrangement *a, uint32_t box,
                         double angles[TS_ARRANGE_ROW])
{
    ts_layout l;
    if (!a->boxes[box].present || !ts_layout_make(&l, problem, box, &a->boxes[box]))
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
