/* Are the widths that sizing chooses enough, and is none of them more than enough? */
#include "support/close.h"
#include "support/read_file.h"

#include "search/tooth_width.h"
#include "study/study.h"

#include <math.h>
#include <string.h>

static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                    "examples/medium.yaml", "examples/large.yaml"};

typedef struct sized {
    ts_study     *study;
    ts_width_rig  rig;
    ts_width_plan plan;
} sized;

static void read_study(const char *path, sized *it)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    assert_int_equal(ts_study_open(NULL, &it->study), TS_OK);
    assert_int_equal(ts_study_read(it->study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    ts_study *s = it->study;
    it->rig =
        (ts_width_rig){&s->drive, &s->train, &s->motion, &s->power, &s->teeth, s->diagnostics};
}

static void find(sized *it, double step)
{
    assert_int_equal(ts_find_tooth_widths(&it->rig, step, it->study->arena, &it->plan), TS_OK);
}

static void size(const char *path, double step, sized *it)
{
    read_study(path, it);
    find(it, step);
}

/* Rates the rig as its gears stand; the least reserve of the meshes that were sized. */
static double least_reserve(const sized *it)
{
    double least = INFINITY;
    assert_int_equal(ts_motion_solve(it->rig.drive, it->rig.motion, it->rig.list, NULL), TS_OK);
    assert_int_equal(ts_power_solve(it->rig.drive, it->rig.power, NULL), TS_OK);
    ts_teeth_solve(it->rig.drive, it->rig.teeth, NULL);
    for (uint32_t m = 0; m < it->rig.train->mesh_count; m++)
        if (it->plan.meshes[m] != TS_MESH_NOT_SIZED)
            least = fmin(least, it->rig.teeth->strength[m].reserve);
    return least;
}

static void all_sized_meshes_hold(void **state)
{
    (void)state;
    for (size_t f = 0; f < 4; f++) {
        sized it;
        size(files[f], 0.0005, &it);
        assert_true(it.plan.fits);
        assert_true(least_reserve(&it) >= 0.0);
        ts_study_close(it.study);
    }
}

/* Both gears of a mesh a step narrower, where they are not at the least width: something fails.
 * With safeties of 1.3 and 1.6 most meshes are above it. */
static void no_mesh_can_be_a_step_narrower(void **state)
{
    (void)state;
    size_t tried = 0;
    for (size_t f = 0; f < 4; f++) {
        sized it;
        read_study(files[f], &it);
        it.study->drive.limits.contact_safety.value = 1.3;
        it.study->drive.limits.bending_safety.value = 1.6;
        find(&it, 0.0005);
        assert_true(it.plan.fits);
        for (uint32_t m = 0; m < it.rig.train->mesh_count; m++) {
            if (it.plan.meshes[m] != TS_MESH_SIZED)
                continue;
            /* gears that this mesh sets; a gear that another mesh sets stays */
            double before[2];
            bool   sets = false;
            for (size_t i = 0; i < it.plan.gear_count; i++) {
                const ts_gear_width *width = &it.plan.gears[i];
                const ts_mesh       *mesh  = &it.rig.train->meshes[m];
                const int            side  = mesh->driver == width->gear   ? 0
                                             : mesh->driven == width->gear ? 1
                                                                           : -1;
                if (side < 0)
                    continue;
                before[side] = it.rig.train->gears[width->gear].face.value;
                if (width->mesh == m) {
                    it.rig.train->gears[width->gear].face.value -= 0.0005;
                    sets = true;
                }
            }
            if (sets) {
                assert_true(least_reserve(&it) < 0.0);
                tried++;
            }
            it.rig.train->gears[it.rig.train->meshes[m].driver].face.value = before[0];
            it.rig.train->gears[it.rig.train->meshes[m].driven].face.value = before[1];
        }
        ts_study_close(it.study);
    }
    assert_true(tried > 8);
}

static void widths_are_whole_steps(void **state)
{
    (void)state;
    sized it;
    size(files[3], 0.0005, &it);
    for (size_t i = 0; i < it.plan.gear_count; i++) {
        const double steps = it.plan.gears[i].after / 0.0005;
        assert_close_abs(steps, round(steps), 1e-9);
        assert_same_double(it.plan.gears[i].after,
                           it.rig.train->gears[it.plan.gears[i].gear].face.value);
    }
    ts_study_close(it.study);
}

static void sizing_again_changes_nothing(void **state)
{
    (void)state;
    sized it;
    size(files[3], 0.0005, &it);
    const double mass = it.plan.mass_after;
    find(&it, 0.0005);
    assert_close(it.plan.mass_before, mass, 1e-15);
    assert_close(it.plan.mass_after, mass, 1e-15);
    ts_study_close(it.study);
}

static void finer_steps_are_never_heavier(void **state)
{
    (void)state;
    sized coarse, fine;
    size(files[3], 0.002, &coarse);
    size(files[3], 0.00025, &fine);
    assert_true(fine.plan.mass_after <= coarse.plan.mass_after);
    assert_true(fine.plan.mass_after > 0.0);
    ts_study_close(coarse.study);
    ts_study_close(fine.study);
}

static void more_safety_is_never_lighter(void **state)
{
    (void)state;
    double mass = 0.0;
    for (double S = 1.0; S < 1.7; S += 0.2) {
        sized it;
        read_study(files[2], &it);
        it.study->drive.limits.contact_safety.value = S;
        find(&it, 0.0005);
        assert_true(it.plan.mass_after >= mass);
        mass = it.plan.mass_after;
        ts_study_close(it.study);
    }
}

static void an_unknown_width_is_found(void **state)
{
    (void)state;
    sized    it;
    ts_gear *gear;
    read_study(files[1], &it);
    gear = &it.study->train.gears[it.study->train.meshes[it.study->train.mesh_count - 1].driven];
    gear->face = (ts_measure){(double)NAN, gear->face.node, TS_UNKNOWN};
    find(&it, 0.0005);
    const ts_gear_width *last = &it.plan.gears[it.plan.gear_count - 1];
    assert_nan(last->before);
    assert_true(last->after >= 0.006 - 1e-12); /* 3 modules of 2 mm */
    assert_true(it.plan.fits);
    ts_study_close(it.study);
}

static void what_no_width_can_bear_is_said(void **state)
{
    (void)state;
    sized it;
    read_study(files[0], &it);
    it.study->drive.limits.contact_safety.value = 9.0;
    find(&it, 0.0005);
    assert_false(it.plan.fits);
    size_t weak = 0;
    for (uint32_t m = 0; m < it.rig.train->mesh_count; m++)
        weak += it.plan.meshes[m] == TS_MESH_TOO_WEAK;
    assert_true(weak > 0);
    ts_study_close(it.study);
}

/* A mesh that carries nothing gives no reason to change its gears. */
static void idle_gears_keep_their_width(void **state)
{
    (void)state;
    sized it;
    read_study(files[1], &it);
    ts_drive *drive = &it.study->drive;
    for (size_t a = 0; a < drive->accessory_count; a++)
        if (strcmp(drive->accessories[a].name, "hydraulic pump 2") == 0)
            for (size_t c = 0; c < drive->condition_count; c++)
                drive->accessories[a].power[c].value = 0.0;
    assert_int_equal(ts_study_solve(it.study), TS_OK);
    find(&it, 0.0005);
    const ts_gear_width *last = &it.plan.gears[it.plan.gear_count - 1];
    assert_int_equal(last->mesh, TS_NOWHERE);
    assert_same_double(last->after, last->before);
    ts_study_close(it.study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(all_sized_meshes_hold),
        cmocka_unit_test(no_mesh_can_be_a_step_narrower),
        cmocka_unit_test(widths_are_whole_steps),
        cmocka_unit_test(sizing_again_changes_nothing),
        cmocka_unit_test(finer_steps_are_never_heavier),
        cmocka_unit_test(more_safety_is_never_lighter),
        cmocka_unit_test(an_unknown_width_is_found),
        cmocka_unit_test(what_no_width_can_bear_is_said),
        cmocka_unit_test(idle_gears_keep_their_width),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
