/* apps/serve/server.h: what the rooms of the server share while it runs.
 *
 * One thread does all of it: knocks, requests, edits, events.  Only a search, and answers that
 * take seconds, have threads of their own, each with a study of its own.
 */
#ifndef TS_APPS_SERVE_SERVER_H
#define TS_APPS_SERVE_SERVER_H

#include "apps/serve/arrange_job.h"
#include "apps/serve/head_guard.h"
#include "apps/serve/launch_key.h"
#include "apps/serve/sitting.h"
#include "apps/serve/slow_answer.h"
#include "apps/serve/view_delta.h"

#include <microhttpd.h>
#include <stdint.h>

#define STREAMS_MOST 32
#define DOORS_MOST   2 /* 127.0.0.1 and ::1 */

typedef struct event_stream event_stream;

typedef struct server {
    struct MHD_Daemon *daemon;
    sitting            here;
    launch_key         launch; /* until it is used: then its first digit is NUL */
    launch_key         session;
    guard_house        house[DOORS_MOST];
    char               words[DOORS_MOST][3][128]; /* host, origin, cookie of each */
    event_stream      *streams[STREAMS_MOST];
    uint64_t           stream_age;
    arrange_job        job;
    slow_desk          slow;
    view_shelf         shelf[2]; /* metric, US */
    double             begun;    /* stopwatch_ms when the change that is answered came; 0: none */
    bool               stopping;
} server;

/* ms of a clock that never goes back */
int64_t server_now(void);

#endif
