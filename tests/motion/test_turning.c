/* In what ratio and which way does every shaft turn? */
#include "support/close.h"
#include "support/random_train.h"
#include "support/solved_train.h"

#include <string.h>

static hand_train   h;
static solved_train solved;

static const double pi = 3.14159265358979323846;

/* ---- ratios ---------------------------------------------------------------------------------- */

static void ratio_is_the_exact_product_of_teeth(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);
    const uint32_t idler = hand_shaft(&h, wheel, 45, TS_WAY_CLOCKWISE);

    solved_usual(&solved, &h);
    /* derived: 43/46 * 37/41 = 1591/1886, * 52/61 = 41366/57523, * 61/45 = 41366/42435 */
    const ts_rational expected[] = {{1591, 1886}, {41366, 57523}, {41366, 42435}};
    const uint32_t    shafts[]   = {input, wheel, idler};

    for (int i = 0; i < 3; i++)
        assert_true(ts_rational_equal(solved.motion.shafts[shafts[i]].ratio, expected[i]));
    solved_close(&solved);
}

static void idler_leaves_the_ratio_of_its_neighbours(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t last =
        hand_shaft(&h, hand_shaft(&h, input, 37, TS_WAY_CLOCKWISE), 83, TS_WAY_CLOCKWISE);

    solved_usual(&solved, &h);
    assert_true(ts_rational_equal(
        solved.motion.shafts[last].ratio,
        ts_rational_times(solved.motion.shafts[input].ratio, ts_rational_of(52, 83))));
    solved_close(&solved);
}

static void step_gear_drives_what_comes_next(void **state)
{
    (void)state;
    const uint32_t input   = hand_usual(&h, 1);
    const uint32_t cluster = hand_shaft(&h, input, 40, TS_WAY_ANTICLOCKWISE);

    hand_step(&h, cluster, 27, 0.002);
    const uint32_t fast = hand_shaft(&h, cluster, 29, TS_WAY_ANTICLOCKWISE);

    solved_usual(&solved, &h);
    assert_true(ts_rational_equal(
        solved.motion.shafts[fast].ratio,
        ts_rational_times(solved.motion.shafts[cluster].ratio, ts_rational_of(27, 29))));
    solved_close(&solved);
}

static void ratio_that_overflows_is_said_once(void **state)
{
    (void)state;
    static const int primes[] = {101, 103, 107, 109, 113, 127, 131, 137, 139, 149,
                                 151, 157, 163, 167, 173, 179, 181, 191, 193, 197};
    uint32_t         shaft    = hand_usual(&h, 1);

    /* Every shaft has its own gear and a step, so that nothing cancels. */
    for (size_t i = 0; i + 1 < sizeof primes / sizeof primes[0]; i += 2) {
        shaft = hand_shaft(&h, shaft, primes[i], TS_WAY_CLOCKWISE);
        hand_step(&h, shaft, primes[i + 1], 0.002);
    }
    solved_open(&solved, &h);
    solved_solve(&solved, &h, NULL);
    assert_int_equal(solved.status, TS_NOT_UNDERSTOOD);
    assert_int_equal(ts_diagnostics_count(solved.list), 1);
    assert_string_equal(ts_diagnostics_at(solved.list, 0)->code, "ratio-overflow");
    assert_false(ts_rational_valid(solved.motion.shafts[shaft].ratio));
    assert_nan(solved.motion.speed[shaft]);
    solved_close(&solved);
}

/* ---- senses ---------------------------------------------------------------------------------- */

static void each_external_mesh_reverses(void **state)
{
    (void)state;
    uint32_t shaft = hand_usual(&h, 1);

    for (int i = 0; i < 6; i++)
        shaft = hand_shaft(&h, shaft, 30 + i, TS_WAY_CLOCKWISE);
    solved_usual(&solved, &h);
    for (uint32_t s = shaft; s > shaft - 6; s--)
        assert_int_equal(solved.motion.shafts[s].sense, -solved.motion.shafts[s - 1].sense);
    solved_close(&solved);
}

