/* search/locked_memory.c: may this request still be served, and whose turn is it? */
#include "search/locked_memory.h"

#include "base/arena.h"

#include <stdint.h>

/* In front of each block stands its size, so that what is live can be counted. */
typedef union head {
    size_t      size;
    max_align_t align;
} head;

static void *resize_within_limit(ts_locked_memory *m, head *old, size_t size)
{
    const size_t had = old != NULL ? old->size : 0;

    if (size == 0) {
        if (old != NULL)
            (void)m->source.resize(m->source.context, old, 0);
        m->live -= had;
        return NULL;
    }
    const bool over =
        m->limit != 0 && m->live - had > m->limit - (size < m->limit ? size : m->limit);
    head *got = NULL;
    if (!over && size <= SIZE_MAX - sizeof(head))
        got = m->source.resize(m->source.context, old, size + sizeof(head));
    if (got == NULL) {
        m->refused = true;
        return NULL;
    }
    got->size = size;
    m->live += size - had;
    if (m->live > m->most_live)
        m->most_live = m->live;
    return got + 1;
}

static void *resize_locked(void *context, void *block, size_t size)
{
    ts_locked_memory *m   = context;
    head             *old = block != NULL ? (head *)block - 1 : NULL;

    pthread_mutex_lock(&m->lock);
    void *got = resize_within_limit(m, old, size);
    pthread_mutex_unlock(&m->lock);
    return got;
}

bool ts_locked_memory_open(ts_locked_memory *memory, const ts_allocator *source, size_t limit)
{
    *memory = (ts_locked_memory){.source = source != NULL ? *source : ts_allocator_standard,
                                 .limit  = limit};
    return pthread_mutex_init(&memory->lock, NULL) == 0;
}

void ts_locked_memory_close(ts_locked_memory *memory)
{
    pthread_mutex_destroy(&memory->lock);
}

ts_allocator ts_locked_memory_allocator(ts_locked_memory *memory)
{
    return (ts_allocator){.resize = resize_locked, .context = memory};
}
