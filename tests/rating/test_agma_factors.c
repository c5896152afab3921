/* Do the factors of ANSI/AGMA 2101-D04 say what is printed, and do their pieces meet? */
#include "rating/agma2101/agma_dynamic.h"
#include "rating/agma2101/agma_face_load.h"
#include "rating/agma2101/agma_life.h"
#include "rating/agma2101/agma_size.h"
#include "rating/agma2101/agma_strength.h"
#include "rating/agma2101/agma_stress.h"
#include "support/close.h"

#include <math.h>
#include <stddef.h>

static const double inch = 0.0254;

/* ---- dynamic factor ----------------------------------------------------------------------------
 */

/* Shigley, example 14-4 (from memory; the bank holds more): Q_v 6, 801.1 ft/min, 1.377. */
static void dynamic_factor_of_q_v_6(void **state)
{
    const ts_agma_dynamic curve = ts_agma_dynamic_C95(6.0, NULL);
    (void)state;

    assert_close(ts_agma_dynamic_factor(&curve, 801.1 * 0.00508, NULL), 1.377, 4e-4);
    assert_close(curve.v_max / 0.00508, 3940.0, 3e-4);
}

/* A_v = 17 - Q_v: both editions draw the same curves. */
static void both_accuracy_scales_draw_the_same_curves(void **state)
{
    (void)state;
    for (int A_v = 6; A_v <= 12; A_v++) {
        const ts_agma_dynamic D04 = ts_agma_dynamic_D04(A_v, NULL);
        const ts_agma_dynamic C95 = ts_agma_dynamic_C95(17 - A_v, NULL);

        assert_same_double(D04.B, C95.B);
        assert_close(D04.v_max, C95.v_max, 1e-15);
        assert_same_double(ts_agma_dynamic_factor(&D04, 20.0, NULL),
                           ts_agma_dynamic_factor(&C95, 20.0, NULL));
        assert_false(D04.outside);
    }
}

static void dynamic_factor_is_one_at_rest_and_grows(void **state)
{
    (void)state;
    for (int A_v = 6; A_v <= 12; A_v++) {
        const ts_agma_dynamic curve = ts_agma_dynamic_D04(A_v, NULL);
        const ts_agma_dynamic worse = ts_agma_dynamic_D04(A_v + 1, NULL);

        assert_same_double(ts_agma_dynamic_factor(&curve, 0.0, NULL), 1.0);
        assert_true(ts_agma_dynamic_factor(&curve, 10.0, NULL) <
                    ts_agma_dynamic_factor(&curve, 11.0, NULL));
        assert_true(ts_agma_dynamic_factor(&curve, 10.0, NULL) <
                    ts_agma_dynamic_factor(&worse, 10.0, NULL));
    }
}

static void very_accurate_gears_take_the_upper_end_of_what_is_granted(void **state)
{
    const ts_agma_dynamic fine = ts_agma_dynamic_D04(5.0, NULL);
    (void)state;

    assert_same_double(ts_agma_dynamic_factor(&fine, 100.0, NULL), 1.11);
    assert_true(isinf(fine.v_max));
    assert_true(ts_agma_dynamic_D04(13.0, NULL).outside);
    assert_true(ts_agma_dynamic_C95(4.0, NULL).outside);
    assert_nan(ts_agma_dynamic_factor(&fine, -1.0, NULL));
    assert_nan(ts_agma_dynamic_D04(NAN, NULL).K_v);
}

/* derived: the tolerance of ISO 1328-1:1995, f_pt = 0.3 (m_n + 0.4 sqrt(d)) + 4 um at grade 5,
 * grows by sqrt(2) a grade; so does A_v above 400 mm.  Both pieces meet at 400 mm. */
static void transmission_accuracy_follows_the_single_pitch_tolerance(void **state)
{
    const double m_n = 5e-3, d_T = 0.6;
    const double f_5 = (0.3 * 5.0 + 0.12 * sqrt(600.0) + 4.0) * 1e-6;
    (void)state;

    for (int grade = 5; grade <= 11; grade++)
        assert_same_double(
            ts_agma_accuracy_of(f_5 * pow(2.0, (grade - 5) / 2.0) * 0.999, m_n, d_T, NULL), grade);
    assert_same_double(ts_agma_accuracy_of(10e-6, m_n, 0.4, NULL),
                       ts_agma_accuracy_of(10e-6, m_n, 0.4 + 1e-12, NULL));
    assert_nan(ts_agma_accuracy_of(0.0, m_n, d_T, NULL));
}

