/* Does an edit change one value and no other byte? */
#include "model/edit.h"
#include "model/opened_drive.h"
#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

typedef struct edited {
    ts_arena       *arena;
    ts_diagnostics *list;
    ts_buffer       out;
    ts_status       status;
} edited;

static void edit_bytes(edited *e, ts_text bytes, const char *address, const char *value)
{
    e->arena = ts_arena_open(NULL);
    e->list  = ts_diagnostics_open(e->arena, "drive.yaml", bytes);
    ts_buffer_open(&e->out, NULL);
    if (value != NULL)
        e->status = ts_edit_set(bytes, "drive.yaml", ts_text_of(address), ts_text_of(value),
                                e->arena, e->list, &e->out);
    else
        e->status =
            ts_edit_unset(bytes, "drive.yaml", ts_text_of(address), e->arena, e->list, &e->out);
    assert_int_equal(e->status == TS_OK, ts_diagnostics_count(e->list) == 0);
    assert_int_equal(e->status == TS_OK, e->out.length > 0);
}

static void forget(edited *e)
{
    ts_buffer_close(&e->out);
    ts_arena_close(e->arena);
}

static ts_text out_of(const edited *e)
{
    return (ts_text){e->out.bytes, e->out.length};
}

/* Is `after` what `before` becomes when the `old` at byte `at` turns into `new`? */
static bool is_exchange(ts_text before, ts_text after, size_t at, const char *old, const char *new)
{
    const size_t tail = before.length - at - strlen(old);
    return before.length - strlen(old) == after.length - strlen(new) &&
           memcmp(before.at, after.at, at) == 0 && memcmp(after.at + at, new, strlen(new)) == 0 &&
           memcmp(before.at + before.length - tail, after.at + after.length - tail, tail) == 0;
}

/* The edit succeeds, and `old` at one place became `new` and nothing else. */
static void assert_edit(ts_text bytes, const char *address, const char *value, const char *old,
                        const char *new)
{
    edited e;
    bool   found = false;
    edit_bytes(&e, bytes, address, value);
    if (e.status != TS_OK)
        fail_msg("%s: %s", address, ts_diagnostics_at(e.list, 0)->says);
    for (const char *at = strstr(bytes.at, old); at != NULL && !found; at = strstr(at + 1, old))
        found = is_exchange(bytes, out_of(&e), (size_t)(at - bytes.at), old, new);
    if (!found)
        fail_msg("%s = %s: `%s` did not become `%s`:\n%s", address, value != NULL ? value : "-",
                 old, new, e.out.bytes);
    forget(&e);
}

static const char *refusal(ts_text bytes, const char *address, const char *value)
{
    static char code[64];
    edited      e;
    edit_bytes(&e, bytes, address, value);
    assert_int_equal(e.status, TS_NOT_UNDERSTOOD);
    const ts_diagnostic *first = ts_diagnostics_at(e.list, 0);
    assert_true(first->line >= 1 && first->column >= 1);
    strncpy(code, first->code, sizeof code - 1);
    forget(&e);
    return code;
}

static ts_text sample;

/* ---- replacing ------------------------------------------------------------------------------ */

static void one_value_is_replaced_and_its_comment_stays(void **state)
{
    (void)state;
    assert_edit(sample, "accessories/fuel pump/for", "aircraft", "for: engine                    #",
                "for: aircraft                    #");
    assert_edit(sample, "drive/hp/box/clockwise/2/teeth", "47", "{teeth: 45, face",
                "{teeth: 47, face");
    assert_edit(sample, "drive/hp/take-off/bevels/teeth/2", "47", "[43, 46]", "[43, 47]");
    assert_edit(sample, "drive/hp/take-off/bevels/teeth", "[41, 47]", "[43, 46]", "[41, 47]");
    assert_edit(sample, "conditions/crank/hp", "2700 rpm", "{hp: 2600 rpm", "{hp: 2700 rpm");
}

static void quotes_stay_where_they_were(void **state)
{
    (void)state;
    assert_edit(sample, "drive/hp/tower shaft/clock", "5:30", "\"6:00\", length: 305",
                "\"5:30\", length: 305");
    assert_edit(sample, "waived/1/why", "none better",
                "\"existing wheel re-used; wear shown on rig\"", "\"none better\"");
}

static void value_that_needs_quotes_gets_them(void **state)
{
    (void)state;
    assert_edit(sample, "title", "Drive: the second", "title: Corncrake 33, accessory drive",
                "title: 'Drive: the second'");
    assert_edit(sample, "accessories/fuel pump/serves", "it's #1", "serves: engine fuel",
                "serves: 'it''s #1'");
    assert_edit(sample, "assumptions/1/source", "review, second", "source: design review",
                "source: 'review, second'");
    assert_edit(sample, "assumptions/1/says", "a \"hot\" day", "\"oil at 90 degC throughout\"",
                "\"a \\\"hot\\\" day\"");
}

