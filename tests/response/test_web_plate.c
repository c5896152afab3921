/* Does a gear swing across its plane as thin plates and as solids of finite elements do, and do its
 * teeth meet a wave where k z N = f +- n N? */
#include "response/web_plate.h"

#include "rating/drive_webs.h"
#include "response/annular_plate.h"
#include "study/study.h"
#include "support/close.h"
#include "support/read_file.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static const ts_web_plate light_blank = {0.018, 0.060, 0.070,  0.006, 0.020,
                                         206e9, 0.3,   7830.0, 0.0,   0.0};
static const ts_web_plate solid_blank = {0.018, 0.060, 0.070,  0.014, 0.014,
                                         206e9, 0.3,   7830.0, 0.0,   0.0};

static double frequency(const ts_web_plate *plate, int n)
{
    ts_web_modes modes;

    ts_web_open(plate, &modes);
    return ts_web_frequency(&modes, n);
}

/* derived: Mindlin's plate falls to Kirchhoff's as it grows thin, by another code with other terms;
 * what is missing falls with the square of the thickness. */
static void a_thin_gear_is_a_thin_plate(void **state)
{
    (void)state;
    for (int n = 0; n < 6; n++) {
        double off[2];
        for (int i = 0; i < 2; i++) {
            const double           h     = i == 0 ? 2e-3 : 1e-3;
            const ts_annular_plate thin  = {.hold = TS_PLATE_HUB,
                                            .b    = 0.03,
                                            .a    = 0.1,
                                            .h    = h,
                                            .E    = 2e11,
                                            .nu   = 0.3,
                                            .rho  = 7850};
            const ts_web_plate     thick = {
                    .b = 0.03, .a = 0.1, .R = 0.1, .h = h, .w = h, .E = 2e11, .nu = 0.3, .rho = 7850};
            off[i] = ts_plate_frequency(&thin, n, 0) / frequency(&thick, n) - 1.0;
            assert_true(fabs(off[i]) < 4e-3);
        }
        assert_true(off[1] < off[0] && off[0] > 0.0);
    }
}

/* CalculiX 2.20, 20-node bricks with cyclic symmetry: tests/reference/calculix.  A rim on a web
 * within 1 %; a solid gear a quarter as thick as its web is high within 1.5 %. */
static void gears_swing_as_solids_of_finite_elements(void **state)
{
    (void)state;
    const ts_text file  = read_file("tests/reference/calculix/gear_blanks.tsv");
    int           count = 0;
    for (const char *at = file.at; *at != '\0'; at = strchr(at, '\n') + 1) {
        if (*at == '#')
            continue;
        const bool   light = strncmp(at, "light", 5) == 0;
        char        *end;
        const long   n = strtol(strchr(at, '\t'), &end, 10);
        const double f = strtod(end, NULL);
        assert_close(frequency(light ? &light_blank : &solid_blank, (int)n) / f, 1.0,
                     light ? 0.01 : 0.015);
        count++;
    }
    assert_int_equal(count, 14);
    free_file(file);
}

/* derived: more terms may only lower Ritz's frequencies, and hardly do where nothing jumps. */
static void terms_of_the_rim_change_nothing_where_there_is_none(void **state)
{
    (void)state;
    ts_web_plate almost = solid_blank;
    almost.w *= 1.0 + 1e-12;
    for (int n = 0; n < 7; n++) {
        const double ratio = frequency(&almost, n) / frequency(&solid_blank, n);
        assert_true(ratio < 1.0 + 1e-9 && ratio > 1.0 - 1e-3);
    }
}

/* derived: teeth far heavier than the gear swing on it as on a spring, f ~ m^-1/2; none at all are
 * no teeth. */
static void heavy_teeth_swing_on_the_web_as_on_a_spring(void **state)
{
    (void)state;
    for (int n = 0; n < 4; n++) {
        ts_web_plate heavy = light_blank;
        heavy.teeth        = 1e4;
        const double once  = frequency(&heavy, n);
        heavy.teeth *= 4.0;
        assert_close(once / frequency(&heavy, n), 2.0, 1e-3);
        heavy.teeth = 1.0;
        assert_true(frequency(&heavy, n) < frequency(&light_blank, n));
    }
}

/* derived: a thick rim on a thin web cannot bend, and rocks with one diameter as w = phi r, against
 * the same web whatever it weighs: frequencies go with I^-1/2.  About a diameter the rim has
 * M ((R^2 + a^2)/4 + w^2/12), teeth have pi m R (R + arm)^2.  Nothing of a plate is in that. */
