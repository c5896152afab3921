/* Who drives whom, with what torque, and what is lost on the way? */
#include "support/close.h"
#include "support/random_train.h"
#include "support/solved_train.h"

static hand_train   h;
static solved_train solved;

static const ts_mesh_load *load_of(uint32_t condition, uint32_t shaft)
{
    return &solved.power.mesh[condition * h.train.mesh_count + h.shafts[shaft].mesh];
}

/* ---- pads ------------------------------------------------------------------------------------ */

static void pad_torque_is_power_over_speed(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t pad   = hand_accessory(&h, input, TS_REAR);

    hand_absorbs(&h, pad, 0, 20e3);
    solved_usual(&solved, &h);
    assert_close(solved.power.pad[pad].T, 20e3 / (2000.0 * 1591.0 / 1886.0), 1e-15);
    assert_same_double(solved.power.pad[pad].P, 20e3);
    assert_int_equal(solved.power.pad[pad].standing, TS_GIVEN);
    solved_close(&solved);
}

static void cover_takes_nothing(void **state)
{
    (void)state;
    hand_cover(&h, hand_usual(&h, 1), TS_FRONT);
    solved_usual(&solved, &h);
    assert_same_double(solved.power.pad[0].T, 0.0);
    assert_int_equal(solved.power.pad[0].standing, TS_GIVEN);
    assert_same_double(solved.power.spool[0].T, 0.0);
    solved_close(&solved);
}

static void power_that_is_not_stated_or_unknown_counts_as_nothing_and_says_so(void **state)
{
    (void)state;
    const uint32_t input   = hand_usual(&h, 1);
    const uint32_t silent  = hand_accessory(&h, input, TS_FRONT);
    const uint32_t unknown = hand_accessory(&h, input, TS_REAR);

    h.power[1][0] = (ts_measure){(double)NAN, 70, TS_UNKNOWN};
    solved_usual(&solved, &h);
    assert_int_equal(solved.power.pad[silent].standing, TS_ABSENT);
    assert_int_equal(solved.power.pad[unknown].standing, TS_UNKNOWN);
    assert_same_double(solved.power.pad[unknown].T, 0.0);
    assert_same_double(solved.power.spool[0].T, 0.0);
    solved_close(&solved);
}

static void power_wanted_at_rest_is_not_computable(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 2);
    const uint32_t pad   = hand_accessory(&h, input, TS_REAR);

    hand_set_speed(&h, 0, 0, 0.0);
    hand_set_speed(&h, 0, 1, 0.0);
    hand_absorbs(&h, pad, 0, 1e3);
    hand_absorbs(&h, pad, 1, 0.0);
    solved_usual(&solved, &h);
    const ts_pad_load *wanted = &solved.power.pad[0], *none = &solved.power.pad[1];

    assert_int_equal(wanted->standing, TS_UNKNOWN);
    assert_same_double(wanted->T, 0.0);
    assert_int_equal(none->standing, TS_GIVEN);
    assert_same_double(none->T, 0.0);
    solved_close(&solved);
}

static void accessory_that_drives_is_not_charged_with_its_power(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 2);
    const uint32_t pad   = hand_accessory(&h, input, TS_REAR);

    hand_absorbs(&h, pad, 0, 9e3);
    hand_absorbs(&h, pad, 1, 9e3);
    hand_drives(&h, pad, 0, 45.0);
    hand_drives(&h, pad, 1, 0.0);
    solved_usual(&solved, &h);
    assert_same_double(solved.power.pad[0].T, -45.0);
    assert_close(solved.power.pad[0].P, -45.0 * 2000.0 * 1591.0 / 1886.0, 1e-15);
    assert_true(solved.power.pad[1].T > 0.0);
    solved_close(&solved);
}

static void overrunning_clutch_passes_nothing_back(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 4);
    const uint32_t pad   = hand_accessory(&h, input, TS_REAR);

    hand_clutch(&h, pad);
    hand_drives(&h, pad, 0, 220.0);
    h.power[0][1] = (ts_measure){3e3, 60, TS_ASSUMED}; /* a kept torque is no torque here */
    hand_absorbs(&h, pad, 2, 200.0);                   /* the drag of the clutch          */
    solved_usual(&solved, &h);
    const ts_pad_load *load = solved.power.pad;

    assert_int_equal(load[0].clutch_state, TS_CLUTCH_STATE_ENGAGED);
    assert_same_double(load[0].T, -220.0);
    assert_int_equal(load[1].clutch_state, TS_CLUTCH_STATE_OVERRUNNING);
    assert_same_double(load[1].T, 0.0);
    assert_int_equal(load[2].clutch_state, TS_CLUTCH_STATE_OVERRUNNING);
    assert_same_double(load[2].P, 200.0);
    assert_int_equal(load[3].clutch_state, TS_CLUTCH_STATE_OVERRUNNING);
    assert_int_equal(load[3].standing, TS_GIVEN);
    assert_same_double(load[3].T, 0.0);
    solved_close(&solved);
}

