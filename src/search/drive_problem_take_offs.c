/* search/drive_problem_take_offs.c: which bevels and radial shafts may drive a box, and can they?
 */
#include "search/drive_problem_parts.h"

#include <math.h>

/* A list of nothing is no list that was left out. */
static void refuse_empty(ts_problem_maker *m, const ts_box_freedom *freedom, const char *key,
                         size_t count)
{
    const ts_node list = freedom != NULL && freedom->node != 0
                             ? ts_source_child(m->drive->source, freedom->node, ts_text_of(key))
                             : 0;
    if (list != 0 && count == 0)
        ts_problem_complain(m, list, "`%s` has nothing to choose from", key,
                            "one entry at least, or no such key: then what stands there stays");
}

/* A spool at rest turns nothing. */
void ts_problem_take_take_offs(ts_problem_maker *m, size_t tapped, double mass)
{
    const char           *spool   = m->drive->spools[m->drive->drive[tapped].spool].name;
    const ts_box_freedom *freedom = ts_box_freedom_of(m, m->drive->drive[tapped].spool);
    ts_take_off_list     *list    = &m->out->take_offs[tapped];
    refuse_empty(m, freedom, "spool bevels", freedom != NULL ? freedom->spool_bevel_count : 0);
    refuse_empty(m, freedom, "box bevels", freedom != NULL ? freedom->box_bevel_count : 0);
    refuse_empty(m, freedom, "radial shafts", freedom != NULL ? freedom->tower_count : 0);
    if (freedom == NULL || !ts_drive_may_take_off(freedom))
        return;
    if (!ts_drive_take_offs(m->drive, tapped, freedom, m->arena, list)) {
        m->no_memory = true;
        return;
    }
    if (list->fault == NULL && list->count == 0)
        ts_problem_complain(
            m, freedom->node,
            "the bevels and radial shafts to choose from for the box of `%s` are too many", spool,
            "no more than 64 ways to combine one of each");
    if (list->fault != NULL)
        ts_problem_complain(m, list->at,
                            list->lacks
                                ? "what these bevels or radial shafts weigh is not known without %s"
                                : "this cannot drive the box: %s",
                            list->fault, NULL);
    for (size_t i = 0; i < list->count && list->fault == NULL; i++) {
        for (size_t c = 0; c < m->drive->condition_count; c++)
            list->items[i].speed[c] = fmax(list->items[i].speed[c], TS_REST_SPEED);
        if (mass + list->items[i].more < 0.0)
            ts_problem_complain(
                m, m->drive->arrange.mass.node != 0 ? m->drive->arrange.mass.node : list->at,
                "`box` of `mass` weighs less than the bevels and the radial shaft of `%s` "
                "that are in it",
                spool, "what bevels, radial shaft and mounts of a box weigh as they stand");
    }
}
