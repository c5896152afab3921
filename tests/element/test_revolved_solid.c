/* Are volumes and moments of inertia of bodies of revolution exact? */
#include "element/involute.h"
#include "element/revolved_solid.h"
#include "element/tooth_outline.h"
#include "element/tooth_volume.h"
#include "support/close.h"

#include <stdlib.h>

static const double pi = 3.14159265358979323846;

/* derived: textbook closed forms, V = pi R^2 h, I_z = m R^2/2, I_x = m (3 R^2 + h^2)/12. */
static void a_cylinder_has_its_closed_forms(void **state)
{
    (void)state;
    const double   R = 0.031, h = 0.047, V = pi * R * R * h;
    const ts_solid s = ts_ring_solid(&(ts_ring){.z = 0.2, .h = h, .R_1 = R, .R_2 = R});

    assert_close(s.V, V, 1e-14);
    assert_close(s.z, 0.2 + h / 2.0, 1e-14);
    assert_close(s.I_z, V * R * R / 2.0, 1e-14);
    assert_close(s.I_x, V * (3.0 * R * R + h * h) / 12.0, 1e-13);
}

/* derived: V = pi R^2 h/3, centre h/4 from the base, I_z = 3 m R^2/10,
 * I_x through the centre = 3 m (4 R^2 + h^2)/80. */
static void a_cone_has_its_closed_forms(void **state)
{
    (void)state;
    const double   R = 0.04, h = 0.09, V = pi * R * R * h / 3.0;
    const ts_solid s = ts_ring_solid(&(ts_ring){.h = h, .R_1 = R, .R_2 = 0.0});

    assert_close(s.V, V, 1e-14);
    assert_close(s.z, h / 4.0, 1e-13);
    assert_close(s.I_z, 0.3 * V * R * R, 1e-14);
    assert_close(s.I_x, 3.0 * V * (4.0 * R * R + h * h) / 80.0, 1e-12);
}

/* derived: V = pi (R^2 - r^2) h, I_z = m (R^2 + r^2)/2. */
static void an_annulus_has_its_closed_forms(void **state)
{
    (void)state;
    const double   R = 0.05, r = 0.03, h = 0.02, V = pi * (R * R - r * r) * h;
    const ts_solid s = ts_ring_solid(&(ts_ring){.h = h, .R_1 = R, .R_2 = R, .r_1 = r, .r_2 = r});

    assert_close(s.V, V, 1e-14);
    assert_close(s.I_z, V * (R * R + r * r) / 2.0, 1e-14);
    assert_close(s.I_x, V * (3.0 * (R * R + r * r) + h * h) / 12.0, 1e-13);
}

/* derived: V = 4 pi R^3/3, I = 2 m R^2/5 about every axis; the polygon lies inside the circle, so
 * the error falls with the square of the number of edges. */
static void a_sphere_is_neared_with_the_square_of_the_edges(void **state)
{
    (void)state;
    enum { MOST = 400 };
    ts_section_point points[MOST + 1];
    double           error[2];

    for (int round = 0; round < 2; round++) {
        const int edges = round == 0 ? MOST / 2 : MOST;
        for (int i = 0; i <= edges; i++)
            points[i] = (ts_section_point){-cos(pi * i / edges), sin(pi * i / edges)};
        const ts_solid s = ts_revolve(points, (size_t)edges + 1);
        error[round]     = 1.0 - s.V / (4.0 * pi / 3.0);
        assert_close(s.I_z, s.I_x, 1e-12 + 3.0 * error[round]);
        assert_close(s.I_z, 0.4 * s.V, 1e-4);
        assert_close_abs(s.z, 0.0, 1e-13);
    }
    assert_close(error[0] / error[1], 4.0, 0.01);
}

/* derived: a body cut across and put together again is the same body. */
static void parts_sum_to_the_whole_with_the_parallel_axis_theorem(void **state)
{
    (void)state;
    const ts_ring left = {.z = 0.0, .h = 0.03, .R_1 = 0.05, .R_2 = 0.035, .r_1 = 0.01, .r_2 = 0.01};
    const ts_ring right = {
        .z = 0.03, .h = 0.05, .R_1 = 0.035, .R_2 = 0.01, .r_1 = 0.01, .r_2 = 0.01};
    const ts_solid whole = ts_ring_solid(
        &(ts_ring){.z = 0.0, .h = 0.08, .R_1 = 0.05, .R_2 = 0.01, .r_1 = 0.01, .r_2 = 0.01});
    const ts_solid sum = ts_solid_sum(ts_ring_solid(&left), ts_ring_solid(&right));

    assert_close(sum.V, whole.V, 1e-13);
    assert_close(sum.z, whole.z, 1e-13);
    assert_close(sum.I_z, whole.I_z, 1e-13);
    assert_close(sum.I_x, whole.I_x, 1e-12);
    assert_close(ts_solid_tilting(&whole, 0.5),
                 whole.I_x + whole.V * (0.5 - whole.z) * (0.5 - whole.z), 1e-14);
}

