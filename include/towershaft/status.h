/* towershaft/status.h: how did a call end, and who supplies its memory?
 *
 * Three channels never mix.  A status other than TS_OK means that the work could not be done, and
 * the diagnostics say why.  A finding means that it was done and this is the answer.  An assertion
 * is a mistake of this program's own.
 */
#ifndef TOWERSHAFT_STATUS_H
#define TOWERSHAFT_STATUS_H

#include <stddef.h>

#ifndef TS_API
#define TS_API __attribute__((visibility("default")))
#endif

typedef enum ts_status {
    TS_OK = 0,
    TS_NOT_UNDERSTOOD, /* the input cannot be read or computed: see the diagnostics         */
    TS_NO_MEMORY,      /* an allocation failed; what was there before the call is untouched */
    TS_NO_OUTPUT       /* a sink or a file refused what was written to it                   */
} ts_status;

/* Memory comes from here and nowhere else.
 *
 * resize   block NULL asks for `size` bytes; size 0 frees `block`; otherwise grows or shrinks it.
 *          Returns NULL when there is no memory (the old block then stays as it was).
 * context  handed to every call unchanged
 */
typedef struct ts_allocator {
    void *(*resize)(void *context, void *block, size_t size);
    void *context;
} ts_allocator;

/* Where bytes go.  `write` returns 0 when it took all of them, anything else when it did not. */
typedef struct ts_sink {
    int (*write)(void *context, const char *bytes, size_t length);
    void *context;
} ts_sink;

#endif
