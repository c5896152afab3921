/* report/brief.h: the hand-out on one drive, for those who meet it the first time.
 *
 * How the power goes and comes, why each pad turns as it does, what breaks first and what then goes
 * on, and questions; all in words from the solved drive.  Numbers only where they are wanted.
 */
#ifndef TS_REPORT_BRIEF_H
#define TS_REPORT_BRIEF_H

#include "report/quiz.h"
#include "report/report_chapter.h"

/* The figure of a manuscript that moves. */
#define TS_BRIEF_MOVING "moving"
#define TS_BRIEF_PLAIN "plain" /* name of the figure without numbers, for paper */

typedef struct ts_brief {
    const ts_effects *effects; /* solved, of the chapter's drive */
    const ts_quiz    *quiz;    /* made of the same               */
    bool              numbers; /* ratios, torques                */
    bool              key;     /* the answers, on a page of their own */
    bool              moving;  /* the outlet shows pictures that move */
} ts_brief;

void ts_brief_chapters(ts_chapter *chapter, const ts_brief *brief);

/* "a", "b", ... of a choice. */
char ts_choice_letter(int choice);

/* The words of the chapters before the questions, and the questions with their answers, by
 * docs/schema/brief.schema.json; `manuscript` holds the chapters. */
void ts_brief_json(const ts_answer *answer, const ts_manuscript *manuscript, const ts_quiz *quiz,
                   ts_buffer *out);

#endif
