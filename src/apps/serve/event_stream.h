/* apps/serve/event_stream.h: pages that are told what happens (server-sent events). */
#ifndef TS_APPS_SERVE_EVENT_STREAM_H
#define TS_APPS_SERVE_EVENT_STREAM_H

#include "apps/serve/server.h"

/* A new stream; when there are too many, the oldest ends. */
enum MHD_Result event_stream_open(server *at, struct MHD_Connection *to);
/* One event to all; `data` is JSON of one line. */
void event_stream_tell(server *at, const char *data);
/* A line without meaning now and then shows which pages are gone. */
void event_stream_keep(server *at);
/* Ends them all. */
void event_stream_end(server *at);

#endif
