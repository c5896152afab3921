/* Is each factor by itself what the standard prints, and does it join where its pieces meet? */
#include "rating/iso6336/flank_film.h"
#include "rating/iso6336/mesh_stiffness.h"
#include "rating/iso6336/reduced_mass.h"
#include "rating/iso6336/running_in.h"
#include "rating/iso6336/transverse_load.h"
#include "rating/iso6336/work_hardening.h"
#include "rating/iso6336/zone_factor.h"
#include "rating/sample_mesh.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

/* ---- contact --------------------------------------------------------------------------------- */

/* ISO 6336-2: steel with 206 GPa and 0.3 has 189.8 sqrt(N/mm2); 20 degrees without shift 2.495
 * (both printed in many textbooks; from memory). */
static void printed_zone_and_elasticity_factors(void **state)
{
    (void)state;
    assert_close(ts_elasticity_factor(206e9, 0.3, 206e9, 0.3, NULL) / 1000.0, 189.8, 3e-4);
    assert_close(ts_zone_factor(20.0 * degree, 20.0 * degree, 0.0, NULL), 2.495, 4e-4);
}

/* derived: Hertz pressure goes with the root of relative curvature, which along the line of action
 * is rho_T/(rho_1*rho_2): so the raw ratios M follow from the radii at C and at B or D.  Rings too.
 */
static void single_contact_raises_the_pressure_as_curvature_does(void **state)
{
    (void)state;
    uint64_t seed = 5;

    for (int round = 0; round < 200; round++) {
        ts_cylindrical_pair_input in = drawn_pair(&seed);

        if (round % 4 == 0) {
            in.z_2 = -(in.z_1 + 60);
            in.x_1 = in.x_2 = 0.0;
        }
        const ts_cylindrical_pair p = solved_pair(&in);
        const ts_single_contact   m = ts_single_contact_2006(&p, 1.0, NULL);
        const double              C = p.rho_C1 * (p.rho_T - p.rho_C1);
        const double              B = p.rho_B1 * (p.rho_T - p.rho_B1);
        const double              D = p.rho_D1 * (p.rho_T - p.rho_D1);

        assert_close(m.M_1, sqrt(C / B), 1e-11);
        assert_close(m.M_2, sqrt(C / D), 1e-11);
        assert_true(m.Z_B >= 1.0 && m.Z_D >= 1.0);
    }
}

static void contact_ratio_factor_has_no_step(void **state)
{
    (void)state;
    for (double eps_alpha = 1.1; eps_alpha < 2.4; eps_alpha += 0.1) {
        assert_close(ts_contact_ratio_factor(eps_alpha, 1.0 - 1e-12, NULL),
                     ts_contact_ratio_factor(eps_alpha, 1.0, NULL), 1e-11);
        assert_close(ts_contact_ratio_factor(eps_alpha, 1e-12, NULL),
                     ts_contact_ratio_factor(eps_alpha, 0.0, NULL), 1e-11);
    }
}

/* ISO 6336-2, clause 12 (from memory): the test gears ran with 100 mm2/s, 10 m/s and 3 um, where
 * the factors are 1; and every factor is steeper on softer flanks. */
static void film_factors_are_1_under_test_conditions(void **state)
{
    (void)state;
    for (double sigma_Hlim = 600e6; sigma_Hlim <= 1500e6; sigma_Hlim += 100e6) {
        const double C_Zv = ts_velocity_constant(sigma_Hlim, NULL);

        assert_close(ts_lubricant_factor(sigma_Hlim, 167.5e-6, NULL), 1.0, 1e-14);
        assert_close(ts_velocity_factor(C_Zv, 10.0, NULL), 1.0, 1e-14);
        assert_close(ts_roughness_factor(sigma_Hlim, 3e-6, 3e-6, 10e-3, NULL), 1.0, 1e-14);
    }
    assert_true(ts_lubricant_factor(600e6, 300e-6, NULL) >
                ts_lubricant_factor(1400e6, 300e-6, NULL));
    assert_true(ts_lubricant_factor(600e6, 30e-6, NULL) < ts_lubricant_factor(1400e6, 30e-6, NULL));
}

