/* Do drawn necks stay inside of their band, agree with the laws, and not mind the threads?
 *
 * ctest: threads
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/designed_neck.h"

#include "search/neck_sample.h"
#include "study/study.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const necks[] = {
    "{diameter: 7.6 mm}",
    "{diameter: 9 mm, bore: 3 mm, tolerance: 0.05 mm}",
    "{diameter: 8 mm, scatter: 8 %, breaking: brittle, shank: 14 mm, notch radius: 2 mm}",
    "{diameter: 7 mm, strength: 1100..1200 MPa, yielding: 0.7..1}",
};

enum { MANY = TS_CASES(200000, 20000) };

static const ts_neck_survey *survey(ts_study *study, size_t count, size_t threads, uint64_t seed)
{
    const ts_neck_wish wish = {count, threads, seed};
    ts_neck_survey    *all;
    size_t             found;

    assert_int_equal(ts_survey_necks(&study->select, &wish, study->arena, &all, &found), TS_OK);
    for (size_t i = 0; i < found; i++)
        if (strcmp(all[i].neck->name, "starter-generator") == 0)
            return &all[i];
    fail();
    return NULL;
}

static void the_band_contains_all_drawn_necks(void **state)
{
    (void)state;
    for (size_t n = 0; n < 4; n++) {
        ts_study             *study = study_with_neck(necks[n]);
        const ts_neck_survey *one   = survey(study, MANY / 2, 2, 7);

        assert_true(one->sampled);
        assert_int_equal(one->samples.count, MANY / 2);
        assert_int_equal(one->samples.outside, 0);
        assert_true(one->samples.least >= one->neck->band.low);
        assert_true(one->samples.most <= one->neck->band.high);
        ts_study_close(study);
    }
}

static void any_number_of_threads_gives_the_same_bits(void **state)
{
    (void)state;
    static const size_t counts[] = {1, 4095, 4096, 4097, TS_CASES(50000, 8193)};

    for (size_t c = 0; c < 5; c++) {
        ts_study             *study = study_with_neck(necks[2]);
        const ts_neck_sampled one   = survey(study, counts[c], 1, 3)->samples;
        for (size_t threads = 2; threads <= 5; threads++) {
            const ts_neck_sampled other = survey(study, counts[c], threads, 3)->samples;
            assert_memory_equal(&one, &other, sizeof one);
        }
        ts_study_close(study);
    }
}

static int ascending(const void *a, const void *b)
{
    const double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

/* The same necks, sorted as a whole; mean and deviation in two passes. */
static void quantiles_and_moments_are_those_of_the_sorted_necks(void **state)
{
    (void)state;
    enum { COUNT = 30001 };
    static double         T[COUNT];
    ts_study             *study = study_with_neck(necks[1]);
    const ts_neck_survey *one   = survey(study, COUNT, 2, 11);
    double                sum = 0.0, squares = 0.0;

    ts_drive_neck_draw(one->neck, 11, 0, COUNT, T);
    for (int i = 0; i < COUNT; i++)
        sum += T[i];
    for (int i = 0; i < COUNT; i++)
        squares += (T[i] - sum / COUNT) * (T[i] - sum / COUNT);
    assert_close(one->samples.mean, sum / COUNT, 1e-12);
    assert_close(one->samples.deviation, sqrt(squares / COUNT), 1e-9);
    qsort(T, COUNT, sizeof *T, ascending);
    assert_same_double(one->samples.least, T[0]);
    assert_same_double(one->samples.most, T[COUNT - 1]);
    /* ceil(share * 30001): 31, 301, 3001, 15001, 27001, 29701, 29971 */
    static const int ranks[TS_NECK_QUANTILES] = {31, 301, 3001, 15001, 27001, 29701, 29971};
    for (int q = 0; q < TS_NECK_QUANTILES; q++)
        assert_same_double(one->samples.quantile[q], T[ranks[q] - 1]);
    ts_study_close(study);
}

