/* Are the manual, the JSON Schema and the TypeScript types those of the tables?
 *
 * TS_REFRESH=1 in the environment writes them anew instead of comparing.
 */
#include "model/schema.h"
#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static void write_file(const char *path, const ts_buffer *out)
{
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_int_equal(fwrite(out->bytes, 1, out->length, file), out->length);
    assert_int_equal(fclose(file), 0);
}

static void assert_fresh(const char *path, void (*print)(ts_buffer *out))
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    print(&out);
    assert_false(out.failed);
    if (getenv("TS_REFRESH") != NULL)
        write_file(path, &out);
    const ts_text committed = read_file(path);
    if (!ts_text_equal(committed, (ts_text){out.bytes, out.length}))
        fail_msg("%s is stale: run this test with TS_REFRESH=1 and commit it", path);
    free_file(committed);
    ts_buffer_close(&out);
}

static void manual_is_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/drive-file.md", ts_schema_write_manual);
}

static void json_schema_is_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/schema/drive.schema.json", ts_schema_write_json);
}

static void manual_of_the_rate_file_is_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/rate-file.md", ts_schema_write_rate_manual);
}

static void json_schema_of_the_rate_file_is_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/schema/rate-file.schema.json", ts_schema_write_rate_json);
}

static void manual_of_the_study_file_is_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/study-file.md", ts_schema_write_sampling_manual);
}

static void json_schema_of_the_study_file_is_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/schema/study-file.schema.json", ts_schema_write_sampling_json);
}

static void types_are_fresh(void **state)
{
    (void)state;
    assert_fresh("docs/schema/drive.d.ts", ts_schema_write_types);
}

static void assert_completions(const char *address, const char *expected)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    ts_schema_write_completions(ts_text_of(address), &out);
    assert_string_equal(out.bytes != NULL ? out.bytes : "", expected);
    ts_buffer_close(&out);
}

static void completions_follow_the_tables(void **state)
{
    (void)state;
    assert_completions("accessories/any name/body", "radius\nlength\n");
    assert_completions("drive/hp", "take-off\ntower shaft\nbox\n");
    assert_completions("drive/hp/take-off/float", "fixed bevel\nsplined stub\nwide spur\n");
    assert_completions("drive/hp/box/anticlockwise/2/branch/1/step",
                       "teeth\nmodule\nface\nshift\nmaterial\nrim\nweb\n");
    assert_completions("drive/hp/box/clockwise/2/step/2",
                       "teeth\nmodule\nface\nshift\nmaterial\nrim\nweb\n");
    assert_completions("drive/hp/box/clockwise/2/front", "cover\nhand turning\nopen\n");
    assert_completions("conditions/crank", "events\nhours\nlasts\n");
    assert_completions("method/teeth", "ISO 6336:2019\nISO 6336:2006\n");
    assert_completions("no/such/place", "");
    assert_completions("drive/hp/box/nothing", "");
    assert_completions("drive", "");
}

/* A table that says nothing about a key teaches nobody. */
static void assert_described(const ts_record_table *table)
{
    assert_non_null(table->id);
    assert_non_null(table->says);
    assert_true(table->field_count <= TS_FIELDS_MOST);
    for (size_t i = 0; i < table->field_count; i++) {
        const ts_field *field = &table->fields[i];
        assert_non_null(field->says);
        assert_true(strlen(field->says) > 5);
        assert_non_null(strchr(".?", field->says[strlen(field->says) - 1]));
        assert_non_null(field->example);
        assert_true(field->preset.value == NULL || field->preset.reason != NULL);
        if (field->form != TS_FORM_SPOOL_SPEEDS)
            assert_ptr_equal(ts_field_named(table, ts_text_of(field->key)), field);
    }
}

static void every_field_is_described(void **state)
{
    (void)state;
    for (size_t t = 0; t < ts_drive_tables.count; t++)
        assert_described(ts_drive_tables.tables[t]);
    for (size_t t = 0; t < ts_rate_tables.count; t++)
        assert_described(ts_rate_tables.tables[t]);
    for (size_t t = 0; t < ts_sampling_tables.count; t++)
        assert_described(ts_sampling_tables.tables[t]);
}

static void assert_round(const ts_field *field)
{
    const ts_range *range = &field->range;
    if (range->unit == NULL)
        return;
    const ts_unit *unit = ts_unit_named_any(ts_text_of(range->unit));
    assert_non_null(unit);
    for (int end = 0; end < 2; end++) {
        ts_buffer out;
        ts_buffer_open(&out, NULL);
        ts_quantity_print(&out, end == 0 ? range->least : range->most, unit);
        if (out.length > 16)
            fail_msg("%s: %s", field->key, out.bytes);
        ts_buffer_close(&out);
    }
}

/* A limit that is not a round number in its unit is a slip of the table. */
static void every_limit_is_round_in_its_unit(void **state)
{
    (void)state;
    const ts_table_set *const sets[] = {&ts_drive_tables, &ts_rate_tables, &ts_sampling_tables};
    for (int s = 0; s < 3; s++)
        for (size_t t = 0; t < sets[s]->count; t++)
            for (size_t i = 0; i < sets[s]->tables[t]->field_count; i++)
                assert_round(&sets[s]->tables[t]->fields[i]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(manual_is_fresh),
        cmocka_unit_test(json_schema_is_fresh),
        cmocka_unit_test(types_are_fresh),
        cmocka_unit_test(manual_of_the_rate_file_is_fresh),
        cmocka_unit_test(json_schema_of_the_rate_file_is_fresh),
        cmocka_unit_test(manual_of_the_study_file_is_fresh),
        cmocka_unit_test(json_schema_of_the_study_file_is_fresh),
        cmocka_unit_test(completions_follow_the_tables),
        cmocka_unit_test(every_field_is_described),
        cmocka_unit_test(every_limit_is_round_in_its_unit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
