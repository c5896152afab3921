/* base/workings_store.h: how notes are kept, for workings.c and origin.c alone. */
#ifndef TS_BASE_WORKINGS_STORE_H
#define TS_BASE_WORKINGS_STORE_H

#include "base/workings.h"

#define TS_NOTES_A_BLOCK 128

/* One note stands twice in the index: under subject, symbol and value at 2 * note, and under
 * subject and symbol at 2 * note + 1. Entries of one bucket hang below each other, the latest note
 * first. */
typedef struct ts_note_entry {
    uint32_t hash;
    uint32_t below; /* the next entry of this bucket, TS_NO_ENTRY at its end */
} ts_note_entry;

#define TS_NO_ENTRY UINT32_MAX

typedef struct ts_note_index {
    ts_note_entry *entries; /* 2 * covered of them, room for 2 * room  */
    uint32_t      *tops;    /* 2 * room buckets: their latest entries  */
    size_t         room;    /* notes that fit, a power of two          */
    size_t         covered; /* notes that are in                       */
} ts_note_index;

struct ts_workings {
    ts_arena      *arena;
    ts_subject     subject;
    ts_note      **blocks; /* notes never move, so pointers to them stay good */
    size_t         block_room;
    size_t         count;
    bool           incomplete;
    ts_note_index *index; /* outside, so that a question can build it for const workings */
};

#endif
