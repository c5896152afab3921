/* check/outcome.h: what all rules together say of one drive. */
#ifndef TS_CHECK_OUTCOME_H
#define TS_CHECK_OUTCOME_H

#include "base/arena.h"
#include "base/workings.h"
#include "check/finding.h"
#include "model/source.h"
#include "power/power.h"
#include "towershaft/status.h"
#include "towershaft/study.h"

/* One judgement: a rule held one object to one limit in one condition. */
typedef struct ts_judgement {
    const char *rule;
    ts_node     node;
    int32_t     condition; /* TS_EVERY_CONDITION when it does not vary                   */
    const char *symbol;    /* of the value; may be NULL                                  */
    double      value;     /* SI                                                         */
    double      limit;     /* SI; of the end that is nearer                              */
    double      margin;    /* capacity / demand - 1; NaN: not computable                 */
    bool        passed;
} ts_judgement;

typedef struct ts_check_outcome {
    ts_finding   *findings; /* worst first: open refuse, not computable, open warn, open note,
                               waived; then in the order of the file */
    size_t        finding_count;
    ts_judgement *judgements;
    size_t        judgement_count; /* = all that was judged                              */
    size_t        passed;
    size_t        open[3];         /* by ts_level                                        */
    size_t        waived;
    size_t        not_computable;
    size_t        rules_run;       /* rules that applied to at least one object          */
    size_t        rules_skipped;   /* rules that did not apply to anything               */
    ts_verdict    verdict;
} ts_check_outcome;

typedef struct ts_check_subject {
    const ts_source *source;
    const ts_drive  *drive;
    const ts_train  *train;
    const ts_motion *motion;
    const ts_power  *power;
    int32_t          today; /* days since 1970-01-01, INT32_MIN: not told */
} ts_check_subject;

/* Memory for one drive, so that a usual run allocates nothing. */
ts_status ts_check_prepare(const ts_check_subject *subject, ts_arena *arena,
                           ts_check_outcome *outcome);

/* Runs every rule, applies the waivers, sorts, counts and gives the verdict. */
ts_status ts_check_run(const ts_check_subject *subject, ts_arena *arena, ts_workings *workings,
                       ts_check_outcome *outcome);

#endif
