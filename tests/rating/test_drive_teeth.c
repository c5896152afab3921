/* Are the teeth of a whole drive rated on the right flanks, for the right cycles, and added up? */
#include "support/close.h"
#include "support/read_file.h"

#include "study/study.h"

#include <math.h>
#include <string.h>

static ts_study *study_of(const char *path, bool workings)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000, .workings = workings};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static uint32_t mesh_between(const ts_study *study, const char *driver, const char *driven)
{
    const ts_train *train = &study->train;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (strcmp(train->shafts[train->meshes[m].driver_shaft].name, driver) == 0 &&
            strcmp(train->shafts[train->meshes[m].driven_shaft].name, driven) == 0)
            return m;
    fail_msg("%s does not drive %s", driver, driven);
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

static const ts_mesh_case *case_of(const ts_study *study, uint32_t mesh, const char *condition)
{
    const uint32_t c = condition_called(study, condition);
    return &study->teeth.cases[(size_t)c * study->train.mesh_count + mesh];
}

static const ts_flank_life *life_of(const ts_study *study, uint32_t gear, ts_flank flank,
                                    ts_rated_stress stress)
{
    return &study->teeth.lives[ts_flank_life_of(gear, flank, stress)];
}

/* ---- flanks and cycles ----------------------------------------------------------------------- */

static void start_and_run_wear_different_flanks(void **state)
{
    (void)state;
    ts_study            *study = study_of("examples/large.yaml", false);
    const uint32_t       m     = mesh_between(study, "hp box input", "starter");
    const uint32_t       input = study->train.meshes[m].driver;
    const ts_flank_life *start = life_of(study, input, TS_FLANK_TRAILING, TS_RATED_CONTACT);
    const ts_flank_life *run   = life_of(study, input, TS_FLANK_LEADING, TS_RATED_CONTACT);
    assert_int_equal(start->condition, condition_called(study, "crank"));
    assert_int_not_equal(run->condition, condition_called(study, "crank"));
    assert_int_not_equal(run->condition, condition_called(study, "light-off"));
    assert_int_equal(study->teeth.strength[m].flank, TS_FLANK_TRAILING);
    ts_study_close(study);
}

/* derived: turns = speed times time; 22000 starts of 30 s, which are assumed, and 76000 h */
static void cycles_are_turns_in_the_time_of_the_condition(void **state)
{
    (void)state;
    ts_study           *study  = study_of("examples/large.yaml", false);
    const uint32_t      m      = mesh_between(study, "hp box input", "starter");
    const ts_mesh_case *start  = case_of(study, m, "crank");
    const ts_mesh_case *cruise = case_of(study, m, "cruise");
    const double        ratio =
        ts_rational_value(study->motion.shafts[study->train.meshes[m].driver_shaft].ratio);
    assert_close(start->load.N_L[0], 1150.0 / 60.0 * ratio * 22000.0 * 30.0, 1e-12);
    assert_close(cruise->load.N_L[0], 10100.0 / 60.0 * ratio * 76000.0 * 3600.0, 1e-12);
    assert_close(cruise->load.N_L[1], cruise->load.N_L[0] * 43.0 / 55.0, 1e-12);
    ts_study_close(study);
}

/* derived: what the starter gives to its gear, referred to the smaller gear's side */
static void start_torque_enters_on_the_driven_side(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/large.yaml", false);
    const uint32_t      m     = mesh_between(study, "hp box input", "starter");
    const uint32_t      c     = condition_called(study, "crank");
    const ts_mesh_load *load  = &study->power.mesh[c * study->train.mesh_count + m];
    const ts_mesh_case *crank = case_of(study, m, "crank");
    assert_true(load->T[1] < 0.0);
    assert_close(crank->load.T_1, -load->T[1] * 43.0 / 55.0, 1e-14);
    assert_true(crank->load.T_1 > -load->T[0]); /* more than what leaves after the loss */
    ts_study_close(study);
}

/* ---- bending to both sides ------------------------------------------------------------------- */

/* ISO 6336-3, annex B (from memory): R = -1.2 where both flanks are loaded alike; here the torque
 * falls from mesh to mesh by what is lost, half a per cent. */
static void idler_is_bent_to_both_sides(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/large.yaml", false);
    const uint32_t      m     = mesh_between(study, "hp box input", "idler 6");
    const ts_mesh_case *one   = case_of(study, mesh_between(study, "idler 6", "generator 2"),
                                        study->drive.conditions[4].name);
    assert_true(one->load.R[0] < -1.15 && one->load.R[0] >= -1.2);
    assert_true(one->rating.gear[0].Y_M < 0.8);
    assert_true(case_of(study, m, "climb")->load.R[1] < -0.9);
    ts_study_close(study);
}

static void gear_that_is_loaded_on_one_flank_is_not_bent_back(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/bizjet.yaml", false);
    const uint32_t      m     = mesh_between(study, "lp box input", "hydraulic pump 2");
    const ts_mesh_case *one   = case_of(study, m, "climb");
    assert_same_double(one->load.R[0], 0.0);
    assert_same_double(one->load.R[1], 0.0);
    assert_close(one->rating.gear[0].Y_M, 1.0, 1e-15);
    ts_study_close(study);
}

/* The starter stands one mesh away: its gear and the input are bent back by every start. */
static void start_bends_the_running_teeth_back(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/large.yaml", false);
    const uint32_t      m     = mesh_between(study, "hp box input", "starter");
    const ts_mesh_case *run   = case_of(study, m, "climb");
    const ts_mesh_case *start = case_of(study, m, "crank");
    assert_close(run->load.R[1], -1.2 * run->w / start->w, 1e-12);
    assert_true(run->load.R[1] < 0.0 && run->load.R[1] > -1.2);
    ts_study_close(study);
}

/* ---- adding up ------------------------------------------------------------------------------- */

/* What all conditions do together is never less than what one does. */
static void life_is_never_safer_than_one_condition(void **state)
{
    (void)state;
    static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                        "examples/medium.yaml", "examples/large.yaml"};
    for (size_t f = 0; f < 4; f++) {
        ts_study       *study = study_of(files[f], false);
        const ts_train *train = &study->train;
        size_t          seen  = 0;
        for (size_t k = 0; k < study->drive.condition_count * train->mesh_count; k++) {
            const ts_mesh_case *one  = &study->teeth.cases[k];
            const ts_mesh      *mesh = &train->meshes[k % train->mesh_count];
            for (int side = 0; side < 2 && one->loaded; side++) {
                const uint32_t gear  = side == 0 ? mesh->driver : mesh->driven;
                const ts_flank flank = study->power.mesh[k].flank[side];
                if (mesh->kind != TS_MESH_CYLINDRICAL)
                    continue;
                const double H = life_of(study, gear, flank, TS_RATED_CONTACT)->S;
                const double F = life_of(study, gear, flank, TS_RATED_BENDING)->S;
                assert_true(H <= one->rating.gear[side].S_H * (1.0 + 1e-12));
                assert_true(F <= one->rating.gear[side].S_F * (1.0 + 1e-12));
                seen++;
            }
        }
        assert_true(seen > 50);
        ts_study_close(study);
    }
}

