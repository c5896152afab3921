/* response/cvode_train.h: an elastic train followed by SUNDIALS CVODE with its root finding:
 * another integrator and other code for what touches, parts, breaks and stops, to hold against the
 * series of src/response/elastic_train.c. */
#ifndef TS_TESTS_CVODE_TRAIN_H
#define TS_TESTS_CVODE_TRAIN_H

#include "response/elastic_train.h"

/* Events, largest torques met at a step, q and v at the end. */
void cvode_train_run(const ts_elastic_train *train, double tolerance, ts_arena *arena,
                     ts_train_run *run);

#endif
