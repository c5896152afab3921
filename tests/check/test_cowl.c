/* The nearest point of the cowl line, against a search that tries every point of it. */
#include "check/cowl.h"
#include "support/close.h"

#define DEGREE 0.017453292519943295

static ts_cowl_point point(double clock, double radius)
{
    return (ts_cowl_point){.clock  = {.value = clock * DEGREE, .standing = TS_GIVEN},
                           .radius = {.value = radius, .standing = TS_GIVEN}};
}

static double distance(const ts_cowl_place *place, double R, double phi)
{
    return sqrt(R * R + place->radius * place->radius -
                2.0 * R * place->radius * cos(place->clock - phi));
}

/* The least distance to 20 000 points of every stretch, the stretches taken the shorter way round.
 */
static double tried(const ts_engine *engine, double R, double phi)
{
    const int points = 20000;
    double    least  = INFINITY;
    for (size_t i = 0; i + 1 < engine->cowl_count; i++) {
        const double first = engine->cowl[i].clock.value;
        double       span  = engine->cowl[i + 1].clock.value - first;
        span -= 360.0 * DEGREE * floor(span / (360.0 * DEGREE) + 0.5);
        for (int step = 0; step <= points; step++) {
            const double share = (double)step / points;
            const double r     = engine->cowl[i].radius.value * (1.0 - share) +
                             engine->cowl[i + 1].radius.value * share;
            const double x = r * sin(first + span * share) - R * sin(phi);
            const double y = r * cos(first + span * share) - R * cos(phi);
            least          = fmin(least, sqrt(x * x + y * y));
        }
    }
    return least;
}

static void nearest_point_is_the_nearest(void **state)
{
    (void)state;
    ts_cowl_point   points[] = {point(90, 0.52),  point(135, 0.44), point(180, 0.56),
                                point(225, 0.44), point(270, 0.52), point(350, 0.40),
                                point(20, 0.45)};
    const ts_engine engine   = {.cowl = points, .cowl_count = sizeof points / sizeof points[0]};
    for (int clock = 91; clock < 375; clock += 7)
        for (double R = 0.05; R < 0.8; R += 0.07) {
            const double        phi   = clock * DEGREE;
            const ts_cowl_place place = ts_cowl_nearest(&engine, R, phi);
            assert_true(place.reached);
            /* 20 000 points of some 0.7 m leave less than 0.02 mm between two of them. */
            const double here = distance(&place, R, phi), there = tried(&engine, R, phi);
            assert_true(here <= there + 1e-12);
            assert_close_abs(here, there, 1e-7);
        }
}

static void inside_and_outside_are_told_apart(void **state)
{
    (void)state;
    ts_cowl_point   points[] = {point(90, 0.5), point(180, 0.5), point(270, 0.5)};
    const ts_engine engine   = {.cowl = points, .cowl_count = 3};
    const double    phi      = 200 * DEGREE;
    ts_cowl_place   place    = ts_cowl_nearest(&engine, 0.4, phi);
    assert_false(place.outside);
    assert_close(distance(&place, 0.4, phi), 0.1, 1e-12);
    place = ts_cowl_nearest(&engine, 0.62, phi);
    assert_true(place.outside);
    assert_close(distance(&place, 0.62, phi), 0.12, 1e-12);
}

/* Clock angles of axes count on from the box input, below nothing and past a whole turn. */
static void whole_turns_do_not_matter(void **state)
{
    (void)state;
    ts_cowl_point   points[] = {point(300, 0.5), point(0, 0.45), point(60, 0.5)};
    const ts_engine engine   = {.cowl = points, .cowl_count = 3};
    const double    phi      = 10 * DEGREE;
    const double    once     = tried(&engine, 0.3, phi);
    for (int turn = -2; turn <= 2; turn++) {
        const double        there = phi + turn * 360.0 * DEGREE;
        const ts_cowl_place place = ts_cowl_nearest(&engine, 0.3, there);
        assert_true(place.reached);
        assert_close_abs(distance(&place, 0.3, there), once, 1e-7);
    }
}

static void line_does_not_reach_past_its_ends(void **state)
{
    (void)state;
    ts_cowl_point   points[] = {point(90, 0.5), point(180, 0.5), point(270, 0.5)};
    const ts_engine engine   = {.cowl = points, .cowl_count = 3};
    assert_true(ts_cowl_nearest(&engine, 0.3, 90 * DEGREE).reached);
    assert_true(ts_cowl_nearest(&engine, 0.3, 180 * DEGREE).reached);
    assert_false(ts_cowl_nearest(&engine, 0.3, 80 * DEGREE).reached);
    assert_false(ts_cowl_nearest(&engine, 0.3, 271 * DEGREE).reached);
    assert_false(ts_cowl_nearest(&engine, 0.3, 0.0).reached);
}

static void line_may_be_drawn_either_way_round(void **state)
{
    (void)state;
    ts_cowl_point   forth[] = {point(90, 0.5), point(180, 0.45), point(270, 0.52)};
    ts_cowl_point   back[]  = {point(270, 0.52), point(180, 0.45), point(90, 0.5)};
    const ts_engine one = {.cowl = forth, .cowl_count = 3}, two = {.cowl = back, .cowl_count = 3};
    for (int clock = 95; clock < 270; clock += 10) {
        const ts_cowl_place first  = ts_cowl_nearest(&one, 0.35, clock * DEGREE);
        const ts_cowl_place second = ts_cowl_nearest(&two, 0.35, clock * DEGREE);
        assert_true(second.reached);
        assert_close(second.radius, first.radius, 1e-6);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(nearest_point_is_the_nearest),
        cmocka_unit_test(inside_and_outside_are_told_apart),
        cmocka_unit_test(whole_turns_do_not_matter),
        cmocka_unit_test(line_does_not_reach_past_its_ends),
        cmocka_unit_test(line_may_be_drawn_either_way_round),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