/* Palmgren and Miner: the damage of both meshes of an input gear is the sum of what each does. */
static void both_meshes_of_an_input_wear_its_flank(void **state)
{
    (void)state;
    ts_study            *study = study_of("examples/bizjet.yaml", false);
    const uint32_t       a     = mesh_between(study, "hp box input", "idler 2");
    const uint32_t       b     = mesh_between(study, "hp box input", "idler 4");
    const uint32_t       gear  = study->train.meshes[a].driver;
    const ts_flank_life *life  = life_of(study, gear, TS_FLANK_LEADING, TS_RATED_CONTACT);
    double               U = 0.0, alone = 0.0;
    assert_int_equal(study->train.meshes[b].driver, gear);
    for (size_t c = 0; c < study->drive.condition_count; c++)
        for (int i = 0; i < 2; i++) {
            const uint32_t      m   = i == 0 ? a : b;
            const size_t        k   = c * study->train.mesh_count + m;
            const ts_mesh_case *one = &study->teeth.cases[k];
            if (!one->loaded || study->power.mesh[k].flank[0] != TS_FLANK_LEADING)
                continue;
            const ts_iso6336_gear_rating *g = &one->rating.gear[0];
            const double                  part =
                one->load.N_L[0] / ts_life_curve_cycles(&g->contact, life->S * g->sigma_H);
            U += part;
            alone += i == 0 ? part : 0.0;
        }
    assert_close(U, 1.0, 1e-9);
    assert_true(alone < 1.0 && alone > 0.5);
    ts_study_close(study);
}

