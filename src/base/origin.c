/* base/origin.c: from which earlier note does an input come? */
#include "base/workings.h"

#include "base/workings_store.h"

#include <string.h>

/* A chain of lenders as long as this is taken for a circle. */
#define LENDERS_MOST 64

typedef struct question {
    ts_subject  subject;
    const char *symbol;
    uint64_t    bits;      /* of the value; compared as bits, so that -0 and NaN are values too */
    bool        any_value; /* then `bits` is not compared */
    size_t      before;    /* only notes with a smaller index answer                            */
} question;

static uint64_t value_bits(double value)
{
    uint64_t bits = 0;
    memcpy(&bits, &value, sizeof bits);
    return bits;
}

static uint32_t hash_step(uint32_t hash, uint32_t word)
{
    hash = (hash ^ word) * UINT32_C(0x85EBCA6B);
    return hash ^ (hash >> 15);
}

/* Mixing constants of MurmurHash3's finaliser (public domain); any mixing would serve. */
static uint32_t hash_of(const question *q)
{
    uint32_t hash = hash_step(UINT32_C(0x9E3779B9), q->subject.object);
    hash          = hash_step(hash, (uint32_t)q->subject.condition);
    for (const char *c = q->symbol; *c != '\0'; c++)
        hash = hash_step(hash, (uint8_t)*c);
    if (q->any_value)
        return hash;
    hash = hash_step(hash, (uint32_t)q->bits);
    return hash_step(hash, (uint32_t)(q->bits >> 32) ^ UINT32_C(0xC2B2AE35));
}

static bool is_answer(const ts_note *note, const question *q)
{
    return note->subject.object == q->subject.object &&
           note->subject.condition == q->subject.condition &&
           (q->any_value || value_bits(note->value) == q->bits) &&
           strcmp(note->symbol, q->symbol) == 0;
}

static void hang(ts_note_index *index, uint32_t entry)
{
    uint32_t *top               = &index->tops[index->entries[entry].hash & (2 * index->room - 1)];
    index->entries[entry].below = *top;
    *top                        = entry;
}

/* More room gives other buckets, so that all entries are hung up again, in their order. */
static bool make_room(const ts_workings *workings)
{
    ts_note_index *index = workings->index;
    if (workings->count <= index->room)
        return true;
    size_t room = index->room == 0 ? TS_NOTES_A_BLOCK : index->room;
    while (room < workings->count)
        room *= 2;
    ts_note_entry *entries = TS_TAKE(workings->arena, ts_note_entry, 2 * room);
    uint32_t      *tops    = TS_TAKE(workings->arena, uint32_t, 2 * room);
    if (entries == NULL || tops == NULL)
        return false;
    if (index->covered > 0)
        memcpy(entries, index->entries, 2 * index->covered * sizeof *entries);
    for (size_t i = 0; i < 2 * room; i++)
        tops[i] = TS_NO_ENTRY;
    index->entries = entries;
    index->tops    = tops;
    index->room    = room;
    for (size_t i = 0; i < 2 * index->covered; i++)
        hang(index, (uint32_t)i);
    return true;
}

static bool bring_up_to_date(const ts_workings *workings)
{
    ts_note_index *index = workings->index;
    if (!make_room(workings))
        return false;
    for (; index->covered < workings->count; index->covered++) {
        const ts_note *note       = ts_workings_at(workings, index->covered);
        const uint32_t entry      = (uint32_t)(2 * index->covered);
        question       q          = {.subject = note->subject, .symbol = note->symbol};
        q.bits                    = value_bits(note->value);
        index->entries[entry]     = (ts_note_entry){.hash = hash_of(&q)};
        q.any_value               = true;
        index->entries[entry + 1] = (ts_note_entry){.hash = hash_of(&q)};
        hang(index, entry);
        hang(index, entry + 1);
    }
    return true;
}

static size_t search_notes(const ts_workings *workings, const question *q)
{
    for (size_t i = q->before; i > 0; i--)
        if (is_answer(ts_workings_at(workings, i - 1), q))
            return i - 1;
    return SIZE_MAX;
}

/* The latest note before q->before that answers. */
static size_t latest(const ts_workings *workings, const question *q)
{
    if (!bring_up_to_date(workings))
        return search_notes(workings, q);
    const ts_note_index *index = workings->index;
    if (index->covered == 0)
        return SIZE_MAX;
    const uint32_t hash = hash_of(q);
    for (uint32_t e = index->tops[hash & (2 * index->room - 1)]; e != TS_NO_ENTRY;
         e          = index->entries[e].below)
        if (index->entries[e].hash == hash && e / 2 < q->before &&
            is_answer(ts_workings_at(workings, e / 2), q))
            return e / 2;
    return SIZE_MAX;
}

/* The same subject, the object in every condition, the whole drive in this condition, the whole
 * drive. */
static size_t latest_about(const ts_workings *workings, question q)
{
    const ts_subject subject   = q.subject;
    const ts_subject widened[] = {
        subject,
        {subject.object, TS_EVERY_CONDITION},
        {0, subject.condition},
        {0, TS_EVERY_CONDITION},
    };
    for (size_t i = 0; i < sizeof widened / sizeof widened[0]; i++) {
        q.subject          = widened[i];
        const size_t found = latest(workings, &q);
        if (found != SIZE_MAX)
            return found;
    }
    return SIZE_MAX;
}

size_t ts_borrow_origin(const ts_workings *workings, size_t index)
{
    for (int lenders = 0; lenders < LENDERS_MOST && index != SIZE_MAX; lenders++) {
        const ts_note *note = ts_workings_at(workings, index);
        if (note->kind != TS_NOTE_BORROWED)
            return lenders > 0 ? index : SIZE_MAX;
        index = latest_about(workings, (question){
                                           .subject = note->lender,
                                           .symbol  = note->lender_symbol,
                                           .bits    = value_bits(note->value),
                                           .before  = workings->count,
                                       });
    }
    return SIZE_MAX;
}

size_t ts_origin(const ts_workings *workings, size_t index, const char *name, double value)
{
    const size_t found =
        latest_about(workings, (question){
                                   .subject = ts_workings_at(workings, index)->subject,
                                   .symbol  = name,
                                   .bits    = value_bits(value),
                                   .before  = index,
                               });
    if (found == SIZE_MAX || ts_workings_at(workings, found)->kind != TS_NOTE_BORROWED)
        return found;
    return ts_borrow_origin(workings, found);
}

size_t ts_workings_find(const ts_workings *workings, ts_subject subject, const char *symbol)
{
    if (workings == NULL)
        return SIZE_MAX;
    return latest(workings, &(question){
                                .subject   = subject,
                                .symbol    = symbol,
                                .any_value = true,
                                .before    = workings->count,
                            });
}
