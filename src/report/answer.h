/* report/answer.h: the one answer that every outlet tells: page, JSON, SARIF, JUnit, pictures. */
#ifndef TS_REPORT_ANSWER_H
#define TS_REPORT_ANSWER_H

#include "base/workings.h"
#include "check/outcome.h"
#include "effect/effect.h"
#include "mass/mass.h"
#include "model/source.h"
#include "oil/drive_heat.h"
#include "rating/drive_float.h"
#include "rating/drive_lines.h"
#include "rating/drive_opinion.h"
#include "rating/drive_rubbing.h"
#include "rating/drive_splines.h"
#include "rating/drive_teeth.h"
#include "rating/selectivity.h"

/* Somebody who is told every number of the answer as it is written, in the order of the JSON. */
typedef struct ts_listener {
    void (*hear)(void *context, double si, ts_kind kind, ts_node node, const char *symbol,
                 int32_t condition);
    void *context;
} ts_listener;

typedef struct ts_answer {
    const ts_source        *source;
    const ts_drive         *drive;
    const ts_train         *train;
    const ts_motion        *motion;
    const ts_power         *power;
    const ts_mass          *mass;     /* NULL: not weighed                              */
    const ts_lines         *lines;    /* NULL: shafts and bearings were not computed    */
    const ts_teeth         *teeth;    /* NULL: not rated                                */
    const ts_opinion       *opinion;  /* NULL: nor by a second standard                 */
    const ts_select        *select;   /* necks, and what stands behind them; NULL: none */
    const ts_rubbing       *rubbing;  /* NULL: heat and films were not computed         */
    const ts_splines       *splines;  /* of the pads; NULL: not computed                      */
    const ts_floats        *floats;   /* take-offs against travel; NULL: not computed         */
    const ts_heat          *heat;     /* losses and oil; NULL: not computed                   */
    const ts_effects       *effects;  /* of each failure alone; NULL: not asked for           */
    const ts_check_outcome *outcome;  /* findings, counts, verdict                      */
    const ts_workings      *workings; /* NULL when none were kept                       */
    const char             *version;  /* of the program                                 */
    const char             *sha256;   /* of the file                                    */
    const char             *caution;
    const ts_listener      *listener;  /* NULL: nobody                                   */
    const ts_allocator     *allocator; /* for what a writer needs while it writes        */
} ts_answer;

/* Name of a condition, or NULL for TS_EVERY_CONDITION. */
const char *ts_answer_condition(const ts_answer *answer, int32_t condition);

#endif
