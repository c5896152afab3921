/* search/locked_memory.h: one allocator for several threads, with a limit. */
#ifndef TS_SEARCH_LOCKED_MEMORY_H
#define TS_SEARCH_LOCKED_MEMORY_H

#include "towershaft/status.h"

#include <pthread.h>
#include <stdbool.h>

typedef struct ts_locked_memory {
    pthread_mutex_t lock;
    ts_allocator    source;
    size_t          live, most_live, limit; /* bytes; limit 0: none */
    bool            refused;                /* did a request meet the limit, or fail? */
} ts_locked_memory;

/* `source` NULL is the C library.  False when the lock cannot be made. */
bool ts_locked_memory_open(ts_locked_memory *memory, const ts_allocator *source, size_t limit);
void ts_locked_memory_close(ts_locked_memory *memory);

/* Good as long as `memory` stays where it is. */
ts_allocator ts_locked_memory_allocator(ts_locked_memory *memory);

#endif
