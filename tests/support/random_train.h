/* support/random_train.h: a drive of any shape, the same for the same seed. */
#ifndef TS_SUPPORT_RANDOM_TRAIN_H
#define TS_SUPPORT_RANDOM_TRAIN_H

#include "support/hand_train.h"

#include <stdint.h>

typedef struct random_source {
    uint64_t state;
} random_source;

/* Whole numbers from `low` to `high`, both included. */
int random_between(random_source *source, int low, int high);
/* Numbers from `low` up to `high`. */
double random_real(random_source *source, double low, double high);

/* One or two spools, each with up to `shafts_most` box shafts in branching chains, step gears,
 * helical or spur teeth, accessories that absorb and accessories that drive, in up to eight
 * conditions of which some are at rest. */
void random_train(hand_train *h, uint64_t seed, int shafts_most);

#endif
