/* element/both_gears_step.h: one formula, told once of gear 1 and once of gear 2.
 *
 * The text of such a formula is a macro of the index, as in
 *
 *   #define Y_S_TEXT(I) "(1.2 + 0.13*L_" I ")*q_s" I "^(1/(1.21 + 2.3/L_" I "))"
 *   static const ts_formula Y_S_formulas[2] =
 *       TS_OF_BOTH_GEARS("Y_S", "stress correction factor", "1", Y_S_TEXT, ISO_6336_3 "7.2"
 * RECALLED);
 *
 * and the step names its inputs with the index of `gear` (0: gear 1, 1: gear 2), which must be a
 * variable of that name:
 *
 *   return TS_GEAR_STEP(workings, Y_S_formulas, Y_S, TS_OWN("L_", L), TS_OWN("q_s", q_s));
 */
#ifndef TS_ELEMENT_BOTH_GEARS_STEP_H
#define TS_ELEMENT_BOTH_GEARS_STEP_H

#include "base/workings.h"

#define TS_OF_BOTH_GEARS(symbol, meaning, unit, text, source)                                      \
    {                                                                                              \
        {symbol "1", meaning " of gear 1", unit, text("1"), source},                               \
            {symbol "2", meaning " of gear 2", unit, text("2"), source},                           \
    }

#define TS_OWN(name, value)                                                                        \
    {                                                                                              \
        gear == 0 ? name "1" : name "2", (value)                                                   \
    }
#define TS_ALL(value)                                                                              \
    {                                                                                              \
#value, (value)                                                                            \
    }
#define TS_GEAR_STEP(workings, formulas, result, ...)                                              \
    ts_step_list((workings), &(formulas)[gear], (result),                                          \
                 TS_STEP_NEEDS_INPUTS(workings) ? (const ts_input[]){__VA_ARGS__} : NULL,          \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

#endif
