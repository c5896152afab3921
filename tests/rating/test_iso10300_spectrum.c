/* Does the damage of all conditions add up, and lead back to load and life? */
#include "rating/iso10300/bevel_spectrum.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

enum { CASES = 3 };

typedef struct sample {
    ts_iso10300_prepared prepared;
    ts_iso10300_case     cases[CASES];
} sample;

static ts_iso10300_gear carburised(void)
{
    return (ts_iso10300_gear){.class      = TS_GEAR_CASE_HARDENED,
                              .sigma_Hlim = 1500e6,
                              .sigma_Flim = 500e6,
                              .E          = 206e9,
                              .nu         = 0.3,
                              .rho        = 7830.0,
                              .Z_NTlong   = 0.85,
                              .Y_NTlong   = 0.85,
                              .Z_W        = 1.0,
                              .f_pt       = 6e-6,
                              .R_z        = 3e-6,
                              .R_zF       = 10e-6,
                              .rho_a0     = 0.6e-3};
}

/* An invented pair: two conditions on flank 0, a start on flank 1. */
static sample rated(void)
{
    const ts_bevel_pair_input in   = {.z_1     = 27,
                                      .z_2     = 41,
                                      .m_et    = 2.5e-3,
                                      .Sigma   = 90.0 * degree,
                                      .alpha_n = 20.0 * degree,
                                      .beta_m  = 35.0 * degree,
                                      .b       = 18e-3};
    const ts_iso10300_mesh    mesh = {.gear         = {carburised(), carburised()},
                                      .nu_40        = 25e-6,
                                      .b_veff_share = TS_ISO10300_SHARE,
                                      .e            = TS_BEVEL_CROWNING_HIGH,
                                      .Z_K          = TS_BEVEL_Z_K,
                                      .pattern      = TS_BEVEL_PATTERN_LIGHT_LOAD};
    const ts_iso10300_load    load = {
           .T_1 = 260.0, .omega_1 = 500.0, .K_A = 1.0, .N_L = {3e6, 2e6}, .Y_M = {1.0, 1.0}};
    ts_bevel_pair  pair;
    ts_bevel_teeth teeth;
    sample         s;

    assert_int_equal(ts_bevel_pair_solve(&in, &pair, NULL), TS_BEVEL_FINE);
    const ts_bevel_teeth_input teeth_in = {.taper   = TS_BEVEL_TAPER_UNIFORM,
                                           .profile = ts_bevel_profile_usual(&pair, NULL),
                                           .r_c0    = 57e-3};
    assert_int_equal(ts_bevel_teeth_solve(&pair, &teeth_in, &teeth, NULL), TS_BEVEL_TEETH_FINE);
    assert_true(ts_iso10300_prepare(&pair, &teeth, &mesh, &s.prepared, NULL));
    for (int i = 0; i < CASES; i++)
        s.cases[i] = (ts_iso10300_case){.load = load, .flank = i == 2 ? 1 : 0};
    s.cases[1].load.T_1    = 180.0;
    s.cases[1].load.N_L[0] = 5e8;
    s.cases[1].load.N_L[1] = 3e8;
    s.cases[2].load.T_1    = 420.0;
    s.cases[2].load.N_L[0] = 2e4;
    s.cases[2].load.N_L[1] = 1e4;
    assert_true(ts_iso10300_rate_cases(&s.prepared, s.cases, CASES));
    return s;
}

static const ts_iso10300_place pinion_pitting = {0, 0, TS_BEVEL_CONTACT};

/* derived: damage is the sum of cycles over the cycles that each case may last. */
static void damage_is_the_sum_over_one_flank(void **state)
{
    (void)state;
    const sample s = rated();

    for (int gear = 0; gear < 2; gear++) {
        const ts_iso10300_place place = {0, gear, TS_BEVEL_CONTACT};
        const double by_hand = s.cases[0].load.N_L[gear] / s.cases[0].rating.gear[gear].N_H +
                               s.cases[1].load.N_L[gear] / s.cases[1].rating.gear[gear].N_H;
        const ts_iso10300_place other = {1, gear, TS_BEVEL_CONTACT};

        assert_close(ts_iso10300_damage(&s.prepared, s.cases, CASES, place, 1.0), by_hand, 1e-13);
        assert_close(ts_iso10300_damage(&s.prepared, s.cases, CASES, other, 1.0),
                     s.cases[2].load.N_L[gear] / s.cases[2].rating.gear[gear].N_H, 1e-13);
    }
}

