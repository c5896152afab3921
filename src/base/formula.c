/* base/formula.c: what does a formula text give on these inputs, and how exactly? */
#include "base/formula.h"

#include "base/formula_rounding.h"

#include <math.h>

typedef struct worker {
    const ts_formula_tree *tree;
    const ts_input        *inputs;
    size_t                 count;
    size_t                 row; /* which term of a sum() is being worked out */
    bool                   summing;
    ts_formula_fault      *fault;
} worker;

static ts_rounded work_out(worker *w, uint16_t index);

/* Names are short: a loop is quicker than a call. */
static bool is_called(const ts_input *input, ts_text symbol)
{
    const char *name = input->name;
    size_t      i    = 0;
    while (i < symbol.length && name[i] == symbol.at[i])
        i++;
    return i == symbol.length && name[i] == '\0';
}

size_t ts_formula_input_count(ts_text symbol, const ts_input *inputs, size_t count)
{
    size_t found = 0;
    for (size_t i = 0; i < count; i++)
        found += is_called(&inputs[i], symbol) ? 1 : 0;
    return found;
}

const ts_input *ts_formula_input(ts_text symbol, const ts_input *inputs, size_t count, size_t row)
{
    const ts_input *first = NULL;
    size_t          found = 0;
    for (size_t i = 0; i < count; i++) {
        if (!is_called(&inputs[i], symbol))
            continue;
        if (found == row)
            return &inputs[i];
        if (found == 0)
            first = &inputs[i];
        found++;
    }
    return found == 1 ? first : NULL;
}

/* Nodes are laid down operands first, so the operand of a sum ends just before it. */
size_t ts_formula_sum_terms(const ts_formula_tree *tree, const ts_formula_node *node,
                            const ts_input *inputs, size_t count)
{
    const size_t end   = (size_t)(node - tree->nodes);
    size_t       terms = 1;
    for (size_t i = 0; i < end; i++) {
        const ts_formula_node *part = &tree->nodes[i];
        if (part->part != TS_FORMULA_SYMBOL || part->at < node->at)
            continue;
        const size_t found = ts_formula_input_count(ts_formula_bytes(tree, part), inputs, count);
        if (found <= 1)
            continue;
        if (terms > 1 && found != terms)
            return 0;
        terms = found;
    }
    return terms;
}

static ts_rounded fail(worker *w, const char *says, size_t at)
{
    if (w->fault->says == NULL)
        *w->fault = (ts_formula_fault){says, at};
    return (ts_rounded){(double)NAN, 0.0};
}

static ts_rounded of_symbol(worker *w, const ts_formula_node *node)
{
    const ts_text   symbol = ts_formula_bytes(w->tree, node);
    const ts_input *input  = ts_formula_input(symbol, w->inputs, w->count, w->row);
    if (input == NULL)
        return fail(w, "the symbol has no input", node->at);
    const size_t after = (size_t)(input - w->inputs) + 1;
    if (!w->summing && ts_formula_input_count(symbol, input + 1, w->count - after) > 0)
        return fail(w, "the symbol has several inputs, which only sum() takes", node->at);
    return (ts_rounded){input->value, 0.0};
}

static ts_rounded of_pair(worker *w, const ts_formula_node *node)
{
    const ts_formula_node *left = &w->tree->nodes[node->first];
    const ts_rounded       a    = work_out(w, node->first);
    const ts_rounded       b    = work_out(w, left->next);

    return ts_rounded_pair((ts_formula_part)node->part, a, b);
}

static ts_rounded of_atan2(worker *w, const ts_formula_node *node)
{
    const ts_rounded y = work_out(w, node->first);
    const ts_rounded x = work_out(w, w->tree->nodes[node->first].next);

    return ts_rounded_atan2(y, x);
}

static ts_rounded of_extreme(worker *w, const ts_formula_node *node)
{
    ts_rounded best = work_out(w, node->first);

    for (uint16_t i = w->tree->nodes[node->first].next; i != TS_FORMULA_NONE;
         i          = w->tree->nodes[i].next)
        best = ts_rounded_extreme((ts_formula_function)node->function, best, work_out(w, i));
    return best;
}

static ts_rounded of_sum_call(worker *w, const ts_formula_node *node)
{
    if (w->summing)
        return fail(w, "sum() cannot stand inside sum()", node->at);
    const size_t terms = ts_formula_sum_terms(w->tree, node, w->inputs, w->count);
    if (terms == 0)
        return fail(w, "the symbols of sum() have different numbers of inputs", node->at);
    w->summing       = true;
    w->row           = 0;
    ts_rounded total = work_out(w, node->first);
    for (w->row = 1; w->row < terms && w->fault->says == NULL; w->row++) {
        const ts_rounded term = work_out(w, node->first);
        total                 = ts_rounded_sum(total, term, total.value + term.value);
    }
    w->summing = false;
    w->row     = 0;
    return total;
}

static ts_rounded of_call(worker *w, const ts_formula_node *node)
{
    switch ((ts_formula_function)node->function) {
    case TS_FUNCTION_ATAN2:
        return of_atan2(w, node);
    case TS_FUNCTION_MIN:
    case TS_FUNCTION_MAX:
        return of_extreme(w, node);
    case TS_FUNCTION_SUM:
        return of_sum_call(w, node);
    default:
        return ts_rounded_one((ts_formula_function)node->function, work_out(w, node->first));
    }
}

/* Runs as deep as the tree, at most TS_FORMULA_NODES_MOST. */
static ts_rounded work_out(worker *w, uint16_t index)
{
    const ts_formula_node *node = &w->tree->nodes[index];
    ts_rounded             a    = {0.0, 0.0};
    switch ((ts_formula_part)node->part) {
    case TS_FORMULA_NUMBER:
        return (ts_rounded){node->value, 0.0};
    case TS_FORMULA_PI:
        return (ts_rounded){TS_FORMULA_PI_VALUE, 0.0};
    case TS_FORMULA_SYMBOL:
        return of_symbol(w, node);
    case TS_FORMULA_NEGATE:
        a       = work_out(w, node->first);
        a.value = -a.value;
        return a;
    case TS_FORMULA_CALL:
        return of_call(w, node);
    default:
        return of_pair(w, node);
    }
}

bool ts_formula_work_out(const ts_formula_tree *tree, const ts_input *inputs, size_t count,
                         ts_rounded *out, ts_formula_fault *fault)
{
    worker w = {.tree = tree, .inputs = inputs, .count = count, .fault = fault};
    *fault   = (ts_formula_fault){NULL, 0};
    *out     = ts_rounded_conceded(work_out(&w, tree->root));
    return fault->says == NULL;
}

bool ts_formula_evaluate(const char *text, const ts_input *inputs, size_t count, double *value,
                         const char **fault, size_t *at)
{
    ts_formula_node  nodes[TS_FORMULA_NODES_MOST];
    ts_formula_tree  tree;
    ts_formula_fault found;
    ts_rounded       out  = {(double)NAN, 0.0};
    const bool       fine = ts_formula_read(text, nodes, &tree, &found) &&
                      ts_formula_work_out(&tree, inputs, count, &out, &found);
    *value = fine ? out.value : (double)NAN;
    *fault = found.says;
    *at    = found.at;
    return fine;
}
