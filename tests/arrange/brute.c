/* arrange/brute.c: what if every arrangement were simply tried? */
#include "arrange/brute.h"

#include <math.h>
#include <string.h>

enum { SHAFTS_MOST = 2 * TS_ARRANGE_SHAFTS + 1 };

/* ---- judging ----------------------------------------------------------------------------------
 */

/* A box laid out in one row: left end first, input in the middle, right end last. */
typedef struct row {
    size_t                   count, input;
    const ts_arranged_shaft *shafts[SHAFTS_MOST];
    double                   at[SHAFTS_MOST]; /* angle of the axis from the left end */
} row;

/* One mesh of the row: its gear nearer to the input, and what turns that. */
typedef struct meshing {
    uint32_t module, z_in, z_out; /* teeth of the inner and of the outer gear */
    uint32_t first, second;       /* of the step shaft further in, 0 without  */
} meshing;

/* The mesh between shafts i and i + 1.  A step shaft meshes outwards with its second gear, and all
 * that is further out on that side has its module. */
static meshing mesh_of(const row *line, uint32_t module, size_t i)
{
    const bool   right = i >= line->input;
    const size_t inner = right ? i : i + 1, outer = right ? i + 1 : i;
    meshing      m     = {.module = module};
    const size_t steps = right ? inner - line->input : line->input - inner;

    for (size_t k = 0; k <= steps; k++) {
        const ts_arranged_shaft *s = line->shafts[right ? line->input + k : line->input - k];
        if (s->z_step == 0)
            continue;
        m.module = s->step_module;
        m.first  = s->z;
        m.second = s->z_step;
    }
    const ts_arranged_shaft *in = line->shafts[inner];
    m.z_in                      = in->z_step > 0 ? in->z_step : in->z;
    m.z_out                     = line->shafts[outer]->z;
    return m;
}

static void lay_out(const ts_arrange_problem *p, uint32_t box, const ts_arranged_box *b, row *line)
{
    const double              r      = p->boxes[box].radius;
    const uint32_t            module = p->boxes[box].choices[b->choice].module;
    const ts_arranged_branch *left = &b->branches[0], *right = &b->branches[1];

    line->count = 0;
    for (uint32_t i = left->count; i > 0; i--)
        line->shafts[line->count++] = &left->shafts[i - 1];
    line->input                 = line->count;
    line->shafts[line->count++] = &b->input;
    for (uint32_t i = 0; i < right->count; i++)
        line->shafts[line->count++] = &right->shafts[i];
    line->at[0] = 0.0;
    for (size_t i = 1; i < line->count; i++) {
        const meshing m = mesh_of(line, module, i - 1);
        line->at[i]     = line->at[i - 1] +
                      2.0 * asin(p->modules[m.module] * (double)(m.z_in + m.z_out) / (4.0 * r));
    }
}

static int accessory_on(const ts_arranged_shaft *s, int face)
{
    return face == 0 ? s->front : s->rear;
}

/* Radius of the body on that face, or -1. */
static double body_on(const ts_arrange_problem *p, const ts_arrange_box *box, const row *line,
                      size_t i, int face)
{
    const int a = accessory_on(line->shafts[i], face);
    if (a >= 0)
        return p->accessories[a].body_radius;
    return i == line->input && box->input_body[face] > 0.0 ? box->input_body[face] : -1.0;
}

static bool bodies_clear(const ts_arrange_problem *p, const ts_arrange_box *box, const row *line)
{
    for (int face = 0; face < 2; face++)
        for (size_t i = 0; i < line->count; i++)
            for (size_t k = i + 1; k < line->count; k++) {
                const double a = body_on(p, box, line, i, face), b = body_on(p, box, line, k, face);
                if (a < 0.0 || b < 0.0)
                    continue;
                const double need = p->clearance == TS_CLEARANCE_CHORD
                                        ? 2.0 * asin((a + b + p->gap) / (2.0 * box->radius))
                                        : asin((a + p->gap / 2.0) / box->radius) +
                                              asin((b + p->gap / 2.0) / box->radius);
                if (!(line->at[k] - line->at[i] >= need - 1e-9))
                    return false;
            }
    return true;
}

