/* Does the search find what trying everything finds: the same optimum, the same number of ways?
 *
 * 520 invented problems by a fixed seed (30 under the sanitizers), 325 more with step shafts, and
 * 208 with two take-offs a box to choose from, 406 in which wrap and servicing count; TS_SOAK=20
 * makes 20 times as many.
 *
 * ctest: timeout=1200 cost=30
 */
#include "arrange/brute.h"
#include "arrange/random_problem.h"
#include "search/arrange_search.h"
#include "search/arrange_verify.h"
#include "support/case_count.h"
#include "support/close.h"

#include <stdio.h>
#include <stdlib.h>

enum { PROBLEMS = TS_CASES(520, 30), STEPS_MOST = TS_CASES(25000, 15000) };

static size_t problems(void)
{
    const char *soak = getenv("TS_SOAK");
    return PROBLEMS * (soak != NULL ? (size_t)atoi(soak) : 1);
}

static random_problem problem;
static brute_answer   brute;

typedef struct kind {
    size_t steps;
    bool   take_offs, weights;
} kind;

static void draw(uint64_t seed, const kind *of)
{
    const random_wish wish = {.accessories = 1 + seed % (of->steps > 0 ? 4 : 5),
                              .boxes       = 1 + seed / 5 % 2,
                              .modules     = 1 + seed / 3 % 3,
                              .z_in        = 1 + seed / 7 % 3,
                              .narrow      = true,
                              .steps       = of->steps,
                              .take_offs   = of->take_offs,
                              .weights     = of->weights};
    random_problem_make(&problem, seed, &wish);
}

static bool has_step(const ts_arrangement *a)
{
    for (size_t b = 0; b < problem.problem.box_count; b++)
        for (int side = 0; side < 2; side++)
            for (uint32_t i = 0; i < a->boxes[b].branches[side].count; i++)
                if (a->boxes[b].present && a->boxes[b].branches[side].shafts[i].z_step > 0)
                    return true;
    return false;
}

/* How many of the boxes that are there take the second take-off. */
static size_t second_take_offs(const ts_arrangement *a)
{
    size_t count = 0;
    for (size_t b = 0; b < problem.problem.box_count; b++)
        count +=
            a->boxes[b].present ? problem.problem.boxes[b].choices[a->boxes[b].choice].take_off : 0;
    return count;
}

typedef struct tally {
    size_t feasible, infeasible, skipped, stepped, second, moved;
} tally;

/* Do the weights decide, in a problem that has any? */
static bool is_another_without_weights(const ts_arrangement *found)
{
    const ts_arrange_wish wish  = {.workers = 1};
    ts_arrange_problem    plain = problem.problem;
    ts_arrange_result     result;
    plain.wrap_weight = plain.servicing_weight = 0.0;
    if (problem.problem.wrap_weight + problem.problem.servicing_weight == 0.0)
        return false;
    assert_int_equal(ts_arrange_search(&plain, &wish, &result), TS_OK);
    const ts_arrange_account own   = ts_arrange_account_of(&problem.problem, found);
    const double             added = own.for_wrap + own.for_servicing, mass = own.mass;
    const bool               moved = mass > result.answers[0].mass * (1.0 + 1e-9);
    assert_true(added >= 0.0);
    assert_true(result.answers[0].mass <= mass * (1.0 + 1e-9));
    assert_close(brute_mass(&plain, found), mass, 1e-9);
    ts_arrange_result_close(&result);
    return moved;
}

/* Both ways to the same answer; false: too large to try. */
static bool compare(uint64_t seed, tally *sum)
{
    const ts_arrange_wish wish = {.workers = 1};
    ts_arrange_result     result;
    uint64_t              count = 0;

    brute_solve(&problem.problem, STEPS_MOST, &brute);
    if (brute.gave_up)
        return false;
    assert_int_equal(ts_arrange_search(&problem.problem, &wish, &result), TS_OK);
    assert_int_equal(ts_arrange_count(&problem.problem, &wish, &count), TS_OK);
    if (count != brute.count || (result.count > 0) != (brute.count > 0))
        print_error("seed %llu\n", (unsigned long long)seed);
    assert_int_equal(count, brute.count);
    assert_int_equal(result.end, TS_ARRANGE_PROVEN);
    assert_int_equal(result.count, brute.count > 0 ? 1 : 0);
    if (brute.count > 0) {
        assert_close(result.answers[0].mass, brute.mass, 1e-9);
        assert_close(brute_mass(&problem.problem, &result.answers[0]), brute.mass, 1e-9);
        assert_int_equal(ts_arrange_verify(&problem.problem, &result.answers[0]), TS_RULE_NONE);
        /* Enumeration writes no widths down; every rule that is judged before them holds. */
        assert_int_equal(ts_arrange_verify(&problem.problem, &brute.best), TS_RULE_WIDTH);
        sum->moved += is_another_without_weights(&result.answers[0]) ? 1 : 0;
        sum->feasible++;
        sum->stepped += has_step(&result.answers[0]) ? 1 : 0;
        sum->second += second_take_offs(&result.answers[0]);
    } else {
        sum->infeasible++;
    }
    ts_arrange_result_close(&result);
    return true;
}

static tally compare_many(size_t problem_count, const kind *of)
{
    tally sum = {0};
    for (uint64_t seed = 1; sum.feasible + sum.infeasible < problem_count; seed++) {
        draw(seed, of);
        /* A model that is asked for each set anew must come to the same, with what it says of gears
         * for bounds and without. */
        if (seed % 4 == 3)
            problem.problem.model.least = NULL;
        problem.problem.model.proportional = of->steps == 0 || seed % 2 == 0;
        sum.skipped += compare(seed, &sum) ? 0 : 1;
    }
    print_message("%zu feasible, %zu infeasible, %zu too large to try, %zu with a step shaft, %zu "
                  "boxes with a second take-off, %zu moved by weights\n",
                  sum.feasible, sum.infeasible, sum.skipped, sum.stepped, sum.second, sum.moved);
    return sum;
}

static void all_agree(void **state)
{
    (void)state;
    const tally sum = compare_many(problems(), &(kind){0});
    assert_true(sum.feasible >= problems() / 4);
    assert_true(sum.infeasible >= problems() / 10);
}

/* As many accessories as before would be too many to try. */
static void all_agree_with_step_shafts(void **state)
{
    (void)state;
    const size_t count = problems() * 5 / 8;
    const tally  sum   = compare_many(count, &(kind){.steps = 3});
    assert_true(sum.feasible >= count / 4);
    assert_true(sum.infeasible >= count / 10);
    assert_true(sum.stepped >= count / 40);
}

static void all_agree_with_take_offs(void **state)
{
    (void)state;
    const size_t count = problems() * 2 / 5;
    const tally  sum   = compare_many(count, &(kind){.take_offs = true});
    assert_true(sum.feasible >= count / 4);
    assert_true(sum.second >= count / 10);
}

/* Where wrap and servicing count, so much that another arrangement is often the best. */
static void all_agree_with_weights(void **state)
{
    (void)state;
    const size_t count = problems() * 5 / 8;
    const tally  plain = compare_many(count, &(kind){.weights = true});
    const tally  more  = compare_many(count / 4, &(kind){.weights = true, .steps = 3});
    assert_true(plain.feasible >= count / 4 && plain.moved >= count / 40);
    assert_true(more.stepped >= count / 80);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(all_agree), cmocka_unit_test(all_agree_with_step_shafts),
        cmocka_unit_test(all_agree_with_take_offs), cmocka_unit_test(all_agree_with_weights)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
