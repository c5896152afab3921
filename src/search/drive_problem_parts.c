/* search/drive_problem_parts.c: how are faults of a drive file told, and its words and spans read?
 */
#include "search/drive_problem_parts.h"

void ts_problem_complain(ts_problem_maker *m, ts_node node, const char *says, const char *name,
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

const ts_box_freedom *ts_box_freedom_of(const ts_problem_maker *m, int32_t spool)
{
    const ts_freedom *arrange = &m->drive->arrange;
    for (size_t i = 0; i < arrange->box_count; i++)
        if (arrange->boxes[i].spool == spool)
            return &arrange->boxes[i];
    return NULL;
}

uint32_t ts_faces_of_choice(int choice)
{
    if (choice == TS_CHOOSE_FRONT)
        return TS_FACE_FRONT;
    return choice == TS_CHOOSE_REAR ? TS_FACE_REAR : TS_FACE_FRONT | TS_FACE_REAR;
}

static bool met(const uint32_t *z, size_t count, uint32_t one)
{
    for (size_t i = 0; i < count; i++)
        if (z[i] == one)
            return true;
    return false;
}

size_t ts_write_out(const ts_tally_spans *spans, uint32_t *z, size_t room)
{
    size_t count = 0;
    for (size_t i = 0; i < spans->count; i++)
        for (int64_t one = spans->items[i].low; one <= spans->items[i].high; one++)
            if (count < room && !met(z, count, (uint32_t)one))
                z[count++] = (uint32_t)one;
    return count;
}
