/* model/duplicate_key.h: does a record say the same key twice? */
#ifndef TS_MODEL_DUPLICATE_KEY_H
#define TS_MODEL_DUPLICATE_KEY_H

#include "base/arena.h"
#include "base/diagnostic.h"
#include "model/source.h"

/* Diagnoses every key of `mapping` that an earlier one repeats, in O(n log n).  False without
 * memory. */
bool ts_diagnose_duplicates(const ts_source *source, ts_node mapping, ts_arena *arena,
                            ts_diagnostics *list);

#endif