static void idler_restores_the_sense(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t last =
        hand_shaft(&h, hand_shaft(&h, input, 37, TS_WAY_CLOCKWISE), 83, TS_WAY_CLOCKWISE);

    solved_usual(&solved, &h);
    assert_int_equal(solved.motion.shafts[last].sense, solved.motion.shafts[input].sense);
    solved_close(&solved);
}

typedef struct vector {
    double x, y, z;
} vector;

static vector combine(double a, vector u, double b, vector v)
{
    return (vector){a * u.x + b * v.x, a * u.y + b * v.y, a * u.z + b * v.z};
}

static vector cross(vector u, vector v)
{
    return (vector){u.y * v.z - u.z * v.y, u.z * v.x - u.x * v.z, u.x * v.y - u.y * v.x};
}

static void assert_same_velocity(vector u, vector v)
{
    const double size = sqrt(u.x * u.x + u.y * u.y + u.z * u.z);

    assert_true(size > 0.0);
    assert_close_abs(v.x, u.x, 1e-12 * size);
    assert_close_abs(v.y, u.y, 1e-12 * size);
    assert_close_abs(v.z, u.z, 1e-12 * size);
}

/* derived: from the two axes alone, the way each gear lies from where they cross, and the pitch
 * line between them, both gears must move alike at the point of mesh. */
static void check_bevel_sense(double phi, double Sigma, ts_face_side s_1, ts_turn turns)
{
    const hand_bevels take_off = {.teeth = {43, 46}, .shaft_angle = Sigma, .side = s_1};
    /* The same straight radial shaft meets the box at the angle that closes the figure. */
    const ts_face_side s_2[2] = {TS_FRONT, TS_REAR};

    for (int i = 0; i < 2; i++) {
        const double      close = s_1 == s_2[i] ? pi - Sigma : Sigma;
        const hand_bevels box   = {.teeth = {37, 41}, .shaft_angle = close, .side = s_2[i]};

        hand_open(&h, 1);
        const uint32_t spool = hand_spool(&h, "hp spool", turns, 1500.0);
        const uint32_t tower = hand_tower(&h, spool, &take_off, phi);
        const uint32_t input = hand_input(&h, tower, &box, 0.33, 52);

        solved_usual(&solved, &h);
        const double  *speed     = solved.motion.speed;
        const vector   z         = {0.0, 0.0, 1.0};
        const vector   u         = {sin(phi), cos(phi), 0.0};
        const double   side      = s_1 == TS_REAR ? 1.0 : -1.0;
        const vector   axis      = combine(sin(Sigma), u, side * cos(Sigma), z); /* of the tower */
        const uint32_t shafts[3] = {spool, tower, input};
        const vector   axes[3]   = {z, axis, z};

        for (int m = 0; m < 2; m++) {
            const ts_mesh_motion *mesh = &solved.motion.meshes[m];
            const vector back  = m == 0 ? combine(side, z, 0.0, z) : combine(-1.0, axis, 0.0, z);
            const double angle = mesh->bevel.in.Sigma;
            const vector other = m == 0 ? axis : combine(s_2[i] == TS_REAR ? 1.0 : -1.0, z, 0.0, z);
            const vector across = combine(1.0 / sin(angle), other, -1.0 / tan(angle), back);
            const vector point  = combine(mesh->bevel.R_m * cos(mesh->bevel.delta_1), back,
                                          mesh->bevel.R_m * sin(mesh->bevel.delta_1), across);
            vector       v[2];

            for (int g = 0; g < 2; g++) {
                const uint32_t s = shafts[m + g];
                const double   w = speed[s] * solved.motion.shafts[s].sense;

                v[g] = cross(combine(w, axes[m + g], 0.0, z), point);
            }
            assert_same_velocity(v[0], v[1]);
            assert_close(sqrt(v[0].x * v[0].x + v[0].y * v[0].y + v[0].z * v[0].z),
                         solved.motion.velocity[m], 1e-12);
        }
        solved_close(&solved);
    }
}

