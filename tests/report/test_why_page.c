/* Can a reader follow a number down to the lines of the file?
 *
 * The drive, its numbers and its two formulas are invented; the values are derived from the texts.
 */
#include "report/why_page.h"

#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/read_file.h"

#include <jansson.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { GEAR = 4, MATE = 5, TAKE_OFF = 1 };

/* Nodes 10 and on are the values of these lines. */
static const char *const lines[]           = {"  - {teeth: 61, face: 18 mm}",
                                              "\ttorque: 34 N.m  # \033[31mred\xE2\x80\xAE", "d: 61 mm"};
static const char *const value_addresses[] = {"drive/hp/box/input/face", "accessories/pump/torque",
                                              "drive/hp/box/input/d"};

static const char *address(void *context, uint32_t node)
{
    (void)context;
    if (node >= 10)
        return value_addresses[node - 10];
    return node == GEAR   ? "drive/hp/box/input"
           : node == MATE ? "drive/hp/box/clockwise/1"
                          : "drive";
}

static const char *condition(void *context, int32_t index)
{
    (void)context;
    return index == TAKE_OFF ? "take-off" : "cruise";
}

static uint32_t line(void *context, uint32_t node)
{
    (void)context;
    return node >= 10 ? 40 + node : 0;
}

static ts_text text(void *context, uint32_t node)
{
    (void)context;
    return ts_text_of(lines[node - 10]);
}

static const ts_why_places places = {NULL, "drive.yaml", address, condition, line, text};

static const ts_formula T_formula     = {"T", "torque of the gear", "N.m", "T_out*K_A/eta",
                                         "derived: power balance"};
static const ts_formula F_t_formula   = {"F_t", "tangential force", "N", "2*T/d",
                                         "derived: definition of torque"};
static const ts_formula p_formula     = {"p_t", "line load, doubled by its spread", "Pa",
                                         "F_t/(b*d) + F_t*k/(b*d)", "invented for this test"};
static const ts_formula alpha_formula = {"alpha_wt", "working pressure angle", "rad",
                                         "inv(alpha_wt) - i", "invented for this test"};

static double pressure(ts_workings *workings)
{
    const double d = 0.061, b = 0.018, K_A = 1.25, eta = 0.98, T_out = 34.0, k = 1.0;
    ts_workings_about(workings, GEAR, TS_EVERY_CONDITION);
    ts_workings_given(workings, "d", d, "m", 12);
    ts_workings_given(workings, "b", b, "m", 10);
    ts_workings_about(workings, MATE, TAKE_OFF);
    ts_workings_given(workings, "T_pad", T_out, "N.m", 11);
    ts_workings_about(workings, GEAR, TAKE_OFF);
    ts_workings_row(workings, "K_A", K_A, "1", "data/application.tsv, row pump");
    ts_workings_assumed(workings, "eta", eta, "1", "common practice, no source");
    ts_workings_borrow(workings, "T_out", T_out, (ts_subject){MATE, TAKE_OFF}, "T_pad");
    const double T   = TS_STEP(workings, T_formula, T_out * K_A / eta, T_out, K_A, eta);
    const double F_t = TS_STEP(workings, F_t_formula, 2.0 * T / d, T, d);
    return TS_STEP(workings, p_formula, F_t / (b * d) + F_t * k / (b * d), F_t, b, d, k);
}

typedef struct bench_place {
    ts_arena    *arena;
    ts_workings *workings;
    ts_buffer    out;
    ts_page      page;
    ts_why       why;
} bench_place;

static void open_place(bench_place *at, const ts_allocator *allocator)
{
    at->arena    = ts_arena_open(NULL);
    at->workings = ts_workings_open(at->arena);
    assert_non_null(at->workings);
    pressure(at->workings);
    ts_buffer_open(&at->out, allocator);
    at->page = (ts_page){.out = &at->out, .columns = 90};
    at->why  = (ts_why){
         .workings = at->workings, .index = ts_workings_count(at->workings) - 1, .places = &places};
}

static void close_place(bench_place *at)
{
    ts_buffer_close(&at->out);
    ts_arena_close(at->arena);
}

/* Against tests/golden/why/<name>.txt. */
static void assert_page(bench_place *at, const char *name)
{
    char path[80];
    snprintf(path, sizeof path, "tests/golden/why/%s.txt", name);
    const ts_text expected = read_file(path);
    ts_buffer_clear(&at->out);
    assert_int_equal(ts_why_page(&at->why, &at->page), TS_OK);
    assert_string_equal(at->out.bytes, expected.at);
    free_file(expected);
}

static void a_number_is_opened_down_to_the_lines_of_the_file(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    assert_page(&at, "opened");
    close_place(&at);
}

static void a_narrow_page_sets_what_is_right_on_a_line_of_its_own(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    at.why.levels   = 2;
    at.page.columns = 60;
    at.page.units   = TS_UNITS_US;
    assert_page(&at, "narrow");
    close_place(&at);
}

