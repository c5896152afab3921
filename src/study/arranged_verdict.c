/* Does an arrangement hold by all rules, and how wide must its faces be? */
#include "study/arranging.h"

#include <string.h>

static const char *copy(ts_arranging *a, const char *text)
{
    return text != NULL ? ts_arena_copy(a->arena, text, strlen(text)) : NULL;
}

static void judge(ts_arranging *a, ts_study *own, ts_arranged_verdict *out)
{
    out->read  = own->solved;
    out->holds = ts_study_verdict(own) == TS_HOLDS;
    for (size_t i = 0; i < ts_study_finding_count(own); i++) {
        const ts_finding_view f = ts_study_finding(own, i);
        if (strcmp(f.state, "open") != 0)
            continue;
        out->refusals += strcmp(f.level, "refuse") == 0;
        out->warnings += strcmp(f.level, "warn") == 0;
        if (out->first == NULL && strcmp(f.level, "refuse") == 0) {
            out->first   = copy(a, f.says);
            out->address = copy(a, f.address);
        }
    }
}

/* ---- faces that the whole drive asks to be wider --------------------------------------------- */

#define WIDENINGS_MOST 40

/* The shaft of an arrangement that became this record of the file; NULL: none. */
static ts_arranged_shaft *shaft_of(const ts_arranging *a, const ts_study *own,
                                   ts_arrangement *found, const ts_box_shaft *record)
{
    for (size_t b = 0; b < a->problem.problem.box_count; b++) {
        ts_arranged_box *box  = &found->boxes[b];
        const ts_box    *read = &own->drive.drive[a->problem.tapped[b]].box;
        if (record == &read->input)
            return &box->input;
        for (size_t i = 0; i < read->clockwise_count && i < box->branches[0].count; i++)
            if (record == &read->clockwise[i])
                return &box->branches[0].shafts[i];
        for (size_t i = 0; i < read->anticlockwise_count && i < box->branches[1].count; i++)
            if (record == &read->anticlockwise[i])
                return &box->branches[1].shafts[i];
    }
    return NULL;
}

/* One step more for both gears of every mesh that does not hold; how many steps. */
static size_t widen(const ts_arranging *a, const ts_study *own, ts_arrangement *found)
{
    const ts_train *train = &own->train;
    size_t          count = 0;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        if (train->meshes[m].kind != TS_MESH_CYLINDRICAL || !(own->teeth.strength[m].reserve < 0.0))
            continue;
        const uint32_t shafts[2] = {train->meshes[m].driver_shaft, train->meshes[m].driven_shaft};
        for (int i = 0; i < 2; i++) {
            ts_arranged_shaft *s = shaft_of(a, own, found, train->shafts[shafts[i]].record);
            if (s == NULL)
                continue;
            s->width += a->problem.problem.width_step;
            count++;
        }
    }
    return count;
}

/* What the gears of an arrangement weigh more than when it was found. */
static double gears_of(const ts_arranging *a, const ts_arrangement *found)
{
    double sum = 0.0;
    for (size_t b = 0; b < a->problem.problem.box_count; b++) {
        const ts_arranged_box *box = &found->boxes[b];
        if (!box->present)
            continue;
        const uint32_t module = a->problem.problem.boxes[b].choices[box->choice].module;
        sum += ts_drive_gear_mass(a->widths, module, box->input.z, box->input.width);
        for (int side = 0; side < 2; side++)
            for (uint32_t i = 0; i < box->branches[side].count; i++)
                sum += ts_drive_gear_mass(a->widths, module, box->branches[side].shafts[i].z,
                                          box->branches[side].shafts[i].width);
    }
    return sum;
}

/* Writes an answer into the file and reads that; `own` is solved when it could be. */
static ts_status read_answer(ts_arranging *a, const ts_arrangement *found, ts_text *text,
                             ts_study *own)
{
    ts_diagnostics *list = ts_diagnostics_open(a->arena, a->study->name, a->study->bytes);
    if (list == NULL)
        return TS_NO_MEMORY;
    ts_status status = ts_arranged_text(a->study, &a->problem, found, a->arena, list, text);
    if (status != TS_OK)
        return status;
    ts_study_options options = a->study->options;
    options.workings         = false;
    return ts_study_read(own, a->study->name, text->at, text->length, &options);
}

ts_status ts_arranging_judge(ts_arranging *a, ts_arrangement *found, ts_text *text,
                             ts_arranged_verdict *out)
{
    const double gears  = gears_of(a, found);
    ts_study    *own    = NULL;
    ts_status    status = ts_study_open(a->study->allocator, &own);
    if (status == TS_OK)
        status = read_answer(a, found, text, own);
    for (size_t i = 0; i < WIDENINGS_MOST && status == TS_OK; i++) {
        const size_t steps = widen(a, own, found);
        out->widened += steps;
        if (steps == 0)
            break;
        status = read_answer(a, found, text, own);
    }
    out->mass = found->mass + gears_of(a, found) - gears;
    if (status == TS_OK)
        judge(a, own, out);
    ts_study_close(own);
    return status == TS_NOT_UNDERSTOOD ? TS_OK : status;
}
