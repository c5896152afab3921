/* rating/agma2003/agma2003_step.h: how this family names its sources: all recalled, none read. */
#ifndef TS_RATING_AGMA2003_STEP_H
#define TS_RATING_AGMA2003_STEP_H

#include "element/bevel_step.h"

#define AGMA2003          "ANSI/AGMA 2003-C10"
#define AGMA2003_RECALLED " (formula from memory)"

#define AGMA2003_FORMULA(name, what, in_unit, expression, from)                                    \
    static const ts_formula name##_formula = {.symbol  = #name,                                    \
                                              .meaning = (what),                                   \
                                              .unit    = (in_unit),                                \
                                              .text    = (expression),                             \
                                              .source  = AGMA2003 ", " from AGMA2003_RECALLED}

#define AGMA2003_FORMULAS(name, what, in_unit, expression, from)                                   \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_BEVEL_BOTH(#name, what, in_unit, expression, AGMA2003 ", " from AGMA2003_RECALLED)

#endif
