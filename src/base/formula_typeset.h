/* base/formula_typeset.h: a formula text as people read it, on one line of Unicode.
 *
 * "sqrt(2*T/d_1^2)" becomes a root sign over 2, a raised dot, T, a stroke and d_1 with a small 2;
 * the same with numbers puts the inputs' values in the symbols' places.  Brackets are set where the
 * order of working needs them.  Outlets that set formulas in two dimensions walk the tree
 * themselves (base/formula.h) and set its symbols by base/symbol_typeset.h.
 */
#ifndef TS_BASE_FORMULA_TYPESET_H
#define TS_BASE_FORMULA_TYPESET_H

#include "base/buffer.h"
#include "base/workings.h"

#include <stdbool.h>
#include <stddef.h>

/* False, and the text as it stands, when it cannot be read. */
bool ts_formula_typeset(ts_buffer *out, const char *text);

/* With `digits` significant digits.  A symbol without an input stays a symbol.  sum() is written
 * out up to six terms; a longer one as its first three, its last and their number. */
bool ts_formula_typeset_numbers(ts_buffer *out, const char *text, const ts_input *inputs,
                                size_t count, int digits);

/* A value with `digits` significant digits, without final zeros after the point, with a true minus
 * sign; "not computed" for a NaN. */
void ts_value_typeset(ts_buffer *out, double value, int digits);

#endif
