/* arrange/random_problem.h: invented arrangement problems, the same for the same seed.
 *
 * Types of accessories and their ranges are common practice, no source.
 */
#ifndef TS_ARRANGE_RANDOM_PROBLEM_H
#define TS_ARRANGE_RANDOM_PROBLEM_H

#include "arrange/closed_model.h"

enum { RANDOM_CONDITIONS = 3, RANDOM_CHOICES = 128, RANDOM_BOXES = 2, RANDOM_STEPS = 4 };

/* How large, how wide. */
typedef struct random_wish {
    size_t accessories;
    size_t boxes;
    size_t modules, z_in; /* choices of each box: every module with every z_in */
    bool   narrow;        /* speed bands of a few teeth, every kind of demand: for enumeration;
                             otherwise as on a real box */
    size_t steps;         /* most step shafts that a box allows */
    bool   weights;       /* wrap and servicing count */
    bool   take_offs;     /* every choice twice, with other speeds and another mass */
} random_wish;

typedef struct random_problem {
    ts_arrange_problem   problem;
    closed_model         model;
    ts_arrange_accessory accessories[TS_ARRANGE_ACCESSORIES];
    ts_arrange_box       boxes[RANDOM_BOXES];
    ts_arrange_choice    choices[RANDOM_BOXES][RANDOM_CHOICES];
    double               input_speed[RANDOM_BOXES][RANDOM_CONDITIONS];
    double               other_speed[RANDOM_BOXES][RANDOM_CONDITIONS];
    double               least[TS_ARRANGE_ACCESSORIES][RANDOM_CONDITIONS];
    double               most[TS_ARRANGE_ACCESSORIES][RANDOM_CONDITIONS];
    double               power[TS_ARRANGE_ACCESSORIES][RANDOM_CONDITIONS];
    uint32_t             idlers[4];
    ts_arrange_step      steps[RANDOM_BOXES][RANDOM_STEPS];
} random_problem;

/* `out` must stay where it is, for it points into itself. */
void random_problem_make(random_problem *out, uint64_t seed, const random_wish *wish);

#endif
