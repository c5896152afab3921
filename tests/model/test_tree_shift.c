/* Is a tree that was moved along with one changed value the tree of the new text?
 *
 * The second route is the parser itself, over the new text.
 */
#include "model/tree_shift.h"

#include "model/tree_read.h"
#include "support/case_count.h"
#include "support/read_file.h"
#include "support/same_tree.h"
#include "support/sequence.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

typedef struct changed {
    ts_arena       *lasting; /* of the old text */
    ts_arena       *arena;   /* of the new one  */
    ts_diagnostics *list;
    ts_text         old, now;
    ts_source       before, moved, read;
} changed;

/* As that of a study, whose values were read: their marks in the nodes are not the tree's. */
static void read_values(changed *c)
{
    const ts_file_places places = {"drive.yaml", c->lasting,
                                   ts_diagnostics_open(c->lasting, "drive.yaml", c->old),
                                   &c->before};
    ts_model             model;

    (void)ts_read_nodes(TS_WANT_EITHER, &places, &model);
}

static void open_text(changed *c, ts_text old)
{
    *c      = (changed){.lasting = ts_arena_open(NULL), .arena = ts_arena_open(NULL), .old = old};
    c->list = ts_diagnostics_open(c->lasting, "drive.yaml", old);
    assert_int_equal(ts_read_tree(old, "drive.yaml", c->lasting, c->list, &c->before), TS_OK);
    assert_int_equal(ts_diagnostics_count(c->list), 0);
    read_values(c);
}

static void close_text(changed *c)
{
    ts_arena_close(c->arena);
    ts_arena_close(c->lasting);
}

/* bytes[from, to) become `with`. */
static ts_text exchanged(const changed *c, size_t from, size_t to, ts_text with)
{
    const size_t length = c->old.length - (to - from) + with.length;
    char        *bytes  = ts_arena_take(c->arena, length + 1, 1);

    memcpy(bytes, c->old.at, from);
    memcpy(bytes + from, with.at, with.length);
    memcpy(bytes + from + with.length, c->old.at + to, c->old.length - to);
    return (ts_text){bytes, length};
}

static ts_status shift_to(changed *c, ts_text now)
{
    const ts_file_places places = {"drive.yaml", c->arena, c->list, &c->moved};

    c->now                 = now;
    const ts_status status = ts_shift_tree(&c->before, now, &places);
    assert_int_equal(ts_diagnostics_count(c->list), 0);
    return status;
}

static const char *differs(const ts_source *a, const ts_source *b)
{
    const char *what = same_tree(a, b);
    return what != NULL ? what : "nothing";
}

/* What was moved is what the parser reads, without a message. */
static void assert_moved_is_read(changed *c)
{
    ts_diagnostics *fresh = ts_diagnostics_open(c->arena, "drive.yaml", c->now);

    assert_int_equal(ts_read_tree(c->now, "drive.yaml", c->arena, fresh, &c->read), TS_OK);
    assert_int_equal(ts_diagnostics_count(fresh), 0);
    assert_string_equal(differs(&c->moved, &c->read), "nothing");
}

static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                    "examples/medium.yaml", "examples/large.yaml"};

static const char *const values[] = {"7", "61", "1234.5 kW", "a", "0.25 mm", "12e3", "two words"};

/* Every so many of the plain values of a file gives way to another. */
static void change_values(const char *path, size_t step, size_t *moved)
{
    const ts_text bytes = read_file(path);
    changed       c;

    open_text(&c, bytes);
    for (ts_node i = 1; i <= c.before.node_count; i += (ts_node)step) {
        const ts_node_place *place = &c.before.nodes[i];
        const ts_text        value = ts_text_of(values[i % (sizeof values / sizeof *values)]);
        ts_arena_empty(c.arena);
        if (place->form == TS_NODE_SCALAR && place->quote == 0 && place->start < place->end &&
            shift_to(&c, exchanged(&c, place->start, place->end, value)) == TS_OK) {
            assert_moved_is_read(&c);
            ++*moved;
        }
    }
    close_text(&c);
    free_file(bytes);
}

