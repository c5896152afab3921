/* element/bevel_step.h: one formula, told once of gear 1 and once of gear 2 of a bevel pair.
 *
 * The text of such a formula is a macro of the gear's own index and of its mate's:
 *
 *   #define H_AE_TEXT(I, M) "h_am" I " + b/2*tan(theta_a" I ")"
 *   static const ts_formula h_ae_formulas[2] =
 *       TS_BEVEL_BOTH("h_ae", "outer addendum", "m", H_AE_TEXT, ISO_23509);
 *
 * and the step names its inputs with the index of `gear` (0: gear 1, 1: gear 2), which must be a
 * variable of that name:
 *
 *   h_ae = TS_BEVEL_STEP(workings, h_ae_formulas, h_am + b / 2.0 * tan(theta_a),
 *                        TS_BEVEL_SELF("h_am", h_am), TS_BEVEL_PAIR(b),
 *                        TS_BEVEL_SELF("theta_a", theta_a));
 */
#ifndef TS_ELEMENT_BEVEL_STEP_H
#define TS_ELEMENT_BEVEL_STEP_H

#include "base/workings.h"

#define TS_BEVEL_BOTH(symbol, meaning, unit, text, source)                                         \
    {                                                                                              \
        {symbol "1", meaning " of gear 1", unit, text("1", "2"), source},                          \
            {symbol "2", meaning " of gear 2", unit, text("2", "1"), source},                      \
    }

#define TS_BEVEL_SELF(name, value)                                                                 \
    {                                                                                              \
        gear == 0 ? name "1" : name "2", (value)                                                   \
    }
#define TS_BEVEL_MATE(name, value)                                                                 \
    {                                                                                              \
        gear == 0 ? name "2" : name "1", (value)                                                   \
    }
#define TS_BEVEL_PAIR(value)                                                                       \
    {                                                                                              \
#value, (value)                                                                            \
    }
#define TS_BEVEL_STEP(workings, formulas, result, ...)                                             \
    ts_step_list((workings), &(formulas)[gear], (result),                                          \
                 TS_STEP_NEEDS_INPUTS(workings) ? (const ts_input[]){__VA_ARGS__} : NULL,          \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

#endif
