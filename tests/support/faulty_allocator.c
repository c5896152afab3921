/* support/faulty_allocator.c: what happens when memory runs out at the n-th call? */
#include "support/faulty_allocator.h"

#include <stdint.h>
#include <stdlib.h>

/* Stands before every block, and keeps the block aligned for any type. */
typedef union heading {
    struct {
        size_t size;
        size_t mark; /* tells a block of ours from a stranger or from one that was freed */
    } of;
    max_align_t alignment;
} heading;

#define MARK_LIVE  ((size_t)0x7f4a7c15)
#define MARK_FREED ((size_t)0x1ce4e5b9)

static heading *heading_of(void *block)
{
    heading *head = (heading *)block - 1;
    if (head->of.mark != MARK_LIVE)
        abort(); /* freed twice, or never given by this allocator */
    return head;
}

static void give_back(faulty_allocator *faulty, void *block)
{
    if (block == NULL)
        return;
    heading *head = heading_of(block);
    faulty->live_blocks--;
    faulty->live_bytes -= head->of.size;
    head->of.mark = MARK_FREED;
    free(head);
}

static bool must_fail(faulty_allocator *faulty)
{
    faulty->calls++;
    if (faulty->fail_at == 0)
        return false;
    return faulty->manner == FAULTY_ONCE ? faulty->calls == faulty->fail_at
                                         : faulty->calls >= faulty->fail_at;
}

static void *faulty_resize(void *context, void *block, size_t size)
{
    faulty_allocator *faulty = context;
    if (size == 0) {
        give_back(faulty, block);
        return NULL;
    }
    if (must_fail(faulty) || size > SIZE_MAX - sizeof(heading)) {
        faulty->failed++;
        return NULL;
    }
    heading     *old      = block == NULL ? NULL : heading_of(block);
    const size_t old_size = old == NULL ? 0 : old->of.size;
    heading     *head     = realloc(old, sizeof(heading) + size);
    if (head == NULL)
        return NULL; /* the machine itself is out of memory: the old block stays as it was */
    head->of.size = size;
    head->of.mark = MARK_LIVE;
    faulty->live_blocks += old == NULL ? 1 : 0;
    faulty->live_bytes += size - old_size; /* wraps and comes back right when a block shrinks */
    if (faulty->live_bytes > faulty->most_bytes)
        faulty->most_bytes = faulty->live_bytes;
    return head + 1;
}

ts_allocator faulty_allocator_open(faulty_allocator *faulty, size_t fail_at, faulty_manner manner)
{
    *faulty = (faulty_allocator){.fail_at = fail_at, .manner = manner};
    return (ts_allocator){.resize = faulty_resize, .context = faulty};
}
