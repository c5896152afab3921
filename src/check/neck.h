/* check/neck.h: is a neck far enough above the highest torque that it must pass? */
#ifndef TS_CHECK_NECK_H
#define TS_CHECK_NECK_H

#include "check/highest_load.h"
#include "check/rule.h"

typedef struct ts_neck_case {
    const ts_neck *neck;
    uint32_t       number; /* of check->select->necks                          */
    const char    *name;   /* of the shaft or accessory that has it            */
    ts_peak        peak;   /* the highest torque that it must pass             */
    double         factor; /* least break torque over that torque              */
    const char    *load;   /* "the start", "its overload", "what it absorbs"   */
    ts_node        lender; /* whose torque it is in the workings, and its name */
    const char    *symbol;
    ts_node        overload; /* where the peak stands in the file: an overload, a point of a curve; else 0 */
} ts_neck_case;

/* Is the band of this neck known?  Otherwise the question is put and is not computable. */
bool ts_neck_known(ts_check *check, uint32_t number);

/* Which band, or diameter, would bring its least (most: greatest) break torque to the limit? */
void ts_neck_remedy(ts_check *check, ts_finding *finding, uint32_t number, double limit, bool most);

/* Puts the question about neck->node. */
void ts_judge_neck(ts_check *check, const ts_neck_case *question);

#endif
