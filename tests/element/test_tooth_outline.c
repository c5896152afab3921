/* Is the outline that of the tooth which the rack would cut, and do two outlines mesh? */
#include "element/cylindrical_pair.h"
#include "element/involute.h"
#include "element/rack_cutter.h"
#include "element/tooth_curve.h"
#include "element/tooth_outline.h"
#include "element/undercut_reach.h"
#include "support/close.h"
#include "support/faulty_allocator.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

typedef struct specimen {
    ts_cylindrical_frame frame;
    ts_cylindrical_gear  gear;
    ts_tooth_shape       shape;
    ts_arena            *arena;
} specimen;

typedef struct wanted {
    int    z;
    double x, alpha_n, beta; /* angles in degrees */
} wanted;

/* No undercut, undercut, many teeth, a full root round, a pointed tip, a helix. */
static const wanted kinds[] = {
    {25, 0.1, 20.0, 0.0}, {9, 0.0, 20.0, 0.0},   {140, -0.2, 20.0, 0.0},
    {31, 0.0, 25.0, 0.0}, {10, 0.75, 20.0, 0.0}, {18, 0.25, 22.5, 0.0},
    {14, 0.0, 14.5, 0.0}, {23, 0.2, 20.0, 25.0}, {11, -0.1, 20.0, 15.0},
};
#define KINDS (sizeof kinds / sizeof kinds[0])

static ts_outline_fault prepare(specimen *s, const wanted *w, double chord_error)
{
    const double                    alpha_n = w->alpha_n * degree;
    const ts_cylindrical_gear_input in      = {
             .z = w->z, .x = w->x, .rack = ts_basic_rack_fitted(&ts_basic_rack_A, alpha_n)};

    s->frame = (ts_cylindrical_frame){.m_n = 2e-3, .alpha_n = alpha_n, .beta = w->beta * degree};
    ts_cylindrical_frame_solve(&s->frame, NULL);
    ts_cylindrical_gear_solve(&s->frame, &in, TS_GEAR_ALONE, &s->gear, NULL);
    s->arena = ts_arena_open(NULL);
    return ts_tooth_outline(&s->frame, &s->gear, chord_error, s->arena, &s->shape);
}

static specimen traced(const wanted *w)
{
    specimen s;

    assert_int_equal(prepare(&s, w, TS_OUTLINE_CHORD_ERROR), TS_OUTLINE_FINE);
    return s;
}

/* derived: the involute is the end of a string unwound from the base circle: the free string is a
 * tangent, as long as the arc that it has left. */
static void flank_points_are_ends_of_an_unwound_string(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        specimen     s     = traced(&kinds[i]);
        const double r_b   = s.gear.d_b / 2.0;
        const double psi_b = s.gear.s_t / s.gear.d + ts_inv(s.frame.alpha_t);

        for (size_t k = s.shape.flank; k <= s.shape.tip; k++) {
            const ts_outline_point p      = s.shape.points[k];
            const double           string = sqrt(fmax(p.x * p.x + p.y * p.y - r_b * r_b, 0.0));
            const double           arc    = string / r_b;
            const double           foot_x = r_b * sin(psi_b - arc), foot_y = r_b * cos(psi_b - arc);

            assert_close_abs(hypot(p.x - foot_x, p.y - foot_y), string, 1e-13);
            assert_close_abs((p.x - foot_x) * foot_x + (p.y - foot_y) * foot_y, 0.0, 1e-14);
        }
        ts_arena_close(s.arena);
    }
}

/* A second route: roll the rack over the blank.  It must touch every point of root, fillet and
 * flank, and cut nothing of the tip. */
static void rolling_rack_touches_every_point_that_it_cuts(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        if (kinds[i].beta > 0.0)
            continue;
        specimen          s      = traced(&kinds[i]);
        const rack_cutter cutter = rack_cutter_of(&s.frame, &s.gear);

        for (size_t k = 0; k < s.shape.count; k++) {
            const double clearance = rack_cutter_clearance(&cutter, s.shape.points[k]);

            if (k <= s.shape.tip)
                assert_close_abs(clearance, 0.0, 1e-10);
            else
                assert_true(clearance > 0.0);
        }
        ts_arena_close(s.arena);
    }
}

static double to_polyline(const ts_tooth_shape *shape, ts_outline_point p)
{
    double least = (double)INFINITY;

    for (size_t k = 0; k + 1 < shape->count; k++) {
        const ts_outline_point a = shape->points[k], b = shape->points[k + 1];
        const double           dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
        const double share = fmin(fmax(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0), 1.0);

        least = fmin(least, hypot(p.x - a.x - share * dx, p.y - a.y - share * dy));
    }
    return least;
}

