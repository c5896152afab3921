/* search/drive_problem.c: what of a drive file does the search of arrangements need to know? */
#include "search/drive_problem.h"

#include "model/source.h"
#include "search/drive_clash.h"
#include "search/drive_cowl.h"
#include "search/drive_step.h"

#include <math.h>
#include <string.h>

/* Those of its gears and those of second gears. */
enum { MODULES_MOST = 24, MODULES_OF_BOX = MODULES_MOST + TS_STEP_MODULES };

static const double pi = 3.14159265358979323846;

/* A spool at rest has no pitch-line velocity.  Whoever asks for widths leaves such conditions out;
 * the bands are held to this speed. */
#define REST_SPEED 1e-9 /* rad/s */

typedef struct maker {
    const ts_drive_question *question;
    const ts_drive          *drive;
    ts_arena                *arena;
    ts_diagnostics          *list;
    ts_drive_problem        *out;
    bool                     sound, no_memory;
} maker;

/* ---- messages -------------------------------------------------------------------------------- */

static void complain(maker *m, ts_node node, const char *says, const char *name,
                     const char *expected)
{
    const ts_node_place *place = &m->drive->source->nodes[node];
    ts_diagnose_format(m->list,
                       &(ts_diagnostic){.code     = "cannot-arrange",
                                        .line     = node != 0 ? place->key_line : 0,
                                        .column   = node != 0 ? place->key_column : 0,
                                        .columns  = 1,
                                        .expected = expected},
                       says, name);
    m->sound = false;
}

/* ---- accessories ----------------------------------------------------------------------------- */

static const ts_accessory_freedom *freedom_of(const maker *m, size_t accessory)
{
    const ts_freedom *arrange = &m->drive->arrange;
    for (size_t i = 0; i < arrange->accessory_count; i++)
        if (arrange->accessories[i].accessory == (int32_t)accessory)
            return &arrange->accessories[i];
    return NULL;
}

static bool may_sit(const maker *m, size_t accessory, int32_t spool)
{
    const ts_accessory         *a = &m->drive->accessories[accessory];
    const ts_accessory_freedom *f = freedom_of(m, accessory);
    const bool essential = a->purpose.value == TS_FOR_ENGINE || a->purpose.value == TS_FOR_START;
    if (essential && m->drive->spools[spool].cranked.value != TS_YES)
        return false;
    if (f != NULL && f->only >= 0 && f->only != spool)
        return false;
    for (size_t i = 0; i < m->question->extra_count; i++) {
        const ts_extra_demand *extra = &m->question->extra[i];
        if (extra->accessory == (int32_t)accessory && extra->spool >= 0 && extra->spool != spool)
            return false;
    }
    return true;
}

static uint32_t faces_of_choice(int choice)
{
    if (choice == TS_CHOOSE_FRONT)
        return TS_FACE_FRONT;
    return choice == TS_CHOOSE_REAR ? TS_FACE_REAR : TS_FACE_FRONT | TS_FACE_REAR;
}

static ts_arrange_side side_of_choice(int choice)
{
    if (choice == TS_CHOOSE_CLOCKWISE)
        return TS_SIDE_LEFT;
    return choice == TS_CHOOSE_ANTICLOCKWISE ? TS_SIDE_RIGHT : TS_SIDE_ANY;
}

static int sense_of(ts_pick turns)
{
    if (turns.standing != TS_GIVEN && turns.standing != TS_ASSUMED)
        return 0;
    return turns.value == TS_CCW ? 1 : turns.value == TS_CW ? -1 : 0;
}

/* The highest share of its spool's speed that any of its bands allows on any box; the ratio that it
 * has where none does. */
