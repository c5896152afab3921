/* rating/agma2101/agma_step.h: one formula, told once of gear 1 and once of gear 2; and how the
 * sources of this family are spelt.
 *
 * The text of such a formula is a macro of the index; the step names its inputs with the index of
 * `gear` (0: gear 1, 1: gear 2), which must be a variable of that name:
 *
 *   #define K_F_TEXT(I) "H_f + (s_F" I "/rho_F" I ")^L_f*(s_F" I "/h_F" I ")^M_f"
 *   static const ts_formula K_f_formulas[2] =
 *       TS_OF_BOTH_GEARS("K_f", "stress correction factor", "1", K_F_TEXT, AGMA_908 "5" RECALLED);
 *   ...
 *   return TS_GEAR_STEP(workings, K_f_formulas, K_f, TS_ALL(H_f), TS_OWN("s_F", s_F), ...);
 */
#ifndef TS_RATING_AGMA_STEP_H
#define TS_RATING_AGMA_STEP_H

#include "base/workings.h"

#define AGMA_2101 "ANSI/AGMA 2101-D04, clause "
#define AGMA_908  "AGMA 908-B89, clause "
#define RECALLED  " (formula and clause from memory)"

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