static void true_curve_stays_within_the_chord_error(void **state)
{
    (void)state;
    static const double errors[] = {1e-5, 1e-6, 1e-8};

    for (size_t i = 0; i < KINDS; i++) {
        for (size_t e = 0; e < 3; e++) {
            specimen s;

            assert_int_equal(prepare(&s, &kinds[i], errors[e]), TS_OUTLINE_FINE);
            const ts_tooth_curve curve = ts_tooth_curve_of(&s.frame, &s.gear);
            const double         r_b = curve.r_b, t_tip = sqrt(pow(s.shape.r_tip / r_b, 2.0) - 1.0);
            const double         t_form = sqrt(fmax(pow(s.shape.r_form / r_b, 2.0) - 1.0, 0.0));
            const double         end    = ts_trochoid_end(&curve);

            for (int k = 0; k <= 400; k++) {
                const ts_outline_point flank =
                    ts_involute_point(&curve, t_form + (t_tip - t_form) * k / 400.0);
                const ts_outline_point fillet = ts_trochoid_point(&curve, end * k / 400.0);

                assert_true(to_polyline(&s.shape, flank) <= errors[e]);
                assert_true(to_polyline(&s.shape, fillet) <= errors[e]);
            }
            ts_arena_close(s.arena);
        }
    }
}

/* The outline of half a tooth goes from the middle of the space to the middle of the tooth. */
static void half_tooth_runs_from_root_to_tip(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        specimen               s     = traced(&kinds[i]);
        const ts_outline_point first = s.shape.points[0], last = s.shape.points[s.shape.count - 1];

        assert_close(hypot(first.x, first.y), s.gear.d_f / 2.0, 1e-12);
        assert_close(atan2(first.x, first.y), pi / s.gear.in.z, 1e-8);
        assert_close_abs(last.x, 0.0, 1e-12);
        assert_close(last.y, s.shape.r_tip, 1e-12);
        for (size_t k = 1; k < s.shape.count; k++) {
            const ts_outline_point a = s.shape.points[k - 1], b = s.shape.points[k];

            assert_true(atan2(b.x, b.y) < atan2(a.x, a.y) + 1e-12 || s.shape.undercut);
            assert_true(hypot(b.x, b.y) > hypot(a.x, a.y) - 1e-9);
        }
        ts_arena_close(s.arena);
    }
}

static void undercut_and_pointed_teeth_are_said(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        specimen s = traced(&kinds[i]);

        assert_int_equal(s.shape.undercut, kinds[i].x < s.gear.x_min);
        assert_int_equal(s.shape.pointed, s.gear.s_at <= 0.0);
        if (s.shape.undercut)
            assert_true(s.shape.r_form > s.gear.d_b / 2.0);
        else
            assert_close(s.shape.r_form, s.gear.d_Ff / 2.0, 1e-9);
        ts_arena_close(s.arena);
    }
}

/* Second route: the rack that rolls over the gear has cut the involute away below that point, and
 * touches it above. */