static void the_safety_uses_up_the_life_exactly(void **state)
{
    (void)state;
    const sample s = rated();

    for (int flank = 0; flank < 2; flank++)
        for (int gear = 0; gear < 2; gear++)
            for (int stress = 0; stress < 2; stress++) {
                const ts_iso10300_place place = {flank, gear, (ts_bevel_stress)stress};
                const ts_iso10300_life  life =
                    ts_iso10300_life_of(&s.prepared, s.cases, CASES, place, NULL);
                const double U = ts_iso10300_damage(&s.prepared, s.cases, CASES, place, life.S);

                assert_true(isfinite(life.S) && life.share > 0.0 && life.share <= 1.0);
                /* the damage reaches 1 there, or leaps over it at the static strength */
                assert_true(U <= 1.0 + 1e-9);
                assert_true(ts_iso10300_damage(&s.prepared, s.cases, CASES, place,
                                               life.S * (1.0 + 1e-9)) > 1.0 - 1e-9);
                assert_true(flank == 1 || fabs(U - 1.0) < 1e-9);
                assert_true((life.U < 1.0) == (life.S > 1.0));
            }
}

/* derived: a spectrum of one condition is that condition's own safety. */
static void one_case_alone_keeps_its_own_safety(void **state)
{
    (void)state;
    const sample           s = rated();
    const ts_iso10300_life life =
        ts_iso10300_life_of(&s.prepared, s.cases, 1, pinion_pitting, NULL);

    assert_close(life.S, s.cases[0].rating.gear[0].S_H, 1e-10);
    assert_int_equal(life.worst, 0);
    assert_close(life.share, 1.0, 1e-12);
}

static void the_load_factor_leaves_no_reserve(void **state)
{
    (void)state;
    sample       s        = rated();
    const double S_min[2] = {1.0, 1.3};
    const double before   = ts_iso10300_spectrum_reserve(&s.prepared, s.cases, CASES, S_min, NULL);
    const double factor   = ts_iso10300_load_factor(&s.prepared, s.cases, CASES, S_min);
    ts_iso10300_place where;
    const double after = ts_iso10300_spectrum_reserve(&s.prepared, s.cases, CASES, S_min, &where);

    assert_true((factor > 1.0) == (before > 0.0));
    assert_close_abs(after, 0.0, 1e-9);
    for (int i = 0; i < CASES; i++)
        s.cases[i].load.T_1 *= factor;
    assert_close(ts_iso10300_load_factor(&s.prepared, s.cases, CASES, S_min), 1.0, 1e-9);
}

static void what_is_missing_never_passes(void **state)
{
    (void)state;
    sample       s        = rated();
    const double S_min[2] = {1.0, 1.3};

    s.cases[1].load.T_1 = (double)NAN;
    assert_false(ts_iso10300_rate_cases(&s.prepared, s.cases, CASES));
    assert_nan(ts_iso10300_damage(&s.prepared, s.cases, CASES, pinion_pitting, 1.0));
    assert_nan(ts_iso10300_life_of(&s.prepared, s.cases, CASES, pinion_pitting, NULL).S);
    assert_nan(ts_iso10300_spectrum_reserve(&s.prepared, s.cases, CASES, S_min, NULL));
    assert_nan(ts_iso10300_load_factor(&s.prepared, s.cases, CASES, S_min));
}

static void an_idle_flank_lasts_for_ever(void **state)
{
    (void)state;
    sample s = rated();

    s.cases[2].load.T_1 = 0.0;
    assert_true(ts_iso10300_rate_cases(&s.prepared, s.cases, CASES));
    const ts_iso10300_place start = {1, 0, TS_BEVEL_BENDING};
    const ts_iso10300_life  life  = ts_iso10300_life_of(&s.prepared, s.cases, CASES, start, NULL);

    assert_same_double(life.U, 0.0);
    assert_true(isinf(life.S));
}

static void the_sum_is_noted(void **state)
{
    (void)state;
    const sample           s        = rated();
    ts_arena              *arena    = ts_arena_open(NULL);
    ts_workings           *workings = ts_workings_open(arena);
    const ts_iso10300_life life =
        ts_iso10300_life_of(&s.prepared, s.cases, CASES, pinion_pitting, workings);
    const size_t at = ts_workings_find(workings, (ts_subject){0, TS_EVERY_CONDITION}, "U");

    assert_true(at != SIZE_MAX);
    assert_close(ts_workings_at(workings, at)->value, life.U, 1e-14);
    assert_int_equal(ts_workings_at(workings, at)->input_count, 4);
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(damage_is_the_sum_over_one_flank),
        cmocka_unit_test(the_safety_uses_up_the_life_exactly),
        cmocka_unit_test(one_case_alone_keeps_its_own_safety),
        cmocka_unit_test(the_load_factor_leaves_no_reserve),
        cmocka_unit_test(what_is_missing_never_passes),
        cmocka_unit_test(an_idle_flank_lasts_for_ever),
        cmocka_unit_test(the_sum_is_noted),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
