/* Does a formula text mean what people read in it, and is every slip between text and code caught?
 *
 * Expected values are derived: arithmetic on small integers, or the C library's own function.
 */
#include "base/formula.h"

#include "base/workings.h"
#include "support/close.h"

#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

#define COUNT(array) (sizeof(array) / sizeof(array)[0])

static const ts_input shelf[] = {
    {"a", 3.0}, {"b", 4.0}, {"x", 0.3}, {"d_b1p", 2.5}, {"P", 1.0},  {"P", 2.0},
    {"P", 4.0}, {"n", 5.0}, {"n", 7.0}, {"n", 9.0},     {"q", 11.0}, {"q", 13.0},
};

static double value_of(const char *text)
{
    double      value = 0.0;
    const char *fault = NULL;
    size_t      at    = 0;
    if (!ts_formula_evaluate(text, shelf, COUNT(shelf), &value, &fault, &at))
        fail_msg("%s: %s at byte %zu", text, fault, at);
    assert_null(fault);
    return value;
}

static void operators_bind_as_written_in_the_grammar(void **state)
{
    static const struct {
        const char *text;
        double      value;
    } cases[] = {
        {"2+3*4", 14.0},
        {"(2+3)*4", 20.0},
        {"2-3-4", -5.0},
        {"2-(3-4)", 3.0},
        {"24/4/2", 3.0},
        {"24/(4/2)", 12.0},
        {"24/4*2", 12.0},
        {"-2^2", -4.0},
        {"(-2)^2", 4.0},
        {"2^3^2", 512.0},
        {"(2^3)^2", 64.0},
        {"2^-1", 0.5},
        {"2*-3", -6.0},
        {"2--3", 5.0},
        {"--2", 2.0},
        {"-2*3", -6.0},
        {"2*3^2", 18.0},
        {"-a^2+b", -5.0},
        {" 2 * ( a + b ) ", 14.0},
        {"((((a))))", 3.0},
        {"2.5e1", 25.0},
        {"1E-2*100", 1.0},
        {"0.5", 0.5},
        {"2*d_b1p", 5.0},
        {"a/b*b", 3.0},
        {"1e+2", 100.0},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++)
        assert_same_double(value_of(cases[i].text), cases[i].value);
}

static void functions_are_those_of_the_c_library(void **state)
{
    (void)state;
    assert_same_double(value_of("pi"), acos(-1.0));
    assert_same_double(value_of("sqrt(a^2 + b^2)"), 5.0);
    assert_same_double(value_of("sin(x)"), sin(0.3));
    assert_same_double(value_of("cos(x)"), cos(0.3));
    assert_same_double(value_of("tan(x)"), tan(0.3));
    assert_same_double(value_of("asin(x)"), asin(0.3));
    assert_same_double(value_of("acos(x)"), acos(0.3));
    assert_same_double(value_of("atan(x)"), atan(0.3));
    assert_same_double(value_of("atan2(-a, -b)"), atan2(-3.0, -4.0));
    assert_same_double(value_of("inv(x)"), tan(0.3) - 0.3);
    assert_same_double(value_of("exp(x)"), exp(0.3));
    assert_same_double(value_of("ln(x)"), log(0.3));
    assert_same_double(value_of("abs(a - b)"), 1.0);
    assert_same_double(value_of("min(b, a, 7)"), 3.0);
    assert_same_double(value_of("max(a, 7, b)"), 7.0);
}

static void a_sum_runs_over_inputs_of_one_name(void **state)
{
    (void)state;
    assert_same_double(value_of("sum(P)"), 7.0);
    assert_same_double(value_of("sum(n*P)"), 55.0);
    assert_same_double(value_of("sum(a*P)/sum(P)"), 3.0);
    assert_same_double(value_of("sum(P)^2"), 49.0);
    assert_same_double(value_of("sum(a)"), 3.0);
}

static void a_domain_error_is_no_number(void **state)
{
    (void)state;
    assert_nan(value_of("sqrt(-a)"));
    assert_nan(value_of("min(a, sqrt(-a), 1)"));
    assert_nan(value_of("max(sqrt(-a), 1)"));
}

