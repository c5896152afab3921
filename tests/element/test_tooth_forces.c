/* Do the forces of helical and bevel teeth balance, and do they point the right way? */
#include "element/bevel_force.h"
#include "element/helical_force.h"
#include "element/tooth_force.h"
#include "support/close.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

typedef struct vector {
    double x, y, z;
} vector;

static vector cross(vector a, vector b)
{
    return (vector){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

static double dot(vector a, vector b)
{
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

static vector scaled(vector a, double by)
{
    return (vector){a.x * by, a.y * by, a.z * by};
}

static vector sum(vector a, vector b)
{
    return (vector){a.x + b.x, a.y + b.y, a.z + b.z};
}

/* ---- bevel ----------------------------------------------------------------------------------- */

/* A second route, from the flank itself.  The gear's axis is +z from the apex to the back; the
 * point of contact lies in the x-z plane at +x.  Anticlockwise seen from the back is positive about
 * +z. The tooth line of a right hand leans to positive rotation on its way out (clockwise for one
 * who looks from the apex), and so bends that way: its concave flank faces positive rotation. */
static vector flank_force(double F_mt, double alpha_n, double beta_m, double delta, int hand,
                          bool concave)
{
    const vector along  = {sin(delta), 0.0, cos(delta)};  /* out along the cone         */
    const vector out    = {cos(delta), 0.0, -sin(delta)}; /* out of the cone            */
    const vector around = {0.0, 1.0, 0.0};                /* positive rotation, at +x   */
    const vector line =
        sum(scaled(along, cos(beta_m)), scaled(around, hand * sin(beta_m))); /* tooth line */
    const double faces  = concave ? hand : -hand; /* rotation that the flank faces */
    vector       across = cross(out, line);       /* in the cone, square to the tooth   */

    if (dot(across, around) * faces < 0.0)
        across = scaled(across, -1.0);
    /* The flank leans outwards by alpha_n; the force goes into it. */
    const vector push = sum(scaled(across, -cos(alpha_n)), scaled(out, -sin(alpha_n)));
    return scaled(push, F_mt / fabs(dot(push, around)));
}

static void bevel_forces_are_those_of_the_flank_normal(void **state)
{
    (void)state;
    for (int hand = -1; hand <= 1; hand += 2)
        for (int concave = 0; concave <= 1; concave++)
            for (double delta = 10.0; delta < 85.0; delta += 12.5) {
                const double alpha = 20.0 * degree, beta = 35.0 * degree;
                const vector push =
                    flank_force(1000.0, alpha, beta, delta * degree, hand, concave == 1);
                const ts_bevel_force force =
                    ts_bevel_forces(1000.0, alpha, beta, delta * degree, concave == 1, NULL);

                assert_close_abs(force.F_a, push.z, 1e-10);
                assert_close_abs(force.F_r, -push.x, 1e-10);
            }
}

/* The same construction says which rotation loads a flank: a driver is pushed against its rotation.
 */
static void loaded_flank_follows_hand_sense_and_role(void **state)
{
    (void)state;
    for (int hand = -1; hand <= 1; hand += 2)
        for (int turns = -1; turns <= 1; turns += 2)
            for (int drives = 0; drives <= 1; drives++) {
                const bool   concave = ts_bevel_concave_loaded(hand, turns, drives == 1);
                const vector push    = flank_force(1.0, 0.35, 0.6, 0.7, hand, concave);

                assert_int_equal(push.y * turns < 0.0, drives == 1);
            }
    assert_false(ts_bevel_concave_loaded(0, 1, true));
}

/* AGMA 2005 practice (from memory): a left-hand pinion that drives clockwise, seen from its back,
 * is pushed away from the apex; a right-hand one towards it. */
static void left_hand_pinion_driving_clockwise_leaves_the_apex(void **state)
{
    (void)state;
    const double alpha = 20.0 * degree, beta = 35.0 * degree, delta = 26.0 * degree;

    assert_true(
        ts_bevel_forces(1.0, alpha, beta, delta, ts_bevel_concave_loaded(-1, -1, true), NULL).F_a >
        0.0);
    assert_true(
        ts_bevel_forces(1.0, alpha, beta, delta, ts_bevel_concave_loaded(1, -1, true), NULL).F_a <
        0.0);
}

/* derived: at 90 degrees the axis of one gear is a radius of the other. */
static void forces_of_right_angle_bevels_balance(void **state)
{
    (void)state;
    for (double delta = 15.0; delta < 80.0; delta += 5.0)
        for (double beta = 0.0; beta < 45.0; beta += 15.0)
            for (int concave = 0; concave <= 1; concave++) {
                const ts_bevel_force first = ts_bevel_forces(750.0, 20.0 * degree, beta * degree,
                                                             delta * degree, concave == 1, NULL);
                const ts_bevel_force second =
                    ts_bevel_forces(750.0, 20.0 * degree, beta * degree, pi / 2.0 - delta * degree,
                                    concave == 0, NULL);

                assert_close_abs(first.F_a, second.F_r, 1e-10);
                assert_close_abs(first.F_r, second.F_a, 1e-10);
            }
}

/* Reversing the power or the rotation turns the spiral's part round, reversing both leaves it. */
static void reversal_turns_the_part_of_the_spiral(void **state)
{
    (void)state;
    assert_true(ts_bevel_concave_loaded(1, 1, true));
    assert_false(ts_bevel_concave_loaded(1, 1, false));
    assert_false(ts_bevel_concave_loaded(1, -1, true));
    assert_true(ts_bevel_concave_loaded(1, -1, false));

    const ts_bevel_force a = ts_bevel_forces(1.0, 0.35, 0.6, 0.5, true, NULL);
    const ts_bevel_force b = ts_bevel_forces(1.0, 0.35, 0.6, 0.5, false, NULL);
    const ts_bevel_force c = ts_bevel_forces(1.0, 0.35, 0.0, 0.5, false, NULL);
    assert_close((a.F_a + b.F_a) / 2.0, c.F_a / cos(0.6), 1e-13);
    assert_close((a.F_r + b.F_r) / 2.0, c.F_r / cos(0.6), 1e-13);
}

/* Scilab companion 698, example 17.8 (problem read; thrusts derived in the bank). */
static void printed_spiral_thrust_agrees(void **state)
{
    (void)state;
    const double delta = 36.86989765 * degree;

    assert_close(ts_bevel_forces(3978.8736, 14.5 * degree, 30.0 * degree, delta, false, NULL).F_a,
                 -1124.8, 3e-4);
    assert_close(
        ts_bevel_forces(3978.8736, 14.5 * degree, 30.0 * degree, pi / 2.0 - delta, true, NULL).F_a,
        2328.9, 3e-4);
}

/* derived: at a pitch angle of 0 a bevel gear is a helical gear; its apex is infinitely far. */
static void cone_of_angle_zero_is_a_helical_gear(void **state)
{
    (void)state;
    const ts_bevel_force   bevel   = ts_bevel_forces(500.0, 0.35, 0.4, 0.0, true, NULL);
    const ts_helical_force helical = ts_helical_forces(500.0, 0.35, 0.4, NULL);

    assert_close(bevel.F_a, helical.F_a, 1e-14);
    assert_close(bevel.F_r, helical.F_r, 1e-14);
    /* Right hand, anticlockwise from the back, driving: towards the back in both rules. */
    assert_true(ts_bevel_concave_loaded(1, 1, true));
    assert_int_equal(ts_helical_thrust_sense(1, 1, true), 1);
}

/* ---- helical --------------------------------------------------------------------------------- */

/* U. C. Jindal, Machine Design, example 26-2 (read): 5 kW at 1200 rpm, 25 teeth, m_n 4, 20/20 deg.
 */
static void printed_helical_forces_agree(void **state)
{
    (void)state;
    const double           d     = 25.0 * 4e-3 / cos(20.0 * degree);
    const double           T     = ts_torque_of_power(5000.0, 1200.0 * pi / 30.0, NULL);
    const double           F_t   = ts_tangential_force(T, d, NULL);
    const ts_helical_force force = ts_helical_forces(F_t, 20.0 * degree, 20.0 * degree, NULL);

    assert_close(F_t, 747.78, 1e-5);
    assert_close(force.F_a, 272.2, 2e-4);
    assert_close(force.F_r, 289.64, 2e-5);
    assert_close(ts_pitch_line_velocity(1200.0 * pi / 30.0, d, NULL), 5000.0 / F_t, 1e-14);
}

/* derived: three square components of one normal force. */
static void helical_components_make_up_the_normal_force(void **state)
{
    (void)state;
    for (double beta = 0.0; beta < 0.8; beta += 0.1) {
        const ts_helical_force f = ts_helical_forces(900.0, 0.37, beta, NULL);

        assert_close(sqrt(900.0 * 900.0 + f.F_a * f.F_a + f.F_r * f.F_r), f.F_n, 1e-14);
    }
}

/* derived: at the reference circle the working angles are those of the rack. */
static void working_angles_at_the_reference_circle_are_the_racks(void **state)
{
    (void)state;
    const double alpha_n = 20.0 * degree, beta = 18.0 * degree;
    const double alpha_t = atan(tan(alpha_n) / cos(beta)), beta_b = asin(sin(beta) * cos(alpha_n));

    assert_close(ts_working_helix_angle(beta_b, alpha_t, NULL), beta, 1e-14);
    assert_close(ts_working_normal_angle(beta_b, alpha_t, NULL), alpha_n, 1e-14);
}

/* derived: the mate has the other hand, turns the other way and is driven: three reversals, so the
 * thrusts are opposite, as action and reaction must be. */
static void thrusts_of_a_helical_pair_are_opposite(void **state)
{
    (void)state;
    for (int hand = -1; hand <= 1; hand += 2)
        for (int turns = -1; turns <= 1; turns += 2)
            for (int drives = 0; drives <= 1; drives++)
                assert_int_equal(ts_helical_thrust_sense(hand, turns, drives == 1),
                                 -ts_helical_thrust_sense(-hand, -turns, drives == 0));
    assert_int_equal(ts_helical_thrust_sense(0, 1, true), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(bevel_forces_are_those_of_the_flank_normal),
        cmocka_unit_test(loaded_flank_follows_hand_sense_and_role),
        cmocka_unit_test(left_hand_pinion_driving_clockwise_leaves_the_apex),
        cmocka_unit_test(forces_of_right_angle_bevels_balance),
        cmocka_unit_test(reversal_turns_the_part_of_the_spiral),
        cmocka_unit_test(printed_spiral_thrust_agrees),
        cmocka_unit_test(cone_of_angle_zero_is_a_helical_gear),
        cmocka_unit_test(printed_helical_forces_agree),
        cmocka_unit_test(helical_components_make_up_the_normal_force),
        cmocka_unit_test(working_angles_at_the_reference_circle_are_the_racks),
        cmocka_unit_test(thrusts_of_a_helical_pair_are_opposite),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
