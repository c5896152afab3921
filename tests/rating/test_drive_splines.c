/* Are the splines of the pads sized and stressed as the public numbers and formulas say? */
#include "rating/spline_capacity.h"
#include "support/close.h"
#include "support/read_file.h"
#include "support/solved_file.h"

#include <math.h>
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <string.h>

#include <cmocka.h>

static void public_numbers_mean_teeth_and_pitch(void **state)
{
    (void)state;
    ts_spline_number n;
    /* 16 teeth of 20 to the inch: bank case spl-16t-20-pitch, AS972 public notes (read). */
    assert_true(ts_spline_number_read("AS972", &n));
    assert_close(n.N, 16.0, 0.0);
    assert_close(n.P_d * 0.0254, 20.0, 1e-14);
    assert_true(ts_spline_number_read("B92.1 24T 16/32", &n));
    assert_close(n.N, 24.0, 0.0);
    assert_close(n.P_d * 0.0254, 16.0, 1e-14);
    assert_true(ts_spline_number_read("ISO 4156 24z 1.5m", &n));
    assert_close(n.m, 1.5e-3, 1e-14);
}

static void other_numbers_are_unknown_and_never_guessed(void **state)
{
    (void)state;
    static const char *const words[] = {"",
                                        "AS973",
                                        "B92.1",
                                        "B92.1 24T",
                                        "B92.1 24T 16/30",
                                        "B92.1 5T 16/32",
                                        "B92.1 24.5T 16/32",
                                        "B92.1 24T 16/32 x",
                                        "ISO 4156 24z m",
                                        "ISO 4156 24z 0.1m",
                                        "as972"};
    ts_spline_number         n;
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        assert_false(ts_spline_number_read(words[i], &n));
}

typedef struct rated {
    ts_text     text;
    solved_file file;
    ts_splines  splines;
} rated;

static void open_rated(rated *it)
{
    it->text = read_file("examples/bizjet.yaml");
    solved_file_open(&it->file, it->text, false);
    assert_int_equal(it->file.status, TS_OK);
    assert_int_equal(
        ts_splines_prepare(&it->file.drive, &it->file.power, it->file.arena, &it->splines), TS_OK);
    ts_splines_solve(&it->file.drive, &it->splines, NULL);
}

static void close_rated(rated *it)
{
    solved_file_close(&it->file);
    free_file(it->text);
}

/* derived: the formulas of Machinery's Handbook (bank, spl-dudley-stress) written out once more;
 * D_re = (N - 2)/P of 16/32 and finer: bank, spl-16t-20-pitch. */
static void stresses_follow_the_torque_of_every_condition(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    assert_int_equal(it.splines.count, 2);
    const ts_drive_spline *s = &it.splines.items[0];
    assert_string_equal(s->number, "B92.1 24T 16/32");
    const double D = 1.5 * 0.0254, D_re = 22.0 / 16.0 * 0.0254, L = 0.93 * D;
    for (size_t c = 0; c < it.file.drive.condition_count; c++) {
        const double T = s->cases[c].T;
        assert_true(s->cases[c].known);
        assert_close(s->cases[c].S[TS_SPLINE_ROOT_SHEAR],
                     16.0 * T / (M_PI * D_re * D_re * D_re * s->K_f), 1e-9);
        assert_close(s->cases[c].S[TS_SPLINE_TOOTH_SHEAR],
                     4.0 * T * s->K_m / (D * 24.0 * L * M_PI * 0.0254 / 32.0 * s->K_f), 1e-9);
        assert_close(s->cases[c].S[TS_SPLINE_PRESSURE],
                     2.0 * T * s->K_m / (D * 24.0 * L * D / 24.0 * s->K_w), 1e-9);
    }
    assert_close(s->cases[0].T, 220.0, 1e-12);
    close_rated(&it);
}

static void the_governing_case_is_the_greatest_of_all(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    for (uint32_t i = 0; i < it.splines.count; i++) {
        const ts_drive_spline *s    = &it.splines.items[i];
        double                 worn = 0.0;
        for (size_t c = 0; c < it.file.drive.condition_count; c++) {
            for (int k = 0; k < TS_SPLINE_STRESSES; k++)
                assert_true(s->cases[c].S[k] <= s->most[k]);
            if (!isnan(s->cases[c].h_w))
                worn += s->cases[c].h_w;
        }
        for (int k = 0; k < TS_SPLINE_STRESSES; k++)
            assert_true(s->at[k] == TS_EVERY_CONDITION ? s->overload.S[k] == s->most[k]
                                                       : s->cases[s->at[k]].S[k] == s->most[k]);
        assert_close(s->h_w, worn, 1e-12);
        assert_true(s->h_w > 0.0);
    }
    close_rated(&it);
}