static void a_fault_names_its_byte(void **state)
{
    static const struct {
        const char *text;
        const char *fault;
        size_t      at;
    } cases[] = {
        {"", "a number, a symbol or a parenthesis was expected", 0},
        {"1+", "a number, a symbol or a parenthesis was expected", 2},
        {"2*+3", "a number, a symbol or a parenthesis was expected", 2},
        {"a b", "an operator was expected", 2},
        {"2a", "an operator was expected", 1},
        {"2e", "an operator was expected", 1},
        {"3,5", "an operator was expected", 1},
        {"a=b", "an operator was expected", 1},
        {"a+\t b", "a number, a symbol or a parenthesis was expected", 2},
        {".5", "a number, a symbol or a parenthesis was expected", 0},
        {"5.", "an operator was expected", 1},
        {"(a", "a closing parenthesis was expected", 2},
        {"a)", "an operator was expected", 1},
        {"1+log(a)", "there is no function of that name", 2},
        {"a(b)", "there is no function of that name", 0},
        {"1+sin", "a function needs its operands in parentheses", 2},
        {"2*atan2(a)", "the function has too few operands", 2},
        {"min(a)", "the function has too few operands", 0},
        {"sin(a, b)", "the function has too many operands", 7},
        {"sin()", "a number, a symbol or a parenthesis was expected", 4},
        {"1 + 1e400", "the number is too large", 4},
        {"a + c", "the symbol has no input", 4},
        {"a + A", "the symbol has no input", 4},
        {"a + P", "the symbol has several inputs, which only sum() takes", 4},
        {"1 + sum(P*sum(n))", "sum() cannot stand inside sum()", 10},
        {"1 + sum(P*q)", "the symbols of sum() have different numbers of inputs", 4},
    };
    (void)state;
    for (size_t i = 0; i < COUNT(cases); i++) {
        double      value = 0.0;
        const char *fault = NULL;
        size_t      at    = 0;
        assert_false(ts_formula_evaluate(cases[i].text, shelf, COUNT(shelf), &value, &fault, &at));
        assert_string_equal(fault, cases[i].fault);
        assert_int_equal(at, cases[i].at);
        assert_nan(value);
    }
}

/* `count` times `piece`, then `end`. */
static char *repeated(const char *piece, size_t count, const char *end)
{
    const size_t length = strlen(piece);
    char        *text   = malloc(length * count + strlen(end) + 1);
    assert_non_null(text);
    for (size_t i = 0; i < count; i++)
        memcpy(text + i * length, piece, length);
    memcpy(text + count * length, end, strlen(end) + 1);
    return text;
}

static void assert_refused(char *text, const char *expected)
{
    double      value = 0.0;
    const char *fault = NULL;
    size_t      at    = 0;
    assert_false(ts_formula_evaluate(text, shelf, COUNT(shelf), &value, &fault, &at));
    assert_string_equal(fault, expected);
    assert_true(at <= strlen(text));
    free(text);
}

static void depth_and_size_have_limits(void **state)
{
    (void)state;
    assert_refused(repeated("(", 100000 / 32, ""), "the formula is nested deeper than 64 levels");
    assert_refused(repeated("-", 70, "a"), "the formula is nested deeper than 64 levels");
    assert_refused(repeated("2^", 70, "a"), "the formula is nested deeper than 64 levels");
    assert_refused(repeated("a+", 200, "a"), "the formula has more than 256 parts");
    assert_refused(repeated(" ", 5000, "a"), "the formula is longer than 4096 bytes");

    char *deep = repeated("-", TS_FORMULA_DEPTH_MOST - 1, "a");
    assert_same_double(value_of(deep), -3.0);
    free(deep);
    char *wide = repeated("a+", (TS_FORMULA_NODES_MOST - 1) / 2, "a");
    assert_same_double(value_of(wide), 3.0 * (TS_FORMULA_NODES_MOST / 2.0));
    free(wide);
}

/* The formula of the house's own example, which every slip below is made in. */
static const ts_formula Z_H_formula = {
    .symbol  = "Z_H",
    .meaning = "zone factor",
    .unit    = "1",
    .text    = "sqrt(2*cos(beta_b)*cos(alpha_wt) / (cos(alpha_t)^2*sin(alpha_wt)))",
    .source  = "ISO 6336-2:2019, clause 6 (from memory)",
};

static const ts_input Z_H_inputs[] = {{"alpha_t", 0.35}, {"alpha_wt", 0.38}, {"beta_b", 0.20}};

static double Z_H_by_code(double power)
{
    const double alpha_t = 0.35, alpha_wt = 0.38, beta_b = 0.20;
    return sqrt(2.0 * cos(beta_b) * cos(alpha_wt) / sin(alpha_wt)) / pow(cos(alpha_t), power);
}

