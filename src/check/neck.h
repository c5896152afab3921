/* check/neck.h: is a neck far enough above the highest torque that it must pass? */
#ifndef TS_CHECK_NECK_H
#define TS_CHECK_NECK_H

#include "check/highest_load.h"
#include "check/rule.h"

typedef struct ts_neck_case {
    const ts_neck *neck;
    const char    *name;   /* of the shaft or accessory that has it            */
    ts_peak        peak;   /* the highest torque that it must pass             */
    double         factor; /* least break torque over that torque              */
    const char    *load;   /* "the start", "its overload", "what it absorbs"   */
    ts_node        lender; /* whose torque it is in the workings, and its name */
    const char    *symbol;
    ts_node        overload; /* where the peak stands in the file, when it is an overload; else 0 */
} ts_neck_case;

/* Puts the question about neck->node. */
void ts_judge_neck(ts_check *check, const ts_neck_case *question);

#endif
