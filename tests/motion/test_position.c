/* Where does every axis stand? */
#include "support/close.h"
#include "support/random_train.h"
#include "support/solved_train.h"

#include <string.h>

static hand_train   h;
static solved_train solved;

static const double pi = 3.14159265358979323846;

static double between(const ts_shaft_motion *a, const ts_shaft_motion *b)
{
    return hypot(a->x - b->x, a->y - b->y);
}

static void input_stands_at_its_clock_on_the_arc(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);

    /* 9:00 seen from behind is to the left: x < 0. */
    h.drives[0].box.arc.clock.value = 1.5 * pi;
    solved_usual(&solved, &h);
    assert_true(solved.motion.shafts[input].placed);
    assert_close(solved.motion.shafts[input].x, -0.33, 1e-15);
    assert_close_abs(solved.motion.shafts[input].y, 0.0, 1e-15);
    assert_same_double(solved.motion.shafts[input].radius, 0.33);
    solved_close(&solved);
}

static void clockwise_from_six_goes_to_the_left_seen_from_behind(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t left  = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);
    const uint32_t right = hand_shaft(&h, input, 61, TS_WAY_ANTICLOCKWISE);

    solved_usual(&solved, &h);
    const ts_shaft_motion *s = solved.motion.shafts;

    assert_true(s[left].x < 0.0);
    assert_true(s[right].x > 0.0);
    assert_close(s[left].clock - s[input].clock, s[input].clock - s[right].clock, 1e-14);
    /* derived: chord of the arc, 113 teeth of 2 mm: a_w = 113 mm, step 2*asin(a_w/(2 R)) */
    assert_close(s[left].clock - pi, 2.0 * asin(0.113 / 0.66), 1e-13);
    solved_close(&solved);
}

static void profile_shift_moves_the_axes_apart(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);

    hand_shift(&h, wheel, 0.5);
    solved_usual(&solved, &h);
    const double a_w = solved.motion.meshes[h.shafts[wheel].mesh].a_w;

    assert_true(a_w > 0.113 && a_w < 0.114);
    assert_close(between(&solved.motion.shafts[input], &solved.motion.shafts[wheel]), a_w, 1e-13);
    solved_close(&solved);
}

static void toward_lays_the_centre_distance_off_from_the_driver(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t side  = hand_shaft(&h, input, 48, TS_WAY_CLOCKWISE);

    hand_shaft_toward(&h, side, 0.5 * pi); /* 3:00: to the right */
    solved_usual(&solved, &h);
    assert_close(solved.motion.shafts[side].x, 0.1, 1e-13);
    assert_close(solved.motion.shafts[side].y, -0.33, 1e-13);
    solved_close(&solved);
}

static void chain_returns_to_the_arc_further_along(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t off   = hand_shaft(&h, input, 48, TS_WAY_ANTICLOCKWISE);
    const uint32_t back  = hand_shaft(&h, off, 60, TS_WAY_ANTICLOCKWISE);

    hand_shaft_toward(&h, off, 0.8 * pi);
    solved_usual(&solved, &h);
    const ts_shaft_motion *s = solved.motion.shafts;

    assert_true(s[off].radius > 0.33);
    assert_close(hypot(s[back].x, s[back].y), 0.33, 1e-14);
    assert_close(between(&s[off], &s[back]), solved.motion.meshes[h.shafts[back].mesh].a_w, 1e-13);
    assert_true(s[back].clock < s[off].clock);
    solved_close(&solved);
}

static void axis_out_of_reach_is_left_out_with_a_reason(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t off   = hand_shaft(&h, input, 48, TS_WAY_CLOCKWISE);
    const uint32_t never = hand_shaft(&h, off, 17, TS_WAY_CLOCKWISE);
    const uint32_t after = hand_shaft(&h, never, 30, TS_WAY_CLOCKWISE);

    hand_shaft_toward(&h, off, pi); /* straight down, 100 mm off the arc; 65 mm do not lead back */
    solved_usual(&solved, &h);
    assert_true(solved.motion.shafts[off].placed);
    assert_false(solved.motion.shafts[never].placed);
    assert_string_equal(solved.motion.shafts[never].fault,
                        "the arc is out of reach of the centre distance");
    assert_false(solved.motion.shafts[after].placed);
    assert_string_equal(solved.motion.shafts[after].fault, "its driver has no position");
    assert_nan(solved.motion.shafts[never].x);
    assert_nan(solved.motion.meshes[h.shafts[never].mesh].tau[0]);
    /* What needs no position is computed all the same. */
    assert_true(solved.motion.speed[after] > 0.0);
    solved_close(&solved);
}

