/* Does the verifier accept what holds and name what does not, and agree with plain enumeration? */
#include "arrange/brute.h"
#include "arrange/random_problem.h"
#include "search/arrange_verify.h"
#include "support/case_count.h"
#include "support/close.h"

enum { PROBLEMS = TS_CASES(150, 50) };

static random_problem problem;

static void draw(uint64_t seed)
{
    const random_wish wish = {.accessories = 3 + seed % 4,
                              .boxes       = 1 + seed % 2,
                              .modules     = 2,
                              .z_in        = 3,
                              .narrow      = true};
    random_problem_make(&problem, seed, &wish);
}

static bool solve(uint64_t seed, ts_arrange_result *result)
{
    const ts_arrange_wish wish = {.workers = 1};
    draw(seed);
    assert_int_equal(ts_arrange_search(&problem.problem, &wish, result), TS_OK);
    if (result->count > 0)
        return true;
    ts_arrange_result_close(result);
    return false;
}

static void answers_and_certificates_hold(void **state)
{
    size_t held = 0;
    (void)state;
    for (uint64_t seed = 1; seed <= PROBLEMS; seed++) {
        ts_arrange_result r;
        if (!solve(seed, &r))
            continue;
        const ts_certificate_check check = ts_arrange_check_certificate(&problem.problem, &r);
        assert_string_equal(ts_arrange_rule_says(check.answer), "every rule holds");
        assert_int_equal(check.missing, 0);
        assert_int_equal(check.not_closed, 0);
        held++;
        ts_arrange_result_close(&r);
    }
    assert_true(held > PROBLEMS / 3);
}

static void a_certificate_with_a_hole_is_seen(void **state)
{
    ts_arrange_result r;
    uint64_t          seed = 1;
    (void)state;
    while (!solve(seed, &r))
        seed++;
    r.pairs[0].choice = r.pairs[1].choice;
    assert_int_equal(ts_arrange_check_certificate(&problem.problem, &r).missing, 2);
    r.pairs[0].end   = TS_PAIR_BY_BOUND;
    r.pairs[0].bound = 0.5 * r.bound;
    assert_int_equal(ts_arrange_check_certificate(&problem.problem, &r).not_closed, 1);
    r.pairs[0].end = TS_PAIR_OPEN;
    assert_int_equal(ts_arrange_check_certificate(&problem.problem, &r).not_closed, 1);
    ts_arrange_result_close(&r);
}

/* Shafts of an arrangement that are there, the input first. */
static ts_arranged_shaft *shaft_at(ts_arrangement *a, uint64_t index)
{
    for (size_t b = 0; b < TS_ARRANGE_BOXES; b++) {
        if (!a->boxes[b].present)
            continue;
        if (index-- == 0)
            return &a->boxes[b].input;
        for (int side = 0; side < 2; side++)
            for (uint32_t i = 0; i < a->boxes[b].branches[side].count; i++)
                if (index-- == 0)
                    return &a->boxes[b].branches[side].shafts[i];
    }
    return NULL;
}

/* Other teeth, widths, faces: whatever plain enumeration's judge refuses, the verifier refuses. */
static void broken_answers_are_refused(void **state)
{
    size_t refused[TS_RULE_MASS + 1] = {0};
    (void)state;
    for (uint64_t seed = 1; seed <= PROBLEMS; seed++) {
        ts_arrange_result r;
        if (!solve(seed, &r))
            continue;
        for (uint64_t k = 0; k < 30; k++) {
            ts_arrangement     a = r.answers[0];
            ts_arranged_shaft *s = shaft_at(&a, k / 6);
            if (s == NULL)
                break;
            switch (k % 6) {
            case 0:
                s->z += 1;
                break;
            case 1:
                s->width -= 0.5e-3;
                break;
            case 2: {
                const int8_t front = s->front;
                s->front           = s->rear;
                s->rear            = front;
                break;
            }
            case 3:
                s->front = s->rear = -1;
                break;
            case 4:
                s->z -= 1;
                break;
            default:
                a.mass *= 1.0 + 1e-7;
                break;
            }
            const ts_arrange_rule rule = ts_arrange_verify(&problem.problem, &a);
            if (s->front == s->rear && k % 6 == 2)
                continue; /* an idler turned round is the same */
            if (k % 6 == 1 || k % 6 == 3 || k % 6 == 5)
                if (k % 6 != 3 || shaft_at(&r.answers[0], k / 6)->front >= 0 ||
                    shaft_at(&r.answers[0], k / 6)->rear >= 0)
                    assert_int_not_equal(rule, TS_RULE_NONE);
            if (isinf(brute_mass(&problem.problem, &a)) && k % 6 != 1)
                assert_int_not_equal(rule, TS_RULE_NONE);
            refused[rule]++;
        }
        ts_arrange_result_close(&r);
    }
    assert_true(refused[TS_RULE_SPEED] > 0 && refused[TS_RULE_SENSE] > 0);
    assert_true(refused[TS_RULE_WIDTH] > 0 && refused[TS_RULE_MASS] > 0);
    assert_true(refused[TS_RULE_PLACED] > 0 && refused[TS_RULE_HUNTING] > 0);
    assert_true(refused[TS_RULE_FACE] > 0 && refused[TS_RULE_TEETH] > 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {cmocka_unit_test(answers_and_certificates_hold),
                                       cmocka_unit_test(a_certificate_with_a_hole_is_seen),
                                       cmocka_unit_test(broken_answers_are_refused)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