/* The first gear of a step shaft stays clear of the next axis outboard. */
static bool steps_clear(const ts_arrange_problem *p, const ts_arrange_box *box, uint32_t module,
                        const row *line)
{
    for (size_t i = 0; i + 1 < line->count; i++) {
        const meshing            m  = mesh_of(line, module, i);
        const ts_arranged_shaft *in = line->shafts[i < line->input ? i + 1 : i];
        const double             a  = p->modules[m.module] * (double)(m.z_in + m.z_out) / 2.0;
        const double             r  = p->modules[module] * ((double)in->z / 2.0 + box->addendum);
        if (in->z_step > 0 && r + box->step_gap > a + 1e-9)
            return false;
    }
    return true;
}

static bool row_fits(const ts_arrange_box *box, const row *line)
{
    const double left = line->at[line->input], whole = line->at[line->count - 1];
    return left <= box->side_most + 1e-9 && whole - left <= box->side_most + 1e-9 &&
           whole <= box->wrap_most + 1e-9;
}

/* Power that passes the mesh between shafts i and i + 1, away from the input. */
static double power_beyond(const ts_arrange_problem *p, const row *line, size_t i, size_t c)
{
    double       sum  = 0.0;
    const size_t from = i < line->input ? 0 : i + 1, to = i < line->input ? i + 1 : line->count;
    for (size_t k = from; k < to; k++)
        for (int face = 0; face < 2; face++)
            if (accessory_on(line->shafts[k], face) >= 0)
                sum += p->accessories[accessory_on(line->shafts[k], face)].power[c];
    return sum;
}

/* Which flanks of a gear of shaft i are loaded in some condition: bit 0 leading, bit 1 trailing.
 * On a step shaft each gear has one mesh: `outward` says which is asked about. */
static int flanks_of(const ts_arrange_problem *p, const row *line, size_t i, bool outward)
{
    const bool stepped = line->shafts[i]->z_step > 0;
    int        flanks  = 0;
    for (int side = 0; side < 2; side++) {
        if ((side == 0 && i == 0) || (side == 1 && i + 1 == line->count))
            continue;
        const size_t mesh  = side == 0 ? i - 1 : i;
        const bool   inner = side == 0 ? i <= line->input : i >= line->input;
        if (stepped && inner != outward)
            continue;
        for (size_t c = 0; c < p->condition_count; c++) {
            const double power = power_beyond(p, line, mesh, c);
            if (fabs(power) > 1e-6)
                flanks |= (power > 0.0) == inner ? 1 : 2;
        }
    }
    return flanks;
}

/* Width that mesh i (between shafts i and i + 1) needs. */
static double width_of_mesh(const ts_arrange_problem *p, uint32_t box, const ts_arranged_box *b,
                            const row *line, size_t i)
{
    const ts_arrange_choice *choice = &p->boxes[box].choices[b->choice];
    const meshing            k      = mesh_of(line, choice->module, i);
    double                   force[64];
    const size_t             in = i < line->input ? i + 1 : i, out = i < line->input ? i : i + 1;

    for (size_t c = 0; c < p->condition_count; c++) {
        const double omega = choice->speed[c] * (double)choice->z_in /
                             (double)(k.first > 0 ? k.first : choice->z_in);
        const double lever =
            0.5 * p->modules[k.module] * (double)(k.second > 0 ? k.second : choice->z_in);
        force[c] = power_beyond(p, line, i, c) / (lever * omega);
    }
    const ts_arrange_mesh mesh = {.box             = box,
                                  .module          = k.module,
                                  .z_in            = choice->z_in,
                                  .take_off        = choice->take_off,
                                  .z_first         = k.first,
                                  .z_second        = k.second,
                                  .z_inner         = k.z_in,
                                  .z_outer         = k.z_out,
                                  .reversed_inner  = flanks_of(p, line, in, true) == 3,
                                  .reversed_outer  = flanks_of(p, line, out, false) == 3,
                                  .force           = force,
                                  .condition_count = p->condition_count};
    return p->model.width(p->model.context, &mesh);
}

/* One gear that must be so wide; infinite when it may not be. */
static double mass_of_gear(const ts_arrange_problem *p, uint32_t module, uint32_t z, double need)
{
    const double whole = ceil(need / p->width_step - 1e-9) * p->width_step;
    const double width = fmax(p->width_least, whole);
    const double most  = p->width_over_diameter * p->modules[module] * (double)z;
    if (!(width <= most * (1.0 + 1e-12)))
        return (double)INFINITY;
    return p->model.gear_mass(p->model.context, module, z, width);
}

