/* base/formula_typeset.c: how does a formula read, and how with its numbers? */
#include "base/formula_typeset.h"

#include "base/formula.h"
#include "base/number.h"
#include "base/symbol_typeset.h"

#include <float.h>
#include <math.h>
#include <string.h>

#define MINUS    "\u2212"
#define TIMES    "\u00B7"
#define ROOT     "\u221A"
#define SUM      "\u03A3"
#define PI_SIGN  "\u03C0"
#define ELLIPSIS "\u2026"
#define INFINITE "\u221E"

/* A longer sum is shown by its beginning and its end. */
#define TERMS_WRITTEN_OUT 6
#define TERMS_BEFORE_GAP  3

typedef struct setter {
    ts_buffer             *out;
    const ts_formula_tree *tree;
    const ts_input        *inputs; /* NULL: symbols stay symbols */
    size_t                 count;
    size_t                 row;
    int                    digits;
} setter;

static void set_node(const setter *s, uint16_t index);

void ts_value_typeset(ts_buffer *out, double value, int digits)
{
    if (isnan(value)) {
        ts_buffer_add(out, "not computed");
        return;
    }
    if (value < 0.0)
        ts_buffer_add(out, MINUS);
    if (isinf(value)) {
        ts_buffer_add(out, INFINITE);
        return;
    }
    char         bytes[TS_NUMBER_ROOM];
    const size_t length = ts_number_significant(bytes, fabs(value), digits);
    const size_t power  = strcspn(bytes, "e");
    size_t       body   = power;
    if (memchr(bytes, '.', power) != NULL) {
        while (bytes[body - 1] == '0')
            body--;
        if (bytes[body - 1] == '.')
            body--;
    }
    ts_buffer_bytes(out, bytes, body);
    ts_buffer_bytes(out, bytes + power, length - power);
}

static const ts_formula_node *node_at(const setter *s, uint16_t index)
{
    return &s->tree->nodes[index];
}

/* The input whose number stands in the symbol's place, or NULL. */
static const ts_input *shown_input(const setter *s, const ts_formula_node *node)
{
    if (s->inputs == NULL || node->part != TS_FORMULA_SYMBOL)
        return NULL;
    return ts_formula_input(ts_formula_bytes(s->tree, node), s->inputs, s->count, s->row);
}

/* Does it read as one thing: a number without sign and power of ten, a symbol, a function? */
static bool is_whole(const setter *s, const ts_formula_node *node)
{
    const ts_input *input = shown_input(s, node);
    const double    size  = input == NULL ? 1.0 : input->value;
    switch ((ts_formula_part)node->part) {
    case TS_FORMULA_NUMBER:
        return memchr(s->tree->text + node->at, 'e', node->length) == NULL;
    case TS_FORMULA_SYMBOL:
        return size >= 0.0 && (size < DBL_MIN || (size >= 1e-4 && size < 1e9));
    case TS_FORMULA_CALL:
        return node->function != TS_FUNCTION_SQRT;
    default:
        return node->part == TS_FORMULA_PI;
    }
}

static bool is_negative(const setter *s, const ts_formula_node *node)
{
    const ts_input *input = shown_input(s, node);
    return node->part == TS_FORMULA_NEGATE || (input != NULL && input->value < 0.0);
}

static void set_bracketed(const setter *s, uint16_t index)
{
    ts_buffer_add(s->out, "(");
    set_node(s, index);
    ts_buffer_add(s->out, ")");
}

static void set_either(const setter *s, uint16_t index, bool bracketed)
{
    if (bracketed)
        set_bracketed(s, index);
    else
        set_node(s, index);
}

static bool is_sum(const ts_formula_node *node)
{
    return node->part == TS_FORMULA_ADD || node->part == TS_FORMULA_SUBTRACT;
}

static bool is_product(const ts_formula_node *node)
{
    return node->part == TS_FORMULA_MULTIPLY || node->part == TS_FORMULA_DIVIDE;
}

static void set_sum(const setter *s, const ts_formula_node *node)
{
    const uint16_t         right_index = node_at(s, node->first)->next;
    const ts_formula_node *right       = node_at(s, right_index);
    set_node(s, node->first);
    ts_buffer_add(s->out, node->part == TS_FORMULA_ADD ? " + " : " " MINUS " ");
    set_either(s, right_index, is_sum(right) || is_negative(s, right));
}

static void set_product(const setter *s, const ts_formula_node *node)
{
    const ts_formula_node *left        = node_at(s, node->first);
    const uint16_t         right_index = left->next;
    const ts_formula_node *right       = node_at(s, right_index);
    set_either(s, node->first, is_sum(left));
    ts_buffer_add(s->out, node->part == TS_FORMULA_MULTIPLY ? TIMES : "/");
    set_either(s, right_index, is_sum(right) || is_product(right) || is_negative(s, right));
}

static void set_small_digits(ts_buffer *out, ts_text digits)
{
    static const char *const small[] = {"\u2070", "\u00B9", "\u00B2", "\u00B3", "\u2074",
                                        "\u2075", "\u2076", "\u2077", "\u2078", "\u2079"};
    for (size_t i = 0; i < digits.length; i++)
        ts_buffer_add(out, small[digits.at[i] - '0']);
}

static bool is_written_integer(const setter *s, const ts_formula_node *node)
{
    if (node->part != TS_FORMULA_NUMBER)
        return false;
    const ts_text bytes = ts_formula_bytes(s->tree, node);
    for (size_t i = 0; i < bytes.length; i++)
        if (bytes.at[i] < '0' || bytes.at[i] > '9')
            return false;
    return true;
}

