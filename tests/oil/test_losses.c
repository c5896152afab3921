/* Do the laws of losses, jets and flow agree with second routes and with their limits? */
#include "support/close.h"

#include "oil/drag.h"
#include "oil/jet.h"
#include "oil/mesh_loss.h"
#include "pump/pump_element.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* derived: the loss factor of a spur pair is the mean of |sliding|/v_t over the path of contact,
 * where one pair carries all, with the pitch point in its middle (eps_1 = eps_2 = 1/2). */
static void loss_factor_is_the_mean_sliding_where_one_pair_carries(void **state)
{
    (void)state;
    const double       z_1 = 30.0, u = 2.0, alpha = 20.0 * pi / 180.0, m = 0.003;
    const double       r_1 = z_1 * m / 2.0, p_bt = pi * m * cos(alpha);
    const double       omega = 100.0;
    const ts_loss_mesh mesh  = {.z_1 = z_1, .u = u, .alpha_wt = alpha, .eps_1 = 0.5, .eps_2 = 0.5};
    const double       V_s   = ts_mean_sliding(omega, u, p_bt, NULL);
    /* H_v P = mu F_n V_s with F_n = P/(omega r_b1) */
    assert_close(ts_tooth_loss_factor(&mesh, NULL), V_s / (omega * r_1 * cos(alpha)), 1e-12);
}

static void a_mesh_without_sliding_has_the_least_loss(void **state)
{
    (void)state;
    double last = INFINITY;
    for (int i = 0; i <= 5; i++) { /* one pair in contact, its path drawn to the pitch point */
        const double       eps_1 = 1.0 - 0.1 * i;
        const ts_loss_mesh mesh  = {.z_1 = 25.0, .u = 1.5, .eps_1 = eps_1, .eps_2 = 1.0 - eps_1};
        const double       H_v   = ts_tooth_loss_factor(&mesh, NULL);
        assert_true(H_v > 0.0 && H_v < last);
        last = H_v;
    }
}

/* Two laws from different tests of fast gears in air, both from memory: a slip of a power of ten or
 * of an exponent in one of them would show.  They differ by 0.7 to 2 here. */
static void two_laws_of_windage_are_of_one_order(void **state)
{
    (void)state;
    for (double n = 3000.0; n < 16000.0; n *= 1.5) {
        const double omega = n * pi / 30.0;
        const double one   = ts_windage_by_loewenthal(0.25, 0.05, omega, 0.005, NULL);
        const double other = ts_windage_by_dawson(0.49, 0.05, 0.004, omega, NULL);
        assert_true(one / other > 0.4 && one / other < 2.5);
    }
}

/* The oil takes the power of the mesh and that of being thrown off: what comes out is as warm as
 * both have made it. */
static void flow_carries_away_what_is_lost_and_what_it_takes_itself(void **state)
{
    (void)state;
    const double P = 2000.0, rho = 950.0, c = 2000.0, rise = 40.0, v_t = 100.0;
    const double Q = ts_oil_flow(P, rho, c, rise, v_t, NULL);
    assert_close(rho * Q * c * rise, P + ts_thrown_oil_power(Q, rho, v_t, NULL), 1e-9);
    assert_close(ts_oil_rise(P, rho, ts_oil_flow(P, rho, c, rise, 0.0, NULL), c, NULL), rise,
                 1e-12);
    assert_true(isnan(ts_oil_flow(P, rho, c, 4.9, v_t, NULL))); /* v_t^2/c is 5 K */
}

static void a_jet_passes_the_flow_that_its_hole_was_made_for(void **state)
{
    (void)state;
    const double Q = 3e-5, C_d = 0.65, rho = 930.0, dp = 250e3;
    const double v = ts_jet_speed(dp, rho, NULL), d = ts_jet_diameter(Q, C_d, v, NULL);
    assert_close(ts_jet_flow(C_d, d, v, NULL), Q, 1e-12);
    assert_close(ts_jet_pressure(Q, C_d, d, rho, NULL), dp, 1e-12);
}

/* derived: teeth that run fast leave a jet no time, and only the ratio of both speeds counts. */
static void a_jet_goes_less_deep_between_faster_teeth(void **state)
{
    (void)state;
    const double alpha = 20.0 * pi / 180.0, v = 25.0;
    double       last = INFINITY;
    for (double v_t = 5.0; v_t < 200.0; v_t *= 1.4) {
        const double depth = ts_jet_depth(0.003, alpha, v_t, v, NULL);
        assert_true(depth > 0.0 && depth < last);
        last = depth;
    }
    assert_close(ts_jet_depth(0.003, alpha, 40.0, v, NULL),
                 ts_jet_depth(0.003, alpha, 80.0, 2.0 * v, NULL), 1e-12);
}

static void a_pump_passes_what_it_was_sized_for_and_its_power_is_flow_times_pressure(void **state)
{
    (void)state;
    const double Q = 5e-4, n = 600.0, eta = 0.9, dp = 400e3;
    assert_close(ts_pump_flow(ts_pump_displacement(Q, n, eta, NULL), n, eta, NULL), Q, 1e-12);
    assert_close(ts_pump_power(Q, dp, 1.0, NULL), ts_pump_hydraulic_power(Q, dp, NULL), 1e-12);
    assert_close(ts_scavenge_flow(Q, 3.0, NULL) * (1.0 - ts_scavenge_air(3.0, NULL)), Q, 1e-12);
}

/* derived: 0.1 f_0 (2000)^(2/3) 1e-3 of the law with speed and 16 f_0 of the law without are one at
 * 2000 mm2/s rpm, within the rounding of 160 (Palmgren's constant). */
static void both_laws_of_bearing_drag_meet(void **state)
{
    (void)state;
    const double nu = 10e-6, n = 2000e-6 * 2.0 * pi / 60.0 / nu;
    const double slow = ts_bearing_drag_0(2.0, nu, n * 0.999999, 0.05, NULL);
    const double fast = ts_bearing_drag_0(2.0, nu, n * 1.000001, 0.05, NULL);
    assert_true(fabs(slow / fast - 1.0) < 0.01);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(loss_factor_is_the_mean_sliding_where_one_pair_carries),
        cmocka_unit_test(a_mesh_without_sliding_has_the_least_loss),
        cmocka_unit_test(two_laws_of_windage_are_of_one_order),
        cmocka_unit_test(flow_carries_away_what_is_lost_and_what_it_takes_itself),
        cmocka_unit_test(a_jet_passes_the_flow_that_its_hole_was_made_for),
        cmocka_unit_test(a_jet_goes_less_deep_between_faster_teeth),
        cmocka_unit_test(a_pump_passes_what_it_was_sized_for_and_its_power_is_flow_times_pressure),
        cmocka_unit_test(both_laws_of_bearing_drag_meet),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