static void a_tree_moved_along_is_the_tree_that_is_read(void **state)
{
    size_t moved = 0;

    (void)state;
    for (size_t k = 0; k < sizeof files / sizeof *files; k++)
        change_values(files[k], TS_CASES(2, 17), &moved);
    assert_true(moved > TS_CASES(400, 40));
}

/* Bytes that shape YAML, among others. */
static const char shapes[] = "0123456789abz. ,:#-[]{}'\"&*!|>%@`~?\n\t/_+=";

/* One to three bytes anywhere come, go or change: whatever is moved along must be right. */
static void what_is_moved_after_any_edit_is_what_is_read(void **state)
{
    const ts_text bytes  = read_file("examples/trainer.yaml");
    sequence      random = {11};
    size_t        moved  = 0;
    changed       c;

    (void)state;
    open_text(&c, bytes);
    for (int i = 0; i < TS_CASES(20000, 2000); i++) {
        char         with[3] = {0};
        const size_t come    = sequence_below(&random, 4);
        const size_t from    = sequence_below(&random, bytes.length - 3);
        const size_t to      = from + sequence_below(&random, 3);
        for (size_t k = 0; k < come; k++)
            with[k] = shapes[sequence_below(&random, sizeof shapes - 1)];
        ts_arena_empty(c.arena);
        if (shift_to(&c, exchanged(&c, from, to, (ts_text){with, come})) == TS_OK) {
            assert_moved_is_read(&c);
            moved++;
        }
    }
    assert_true(moved > TS_CASES(200, 20)); /* else nothing was tried */
    close_text(&c);
    free_file(bytes);
}

static ts_status shifted(const char *old, const char *now)
{
    changed c;

    open_text(&c, ts_text_of(old));
    const ts_status status = shift_to(&c, ts_text_of(now));
    if (status == TS_OK)
        assert_moved_is_read(&c);
    close_text(&c);
    return status;
}

static void only_one_plain_value_may_have_changed(void **state)
{
    (void)state;
    assert_int_equal(shifted("a: 1\nb: 2\n", "a: 10\nb: 2\n"), TS_OK);
    assert_int_equal(shifted("a: [1, 2, {c: 3}] # 1\n", "a: [1, 25, {c: 3}] # 1\n"), TS_OK);
    assert_int_equal(shifted("a: 1 \xC2\xB0\nb: 2\n", "a: 1 \xC2\xB0\nb: 20\n"), TS_OK);
    assert_int_equal(shifted("a: 1", "a: 12"), TS_OK);
    /* two of them, a key, a comment, quotes, nothing, a line more */
    assert_int_equal(shifted("a: 1\nb: 2\n", "a: 3\nb: 4\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1\nb: 2\n", "ac: 1\nb: 2\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1 # x\n", "a: 1 # y\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: '1'\n", "a: '2'\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1\n", "a: \n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1\n", "a: 1\nb: 2\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1\n", "a: 1\n"), TS_NOT_UNDERSTOOD);
    /* bytes that would shape the file, and a text that the reader folds */
    assert_int_equal(shifted("a: 1\n", "a: 1: 2\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1\n", "a: - 1\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: 1\n", "a: 1 #2\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: one\n  two\n", "a: one\n  three\n"), TS_NOT_UNDERSTOOD);
}

static void a_number_that_a_comma_cuts_is_left_to_the_reader(void **state)
{
    (void)state;
    assert_int_equal(shifted("a: {b: 2 mm,25 mm}\n", "a: {b: 2,25 mm}\n"), TS_NOT_UNDERSTOOD);
    assert_int_equal(shifted("a: {b: 2 mm,25 mm}\n", "a: {b: 3 mm,25 mm}\n"), TS_OK);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_tree_moved_along_is_the_tree_that_is_read),
        cmocka_unit_test(what_is_moved_after_any_edit_is_what_is_read),
        cmocka_unit_test(only_one_plain_value_may_have_changed),
        cmocka_unit_test(a_number_that_a_comma_cuts_is_left_to_the_reader),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
