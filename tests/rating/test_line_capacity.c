/* What stands in the way of a seized pad on the radial shaft, besides teeth? */
#include "support/close.h"
#include "support/read_file.h"

#include "study/study.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

static ts_study *study_of(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static const ts_part_capacity *part_of(const ts_study *study, ts_part_kind kind, const char *what)
{
    for (size_t i = 0; i < study->select.parts.count; i++) {
        const ts_part_capacity *part = &study->select.parts.items[i];
        if (part->kind == kind && strcmp(part->what, what) == 0)
            return part;
    }
    fail_msg("no such part of %s", what);
    return NULL;
}

/* derived: a tube of 26 mm by 18 mm at the yield of DIN 743 that the line itself was held to. */
static void a_tube_bears_its_yield_in_torsion(void **state)
{
    (void)state;
    ts_study    *study = study_of("examples/bizjet.yaml");
    const double W_t = 3.14159265358979323846 / 16.0 * (pow(0.026, 4.0) - pow(0.018, 4.0)) / 0.026;
    double       tau_F = (double)NAN;
    for (uint32_t l = 0; l < study->lines.count; l++)
        if (strcmp(study->lines.lines[l].name, "hp tower shaft, tube") == 0)
            tau_F = study->lines.lines[l].notches[0].ability.sigma_FK[TS_DIN_T];
    assert_close(part_of(study, TS_PART_SHAFT, "hp tower shaft, tube")->T, tau_F * W_t, 1e-12);
    ts_study_close(study);
}

/* In every condition the bearing holds as often the load as the torque fits into what it bears. */
static void the_torque_that_dents_is_the_least_of_all_conditions(void **state)
{
    (void)state;
    ts_study               *study = study_of("examples/large.yaml");
    const ts_part_capacity *part  = part_of(study, TS_PART_BEARING, "hp tower shaft, outer end");
    bool                    met   = false;
    for (uint32_t l = 0; l < study->lines.count; l++) {
        const ts_line *line = &study->lines.lines[l];
        if (strcmp(line->name, part->what) != 0)
            continue;
        for (uint32_t c = 0; c < study->drive.condition_count; c++) {
            const double T =
                fabs(study->power.T[(size_t)c * study->train.shaft_count + line->shaft]);
            for (int k = 0; k < line->bearing_count; k++) {
                const double bears = ts_line_at(&study->lines, l, c)->duty[k].S_0 * T;
                assert_true(bears >= part->T * (1.0 - 1e-12) || !(T > 0.0));
                met = met || fabs(bears - part->T) <= 1e-12 * part->T;
            }
        }
    }
    assert_true(met);
    ts_study_close(study);
}

/* The thin tube of the trap is the first thing that gives way behind the starter. */
static void a_thin_tube_stands_before_the_teeth(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/traps/bizjet_thin_tower.yaml");
    bool      found = false;
    for (uint32_t i = 0; i < study->select.count; i++) {
        const ts_guard *guard = &study->select.guards[i];
        if (guard->pad == TS_NOWHERE || strcmp(study->train.pads[guard->pad].name, "starter") != 0)
            continue;
        const ts_part_capacity *part = &study->select.parts.items[guard->once.part];
        found                        = true;
        assert_int_equal(part->kind, TS_PART_SHAFT);
        assert_string_equal(part->what, "hp tower shaft, tube");
    }
    assert_true(found);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_tube_bears_its_yield_in_torsion),
        cmocka_unit_test(the_torque_that_dents_is_the_least_of_all_conditions),
        cmocka_unit_test(a_thin_tube_stands_before_the_teeth),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
