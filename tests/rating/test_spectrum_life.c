/* Do damage, safety, life, load and width say the same thing, each solved for another unknown? */
#include "base/arena.h"
#include "rating/iso6336/width_search.h"
#include "rating/sample_mesh.h"
#include "support/close.h"

enum { CASES = 8 };

/* Crank and start load flank 1, the rest flank 0. */
static void sample_cases(ts_iso6336_case cases[CASES])
{
    static const double torque[CASES] = {260.0, 300.0, 60.0, 110.0, 170.0, 205.0, 220.0, 235.0};
    static const double speed[CASES]  = {60.0, 180.0, 420.0, 560.0, 720.0, 900.0, 960.0, 980.0};
    static const double hours[CASES]  = {30.0, 20.0, 4000.0, 3000.0, 9000.0, 3000.0, 500.0, 5.0};

    for (int i = 0; i < CASES; i++) {
        ts_iso6336_load load = sample_load();
        const double    N_1  = ts_load_cycles(speed[i], hours[i] * 3600.0, 1.0, NULL);

        load.T_1     = torque[i];
        load.omega_1 = speed[i];
        load.N_L[0]  = N_1;
        load.N_L[1]  = N_1 * 23.0 / 61.0;
        cases[i]     = (ts_iso6336_case){.load = load, .flank = i < 2 ? 1 : 0};
    }
}

static ts_iso6336_prepared prepared_sample(void)
{
    const ts_cylindrical_pair_input in   = sample_pair();
    const ts_cylindrical_pair       pair = solved_pair(&in);
    const ts_iso6336_mesh           mesh = sample_mesh();
    ts_iso6336_prepared             p;

    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    return p;
}

static ts_iso6336_place place_number(int i)
{
    return (ts_iso6336_place){.flank  = i & 1,
                              .gear   = (i >> 1) & 1,
                              .stress = i < 4 ? TS_RATED_CONTACT : TS_RATED_BENDING};
}

static double safety_alone(const ts_iso6336_case *one, ts_iso6336_place place)
{
    const ts_iso6336_gear_rating *gear = &one->rating.gear[place.gear];

    return place.stress == TS_RATED_CONTACT ? gear->S_H : gear->S_F;
}

/* derived: one condition has the safety of its own rating. */
static void a_single_case_has_its_own_safety(void **state)
{
    (void)state;
    const ts_iso6336_prepared p = prepared_sample();
    ts_iso6336_case           cases[CASES];

    sample_cases(cases);
    assert_true(ts_iso6336_rate_cases(&p, cases, CASES));
    for (int i = 0; i < CASES; i++)
        for (int k = 0; k < 8; k++) {
            const ts_iso6336_place place = place_number(k);
            const ts_iso6336_life  life  = ts_iso6336_life_of(&cases[i], 1, place, NULL);

            if (place.flank != cases[i].flank) {
                assert_same_double(life.S, (double)INFINITY);
                assert_same_double(life.U, 0.0);
                continue;
            }
            assert_close(life.S, safety_alone(&cases[i], place), 1e-11);
            assert_close(ts_iso6336_damage(&cases[i], 1, place, life.S * (1.0 - 1e-13)), 1.0, 1e-9);
        }
}

/* The spectrum is never safer than its worst condition, and damages add up. */
static void damage_adds_up(void **state)
{
    (void)state;
    const ts_iso6336_prepared p = prepared_sample();
    ts_iso6336_case           cases[CASES];

    sample_cases(cases);
    assert_true(ts_iso6336_rate_cases(&p, cases, CASES));
    for (int k = 0; k < 8; k++) {
        const ts_iso6336_place place = place_number(k);
        const ts_iso6336_life  life  = ts_iso6336_life_of(cases, CASES, place, NULL);
        double                 least = INFINITY, sum = 0.0;

        for (int i = 0; i < CASES; i++) {
            if (cases[i].flank != place.flank)
                continue;
            least = fmin(least, safety_alone(&cases[i], place));
            sum += ts_iso6336_damage(&cases[i], 1, place, 1.3);
        }
        assert_true(life.S <= least * (1.0 + 1e-12));
        assert_close(ts_iso6336_damage(cases, CASES, place, 1.3), sum, 1e-13);
        assert_int_equal(cases[life.worst].flank, place.flank);
        assert_true(life.share > 0.0);
        assert_true(life.share <= 1.0);
        /* U <= 1 just below S, > 1 just above */
        assert_true(ts_iso6336_damage(cases, CASES, place, life.S * (1.0 - 1e-9)) <= 1.0);
        assert_true(ts_iso6336_damage(cases, CASES, place, life.S * (1.0 + 1e-9)) > 1.0);
    }
}

/* derived: where all the damage is on one straight line, ten times the hours cost the slope's root
 * of ten; and the spectrum bears 1/U of itself. */
static void life_follows_from_damage(void **state)
{
    (void)state;
    const ts_iso6336_prepared p     = prepared_sample();
    const ts_iso6336_place    place = {.flank = 0, .gear = 0, .stress = TS_RATED_CONTACT};
    ts_iso6336_case           cases[CASES];

    sample_cases(cases);
    assert_true(ts_iso6336_rate_cases(&p, cases, CASES));
    const double times = ts_iso6336_times(cases, CASES, place, 1.1);
    for (int i = 0; i < CASES; i++)
        cases[i].load.N_L[0] *= times;
    assert_close(ts_iso6336_damage(cases, CASES, place, 1.1), 1.0, 1e-12);
    assert_close(ts_iso6336_life_of(cases, CASES, place, NULL).S, 1.1, 1e-9);
}

