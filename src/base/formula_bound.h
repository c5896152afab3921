/* base/formula_bound.h: a formula text whose symbols know their inputs.
 *
 * A text is worked out again and again with inputs of the same names in the same order.  Bound to
 * those names once, it is worked out along its nodes without looking a symbol up.
 */
#ifndef TS_BASE_FORMULA_BOUND_H
#define TS_BASE_FORMULA_BOUND_H

#include "base/formula.h"

/* Writes to stands[tree->count] which input stands for each SYMBOL.  False, and nothing is bound,
 * where a symbol has no input or several, where an input is not used, or where the text has a
 * sum(): those go down the tree (ts_formula_work_out), which says what is wrong. */
bool ts_formula_bind(const ts_formula_tree *tree, const ts_input *inputs, size_t count,
                     uint16_t *stands);

/* As ts_formula_work_out, bit by bit, of a tree that was bound to inputs of these names. */
ts_rounded ts_formula_work_out_bound(const ts_formula_tree *tree, const uint16_t *stands,
                                     const ts_input *inputs);

#endif
