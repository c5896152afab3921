/* Does a file that tells the bearings that were printed get the numbers that were printed? */
#include "support/close.h"
#include "support/read_file.h"

#include "model/edit.h"
#include "search/bearing_choice.h"
#include "study/study.h"
#include "towershaft/size.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                    "examples/medium.yaml", "examples/large.yaml"};

static const ts_study_options options = {.today = 20000};

static ts_study *read_bytes(const char *path, ts_text bytes)
{
    ts_study *study;

    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, bytes.at, bytes.length, &options), TS_OK);
    return study;
}

static ts_study *read_study(const char *path)
{
    const ts_text file  = read_file(path);
    ts_study     *study = read_bytes(path, file);

    free_file(file);
    return study;
}

/* ---- the copy -------------------------------------------------------------------------------- */

static void say(ts_buffer *out, const ts_line_bearing *b)
{
    ts_buffer_print(out, "{form: %s, rows: %d, series: %s, bore: ",
                    ts_bearing_form_name(b->bearing.form), b->bearing.rows, b->series);
    ts_quantity_print(out, b->bearing.d, ts_unit_named(TS_TEXT("mm"), TS_KIND_LENGTH));
    ts_buffer_add(out, "}");
}

/* The bytes with one more seat told; `bytes` are freed. */
static ts_text tell(ts_study *study, const ts_line_bearing *b, ts_text bytes)
{
    ts_buffer address, value, out;

    ts_buffer_open(&address, study->allocator);
    ts_buffer_open(&value, study->allocator);
    ts_buffer_open(&out, study->allocator);
    ts_source_address(&study->source, b->node, &address);
    say(&value, b);
    assert_int_equal(ts_edit_set(bytes, study->name, (ts_text){address.bytes, address.length},
                                 (ts_text){value.bytes, value.length}, study->arena,
                                 study->diagnostics, &out),
                     TS_OK);
    char *copy = malloc(out.length + 1);
    assert_non_null(copy);
    memcpy(copy, out.bytes, out.length);
    copy[out.length] = '\0';
    free((void *)bytes.at);
    const ts_text told = {copy, out.length};
    ts_buffer_close(&out);
    ts_buffer_close(&value);
    ts_buffer_close(&address);
    return told;
}

static ts_text copy_of(ts_text bytes)
{
    char *copy = malloc(bytes.length + 1);

    assert_non_null(copy);
    memcpy(copy, bytes.at, bytes.length + 1);
    return (ts_text){copy, bytes.length};
}

static ts_study *told_copy(ts_study *study)
{
    ts_text bytes = copy_of(study->bytes);

    for (uint32_t l = 0; l < study->lines.count; l++)
        for (int k = 0; k < study->lines.lines[l].bearing_count; k++)
            bytes = tell(study, &study->lines.lines[l].bearings[k], bytes);
    ts_study *told = read_bytes(study->name, bytes);
    free((void *)bytes.at);
    return told;
}

/* ---- the same -------------------------------------------------------------------------------- */

/* Lives of thousands of hours, or both endless. */
static void same(double a, double b)
{
    if (isinf(a) && isinf(b))
        return;
    assert_true(fabs(a - b) <= 1e-9 * fabs(a));
}

static void same_bearing(const ts_line_bearing *a, const ts_line_bearing *b)
{
    assert_string_equal(a->series, b->series);
    assert_int_equal(a->bearing.form, b->bearing.form);
    assert_int_equal(a->bearing.rows, b->bearing.rows);
    same(a->bearing.d, b->bearing.d);
    same(a->x, b->x);
    same(a->width, b->width);
    same(a->rating.L_nmh, b->rating.L_nmh);
    same(a->rating.L_10h, b->rating.L_10h);
    same(a->rating.S_0, b->rating.S_0);
    same(a->k_r, b->k_r);
}

