/* Has every number of motion and power an origin, and do the workings change nothing? */
#include "support/close.h"
#include "support/faulty_allocator.h"
#include "support/random_train.h"
#include "support/solved_train.h"

#include <string.h>

static hand_train   h;
static solved_train solved;

static void check_step(const ts_workings *workings, size_t index)
{
    const ts_note *note = ts_workings_at(workings, index);

    for (uint32_t i = 0; i < note->input_count; i++) {
        const ts_input *input = &note->inputs[i];

        /* What was searched for is itself an input of the equation. */
        if (note->kind == TS_NOTE_SEARCHED && strcmp(input->name, note->symbol) == 0)
            continue;
        if (ts_origin(workings, index, input->name, input->value) != SIZE_MAX)
            continue;
        fail_msg("%s = %g has no origin in %s = %s of node %u in condition %d", input->name,
                 input->value, note->symbol, note->formula->text, note->subject.object,
                 note->subject.condition);
    }
}

static void every_input_of_every_step_has_an_origin(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 25; seed++) {
        random_train(&h, seed, 10);
        if (seed == 7)
            h.gears[h.train.gear_count - 1].face.standing = TS_UNKNOWN;
        solved_open(&solved, &h);
        ts_workings *workings = ts_workings_open(solved.arena);

        solved_solve(&solved, &h, workings);
        assert_int_equal(solved.status, TS_OK);
        assert_true(ts_workings_complete(workings));
        for (size_t i = 0; i < ts_workings_count(workings); i++) {
            const ts_note *note = ts_workings_at(workings, i);

            if (note->kind == TS_NOTE_STEP || note->kind == TS_NOTE_SEARCHED)
                check_step(workings, i);
            if (note->kind == TS_NOTE_GIVEN)
                assert_true(note->node > 0);
            if (note->kind == TS_NOTE_ASSUMED)
                assert_true(strlen(note->source) > 10);
        }
        solved_close(&solved);
    }
}

/* The number that a finding or a picture shows is the last one of that name. */
static double shown(const ts_workings *workings, ts_node object, int32_t condition,
                    const char *symbol)
{
    const size_t index = ts_workings_find(workings, (ts_subject){object, condition}, symbol);

    if (index == SIZE_MAX)
        fail_msg("nothing is called %s", symbol);
    return ts_workings_at(workings, index)->value;
}

static void results_stand_under_their_symbols(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 2);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);
    const uint32_t pad   = hand_accessory(&h, wheel, TS_REAR);
    const ts_node  node = h.shafts[wheel].node, box = h.meshes[1].node;

    hand_absorbs(&h, pad, 0, 10e3);
    hand_drives(&h, pad, 1, 50.0);
    solved_open(&solved, &h);
    ts_workings *workings = ts_workings_open(solved.arena);

    solved_solve(&solved, &h, workings);
    const ts_shaft_motion *shaft = &solved.motion.shafts[wheel];
    const ts_mesh_load    *load  = &solved.power.mesh[h.shafts[wheel].mesh];
    const ts_mesh_load    *bevel = &solved.power.mesh[1];

    assert_same_double(shown(workings, node, TS_EVERY_CONDITION, "ratio"),
                       ts_rational_value(shaft->ratio));
    assert_same_double(shown(workings, node, TS_EVERY_CONDITION, "sense"), shaft->sense);
    assert_same_double(shown(workings, node, TS_EVERY_CONDITION, "X"), shaft->x);
    assert_same_double(shown(workings, node, TS_EVERY_CONDITION, "phi"), shaft->clock);
    assert_same_double(shown(workings, node, TS_EVERY_CONDITION, "a_w"),
                       solved.motion.meshes[2].a_w);
    assert_same_double(shown(workings, node, 0, "n"), solved.motion.speed[wheel]);
    assert_same_double(shown(workings, node, 0, "v"), solved.motion.velocity[2]);
    assert_same_double(shown(workings, node, 0, "f_z"), solved.motion.frequency[2]);
    assert_same_double(shown(workings, node, 0, "T"), load->T[1]);
    assert_same_double(shown(workings, node, 0, "T_1"), load->T[0]);
    assert_same_double(shown(workings, node, 0, "F_t"), load->F_t);
    assert_same_double(shown(workings, node, 0, "F_r1"), load->F_r[0]);
    assert_same_double(shown(workings, node, 0, "F_x"), load->force[0]);
    assert_same_double(shown(workings, node, 0, "P_loss"), load->loss);
    assert_same_double(shown(workings, box, 0, "F_a1"), bevel->F_a[0]);
    assert_same_double(shown(workings, box, 0, "F_a2"), bevel->F_a[1]);
    assert_same_double(shown(workings, box, 0, "F_z"), bevel->force[2]);
    assert_same_double(shown(workings, h.pads[pad].node, 0, "T"), solved.power.pad[0].T);
    assert_same_double(shown(workings, h.pads[pad].node, 1, "P"), solved.power.pad[1].P);
    assert_same_double(shown(workings, h.spools[0].node, 0, "P"), solved.power.spool[0].P);
    assert_same_double(shown(workings, h.spools[0].node, 1, "P_driving"),
                       solved.power.spool[1].P_driving);
    assert_same_double(shown(workings, h.spools[0].node, 1, "P_lost"),
                       solved.power.spool[1].P_lost);
    assert_same_double(shown(workings, h.spools[0].node, 1, "imbalance"),
                       solved.power.spool[1].imbalance);
    solved_close(&solved);
}