static void set_power(const setter *s, const ts_formula_node *node)
{
    const ts_formula_node *base     = node_at(s, node->first);
    const ts_formula_node *exponent = node_at(s, base->next);
    const bool             inverse  = exponent->part == TS_FORMULA_NEGATE;
    const ts_formula_node *number   = inverse ? node_at(s, exponent->first) : exponent;
    set_either(s, node->first, !is_whole(s, base));
    if (is_written_integer(s, number)) {
        ts_buffer_add(s->out, inverse ? "\u207B" : "");
        set_small_digits(s->out, ts_formula_bytes(s->tree, number));
        return;
    }
    ts_buffer_add(s->out, "^");
    set_either(s, base->next, !is_whole(s, exponent));
}

/* The terms of sum() with their numbers. */
static void set_terms(const setter *s, const ts_formula_node *node)
{
    const size_t terms = ts_formula_sum_terms(s->tree, node, s->inputs, s->count);
    const bool   all   = terms <= TERMS_WRITTEN_OUT;
    ts_buffer_add(s->out, "(");
    for (size_t row = 0; row < terms; row++) {
        setter term = *s;
        term.row    = row;
        if (!all && row >= TERMS_BEFORE_GAP && row + 1 < terms)
            continue;
        ts_buffer_add(s->out, row > 0 ? " + " : "");
        if (!all && row + 1 == terms)
            ts_buffer_add(s->out, ELLIPSIS " + ");
        const ts_formula_node *inside = node_at(s, node->first);
        set_either(&term, node->first, is_sum(inside) || (row > 0 && is_negative(&term, inside)));
    }
    if (!all)
        ts_buffer_print(s->out, ", %zu terms", terms);
    ts_buffer_add(s->out, ")");
}

static const char *function_shown(ts_formula_function function)
{
    switch (function) {
    case TS_FUNCTION_SQRT:
        return ROOT;
    case TS_FUNCTION_ASIN:
        return "arcsin";
    case TS_FUNCTION_ACOS:
        return "arccos";
    case TS_FUNCTION_ATAN:
        return "arctan";
    case TS_FUNCTION_ABS:
        return "";
    case TS_FUNCTION_SUM:
        return SUM;
    default:
        return ts_formula_function_name(function);
    }
}

static void set_call(const setter *s, const ts_formula_node *node)
{
    if (node->function == TS_FUNCTION_SUM && s->inputs != NULL &&
        ts_formula_sum_terms(s->tree, node, s->inputs, s->count) > 0) {
        set_terms(s, node);
        return;
    }
    const bool bars = node->function == TS_FUNCTION_ABS;
    ts_buffer_add(s->out, function_shown((ts_formula_function)node->function));
    ts_buffer_add(s->out, bars ? "|" : "(");
    for (uint16_t i = node->first; i != TS_FORMULA_NONE; i = node_at(s, i)->next) {
        ts_buffer_add(s->out, i == node->first ? "" : ", ");
        set_node(s, i);
    }
    ts_buffer_add(s->out, bars ? "|" : ")");
}

static void set_symbol(const setter *s, const ts_formula_node *node)
{
    const ts_input *input = shown_input(s, node);
    if (input != NULL)
        ts_value_typeset(s->out, input->value, s->digits);
    else
        ts_symbol_typeset(s->out, ts_formula_bytes(s->tree, node));
}

static void set_negative(const setter *s, const ts_formula_node *node)
{
    const ts_formula_node *operand = node_at(s, node->first);
    ts_buffer_add(s->out, MINUS);
    set_either(s, node->first, is_sum(operand) || is_product(operand) || is_negative(s, operand));
}

static void set_node(const setter *s, uint16_t index)
{
    const ts_formula_node *node = node_at(s, index);
    switch ((ts_formula_part)node->part) {
    case TS_FORMULA_NUMBER:
        ts_buffer_text(s->out, ts_formula_bytes(s->tree, node));
        break;
    case TS_FORMULA_PI:
        ts_buffer_add(s->out, PI_SIGN);
        break;
    case TS_FORMULA_SYMBOL:
        set_symbol(s, node);
        break;
    case TS_FORMULA_NEGATE:
        set_negative(s, node);
        break;
    case TS_FORMULA_CALL:
        set_call(s, node);
        break;
    case TS_FORMULA_RAISE:
        set_power(s, node);
        break;
    case TS_FORMULA_ADD:
    case TS_FORMULA_SUBTRACT:
        set_sum(s, node);
        break;
    case TS_FORMULA_MULTIPLY:
    case TS_FORMULA_DIVIDE:
        set_product(s, node);
        break;
    }
}

static bool typeset(ts_buffer *out, const char *text, const setter *plan)
{
    ts_formula_node  nodes[TS_FORMULA_NODES_MOST];
    ts_formula_tree  tree;
    ts_formula_fault fault;
    if (!ts_formula_read(text, nodes, &tree, &fault)) {
        ts_buffer_add(out, text);
        return false;
    }
    setter s = *plan;
    s.out    = out;
    s.tree   = &tree;
    set_node(&s, tree.root);
    return true;
}

bool ts_formula_typeset(ts_buffer *out, const char *text)
{
    return typeset(out, text, &(setter){.inputs = NULL});
}

bool ts_formula_typeset_numbers(ts_buffer *out, const char *text, const ts_input *inputs,
                                size_t count, int digits)
{
    static const ts_input none[1] = {{"", 0.0}};
    return typeset(
        out, text,
        &(setter){.inputs = inputs == NULL ? none : inputs, .count = count, .digits = digits});
}
