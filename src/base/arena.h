/* base/arena.h: one region of memory for one study, given back in one call.
 *
 * Nothing taken from an arena is freed by itself.  A failed allocation returns NULL and leaves the
 * arena usable; `ts_arena_failed` stays true from then on, so that a builder may check once.
 */
#ifndef TS_BASE_ARENA_H
#define TS_BASE_ARENA_H

#include "towershaft/status.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_arena ts_arena;

/* The allocator that stands for the C library's realloc and free. */
extern const ts_allocator ts_allocator_standard;

/* Opens an arena; `allocator` NULL means the standard one.  Returns NULL without memory. */
ts_arena *ts_arena_open(const ts_allocator *allocator);
void      ts_arena_close(ts_arena *arena); /* NULL is allowed */

/* Forgets everything that was taken, and any failure; keeps its newest piece of memory, which is the
 * largest, to be taken from again. */
void ts_arena_empty(ts_arena *arena);

/* Zeroed memory for `count` items of `size` bytes, aligned for any type; NULL on failure or when
 * count * size overflows.  A count of 0 gives a valid pointer that must not be read. */
void *ts_arena_take(ts_arena *arena, size_t count, size_t size);

/* Makes sure that at least `size` bytes can be taken without asking the allocator again; every
 * piece counts as the next multiple of 16. */
bool ts_arena_reserve(ts_arena *arena, size_t size);

/* An allocator for an arena that lives within this one: what it gives back is not used again before
 * this one closes.  What it gives is not cleared, for the arena within clears what it hands out. */
ts_allocator ts_arena_within(ts_arena *arena);

/* A zero-terminated copy of `length` bytes; NULL on failure. */
char *ts_arena_copy(ts_arena *arena, const char *bytes, size_t length);

bool   ts_arena_failed(const ts_arena *arena); /* has any request failed so far?      */
size_t ts_arena_calls(const ts_arena *arena);  /* calls made to the allocator so far */

/* The allocator that the arena was opened with, for a buffer that lives beside it. */
const ts_allocator *ts_arena_allocator(const ts_arena *arena);

#define TS_TAKE(arena, type, count) ((type *)ts_arena_take((arena), (count), sizeof(type)))

#endif