/* At rest 32/v is infinite and the factor its constant. */
static void a_gear_at_rest_has_the_least_velocity_factor(void **state)
{
    (void)state;
    assert_close(ts_velocity_factor(0.93, 0.0, NULL), 0.93, 1e-15);
}

/* ISO 6336-2, clause 13 (from memory): 1.2 at 130 HB, 1 at 470 HB, on a smooth hard flank; static
 * 1.05 and 1. */
static void work_hardening_ends_where_the_soft_gear_is_hard(void **state)
{
    (void)state;
    assert_close(ts_work_hardening_surface(130.0, 3e-6, NULL), 1.2, 1e-14);
    assert_close(ts_work_hardening_surface(470.0, 3e-6, NULL), 1.0, 1e-14);
    assert_close(ts_work_hardening_surface(100.0, 3e-6, NULL), 1.2, 1e-14);
    assert_close(ts_work_hardening_surface_static(130.0, NULL), 1.05, 1e-14);
    assert_close(ts_work_hardening_surface_static(470.0, NULL), 1.0, 1e-14);
    assert_true(ts_work_hardening_surface(300.0, 10e-6, NULL) <
                ts_work_hardening_surface(300.0, 5e-6, NULL));
    /* AGMA C_H = 1 + A(m_G - 1), printed as 1.005 in Shigley, example 14-4, with A = 0.00249 there
     * at 240/200 HB (from memory). */
    assert_close(ts_work_hardening_through(1.2, 52.0 / 17.0, NULL), 1.005, 5e-4);
    assert_close(ts_work_hardening_through(1.19, 5.0, NULL), 1.0, 1e-15);
}

/* ---- load factors ---------------------------------------------------------------------------- */

/* ISO 6336-1, clause 9 (from memory): mean values for steel are c' = 14 and c_gamma = 20. */
static void ordinary_teeth_are_about_as_stiff_as_printed(void **state)
{
    (void)state;
    const ts_tooth_flexibility_input teeth = {.z_n1 = 30.0, .z_n2 = 60.0, .x_1 = 0.3, .x_2 = 0.0};
    const ts_single_stiffness_input  in    = {ts_tooth_flexibility(&teeth, NULL),
                                              1.0,
                                              ts_rack_factor(1.25, 20.0 * degree, NULL),
                                              0.0,
                                              206e9,
                                              206e9};
    const double                     cp    = ts_single_stiffness(&in, NULL);

    assert_close(cp / 1e9, 14.0, 0.05);
    assert_close(ts_mesh_stiffness(cp, 1.6, NULL) / 1e9, 20.0, 0.05);
    assert_close(ts_single_stiffness_loaded(cp, 100e3, NULL), cp, 1e-15);
    assert_close(ts_single_stiffness_loaded(cp, 100e3 * (1.0 - 1e-12), NULL), cp, 1e-11);
    assert_close(ts_single_stiffness_loaded(cp, 50e3, NULL), cp * pow(0.5, 0.25), 1e-14);
}

static void a_thin_web_softens_and_a_solid_one_does_not(void **state)
{
    (void)state;
    assert_close(ts_blank_factor(20e-3, 20e-3, 10e-3, 2e-3, 0, NULL), 1.0, 1e-15);
    assert_true(ts_blank_factor(5e-3, 20e-3, 6e-3, 2e-3, 0, NULL) < 0.95);
    assert_true(ts_blank_factor(5e-3, 20e-3, 3e-3, 2e-3, 0, NULL) <
                ts_blank_factor(5e-3, 20e-3, 12e-3, 2e-3, 0, NULL));
    /* the ends of its range */
    assert_same_double(ts_blank_factor(1e-3, 20e-3, 6e-3, 2e-3, 0, NULL),
                       ts_blank_factor(4e-3, 20e-3, 6e-3, 2e-3, 0, NULL));
}

/* derived: a disc of mean diameter d_m has the moment of inertia of its mass; a rim and a web of
 * the same width and bore are that disc again. */