/* derived: dimensions; a sense of the polygon is no matter. */
static void volumes_scale_with_the_cube_and_inertia_with_the_fifth_power(void **state)
{
    (void)state;
    const ts_section_point a[] = {{0.0, 0.2}, {0.1, 0.5}, {0.4, 0.3}, {0.3, 0.1}};
    ts_section_point       b[4];

    for (int i = 0; i < 4; i++)
        b[i] = (ts_section_point){3.0 * a[3 - i].z, 3.0 * a[3 - i].r};
    const ts_solid one = ts_revolve(a, 4), three = ts_revolve(b, 4);
    assert_close(three.V, 27.0 * one.V, 1e-13);
    assert_close(three.z, 3.0 * one.z, 1e-13);
    assert_close(three.I_z, 243.0 * one.I_z, 1e-13);
    assert_close(three.I_x, 243.0 * one.I_x, 1e-12);
    assert_same_double(ts_revolve(a, 2).V, 0.0);
}

/* ---- teeth ----------------------------------------------------------------------------------- */

/* Area and second moment of half a tooth beyond the root circle, doubled: the traced outline, the
 * axis, and less the sector of the root circle. */
static ts_tooth_area traced(const ts_tooth_shape *shape)
{
    ts_tooth_area sum = {0};

    for (size_t i = 0; i + 1 < shape->count; i++) {
        const ts_outline_point p = shape->points[i], q = shape->points[i + 1];
        const double           cross = p.x * q.y - q.x * p.y;
        sum.A += cross / 2.0;
        sum.J +=
            cross * (p.x * p.x + p.x * q.x + q.x * q.x + p.y * p.y + p.y * q.y + q.y * q.y) / 12.0;
    }
    const double half = pi / shape->z, r = shape->r_root;
    sum.A = 2.0 * (fabs(sum.A) - half * r * r / 2.0);
    sum.J = 2.0 * (fabs(sum.J) - half * r * r * r * r / 4.0);
    return sum;
}

/* A second route: the exact outline that the rack cuts (element/tooth_outline.h). */
static void the_area_of_a_tooth_is_that_of_its_outline(void **state)
{
    (void)state;
    static const struct {
        int    z;
        double x, alpha_n, beta;
    } gears[]       = {{18, 0.3, 20.0, 0.0}, {35, 0.0, 25.0, 0.0},   {43, 0.0, 25.0, 0.0},
                       {81, 0.0, 25.0, 0.0}, {60, -0.2, 20.0, 15.0}, {120, 0.5, 22.5, 0.0}};
    ts_arena *arena = ts_arena_open(NULL);

    for (size_t i = 0; i < sizeof gears / sizeof gears[0]; i++) {
        ts_cylindrical_frame frame = {.m_n     = 2e-3,
                                      .alpha_n = gears[i].alpha_n * pi / 180.0,
                                      .beta    = gears[i].beta * pi / 180.0};
        ts_cylindrical_gear  gear;
        ts_tooth_shape       shape;
        ts_cylindrical_frame_solve(&frame, NULL);
        const ts_cylindrical_gear_input in = {
            .z    = gears[i].z,
            .x    = gears[i].x,
            .rack = {.h_aPs = 1.0, .h_fPs = 1.25, .rho_fPs = 0.3}};
        ts_cylindrical_gear_solve(&frame, &in, TS_GEAR_ALONE, &gear, NULL);
        assert_int_equal(ts_tooth_outline(&frame, &gear, 1e-8, arena, &shape), TS_OUTLINE_FINE);
        const ts_tooth_area exact = traced(&shape);
        const ts_tooth_area found = ts_tooth_area_of(
            &(ts_tooth_section){.r_b   = gear.d_b / 2.0,
                                .r_f   = gear.d_f / 2.0,
                                .r_F   = fmax(fmax(gear.d_Ff, gear.d_b), gear.d_f) / 2.0,
                                .r_a   = gear.d_a / 2.0,
                                .psi_b = gear.s_t / gear.d + frame.inv_alpha_t,
                                .rho   = 0.3 * 2e-3},
            NULL);
        assert_close(found.A, exact.A, 0.02);
        assert_close(found.J, exact.J, 0.02);
    }
    ts_arena_close(arena);
}

/* derived: between two circles alone the flanks are exact; Simpson's rule over the thickness. */
static void the_flank_part_is_the_integral_of_the_thickness(void **state)
{
    (void)state;
    const ts_tooth_section in = {
        .r_b = 0.03, .r_f = 0.0312, .r_F = 0.0312, .r_a = 0.0345, .psi_b = 0.06, .rho = 0.0};
    const int    n = 2000;
    double       A = 0.0, J = 0.0;
    const double h = (in.r_a - in.r_F) / n;

    for (int i = 0; i <= n; i++) {
        const double r = in.r_F + h * i, weight = (i == 0 || i == n ? 1.0
                                                   : i % 2          ? 4.0
                                                                    : 2.0) *
                                                  h / 3.0;
        const double angle = 2.0 * (in.psi_b - ts_inv(acos(in.r_b / r)));
        A += weight * angle * r;
        J += weight * angle * r * r * r;
    }
    const ts_tooth_area found = ts_tooth_area_of(&in, NULL);
    assert_close(found.A, A, 1e-10);
    assert_close(found.J, J, 1e-10);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_cylinder_has_its_closed_forms),
        cmocka_unit_test(a_cone_has_its_closed_forms),
        cmocka_unit_test(an_annulus_has_its_closed_forms),
        cmocka_unit_test(a_sphere_is_neared_with_the_square_of_the_edges),
        cmocka_unit_test(parts_sum_to_the_whole_with_the_parallel_axis_theorem),
        cmocka_unit_test(volumes_scale_with_the_cube_and_inertia_with_the_fifth_power),
        cmocka_unit_test(the_area_of_a_tooth_is_that_of_its_outline),
        cmocka_unit_test(the_flank_part_is_the_integral_of_the_thickness),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
