/* check/check.h: does the drive hold?  Every rule asks, waivers answer, the worst comes first. */
#ifndef TS_CHECK_CHECK_H
#define TS_CHECK_CHECK_H

#include "base/arena.h"
#include "check/rule.h"
#include "towershaft/status.h"

/* Sizes and reserves the memory of one check of this drive.  Of `check`, drive, train, motion (its
 * memory, solved or not) and source must be set.  TS_NO_MEMORY leaves nothing to clear up. */
ts_status ts_check_prepare(ts_check *check, ts_arena *arena);

/* Runs every rule of the book and fills in check->outcome, which lives as long as the arena.  Asks
 * the allocator for nothing while the findings fit into what was reserved.  May be run again after
 * the drive was solved anew. */
ts_status ts_check_run(ts_check *check);

/* "holds", "does not hold", "not computable" */
const char *ts_verdict_name(ts_verdict verdict);

#endif