static void a_text_that_says_what_the_code_does_is_let_through(void **state)
{
    (void)state;
    assert_false(ts_formula_disagrees(&Z_H_formula, Z_H_by_code(1.0), Z_H_inputs, 3, NULL));
}

static void assert_caught(const ts_formula *formula, double result, const ts_input *inputs,
                          size_t count, const char *because)
{
    ts_buffer says;
    ts_buffer_open(&says, NULL);
    assert_true(ts_formula_disagrees(formula, result, inputs, count, &says));
    assert_true(ts_formula_disagrees(formula, result, inputs, count, NULL));
    if (strstr(says.bytes, because) == NULL)
        fail_msg("\"%s\" is not in: %s", because, says.bytes);
    ts_buffer_close(&says);
}

static void a_changed_exponent_in_the_text_is_caught(void **state)
{
    (void)state;
    ts_formula changed = Z_H_formula;
    changed.text       = "sqrt(2*cos(beta_b)*cos(alpha_wt) / (cos(alpha_t)^3*sin(alpha_wt)))";
    assert_caught(&changed, Z_H_by_code(1.0), Z_H_inputs, 3,
                  "does not give what the code computed");
}

static void a_changed_line_of_code_is_caught(void **state)
{
    (void)state;
    assert_caught(&Z_H_formula, Z_H_by_code(2.0), Z_H_inputs, 3, "the code gave  ");
}

static void an_input_left_out_is_caught(void **state)
{
    (void)state;
    assert_caught(&Z_H_formula, Z_H_by_code(1.0), Z_H_inputs, 2, "the symbol has no input");
}

static void an_input_too_many_is_caught(void **state)
{
    (void)state;
    const ts_input more[] = {Z_H_inputs[0], Z_H_inputs[1], Z_H_inputs[2], {"alpha_n", 0.1}};
    assert_caught(&Z_H_formula, Z_H_by_code(1.0), more, 4, "input: alpha_n");
}

static void a_member_in_place_of_a_name_is_caught(void **state)
{
    (void)state;
    const ts_input member[] = {Z_H_inputs[0], Z_H_inputs[1], {"flank->beta_b", 0.2}};
    assert_caught(&Z_H_formula, Z_H_by_code(1.0), member, 3, "input: flank->beta_b");
}

static void a_difference_of_one_in_1e11_is_caught(void **state)
{
    (void)state;
    const double right = Z_H_by_code(1.0);
    assert_caught(&Z_H_formula, right * (1.0 + 1e-11), Z_H_inputs, 3, "does not give");
    assert_false(ts_formula_disagrees(&Z_H_formula, right * (1.0 + 4e-13), Z_H_inputs, 3, NULL));
}

static void no_number_is_never_agreement(void **state)
{
    (void)state;
    assert_caught(&Z_H_formula, (double)NAN, Z_H_inputs, 3, "the code gave  NaN");
    ts_formula root = Z_H_formula;
    root.text       = "sqrt(-alpha_t)";
    assert_caught(&root, (double)NAN, Z_H_inputs, 1, "the text gives NaN");
    assert_caught(&root, 0.0, Z_H_inputs, 1, "the text gives NaN");
}

static void infinities_agree_only_when_they_are_the_same(void **state)
{
    (void)state;
    const ts_formula quotient = {"q", "quotient", "1", "u/v", "derived: definition"};
    const ts_input   inputs[] = {{"u", 1.0}, {"v", 0.0}};
    assert_false(ts_formula_disagrees(&quotient, (double)INFINITY, inputs, 2, NULL));
    assert_caught(&quotient, -(double)INFINITY, inputs, 2, "the text gives infinity");
    assert_caught(&quotient, DBL_MAX, inputs, 2, "the text gives infinity");
}

/* derived: in double arithmetic (0.1 + 0.7) - 0.8 gives -1.1e-16, 0.1 + (0.7 - 0.8) 2.8e-17. */
static void another_order_of_adding_is_let_through(void **state)
{
    (void)state;
    const ts_formula rest     = {"r", "what is left", "N", "u + v - w", "derived: definition"};
    const ts_input   inputs[] = {{"u", 0.1}, {"v", 0.7}, {"w", 0.8}};
    const double     u = 0.1, v = 0.7, w = 0.8;
    assert_true(fabs((u + (v - w)) - (u + v - w)) > 1e-12 * fabs(u + v - w));
    assert_false(ts_formula_disagrees(&rest, u + (v - w), inputs, 3, NULL));
    assert_caught(&rest, u + (v - w) + 1e-14, inputs, 3, "does not give");
}

