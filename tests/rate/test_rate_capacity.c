/* Does a rate file rate as the rooms of the standards do, name what it lacks, and know where every
 * number comes from?
 */
#include "catalog/gear_material.h"
#include "element/contact_friction.h"
#include "element/tooth_tolerance.h"
#include "model/field_rate_parts.h"
#include "rate/rated_file.h"
#include "rating/iso6336/iso6336.h"
#include "rating/scuffing/scuffing.h"
#include "study/study.h"
#include "support/read_file.h"

#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

#define GEOMETRY "z_1: 25, z_2: 62, m_n: 2 mm, b_1: 22 mm, b_2: 20 mm, x_1: 0.2"
#define MAKE                                                                                       \
    "material 1: case-carburised MQ, material 2: case-carburised MQ, accuracy 1: 5, accuracy 2: "  \
    "5, R_z1: 2.5 um, R_z2: 2.5 um, R_zF1: 8 um, R_zF2: 8 um, nu_40: 27 cSt"
#define LOAD "T_1: 95 N.m, n_1: 9000 rpm, L_h: 4000 h, K_A: 1.1, K_Hbeta: 1.15"

/* The same by hand, from the rooms below. */
static ts_iso6336_rating rated_by_hand(void)
{
    const ts_cylindrical_pair_input in = {.z_1     = 25,
                                          .z_2     = 62,
                                          .m_n     = 2e-3,
                                          .alpha_n = 20.0 * pi / 180.0,
                                          .b_1     = 22e-3,
                                          .b_2     = 20e-3,
                                          .x_1     = 0.2,
                                          .rack    = ts_basic_rack_A};
    ts_cylindrical_pair             pair;
    ts_gear_material                steel;
    ts_gear_strength                strength;
    ts_iso6336_prepared             prepared;
    ts_iso6336_rating               rating;
    ts_iso6336_mesh                 mesh = {.nu_40 = 27e-6};

    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    assert_true(ts_gear_material_named(TS_TEXT("case-carburised MQ"), &steel));
    assert_true(ts_gear_strength_of(&steel, steel.hardness, TS_EITHER_GEAR, &strength, NULL));
    for (int gear = 0; gear < 2; gear++) {
        const ts_tolerance_input at = {
            .m_n = 2e-3, .d = gear == 0 ? pair.d_1 : pair.d_2, .b = 20e-3, .class = 5};
        const ts_tooth_tolerance tolerance = ts_tooth_tolerance_2013(&at, NULL);
        mesh.gear[gear]                    = (ts_iso6336_gear){.class      = steel.class,
                                                               .sigma_Hlim = strength.sigma_Hlim,
                                                               .sigma_Flim = strength.sigma_Flim,
                                                               .yield      = steel.yield,
                                                               .E          = steel.E,
                                                               .nu         = steel.nu,
                                                               .rho        = steel.rho,
                                                               .Z_NTlong   = 0.85,
                                                               .Y_NTlong   = 0.85,
                                                               .accuracy   = 5,
                                                               .f_pt       = tolerance.f_p,
                                                               .f_falpha   = tolerance.f_falpha,
                                                               .R_z        = 2.5e-6,
                                                               .R_zF       = 8e-6};
    }
    const double          omega_1 = 9000.0 * pi / 30.0, N_L1 = 9000.0 / 60.0 * 4000.0 * 3600.0;
    const ts_iso6336_load load = {.T_1     = 95.0,
                                  .omega_1 = omega_1,
                                  .K_A     = 1.1,
                                  .K_gamma = 1.0,
                                  .K_Hbeta = 1.15,
                                  .N_L     = {N_L1, N_L1 / 2.48},
                                  .S_Hmin  = 1.0,
                                  .S_Fmin  = 1.25};
    assert_true(ts_iso6336_prepare(&pair, &mesh, &prepared, NULL));
    assert_true(ts_iso6336_rate(&prepared, &load, &rating, NULL));
    return rating;
}

