/* apps/serve/front_door.h: who knocks, who is let in, and for how long?
 *
 * Every connection is looked at from outside (MSG_PEEK) until its head is whole and the guard has
 * judged it; only then does the HTTP library get it.  A connection carries one request and closes.
 */
#ifndef TS_APPS_SERVE_FRONT_DOOR_H
#define TS_APPS_SERVE_FRONT_DOOR_H

#include "apps/serve/server.h"

#include <netinet/in.h>

#define KNOCKS_MOST 512 /* the oldest is turned away for the newest */
#define GUESTS_MOST 256
#define KNOCK_MS    5000  /* for a whole head                                 */
#define GUEST_MS    30000 /* for a whole request and answer, from the knock on */
#define FAREWELL_MS 1000  /* for a refusal to be read                          */

typedef struct knock {
    int     socket; /* -1: free */
    int     door;
    int64_t since, until;
    bool    refused; /* the answer is sent; what still comes is thrown away */
} knock;

typedef struct guest {
    int     socket; /* -1: free */
    int64_t until;  /* INT64_MAX: an event stream */
} guest;

typedef struct front_door {
    server *at;
    int     epoll;
    int     listener[DOORS_MOST]; /* -1: none */
    knock   knocks[KNOCKS_MOST];
    guest   guests[GUESTS_MOST];
} front_door;

/* Opens both doors on one port (0: any).  NULL, or why not; *port is the one taken. */
const char *front_door_open(front_door *door, server *at, int epoll, unsigned *port);
/* An event of epoll whose data is `which`. */
void front_door_event(front_door *door, uint64_t which);
/* Lets those go whose time is over. */
void front_door_sweep(front_door *door);
void front_door_close(front_door *door);

/* The HTTP library closes this socket. */
void front_door_left(front_door *door, int socket);
/* This guest may stay: an event stream. */
void front_door_stays(front_door *door, int socket);

/* What epoll says of listeners and knocks: the number of either behind these bits. */
#define FRONT_DOOR_LISTENER UINT64_C(0x100000000)
#define FRONT_DOOR_KNOCK    UINT64_C(0x200000000)

#endif