/* A large addend inside must not hide an error in a small result. */
static void large_terms_that_do_not_cancel_concede_nothing(void **state)
{
    (void)state;
    const ts_formula share = {"q", "share of stiffness", "1", "(u + v)/w", "derived: definition"};
    const ts_input   inputs[] = {{"u", 2.0e11}, {"v", 1.1e11}, {"w", 3.0e11}};
    const double     right    = (2.0e11 + 1.1e11) / 3.0e11;
    assert_false(ts_formula_disagrees(&share, right, inputs, 3, NULL));
    assert_caught(&share, right + 1e-11, inputs, 3, "does not give");
}

static void a_formula_must_say_where_it_is_from(void **state)
{
    (void)state;
    ts_formula bare = Z_H_formula;
    bare.source     = "";
    assert_caught(&bare, Z_H_by_code(1.0), Z_H_inputs, 3, "the formula has no source");
    bare      = Z_H_formula;
    bare.unit = NULL;
    assert_caught(&bare, Z_H_by_code(1.0), Z_H_inputs, 3, "the formula has no unit");
    bare         = Z_H_formula;
    bare.meaning = NULL;
    assert_caught(&bare, Z_H_by_code(1.0), Z_H_inputs, 3, "the formula has no meaning");
    bare      = Z_H_formula;
    bare.text = NULL;
    assert_caught(&bare, Z_H_by_code(1.0), Z_H_inputs, 3, "the formula has no text");
    bare        = Z_H_formula;
    bare.symbol = NULL;
    assert_caught(&bare, Z_H_by_code(1.0), Z_H_inputs, 3, "the formula has no symbol");
}

static void a_text_that_cannot_be_read_is_caught(void **state)
{
    (void)state;
    ts_formula broken = Z_H_formula;
    broken.text       = "alpha_t + alpha_wt +* beta_b";
    assert_caught(&broken, 1.0, Z_H_inputs, 3, "at byte 20: * beta_b");
}

static void a_tree_is_kept_in_an_arena(void **state)
{
    (void)state;
    ts_arena        *arena = ts_arena_open(NULL);
    ts_formula_tree  tree;
    ts_formula_fault fault;
    assert_true(ts_formula_keep(arena, "2*T/d_1", &tree, &fault));
    const ts_formula_node *quotient = &tree.nodes[tree.root];
    const ts_formula_node *product  = &tree.nodes[quotient->first];
    const ts_formula_node *diameter = &tree.nodes[product->next];
    assert_int_equal(tree.count, 5);
    assert_int_equal(quotient->part, TS_FORMULA_DIVIDE);
    assert_int_equal(product->part, TS_FORMULA_MULTIPLY);
    assert_int_equal(diameter->part, TS_FORMULA_SYMBOL);
    assert_true(ts_text_is(ts_formula_bytes(&tree, diameter), "d_1"));
    assert_int_equal(diameter->next, TS_FORMULA_NONE);
    assert_false(ts_formula_keep(arena, "2*T/", &tree, &fault));
    assert_int_equal(fault.at, 4);
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(operators_bind_as_written_in_the_grammar),
        cmocka_unit_test(functions_are_those_of_the_c_library),
        cmocka_unit_test(a_sum_runs_over_inputs_of_one_name),
        cmocka_unit_test(a_domain_error_is_no_number),
        cmocka_unit_test(a_fault_names_its_byte),
        cmocka_unit_test(depth_and_size_have_limits),
        cmocka_unit_test(a_text_that_says_what_the_code_does_is_let_through),
        cmocka_unit_test(a_changed_exponent_in_the_text_is_caught),
        cmocka_unit_test(a_changed_line_of_code_is_caught),
        cmocka_unit_test(an_input_left_out_is_caught),
        cmocka_unit_test(an_input_too_many_is_caught),
        cmocka_unit_test(a_member_in_place_of_a_name_is_caught),
        cmocka_unit_test(a_difference_of_one_in_1e11_is_caught),
        cmocka_unit_test(no_number_is_never_agreement),
        cmocka_unit_test(infinities_agree_only_when_they_are_the_same),
        cmocka_unit_test(another_order_of_adding_is_let_through),
        cmocka_unit_test(large_terms_that_do_not_cancel_concede_nothing),
        cmocka_unit_test(a_formula_must_say_where_it_is_from),
        cmocka_unit_test(a_text_that_cannot_be_read_is_caught),
        cmocka_unit_test(a_tree_is_kept_in_an_arena),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