static double highest_ratio(const maker *m, size_t accessory)
{
    const ts_drive *drive = m->drive;
    double          most  = 0.0;
    for (size_t d = 0; d < drive->drive_count; d++) {
        const int32_t spool = drive->drive[d].spool;
        double        ratio = INFINITY;
        if (!may_sit(m, accessory, spool))
            continue;
        for (size_t c = 0; c < drive->condition_count; c++) {
            const ts_span *band = &drive->accessories[accessory].speed[c];
            const double   n    = drive->conditions[c].speed[spool].value;
            if (band->standing != TS_ABSENT && isfinite(band->high) && n > 0.0)
                ratio = fmin(ratio, band->high / n);
        }
        most = isfinite(ratio) ? fmax(most, ratio) : most;
    }
    return most;
}

/* W absorbed at the pad in a condition; NaN: not known. */
static double power_in(const maker *m, size_t accessory, size_t condition, double ratio)
{
    const ts_accessory *a      = &m->drive->accessories[accessory];
    const ts_measure    drives = a->drives[condition];
    if (drives.standing == TS_ABSENT)
        return a->power[condition].standing == TS_ABSENT ? 0.0 : a->power[condition].value;
    double n = 0.0;
    for (size_t d = 0; d < m->drive->drive_count; d++)
        if (may_sit(m, accessory, m->drive->drive[d].spool))
            n = fmax(n, m->drive->conditions[condition].speed[m->drive->drive[d].spool].value);
    return -drives.value * ratio * n;
}

static void take_powers(maker *m, size_t accessory, double *power)
{
    const ts_accessory *a      = &m->drive->accessories[accessory];
    const double        ratio  = highest_ratio(m, accessory);
    const double       *factor = m->question->power_factor;
    bool                drives = false;
    for (size_t c = 0; c < m->drive->condition_count; c++) {
        power[c] = power_in(m, accessory, c, ratio) * (factor != NULL ? factor[accessory] : 1.0);
        drives   = drives || a->drives[c].standing != TS_ABSENT;
        if (isnan(power[c])) {
            complain(m, a->node, "the power of `%s` is not known in every condition", a->name,
                     "its power, or how much it drives, in each");
            return;
        }
    }
    if (drives && !(ratio > 0.0))
        complain(m, a->node, "`%s` drives with a torque, and no band says how fast it may turn",
                 a->name, "an upper end of its speed, such as speed: {always: ..15500 rpm}");
}

static void take_bands(const maker *m, size_t accessory, double *least, double *most)
{
    const ts_measure margin = m->drive->limits.speed_margin;
    const double     spare  = 1.0 + (ts_measure_known(margin) ? margin.value : 0.0);
    for (size_t c = 0; c < m->drive->condition_count; c++) {
        const ts_span *band  = &m->drive->accessories[accessory].speed[c];
        const bool     known = band->standing == TS_GIVEN || band->standing == TS_ASSUMED;
        least[c]             = known && band->low > 0.0 ? band->low * spare : 0.0;
        most[c]              = known ? band->high / spare : (double)INFINITY;
    }
}

static void narrow(const maker *m, size_t accessory, ts_arrange_accessory *out)
{
    for (size_t i = 0; i < m->question->extra_count; i++) {
        const ts_extra_demand *extra = &m->question->extra[i];
        if (extra->accessory != (int32_t)accessory)
            continue;
        out->faces &= faces_of_choice((int)extra->face);
        if (extra->side != TS_CHOOSE_EITHER_SIDE)
            out->side = side_of_choice((int)extra->side);
    }
}

/* A ratio that it must keep, in every condition in which its spool turns. */
static void keep_ratio(const maker *m, size_t accessory, double *least, double *most)
{
    for (size_t i = 0; i < m->question->extra_count; i++) {
        const ts_extra_demand *extra = &m->question->extra[i];
        if (extra->accessory != (int32_t)accessory || !(extra->ratio > 0.0) || extra->spool < 0)
            continue;
        for (size_t c = 0; c < m->drive->condition_count; c++) {
            const double n = extra->ratio * m->drive->conditions[c].speed[extra->spool].value;
            if (n > 0.0) {
                least[c] = fmax(least[c], n * (1.0 - 1e-12));
                most[c]  = fmin(most[c], n * (1.0 + 1e-12));
            }
        }
    }
}

