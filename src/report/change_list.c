/* How does the list of changes grow, and what are its texts? */
#include "report/comparison_parts.h"

#include <math.h>
#include <string.h>

/* Doubles the list; the old one stays in the arena until the end. */
static bool grow(ts_changes *list)
{
    const size_t room = list->room == 0 ? 64 : list->room * 2;
    ts_change   *more = TS_TAKE(list->arena, ts_change, room);
    if (more == NULL)
        return false;
    if (list->count > 0)
        memcpy(more, list->changes, list->count * sizeof *more);
    list->changes = more;
    list->room    = room;
    return true;
}

void ts_change_add(ts_changes *list, ts_change change)
{
    if (list->count == list->room && !grow(list)) {
        list->failed = true;
        return;
    }
    list->changes[list->count++] = change;
}

const char *ts_change_keep(ts_changes *list, const ts_buffer *made)
{
    char *kept   = made->failed ? NULL
                                : ts_arena_copy(list->arena, made->bytes != NULL ? made->bytes : "",
                                                made->length);
    list->failed = list->failed || kept == NULL;
    return kept != NULL ? kept : "";
}

const char *ts_change_quantity(ts_changes *list, double si, ts_kind kind)
{
    if (isnan(si))
        return "not computable";
    ts_buffer made;
    ts_buffer_open(&made, list->allocator);
    ts_quantity_show(&made, si, ts_kind_shown(kind, list->units), 6);
    const char *kept = ts_change_keep(list, &made);
    ts_buffer_close(&made);
    return kept;
}

const char *ts_change_address(ts_changes *list, const ts_answer *answer, ts_node node)
{
    ts_buffer made;
    ts_buffer_open(&made, list->allocator);
    ts_source_address(answer->source, node, &made);
    const char *kept = ts_change_keep(list, &made);
    ts_buffer_close(&made);
    return kept;
}

double ts_change_relative(double before, double after)
{
    return before != 0.0 ? after / before - 1.0 : (double)NAN;
}

int32_t ts_condition_match(const ts_drive *drive, const char *name)
{
    for (size_t c = 0; c < drive->condition_count; c++)
        if (strcmp(drive->conditions[c].name, name) == 0)
            return (int32_t)c;
    return -1;
}
