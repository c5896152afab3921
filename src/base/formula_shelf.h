/* base/formula_shelf.h: formula texts that were read before.
 *
 * In checked builds every step proves its text each time it is taken, millions of times for some
 * hundred texts: reading them anew was two thirds of the time of the tests.  In all other builds
 * nothing is kept, and there is no state.
 */
#ifndef TS_BASE_FORMULA_SHELF_H
#define TS_BASE_FORMULA_SHELF_H

#include "base/formula.h"

/* As ts_formula_read, from the shelf where the text stands there.  The tree's nodes are those of
 * the shelf or `nodes`.  A shelf that is full or has no memory only costs time.  Any thread may
 * call this at any time. */
bool ts_formula_reread(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                       ts_formula_fault *fault);

/* Works out a text that stands on the shelf, bound to inputs of these names in this order
 * (base/formula_bound.h).  False where it does not stand there, or is bound to others or to none:
 * then the long way tells what it gives or what is wrong. */
bool ts_formula_rework(const char *text, const ts_input *inputs, size_t count, ts_rounded *out);

#endif
