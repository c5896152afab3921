/* base/formula_parse.c: what does a formula text say? */
#include "base/formula.h"

#include "base/number.h"

#include <string.h>

typedef struct reader {
    const char       *text;
    size_t            length;
    size_t            at;
    size_t            depth;
    ts_formula_node  *nodes;
    uint16_t          count;
    ts_formula_fault *fault; /* says == NULL as long as all is well */
} reader;

#define NAME_LONGEST 5 /* letters of a function's name */

static const struct {
    char    name[NAME_LONGEST + 1];
    uint8_t operands_min;
    uint8_t operands_max; /* 0: any number */
} functions[TS_FUNCTION_COUNT] = {
    [TS_FUNCTION_SQRT] = {"sqrt", 1, 1}, [TS_FUNCTION_SIN] = {"sin", 1, 1},
    [TS_FUNCTION_COS] = {"cos", 1, 1},   [TS_FUNCTION_TAN] = {"tan", 1, 1},
    [TS_FUNCTION_ASIN] = {"asin", 1, 1}, [TS_FUNCTION_ACOS] = {"acos", 1, 1},
    [TS_FUNCTION_ATAN] = {"atan", 1, 1}, [TS_FUNCTION_ATAN2] = {"atan2", 2, 2},
    [TS_FUNCTION_INV] = {"inv", 1, 1},   [TS_FUNCTION_EXP] = {"exp", 1, 1},
    [TS_FUNCTION_LN] = {"ln", 1, 1},     [TS_FUNCTION_ABS] = {"abs", 1, 1},
    [TS_FUNCTION_MIN] = {"min", 2, 0},   [TS_FUNCTION_MAX] = {"max", 2, 0},
    [TS_FUNCTION_SUM] = {"sum", 1, 1},
};

const char *ts_formula_function_name(ts_formula_function function)
{
    return functions[function].name;
}

static uint16_t read_sum(reader *r);

