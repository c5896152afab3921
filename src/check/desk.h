/* check/desk.h: what lies on the table while a check runs.  For src/check alone. */
#ifndef TS_CHECK_DESK_H
#define TS_CHECK_DESK_H

#include "base/arena.h"
#include "base/buffer.h"
#include "check/rule.h"
#include "check/waiver_use.h"

#include <stdarg.h>
#include <stdbool.h>
#include <stddef.h>

/* Text of the findings of one run; what does not fit goes into the arena. */
typedef struct ts_sentence_store {
    char  *bytes;
    size_t used;
    size_t room;
} ts_sentence_store;

/* A buffer for one piece of text at a time, whose memory is the arena's. */
typedef struct ts_scratch {
    ts_arena    *arena;
    size_t       size; /* of the block the buffer has now */
    ts_allocator allocator;
    ts_buffer    buffer;
} ts_scratch;

typedef struct ts_desk {
    ts_arena         *arena;
    ts_scratch        scratch;
    ts_sentence_store sentences;
    ts_finding       *findings;
    size_t            finding_count, finding_room;
    ts_judgement     *judgements;
    size_t            judgement_count, judgement_room;
    ts_rule_outcome  *rules;   /* in the order of the rulebook */
    ts_waiver_use    *waivers; /* one a waiver of the file   */
    const ts_rule    *rule;    /* the one that is being run  */
    ts_rule_outcome  *result;  /* of that rule               */
    bool              failed;  /* memory ran out             */
} ts_desk;

/* Empties the desk for another run. */
void ts_desk_clear(ts_desk *desk);

/* A clear buffer that is good until the next piece of text is asked for. */
ts_buffer *ts_desk_scratch(ts_desk *desk);

/* The next free place in a list, grown in the arena when it is full; NULL without memory. */
ts_finding   *ts_desk_finding(ts_desk *desk);
ts_judgement *ts_desk_judgement(ts_desk *desk);

/* `size` bytes for text; NULL without memory. */
char *ts_desk_text(ts_desk *desk, size_t size);

/* ts_phrase with its parts in a list. */
const char *ts_phrase_list(ts_check *check, const char *format, va_list parts)
    __attribute__((format(printf, 2, 0)));

#endif
