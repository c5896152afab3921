/* Does `inverse` of a gear pair find the load, the life and the width that it says?  Each answer is
 * put back into a file as what is given, and rated anew.
 */
#include "rate/rated_file.h"
#include "rating/iso6336/life_limit.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#define TEETH "z_1: 25, z_2: 62, m_n: 2 mm, x_1: 0.2"
#define WIDTH "b_1: 22 mm, b_2: 20 mm"
#define MAKE                                                                                       \
    "material 1: case-carburised MQ, material 2: case-carburised MQ, accuracy 1: 5, accuracy 2: "  \
    "5, R_z1: 2.5 um, R_z2: 2.5 um, R_zF1: 8 um, R_zF2: 8 um, nu_40: 27 cSt"
#define RUN    "n_1: 9000 rpm, K_A: 1.1"
#define FACE   "F_betax: 9 um"
#define TORQUE "T_1: 190 N.m"
#define LIFE   "L_h: 4000 h"

static const char *const safeties[4] = {"S_H1", "S_H2", "S_F1", "S_F2"};

/* A gear pair of these keys, rated. */
static ts_study *rated(const char *format, ...)
{
    char    keys[3000];
    va_list parts;
    va_start(parts, format);
    const int length = vsnprintf(keys, sizeof keys, format, parts);
    va_end(parts);
    assert_true(length > 0 && (size_t)length < sizeof keys);
    return rated_element("gear pair", keys);
}

static double number(ts_study *study, const char *symbol, const char *behind)
{
    char address[120];
    (void)snprintf(address, sizeof address, "gear pair/one:%s%s", symbol, behind);
    return ts_study_number(study, address);
}

/* The least of the four safeties, each over its own minimum, less 1. */
static double reserve_of(ts_study *study, const char *behind, double S_Hmin, double S_Fmin)
{
    double least = INFINITY;
    for (int i = 0; i < 4; i++)
        least = fmin(least, number(study, safeties[i], behind) / (i < 2 ? S_Hmin : S_Fmin));
    return least - 1.0;
}

/* What the section says of its safeties is what the file says that has the answer for its input. */
static void assert_proved(ts_study *asked, const char *behind, ts_study *again, double S_Hmin,
                          double S_Fmin)
{
    for (int i = 0; i < 4; i++)
        assert_close(number(asked, safeties[i], behind), number(again, safeties[i], "@ISO 6336"),
                     1e-9);
    assert_close_abs(reserve_of(again, "@ISO 6336", S_Hmin, S_Fmin), 0.0, 1e-9);
    assert_close_abs(number(asked, "reserve", behind), 0.0, 1e-9);
}

/* derived: an answer is right when rating at it gives back what was wanted. */
static void rating_at_the_allowable_load_has_the_safeties_wanted(void **state)
{
    (void)state;
    static const char *const faces[] = {"F_betax: 9 um", "K_Hbeta: 1.2",
                                        "F_betax: 25 um, edition: 2006"};
    for (size_t i = 0; i < sizeof faces / sizeof faces[0]; i++) {
        ts_study *asked =
            rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " TORQUE ", " LIFE
                        ", %s, inverse: {life: no, width: no, L_h: 12000 h, S_Fmin: 1.6}",
                  faces[i]);
        const double T_1 = number(asked, "T_1", "@allowable load");
        ts_study    *again =
            rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", L_h: 12000 h, S_Fmin: 1.6, %s"
                        ", T_1: %.17g N.m",
                  faces[i], T_1);
        assert_proved(asked, "@allowable load", again, 1.0, 1.6);
        assert_close(number(asked, "P", "@allowable load"),
                     T_1 * 9000.0 * 3.14159265358979323846 / 30.0, 1e-12);
        assert_close(number(asked, "load_factor", "@allowable load"), T_1 / 190.0, 1e-12);
        ts_study_close(asked);
        ts_study_close(again);
    }
}

/* ISO 6336-1, clause 7: the part of the misalignment from the shafts goes with their load. */
static void the_deflection_of_the_shafts_goes_with_the_load(void **state)
{
    (void)state;
    ts_study    *asked = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " TORQUE ", " LIFE
                                     ", f_sh: 6 um, f_ma: 8 um, inverse: {life: no, width: no}");
    const double T_1   = number(asked, "T_1", "@allowable load");
    const double f_sh  = 6.0 * T_1 / 190.0;
    ts_study    *again = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " LIFE
                                     ", T_1: %.17g N.m, f_sh: %.17g um, f_ma: 8 um",
                               T_1, f_sh);
    assert_proved(asked, "@allowable load", again, 1.0, 1.25);
    ts_study_close(asked);
    ts_study_close(again);

    /* Without a torque nobody knows under which load they bend so much. */
    asked                          = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " LIFE
                                                 ", f_sh: 6 um, f_ma: 8 um, inverse: {life: no, width: no}");
    const ts_finding_view *finding = finding_of(asked, "rate-missing-input");
    assert_non_null(finding);
    assert_non_null(strstr(finding->says, "T_1"));
    ts_study_close(asked);
}