static double mass_of_gears(const ts_arrange_problem *p, uint32_t box, const ts_arranged_box *b,
                            const row *line)
{
    const uint32_t module = p->boxes[box].choices[b->choice].module;
    double         sum    = 0.0;

    for (size_t i = 0; i < line->count; i++) {
        const ts_arranged_shaft *s      = line->shafts[i];
        const bool               right  = i >= line->input;
        const double             before = i > 0 ? width_of_mesh(p, box, b, line, i - 1) : 0.0;
        const double   after  = i + 1 < line->count ? width_of_mesh(p, box, b, line, i) : 0.0;
        const double   inward = right ? before : after, outward = right ? after : before;
        const uint32_t own = i == line->input ? module
                             : right          ? mesh_of(line, module, i - 1).module
                                              : mesh_of(line, module, i).module;
        if (s->z_step == 0) {
            sum += mass_of_gear(p, own, s->z, fmax(before, after));
            continue;
        }
        sum += mass_of_gear(p, own, s->z, inward);
        sum += mass_of_gear(p, s->step_module, s->z_step, outward);
    }
    return sum;
}

/* What that body counts as for hanging before all those further out on its face; one on the input
 * hangs before both sides. */
static double in_way_of(const ts_arrange_problem *p, const row *line, size_t i, int face)
{
    const int own  = accessory_on(line->shafts[i], face);
    double    mass = 0.0;
    for (size_t k = 0; own >= 0 && k < line->count; k++) {
        const bool out = (i >= line->input && k > i) || (i <= line->input && k < i);
        if (out && accessory_on(line->shafts[k], face) >= 0)
            mass += p->accessories[own].lift;
    }
    return mass;
}

static double mass_of_box(const ts_arrange_problem *p, uint32_t index, const ts_arranged_box *b)
{
    const ts_arrange_box *box = &p->boxes[index];
    row                   line;
    double                mass = box->mass + box->choices[b->choice].mass;

    lay_out(p, index, b, &line);
    if (!steps_clear(p, box, box->choices[b->choice].module, &line) || !row_fits(box, &line) ||
        !bodies_clear(p, box, &line))
        return (double)INFINITY;
    for (size_t i = 0; i < line.count; i++) {
        const int front = line.shafts[i]->front, rear = line.shafts[i]->rear;
        if (i != line.input)
            mass += front < 0 && rear < 0 ? box->idler_mass : box->shaft_mass;
        mass += line.shafts[i]->z_step > 0 ? box->step_mass : 0.0;
        mass += front >= 0 ? p->accessories[front].pad_mass : 0.0;
        mass += rear >= 0 ? p->accessories[rear].pad_mass : 0.0;
    }
    mass += mass_of_gears(p, index, b, &line);
    mass += p->wrap_weight * line.at[line.count - 1];
    for (size_t i = 0; i < line.count; i++)
        for (int face = 0; face < 2; face++)
            mass += p->servicing_weight * in_way_of(p, &line, i, face);
    return mass + box->casing * box->radius * line.at[line.count - 1];
}

double brute_mass(const ts_arrange_problem *problem, const ts_arrangement *a)
{
    double mass = 0.0;
    for (uint32_t b = 0; b < problem->box_count; b++)
        if (a->boxes[b].present)
            mass += mass_of_box(problem, b, &a->boxes[b]);
    return mass;
}

/* ---- trying -----------------------------------------------------------------------------------
 */

typedef struct trial {
    const ts_arrange_problem *p;
    uint64_t                  most, steps;
    brute_answer             *answer;
    ts_arrangement            a;
} trial;

static void try_boxes(trial *t, uint32_t box, uint32_t left);

static uint32_t divisor(uint32_t a, uint32_t b)
{
    return b == 0 ? a : divisor(b, a % b);
}

/* turns: teeth of a gear on the input shaft that would turn the plane as fast. */
static bool speed_fits(const trial *t, const ts_arrange_choice *choice, double turns, int accessory,
                       uint32_t z)
{
    const ts_arrange_accessory *a = &t->p->accessories[accessory];
    for (size_t c = 0; c < t->p->condition_count; c++) {
        const double n = choice->speed[c] * turns / (double)z;
        if (n < a->speed_least[c] * (1.0 - 1e-12) || n > a->speed_most[c] * (1.0 + 1e-12))
            return false;
    }
    return true;
}

