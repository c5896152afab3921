/* apps/serve/head_guard.h: may these first bytes of a connection go any further?
 *
 * Judges the raw bytes, before any parser of HTTP sees them, so that no two readers can differ
 * about where a request ends.  Nothing is repaired and nothing is skipped: what is not exactly as a
 * browser writes it is refused.  A connection carries one request, so nothing can hide behind it.
 */
#ifndef TS_APPS_SERVE_HEAD_GUARD_H
#define TS_APPS_SERVE_HEAD_GUARD_H

#include "apps/serve/route.h"

#include <stdbool.h>
#include <stddef.h>

#define HEAD_MOST        8192 /* bytes of a head, with its empty line */
#define HEAD_LINES_MOST  64
#define HEAD_TARGET_MOST 2048

/* What this server is, as a request must say it. */
typedef struct guard_house {
    const char *host;   /* "127.0.0.1:40123" or "[::1]:40123": of the socket that was knocked at */
    const char *origin; /* "http://127.0.0.1:40123"                                              */
    const char *cookie; /* "towershaft-40123=64 hex digits", as the browser returns it           */
} guard_house;

typedef enum guard_verdict { GUARD_MORE, GUARD_PASS, GUARD_REFUSE } guard_verdict;

typedef struct guard_answer {
    guard_verdict verdict;
    int           status; /* of a refusal */
    const char   *says;   /* of a refusal: one sentence */
    const route  *route;  /* GUARD_PASS   */
    bool          query;  /* something stands behind '?'                                      */
    size_t        head;   /* bytes of the head                                                */
    size_t        body;   /* bytes that must follow                                           */
} guard_answer;

/* GUARD_MORE until the empty line is there. */
guard_answer head_guard_judge(const guard_house *house, const char *bytes, size_t length);

#endif
