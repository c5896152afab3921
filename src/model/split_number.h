/* model/split_number.h: does a comma inside of a number cut it in two?  Between braces "2,25 mm" is
 * the number 2 and behind it a key "25 mm" without a value. */
#ifndef TS_MODEL_SPLIT_NUMBER_H
#define TS_MODEL_SPLIT_NUMBER_H

#include "model/source.h"

/* One message for each such number; the nodes that it was cut into are marked as spoiled.  Linear
 * in the number of nodes.  False without memory. */
bool ts_diagnose_split_numbers(ts_source *source, ts_arena *arena, ts_diagnostics *list);

#endif
