/* Two gears as they are drawn in mesh: their loaded flanks touch on the line of action and nowhere
 * cut into each other. */
#include "draw/teeth_view.h"
#include "support/case_count.h"
#include "support/close.h"

static const double degree = M_PI / 180.0;

/* Pairs of all kinds that a box may hold, and a stubby and a deep one; all invented. */
static const ts_cylindrical_pair_input pairs[] = {
    {.z_1 = 33, .z_2 = 71, .m_n = 2.5e-3, .alpha_n = 25.0 * M_PI / 180.0},
    {.z_1 = 17, .z_2 = 19, .m_n = 3e-3, .alpha_n = 20.0 * M_PI / 180.0, .x_1 = 0.3, .x_2 = 0.25},
    {.z_1 = 90, .z_2 = 21, .m_n = 1.5e-3, .alpha_n = 22.5 * M_PI / 180.0, .x_2 = 0.2},
    {.z_1     = 24,
     .z_2     = 53,
     .m_n     = 2e-3,
     .alpha_n = 20.0 * M_PI / 180.0,
     .beta    = 17.0 * M_PI / 180.0,
     .b_1     = 0.02,
     .b_2     = 0.02,
     .x_1     = 0.1},
};
enum { PAIRS = sizeof pairs / sizeof *pairs };