/* A count of n draws with the chance P lies within five of its standard deviations; the laws are
 * of first order, which is worth up to a third of a chance that is far from the middle. */
static void assert_agrees(size_t drawn, size_t count, double P)
{
    const double n = (double)count, free = 5.0 * sqrt(n * P * (1.0 - P)) + 0.33 * n * P + 5.0;
    assert_true(fabs((double)drawn - n * P) <= free);
}

/* Loads so near to the neck that both chances can be counted. */
static void assert_counts(const char *neck)
{
    ts_study *study = study_with_neck(neck);
    size_t    seen  = 0;

    for (double share = 0.85; share <= 1.15; share += 0.05) {
        ts_guard *guard = NULL;
        for (uint32_t g = 0; g < study->select.count; g++)
            if (study->select.guards[g].neck != TS_NOWHERE &&
                study->necks.items[study->select.guards[g].neck].designed)
                guard = &study->select.guards[g];
        assert_non_null(guard);
        ts_neck_life life;
        ts_neck_life_of(&study->select, guard, &life, NULL);
        guard->legit.T            = share * life.make.T_mid;
        guard->once.T             = share * life.make.T_mid;
        const ts_neck_survey *one = survey(study, MANY, 2, 5);
        const ts_neck_chance *law = &one->life.chance;
        assert_null(one->life.missing);
        assert_agrees(one->samples.static_early, MANY, law->static_early);
        assert_agrees(one->samples.fatigue_early, MANY, law->fatigue_early);
        assert_agrees(one->samples.early, MANY, law->early);
        assert_agrees(one->samples.late, MANY, law->late);
        seen += one->samples.late > MANY / 200 && one->samples.static_early > MANY / 200;
    }
    assert_true(seen >= 3);
    ts_study_close(study);
}

static void counted_chances_agree_with_the_laws(void **state)
{
    (void)state;
    assert_counts("{diameter: 7 mm, strength: 1000..1300 MPa, ripple: 40 %}");
    assert_counts("{diameter: 8 mm, breaking: brittle, shank: 14 mm, notch radius: 2 mm}");
    assert_counts("{diameter: 8 mm, breaking: brittle, shank: 16 mm, notch radius: 0.8 mm}");
}

/* First order: to a few parts of a hundred.  A coarse tolerance and a sharp brittle notch are the
 * two whose share the law could miss. */
static void drawn_moments_are_those_of_the_law(void **state)
{
    (void)state;
    static const char *const some[] = {
        "{diameter: 7.6 mm}",
        "{diameter: 8 mm, tolerance: 0.6 mm}",
        "{diameter: 8 mm, breaking: brittle, shank: 14 mm, notch radius: 2 mm}",
        "{diameter: 8 mm, breaking: brittle, shank: 16 mm, notch radius: 0.8 mm}",
    };

    for (size_t n = 0; n < sizeof some / sizeof some[0]; n++) {
        ts_study             *study = study_with_neck(some[n]);
        const ts_neck_survey *one   = survey(study, MANY, 2, 5);

        assert_null(one->life.missing);
        assert_close(one->life.make.T_mid, one->samples.mean, 0.01);
        assert_close(one->life.make.cov, one->samples.deviation / one->samples.mean, 0.03);
        ts_study_close(study);
    }
}

static void another_seed_is_another_million(void **state)
{
    (void)state;
    ts_study    *study = study_with_neck(necks[0]);
    const double one   = survey(study, 1000, 1, 1)->samples.mean;

    assert_true(one != survey(study, 1000, 1, 2)->samples.mean);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_band_contains_all_drawn_necks),
        cmocka_unit_test(any_number_of_threads_gives_the_same_bits),
        cmocka_unit_test(quantiles_and_moments_are_those_of_the_sorted_necks),
        cmocka_unit_test(counted_chances_agree_with_the_laws),
        cmocka_unit_test(drawn_moments_are_those_of_the_law),
        cmocka_unit_test(another_seed_is_another_million),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
