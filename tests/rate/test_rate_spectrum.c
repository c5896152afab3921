/* Does the spectrum of a gear pair add up as its loads do by themselves, and do the answers to
 * `inverse` hold when they are put back into the file?
 */
#include "rate/rated_file.h"

#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#define PAIR                                                                                       \
    "z_1: 25, z_2: 62, m_n: 2 mm, x_1: 0.2, material 1: case-carburised MQ, material 2: "          \
    "case-carburised MQ, accuracy 1: 5, accuracy 2: 5, R_z1: 2.5 um, R_z2: 2.5 um, R_zF1: 8 um, "  \
    "R_zF2: 8 um, nu_40: 27 cSt, K_A: 1.1, F_betax: 9 um"
#define WIDTH "b_1: 22 mm, b_2: 20 mm"

static const char *const safeties[4] = {"S_H1", "S_H2", "S_F1", "S_F2"};

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

/* Three bins, the last on the other flank, torques and times multiplied. */
static ts_study *with_spectrum(double b, double load, double time, const char *more)
{
    return rated(PAIR ", b_1: %.17g mm, b_2: %.17g mm, spectrum: [{T_1: %.17g N.m, n_1: 9000 rpm, "
                      "L_h: %.17g s}, {T_1: %.17g N.m, n_1: 8000 rpm, L_h: %.17g s, K_A: 1.2}, "
                      "{T_1: %.17g N.m, n_1: 2000 rpm, L_h: %.17g s, flank: other}]%s",
                 b + 2.0, b, 95.0 * load, 4000.0 * 3600.0 * time, 130.0 * load,
                 300.0 * 3600.0 * time, 200.0 * load, 5.0 * 3600.0 * time, more);
}

static double reserve_of(ts_study *study, double S_Hmin, double S_Fmin)
{
    double least = INFINITY;
    for (int i = 0; i < 4; i++)
        least = fmin(least, number(study, safeties[i], "@spectrum") / (i < 2 ? S_Hmin : S_Fmin));
    return least - 1.0;
}

/* derived: one load is a spectrum of one bin. */
static void a_spectrum_of_one_bin_is_the_load_itself(void **state)
{
    (void)state;
    ts_study *one = rated(PAIR ", " WIDTH ", T_1: 110 N.m, n_1: 9000 rpm, L_h: 4000 h");
    ts_study *bins =
        rated(PAIR ", " WIDTH ", spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 4000 h}]");
    for (int i = 0; i < 4; i++) {
        const double S = number(one, safeties[i], "@ISO 6336");
        assert_close(number(bins, safeties[i], "@spectrum"), S, 1e-12);
        assert_close(number(bins, safeties[i], "@worst bin"), S, 1e-15);
    }
    ts_study_close(one);
    ts_study_close(bins);
}

/* Palmgren and Miner: two halves of a time are the whole of it, and the order does not matter. */
static void halves_of_a_time_are_the_whole_of_it(void **state)
{
    (void)state;
    ts_study *whole =
        rated(PAIR ", " WIDTH ", spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h},"
                   " {T_1: 140 N.m, n_1: 9000 rpm, L_h: 10 h}]");
    ts_study *parts = rated(PAIR ", " WIDTH ", spectrum: [{T_1: 140 N.m, n_1: 9000 rpm, L_h: 10 h},"
                                 " {T_1: 110 N.m, n_1: 9000 rpm, L_h: 200 h},"
                                 " {T_1: 110 N.m, n_1: 9000 rpm, L_h: 200 h}]");
    for (int i = 0; i < 4; i++)
        assert_close(number(whole, safeties[i], "@spectrum"),
                     number(parts, safeties[i], "@spectrum"), 1e-12);
    ts_study_close(whole);
    ts_study_close(parts);
}

static void what_wears_one_flank_does_not_wear_the_other(void **state)
{
    (void)state;
    static const char bins[] = "spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h}, {T_1: 110 "
                               "N.m, n_1: 9000 rpm, L_h: 400 h, flank: %s}]";
    char              same[160], other[160];
    (void)snprintf(same, sizeof same, bins, "one");
    (void)snprintf(other, sizeof other, bins, "other");
    ts_study *twice = rated(PAIR ", " WIDTH ", %s", same),
             *apart = rated(PAIR ", " WIDTH ", %s", other);
    ts_study *once =
        rated(PAIR ", " WIDTH ", spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h}]");
    assert_close(number(apart, "S_H1", "@spectrum"), number(once, "S_H1", "@spectrum"), 1e-13);
    assert_true(number(twice, "S_H1", "@spectrum") < number(once, "S_H1", "@spectrum"));
    ts_study_close(twice);
    ts_study_close(apart);
    ts_study_close(once);
}

