/* base/memo.c: was this very question answered the last time? */
#include "base/memo.h"

#include <string.h>

#define ALIGNMENT ((size_t)16)

typedef struct text {
    char  *at;
    size_t length, room;
} text;

/* The answer stands before its question, so that it is aligned. */
typedef struct place {
    text   kept;
    size_t size; /* of the answer */
} place;

struct ts_memo {
    ts_allocator allocator;
    text         question;
    bool         lost; /* the question did not find room */
    place       *places[TS_MEMO_KINDS];
    size_t       counts[TS_MEMO_KINDS];
};

ts_memo *ts_memo_open(const ts_allocator *allocator)
{
    ts_memo *memo = allocator->resize(allocator->context, NULL, sizeof *memo);

    if (memo != NULL) {
        memset(memo, 0, sizeof *memo);
        memo->allocator = *allocator;
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
        for (size_t i = 0; i < memo->counts[kind]; i++)
            give_back(memo, memo->places[kind][i].kept.at);
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

static place *find_place(ts_memo *memo, ts_memo_kind kind, size_t number)
{
    const size_t count = memo->counts[kind];

    if (number >= count) {
        const size_t more  = number + 16;
        place       *grown = memo->allocator.resize(memo->allocator.context, memo->places[kind],
                                                    more * sizeof *grown);
        if (grown == NULL)
            return NULL;
        memset(grown + count, 0, (more - count) * sizeof *grown);
        memo->places[kind] = grown;
        memo->counts[kind] = more;
    }
    return &memo->places[kind][number];
}

void *ts_memo_answer(ts_memo *memo, ts_memo_kind kind, size_t number, size_t size, bool *known)
{
    *known = false;
    if (memo == NULL)
        return NULL;
    const text   question = memo->question;
    const bool   lost     = memo->lost;
    const size_t front    = (size + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
    place       *at       = find_place(memo, kind, number);

    memo->question.length = 0;
    memo->lost            = false;
    if (at == NULL || lost)
        return NULL;
    *known =
        at->size == size && at->kept.length == front + question.length &&
        (question.length == 0 || memcmp(at->kept.at + front, question.at, question.length) == 0);
    if (*known)
        return at->kept.at;
    at->kept.length = 0;
    if (!make_room(memo, &at->kept, front + question.length))
        return NULL;
    if (question.length > 0)
        memcpy(at->kept.at + front, question.at, question.length);
    at->size        = size;
    at->kept.length = front + question.length;
    return at->kept.at;
}
