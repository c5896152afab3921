/* draw/candidate_place.c: where does each shaft of an arrangement stand, seen from behind? */
#include "draw/candidate_sheet.h"

#include <math.h>

typedef struct row {
    const ts_scene     *scene;
    const ts_candidate *one;
    ts_stood           *out;
    size_t              count;
} row;

static const ts_box *box_of(const row *r, size_t box)
{
    const ts_drive_problem *made = r->scene->subject->candidates->made;
    return &r->scene->drive->drive[made->tapped[box]].box;
}

/* The clockwise branch runs clockwise in the sight of the file. */
static double clock_of(const row *r, size_t box, double angle)
{
    const double way = r->scene->drive->sight.value == TS_FROM_FRONT ? 1.0 : -1.0;
    return box_of(r, box)->arc.clock.value + way * angle;
}

static void stand(row *r, ts_stood at, double angle, uint32_t module)
{
    const ts_arrange_box *frame = &r->one->problem->boxes[at.box];
    const double          m     = r->one->problem->modules[module];
    const double          clock = clock_of(r, at.box, angle);
    at.x                        = frame->radius * sin(clock);
    at.y                        = frame->radius * cos(clock);
    at.pitch                    = 0.5 * m * at.shaft->z;
    at.sense                    = -frame->input_sense * (at.place % 2 == 0 ? 1 : -1);
    if (at.shaft->z_step > 0)
        at.step_pitch = 0.5 * r->one->problem->modules[at.shaft->step_module] * at.shaft->z_step;
    r->out[r->count++] = at;
}

static bool has_pad(const ts_arranged_shaft *s)
{
    return s->front >= 0 || s->rear >= 0;
}

/* The module of the plane of shaft i of a branch, and its place among those with pads. */
static uint32_t plane_of(const ts_arranged_branch *branch, uint32_t i, uint32_t module,
                         uint32_t *order)
{
    *order = 0;
    for (uint32_t k = 0; k <= i; k++) {
        *order += has_pad(&branch->shafts[k]) ? 1 : 0;
        if (k < i && branch->shafts[k].z_step > 0)
            module = branch->shafts[k].step_module;
    }
    return module;
}

static void stand_branch(row *r, size_t box, int side, const double *angles, uint32_t module)
{
    const ts_arranged_branch *branch = &r->one->found->boxes[box].branches[side];
    for (uint32_t k = 0; k < branch->count; k++) {
        const uint32_t i  = side == 0 ? branch->count - 1 - k : k;
        ts_stood       at = {.shaft = &branch->shafts[i], .box = box, .side = side, .place = i + 1};
        const uint32_t own = plane_of(branch, i, module, &at.order);
        stand(r, at, angles[i], own);
    }
}

size_t ts_stand_candidate(const ts_scene *scene, const ts_candidate *one, ts_stood *out)
{
    row    r = {scene, one, out, 0};
    double angles[TS_ARRANGE_ROW];
    for (uint32_t b = 0; b < one->problem->box_count; b++) {
        const ts_arranged_box *box   = &one->found->boxes[b];
        const size_t           count = ts_arrange_angles(one->problem, one->found, b, angles);
        if (count == 0)
            continue;
        const uint32_t module = one->problem->boxes[b].choices[box->choice].module;
        stand_branch(&r, b, 0, &angles[1], module);
        stand(&r, (ts_stood){.shaft = &box->input, .box = b, .side = 2}, 0.0, module);
        stand_branch(&r, b, 1, &angles[1 + box->branches[0].count], module);
    }
    return r.count;
}