/* Machinery's Handbook, involute splines, application factors (bank, spl-dudley-factors): 1.0 for a
 * generator, 1.2 for a pump, with a turbine as the source; an overload is its own peak. */
static void shock_raises_the_torque_of_conditions_and_not_the_overload(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    for (uint32_t i = 0; i < it.splines.count; i++) {
        const ts_drive_spline *s = &it.splines.items[i];
        const bool pump          = strcmp(s->number, "AS972") == 0; /* the starter is the other */
        assert_close(s->K_a, pump ? 1.2 : 1.0, 1e-15);
        for (size_t c = 0; c < it.file.drive.condition_count; c++)
            assert_close(s->cases[c].K_a, s->K_a, 1e-15);
        if (s->overload.known)
            assert_close(s->overload.K_a, 1.0, 1e-15);
    }
    close_rated(&it);
}

/* derived: what is answered is where the stress, computed once more by the formula with the factor
 * of that length, meets what is permitted. */
static void the_length_answered_is_where_the_stress_meets_its_limit(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    const ts_drive_spline *s   = &it.splines.items[0];
    ts_spline_case         one = *ts_spline_worst(s, TS_SPLINE_PRESSURE);
    one.T *= 1.3 * ts_spline_stress_permitted(TS_SPLINE_PRESSURE) / s->most[TS_SPLINE_PRESSURE];
    const double L   = ts_spline_length_for(s, &one, TS_SPLINE_PRESSURE);
    const double K_m = ts_spline_misalignment_factor(L, s->slope, NULL);
    assert_true(L > s->L_e);
    assert_close(2.0 * one.T * one.K_a * K_m / (s->shape.D * s->shape.D * L * one.K_w),
                 ts_spline_stress_permitted(TS_SPLINE_PRESSURE), 1e-12);
    one.T = 10.0 * s->cases[0].T * ts_spline_stress_permitted(TS_SPLINE_ROOT_SHEAR) /
            s->cases[0].S[TS_SPLINE_ROOT_SHEAR];
    assert_true(isnan(ts_spline_length_for(s, &one, TS_SPLINE_ROOT_SHEAR)));
    close_rated(&it);
}

/* derived: S_1 + S_3 of the handbook with the hoop stress of a spinning ring (nu 0.3), turned round
 * for the torque that a sleeve of 1.4 times the outside bears. */
static void the_sleeve_answered_is_where_bursting_meets_its_limit(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    const ts_drive_spline *s    = &it.splines.items[0];
    ts_spline_case         one  = s->cases[0];
    const double           D_oi = 1.4 * s->D_oi, D = s->shape.D, D_ri = s->shape.D_ri;
    const double           S_1 = tan(s->shape.alpha_D) / (M_PI * D * (D_oi - D_ri) / 2.0 * s->L_e);
    const double           S_2 =
        7850.0 * one.n * one.n / 4.0 * (3.3 * D_oi * D_oi / 4.0 + 0.7 * D_ri * D_ri / 4.0);
    const double S_3 = 4.0 / (D * D * s->L_e * 1.5);
    one.T            = (ts_spline_stress_permitted(TS_SPLINE_BURSTING) * s->K_f - S_2) /
            (one.K_a * s->K_m * (S_1 + S_3));
    assert_close(ts_spline_sleeve_for(s, &one), D_oi, 1e-9);
    one.T *= 100.0;
    assert_true(isnan(ts_spline_sleeve_for(s, &one)));
    close_rated(&it);
}

/* derived: rated once more at the torque that it is said to bear, with the fatigue factor of 1000
 * cycles (1.8, bank, spl-dudley-factors) and no shock, one stress is what is permitted and none is
 * above. */