static void clocks_count_on_past_twelve(void **state)
{
    (void)state;
    uint32_t     shaft = hand_usual(&h, 1);
    const double R     = 0.33;

    h.drives[0].box.arc.clock.value = 1.9 * pi;
    const uint32_t input            = shaft;
    double         steps            = 0.0;

    for (int i = 0; i < 6; i++) {
        shaft = hand_shaft(&h, shaft, 52, TS_WAY_CLOCKWISE);
        steps += 2.0 * asin(0.104 / (2.0 * R));
    }
    solved_usual(&solved, &h);
    assert_true(solved.motion.shafts[shaft].clock > 2.0 * pi);
    assert_close(solved.motion.shafts[shaft].clock - solved.motion.shafts[input].clock, steps,
                 1e-12);
    solved_close(&solved);
}

static void radial_shaft_without_a_length_has_no_end_but_a_clock(void **state)
{
    (void)state;
    hand_usual(&h, 1);
    h.drives[0].tower_shaft.length = (ts_measure){(double)NAN, 50, TS_UNKNOWN};
    solved_usual(&solved, &h);
    assert_false(solved.motion.shafts[1].placed);
    assert_same_double(solved.motion.shafts[1].clock, pi);
    assert_close(solved.motion.meshes[0].e[1], -1.0, 1e-15);
    solved_close(&solved);
}

static void gears_of_different_modules_do_not_mesh(void **state)
{
    (void)state;
    const uint32_t input   = hand_usual(&h, 1);
    const uint32_t cluster = hand_shaft(&h, input, 40, TS_WAY_CLOCKWISE);

    hand_step(&h, cluster, 27, 0.0025);
    const uint32_t wrong = hand_shaft(&h, cluster, 29, TS_WAY_CLOCKWISE);

    solved_usual(&solved, &h);
    const ts_mesh_motion *mesh = &solved.motion.meshes[h.shafts[wrong].mesh];

    assert_false(mesh->solved);
    assert_string_equal(mesh->fault, "the two gears have different modules");
    assert_nan(mesh->a_w);
    assert_nan(mesh->pair.eps_alpha);
    assert_false(solved.motion.shafts[wrong].placed);
    solved_close(&solved);
}

static void unknown_face_leaves_only_the_overlap_open(void **state)
{
    (void)state;
    const uint32_t   input = hand_usual(&h, 1);
    const hand_teeth teeth = {0.002, 25.0 * pi / 180.0, 0.3, 0.005, 1};

    hand_box_teeth(&h, input, &teeth);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);

    h.gears[h.main_gear[wheel]].face = (ts_measure){(double)NAN, 50, TS_UNKNOWN};
    solved_usual(&solved, &h);
    const ts_mesh_motion *mesh = &solved.motion.meshes[h.shafts[wheel].mesh];

    assert_true(mesh->solved);
    assert_true(mesh->pair.eps_alpha > 1.0);
    assert_nan(mesh->pair.eps_beta);
    assert_nan(mesh->pair.eps_gamma);
    solved_close(&solved);
}

static void assumed_root_fillet_gives_way_to_a_large_pressure_angle(void **state)
{
    (void)state;
    const uint32_t   input = hand_usual(&h, 1);
    ts_tooth_system *teeth = &h.drives[0].box.gears;

    teeth->root_radius = (ts_measure){0.38, 50, TS_ASSUMED};
    hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);
    solved_usual(&solved, &h);
    assert_true(solved.motion.meshes[2].solved);
    assert_true(solved.motion.meshes[2].pair.in.rack.rho_fPs < 0.33);
    solved_close(&solved);

    teeth->root_radius.standing = TS_GIVEN;
    solved_usual(&solved, &h);
    assert_false(solved.motion.meshes[2].solved);
    solved_close(&solved);
}

static void hunting_facts_follow_the_common_factor(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);

    hand_shaft(&h, input, 40, TS_WAY_CLOCKWISE); /* gcd(52, 40) = 4 */
    solved_usual(&solved, &h);
    assert_int_equal(solved.motion.meshes[2].gcd, 4);
    assert_false(solved.motion.meshes[2].hunting.hunts);
    assert_int_equal(solved.motion.meshes[2].hunting.turns_1, 10);
    assert_int_equal(solved.motion.meshes[2].hunting.turns_2, 13);
    solved_close(&solved);
}

/* ---- any train ------------------------------------------------------------------------------- */

