/* support/solved_train.h: a hand-built drive, solved. */
#ifndef TS_SUPPORT_SOLVED_TRAIN_H
#define TS_SUPPORT_SOLVED_TRAIN_H

#include "power/power.h"
#include "support/hand_train.h"

typedef struct solved_train {
    ts_arena       *arena;
    ts_diagnostics *list;
    ts_motion       motion;
    ts_power        power;
    ts_status       status; /* of the motion; the power is solved when it is TS_OK */
} solved_train;

/* workings: may be NULL.  Every step that fails for another reason than the drive ends the test. */
void solved_open(solved_train *solved, const hand_train *h);
void solved_solve(solved_train *solved, const hand_train *h, ts_workings *workings);
void solved_close(solved_train *solved);

/* Opens and solves, and expects no diagnostics. */
void solved_usual(solved_train *solved, const hand_train *h);

#endif
