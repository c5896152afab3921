/* Are the widths that sizing chooses enough, and is none of them more than enough?
 *
 * ctest: cost=35
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/read_file.h"

#include "search/tooth_width.h"
#include "study/study.h"

#include <math.h>
#include <string.h>

/* Every solution of the largest example takes seconds under the sanitizers, which see it where a
 * test asks for it by name. */
enum { MEDIUM = 2, LARGE = 3, FILES = TS_CASES(4, 3), LARGEST = FILES - 1 };

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
    it->rig     = (ts_width_rig){&s->drive, &s->train,      &s->motion, &s->power,
                                 &s->teeth, s->diagnostics, &s->lines};
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
    ts_lines_solve(it->rig.drive, it->rig.lines, NULL);
    ts_teeth_solve(it->rig.drive, it->rig.teeth, NULL);
    for (uint32_t m = 0; m < it->rig.train->mesh_count; m++)
        if (it->plan.meshes[m].state != TS_MESH_NOT_SIZED)
            least = fmin(least, it->rig.teeth->strength[m].reserve);
    return least;
}

static void all_sized_meshes_hold(void **state)
{
    (void)state;
    for (size_t f = 0; f < FILES; f++) {
        sized it;
        size(files[f], 0.0005, &it);
        assert_true(it.plan.fits);
        assert_true(least_reserve(&it) >= 0.0);
        ts_study_close(it.study);
    }
}

/* With safeties of 1.3 and 1.6 most gears are above the least width.  What is said to fail with a
 * step less does fail. */
static void no_gear_can_be_a_step_narrower(void **state)
{
    (void)state;
    size_t tried = 0;
    for (size_t f = 0; f < FILES; f++) {
        sized it;
        read_study(files[f], &it);
        it.study->drive.limits.contact_safety.value = 1.3;
        it.study->drive.limits.bending_safety.value = 1.6;
        find(&it, 0.0005);
        assert_true(it.plan.fits);
        for (size_t i = 0; i < it.plan.gear_count; i++) {
            const ts_gear_width *width = &it.plan.gears[i];
            double              *face  = &it.rig.train->gears[width->gear].face.value;
            if (width->need != TS_WIDTH_NEEDED)
                continue;
            *face -= 0.0005;
            assert_true(least_reserve(&it) < 0.0);
            assert_true(it.rig.teeth->strength[width->mesh].reserve < 0.0);
            *face = width->after;
            tried++;
        }
        ts_study_close(it.study);
    }
    assert_true(tried > TS_CASES(8, 4));
}

/* Nothing of the widths that a file happens to have is left in the answer. */
static void shrunk_and_oversize_widths_come_to_the_same(void **state)
{
    (void)state;
    static const double scales[2] = {0.35, 2.2};
    size_t              compared  = 0;
    for (size_t f = 0; f < FILES; f++) {
        sized it;
        read_study(files[f], &it);
        it.study->drive.limits.contact_safety.value = 1.3;
        it.study->drive.limits.bending_safety.value = 1.6;
        find(&it, 0.0005);
        for (size_t s = 0; s < 2; s++) {
            sized other;
            read_study(files[f], &other);
            other.study->drive.limits.contact_safety.value = 1.3;
            other.study->drive.limits.bending_safety.value = 1.6;
            for (uint32_t g = 0; g < other.rig.train->gear_count; g++)
                if (other.rig.train->gears[g].role != TS_GEAR_BEVEL)
                    other.rig.train->gears[g].face.value *= scales[s] + 0.07 * (double)(g % 3);
            find(&other, 0.0005);
            for (size_t i = 0; i < it.plan.gear_count; i++) {
                assert_close(other.plan.gears[i].after, it.plan.gears[i].after, 1e-12);
                compared += other.plan.gears[i].need == TS_WIDTH_NEEDED;
            }
            ts_study_close(other.study);
        }
        ts_study_close(it.study);
    }
    assert_true(compared > TS_CASES(16, 8));
}

/* Nothing is left out of it: a gear is needed as wide as it is, or at the least of one mesh. */
static void every_width_has_a_reason(void **state)
{
    (void)state;
    for (size_t f = MEDIUM; f < FILES; f++) {
        sized it;
        size(files[f], 0.0005, &it);
        for (size_t i = 0; i < it.plan.gear_count; i++) {
            const ts_gear_width *width = &it.plan.gears[i];
            assert_int_not_equal(width->mesh, TS_NOWHERE);
            if (width->need == TS_WIDTH_LEAST)
                assert_close(width->after, it.plan.meshes[width->mesh].least, 1e-12);
            else
                assert_int_equal(width->need, TS_WIDTH_NEEDED);
        }
        ts_study_close(it.study);
    }
}

