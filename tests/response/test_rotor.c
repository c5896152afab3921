/* Does a rotor whirl as closed forms say, is no whirl speed lost, and is what is wrong with a rotor
 * told? */
#include "response/rotor.h"
#include "study/study.h"
#include "support/close.h"
#include "support/read_file.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

static const ts_rotor_section bar        = {0.0, 0.5, 0.06, 0.0, 0.06};
static const ts_rotor_bearing rigid[2]   = {{.x = 0.0, .k_r = 1e14}, {.x = 0.5, .k_r = 1e14}};
static const ts_rotor         pinned_bar = {.sections      = &bar,
                                            .section_count = 1,
                                            .bearings      = rigid,
                                            .bearing_count = 2,
                                            .E             = 207e9,
                                            .G             = 79.6e9,
                                            .rho           = 7850.0,
                                            .kappa         = 0.9,
                                            .longest       = 0.5 / 90.0};

/* tests/reference/systems.json, lat-pinned-uniform-timoshenko: closed form with kappa = 0.9. */
static void a_pinned_timoshenko_bar_has_its_closed_form(void **state)
{
    (void)state;
    const double   f[] = {475.87435086, 1817.13536274, 3825.11853005};
    ts_rotor_frame frame;
    assert_int_equal(ts_rotor_prepare(&pinned_bar, &frame), TS_ROTOR_FINE);
    for (int i = 0; i < 3; i++)
        assert_close(ts_rotor_whirl(&frame, 0.0, TS_WHIRL_FORWARD, i, 0.0, NULL) / (2.0 * pi), f[i],
                     1.2e-6 * pow(i + 1.0, 4.0));
}

/* derived: without shear each halving of the elements divides the error by sixteen; with it, as the
 * elements grow shorter than they are thick, by four. */
static void the_error_falls_with_the_size_of_the_elements(void **state)
{
    (void)state;
    const double I = pi / 64.0 * pow(0.06, 4.0), A = pi / 4.0 * 0.06 * 0.06,
                 q        = 4.0 * pi * pi / 0.25;
    const double exact[2] = {q * sqrt(207e9 * I / (7850.0 * A)), 1817.13536274 * 2.0 * pi};
    for (int sheared = 0; sheared < 2; sheared++) {
        double error[3];
        for (int i = 0; i < 3; i++) {
            ts_rotor       rotor = pinned_bar;
            ts_rotor_frame frame;
            rotor.shearless = rotor.slopeless = sheared == 0;
            rotor.longest                     = 0.5 / (double)(4 << (sheared ? i + 2 : i));
            assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_FINE);
            error[i] =
                ts_rotor_whirl(&frame, 0.0, TS_WHIRL_FORWARD, 1, 0.0, NULL) / exact[sheared] - 1.0;
            assert_true(error[i] > 0.0);
        }
        for (int i = 0; i < 2; i++)
            assert_close(error[i] / error[i + 1], sheared ? 4.0 : 16.0, 0.15);
    }
}

/* derived: a rigid rotor on two equal springs, its middle between them: w = sqrt(2 k/m) in
 * translation, I_d w^2 - I_p Omega w - k l^2/2 = 0 in tilting. */
static void a_rigid_rotor_tilts_with_its_gyroscopic_moment(void **state)
{
    (void)state;
    const double           m = 12.0, I_p = 0.05, I_d = 0.03, k = 3e6, l = 0.4;
    const ts_rotor_section stiff     = {0.0, l, 1.0, 0.0, 1.0};
    const ts_rotor_disc    disc      = {l / 2.0, m, I_p, I_d};
    const ts_rotor_bearing springs[] = {{.x = 0.0, .k_r = k}, {.x = l, .k_r = k}};
    const ts_rotor         rotor     = {.sections      = &stiff,
                                        .section_count = 1,
                                        .discs         = &disc,
                                        .disc_count    = 1,
                                        .bearings      = springs,
                                        .bearing_count = 2,
                                        .E             = 4e12,
                                        .G             = 2e12,
                                        .rho           = 1e-9,
                                        .shearless     = true,
                                        .longest       = l / 2.0};
    ts_rotor_frame         frame;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_FINE);
    for (double Omega = 0.0; Omega < 3000.0; Omega += 500.0) {
        const double b = I_p * Omega / 2.0, root = sqrt(b * b + I_d * k * l * l / 2.0);
        const double move = sqrt(2.0 * k / m), fore = (b + root) / I_d, back = (root - b) / I_d;
        assert_close(
            ts_rotor_whirl(&frame, Omega, TS_WHIRL_FORWARD, fore > move ? 1 : 0, 0.0, NULL), fore,
            1e-7);
        assert_close(
            ts_rotor_whirl(&frame, Omega, TS_WHIRL_BACKWARD, back > move ? 1 : 0, 0.0, NULL), back,
            1e-7);
    }
    /* I_p > I_d: it never tilts forward with its own speed. */
    assert_close(ts_rotor_critical(&frame, TS_WHIRL_FORWARD, 0, NULL), sqrt(2.0 * k / m), 1e-7);
    assert_int_equal(ts_rotor_criticals_below(&frame, TS_WHIRL_FORWARD, 1e7), 1);
    assert_close(ts_rotor_critical(&frame, TS_WHIRL_BACKWARD, 1, NULL),
                 sqrt(k * l * l / 2.0 / (I_d + I_p)), 1e-7);
}

/* A hinge in the middle of a bar whose ends cannot tilt: each half swings as a cantilever does
 * whose free end the other holds straight; with a joint as stiff as can be it is the bar again. */