/* ---- meshes ---------------------------------------------------------------------------------- */

/* derived: 1 % is lost of what enters each bevel mesh and 0.5 % of what enters a cylindrical one.
 */
static void losses_raise_what_the_spool_must_give(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);

    hand_absorbs(&h, hand_accessory(&h, wheel, TS_REAR), 0, 10e3);
    solved_usual(&solved, &h);
    assert_close(solved.power.spool[0].P, 10e3 / (0.99 * 0.99 * 0.995), 1e-14);
    assert_close(load_of(0, wheel)->P[0], 10e3 / 0.995, 1e-14);
    assert_close(load_of(0, wheel)->loss, 10e3 / 0.995 * 0.005, 1e-14);
    assert_same_double(solved.power.spool[0].P_driving, 0.0);
    solved_close(&solved);
}

static void losses_lower_what_the_starter_gives_to_the_spool(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);

    hand_drives(&h, hand_accessory(&h, wheel, TS_REAR), 0, 220.0);
    solved_usual(&solved, &h);
    const double         P    = 220.0 * 2000.0 * 41366.0 / 57523.0;
    const ts_spool_load *load = &solved.power.spool[0];

    assert_close(load->P, -P * (0.99 * 0.99 * 0.995), 1e-14);
    assert_close(load->T, load->P / 2000.0, 1e-15);
    assert_close(load->P_pads, -P, 1e-14);
    assert_close(load->P_driving, P, 1e-14);
    assert_close(load->P_lost, P * (1.0 - 0.99 * 0.99 * 0.995), 1e-12);
    assert_close(load_of(0, wheel)->loss, P * 0.005, 1e-14);
    solved_close(&solved);
}

static void power_meets_power_inside_the_train(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t left  = hand_shaft(&h, input, 52, TS_WAY_CLOCKWISE);
    const uint32_t right = hand_shaft(&h, input, 52, TS_WAY_ANTICLOCKWISE);

    hand_drives(&h, hand_accessory(&h, left, TS_REAR), 0, 100.0);
    hand_absorbs(&h, hand_accessory(&h, right, TS_REAR), 0, 40.0 * 2000.0 * 1591.0 / 1886.0);
    solved_usual(&solved, &h);
    assert_int_equal(load_of(0, left)->flow, TS_FLOW_INWARD);
    assert_int_equal(load_of(0, right)->flow, TS_FLOW_OUTWARD);
    assert_int_equal(load_of(0, input)->flow, TS_FLOW_INWARD);
    assert_close(load_of(0, input)->T[1], -(100.0 * 0.995 - 40.0 / 0.995), 1e-13);
    solved_close(&solved);
}

static void start_loads_the_other_flank(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 2);
    const uint32_t pad   = hand_accessory(&h, input, TS_REAR);

    hand_drives(&h, pad, 0, 220.0);
    hand_absorbs(&h, pad, 1, 10e3);
    solved_usual(&solved, &h);
    for (uint32_t m = 0; m < 2; m++) {
        const ts_mesh_load *start = &solved.power.mesh[m], *run = &solved.power.mesh[2 + m];

        assert_int_equal(start->flank[0], TS_FLANK_TRAILING);
        assert_int_equal(start->flank[1], TS_FLANK_LEADING);
        assert_int_equal(run->flank[0], TS_FLANK_LEADING);
        assert_int_equal(run->flank[1], TS_FLANK_TRAILING);
    }
    solved_close(&solved);
}

static void idle_mesh_works_on_no_flank(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t idler = hand_shaft(&h, input, 45, TS_WAY_CLOCKWISE);

    solved_usual(&solved, &h);
    assert_int_equal(load_of(0, idler)->flow, TS_FLOW_NONE);
    assert_int_equal(load_of(0, idler)->flank[0], TS_FLANK_NONE);
    assert_same_double(load_of(0, idler)->F_t, 0.0);
    assert_same_double(load_of(0, idler)->force[2], 0.0);
    solved_close(&solved);
}