/* ---- load distribution -------------------------------------------------------------------------
 */

/* derived: the three pieces of K_Hpf at 1 in and at 17 in (where the printed one steps by 0.0014).
 */
static void pinion_proportion_hangs_together(void **state)
{
    const double d = 5.0 * inch;
    (void)state;

    assert_close(ts_agma_pinion_proportion(1.0 * inch, d, NULL),
                 ts_agma_pinion_proportion(1.0 * inch * (1.0 + 1e-12), d, NULL), 1e-9);
    assert_close_abs(ts_agma_pinion_proportion(17.0 * inch, 20.0 * inch, NULL),
                     ts_agma_pinion_proportion(17.0 * inch * (1.0 + 1e-12), 20.0 * inch, NULL),
                     0.0015);
    /* Shigley, solution of problem 14-18 (from memory): F = 2 in, d = 2.667 in gives 0.0625. */
    assert_close(ts_agma_pinion_proportion(2.0 * inch, 16.0 / 6.0 * inch, NULL), 0.0625, 1e-12);
    /* b/(10 d) counts as 0.05 at least. */
    assert_close(ts_agma_pinion_proportion(0.5 * inch, d, NULL), 0.025, 1e-12);
}

/* The metric edition prints B and C per mm: 0.657e-3, -1.19e-7 (open), 0.622e-3, -1.69e-7
 * (commercial), 0.504e-3, -1.44e-7 (precision), 0.402e-3, -1.27e-7 (extra precision); from memory.
 */
static void alignment_constants_agree_with_the_metric_edition(void **state)
{
    static const double metric[TS_AGMA_BOX_COUNT][3] = {
        {0.247, 0.657, 1.19}, {0.127, 0.622, 1.69}, {0.0675, 0.504, 1.44}, {0.0380, 0.402, 1.27}};
    (void)state;
    for (int box = 0; box < TS_AGMA_BOX_COUNT; box++) {
        const ts_agma_alignment row = ts_agma_alignment_of((ts_agma_box)box);

        assert_close(row.A, metric[box][0], 1e-12);
        assert_close(row.B * 1e-3, metric[box][1] * 1e-3, 1.5e-3);
        assert_close(-row.C * 1e-6, metric[box][2] * 1e-7, 5e-3);
    }
}

static void a_better_box_spreads_the_load_better(void **state)
{
    ts_agma_mounting mounting = {.offset = 0.0};
    double           before   = INFINITY;
    (void)state;

    for (int box = 0; box < TS_AGMA_BOX_COUNT; box++) {
        mounting.alignment = ts_agma_alignment_of((ts_agma_box)box);
        const double K_H   = ts_agma_face_load_of(0.03, 0.05, &mounting, NULL).K_H;
        assert_true(K_H > 1.0 && K_H < before);
        before = K_H;
    }
    mounting.lead_corrected = true;
    assert_true(ts_agma_face_load_of(0.03, 0.05, &mounting, NULL).K_H < before);
    mounting.offset = 0.175;
    assert_same_double(ts_agma_face_load_of(0.03, 0.05, &mounting, NULL).K_Hpm, 1.1);
}

static void boxes_are_found_by_name(void **state)
{
    ts_agma_box box = TS_AGMA_BOX_OPEN;
    (void)state;

    assert_true(ts_agma_box_named(ts_text_of("extra precision"), &box));
    assert_int_equal(box, TS_AGMA_BOX_EXTRA_PRECISION);
    assert_false(ts_agma_box_named(ts_text_of("extra"), &box));
    assert_string_equal(ts_agma_box_name(TS_AGMA_BOX_COMMERCIAL), "commercial");
}

/* ---- rim and size ------------------------------------------------------------------------------
 */

