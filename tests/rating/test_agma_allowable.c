/* Which stresses does AGMA allow, and which of its steels does a row of the ISO table stand for? */
#include "base/arena.h"
#include "catalog/agma_allowable.h"
#include "support/close.h"

#include <math.h>
#include <stddef.h>

static const double psi = 6894.757293168361;

static ts_agma_allowable allowed(ts_agma_treatment treatment, int grade, double flank, double core)
{
    const ts_agma_steel steel = {
        .treatment = treatment, .grade = grade, .flank = flank, .core = core};
    ts_agma_allowable allowable;

    assert_true(ts_agma_allowable_of(&steel, TS_EITHER_GEAR, &allowable, NULL));
    return allowable;
}

/* ANSI/AGMA 2101-D04, tables 3 and 4 (from memory): the rounded metric numbers. */
static void carburised_grades_are_the_metric_table_s(void **state)
{
    static const double rows[][2] = {{1240e6, 380e6}, {1550e6, 450e6}, {1895e6, 515e6}};
    (void)state;
    for (int grade = 1; grade <= 3; grade++) {
        const ts_agma_allowable found = allowed(TS_AGMA_CARBURISED, grade, 60.0, NAN);

        assert_close(found.sigma_HP, rows[grade - 1][0], 2e-3);
        assert_close(found.sigma_FP, rows[grade - 1][1], 5e-3);
        assert_true(found.within);
    }
    assert_false(allowed(TS_AGMA_CARBURISED, 2, 57.0, NAN).within);
}

/* Shigley, examples 14-4 and 14-8 (from memory): 240 HB grade 1; Nitralloy grade 1, core 320 HB. */
static void lines_of_textbook_examples(void **state)
{
    const ts_agma_allowable soft = allowed(TS_AGMA_THROUGH_HARDENED, 1, 240.0, NAN);
    const ts_agma_allowable hard = allowed(TS_AGMA_NITRIDED_NITRALLOY, 1, 60.0, 320.0);
    (void)state;

    assert_close(soft.sigma_FP / psi, 31350.0, 1e-4);
    assert_close(soft.sigma_HP / psi, 106400.0, 2e-4);
    assert_close(hard.sigma_FP / psi, 40310.0, 1e-3);
    assert_close(hard.sigma_HP / psi, 170000.0, 1e-12);
}

/* The metric edition's lines (from memory): 2.22 H + 200, 2.41 H + 237; 0.533 H + 88.3, 0.703 H +
 * 113 N/mm2. */
static void lines_agree_with_the_metric_edition(void **state)
{
    (void)state;
    for (double H = 180.0; H <= 400.0; H += 20.0) {
        const ts_agma_allowable one = allowed(TS_AGMA_THROUGH_HARDENED, 1, H, NAN);
        const ts_agma_allowable two = allowed(TS_AGMA_THROUGH_HARDENED, 2, H, NAN);

        assert_close(one.sigma_HP, (2.22 * H + 200.0) * 1e6, 2e-3);
        assert_close(two.sigma_HP, (2.41 * H + 237.0) * 1e6, 2e-3);
        assert_close(one.sigma_FP, (0.533 * H + 88.3) * 1e6, 2e-3);
        assert_close(two.sigma_FP, (0.703 * H + 113.0) * 1e6, 2e-3);
    }
}

static void outside_the_line_is_told(void **state)
{
    (void)state;
    const ts_agma_allowable most = allowed(TS_AGMA_THROUGH_HARDENED, 2, 400.0, NAN);
    const ts_agma_allowable past = allowed(TS_AGMA_THROUGH_HARDENED, 2, 450.0, NAN);
    assert_true(most.within);
    assert_false(past.within);
    assert_same_double(past.sigma_HP, most.sigma_HP);
    assert_false(allowed(TS_AGMA_THROUGH_HARDENED, 1, 150.0, NAN).within);
    assert_true(allowed(TS_AGMA_THROUGH_HARDENED, 1, 150.0, NAN).sigma_FP <
                allowed(TS_AGMA_THROUGH_HARDENED, 1, 180.0, NAN).sigma_FP);
}

static void better_grades_and_harder_flanks_bear_more(void **state)
{
    (void)state;
    for (int treatment = 0; treatment < TS_AGMA_TREATMENT_COUNT; treatment++) {
        const bool   soft   = treatment == TS_AGMA_THROUGH_HARDENED;
        const double flank  = soft ? 300.0 : 60.0;
        double       before = 0.0;

        for (int grade = 1; grade <= 2; grade++) {
            const ts_agma_allowable found =
                allowed((ts_agma_treatment)treatment, grade, flank, 300.0);
            assert_true(found.sigma_HP > before);
            before = found.sigma_HP;
        }
        assert_true(allowed((ts_agma_treatment)treatment, 1, flank * 0.85, 300.0).sigma_HP <=
                    allowed((ts_agma_treatment)treatment, 1, flank, 300.0).sigma_HP);
    }
}