static void the_allowable_load_needs_no_load_to_begin_with(void **state)
{
    (void)state;
    ts_study *with    = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " TORQUE ", " LIFE ", " FACE
                                    ", inverse: {life: no, width: no}");
    ts_study *without = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " LIFE ", " FACE
                                    ", inverse: {life: no, width: no}");
    assert_close(number(with, "T_1", "@allowable load"), number(without, "T_1", "@allowable load"),
                 1e-11);
    assert_null(finding_of(without, "rate-missing-input"));
    ts_study_close(with);
    ts_study_close(without);
}

static void rating_at_the_life_has_the_safeties_wanted(void **state)
{
    (void)state;
    static const double torques[] = {120.0, 180.0, 210.0, 240.0};
    for (size_t i = 0; i < sizeof torques / sizeof torques[0]; i++) {
        ts_study    *asked = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " FACE
                                         ", T_1: %g N.m, inverse: {load: no, width: no}",
                                   torques[i]);
        const double L_h   = number(asked, "L_h", "@life");
        assert_true(isfinite(L_h) && L_h > 0.0);
        ts_study *again =
            rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " FACE ", T_1: %g N.m, L_h: %.17g s",
                  torques[i], L_h);
        assert_proved(asked, "@life", again, 1.0, 1.25);
        ts_study_close(asked);
        ts_study_close(again);
    }
}

/* Every place by itself: at its own life its own safety is the one wanted. */
static void each_flank_and_root_has_a_life_of_its_own(void **state)
{
    (void)state;
    static const char *const lives[4] = {"L_hH1", "L_hH2", "L_hF1", "L_hF2"};
    ts_study                *asked    = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " FACE
                                                    ", T_1: 210 N.m, inverse: {load: no, width: no, S_Hmin: 1.1}");
    double                   least    = INFINITY;
    for (int i = 0; i < 4; i++) {
        const double L_h   = number(asked, lives[i], "@life");
        ts_study    *again = rated(
               TEETH ", " WIDTH ", " MAKE ", " RUN ", " FACE ", T_1: 210 N.m, L_h: %.17g s", L_h);
        assert_close(number(again, safeties[i], "@ISO 6336"), i < 2 ? 1.1 : 1.25, 1e-9);
        least = fmin(least, L_h);
        ts_study_close(again);
    }
    assert_close(number(asked, "L_h", "@life"), least, 1e-15);
    ts_study_close(asked);
}

/* ISO 6336-2 and -3: with a life factor of 1 at 1e10 cycles the last line is level. */
static void a_life_without_end_says_so(void **state)
{
    (void)state;
    static const char best[] = "Z_NTlong1: 1, Z_NTlong2: 1, Y_NTlong1: 1, Y_NTlong2: 1";
    ts_study         *asked  = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " FACE
                                           ", T_1: 20 N.m, %s, inverse: {load: no, width: no}",
                                     best);
    assert_true(isinf(number(asked, "L_h", "@life")));
    assert_true(reserve_of(asked, "@life", 1.0, 1.25) > 0.0);
    ts_study_close(asked);
}

static void a_load_above_static_strength_has_no_life(void **state)
{
    (void)state;
    ts_study *asked = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " FACE
                                  ", T_1: 4000 N.m, inverse: {load: no, width: no}");
    assert_close_abs(number(asked, "L_h", "@life"), 0.0, 0.0);
    assert_true(reserve_of(asked, "@life", 1.0, 1.25) < 0.0);
    ts_study_close(asked);
}

