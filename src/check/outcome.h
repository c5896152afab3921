/* check/outcome.h: what all rules together say of one drive. */
#ifndef TS_CHECK_OUTCOME_H
#define TS_CHECK_OUTCOME_H

#include "base/arena.h"
#include "base/workings.h"
#include "check/finding.h"
#include "mass/mass.h"
#include "model/source.h"
#include "oil/drive_heat.h"
#include "quantity/quantity.h"
#include "rating/drive_float.h"
#include "rating/drive_lines.h"
#include "rating/drive_opinion.h"
#include "rating/drive_rubbing.h"
#include "rating/drive_splines.h"
#include "rating/drive_teeth.h"
#include "rating/drive_webs.h"
#include "rating/drive_whirl.h"
#include "rating/selectivity.h"
#include "response/drive_forced.h"
#include "towershaft/status.h"
#include "towershaft/study.h"

/* One judgement: a rule held one object to one limit in one condition. */
typedef struct ts_judgement {
    const char *rule;
    ts_node     node;
    int32_t     condition; /* TS_EVERY_CONDITION when it does not vary                   */
    const char *symbol;    /* of the value; may be NULL                                  */
    const char *unit;      /* SI unit of value and limit; may be NULL                    */
    double      value;     /* SI; NaN: it has no number, or it could not be computed     */
    double      limit;     /* SI; of the end that is nearer                              */
    double      margin;    /* capacity / demand - 1; NaN: no number, no demand, or not computable */
    bool        passed;    /* false as well when it could not be computed                */
} ts_judgement;

/* What became of one rule. */
typedef struct ts_rule_outcome {
    const char *rule;
    uint32_t    judged; /* questions it put                                               */
    uint32_t    passed;
    const char *skipped; /* why it had nothing to judge in this drive; NULL: it judged    */
} ts_rule_outcome;

typedef struct ts_check_outcome {
    ts_finding *findings; /* worst first: open refuse, not computable, open warn, waived, open
                             note; then in the order of the file */
    size_t           finding_count;
    ts_judgement    *judgements;      /* rule by rule, in the order of the rulebook         */
    size_t           judgement_count; /* = all that was judged                              */
    size_t           passed;
    size_t           open[3]; /* by ts_level                                        */
    size_t           waived;
    size_t           not_computable;
    ts_rule_outcome *rules; /* of every rule, in the order of the rulebook        */
    size_t           rule_count;
    size_t           rules_run;     /* rules that applied to at least one object          */
    size_t           rules_skipped; /* rules that did not apply to anything               */
    /* An open finding at level refuse: does not hold.  Otherwise a question of that level that
     * could not be computed: not computable, which is no pass (exit code 1 in both cases). */
    ts_verdict       verdict;
    struct ts_check *check; /* src/check only: what is kept from one run to the next  */
} ts_check_outcome;

typedef struct ts_check_subject {
    const ts_source       *source;
    const ts_drive        *drive;
    const ts_train        *train;
    const ts_motion       *motion;
    const ts_power        *power;
    const ts_mass         *mass;    /* NULL: not weighed, likewise                        */
    const ts_teeth        *teeth;   /* NULL: not rated, and its rules skip                */
    const ts_lines        *lines;   /* NULL: shafts and bearings were not computed         */
    const ts_opinion      *opinion; /* the same                                            */
    const ts_select       *select;  /* necks, and what stands behind them                  */
    const ts_rubbing      *rubbing; /* the same                                            */
    const ts_heat         *heat;    /* losses and oil; the same                              */
    const ts_splines      *splines; /* the same                                            */
    const ts_floats       *floats;  /* the same                                            */
    const ts_whirls       *whirls;  /* NULL: critical speeds were not computed */
    const ts_webs         *webs;    /* gears across their planes; the same                 */
    const ts_drive_forced *forced;  /* trees and their swings; the same                  */
    size_t                 forced_count;
    int32_t                today; /* days since 1970-01-01, INT32_MIN: not told         */
    ts_units               units; /* of the numbers in sentences                        */
} ts_check_subject;

/* Memory for one drive, so that a usual run allocates nothing.  Source, drive and train of the
 * subject must stand; motion and power need not be solved. */
ts_status ts_check_prepare(const ts_check_subject *subject, ts_arena *arena,
                           ts_check_outcome *outcome);

/* Runs every rule, applies the waivers, sorts, counts and gives the verdict.  May be run again,
 * with the outcome of one ts_check_prepare, after the same drive was solved anew. */
ts_status ts_check_run(const ts_check_subject *subject, ts_arena *arena, ts_workings *workings,
                       ts_check_outcome *outcome);

#endif