static void at_the_torque_borne_once_one_stress_meets_its_limit(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    const uint32_t conditions = (uint32_t)it.file.drive.condition_count;
    for (uint32_t i = 0; i < it.splines.count; i++) {
        const ts_drive_spline *s     = &it.splines.items[i];
        const ts_spline_bears  bears = ts_spline_bears_once(s, conditions, NULL);
        ts_spline_case         one   = {.T = bears.T, .K_a = 1.0, .K_w = 1.0};
        for (uint32_t c = 0; c < conditions; c++)
            one.n = fmax(one.n, s->cases[c].n);
        ts_spline_load load             = ts_spline_load_of(s, &one);
        load.K_f                        = 1.8;
        const ts_spline_sleeve sleeve   = ts_spline_sleeve_of(s, &one);
        const double           share[3] = {
                      ts_spline_root_shear(&load, NULL) / ts_spline_stress_permitted(TS_SPLINE_ROOT_SHEAR),
                      ts_spline_pitch_shear(&load, NULL) / ts_spline_stress_permitted(TS_SPLINE_TOOTH_SHEAR),
                      ts_spline_burst(&load, &sleeve, NULL).S_t /
                          ts_spline_stress_permitted(TS_SPLINE_BURSTING)};
        assert_close(fmax(fmax(share[0], share[1]), share[2]), 1.0, 1e-12);
    }
    close_rated(&it);
}

/* A sleeve that its spin alone stresses beyond S_P_t K_f bears no torque: nothing, not a negative
 * one that would be the least of all. */
static void a_sleeve_that_its_spin_bursts_bears_no_torque(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    ts_drive_spline *s          = &it.splines.items[0];
    const uint32_t   conditions = (uint32_t)it.file.drive.condition_count;

    assert_true(ts_spline_bears_once(s, conditions, NULL).T > 0.0);
    for (uint32_t c = 0; c < conditions; c++)
        s->cases[c].n *= 1000.0;
    assert_true(isnan(ts_spline_bears_once(s, conditions, NULL).T));

    ts_part_capacity   room[64];
    ts_part_capacities list = {room, 0, 64};
    ts_splines_capacities(&it.file.drive, &it.splines, &list, NULL);
    assert_true(list.count > 0);
    assert_true(isnan(room[0].T));
    assert_string_equal(room[0].missing, "a sleeve that bears its own spin");
    close_rated(&it);
}

/* Starts and times say how long a spline lasts, not what it bears once. */
static void what_is_borne_once_asks_for_no_times(void **state)
{
    (void)state;
    rated it;
    open_rated(&it);
    const uint32_t   conditions = (uint32_t)it.file.drive.condition_count;
    ts_drive_spline *s          = &it.splines.items[0];
    const double     told       = ts_spline_bears_once(s, conditions, NULL).T;
    const double     shear      = s->overload.S[TS_SPLINE_TOOTH_SHEAR];

    assert_true(s->sized && s->missing == NULL && told > 0.0 && s->overload.known);
    for (uint32_t c = 0; c < conditions; c++) {
        it.file.drive.conditions[c].events = (ts_tally){0, 0, TS_UNKNOWN};
        it.file.drive.conditions[c].hours  = (ts_measure){(double)NAN, 0, TS_UNKNOWN};
    }
    ts_splines_solve(&it.file.drive, &it.splines, NULL);
    assert_true(s->sized && s->missing != NULL);
    assert_close(ts_spline_bears_once(s, conditions, NULL).T, told, 1e-14);
    /* Met once instead of at every start: its fatigue factor is that of the first column. */
    assert_close(s->overload.S[TS_SPLINE_TOOTH_SHEAR] * ts_spline_fatigue_factor(1.0, false, NULL),
                 shear * ts_spline_fatigue_factor(18000.0, false, NULL), 1e-12);
    assert_int_equal(s->at[TS_SPLINE_TOOTH_SHEAR], TS_EVERY_CONDITION);
    assert_true(s->most[TS_SPLINE_TOOTH_SHEAR] > 0.0 && s->most[TS_SPLINE_PRESSURE] < 0.0);

    ts_part_capacity   room[64];
    ts_part_capacities list = {room, 0, 64};
    ts_splines_capacities(&it.file.drive, &it.splines, &list, NULL);
    assert_null(room[0].missing);
    assert_close(room[0].T, told, 1e-14);
    close_rated(&it);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(public_numbers_mean_teeth_and_pitch),
        cmocka_unit_test(other_numbers_are_unknown_and_never_guessed),
        cmocka_unit_test(stresses_follow_the_torque_of_every_condition),
        cmocka_unit_test(the_governing_case_is_the_greatest_of_all),
        cmocka_unit_test(at_the_torque_borne_once_one_stress_meets_its_limit),
        cmocka_unit_test(what_is_borne_once_asks_for_no_times),
        cmocka_unit_test(a_sleeve_that_its_spin_bursts_bears_no_torque),
        cmocka_unit_test(shock_raises_the_torque_of_conditions_and_not_the_overload),
        cmocka_unit_test(the_length_answered_is_where_the_stress_meets_its_limit),
        cmocka_unit_test(the_sleeve_answered_is_where_bursting_meets_its_limit),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