/* Two pads that ask for the same keep each their own origin. */
static void equal_demands_keep_their_own_origin(void **state)
{
    (void)state;
    const uint32_t input   = hand_usual(&h, 1);
    const uint32_t pads[2] = {hand_accessory(&h, input, TS_FRONT),
                              hand_accessory(&h, input, TS_REAR)};

    hand_absorbs(&h, pads[0], 0, 5e3);
    hand_absorbs(&h, pads[1], 0, 5e3);
    solved_open(&solved, &h);
    ts_workings *workings = ts_workings_open(solved.arena);

    solved_solve(&solved, &h, workings);
    const ts_subject subjects[2] = {{h.shafts[input].node, 0}, {h.spools[0].node, 0}};
    const char      *symbols[2]  = {"T", "P_pads"};

    for (int i = 0; i < 2; i++) {
        const size_t   index = ts_workings_find(workings, subjects[i], symbols[i]);
        const ts_note *sum   = ts_workings_at(workings, index);

        assert_int_equal(sum->input_count, 2);
        for (uint32_t k = 0; k < 2; k++) {
            const size_t origin =
                ts_origin(workings, index, sum->inputs[k].name, sum->inputs[k].value);

            assert_int_equal(ts_workings_at(workings, origin)->subject.object,
                             h.pads[pads[k]].node);
        }
    }
    solved_close(&solved);
}

static void assert_same_bytes(const void *a, const void *b, size_t size)
{
    assert_memory_equal(a, b, size);
}

static void workings_change_no_bit(void **state)
{
    (void)state;
    solved_train silent;

    for (uint64_t seed = 1; seed <= 25; seed++) {
        random_train(&h, seed, 12);
        solved_usual(&silent, &h);
        solved_open(&solved, &h);
        solved_solve(&solved, &h, ts_workings_open(solved.arena));
        const size_t c = solved.motion.condition_count, s = h.train.shaft_count;
        const size_t m = h.train.mesh_count, p = h.train.pad_count;

        for (size_t i = 0; i < s; i++) {
            const ts_shaft_motion *a = &silent.motion.shafts[i], *b = &solved.motion.shafts[i];

            assert_same_bytes(&a->x, &b->x, sizeof a->x);
            assert_same_bytes(&a->y, &b->y, sizeof a->y);
            assert_same_bytes(&a->clock, &b->clock, sizeof a->clock);
        }
        for (size_t i = 0; i < c * m; i++) {
            const ts_mesh_load *a = &silent.power.mesh[i], *b = &solved.power.mesh[i];

            assert_same_bytes(a->T, b->T, sizeof a->T);
            assert_same_bytes(a->P, b->P, sizeof a->P);
            assert_same_bytes(&a->F_t, &b->F_t, sizeof a->F_t);
            assert_same_bytes(a->F_a, b->F_a, sizeof a->F_a);
            assert_same_bytes(a->F_r, b->F_r, sizeof a->F_r);
            assert_same_bytes(a->force, b->force, sizeof a->force);
        }
        assert_same_bytes(silent.motion.speed, solved.motion.speed, c * s * sizeof(double));
        assert_same_bytes(silent.motion.velocity, solved.motion.velocity, c * m * sizeof(double));
        assert_same_bytes(silent.power.T, solved.power.T, c * s * sizeof(double));
        for (size_t i = 0; i < c * p; i++)
            assert_same_bytes(&silent.power.pad[i].T, &solved.power.pad[i].T, sizeof(double));
        solved_close(&silent);
        solved_close(&solved);
    }
}

static void silent_solve_asks_for_no_memory(void **state)
{
    (void)state;
    random_train(&h, 5, 30);
    solved_open(&solved, &h);
    const size_t before = ts_arena_calls(solved.arena);

    for (int i = 0; i < 10; i++) {
        assert_int_equal(ts_motion_solve(&h.drive, &solved.motion, solved.list, NULL), TS_OK);
        assert_int_equal(ts_power_solve(&h.drive, &solved.power, NULL), TS_OK);
    }
    assert_int_equal(ts_arena_calls(solved.arena), before);
    solved_close(&solved);
}

static void missing_memory_is_said(void **state)
{
    (void)state;
    faulty_allocator faulty;
    bool             failed = true;

    uint32_t shaft = hand_usual(&h, HAND_CONDITIONS);

    for (int i = 0; i < 60; i++) /* more than one block of an arena */
        shaft = hand_shaft(&h, shaft, 40, TS_WAY_CLOCKWISE);
    for (size_t n = 1; failed; n++) {
        const ts_allocator allocator = faulty_allocator_open(&faulty, n, FAULTY_ONCE);
        ts_arena          *arena     = ts_arena_open(&allocator);
        ts_motion          motion;
        ts_power           power;

        if (arena != NULL) {
            ts_status status = ts_motion_prepare(&h.drive, &h.train, arena, &motion);

            if (status == TS_OK)
                status = ts_power_prepare(&h.drive, &motion, arena, &power);
            assert_int_equal(status, ts_arena_failed(arena) ? TS_NO_MEMORY : TS_OK);
            ts_arena_close(arena);
        }
        failed = faulty.failed;
        assert_int_equal(faulty.live_blocks, 0);
        assert_true(n < 100);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_input_of_every_step_has_an_origin),
        cmocka_unit_test(results_stand_under_their_symbols),
        cmocka_unit_test(equal_demands_keep_their_own_origin),
        cmocka_unit_test(workings_change_no_bit),
        cmocka_unit_test(silent_solve_asks_for_no_memory),
        cmocka_unit_test(missing_memory_is_said),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