/* The step of MATE uses the force of GEAR twice: once as its own name, once as a borrowed one. */
static void note_a_balance(ts_workings *workings)
{
    static const ts_formula rest = {"F_sum", "what the two gears leave", "N", "F_1 - F_2",
                                    "derived: balance of forces"};
    const size_t            from = ts_workings_find(workings, (ts_subject){GEAR, TAKE_OFF}, "F_t");
    const double            F_1 = ts_workings_at(workings, from)->value, F_2 = F_1;
    ts_workings_about(workings, MATE, TAKE_OFF);
    ts_workings_borrow(workings, "F_1", F_1, (ts_subject){GEAR, TAKE_OFF}, "F_t");
    ts_workings_borrow(workings, "F_2", F_2, (ts_subject){GEAR, TAKE_OFF}, "F_t");
    const double F_sum = TS_STEP(workings, rest, F_1 - F_2, F_1, F_2);
    assert_same_double(F_sum, 0.0);
}

static void what_is_used_again_is_opened_once_and_numbered(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    note_a_balance(at.workings);
    at.why.index = ts_workings_count(at.workings) - 1;
    assert_page(&at, "used_again");
    close_place(&at);
}

static void a_search_shows_its_equation_and_what_is_left(void **state)
{
    (void)state;
    bench_place    at;
    const ts_input inputs[] = {{"alpha_wt", 0.38}, {"i", 0.0194}};
    open_place(&at, NULL);
    ts_search_note(at.workings, &alpha_formula, 0.38, tan(0.38) - 0.38 - 0.0194, inputs, 2);
    at.why.index = ts_workings_count(at.workings) - 1;
    assert_page(&at, "searched");
    close_place(&at);
}

static void a_given_number_is_explained_by_its_line_alone(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    at.why.index = ts_workings_find(at.workings, (ts_subject){GEAR, TS_EVERY_CONDITION}, "d");
    assert_page(&at, "given");
    close_place(&at);
}

static void a_number_borrowed_from_nobody_is_said_to_have_no_origin(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    ts_workings_borrow(at.workings, "w", 2.0, (ts_subject){MATE, TAKE_OFF}, "w");
    at.why.index = ts_workings_count(at.workings) - 1;
    assert_page(&at, "borrowed_from_nobody");
    close_place(&at);
}

/* Without a terminal's colours the page must be the same text. */
static void colour_adds_no_column(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    ts_buffer_clear(&at.out);
    assert_int_equal(ts_why_page(&at.why, &at.page), TS_OK);
    char *plain = strdup(at.out.bytes);
    assert_non_null(plain);
    ts_buffer_clear(&at.out);
    at.page.colour = true;
    assert_int_equal(ts_why_page(&at.why, &at.page), TS_OK);
    size_t kept = 0;
    for (size_t i = 0; i < at.out.length; i++) {
        if (at.out.bytes[i] == '\033')
            i += strcspn(at.out.bytes + i, "m");
        else
            at.out.bytes[kept++] = at.out.bytes[i];
    }
    at.out.bytes[kept] = '\0';
    assert_true(kept < at.out.length);
    assert_string_equal(at.out.bytes, plain);
    free(plain);
    close_place(&at);
}

/* A chain of `count` products, each of the one before. */
static void note_a_chain(ts_workings *workings, int count)
{
    static const ts_formula x_formula = {"x", "next", "1", "2*x", "derived: definition"};
    double                  x         = 0.5;
    ts_workings_given(workings, "x", x, "1", 12);
    for (int i = 0; i < count; i++)
        x = TS_STEP(workings, x_formula, 2.0 * x, x);
}

static void a_chain_of_any_length_is_closed_in_time(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    note_a_chain(at.workings, 900);
    at.why.index = ts_workings_count(at.workings) - 1;
    assert_int_equal(ts_why_page(&at.why, &at.page), TS_OK);
    assert_non_null(strstr(at.out.bytes, "closed here; ask why drive/hp/box/input:x@take-off"));
    ts_buffer_clear(&at.out);
    ts_json json;
    ts_json_begin(&json, &at.out, true);
    assert_int_equal(ts_why_json(&at.why, TS_UNITS_METRIC, &json), TS_OK);
    close_place(&at);
}

static json_t *loaded(bench_place *at, ts_units units)
{
    ts_json json;
    ts_buffer_clear(&at->out);
    ts_json_begin(&json, &at->out, false);
    assert_int_equal(ts_why_json(&at->why, units, &json), TS_OK);
    json_t *answer = json_loadb(at->out.bytes, at->out.length, JSON_REJECT_DUPLICATES, NULL);
    assert_non_null(answer);
    return answer;
}

static json_t *note_with_id(const json_t *answer, json_int_t id)
{
    const json_t *notes = json_object_get(answer, "notes");
    for (size_t i = 0; i < json_array_size(notes); i++) {
        json_t *note = json_array_get(notes, i);
        if (json_integer_value(json_object_get(note, "id")) == id)
            return note;
    }
    return NULL;
}

