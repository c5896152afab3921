/* report/quiz.h: questions on one drive for those who learn it, with answers that the model found.
 *
 * Right     What the solved drive says: exact ratios, senses, the way of the power, what breaks.
 * Wrong     What the usual slips would give in the same drive: one reversal too few, a ratio turned
 *           over, bevels forgotten, the neck of a neighbour.  A slip that happens to be right, or
 *           to give what another slip gives, is left out.
 * Order     Of the questions, as the drive stands in the file; of the choices, by a fixed shuffle
 *           of the number of the question: the same drive gives the same quiz.
 */
#ifndef TS_REPORT_QUIZ_H
#define TS_REPORT_QUIZ_H

#include "effect/effect.h"
#include "report/answer.h"

#define TS_CHOICES_MOST 4

typedef struct ts_choice {
    const char *says;
    const char *slip; /* NULL: it is right; else how one comes to it */
} ts_choice;

typedef struct ts_question {
    const char *asks;
    ts_choice   choices[TS_CHOICES_MOST];
    int         count, right;
    const char *because;
    uint32_t    shaft; /* to be looked at; TS_NOWHERE: none */
} ts_question;

typedef struct ts_quiz {
    ts_question *questions;
    size_t       count;
} ts_quiz;

/* The answer's drive must be solved; `effects` of the same.  numbers: ratios and turns are asked
 * for, else only what is seen without them.  TS_OK or TS_NO_MEMORY; all memory is the arena's. */
ts_status ts_quiz_make(const ts_answer *answer, const ts_effects *effects, bool numbers,
                       ts_arena *arena, ts_quiz *out);

#endif
