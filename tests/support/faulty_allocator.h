/* support/faulty_allocator.h: what happens when memory runs out at the n-th call?
 *
 *   faulty_allocator faulty;
 *   for (size_t n = 1;; n++) {
 *       const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
 *       ... work with &allocator and free everything ...
 *       assert_int_equal(faulty.live_blocks, 0);
 *       if (!faulty.failed)
 *           break;
 *   }
 */
#ifndef TS_SUPPORT_FAULTY_ALLOCATOR_H
#define TS_SUPPORT_FAULTY_ALLOCATOR_H

#include "towershaft/status.h"

#include <stdbool.h>
#include <stddef.h>

typedef enum faulty_manner {
    FAULTY_ONCE,   /* the n-th request fails, the ones after it succeed again */
    FAULTY_ONWARDS /* the n-th request and every one after it fail            */
} faulty_manner;

typedef struct faulty_allocator {
    size_t        fail_at; /* counted from 1; 0 never fails */
    faulty_manner manner;
    size_t        calls;       /* requests for memory so far, failed ones too; frees do not count */
    size_t        failed;      /* how many of them failed                                         */
    size_t        live_blocks; /* blocks given and not yet freed                                  */
    size_t        live_bytes;
    size_t        most_bytes; /* the most that was live at one time */
} faulty_allocator;

/* Sets every count to nothing; the returned allocator stays good as long as `faulty` does. */
ts_allocator faulty_allocator_open(faulty_allocator *faulty, size_t fail_at, faulty_manner manner);

#endif
