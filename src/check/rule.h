/* check/rule.h: what a rule is, and with what words it judges.
 *
 * A rule is one file src/check/rule/<name>.c that defines `const ts_rule ts_rule_<name>`, and one
 * page docs/check/<name>.md.  Its id is the capability it belongs to and its file name with dashes:
 * speed_band.c is "B2-speed-band".  The build finds both by themselves; everything in src/check/
 * itself is machinery.
 *
 * A rule puts questions.  Each is about one object of the drive, in one condition or in all of
 * them, and a rule puts at most one question about the same object and condition.  A rule that has
 * nothing to ask in a drive says why (ts_skip).  A value or limit that is not a number never
 * passes.
 *
 * Rules say nothing while all is well: sentences are composed only for what does not hold.  Memory
 * comes from the arena of the check; when it runs out, the calls below do nothing more and
 * ts_check_run returns TS_NO_MEMORY.
 */
#ifndef TS_CHECK_RULE_H
#define TS_CHECK_RULE_H

#include "base/workings.h"
#include "check/finding.h"
#include "check/outcome.h"
#include "mass/mass.h"
#include "model/drive.h"
#include "model/source.h"
#include "model/train.h"
#include "motion/motion.h"
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

#include <math.h>
#include <stdbool.h>

typedef struct ts_check ts_check;

typedef struct ts_rule {
    const char *id;       /* "B2-speed-band"                                             */
    const char *title;    /* "Speed band"                                                */
    const char *question; /* one sentence with a question mark                           */
    const char *why;      /* why it matters, one or two sentences                        */
    ts_level    level;
    const char *source; /* standard and clause, or "common practice, no source"        */
    const char *hint;   /* what closes it in general, where a finding says no better   */
    void (*run)(ts_check *check);
    bool after_waivers; /* judges the waivers themselves; cannot be waived         */
} ts_rule;

struct ts_envelope; /* check/envelope.h */
struct ts_desk;     /* check/desk.h     */

struct ts_check {
    /* What is judged: solved, and unchanged during the check. */
    const ts_drive        *drive;
    const ts_train        *train;
    const ts_motion       *motion;
    const ts_power        *power;
    const ts_mass         *mass;    /* NULL: not weighed              */
    const ts_lines        *lines;   /* NULL: shafts and bearings were not computed */
    const ts_teeth        *teeth;   /* NULL: the teeth were not rated */
    const ts_opinion      *opinion; /* NULL: nor by a second standard */
    const ts_select       *select;  /* NULL: necks were not looked at */
    const ts_rubbing      *rubbing; /* NULL: heat and films were not computed */
    const ts_splines      *splines; /* NULL: splines of pads were not looked at */
    const ts_floats       *floats;  /* NULL: take-offs were not held against travel */
    const ts_heat         *heat;    /* NULL: losses and oil were not computed */
    const ts_whirls       *whirls;  /* NULL: critical speeds were not computed */
    const ts_webs         *webs;    /* NULL: gears were not swung across their planes */
    const ts_drive_forced *forced;  /* NULL: torsion was not computed */
    size_t                 forced_count;
    const ts_source       *source;
    ts_workings           *workings; /* may be NULL                                 */
    int32_t                today;    /* days since 1970-01-01; INT32_MIN: not told  */
    ts_units               units;    /* of the numbers in sentences                 */

    struct ts_envelope   *envelope; /* circles that gears and bodies fill     */
    const ts_rule *const *rules;    /* the rulebook                           */
    size_t                rule_count;
    struct ts_desk       *desk; /* what is under way: the machinery's business */
};

/* ---- questions --------------------------------------------------------------------------- */

typedef enum ts_bound { TS_AT_MOST, TS_AT_LEAST } ts_bound;

typedef struct ts_question {
    ts_node           object;
    int32_t           condition; /* index, or TS_EVERY_CONDITION                          */
    ts_level          level;     /* of the rule unless a rule says something milder       */
    ts_bound          bound;     /* value at most, or at least, the limit                 */
    double            value;     /* SI                                                    */
    double            limit;     /* SI                                                    */
    double            wanted;    /* least reserve that passes; 0: the limit itself        */
    ts_kind           kind;      /* of value and limit                                    */
    const char       *symbol;    /* of the value in the workings; NULL: none              */
    const char       *limit_symbol;
    const ts_formula *reserve; /* limit/value - 1 or value/limit - 1 in these symbols; NULL */
    const char       *source;  /* of the limit; NULL: the rule's                        */
} ts_question;

/* A question of the rule that is being run, with value and limit not yet numbers. */
ts_question ts_question_about(const ts_check *check, ts_node object, int32_t condition);

/* Returns NULL when it holds or when the finding is complete (it could not be computed), else the
 * open finding, for which the rule says what is wrong and what would close it.  The finding may be
 * moved by the next question. */
ts_finding *ts_judge(ts_check *check, const ts_question *question);

/* The same for something that is so or is not, without a number. */
ts_finding *ts_judge_fact(ts_check *check, ts_node object, int32_t condition, bool holds);

/* The question is put, but `what` is not known: "the face width of %s".  Returns the finding, which
 * says so already; NULL without memory. */
ts_finding *ts_not_computable(ts_check *check, ts_node object, int32_t condition, const char *what,
                              ...) __attribute__((format(printf, 4, 5)));

/* The rule has nothing to judge in this drive, because of `why` (a static sentence without a full
 * stop).  Ignored when it has put a question. */
void ts_skip(ts_check *check, const char *why);

/* Is the limit that the file calls `key` known?  Then it is noted for the workings as `symbol`;
 * otherwise the question is put about the limits and is not computable, and the rule can go. */
bool ts_limit_known(ts_check *check, const ts_measure *limit, const char *key, const char *symbol,
                    ts_kind kind);

/* Notes that `input` of the object `about` is what `lender` calls `symbol`, in every condition;
 * what an object lends to itself under the same name is there already.  ts_borrow_in: in one
 * condition. */
void ts_borrow(const ts_check *check, ts_node about, ts_input input, ts_node lender,
               const char *symbol);
void ts_borrow_in(const ts_check *check, ts_subject about, ts_input input, ts_node lender,
                  const char *symbol);

/* ---- sentences --------------------------------------------------------------------------- */

/* One sentence without a full stop.  %s and %d only: numbers with units go through ts_shown. */
void ts_says(ts_check *check, ts_finding *finding, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
void ts_remedy(ts_check *check, ts_finding *finding, const char *format, ...)
    __attribute__((format(printf, 3, 4)));
/* A piece of a sentence in the arena; "" without memory. */
const char *ts_phrase(ts_check *check, const char *format, ...)
    __attribute__((format(printf, 2, 3)));

/* "7412 rpm", four digits, "not known" or "without end"; "" without memory.  All texts live until
 * the next run. */
const char *ts_shown(ts_check *check, double si, ts_kind kind);
/* With as many digits as it takes to differ from `other`. */
const char *ts_shown_apart(ts_check *check, double si, double other, ts_kind kind);
/* Rounded up (way > 0) or down (way < 0) to four digits, so that typing it in is enough. */
const char *ts_shown_outward(ts_check *check, double si, ts_kind kind, int way);
const char *ts_shown_percent(ts_check *check, double share); /* "1.5 %", without a sign */
const char *ts_shown_clock(ts_check *check, double clock);   /* rad from behind, as the file sees */
const char *ts_condition_name(const ts_check *check, int32_t condition);

#endif
