/* search/arranged_face.c: where does the drive that an arrangement became ask for wider faces? */
#include "search/arranged_face.h"

/* The shaft of an arrangement that became this record of the file; NULL: none. */
static ts_arranged_shaft *shaft_of(const ts_drive_problem *problem, const ts_drive *drive,
                                   ts_arrangement *found, const ts_box_shaft *record)
{
    for (size_t b = 0; b < problem->problem.box_count; b++) {
        ts_arranged_box *box  = &found->boxes[b];
        const ts_box    *read = &drive->drive[problem->tapped[b]].box;
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

size_t ts_arranged_widen(const ts_drive_problem *problem, const ts_arranged_drive *read,
                         ts_arrangement *found)
{
    const ts_train *train = read->train;
    size_t          count = 0;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh *mesh = &train->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !(read->teeth->strength[m].reserve < 0.0))
            continue;
        const uint32_t gears[2] = {mesh->driver, mesh->driven};
        for (int i = 0; i < 2; i++) {
            const ts_gear     *gear = &train->gears[gears[i]];
            ts_arranged_shaft *s =
                shaft_of(problem, read->drive, found, train->shafts[gear->shaft].record);
            if (s == NULL)
                continue;
            *(gear->step > 0 ? &s->step_width : &s->width) += problem->problem.width_step;
            count++;
        }
    }
    return count;
}