static void teeth_rock_with_their_own_radius(void **state)
{
    (void)state;
    ts_web_plate rocker = {.b   = 0.018,
                           .a   = 0.030,
                           .R   = 0.070,
                           .h   = 1e-3,
                           .w   = 0.040,
                           .E   = 206e9,
                           .nu  = 0.3,
                           .rho = 7830.0};
    const double R2 = rocker.R * rocker.R, a2 = rocker.a * rocker.a;
    const double M       = pi * rocker.rho * rocker.w * (R2 - a2);
    const double rim     = M * ((R2 + a2) / 4.0 + rocker.w * rocker.w / 12.0);
    const double bare    = frequency(&rocker, 1);
    const double teeth[] = {1.0, 10.0, 100.0}, arms[] = {0.0, 0.002, 0.008};
    for (int t = 0; t < 3; t++)
        for (int i = 0; i < 3; i++) {
            const double out = rocker.R + arms[i];
            rocker.teeth     = teeth[t];
            rocker.arm       = arms[i];
            const double I   = rim + pi * teeth[t] * rocker.R * out * out;
            assert_close(frequency(&rocker, 1) / bare, sqrt(rim / I), 1e-3);
        }
}

/* derived: lengths twice as large, frequencies half. */
static void what_is_twice_as_large_swings_half_as_fast(void **state)
{
    (void)state;
    ts_web_plate large = light_blank;
    large.b *= 2.0, large.a *= 2.0, large.R *= 2.0, large.h *= 2.0, large.w *= 2.0;
    for (int n = 0; n < 7; n++)
        assert_close(frequency(&large, n) / frequency(&light_blank, n), 0.5, 1e-9);
}

static void what_is_no_plate_has_no_frequency(void **state)
{
    (void)state;
    ts_web_plate bad[7];
    for (int i = 0; i < 7; i++)
        bad[i] = light_blank;
    bad[0].b   = 0.0;
    bad[1].R   = 0.05;
    bad[2].h   = -1e-3;
    bad[3].E   = (double)NAN;
    bad[4].nu  = 0.5;
    bad[5].w   = (double)INFINITY;
    bad[6].rho = 0.0;
    for (int i = 0; i < 7; i++)
        assert_true(isnan(frequency(&bad[i], 2)));
    assert_true(isnan(frequency(&light_blank, -1)));
}

/* ---- in a drive -------------------------------------------------------------------------------
 */

static ts_study *read_example(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;

    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static void turn_gear(const ts_study *study, uint32_t gear, double N)
{
    study->motion.speed[study->webs.items[gear].shaft] = 2.0 * pi * N;
}

/* derived: N = f/(k z -+ n), ts_wave_speed of response/annular_plate.h, which published cases bind.
 */
static void teeth_meet_every_wave_at_its_speed(void **state)
{
    (void)state;
    static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                        "examples/medium.yaml", "examples/large.yaml"};
    int                      met     = 0;
    for (size_t e = 0; e < 4; e++) {
        ts_study *study = read_example(files[e]);
        ts_webs_solve(&study->webs, true);
        for (uint32_t i = 0; i < study->webs.count; i++) {
            const ts_web_item *item = &study->webs.items[i];
            assert_null(item->missing);
            assert_true(item->count > 2);
            for (int n = 1; n < item->count; n++)
                for (int sense = -1; sense < 2; sense += 2) {
                    turn_gear(study, i, ts_wave_speed(item->f[n], 0.0, item->z, n, 1, sense));
                    const ts_web_wave wave = ts_web_nearest(&study->webs, i, 0, 1);
                    assert_close(1.0 + wave.gap, 1.0, 1e-12);
                    assert_int_equal(wave.n, n);
                    assert_int_equal(wave.sense, sense);
                    met++;
                }
            turn_gear(study, i, 0.0);
            assert_int_equal(ts_web_nearest(&study->webs, i, 0, 1).k, 0);
        }
        ts_study_close(study);
    }
    assert_true(met > 400);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_thin_gear_is_a_thin_plate),
        cmocka_unit_test(gears_swing_as_solids_of_finite_elements),
        cmocka_unit_test(terms_of_the_rim_change_nothing_where_there_is_none),
        cmocka_unit_test(heavy_teeth_swing_on_the_web_as_on_a_spring),
        cmocka_unit_test(teeth_rock_with_their_own_radius),
        cmocka_unit_test(what_is_twice_as_large_swings_half_as_fast),
        cmocka_unit_test(what_is_no_plate_has_no_frequency),
        cmocka_unit_test(teeth_meet_every_wave_at_its_speed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