static void rim_and_web_make_up_the_disc(void **state)
{
    (void)state;
    const double        d_m = 80e-3, pi = 3.14159265358979323846;
    const ts_gear_blank disc  = {.d_a = d_m, .d_f = d_m, .rho = 7830.0};
    const ts_gear_blank parts = {
        .d_a = d_m, .d_f = d_m, .d_i = 60e-3, .d_web = 0.0, .b_s_per_width = 1.0, .rho = 7830.0};
    const double mass = 7830.0 * pi / 4.0 * d_m * d_m;

    assert_close(ts_blank_inertia(&disc, 0, NULL), mass * d_m * d_m / 8.0, 1e-14);
    assert_close(ts_blank_inertia(&parts, 0, NULL), ts_blank_inertia(&disc, 0, NULL), 1e-14);
    assert_close(ts_reduced_mass(0.02, (double)INFINITY, NULL), 0.02, 1e-15);
}

/* ISO 6336-1, table of running in (from memory), at its limits: 3 and 6 um for hard flanks; for
 * soft ones 12800 and 6400 over sigma_Hlim above 5 and above 10 m/s. */
static void running_in_stops_at_the_printed_limits(void **state)
{
    (void)state;
    const ts_running_in_flank hard[2] = {{TS_GEAR_CASE_HARDENED, 1500e6},
                                         {TS_GEAR_NITRIDED, 1250e6}};
    const ts_running_in_flank soft[2] = {{TS_GEAR_THROUGH_HARDENED, 640e6},
                                         {TS_GEAR_THROUGH_HARDENED, 640e6}};

    assert_close(ts_running_in_pitch(hard, 50.0, 20e-6, NULL), 1.5e-6, 1e-14);
    assert_close(ts_running_in_pitch(hard, 50.0, 200e-6, NULL), 3e-6, 1e-14);
    assert_close(ts_running_in_lead(hard, 1.0, 20e-6, NULL), 3e-6, 1e-14);
    assert_close(ts_running_in_lead(hard, 1.0, 200e-6, NULL), 6e-6, 1e-14);
    assert_close(ts_running_in_pitch(soft, 4.9, 100e-6, NULL), 25e-6, 1e-14);
    assert_close(ts_running_in_pitch(soft, 9.9, 100e-6, NULL), 20e-6, 1e-14);
    assert_close(ts_running_in_pitch(soft, 10.1, 100e-6, NULL), 10e-6, 1e-14);
    assert_close(ts_running_in_lead(soft, 9.9, 100e-6, NULL), 40e-6, 1e-14);
    assert_close(ts_running_in_lead(soft, 10.1, 100e-6, NULL), 20e-6, 1e-14);
    /* the limits belong to 80 and 40 um before running in */
    assert_close(ts_running_in_pitch(soft, 4.0, 80e-6, NULL),
                 ts_running_in_pitch(soft, 9.0, 500e-6, NULL), 1e-14);
    assert_close(ts_running_in_pitch(soft, 4.0, 40e-6, NULL),
                 ts_running_in_pitch(soft, 20.0, 500e-6, NULL), 1e-14);
}

/* derived: a straight misaligned face under a stiffness.  Where the load line just reaches the far
 * end, K_Hbeta is 2 by either formula; a given F_betay and load leave a triangle of known area. */
static void a_misaligned_face_carries_a_triangle(void **state)
{
    (void)state;
    const double c = 17e9, F_mb = 200e3, full = 2.0 * F_mb / c;

    assert_close(ts_face_load_contact(full * (1.0 - 1e-12), c, F_mb, NULL), 2.0, 1e-11);
    assert_close(ts_face_load_contact(full, c, F_mb, NULL), 2.0, 1e-14);
    assert_close(ts_face_load_contact(0.0, c, F_mb, NULL), 1.0, 1e-15);
    /* Peak w over the loaded part b' of a unit face: w = c F b', w b'/2 = F_mb. */
    const double F = 3.0 * full, w = ts_face_load_contact(F, c, F_mb, NULL) * F_mb;
    assert_close(w * (w / (c * F)) / 2.0, F_mb, 1e-13);
}