static void take_accessory(maker *m, size_t accessory, ts_arrange_accessory *out)
{
    const ts_accessory         *a     = &m->drive->accessories[accessory];
    const ts_accessory_freedom *f     = freedom_of(m, accessory);
    const size_t                count = m->drive->condition_count;
    double *least = TS_TAKE(m->arena, double, count), *most = TS_TAKE(m->arena, double, count);
    double *power = TS_TAKE(m->arena, double, count);
    if (least == NULL || most == NULL || power == NULL) {
        m->no_memory = true;
        return;
    }
    take_powers(m, accessory, power);
    take_bands(m, accessory, least, most);
    keep_ratio(m, accessory, least, most);
    *out = (ts_arrange_accessory){.name        = a->name,
                                  .faces       = faces_of_choice(f != NULL ? f->face.value : -1),
                                  .side        = side_of_choice(f != NULL ? f->side.value : -1),
                                  .sense       = sense_of(a->turns),
                                  .body_radius = a->body.radius.value,
                                  .pad_mass    = m->drive->arrange.mass.pad.value,
                                  .speed_least = least,
                                  .speed_most  = most,
                                  .power       = power};
    narrow(m, accessory, out);
    for (size_t d = 0; d < m->drive->drive_count; d++)
        if (may_sit(m, accessory, m->drive->drive[d].spool))
            out->boxes |= 1u << d;
    if (a->body.node == 0 || !ts_measure_known(a->body.radius))
        complain(m, a->node, "the body of `%s` has no known radius", a->name,
                 "body: {radius: 60 mm}");
    if (ts_drive_place_clash(m->question, accessory, m->list, m->arena)) {
        m->sound = false;
        return;
    }
    if (out->boxes == 0)
        complain(m, a->node, "`%s` may stand on no box", a->name,
                 "a box on a spool that it may use");
    if (out->faces == 0)
        complain(m, a->node, "`%s` may stand on no face", a->name, "one face at least");
}

static void take_accessories(maker *m)
{
    const size_t          count = m->drive->accessory_count;
    ts_arrange_accessory *all   = TS_TAKE(m->arena, ts_arrange_accessory, count);
    if (all == NULL) {
        m->no_memory = true;
        return;
    }
    if (count > TS_ARRANGE_ACCESSORIES) {
        complain(m, 0, "there are more accessories than %s", "16, the most that can be arranged",
                 NULL);
        return;
    }
    for (size_t a = 0; a < count && !m->no_memory; a++) {
        take_accessory(m, a, &all[a]);
        m->out->accessory_of[a] = a;
    }
    m->out->problem.accessories     = all;
    m->out->problem.accessory_count = count;
}

/* ---- boxes ----------------------------------------------------------------------------------- */

static const ts_box_freedom *box_freedom_of(const maker *m, int32_t spool)
{
    const ts_freedom *arrange = &m->drive->arrange;
    for (size_t i = 0; i < arrange->box_count; i++)
        if (arrange->boxes[i].spool == spool)
            return &arrange->boxes[i];
    return NULL;
}

static uint32_t input_shaft_of(const maker *m, size_t tapped)
{
    const ts_train *train = m->question->motion->train;
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].record == &m->drive->drive[tapped].box.input)
            return s;
    return 0;
}

static double known_or(ts_measure measure, double other)
{
    return ts_measure_known(measure) ? measure.value : other;
}

/* Modules of the box: those that it may have, else the one that it has. */
static size_t list_modules(maker *m, size_t tapped, double *m_n)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = box_freedom_of(m, drive->spool);
    if (freedom != NULL && freedom->modules.count > 0) {
        for (size_t i = 0; i < freedom->modules.count; i++)
            m_n[i] = freedom->modules.items[i].value;
        return freedom->modules.count;
    }
    m_n[0] = drive->box.gears.module.value;
    if (!ts_measure_known(drive->box.gears.module))
        complain(m, drive->box.node, "the box of `%s` has no module for its gears",
                 m->drive->spools[drive->spool].name,
                 "`module` in its `gears`, or `modules` in "
                 "`arrange`");
    return 1;
}

