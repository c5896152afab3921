/* Do pumps, sumps and breathers do what conservation of volume, energy and Stokes' law ask for? */
#include "support/close.h"
#include "support/random_train.h"
#include "support/read_file.h"

#include "pump/drive_pumps.h"
#include "pump/pump_element.h"
#include "pump/separator.h"
#include "pump/windmill.h"
#include "study/study.h"

#include <stdlib.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                       "examples/medium.yaml", "examples/large.yaml"};
#define EXAMPLE_COUNT (sizeof examples / sizeof examples[0])

static ts_study *study_of_text(const char *path, ts_text text)
{
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, text.at, text.length, &options), TS_OK);
    return study;
}

static ts_study *study_of(const char *path)
{
    const ts_text file  = read_file(path);
    ts_study     *study = study_of_text(path, file);
    free_file(file);
    return study;
}

/* ---- gears ----------------------------------------------------------------------------------- */

/* By the work of pressure on both gears, contact by contact, over one base pitch; and the trade's
 * 2 pi m^2 z b, which leaves the undercut of the spaces out. */
static void the_volume_of_two_gears_is_the_work_of_pressure_on_them(void **state)
{
    (void)state;
    for (int z = 8; z <= 30; z += 2) {
        const double m = 0.003, alpha = pi / 9.0, r_w = m * z / 2.0, r_a = r_w + m;
        const double p_b  = pi * m * cos(alpha);
        double       mean = 0.0;
        const int    n    = 20000;
        for (int i = 0; i < n; i++) {
            const double u = p_b * ((i + 0.5) / n - 0.5);
            /* Radii of the contact in both gears; each is pushed on from its contact to its tip. */
            const double one = r_w * r_w + u * u + 2.0 * r_w * u * sin(alpha);
            const double two = r_w * r_w + u * u - 2.0 * r_w * u * sin(alpha);
            mean += ((r_a * r_a - one) / 2.0 + (r_a * r_a - two) / 2.0) / n;
        }
        const double area = ts_pump_gear_area(z, m, alpha, NULL);
        assert_close(area, mean, 1e-7);
        const double V = ts_pump_gear_displacement(0.02, area, NULL);
        assert_close(ts_pump_gear_width(V, area, NULL), 0.02, 1e-12);
        assert_true(fabs(V / (2.0 * pi * m * m * z * 0.02) - 1.0) < 0.05);
    }
}

/* ---- packs ----------------------------------------------------------------------------------- */

static void expect_pack(const ts_study *study, const ts_pack *pack)
{
    const uint32_t conditions = (uint32_t)study->drive.condition_count;

    assert_null(pack->missing);
    for (uint32_t row = 0; row < pack->rows; row++) {
        const ts_pack_state *s   = &pack->states[row];
        const ts_pack_case  *one = &pack->cases[(size_t)row * TS_PACK_ELEMENTS];
        double               T = 0.0, hydraulic = s->p * s->Q;
        for (uint32_t e = 0; e < pack->element_count; e++)
            T += one[e].T;
        for (uint32_t e = 1; e < pack->element_count; e++)
            hydraulic += pack->elements[e].dp * one[e].able;
        assert_close(T, s->T, 1e-12);
        assert_close(s->P, s->T * s->n, 1e-12);
        assert_true(s->P >= hydraulic); /* nothing is for nothing */
        if (s->spare > 0.0 || s->n <= 0.0)
            continue;
        /* The valve is shut: the jets pass at this pressure what the element gives against it. */
        const double ratio = s->Q / pack->told->flow.value;
        const double k = (one[0].eta_v - pack->elements[0].filling.value) / pack->elements[0].dp;
        const double given = (1.0 - pack->told->air.value) * pack->elements[0].V_g * s->n /
                             (2.0 * pi) * (pack->elements[0].filling.value + k * s->p);
        assert_close(s->p, pack->told->pressure.value * ratio * ratio, 1e-9);
        assert_close(s->Q, given, 1e-9);
    }
    /* Sized: the least of all conditions that last is what is asked for, and is met. */
    for (uint32_t e = 0; e < pack->element_count; e++) {
        double least = (double)INFINITY;
        for (uint32_t c = 0; c < conditions; c++) {
            const ts_pack_case *one = &pack->cases[(size_t)c * TS_PACK_ELEMENTS + e];
            if (ts_condition_lasts(&study->drive.conditions[c]))
                least = fmin(least, one->able / one->need);
        }
        assert_close(least, 1.0, 1e-12);
    }
}

