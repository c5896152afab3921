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

/* Keeps the order of equal bytes, so notes of one hash stay in their order. */
static void sort_by_byte(const ts_note_entry *from, ts_note_entry *to, size_t count, int shift)
{
    size_t begin[257] = {0};
    for (size_t i = 0; i < count; i++)
        begin[((from[i].hash >> shift) & 255u) + 1]++;
    for (size_t byte = 1; byte < 257; byte++)
        begin[byte] += begin[byte - 1];
    for (size_t i = 0; i < count; i++)
        to[begin[(from[i].hash >> shift) & 255u]++] = from[i];
}

static bool make_room(const ts_workings *workings)
{
    ts_note_index *index = workings->index;
    if (workings->count <= index->room)
        return true;
    size_t room = index->room == 0 ? TS_NOTES_A_BLOCK : index->room;
    while (room < workings->count)
        room *= 2;
    ts_note_entry *entries = TS_TAKE(workings->arena, ts_note_entry, 4 * room);
    if (entries == NULL)
        return false;
    index->entries = entries;
    index->spare   = entries + 2 * room;
    index->room    = room;
    index->covered = 0;
    return true;
}

static bool build_index(const ts_workings *workings)
{
    ts_note_index *index = workings->index;
    if (index->covered == workings->count)
        return true;
    if (!make_room(workings))
        return false;
    for (size_t i = 0; i < workings->count; i++) {
        const ts_note *note       = ts_workings_at(workings, i);
        question       q          = {.subject = note->subject, .symbol = note->symbol};
        q.bits                    = value_bits(note->value);
        index->entries[2 * i]     = (ts_note_entry){hash_of(&q), (uint32_t)i};
        q.any_value               = true;
        index->entries[2 * i + 1] = (ts_note_entry){hash_of(&q), (uint32_t)i};
    }
    for (int shift = 0; shift < 32; shift += 16) {
        sort_by_byte(index->entries, index->spare, 2 * workings->count, shift);
        sort_by_byte(index->spare, index->entries, 2 * workings->count, shift + 8);
    }
    index->covered = workings->count;
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
    if (!build_index(workings))
        return search_notes(workings, q);
    const ts_note_entry *entries = workings->index->entries;
    const uint32_t       hash    = hash_of(q);
    size_t               low = 0, high = 2 * workings->count;
    while (low < high) { /* the first entry past (hash, before - 1) */
        const size_t middle = low + (high - low) / 2;
        if (entries[middle].hash < hash ||
            (entries[middle].hash == hash && entries[middle].note < q->before))
            low = middle + 1;
        else
            high = middle;
    }
    for (; low > 0 && entries[low - 1].hash == hash; low--)
        if (is_answer(ts_workings_at(workings, entries[low - 1].note), q))
            return entries[low - 1].note;
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
