/* apps/serve/route.h: which addresses does the server answer? */
#ifndef TS_APPS_SERVE_ROUTE_H
#define TS_APPS_SERVE_ROUTE_H

#include <stdbool.h>
#include <stddef.h>

typedef enum route_id {
    ROUTE_ENTER, /* "/" with a launch key */
    ROUTE_ASSET,
    ROUTE_STATE,
    ROUTE_ANSWER,
    ROUTE_VIEW,
    ROUTE_PLACES,
    ROUTE_WHY,
    ROUTE_PICTURE,
    ROUTE_COMPARE,
    ROUTE_SHEET,
    ROUTE_PAST,
    ROUTE_PAST_VIEW,
    ROUTE_EFFECTS,
    ROUTE_BRIEF,
    ROUTE_MOVING,
    ROUTE_START,
    ROUTE_SEIZE,
    ROUTE_WARM,
    ROUTE_TWIST,
    ROUTE_SOLIDS,
    ROUTE_NOTATION,
    ROUTE_EVENTS,
    ROUTE_ACT,
    ROUTE_UNDO,
    ROUTE_REDO,
    ROUTE_TEXT,
    ROUTE_TRY,
    ROUTE_ARRANGE,
    ROUTE_ARRANGE_VIEW,
    ROUTE_ARRANGE_STOP,
    ROUTE_ARRANGE_TAKE,
    ROUTE_STOP
} route_id;

typedef struct route {
    route_id    id;
    const char *method; /* "GET" or "POST" */
    const char *path;   /* exact */
    const char *query;  /* "key" ...: the names that may stand behind '?', with '|' between them;
                           NULL: no query */
    size_t body_most;   /* bytes of JSON; 0: none */
    bool   open;        /* with a query it answers without the cookie */
} route;

/* NULL: nothing is at this path.  *method_fits says whether one with this method is. */
const route *route_find(const char *method, size_t method_length, const char *path,
                        size_t path_length, bool *method_fits);

/* Is `name` one that the route knows behind '?'. */
bool route_takes(const route *at, const char *name, size_t length);

/* For tests and docs: row by row, NULL behind the last. */
const route *route_at(size_t index);

#endif
