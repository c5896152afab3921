/* check/desk.c: where do findings, judgements and sentences lie while a check runs? */
#include "check/desk.h"

#include <string.h>

void ts_desk_clear(ts_desk *desk)
{
    desk->sentences.used  = 0;
    desk->finding_count   = 0;
    desk->judgement_count = 0;
    desk->rule            = NULL;
    desk->result          = NULL;
    desk->failed          = false;
}

ts_buffer *ts_desk_scratch(ts_desk *desk)
{
    ts_buffer_clear(&desk->scratch.buffer);
    return &desk->scratch.buffer;
}

/* A block of twice the room with the old items in it, or NULL. */
static void *grown(ts_desk *desk, const void *items, size_t *room, size_t size)
{
    const size_t more  = *room > 0 ? 2 * *room : 64;
    void        *block = ts_arena_take(desk->arena, more, size);
    if (block == NULL) {
        desk->failed = true;
        return NULL;
    }
    if (*room > 0)
        memcpy(block, items, *room * size);
    *room = more;
    return block;
}

ts_finding *ts_desk_finding(ts_desk *desk)
{
    if (desk->finding_count == desk->finding_room) {
        ts_finding *block =
            grown(desk, desk->findings, &desk->finding_room, sizeof *desk->findings);
        if (block == NULL)
            return NULL;
        desk->findings = block;
    }
    return &desk->findings[desk->finding_count++];
}

ts_judgement *ts_desk_judgement(ts_desk *desk)
{
    if (desk->judgement_count == desk->judgement_room) {
        ts_judgement *block =
            grown(desk, desk->judgements, &desk->judgement_room, sizeof *desk->judgements);
        if (block == NULL)
            return NULL;
        desk->judgements = block;
    }
    return &desk->judgements[desk->judgement_count++];
}

char *ts_desk_text(ts_desk *desk, size_t size)
{
    ts_sentence_store *store = &desk->sentences;
    if (size <= store->room - store->used) {
        char *place = store->bytes + store->used;
        store->used += size;
        return place;
    }
    char *place = ts_arena_take(desk->arena, size, 1);
    if (place == NULL)
        desk->failed = true;
    return place;
}
