/* Does a rate file answer what the rooms below compute, and does it say where a pair can be? */
#include "element/cylindrical_pair.h"
#include "rate/rated_file.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const double degree = 3.14159265358979323846 / 180.0;

#define assert_number(study, address, expected)                                                    \
    assert_close(ts_study_number((study), (address)), (expected), 0.0)

static void geometry_is_that_of_the_pair(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in = {.z_1     = 23,
                                          .z_2     = 38,
                                          .m_n     = 1.5e-3,
                                          .alpha_n = 20.0 * degree,
                                          .beta    = 15.0 * degree,
                                          .b_1     = 14e-3,
                                          .b_2     = 12e-3,
                                          .x_1     = 0.2,
                                          .x_2     = -0.1,
                                          .rack    = ts_basic_rack_A};
    ts_cylindrical_pair             pair;
    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    ts_study *study = rated_element(
        "gear pair",
        "z_1: 23, z_2: 38, m_n: 1.5 mm, beta: 15 deg, b_1: 14 mm, b_2: 12 mm, x_1: 0.2, x_2: -0.1");
    assert_number(study, "gear pair/one:a_w", pair.a_w);
    assert_number(study, "gear pair/one:eps_alpha", pair.eps_alpha);
    assert_number(study, "gear pair/one:eps_beta", pair.eps_beta);
    assert_number(study, "gear pair/one:d_Ff1", pair.d_Ff1);
    assert_number(study, "gear pair/one:s_an2", pair.s_an2);
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    ts_study_close(study);
}

/* "Elements of Metric Gear Technology" (SDP/SI), section 10: m 3, 24 teeth, x 0.4, span over 4
 * (spur) and 5 teeth (25 degrees); from memory, as in tests/element/test_measurement.c. */
static void printed_spans_come_out(void **state)
{
    (void)state;
    ts_study *spur = rated_element("tooth measurement", "z: 24, m_n: 3 mm, x: 0.4");
    assert_close(ts_study_number(spur, "tooth measurement/one:W_k"), 32.8266e-3, 2e-6);
    ts_study_close(spur);
    ts_study *helical =
        rated_element("tooth measurement", "z: 24, m_n: 3 mm, beta: 25 deg, x: 0.4, k_W: 5");
    assert_close(ts_study_number(helical, "tooth measurement/one:W_k"), 42.0085e-3, 2e-6);
    ts_study_close(helical);
}

/* ISO 6336-5:2016, table 1 (from memory): MQ of case-hardened steel from 660 to 800 HV. */
static void hard_flanks_below_their_grade_are_refused(void **state)
{
    (void)state;
    ts_study *soft = rated_element("material", "row: case-carburised MQ, hardness: 650");
    assert_non_null(finding_of(soft, "rate-range-hardness"));
    assert_string_equal(finding_of(soft, "rate-range-hardness")->level, "refuse");
    assert_close(finding_of(soft, "rate-range-hardness")->limit, 660.0, 0.0);
    ts_study_close(soft);
    ts_study *hard = rated_element("material", "row: case-carburised MQ, hardness: 850");
    assert_string_equal(finding_of(hard, "rate-range-hardness")->level, "warn");
    ts_study_close(hard);
    ts_study *between = rated_element("material", "row: case-carburised MQ, hardness: 660");
    assert_null(finding_of(between, "rate-range-hardness"));
    ts_study_close(between);
}

/* ISO 53, profile A: h - rho*(1 - sin(alpha)) is 1 module, so that 17.097 teeth need no shift
 * (derived). */
static void undercut_teeth_are_not_measured_in_silence(void **state)
{
    (void)state;
    ts_study *undercut = rated_element("tooth measurement", "z: 17, m_n: 2 mm");
    assert_non_null(finding_of(undercut, "rate-undercut"));
    ts_study_close(undercut);
    ts_study *whole = rated_element("tooth measurement", "z: 18, m_n: 2 mm");
    assert_null(finding_of(whole, "rate-undercut"));
    ts_study_close(whole);
}

