/* apps/serve/reply.h: an answer with the headers that every answer has. */
#ifndef TS_APPS_SERVE_REPLY_H
#define TS_APPS_SERVE_REPLY_H

#include "apps/serve/growing.h"

#include <microhttpd.h>

/* What every answer says besides its kind and length, each line with CR LF: no cache, no sniffing,
 * no frame, no referrer, and what the page may load, which is its own. */
void reply_policy_lines(growing *out);
/* The same as headers of a response. */
void reply_add_policy(struct MHD_Response *response);

/* Takes the bytes over.  `kind` is a media type. */
enum MHD_Result reply_send(struct MHD_Connection *to, unsigned status, const char *kind,
                           growing *bytes);
/* The same, and how long it took: the value of Server-Timing (W3C Server Timing). */
enum MHD_Result reply_send_timed(struct MHD_Connection *to, unsigned status, const char *kind,
                                 growing *bytes, const char *timing);
/* {"says": "..."} */
enum MHD_Result reply_say(struct MHD_Connection *to, unsigned status, const char *says);
#endif
