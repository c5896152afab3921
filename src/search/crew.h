/* search/crew.h: the same work for many items, on several threads, with the same result. */
#ifndef TS_SEARCH_CREW_H
#define TS_SEARCH_CREW_H

#include <stdbool.h>
#include <stddef.h>

/* One item of work.  `worker` counts from 0 and names the thread, for memory of its own. */
typedef void (*ts_crew_work)(void *context, size_t item, size_t worker);

/* Does `count` items on `workers` threads, the caller being the first of them, and returns when all
 * are done.  Items are handed out in order, but may end in any: an item must not read what another
 * of the same call writes.  A thread that cannot be started is done without. */
void ts_crew_run(size_t workers, size_t count, ts_crew_work work, void *context);

#endif
