/* search/drive_problem_accessories.c: where may each accessory stand, how fast, and with what
 * power? */
#include "search/drive_clash.h"
#include "search/drive_problem_parts.h"

#include <math.h>

static const ts_accessory_freedom *freedom_of(const ts_problem_maker *m, size_t accessory)
{
    const ts_freedom *arrange = &m->drive->arrange;
    for (size_t i = 0; i < arrange->accessory_count; i++)
        if (arrange->accessories[i].accessory == (int32_t)accessory)
            return &arrange->accessories[i];
    return NULL;
}

static bool may_sit(const ts_problem_maker *m, size_t accessory, int32_t spool)
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
static double highest_ratio(const ts_problem_maker *m, size_t accessory)
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
static double power_in(const ts_problem_maker *m, size_t accessory, size_t condition, double ratio)
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

static void take_powers(ts_problem_maker *m, size_t accessory, double *power)
{
    const ts_accessory *a      = &m->drive->accessories[accessory];
    const double        ratio  = highest_ratio(m, accessory);
    const double       *factor = m->question->power_factor;
    bool                drives = false;
    for (size_t c = 0; c < m->drive->condition_count; c++) {
        power[c] = power_in(m, accessory, c, ratio) * (factor != NULL ? factor[accessory] : 1.0);
        drives   = drives || a->drives[c].standing != TS_ABSENT;
        if (isnan(power[c])) {
            ts_problem_complain(m, a->node, "the power of `%s` is not known in every condition",
                                a->name, "its power, or how much it drives, in each");
            return;
        }
    }
    if (drives && !(ratio > 0.0))
        ts_problem_complain(
            m, a->node, "`%s` drives with a torque, and no band says how fast it may turn", a->name,
            "an upper end of its speed, such as speed: {always: ..15500 rpm}");
}

static void take_bands(const ts_problem_maker *m, size_t accessory, double *least, double *most)
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

static void narrow(const ts_problem_maker *m, size_t accessory, ts_arrange_accessory *out)
{
    for (size_t i = 0; i < m->question->extra_count; i++) {
        const ts_extra_demand *extra = &m->question->extra[i];
        if (extra->accessory != (int32_t)accessory)
            continue;
        out->faces &= ts_faces_of_choice((int)extra->face);
        if (extra->side != TS_CHOOSE_EITHER_SIDE)
            out->side = side_of_choice((int)extra->side);
    }
}

/* A ratio that it must keep, in every condition in which its spool turns. */
static void keep_ratio(const ts_problem_maker *m, size_t accessory, double *least, double *most)
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

static void take_accessory(ts_problem_maker *m, size_t accessory, ts_arrange_accessory *out)
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
                                  .faces       = ts_faces_of_choice(f != NULL ? f->face.value : -1),
                                  .side        = side_of_choice(f != NULL ? f->side.value : -1),
                                  .sense       = sense_of(a->turns),
                                  .body_radius = a->body.radius.value,
                                  .pad_mass    = m->drive->arrange.mass.pad.value,
                                  .speed_least = least,
                                  .speed_most  = most,
                                  .power       = power,
                                  .lift        = ts_known_or(a->mass, 0.0)};
    narrow(m, accessory, out);
    for (size_t d = 0; d < m->drive->drive_count; d++)
        if (may_sit(m, accessory, m->drive->drive[d].spool))
            out->boxes |= 1u << d;
    if (a->body.node == 0 || !ts_measure_known(a->body.radius))
        ts_problem_complain(m, a->node, "the body of `%s` has no known radius", a->name,
                            "body: {radius: 60 mm}");
    if (m->drive->arrange.weights.servicing.value > 0.0 && !ts_measure_known(a->mass))
        ts_problem_complain(m, a->node,
                            "the mass of `%s` is not known, which `servicing` of `weights` counts",
                            a->name, "its `mass`, or servicing: 0");
    if (ts_drive_place_clash(m->question, accessory, m->list, m->arena)) {
        m->sound = false;
        return;
    }
    if (out->boxes == 0)
        ts_problem_complain(m, a->node, "`%s` may stand on no box", a->name,
                            "a box on a spool that it may use");
    if (out->faces == 0)
        ts_problem_complain(m, a->node, "`%s` may stand on no face", a->name, "one face at least");
}

void ts_problem_take_accessories(ts_problem_maker *m)
{
    const size_t          count = m->drive->accessory_count;
    ts_arrange_accessory *all   = TS_TAKE(m->arena, ts_arrange_accessory, count);
    if (all == NULL) {
        m->no_memory = true;
        return;
    }
    if (count > TS_ARRANGE_ACCESSORIES) {
        ts_problem_complain(m, 0, "there are more accessories than %s",
                            "16, the most that can be arranged", NULL);
        return;
    }
    for (size_t a = 0; a < count && !m->no_memory; a++) {
        take_accessory(m, a, &all[a]);
        m->out->accessory_of[a] = a;
    }
    m->out->problem.accessories     = all;
    m->out->problem.accessory_count = count;
}
