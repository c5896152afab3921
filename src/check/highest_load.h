/* check/highest_load.h: what is the highest torque that a pad or a mesh meets in ordinary life? */
#ifndef TS_CHECK_HIGHEST_LOAD_H
#define TS_CHECK_HIGHEST_LOAD_H

#include "check/rule.h"

#include <stdint.h>

typedef struct ts_peak {
    double  T;         /* N.m, >= 0; NaN when the torque of some condition is not known           */
    double  noted;     /* N.m, the same with the sign that the workings give it                   */
    int32_t condition; /* in which it is met; TS_EVERY_CONDITION: in none, or as an overload      */
} ts_peak;

/* What the accessory absorbs at most. */
ts_peak ts_highest_absorbed(const ts_check *check, uint32_t pad);
/* The torque with which it drives at most. */
ts_peak ts_highest_driven(const ts_check *check, uint32_t pad);
/* At the driven gear of a mesh, whichever way the power flows; `start`: only the conditions in
 * which it flows inwards, else only the others. */
ts_peak ts_highest_in_mesh(const ts_check *check, uint32_t mesh, bool start);

#endif
