/* Is a drive rated for heat and films as its meshes would be by themselves, and does the oil of the
 * file do what oil does?
 */
#include "support/close.h"
#include "support/read_file.h"

#include "study/study.h"
#include "towershaft/rate.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const char *const examples[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                       "examples/medium.yaml", "examples/large.yaml"};

static ts_study *study_of_text(const char *name, ts_text text, ts_file_wanted wanted, bool workings)
{
    const ts_study_options options = {.today = 20000, .workings = workings, .file = wanted};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    if (ts_study_read(study, name, text.at, text.length, &options) != TS_OK &&
        ts_study_message_count(study) > 0)
        print_error("%s: %s\n", name, ts_study_message(study, 0).says);
    return study;
}

static ts_study *study_of(const char *path, bool workings)
{
    const ts_text file  = read_file(path);
    ts_study     *study = study_of_text(path, file, TS_WANT_DRIVE, workings);
    free_file(file);
    assert_true(study->solved);
    return study;
}

/* The drive of tests/check/base.yaml with an `oil:` of its own, not yet known to be understood.
 * Next to nothing is asked of the life of its bearings: they, and how teeth lie in them, would
 * else change with the oil. */
static ts_study *study_with_oil(const char *oil)
{
    const ts_text file   = read_file("tests/check/base.yaml");
    const char   *place  = strstr(file.at, "\nspools:");
    const char   *limits = strstr(file.at, "  bearing slip: 0.001");
    const size_t  room   = file.length + strlen(oil) + 48;
    char         *text   = malloc(room);
    assert_non_null(text);
    assert_true(place != NULL && limits > place);
    const int length =
        snprintf(text, room, "%.*s\noil: {%s}%.*s  bearing life: 0.001\n%s", (int)(place - file.at),
                 file.at, oil, (int)(limits - place), place, limits);
    assert_true(length > 0 && (size_t)length < room);
    ts_study *study =
        study_of_text("base.yaml", (ts_text){text, (size_t)length}, TS_WANT_DRIVE, false);
    free(text);
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

static const ts_scuffing_case *heat_of(const ts_study *study, uint32_t m, uint32_t c)
{
    return &study->rubbing.cases[(size_t)c * study->train.mesh_count + m];
}

static const ts_film_of_case *film_of(const ts_study *study, uint32_t m, uint32_t c)
{
    return &study->rubbing.films[(size_t)c * study->train.mesh_count + m];
}

/* ---- the same mesh by hand ------------------------------------------------------------------- */

/* A rate file of that mesh in that condition, typed from the drive file and the defaults that it
 * shows; loads and speeds as the drive has them. */
static ts_study *rated_by_itself(const ts_study *study, uint32_t m, uint32_t c)
{
    const ts_cylindrical_pair *pair = &study->motion.meshes[m].pair;
    const ts_mesh_case        *one  = &study->teeth.cases[(size_t)c * study->train.mesh_count + m];
    char                       text[2048];
    const int                  length = snprintf(
                         text, sizeof text,
                         "towershaft rate: 1\ntitle: by hand\ngear pair:\n  one: {z_1: %.0f, z_2: %.0f, m_n: 2 mm, "
                                          "alpha_n: 25 deg, rho_fPs: 0.25, b_1: %.17g m, b_2: %.17g m, T_1: %.17g N.m, n_1: %.17g "
                                          "rad/s, L_h: 1000 h, K_Hbeta: %.17g, material 1: case-carburised MQ, material 2: "
                                          "case-carburised "
                                          "MQ, accuracy 1: 5, accuracy 2: 5, R_z1: 3 um, R_z2: 3 um, R_zF1: 10 um, R_zF2: 10 um, "
                                          "nu_40: 27 cSt, nu_100: 5.1 cSt, rho_15: 1000 kg/m3, oil: polyol ester, theta_oil: 90 "
                                          "degC, lubrication: jets, driver: gear 1, mates: %d, phi_E: 1, S_FZG: %.17g, "
                                          "SKS: 8}\n",
                         (double)pair->in.z_1, (double)pair->in.z_2, pair->in.b_1, pair->in.b_2, one->load.T_1,
                         one->load.omega_1, one->rating.K_Hbeta,
        m == mesh_between(study, "lp box input", "hydraulic pump 2") ? 1 : 2,
                         study->rubbing.oil.S_FZG);
    assert_true(length > 0 && length < (int)sizeof text);
    ts_study *rated = study_of_text("by hand", (ts_text){text, (size_t)length}, TS_WANT_RATE, true);
    assert_true(rated->rated);
    return rated;
}

static void assert_as_rated(const ts_study *study, uint32_t m, uint32_t c)
{
    ts_study               *rated = rated_by_itself(study, m, c);
    const ts_scuffing_case *heat  = heat_of(study, m, c);
    const ts_film_of_case  *film  = film_of(study, m, c);
    assert_close(heat->S_B, ts_study_number(rated, "gear pair/one:S_B@scuffing"), 1e-12);
    assert_close(heat->theta_Bmax, ts_study_number(rated, "gear pair/one:theta_Bmax@scuffing"),
                 1e-12);
    assert_close(heat->S_intS, ts_study_number(rated, "gear pair/one:S_intS@scuffing"), 1e-12);
    assert_close(heat->theta_int, ts_study_number(rated, "gear pair/one:theta_int@scuffing"),
                 1e-12);
    assert_close(film->lambda_GFmin,
                 ts_study_number(rated, "gear pair/one:lambda_GFmin@micropitting"), 1e-12);
    assert_close(film->S_lambda, ts_study_number(rated, "gear pair/one:S_lambda@micropitting"),
                 1e-12);
    ts_study_close(rated);
}

/* derived: the drive and the rate file are two roads to the same rooms */
static void a_mesh_of_a_drive_is_rated_as_by_itself(void **state)
{
    ts_study      *study    = study_with_oil("micropitting stage: 8");
    const uint32_t take_off = condition_called(study, "take-off");
    (void)state;
    assert_true(study->solved);
    assert_as_rated(study, mesh_between(study, "lp box input", "hydraulic pump 2"), take_off);
    assert_as_rated(study, mesh_between(study, "hp box input", "idler 2"), take_off);
    assert_as_rated(study, mesh_between(study, "idler 2", "generator + breather"),
                    condition_called(study, "ground idle"));
    ts_study_close(study);
}

/* ---- what governs ---------------------------------------------------------------------------- */

static void least_safeties_are_those_of_the_worst_condition(void **state)
{
    (void)state;
    for (size_t e = 0; e < sizeof examples / sizeof examples[0]; e++) {
        ts_study *study = study_of(examples[e], false);
        ts_rubbing_films(&study->drive, &study->rubbing, NULL);
        for (uint32_t m = 0; m < study->train.mesh_count; m++) {
            const bool bevel = study->train.meshes[m].kind == TS_MESH_BEVEL;
            double     S_B = INFINITY, S_intS = INFINITY, film = INFINITY;
            for (uint32_t c = 0; c < study->drive.condition_count; c++) {
                if (!ts_rubbing_stands(&study->rubbing, m, c))
                    continue;
                assert_null(heat_of(study, m, c)->missing);
                S_intS = fmin(S_intS, heat_of(study, m, c)->S_intS);
                assert_true(heat_of(study, m, c)->theta_int > study->rubbing.oil.theta_oil[c]);
                if (bevel)
                    continue;
                S_B  = fmin(S_B, heat_of(study, m, c)->S_B);
                film = fmin(film, film_of(study, m, c)->lambda_GFmin);
            }
            assert_same_double(study->rubbing.mesh[m].S_B.S, S_B);
            assert_same_double(study->rubbing.mesh[m].S_intS.S, S_intS);
            if (!bevel)
                assert_same_double(study->rubbing.mesh[m].lambda_GFmin.S, film);
        }
        ts_study_close(study);
    }
}

/* The start goes the other way: the gear nearer to the starter drives, on the other flank. */
static void gear_that_power_enters_drives(void **state)
{
    ts_study      *study = study_of("examples/bizjet.yaml", false);
    const uint32_t m     = mesh_between(study, "hp tower shaft", "hp box input");
    (void)state;
    assert_int_equal(heat_of(study, m, condition_called(study, "crank"))->driver, 2);
    assert_int_equal(heat_of(study, m, condition_called(study, "climb"))->driver, 1);
    ts_study_close(study);
}

/* ---- the oil --------------------------------------------------------------------------------- */

/* derived: the stage is chosen so that case-hardened flanks scuff at the given temperature, and S_B
 * is of that one */
static void scuffing_temperature_of_the_file_is_the_one_that_counts(void **state)
{
    ts_study      *study = study_with_oil("scuffing temperature: 240 degC");
    const uint32_t m     = mesh_between(study, "idler 2", "generator + breather");
    const uint32_t c     = condition_called(study, "take-off");
    (void)state;
    const ts_scuffing_case *one       = heat_of(study, m, c);
    const double            theta_oil = study->rubbing.oil.theta_oil[c];
    assert_close(theta_oil + one->S_B * (one->theta_Bmax - theta_oil), 273.15 + 240.0, 1e-12);
    ts_study_close(study);
}

static double least_integral(const char *oil)
{
    ts_study *study = study_with_oil(oil);
    double    least = INFINITY;
    assert_true(study->solved);
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        least = fmin(least, study->rubbing.mesh[m].S_intS.S);
    ts_study_close(study);
    return least;
}

static double least_film(const char *oil)
{
    ts_study *study = study_with_oil(oil);
    double    least = INFINITY;
    assert_true(study->solved);
    ts_rubbing_films(&study->drive, &study->rubbing, NULL);
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        if (study->train.meshes[m].kind == TS_MESH_CYLINDRICAL)
            least = fmin(least, study->rubbing.mesh[m].lambda_GFmin.S);
    ts_study_close(study);
    return least;
}

static void oil_does_what_oil_does(void **state)
{
    (void)state;
    assert_true(least_integral("feed: 110 degC") < least_integral("feed: 90 degC"));
    assert_true(least_integral("specification: DOD-PRF-85734") >
                least_integral("specification: MIL-PRF-23699"));
    assert_true(least_integral("scuffing stage: 6") < least_integral("scuffing stage: 10"));
    assert_true(least_film("feed: 110 degC") < least_film("feed: 90 degC"));
    assert_true(least_film("specification: MIL-PRF-7808 grade 3") < least_film("feed: 90 degC"));
    assert_true(least_film("specification: mineral ISO VG 100") > least_film("feed: 90 degC"));
    /* a condition of its own */
    assert_true(least_integral("feed at: {crank: 110 degC}") < least_integral("feed: 90 degC"));
    assert_close(least_integral("feed: 60 degC, feed at: {crank: 90 degC, light-off: 90 degC, "
                                "ground idle: 90 degC, take-off: 90 degC, red line: 90 degC}"),
                 least_integral("feed: 90 degC"), 1e-15);
}

static void oil_that_contradicts_itself_is_refused_with_its_place(void **state)
{
    static const char *const wrong[] = {
        "scuffing stage: 7, scuffing temperature: 200 degC",
        "viscosity at 40: 4 cSt",
        "viscosity at 40: 20 cSt, viscosity at 100: 30 cSt",
    };
    (void)state;
    for (size_t i = 0; i < sizeof wrong / sizeof wrong[0]; i++) {
        ts_study *study = study_with_oil(wrong[i]);
        assert_false(study->solved);
        assert_string_equal(ts_study_message(study, 0).code, "contradiction");
        assert_true(ts_study_message(study, 0).line > 0);
        ts_study_close(study);
    }
}

static size_t not_computable(const ts_study *study, const char *rule)
{
    size_t count = 0;
    for (size_t i = 0; i < study->outcome.finding_count; i++)
        count += study->outcome.findings[i].state == TS_NOT_COMPUTABLE &&
                 strcmp(study->outcome.findings[i].rule, rule) == 0;
    return count;
}

/* What is unknown is asked for once, and never passes. */
static void unknown_oil_never_passes(void **state)
{
    static const char *const unknown[] = {
        "scuffing temperature: unknown",
        "viscosity at 100: unknown",
        "density: unknown",
        "scuffing stage: unknown",
    };
    (void)state;
    for (size_t i = 0; i < sizeof unknown / sizeof unknown[0]; i++) {
        ts_study *study = study_with_oil(unknown[i]);
        assert_true(study->solved);
        assert_int_equal(not_computable(study, "E4-scuffing-flash"), 1);
        assert_int_equal(not_computable(study, "E4-scuffing-integral"), 1);
        assert_int_equal(study->outcome.verdict, TS_VERDICT_NOT_COMPUTABLE);
        ts_study_close(study);
    }
    ts_study *study = study_with_oil("feed at: {take-off: unknown, red line: unknown}");
    assert_int_equal(not_computable(study, "E4-scuffing-integral"), 2);
    ts_study_close(study);
}

static void assert_governs_red_line(const char *oil)
{
    ts_study *study = study_with_oil(oil);
    ts_study *plain = study_with_oil("feed: 90 degC");
    bool      any   = false;
    assert_true(study->solved);
    for (uint32_t m = 0; m < study->train.mesh_count; m++) {
        const ts_least_safety *is = &study->rubbing.mesh[m].S_intS;
        if (plain->rubbing.mesh[m].S_intS.condition != (int32_t)condition_called(plain, "red line"))
            continue;
        any = true;
        assert_same_double(is->S, plain->rubbing.mesh[m].S_intS.S);
        assert_int_equal(is->condition, plain->rubbing.mesh[m].S_intS.condition);
    }
    assert_true(any);
    ts_study_close(plain);
    ts_study_close(study);
}

static void a_condition_that_cannot_be_told_hides_no_other(void **state)
{
    (void)state;
    assert_governs_red_line("feed at: {crank: unknown}");
    assert_governs_red_line("feed at: {crank: -30 degC}");
}

static void oil_of_a_cold_morning_is_no_riddle(void **state)
{
    ts_study *study = study_with_oil("feed at: {crank: -30 degC, light-off: -40 degC}");
    (void)state;
    assert_int_equal(not_computable(study, "E4-scuffing-integral"), 0);
    assert_int_equal(not_computable(study, "E4-scuffing-flash"), 0);
    ts_study_close(study);
}

/* ---- films ----------------------------------------------------------------------------------- */

static void films_are_computed_when_a_rule_or_a_page_asks(void **state)
{
    ts_study *study = study_with_oil("feed: 90 degC");
    (void)state;
    assert_false(study->rubbing.filmed);
    ts_rubbing_films(&study->drive, &study->rubbing, NULL);
    assert_true(study->rubbing.filmed);
    ts_study *asked = study_with_oil("micropitting stage: 8");
    assert_true(asked->rubbing.filmed);
    for (uint32_t m = 0; m < study->train.mesh_count; m++)
        for (uint32_t c = 0; c < study->drive.condition_count; c++)
            if (study->train.meshes[m].kind == TS_MESH_CYLINDRICAL &&
                ts_rubbing_stands(&study->rubbing, m, c)) {
                assert_same_double(film_of(study, m, c)->lambda_GFmin,
                                   film_of(asked, m, c)->lambda_GFmin);
                assert_true(isnan(film_of(study, m, c)->S_lambda));
                assert_true(film_of(asked, m, c)->S_lambda > 0.0);
            }
    ts_study_close(asked);
    ts_study_close(study);
}

static void workings_change_no_number(void **state)
{
    ts_study *plain = study_of("examples/large.yaml", false);
    ts_study *noted = study_of("examples/large.yaml", true);
    (void)state;
    ts_rubbing_films(&plain->drive, &plain->rubbing, NULL);
    for (uint32_t m = 0; m < plain->train.mesh_count; m++)
        for (uint32_t c = 0; c < plain->drive.condition_count; c++) {
            if (!ts_rubbing_stands(&plain->rubbing, m, c))
                continue;
            assert_same_double(heat_of(plain, m, c)->S_intS, heat_of(noted, m, c)->S_intS);
            if (plain->train.meshes[m].kind != TS_MESH_CYLINDRICAL)
                continue;
            assert_same_double(heat_of(plain, m, c)->S_B, heat_of(noted, m, c)->S_B);
            assert_same_double(film_of(plain, m, c)->lambda_GFmin,
                               film_of(noted, m, c)->lambda_GFmin);
        }
    ts_study_close(noted);
    ts_study_close(plain);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_mesh_of_a_drive_is_rated_as_by_itself),
        cmocka_unit_test(least_safeties_are_those_of_the_worst_condition),
        cmocka_unit_test(gear_that_power_enters_drives),
        cmocka_unit_test(scuffing_temperature_of_the_file_is_the_one_that_counts),
        cmocka_unit_test(oil_does_what_oil_does),
        cmocka_unit_test(oil_that_contradicts_itself_is_refused_with_its_place),
        cmocka_unit_test(unknown_oil_never_passes),
        cmocka_unit_test(a_condition_that_cannot_be_told_hides_no_other),
        cmocka_unit_test(oil_of_a_cold_morning_is_no_riddle),
        cmocka_unit_test(films_are_computed_when_a_rule_or_a_page_asks),
        cmocka_unit_test(workings_change_no_number),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