/* derived: more load on a path is more load on every tooth of it, whoever rates. */
static void load_paths_count_for_both_opinions(void **state)
{
    (void)state;
    ts_study *one = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD);
    ts_study *two = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD ", K_gamma: 1.2");
    assert_close(ts_study_number(two, "gear pair/one:sigma_F1@AGMA 2101"),
                 1.2 * ts_study_number(one, "gear pair/one:sigma_F1@AGMA 2101"), 1e-12);
    assert_close(ts_study_number(two, "gear pair/one:sigma_H1@AGMA 2101"),
                 sqrt(1.2) * ts_study_number(one, "gear pair/one:sigma_H1@AGMA 2101"), 1e-12);
    assert_true(ts_study_number(two, "gear pair/one:sigma_F1@ISO 6336") >
                1.1 * ts_study_number(one, "gear pair/one:sigma_F1@ISO 6336"));
    ts_study_close(one);
    ts_study_close(two);
}

/* A web that is bored beyond its rim or its teeth is no gear. */
static void a_bore_beyond_the_roots_cannot_be_rated(void **state)
{
    (void)state;
    static const char *const blanks[] = {
        GEOMETRY ", " MAKE ", " LOAD ", s_R1: 4 mm, b_s1: 5 mm, d_web1: 50 mm",
        GEOMETRY ", " MAKE ", " LOAD ", s_R1: 4 mm, b_s1: 5 mm, d_web1: 39 mm",
        GEOMETRY ", " MAKE ", " LOAD ", d_web2: 130 mm"};

    for (size_t i = 0; i < sizeof blanks / sizeof blanks[0]; i++) {
        ts_study              *study   = rated_element("gear pair", blanks[i]);
        const ts_finding_view *finding = finding_of(study, "rate-not-computable");
        assert_non_null(finding);
        assert_non_null(strstr(finding->says, "bore"));
        finding = finding_of(study, i < 2 ? "rate-bore-1" : "rate-bore-2");
        assert_non_null(finding);
        assert_true(finding->value >= finding->limit);
        ts_study_close(study);
    }
    ts_study *sound = rated_element("gear pair", GEOMETRY
                                    ", " MAKE ", " LOAD ", s_R1: 4 mm, b_s1: 5 mm, d_web1: 36 mm");
    assert_null(finding_of(sound, "rate-not-computable"));
    ts_study_close(sound);
}

static void a_rim_is_no_thicker_than_the_gear(void **state)
{
    (void)state;
    ts_study *study = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD ", s_R1: 30 mm");
    const ts_finding_view *finding = finding_of(study, "rate-thick-rim-1");
    assert_non_null(finding);
    assert_close(finding->limit, ts_study_number(study, "gear pair/one:d_f1") / 2.0, 1e-15);
    assert_non_null(strstr(finding->remedy, "solid"));
    ts_study_close(study);
    ts_study *sound = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD ", s_R1: 20 mm");
    assert_null(finding_of(sound, "rate-thick-rim-1"));
    ts_study_close(sound);
}

static void a_steel_is_hardened_in_one_way(void **state)
{
    (void)state;
    ts_study *torn = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD ", class 2: nitrided");
    const ts_finding_view *finding = finding_of(torn, "rate-hardening-2");
    assert_non_null(finding);
    assert_non_null(strstr(finding->says, "nitrided by `class 2` and case-hardened"));
    ts_study_close(torn);
    ts_study *twice =
        rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD ", class 2: case-hardened");
    assert_null(finding_of(twice, "rate-hardening-2"));
    ts_study_close(twice);
}

/* An address in a section that has no such number is told the sections that have it. */
static void a_number_of_another_section_is_told(void **state)
{
    (void)state;
    ts_study *study = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD);
    assert_true(isnan(ts_study_number(study, "gear pair/one:Z_I@ISO 6336")));
    bool told = false;
    for (size_t i = 0; i < ts_diagnostics_kept(study->diagnostics); i++) {
        const ts_diagnostic *said = ts_diagnostics_at(study->diagnostics, i);
        told = told || (strcmp(said->says, "there is no Z_I of ISO 6336") == 0 &&
                        strcmp(said->expected, "@ and one of AGMA 2101") == 0);
    }
    assert_true(told);
    ts_study_close(study);
}

static void iso_rates_as_its_room_does(void **state)
{
    (void)state;
    const ts_iso6336_rating r     = rated_by_hand();
    ts_study               *study = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD);
    assert_close(ts_study_number(study, "gear pair/one:K_v@ISO 6336"), r.K_v, 1e-13);
    assert_close(ts_study_number(study, "gear pair/one:S_H1@ISO 6336"), r.gear[0].S_H, 1e-13);
    assert_close(ts_study_number(study, "gear pair/one:S_H2@ISO 6336"), r.gear[1].S_H, 1e-13);
    assert_close(ts_study_number(study, "gear pair/one:S_F1@ISO 6336"), r.gear[0].S_F, 1e-13);
    assert_close(ts_study_number(study, "gear pair/one:S_F2@ISO 6336"), r.gear[1].S_F, 1e-13);
    ts_study_close(study);
}

