/* Do the diameters that sizing chooses balance, and keep the rules about necks? */
#include "support/case_count.h"
#include "support/close.h"
#include "support/designed_neck.h"

#include "search/neck_diameter.h"
#include "study/study.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const ts_neck_choice *find(ts_study *study, double step)
{
    const ts_neck_rig   rig = {&study->drive, &study->lines, &study->splines, &study->necks,
                               &study->select};
    static ts_neck_plan plan;

    assert_int_equal(ts_find_neck_diameters(&rig, step, study->arena, &plan), TS_OK);
    for (size_t i = 0; i < plan.count; i++)
        if (strcmp(study->necks.items[study->select.guards[plan.choices[i].guard].neck].name,
                   "starter-generator") == 0)
            return &plan.choices[i];
    return NULL;
}

static double log_worse(const ts_neck_chance *chance)
{
    return log(fmax(chance->early, chance->late));
}

/* Of all steps between a half and twice the diameter, by rating each. */
static double best_by_brute_force(ts_study *study, const ts_neck_choice *choice, double step)
{
    const ts_guard *guard = &study->select.guards[choice->guard];
    const ts_neck  *told  = study->necks.items[guard->neck].neck;
    ts_neck         neck  = *told;
    double          best = (double)INFINITY, found = (double)NAN;

    study->necks.items[guard->neck].neck = &neck;
    for (long n = lround(0.5 * choice->after.d / step); n <= lround(2.0 * choice->after.d / step);
         n++) {
        ts_neck_life life;
        neck.diameter.value = (double)n * step;
        ts_necks_solve(&study->drive, &study->necks, NULL);
        ts_neck_life_of(&study->select, guard, &life, NULL);
        const double         f    = study->select.f;
        const ts_neck_limits band = study->necks.items[guard->neck].band;
        if (life.missing != NULL || band.low < f * guard->legit.T ||
            band.high > guard->once.T / f || !(log_worse(&life.chance) < best))
            continue;
        best  = log_worse(&life.chance);
        found = neck.diameter.value;
    }
    study->necks.items[guard->neck].neck = told;
    return found;
}

static void no_other_step_has_a_smaller_worse_chance(void **state)
{
    (void)state;
    static const char *const necks[] = {
        "{diameter: 7.6 mm}",
        "{diameter: 20 mm, bore: 4 mm}",
        "{diameter: 8 mm, shank: 16 mm, notch radius: 2.5 mm}",
        "{diameter: 8 mm, scatter: 12 %, breaking: brittle, shank: 14 mm, notch radius: 2 mm}",
    };
    static const double steps[] = {0.05e-3, 0.2e-3};

    for (size_t n = 0; n < 4; n++)
        for (size_t s = TS_CASES(0, n % 2); s < TS_CASES(2, n % 2 + 1); s++) {
            ts_study             *study  = study_with_neck(necks[n]);
            const ts_neck_choice *choice = find(study, steps[s]);

            assert_non_null(choice);
            assert_int_not_equal(choice->need, TS_NECK_KEPT);
            assert_close(choice->after.d, best_by_brute_force(study, choice, steps[s]), 1e-12);
            ts_study_close(study);
        }
}

/* Where the chances are equal in a continuous search, the step is the nearest on either side. */
static void the_step_lies_beside_the_balance(void **state)
{
    (void)state;
    ts_study             *study  = study_with_neck("{diameter: 8 mm}");
    const ts_neck_choice *choice = find(study, 0.05e-3);

    assert_int_equal(choice->need, TS_NECK_BALANCED);
    assert_true(fabs(choice->after.d - choice->balance) < 0.05e-3);
    assert_true(choice->before.chance.early > choice->after.chance.early);
    assert_close(choice->before.d, 8e-3, 1e-15);
    ts_study_close(study);
}

/* A heavier overload leaves less room: what must pass sets the diameter, then nothing holds. */
static void a_hard_rule_outranks_the_balance(void **state)
{
    (void)state;
    int by_load = 0, none = 0;

    for (double f = 1.25; f < 4.0; f += TS_CASES(0.05, 0.25)) {
        ts_study *study                       = study_with_neck("{diameter: 9 mm}");
        study->drive.limits.neck_factor.value = f;
        assert_int_equal(ts_study_solve(study), TS_OK);
        const ts_neck_choice *choice = find(study, 0.05e-3);
        if (choice->need == TS_NECK_NONE)
            none++;
        else {
            assert_true(choice->after.band.low >= f * 45.0);
            assert_true(choice->after.band.high <= choice->T_most);
            assert_int_equal(none, 0);
        }
        by_load += choice->need == TS_NECK_BY_LOAD || choice->need == TS_NECK_BY_WAY;
        ts_study_close(study);
    }
    assert_true(by_load > 0 && none > 0);
}

static void a_stated_band_is_kept(void **state)
{
    (void)state;
    ts_study             *study  = study_with_neck("{breaks: 60..74 N.m}");
    const ts_neck_choice *choice = find(study, 0.05e-3);

    assert_int_equal(choice->need, TS_NECK_KEPT);
    assert_string_equal(choice->why, "a neck with a diameter");
    ts_study_close(study);
}

/* `check` of the chosen diameters stands before the very same parts: splines among them. */
static void the_wall_is_the_one_that_check_judges_with(void **state)
{
    (void)state;
    ts_study             *study  = study_with_neck("{diameter: 8 mm}\n    spline: AS972");
    const ts_neck_choice *choice = find(study, 0.05e-3);

    assert_int_not_equal(choice->need, TS_NECK_KEPT);
    const ts_guard           guard  = study->select.guards[choice->guard];
    const double             d      = choice->after.d;
    const ts_part_capacities parts  = study->select.parts;
    const ts_pad            *pad    = &study->train.pads[guard.pad];
    bool                     spline = false;
    for (size_t i = 0; i < parts.count; i++)
        spline = spline || parts.items[i].kind == TS_PART_SPLINE;
    assert_true(spline);

    study->drive.accessories[pad->accessory].neck.diameter.value = d;
    assert_int_equal(ts_study_solve(study), TS_OK);
    assert_int_equal(study->select.parts.count, parts.count);
    assert_true(study->select.guards[choice->guard].once.T == guard.once.T);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_other_step_has_a_smaller_worse_chance),
        cmocka_unit_test(the_step_lies_beside_the_balance),
        cmocka_unit_test(a_hard_rule_outranks_the_balance),
        cmocka_unit_test(a_stated_band_is_kept),
        cmocka_unit_test(the_wall_is_the_one_that_check_judges_with),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
