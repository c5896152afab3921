/* Is a formula text that was read before the same as one that is read anew?
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

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_second_reading_gives_what_the_first_gave),
        cmocka_unit_test(another_text_at_the_same_address_is_read),
        cmocka_unit_test(more_texts_than_there_are_places_are_all_read),
        cmocka_unit_test(a_fault_is_told_every_time),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