/* What is proposed holds, to the next digit. */
static void axes_too_far_apart_are_told_how_near(void **state)
{
    (void)state;
    const char *keys = "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, b_2: 20 mm, x_1: 0, x_2: 0, "
                       "a_w: ";
    char        text[200];
    (void)snprintf(text, sizeof text, "%s200 mm", keys);
    ts_study              *far     = rated_element("gear pair", text);
    const ts_finding_view *finding = finding_of(far, "rate-contact-ratio");
    assert_non_null(finding);
    assert_close(finding->limit, 91e-3, 1e-12); /* both tip radii */
    assert_non_null(strstr(finding->remedy, "at most 88.5004 mm"));
    ts_study_close(far);
    (void)snprintf(text, sizeof text, "%s88.5004 mm", keys);
    ts_study *near = rated_element("gear pair", text);
    assert_null(finding_of(near, "rate-contact-ratio"));
    ts_study_close(near);
}

static void a_centre_distance_that_no_shift_reaches_is_refused(void **state)
{
    (void)state;
    ts_study *study = rated_element(
        "gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, b_2: 20 mm, a_w: 100 mm");
    assert_non_null(finding_of(study, "rate-no-geometry"));
    assert_null(finding_of(study, "rate-interference-1"));
    ts_study_close(study);
}

/* derived: a tooth that is thinner by E_sn has a span that is shorter by E_sn*cos(alpha_n). */
static void an_allowance_shortens_the_span(void **state)
{
    (void)state;
    ts_study *study = rated_element(
        "tooth measurement", "z: 45, m_n: 2 mm, alpha_n: 25 deg, E_sns: -0.04 mm, E_sni: -0.07 mm");
    const double plain = ts_study_number(study, "tooth measurement/one:W_k");
    const double upper = ts_study_number(study, "tooth measurement/one:W_k@upper");
    const double lower = ts_study_number(study, "tooth measurement/one:W_k@lower");
    assert_close(plain - upper, 0.04e-3 * cos(25.0 * degree), 1e-10);
    assert_close(plain - lower, 0.07e-3 * cos(25.0 * degree), 1e-10);
    ts_study_close(study);
}

/* derived: at the nominal distance thinner teeth open (E_1 + E_2)*cos(alpha_n) along the normal. */
static void allowances_open_the_backlash(void **state)
{
    (void)state;
    ts_study *study =
        rated_element("gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 0.2, x_2: 0.1, "
                                   "E_sns1: -0.04 mm, E_sns2: -0.05 mm");
    assert_close(ts_study_number(study, "gear pair/one:j_bn@least backlash"),
                 0.09e-3 * cos(20.0 * degree), 1e-9);
    /* One allowance a gear is taken for both of its ends. */
    assert_close(ts_study_number(study, "gear pair/one:j_bn@most backlash"),
                 0.09e-3 * cos(20.0 * degree), 1e-9);
    ts_study_close(study);
}

/* A wider distance opens an external mesh and closes an internal one. */
static void deviations_of_the_distance_know_which_way(void **state)
{
    (void)state;
    const char *const pairs[2] = {"z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, E_sns1: -0.05 mm, "
                                  "E_sni1: -0.05 mm, A_ae: 0.02 mm, A_ai: -0.02 mm",
                                  "z_1: 25, z_2: -62, m_n: 2 mm, b_1: 20 mm, E_sns1: -0.05 mm, "
                                  "E_sni1: -0.05 mm, A_ae: 0.02 mm, A_ai: -0.02 mm"};
    for (int i = 0; i < 2; i++) {
        ts_study    *study = rated_element("gear pair", pairs[i]);
        const double least = ts_study_number(study, "gear pair/one:j_bn@least backlash");
        const double most  = ts_study_number(study, "gear pair/one:j_bn@most backlash");
        assert_true(least > 0.0 && most > least + 0.02e-3);
        ts_study_close(study);
    }
}

/* ---- what cannot be -------------------------------------------------------------------------- */

/* A file that is wrong, the rule that says so, and the file again with the number that the finding
 * told in place of %s. */
typedef struct remedy {
    const char *kind, *wrong, *rule, *before, *right;
} remedy;