static void the_packs_of_the_examples_keep_volume_and_energy(void **state)
{
    (void)state;
    for (size_t i = 0; i < EXAMPLE_COUNT; i++) {
        ts_study *study = study_of(examples[i]);
        assert_int_equal(study->power.units.pack_count, 1);
        assert_int_equal(study->power.units.breather_count, 1);
        expect_pack(study, &study->power.units.packs[0]);
        ts_study_close(study);
    }
}

/* Without one line; the text is freed by the caller. */
static char *without(ts_text file, const char *from, const char *to)
{
    char *copy = calloc(file.length + 1, 1);
    assert_non_null(copy);
    memcpy(copy, file.at, file.length);
    char *begin = strstr(copy, from);
    assert_non_null(begin);
    char *end = strstr(begin, to);
    assert_non_null(end);
    memmove(begin, end, strlen(end) + 1);
    return copy;
}

static void a_pad_that_tells_no_power_bears_what_its_pumps_take(void **state)
{
    (void)state;
    const ts_text file = read_file("tests/check/base.yaml");
    char *text = without(file, "    power: {crank: 0.4 kW, light-off: 0.5 kW, ground idle: 1.3 kW",
                         "    torque: {overload: 11 N.m");
    ts_study      *study = study_of_text("base.yaml", (ts_text){text, strlen(text)});
    const ts_pack *pack  = &study->power.units.packs[0];
    double         sum   = 0.0;

    for (uint32_t c = 0; c < study->drive.condition_count; c++) {
        const ts_pad_load *load = &study->power.pad[(size_t)c * study->train.pad_count + pack->pad];
        assert_int_equal(load->standing, TS_GIVEN);
        assert_close(load->P, pack->states[c].P, 0.0);
        assert_close(load->T * pack->states[c].n, pack->states[c].P, 1e-12);
        sum += load->P;
    }
    assert_true(sum > 1000.0);
    ts_study_close(study);
    free(text);
    free_file(file);
}

/* ---- sumps ----------------------------------------------------------------------------------- */

static void a_tilted_surface_keeps_the_oil(void **state)
{
    (void)state;
    random_source source = {11};
    for (int i = 0; i < 300; i++) {
        const ts_sump_box box  = {random_real(&source, 0.05, 0.4), random_real(&source, 0.05, 0.3),
                                  random_real(&source, 0.03, 0.2), 0.0};
        ts_sump_box       held = box;
        held.depth             = box.height * random_real(&source, 0.05, 0.95);
        const ts_pull pull =
            ts_pull_of(random_real(&source, -pi, pi), random_real(&source, -pi, pi));
        const double surface = ts_sump_surface(&held, &pull);
        const int    n       = 40;
        int          under   = 0;
        for (int x = 0; x < n; x++)
            for (int y = 0; y < n; y++)
                for (int z = 0; z < n; z++) {
                    const ts_sump_place place = {box.length * (x + 0.5) / n,
                                                 box.width * ((y + 0.5) / n - 0.5),
                                                 box.height * (z + 0.5) / n};
                    under += ts_sump_cover(&held, &pull, surface, &place) >= 0.0;
                }
        assert_close_abs((double)under / (n * n * n), held.depth / held.height, 0.03);
        assert_close_abs(ts_sump_share(&held, &pull, surface), held.depth / held.height, 1e-9);
    }
}

static void a_sump_that_stands_straight_or_on_its_end_is_plain(void **state)
{
    (void)state;
    const ts_sump_box   box   = {0.2, 0.1, 0.05, 0.02};
    const ts_sump_place place = {0.03, 0.01, 0.004};
    const ts_pull       level = ts_pull_of(0.0, 0.0), back = ts_pull_of(0.0, pi),
                  tail = ts_pull_of(pi / 2.0, 0.0), side = ts_pull_of(0.0, pi / 2.0);

    assert_close_abs(ts_sump_cover(&box, &level, ts_sump_surface(&box, &level), &place), 0.016,
                     1e-10);
    assert_close_abs(ts_sump_cover(&box, &back, ts_sump_surface(&box, &back), &place), -0.026,
                     1e-10);
    /* On its tail: 0.4 of the length is full from the rear. */
    assert_close_abs(ts_sump_cover(&box, &tail, ts_sump_surface(&box, &tail), &place),
                     0.03 - 0.2 + 0.4 * 0.2, 1e-10);
    assert_close_abs(ts_sump_cover(&box, &side, ts_sump_surface(&box, &side), &place),
                     0.01 + 0.05 - 0.1 + 0.4 * 0.1, 1e-10);
    /* A wedge: nose up until the surface only just leaves the front of the floor. */
    const double        tilt  = atan(2.0 * 0.02 / 0.2);
    const ts_pull       wedge = ts_pull_of(tilt, 0.0);
    const ts_sump_place front = {0.0, 0.0, 0.0};
    assert_close_abs(ts_sump_cover(&box, &wedge, ts_sump_surface(&box, &wedge), &front), 0.0,
                     1e-10);
}

