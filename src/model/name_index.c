/* model/name_index.c: which number has a name? */
#include "model/name_index.h"

#define FNV_OFFSET UINT64_C(0xcbf29ce484222325)
#define FNV_PRIME  UINT64_C(0x100000001b3)

/* FNV-1a: short names, and never more of them than a table allows. */
static size_t slot_of(const ts_name_index *index, ts_text name)
{
    uint64_t hash = FNV_OFFSET;
    for (size_t i = 0; i < name.length; i++)
        hash = (hash ^ (unsigned char)name.at[i]) * FNV_PRIME;
    return (size_t)(hash ^ hash >> 32) & (index->slot_count - 1);
}

bool ts_name_index_build(ts_name_index *index, const char *const *names, size_t count,
                         ts_arena *arena)
{
    size_t slot_count = 8;
    while (slot_count < 2 * count)
        slot_count *= 2;
    *index       = (ts_name_index){.names = names, .count = count, .slot_count = slot_count};
    index->slots = TS_TAKE(arena, uint32_t, slot_count);
    if (index->slots == NULL)
        return false;
    for (size_t i = 0; i < count; i++) {
        size_t slot = slot_of(index, ts_text_of(names[i]));
        while (index->slots[slot] != 0)
            slot = (slot + 1) & (slot_count - 1);
        index->slots[slot] = (uint32_t)i + 1;
    }
    return true;
}

int32_t ts_name_index_find(const ts_name_index *index, ts_text name)
{
    size_t slot = slot_of(index, name);
    while (index->slots[slot] != 0) {
        const uint32_t number = index->slots[slot] - 1;
        if (ts_text_is(name, index->names[number]))
            return (int32_t)number;
        slot = (slot + 1) & (index->slot_count - 1);
    }
    return -1;
}