static void rim_factor_begins_at_one(void **state)
{
    (void)state;
    assert_same_double(ts_agma_rim_factor(0.012, 0.01, 0, NULL), 1.0);
    /* derived: the printed constants leave a step of 1.6 ln(2.242/1.2) - 1 = 8e-5 at the knee. */
    assert_close(ts_agma_rim_factor(0.012 * (1.0 - 1e-9), 0.01, 0, NULL), 1.0, 1e-4);
    assert_close(ts_agma_rim_factor(0.005, 0.01, 0, NULL), 1.6 * log(4.484), 1e-14);
    assert_nan(ts_agma_rim_factor(0.0, 0.01, 0, NULL));
}

/* The metric form of Shigley's text: 0.843 (b m sqrt(Y))^0.0535 in mm (from memory). */
static void size_factor_has_the_same_metric_form(void **state)
{
    (void)state;
    assert_close(ts_agma_size_factor_beam(0.04, 0.003, 0.35, 0, NULL),
                 0.843 * pow(40.0 * 3.0 * sqrt(0.35), 0.0535), 1e-3);
}

/* ---- life --------------------------------------------------------------------------------------
 */

static void every_line_of_life_meets_the_upper_one_at_the_knee(void **state)
{
    const struct {
        ts_agma_life_line line;
        double            hardness;
    } lines[] = {
        {TS_AGMA_LINE_CASE_CARBURISED, NAN}, {TS_AGMA_LINE_NITRIDED, NAN},
        {TS_AGMA_LINE_BY_HARDNESS, 160.0},   {TS_AGMA_LINE_BY_HARDNESS, 250.0},
        {TS_AGMA_LINE_BY_HARDNESS, 400.0},   {TS_AGMA_LINE_BY_HARDNESS, 310.0},
    };
    (void)state;
    for (size_t i = 0; i < sizeof lines / sizeof lines[0]; i++)
        for (int critical = 0; critical < 2; critical++) {
            const ts_agma_life life =
                ts_agma_life_of(lines[i].line, lines[i].hardness, critical == 1, 0, NULL);

            assert_close(ts_agma_cycle_factor_bending(&life, 3e6, 0, NULL),
                         ts_agma_cycle_factor_bending(&life, 3e6 * (1.0 + 1e-9), 0, NULL), 5e-4);
            assert_close(ts_agma_cycle_factor_contact(&life, 1e7, 0, NULL),
                         ts_agma_cycle_factor_contact(&life, 1e7 * (1.0 + 1e-9), 0, NULL), 5e-4);
        }
}

/* The slip of a study page (exponent 0.1182) would step by 1.5 % at the knee. */
static void the_carburised_exponent_is_0_1192(void **state)
{
    const ts_agma_life life = ts_agma_life_of(TS_AGMA_LINE_CASE_CARBURISED, NAN, false, 0, NULL);
    (void)state;

    assert_close(ts_agma_cycle_factor_bending(&life, 1e5, 0, NULL), 6.1514 * pow(1e5, -0.1192),
                 1e-14);
    assert_true(6.1514 * pow(3e6, -0.1182) / (1.3558 * pow(3e6, -0.0178)) > 1.014);
}

/* ANSI/AGMA 2101-D04, figures of Y_N and Z_N (from memory): at the left ends of the lines. */
static void lines_of_life_begin_where_the_figures_do(void **state)
{
    const ts_agma_life carburised =
        ts_agma_life_of(TS_AGMA_LINE_CASE_CARBURISED, NAN, false, 0, NULL);
    const ts_agma_life nitrided = ts_agma_life_of(TS_AGMA_LINE_NITRIDED, NAN, false, 0, NULL);
    const ts_agma_life soft     = ts_agma_life_of(TS_AGMA_LINE_BY_HARDNESS, 160.0, false, 0, NULL);
    (void)state;

    assert_close(ts_agma_cycle_factor_bending(&carburised, 1e3, 0, NULL), 2.7, 0.01);
    assert_close(ts_agma_cycle_factor_bending(&nitrided, 1e3, 0, NULL), 2.0, 0.01);
    assert_close(ts_agma_cycle_factor_bending(&soft, 1e3, 0, NULL), 1.6, 0.01);
    assert_close(ts_agma_cycle_factor_contact(&carburised, 1e4, 0, NULL), 1.47, 0.005);
    assert_close(ts_agma_cycle_factor_contact(&nitrided, 1e4, 0, NULL), 1.1, 0.005);
    assert_same_double(ts_agma_cycle_factor_bending(&carburised, 1.0, 0, NULL),
                       ts_agma_cycle_factor_bending(&carburised, 1e3, 0, NULL));
    assert_nan(ts_agma_cycle_factor_bending(&carburised, 0.0, 0, NULL));
}

