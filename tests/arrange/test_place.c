/* Does the search find what trying everything finds where somebody must sit on the input, or share
 * a shaft?
 */
#include "arrange/brute.h"
#include "arrange/random_problem.h"
#include "search/arrange_search.h"
#include "search/arrange_verify.h"
#include "support/case_count.h"
#include "support/close.h"

#include <stdio.h>

enum {
    PROBLEMS   = TS_CASES(200, 30),
    FEASIBLE   = TS_CASES(20, 2),
    STEPS_MOST = TS_CASES(25000, 15000)
};

static random_problem problem;
static brute_answer   brute;

/* The invented problem with one more demand: of the input, or of company. */
static void draw(uint64_t seed, ts_arrange_accessory *own)
{
    const random_wish wish = {.accessories = 2 + seed % 2,
                              .boxes       = 1 + seed / 5 % 2,
                              .modules     = 1,
                              .z_in        = 1 + seed / 7 % 3,
                              .narrow      = true};
    random_problem_make(&problem, seed, &wish);
    const size_t count = problem.problem.accessory_count;
    for (size_t i = 0; i < count; i++) {
        own[i]       = problem.problem.accessories[i];
        own[i].faces = TS_FACE_FRONT | TS_FACE_REAR;
        own[i].sense = i % 2 == 0 ? 0 : own[i].sense;
        for (size_t c = 0; c < RANDOM_CONDITIONS; c++) {
            problem.least[i][c] *= 0.5; /* so that some do fit */
            problem.most[i][c] *= 2.0;
        }
    }
    for (size_t b = 0; b < problem.problem.box_count; b++)
        problem.boxes[b].input_faces = TS_FACE_FRONT | TS_FACE_REAR;
    if (seed % 2 == 0) {
        own[seed % count].input = true;
    } else {
        const size_t a = seed % count, b = (a + 1) % count;
        own[a].with = 1u << b;
        own[b].with = 1u << a;
    }
    problem.problem.accessories = own;
}

static void demanded_places_agree_with_trying_everything(void **state)
{
    size_t feasible = 0, infeasible = 0;

    (void)state;
    for (uint64_t seed = 1; feasible < FEASIBLE || feasible + infeasible < PROBLEMS; seed++) {
        const ts_arrange_wish wish = {.workers = 1};
        ts_arrange_result     result;
        uint64_t              count = 0;
        ts_arrange_accessory  own[TS_ARRANGE_ACCESSORIES];

        draw(seed, own);
        brute_solve(&problem.problem, STEPS_MOST, &brute);
        if (brute.gave_up)
            continue;
        assert_int_equal(ts_arrange_search(&problem.problem, &wish, &result), TS_OK);
        assert_int_equal(ts_arrange_count(&problem.problem, &wish, &count), TS_OK);
        assert_int_equal(count, brute.count);
        assert_int_equal(result.count, brute.count > 0 ? 1 : 0);
        if (brute.count > 0) {
            assert_close(result.answers[0].mass, brute.mass, 1e-9);
            assert_int_equal(ts_arrange_verify(&problem.problem, &result.answers[0]), TS_RULE_NONE);
            feasible++;
        } else {
            infeasible++;
        }
        ts_arrange_result_close(&result);
    }
    print_message("%zu feasible, %zu infeasible\n", feasible, infeasible);
    assert_true(infeasible >= PROBLEMS / 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(demanded_places_agree_with_trying_everything)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
