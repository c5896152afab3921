/* Are the bevels of a drive rated as their standard has it, on the flank that the start loads too?
 */
#include "support/close.h"
#include "support/read_file.h"

#include "rating/iso10300/bevel_spectrum.h"
#include "study/study.h"

#include <math.h>
#include <string.h>

static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                    "examples/medium.yaml", "examples/large.yaml"};

static ts_study *study_of_text(const char *path, ts_text text, bool workings)
{
    const ts_study_options options = {.today = 20000, .workings = workings};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, text.at, text.length, &options), TS_OK);
    return study;
}

static ts_study *study_of(const char *path, bool workings)
{
    const ts_text file  = read_file(path);
    ts_study     *study = study_of_text(path, file, workings);
    free_file(file);
    return study;
}

/* The bevels between the radial shaft and the box of the first drive. */
static uint32_t box_bevels(const ts_study *study)
{
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        if (study->train.meshes[m].bevels == &study->drive.drive[0].box.bevels)
            return m;
    fail_msg("there are no bevels");
    return 0;
}

static uint32_t condition_called(const ts_study *study, const char *name)
{
    for (uint32_t c = 0; c < study->drive.condition_count; c++)
        if (strcmp(study->drive.conditions[c].name, name) == 0)
            return c;
    fail_msg("there is no %s", name);
    return 0;
}

static const ts_mesh_case *case_of(const ts_study *study, uint32_t m, uint32_t c)
{
    return &study->teeth.cases[(size_t)c * study->train.mesh_count + m];
}

static const ts_bevels_case *bevels_case(const ts_study *study, uint32_t m, uint32_t c)
{
    const ts_bevels *bevels = &study->teeth.bevels;
    return &bevels->cases[(size_t)c * bevels->count + bevels->number[m]];
}

/* ---- the same as by itself ------------------------------------------------------------------- */

/* The stand-alone rating of the same teeth and load gives the same bits. */
static void every_case_is_that_of_the_pair_by_itself(void **state)
{
    (void)state;
    for (size_t f = 0; f < 4; f++) {
        ts_study *study = study_of(files[f], false);
        size_t    seen  = 0;
        for (uint32_t m = 0; m < study->train.mesh_count; m++) {
            if (study->train.meshes[m].kind != TS_MESH_BEVEL)
                continue;
            const ts_bevels_mesh *mesh = &study->teeth.bevels.meshes[study->teeth.bevels.number[m]];
            for (uint32_t c = 0; c < study->drive.condition_count; c++) {
                const ts_mesh_case   *one  = case_of(study, m, c);
                const ts_bevels_case *held = bevels_case(study, m, c);
                ts_iso10300_rating    alone;
                if (!one->loaded)
                    continue;
                assert_true(ts_iso10300_rate(&mesh->prepared, &held->load, &alone, NULL));
                for (int g = 0; g < 2; g++) {
                    assert_same_double(one->rating.gear[g].S_H, alone.gear[g].S_H);
                    assert_same_double(one->rating.gear[g].S_F, alone.gear[g].S_F);
                }
                assert_same_double(held->load.T_1, one->load.T_1);
                seen++;
            }
        }
        assert_true(seen >= 12);
        ts_study_close(study);
    }
}

/* The sum of ts_wear over the curves is the sum of ISO 10300's own life lines. */
static void both_sums_of_damage_agree(void **state)
{
    (void)state;
    ts_study             *study = study_of("examples/bizjet.yaml", false);
    const uint32_t        m     = box_bevels(study);
    const ts_bevels_mesh *mesh  = &study->teeth.bevels.meshes[study->teeth.bevels.number[m]];
    ts_iso10300_case      cases[40];
    size_t                count = 0;
    for (uint32_t c = 0; c < study->drive.condition_count; c++) {
        const ts_mesh_load *load = &study->power.mesh[(size_t)c * study->train.mesh_count + m];
        if (!case_of(study, m, c)->loaded)
            continue;
        cases[count++] = (ts_iso10300_case){bevels_case(study, m, c)->load,
                                            load->flank[0] == TS_FLANK_LEADING ? 0 : 1,
                                            bevels_case(study, m, c)->rating};
    }
    assert_true(count >= 7);
    for (int i = 0; i < 8; i++) {
        const ts_iso10300_place place  = {i / 4, i / 2 % 2,
                                         i % 2 == 0 ? TS_BEVEL_CONTACT : TS_BEVEL_BENDING};
        const ts_flank          driver = place.flank == 0 ? TS_FLANK_LEADING : TS_FLANK_TRAILING;
        const ts_flank          driven = place.flank == 0 ? TS_FLANK_TRAILING : TS_FLANK_LEADING;
        const uint32_t          gear =
            place.gear == 0 ? study->train.meshes[m].driver : study->train.meshes[m].driven;
        const ts_flank_life *life =
            &study->teeth.lives[ts_flank_life_of(gear, place.gear == 0 ? driver : driven,
                                                 i % 2 == 0 ? TS_RATED_CONTACT : TS_RATED_BENDING)];
        const ts_iso10300_life other =
            ts_iso10300_life_of(&mesh->prepared, cases, count, place, NULL);
        assert_close(life->S, other.S, 1e-9);
    }
    ts_study_close(study);
}

