/* Do the chances of a neck follow its diameter, and do both agree with drawn necks? */
#include "base/counter_random.h"
#include "base/normal_law.h"
#include "rating/shaft/neck_chance.h"
#include "support/close.h"

static const ts_neck_make make = {
    .d_0 = 10e-3, .T_mid = 170.0, .cov = 0.04, .T_W = 45.0, .N_W = 1e6, .k = 5.0, .s_ln = 0.08};
static const ts_neck_cycles cycles[] = {{60.0, 60.0, 2000.0}, {15.0, 80.0, 4e5}};
static const ts_neck_duty   duty     = {
          .T_legit = 130.0, .T_capacity = 230.0, .cycles = cycles, .cycle_count = 2};

/* Derived: half of the necks break at the middle torque; one deviation below lie 15.866 %. */
static void static_chances_are_the_normal_law(void **state)
{
    (void)state;
    ts_neck_duty at = {.T_legit = 170.0, .T_capacity = 170.0 * 1.04};

    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).early, 0.5, 1e-14);
    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).late, 0.15865525393145707, 1e-12);
    at.T_legit = 170.0 * 0.96;
    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).early, 0.15865525393145707, 1e-12);
}

/* Derived: N_W cycles of T_W kill half of them; a steady torque of half the break torque halves
 * what they bear. */
static void fatigue_stands_on_its_line(void **state)
{
    (void)state;
    const ts_neck_cycles plain = {45.0, 0.0, 1e6}, steady = {22.5, 85.0, 1e6};
    const ts_neck_cycles longer = {45.0 / 2.0, 0.0, 512e6}, shorter = {90.0, 0.0, 1e6 / 32.0};
    ts_neck_duty at = {.T_legit = 0.0, .T_capacity = 1e4, .cycles = &plain, .cycle_count = 1};

    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).fatigue_early, 0.5, 1e-12);
    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).T_equivalent, 45.0, 1e-12);
    at.cycles = &steady;
    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).fatigue_early, 0.5, 1e-12);
    at.cycles = &longer; /* half the torque, 2^(2*5 - 1) times the cycles */
    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).fatigue_early, 0.5, 1e-12);
    at.cycles = &shorter; /* twice the torque, 2^5 times fewer */
    assert_close(ts_neck_chance_of(&make, &at, 10e-3, NULL).fatigue_early, 0.5, 1e-12);
}

static double harm_by_hand(const ts_neck_cycles *all, int count, double T_eq)
{
    double harm = 0.0;

    for (int i = 0; i < count; i++) {
        const double x = all[i].T_a / (1.0 - all[i].T_m / 170.0) / T_eq;
        harm += all[i].cycles / 1e6 * (x > 1.0 ? pow(x, 5.0) : pow(x, 9.0));
    }
    return harm;
}

/* The strength that even harm asks for, of many drawn loads to either side of the knee, and of none
 * that is near to it: the plain sum is 1 there, and the shares of it add up. */
static void even_harm_is_found_for_any_loads(void **state)
{
    (void)state;
    for (uint64_t n = 0; n < 400; n++) {
        ts_neck_cycles all[40];
        ts_neck_duty   at    = {.T_capacity = 1e4, .cycles = all};
        double         share = 0.0, u[2];

        ts_random_pair(11, n, 0, u);
        at.cycle_count = 1 + (int)(39.0 * u[0]);
        for (int i = 0; i < at.cycle_count; i++) {
            ts_random_pair(11, n, (uint32_t)(i + 1), u);
            all[i] =
                (ts_neck_cycles){pow(10.0, 3.0 * u[0] - 1.0), 100.0 * u[1], pow(10.0, 11.0 * u[1])};
        }
        const ts_neck_chance chance = ts_neck_chance_of(&make, &at, 10e-3, NULL);
        assert_close(harm_by_hand(all, at.cycle_count, chance.T_equivalent), 1.0, 1e-11);
        for (int i = 0; i < at.cycle_count; i++)
            share += ts_neck_harm_share(&make, &at, &chance, i);
        assert_close(share, 1.0, 1e-11);
    }
}

/* DIN 743-2, 5.4: K_2 is 1 up to 7.5 mm and 0.8 at 150 mm; a smooth, even neck feels it alone. */
static void thick_necks_bear_less_for_their_size(void **state)
{
    (void)state;
    const ts_neck_cycles plain = {10.0, 0.0, 1e6};
    ts_neck_duty at    = {.T_legit = 0.0, .T_capacity = 1e9, .cycles = &plain, .cycle_count = 1};
    ts_neck_make sized = make;

    sized.d_0 = 7.5e-3;
    sized.K_f = sized.K_F      = 1.0;
    const ts_neck_chance thin  = ts_neck_chance_of(&sized, &at, 7.5e-3, NULL);
    const ts_neck_chance thick = ts_neck_chance_of(&sized, &at, 150e-3, NULL);
    /* At the knee the slope, which follows the notch and the size, asks for nothing: what it needs
     * is what the load asks for, and what it has is 8000 times 0.8 as much. */
    assert_close(thin.T_equivalent, thick.T_equivalent, 1e-12);
    const double z_thin = ts_normal_place(thin.fatigue_early) * 0.08;
    assert_close(z_thin, log(thin.T_equivalent / 45.0), 1e-9);
    at.cycles = &(const ts_neck_cycles){45.0 * 8000.0 * 0.8, 0.0, 1e6};
    assert_close(ts_neck_chance_of(&sized, &at, 150e-3, NULL).fatigue_early, 0.5, 1e-9);
    sized.K_F = 0.8; /* K = 1/0.8 + 1/0.8 - 1 = 1.5 where it was 1.25 */
    at.cycles = &(const ts_neck_cycles){45.0 * 8000.0 * 1.25 / 1.5, 0.0, 1e6};
    assert_close(ts_neck_chance_of(&sized, &at, 150e-3, NULL).fatigue_early, 0.5, 1e-9);
}

