/* What may `arrange` choose, according to a file? */
#include "model/opened_drive.h"
#include "support/close.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#define SECTION                                                                                    \
    "arrange: {boxes: {hp: {modules: [1.75 mm, 2 mm], input teeth: [31, 35..39], wrap: 90 deg}}, " \
    "accessories: {fuel pump: {box of: hp, face: rear}}, idler teeth: 30, teeth: 19..97}"

static void several_values_keep_the_order_of_the_file(void **state)
{
    (void)state;
    opened_drive o;
    open_extended(&o, SECTION);
    assert_int_equal(o.status, TS_OK);
    const ts_box_freedom *box = &o.drive.arrange.boxes[0];
    assert_int_equal(box->modules.count, 2);
    assert_same_double(box->modules.items[0].value, 1.75e-3);
    assert_same_double(box->modules.items[1].value, 2e-3);
    assert_int_equal(box->input_teeth.count, 2);
    assert_int_equal(box->input_teeth.items[0].low, 31);
    assert_int_equal(box->input_teeth.items[0].high, 31);
    assert_int_equal(box->input_teeth.items[1].low, 35);
    assert_int_equal(box->input_teeth.items[1].high, 39);
    assert_int_equal(o.drive.arrange.idler_teeth.count, 1);
    assert_int_equal(o.drive.arrange.teeth.high, 97);
    close_drive(&o);
}

static void names_are_found_in_their_lists(void **state)
{
    (void)state;
    opened_drive o;
    open_extended(&o, SECTION);
    const ts_accessory_freedom *freedom = &o.drive.arrange.accessories[0];
    assert_string_equal(o.drive.accessories[freedom->accessory].name, "fuel pump");
    assert_string_equal(o.drive.spools[freedom->only].name, "hp");
    assert_string_equal(o.drive.spools[o.drive.arrange.boxes[0].spool].name, "hp");
    assert_int_equal(freedom->face.value, TS_CHOOSE_REAR);
    assert_int_equal(freedom->side.value, TS_CHOOSE_EITHER_SIDE);
    close_drive(&o);
}

static bool is_assumed(const ts_assumption *items, size_t count, const char *key)
{
    for (size_t i = 0; i < count; i++) {
        if (strcmp(items[i].key, key) == 0)
            return true;
    }
    return false;
}

/* No other command reads the section, so its defaults would only be noise on the page of `check`.
 */
static void defaults_of_the_section_stand_in_a_register_of_their_own(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    assert_true(
        is_assumed(o.drive.arrange_assumed, o.drive.arrange_assumed_count, "arrange/idlers"));
    assert_true(is_assumed(o.drive.arrange_assumed, o.drive.arrange_assumed_count,
                           "arrange/mass/casing wall"));
    assert_false(is_assumed(o.drive.assumed, o.drive.assumed_count, "arrange/idlers"));
    assert_int_equal(o.drive.arrange.idlers.value, 2);
    assert_int_equal(o.drive.arrange.idler_teeth.items[0].low, 24);
    assert_int_equal(o.drive.arrange.idler_teeth.standing, TS_ASSUMED);
    close_drive(&o);
}

static void faulty_section_is_refused_where_it_is_wrong(void **state)
{
    (void)state;
    static const struct {
        const char *line, *code, *nearest;
    } slips[] = {
        {"arrange: {boxes: {hx: {wrap: 90 deg}}}", "unknown-spool", "hp"},
        {"arrange: {accessories: {fuel pmp: {face: rear}}}", "unknown-accessory", "fuel pump"},
        {"arrange: {accessories: {fuel pump: {box of: lx}}}", "unknown-spool", "lp"},
        {"arrange: {accessories: {fuel pump: {face: reer}}}", "not-a-choice", "rear"},
        {"arrange: {teeth: 40..30}", "not-a-whole-number", NULL},
        {"arrange: {teeth: 30...40}", "not-a-whole-number", NULL},
        {"arrange: {teeth: 30..}", "not-a-whole-number", NULL},
        {"arrange: {teeth: 2..40}", "out-of-range", NULL},
        {"arrange: {teeth: unknown}", "must-be-known", NULL},
        {"arrange: {idler teeth: []}", "wrong-form", NULL},
        {"arrange: {boxes: {hp: {modules: []}}}", "wrong-form", NULL},
        {"arrange: {boxes: {hp: {modules: [2 mm, 3 kg]}}}", "wrong-kind", NULL},
        {"arrange: {boxes: {hp: {modules: [2 mm, {value: 3}]}}}", "missing-unit", NULL},
        {"arrange: {boxes: {hp: {input teeth: {low: 3}}}}", "unknown-key", NULL},
    };
    for (size_t i = 0; i < sizeof slips / sizeof slips[0]; i++) {
        opened_drive o;
        open_extended(&o, slips[i].line);
        assert_int_equal(o.status, TS_NOT_UNDERSTOOD);
        const ts_diagnostic *message = message_of(&o, slips[i].code);
        assert_true(message->line > 0 && message->column > 0);
        if (slips[i].nearest != NULL)
            assert_string_equal(message->nearest, slips[i].nearest);
        close_drive(&o);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(several_values_keep_the_order_of_the_file),
        cmocka_unit_test(names_are_found_in_their_lists),
        cmocka_unit_test(defaults_of_the_section_stand_in_a_register_of_their_own),
        cmocka_unit_test(faulty_section_is_refused_where_it_is_wrong),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
