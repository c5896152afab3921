/* base/arena.c: where does one study's memory come from, and how is it given back in one call? */
#include "base/arena.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#define ALIGNMENT   ((size_t)16)
#define CHUNK_FIRST ((size_t)64 * 1024)
#define CHUNK_MOST  ((size_t)64 * 1024 * 1024) /* chunks stop doubling here */

typedef struct chunk {
    struct chunk *older;
    size_t        size; /* of all of it, its head counted */
} chunk;

struct ts_arena {
    ts_allocator allocator;
    chunk       *newest;
    char        *next; /* the first byte not yet taken, always aligned */
    size_t       room; /* bytes from `next` to the end of its chunk    */
    size_t       chunk_size;
    size_t       calls;
    bool         failed;
};

static void *resize_standard(void *context, void *block, size_t size)
{
    (void)context;
    if (size == 0) {
        free(block);
        return NULL;
    }
    return realloc(block, size);
}

const ts_allocator ts_allocator_standard = {resize_standard, NULL};

ts_arena *ts_arena_open(const ts_allocator *allocator)
{
    const ts_allocator *source = allocator != NULL ? allocator : &ts_allocator_standard;
    ts_arena           *arena  = source->resize(source->context, NULL, sizeof *arena);
    if (arena == NULL)
        return NULL;
    *arena = (ts_arena){.allocator = *source, .chunk_size = CHUNK_FIRST, .calls = 1};
    return arena;
}

void ts_arena_close(ts_arena *arena)
{
    if (arena == NULL)
        return;
    const ts_allocator allocator = arena->allocator;
    chunk             *each      = arena->newest;
    while (each != NULL) {
        chunk *older = each->older;
        (void)allocator.resize(allocator.context, each, 0);
        each = older;
    }
    (void)allocator.resize(allocator.context, arena, 0);
}

/* All of the newest chunk is free again. */
static void open_chunk(ts_arena *arena)
{
    char        *start = (char *)(arena->newest + 1);
    const size_t past  = (size_t)((uintptr_t)start % ALIGNMENT);
    const size_t slack = past == 0 ? 0 : ALIGNMENT - past;

    arena->next = start + slack;
    arena->room = arena->newest->size - sizeof(chunk) - slack;
}

/* The allocator may align to less than 16, so a chunk has slack for both its head and its start. */
static bool add_chunk(ts_arena *arena, size_t size)
{
    const size_t overhead = sizeof(chunk) + ALIGNMENT - 1;
    if (size > SIZE_MAX - overhead)
        return false;
    size_t whole = size + overhead;
    if (whole < arena->chunk_size)
        whole = arena->chunk_size;
    arena->calls++;
    chunk *fresh = arena->allocator.resize(arena->allocator.context, NULL, whole);
    if (fresh == NULL)
        return false;
    fresh->older  = arena->newest;
    fresh->size   = whole;
    arena->newest = fresh;
    open_chunk(arena);
    if (arena->chunk_size < CHUNK_MOST)
        arena->chunk_size *= 2;
    return true;
}

void ts_arena_empty(ts_arena *arena)
{
    arena->failed = false;
    if (arena->newest == NULL)
        return;
    while (arena->newest->older != NULL) {
        chunk *older         = arena->newest->older;
        arena->newest->older = older->older;
        (void)arena->allocator.resize(arena->allocator.context, older, 0);
    }
    open_chunk(arena);
}

bool ts_arena_reserve(ts_arena *arena, size_t size)
{
    if (size <= arena->room)
        return true;
    if (add_chunk(arena, size))
        return true;
    arena->failed = true;
    return false;
}

/* As ts_arena_take, but holding whatever its bytes held before. */
static void *take_unset(ts_arena *arena, size_t count, size_t size)
{
    if (size != 0 && count > (SIZE_MAX - ALIGNMENT) / size) {
        arena->failed = true;
        return NULL;
    }
    const size_t bytes = count * size;
    const size_t whole = (bytes + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
    /* An arena without any chunk gets one even for nothing, for the pointer must be valid. */
    if ((whole > arena->room || arena->next == NULL) &&
        !ts_arena_reserve(arena, whole > 0 ? whole : ALIGNMENT))
        return NULL;
    char *taken = arena->next;
    arena->next += whole;
    arena->room -= whole;
    return taken;
}

void *ts_arena_take(ts_arena *arena, size_t count, size_t size)
{
    void *taken = take_unset(arena, count, size);
    return taken != NULL ? memset(taken, 0, count * size) : NULL;
}

static void *take_for_good(void *context, void *block, size_t size)
{
    (void)block; /* arenas grow by new chunks, never by larger ones */
    return size > 0 ? take_unset(context, size, 1) : NULL;
}

ts_allocator ts_arena_within(ts_arena *arena)
{
    return (ts_allocator){take_for_good, arena};
}

char *ts_arena_copy(ts_arena *arena, const char *bytes, size_t length)
{
    if (length == SIZE_MAX) {
        arena->failed = true;
        return NULL;
    }
    char *copy = ts_arena_take(arena, length + 1, 1);
    if (copy != NULL && length > 0)
        memcpy(copy, bytes, length);
    return copy;
}

bool ts_arena_failed(const ts_arena *arena)
{
    return arena->failed;
}

size_t ts_arena_calls(const ts_arena *arena)
{
    return arena->calls;
}

const ts_allocator *ts_arena_allocator(const ts_arena *arena)
{
    return &arena->allocator;
}