static bool met(const uint32_t *z, size_t count, uint32_t one)
{
    for (size_t i = 0; i < count; i++)
        if (z[i] == one)
            return true;
    return false;
}

/* Spans written out, each number once; at most `room`. */
static size_t write_out(const ts_tally_spans *spans, uint32_t *z, size_t room)
{
    size_t count = 0;
    for (size_t i = 0; i < spans->count; i++)
        for (int64_t one = spans->items[i].low; one <= spans->items[i].high; one++)
            if (count < room && !met(z, count, (uint32_t)one))
                z[count++] = (uint32_t)one;
    return count;
}

static size_t list_input_teeth(maker *m, size_t tapped, uint32_t *z)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = box_freedom_of(m, drive->spool);
    if (freedom != NULL && freedom->input_teeth.count > 0)
        return write_out(&freedom->input_teeth, z, TS_ARRANGE_TEETH);
    const ts_tally has = drive->box.input.teeth;
    if (has.standing != TS_GIVEN || has.value < 1 || has.value > TS_ARRANGE_TEETH) {
        complain(m, drive->box.input.node,
                 "the input of the box of `%s` has no tooth number to take",
                 m->drive->spools[drive->spool].name,
                 "`teeth` from 1 to 400, or `input teeth` in `arrange`");
        return 0;
    }
    z[0] = (uint32_t)has.value;
    return 1;
}

static double *input_speeds(maker *m, size_t tapped)
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
        speed[c]       = n > 0.0 ? n : REST_SPEED;
    }
    return speed;
}

/* A list of nothing is no list that was left out. */
static void refuse_empty(maker *m, const ts_box_freedom *freedom, const char *key, size_t count)
{
    const ts_node list = freedom != NULL && freedom->node != 0
                             ? ts_source_child(m->drive->source, freedom->node, ts_text_of(key))
                             : 0;
    if (list != 0 && count == 0)
        complain(m, list, "`%s` has nothing to choose from", key,
                 "one entry at least, or no such key: then what stands there stays");
}

/* Bevels and radial shafts that may stand between spool and box; a spool at rest turns nothing. */
static void take_take_offs(maker *m, size_t tapped, double mass)
{
    const char           *spool   = m->drive->spools[m->drive->drive[tapped].spool].name;
    const ts_box_freedom *freedom = box_freedom_of(m, m->drive->drive[tapped].spool);
    ts_take_off_list     *list    = &m->out->take_offs[tapped];
    refuse_empty(m, freedom, "spool bevels", freedom != NULL ? freedom->spool_bevel_count : 0);
    refuse_empty(m, freedom, "box bevels", freedom != NULL ? freedom->box_bevel_count : 0);
    refuse_empty(m, freedom, "radial shafts", freedom != NULL ? freedom->tower_count : 0);
    if (!ts_drive_may_take_off(freedom))
        return;
    if (!ts_drive_take_offs(m->drive, tapped, freedom, m->arena, list)) {
        m->no_memory = true;
        return;
    }
    if (list->fault == NULL && list->count == 0)
        complain(m, freedom->node,
                 "the bevels and radial shafts to choose from for the box of `%s` are too many",
                 spool, "no more than 64 ways to combine one of each");
    if (list->fault != NULL)
        complain(m, list->at,
                 list->lacks ? "what these bevels or radial shafts weigh is not known without %s"
                             : "this cannot drive the box: %s",
                 list->fault, NULL);
    for (size_t i = 0; i < list->count && list->fault == NULL; i++) {
        for (size_t c = 0; c < m->drive->condition_count; c++)
            list->items[i].speed[c] = fmax(list->items[i].speed[c], REST_SPEED);
        if (mass + list->items[i].more < 0.0)
            complain(m, m->drive->arrange.mass.node != 0 ? m->drive->arrange.mass.node : list->at,
                     "`box` of `mass` weighs less than the bevels and the radial shaft of `%s` "
                     "that are in it",
                     spool, "what bevels, radial shaft and mounts of a box weigh as they stand");
    }
}