static const remedy remedies[] = {
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, a_w: 80 mm", "rate-no-geometry",
     "above ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 0, x_2: 0, a_w: %s mm"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: -1, x_2: -1.5", "rate-no-geometry",
     "above ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: %s, x_2: -1.5"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, k_1: -2.5", "rate-no-geometry",
     "above ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, d_a1: %s mm, d_a2: 128 mm"},
    {"gear pair", "z_1: 20, z_2: -22, m_n: 2 mm, alpha_n: 20 deg, b_1: 20 mm", "rate-no-geometry",
     "below ", "z_1: 20, z_2: -22, m_n: 2 mm, alpha_n: 20 deg, b_1: 20 mm, k_2: %s"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, rho_fPs: 0.6", "rate-no-geometry",
     "at most ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, rho_fPs: %s"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, h_fPs: 2.3", "rate-no-geometry",
     "below ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, h_fPs: %s"},
    {"gear pair", "z_1: 12, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 1.2", "rate-pointed-tip-1",
     "at most ", "z_1: 12, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 1.2, d_a1: %s mm, d_a2: 128 mm"},
    {"gear pair", "z_1: 12, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 0.75", "rate-thin-tip-1",
     "at most ", "z_1: 12, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 0.75, d_a1: %s mm, d_a2: 128 mm"},
    {"gear pair", "z_1: 12, z_2: 62, m_n: 2 mm, b_1: 20 mm", "rate-undercut-1", "at least ",
     "z_1: 12, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: %s"},
    {"gear pair", "z_1: 9, z_2: 38, m_n: 2 mm, b_1: 20 mm", "rate-interference-1", "at least ",
     "z_1: 9, z_2: 38, m_n: 2 mm, b_1: 20 mm, x_1: %s"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, k_1: 0.6", "rate-tip-clearance-1",
     "at most ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, d_a1: %s mm, d_a2: 128 mm"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, d_a1: 54 mm, d_a2: 131.5 mm",
     "rate-interference-1", "at most ",
     "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, d_a1: 54 mm, d_a2: %s mm"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 0.2, x_2: 0.2, a_w: 87.2 mm",
     "rate-clash", "at least ",
     "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, x_1: 0.2, x_2: 0.2, a_w: %s mm"},
    {"gear pair", "z_1: 20, z_2: -80, m_n: 2 mm, b_1: 20 mm, x_1: 0, x_2: 0, a_w: 60.5 mm",
     "rate-clash", "at most ",
     "z_1: 20, z_2: -80, m_n: 2 mm, b_1: 20 mm, x_1: 0, x_2: 0, a_w: %s mm"},
    {"gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, E_sns1: 0.02 mm", "rate-backlash",
     "another ", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, E_sns1: 0.02 mm, E_sns2: -%s mm"},
    {"bevel pair", "z_1: 20, z_2: 60, m_et: 3 mm, b: 18 mm, Sigma: 120 deg", "rate-no-geometry",
     "below ", "z_1: 20, z_2: 60, m_et: 3 mm, b: 18 mm, Sigma: %s deg"},
    {"bevel pair", "z_1: 20, z_2: 30, m_et: 3 mm, b: 20 mm", "rate-wide-face", "at most ",
     "z_1: 20, z_2: 30, m_et: 3 mm, b: %s mm"},
    {"tooth measurement", "z: 30, m_n: 2 mm, k: -3", "rate-no-geometry", "at least ",
     "z: 30, m_n: 2 mm, k: %s"},
};

/* 20 degrees, full tips: 40 teeth strike those of a ring of 48, and pass those of one of 49
 * (tests/element/test_mating_limit.c). */
static void a_ring_with_nearly_as_many_teeth_is_refused(void **state)
{
    (void)state;
    ts_study *tight = rated_element("gear pair", "z_1: 40, z_2: -48, m_n: 2 mm, b_1: 20 mm");
    const ts_finding_view *finding = finding_of(tight, "rate-passing-tips");
    assert_non_null(finding);
    assert_true(finding->value < 0.0 && strstr(finding->remedy, "k_1 = -0.0") != NULL);
    ts_study_close(tight);
    ts_study *roomy = rated_element("gear pair", "z_1: 40, z_2: -49, m_n: 2 mm, b_1: 20 mm");
    assert_null(finding_of(roomy, "rate-passing-tips"));
    ts_study_close(roomy);
    ts_study *cut = rated_element(
        "gear pair", "z_1: 40, z_2: -48, m_n: 2 mm, b_1: 20 mm, k_1: -0.05, k_2: -0.05");
    assert_null(finding_of(cut, "rate-passing-tips"));
    ts_study_close(cut);
}