static void bevels_move_alike_at_the_point_of_mesh(void **state)
{
    (void)state;
    for (int clock = 0; clock < 12; clock++)
        for (int side = TS_FRONT; side <= TS_REAR; side++)
            for (int turns = TS_CW; turns <= TS_CCW; turns++)
                for (int tilt = -1; tilt <= 1; tilt++)
                    check_bevel_sense(clock * pi / 6.0, pi / 2.0 + 0.2 * tilt, (ts_face_side)side,
                                      (ts_turn)turns);
}

static void equal_sides_reverse_the_box_input_and_opposite_sides_keep_it(void **state)
{
    (void)state;
    for (int sides = 0; sides < 4; sides++) {
        const hand_bevels take_off = {.teeth = {43, 46}, .side = (ts_face_side)(sides / 2)};
        const hand_bevels box      = {.teeth = {37, 41}, .side = (ts_face_side)(sides % 2)};

        hand_open(&h, 1);
        const uint32_t spool = hand_spool(&h, "hp spool", TS_CCW, 1500.0);
        const uint32_t tower = hand_tower(&h, spool, &take_off, pi);
        const uint32_t input = hand_input(&h, tower, &box, 0.33, 52);

        solved_usual(&solved, &h);
        assert_int_equal(solved.motion.shafts[spool].sense, 1);
        assert_int_equal(solved.motion.shafts[input].sense, sides / 2 == sides % 2 ? -1 : 1);
        solved_close(&solved);
    }
}

/* From memory, common practice: somebody who walks round to the other side of a shaft sees it turn
 * the other way. */
static void front_and_rear_pads_of_a_shaft_are_seen_to_turn_opposite_ways(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t front = hand_accessory(&h, input, TS_FRONT);
    const uint32_t rear  = hand_accessory(&h, input, TS_REAR);

    solved_usual(&solved, &h);
    /* ccw spool, equal sides: the input turns cw seen from behind, and who faces a rear pad looks
     * forward, as from behind. */
    assert_int_equal(ts_pad_sense(&solved.motion, &h.pads[rear]), -1);
    assert_int_equal(ts_pad_sense(&solved.motion, &h.pads[front]), 1);
    solved_close(&solved);
}

/* ---- statements ------------------------------------------------------------------------------ */

static void statement_that_agrees_is_accepted(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);

    h.records[input].turns        = (ts_pick){TS_CW, 900, TS_GIVEN};
    h.drives[0].tower_shaft.turns = (ts_pick){TS_CW, 901, TS_GIVEN};
    solved_usual(&solved, &h);
    solved_close(&solved);
}

static void contradicted_statement_names_the_chain(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);
    const uint32_t wheel = hand_shaft(&h, input, 61, TS_WAY_CLOCKWISE);

    h.shafts[wheel].name   = "fuel pump";
    h.records[wheel].turns = (ts_pick){TS_CW, 900, TS_GIVEN};
    solved_open(&solved, &h);
    solved_solve(&solved, &h, NULL);
    assert_int_equal(solved.status, TS_NOT_UNDERSTOOD);
    assert_int_equal(ts_diagnostics_count(solved.list), 1);
    const ts_diagnostic *said = ts_diagnostics_at(solved.list, 0);

    assert_string_equal(said->code, "contradictory-senses");
    assert_string_equal(said->expected, "ccw");
    assert_string_equal(said->says, "fuel pump is said to turn cw, but the train turns it ccw: "
                                    "hp spool ccw, tower cw, box input cw, fuel pump ccw");
    solved_close(&solved);
}

static void contradiction_is_told_in_the_sight_of_the_file(void **state)
{
    (void)state;
    const uint32_t input = hand_usual(&h, 1);

    h.drive.sight.value = TS_FROM_FRONT;
    h.records[input].turns =
        (ts_pick){TS_CCW, 900, TS_GIVEN}; /* from behind, as the model has it */
    solved_open(&solved, &h);
    solved_solve(&solved, &h, NULL);
    assert_int_equal(ts_diagnostics_count(solved.list), 1);
    assert_string_equal(ts_diagnostics_at(solved.list, 0)->says,
                        "box input is said to turn cw, but the train turns it ccw: "
                        "hp spool cw, tower cw, box input ccw");
    solved_close(&solved);
}