static void axes_in_mesh_stand_the_centre_distance_apart(void **state)
{
    (void)state;
    int placed = 0;

    for (uint64_t seed = 1; seed <= 300; seed++) {
        random_train(&h, seed, 30);
        solved_usual(&solved, &h);
        for (uint32_t m = 0; m < h.train.mesh_count; m++) {
            const ts_mesh         *mesh   = &h.meshes[m];
            const ts_mesh_motion  *motion = &solved.motion.meshes[m];
            const ts_shaft_motion *a      = &solved.motion.shafts[mesh->driver_shaft];
            const ts_shaft_motion *b      = &solved.motion.shafts[mesh->driven_shaft];

            if (mesh->kind != TS_MESH_CYLINDRICAL || !a->placed || !b->placed)
                continue;
            placed++;
            assert_close(between(a, b), motion->a_w, 1e-11);
            assert_close(hypot(motion->e[0], motion->e[1]), 1.0, 1e-11);
            assert_close_abs(motion->e[0] * motion->tau[0] + motion->e[1] * motion->tau[1], 0.0,
                             1e-15);
            assert_close_abs(remainder(b->clock - atan2(b->x, b->y), 2.0 * pi), 0.0, 1e-12);
        }
        solved_close(&solved);
    }
    assert_true(placed > 2000); /* most of them are */
}

/* The mirror image of a drive: every clock, sense and way turns round; hands change. */
static void mirror(hand_train *m)
{
    for (size_t s = 0; s < m->drive.spool_count; s++)
        m->spools[s].turns.value = m->spools[s].turns.value == TS_CW ? TS_CCW : TS_CW;
    for (size_t d = 0; d < m->drive.drive_count; d++) {
        m->drives[d].tower_shaft.clock.value *= -1.0;
        m->drives[d].box.arc.clock.value *= -1.0;
    }
    for (size_t b = 0; b < m->bevel_count; b++)
        m->bevels[b].hand.value = 1 - m->bevels[b].hand.value;
    for (uint32_t g = 0; g < m->train.gear_count; g++)
        m->gears[g].hand = -m->gears[g].hand;
    for (uint32_t s = 0; s < m->train.shaft_count; s++) {
        if (m->shafts[s].way != TS_WAY_NONE)
            m->shafts[s].way =
                m->shafts[s].way == TS_WAY_CLOCKWISE ? TS_WAY_ANTICLOCKWISE : TS_WAY_CLOCKWISE;
        m->records[s].toward.value *= -1.0;
    }
}

static void mirrored_drive_has_the_mirrored_motion(void **state)
{
    (void)state;
    solved_train right;

    for (uint64_t seed = 1; seed <= 100; seed++) {
        random_train(&h, seed, 20);
        solved_usual(&right, &h);
        mirror(&h);
        solved_usual(&solved, &h);
        for (uint32_t s = 0; s < h.train.shaft_count; s++) {
            const ts_shaft_motion *a = &right.motion.shafts[s], *b = &solved.motion.shafts[s];

            assert_int_equal(b->sense, -a->sense);
            assert_int_equal(b->placed, a->placed);
            assert_true(ts_rational_equal(b->ratio, a->ratio));
            if (!a->placed)
                continue;
            assert_close_abs(b->x, -a->x, 1e-12);
            assert_close_abs(b->y, a->y, 1e-12);
            assert_close_abs(b->clock, -a->clock, 1e-12);
        }
        for (uint32_t i = 0; i < right.motion.condition_count * h.train.mesh_count; i++) {
            const ts_mesh_load *a = &right.power.mesh[i], *b = &solved.power.mesh[i];
            const double        tiny = 1e-11 * a->F_t + 1e-300;

            assert_int_equal(b->flow, a->flow);
            assert_int_equal(b->flank[0], a->flank[0]);
            if (isnan(a->force[0])) {
                assert_nan(b->force[0]);
                continue;
            }
            assert_close_abs(b->force[0], -a->force[0], tiny);
            assert_close_abs(b->force[1], a->force[1], tiny);
            assert_close_abs(b->force[2], a->force[2], tiny);
        }
        solved_close(&right);
        solved_close(&solved);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(input_stands_at_its_clock_on_the_arc),
        cmocka_unit_test(clockwise_from_six_goes_to_the_left_seen_from_behind),
        cmocka_unit_test(profile_shift_moves_the_axes_apart),
        cmocka_unit_test(toward_lays_the_centre_distance_off_from_the_driver),
        cmocka_unit_test(chain_returns_to_the_arc_further_along),
        cmocka_unit_test(axis_out_of_reach_is_left_out_with_a_reason),
        cmocka_unit_test(clocks_count_on_past_twelve),
        cmocka_unit_test(radial_shaft_without_a_length_has_no_end_but_a_clock),
        cmocka_unit_test(gears_of_different_modules_do_not_mesh),
        cmocka_unit_test(unknown_face_leaves_only_the_overlap_open),
        cmocka_unit_test(assumed_root_fillet_gives_way_to_a_large_pressure_angle),
        cmocka_unit_test(hunting_facts_follow_the_common_factor),
        cmocka_unit_test(axes_in_mesh_stand_the_centre_distance_apart),
        cmocka_unit_test(mirrored_drive_has_the_mirrored_motion),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