/* ---- is it the lightest? ------------------------------------------------------------------ */

/* kg a metre of width, of gears without a rim: the square of the diameter is enough to compare. */
static double weight_of(const sized *it, uint32_t gear)
{
    for (uint32_t m = 0; m < it->rig.train->mesh_count; m++) {
        const ts_cylindrical_pair *pair = &it->rig.motion->meshes[m].pair;
        if (it->rig.train->meshes[m].kind != TS_MESH_CYLINDRICAL)
            continue;
        if (it->rig.train->meshes[m].driver == gear)
            return pair->d_1 * pair->d_1;
        if (it->rig.train->meshes[m].driven == gear)
            return pair->d_2 * pair->d_2;
    }
    return (double)NAN;
}

/* Is every sized mesh at least as wide as `face to module` asks? */
static bool all_wide_enough(const sized *it)
{
    for (uint32_t m = 0; m < it->rig.train->mesh_count; m++) {
        const ts_mesh *mesh = &it->rig.train->meshes[m];
        if (it->plan.meshes[m].state == TS_MESH_NOT_SIZED)
            continue;
        const double b = fmin(it->rig.train->gears[mesh->driver].face.value,
                              it->rig.train->gears[mesh->driven].face.value);
        if (b < it->plan.meshes[m].least - 1e-9)
            return false;
    }
    return true;
}

/* Tries that many steps more or fewer on each of `count` gears, all ways at once; counts in *tried
 * those that are lighter, none of which may hold. */
static void none_lighter_holds(sized *it, const size_t *gears, size_t count, long reach,
                               double step, double saved, size_t *tried)
{
    if (count == 0) {
        if (saved < 1e-12 || !all_wide_enough(it))
            return;
        *tried += 1;
        assert_true(least_reserve(it) < 0.0);
        return;
    }
    const uint32_t gear   = it->plan.gears[*gears].gear;
    double        *face   = &it->rig.train->gears[gear].face.value;
    const double   before = *face;
    for (long n = -reach; n <= reach; n++) {
        *face = round((before + (double)n * step) * 1e9) / 1e9;
        if (*face > 0.0)
            none_lighter_holds(it, gears + 1, count - 1, reach, step,
                               saved - (double)n * weight_of(it, gear), tried);
    }
    *face = before;
}

/* A second route to the lightest: every way to change two gears that stand near to each other by up
 * to two steps, and three by one. */
static void no_other_widths_nearby_are_lighter(void **state)
{
    (void)state;
    size_t tried = 0;
    sized  it;
    read_study(files[LARGEST], &it);
    it.study->drive.limits.contact_safety.value = 1.2;
    it.study->drive.limits.bending_safety.value = 1.5;
    find(&it, 0.001);
    assert_true(it.plan.fits);
    for (size_t i = 0; i < it.plan.gear_count; i++)
        for (size_t j = i + 1; j < it.plan.gear_count && j < i + 3; j++)
            none_lighter_holds(&it, (const size_t[]){i, j}, 2, 2, 0.001, 0.0, &tried);
    for (size_t i = 0; i + 2 < it.plan.gear_count; i++)
        none_lighter_holds(&it, (const size_t[]){i, i + 1, i + 2}, 3, 1, 0.001, 0.0, &tried);
    ts_study_close(it.study);
    assert_true(tried > (LARGEST == MEDIUM ? 20 : 100)); /* it has fewer gears */
}

/* The wheel of the mesh that carries the start is narrower than its pinion, whose roots set it. */
static void a_pinion_is_wider_where_that_is_lighter(void **state)
{
    (void)state;
    sized it;
    read_study(files[LARGE], &it);
    it.study->drive.limits.contact_safety.value = 1.2;
    it.study->drive.limits.bending_safety.value = 1.5;
    find(&it, 0.001);
    const ts_gear_width *pinion = &it.plan.gears[0], *wheel = &it.plan.gears[1];
    assert_true(pinion->after > wheel->after);
    assert_true(pinion->after <= wheel->after + 0.006 + 1e-12); /* a module of 3 mm at each end */
    assert_int_equal(pinion->need, TS_WIDTH_NEEDED);
    assert_int_equal(pinion->fails.stress, TS_RATED_BENDING);
    ts_study_close(it.study);
}