static json_t *origin_of(const json_t *answer, const json_t *note, const char *symbol)
{
    const json_t *inputs = json_object_get(note, "inputs");
    for (size_t i = 0; i < json_array_size(inputs); i++) {
        const json_t *input = json_array_get(inputs, i);
        if (strcmp(json_string_value(json_object_get(input, "symbol")), symbol) == 0)
            return note_with_id(answer, json_integer_value(json_object_get(input, "origin")));
    }
    return NULL;
}

static void assert_text(const json_t *note, const char *key, const char *expected)
{
    assert_string_equal(json_string_value(json_object_get(note, key)), expected);
}

static void json_leads_from_the_root_to_the_file(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    json_t       *answer = loaded(&at, TS_UNITS_US);
    const json_t *root = note_with_id(answer, json_integer_value(json_object_get(answer, "root")));
    assert_text(answer, "address", "drive/hp/box/input:p_t@take-off");
    assert_text(root, "kind", "step");
    assert_text(root, "text", "F_t/(b*d) + F_t*k/(b*d)");
    assert_text(root, "formula", "F_t/(b\u00B7d) + F_t\u00B7k/(b\u00B7d)");
    assert_same_double(json_real_value(json_object_get(root, "value")), pressure(NULL));
    assert_text(json_object_get(root, "shown"), "unit", "ksi");
    assert_true(json_is_null(
        json_object_get(json_array_get(json_object_get(root, "inputs"), 3), "origin")));

    const json_t *force  = origin_of(answer, root, "F_t");
    const json_t *torque = origin_of(answer, force, "T");
    const json_t *pad    = origin_of(answer, torque, "T_out");
    assert_text(pad, "kind", "given");
    assert_text(pad, "symbol", "T_pad");
    assert_text(pad, "address", "drive/hp/box/clockwise/1:T_pad@take-off");
    assert_text(pad, "stands_at", "accessories/pump/torque");
    assert_text(pad, "file", "drive.yaml");
    assert_int_equal(json_integer_value(json_object_get(pad, "line")), 51);
    assert_text(pad, "says", "torque: 34 N.m  # \033[31mred\xE2\x80\xAE");
    assert_text(origin_of(answer, torque, "eta"), "source", "common practice, no source");
    assert_text(origin_of(answer, torque, "K_A"), "kind", "row");
    assert_ptr_equal(origin_of(answer, force, "d"), origin_of(answer, root, "d"));
    json_decref(answer);
    close_place(&at);
}

static void json_says_what_is_closed_and_what_is_no_number(void **state)
{
    (void)state;
    bench_place at;
    open_place(&at, NULL);
    at.why.levels  = 1;
    json_t *answer = loaded(&at, TS_UNITS_METRIC);
    assert_int_equal(json_array_size(json_object_get(answer, "notes")), 1);
    assert_true(json_is_true(
        json_object_get(json_array_get(json_object_get(answer, "notes"), 0), "closed")));
    json_decref(answer);

    ts_workings_given(at.workings, "x", (double)NAN, "m", 12);
    at.why.index = ts_workings_count(at.workings) - 1;
    answer       = loaded(&at, TS_UNITS_METRIC);
    json_t *note = json_array_get(json_object_get(answer, "notes"), 0);
    assert_true(json_is_null(json_object_get(note, "value")));
    assert_text(note, "because", "not computed");
    json_decref(answer);
    close_place(&at);
}

static void without_memory_nothing_is_lost_but_the_page(void **state)
{
    (void)state;
    faulty_allocator faulty = {.failed = 1};
    for (size_t n = 1; faulty.failed > 0; n++) {
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONWARDS);
        bench_place        at;
        open_place(&at, &allocator);
        const ts_status page = ts_why_page(&at.why, &at.page);
        ts_buffer_clear(&at.out);
        ts_json json;
        ts_json_begin(&json, &at.out, true);
        const ts_status object = ts_why_json(&at.why, TS_UNITS_METRIC, &json);
        assert_int_equal(faulty.failed > 0, page == TS_NO_MEMORY || object == TS_NO_MEMORY);
        close_place(&at);
        assert_int_equal(faulty.live_blocks, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_number_is_opened_down_to_the_lines_of_the_file),
        cmocka_unit_test(a_narrow_page_sets_what_is_right_on_a_line_of_its_own),
        cmocka_unit_test(what_is_used_again_is_opened_once_and_numbered),
        cmocka_unit_test(a_search_shows_its_equation_and_what_is_left),
        cmocka_unit_test(a_given_number_is_explained_by_its_line_alone),
        cmocka_unit_test(a_number_borrowed_from_nobody_is_said_to_have_no_origin),
        cmocka_unit_test(colour_adds_no_column),
        cmocka_unit_test(a_chain_of_any_length_is_closed_in_time),
        cmocka_unit_test(json_leads_from_the_root_to_the_file),
        cmocka_unit_test(json_says_what_is_closed_and_what_is_no_number),
        cmocka_unit_test(without_memory_nothing_is_lost_but_the_page),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
