/* Are the bearings that sizing chooses the lightest of the table that hold?
 *
 * ctest: cost=20
 */
#include "support/case_count.h"
#include "support/close.h"
#include "support/read_file.h"

#include "mass/mass.h"
#include "rating/drive_teeth.h"
#include "search/bearing_choice.h"
#include "study/study.h"

#include <math.h>

static const char *const files[] = {"examples/trainer.yaml", "examples/bizjet.yaml",
                                    "examples/medium.yaml", "examples/large.yaml"};

static ts_study *read_study(const char *path)
{
    const ts_text          file    = read_file(path);
    const ts_study_options options = {.today = 20000};
    ts_study              *study;

    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    assert_int_equal(ts_study_read(study, path, file.at, file.length, &options), TS_OK);
    free_file(file);
    return study;
}

static ts_bearing_plan find(ts_study *study)
{
    ts_bearing_plan plan;

    assert_int_equal(ts_find_bearings(&study->drive, &study->lines, study->arena, &plan), TS_OK);
    return plan;
}

/* Written anew from the rules of check: life, static safety, speed number, least load. */
static bool holds(const ts_study *study, uint32_t number, int k)
{
    const ts_line         *line   = &study->lines.lines[number];
    const ts_line_bearing *b      = &line->bearings[k];
    const ts_limits       *limits = &study->drive.limits;
    double                 most   = 0.0;
    uint32_t               at     = 0;

    if (line->fault != NULL || line->missing != NULL || b->fault != NULL)
        return false;
    if (!(b->rating.L_nmh >= limits->bearing_life.value * study->lines.life) ||
        !(b->rating.S_0 >= limits->bearing_static_safety.value) ||
        !(b->rating.n_dm <= limits->bearing_speed_number.value))
        return false;
    if (b->bearing.form != TS_BEARING_CYLINDRICAL_ROLLER)
        return true;
    for (uint32_t c = 0; c < study->drive.condition_count; c++) {
        const double t = ts_condition_seconds(&study->drive.conditions[c]);
        if (ts_line_at(&study->lines, number, c)->omega != 0.0 && t > most) {
            most = t;
            at   = c;
        }
    }
    const ts_duty_rating *duty = &ts_line_at(&study->lines, number, at)->duty[k];
    return duty->P >= limits->bearing_slip.value * duty->F_rmin;
}

static void all_chosen_bearings_hold_when_everything_is_solved_anew(void **state)
{
    (void)state;
    for (size_t f = 0; f < TS_CASES(4, 3); f++) {
        ts_study             *study = read_study(files[f]);
        const ts_bearing_plan plan  = find(study);

        assert_true(plan.fits && plan.life_asked);
        ts_lines_solve(&study->drive, &study->lines, NULL);
        for (size_t i = 0; i < plan.count; i++)
            assert_true(holds(study, plan.choices[i].line, plan.choices[i].k));
        ts_study_close(study);
    }
}

static double mass_of(const ts_line_pick *pick)
{
    return pick->rows * ts_mass_of_one_bearing(&pick->size, &pick->inside);
}

/* Every pair of picks of one shaft, by whole solutions of all shafts and the rules written anew;
 * kg. */
static double lightest_by_brute_force(ts_study *study, uint32_t line, const ts_bearing_seat told[2])
{
    static ts_line_pick picks[2][TS_LINE_PICKS_MOST];
    ts_bearing_seat     seats[2] = {told[0], told[1]};
    ts_line            *of       = &study->lines.lines[line];
    int                 count[2];
    double              best = (double)INFINITY;

    for (int k = 0; k < 2; k++)
        of->bearings[k].seat = &seats[k];
    ts_lines_solve(&study->drive, &study->lines, NULL);
    for (int k = 0; k < 2; k++)
        count[k] = ts_lines_list_picks(&study->drive, &study->lines, line, k, false, picks[k]);
    for (int i = 0; i < count[0]; i++)
        for (int j = 0; j < count[1]; j++) {
            const double mass = mass_of(&picks[0][i]) + mass_of(&picks[1][j]);
            if (mass >= best)
                continue;
            seats[0] = told[0];
            seats[1] = told[1];
            ts_line_put_pick(&seats[0], &picks[0][i]);
            ts_line_put_pick(&seats[1], &picks[1][j]);
            ts_lines_solve(&study->drive, &study->lines, NULL);
            if (holds(study, line, 0) && holds(study, line, 1))
                best = mass;
        }
    for (int k = 0; k < 2; k++)
        of->bearings[k].seat = &told[k];
    return best;
}