/* Half of the necks of any diameter bear what grows with the cube for 1e3 cycles: notch and size
 * are felt beyond. */
static void lines_of_all_sizes_meet_at_a_thousand_cycles(void **state)
{
    (void)state;
    ts_neck_make sized = make;

    sized.d_0 = 7.5e-3;
    sized.K_f = 1.4;
    sized.K_F = 0.9;
    for (double d = 5e-3; d < 0.2; d *= 1.3) {
        const double         cube = pow(d / 7.5e-3, 3.0);
        const ts_neck_cycles few  = {45.0 * pow(1e3, 1.0 / make.k) * cube, 0.0, 1e3};
        const ts_neck_duty   at   = {.T_capacity = 1e9, .cycles = &few, .cycle_count = 1};
        assert_close(ts_neck_chance_of(&sized, &at, d, NULL).fatigue_early, 0.5, 1e-9);
    }
}

static void chances_agree_with_drawn_necks(void **state)
{
    (void)state;
    enum { COUNT = 100000 };
    const double d = 9.4e-3, cube = pow(0.94, 3.0);
    ts_neck_duty near_by = duty;
    int          early = 0, late = 0;

    near_by.T_capacity          = 150.0;
    const ts_neck_chance chance = ts_neck_chance_of(&make, &near_by, d, NULL);

    for (uint64_t i = 0; i < COUNT; i++) {
        double pair[2];

        ts_random_pair(3, i, 0, pair);
        const double T_break = 170.0 * cube * (1.0 + 0.04 * ts_normal_place(pair[0]));
        const double T_W     = 45.0 * cube * exp(0.08 * ts_normal_place(pair[1]));
        double       harm    = 0.0;
        for (int k = 0; k < 2; k++) {
            const double x = cycles[k].T_a / (1.0 - cycles[k].T_m / (170.0 * cube)) / T_W;
            harm += cycles[k].cycles / 1e6 * (x > 1.0 ? pow(x, 5.0) : pow(x, 9.0));
        }
        early += T_break < 130.0 || harm > 1.0 ? 1 : 0;
        late += T_break > 150.0 ? 1 : 0;
    }
    assert_true(chance.early > 0.05 && chance.early < 0.95);
    assert_true(chance.late > 0.02 && chance.late < 0.95);
    assert_close_abs((double)early / COUNT, chance.early, 5.0 * 0.5 / sqrt(COUNT));
    assert_close_abs((double)late / COUNT, chance.late, 5.0 * 0.5 / sqrt(COUNT));
}

static void balance_lies_where_both_are_equal(void **state)
{
    (void)state;
    const double         d          = ts_neck_balance(&make, &duty, 8e-3, 14e-3);
    const ts_neck_chance even       = ts_neck_chance_of(&make, &duty, d, NULL);
    double               last_early = 1.0, last_late = 0.0;

    assert_true(d > 8e-3 && d < 14e-3);
    assert_close(even.early, even.late, 1e-9);
    for (int i = 0; i <= 60; i++) {
        const ts_neck_chance c = ts_neck_chance_of(&make, &duty, 9e-3 + i * 5e-5, NULL);

        assert_true(c.early <= last_early && c.late >= last_late);
        last_early = c.early;
        last_late  = c.late;
    }
    assert_nan(ts_neck_balance(&make, &duty, 13e-3, 14e-3));
}

static void impossible_necks_have_no_chances(void **state)
{
    (void)state;
    const ts_neck_cycles steady = {1.0, 400.0, 10.0};
    ts_neck_duty         at     = duty;
    ts_neck_make         odd    = make;

    at.cycles      = &steady;
    at.cycle_count = 1;
    assert_nan(ts_neck_chance_of(&make, &at, 10e-3, NULL).early);
    odd.cov = 0.0;
    assert_nan(ts_neck_chance_of(&odd, &duty, 10e-3, NULL).late);
    assert_nan(ts_neck_chance_of(&make, &duty, -1.0, NULL).late);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(static_chances_are_the_normal_law),
        cmocka_unit_test(fatigue_stands_on_its_line),
        cmocka_unit_test(even_harm_is_found_for_any_loads),
        cmocka_unit_test(thick_necks_bear_less_for_their_size),
        cmocka_unit_test(lines_of_all_sizes_meet_at_a_thousand_cycles),
        cmocka_unit_test(chances_agree_with_drawn_necks),
        cmocka_unit_test(balance_lies_where_both_are_equal),
        cmocka_unit_test(impossible_necks_have_no_chances),
    };

    return cmocka_run_group_tests(tests, NULL, NULL);
}
