/* check/outcome.h: what came out when every rule had asked its question? */
#ifndef TS_CHECK_OUTCOME_H
#define TS_CHECK_OUTCOME_H

#include "check/finding.h"
#include "towershaft/study.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

struct ts_rule;

/* One answer of one rule about one object in one condition, passed or not: the margins of tables.
 */
typedef struct ts_judgement {
    const struct ts_rule *rule;
    ts_node               node;
    int32_t               condition; /* index, or TS_EVERY_CONDITION                       */
    double                value;     /* SI; NaN when the judgement has no number           */
    double                limit;     /* SI; NaN when it has none                           */
    double                margin;    /* capacity / demand - 1; NaN when there is no demand */
    const char           *symbol;    /* of the value; NULL when none                       */
    const char           *unit;      /* SI unit of value and limit; NULL when none         */
    bool                  passed;
} ts_judgement;

typedef struct ts_rule_outcome {
    const struct ts_rule *rule;
    uint32_t              judged; /* questions put, those that could not be computed among them */
    uint32_t              passed;
    const char *skipped; /* why the rule has nothing to judge in this drive; NULL: it judged */
} ts_rule_outcome;

typedef struct ts_check_counts {
    uint32_t rules;             /* in the book                                */
    uint32_t skipped;           /* rules with nothing to judge in this drive  */
    uint32_t judged;            /* questions put                              */
    uint32_t passed;            /* questions whose answer holds               */
    uint32_t open[3];           /* findings by ts_level                       */
    uint32_t waived[3];         /* the same                                   */
    uint32_t not_computable[3]; /* the same                                   */
} ts_check_counts;

typedef struct ts_check_outcome {
    /* An open finding at level refuse: does not hold.  Else a question of that level that could not
     * be computed: not computable, and that is no pass (exit code 1 in both cases). */
    ts_verdict             verdict;
    const ts_finding      *findings; /* worst first, then in the order of the file */
    size_t                 finding_count;
    const ts_judgement    *judgements; /* rule by rule, in the order of the book */
    size_t                 judgement_count;
    const ts_rule_outcome *rules; /* in the order of the book */
    size_t                 rule_count;
    ts_check_counts        counts;
} ts_check_outcome;

#endif