static void a_tolerance_without_a_width_is_not_blamed_for_it(void **state)
{
    (void)state;
    ts_study *study = rated_element("tolerance", "m_n: 2 mm, z: 25, class: 5");
    assert_null(finding_of(study, "rate-range-width"));
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    ts_study_close(study);
    ts_study *narrow = rated_element("tolerance", "m_n: 2 mm, z: 25, class: 5, b: 3 mm");
    assert_non_null(finding_of(narrow, "rate-range-width"));
    ts_study_close(narrow);
}

/* The number behind a word of the finding's advice, as it would be typed in. */
static void copy_number(const char *says, const char *before, char *out, size_t room)
{
    const char *at = says != NULL ? strstr(says, before) : NULL;
    if (at == NULL)
        fail_msg("`%s` says nothing behind `%s`", says != NULL ? says : "", before);
    while (strchr("0123456789-", *at) == NULL)
        at++;
    const size_t length = strspn(at, "0123456789.-e");
    assert_true(length > 0 && length < room);
    memcpy(out, at, length);
    out[length] = '\0';
}

static void what_cannot_be_names_the_nearest_that_can(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof remedies / sizeof remedies[0]; i++) {
        const remedy          *r = &remedies[i];
        char                   number[64], keys[512];
        ts_study              *study   = rated_element(r->kind, r->wrong);
        const ts_finding_view *finding = finding_of(study, r->rule);
        if (finding == NULL)
            fail_msg("%s: no finding %s", r->wrong, r->rule);
        assert_true(isfinite(finding->value) && isfinite(finding->limit));
        copy_number(finding->remedy, r->before, number, sizeof number);
        ts_study_close(study);

        const char *hole = strstr(r->right, "%s");
        snprintf(keys, sizeof keys, "%.*s%s%s", (int)(hole - r->right), r->right, number, hole + 2);
        study = rated_element(r->kind, keys);
        if (finding_of(study, r->rule) != NULL)
            fail_msg("%s: still %s", keys, r->rule);
        ts_study_close(study);
    }
}

static void a_short_path_names_longer_tips(void **state)
{
    (void)state;
    char      k_1[64], k_2[64], keys[256];
    ts_study *study =
        rated_element("gear pair", "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, k_1: -0.6, k_2: -0.6");
    const ts_finding_view *finding = finding_of(study, "rate-contact-ratio");
    assert_non_null(finding);
    assert_int_equal(ts_study_verdict(study), TS_DOES_NOT_HOLD);
    copy_number(strstr(finding->remedy, "k_1 = ") + 4, "= ", k_1, sizeof k_1);
    copy_number(strstr(finding->remedy, "k_2 = ") + 4, "= ", k_2, sizeof k_2);
    ts_study_close(study);
    snprintf(keys, sizeof keys, "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 20 mm, k_1: %s, k_2: %s", k_1,
             k_2);
    study = rated_element("gear pair", keys);
    assert_null(finding_of(study, "rate-contact-ratio"));
    assert_close(ts_study_number(study, "gear pair/one:eps_alpha"), 1.0, 1e-4);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(geometry_is_that_of_the_pair),
        cmocka_unit_test(printed_spans_come_out),
        cmocka_unit_test(hard_flanks_below_their_grade_are_refused),
        cmocka_unit_test(undercut_teeth_are_not_measured_in_silence),
        cmocka_unit_test(axes_too_far_apart_are_told_how_near),
        cmocka_unit_test(a_centre_distance_that_no_shift_reaches_is_refused),
        cmocka_unit_test(an_allowance_shortens_the_span),
        cmocka_unit_test(allowances_open_the_backlash),
        cmocka_unit_test(deviations_of_the_distance_know_which_way),
        cmocka_unit_test(what_cannot_be_names_the_nearest_that_can),
        cmocka_unit_test(a_short_path_names_longer_tips),
        cmocka_unit_test(a_ring_with_nearly_as_many_teeth_is_refused),
        cmocka_unit_test(a_tolerance_without_a_width_is_not_blamed_for_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