static void at_rest_power_flows_the_way_of_the_torque(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);

    hand_set_speed(&h, 0, 0, 0.0);
    hand_drives(&h, hand_accessory(&h, input, TS_REAR), 0, 220.0);
    solved_usual(&solved, &h);
    const ts_mesh_load *load = load_of(0, input);

    assert_int_equal(load->flow, TS_FLOW_INWARD);
    assert_int_equal(load->flank[0], TS_FLANK_TRAILING);
    assert_close(load->F_t, 220.0 / solved.motion.meshes[1].r_2, 1e-15);
    assert_same_double(load->loss, 0.0);
    assert_close(solved.power.spool[0].T, -220.0 * 1591.0 / 1886.0 * 0.99 * 0.99, 1e-14);
    assert_same_double(solved.power.spool[0].P, -0.0);
    assert_same_double(solved.power.spool[0].imbalance, 0.0);
    solved_close(&solved);
}

/* ---- spools ---------------------------------------------------------------------------------- */

static void other_spool_follows_by_air_and_drives_nothing(void **state)
{
    (void)state;
    const uint32_t    input = hand_usual(&h, 2);
    const hand_bevels pair  = {.teeth = {40, 41}, .spiral = 0.5, .loss = 0.01};

    hand_drives(&h, hand_accessory(&h, input, TS_REAR), 0, 220.0);
    const uint32_t lp       = hand_spool(&h, "lp spool", TS_CW, 0.0);
    const uint32_t lp_input = hand_input(&h, hand_tower(&h, lp, &pair, 0.0), &pair, 0.5, 40);
    const uint32_t pad      = hand_accessory(&h, lp_input, TS_REAR);

    hand_set_speed(&h, lp, 1, 300.0);
    hand_absorbs(&h, pad, 0, 0.0);
    hand_absorbs(&h, pad, 1, 5e3);
    solved_usual(&solved, &h);
    assert_true(solved.power.spool[0].T < 0.0);
    assert_same_double(solved.power.spool[1].T, 0.0);
    assert_same_double(solved.power.spool[1].P, 0.0);
    assert_close(solved.power.spool[3].P, 5e3 / (0.99 * 0.99), 1e-14);
    solved_close(&solved);
}

static void spool_that_is_not_tapped_has_an_empty_load(void **state)
{
    (void)state;
    hand_usual(&h, 1);
    const uint32_t lp = hand_spool(&h, "lp spool", TS_CW, 0.0);

    h.speeds[0][1] = (ts_measure){(double)NAN, 0, TS_ABSENT};
    solved_usual(&solved, &h);
    assert_nan(solved.motion.speed[lp]);
    assert_same_double(solved.power.spool[1].T, 0.0);
    assert_same_double(solved.power.spool[1].P, 0.0);
    solved_close(&solved);
}

/* ---- any train ------------------------------------------------------------------------------- */

static void power_and_torque_balance_in_any_train(void **state)
{
    (void)state;
    int driven = 0, met = 0;

    for (uint64_t seed = 1; seed <= 400; seed++) {
        random_train(&h, seed, 30);
        solved_usual(&solved, &h);
        const uint32_t conditions = solved.motion.condition_count;

        for (uint32_t i = 0; i < conditions * h.drive.spool_count; i++) {
            assert_true(solved.power.spool[i].imbalance <= 1e-12);
            driven += solved.power.spool[i].T < 0.0;
        }
        for (uint32_t i = 0; i < conditions * h.train.shaft_count; i++)
            assert_true(solved.power.shaft_imbalance[i] <= 1e-12);
        for (uint32_t i = 0; i < conditions * h.train.mesh_count; i++) {
            const ts_mesh_load *mesh = &solved.power.mesh[i];

            /* What enters is what leaves and what is lost; nothing is gained. */
            assert_close_abs(mesh->P[0] - mesh->P[1], mesh->loss,
                             1e-14 * (fabs(mesh->P[0]) + fabs(mesh->P[1])));
            assert_true(mesh->loss >= 0.0);
            met += mesh->flow == TS_FLOW_INWARD;
        }
        solved_close(&solved);
    }
    assert_true(driven > 100 && met > 500); /* both directions were really met */
}

/* derived: without drivers, every pad's torque reaches the spool times its ratio, raised by each
 * mesh on the way. */
