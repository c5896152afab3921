/* What stands in the way of a seized pad on the radial shaft, besides teeth? */
#include "support/case_count.h"
#include "support/close.h"
#include "support/read_file.h"

#include "rating/bearing/static_capacity.h"
#include "rating/drive_lines_parts.h"
#include "rating/line_branch.h"
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

/* ---- brute force ------------------------------------------------------------------------------
 *
 * The whole drive is loaded anew in every corner, by the torques of its pads alone: each takes or
 * gives what the file says of the condition, or nothing, and one of them what its way bears.
 * Nothing of the branches is used: forces come from power/, reactions and sections from the lines
 * as laid out, safeties from the ratings themselves.
 */

/* What is taken of a shaft's bearings and sections in a condition; 1: it gives way. */
static double share_of(const ts_lines_case *c, uint32_t number, uint32_t condition)
{
    const ts_line *line  = &c->lines->lines[number];
    ts_line_case  *one   = ts_line_case_at(c, number, condition);
    double         share = 0.0;

    ts_line_react(line, one);
    for (int k = 0; k < line->bearing_count && line->kind != TS_LINE_TUBE; k++) {
        const ts_bearing_ability *able = &line->bearings[k].ability;
        const ts_line_reaction   *r    = &one->reaction[k];
        if (line->bearings[k].there)
            share =
                fmax(share, ts_static_load(able->still, r->F_r, fabs(r->F[0]), NULL) / able->C_0r);
    }
    for (int n = 0; n < line->notch_count; n++) {
        const ts_line_notch *notch = &line->notches[n];
        const ts_line_cut    cut   = ts_line_cut_at(line, one, notch->x);
        const ts_din_stress  s =
            ts_line_stress_of(&notch->section, cut.M_b, fabs(cut.T), fabs(cut.N), NULL);
        share = fmax(share, 1.0 / ts_din_rate(&notch->section, &notch->ability, &s, NULL).S_F);
    }
    return share;
}

static bool is_upstream(const ts_train *train, uint32_t pad, uint32_t shaft)
{
    uint32_t s = train->pads[pad].shaft;

    while (s != shaft && train->shafts[s].mesh != TS_NOWHERE)
        s = train->meshes[train->shafts[s].mesh].driver_shaft;
    return s == shaft;
}

/* The demands of a file, and how they are put back. */
typedef struct demands {
    ts_measure power[TS_CONDITIONS_MOST], drives[TS_CONDITIONS_MOST];
} demands;

static void put(ts_study *study, int32_t who, const demands *as_told, bool on)
{
    ts_accessory *one = &study->drive.accessories[who];

    for (size_t c = 0; c < study->drive.condition_count; c++) {
        one->power[c]  = as_told->power[c];
        one->drives[c] = as_told->drives[c];
        if (!on) {
            one->power[c]           = (ts_measure){.value = 0.0, .standing = TS_GIVEN};
            one->drives[c].standing = TS_ABSENT;
        }
    }
}

/* The pad takes T in every condition in which it turns. */
static void seize(ts_study *study, uint32_t pad, double T)
{
    const ts_pad *it  = &study->train.pads[pad];
    ts_accessory *one = &study->drive.accessories[it->accessory];

    for (size_t c = 0; c < study->drive.condition_count; c++) {
        const double n          = study->motion.speed[c * study->train.shaft_count + it->shaft];
        one->power[c]           = (ts_measure){.value = T * n, .standing = TS_GIVEN};
        one->drives[c].standing = TS_ABSENT;
    }
}

/* The greatest share of all lines between the pad and its spool, in every condition. */
static double worst_share(ts_study *study, uint32_t pad)
{
    const ts_lines_case c    = {&study->drive, &study->train, &study->lines, NULL};
    double              most = 0.0;

    assert_int_equal(ts_power_solve(&study->drive, &study->power, NULL), TS_OK);
    ts_lines_load(&c);
    for (uint32_t i = 0; i < study->drive.condition_count; i++)
        for (uint32_t l = 0; l < study->lines.count; l++)
            if (is_upstream(&study->train, pad, study->lines.lines[l].shaft) &&
                study->motion.speed[i * study->train.shaft_count + study->train.pads[pad].shaft] >
                    0.0)
                most = fmax(most, share_of(&c, l, i));
    return most;
}

/* What the shafts and bearings on its way leave for a pad. */
static double lines_leave(const ts_study *study, const ts_guard *guard)
{
    uint32_t     parts[128];
    const size_t count = ts_select_upstream(&study->select, guard, parts, 128);
    double       least = INFINITY;

    for (size_t i = 0; i < count; i++) {
        const ts_part_kind kind = study->select.parts.items[parts[i]].kind;
        if (kind == TS_PART_SHAFT || kind == TS_PART_BEARING)
            least = fmin(least, ts_select_wall_of(&study->select, guard, parts[i]).T);
    }
    return least;
}

/* No corner is worse than the wall, and the worst comes as near to it: loads that other ways have
 * at their worst are not always met together, and a radial shaft that starts the engine counts by
 * the flank of the start, while what seizes here takes. */
static void every_corner_of(const char *path, double near)
{
    ts_study       *study = study_of(path);
    const ts_train *train = &study->train;
    demands        *told  = calloc(study->drive.accessory_count, sizeof *told);
    double         *leave = calloc(study->select.count, sizeof *leave);

    assert_true(told != NULL && leave != NULL);
    for (uint32_t i = 0; i < study->select.count; i++)
        leave[i] = lines_leave(study, &study->select.guards[i]);
    for (size_t a = 0; a < study->drive.accessory_count; a++)
        for (size_t c = 0; c < study->drive.condition_count; c++) {
            told[a].power[c]  = study->drive.accessories[a].power[c];
            told[a].drives[c] = study->drive.accessories[a].drives[c];
        }
    for (uint32_t i = 0; i < study->select.count; i++) {
        const uint32_t pad  = study->select.guards[i].pad;
        double         most = 0.0;

        if (pad == TS_NOWHERE)
            continue;
        assert_true(leave[i] > 0.0 && isfinite(leave[i]));
        for (unsigned mask = 0; mask < 1u << study->drive.accessory_count; mask++) {
            const int32_t own = train->pads[pad].accessory;
            if ((mask >> own & 1u) != 0)
                continue;
            for (size_t a = 0; a < study->drive.accessory_count; a++)
                put(study, (int32_t)a, &told[a], (mask >> a & 1u) != 0);
            seize(study, pad, leave[i]);
            most = fmax(most, worst_share(study, pad));
        }
        assert_true(most <= 1.0 + 1e-9);
        assert_true(most >= near);
    }
    free(told);
    free(leave);
    ts_study_close(study);
}

static void no_corner_of_small_drives_is_worse_for_shafts_and_bearings(void **state)
{
    (void)state;
    every_corner_of("examples/trainer.yaml", 0.99);
    every_corner_of("tests/check/base.yaml", 0.99);
    if (TS_CASES(true, false))
        every_corner_of("examples/bizjet.yaml", 0.71);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_tube_bears_its_yield_in_torsion),
        cmocka_unit_test(the_torque_that_dents_is_the_least_of_all_conditions),
        cmocka_unit_test(no_corner_of_small_drives_is_worse_for_shafts_and_bearings),
        cmocka_unit_test(a_thin_tube_stands_before_the_teeth),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
