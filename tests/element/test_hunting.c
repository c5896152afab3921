/* Which teeth meet, and is the nearest hunting pair really the nearest? */
#include "element/hunting.h"
#include "support/close.h"

#include <stdlib.h>

/* derived: gcd 7; bank case hunting-21-35. */
static void common_factor_shortens_the_period(void **state)
{
    (void)state;
    const ts_hunting hunt = ts_hunting_of(21, 35);

    assert_int_equal(hunt.gcd, 7);
    assert_false(hunt.hunts);
    assert_int_equal(hunt.turns_1, 5);
    assert_int_equal(hunt.turns_2, 3);
    assert_int_equal(hunt.meshes, 105);
    assert_int_equal(hunt.meets_1, 5);
    assert_int_equal(hunt.meets_2, 3);
    assert_int_equal(hunt.assemblies, 7);
    assert_close(hunt.share, 7.0 / 735.0, 1e-15);
}

/* A second route: step the mesh tooth by tooth and write down who meets whom. */
static void stepping_the_mesh_gives_the_same_period(void **state)
{
    (void)state;
    static const int pairs[][2] = {{23, 67}, {20, 60}, {18, 54}, {24, 90},
                                   {31, 64}, {17, 17}, {1, 9}};

    for (size_t p = 0; p < sizeof pairs / sizeof pairs[0]; p++) {
        const int        z_1 = pairs[p][0], z_2 = pairs[p][1];
        const ts_hunting hunt  = ts_hunting_of(z_1, z_2);
        int              steps = 0, others = 0;
        bool             met[128] = {false};

        do {
            if (steps % z_1 == 0 && !met[steps % z_2]) {
                met[steps % z_2] = true;
                others++;
            }
            steps++;
        } while (steps % z_1 != 0 || steps % z_2 != 0);
        assert_int_equal(steps, hunt.meshes);
        assert_int_equal(others, hunt.meets_1);
        for (int i = 0; i < z_2; i++)
            assert_int_equal(ts_teeth_meet(z_1, z_2, 0, i), met[i]);
    }
}

/* Bank case comb-hunting-tooth (derived there); a web glossary prints 30 Hz, which is wrong. */
static void teeth_of_23_and_67_meet_less_than_once_in_two_seconds(void **state)
{
    (void)state;
    assert_close(ts_hunting_frequency(1800.0 / 60.0, 23, 67, NULL), 0.44776119403, 1e-10);
    /* derived: 24 and 36 share 12, so a pair meets every 3 turns of the gear of 24 */
    assert_close(ts_hunting_frequency(30.0, 24, 36, NULL), 10.0, 1e-14);
}

static double size_of_error(const ts_tooth_pair *pair)
{
    return fabs(ts_rational_value(pair->error));
}

static void nearest_pairs_come_first_and_all_hunt(void **state)
{
    (void)state;
    ts_tooth_pair pair[12];
    const size_t  found = ts_hunting_pairs(40, 60, 3, 17, pair, 12);

    assert_true(found > 12);
    for (size_t i = 0; i < 12; i++) {
        assert_int_equal(ts_gcd((uint64_t)pair[i].z_1, (uint64_t)pair[i].z_2), 1);
        assert_true(abs(pair[i].z_1 - 40) <= 3 && abs(pair[i].z_2 - 60) <= 3);
        assert_int_equal(pair[i].change, abs(pair[i].z_1 - 40) + abs(pair[i].z_2 - 60));
        assert_close_abs(ts_rational_value(pair[i].error),
                         (double)pair[i].z_2 / pair[i].z_1 / 1.5 - 1.0, 1e-15);
        if (i > 0)
            assert_true(size_of_error(&pair[i]) >= size_of_error(&pair[i - 1]));
    }
}

/* A second route: every pair of the square, compared in doubles. */
static void no_pair_of_the_square_is_nearer(void **state)
{
    (void)state;
    for (int z_1 = 18; z_1 < 60; z_1 += 5) {
        for (int z_2 = 20; z_2 < 110; z_2 += 9) {
            ts_tooth_pair best;
            double        least = 1e9;

            assert_true(ts_hunting_pairs(z_1, z_2, 2, 17, &best, 1) > 0);
            for (int a = z_1 - 2; a <= z_1 + 2; a++)
                for (int b = z_2 - 2; b <= z_2 + 2; b++)
                    if (a >= 17 && b >= 17 && ts_gcd((uint64_t)a, (uint64_t)b) == 1)
                        least = fmin(least, fabs((double)b * z_1 / ((double)a * z_2) - 1.0));
            assert_close_abs(size_of_error(&best), least, 1e-15);
        }
    }
}

static void pair_that_hunts_already_is_its_own_nearest(void **state)
{
    (void)state;
    ts_tooth_pair best;

    ts_hunting_pairs(43, 46, 3, 17, &best, 1);
    assert_int_equal(best.z_1, 43);
    assert_int_equal(best.z_2, 46);
    assert_int_equal(best.error.over, 0);
    assert_int_equal(best.change, 0);
}

static void least_tooth_number_bounds_the_search(void **state)
{
    (void)state;
    ts_tooth_pair pair[100];
    const size_t  found = ts_hunting_pairs(18, 36, 4, 17, pair, 100);

    for (size_t i = 0; i < found; i++)
        assert_true(pair[i].z_1 >= 17);
    assert_int_equal(ts_hunting_pairs(10, 10, 2, 17, pair, 100), 0);
    assert_int_equal(ts_hunting_pairs(18, 36, 4, 17, NULL, 0), found);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(common_factor_shortens_the_period),
        cmocka_unit_test(stepping_the_mesh_gives_the_same_period),
        cmocka_unit_test(teeth_of_23_and_67_meet_less_than_once_in_two_seconds),
        cmocka_unit_test(nearest_pairs_come_first_and_all_hunt),
        cmocka_unit_test(no_pair_of_the_square_is_nearer),
        cmocka_unit_test(pair_that_hunts_already_is_its_own_nearest),
        cmocka_unit_test(least_tooth_number_bounds_the_search),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