static void undercut_ends_where_the_rolling_rack_leaves_the_involute(void **state)
{
    (void)state;
    const int teeth[] = {8, 11, 15};

    for (size_t i = 0; i < sizeof teeth / sizeof teeth[0]; i++) {
        const ts_cylindrical_pair_input in = {.z_1     = teeth[i],
                                              .z_2     = 60,
                                              .m_n     = 2e-3,
                                              .alpha_n = 20.0 * degree,
                                              .rack    = ts_basic_rack_A};
        ts_cylindrical_pair             pair;
        ts_cylindrical_frame            frame;
        ts_cylindrical_gear             gear;

        assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
        ts_cylindrical_pair_gear(&pair, TS_GEAR_1, &frame, &gear);
        const rack_cutter    cutter = rack_cutter_of(&frame, &gear);
        const ts_tooth_curve curve  = ts_tooth_curve_of(&frame, &gear);
        const double         rho_u  = pair.rho_A1 - ts_undercut_room(&pair, 0, NULL);
        const double         above = rho_u * 1.01 / curve.r_b, below = rho_u * 0.97 / curve.r_b;

        assert_true(rho_u > 0.0);
        assert_true(fabs(rack_cutter_clearance(&cutter, ts_involute_point(&curve, above))) < 2e-8);
        assert_true(rack_cutter_clearance(&cutter, ts_involute_point(&curve, below)) < -1e-8);
        assert_true(isnan(ts_undercut_room(&pair, 1, NULL))); /* 60 teeth are not undercut */
        /* a mate of that tip begins contact just there */
        ts_cylindrical_pair_input shorter = in;
        shorter.tip                       = TS_TIP_DIAMETERS;
        shorter.d_a1                      = pair.d_a1;
        shorter.d_a2                      = ts_undercut_tip_of_mate(&pair, 0);
        ts_cylindrical_pair met;
        assert_int_equal(ts_cylindrical_pair_solve(&shorter, &met, NULL), TS_PAIR_FINE);
        assert_true(fabs(ts_undercut_room(&met, 0, NULL)) < 1e-12);
        /* derived: it does not matter which of the two is called gear 1 */
        const ts_cylindrical_pair_input turned_in = {.z_1     = 60,
                                                     .z_2     = teeth[i],
                                                     .m_n     = 2e-3,
                                                     .alpha_n = 20.0 * degree,
                                                     .rack    = ts_basic_rack_A};
        ts_cylindrical_pair             turned;
        assert_int_equal(ts_cylindrical_pair_solve(&turned_in, &turned, NULL), TS_PAIR_FINE);
        assert_close_abs(ts_undercut_room(&turned, 1, NULL), ts_undercut_room(&pair, 0, NULL),
                         1e-12);
        assert_close(ts_undercut_tip_of_mate(&turned, 1), ts_undercut_tip_of_mate(&pair, 0), 1e-12);
    }
}

/* Sum of x dy - y dx over the points from..to, halved: the area seen from the axis. */
static double swept_area(const ts_tooth_shape *shape, size_t from, size_t to)
{
    double twice = 0.0;

    for (size_t k = from; k < to; k++) {
        const ts_outline_point a = shape->points[k], b = shape->points[k + 1];

        twice += a.x * b.y - a.y * b.x;
    }
    return 0.5 * twice;
}

/* derived: the sector under the involute is the integral of r^2/2 over its angle t - atan(t):
 * r_b^2/6*t^3. */
static void flank_sweeps_the_area_of_an_involute(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        specimen     s      = traced(&kinds[i]);
        const double r_b    = s.gear.d_b / 2.0;
        const double t_0    = sqrt(fmax(pow(s.shape.r_form / r_b, 2.0) - 1.0, 0.0));
        const double t_1    = sqrt(pow(s.shape.r_tip / r_b, 2.0) - 1.0);
        const double exact  = r_b * r_b / 6.0 * (t_1 * t_1 * t_1 - t_0 * t_0 * t_0);
        const double length = r_b / 2.0 * (t_1 * t_1 - t_0 * t_0);

        assert_close_abs(swept_area(&s.shape, s.shape.flank, s.shape.tip), exact, 1e-6 * length);
        ts_arena_close(s.arena);
    }
}

/* The whole gear lies between its root and its tip circle, less than a chord error inside. */
static void area_of_the_gear_lies_between_root_and_tip_circle(void **state)
{
    (void)state;
    for (size_t i = 0; i < KINDS; i++) {
        specimen               s     = traced(&kinds[i]);
        const size_t           size  = ts_gear_outline_size(&s.shape);
        const ts_outline_point axis  = {0.0, 0.0};
        double                 twice = 0.0;

        for (size_t k = 0; k < size; k++) {
            const ts_outline_point a = ts_gear_outline_at(&s.shape, k, 0.3, axis);
            const ts_outline_point b = ts_gear_outline_at(&s.shape, (k + 1) % size, 0.3, axis);

            twice += a.x * b.y - a.y * b.x;
        }
        const double area = 0.5 * twice, half = swept_area(&s.shape, 0, s.shape.count - 1);
        assert_close(area, 2.0 * s.gear.in.z * half, 1e-11);
        assert_true(area > pi * s.gear.d_f * s.gear.d_f / 4.0);
        assert_true(area < pi * s.gear.d_a * s.gear.d_a / 4.0);
        ts_arena_close(s.arena);
    }
}

/* ---- two outlines in mesh -------------------------------------------------------------------- */

#define MOST_POINTS 40000

typedef struct polygon {
    ts_outline_point at[MOST_POINTS];
    size_t           size;
} polygon;

static polygon polygons[2];