/* Torque, force at the reference circle and power are three ways to say the same. */
static void one_load_may_be_said_in_three_ways(void **state)
{
    (void)state;
    const char *const loads[] = {"T_1: 95 N.m", "F_t: 3800 N", "P: 89.5353906273091 kW"};
    double            S_F[3];
    for (int i = 0; i < 3; i++) {
        char keys[1024];
        snprintf(keys, sizeof keys,
                 GEOMETRY ", " MAKE ", n_1: 9000 rpm, L_h: 4000 h, K_Hbeta: 1.15, %s", loads[i]);
        ts_study *study = rated_element("gear pair", keys);
        S_F[i]          = ts_study_number(study, "gear pair/one:S_F1@ISO 6336");
        ts_study_close(study);
    }
    assert_close(S_F[1], S_F[0], 1e-12);
    assert_close(S_F[2], S_F[0], 1e-12);
}

/* What is given goes before what the class and the row say. */
static void given_values_go_before_tables(void **state)
{
    (void)state;
    ts_study *study = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD
                                                          ", sigma_Flim1: 400 MPa, f_pt1: 9 um");
    assert_close(ts_study_number(study, "gear pair/one:sigma_Flim1"), 400e6, 1e-15);
    assert_close(ts_study_number(study, "gear pair/one:f_pb@ISO 6336"),
                 9e-6 * cos(20.0 * pi / 180.0), 1e-12);
    ts_study_close(study);
}

/* ---- what is missing ---------------------------------------------------------------------------
 */

static bool names(const char *says, const char *key)
{
    return strstr(says, key) != NULL;
}

static void what_a_method_lacks_is_named(void **state)
{
    (void)state;
    ts_study              *study   = rated_element("gear pair", GEOMETRY ", T_1: 95 N.m");
    const ts_finding_view *finding = finding_of(study, "rate-missing-input");
    assert_non_null(finding);
    assert_string_equal(finding->state, "not computable");
    const char *const keys[] = {"n_1",  "L_h",   "K_Hbeta",    "nu_40",
                                "R_z1", "R_zF2", "accuracy 1", "material 2"};
    for (size_t i = 0; i < sizeof keys / sizeof keys[0]; i++)
        if (!names(finding->says, keys[i]))
            fail_msg("`%s` does not name %s", finding->says, keys[i]);
    assert_int_equal(ts_study_verdict(study), TS_VERDICT_NOT_COMPUTABLE);
    assert_true(isnan(ts_study_number(study, "gear pair/one:S_H1@ISO 6336")));
    /* The geometry is told all the same. */
    assert_true(ts_study_number(study, "gear pair/one:eps_alpha") > 1.0);
    ts_study_close(study);
}

/* Every input that the method asks for, taken away by itself, is named by itself. */
static void each_missing_input_is_named_by_itself(void **state)
{
    (void)state;
    static const char *const all[] = {"nu_40: 27 cSt",
                                      "R_z1: 2.5 um",
                                      "R_z2: 2.5 um",
                                      "R_zF1: 8 um",
                                      "R_zF2: 8 um",
                                      "accuracy 1: 5",
                                      "accuracy 2: 5",
                                      "n_1: 9000 rpm",
                                      "L_h: 4000 h",
                                      "K_Hbeta: 1.15",
                                      "material 1: case-carburised MQ",
                                      "material 2: case-carburised MQ"};
    const size_t             count = sizeof all / sizeof all[0];
    for (size_t left_out = 0; left_out < count; left_out++) {
        char keys[1024];
        int  at = snprintf(keys, sizeof keys, GEOMETRY ", T_1: 95 N.m");
        for (size_t i = 0; i < count; i++)
            if (i != left_out)
                at += snprintf(keys + at, sizeof keys - (size_t)at, ", %s", all[i]);
        char key[32];
        snprintf(key, sizeof key, "%.*s", (int)strcspn(all[left_out], ":"), all[left_out]);
        ts_study              *study   = rated_element("gear pair", keys);
        const ts_finding_view *finding = finding_of(study, "rate-missing-input");
        if (finding == NULL || !names(finding->says, key))
            fail_msg("%s is not named: %s", key, finding != NULL ? finding->says : "no finding");
        for (size_t i = 0; i < count; i++) {
            char other[32];
            snprintf(other, sizeof other, "give %.*s", (int)strcspn(all[i], ":"), all[i]);
            assert_true(i == left_out || !names(finding->says, other));
        }
        ts_study_close(study);
    }
}