/* ---- the windmill ---------------------------------------------------------------------------- */

/* What the windmill's own row says, asked the other way round: the speed at which that share of the
 * pressure is left is the speed of the windmill. */
static void the_speed_of_the_windmill_leaves_its_pressure(void **state)
{
    (void)state;
    int told = 0;
    for (size_t e = 0; e < EXAMPLE_COUNT; e++) {
        ts_study           *study = study_of(examples[e]);
        const ts_oil_units *units = &study->power.units;
        for (uint32_t i = 0; i < units->pack_count; i++) {
            const ts_pack *pack = &units->packs[i];
            assert_null(pack->missing);
            const double all = ts_pack_spool_speed(units, pack, 1.0);
            assert_true(all > 0.0 && all > ts_pack_spool_speed(units, pack, 0.5));
            if (pack->rows == study->drive.condition_count)
                continue;
            const double share =
                pack->states[study->drive.condition_count].p / pack->elements[0].dp;
            assert_true(share > 0.0 && share < 1.0);
            assert_close(ts_pack_spool_speed(units, pack, share), pack->told->windmill.value, 1e-9);
            told++;
        }
        ts_study_close(study);
    }
    assert_true(told > 0);
}

/* ---- breathers ------------------------------------------------------------------------------- */

static void the_drop_that_passes_stands_still_at_the_rim(void **state)
{
    (void)state;
    const ts_separator_rotor rotor = {0.04, 0.024, 0.05};
    ts_swirl                 swirl = {0.01, 1500.0, 950.0, 1.0, ts_air_viscosity(380.0, NULL)};
    const double             d     = ts_separator_cut(&rotor, &swirl, NULL);
    /* Stokes: drag 3 pi mu d v against the excess of mass times n^2 r. */
    const double pull   = pi / 6.0 * d * d * d * (950.0 - 1.0) * 1500.0 * 1500.0 * 0.04;
    const double inward = 0.01 / (2.0 * pi * 0.04 * 0.05);
    assert_close(pull, 3.0 * pi * swirl.mu * d * inward, 1e-12);
    assert_close(ts_separator_reynolds(&rotor, &swirl, d, NULL), inward * d / swirl.mu, 1e-12);
    /* Sutherland against the table of the standard atmosphere: 1.7894e-5 Pa.s at 288.15 K. */
    assert_close(ts_air_viscosity(288.15, NULL), 1.7894e-5, 1e-4);
    assert_close(ts_air_density(101325.0, 288.15, NULL), 1.225, 1e-4);
    const double drop = ts_separator_drop(&rotor, &swirl, NULL);
    /* The pressure against the swirl, summed over thin rings. */
    double sum = 0.0;
    for (int i = 0; i < 10000; i++) {
        const double dr = (0.04 - 0.012) / 10000.0, r = 0.012 + (i + 0.5) * dr;
        sum += 1.0 * 1500.0 * 1500.0 * r * dr;
    }
    const double v = 0.01 / (0.7 * pi / 4.0 * 0.024 * 0.024);
    assert_close(drop, sum + 0.5 * v * v, 1e-9);
    swirl.n *= 2.0;
    assert_close(ts_separator_cut(&rotor, &swirl, NULL), d / 2.0, 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_volume_of_two_gears_is_the_work_of_pressure_on_them),
        cmocka_unit_test(the_packs_of_the_examples_keep_volume_and_energy),
        cmocka_unit_test(a_pad_that_tells_no_power_bears_what_its_pumps_take),
        cmocka_unit_test(a_tilted_surface_keeps_the_oil),
        cmocka_unit_test(a_sump_that_stands_straight_or_on_its_end_is_plain),
        cmocka_unit_test(the_speed_of_the_windmill_leaves_its_pressure),
        cmocka_unit_test(the_drop_that_passes_stands_still_at_the_rim),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
