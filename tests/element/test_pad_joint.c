/* Do the bolts of a pad follow from what pulls at them, in any unit?
 *
 * Derived: the formulas are products, so that scaled causes give scaled effects, and nothing is
 * special about forces or moduli below one newton or one pascal.
 */
#include "element/pad_joint.h"

#include "support/close.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static void a_turn_stretches_a_bolt_by_its_pitch(void **state)
{
    (void)state;
    const double L = 30e-3, A_s = 20e-6, E = 205e9, pitch = 1e-3, F_i = 9e3;
    const double stretch = F_i * L / (A_s * E);

    assert_close(ts_bolt_turn(F_i, L, A_s, E, pitch, NULL), 2.0 * pi * stretch / pitch, 1e-14);
    assert_same_double(ts_bolt_turn(0.0, L, A_s, E, pitch, NULL), 0.0);
    assert_close(ts_bolt_turn(F_i * 1e-12, L, A_s, E * 1e-12, pitch, NULL),
                 ts_bolt_turn(F_i, L, A_s, E, pitch, NULL), 1e-14);
    assert_close(ts_bolt_turn(F_i, L * 1e6, A_s, E, pitch * 1e6, NULL),
                 ts_bolt_turn(F_i, L, A_s, E, pitch, NULL), 1e-14);
    assert_nan(ts_bolt_turn(-1.0, L, A_s, E, pitch, NULL));
    assert_nan(ts_bolt_turn(F_i, 0.0, A_s, E, pitch, NULL));
    assert_nan(ts_bolt_turn(F_i, L, 0.0, E, pitch, NULL));
    assert_nan(ts_bolt_turn(F_i, L, A_s, 0.0, pitch, NULL));
    assert_nan(ts_bolt_turn(F_i, L, A_s, E, 0.0, NULL));
}

/* The bolts of a circle, by their moments about its diameter: the farthest of N_b like ones bears
 * 4 M/(N_b BC), wherever the first of them stands. */
static void the_farthest_bolt_bears_most(void **state)
{
    (void)state;
    const double M = 31.0, BC = 0.11;

    for (int N_b = 3; N_b < 12; N_b++) {
        double square = 0.0;
        for (int i = 0; i < N_b; i++)
            square += pow(BC / 2.0 * cos(2.0 * pi * i / N_b), 2.0);
        assert_close(ts_overhang_bolt_load(M, N_b, BC, NULL), M * (BC / 2.0) / square, 1e-13);
    }
    assert_nan(ts_overhang_bolt_load(M, 2.0, BC, NULL));
    assert_nan(ts_overhang_bolt_load(M, 4.0, 0.0, NULL));
}

static void a_weight_hangs_on_its_arm(void **state)
{
    (void)state;
    assert_close(ts_overhang_moment(98.1, 0.12, 7.0, NULL), 82.404, 1e-14);
    assert_close(ts_bolt_torque(0.2, 6e-3, 9e3, NULL), 10.8, 1e-14);
    assert_same_double(ts_bolt_torque(0.2, 6e-3, 0.0, NULL), 0.0);
    assert_nan(ts_bolt_torque(0.0, 6e-3, 9e3, NULL));
    assert_nan(ts_overhang_moment((double)NAN, 0.12, 7.0, NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_turn_stretches_a_bolt_by_its_pitch),
        cmocka_unit_test(the_farthest_bolt_bears_most),
        cmocka_unit_test(a_weight_hangs_on_its_arm),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
