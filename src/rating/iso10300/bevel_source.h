/* rating/iso10300/bevel_source.h: how this family names its sources: all recalled, none read. */
#ifndef TS_RATING_BEVEL_SOURCE_H
#define TS_RATING_BEVEL_SOURCE_H

#include "element/bevel_step.h"

#define ISO_10300_1    "ISO 10300-1:2014, clause "
#define ISO_10300_2    "ISO 10300-2:2014, clause "
#define ISO_10300_3    "ISO 10300-3:2014, clause "
#define BEVEL_RECALLED " (formula and clause from memory)"

/* A formula of the pair, whose variable in the code is called like its symbol. */
#define BEVEL_FORMULA(name, what, in_unit, expression, from)                                       \
    static const ts_formula name##_formula = {.symbol  = #name,                                    \
                                              .meaning = (what),                                   \
                                              .unit    = (in_unit),                                \
                                              .text    = (expression),                             \
                                              .source  = from BEVEL_RECALLED}

/* A formula of either gear. */
#define BEVEL_FORMULAS(name, what, in_unit, expression, from)                                      \
    static const ts_formula name##_formulas[2] =                                                   \
        TS_BEVEL_BOTH(#name, what, in_unit, expression, from BEVEL_RECALLED)

#endif
