/* Does the answer change as it must when the problem changes?
 *
 * 300 invented problems a relation (30 under the sanitizers), many too large to enumerate, each
 * against its mirror image, relabelled, with another demand, with more power, and with more weight
 * on wrap or servicing; wrap and servicing count in every third.
 *
 * ctest: timeout=1200
 */
#include "arrange/brute.h"
#include "arrange/random_problem.h"
#include "search/arrange_search.h"
#include "support/case_count.h"
#include "support/close.h"

#include <stdlib.h>

enum { PROBLEMS = TS_CASES(300, 30) };

static random_problem problem, other;

static size_t problems(void)
{
    const char *soak = getenv("TS_SOAK");
    return PROBLEMS * (soak != NULL ? (size_t)atoi(soak) : 1);
}

static random_wish wish_of(uint64_t seed)
{
    return (random_wish){.accessories = 2 + seed % 5,
                         .boxes       = 1 + seed / 5 % 2,
                         .modules     = 1 + seed / 3 % 2,
                         .z_in        = 1 + seed / 7 % 2,
                         .narrow      = true,
                         .weights     = seed % 3 == 0};
}

/* Infinite when there is none; the answer is re-costed by other code. */
static double lightest(const random_problem *r, size_t workers)
{
    const ts_arrange_wish wish = {.workers = workers};
    ts_arrange_result     result;

    assert_int_equal(ts_arrange_search(&r->problem, &wish, &result), TS_OK);
    assert_int_equal(result.end, TS_ARRANGE_PROVEN);
    const double mass = result.count > 0 ? result.answers[0].mass : (double)INFINITY;
    if (result.count > 0)
        assert_close(brute_mass(&r->problem, &result.answers[0]), mass, 1e-9);
    ts_arrange_result_close(&result);
    return mass;
}

static void assert_same_mass(double a, double b)
{
    if (isinf(a) || isinf(b))
        assert_true(isinf(a) && isinf(b));
    else
        assert_close(a, b, 1e-9);
}

static void draw(random_problem *r, uint64_t seed)
{
    const random_wish wish = wish_of(seed);
    random_problem_make(r, seed, &wish);
}

/* Left becomes right and front stays front, so that every sense turns round. */
static void mirror_image_weighs_the_same(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= problems(); seed++) {
        draw(&problem, seed);
        draw(&other, seed);
        for (size_t a = 0; a < other.problem.accessory_count; a++) {
            ts_arrange_accessory *each = &other.accessories[a];
            each->sense                = -each->sense;
            if (each->side != TS_SIDE_ANY)
                each->side = each->side == TS_SIDE_LEFT ? TS_SIDE_RIGHT : TS_SIDE_LEFT;
        }
        for (size_t b = 0; b < other.problem.box_count; b++)
            other.boxes[b].input_sense = -other.boxes[b].input_sense;
        assert_same_mass(lightest(&problem, 1), lightest(&other, 1));
    }
}

static void relabelling_changes_nothing(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= problems(); seed++) {
        draw(&problem, seed);
        draw(&other, seed);
        const size_t n = other.problem.accessory_count;
        for (size_t a = 0; a < n; a++)
            other.accessories[a] = problem.accessories[n - 1 - a];
        assert_same_mass(lightest(&problem, 1), lightest(&other, 1));
    }
}

/* Each time another demand is made harder. */
static void another_demand_never_lowers_the_mass(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= problems(); seed++) {
        draw(&problem, seed);
        draw(&other, seed);
        ts_arrange_accessory *a = &other.accessories[seed % other.problem.accessory_count];
        switch (seed % 8) {
        case 0:
            a->faces &= 1;
            break;
        case 1:
            a->sense = a->sense != 0 ? a->sense : 1;
            break;
        case 2:
            a->body_radius *= 1.2;
            break;
        case 3:
            a->side = a->side != TS_SIDE_ANY ? a->side : TS_SIDE_LEFT;
            break;
        case 4:
            other.boxes[0].wrap_most *= 0.8;
            break;
        case 5:
            other.problem.hunting = true;
            break;
        case 6:
            other.problem.width_least *= 1.5;
            break;
        default:
            other.problem.gap *= 3.0;
            break;
        }
        const double free = lightest(&problem, 1), bound = lightest(&other, 1);
        assert_true(bound >= free * (1.0 - 1e-9));
    }
}

