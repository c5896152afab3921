/* apps/serve/handle.h: what each route does.
 *
 * The guard has judged the request before it comes here.
 */
#ifndef TS_APPS_SERVE_HANDLE_H
#define TS_APPS_SERVE_HANDLE_H

#include "apps/serve/request_body.h"
#include "apps/serve/server.h"

/* Answers a request that only reads.  Events are not among them. */
enum MHD_Result handle_read(server *at, struct MHD_Connection *to, const route *where,
                            const char *path);
/* Answers a request that brings a body. */
enum MHD_Result handle_change(server *at, struct MHD_Connection *to, const route *where,
                              const growing *body);

/* What the page shows of the file itself: text, serial, what can be taken back, what is wrong. */
enum MHD_Result handle_state(server *at, struct MHD_Connection *to, unsigned status);
/* The same with the view, or what of it has changed since `seen` (NULL: all of it), in `units`. */
enum MHD_Result handle_state_and_view(server *at, struct MHD_Connection *to, unsigned status,
                                      const char *units, const char *seen);
bool            handle_is_us(const char *units); /* NULL: metric */
/* Tells every page that there is something new. */
void handle_tell(server *at);

#endif