static void a_joint_goes_from_a_hinge_to_no_joint(void **state)
{
    (void)state;
    const ts_rotor_bearing held[] = {{.x = 0.0, .k_r = 1e14, .k_t = 1e14},
                                     {.x = 0.5, .k_r = 1e14, .k_t = 1e14}};
    ts_rotor               rotor  = pinned_bar;
    ts_rotor_joint         joint  = {0.25, 0.0};
    ts_rotor_frame         frame;
    rotor.bearings  = held;
    rotor.shearless = rotor.slopeless = true;
    rotor.joints                      = &joint;
    const double EI = 207e9 * pi / 64.0 * pow(0.06, 4.0), mu = 7850.0 * pi / 4.0 * 0.0036;
    const double unit = sqrt(EI / mu);
    rotor.joint_count = 1;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_FINE);
    /* symmetric: no moment and no force at the hinge, a cantilever; 1.8751041^2 (Blevins, from
     * memory) */
    assert_close(ts_rotor_whirl(&frame, 0.0, TS_WHIRL_FORWARD, 0, 0.0, NULL),
                 1.8751040687 * 1.8751040687 / (0.25 * 0.25) * unit, 1e-6);
    joint.k_t = 1e12;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_FINE);
    const double jointed = ts_rotor_whirl(&frame, 0.0, TS_WHIRL_FORWARD, 0, 0.0, NULL);
    rotor.joint_count    = 0;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_FINE);
    assert_close(jointed, ts_rotor_whirl(&frame, 0.0, TS_WHIRL_FORWARD, 0, 0.0, NULL), 1e-6);
    assert_close(jointed, 4.7300407449 * 4.7300407449 / 0.25 * unit, 1e-5);
}

/* Where whirl meets the speed of the shaft is a critical, and unbalance swings most there. */
static void criticals_lie_on_the_whirl_lines(void **state)
{
    (void)state;
    static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                           "examples/medium.yaml", "examples/large.yaml"};
    for (size_t e = 0; e < 4; e++) {
        const ts_text          file    = read_file(examples[e]);
        const ts_study_options options = {.today = 20000};
        ts_study              *study   = NULL;
        ts_rotor_frame         frame;
        double                 shape[TS_ROTOR_DOF_MOST];
        assert_int_equal(ts_study_open(NULL, &study), TS_OK);
        assert_int_equal(ts_study_read(study, examples[e], file.at, file.length, &options), TS_OK);
        free_file(file);
        assert_true(study->whirls.count > 5);
        for (uint32_t i = 0; i < study->whirls.count; i++) {
            const ts_whirl_item *item = &study->whirls.items[i];
            assert_null(item->fault);
            assert_null(item->missing);
            assert_int_equal(ts_rotor_prepare(&item->rotor, &frame), TS_ROTOR_FINE);
            for (int k = 0; k < 2; k++)
                for (int sense = -1; sense <= 1; sense += 2) {
                    const double w = ts_rotor_critical(&frame, (ts_whirl_sense)sense, k, shape);
                    if (!isfinite(w))
                        continue;
                    assert_close(ts_rotor_whirl(&frame, w, (ts_whirl_sense)sense, k, 0.0, NULL), w,
                                 1e-8);
                    assert_int_equal(
                        ts_rotor_criticals_below(&frame, (ts_whirl_sense)sense, w * (1.0 + 1e-7)),
                        k + 1);
                }
        }
        ts_study_close(study);
    }
}

static void what_is_wrong_with_a_rotor_is_told(void **state)
{
    (void)state;
    ts_rotor               rotor = pinned_bar;
    ts_rotor_frame         frame;
    const ts_rotor_section gap[] = {{0.0, 0.1, 0.05, 0.0, 0.05}, {0.2, 0.5, 0.05, 0.0, 0.05}};
    const ts_rotor_bearing far   = {.x = 0.7, .k_r = 1e8};
    const ts_rotor_bearing nan   = {.x = 0.1, .k_r = (double)NAN};
    rotor.sections               = gap;
    rotor.section_count          = 2;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_BAD_SECTION);
    rotor               = pinned_bar;
    rotor.bearings      = &far;
    rotor.bearing_count = 1;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_OUTSIDE);
    rotor.bearings = &nan;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_BAD_NUMBER);
    rotor               = pinned_bar;
    rotor.bearing_count = 1;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_LOOSE);
    rotor         = pinned_bar;
    rotor.longest = 1e-4;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_TOO_MANY);
    rotor.longest = 0.0;
    rotor.rho     = 0.0;
    assert_int_equal(ts_rotor_prepare(&rotor, &frame), TS_ROTOR_BAD_SECTION);
}

/* ISO 21940-11:2016: G 2.5 at 9549.3 rpm is 2.5 um of eccentricity (derived from its definition).
 */
static void a_grade_is_an_eccentricity_times_a_speed(void **state)
{
    (void)state;
    assert_close(ts_permissible_unbalance(2.5e-3, 4.0, 1000.0), 4.0 * 2.5e-6, 1e-14);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_pinned_timoshenko_bar_has_its_closed_form),
        cmocka_unit_test(the_error_falls_with_the_size_of_the_elements),
        cmocka_unit_test(a_rigid_rotor_tilts_with_its_gyroscopic_moment),
        cmocka_unit_test(a_joint_goes_from_a_hinge_to_no_joint),
        cmocka_unit_test(criticals_lie_on_the_whirl_lines),
        cmocka_unit_test(what_is_wrong_with_a_rotor_is_told),
        cmocka_unit_test(a_grade_is_an_eccentricity_times_a_speed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
