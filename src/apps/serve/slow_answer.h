/* apps/serve/slow_answer.h: answers that take longer than a page may wait for the others.
 *
 * Each has a thread and a study of its own; its request sleeps until the answer is there.  Nothing
 * can end such a computation early: when the server ends, the request is told so, and the thread
 * ends with the program.
 */
#ifndef TS_APPS_SERVE_SLOW_ANSWER_H
#define TS_APPS_SERVE_SLOW_ANSWER_H

#include "apps/serve/growing.h"
#include "apps/serve/route.h"

#include <microhttpd.h>
#include <stdbool.h>

#define SLOW_MOST  4 /* at a time; one more is told to come again */
#define SLOW_WORDS 4

typedef struct slow_answer slow_answer;

typedef struct slow_desk {
    int          bell; /* eventfd: rings when an answer is there */
    slow_answer *jobs[SLOW_MOST];
    bool         ending;
} slow_desk;

/* What is asked of the text: the words behind '?' in the order of the route's row; NULL: not told.
 */
typedef struct slow_question {
    route_id       which;
    const char    *shown; /* the path as the user gave it; outlives the server's requests */
    const growing *text;
    const char    *words[SLOW_WORDS];
} slow_question;

bool slow_desk_open(slow_desk *desk);
/* Called again when the request wakes; then it is answered. */
enum MHD_Result slow_desk_ask(slow_desk *desk, struct MHD_Connection *to,
                              const slow_question *what);
/* The bell rang. */
void slow_desk_collect(slow_desk *desk);
/* The request is over, however it ended. */
void slow_desk_left(slow_desk *desk, const struct MHD_Connection *to);
/* Wakes whoever waits; to be called before the HTTP library is stopped. */
void slow_desk_end(slow_desk *desk);
bool slow_desk_waits(const slow_desk *desk); /* Has somebody not been told yet? */
void slow_desk_close(slow_desk *desk);

#endif