static void widths_are_whole_steps(void **state)
{
    (void)state;
    sized it;
    size(files[LARGEST], 0.0005, &it);
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
    size(files[MEDIUM], 0.0005, &it);
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
    size(files[MEDIUM], 0.002, &coarse);
    size(files[MEDIUM], 0.00025, &fine);
    assert_true(fine.plan.mass_after <= coarse.plan.mass_after);
    assert_true(fine.plan.mass_after > 0.0);
    ts_study_close(coarse.study);
    ts_study_close(fine.study);
}

static void more_safety_is_never_lighter(void **state)
{
    (void)state;
    double mass = 0.0;
    for (double S = 1.0; S < 1.7; S += 0.3) {
        sized it;
        read_study(files[MEDIUM], &it);
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
    for (uint32_t m = 0; m < it.rig.train->mesh_count; m++) {
        if (it.plan.meshes[m].state != TS_MESH_TOO_WEAK)
            continue;
        weak++;
        assert_true(it.rig.teeth->strength[m].reserve < 0.0);
        assert_same_double(it.plan.meshes[m].common, it.plan.meshes[m].most);
    }
    assert_true(weak > 0);
    ts_study_close(it.study);
}

/* `face to diameter` refuses a drive; `face to module` is what one would like. */
static void no_common_width_passes_face_to_diameter(void **state)
{
    (void)state;
    static const double slender[] = {0.7, 0.05};
    for (size_t f = MEDIUM; f < FILES; f++)
        for (size_t k = 0; k < 2; k++) {
            sized it;
            read_study(files[f], &it);
            it.study->drive.limits.contact_safety.value   = 1.3;
            it.study->drive.limits.face_to_diameter.value = slender[k];
            find(&it, 0.0005);
            for (uint32_t m = 0; m < it.rig.train->mesh_count; m++) {
                const ts_cylindrical_pair *pair = &it.rig.motion->meshes[m].pair;
                if (it.plan.meshes[m].state == TS_MESH_NOT_SIZED)
                    continue;
                assert_true(fmin(pair->in.b_1, pair->in.b_2) <=
                            slender[k] * fmin(pair->d_1, pair->d_2) + 1e-12);
            }
            ts_study_close(it.study);
        }
}

/* Without the viscosity nothing can be rated: every mesh says so, and every gear stays. */
static void what_cannot_be_rated_is_kept_and_said(void **state)
{
    (void)state;
    sized it;
    read_study(files[1], &it);
    it.study->drive.oil.nu_40 = (ts_measure){(double)NAN, 0, TS_UNKNOWN};
    find(&it, 0.0005);
    for (uint32_t m = 0; m < it.rig.train->mesh_count; m++)
        if (it.rig.train->meshes[m].kind == TS_MESH_CYLINDRICAL)
            assert_string_equal(it.plan.meshes[m].missing, "the viscosity of the oil");
    for (size_t i = 0; i < it.plan.gear_count; i++) {
        assert_int_equal(it.plan.gears[i].need, TS_WIDTH_KEPT);
        assert_same_double(it.plan.gears[i].after, it.plan.gears[i].before);
    }
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
        cmocka_unit_test(no_gear_can_be_a_step_narrower),
        cmocka_unit_test(shrunk_and_oversize_widths_come_to_the_same),
        cmocka_unit_test(every_width_has_a_reason),
        cmocka_unit_test(no_other_widths_nearby_are_lighter),
        cmocka_unit_test(a_pinion_is_wider_where_that_is_lighter),
        cmocka_unit_test(widths_are_whole_steps),
        cmocka_unit_test(sizing_again_changes_nothing),
        cmocka_unit_test(finer_steps_are_never_heavier),
        cmocka_unit_test(more_safety_is_never_lighter),
        cmocka_unit_test(an_unknown_width_is_found),
        cmocka_unit_test(what_no_width_can_bear_is_said),
        cmocka_unit_test(no_common_width_passes_face_to_diameter),
        cmocka_unit_test(what_cannot_be_rated_is_kept_and_said),
        cmocka_unit_test(idle_gears_keep_their_width),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
