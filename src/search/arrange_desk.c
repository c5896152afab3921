/* search/arrange_desk.c: where do labels stand while branches grow? */
#include "search/arrange_desk.h"

static void close_desk(ts_desk *d)
{
    ts_arena_close(d->kept);
    if (d->labels != NULL)
        (void)ts_desk_resize(d, d->labels, 0);
    if (d->bucket != NULL)
        (void)ts_desk_resize(d, d->bucket, 0);
    if (d->order != NULL)
        (void)ts_desk_resize(d, d->order, 0);
    if (d->draft != NULL)
        (void)ts_desk_resize(d, d->draft, 0);
    d->kept   = NULL;
    d->labels = NULL;
    d->bucket = NULL;
    d->order  = NULL;
    d->draft  = NULL;
    d->room = d->order_room = 0;
}

bool ts_desk_open(ts_desk *d, const ts_allocator *allocator, const ts_pair_tables *pair,
                  size_t label_size)
{
    const size_t buckets = 4 * pair->tables->stride;

    d->allocator = allocator;
    d->counts    = (ts_label_count){0};
    d->no_memory = false;
    d->kept      = ts_arena_open(allocator);
    d->bucket    = ts_desk_resize(d, NULL, buckets * sizeof *d->bucket);
    d->draft     = ts_desk_resize(d, NULL, label_size);
    d->buckets   = buckets;
    if (d->kept == NULL || d->bucket == NULL || d->draft == NULL)
        return false;
    for (size_t i = 0; i < buckets; i++)
        d->bucket[i] = TS_NO_LABEL;
    return true;
}

ts_branch_room *ts_branch_room_open(const ts_allocator *allocator, size_t workers)
{
    ts_branch_room *room = allocator->resize(allocator->context, NULL, sizeof *room);
    if (room == NULL)
        return NULL;
    *room       = (ts_branch_room){.allocator = *allocator, .workers = workers};
    room->desks = allocator->resize(allocator->context, NULL, workers * sizeof *room->desks);
    if (room->desks == NULL) {
        (void)allocator->resize(allocator->context, room, 0);
        return NULL;
    }
    for (size_t i = 0; i < workers; i++)
        room->desks[i] = (ts_desk){.allocator = &room->allocator};
    return room;
}

void ts_branch_room_clear(ts_branch_room *room)
{
    for (size_t i = 0; i < room->workers; i++)
        close_desk(&room->desks[i]);
    ts_arena_close(room->lists);
    room->lists = NULL;
}

void ts_branch_room_close(ts_branch_room *room)
{
    if (room == NULL)
        return;
    ts_branch_room_clear(room);
    const ts_allocator allocator = room->allocator;
    (void)allocator.resize(allocator.context, room->desks, 0);
    (void)allocator.resize(allocator.context, room, 0);
}
