/* arrange/closed_model.h: widths and masses in closed form, for problems that stand apart from the
 * gear standards (tests/reference/arrange.md says every rule). */
#ifndef TS_ARRANGE_CLOSED_MODEL_H
#define TS_ARRANGE_CLOSED_MODEL_H

#include "search/arrange_problem.h"

typedef struct closed_model {
    double modules[16];           /* m, as in the problem */
    double K_bend, K_cont;        /* m2/N                 */
    double Y0, Y1, reversed_rate; /* -                    */
    double density;               /* kg/m3, of d2 b       */
} closed_model;

ts_arrange_model closed_model_of(closed_model *model);

#endif
