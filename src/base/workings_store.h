/* base/workings_store.h: how notes are kept, for workings.c and origin.c alone. */
#ifndef TS_BASE_WORKINGS_STORE_H
#define TS_BASE_WORKINGS_STORE_H

#include "base/workings.h"

#define TS_NOTES_A_BLOCK 128

/* One note stands twice in the index: under subject, symbol and value, and under subject and
 * symbol. Entries are sorted by hash, those of one hash by note. */
typedef struct ts_note_entry {
    uint32_t hash;
    uint32_t note;
} ts_note_entry;

typedef struct ts_note_index {
    ts_note_entry *entries; /* 2 * covered of them                      */
    ts_note_entry *spare;   /* as many, for sorting                     */
    size_t         room;    /* notes that fit                           */
    size_t         covered; /* notes that are in; 0: not built          */
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