static void long_form_keeps_its_source(void **state)
{
    (void)state;
    assert_edit(sample, "accessories/starter/mass", "12 kg", "{value: 11 kg,", "{value: 12 kg,");
    assert_edit(sample, "accessories/starter/mass/confidence", "high", "confidence: low",
                "confidence: high");
}

static void short_form_becomes_long_when_it_gets_a_source(void **state)
{
    (void)state;
    assert_edit(sample, "accessories/fuel pump/mass/source", "scales, twice", "mass: 9.4 kg",
                "mass: {value: 9.4 kg, source: 'scales, twice'}");
}

/* ---- adding --------------------------------------------------------------------------------- */

static void new_key_is_written_as_its_neighbours_are(void **state)
{
    (void)state;
    assert_edit(sample, "accessories/hydraulic pump/mass", "14 kg",
                "    body: {radius: 80 mm, length: unknown}\n",
                "    body: {radius: 80 mm, length: unknown}\n    mass: 14 kg\n");
    assert_edit(sample, "drive/hp/box/clockwise/2/shift", "0.1", "{teeth: 45, face: 14 mm}",
                "{teeth: 45, face: 14 mm, shift: 0.1}");
    assert_edit(sample, "drive/hp/box/anticlockwise/2/name", "spin", "from: gear}\n",
                "from: gear}\n          name: spin\n");
    assert_edit(sample, "accessories/fuel pump/speed/cruise", "..7100 rpm", "always: ..7600 rpm}",
                "always: ..7600 rpm, cruise: ..7100 rpm}");
}

static void new_clock_is_quoted_for_older_readers(void **state)
{
    (void)state;
    assert_edit(sample, "drive/hp/box/clockwise/2/toward", "7:30", "{teeth: 45, face: 14 mm}",
                "{teeth: 45, face: 14 mm, toward: \"7:30\"}");
}

static void record_comes_with_its_first_key(void **state)
{
    (void)state;
    assert_edit(sample, "accessories/breather/neck/breaks", "10..12 N.m",
                "  breather:\n    for: engine\n    turns: either\n    power: {take-off: 1 kW}\n",
                "  breather:\n    for: engine\n    turns: either\n    power: {take-off: 1 kW}\n"
                "    neck: {breaks: 10..12 N.m}\n");
}

static void next_item_of_a_list_is_added(void **state)
{
    (void)state;
    assert_edit(sample, "drive/hp/box/clockwise/4", "{teeth: 41, face: 9 mm}",
                "rear: hydraulic pump}\n",
                "rear: hydraulic pump}\n        - {teeth: 41, face: 9 mm}\n");
    assert_string_equal(refusal(sample, "drive/hp/box/clockwise/5", "{teeth: 41, face: 9 mm}"),
                        "no-such-place");
}

/* ---- removing ------------------------------------------------------------------------------- */

static void optional_key_is_removed(void **state)
{
    (void)state;
    assert_edit(sample, "accessories/fuel pump/mass", NULL, "    mass: 9.4 kg\n", "");
    assert_edit(sample, "drive/hp/tower shaft/mid bearing", NULL, ", mid bearing: 150 mm}", "}");
    assert_edit(sample, "drive/hp/box/input/rear", NULL, ", rear: starter}", "}");
    assert_edit(sample, "conditions/crank/events", NULL, ",     events: 18000}", "}");
    assert_edit(sample, "spools/hp/cranked", NULL, "cranked: yes, ", "");
    assert_edit(sample, "drive/hp/take-off/float", NULL, "      float: splined stub\n", "");
    assert_edit(sample, "drive/hp/box/anticlockwise/2/branch/2", NULL,
                "            - {teeth: 33, face: 8 mm, front: hand turning, from: gear}\n", "");
}

static void required_key_is_not_removed(void **state)
{
    (void)state;
    assert_string_equal(refusal(sample, "drive/hp/box/input/teeth", NULL), "missing-key");
    assert_string_equal(refusal(sample, "title", NULL), "missing-key");
    assert_string_equal(refusal(sample, "accessories/breather/power/take-off", NULL),
                        "not-removable");
}

/* ---- refusing ------------------------------------------------------------------------------- */

