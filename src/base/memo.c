/* base/memo.c: was this very question answered lately? */
#include "base/memo.h"

#include <stdint.h>
#include <string.h>

#define ALIGNMENT ((size_t)16)

typedef struct text {
    char  *at;
    size_t length, room;
} text;

/* The answer stands before its question, so that it is aligned. */
typedef struct kept {
    text     text;
    size_t   size;  /* of the answer     */
    uint64_t print; /* of the question   */
    size_t   turn;  /* in the first of a place: which of them goes next */
} kept;

struct ts_memo {
    ts_allocator allocator;
    text         question;
    bool         lost; /* the question did not find room */
    size_t       depth;
    kept        *places[TS_MEMO_KINDS]; /* [place * depth] */
    size_t       counts[TS_MEMO_KINDS]; /* of places       */
};

ts_memo *ts_memo_open(const ts_allocator *allocator, size_t depth)
{
    ts_memo *memo = allocator->resize(allocator->context, NULL, sizeof *memo);

    if (memo != NULL) {
        memset(memo, 0, sizeof *memo);
        memo->allocator = *allocator;
        memo->depth     = depth > 0 ? depth : 1;
    }
    return memo;
}

static void give_back(const ts_memo *memo, void *memory)
{
    if (memory != NULL)
        (void)memo->allocator.resize(memo->allocator.context, memory, 0);
}

void ts_memo_close(ts_memo *memo)
{
    if (memo == NULL)
        return;
    for (int kind = 0; kind < TS_MEMO_KINDS; kind++) {
        for (size_t i = 0; i < memo->counts[kind] * memo->depth; i++)
            give_back(memo, memo->places[kind][i].text.at);
        give_back(memo, memo->places[kind]);
    }
    give_back(memo, memo->question.at);
    const ts_allocator own = memo->allocator;
    (void)own.resize(own.context, memo, 0);
}

static bool make_room(const ts_memo *memo, text *of, size_t length)
{
    if (length <= of->room)
        return true;
    const size_t room = 2 * length;
    char        *at   = memo->allocator.resize(memo->allocator.context, of->at, room);

    if (at == NULL)
        return false;
    of->at   = at;
    of->room = room;
    return true;
}

void ts_memo_ask(ts_memo *memo, const void *bytes, size_t length)
{
    if (memo == NULL || length == 0)
        return;
    text *of   = &memo->question;
    memo->lost = memo->lost || !make_room(memo, of, of->length + length);
    if (memo->lost)
        return;
    memcpy(of->at + of->length, bytes, length);
    of->length += length;
}

/* The first of those that a place keeps. */
static kept *find_place(ts_memo *memo, ts_memo_kind kind, size_t number)
{
    const size_t count = memo->counts[kind], depth = memo->depth;

    if (number >= count) {
        const size_t more  = number + 16;
        kept        *grown = memo->allocator.resize(memo->allocator.context, memo->places[kind],
                                                    more * depth * sizeof *grown);
        if (grown == NULL)
            return NULL;
        memset(grown + count * depth, 0, (more - count) * depth * sizeof *grown);
        memo->places[kind] = grown;
        memo->counts[kind] = more;
    }
    return &memo->places[kind][number * depth];
}

/* Questions with other prints are other questions; those with the same are compared.  Eight bytes
 * at once, mixed by a multiplication: finds what differs, and keeps nobody out who wants a clash.
 */
static uint64_t print_of(const text *question)
{
    const uint64_t odd   = UINT64_C(0x9E3779B97F4A7C15);
    uint64_t       print = question->length * odd;

    for (size_t at = 0; at < question->length; at += 8) {
        const size_t left = question->length - at;
        uint64_t     word = 0;
        memcpy(&word, question->at + at, left < 8 ? left : 8);
        print = (print ^ word) * odd;
        print ^= print >> 32;
    }
    return print;
}

static bool holds(const kept *one, uint64_t print, size_t size, size_t front, const text *question)
{
    return one->print == print && one->size == size &&
           one->text.length == front + question->length &&
           (question->length == 0 ||
            memcmp(one->text.at + front, question->at, question->length) == 0);
}

void *ts_memo_answer(ts_memo *memo, ts_memo_kind kind, size_t number, size_t size, bool *known)
{
    *known = false;
    if (memo == NULL)
        return NULL;
    const text   question = memo->question;
    const bool   lost     = memo->lost;
    const size_t front    = (size + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
    kept        *at       = find_place(memo, kind, number);

    memo->question.length = 0;
    memo->lost            = false;
    if (at == NULL || lost)
        return NULL;
    /* One alone is compared as quickly as printed. */
    const uint64_t print = memo->depth > 1 ? print_of(&question) : 0;
    for (size_t i = 0; i < memo->depth; i++)
        if (holds(&at[i], print, size, front, &question)) {
            *known = true;
            return at[i].text.at;
        }
    kept *fresh        = &at[at->turn];
    at->turn           = at->turn + 1 < memo->depth ? at->turn + 1 : 0;
    fresh->text.length = 0;
    if (!make_room(memo, &fresh->text, front + question.length))
        return NULL;
    if (question.length > 0)
        memcpy(fresh->text.at + front, question.at, question.length);
    fresh->size        = size;
    fresh->print       = print;
    fresh->text.length = front + question.length;
    return fresh->text.at;
}
