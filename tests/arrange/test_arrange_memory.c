/* What happens to a search when memory runs out, at whichever request, or at a limit? */
#include "arrange/random_problem.h"
#include "search/arrange_conflict.h"
#include "support/case_count.h"
#include "support/close.h"
#include "support/faulty_allocator.h"

enum { STRIDE = TS_CASES(1, 7) };

static random_problem problem;

static void draw(size_t accessories, size_t boxes)
{
    const random_wish wish = {
        .accessories = accessories, .boxes = boxes, .modules = 1, .z_in = 2, .narrow = true};
    ts_arrange_result     r;
    const ts_arrange_wish how = {.workers = 1};
    for (uint64_t seed = 1;; seed++) {
        random_problem_make(&problem, seed, &wish);
        assert_int_equal(ts_arrange_search(&problem.problem, &how, &r), TS_OK);
        const bool found = r.count > 0;
        ts_arrange_result_close(&r);
        if (found)
            return;
    }
}

static void no_failed_request_leaks_or_lies(void **state)
{
    (void)state;
    for (size_t boxes = 1; boxes <= 2; boxes++) {
        draw(3, boxes);
        ts_arrange_wish   how = {.workers = 1};
        ts_arrange_result whole;
        assert_int_equal(ts_arrange_search(&problem.problem, &how, &whole), TS_OK);
        for (size_t n = 1;; n += STRIDE) {
            faulty_allocator   faulty;
            const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
            ts_arrange_result  r;
            how.allocator          = &allocator;
            const ts_status status = ts_arrange_search(&problem.problem, &how, &r);
            if (status == TS_OK && r.end == TS_ARRANGE_PROVEN)
                assert_same_double(r.answers[0].mass, whole.answers[0].mass);
            if (status == TS_OK && r.end == TS_ARRANGE_NO_MEMORY)
                assert_true(r.bound <= whole.answers[0].mass * (1.0 + 1e-9));
            if (status == TS_OK)
                ts_arrange_result_close(&r);
            assert_true(status == TS_OK || status == TS_NO_MEMORY);
            assert_int_equal(faulty.live_blocks, 0);
            if (faulty.failed == 0)
                break;
        }
        ts_arrange_result_close(&whole);
    }
}

static void a_limit_is_kept_and_said(void **state)
{
    (void)state;
    draw(5, 1);
    ts_arrange_wish   how = {.workers = 1};
    ts_arrange_result whole, r;
    assert_int_equal(ts_arrange_search(&problem.problem, &how, &whole), TS_OK);
    for (size_t part = 1; part < 8; part++) {
        how.memory_most        = whole.most_bytes * part / 8;
        const ts_status status = ts_arrange_search(&problem.problem, &how, &r);
        assert_true(status == TS_OK || status == TS_NO_MEMORY);
        if (status != TS_OK)
            continue;
        assert_true(r.most_bytes <= how.memory_most);
        assert_int_equal(r.end, TS_ARRANGE_NO_MEMORY);
        assert_true(r.bound <= whole.answers[0].mass * (1.0 + 1e-9));
        ts_arrange_result_close(&r);
    }
    ts_arrange_result_close(&whole);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(no_failed_request_leaks_or_lies),
                                       cmocka_unit_test(a_limit_is_kept_and_said)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