static void edit_that_breaks_the_file_is_refused(void **state)
{
    (void)state;
    assert_string_equal(refusal(sample, "drive/hp/box/input/teeth", "4"), "out-of-range");
    assert_string_equal(refusal(sample, "drive/hp/box/input/rear", "startr"), "unknown-accessory");
    assert_string_equal(refusal(sample, "drive/hp/box/input/rear", "fuel pump"), "pad-used-twice");
    assert_string_equal(refusal(sample, "drive/hp/box/input/teeht", "40"), "unknown-key");
    assert_string_equal(refusal(sample, "drive/hp/box", "40"), "not-one-value");
    assert_string_equal(refusal(sample, "drive/hp/box/clockwise/2:sigma_F@take-off", "40"),
                        "not-a-value");
    assert_string_equal(refusal(sample, "nothing/here/at/all", "40"), "no-such-place");
    assert_string_equal(refusal(sample, "title", "two\nlines"), "not-one-line");
    assert_string_equal(refusal(sample, "title", ""), "not-one-line");
    assert_string_equal(refusal(sample, "", "40"), "no-such-place");
}

static void faulty_file_may_be_mended(void **state)
{
    (void)state;
    static const char faulty[] = "towershaft: 2\ntitle: a\nspools: {hp: {turns: cw}}\n";
    edited            e;
    edit_bytes(&e, TS_TEXT(faulty), "towershaft", "1");
    assert_int_equal(e.status, TS_OK);
    assert_string_equal(e.out.bytes, "towershaft: 1\ntitle: a\nspools: {hp: {turns: cw}}\n");
    forget(&e);
    assert_string_equal(refusal(TS_TEXT(faulty), "title", "b"), "missing-key");
    assert_string_equal(refusal(TS_TEXT("a: [b\n"), "a", "b"), "open-bracket");
}

/* ---- properties ----------------------------------------------------------------------------- */

/* Every scalar of the file, in turn. */
static void assert_each_value_set_to_itself_is_the_same_file(ts_text bytes)
{
    opened_drive opened;
    open_bytes(&opened, bytes);
    size_t seen = 0;
    for (ts_node node = 1; node <= opened.source.node_count; node++) {
        const ts_node_place *place = &opened.source.nodes[node];
        if (place->form != TS_NODE_SCALAR)
            continue;
        ts_buffer address, value;
        ts_buffer_open(&address, NULL);
        ts_buffer_open(&value, NULL);
        ts_source_address(&opened.source, node, &address);
        ts_buffer_text(&value, place->scalar);
        edited e;
        edit_bytes(&e, bytes, address.bytes, value.bytes);
        assert_int_equal(e.status, TS_OK);
        assert_true(ts_text_equal(out_of(&e), bytes));
        forget(&e);
        ts_buffer_close(&address);
        ts_buffer_close(&value);
        seen++;
    }
    assert_true(seen > 150);
    close_drive(&opened);
}

static void setting_a_value_to_itself_changes_nothing(void **state)
{
    (void)state;
    assert_each_value_set_to_itself_is_the_same_file(sample);
}

/* Numbers of the file moved a little: the rest of the bytes stays, and going back is exact. */
static void setting_and_setting_back_changes_nothing(void **state)
{
    (void)state;
    opened_drive opened;
    open_bytes(&opened, sample);
    size_t changed = 0;
    for (ts_node node = 1; node <= opened.source.node_count; node++) {
        const ts_node_place *place = &opened.source.nodes[node];
        if (place->form != TS_NODE_SCALAR || place->scalar.length == 0 ||
            place->scalar.at[0] < '1' || place->scalar.at[0] > '8')
            continue;
        ts_buffer address, old, new;
        ts_buffer_open(&address, NULL);
        ts_buffer_open(&old, NULL);
        ts_buffer_open(&new, NULL);
        ts_source_address(&opened.source, node, &address);
        ts_buffer_text(&old, place->scalar);
        ts_buffer_text(&new, place->scalar);
        new.bytes[0]++; /* the first digit, one higher */
        edited e, back;
        edit_bytes(&e, sample, address.bytes, new.bytes);
        if (e.status == TS_OK) {
            const size_t tail = sample.length - place->end;
            assert_memory_equal(e.out.bytes, sample.at, place->start);
            assert_memory_equal(e.out.bytes + e.out.length - tail, sample.at + place->end, tail);
            edit_bytes(&back, out_of(&e), address.bytes, old.bytes);
            assert_int_equal(back.status, TS_OK);
            assert_true(ts_text_equal(out_of(&back), sample));
            forget(&back);
            changed++;
        }
        forget(&e);
        ts_buffer_close(&address);
        ts_buffer_close(&old);
        ts_buffer_close(&new);
    }
    assert_true(changed > 100);
    close_drive(&opened);
}