static void lay_out(polygon *out, const ts_tooth_shape *shape, double phase, ts_outline_point axis)
{
    out->size = ts_gear_outline_size(shape);
    assert_true(out->size <= MOST_POINTS);
    for (size_t k = 0; k < out->size; k++)
        out->at[k] = ts_gear_outline_at(shape, k, phase, axis);
}

/* Distance to the polygon, negative inside. */
static double to_polygon(const polygon *poly, ts_outline_point p)
{
    double least  = (double)INFINITY;
    bool   inside = false;

    for (size_t k = 0; k < poly->size; k++) {
        const ts_outline_point a = poly->at[k], b = poly->at[(k + 1) % poly->size];
        const double           dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
        const double share = fmin(fmax(((p.x - a.x) * dx + (p.y - a.y) * dy) / square, 0.0), 1.0);

        least = fmin(least, hypot(p.x - a.x - share * dx, p.y - a.y - share * dy));
        if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / dy * dx)
            inside = !inside;
    }
    return inside ? -least : least;
}

/* Least distance over the points of one polygon near the other. */
static double gap(const polygon *of, const polygon *to, ts_outline_point centre, double reach)
{
    double least = (double)INFINITY;

    for (size_t k = 0; k < of->size; k++)
        if (hypot(of->at[k].x - centre.x, of->at[k].y - centre.y) < reach)
            least = fmin(least, to_polygon(to, of->at[k]));
    return least;
}

/* Without backlash both flanks touch, whatever the phase: neither a gap nor a clash of 2 um. */
static void outlines_of_a_pair_touch_and_do_not_overlap(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in = {.z_1     = 19,
                                          .z_2     = 33,
                                          .m_n     = 2e-3,
                                          .alpha_n = 20.0 * degree,
                                          .x_1     = 0.35,
                                          .x_2     = 0.2,
                                          .tip     = TS_TIP_CLEARANCE,
                                          .rack    = ts_basic_rack_A};
    ts_cylindrical_pair             pair;
    ts_cylindrical_frame            frame;
    ts_cylindrical_gear             gear_1, gear_2;
    ts_tooth_shape                  shape_1, shape_2;
    ts_arena                       *arena = ts_arena_open(NULL);

    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    ts_cylindrical_pair_gear(&pair, TS_GEAR_1, &frame, &gear_1);
    ts_cylindrical_pair_gear(&pair, TS_GEAR_2, &frame, &gear_2);
    assert_int_equal(ts_tooth_outline(&frame, &gear_1, 2e-7, arena, &shape_1), TS_OUTLINE_FINE);
    assert_int_equal(ts_tooth_outline(&frame, &gear_2, 2e-7, arena, &shape_2), TS_OUTLINE_FINE);

    const ts_outline_point axis_1 = {0.0, 0.0}, axis_2 = {0.0, pair.a_w};
    const ts_outline_point pitch = {0.0, pair.d_w1 / 2.0};
    for (int step = 0; step < 7; step++) {
        const double turn = 2.0 * pi / in.z_1 * step / 7.0;

        lay_out(&polygons[0], &shape_1, turn, axis_1);
        lay_out(&polygons[1], &shape_2, pi + pi / in.z_2 - turn / pair.u, axis_2);
        const double near_1 = gap(&polygons[0], &polygons[1], pitch, 4.0 * in.m_n);
        const double near_2 = gap(&polygons[1], &polygons[0], pitch, 4.0 * in.m_n);
        assert_true(fmin(near_1, near_2) > -2e-6);
        assert_true(fmin(near_1, near_2) < 2e-6);
    }
    /* A tenth of a degree out of phase they do overlap: the measure sees it. */
    lay_out(&polygons[1], &shape_2, pi + pi / in.z_2 + 0.1 * degree, axis_2);
    lay_out(&polygons[0], &shape_1, 0.0, axis_1);
    assert_true(gap(&polygons[0], &polygons[1], pitch, 4.0 * in.m_n) < -2e-5);
    ts_arena_close(arena);
}

/* ---- faults ---------------------------------------------------------------------------------- */