static void what_the_standard_does_not_have_is_refused_or_nan(void **state)
{
    ts_agma_steel     steel = {TS_AGMA_THROUGH_HARDENED, 3, 300.0, NAN};
    ts_agma_allowable found = {.sigma_HP = 7.0};
    (void)state;

    assert_false(ts_agma_allowable_of(&steel, TS_EITHER_GEAR, &found, NULL));
    assert_same_double(found.sigma_HP, 7.0);
    steel = (ts_agma_steel){TS_AGMA_CARBURISED, 0, 60.0, NAN};
    assert_false(ts_agma_allowable_of(&steel, TS_EITHER_GEAR, &found, NULL));
    steel = (ts_agma_steel){TS_AGMA_CARBURISED, 2, NAN, NAN};
    assert_false(ts_agma_allowable_of(&steel, TS_EITHER_GEAR, &found, NULL));
    /* Nitrided steel bends by its core. */
    assert_nan(allowed(TS_AGMA_NITRIDED_CHROME, 2, 60.0, NAN).sigma_FP);
    assert_close(allowed(TS_AGMA_NITRIDED_CHROME, 2, 60.0, NAN).sigma_HP, 196000.0 * psi, 1e-12);
    /* Grade 3 of nitrided through-hardened steel has a contact number alone. */
    assert_nan(allowed(TS_AGMA_NITRIDED_THROUGH_HARDENED, 3, 50.0, 300.0).sigma_FP);
}

/* ASTM E140, table 1 (from memory): 46 HRC is 83.5, 48 is 84.5, 60 is 90.2. */
static void superficial_hardness_is_that_of_the_table(void **state)
{
    (void)state;
    assert_close(ts_superficial_hardness(46.0), 83.5, 1e-12);
    assert_close(ts_superficial_hardness(47.0), 84.0, 1e-12);
    assert_close(ts_superficial_hardness(60.0), 90.2, 1e-12);
    assert_nan(ts_superficial_hardness(30.0));
    assert_nan(ts_superficial_hardness(NAN));
}

static void every_steel_of_the_iso_table_finds_its_agma_grade(void **state)
{
    size_t found = 0;
    (void)state;

    for (size_t i = 0; i < ts_gear_material_count(); i++) {
        const ts_gear_material material = ts_gear_material_at(i);
        ts_agma_steel          steel;
        ts_agma_allowable      allowable;

        if (!ts_agma_steel_of(&material, material.hardness, &steel)) {
            assert_int_equal(material.class, TS_GEAR_NITROCARBURISED);
            continue;
        }
        assert_true(ts_agma_allowable_of(&steel, 1, &allowable, NULL));
        assert_true(allowable.sigma_HP > 0.0);
        /* Nitrided rows of the standard's own grades say nothing about their core. */
        assert_true(allowable.sigma_FP > 0.0 || isnan(material.core_HRC));
        found++;
    }
    assert_true(found > 20);
}

static void iso_9310_is_agma_grade_2(void **state)
{
    ts_gear_material  material;
    ts_agma_steel     steel;
    ts_agma_allowable allowable;
    (void)state;

    assert_true(ts_gear_material_named(ts_text_of("carburised 9310"), &material));
    assert_true(ts_agma_steel_of(&material, material.hardness, &steel));
    assert_int_equal(steel.treatment, TS_AGMA_CARBURISED);
    assert_int_equal(steel.grade, 2);
    assert_true(ts_agma_allowable_of(&steel, 1, &allowable, NULL));
    assert_close(allowable.sigma_HP, 225000.0 * psi, 1e-12);
    assert_true(allowable.within);
}

static void the_line_is_noted_with_its_numbers(void **state)
{
    const ts_agma_steel steel    = {TS_AGMA_THROUGH_HARDENED, 2, 300.0, NAN};
    ts_arena           *arena    = ts_arena_open(NULL);
    ts_workings        *workings = ts_workings_open(arena);
    ts_agma_allowable   noted, silent;
    (void)state;

    ts_workings_about(workings, 0, TS_EVERY_CONDITION);
    assert_true(ts_agma_allowable_of(&steel, 2, &noted, workings));
    assert_true(ts_agma_allowable_of(&steel, 2, &silent, NULL));
    assert_same_double(noted.sigma_FP, silent.sigma_FP);
    const ts_subject subject = {.object = 0, .condition = TS_EVERY_CONDITION};
    const size_t     line    = ts_workings_find(workings, subject, "sigma_FP2");
    assert_true(line != SIZE_MAX);
    assert_true(ts_origin(workings, line, "A_F2", 102.0) != SIZE_MAX);
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(carburised_grades_are_the_metric_table_s),
        cmocka_unit_test(lines_of_textbook_examples),
        cmocka_unit_test(lines_agree_with_the_metric_edition),
        cmocka_unit_test(outside_the_line_is_told),
        cmocka_unit_test(better_grades_and_harder_flanks_bear_more),
        cmocka_unit_test(what_the_standard_does_not_have_is_refused_or_nan),
        cmocka_unit_test(superficial_hardness_is_that_of_the_table),
        cmocka_unit_test(every_steel_of_the_iso_table_finds_its_agma_grade),
        cmocka_unit_test(iso_9310_is_agma_grade_2),
        cmocka_unit_test(the_line_is_noted_with_its_numbers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
