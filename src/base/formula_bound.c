/* base/formula_bound.c: what does a text give whose symbols know their inputs? */
#include "base/formula_bound.h"

#include "base/formula_rounding.h"

#define NONE UINT16_MAX

static uint16_t input_of(const ts_formula_tree *tree, const ts_formula_node *node,
                         const ts_input *inputs, size_t count)
{
    const ts_text symbol = ts_formula_bytes(tree, node);

    if (ts_formula_input_count(symbol, inputs, count) != 1)
        return NONE;
    return (uint16_t)(ts_formula_input(symbol, inputs, count, 0) - inputs);
}

static bool all_used(const ts_formula_tree *tree, const uint16_t *stands, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        bool used = false;
        for (size_t n = 0; n < tree->count && !used; n++)
            used = tree->nodes[n].part == TS_FORMULA_SYMBOL && stands[n] == i;
        if (!used)
            return false;
    }
    return true;
}

bool ts_formula_bind(const ts_formula_tree *tree, const ts_input *inputs, size_t count,
                     uint16_t *stands)
{
    for (size_t n = 0; n < tree->count; n++) {
        const ts_formula_node *node = &tree->nodes[n];
        stands[n]                   = NONE;
        if (node->part == TS_FORMULA_CALL && node->function == TS_FUNCTION_SUM)
            return false;
        if (node->part != TS_FORMULA_SYMBOL)
            continue;
        stands[n] = input_of(tree, node, inputs, count);
        if (stands[n] == NONE)
            return false;
    }
    return all_used(tree, stands, count);
}

static ts_rounded of_call(const ts_formula_tree *tree, const ts_formula_node *node,
                          const ts_rounded *done)
{
    const ts_formula_function function = (ts_formula_function)node->function;
    ts_rounded                best     = done[node->first];
    uint16_t                  next     = tree->nodes[node->first].next;

    if (function == TS_FUNCTION_ATAN2)
        return ts_rounded_atan2(best, done[next]);
    if (function != TS_FUNCTION_MIN && function != TS_FUNCTION_MAX)
        return ts_rounded_one(function, best);
    for (; next != TS_FORMULA_NONE; next = tree->nodes[next].next)
        best = ts_rounded_extreme(function, best, done[next]);
    return best;
}

static ts_rounded of_node(const ts_formula_tree *tree, const ts_formula_node *node,
                          const ts_rounded *done)
{
    switch ((ts_formula_part)node->part) {
    case TS_FORMULA_PI:
        return (ts_rounded){TS_FORMULA_PI_VALUE, 0.0};
    case TS_FORMULA_NEGATE:
        return (ts_rounded){-done[node->first].value, done[node->first].rounding};
    case TS_FORMULA_CALL:
        return of_call(tree, node, done);
    default: /* of two */
        return ts_rounded_pair((ts_formula_part)node->part, done[node->first],
                               done[tree->nodes[node->first].next]);
    }
}

/* Nodes are laid down operands first, so one walk along them finds every operand done. */
ts_rounded ts_formula_work_out_bound(const ts_formula_tree *tree, const uint16_t *stands,
                                     const ts_input *inputs)
{
    ts_rounded done[TS_FORMULA_NODES_MOST];

    for (size_t n = 0; n < tree->count; n++) {
        const ts_formula_node *node = &tree->nodes[n];
        if (node->part == TS_FORMULA_SYMBOL)
            done[n] = (ts_rounded){inputs[stands[n]].value, 0.0};
        else if (node->part == TS_FORMULA_NUMBER)
            done[n] = (ts_rounded){node->value, 0.0};
        else
            done[n] = of_node(tree, node, done);
    }
    return ts_rounded_conceded(done[tree->root]);
}
