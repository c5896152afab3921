/* Is each flaw of a pair told by itself, and of the gear that has it?
 *
 * Derived: a sound pair is given one bad number after the other.
 */
#include "element/pair_flaw.h"

#include "support/close.h"

#include <math.h>

static const ts_pair_bounds bounds = {.s_an_least = 0.2, .eps_alpha_least = 1.1};

static ts_cylindrical_pair sound(void)
{
    const ts_cylindrical_pair_input in = {.z_1     = 27,
                                          .z_2     = 41,
                                          .m_n     = 2e-3,
                                          .alpha_n = 20.0 * 3.14159265358979323846 / 180.0,
                                          .b_1     = 20e-3,
                                          .b_2     = 20e-3,
                                          .rack    = ts_basic_rack_A};
    ts_cylindrical_pair             pair;

    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    assert_int_equal(ts_pair_flaws(&pair, &bounds), 0);
    assert_int_equal(ts_pair_flaws_of(&in, &bounds), 0);
    return pair;
}

/* What is told when the number at `where` of a sound pair is `value`. */
#define FLAWS_WITH(where, value)                                                                   \
    (pair = sound(), pair.where = (value), ts_pair_flaws(&pair, &bounds))

static void each_flaw_is_told_of_its_gear(void **state)
{
    (void)state;
    ts_cylindrical_pair pair;
    const double        hair = 1e-9, thin = 0.2 * 2e-3;

    assert_int_equal(FLAWS_WITH(s_an1, thin - hair), TS_FLAW_TIP_1);
    assert_int_equal(FLAWS_WITH(s_an2, thin - hair), TS_FLAW_TIP_2);
    assert_int_equal(FLAWS_WITH(s_an1, thin + hair), 0);
    assert_int_equal(FLAWS_WITH(s_an2, thin + hair), 0);
    assert_int_equal(FLAWS_WITH(clear_Ff1, -hair), TS_FLAW_ROOT_1);
    assert_int_equal(FLAWS_WITH(clear_Ff2, -hair), TS_FLAW_ROOT_2);
    assert_int_equal(FLAWS_WITH(c_1, 0.0), TS_FLAW_TOUCH);
    assert_int_equal(FLAWS_WITH(c_2, -hair), TS_FLAW_TOUCH);
    assert_int_equal(FLAWS_WITH(c_1, hair), 0);
    assert_int_equal(FLAWS_WITH(c_2, hair), 0);
    assert_int_equal(FLAWS_WITH(eps_alpha, 1.1 - hair), TS_FLAW_LETS_GO);
    assert_int_equal(FLAWS_WITH(eps_alpha, 1.1 + hair), 0);
}

static void what_is_not_known_is_a_flaw(void **state)
{
    (void)state;
    ts_cylindrical_pair pair;
    const double        nan = (double)NAN;

    assert_int_equal(FLAWS_WITH(s_an1, nan), TS_FLAW_TIP_1);
    assert_int_equal(FLAWS_WITH(s_an2, nan), TS_FLAW_TIP_2);
    assert_int_equal(FLAWS_WITH(c_1, nan), TS_FLAW_TOUCH);
    assert_int_equal(FLAWS_WITH(c_2, nan), TS_FLAW_TOUCH);
    assert_int_equal(FLAWS_WITH(eps_alpha, nan), TS_FLAW_LETS_GO);
}

static void a_pair_that_cannot_be_solved_has_every_flaw(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound().in;

    in.m_n = 0.0;
    assert_int_equal(ts_pair_flaws_of(&in, &bounds), TS_PAIR_FLAWS_ALL);
}

/* Derived: at the bound the working angle is nothing, below it there is none. */
static void below_the_bound_of_shifts_no_gears_mesh(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in    = sound().in;
    ts_cylindrical_pair       pair  = {0};
    const double              bound = ts_shift_sum_bound(&in);

    assert_true(bound < 0.0);
    in.x_1 = in.x_2 = bound / 2.0 * (1.0 + 1e-6);
    assert_int_not_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    in.x_1 = in.x_2 = bound / 2.0 * (1.0 - 1e-6);
    ts_cylindrical_pair_solve(&in, &pair, NULL);
    assert_true(isnan(pair.alpha_wt) || pair.alpha_wt < 0.02);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(each_flaw_is_told_of_its_gear),
        cmocka_unit_test(what_is_not_known_is_a_flaw),
        cmocka_unit_test(a_pair_that_cannot_be_solved_has_every_flaw),
        cmocka_unit_test(below_the_bound_of_shifts_no_gears_mesh),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