/* ---- flanks ---------------------------------------------------------------------------------- */

/* All of the start goes through the bevels, and on the flanks that the run never loads. */
static void start_wears_the_other_flank_of_the_bevels(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/bizjet.yaml", false);
    const uint32_t      m = box_bevels(study), crank = condition_called(study, "crank");
    const size_t        cases = study->train.mesh_count;
    const ts_mesh_load *start = &study->power.mesh[crank * cases + m];
    const ts_mesh_load *run   = &study->power.mesh[condition_called(study, "climb") * cases + m];
    assert_int_equal(start->flow, TS_FLOW_INWARD);
    assert_int_equal(run->flow, TS_FLOW_OUTWARD);
    assert_int_not_equal(start->flank[0], run->flank[0]);
    assert_int_equal(study->teeth.strength[m].life.condition, crank);
    assert_int_equal(study->teeth.strength[m].stress, TS_RATED_BENDING);
    assert_int_equal(study->teeth.strength[m].flank, start->flank[0]);
    ts_study_close(study);
}

/* ISO 6336-3, annex B (from memory): R = -1.2 of the lesser load over the greater. */
static void run_and_start_bend_each_other_back(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/bizjet.yaml", false);
    const uint32_t      m     = box_bevels(study);
    const ts_mesh_case *start = case_of(study, m, condition_called(study, "crank"));
    const ts_mesh_case *run   = case_of(study, m, condition_called(study, "climb"));
    assert_true(start->w > run->w);
    assert_close(run->load.R[0], -1.2 * run->w / start->w, 1e-12);
    assert_true(bevels_case(study, m, condition_called(study, "climb"))->load.Y_M[0] < 1.0);
    ts_study_close(study);
}

/* derived: what leaves the box goes to the spool, referred to the radial shaft's gear */
static void torque_of_the_start_is_what_enters(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/bizjet.yaml", false);
    const uint32_t      m = box_bevels(study), crank = condition_called(study, "crank");
    const ts_mesh_load *load = &study->power.mesh[crank * study->train.mesh_count + m];
    assert_close(case_of(study, m, crank)->load.T_1, -load->T[1] * 29.0 / 48.0, 1e-14);
    assert_true(case_of(study, m, crank)->load.T_1 > -load->T[0]);
    ts_study_close(study);
}

/* ---- what the file says ---------------------------------------------------------------------- */

/* The reserve of the box bevels of the bizjet with one piece of its text replaced. */
static double reserve_with(const char *old, const char *new)
{
    const ts_text file = read_file("examples/bizjet.yaml");
    const char   *at   = strstr(file.at, old);
    ts_buffer     text;
    assert_non_null(at);
    ts_buffer_open(&text, NULL);
    ts_buffer_text(&text, (ts_text){file.at, (size_t)(at - file.at)});
    ts_buffer_add(&text, new);
    ts_buffer_add(&text, at + strlen(old));
    ts_study    *study   = study_of_text("changed.yaml", (ts_text){text.bytes, text.length}, false);
    const double reserve = study->teeth.strength[box_bevels(study)].reserve;
    ts_study_close(study);
    ts_buffer_close(&text);
    free_file(file);
    return reserve;
}

#define BOX_BEVELS "side: front, material: carburised 9310"

static void stronger_bevels_have_more_reserve(void **state)
{
    (void)state;
    const double as_it_is = reserve_with(BOX_BEVELS, BOX_BEVELS);
    assert_true(as_it_is > 0.0);
    assert_true(reserve_with("module: 2.25 mm", "module: 2.5 mm") > as_it_is * 1.5);
    assert_true(reserve_with(BOX_BEVELS, BOX_BEVELS ", mounting: straddled") > as_it_is);
    assert_true(reserve_with(BOX_BEVELS, BOX_BEVELS ", mounting: both overhung") < as_it_is);
    assert_true(reserve_with(BOX_BEVELS, BOX_BEVELS ", pattern checked: on a sample") < as_it_is);
    assert_true(reserve_with(BOX_BEVELS, BOX_BEVELS ", edge radius: 0.35") > as_it_is);
    assert_true(reserve_with(BOX_BEVELS, BOX_BEVELS ", application factor: 1.25") < as_it_is);
    assert_true(reserve_with(BOX_BEVELS, "side: front, material: through-hardened 42CrMo4") < 0.0);
}