static void spool_gives_the_sum_of_all_pads_at_its_own_speed(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 200; seed++) {
        random_train(&h, seed, 30);
        for (size_t a = 0; a < h.drive.accessory_count; a++)
            for (size_t c = 0; c < h.drive.condition_count; c++)
                h.driving[a][c].standing = TS_ABSENT;
        solved_usual(&solved, &h);
        for (uint32_t c = 0; c < solved.motion.condition_count; c++) {
            double expected[HAND_SPOOLS] = {0.0, 0.0};

            for (uint32_t p = 0; p < h.train.pad_count; p++) {
                double   T  = solved.power.pad[c * h.train.pad_count + p].T;
                uint32_t at = h.pads[p].shaft;

                for (; h.shafts[at].mesh != TS_NOWHERE;
                     at = h.meshes[h.shafts[at].mesh].driver_shaft) {
                    const ts_mesh *mesh = &h.meshes[h.shafts[at].mesh];

                    T *= (double)h.gears[mesh->driver].teeth.value /
                         (double)h.gears[mesh->driven].teeth.value / (1.0 - mesh->loss.value);
                }
                expected[h.shafts[at].spool] += T;
            }
            for (uint32_t s = 0; s < h.drive.spool_count; s++)
                assert_close(solved.power.spool[c * h.drive.spool_count + s].T, expected[s], 1e-12);
        }
        solved_close(&solved);
    }
}

static void turn_demand_round(hand_train *t, const solved_train *before)
{
    for (uint32_t c = 0; c < before->motion.condition_count; c++)
        for (uint32_t p = 0; p < t->train.pad_count; p++) {
            const int32_t a = t->pads[p].accessory;
            const double  n = before->motion.speed[c * t->train.shaft_count + t->pads[p].shaft];
            const double  T = before->power.pad[c * t->train.pad_count + p].T;

            if (a < 0)
                continue;
            t->power[a][c].standing = t->driving[a][c].standing = TS_ABSENT;
            if (T > 0.0)
                t->driving[a][c] = (ts_measure){T, 1, TS_GIVEN};
            else if (T < 0.0)
                t->power[a][c] = (ts_measure){-T * n, 1, TS_GIVEN};
        }
}

static void reversed_demands_reverse_every_flow_where_nothing_is_lost(void **state)
{
    (void)state;
    solved_train before;

    for (uint64_t seed = 1; seed <= 200; seed++) {
        random_train(&h, seed, 30);
        for (uint32_t m = 0; m < h.train.mesh_count; m++)
            h.meshes[m].loss.value = 0.0;
        for (size_t c = 0; c < h.drive.condition_count; c++)
            for (size_t s = 0; s < h.drive.spool_count; s++)
                h.speeds[c][s].value += 100.0; /* at rest nothing can absorb */
        for (size_t a = 0; a < h.drive.accessory_count; a++)
            h.accessories[a].clutch.value = TS_CLUTCH_NONE;
        solved_usual(&before, &h);
        turn_demand_round(&h, &before);
        solved_usual(&solved, &h);
        for (uint32_t i = 0; i < solved.motion.condition_count * h.train.mesh_count; i++) {
            const ts_mesh_load *a = &before.power.mesh[i], *b = &solved.power.mesh[i];

            assert_close_abs(b->T[0], -a->T[0], 1e-9 * fabs(a->T[0]) + 1e-9);
            if (fabs(a->T[0]) > 1e-6) {
                assert_int_equal(b->flow, -a->flow);
                assert_int_equal(b->flank[0], a->flank[1]);
            }
        }
        solved_close(&before);
        solved_close(&solved);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(pad_torque_is_power_over_speed),
        cmocka_unit_test(cover_takes_nothing),
        cmocka_unit_test(power_that_is_not_stated_or_unknown_counts_as_nothing_and_says_so),
        cmocka_unit_test(power_wanted_at_rest_is_not_computable),
        cmocka_unit_test(accessory_that_drives_is_not_charged_with_its_power),
        cmocka_unit_test(overrunning_clutch_passes_nothing_back),
        cmocka_unit_test(losses_raise_what_the_spool_must_give),
        cmocka_unit_test(losses_lower_what_the_starter_gives_to_the_spool),
        cmocka_unit_test(power_meets_power_inside_the_train),
        cmocka_unit_test(start_loads_the_other_flank),
        cmocka_unit_test(idle_mesh_works_on_no_flank),
        cmocka_unit_test(at_rest_power_flows_the_way_of_the_torque),
        cmocka_unit_test(other_spool_follows_by_air_and_drives_nothing),
        cmocka_unit_test(spool_that_is_not_tapped_has_an_empty_load),
        cmocka_unit_test(power_and_torque_balance_in_any_train),
        cmocka_unit_test(spool_gives_the_sum_of_all_pads_at_its_own_speed),
        cmocka_unit_test(reversed_demands_reverse_every_flow_where_nothing_is_lost),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