static void strength_never_grows_with_cycles(void **state)
{
    (void)state;
    for (int line = 0; line <= TS_AGMA_LINE_BY_HARDNESS; line++)
        for (int critical = 0; critical < 2; critical++) {
            const ts_agma_life life =
                ts_agma_life_of((ts_agma_life_line)line, 300.0, critical == 1, 0, NULL);
            double Y = INFINITY, Z = INFINITY;

            for (double n_L = 1.0; n_L < 1e12; n_L *= 1.7) {
                const double Y_N = ts_agma_cycle_factor_bending(&life, n_L, 0, NULL);
                const double Z_N = ts_agma_cycle_factor_contact(&life, n_L, 0, NULL);
                assert_true(Y_N <= Y && Z_N <= Z && Y_N > 0.0 && Z_N > 0.0);
                Y = Y_N;
                Z = Z_N;
            }
        }
}

static void critical_service_is_the_lower_line(void **state)
{
    const ts_agma_life usual = ts_agma_life_of(TS_AGMA_LINE_CASE_CARBURISED, NAN, false, 0, NULL);
    const ts_agma_life critical = ts_agma_life_of(TS_AGMA_LINE_CASE_CARBURISED, NAN, true, 0, NULL);
    (void)state;

    assert_true(ts_agma_cycle_factor_bending(&critical, 1e9, 0, NULL) <
                ts_agma_cycle_factor_bending(&usual, 1e9, 0, NULL));
    assert_true(ts_agma_cycle_factor_contact(&critical, 1e9, 0, NULL) <
                ts_agma_cycle_factor_contact(&usual, 1e9, 0, NULL));
}

/* ---- strength ----------------------------------------------------------------------------------
 */

/* ANSI/AGMA 2101-D04, table 11 (from memory). */
static void reliability_factors_are_those_of_the_table(void **state)
{
    static const double rows[][2] = {
        {0.9999, 1.50}, {0.999, 1.25}, {0.99, 1.00}, {0.9, 0.85}, {0.5, 0.70}};
    (void)state;
    for (size_t i = 0; i < 5; i++)
        assert_close(ts_agma_reliability_factor(rows[i][0], NULL), rows[i][1], 1e-12);
    assert_nan(ts_agma_reliability_factor(0.49, NULL));
    assert_nan(ts_agma_reliability_factor(0.99999, NULL));
    assert_nan(ts_agma_reliability_factor(NAN, NULL));
}

/* Shigley's fit (from memory): R = 0.95 gives 0.885 in example 14-8; it stays within 2 % of the
 * table. */
static void fit_of_reliability_stays_near_the_table(void **state)
{
    (void)state;
    assert_close(ts_agma_reliability_fit(0.95, NULL), 0.885, 6e-4);
    for (double fails = 0.5; fails > 1.01e-4; fails *= 0.9)
        assert_close(ts_agma_reliability_fit(1.0 - fails, NULL),
                     ts_agma_reliability_factor(1.0 - fails, NULL), 0.02);
}

static void temperature_counts_above_120_degrees_only(void **state)
{
    (void)state;
    assert_same_double(ts_agma_temperature_factor(393.15, NULL), 1.0);
    assert_close(ts_agma_temperature_factor(393.15 * 1.05, NULL), 1.05, 1e-14);
    assert_nan(ts_agma_temperature_factor(-1.0, NULL));
}

/* ANSI/AGMA 2101-D04, clause 16 (from memory): 70 % for idlers.  derived: Goodman's line with an
 * endurance ratio of 0.4 gives (1 + 0.4)/2. */
static void idlers_bear_seven_tenths_and_one_sided_teeth_all(void **state)
{
    (void)state;
    assert_close(ts_agma_reversal_factor(1.0, 0, NULL), 0.7, 1e-14);
    assert_same_double(ts_agma_reversal_factor(0.0, 0, NULL), 1.0);
    /* derived: an amplitude of (1 + q)/2 and a mean of (1 - q)/2 of the stress, on that line. */
    for (double q = 0.0; q <= 1.0; q += 0.125) {
        const double s = ts_agma_reversal_factor(q, 1, NULL);
        assert_close(s * (1.0 + q) / 2.0 + 0.4 * s * (1.0 - q) / 2.0, (1.0 + 0.4) / 2.0, 1e-14);
    }
    assert_nan(ts_agma_reversal_factor(1.1, 0, NULL));
}