/* derived: both safeties are products of like factors, so what the factors say of the difference is
 * all of it. */
static void the_difference_of_two_opinions_is_told_by_factor(void **state)
{
    (void)state;
    static const char *const factors[2][9] = {
        {"r_Hdynamic", "r_Hface", "r_Hshare", "r_Hgeometry", "r_Hstrength", "r_Hlife",
         "r_Hhardness", "r_Hsurface", NULL},
        {"r_Fdynamic", "r_Fface", "r_Fshare", "r_Fgeometry", "r_Fstrength", "r_Flife", "r_Fboth",
         "r_Fsurface", "r_Frim"}};
    ts_study *study = rated_element("gear pair", GEOMETRY ", " MAKE ", " LOAD);

    for (int i = 0; i < 4; i++) {
        const char *safety = i < 2 ? "S_H" : "S_F";
        char        address[80];
        double      product = 1.0;

        for (int f = 0; f < 9 && factors[i / 2][f] != NULL; f++) {
            (void)snprintf(address, sizeof address, "gear pair/one:%s%d@AGMA 2101",
                           factors[i / 2][f], i % 2 + 1);
            product *= ts_study_number(study, address);
        }
        (void)snprintf(address, sizeof address, "gear pair/one:%s%d@AGMA 2101", safety, i % 2 + 1);
        const double second = ts_study_number(study, address);
        (void)snprintf(address, sizeof address, "gear pair/one:%s%d@ISO 6336", safety, i % 2 + 1);
        const double first = ts_study_number(study, address);
        assert_close(product, second / first, 1e-12);

        static const char *const rules[4] = {"rate-opinions-contact-1", "rate-opinions-contact-2",
                                             "rate-opinions-bending-1", "rate-opinions-bending-2"};
        const ts_finding_view   *finding  = finding_of(study, rules[i]);
        if (fabs(second / first - 1.0) <= 0.15) {
            assert_null(finding);
        } else {
            assert_non_null(finding);
            assert_non_null(strstr(finding->says, "most of it by "));
        }
    }
    ts_study_close(study);
}

/* The second opinion may be silent where AGMA has no lines, and the pair holds all the same. */
static void a_second_opinion_never_decides(void **state)
{
    (void)state;
    ts_study *study = rated_element(
        "gear pair", GEOMETRY
        ", T_1: 40 N.m, n_1: 3000 rpm, L_h: 4000 h, K_Hbeta: 1.1, material 1: nitrocarburised MQ, "
        "material 2: nitrocarburised MQ, accuracy 1: 5, accuracy 2: 5, R_z1: 2.5 um, R_z2: 2.5 um, "
        "R_zF1: 8 um, R_zF2: 8 um, nu_40: 27 cSt");
    const ts_finding_view *finding = finding_of(study, "rate-missing-input");
    assert_non_null(finding);
    assert_string_equal(finding->level, "note");
    assert_string_equal(finding->condition, "AGMA 2101");
    assert_int_equal(ts_study_verdict(study), TS_HOLDS);
    ts_study_close(study);
}

static void a_low_safety_is_refused_with_its_margin(void **state)
{
    (void)state;
    ts_study *study =
        rated_element("gear pair", GEOMETRY
                      ", " MAKE ", T_1: 300 N.m, n_1: 9000 rpm, L_h: 4000 h, K_Hbeta: 1.15");
    const ts_finding_view *finding = finding_of(study, "rate-contact-safety-1");
    assert_non_null(finding);
    assert_string_equal(finding->level, "refuse");
    assert_close(finding->value, ts_study_number(study, "gear pair/one:S_H1@ISO 6336"), 0.0);
    assert_close(finding->margin, finding->value / finding->limit - 1.0, 1e-15);
    assert_int_equal(ts_study_verdict(study), TS_DOES_NOT_HOLD);
    ts_study_close(study);
}