/* ISO 6336-1, 7.6 (from memory): b/h below 3 counts as 3, where N_F is 9/13. */
static void bending_feels_misalignment_less_than_contact(void **state)
{
    (void)state;
    assert_close(ts_face_load_exponent(5e-3, 4.5e-3, 5e-3, 4.5e-3, NULL), 9.0 / 13.0, 1e-14);
    assert_close(ts_face_load_exponent(45e-3, 4.5e-3, 50e-3, 4.5e-3, NULL), 100.0 / 111.0, 1e-14);
    assert_close(ts_face_load_bending(1.5, 9.0 / 13.0, NULL), pow(1.5, 9.0 / 13.0), 1e-15);
}

static void lead_modifications_leave_the_printed_shares(void **state)
{
    (void)state;
    const double f_sh = 10e-6, f_ma = 20e-6;

    assert_close(ts_mesh_misalignment(f_sh, f_ma, TS_LEAD_STRAIGHT, 0.0, NULL), 33.3e-6, 1e-12);
    assert_close(ts_mesh_misalignment(f_sh, f_ma, TS_LEAD_CROWNED, 0.0, NULL), 23.3e-6, 1e-12);
    assert_close(ts_mesh_misalignment(f_sh, f_ma, TS_LEAD_CORRECTED, 0.0, NULL), 21.33e-6, 1e-12);
    assert_close(ts_mesh_misalignment(0.0, 0.0, TS_LEAD_STRAIGHT, 400e3, NULL), 2e-6, 1e-12);
    assert_nan(ts_mesh_misalignment((double)NAN, f_ma, TS_LEAD_STRAIGHT, 400e3, NULL));
}

static ts_transverse_load_input sharing(double eps_alpha, double eps_beta, double f_pbeff)
{
    return (ts_transverse_load_input){
        .eps_alpha     = eps_alpha,
        .eps_gamma     = eps_alpha + eps_beta,
        .Z_eps         = ts_contact_ratio_factor(eps_alpha, eps_beta, NULL),
        .c_gamma_alpha = 20e9,
        .f_pbeff       = f_pbeff,
        .F_tHb         = 300e3,
    };
}

/* derived: at its limit K_Halpha takes back what Z_eps credits: all load on one pair. */
static void load_sharing_ends_at_one_pair(void **state)
{
    (void)state;
    const ts_transverse_load_input coarse = sharing(1.6, 0.0, 200e-6),
                                   fine   = sharing(1.6, 0.0, 1e-9);
    const ts_transverse_load_input under  = sharing(1.4, 0.6 - 1e-12, 15e-6);
    const ts_transverse_load_input over   = sharing(1.4, 0.6 + 1e-12, 15e-6);
    const ts_transverse_load       worst  = ts_transverse_load_of(&coarse, NULL);
    const ts_transverse_load       best   = ts_transverse_load_of(&fine, NULL);

    assert_true(worst.H_limited);
    assert_close(sqrt(worst.K_Halpha) * coarse.Z_eps, 1.0, 1e-14);
    assert_close(worst.K_Falpha * (0.25 + 0.75 / 1.6), 1.0, 1e-14);
    assert_same_double(best.K_Halpha, 1.0);
    assert_close(ts_transverse_load_of(&under, NULL).K_Falpha,
                 ts_transverse_load_of(&over, NULL).K_Falpha, 1e-10);
}

/* ---- dynamics -------------------------------------------------------------------------------- */