static bool is_letter(char c)
{
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

/* Only the first fault counts; everything after it follows from it. */
static uint16_t fail(reader *r, const char *says, size_t at)
{
    if (r->fault->says == NULL) {
        r->fault->says = says;
        r->fault->at   = at;
    }
    return TS_FORMULA_NONE;
}

static char peek(reader *r)
{
    while (r->at < r->length && r->text[r->at] == ' ')
        r->at++;
    return r->at < r->length ? r->text[r->at] : '\0';
}

static bool take(reader *r, char c)
{
    if (peek(r) != c || r->at >= r->length)
        return false;
    r->at++;
    return true;
}

static uint16_t add_node(reader *r, ts_formula_part part, size_t at, uint16_t first)
{
    if (r->fault->says != NULL)
        return TS_FORMULA_NONE;
    if (r->count >= TS_FORMULA_NODES_MOST)
        return fail(r, "the formula has more than 256 parts", at);
    r->nodes[r->count] = (ts_formula_node){
        .at    = (uint16_t)at,
        .first = first,
        .next  = TS_FORMULA_NONE,
        .part  = (uint8_t)part,
    };
    return r->count++;
}

static uint16_t add_pair(reader *r, ts_formula_part part, uint16_t left, uint16_t right)
{
    if (r->fault->says != NULL)
        return TS_FORMULA_NONE;
    r->nodes[left].next = right;
    return add_node(r, part, r->nodes[left].at, left);
}

/* The extent is found here, because a comma after the digits separates operands. */
static uint16_t read_number(reader *r)
{
    const size_t begin = r->at;
    size_t       end   = begin;
    while (end < r->length && is_digit(r->text[end]))
        end++;
    if (end + 1 < r->length && r->text[end] == '.' && is_digit(r->text[end + 1])) {
        end++;
        while (end < r->length && is_digit(r->text[end]))
            end++;
    }
    if (end < r->length && (r->text[end] == 'e' || r->text[end] == 'E')) {
        size_t power = end + 1;
        if (power < r->length && (r->text[power] == '+' || r->text[power] == '-'))
            power++;
        if (power < r->length && is_digit(r->text[power])) {
            while (power < r->length && is_digit(r->text[power]))
                power++;
            end = power;
        }
    }

    double                value = 0.0;
    size_t                taken = 0;
    const ts_text         bytes = {r->text + begin, end - begin};
    const ts_number_fault fault = ts_number_parse(bytes, &value, &taken);
    if (fault == TS_NUMBER_TOO_LARGE)
        return fail(r, "the number is too large", begin);
    if (fault != TS_NUMBER_FINE || taken != bytes.length)
        return fail(r, "the number cannot be read", begin);
    r->at               = end;
    const uint16_t node = add_node(r, TS_FORMULA_NUMBER, begin, TS_FORMULA_NONE);
    if (node != TS_FORMULA_NONE) {
        r->nodes[node].value  = value;
        r->nodes[node].length = (uint16_t)bytes.length;
    }
    return node;
}

static ts_formula_function function_named(ts_text name)
{
    ts_formula_function f = TS_FUNCTION_SQRT;
    if (name.length > NAME_LONGEST)
        return TS_FUNCTION_COUNT;
    while (f < TS_FUNCTION_COUNT && (functions[f].name[0] != name.at[0] ||
                                     memcmp(functions[f].name, name.at, name.length) != 0 ||
                                     functions[f].name[name.length] != '\0'))
        f++;
    return f;
}

static uint16_t read_call(reader *r, ts_formula_function function, size_t begin)
{
    uint16_t first = TS_FORMULA_NONE, last = TS_FORMULA_NONE;
    unsigned operands = 0;
    do {
        const size_t   at      = (peek(r), r->at);
        const uint16_t operand = read_sum(r);
        if (operand == TS_FORMULA_NONE)
            return TS_FORMULA_NONE;
        operands++;
        if (functions[function].operands_max != 0 && operands > functions[function].operands_max)
            return fail(r, "the function has too many operands", at);
        if (last == TS_FORMULA_NONE)
            first = operand;
        else
            r->nodes[last].next = operand;
        last = operand;
    } while (take(r, ','));
    if (!take(r, ')'))
        return fail(r, "a closing parenthesis was expected", r->at);
    if (operands < functions[function].operands_min)
        return fail(r, "the function has too few operands", begin);
    const uint16_t node = add_node(r, TS_FORMULA_CALL, begin, first);
    if (node != TS_FORMULA_NONE)
        r->nodes[node].function = (uint8_t)function;
    return node;
}

static uint16_t read_word(reader *r)
{
    const size_t begin = r->at;
    while (r->at < r->length &&
           (is_letter(r->text[r->at]) || is_digit(r->text[r->at]) || r->text[r->at] == '_'))
        r->at++;
    const ts_text             name     = {r->text + begin, r->at - begin};
    const ts_formula_function function = function_named(name);
    const bool                called   = take(r, '(');

    if (called && function == TS_FUNCTION_COUNT)
        return fail(r, "there is no function of that name", begin);
    if (called)
        return read_call(r, function, begin);
    if (function != TS_FUNCTION_COUNT)
        return fail(r, "a function needs its operands in parentheses", begin);
    if (name.length == 2 && memcmp(name.at, "pi", 2) == 0)
        return add_node(r, TS_FORMULA_PI, begin, TS_FORMULA_NONE);
    const uint16_t node = add_node(r, TS_FORMULA_SYMBOL, begin, TS_FORMULA_NONE);
    if (node != TS_FORMULA_NONE)
        r->nodes[node].length = (uint16_t)name.length;
    return node;
}

static uint16_t read_primary(reader *r)
{
    const char c = peek(r);
    if (is_digit(c))
        return read_number(r);
    if (is_letter(c))
        return read_word(r);
    if (!take(r, '('))
        return fail(r, "a number, a symbol or a parenthesis was expected", r->at);
    const uint16_t inside = read_sum(r);
    if (inside != TS_FORMULA_NONE && !take(r, ')'))
        return fail(r, "a closing parenthesis was expected", r->at);
    return inside;
}

/* Every way down passes here, so that depth is counted here alone. */
static uint16_t read_factor(reader *r)
{
    if (r->depth >= TS_FORMULA_DEPTH_MOST)
        return fail(r, "the formula is nested deeper than 64 levels", r->at);
    r->depth++;
    uint16_t     node  = TS_FORMULA_NONE;
    const char   c     = peek(r);
    const size_t begin = r->at;
    if (c == '-') {
        r->at++;
        const uint16_t operand = read_factor(r);
        node                   = add_node(r, TS_FORMULA_NEGATE, begin, operand);
    } else {
        node = read_primary(r);
        if (node != TS_FORMULA_NONE && take(r, '^')) {
            const uint16_t exponent = read_factor(r);
            node                    = add_pair(r, TS_FORMULA_RAISE, node, exponent);
        }
    }
    r->depth--;
    return node;
}

static uint16_t read_term(reader *r)
{
    uint16_t node = read_factor(r);
    while (node != TS_FORMULA_NONE) {
        const char c = peek(r);
        if (c != '*' && c != '/')
            break;
        r->at++;
        const uint16_t right = read_factor(r);
        node = add_pair(r, c == '*' ? TS_FORMULA_MULTIPLY : TS_FORMULA_DIVIDE, node, right);
    }
    return node;
}

static uint16_t read_sum(reader *r)
{
    uint16_t node = read_term(r);
    while (node != TS_FORMULA_NONE) {
        const char c = peek(r);
        if (c != '+' && c != '-')
            break;
        r->at++;
        const uint16_t right = read_term(r);
        node = add_pair(r, c == '+' ? TS_FORMULA_ADD : TS_FORMULA_SUBTRACT, node, right);
    }
    return node;
}

bool ts_formula_read(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                     ts_formula_fault *fault)
{
    *fault   = (ts_formula_fault){NULL, 0};
    *tree    = (ts_formula_tree){.text = text, .nodes = nodes, .root = TS_FORMULA_NONE};
    reader r = {.text = text, .length = strlen(text), .nodes = nodes, .fault = fault};
    if (r.length > TS_FORMULA_BYTES_MOST) {
        fail(&r, "the formula is longer than 4096 bytes", TS_FORMULA_BYTES_MOST);
        return false;
    }
    tree->root = read_sum(&r);
    if (fault->says == NULL && peek(&r) != '\0')
        fail(&r, "an operator was expected", r.at);
    tree->count = r.count;
    return fault->says == NULL;
}

bool ts_formula_keep(ts_arena *arena, const char *text, ts_formula_tree *tree,
                     ts_formula_fault *fault)
{
    ts_formula_node nodes[TS_FORMULA_NODES_MOST];
    if (!ts_formula_read(text, nodes, tree, fault))
        return false;
    ts_formula_node *kept = TS_TAKE(arena, ts_formula_node, tree->count);
    tree->nodes           = kept;
    if (kept == NULL) {
        *fault = (ts_formula_fault){"there is no memory", 0};
        *tree  = (ts_formula_tree){.text = text, .root = TS_FORMULA_NONE};
        return false;
    }
    memcpy(kept, nodes, tree->count * sizeof *kept);
    return true;
}

ts_text ts_formula_bytes(const ts_formula_tree *tree, const ts_formula_node *node)
{
    return (ts_text){tree->text + node->at, node->length};
}