/* side: 0 left, 1 right, 2 the input shaft; sense: of the shaft. */
static bool may_sit(const trial *t, uint32_t box, int accessory, int face, int side, int sense)
{
    const ts_arrange_accessory *a    = &t->p->accessories[accessory];
    const int                   seen = face == 0 ? sense : -sense;
    if ((a->boxes & 1u << box) == 0 || (a->faces & 1u << face) == 0)
        return false;
    if (a->sense != 0 && a->sense != seen)
        return false;
    if (a->input && side != 2)
        return false;
    return a->side == TS_SIDE_ANY || (a->side == TS_SIDE_LEFT && side == 0) ||
           (a->side == TS_SIDE_RIGHT && side == 1);
}

/* Goes on with the right branch, or with the next box. */
static void after_branch(trial *t, uint32_t box, int side, uint32_t left);

static ts_arranged_shaft with_step(const ts_arrange_step *step, const ts_arrange_choice *choice,
                                   int front, int rear)
{
    return (ts_arranged_shaft){.front  = (int8_t)front,
                               .rear   = (int8_t)rear,
                               .z      = step->z,
                               .z_step = step->z_step,
                               .step_module =
                                   step->module == TS_MODULE_SAME ? choice->module : step->module};
}

static void extend_branch(trial *t, uint32_t box, int side, uint32_t left, uint32_t idlers)
{
    const ts_arrange_problem *p      = t->p;
    const ts_arrange_box     *frame  = &p->boxes[box];
    ts_arranged_box          *b      = &t->a.boxes[box];
    ts_arranged_branch       *branch = &b->branches[side];
    const ts_arrange_choice  *choice = &frame->choices[b->choice];
    const ts_arranged_shaft  *last =
        branch->count == 0 ? &b->input : &branch->shafts[branch->count - 1];
    const int      sense = (branch->count + 1) % 2 == 0 ? frame->input_sense : -frame->input_sense;
    const uint32_t meets = last->z_step > 0 ? last->z_step : last->z;
    bool           stepped = false;
    double         turns   = (double)choice->z_in;
    for (uint32_t i = 0; i < branch->count; i++)
        if (branch->shafts[i].z_step > 0) {
            stepped = true;
            turns   = turns * branch->shafts[i].z_step / branch->shafts[i].z;
        }

    if (++t->steps > t->most)
        t->answer->gave_up = true;
    if (idlers == 0 && last->z_step == 0 && !t->answer->gave_up)
        after_branch(t, box, side, left); /* the branch may end here */
    if (t->answer->gave_up || left == 0)
        return;
    ts_arranged_shaft *fresh = &branch->shafts[branch->count];
    for (size_t i = 0; i < p->idler_teeth_count && idlers < p->idlers_in_row; i++) {
        if (p->hunting && divisor(meets, p->idler_teeth[i]) != 1)
            continue;
        *fresh = (ts_arranged_shaft){.front = -1, .rear = -1, .z = p->idler_teeth[i]};
        branch->count++;
        extend_branch(t, box, side, left, idlers + 1);
        branch->count--;
    }
    for (size_t i = 0; i < frame->step_count && !stepped && idlers < p->idlers_in_row; i++) {
        if (p->hunting && divisor(meets, frame->steps[i].z) != 1)
            continue;
        *fresh = with_step(&frame->steps[i], choice, -1, -1);
        branch->count++;
        extend_branch(t, box, side, left, idlers + 1);
        branch->count--;
    }
    const int n = (int)p->accessory_count;
    for (int front = -1; front < n; front++)
        for (int rear = -1; rear < n; rear++) {
            if (front == rear) /* none at all, or one twice */
                continue;
            const uint32_t set = (front >= 0 ? 1u << front : 0) | (rear >= 0 ? 1u << rear : 0);
            if ((set & ~left) != 0 || (front >= 0 && !may_sit(t, box, front, 0, side, sense)) ||
                (rear >= 0 && !may_sit(t, box, rear, 1, side, sense)))
                continue;
            for (uint32_t z = p->z_least; z <= p->z_most; z++) {
                if ((p->hunting && divisor(meets, z) != 1) ||
                    (front >= 0 && !speed_fits(t, choice, turns, front, z)) ||
                    (rear >= 0 && !speed_fits(t, choice, turns, rear, z)))
                    continue;
                for (size_t i = 0; i < frame->step_count && !stepped; i++) {
                    if (frame->steps[i].z != z)
                        continue;
                    *fresh = with_step(&frame->steps[i], choice, front, rear);
                    branch->count++;
                    extend_branch(t, box, side, left & ~set, 0);
                    branch->count--;
                }
                *fresh = (ts_arranged_shaft){.front = (int8_t)front, .rear = (int8_t)rear, .z = z};
                branch->count++;
                extend_branch(t, box, side, left & ~set, 0);
                branch->count--;
            }
        }
}