static void long_chain_is_told_from_its_near_end(void **state)
{
    (void)state;
    uint32_t shaft = hand_usual(&h, 1);

    for (int i = 0; i < 40; i++)
        shaft = hand_shaft(&h, shaft, 30 + i % 7, TS_WAY_CLOCKWISE);
    h.records[shaft].turns = (ts_pick){TS_CCW, 900, TS_GIVEN};
    solved_open(&solved, &h);
    solved_solve(&solved, &h, NULL);
    const char *says = ts_diagnostics_at(solved.list, 0)->says;

    assert_non_null(strstr(says, ": ..., shaft ccw, shaft cw"));
    assert_true(strlen(says) < 400);
    solved_close(&solved);
}

/* ---- any train ------------------------------------------------------------------------------- */

static void sense_follows_the_number_of_meshes(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 300; seed++) {
        random_train(&h, seed, 30);
        solved_usual(&solved, &h);
        for (uint32_t s = 0; s < h.train.shaft_count; s++) {
            int      meshes = 0;
            uint32_t at     = s;

            if (h.shafts[s].kind != TS_SHAFT_BOX)
                continue;
            while (h.meshes[h.shafts[at].mesh].kind == TS_MESH_CYLINDRICAL) {
                at = h.meshes[h.shafts[at].mesh].driver_shaft;
                meshes++;
            }
            assert_int_equal(solved.motion.shafts[s].sense,
                             solved.motion.shafts[at].sense * (meshes % 2 == 0 ? 1 : -1));
        }
        solved_close(&solved);
    }
}

static void speeds_are_alike_at_every_point_of_mesh(void **state)
{
    (void)state;
    for (uint64_t seed = 1; seed <= 300; seed++) {
        random_train(&h, seed, 30);
        solved_usual(&solved, &h);
        const ts_motion *motion = &solved.motion;

        for (uint32_t c = 0; c < motion->condition_count; c++)
            for (uint32_t m = 0; m < h.train.mesh_count; m++) {
                const ts_mesh *mesh = &h.meshes[m];
                const double  *n    = &motion->speed[c * h.train.shaft_count];
                const double   v_1  = n[mesh->driver_shaft] * motion->meshes[m].r_1;
                const double   v_2  = n[mesh->driven_shaft] * motion->meshes[m].r_2;
                const double   f_2 =
                    n[mesh->driven_shaft] * (double)h.gears[mesh->driven].teeth.value / (2.0 * pi);

                assert_close(v_2, v_1, 1e-13);
                assert_same_double(motion->velocity[c * h.train.mesh_count + m], v_1);
                assert_close(f_2, motion->frequency[c * h.train.mesh_count + m], 1e-13);
            }
        solved_close(&solved);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ratio_is_the_exact_product_of_teeth),
        cmocka_unit_test(idler_leaves_the_ratio_of_its_neighbours),
        cmocka_unit_test(step_gear_drives_what_comes_next),
        cmocka_unit_test(ratio_that_overflows_is_said_once),
        cmocka_unit_test(each_external_mesh_reverses),
        cmocka_unit_test(idler_restores_the_sense),
        cmocka_unit_test(bevels_move_alike_at_the_point_of_mesh),
        cmocka_unit_test(equal_sides_reverse_the_box_input_and_opposite_sides_keep_it),
        cmocka_unit_test(front_and_rear_pads_of_a_shaft_are_seen_to_turn_opposite_ways),
        cmocka_unit_test(statement_that_agrees_is_accepted),
        cmocka_unit_test(contradicted_statement_names_the_chain),
        cmocka_unit_test(contradiction_is_told_in_the_sight_of_the_file),
        cmocka_unit_test(long_chain_is_told_from_its_near_end),
        cmocka_unit_test(sense_follows_the_number_of_meshes),
        cmocka_unit_test(speeds_are_alike_at_every_point_of_mesh),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