static void leaving_the_range_of_a_standard_names_the_clause(void **state)
{
    (void)state;
    ts_study *study = rated_element("gear pair", "alpha_n: 28 deg, " GEOMETRY ", " MAKE ", " LOAD);
    const ts_finding_view *finding = finding_of(study, "rate-range-pressure-angle");
    assert_non_null(finding);
    assert_string_equal(finding->level, "warn");
    assert_non_null(strstr(finding->source, "ISO 6336-2"));
    ts_study_close(study);
}

/* ---- where numbers come from --------------------------------------------------------------------
 */

/* A search knows its result only afterwards, and a mean over the path is told without its points.
 */
static bool is_inside_a_search(const ts_note *note, const char *input)
{
    return note->kind == TS_NOTE_SEARCHED || strcmp(input, "share") == 0 ||
           strcmp(input, "theta") == 0;
}

static void assert_traced(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.file = TS_WANT_RATE};
    ts_study              *study   = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    size_t traced = 0;
    for (size_t i = 0; i < ts_workings_count(study->workings); i++) {
        const ts_note *note = ts_workings_at(study->workings, i);
        if (note->kind == TS_NOTE_BORROWED && ts_borrow_origin(study->workings, i) == SIZE_MAX)
            fail_msg("%s: %s is lent by nobody (%s)", path, note->symbol, note->lender_symbol);
        for (uint32_t k = 0; note->formula != NULL && k < note->input_count; k++) {
            const ts_input *input = &note->inputs[k];
            if (!is_inside_a_search(note, input->name) &&
                ts_origin(study->workings, i, input->name, input->value) == SIZE_MAX)
                fail_msg("%s: %s of %s has no origin", path, input->name, note->symbol);
            traced++;
        }
    }
    assert_true(traced > 100);
    ts_study_close(study);
    free_file(file);
}

static void every_number_can_be_traced(void **state)
{
    (void)state;
    assert_traced("examples/rate/gear_pairs.yaml");
    assert_traced("examples/rate/bevels.yaml");
    assert_traced("examples/rate/inspection.yaml");
}

/* The file's choices stand for enumerations of the rooms below, in their order. */
static void choices_are_those_of_the_rooms(void **state)
{
    (void)state;
    for (int i = 0; i < TS_GEAR_CLASS_COUNT; i++)
        assert_string_equal(ts_rate_hardening[i], ts_gear_class_name((ts_gear_class)i));
    const ts_field *oil       = ts_field_named(&ts_table_rate_pair, TS_TEXT("oil"));
    const ts_field *structure = ts_field_named(&ts_table_rate_pair, TS_TEXT("structure 1"));
    for (int i = 0; i < TS_LUBRICANT_COUNT; i++)
        assert_string_equal(oil->choices[i], ts_lubricant_name((ts_lubricant)i));
    assert_null(oil->choices[TS_LUBRICANT_COUNT]);
    for (int i = 0; i < TS_STRUCTURE_COUNT; i++)
        assert_string_equal(structure->choices[i], ts_structure_name((ts_flank_structure)i));
    assert_null(structure->choices[TS_STRUCTURE_COUNT]);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(iso_rates_as_its_room_does),
        cmocka_unit_test(one_load_may_be_said_in_three_ways),
        cmocka_unit_test(given_values_go_before_tables),
        cmocka_unit_test(what_a_method_lacks_is_named),
        cmocka_unit_test(each_missing_input_is_named_by_itself),
        cmocka_unit_test(a_second_opinion_never_decides),
        cmocka_unit_test(a_low_safety_is_refused_with_its_margin),
        cmocka_unit_test(leaving_the_range_of_a_standard_names_the_clause),
        cmocka_unit_test(every_number_can_be_traced),
        cmocka_unit_test(choices_are_those_of_the_rooms),
        cmocka_unit_test(load_paths_count_for_both_opinions),
        cmocka_unit_test(the_difference_of_two_opinions_is_told_by_factor),
        cmocka_unit_test(a_bore_beyond_the_roots_cannot_be_rated),
        cmocka_unit_test(a_rim_is_no_thicker_than_the_gear),
        cmocka_unit_test(a_steel_is_hardened_in_one_way),
        cmocka_unit_test(a_number_of_another_section_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
