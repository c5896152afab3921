/* search/drive_problem_boxes.c: what may each box be, and what does it weigh? */
#include "search/drive_problem_parts.h"
#include "search/drive_step.h"

#include <math.h>

/* Those of its gears and those of second gears. */
enum { MODULES_MOST = 24, MODULES_OF_BOX = MODULES_MOST + TS_STEP_MODULES };

static const double pi = 3.14159265358979323846;

static uint32_t input_shaft_of(const ts_problem_maker *m, size_t tapped)
{
    const ts_train *train = m->question->motion->train;
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].record == &m->drive->drive[tapped].box.input)
            return s;
    return 0;
}

/* Modules of the box: those that it may have, else the one that it has. */
static size_t list_modules(ts_problem_maker *m, size_t tapped, double *m_n)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = ts_box_freedom_of(m, drive->spool);
    if (freedom != NULL && freedom->modules.count > 0) {
        for (size_t i = 0; i < freedom->modules.count; i++)
            m_n[i] = freedom->modules.items[i].value;
        return freedom->modules.count;
    }
    m_n[0] = drive->box.gears.module.value;
    if (!ts_measure_known(drive->box.gears.module))
        ts_problem_complain(m, drive->box.node, "the box of `%s` has no module for its gears",
                            m->drive->spools[drive->spool].name,
                            "`module` in its `gears`, or `modules` in "
                            "`arrange`");
    return 1;
}

static size_t list_input_teeth(ts_problem_maker *m, size_t tapped, uint32_t *z)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = ts_box_freedom_of(m, drive->spool);
    if (freedom != NULL && freedom->input_teeth.count > 0)
        return ts_write_out(&freedom->input_teeth, z, TS_ARRANGE_TEETH);
    const ts_tally has = drive->box.input.teeth;
    if (has.standing != TS_GIVEN || has.value < 1 || has.value > TS_ARRANGE_TEETH) {
        ts_problem_complain(m, drive->box.input.node,
                            "the input of the box of `%s` has no tooth number to take",
                            m->drive->spools[drive->spool].name,
                            "`teeth` from 1 to 400, or `input teeth` in `arrange`");
        return 0;
    }
    z[0] = (uint32_t)has.value;
    return 1;
}

static double *input_speeds(ts_problem_maker *m, size_t tapped)
{
    const ts_motion *motion = m->question->motion;
    const uint32_t   shaft  = input_shaft_of(m, tapped);
    double          *speed  = TS_TAKE(m->arena, double, m->drive->condition_count);
    if (speed == NULL) {
        m->no_memory = true;
        return NULL;
    }
    for (size_t c = 0; c < m->drive->condition_count; c++) {
        const double n = motion->speed[c * motion->train->shaft_count + shaft];
        speed[c]       = n > 0.0 ? n : TS_REST_SPEED;
    }
    return speed;
}

/* Every module with every tooth number of the input and every take-off. */
static void take_choices(ts_problem_maker *m, size_t tapped, ts_arrange_box *out)
{
    double                  m_n[MODULES_MOST];
    uint32_t                z[TS_ARRANGE_TEETH];
    ts_arrange_problem     *p       = &m->out->problem;
    const ts_take_off_list *list    = &m->out->take_offs[tapped];
    const size_t            ways    = list->count > 0 ? list->count : 1;
    const size_t            modules = list_modules(m, tapped, m_n);
    const size_t            teeth   = list_input_teeth(m, tapped, z);
    const double            beta    = m->drive->drive[tapped].box.gears.helix_angle.value;
    const double           *speed = m->out->speed[tapped] = input_speeds(m, tapped);
    ts_arrange_choice      *all = TS_TAKE(m->arena, ts_arrange_choice, modules * teeth * ways + 1);
    if (all == NULL || speed == NULL || modules > MODULES_MOST) {
        m->no_memory = true;
        return;
    }
    for (size_t i = 0; i < modules; i++) {
        const uint32_t module          = (uint32_t)p->module_count++;
        m->out->m_n[module]            = m_n[i];
        ((double *)p->modules)[module] = m_n[i] / cos(beta);
        for (size_t k = 0; k < teeth * ways; k++) {
            const ts_drive_take_off *by = list->count > 0 ? &list->items[k % ways] : NULL;
            all[out->choice_count++]    = (ts_arrange_choice){.module   = module,
                                                              .z_in     = z[k / ways],
                                                              .take_off = (uint32_t)(k % ways),
                                                              .speed = by != NULL ? by->speed : speed,
                                                              .mass  = by != NULL ? by->more : 0.0};
        }
    }
    out->choices = all;
}

/* kg per metre of arc: a wall round a section of this height and depth. */
static double casing_of(const ts_problem_maker *m, const ts_box *box)
{
    const ts_mass_scheme *mass  = &m->drive->arrange.mass;
    const double          depth = ts_known_or(box->depth, mass->height.value);
    return mass->casing_density.value * mass->wall.value * 2.0 * (depth + mass->height.value);
}