static void adding_and_removing_changes_nothing(void **state)
{
    (void)state;
    static const struct {
        const char *address, *value;
    } cases[] = {
        {"accessories/hydraulic pump/mass", "14 kg"},
        {"accessories/hand crank/serves", "the mechanics"},
        {"drive/hp/box/clockwise/2/shift", "0.1"},
        {"drive/hp/box/anticlockwise/2/name", "spin"},
        {"accessories/fuel pump/speed/cruise", "..7100 rpm"},
        {"drive/hp/box/clockwise/4", "{teeth: 41, face: 9 mm}"},
        {"drive/lp/tower shaft/mid bearing", "200 mm"},
        {"engine/keep out/2", "{clock: \"7:00\", radius: 400 mm, size: 20 mm}"},
        {"limits/neck factor", "1.4"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        edited e, back;
        edit_bytes(&e, sample, cases[i].address, cases[i].value);
        if (e.status != TS_OK)
            fail_msg("%s: %s", cases[i].address, ts_diagnostics_at(e.list, 0)->says);
        edit_bytes(&back, out_of(&e), cases[i].address, NULL);
        assert_int_equal(back.status, TS_OK);
        assert_true(ts_text_equal(out_of(&back), sample));
        forget(&back);
        forget(&e);
    }
}

static void quotes_that_were_added_go_again(void **state)
{
    (void)state;
    static const char *const values[] = {"a: b", "it's #1", "# c", "x, y: z", " blank ", "[a"};
    for (size_t i = 0; i < sizeof values / sizeof values[0]; i++) {
        edited e, back;
        edit_bytes(&e, sample, "title", values[i]);
        assert_int_equal(e.status, TS_OK);
        opened_drive opened;
        open_bytes(&opened, out_of(&e));
        assert_string_equal(opened.drive.title.text, values[i]);
        close_drive(&opened);
        edit_bytes(&back, out_of(&e), "title", "Corncrake 33, accessory drive");
        assert_true(ts_text_equal(out_of(&back), sample));
        forget(&back);
        forget(&e);
    }
}

/* ---- line ends ------------------------------------------------------------------------------ */

/* The sample with CR LF; the last line end is left out when `open` is set. */
static ts_buffer in_crlf(bool open)
{
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    for (size_t i = 0; i < sample.length; i++) {
        if (sample.at[i] == '\n' && !(open && i + 1 == sample.length))
            ts_buffer_add(&out, "\r\n");
        else if (sample.at[i] != '\n')
            ts_buffer_bytes(&out, sample.at + i, 1);
    }
    return out;
}

static void line_ends_of_the_file_are_kept(void **state)
{
    (void)state;
    ts_buffer     crlf  = in_crlf(false);
    const ts_text bytes = {crlf.bytes, crlf.length};
    assert_each_value_set_to_itself_is_the_same_file(bytes);
    assert_edit(bytes, "accessories/fuel pump/mass", NULL, "    mass: 9.4 kg\r\n", "");
    assert_edit(bytes, "accessories/hydraulic pump/mass", "14 kg", "length: unknown}\r\n",
                "length: unknown}\r\n    mass: 14 kg\r\n");
    ts_buffer_close(&crlf);
}

static void file_without_a_last_line_end_stays_without(void **state)
{
    (void)state;
    ts_buffer     open  = in_crlf(true);
    const ts_text bytes = {open.bytes, open.length};
    const char   *item  = "{rule: X1-other, at: drive/hp, why: no reason}";
    edited        e, back;
    edit_bytes(&e, bytes, "waived/2", item);
    assert_int_equal(e.status, TS_OK);
    assert_string_equal(e.out.bytes + e.out.length - strlen(item), item);
    edit_bytes(&back, out_of(&e), "waived/2", NULL);
    assert_true(ts_text_equal(out_of(&back), bytes));
    forget(&back);
    forget(&e);
    ts_buffer_close(&open);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_value_is_replaced_and_its_comment_stays),
        cmocka_unit_test(quotes_stay_where_they_were),
        cmocka_unit_test(value_that_needs_quotes_gets_them),
        cmocka_unit_test(long_form_keeps_its_source),
        cmocka_unit_test(short_form_becomes_long_when_it_gets_a_source),
        cmocka_unit_test(new_key_is_written_as_its_neighbours_are),
        cmocka_unit_test(new_clock_is_quoted_for_older_readers),
        cmocka_unit_test(record_comes_with_its_first_key),
        cmocka_unit_test(next_item_of_a_list_is_added),
        cmocka_unit_test(optional_key_is_removed),
        cmocka_unit_test(required_key_is_not_removed),
        cmocka_unit_test(edit_that_breaks_the_file_is_refused),
        cmocka_unit_test(faulty_file_may_be_mended),
        cmocka_unit_test(setting_a_value_to_itself_changes_nothing),
        cmocka_unit_test(setting_and_setting_back_changes_nothing),
        cmocka_unit_test(adding_and_removing_changes_nothing),
        cmocka_unit_test(quotes_that_were_added_go_again),
        cmocka_unit_test(line_ends_of_the_file_are_kept),
        cmocka_unit_test(file_without_a_last_line_end_stays_without),
    };
    sample           = read_file(SAMPLE);
    const int failed = cmocka_run_group_tests(tests, NULL, NULL);
    free_file(sample);
    return failed;
}
