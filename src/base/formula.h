/* base/formula.h: a formula text as a tree, for the evaluator and for every outlet that sets it.
 *
 * There is one grammar and one reader of it:
 *
 *   sum     = term { ("+" | "-") term }
 *   term    = factor { ("*" | "/") factor }
 *   factor  = "-" factor | power
 *   power   = primary [ "^" factor ]              so -2^2 is -4, 2^-1 is 0.5, 2^3^2 is 2^9
 *   primary = number | "pi" | symbol | function "(" sum { "," sum } ")" | "(" sum ")"
 *   number  = digits [ "." digits ] [ ("e" | "E") [ "+" | "-" ] digits ]
 *   symbol  = letter { letter | digit | "_" }
 *
 * Multiplication is always written.  Blanks may stand between words.  Function names and pi are
 * reserved.  sum(x) works out x once for each input of a name that occurs several times and adds
 * the results in the order of the inputs; names that occur once stay the same in every term.
 */
#ifndef TS_BASE_FORMULA_H
#define TS_BASE_FORMULA_H

#include "base/arena.h"
#include "base/text.h"
#include "base/workings.h"

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

typedef enum ts_formula_part {
    TS_FORMULA_NUMBER,
    TS_FORMULA_PI,
    TS_FORMULA_SYMBOL,
    TS_FORMULA_NEGATE,   /* one operand          */
    TS_FORMULA_ADD,      /* two operands, and so */
    TS_FORMULA_SUBTRACT, /* the four after it    */
    TS_FORMULA_MULTIPLY,
    TS_FORMULA_DIVIDE,
    TS_FORMULA_RAISE,
    TS_FORMULA_CALL /* `function` of its operands */
} ts_formula_part;

typedef enum ts_formula_function {
    TS_FUNCTION_SQRT,
    TS_FUNCTION_SIN,
    TS_FUNCTION_COS,
    TS_FUNCTION_TAN,
    TS_FUNCTION_ASIN,
    TS_FUNCTION_ACOS,
    TS_FUNCTION_ATAN,
    TS_FUNCTION_ATAN2, /* atan2(y, x) */
    TS_FUNCTION_INV,   /* tan(x) - x  */
    TS_FUNCTION_EXP,
    TS_FUNCTION_LN,
    TS_FUNCTION_ABS,
    TS_FUNCTION_MIN, /* of two or more */
    TS_FUNCTION_MAX,
    TS_FUNCTION_SUM,
    TS_FUNCTION_COUNT
} ts_formula_function;

#define TS_FORMULA_NONE       UINT16_MAX
#define TS_FORMULA_NODES_MOST 256
#define TS_FORMULA_BYTES_MOST 4096
#define TS_FORMULA_DEPTH_MOST 64

typedef struct ts_formula_node {
    double   value;    /* NUMBER                                              */
    uint16_t at;       /* byte of the text where it begins                    */
    uint16_t length;   /* NUMBER, SYMBOL: its bytes                           */
    uint16_t first;    /* its first operand, or TS_FORMULA_NONE               */
    uint16_t next;     /* the next operand of the same parent, or ..._NONE    */
    uint8_t  part;     /* ts_formula_part                                     */
    uint8_t  function; /* CALL: ts_formula_function                           */
} ts_formula_node;

typedef struct ts_formula_tree {
    const char            *text; /* not copied */
    const ts_formula_node *nodes;
    uint16_t               count;
    uint16_t               root;
} ts_formula_tree;

typedef struct ts_formula_fault {
    const char *says; /* a static sentence without a full stop */
    size_t      at;   /* byte of the text                      */
} ts_formula_fault;

/* Reads `text` into nodes[TS_FORMULA_NODES_MOST].  False and the fault when it cannot be read. */
bool ts_formula_read(const char *text, ts_formula_node *nodes, ts_formula_tree *tree,
                     ts_formula_fault *fault);

/* The same with nodes kept in `arena`; `text` must live as long.  Without memory the fault's `says`
 * is "there is no memory". */
bool ts_formula_keep(ts_arena *arena, const char *text, ts_formula_tree *tree,
                     ts_formula_fault *fault);

/* The bytes of a SYMBOL or NUMBER. */
ts_text ts_formula_bytes(const ts_formula_tree *tree, const ts_formula_node *node);

const char *ts_formula_function_name(ts_formula_function function); /* "sqrt" */

/* The input that stands for a symbol: number `row` of those with that name; one that occurs once
 * stands for every row.  NULL when there is none. */
const ts_input *ts_formula_input(ts_text symbol, const ts_input *inputs, size_t count, size_t row);
size_t          ts_formula_input_count(ts_text symbol, const ts_input *inputs, size_t count);

/* How many terms the sum() at `node` has with these inputs: the largest number of inputs of one
 * name that its operand uses, or 1.  0 when two names occur several times, not equally often. */
size_t ts_formula_sum_terms(const ts_formula_tree *tree, const ts_formula_node *node,
                            const ts_input *inputs, size_t count);

/* A value and how far plain rounding in double arithmetic may have moved it (first order): what
 * another, algebraically equal order of the same operations may honestly differ by. */
typedef struct ts_rounded {
    double value;
    double rounding; /* absolute, never negative */
} ts_rounded;

/* Works the tree out.  False and the fault when a symbol has no input, has several outside of
 * sum(), or sum() is nested. */
bool ts_formula_work_out(const ts_formula_tree *tree, const ts_input *inputs, size_t count,
                         ts_rounded *out, ts_formula_fault *fault);

#endif