/* derived: an answer is right when rating at it gives back what was wanted. */
static void rating_at_the_answers_has_the_safeties_wanted(void **state)
{
    (void)state;
    ts_study    *asked  = with_spectrum(20.0, 1.0, 1.0, ", inverse: {S_Hmin: 1.05, S_Fmin: 1.6}");
    const double factor = number(asked, "load_factor", "@allowable load");
    const double times  = number(asked, "L_h", "@life") / number(asked, "L_h", "@spectrum");
    const double b      = number(asked, "b_min", "@least width");

    assert_close(number(asked, "L_h", "@spectrum"), 4305.0 * 3600.0, 1e-14);
    ts_study *load = with_spectrum(20.0, factor, 1.0, "");
    ts_study *life = with_spectrum(20.0, 1.0, times, "");
    ts_study *wide = with_spectrum(b * 1e3, 1.0, 1.0, "");
    assert_close_abs(reserve_of(load, 1.05, 1.6), 0.0, 1e-9);
    assert_close_abs(reserve_of(life, 1.05, 1.6), 0.0, 1e-9);
    assert_close_abs(reserve_of(wide, 1.05, 1.6), 0.0, 1e-9);
    ts_study_close(asked);
    ts_study_close(load);
    ts_study_close(life);
    ts_study_close(wide);
}

#define BENT                                                                                       \
    "z_1: 25, z_2: 62, m_n: 2 mm, x_1: 0.2, material 1: case-carburised MQ, material 2: "          \
    "case-carburised MQ, accuracy 1: 5, accuracy 2: 5, R_z1: 2.5 um, R_z2: 2.5 um, R_zF1: 8 um, "  \
    "R_zF2: 8 um, nu_40: 27 cSt, K_A: 1.1, f_sh: 9 um, f_ma: 4 um, b_1: 22 mm, b_2: 20 mm"

/* Second route: f_sh of each bin by hand, 9 um under the greatest T_1*K_A, and their damages, each
 * of a spectrum of one bin, added up. */
static void shafts_bend_with_the_load_of_the_bin(void **state)
{
    (void)state;
    static const char *const damages[4] = {"U_H1", "U_H2", "U_F1", "U_F2"};
    ts_study                *all = rated(BENT ", spectrum: [{T_1: 95 N.m, n_1: 9000 rpm, L_h: "
                                                             "4000 h}, {T_1: 150 N.m, n_1: 8000 rpm, L_h: 300 "
                                                             "h, K_A: 1.2}]");
    ts_study *told = rated(BENT ", spectrum: [{T_1: 95 N.m, n_1: 9000 rpm, L_h: 4000 h, f_sh: "
                                "%.17g um}, {T_1: 150 N.m, n_1: 8000 rpm, L_h: 300 h, K_A: 1.2}]",
                           9.0 * (95.0 * 1.1) / (150.0 * 1.2));
    ts_study *low  = rated(BENT ", spectrum: [{T_1: 95 N.m, n_1: 9000 rpm, L_h: 4000 h, f_sh: "
                                 "%.17g um}]",
                           9.0 * (95.0 * 1.1) / (150.0 * 1.2));
    ts_study *high =
        rated(BENT ", spectrum: [{T_1: 150 N.m, n_1: 8000 rpm, L_h: 300 h, K_A: 1.2}]");

    for (int i = 0; i < 4; i++) {
        assert_close(number(all, safeties[i], "@spectrum"), number(told, safeties[i], "@spectrum"),
                     1e-12);
        const double sum =
            number(low, damages[i], "@spectrum") + number(high, damages[i], "@spectrum");
        assert_true(sum > 0.0);
        assert_close(number(all, damages[i], "@spectrum"), sum, 1e-12);
    }
    ts_study_close(all);
    ts_study_close(told);
    ts_study_close(low);
    ts_study_close(high);
}