/* Spread apart by `spread` m, so that they have backlash. */
static ts_cylindrical_pair solved(size_t which, double spread)
{
    ts_cylindrical_pair       pair;
    ts_cylindrical_pair_input in = pairs[which];
    in.rack                      = ts_basic_rack_fitted(&ts_basic_rack_B, in.alpha_n);
    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    in.a_w = pair.a_w + spread;
    if (spread > 0.0)
        assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

static ts_pair_pose posed(const ts_cylindrical_pair *pair, int turn, bool backward)
{
    ts_pair_pose pose;
    assert_true(
        ts_pair_pose_of(pair, (ts_pair_drive){.turn_1 = turn, .backward = backward}, &pose));
    return pose;
}

typedef void (*pose_check)(const ts_pair_pose *pose);

static void for_all_poses(pose_check check)
{
    for (size_t which = 0; which < PAIRS; which++)
        for (int spread = 0; spread < 2; spread++)
            for (int state = 0; state < 4; state++) {
                const ts_cylindrical_pair pair = solved(which, 6e-5 * spread);
                const ts_pair_pose        pose = posed(&pair, state % 2 ? 1 : -1, state > 1);
                check(&pose);
            }
}

/* ---- the line of action ------------------------------------------------------------------ */

/* derived: C is the pitch point, and the line touches both base circles. */
static void check_line(const ts_pair_pose *pose)
{
    const ts_cylindrical_pair *pair = &pose->pair;
    const ts_outline_point     C    = ts_pair_action_point(pose, pair->rho_C1);
    assert_close_abs(C.x, 0.0, 1e-15);
    assert_close_abs(C.y, 0.0, 1e-15);
    const double foot[2] = {0.0, pair->rho_T};
    for (int gear = 0; gear < 2; gear++) {
        const ts_outline_point T = ts_pair_action_point(pose, foot[gear]);
        const double           x = T.x - pose->axis[gear].x, y = T.y - pose->axis[gear].y;
        const ts_outline_point along = ts_pair_action_point(pose, foot[gear] + 1e-3);
        assert_close(hypot(x, y), 0.5 * (gear ? pair->d_b2 : pair->d_b1), 1e-12);
        assert_close_abs(x * (along.x - T.x) + y * (along.y - T.y), 0.0, 1e-16);
    }
}

static void the_line_of_action_touches_both_base_circles(void **state)
{
    (void)state;
    for_all_poses(check_line);
}

/* derived: E lies on the tip circle of gear 1, A on that of gear 2. */
static void check_ends(const ts_pair_pose *pose)
{
    const ts_cylindrical_pair *pair = &pose->pair;
    const ts_outline_point     A    = ts_pair_action_point(pose, pair->rho_A1);
    const ts_outline_point     E    = ts_pair_action_point(pose, pair->rho_E1);
    assert_close(hypot(A.x, A.y - pose->axis[1].y), 0.5 * pair->d_a2, 1e-12);
    assert_close(hypot(E.x, E.y - pose->axis[0].y), 0.5 * pair->d_a1, 1e-12);
}

static void the_path_of_contact_ends_on_the_tip_circles(void **state)
{
    (void)state;
    for_all_poses(check_ends);
}

/* ---- the teeth --------------------------------------------------------------------------- */

/* Both flanks pass through the point of contact, and so do those of the next pair one base pitch
 * further along the line: a tooth ahead or behind. */
static void check_touch(const ts_pair_pose *pose)
{
    const ts_cylindrical_pair *pair = &pose->pair;
    for (int next = -1; next <= 1; next++) {
        const double           rho = pose->rho_1 + next * pair->p_bt;
        const ts_outline_point at  = ts_pair_action_point(pose, rho);
        if (rho < 0.0 || rho > pair->rho_T)
            continue;
        const ts_outline_point a = ts_pair_flank_point(pose, 0, next * pose->side[0], rho);
        const ts_outline_point b =
            ts_pair_flank_point(pose, 1, -next * pose->side[1], pair->rho_T - rho);
        assert_close_abs(hypot(a.x - at.x, a.y - at.y), 0.0, 1e-14);
        assert_close_abs(hypot(b.x - at.x, b.y - at.y), 0.0, 1e-14);
    }
}

static void loaded_flanks_touch_at_every_pair_on_the_line(void **state)
{
    (void)state;
    for_all_poses(check_touch);
}

static double chord = 1e-7; /* m */

static ts_outline_point outline_at(const ts_pair_pose *pose, const ts_tooth_shape *shape, int gear,
                                   size_t index)
{
    return ts_gear_outline_at(shape, index, pose->middle[gear], pose->axis[gear]);
}

static bool inside(const ts_pair_pose *pose, const ts_tooth_shape *shape, int gear,
                   ts_outline_point at)
{
    const size_t size = ts_gear_outline_size(shape);
    bool         odd  = false;
    for (size_t i = 0, j = size - 1; i < size; j = i++) {
        const ts_outline_point p = outline_at(pose, shape, gear, i);
        const ts_outline_point q = outline_at(pose, shape, gear, j);
        if ((p.y > at.y) != (q.y > at.y) && at.x < (q.x - p.x) * (at.y - p.y) / (q.y - p.y) + p.x)
            odd = !odd;
    }
    return odd;
}

/* The second route: the outlines that the rack cuts, as polygons.  Turned by a little towards the
 * load they overlap, turned by a little away they do not, so in between they touch. */
static bool overlap(const ts_pair_pose *from, const ts_tooth_shape shapes[2], double towards)
{
    ts_pair_pose pose = *from;
    pose.middle[0] += pose.side[0] * towards;
    for (int gear = 0; gear < 2; gear++) {
        const size_t size = ts_gear_outline_size(&shapes[gear]);
        for (size_t i = 0; i < size; i++) {
            const ts_outline_point p = outline_at(&pose, &shapes[gear], gear, i);
            if (fabs(p.y) < 4.0 * pose.frame.m_n && fabs(p.x) < 9.0 * pose.frame.m_n &&
                inside(&pose, &shapes[1 - gear], 1 - gear, p))
                return true;
        }
    }
    return false;
}

static void outlines_touch_and_do_not_cut_into_each_other(void **state)
{
    (void)state;
    for (size_t which = 0; which < PAIRS; which++) {
        const ts_cylindrical_pair pair  = solved(which, 6e-5);
        ts_arena                 *arena = ts_arena_open(NULL);
        const int                 side  = (int)(which % 2);

        (void)side; /* read under the sanitizers alone */
        for (int back = TS_CASES(0, side); back < TS_CASES(2, side + 1); back++) {
            const ts_pair_pose pose = posed(&pair, 1, back);
            ts_tooth_shape     shapes[2];
            for (int gear = 0; gear < 2; gear++)
                assert_int_equal(
                    ts_tooth_outline(&pose.frame, &pose.gear[gear], chord, arena, &shapes[gear]),
                    TS_OUTLINE_FINE);
            const double little = 1e-6 / (0.5 * pair.d_1); /* 1 um at the reference circle */
            assert_false(overlap(&pose, shapes, -little));
            assert_true(overlap(&pose, shapes, little));
        }
        ts_arena_close(arena);
    }
}

/* ---- which flanks ------------------------------------------------------------------------ */

static void power_turned_back_loads_the_other_flanks(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = solved(0, 0.0);
    const ts_pair_pose        on = posed(&pair, 1, false), back = posed(&pair, 1, true);
    const ts_pair_pose        turned = posed(&pair, -1, false);
    assert_int_equal(on.side[0], 1); /* ccw, and the flank that runs ahead: on the ccw side */
    assert_int_equal(back.side[0], -1);
    assert_int_equal(back.side[1], -1);
    assert_int_equal(turned.side[0], -1);
    assert_int_equal(on.lean, -back.lean);
    assert_int_equal(on.turn[1], -1);
}

/* What works on gear 2 is where gear 1 works, seen from the other base circle. */
static void the_working_flanks_of_both_gears_are_one_path(void **state)
{
    (void)state;
    for (size_t which = 0; which < PAIRS; which++) {
        const ts_cylindrical_pair pair = solved(which, 0.0);
        const ts_pair_pose        pose = posed(&pair, 1, false);
        double                    one[2], two[2];
        ts_pair_active_flank(&pose, 0, one);
        ts_pair_active_flank(&pose, 1, two);
        assert_close(one[1] - one[0], pair.g_alpha, 1e-12);
        assert_close(one[0] + two[1], pair.rho_T, 1e-12);
        assert_true(ts_pair_single_flank(&pose, 0, one));
        assert_true(ts_pair_single_flank(&pose, 1, two));
        /* derived: one pair carries alone for two base pitches less the path. */
        assert_close(one[1] - one[0], 2.0 * pair.p_bt - pair.g_alpha, 1e-9);
        assert_close(two[1] - two[0], 2.0 * pair.p_bt - pair.g_alpha, 1e-9);
    }
}

static ts_teeth_view viewed(const ts_pair_pose *pose, ts_arena *arena)
{
    ts_teeth_view view = {.pose = *pose};
    for (int gear = 0; gear < 2; gear++)
        assert_int_equal(
            ts_tooth_outline(&pose->frame, &pose->gear[gear], chord, arena, &view.shape[gear]),
            TS_OUTLINE_FINE);
    return view;
}

/* The second route: what the outline leaves is what the pair computed, unless it is undercut, when
 * the outline alone knows where the involute ends. */
static void the_involute_left_is_that_of_the_outline(void **state)
{
    (void)state;
    ts_arena *arena = ts_arena_open(NULL);
    for (size_t which = 0; which < PAIRS; which++) {
        const ts_cylindrical_pair pair = solved(which, 0.0);
        const ts_pair_pose        pose = posed(&pair, 1, false);
        const ts_teeth_view       view = viewed(&pose, arena);
        assert_close(ts_teeth_root_form(&view, 0), pair.d_Ff1, 1e-9);
        assert_close(ts_teeth_root_form(&view, 1), pair.d_Ff2, 1e-9);
        assert_close_abs(ts_teeth_involute_left(&view, 0), pair.clear_Ff1, 1e-9);
        assert_close_abs(ts_teeth_involute_left(&view, 1), pair.clear_Ff2, 1e-9);
    }
    const ts_cylindrical_pair_input few = {
        .z_1 = 44, .z_2 = 9, .m_n = 2e-3, .alpha_n = 25.0 * degree, .rack = {1.0, 1.25, 0.3}};
    ts_cylindrical_pair pair;
    assert_int_equal(ts_cylindrical_pair_solve(&few, &pair, NULL), TS_PAIR_FINE);
    const ts_pair_pose  pose = posed(&pair, 1, false);
    const ts_teeth_view view = viewed(&pose, arena);
    assert_true(view.shape[1].undercut);
    assert_true(ts_teeth_root_form(&view, 1) > pair.d_b2);
    assert_true(ts_teeth_involute_left(&view, 1) < 0.0); /* the path passes the base circle */
    ts_arena_close(arena);
}

static void what_has_no_numbers_is_not_posed(void **state)
{
    (void)state;
    ts_cylindrical_pair pair = solved(0, 0.0);
    ts_pair_pose        pose;
    pair.alpha_wt = (double)NAN;
    assert_false(ts_pair_pose_of(&pair, (ts_pair_drive){1, false}, &pose));
    const ts_cylindrical_pair_input inner = {
        .z_1 = 20, .z_2 = -60, .m_n = 2e-3, .alpha_n = 20.0 * degree, .rack = ts_basic_rack_B};
    assert_int_equal(ts_cylindrical_pair_solve(&inner, &pair, NULL), TS_PAIR_FINE);
    assert_false(ts_pair_pose_of(&pair, (ts_pair_drive){1, false}, &pose));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_line_of_action_touches_both_base_circles),
        cmocka_unit_test(the_path_of_contact_ends_on_the_tip_circles),
        cmocka_unit_test(loaded_flanks_touch_at_every_pair_on_the_line),
        cmocka_unit_test(outlines_touch_and_do_not_cut_into_each_other),
        cmocka_unit_test(power_turned_back_loads_the_other_flanks),
        cmocka_unit_test(the_working_flanks_of_both_gears_are_one_path),
        cmocka_unit_test(the_involute_left_is_that_of_the_outline),
        cmocka_unit_test(what_has_no_numbers_is_not_posed),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