/* Shigley, example 14-4 (from memory): 240 on 200 HB, m_G = 52/17: 1.005. */
static void harder_pinions_work_the_wheel(void **state)
{
    ts_agma_hardness in = {.H_B1 = 240.0, .H_B2 = 200.0, .m_G = 52.0 / 17.0};
    (void)state;

    assert_close(ts_agma_hardness_factor(&in, NULL), 1.005, 5e-4);
    in.H_B1 = 230.0; /* below a ratio of 1.2 */
    assert_same_double(ts_agma_hardness_factor(&in, NULL), 1.0);
    assert_close(ts_agma_hardness_slope(340.0, 200.0, NULL), 0.00698, 2e-3);
    assert_same_double(ts_agma_hardness_slope(400.0, 200.0, NULL), 0.00698);
    in.wheel_hard = true;
    assert_same_double(ts_agma_hardness_factor(&in, NULL), 1.0);
}

/* derived: 0.00075 (450 - H_B2) on a perfectly smooth pinion, and nothing on a very rough one. */
static void smooth_hard_pinions_work_the_wheel_most(void **state)
{
    ts_agma_hardness in = {.H_B2 = 300.0, .m_G = 3.0, .pinion_hard = true, .R_a = 0.0};
    (void)state;

    assert_close(ts_agma_hardness_factor(&in, NULL), 1.1125, 1e-14);
    in.R_a = 100e-6;
    assert_close(ts_agma_hardness_factor(&in, NULL), 1.0, 1e-6);
    in.R_a = NAN;
    assert_nan(ts_agma_hardness_factor(&in, NULL));
}

/* ---- stress ------------------------------------------------------------------------------------
 */

/* ANSI/AGMA 2101-D04, table of Z_E (from memory): steel on steel 191 sqrt(N/mm2), E = 2e5, 0.3. */
static void elastic_coefficient_of_steel(void **state)
{
    (void)state;
    assert_close(ts_agma_elastic_coefficient(206e9, 0.3, 206e9, 0.3, NULL), 190e3, 2e-3);
    assert_close(ts_agma_elastic_coefficient(2.07e11, 0.3, 2.07e11, 0.3, NULL) / sqrt(6894.757),
                 2290.0, 3e-3);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(dynamic_factor_of_q_v_6),
        cmocka_unit_test(both_accuracy_scales_draw_the_same_curves),
        cmocka_unit_test(dynamic_factor_is_one_at_rest_and_grows),
        cmocka_unit_test(very_accurate_gears_take_the_upper_end_of_what_is_granted),
        cmocka_unit_test(transmission_accuracy_follows_the_single_pitch_tolerance),
        cmocka_unit_test(pinion_proportion_hangs_together),
        cmocka_unit_test(alignment_constants_agree_with_the_metric_edition),
        cmocka_unit_test(a_better_box_spreads_the_load_better),
        cmocka_unit_test(boxes_are_found_by_name),
        cmocka_unit_test(rim_factor_begins_at_one),
        cmocka_unit_test(size_factor_has_the_same_metric_form),
        cmocka_unit_test(every_line_of_life_meets_the_upper_one_at_the_knee),
        cmocka_unit_test(the_carburised_exponent_is_0_1192),
        cmocka_unit_test(lines_of_life_begin_where_the_figures_do),
        cmocka_unit_test(strength_never_grows_with_cycles),
        cmocka_unit_test(critical_service_is_the_lower_line),
        cmocka_unit_test(reliability_factors_are_those_of_the_table),
        cmocka_unit_test(fit_of_reliability_stays_near_the_table),
        cmocka_unit_test(temperature_counts_above_120_degrees_only),
        cmocka_unit_test(idlers_bear_seven_tenths_and_one_sided_teeth_all),
        cmocka_unit_test(harder_pinions_work_the_wheel),
        cmocka_unit_test(smooth_hard_pinions_work_the_wheel_most),
        cmocka_unit_test(elastic_coefficient_of_steel),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
