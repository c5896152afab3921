/* search/drive_problem.c: what of a drive file does the search of arrangements need to know? */
#include "search/drive_clash.h"
#include "search/drive_cowl.h"
#include "search/drive_problem_parts.h"

#include <math.h>
#include <string.h>

/* A body that meets the cowl wherever it stands on a box does not stand there. */
static void bar_by_cowl(ts_problem_maker *m)
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
            ts_problem_complain(
                m, m->drive->accessories[a].body.node,
                "the body of `%s` has no room inside the cowl at any angle that a box of its "
                "own may "
                "reach",
                one->name, "a smaller body, or a cowl that leaves it room somewhere");
    }
}

static void take_rules(ts_problem_maker *m)
{
    const ts_freedom   *arrange = &m->drive->arrange;
    const ts_limits    *limits  = &m->drive->limits;
    ts_arrange_problem *p       = &m->out->problem;
    uint32_t           *idlers  = TS_TAKE(m->arena, uint32_t, TS_ARRANGE_TEETH);
    if (idlers == NULL) {
        m->no_memory = true;
        return;
    }
    p->condition_count = m->drive->condition_count;
    p->clearance       = TS_CLEARANCE_CHORD;
    /* A billionth of a metre more, so that places that are written and read again still keep it. */
    p->gap                 = ts_known_or(limits->body_gap, 0.0) + 1e-9;
    p->z_least             = (uint32_t)arrange->teeth.low;
    p->z_most              = (uint32_t)arrange->teeth.high;
    p->idler_teeth         = idlers;
    p->idler_teeth_count   = ts_write_out(&arrange->idler_teeth, idlers, TS_ARRANGE_TEETH);
    p->idlers_in_row       = (uint32_t)arrange->idlers.value;
    p->hunting             = arrange->hunting.value == TS_YES;
    p->width_step          = arrange->face_step.value;
    p->width_least         = ceil(arrange->least_face.value / p->width_step - 1e-9) * p->width_step;
    p->width_over_diameter = ts_known_or(limits->face_to_diameter, 1.0);
    p->wrap_weight         = arrange->weights.wrap.value;
    p->servicing_weight    = arrange->weights.servicing.value;
    m->out->density        = arrange->mass.density.value * arrange->mass.fill.value;
}

ts_status ts_drive_problem_make(const ts_drive_question *question, ts_arena *arena,
                                ts_diagnostics *list, ts_drive_problem *out)
{
    ts_problem_maker m = {.question = question,
                          .drive    = question->drive,
                          .arena    = arena,
                          .list     = list,
                          .out      = out,
                          .sound    = true};
    memset(out, 0, sizeof *out);
    take_rules(&m);
    ts_problem_take_accessories(&m);
    if (!m.no_memory)
        ts_problem_take_boxes(&m);
    if (m.no_memory)
        return TS_NO_MEMORY;
    if (m.sound)
        bar_by_cowl(&m);
    if (m.sound && ts_drive_clashes(question, out, list, arena) > 0)
        m.sound = false;
    return m.sound ? TS_OK : TS_NOT_UNDERSTOOD;
}