/* Endurance: with a level long life the damage jumps from nothing, and the safety is that of the
 * level. */
static void an_endurance_limit_is_a_jump(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in    = sample_pair();
    const ts_cylindrical_pair       pair  = solved_pair(&in);
    ts_iso6336_mesh                 mesh  = sample_mesh();
    const ts_iso6336_place          place = {.flank = 0, .gear = 1, .stress = TS_RATED_BENDING};
    ts_iso6336_prepared             p;
    ts_iso6336_case                 cases[CASES];

    mesh.gear[1].Y_NTlong = 1.0;
    assert_true(ts_iso6336_prepare(&pair, &mesh, &p, NULL));
    sample_cases(cases);
    cases[7].load.N_L[1] = 1e9;
    assert_true(ts_iso6336_rate_cases(&p, cases, CASES));
    const ts_iso6336_life life = ts_iso6336_life_of(cases, CASES, place, NULL);
    assert_close(
        life.S, cases[7].rating.gear[1].bending.sigma_ref / cases[7].rating.gear[1].sigma_F, 1e-12);
    assert_same_double(ts_iso6336_damage(cases, CASES, place, life.S * (1.0 - 1e-9)), 0.0);
}

static void a_missing_rating_leaves_no_verdict(void **state)
{
    (void)state;
    const ts_iso6336_prepared p = prepared_sample();
    ts_iso6336_case           cases[CASES];

    sample_cases(cases);
    cases[4].load.f_ma = (double)NAN;
    assert_false(ts_iso6336_rate_cases(&p, cases, CASES));
    assert_nan(ts_iso6336_spectrum_reserve(cases, CASES, 1.0, 1.4, NULL));
    assert_nan(ts_iso6336_load_factor(&p, cases, CASES, 1.0, 1.4, NULL));
}

static void the_load_factor_leaves_no_reserve(void **state)
{
    (void)state;
    const ts_iso6336_prepared p = prepared_sample();
    ts_iso6336_case           cases[CASES];
    ts_arena                 *arena    = ts_arena_open(NULL);
    ts_workings              *workings = ts_workings_open(arena);
    double                    before   = INFINITY;

    for (int step = 0; step < 5; step++) {
        const double S_Hmin = 0.8 + 0.2 * step, S_Fmin = 1.2 + 0.2 * step;

        sample_cases(cases);
        const double factor = ts_iso6336_load_factor(&p, cases, CASES, S_Hmin, S_Fmin, workings);
        assert_close_abs(ts_iso6336_spectrum_reserve(cases, CASES, S_Hmin, S_Fmin, NULL), 0.0,
                         1e-9);
        assert_close(cases[3].load.T_1, 110.0 * factor, 1e-9);
        assert_true(factor < before);
        before = factor;
    }
    assert_int_equal(ts_workings_count(workings), 5);
    ts_arena_close(arena);
}

static void the_width_found_is_just_enough(void **state)
{
    (void)state;
    ts_width_search search = {.pair   = sample_pair(),
                              .mesh   = sample_mesh(),
                              .S_Hmin = 1.15,
                              .S_Fmin = 1.5,
                              .least  = 5e-3,
                              .most   = 80e-3};
    ts_iso6336_case cases[CASES];
    ts_width_found  found;

    sample_cases(cases);
    assert_int_equal(ts_width_for_safety(&search, cases, CASES, &found, NULL), TS_WIDTH_FINE);
    assert_true(found.b > 5e-3);
    assert_true(found.b < 80e-3);
    assert_close_abs(found.reserve, 0.0, 1e-6);
    assert_true(found.reserve >= 0.0);

    search.most = found.b - 1e-6;
    assert_int_equal(ts_width_for_safety(&search, cases, CASES, &found, NULL), TS_WIDTH_TOO_WIDE);
    assert_nan(found.b);
    search.least = search.most = 80e-3;
    assert_int_equal(ts_width_for_safety(&search, cases, CASES, &found, NULL), TS_WIDTH_AT_LEAST);
    search.least = -1.0;
    assert_int_equal(ts_width_for_safety(&search, cases, CASES, &found, NULL), TS_WIDTH_NO_RANGE);
}

/* ISO 6336-6, bank case miner-two-step, by hand: (1e6 + 946450 + 234210)/1.11e8 to the power
 * 1/6.61. */
static void equivalent_load_of_three_bins(void **state)
{
    (void)state;
    const ts_load_bin bins[] = {{1000.0, 1e6}, {700.0, 1e7}, {400.0, 1e8}};

    assert_close(ts_equivalent_load(bins, 3, 6.61), 551.82, 2e-5);
    assert_close(ts_equivalent_load(bins, 1, 6.61), 1000.0, 1e-14);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_single_case_has_its_own_safety),
        cmocka_unit_test(damage_adds_up),
        cmocka_unit_test(life_follows_from_damage),
        cmocka_unit_test(an_endurance_limit_is_a_jump),
        cmocka_unit_test(a_missing_rating_leaves_no_verdict),
        cmocka_unit_test(the_load_factor_leaves_no_reserve),
        cmocka_unit_test(the_width_found_is_just_enough),
        cmocka_unit_test(equivalent_load_of_three_bins),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