static void the_ranges_of_speed_join(void **state)
{
    (void)state;
    for (double eps_gamma = 1.2; eps_gamma < 3.5; eps_gamma += 0.15) {
        const ts_dynamic_constants  C = ts_dynamic_constants_of(eps_gamma, NULL);
        const ts_dynamic_parameters B = {0.6, 0.5, 0.2};

        assert_close(ts_dynamic_factor(1.15 + 1e-12, 0.85, &C, &B, NULL),
                     ts_dynamic_resonance(&C, &B, NULL), 1e-10);
        assert_close(ts_dynamic_factor(1.5 - 1e-12, 0.85, &C, &B, NULL),
                     ts_dynamic_supercritical(&C, &B, NULL), 1e-10);
        assert_close(ts_dynamic_factor(0.0, 0.85, &C, &B, NULL), 1.0, 1e-15);
    }
    const ts_dynamic_constants  C = ts_dynamic_constants_of(1.7, NULL);
    const ts_dynamic_parameters B = {0.6, 0.5, 0.2};
    assert_nan(ts_dynamic_factor((double)NAN, 0.85, &C, &B, NULL));
    assert_nan(ts_dynamic_constants_of(1.0, NULL).C_v1);
}

/* ISO 6336-1, 6.5.2 (from memory): 0.85, and 0.5 + 0.35 sqrt(w/100) below 100 N/mm. */
static void resonance_begins_earlier_under_light_load(void **state)
{
    (void)state;
    assert_close(ts_resonance_start(250e3, NULL), 0.85, 1e-15);
    assert_close(ts_resonance_start(25e3, NULL), 0.675, 1e-15);
}

static void relief_that_fits_the_load_calms_the_mesh(void **state)
{
    (void)state;
    const double w_t = 250e3, cp = 14e9;

    for (int step = 0; step <= 4; step++) {
        const double                      C_a = w_t / cp * (0.25 * step);
        const ts_dynamic_parameters_input in  = {cp, w_t, 4e-6, 5e-6, C_a};

        assert_close_abs(ts_dynamic_parameters_of(&in, NULL).B_k, 1.0 - 0.25 * step, 1e-14);
    }
    const ts_dynamic_parameters_input coarse = {cp, w_t, 4e-6, 5e-6, (double)NAN};
    assert_same_double(ts_dynamic_parameters_of(&coarse, NULL).B_k, 1.0);
}

/* ---- root ------------------------------------------------------------------------------------ */

/* ISO 6336-3, clauses 13 to 15 (from memory): the test gear itself has Y_deltarelT = 1 at q_s
 * = 2.5, Y_deltastat = 1 at Y_S = 2, Y_RrelT = 1 at R_z = 10 um, Y_X = 1 up to 5 mm. */
static void the_test_gear_is_as_strong_as_itself(void **state)
{
    (void)state;
    for (int i = 0; i < TS_GEAR_CLASS_COUNT; i++) {
        const ts_gear_class class = (ts_gear_class)i;
        const double rho          = ts_slip_layer(class, 600e6, 0, NULL);

        assert_close(ts_notch_sensitivity(rho, 2.5, 0, NULL), 1.0, 1e-14);
        assert_true(ts_notch_sensitivity(rho, 4.0, 0, NULL) > 1.0);
        assert_close(ts_notch_sensitivity_static(class, 600e6, 2.0, 0, NULL), 1.0, 1e-14);
        assert_close(ts_root_surface(class, 10e-6, 0, NULL), 1.0, 2e-3);
        assert_close(ts_root_size(class, 5e-3, 0, NULL), 1.0, 1e-14);
    }
    assert_close(ts_root_size(TS_GEAR_CASE_HARDENED, 30e-3, 0, NULL), 0.8, 1e-14);
    assert_close(ts_root_size(TS_GEAR_THROUGH_HARDENED, 30e-3, 0, NULL), 0.85, 1e-14);
    assert_nan(ts_slip_layer(TS_GEAR_THROUGH_HARDENED, (double)NAN, 0, NULL));
    /* rows of the table and half way between two */
    assert_close(ts_slip_layer(TS_GEAR_THROUGH_HARDENED, 800e6, 0, NULL), 0.0064e-3, 1e-14);
    assert_close(ts_slip_layer(TS_GEAR_THROUGH_HARDENED, 550e6, 0, NULL), 0.02375e-3, 1e-14);
}

/* The bare 0.7 of textbooks (AGMA; Norton K_I = 1.42) is M = 0.4 at R = -1; an idler with equal
 * loads has R = -1.2. */