static void gears_without_an_outline_say_why(void **state)
{
    (void)state;
    specimen     s;
    const wanted internal = {-30, 0.0, 20.0, 0.0}, cut = {4, -0.9, 20.0, 0.0};

    assert_int_equal(prepare(&s, &internal, 1e-6), TS_OUTLINE_INTERNAL);
    ts_arena_close(s.arena);
    assert_int_equal(prepare(&s, &cut, 1e-6), TS_OUTLINE_CUT_THROUGH);
    ts_arena_close(s.arena);
    assert_int_equal(prepare(&s, &kinds[0], 0.0), TS_OUTLINE_OUT_OF_RANGE);
    ts_arena_close(s.arena);
    assert_int_equal(prepare(&s, &kinds[0], (double)NAN), TS_OUTLINE_OUT_OF_RANGE);
    ts_arena_close(s.arena);

    assert_int_equal(prepare(&s, &kinds[1], 1e-6), TS_OUTLINE_FINE);
    s.gear.d_a = 2.0 * s.shape.r_form - 1e-5;
    assert_int_equal(ts_tooth_outline(&s.frame, &s.gear, 1e-6, s.arena, &s.shape),
                     TS_OUTLINE_NO_FLANK);
    ts_arena_close(s.arena);
    for (int fault = TS_OUTLINE_FINE; fault <= TS_OUTLINE_NO_MEMORY; fault++)
        assert_true(ts_outline_fault_says((ts_outline_fault)fault)[0] != '\0');
}

static void outline_without_memory_says_so(void **state)
{
    (void)state;
    specimen         s = traced(&kinds[0]);
    faulty_allocator faulty;
    ts_allocator     allocator = faulty_allocator_open(&faulty, 2, FAULTY_ONWARDS);
    ts_arena        *arena     = ts_arena_open(&allocator);
    ts_tooth_shape   shape;

    assert_non_null(arena);
    ts_outline_fault fault = TS_OUTLINE_FINE;
    for (int i = 0; i < 1000 && fault == TS_OUTLINE_FINE; i++)
        fault = ts_tooth_outline(&s.frame, &s.gear, 1e-8, arena, &shape);
    assert_int_equal(fault, TS_OUTLINE_NO_MEMORY);
    assert_null(shape.points);
    ts_arena_close(arena);
    assert_int_equal(faulty.live_blocks, 0);
    ts_arena_close(s.arena);
}

/* Derived: the middle of a chord lies nearer to the axis than its ends by r - sqrt(r^2 - (c/2)^2).
 */
static void arcs_of_root_and_tip_stay_within_the_chord_error(void **state)
{
    (void)state;
    static const double errors[] = {1e-5, 1e-6, 1e-8};

    for (size_t i = 0; i < KINDS; i++)
        for (size_t e = 0; e < 3; e++) {
            specimen s;

            assert_int_equal(prepare(&s, &kinds[i], errors[e]), TS_OUTLINE_FINE);
            for (size_t k = 1; k < s.shape.count; k++) {
                const bool             root = k <= s.shape.fillet;
                const ts_outline_point a = s.shape.points[k - 1], b = s.shape.points[k];
                const double           r = root ? s.shape.r_root : s.shape.r_tip;

                if (!root && k <= s.shape.tip)
                    continue;
                assert_close(hypot(a.x, a.y), r, 1e-9);
                assert_close(hypot(b.x, b.y), r, 1e-9);
                const double half = hypot(b.x - a.x, b.y - a.y) / 2.0;
                assert_true(r - sqrt(r * r - half * half) <= errors[e] * (1.0 + 1e-6));
                assert_true(half > 0.0 || s.shape.pointed);
                /* No more pieces than that takes: as long as all pieces of an arc but one. */
                const size_t pieces = root ? s.shape.fillet : s.shape.count - 1 - s.shape.tip;
                if (pieces < 2)
                    continue;
                const double turn = 2.0 * asin(half / r) * (double)pieces / ((double)pieces - 1.0);
                assert_true(r * (1.0 - cos(turn / 2.0)) > errors[e] * (1.0 - 1e-6));
            }
            ts_arena_close(s.arena);
        }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(flank_points_are_ends_of_an_unwound_string),
        cmocka_unit_test(rolling_rack_touches_every_point_that_it_cuts),
        cmocka_unit_test(true_curve_stays_within_the_chord_error),
        cmocka_unit_test(half_tooth_runs_from_root_to_tip),
        cmocka_unit_test(undercut_and_pointed_teeth_are_said),
        cmocka_unit_test(undercut_ends_where_the_rolling_rack_leaves_the_involute),
        cmocka_unit_test(flank_sweeps_the_area_of_an_involute),
        cmocka_unit_test(area_of_the_gear_lies_between_root_and_tip_circle),
        cmocka_unit_test(outlines_of_a_pair_touch_and_do_not_overlap),
        cmocka_unit_test(gears_without_an_outline_say_why),
        cmocka_unit_test(outline_without_memory_says_so),
        cmocka_unit_test(arcs_of_root_and_tip_stay_within_the_chord_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