static void unknown_value_leaves_no_rating_and_no_number(void **state)
{
    (void)state;
    assert_nan(reserve_with(BOX_BEVELS, BOX_BEVELS ", edge radius: unknown"));
    assert_nan(reserve_with(BOX_BEVELS, BOX_BEVELS ", dedendum: unknown"));
    assert_nan(reserve_with(BOX_BEVELS, BOX_BEVELS ", pattern length: unknown"));
    assert_nan(reserve_with(BOX_BEVELS ", accuracy: 4", BOX_BEVELS ", accuracy: unknown"));
    assert_nan(reserve_with(BOX_BEVELS, BOX_BEVELS ", long life factor: unknown"));
}

/* Spiral, zerol and straight teeth are all within ISO 10300. */
static void straight_and_zerol_teeth_are_rated_too(void **state)
{
    (void)state;
    const double zerol    = reserve_with("spiral: 12 deg", "spiral: 0 deg");
    const double straight = reserve_with("spiral: 12 deg, hand: right, face: 16 mm,\n"
                                         "               side: front, material: carburised 9310, "
                                         "accuracy: 4, cutter radius: 63.5 mm",
                                         "spiral: 0 deg, face: 16 mm, side: front");
    assert_true(isfinite(zerol));
    assert_true(isfinite(straight));
}

/* ---- the second opinion ---------------------------------------------------------------------- */

static void agma_answers_where_its_factors_are_given(void **state)
{
    (void)state;
    const ts_text file = read_file("examples/bizjet.yaml");
    const char   *at   = strstr(file.at, BOX_BEVELS);
    ts_buffer     text;
    ts_buffer_open(&text, NULL);
    ts_buffer_text(&text, (ts_text){file.at, (size_t)(at - file.at)});
    ts_buffer_add(&text, BOX_BEVELS ", I factor: 0.085, J factor 1: 0.24, J factor 2: 0.22");
    ts_buffer_add(&text, at + strlen(BOX_BEVELS));
    ts_study      *study = study_of_text("changed.yaml", (ts_text){text.bytes, text.length}, false);
    const uint32_t m = box_bevels(study), crank = condition_called(study, "crank");
    const ts_bevels_mesh     *mesh   = &study->teeth.bevels.meshes[study->teeth.bevels.number[m]];
    const ts_agma2003_rating *second = &bevels_case(study, m, crank)->second;
    assert_true(mesh->second_asked);
    assert_null(mesh->second_missing);
    assert_close(second->F_et, 2.0 * case_of(study, m, crank)->load.T_1 / (29.0 * 2.25e-3), 1e-12);
    for (int g = 0; g < 2; g++) {
        assert_true(second->gear[g].S_H > 0.3 && second->gear[g].S_H < 3.0);
        assert_true(second->gear[g].S_F > 0.3 && second->gear[g].S_F < 6.0);
    }
    const ts_opinion_gap *gaps[2] = {&study->opinion.mesh[m].contact,
                                     &study->opinion.mesh[m].bending};
    for (int i = 0; i < 2; i++) {
        double product = 1.0;
        for (int f = 0; f < TS_FACTORS; f++)
            product *= gaps[i]->factor[f];
        assert_int_equal(gaps[i]->condition, crank);
        assert_close(gaps[i]->ratio, gaps[i]->second / gaps[i]->first, 1e-15);
        assert_close(product, gaps[i]->ratio, 1e-12);
    }
    ts_study_close(study);
    ts_buffer_close(&text);
    free_file(file);
}

static void agma_is_silent_where_they_are_not(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/bizjet.yaml", false);
    for (uint32_t b = 0; b < study->teeth.bevels.count; b++)
        assert_false(study->teeth.bevels.meshes[b].second_asked);
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        if (study->train.meshes[m].kind == TS_MESH_BEVEL)
            assert_int_equal(study->opinion.mesh[m].contact.condition, TS_EVERY_CONDITION);
    ts_study_close(study);
}

/* ---- the record ------------------------------------------------------------------------------ */

static void workings_change_no_bit_of_the_bevels(void **state)
{
    (void)state;
    ts_study *silent = study_of("examples/large.yaml", false);
    ts_study *told   = study_of("examples/large.yaml", true);
    for (uint32_t m = 0; m < silent->train.mesh_count; m++)
        assert_same_double(told->teeth.strength[m].reserve, silent->teeth.strength[m].reserve);
    ts_study_close(silent);
    ts_study_close(told);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_case_is_that_of_the_pair_by_itself),
        cmocka_unit_test(both_sums_of_damage_agree),
        cmocka_unit_test(start_wears_the_other_flank_of_the_bevels),
        cmocka_unit_test(run_and_start_bend_each_other_back),
        cmocka_unit_test(torque_of_the_start_is_what_enters),
        cmocka_unit_test(stronger_bevels_have_more_reserve),
        cmocka_unit_test(unknown_value_leaves_no_rating_and_no_number),
        cmocka_unit_test(straight_and_zerol_teeth_are_rated_too),
        cmocka_unit_test(agma_answers_where_its_factors_are_given),
        cmocka_unit_test(agma_is_silent_where_they_are_not),
        cmocka_unit_test(workings_change_no_bit_of_the_bevels),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
