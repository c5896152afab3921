/* element/tooth_tolerance_rounding.h: how does a tolerance become a value for a drawing?  Only for
 * the tooth_tolerance files.
 */
#ifndef TS_ELEMENT_TOOTH_TOLERANCE_ROUNDING_H
#define TS_ELEMENT_TOOTH_TOLERANCE_ROUNDING_H

#include "base/workings.h"

/* Below which size a rule leaves out its finest step. */
typedef enum ts_rounding_rule {
    TS_ROUND_TO_TENTHS, /* 1 um above 10 um, 0.5 um down to 5 um, 0.1 um below: ISO 1328-1 */
    TS_ROUND_TO_HALVES  /* 1 um above 10 um, 0.5 um below: ISO 1328-2:1997                 */
} ts_rounding_rule;

/* One tolerance: its formula before rounding, its formula after, and what rounding took off. */
typedef struct ts_rounded_formula {
    ts_formula  exact, rounded;
    const char *rest;
} ts_rounded_formula;

#define TS_ROUNDED_FORMULA(name, what, formula_text, where)                                        \
    {                                                                                              \
        .exact   = {.symbol  = name "x",                                                           \
                    .meaning = what ", before rounding",                                           \
                    .unit    = "m",                                                                \
                    .text    = formula_text,                                                       \
                    .source  = where},                                                              \
        .rounded = {.symbol  = name,                                                               \
                    .meaning = what,                                                               \
                    .unit    = "m",                                                                \
                    .text    = name "x - r" name,                                                  \
                    .source  = where},                                                              \
        .rest    = "r" name,                                                                       \
    }

/* Rounds and notes.  `exact` is finite and above 0. */
double ts_tolerance_rounded(const ts_rounded_formula *formula, double exact, ts_rounding_rule rule,
                            ts_workings *workings);

/* s_A, the factor from class 5 to another class. */
double ts_class_step(int class, const ts_formula *formula, ts_workings *workings);

#endif