static void rating_at_the_least_width_has_the_safeties_wanted(void **state)
{
    (void)state;
    static const char *const kinds[] = {"beta: 0 deg", "beta: 18 deg",
                                        "beta: 18 deg, profile: by analysis"};
    for (size_t i = 0; i < sizeof kinds / sizeof kinds[0]; i++) {
        ts_study *asked = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", " TORQUE ", " LIFE ", " FACE
                                      ", %s, inverse: {load: no, life: no, S_Fmin: 1.7}",
                                kinds[i]);
        const double b  = number(asked, "b_min", "@least width");
        assert_true(b > 2e-3 && b < 100e-3);
        ts_study *again = rated(TEETH ", b_1: %.17g mm, b_2: %.17g mm, " MAKE ", " RUN ", " TORQUE
                                      ", " LIFE ", " FACE ", %s, S_Fmin: 1.7",
                                (b + 2e-3) * 1e3, b * 1e3, kinds[i]);
        assert_proved(asked, "@least width", again, 1.0, 1.7);
        ts_study *less = rated(TEETH ", b_1: %.17g mm, b_2: %.17g mm, " MAKE ", " RUN ", " TORQUE
                                     ", " LIFE ", " FACE ", %s, S_Fmin: 1.7",
                               (b + 2e-3) * 1e3 - 1e-3, b * 1e3 - 1e-3, kinds[i]);
        assert_true(reserve_of(less, "@ISO 6336", 1.0, 1.7) < 0.0);
        ts_study_close(asked);
        ts_study_close(again);
        ts_study_close(less);
    }
}

static void a_width_that_cannot_be_is_refused(void **state)
{
    (void)state;
    ts_study *asked = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", T_1: 900 N.m, " LIFE ", " FACE
                                  ", inverse: {load: no, life: no, b_high: 30 mm}");
    const ts_finding_view *finding = finding_of(asked, "rate-no-width");
    assert_non_null(finding);
    assert_true(finding->value < 0.0);
    assert_non_null(strstr(finding->says, "30 mm"));
    ts_study_close(asked);

    asked = rated(TEETH ", " WIDTH ", " MAKE ", " RUN ", T_1: 9 N.m, " LIFE ", " FACE
                        ", inverse: {load: no, life: no, b_low: 12 mm}");
    assert_close(number(asked, "b_min", "@least width"), 12e-3, 1e-15);
    assert_true(reserve_of(asked, "@least width", 1.0, 1.25) > 0.0);
    ts_study_close(asked);
}

static void what_a_question_lacks_is_named(void **state)
{
    (void)state;
    ts_study *asked =
        rated(TEETH ", " WIDTH ", " MAKE ", " FACE ", inverse: {load: no, life: no}");
    const ts_finding_view *finding = finding_of(asked, "rate-missing-input");
    assert_non_null(finding);
    assert_non_null(strstr(finding->says, "T_1"));
    assert_non_null(strstr(finding->says, "L_h"));
    assert_non_null(strstr(finding->says, "n_1"));
    ts_study_close(asked);
}

/* derived: a function and its inverse, on every line of every class. */
static void life_factors_and_lives_are_inverse_to_each_other(void **state)
{
    (void)state;
    for (int class = 0; class < TS_GEAR_CLASS_COUNT; class ++) {
        for (int kind = 0; kind < 3; kind++) { /* contact, contact with pits, bending */
            const ts_rated_stress stress = kind < 2 ? TS_RATED_CONTACT : TS_RATED_BENDING;
            const ts_life_nodes   nodes =
                kind < 2 ? ts_life_nodes_contact((ts_gear_class) class, kind == 1)
                           : ts_life_nodes_bending((ts_gear_class) class);
            const ts_life_lines lines = ts_life_lines_of(&nodes, 0.85);
            const ts_life_curve curve = ts_life_curve_of(&lines, nodes.at_stat * 1e9, 1e9);
            for (double N = nodes.N_stat * 1.7; N < 1e12; N *= 3.1) {
                const double factor =
                    ts_life_factor(&lines, ts_cycles_of(N), stress, class % 2, NULL);
                const ts_life_limit limit = {.curve  = &curve,
                                             .lines  = &lines,
                                             .stress = stress,
                                             .gear   = class % 2,
                                             .sigma  = factor * 1e9 / 1.3,
                                             .S_min  = 1.3};
                assert_close(ts_life_limit_cycles(&limit, NULL), N, 1e-10);
            }
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rating_at_the_allowable_load_has_the_safeties_wanted),
        cmocka_unit_test(the_deflection_of_the_shafts_goes_with_the_load),
        cmocka_unit_test(the_allowable_load_needs_no_load_to_begin_with),
        cmocka_unit_test(rating_at_the_life_has_the_safeties_wanted),
        cmocka_unit_test(each_flank_and_root_has_a_life_of_its_own),
        cmocka_unit_test(a_life_without_end_says_so),
        cmocka_unit_test(a_load_above_static_strength_has_no_life),
        cmocka_unit_test(rating_at_the_least_width_has_the_safeties_wanted),
        cmocka_unit_test(a_width_that_cannot_be_is_refused),
        cmocka_unit_test(what_a_question_lacks_is_named),
        cmocka_unit_test(life_factors_and_lives_are_inverse_to_each_other),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