/* Every module with every tooth number of the input and every take-off. */
static void take_choices(maker *m, size_t tapped, ts_arrange_box *out)
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
static double casing_of(const maker *m, const ts_box *box)
{
    const ts_mass_scheme *mass  = &m->drive->arrange.mass;
    const double          depth = known_or(box->depth, mass->height.value);
    return mass->casing_density.value * mass->wall.value * 2.0 * (depth + mass->height.value);
}

/* A face of the input that holds a cover or a hand-turning pad stays as it is. */
static uint32_t input_faces(const ts_box *box, const ts_box_freedom *freedom)
{
    uint32_t faces = faces_of_choice(freedom != NULL ? freedom->input_face.value : -1);
    if (box->input.front.use != TS_PAD_NONE && box->input.front.use != TS_PAD_ACCESSORY)
        faces &= ~(uint32_t)TS_FACE_FRONT;
    if (box->input.rear.use != TS_PAD_NONE && box->input.rear.use != TS_PAD_ACCESSORY)
        faces &= ~(uint32_t)TS_FACE_REAR;
    return faces;
}

/* Twice what is left between the engine casing and the arc, less the gap. */
static double tip_most(const maker *m, const ts_box *box)
{
    const ts_measure casing = m->drive->engine.casing, gap = m->drive->limits.body_gap;
    if (!ts_measure_known(casing) || !ts_measure_known(gap))
        return 0.0;
    return 2.0 * (box->arc.radius.value - casing.value - gap.value + 1e-9);
}

static void take_steps(maker *m, size_t tapped, ts_arrange_box *out)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = box_freedom_of(m, drive->spool);
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
        complain(m, freedom->node,
                 "the step shafts of the box of `%s` have no tooth number for their "
                 "second gear",
                 m->drive->spools[drive->spool].name,
                 "`step teeth` beside `stepped teeth` or `step modules`");
    out->steps = ts_drive_steps(&wish, m->arena, &out->step_count);
    if (out->steps == NULL || m->out->problem.module_count > MODULES_OF_BOX * m->drive->drive_count)
        m->no_memory = true;
}

static void take_box(maker *m, size_t tapped, ts_arrange_box *out)
{
    const ts_spool_drive *drive   = &m->drive->drive[tapped];
    const ts_box_freedom *freedom = box_freedom_of(m, drive->spool);
    const ts_mass_scheme *mass    = &m->drive->arrange.mass;
    const uint32_t        shaft   = input_shaft_of(m, tapped);
    const double          wrap    = known_or(m->drive->limits.wrap, pi);
    const int             sense   = m->question->motion->shafts[shaft].sense;
    *out                          = (ts_arrange_box){.name        = m->drive->spools[drive->spool].name,
                                                     .input_sense = -sense, /* seen from the front */
                                                     .radius      = drive->box.arc.radius.value,
                                                     .wrap_most   = freedom != NULL ? known_or(freedom->wrap, wrap) : wrap,
                                                     .input_faces = input_faces(&drive->box, freedom),
                                                     .mass        = mass->box.value + mass->shaft.value,
                                                     .shaft_mass  = mass->shaft.value,
                                                     .idler_mass  = mass->idler.value,
                                                     .step_mass   = mass->step.value,
                                                     .step_gap    = m->drive->limits.gear_gap.value,
                                                     .casing      = casing_of(m, &drive->box)};
    out->tip_most                 = tip_most(m, &drive->box);
    out->addendum  = drive->box.gears.addendum.value * cos(drive->box.gears.helix_angle.value);
    out->side_most = freedom != NULL ? known_or(freedom->side, out->wrap_most) : out->wrap_most;
    take_take_offs(m, tapped, mass->box.value);
    if (!m->no_memory)
        take_choices(m, tapped, out);
    take_steps(m, tapped, out);
    m->out->tapped[tapped]   = tapped;
    m->out->spool_of[tapped] = drive->spool;
    if (sense == 0)
        complain(m, drive->node, "which way the spool `%s` turns is not known", out->name,
                 "`turns` of the spool");
}