static void nothing_lighter_holds(void **state)
{
    (void)state;
    ts_study              *study = read_study(files[0]);
    static ts_bearing_seat told[64][2];
    int                    compared = 0;

    assert_true(study->lines.count <= 64);
    for (uint32_t l = 0; l < study->lines.count; l++)
        for (int k = 0; k < study->lines.lines[l].bearing_count; k++)
            told[l][k] = *study->lines.lines[l].bearings[k].seat;
    const ts_bearing_plan plan = find(study);
    for (size_t i = 0; i + 1 < plan.count && compared < TS_CASES(64, 1); i += 2) {
        const ts_bearing_choice *a = &plan.choices[i], *b = &plan.choices[i + 1];
        assert_int_equal(a->line, b->line);
        const double best = lightest_by_brute_force(study, a->line, told[a->line]);
        if (isinf(best)) /* balls stand in for rollers */
            continue;
        assert_close(a->after.mass + b->after.mass, best, 1e-12);
        compared++;
    }
    assert_true(compared >= TS_CASES(5, 1));
    ts_study_close(study);
}

/* What the next lighter bearing is said to fail in, it fails in. */
static void the_next_lighter_fails_as_is_said(void **state)
{
    (void)state;
    ts_study             *study = read_study(files[3]);
    const ts_bearing_plan plan  = find(study);
    int                   said  = 0;

    for (size_t i = 0; i < plan.count; i++) {
        const ts_bearing_choice *choice = &plan.choices[i];
        if (choice->lightest)
            continue;
        assert_true(choice->lighter.reserve < 0.0);
        assert_true(choice->margin.reserve >= 0.0);
        said++;
    }
    assert_true(said > 20);
    ts_study_close(study);
}

static void where_none_holds_the_nearest_is_told(void **state)
{
    (void)state;
    ts_study *study = read_study(files[TS_CASES(1, 0)]);

    study->drive.limits.bearing_static_safety.value = 1e6;
    const ts_bearing_plan plan                      = find(study);
    assert_false(plan.fits);
    int none = 0;
    for (size_t i = 0; i < plan.count; i++)
        if (plan.choices[i].state == TS_BEARING_NONE) {
            none++;
            assert_int_equal(plan.choices[i].margin.demand, TS_DEMAND_STATIC);
            assert_true(plan.choices[i].margin.reserve < 0.0);
            assert_true(plan.choices[i].after.mass > 0.0);
        }
    assert_true(none > TS_CASES(10, 5));
    ts_study_close(study);
}

/* Without oil no life is known; nothing of it is asked, and that is said. */
static void without_oil_no_life_is_asked(void **state)
{
    (void)state;
    ts_study *study = read_study(files[1]);

    study->drive.oil.nu_40 = (ts_measure){(double)NAN, 0, TS_UNKNOWN};
    assert_int_equal(ts_study_solve(study), TS_OK);
    const ts_bearing_plan plan = find(study);
    assert_false(plan.life_asked);
    for (size_t i = 0; i < plan.count; i++)
        assert_int_not_equal(plan.choices[i].margin.demand, TS_DEMAND_LIFE);
    ts_study_close(study);
}

/* A ring of rectangular section with its rolling elements, by hand: 25 x 52 x 15. */
static void a_bearing_weighs_its_rings_and_elements(void **state)
{
    (void)state;
    const double            pi      = 3.14159265358979323846;
    const ts_bearing_size   size    = {"02", 0.025, 0.052, 0.015};
    const ts_bearing_inside in      = {9, 0.008, (double)NAN, 0.0385, 0.52, 0.52};
    const ts_bearing_inside rollers = {9, 0.008, 0.010, 0.0385, (double)NAN, (double)NAN};
    const double            inner = 0.0385 - 0.0056, outer = 0.0385 + 0.0056;
    const double            rings =
        pi / 4.0 * 0.015 * (0.052 * 0.052 - outer * outer + inner * inner - 0.025 * 0.025);

    assert_close(ts_mass_of_one_bearing(&size, &in),
                 7833.0 * (rings + 9.0 * pi / 6.0 * pow(0.008, 3.0)), 1e-12);
    assert_close(ts_mass_of_one_bearing(&size, &rollers),
                 7833.0 * (rings + 9.0 * pi / 4.0 * 0.008 * 0.008 * 0.010), 1e-12);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(all_chosen_bearings_hold_when_everything_is_solved_anew),
        cmocka_unit_test(nothing_lighter_holds),
        cmocka_unit_test(the_next_lighter_fails_as_is_said),
        cmocka_unit_test(where_none_holds_the_nearest_is_told),
        cmocka_unit_test(without_oil_no_life_is_asked),
        cmocka_unit_test(a_bearing_weighs_its_rings_and_elements),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
