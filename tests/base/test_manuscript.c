/* Does a manuscript keep what it is given, in order? */
#include "support/close.h"
#include "support/faulty_allocator.h"

#include "base/manuscript.h"

#include <string.h>

static void build(ts_manuscript *manuscript)
{
    static const ts_column columns[] = {{"pad", false}, {"rpm", true}};
    ts_manuscript_heading(manuscript, 1, "Speeds");
    ts_manuscript_heading(manuscript, 2, "Of pads");
    ts_manuscript_table(manuscript, "caption", columns, 2);
    for (int row = 0; row < 50; row++) {
        ts_manuscript_cell(manuscript, TS_TEXT("fuel pump"));
        ts_manuscript_cell(manuscript, TS_TEXT("6412"));
    }
    ts_manuscript_heading(manuscript, 2, "Of shafts");
    ts_manuscript_heading(manuscript, 1, "Teeth");
    ts_manuscript_item(manuscript, TS_BLOCK_FAINT, NULL, "an item without a sign");
    ts_manuscript_figure(manuscript, "teeth", NULL, "a picture");
}

static void headings_are_numbered_by_level(void **state)
{
    static const char *const labels[] = {"1", "1.1", "1.2", "2"};
    ts_arena                *arena    = ts_arena_open(NULL);
    ts_manuscript            manuscript;
    size_t                   seen = 0;
    (void)state;
    ts_manuscript_begin(&manuscript, arena);
    build(&manuscript);
    assert_false(manuscript.failed);
    for (const ts_block *block = manuscript.first; block != NULL; block = block->next)
        if (block->kind == TS_BLOCK_HEADING)
            assert_string_equal(block->label, labels[seen++]);
    assert_int_equal(seen, 4);
    ts_arena_close(arena);
}

static void tables_keep_every_cell(void **state)
{
    ts_arena     *arena = ts_arena_open(NULL);
    ts_manuscript manuscript;
    (void)state;
    ts_manuscript_begin(&manuscript, arena);
    build(&manuscript);
    for (const ts_block *block = manuscript.first; block != NULL; block = block->next) {
        if (block->kind != TS_BLOCK_TABLE)
            continue;
        assert_int_equal(ts_block_rows(block), 50);
        for (size_t row = 0; row < 50; row++) {
            assert_string_equal(block->cells[2 * row], "fuel pump");
            assert_string_equal(block->cells[2 * row + 1], "6412");
        }
    }
    ts_arena_close(arena);
}

/* An arena takes large pieces, so the requests that can fail are few. */
static void memory_that_runs_out_is_said(void **state)
{
    (void)state;
    for (size_t n = 1; n < 40; n++) {
        faulty_allocator   faulty;
        ts_manuscript      manuscript;
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
        ts_arena          *arena     = ts_arena_open(&allocator);
        if (arena == NULL)
            continue;
        ts_manuscript_begin(&manuscript, arena);
        build(&manuscript);
        assert_true(manuscript.failed == (faulty.failed > 0));
        ts_arena_close(arena);
        assert_int_equal(faulty.live_blocks, 0);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(headings_are_numbered_by_level),
        cmocka_unit_test(tables_keep_every_cell),
        cmocka_unit_test(memory_that_runs_out_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