static void twice_the_time_is_half_the_lives(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/medium.yaml", false);
    double    lives[64];
    assert_true(study->train.mesh_count < 64);
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        lives[m] = study->teeth.strength[m].times;
    for (size_t c = 0; c < study->drive.condition_count; c++) {
        study->drive.conditions[c].hours.value *= 2.0;
        study->drive.conditions[c].lasts.value *= 2.0;
    }
    ts_teeth_solve(&study->drive, &study->teeth, NULL);
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        if (study->train.meshes[m].kind == TS_MESH_CYLINDRICAL)
            assert_close(study->teeth.strength[m].times, lives[m] / 2.0, 1e-12);
    ts_study_close(study);
}

static void wider_teeth_are_safer(void **state)
{
    (void)state;
    ts_study    *study = study_of("examples/large.yaml", false);
    const double before =
        study->teeth.strength[mesh_between(study, "hp box input", "idler 6")].S_H[1];
    for (uint32_t g = 0; g < study->train.gear_count; g++)
        study->train.gears[g].face.value *= 1.2;
    assert_int_equal(ts_study_solve(study), TS_OK);
    const double after =
        study->teeth.strength[mesh_between(study, "hp box input", "idler 6")].S_H[1];
    assert_true(after > before * 1.02);
    ts_study_close(study);
}

/* ISO 6336-1, 7.5 (the table of B_1 and B_2, from memory): crowned by half of f_ma, half of what
 * the making leaves remains; what the deflection leaves stays whole. */
static void crowning_leaves_half_of_what_the_making_leaves(void **state)
{
    (void)state;
    ts_study *study = study_of("examples/large.yaml", false);
    ts_study *eased = study_of("examples/large.yaml", false);
    for (uint32_t g = 0; g < eased->train.gear_count; g++)
        if (eased->train.gears[g].system != NULL)
            ((ts_tooth_system *)eased->train.gears[g].system)->lead.value = TS_LEAD_CROWNED;
    assert_int_equal(ts_study_solve(eased), TS_OK);
    int seen = 0;
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        for (uint32_t c = 0; c < study->drive.condition_count; c++) {
            const size_t        at    = (size_t)c * study->train.mesh_count + m;
            const ts_mesh_case *plain = &study->teeth.cases[at], *crown = &eased->teeth.cases[at];
            if (!plain->loaded || study->train.meshes[m].kind != TS_MESH_CYLINDRICAL)
                continue;
            seen++;
            assert_close(plain->rating.F_betax, 1.33 * plain->load.f_sh + plain->load.f_ma, 1e-12);
            assert_close(crown->rating.F_betax, 1.33 * crown->load.f_sh + 0.5 * crown->load.f_ma,
                         1e-12);
            assert_true(crown->rating.K_Hbeta < plain->rating.K_Hbeta);
        }
    assert_true(seen > 50);
    ts_study_close(eased);
    ts_study_close(study);
}

/* ---- what is lacking ------------------------------------------------------------------------- */

static void unknown_time_leaves_no_safety(void **state)
{
    (void)state;
    ts_study      *study = study_of("examples/bizjet.yaml", false);
    const uint32_t m     = mesh_between(study, "lp box input", "hydraulic pump 2");
    ts_condition  *climb = &study->drive.conditions[condition_called(study, "climb")];
    climb->hours         = (ts_measure){(double)NAN, climb->node, TS_ABSENT};
    assert_nan(ts_condition_seconds(climb));
    ts_teeth_solve(&study->drive, &study->teeth, NULL);
    assert_nan(study->teeth.strength[m].reserve);
    assert_nan(study->teeth.strength[m].S_H[0]);
    assert_nan(study->teeth.strength[m].times);
    assert_non_null(case_of(study, m, "climb")->missing);
    assert_null(case_of(study, m, "cruise")->missing);
    ts_study_close(study);
}

