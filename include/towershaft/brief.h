/* towershaft/brief.h: a hand-out on one drive, for those who meet it the first time, and a quiz.
 *
 * How the power goes and comes, why each pad turns as it does, what breaks first and what goes on;
 * questions whose right answers the drive gives, and whose wrong ones are the usual slips.  The
 * same study gives the same bytes.
 */
#ifndef TOWERSHAFT_BRIEF_H
#define TOWERSHAFT_BRIEF_H

#include "towershaft/study.h"

typedef struct ts_brief_options {
    const char *format;  /* "pdf", "html"                                          */
    const char *paper;   /* "A4", "Letter"; NULL: A4.  HTML does not ask           */
    bool        numbers; /* ratios and torques in words and tables too          */
    bool        key;     /* the answers of the quiz, on a page of their own        */
    bool        large;   /* large print: letters of 16 pt and more on paper        */
    bool        us;      /* customary units                                        */
} ts_brief_options;

/* TS_NOT_UNDERSTOOD with a message for an unknown format or paper, or when the study holds no
 * solved drive. */
TS_API ts_status ts_brief_write(ts_study *study, const ts_brief_options *options,
                                const ts_sink *sink);
/* Its words and the quiz with its key as JSON, by docs/schema/brief.schema.json. */
TS_API ts_status ts_brief_quiz(ts_study *study, bool numbers, const ts_sink *sink);

/* The face of the drive that turns, as SVG: every gear at its true ratio, ribbons the way the power
 * goes.  condition: NULL: the one in which most power is taken; ground: "light", "dark",
 * "contrast", "print" or NULL.  TS_NOT_UNDERSTOOD with a message for another name, or where nothing
 * turns. */
TS_API ts_status ts_brief_picture(ts_study *study, const char *condition, const char *ground,
                                  const ts_sink *sink);

#endif
