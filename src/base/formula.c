/* base/formula.c: what does a formula text give on these inputs, and how exactly? */
#include "base/formula.h"

#include <float.h>
#include <math.h>

/* Half a unit in the last place of 1: the relative error of one correctly rounded operation. */
#define ROUNDING (0.5 * DBL_EPSILON)

#define PI 3.14159265358979323846

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

static ts_rounded rounded(double value, double carried)
{
    return (ts_rounded){value, carried + ROUNDING * fabs(value)};
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

/* Addends of both sizes count, because another order of adding rounds at theirs. */
static ts_rounded of_sum(ts_rounded a, ts_rounded b, double value)
{
    const double addends = ROUNDING * (fabs(a.value) + fabs(b.value));
    return (ts_rounded){value, a.rounding + b.rounding + addends};
}

static ts_rounded of_power(ts_rounded a, ts_rounded b)
{
    const double value   = pow(a.value, b.value);
    double       carried = ROUNDING * fabs(value);
    if (a.rounding > 0.0)
        carried += fabs(b.value * pow(a.value, b.value - 1.0)) * a.rounding;
    if (b.rounding > 0.0)
        carried += fabs(value * log(fabs(a.value))) * b.rounding;
    return rounded(value, carried);
}

static ts_rounded of_pair(worker *w, const ts_formula_node *node)
{
    const ts_formula_node *left  = &w->tree->nodes[node->first];
    const ts_rounded       a     = work_out(w, node->first);
    const ts_rounded       b     = work_out(w, left->next);
    double                 value = 0.0;
    switch ((ts_formula_part)node->part) {
    case TS_FORMULA_ADD:
        return of_sum(a, b, a.value + b.value);
    case TS_FORMULA_SUBTRACT:
        return of_sum(a, b, a.value - b.value);
    case TS_FORMULA_MULTIPLY:
        return rounded(a.value * b.value, fabs(a.value) * b.rounding + fabs(b.value) * a.rounding);
    case TS_FORMULA_DIVIDE:
        value = a.value / b.value;
        return rounded(value, (a.rounding + fabs(value) * b.rounding) / fabs(b.value));
    default:
        return of_power(a, b);
    }
}

/* The root of a difference loses half its digits where the difference goes to nought, so the slope
 * alone would be too much there. */
static double through_root(double slope, double rounding)
{
    return fmin(slope * rounding, sqrt(2.0 * rounding));
}

static double apply(ts_formula_function function, double x)
{
    switch (function) {
    case TS_FUNCTION_SQRT:
        return sqrt(x);
    case TS_FUNCTION_SIN:
        return sin(x);
    case TS_FUNCTION_COS:
        return cos(x);
    case TS_FUNCTION_TAN:
        return tan(x);
    case TS_FUNCTION_ASIN:
        return asin(x);
    case TS_FUNCTION_ACOS:
        return acos(x);
    case TS_FUNCTION_ATAN:
        return atan(x);
    case TS_FUNCTION_INV:
        return tan(x) - x;
    case TS_FUNCTION_EXP:
        return exp(x);
    case TS_FUNCTION_LN:
        return log(x);
    default: /* abs */
        return fabs(x);
    }
}

/* How far rounding of the operand moves the function. */
static double carried_through(ts_formula_function function, double x, double e)
{
    switch (function) {
    case TS_FUNCTION_SQRT:
        return through_root(0.5 / sqrt(x), e);
    case TS_FUNCTION_SIN:
        return fabs(cos(x)) * e;
    case TS_FUNCTION_COS:
        return fabs(sin(x)) * e;
    case TS_FUNCTION_TAN:
        return (1.0 + tan(x) * tan(x)) * e;
    case TS_FUNCTION_ASIN:
    case TS_FUNCTION_ACOS:
        return through_root(1.0 / sqrt(1.0 - x * x), e);
    case TS_FUNCTION_ATAN:
        return e / (1.0 + x * x);
    case TS_FUNCTION_INV:
        return tan(x) * tan(x) * e;
    case TS_FUNCTION_EXP:
        return exp(x) * e;
    case TS_FUNCTION_LN:
        return e / fabs(x);
    default: /* abs */
        return e;
    }
}

static ts_rounded of_one(ts_formula_function function, ts_rounded a)
{
    const double value   = apply(function, a.value);
    double       carried = 0.0;
    if (a.rounding > 0.0)
        carried = carried_through(function, a.value, a.rounding);
    if (function == TS_FUNCTION_INV) /* of nearly equal terms, each rounded at its own size */
        carried += 2.0 * ROUNDING * fabs(a.value);
    return rounded(value, carried);
}

static ts_rounded of_atan2(worker *w, const ts_formula_node *node)
{
    const ts_rounded y       = work_out(w, node->first);
    const ts_rounded x       = work_out(w, w->tree->nodes[node->first].next);
    const double     square  = x.value * x.value + y.value * y.value;
    const double     carried = fabs(x.value) * y.rounding + fabs(y.value) * x.rounding;
    return rounded(atan2(y.value, x.value), carried > 0.0 ? carried / square : 0.0);
}

/* fmin and fmax would pass over a NaN; here it stays. */
static ts_rounded of_extreme(worker *w, const ts_formula_node *node)
{
    const bool smallest = node->function == TS_FUNCTION_MIN;
    ts_rounded best     = work_out(w, node->first);
    double     rounding = best.rounding;
    for (uint16_t i = w->tree->nodes[node->first].next; i != TS_FORMULA_NONE;
         i          = w->tree->nodes[i].next) {
        const ts_rounded next = work_out(w, i);
        const bool       wins = smallest ? next.value < best.value : next.value > best.value;
        rounding              = fmax(rounding, next.rounding);
        if (isnan(next.value) || (wins && !isnan(best.value)))
            best = next;
    }
    return (ts_rounded){best.value, rounding};
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
        total                 = of_sum(total, term, total.value + term.value);
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
        return of_one((ts_formula_function)node->function, work_out(w, node->first));
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
        return (ts_rounded){PI, 0.0};
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
    *out     = work_out(&w, tree->root);
    /* Where a slope is infinite nothing can be said, so nothing is conceded. */
    if (!isfinite(out->rounding))
        out->rounding = 0.0;
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