/* A face of the input that holds a cover or a hand-turning pad stays as it is. */
static uint32_t input_faces(const ts_box *box, const ts_box_freedom *freedom)
{
    uint32_t faces = ts_faces_of_choice(freedom != NULL ? freedom->input_face.value : -1);
    if (box->input.front.use != TS_PAD_NONE && box->input.front.use != TS_PAD_ACCESSORY)
        faces &= ~(uint32_t)TS_FACE_FRONT;
    if (box->input.rear.use != TS_PAD_NONE && box->input.rear.use != TS_PAD_ACCESSORY)
        faces &= ~(uint32_t)TS_FACE_REAR;
    return faces;
}

/* Twice what is left between the engine casing and the arc, less the gap. */
static double tip_most(const ts_problem_maker *m, const ts_box *box)
{
    const ts_measure casing = m->drive->engine.casing, gap = m->drive->limits.body_gap;
    if (!ts_measure_known(casing) || !ts_measure_known(gap))
        return 0.0;
    return 2.0 * (box->arc.radius.value - casing.value - gap.value + 1e-9);
}

static void take_steps(ts_problem_maker *m, size_t tapped, ts_arrange_box *out)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = ts_box_freedom_of(m, drive->spool);
    const ts_step_wish    wish    = {.drive        = m->drive,
                                     .box          = &drive->box,
                                     .freedom      = freedom,
                                     .idlers       = m->out->problem.idler_teeth,
                                     .idler_count  = m->out->problem.idler_teeth_count,
                                     .m_n          = m->out->m_n,
                                     .m_t          = (double *)m->out->problem.modules,
                                     .module_count = &m->out->problem.module_count};
    if (freedom != NULL && freedom->step_teeth.count == 0 &&
        (freedom->stepped_teeth.count > 0 || freedom->step_modules.count > 0))
        ts_problem_complain(m, freedom->node,
                            "the step shafts of the box of `%s` have no tooth number for their "
                            "second gear",
                            m->drive->spools[drive->spool].name,
                            "`step teeth` beside `stepped teeth` or `step modules`");
    out->steps = ts_drive_steps(&wish, m->arena, &out->step_count);
    if (out->steps == NULL || m->out->problem.module_count > MODULES_OF_BOX * m->drive->drive_count)
        m->no_memory = true;
}

static void take_box(ts_problem_maker *m, size_t tapped, ts_arrange_box *out)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = ts_box_freedom_of(m, drive->spool);
    const ts_mass_scheme *mass    = &m->drive->arrange.mass;
    const uint32_t        shaft   = input_shaft_of(m, tapped);
    const double          wrap    = ts_known_or(m->drive->limits.wrap, pi);
    const int             sense   = m->question->motion->shafts[shaft].sense;
    *out                          = (ts_arrange_box){.name        = m->drive->spools[drive->spool].name,
                                                     .input_sense = -sense, /* seen from the front */
                                                     .radius      = drive->box.arc.radius.value,
                                                     .wrap_most = freedom != NULL ? ts_known_or(freedom->wrap, wrap) : wrap,
                                                     .input_faces = input_faces(&drive->box, freedom),
                                                     .mass        = mass->box.value + mass->shaft.value,
                                                     .shaft_mass  = mass->shaft.value,
                                                     .idler_mass  = mass->idler.value,
                                                     .step_mass   = mass->step.value,
                                                     .step_gap    = m->drive->limits.gear_gap.value,
                                                     .casing      = casing_of(m, &drive->box)};
    out->tip_most                 = tip_most(m, &drive->box);
    out->addendum  = drive->box.gears.addendum.value * cos(drive->box.gears.helix_angle.value);
    out->side_most = freedom != NULL ? ts_known_or(freedom->side, out->wrap_most) : out->wrap_most;
    ts_problem_take_take_offs(m, tapped, mass->box.value);
    if (!m->no_memory)
        take_choices(m, tapped, out);
    take_steps(m, tapped, out);
    m->out->tapped[tapped]   = tapped;
    m->out->spool_of[tapped] = drive->spool;
    if (sense == 0)
        ts_problem_complain(m, drive->node, "which way the spool `%s` turns is not known",
                            out->name, "`turns` of the spool");
}

void ts_problem_take_boxes(ts_problem_maker *m)
{
    const size_t    count   = m->drive->drive_count;
    ts_arrange_box *all     = TS_TAKE(m->arena, ts_arrange_box, count);
    m->out->tapped          = TS_TAKE(m->arena, size_t, count);
    m->out->spool_of        = TS_TAKE(m->arena, int32_t, count);
    m->out->m_n             = TS_TAKE(m->arena, double, MODULES_OF_BOX *count);
    m->out->problem.modules = TS_TAKE(m->arena, double, MODULES_OF_BOX *count);
    m->out->take_offs       = TS_TAKE(m->arena, ts_take_off_list, count);
    m->out->speed           = TS_TAKE(m->arena, const double *, count);
    if (all == NULL || m->out->take_offs == NULL || m->out->speed == NULL ||
        m->out->tapped == NULL || m->out->spool_of == NULL || m->out->m_n == NULL ||
        m->out->problem.modules == NULL) {
        m->no_memory = true;
        return;
    }
    if (count > TS_ARRANGE_BOXES) {
        ts_problem_complain(m, 0, "there are more boxes than %s",
                            "4, the most that can be arranged", NULL);
        return;
    }
    for (size_t d = 0; d < count && !m->no_memory; d++)
        take_box(m, d, &all[d]);
    m->out->problem.boxes     = all;
    m->out->problem.box_count = count;
}
