/* model/train_name.h: what is each shaft of a train called, and which number has it? */
#ifndef TS_MODEL_TRAIN_NAME_H
#define TS_MODEL_TRAIN_NAME_H

#include "model/train.h"

/* Numbers the box shafts: in each box from the outer end of its clockwise branch (seen from behind)
 * through the input to the other end, then the side branches in the order of the shafts. */
void ts_train_number(ts_train *train);

/* Names every shaft; false without memory. */
bool ts_train_name(const ts_drive *drive, ts_train *train, ts_arena *arena);

#endif