static void take_boxes(maker *m)
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
        complain(m, 0, "there are more boxes than %s", "4, the most that can be arranged", NULL);
        return;
    }
    for (size_t d = 0; d < count && !m->no_memory; d++)
        take_box(m, d, &all[d]);
    m->out->problem.boxes     = all;
    m->out->problem.box_count = count;
}

/* A body that meets the cowl wherever it stands on a box does not stand there. */
static void bar_by_cowl(maker *m)
{
    const ts_arrange_problem *p = &m->out->problem;
    for (size_t a = 0; a < p->accessory_count; a++) {
        ts_arrange_accessory *one    = (ts_arrange_accessory *)&p->accessories[a];
        const uint32_t        before = one->boxes;
        for (size_t b = 0; b < p->box_count; b++)
            if ((before >> b & 1u) != 0 &&
                ts_drive_cowl_bars(m->drive, b, p->boxes[b].side_most, one->body_radius))
                one->boxes &= ~(1u << b);
        if (before != 0 && one->boxes == 0)
            complain(m, m->drive->accessories[a].body.node,
                     "the body of `%s` has no room inside the cowl at any angle that a box of its "
                     "own may "
                     "reach",
                     one->name, "a smaller body, or a cowl that leaves it room somewhere");
    }
}

/* ---- the rest -------------------------------------------------------------------------------- */

static void take_rules(maker *m)
{
    const ts_freedom   *arrange = &m->drive->arrange;
    const ts_limits    *limits  = &m->drive->limits;
    ts_arrange_problem *p       = &m->out->problem;
    uint32_t           *idlers  = TS_TAKE(m->arena, uint32_t, TS_ARRANGE_TEETH);
    if (idlers == NULL) {
        m->no_memory = true;
        return;
    }
    p->condition_count     = m->drive->condition_count;
    p->clearance           = TS_CLEARANCE_CHORD;
    p->gap                 = known_or(limits->body_gap, 0.0);
    p->z_least             = (uint32_t)arrange->teeth.low;
    p->z_most              = (uint32_t)arrange->teeth.high;
    p->idler_teeth         = idlers;
    p->idler_teeth_count   = write_out(&arrange->idler_teeth, idlers, TS_ARRANGE_TEETH);
    p->idlers_in_row       = (uint32_t)arrange->idlers.value;
    p->hunting             = arrange->hunting.value == TS_YES;
    p->width_step          = arrange->face_step.value;
    p->width_least         = ceil(arrange->least_face.value / p->width_step - 1e-9) * p->width_step;
    p->width_over_diameter = known_or(limits->face_to_diameter, 1.0);
    m->out->density        = arrange->mass.density.value * arrange->mass.fill.value;
}

ts_status ts_drive_problem_make(const ts_drive_question *question, ts_arena *arena,
                                ts_diagnostics *list, ts_drive_problem *out)
{
    maker m = {.question = question,
               .drive    = question->drive,
               .arena    = arena,
               .list     = list,
               .out      = out,
               .sound    = true};
    memset(out, 0, sizeof *out);
    take_rules(&m);
    take_accessories(&m);
    if (!m.no_memory)
        take_boxes(&m);
    if (m.no_memory)
        return TS_NO_MEMORY;
    if (m.sound)
        bar_by_cowl(&m);
    if (m.sound && ts_drive_clashes(question, out, list, arena) > 0)
        m.sound = false;
    return m.sound ? TS_OK : TS_NOT_UNDERSTOOD;
}