static void same_lines(const ts_lines *a, const ts_lines *b)
{
    assert_int_equal(a->count, b->count);
    same(a->set_life, b->set_life);
    for (uint32_t l = 0; l < a->count; l++) {
        const ts_line *one = &a->lines[l], *other = &b->lines[l];

        assert_true(one->settled && other->settled);
        assert_int_equal(one->bearing_count, other->bearing_count);
        assert_int_equal(one->section_count, other->section_count);
        same(one->length, other->length);
        for (int k = 0; k < one->bearing_count; k++)
            same_bearing(&one->bearings[k], &other->bearings[k]);
        for (int i = 0; i < one->section_count; i++)
            same(one->sections[i].d_o, other->sections[i].d_o);
        if (one->weakest_D >= 0)
            same(one->notches[one->weakest_D].S_D, other->notches[other->weakest_D].S_D);
    }
}

static void told_bearings_give_the_printed_numbers(void **state)
{
    (void)state;
    for (size_t f = 0; f < 4; f++) {
        ts_study *study = read_study(files[f]);
        ts_study *told  = told_copy(study);

        same_lines(&study->lines, &told->lines);
        for (uint32_t l = 0; l < told->lines.count; l++)
            for (int k = 0; k < told->lines.lines[l].bearing_count; k++)
                assert_true(told->lines.lines[l].bearings[k].given);
        same(study->mass.total.value, told->mass.total.value);
        ts_study_close(told);
        ts_study_close(study);
    }
}

/* The first layout is that of reference widths: were it kept, this would tell nothing. */
static void layouts_do_follow_the_choice(void **state)
{
    (void)state;
    int again = 0;

    for (size_t f = 0; f < 4; f++) {
        ts_study *study = read_study(files[f]);
        for (uint32_t l = 0; l < study->lines.count; l++) {
            const ts_line *line = &study->lines.lines[l];
            assert_true(line->settled && line->rounds >= 1 && line->rounds <= 12);
            for (int k = 0; k < line->bearing_count; k++)
                again += line->rounds > 1;
        }
        ts_study_close(study);
    }
    assert_true(again > 20);
}

/* ---- sizing ---------------------------------------------------------------------------------- */

static int keep(void *context, const char *bytes, size_t length)
{
    ts_buffer *out = context;

    ts_buffer_bytes(out, bytes, length);
    return out->failed ? 1 : 0;
}

static void the_file_of_size_gets_the_lives_of_its_trials(void **state)
{
    (void)state;
    const ts_size_options sizing = {.part = TS_SIZE_BEARINGS};

    for (size_t f = 0; f < 4; f++) {
        ts_study       *study = read_study(files[f]), *sized = read_study(files[f]);
        ts_bearing_plan plan;
        ts_buffer       page, file;
        bool            fits;

        assert_int_equal(ts_find_bearings(&study->drive, &study->lines, study->arena, &plan),
                         TS_OK);
        ts_buffer_open(&page, study->allocator);
        ts_buffer_open(&file, study->allocator);
        const ts_sink pages = {keep, &page}, bytes = {keep, &file};
        assert_int_equal(ts_size_write(sized, &sizing, NULL, &fits, &pages, &bytes), TS_OK);
        assert_true(fits && plan.fits);
        ts_study *read = read_bytes("sized.yaml", (ts_text){file.bytes, file.length});
        for (size_t i = 0; i < plan.count; i++) {
            const ts_bearing_choice *choice = &plan.choices[i];

            same_bearing(&study->lines.lines[choice->line].bearings[choice->k],
                         &read->lines.lines[choice->line].bearings[choice->k]);
        }
        ts_study_close(read);
        ts_buffer_close(&file);
        ts_buffer_close(&page);
        ts_study_close(sized);
        ts_study_close(study);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(told_bearings_give_the_printed_numbers),
        cmocka_unit_test(layouts_do_follow_the_choice),
        cmocka_unit_test(the_file_of_size_gets_the_lives_of_its_trials),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
