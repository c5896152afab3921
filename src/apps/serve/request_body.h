/* apps/serve/request_body.h: the body of a request as a small tree (RFC 8259, strictly). */
#ifndef TS_APPS_SERVE_REQUEST_BODY_H
#define TS_APPS_SERVE_REQUEST_BODY_H

#include <jansson.h>
#include <stddef.h>

/* NULL for anything but one JSON object: also for a key that stands twice, a number with a fraction
 * or out of 64 bits, a NUL, bytes that are not UTF-8, more than 8 levels or 4096 values.  To be
 * given back by json_decref. */
json_t *request_body_read(const char *bytes, size_t length);

/* Borrowed; NULL: there is none, or it is of another type. */
const json_t *request_body_item(const json_t *of, const char *key, json_type type);

#endif
