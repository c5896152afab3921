/* model/name_index.h: which number has a name?  For conditions, spools and accessories. */
#ifndef TS_MODEL_NAME_INDEX_H
#define TS_MODEL_NAME_INDEX_H

#include "base/arena.h"
#include "base/text.h"

#include <stdbool.h>
#include <stdint.h>

typedef struct ts_name_index {
    const char *const *names; /* [count], zero-terminated */
    size_t             count;
    uint32_t          *slots; /* number + 1, or 0 */
    size_t             slot_count;
} ts_name_index;

/* Indexes names[count], which must outlive the index.  False without memory. */
bool    ts_name_index_build(ts_name_index *index, const char *const *names, size_t count,
                            ts_arena *arena);
int32_t ts_name_index_find(const ts_name_index *index, ts_text name); /* -1: there is none */

/* Is there no name at all?  A file without them was told so where they are due, and whatever
 * refers to them needs no message of its own. */
static inline bool ts_names_are_missing(const ts_name_index *index)
{
    return index->count == 0;
}

#endif