static void a_bin_has_a_face_load_of_its_own(void **state)
{
    (void)state;
    ts_study *own = rated(PAIR ", " WIDTH ", spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h, "
                               "K_Hbeta: 1.37}]");

    assert_close(number(own, "K_Hbeta", "@worst bin"), 1.37, 1e-15);
    ts_study_close(own);
    static const char text[] =
        "towershaft rate: 1\ntitle: t\ngear pair:\n  one: {z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 "
        "mm, spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h, K_Hbeta: 1.2, f_sh: 3 um}]}\n";
    const ts_study_options options = {.file = TS_WANT_RATE};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_not_equal(ts_study_read(study, "rate.yaml", text, strlen(text), &options), TS_OK);
    assert_non_null(strstr(ts_study_message(study, 0).says, "more than once"));
    ts_study_close(study);
}

/* Each gear by its own mates: three planets load a flank of the sun three times a turn, and a
 * planet once.  Second route: the damage goes with the cycles. */
static void every_mate_in_a_turn_is_a_load_cycle(void **state)
{
    (void)state;
    static const char spectrum[] =
        "spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h}, {T_1: 140 "
        "N.m, n_1: 9000 rpm, L_h: 10 h}]";
    ts_study *once = rated(PAIR ", " WIDTH ", %s", spectrum);
    ts_study *sun  = rated(PAIR ", " WIDTH ", q_1: 3, %s", spectrum);
    ts_study *ring = rated(PAIR ", " WIDTH ", q_2: 4, %s", spectrum);
    ts_study *load =
        rated(PAIR ", " WIDTH ", q_1: 3, q_2: 2, T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h");

    for (int i = 0; i < 2; i++) {
        const char *first = i == 0 ? "U_H1" : "U_F1", *second = i == 0 ? "U_H2" : "U_F2";
        assert_close(number(sun, first, "@spectrum"), 3.0 * number(once, first, "@spectrum"),
                     1e-13);
        assert_close(number(sun, second, "@spectrum"), number(once, second, "@spectrum"), 1e-15);
        assert_close(number(ring, first, "@spectrum"), number(once, first, "@spectrum"), 1e-15);
        assert_close(number(ring, second, "@spectrum"), 4.0 * number(once, second, "@spectrum"),
                     1e-13);
    }
    const double turns = 400.0 * 60.0 * 9000.0;
    assert_close(number(load, "N_L1", ""), 3.0 * turns, 1e-13);
    assert_close(number(load, "N_L2", ""), 2.0 * turns * 25.0 / 62.0, 1e-13);
    ts_study_close(once);
    ts_study_close(sun);
    ts_study_close(ring);
    ts_study_close(load);
}

static void a_load_is_given_once(void **state)
{
    (void)state;
    static const char text[] =
        "towershaft rate: 1\ntitle: t\ngear pair:\n  one: {z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 "
        "mm, "
        "T_1: 5 N.m, spectrum: [{T_1: 110 N.m, n_1: 9000 rpm, L_h: 400 h}]}\n";
    const ts_study_options options = {.file = TS_WANT_RATE};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_not_equal(ts_study_read(study, "rate.yaml", text, strlen(text), &options), TS_OK);
    assert_non_null(strstr(ts_study_message(study, 0).says, "spectrum"));
    ts_study_close(study);
}

static void what_a_spectrum_lacks_is_named(void **state)
{
    (void)state;
    ts_study *study =
        rated("z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, spectrum: [{T_1: 110 N.m, n_1: "
              "9000 rpm, L_h: 400 h}]");
    const ts_finding_view *finding = finding_of(study, "rate-missing-input");
    assert_non_null(finding);
    assert_non_null(strstr(finding->says, "nu_40"));
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_spectrum_of_one_bin_is_the_load_itself),
        cmocka_unit_test(halves_of_a_time_are_the_whole_of_it),
        cmocka_unit_test(what_wears_one_flank_does_not_wear_the_other),
        cmocka_unit_test(rating_at_the_answers_has_the_safeties_wanted),
        cmocka_unit_test(shafts_bend_with_the_load_of_the_bin),
        cmocka_unit_test(a_bin_has_a_face_load_of_its_own),
        cmocka_unit_test(every_mate_in_a_turn_is_a_load_cycle),
        cmocka_unit_test(a_load_is_given_once),
        cmocka_unit_test(what_a_spectrum_lacks_is_named),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