static void more_power_never_lowers_the_mass(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= problems(); seed++) {
        draw(&problem, seed);
        draw(&other, seed);
        for (size_t a = 0; a < other.problem.accessory_count; a++)
            for (size_t c = 0; c < RANDOM_CONDITIONS; c++)
                other.power[a][c] *= 1.5;
        assert_true(lightest(&other, 1) >= lightest(&problem, 1) * (1.0 - 1e-9));
    }
}

static void more_weight_never_lowers_what_counts(void **state)
{
    (void)state;
    for (uint64_t seed = 3; seed <= 3 * problems(); seed += 3) { /* those that have weights */
        draw(&problem, seed);
        draw(&other, seed);
        other.problem.wrap_weight += seed % 2 == 0 ? 1.5 : 0.0;
        other.problem.servicing_weight += seed % 2 == 0 ? 0.0 : 0.05;
        assert_true(lightest(&other, 1) >= lightest(&problem, 1) * (1.0 - 1e-9));
    }
}

/* The whole answer, and every count of the certificate. */
static void any_number_of_threads_gives_the_same_answer(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 40; seed++) {
        draw(&problem, seed);
        ts_arrange_result one, three;
        ts_arrange_wish   wish = {.workers = 1, .answers = 3};
        assert_int_equal(ts_arrange_search(&problem.problem, &wish, &one), TS_OK);
        wish.workers = 3;
        assert_int_equal(ts_arrange_search(&problem.problem, &wish, &three), TS_OK);
        assert_int_equal(one.count, three.count);
        if (one.count > 0)
            assert_memory_equal(one.answers, three.answers, one.count * sizeof *one.answers);
        assert_memory_equal(&one.labels, &three.labels, sizeof one.labels);
        assert_memory_equal(one.pairs, three.pairs, one.pair_count * sizeof *one.pairs);
        assert_int_equal(one.labels.made,
                         one.labels.kept + one.labels.cut_by_bound + one.labels.cut_by_dominance);
        ts_arrange_result_close(&one);
        ts_arrange_result_close(&three);
    }
}

static bool is_turned(const ts_arranged_branch *a, const ts_arranged_branch *b)
{
    if (a->count != b->count)
        return false;
    for (uint32_t i = 0; i < a->count; i++)
        if (a->shafts[i].front != b->shafts[i].front || a->shafts[i].rear != b->shafts[i].rear)
            return false;
    return true;
}

/* Each answer holds by itself, none is lighter than the one before, and no two are alike. */
static void next_best_differ_and_come_by_mass(void **state)
{
    size_t several = 0;
    (void)state;
    for (uint64_t seed = 1; seed <= 60; seed++) {
        const ts_arrange_wish wish = {.workers = 1, .answers = 4};
        ts_arrange_result     r;
        draw(&problem, seed);
        const double best = lightest(&problem, 1);
        assert_int_equal(ts_arrange_search(&problem.problem, &wish, &r), TS_OK);
        assert_same_mass(r.count > 0 ? r.answers[0].mass : (double)INFINITY, best);
        several += r.count > 1 ? 1 : 0;
        for (size_t i = 0; i < r.count; i++) {
            assert_close(brute_mass(&problem.problem, &r.answers[i]), r.answers[i].mass, 1e-9);
            for (size_t k = 0; k < i; k++) {
                assert_true(r.answers[k].mass <= r.answers[i].mass * (1.0 + 1e-9));
                bool same = true;
                for (size_t b = 0; b < problem.problem.box_count; b++) {
                    const ts_arranged_box *x = &r.answers[i].boxes[b], *y = &r.answers[k].boxes[b];
                    same = same && x->present == y->present &&
                           (!x->present ||
                            (x->input.front == y->input.front && x->input.rear == y->input.rear &&
                             is_turned(&x->branches[0], &y->branches[0]) &&
                             is_turned(&x->branches[1], &y->branches[1])));
                }
                assert_false(same && problem.problem.idlers_in_row == 0);
            }
        }
        ts_arrange_result_close(&r);
    }
    assert_true(several > 10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(mirror_image_weighs_the_same),
        cmocka_unit_test(relabelling_changes_nothing),
        cmocka_unit_test(another_demand_never_lowers_the_mass),
        cmocka_unit_test(more_power_never_lowers_the_mass),
        cmocka_unit_test(more_weight_never_lowers_what_counts),
        cmocka_unit_test(any_number_of_threads_gives_the_same_answer),
        cmocka_unit_test(next_best_differ_and_come_by_mass),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