static void mean_stress_has_a_reason(void **state)
{
    (void)state;
    assert_close(ts_mean_stress_factor(-1.0, 0.4, 0, NULL), 0.7, 1e-14);
    assert_close(ts_stress_ratio(5e5, 5e5, NULL), -1.2, 1e-15);
    assert_close(ts_stress_ratio(5e5, 0.0, NULL), 0.0, 1e-15);
    const ts_mean_stress_ratio plain =
        ts_mean_stress_of(TS_GEAR_CASE_HARDENED, false, 2.0, 0, NULL);
    const ts_mean_stress_ratio shot = ts_mean_stress_of(TS_GEAR_CASE_HARDENED, true, 2.0, 0, NULL);
    assert_close(plain.M, 0.5, 1e-14);
    assert_close(shot.M, 0.4, 1e-14);
}

/* derived: f_eps and Y_beta join at overlap 0 and 1; ISO 6336-3:2006, Y_DT joins at 2.05 and 2.5
 * within its own rounding (from memory). */
static void load_sharing_at_the_root_has_no_step(void **state)
{
    (void)state;
    for (double eps = 1.2; eps < 1.95; eps += 0.1) {
        assert_close(ts_load_share_2019(eps, 1e-12, NULL), ts_load_share_2019(eps, 0.0, NULL),
                     1e-11);
        assert_close(ts_load_share_2019(eps, 1.0 - 1e-12, NULL), ts_load_share_2019(eps, 1.0, NULL),
                     1e-11);
    }
    assert_close(ts_load_share_2019(2.2, 1e-12, NULL), ts_load_share_2019(2.2, 0.0, NULL), 0.011);
    assert_close(ts_deep_tooth_2006(2.05 + 1e-9, 4, NULL), 1.0, 1e-3);
    assert_close(ts_deep_tooth_2006(2.5, 4, NULL), 0.7, 2e-3);
    assert_same_double(ts_deep_tooth_2006(2.3, 5, NULL), 1.0);
}

/* Sharper and deeper notches of grinding cost more; a flat one costs nothing. */
static void a_grinding_notch_raises_the_stress(void **state)
{
    (void)state;
    assert_close(ts_grinding_notch(2.0, 1e-12, 1e-3, 0, NULL), 2.0, 1e-4);
    assert_true(ts_grinding_notch(2.0, 0.1e-3, 0.5e-3, 0, NULL) >
                ts_grinding_notch(2.0, 0.05e-3, 0.5e-3, 0, NULL));
    assert_nan(ts_grinding_notch(2.0, 5e-3, 1e-3, 0, NULL));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(printed_zone_and_elasticity_factors),
        cmocka_unit_test(single_contact_raises_the_pressure_as_curvature_does),
        cmocka_unit_test(contact_ratio_factor_has_no_step),
        cmocka_unit_test(film_factors_are_1_under_test_conditions),
        cmocka_unit_test(a_gear_at_rest_has_the_least_velocity_factor),
        cmocka_unit_test(work_hardening_ends_where_the_soft_gear_is_hard),
        cmocka_unit_test(ordinary_teeth_are_about_as_stiff_as_printed),
        cmocka_unit_test(a_thin_web_softens_and_a_solid_one_does_not),
        cmocka_unit_test(rim_and_web_make_up_the_disc),
        cmocka_unit_test(running_in_stops_at_the_printed_limits),
        cmocka_unit_test(a_misaligned_face_carries_a_triangle),
        cmocka_unit_test(bending_feels_misalignment_less_than_contact),
        cmocka_unit_test(lead_modifications_leave_the_printed_shares),
        cmocka_unit_test(load_sharing_ends_at_one_pair),
        cmocka_unit_test(the_ranges_of_speed_join),
        cmocka_unit_test(resonance_begins_earlier_under_light_load),
        cmocka_unit_test(relief_that_fits_the_load_calms_the_mesh),
        cmocka_unit_test(the_test_gear_is_as_strong_as_itself),
        cmocka_unit_test(mean_stress_has_a_reason),
        cmocka_unit_test(load_sharing_at_the_root_has_no_step),
        cmocka_unit_test(a_grinding_notch_raises_the_stress),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
