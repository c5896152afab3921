/* Is a shaft with an undercut of DIN 509 weaker there by what is cut away, and by its notch? */
#include "support/close.h"
#include "support/read_file.h"

#include "catalog/shaft_undercut.h"
#include "element/notch_factor.h"
#include "rating/shaft/din743.h"
#include "study/study.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* The lp input of the drive of the tests, told section by section: a journal of 25 mm, a body
 * of 31.
 */
static ts_study *study_with(const char *undercut)
{
    static const char      old[]   = "- {teeth: 57, face: 10 mm, rear: hydraulic pump 2}";
    const ts_text          file    = read_file("tests/check/base.yaml");
    const ts_study_options options = {.today = 20000};
    static char            text[100000];
    char                   whole[60000];
    ts_study              *study = NULL;

    assert_true(file.length < sizeof whole);
    memcpy(whole, file.at, file.length);
    whole[file.length] = '\0';
    char *at           = strstr(whole, old);
    assert_non_null(at);
    *at = '\0';
    const int length =
        snprintf(text, sizeof text,
                 "%s- {teeth: 57, face: 10 mm, rear: hydraulic pump 2, sections: [{length: 30 mm, "
                 "outside: 25 mm, bore: 12 mm%s}, {length: 40 mm, outside: 31 mm, bore: 12 mm}, "
                 "{length: 30 mm, outside: 25 mm, bore: 12 mm}]}%s",
                 whole, undercut, at + sizeof old - 1);
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    const ts_status status = ts_study_read(study, "x.yaml", text, (size_t)length, &options);
    free_file(file);
    if (status == TS_OK)
        return study;
    ts_study_close(study);
    return NULL;
}

static const ts_line_notch *first_step(const ts_study *study)
{
    for (uint32_t l = 0; l < study->lines.count; l++)
        for (int n = 0; n < study->lines.lines[l].notch_count; n++)
            if (strcmp(study->lines.lines[l].name, "hydraulic pump 2") == 0 &&
                fabs(study->lines.lines[l].notches[n].x - 0.03) < 1e-9)
                return &study->lines.lines[l].notches[n];
    fail_msg("the step is not there");
    return NULL;
}

/* derived: the nominal stresses of what is left of the journal, 25 - 2*0.3 = 24.4 mm by 12 mm, in
 * the condition that yields first; axial loads are small beside them, and no spur gear has any. */
static void yield_is_that_of_what_is_left(void **state)
{
    (void)state;
    ts_study            *study = study_with(", undercut: F 0.6x0.3");
    const ts_line_notch *notch = first_step(study);
    const double         d = 0.0244, d_i = 0.012, I = pi / 64.0 * (pow(d, 4.0) - pow(d_i, 4.0));
    const double         sigma = notch->M * d / 2.0 / I, tau = notch->T * d / 4.0 / I;
    const double        *FK = notch->ability.sigma_FK;

    assert_int_equal(notch->section.notch, TS_DIN_UNDERCUT);
    assert_close(notch->section.d, d, 1e-12);
    assert_close(notch->section.D_1, 0.025, 1e-12);
    assert_close(notch->section.D, 0.031, 1e-12);
    assert_close(notch->section.r, 0.0006, 1e-12);
    assert_close(notch->S_F, 1.0 / hypot(sigma / FK[TS_DIN_B], tau / FK[TS_DIN_T]), 1e-9);
    ts_study_close(study);
}

/* A fillet of 1 mm is milder than an undercut of 0.6, and one undercut milder than a sharper one;
 * the other end of the body keeps its fillet. */
static void sharper_undercuts_tire_sooner(void **state)
{
    (void)state;
    static const char *const cuts[] = {"", ", undercut: E 1.2x0.2", ", undercut: E 0.8x0.3",
                                       ", undercut: E 0.6x0.3"};
    double                   before = INFINITY, other = (double)NAN;

    for (int i = 0; i < 4; i++) {
        ts_study            *study = study_with(cuts[i]);
        const ts_line_notch *notch = first_step(study);

        assert_true(notch->S_D < before || i == 1);
        before = notch->S_D;
        for (int n = 1; n < 8; n++)
            if (fabs(notch[n].x - 0.07) < 1e-9) {
                if (i > 0)
                    assert_close(notch[n].S_D, other, 1e-12);
                other = notch[n].S_D;
                break;
            }
        ts_study_close(study);
    }
    assert_true(isfinite(other));
}

static void both_forms_have_one_notch(void **state)
{
    (void)state;
    ts_study *e = study_with(", undercut: E 0.6x0.3"), *f = study_with(", undercut: F 0.6x0.3");

    assert_close(first_step(e)->S_D, first_step(f)->S_D, 0.0);
    ts_study_close(e);
    ts_study_close(f);
}

/* An undercut lies between the fillet and the groove of its radius: by DIN 743 itself, and where it
 * is round enough by Pilkey's fits of Peterson's charts, within the 7 % by which families of charts
 * differ there (docs/method/shafts.md; sharper, DIN 743 is milder still). */
static void every_row_lies_between_fillet_and_groove(void **state)
{
    (void)state;
    int round = 0;

    for (size_t i = 0; i < ts_undercut_count(); i++) {
        const ts_undercut cut = ts_undercut_at(i);
        const double      D_1 = 1.05 * cut.d_from, D = 1.15 * D_1, d = D_1 - 2.0 * cut.t_1;
        ts_din_section    s     = {.d = d, .D_1 = D_1, .D = D, .r = cut.r};
        const double      alpha = ts_din_alpha(TS_DIN_UNDERCUT, TS_DIN_T, &s);
        const double      foot  = ts_din_alpha(TS_DIN_SHOULDER, TS_DIN_T, &s);
        const double      ring  = ts_din_alpha(TS_DIN_GROOVE, TS_DIN_T, &s);

        assert_true(cut.r >= cut.t_1 && cut.f > cut.r && !(cut.d_to <= cut.d_from));
        assert_true(isnan(cut.t_2) == (cut.key[0] == 'E'));
        assert_true(alpha >= fmin(foot, ring) && alpha <= fmax(foot, ring));
        if (cut.r < 0.03 * d)
            continue;
        assert_true(alpha > 0.93 * ts_shoulder_torsion_factor(D, d, cut.r, NULL));
        assert_true(alpha < 1.07 * ts_groove_torsion_factor(TS_GROOVE_PILKEY, D, d, cut.r, NULL));
        round++;
    }
    assert_true(round >= 10);
}

/* Wider than its section, through to the bore, for another diameter, of another name. */
static void what_cannot_be_cut_is_told(void **state)
{
    (void)state;
    assert_null(study_with(", undercut: E 4.0x0.5"));
    assert_null(study_with(", undercut: E 0.4x0.2"));
    assert_null(study_with(", undercut: G 0.6x0.3"));
    assert_null(study_with(", undercut: unknown"));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(yield_is_that_of_what_is_left),
        cmocka_unit_test(sharper_undercuts_tire_sooner),
        cmocka_unit_test(both_forms_have_one_notch),
        cmocka_unit_test(every_row_lies_between_fillet_and_groove),
        cmocka_unit_test(what_cannot_be_cut_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
