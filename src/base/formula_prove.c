/* base/formula_prove.c: does a formula text say what the code beside it computed? */
#include "base/workings.h"

#include "base/assert.h"
#include "base/formula_shelf.h"

#include <math.h>
#include <string.h>

/* Agreement is 1e-12 of the result, and four times what plain rounding may do to the text where its
 * terms cancel (ts_rounded).  A text is therefore never refused for the order in which the code
 * adds, and a wrong term passes only where it is too small to be seen in double arithmetic. */
#define RELATIVE       1e-12
#define ROUNDINGS_MOST 4.0

static bool is_blank(const char *text)
{
    return text == NULL || text[0] == '\0';
}

static const char *missing_part(const ts_formula *formula)
{
    if (is_blank(formula->symbol))
        return "the formula has no symbol";
    if (is_blank(formula->text))
        return "the formula has no text";
    if (is_blank(formula->meaning))
        return "the formula has no meaning";
    if (is_blank(formula->unit))
        return "the formula has no unit";
    return is_blank(formula->source) ? "the formula has no source" : NULL;
}

static const ts_input *unused_input(const ts_formula_tree *tree, const ts_input *inputs,
                                    size_t count)
{
    for (size_t i = 0; i < count; i++) {
        const size_t length = strlen(inputs[i].name);
        bool         used   = false;
        for (size_t n = 0; n < tree->count && !used; n++) {
            const ts_formula_node *node = &tree->nodes[n];
            used = node->part == TS_FORMULA_SYMBOL && node->length == length &&
                   memcmp(tree->text + node->at, inputs[i].name, length) == 0;
        }
        if (!used)
            return &inputs[i];
    }
    return NULL;
}

/* Infinities agree when they are the same one; a NaN agrees with nothing. */
static bool agrees(double result, ts_rounded text)
{
    if (isinf(result))
        return isinf(text.value) && signbit(result) == signbit(text.value);
    const double allowed = RELATIVE * fabs(result) + ROUNDINGS_MOST * text.rounding;
    return fabs(text.value - result) <= allowed;
}

static void say_number(ts_buffer *says, double value)
{
    if (isnan(value))
        ts_buffer_add(says, "NaN");
    else if (isinf(value))
        ts_buffer_add(says, value < 0.0 ? "-infinity" : "infinity");
    else
        ts_buffer_number(says, value);
}

static void say_inputs(ts_buffer *says, const ts_input *inputs, size_t count)
{
    ts_buffer_add(says, "\n  inputs:");
    for (size_t i = 0; i < count; i++) {
        ts_buffer_print(says, "%s %s = ", i == 0 ? "" : ",", inputs[i].name);
        say_number(says, inputs[i].value);
    }
}

/* says: may be NULL.  Always true, so that a caller can return it. */
static bool disagree(ts_buffer *says, const ts_formula *formula, const char *why)
{
    if (says != NULL)
        ts_buffer_print(says, "formula %s: %s\n  text: %s",
                        formula->symbol == NULL ? "?" : formula->symbol, why,
                        formula->text == NULL ? "" : formula->text);
    return true;
}

static bool disagree_at(ts_buffer *says, const ts_formula *formula, const ts_formula_fault *fault)
{
    disagree(says, formula, fault->says);
    if (says != NULL)
        ts_buffer_print(says, "\n  at byte %zu: %s", fault->at, formula->text + fault->at);
    return true;
}

static bool disagrees_at_length(const ts_formula *formula, double result, const ts_input *inputs,
                                size_t count, ts_buffer *says)
{
    ts_formula_node  nodes[TS_FORMULA_NODES_MOST];
    ts_formula_tree  tree;
    ts_formula_fault fault;
    ts_rounded       text = {(double)NAN, 0.0};

    if (!ts_formula_reread(formula->text, nodes, &tree, &fault))
        return disagree_at(says, formula, &fault);
    const ts_input *unused = unused_input(&tree, inputs, count);
    if (unused != NULL) {
        disagree(says, formula, "an input is not used by the text");
        if (says != NULL)
            ts_buffer_print(says, "\n  input: %s", unused->name);
        return true;
    }
    if (!ts_formula_work_out(&tree, inputs, count, &text, &fault))
        return disagree_at(says, formula, &fault);
    if (agrees(result, text))
        return false;

    disagree(says, formula, "the text does not give what the code computed");
    if (says != NULL) {
        say_inputs(says, inputs, count);
        ts_buffer_add(says, "\n  the text gives ");
        say_number(says, text.value);
        ts_buffer_add(says, "\n  the code gave  ");
        say_number(says, result);
    }
    return true;
}

bool ts_formula_disagrees(const ts_formula *formula, double result, const ts_input *inputs,
                          size_t count, ts_buffer *says)
{
    ts_rounded  text    = {(double)NAN, 0.0};
    const char *missing = missing_part(formula);

    if (missing != NULL)
        return disagree(says, formula, missing);
    if (ts_formula_rework(formula->text, inputs, count, &text) && agrees(result, text))
        return false;
    return disagrees_at_length(formula, result, inputs, count, says);
}

void ts_step_prove(const ts_formula *formula, double result, const ts_input *inputs, size_t count)
{
    if (!ts_formula_disagrees(formula, result, inputs, count, NULL))
        return;
    ts_buffer says;
    ts_buffer_open(&says, NULL);
    ts_formula_disagrees(formula, result, inputs, count, &says);
    ts_assert_failed(__FILE__, __LINE__, says.failed ? formula->text : says.bytes);
}