static void after_branch(trial *t, uint32_t box, int side, uint32_t left)
{
    if (side == 0) {
        t->a.boxes[box].branches[1].count = 0;
        extend_branch(t, box, 1, left, 0);
    } else {
        const ts_arranged_box *b = &t->a.boxes[box];
        if (b->branches[0].count > 0 || b->branches[1].count > 0 || b->input.front >= 0 ||
            b->input.rear >= 0)
            try_boxes(t, box + 1, left);
    }
}

static void try_inputs(trial *t, uint32_t box, uint32_t left)
{
    const ts_arrange_problem *p      = t->p;
    const ts_arrange_box     *frame  = &p->boxes[box];
    ts_arranged_box          *b      = &t->a.boxes[box];
    const ts_arrange_choice  *choice = &frame->choices[b->choice];

    for (int front = -1; front < (int)p->accessory_count; front++)
        for (int rear = -1; rear < (int)p->accessory_count; rear++) {
            if (front >= 0 && front == rear)
                continue;
            const uint32_t set   = (front >= 0 ? 1u << front : 0) | (rear >= 0 ? 1u << rear : 0);
            const int      on[2] = {front, rear};
            bool           sits  = (set & ~left) == 0;
            for (int face = 0; face < 2 && sits; face++)
                sits = on[face] < 0 ||
                       ((frame->input_faces & 1u << face) != 0 &&
                        may_sit(t, box, on[face], face, 2, frame->input_sense) &&
                        speed_fits(t, choice, (double)choice->z_in, on[face], choice->z_in));
            if (!sits)
                continue;
            b->input = (ts_arranged_shaft){
                .front = (int8_t)front, .rear = (int8_t)rear, .z = choice->z_in};
            b->branches[0].count = 0;
            extend_branch(t, box, 0, left & ~set, 0);
        }
}

static bool company_holds(const ts_arrange_problem *p, const ts_arranged_shaft *s)
{
    for (int face = 0; face < 2; face++) {
        const int own = face == 0 ? s->front : s->rear, other = face == 0 ? s->rear : s->front;
        if (own >= 0 && (p->accessories[own].with & ~(other >= 0 ? 1u << other : 0u)) != 0)
            return false;
    }
    return true;
}

/* Does everybody share the shaft of those whom they must? */
static bool companies_hold(const trial *t)
{
    for (size_t b = 0; b < t->p->box_count; b++) {
        const ts_arranged_box *box = &t->a.boxes[b];
        if (!box->present)
            continue;
        bool hold = company_holds(t->p, &box->input);
        for (int side = 0; side < 2; side++)
            for (uint32_t i = 0; i < box->branches[side].count; i++)
                hold = hold && company_holds(t->p, &box->branches[side].shafts[i]);
        if (!hold)
            return false;
    }
    return true;
}

static void judge(trial *t)
{
    if (!companies_hold(t))
        return;
    brute_answer *answer = t->answer;
    const double  mass   = brute_mass(t->p, &t->a);

    answer->tried++;
    if (!isfinite(mass))
        return;
    answer->count++;
    if (mass < answer->mass) {
        answer->mass      = mass;
        answer->best      = t->a;
        answer->best.mass = mass;
    }
}

static void try_boxes(trial *t, uint32_t box, uint32_t left)
{
    if (t->answer->gave_up)
        return;
    if (box == t->p->box_count) {
        if (left == 0)
            judge(t);
        return;
    }
    t->a.boxes[box].present = false;
    try_boxes(t, box + 1, left);
    t->a.boxes[box].present = true;
    for (uint32_t c = 0; c < t->p->boxes[box].choice_count; c++) {
        t->a.boxes[box].choice = c;
        try_inputs(t, box, left);
    }
    t->a.boxes[box].present = false;
}

void brute_solve(const ts_arrange_problem *problem, uint64_t most, brute_answer *answer)
{
    trial t = {.p = problem, .most = most, .answer = answer};

    memset(answer, 0, sizeof *answer);
    answer->mass = (double)INFINITY;
    try_boxes(&t, 0, (1u << problem->accessory_count) - 1u);
}