static void an_idle_mesh_has_no_rating(void **state)
{
    (void)state;
    ts_study           *study = study_of("examples/bizjet.yaml", false);
    const uint32_t      m     = mesh_between(study, "lp box input", "hydraulic pump 2");
    const ts_mesh_case *crank = case_of(study, m, "crank"); /* its spool stands still */
    assert_false(crank->loaded);
    for (size_t c = 0; c < study->drive.condition_count; c++)
        study->power.mesh[c * study->train.mesh_count + m] = (ts_mesh_load){.flow = TS_FLOW_NONE};
    ts_teeth_solve(&study->drive, &study->teeth, NULL);
    assert_true(isinf(study->teeth.strength[m].reserve));
    assert_true(isinf(study->teeth.strength[m].S_F[1]));
    ts_study_close(study);
}

/* ---- the record ------------------------------------------------------------------------------ */

static void workings_change_no_bit(void **state)
{
    (void)state;
    ts_study    *silent = study_of("examples/medium.yaml", false);
    ts_study    *told   = study_of("examples/medium.yaml", true);
    const size_t cases  = silent->drive.condition_count * silent->train.mesh_count;
    for (size_t k = 0; k < cases; k++)
        for (int g = 0; g < 2 && silent->teeth.cases[k].loaded; g++) {
            const ts_iso6336_gear_rating *a = &silent->teeth.cases[k].rating.gear[g];
            const ts_iso6336_gear_rating *b = &told->teeth.cases[k].rating.gear[g];
            if (silent->train.meshes[k % silent->train.mesh_count].kind == TS_MESH_CYLINDRICAL) {
                assert_same_double(b->S_H, a->S_H);
                assert_same_double(b->S_F, a->S_F);
            }
        }
    for (uint32_t m = 0; m < silent->train.mesh_count; m++)
        if (silent->train.meshes[m].kind == TS_MESH_CYLINDRICAL)
            assert_same_double(told->teeth.strength[m].reserve, silent->teeth.strength[m].reserve);
    ts_study_close(silent);
    ts_study_close(told);
}

/* The safety of all conditions is noted with the damage that makes it: U = 1 there. */
static void safeties_are_noted_with_their_damage(void **state)
{
    (void)state;
    ts_study        *study = study_of("examples/large.yaml", true);
    const uint32_t   m     = mesh_between(study, "hp box input", "starter");
    const ts_subject about = {study->train.meshes[m].node, TS_EVERY_CONDITION};
    const size_t     found = ts_workings_find(study->workings, about, "S_H1");
    assert_true(found != SIZE_MAX);
    const ts_note *note = ts_workings_at(study->workings, found);
    assert_int_equal(note->kind, TS_NOTE_SEARCHED);
    assert_same_double(note->value, study->teeth.strength[m].S_H[0]);
    assert_close_abs(note->residual, 0.0, 1e-9);
    ts_study_close(study);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(start_and_run_wear_different_flanks),
        cmocka_unit_test(cycles_are_turns_in_the_time_of_the_condition),
        cmocka_unit_test(start_torque_enters_on_the_driven_side),
        cmocka_unit_test(idler_is_bent_to_both_sides),
        cmocka_unit_test(gear_that_is_loaded_on_one_flank_is_not_bent_back),
        cmocka_unit_test(start_bends_the_running_teeth_back),
        cmocka_unit_test(life_is_never_safer_than_one_condition),
        cmocka_unit_test(both_meshes_of_an_input_wear_its_flank),
        cmocka_unit_test(twice_the_time_is_half_the_lives),
        cmocka_unit_test(wider_teeth_are_safer),
        cmocka_unit_test(crowning_leaves_half_of_what_the_making_leaves),
        cmocka_unit_test(unknown_time_leaves_no_safety),
        cmocka_unit_test(an_idle_mesh_has_no_rating),
        cmocka_unit_test(workings_change_no_bit),
        cmocka_unit_test(safeties_are_noted_with_their_damage),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
