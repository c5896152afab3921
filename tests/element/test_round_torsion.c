/* Is the torsion of round shafts that of the theory?
 *
 * Derived: integrals of tau*r over the ring, summed here in thin rings.
 */
#include "element/round_torsion.h"

#include "support/close.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* tau at the outside; it falls to the middle, or does not (all of it yields). */
static double summed(double tau, double d_o, double d_i, int plastic)
{
    enum { RINGS = 20000 };
    double sum = 0.0;

    for (int i = 0; i < RINGS; i++) {
        const double r = (d_i + (d_o - d_i) * (i + 0.5) / RINGS) / 2.0;
        const double w = (d_o - d_i) / 2.0 / RINGS;

        sum += (plastic ? tau : tau * 2.0 * r / d_o) * 2.0 * pi * r * r * w;
    }
    return sum;
}

static void torques_are_the_sums_of_their_rings(void **state)
{
    (void)state;
    for (double d_i = 0.0; d_i < 0.0195; d_i += 3e-3) {
        const double el = summed(500e6, 0.02, d_i, 0), pl = summed(500e6, 0.02, d_i, 1);

        assert_close(ts_torque_elastic(500e6, 0.02, d_i, NULL), el, 1e-7);
        assert_close(ts_torque_plastic(500e6, 0.02, d_i, NULL), pl, 1e-7);
        assert_close(ts_torque_reserve(0.02, d_i, NULL), pl / el, 1e-7);
    }
}

static void a_twist_and_its_torque_are_inverse(void **state)
{
    (void)state;
    for (double L = 1e-3; L < 2.0; L *= 3.0) {
        const double twist = ts_torsion_twist(31.0, L, 80e9, 2e-9, NULL);

        assert_close(twist, 31.0 * L / 160.0, 1e-14);
        assert_close(ts_torsion_of_twist(twist, L, 80e9, 2e-9, NULL), 31.0, 1e-14);
    }
    assert_same_double(ts_torsion_twist(31.0, 0.0, 80e9, 2e-9, NULL), 0.0);
    assert_nan(ts_torsion_of_twist(0.1, 0.0, 80e9, 2e-9, NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(torques_are_the_sums_of_their_rings),
        cmocka_unit_test(a_twist_and_its_torque_are_inverse),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
