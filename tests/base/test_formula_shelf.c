/* Is a formula text that was read before the same as one that is read anew, and the same when its
 * symbols know their inputs?
 *
 * Expected values are derived: arithmetic on small integers.
 */
#include "base/formula_shelf.h"

#include "support/close.h"

#include <stdio.h>
#include <string.h>

static double value_of(const char *text, const ts_input *inputs, size_t count)
{
    ts_formula_node  nodes[TS_FORMULA_NODES_MOST];
    ts_formula_tree  tree;
    ts_formula_fault fault = {0};
    ts_rounded       out   = {0};

    assert_true(ts_formula_reread(text, nodes, &tree, &fault));
    assert_ptr_equal(tree.text, text);
    assert_true(ts_formula_work_out(&tree, inputs, count, &out, &fault));
    return out.value;
}

static void the_second_reading_gives_what_the_first_gave(void **state)
{
    (void)state;
    const ts_input inputs[] = {{"a", 3.0}, {"b", 4.0}};

    for (int i = 0; i < 3; i++)
        assert_true(value_of("sqrt(a^2 + b^2)", inputs, 2) == 5.0);
}

static void another_text_at_the_same_address_is_read(void **state)
{
    (void)state;
    const ts_input inputs[] = {{"a", 3.0}};
    char           text[]   = "a + 1";

    assert_true(value_of(text, inputs, 1) == 4.0);
    text[4] = '2';
    assert_true(value_of(text, inputs, 1) == 5.0);
    strcpy(text, "a*a");
    assert_true(value_of(text, inputs, 1) == 9.0);
    strcpy(text, "a + 1");
    assert_true(value_of(text, inputs, 1) == 4.0);
}

static void more_texts_than_there_are_places_are_all_read(void **state)
{
    (void)state;
    static char texts[6000][16];

    for (int round = 0; round < 2; round++)
        for (int i = 0; i < 6000; i++) {
            snprintf(texts[i], sizeof texts[i], "%d - 1", i);
            assert_true(value_of(texts[i], NULL, 0) == i - 1.0);
        }
}

static void a_fault_is_told_every_time(void **state)
{
    (void)state;
    for (int i = 0; i < 2; i++) {
        ts_formula_node  nodes[TS_FORMULA_NODES_MOST];
        ts_formula_tree  tree;
        ts_formula_fault fault = {0};

        assert_false(ts_formula_reread("a + ", nodes, &tree, &fault));
        assert_non_null(fault.says);
        assert_int_equal(fault.at, 4);
    }
}

/* Bit by bit, rounding too: pairs and functions of the grammar, in one text each. */
static void a_bound_text_gives_what_the_tree_gives(void **state)
{
    (void)state;
    static const char *const texts[] = {
        "a + b - c*pi/2",
        "-a^2 + b^1.5 - 2^c",
        "a^b^c/(a - b)",
        "sqrt(a^2 + b^2)*sin(c)*cos(c)/tan(c)",
        "asin(c) + acos(c) + atan(a)*b + inv(c)",
        "exp(-a)*ln(b)*abs(c - 1)",
        "atan2(a, b)/c",
        "min(a, b, c)*max(c, a, b, 7)",
    };
    const ts_input inputs[] = {{"a", 3.25}, {"b", 4.5}, {"c", 0.375}};

    for (size_t i = 0; i < sizeof texts / sizeof texts[0]; i++) {
        ts_formula_node  nodes[TS_FORMULA_NODES_MOST];
        ts_formula_tree  tree;
        ts_formula_fault fault = {0};
        ts_rounded       down = {0}, along = {1.0, 1.0};

        assert_true(ts_formula_reread(texts[i], nodes, &tree, &fault));
        assert_true(ts_formula_work_out(&tree, inputs, 3, &down, &fault));
        assert_true(ts_formula_rework(texts[i], inputs, 3, &along));
        assert_memory_equal(&along, &down, sizeof down);
    }
}

static void a_text_is_bound_to_the_names_that_came_first_and_to_no_others(void **state)
{
    (void)state;
    static const char text[]    = "a - 2*b";
    const ts_input    inputs[]  = {{"a", 7.0}, {"b", 1.0}};
    const ts_input    swapped[] = {{"b", 1.0}, {"a", 7.0}};
    const ts_input    longer[]  = {{"a", 7.0}, {"bb", 1.0}};
    const ts_input    added[]   = {{"a", 7.0}, {"b", 1.0}, {"c", 1.0}};
    ts_rounded        out       = {0};

    assert_false(ts_formula_rework(text, inputs, 2, &out)); /* not on the shelf */
    assert_true(value_of(text, inputs, 2) == 5.0);
    assert_false(ts_formula_rework(text, added, 3, &out)); /* an input too many */
    assert_false(ts_formula_rework(text, inputs, 1, &out));
    assert_true(ts_formula_rework(text, inputs, 2, &out));
    assert_true(out.value == 5.0);
    assert_false(ts_formula_rework(text, swapped, 2, &out));
    assert_false(ts_formula_rework(text, longer, 2, &out));
    assert_false(ts_formula_rework(text, added, 3, &out));
    assert_false(ts_formula_rework(text, inputs, 1, &out));
}

static void a_sum_is_never_bound(void **state)
{
    (void)state;
    const ts_input once[] = {{"x", 2.0}};
    const ts_input many[] = {{"x", 2.0}, {"x", 3.0}};
    ts_rounded     out    = {0};

    assert_true(value_of("sum(x^2)", once, 1) == 4.0);
    assert_true(value_of("sum(x^2)", many, 2) == 13.0);
    assert_false(ts_formula_rework("sum(x^2)", once, 1, &out));
    assert_false(ts_formula_rework("sum(x^2)", many, 2, &out));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_second_reading_gives_what_the_first_gave),
        cmocka_unit_test(another_text_at_the_same_address_is_read),
        cmocka_unit_test(a_fault_is_told_every_time),
        cmocka_unit_test(a_bound_text_gives_what_the_tree_gives),
        cmocka_unit_test(a_text_is_bound_to_the_names_that_came_first_and_to_no_others),
        cmocka_unit_test(a_sum_is_never_bound),
        cmocka_unit_test(more_texts_than_there_are_places_are_all_read), /* fills the shelf */
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
