/* Do bevel teeth, their blanks and the cylindrical gears that stand for them fit together? */
#include "element/bevel_blank.h"
#include "element/bevel_depth.h"
#include "element/bevel_spiral.h"
#include "element/bevel_teeth.h"
#include "element/bevel_toe.h"
#include "element/bevel_tolerance.h"
#include "element/bevel_virtual.h"
#include "element/cylindrical_pair.h"
#include "support/close.h"

#include <string.h>

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

static ts_bevel_pair paired(int z_1, int z_2, double Sigma, double beta_m)
{
    const ts_bevel_pair_input in = {
        .z_1     = z_1,
        .z_2     = z_2,
        .m_et    = 2.5e-3,
        .Sigma   = Sigma * degree,
        .alpha_n = 20.0 * degree,
        .beta_m  = beta_m * degree,
        .b       = 18e-3,
    };
    ts_bevel_pair pair;

    assert_int_equal(ts_bevel_pair_solve(&in, &pair, NULL), TS_BEVEL_FINE);
    return pair;
}

static ts_bevel_teeth_input usual(const ts_bevel_pair *pair, ts_bevel_taper taper, double r_c0)
{
    return (ts_bevel_teeth_input){.taper   = taper,
                                  .profile = ts_bevel_profile_usual(pair, NULL),
                                  .j_mn    = 0.1e-3,
                                  .r_c0    = r_c0};
}

static ts_bevel_teeth toothed(const ts_bevel_pair *pair, const ts_bevel_teeth_input *in)
{
    ts_bevel_teeth teeth;

    assert_int_equal(ts_bevel_teeth_solve(pair, in, &teeth, NULL), TS_BEVEL_TEETH_FINE);
    return teeth;
}

/* ---- profile --------------------------------------------------------------------------------- */

/* derived: data of type II give back the wheel's addendum, depth and clearance that they name. */
static void both_types_of_profile_data_mean_the_same_teeth(void **state)
{
    (void)state;
    const ts_bevel_depth_factors factors = {.c_ham = 0.31, .k_d = 1.9, .k_c = 0.13, .k_t = 0.06};
    const ts_bevel_pair          pair    = paired(20, 44, 90.0, 35.0);

    for (int wheel = 1; wheel <= 2; wheel++) {
        const ts_bevel_teeth_input in = {.taper   = TS_BEVEL_TAPER_UNIFORM,
                                         .profile = ts_bevel_profile_of(&factors, wheel, NULL),
                                         .r_c0    = (double)NAN};
        const ts_bevel_teeth       t  = toothed(&pair, &in);

        assert_close(t.h_am[wheel - 1], 0.31 * 1.9 * pair.m_mn, 1e-14);
        assert_close(t.h_mw, 1.9 * pair.m_mn, 1e-14);
        assert_close(t.c, 0.13 * 1.9 * pair.m_mn, 1e-13);
        assert_close(t.h_am[0] + t.h_fm[0], t.h_m, 1e-14);
        assert_close(t.h_fm[1] - t.h_am[0], t.c, 1e-12);
        assert_close(t.h_fm[0] - t.h_am[1], t.c, 1e-12);
        assert_close(t.x_sm[wheel == 1 ? 1 : 0], 0.03, 1e-14);
    }
}

/* AGMA 2005 and ISO 23509, annex C (from memory): 0.50 at ratio 1, 0.2825 at ratio 2, 90 degrees.
 */
static void usual_addendum_of_the_wheel_falls_with_the_ratio(void **state)
{
    (void)state;
    const ts_bevel_pair    equal = paired(30, 30, 90.0, 35.0), twice = paired(20, 40, 90.0, 35.0);
    const ts_bevel_pair    back = paired(40, 20, 90.0, 35.0);
    const ts_bevel_profile p    = ts_bevel_profile_usual(&twice, NULL);

    assert_close_abs(ts_bevel_profile_usual(&equal, NULL).x_hm1, 0.0, 1e-15);
    assert_close(p.x_hm1, 2.0 * (0.5 - (0.21 + 0.29 / 4.0)), 1e-13);
    assert_close(ts_bevel_profile_usual(&back, NULL).x_hm1, -p.x_hm1, 1e-14);
    assert_close(p.k_hfp, 1.25, 1e-15);
}

/* ---- taper ----------------------------------------------------------------------------------- */

static void standard_taper_brings_root_lines_to_the_apex(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(37, 41, 84.0, 0.0);
    const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_STANDARD, (double)NAN);
    const ts_bevel_teeth       t    = toothed(&pair, &in);
    ts_bevel_blank             blank;

    ts_bevel_blank_solve(&pair, &t, &blank, NULL);
    for (int gear = 0; gear < 2; gear++) {
        assert_close_abs(blank.t_zR[gear], 0.0, 1e-15);
        assert_true(blank.t_zF[gear] > 0.0); /* tips parallel to the mating roots */
        assert_close(t.theta_a[gear], t.theta_f[1 - gear], 1e-15);
    }
}

static void uniform_depth_is_the_same_at_both_ends(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(37, 41, 90.0, 35.0);
    const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_UNIFORM, 57e-3);
    const ts_bevel_teeth       t    = toothed(&pair, &in);

    for (int gear = 0; gear < 2; gear++) {
        assert_same_double(t.h_ae[gear], t.h_am[gear]);
        assert_same_double(t.h_fi[gear], t.h_fm[gear]);
        assert_same_double(t.delta_a[gear], t.delta_f[gear]);
    }
}

/* Width of both slots together at their roots, at cone distance R: the normal pitch less what the
 * flanks close on the way down. */
static double slots_at(const ts_bevel_pair *pair, const ts_bevel_teeth *t, double R)
{
    const double r = t->in.r_c0, R_m = pair->R_m, beta_m = pair->in.beta_m;
    const double sine =
        isnan(r) ? 0.0 : (2.0 * R_m * r * sin(beta_m) - R_m * R_m + R * R) / (2.0 * R * r);
    const double pitch = 2.0 * pi * R * sin(pair->delta_1) / pair->in.z_1 * sqrt(1.0 - sine * sine);
    double       depth = 0.0;

    for (int gear = 0; gear < 2; gear++)
        depth += t->h_fm[gear] + (R - R_m) * t->theta_f[gear];
    return pitch - 2.0 * tan(pair->in.alpha_n) * depth;
}

/* derived: this is what the taper is for; the sum of angles makes the slots constant to first order
 * in the mean section. */
static void slot_taper_keeps_the_slots_as_wide(void **state)
{
    (void)state;
    const double spirals[] = {0.0, 15.0, 35.0};

    for (size_t i = 0; i < sizeof spirals / sizeof spirals[0]; i++) {
        const ts_bevel_pair        pair = paired(27, 41, 90.0, spirals[i]);
        const ts_bevel_teeth_input in =
            usual(&pair, TS_BEVEL_TAPER_SLOT, spirals[i] > 0.0 ? 57e-3 : (double)NAN);
        const ts_bevel_teeth t    = toothed(&pair, &in);
        const double         step = 1e-4;
        const double         change =
            (slots_at(&pair, &t, pair.R_m + step) - slots_at(&pair, &t, pair.R_m - step)) /
            (2.0 * step);

        assert_close_abs(change, 0.0, 1e-6);
        assert_true(t.Sigma_theta_f > 0.01);
    }
}

static void tilted_taper_is_bound_by_the_standard_one(void **state)
{
    (void)state;
    const ts_bevel_pair        pair  = paired(27, 41, 90.0, 35.0);
    const double               R_m   = pair.R_m;
    const ts_bevel_teeth_input slot  = usual(&pair, TS_BEVEL_TAPER_SLOT, 3.0 * R_m);
    const ts_bevel_teeth_input wide  = usual(&pair, TS_BEVEL_TAPER_TILTED, 3.0 * R_m);
    const ts_bevel_teeth_input tight = usual(&pair, TS_BEVEL_TAPER_TILTED, 0.7 * R_m);
    const ts_bevel_teeth_input small = usual(&pair, TS_BEVEL_TAPER_SLOT, 0.7 * R_m);
    const ts_bevel_teeth_input plain = usual(&pair, TS_BEVEL_TAPER_STANDARD, 3.0 * R_m);
    const double               bound = 1.3 * toothed(&pair, &plain).Sigma_theta_f;

    assert_true(toothed(&pair, &slot).Sigma_theta_f > bound);
    assert_close(toothed(&pair, &wide).Sigma_theta_f, bound, 1e-14);
    assert_same_double(toothed(&pair, &tight).Sigma_theta_f, toothed(&pair, &small).Sigma_theta_f);
}

/* ---- blank ----------------------------------------------------------------------------------- */

/* "Elements of Metric Gear Technology" (SDP/SI) and KHK reference, Gleason straight bevels 20/40,
 * m 3, b 22 (from memory, reproduced to the last digit): outer heights 4.035, 1.965, 2.529, 4.599.
 * The teeth are given here by their mean section instead. */
static void printed_blank_follows_from_the_mean_section(void **state)
{
    (void)state;
    const ts_bevel_pair_input in = {.z_1     = 20,
                                    .z_2     = 40,
                                    .m_et    = 3e-3,
                                    .Sigma   = pi / 2.0,
                                    .alpha_n = 20.0 * degree,
                                    .b       = 22e-3};
    ts_bevel_pair             pair;
    ts_bevel_blank            blank;

    assert_int_equal(ts_bevel_pair_solve(&in, &pair, NULL), TS_BEVEL_FINE);
    const double share = pair.R_m / pair.R_e, m_mn = pair.m_mn;
    const double h_fm1 = 2.529e-3 * share, h_fm2 = 4.599e-3 * share;
    const double h_am1 = 4.035e-3 - 11e-3 * 4.599e-3 / pair.R_e;
    const double h_am2 = 1.965e-3 - 11e-3 * 2.529e-3 / pair.R_e;

    const ts_bevel_teeth_input teeth_in = {.taper   = TS_BEVEL_TAPER_STANDARD,
                                           .profile = {.k_hap = (h_am1 + h_am2) / (2.0 * m_mn),
                                                       .k_hfp = (h_fm1 + h_fm2) / (2.0 * m_mn),
                                                       .x_hm1 = (h_am1 - h_am2) / (2.0 * m_mn)},
                                           .r_c0    = (double)NAN};
    const ts_bevel_teeth       t        = toothed(&pair, &teeth_in);
    ts_bevel_blank_solve(&pair, &t, &blank, NULL);

    assert_close(t.h_ae[0], 4.035e-3, 1e-6);
    assert_close(t.h_fe[1], 4.599e-3, 1e-6);
    assert_close(t.theta_f[0] / degree, 2.15903, 3e-6);
    assert_close(t.delta_a[0] / degree, 30.48699, 3e-7);
    assert_close(t.delta_f[1] / degree, 59.51301, 3e-7);
    assert_close(blank.d_ae[0], 67.218e-3, 1e-6);
    assert_close(blank.d_ae[1], 121.7575e-3, 1e-6);
    assert_close(blank.t_xo[0], 58.1955e-3, 1e-6);
    assert_close(blank.t_xo[0] - blank.t_xi[0], 19.0029e-3, 3e-6);
    assert_close(blank.d_ai[0], 44.8425e-3, 1.2e-6);
    assert_close(blank.d_ai[1], 81.6609e-3, 1e-6);
}

/* derived: face and root cone through the points at their ends. */
static void cones_pass_through_their_ends(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(27, 41, 84.0, 35.0);
    const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_SLOT, 60e-3);
    const ts_bevel_teeth       t    = toothed(&pair, &in);
    ts_bevel_blank             blank;

    ts_bevel_blank_solve(&pair, &t, &blank, NULL);
    for (int gear = 0; gear < 2; gear++) {
        const double delta     = gear == 0 ? pair.delta_1 : pair.delta_2;
        const double root_at_e = pair.R_e * cos(delta) + t.h_fe[gear] * sin(delta);

        assert_close(blank.d_ae[gear] / 2.0,
                     (blank.t_xo[gear] - blank.t_zF[gear]) * tan(t.delta_a[gear]), 1e-12);
        assert_close(blank.d_ai[gear] / 2.0,
                     (blank.t_xi[gear] - blank.t_zF[gear]) * tan(t.delta_a[gear]), 1e-12);
        assert_close(blank.d_fe[gear] / 2.0, (root_at_e - blank.t_zR[gear]) * tan(t.delta_f[gear]),
                     1e-12);
    }
}

/* ---- spiral, undercut ------------------------------------------------------------------------ */

/* The tooth as a circle about the cutter's centre in the plane of the crown gear, and its angle to
 * the ray from the apex where they meet. */
static double angle_on_circle(double R, double R_m, double beta_m, double r)
{
    const double x = R_m - r * sin(beta_m), y = r * cos(beta_m), far = hypot(x, y);
    const double at = atan2(y, x) - acos((R * R + far * far - r * r) / (2.0 * R * far));
    const double p = R * cos(at), q = R * sin(at);
    /* tangent of the circle against the ray */
    const double tx = -(q - y), ty = p - x;
    return fabs(atan((tx * q - ty * p) / (tx * p + ty * q)));
}

static void spiral_angles_lie_on_the_cutters_circle(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(27, 41, 90.0, 35.0);
    const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_STANDARD, 57e-3);
    const ts_bevel_teeth       t    = toothed(&pair, &in);
    ts_bevel_spiral            s;

    ts_bevel_spiral_solve(&pair, &t, &s, NULL);
    assert_close(angle_on_circle(pair.R_m, pair.R_m, 35.0 * degree, 57e-3), 35.0 * degree, 1e-12);
    assert_close(s.beta_e, angle_on_circle(pair.R_e, pair.R_m, 35.0 * degree, 57e-3), 1e-12);
    assert_close(s.beta_i, angle_on_circle(t.R_i, pair.R_m, 35.0 * degree, 57e-3), 1e-12);
    assert_true(s.beta_e > 35.0 * degree && s.beta_i < 35.0 * degree);
}

/* Zerol: curved by the cutter, without a spiral in the middle; so the angle grows from there to
 * both ends, and against the sense at one of them. */
static void zerol_teeth_have_no_spiral_in_the_middle_alone(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(27, 41, 90.0, 0.0);
    const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_STANDARD, 57e-3);
    const ts_bevel_teeth       t    = toothed(&pair, &in);
    ts_bevel_spiral            s;

    ts_bevel_spiral_solve(&pair, &t, &s, NULL);
    assert_close(fabs(s.beta_e), angle_on_circle(pair.R_e, pair.R_m, 0.0, 57e-3), 1e-10);
    assert_close(fabs(s.beta_i), angle_on_circle(t.R_i, pair.R_m, 0.0, 57e-3), 1e-10);
    assert_true(s.beta_e > 0.0 && s.beta_i < 0.0);
}

static void straight_teeth_have_no_spiral_and_unknown_cutters_leave_it_open(void **state)
{
    (void)state;
    const ts_bevel_pair straight = paired(27, 41, 90.0, 0.0), curved = paired(27, 41, 90.0, 35.0);
    const ts_bevel_teeth_input a  = usual(&straight, TS_BEVEL_TAPER_STANDARD, (double)NAN);
    const ts_bevel_teeth_input b  = usual(&curved, TS_BEVEL_TAPER_STANDARD, (double)NAN);
    const ts_bevel_teeth_input c  = usual(&curved, TS_BEVEL_TAPER_STANDARD, 4e-3); /* too small */
    const ts_bevel_teeth       ta = toothed(&straight, &a), tb = toothed(&curved, &b);
    const ts_bevel_teeth       tc = toothed(&curved, &c);
    ts_bevel_spiral            s;

    ts_bevel_spiral_solve(&straight, &ta, &s, NULL);
    assert_same_double(s.beta_e, 0.0);
    assert_true(isfinite(s.x_hmmin_i1));
    ts_bevel_spiral_solve(&curved, &tb, &s, NULL);
    assert_nan(s.beta_e);
    assert_nan(s.x_hmmin_i2);
    assert_true(isfinite(s.clear_undercut_1));
    ts_bevel_spiral_solve(&curved, &tc, &s, NULL);
    assert_nan(s.beta_i);
}

/* ---- cylindrical gears: limit and stand-in --------------------------------------------------- */

/* Nearly parallel axes: the pair becomes a cylindrical one, which is solved by other code. */
static void small_shaft_angle_gives_the_cylindrical_pair(void **state)
{
    (void)state;
    for (double beta = 0.0; beta < 36.0; beta += 35.0) {
        ts_bevel_pair_input in = {.z_1     = 23,
                                  .z_2     = 41,
                                  .m_et    = 2.5e-3,
                                  .Sigma   = 2e-5,
                                  .alpha_n = 20.0 * degree,
                                  .beta_m  = beta * degree,
                                  .b       = 18e-3};
        ts_bevel_pair       pair;
        ts_cylindrical_pair other;
        ts_bevel_virtual    v;
        ts_bevel_spiral     s;

        assert_int_equal(ts_bevel_pair_solve(&in, &pair, NULL), TS_BEVEL_FINE);
        const ts_bevel_teeth_input teeth_in = {
            .taper = TS_BEVEL_TAPER_UNIFORM, .profile = {1.0, 1.25, 0.2, 0.0}, .r_c0 = (double)NAN};
        const ts_bevel_teeth t = toothed(&pair, &teeth_in);
        ts_bevel_virtual_solve(&pair, &t, 1.0, &v, NULL);
        ts_bevel_spiral_solve(&pair, &t, &s, NULL);

        const ts_cylindrical_pair_input twin = {.z_1     = 23,
                                                .z_2     = 41,
                                                .m_n     = pair.m_mn,
                                                .alpha_n = in.alpha_n,
                                                .beta    = in.beta_m,
                                                .b_1     = 18e-3,
                                                .b_2     = 18e-3,
                                                .x_1     = 0.2,
                                                .x_2     = -0.2,
                                                .shift   = TS_SHIFT_GIVEN,
                                                .tip     = TS_TIP_GIVEN,
                                                .rack    = {1.0, 1.1, 0.0}};
        assert_int_equal(ts_cylindrical_pair_solve(&twin, &other, NULL), TS_PAIR_FINE);

        assert_close(v.a_v, other.a, 1e-9);
        assert_close(v.g_valpha, other.g_alpha, 1e-8);
        assert_close(v.eps_valpha, other.eps_alpha, 1e-8);
        assert_close_abs(v.eps_vbeta, other.eps_beta, 1e-9);
        assert_close(v.d_va[0], other.d_a1, 1e-9);
        assert_close(v.d_vb[1], other.d_b2, 1e-9);
        assert_close(t.s_mn[0], other.s_t1 * cos(in.beta_m), 1e-9);
        assert_close(v.rho_rel,
                     other.rho_C1 * (other.rho_T - other.rho_C1) / other.rho_T / cos(other.beta_b),
                     1e-8);
        /* with 1.1 times the addendum as straight dedendum of the other rack */
        assert_close(s.x_hmmin_m1, other.x_min1, 1e-8);
        assert_close(s.x_hmmin_m2, other.x_min2, 1e-8);
        if (beta > 0.0)
            continue;
        assert_close(v.s_van[0], other.s_an1, 1e-8);
        assert_close(v.s_van[1], other.s_an2, 1e-8);
    }
}

/* ISO 10300-2:2014 writes the relative radius with the inclination of the line of contact on the
 * flank, tan(beta_B) = tan(beta_m) sin(alpha_n), and profile radii in the normal section; here it
 * follows from the virtual gears: both must be one (derived). */
static void relative_radius_agrees_with_the_flanks_own_curvature(void **state)
{
    (void)state;
    for (double Sigma = 60.0; Sigma < 111.0; Sigma += 10.0) {
        const ts_bevel_pair        pair = paired(31, 44, Sigma, 35.0);
        const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_UNIFORM, (double)NAN);
        const ts_bevel_teeth       t    = toothed(&pair, &in);
        ts_bevel_virtual           v;

        ts_bevel_virtual_solve(&pair, &t, 0.85, &v, NULL);
        const double alpha = pair.in.alpha_n, beta = pair.in.beta_m;
        const double cones = (1.0 / tan(pair.delta_1) + 1.0 / tan(pair.delta_2)) / pair.R_m;
        const double rho_t = sin(alpha) / (cos(beta) * cos(beta) * cones);
        const double cos_B = cos(atan(tan(beta) * sin(alpha)));

        assert_close(v.rho_rel, rho_t * cos_B * cos_B, 1e-13);
    }
}

/* derived: cutting a normal section does not change how long the path is in base pitches. */
static void normal_section_agrees_with_the_transverse_one(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(31, 44, 90.0, 35.0);
    const ts_bevel_teeth_input in   = usual(&pair, TS_BEVEL_TAPER_UNIFORM, (double)NAN);
    const ts_bevel_teeth       t    = toothed(&pair, &in);
    ts_bevel_virtual           v;

    ts_bevel_virtual_solve(&pair, &t, 0.85, &v, NULL);
    assert_close(cos(v.beta_vb) * cos(v.alpha_vet), cos(pair.in.alpha_n) * cos(pair.in.beta_m),
                 1e-14);
    assert_close(v.d_vn[0], v.d_v[0] / pow(cos(v.beta_vb), 2.0), 1e-13);
    assert_close(v.z_v[0] / v.z_v[1], v.d_v[0] / v.d_v[1], 1e-13);
    assert_close(v.eps_vgamma, hypot(v.eps_valpha, v.eps_vbeta), 1e-14);
    assert_close(v.p_vet, pi * v.d_vb[0] / v.z_v[0], 1e-13);
}

/* ---- symmetry, workings, bad input ----------------------------------------------------------- */

static void swapping_the_gears_swaps_the_teeth(void **state)
{
    (void)state;
    for (int taper = TS_BEVEL_TAPER_STANDARD; taper <= TS_BEVEL_TAPER_TILTED; taper++) {
        const ts_bevel_pair  a = paired(27, 41, 84.0, 35.0), b = paired(41, 27, 84.0, 35.0);
        ts_bevel_teeth_input in = usual(&a, (ts_bevel_taper)taper, 57e-3);
        in.profile.x_smn        = 0.02;
        const ts_bevel_teeth t  = toothed(&a, &in);
        in.profile.x_hm1        = -in.profile.x_hm1;
        in.profile.x_smn        = -0.02;
        const ts_bevel_teeth q  = toothed(&b, &in);
        ts_bevel_virtual     v, w;

        ts_bevel_virtual_solve(&a, &t, 0.85, &v, NULL);
        ts_bevel_virtual_solve(&b, &q, 0.85, &w, NULL);
        for (int gear = 0; gear < 2; gear++) {
            assert_close(t.h_ae[gear], q.h_ae[1 - gear], 1e-14);
            assert_close(t.delta_f[gear], q.delta_f[1 - gear], 1e-14);
            assert_close(t.s_mnc[gear], q.s_mnc[1 - gear], 1e-13);
            assert_close(v.s_van[gear], w.s_van[1 - gear], 1e-12);
        }
        assert_close(v.eps_valpha, w.eps_valpha, 1e-12);
        assert_close(v.rho_rel, w.rho_rel, 1e-13);
    }
}

static void workings_change_no_bit(void **state)
{
    (void)state;
    ts_arena                  *arena    = ts_arena_open(NULL);
    ts_workings               *workings = ts_workings_open(arena);
    const ts_bevel_pair        pair     = paired(27, 41, 84.0, 35.0);
    const ts_bevel_teeth_input in       = usual(&pair, TS_BEVEL_TAPER_TILTED, 57e-3);
    ts_bevel_teeth             a, b;
    ts_bevel_virtual           v, w;
    ts_bevel_blank             c, d;
    ts_bevel_spiral            e, f;

    ts_bevel_teeth_solve(&pair, &in, &a, NULL);
    ts_bevel_teeth_solve(&pair, &in, &b, workings);
    ts_bevel_virtual_solve(&pair, &a, 0.85, &v, NULL);
    ts_bevel_virtual_solve(&pair, &b, 0.85, &w, workings);
    ts_bevel_blank_solve(&pair, &a, &c, NULL);
    ts_bevel_blank_solve(&pair, &b, &d, workings);
    ts_bevel_spiral_solve(&pair, &a, &e, NULL);
    ts_bevel_spiral_solve(&pair, &b, &f, workings);
    assert_memory_equal(&v, &w, sizeof v);
    assert_memory_equal(&c, &d, sizeof c);
    assert_memory_equal(&e, &f, sizeof e);
    assert_memory_equal(&a.R_i, &b.R_i, sizeof a - offsetof(ts_bevel_teeth, R_i));
    assert_true(ts_workings_complete(workings) && ts_workings_count(workings) > 90);
    ts_arena_close(arena);
}

static void expect_fault(const ts_bevel_pair *pair, const ts_bevel_teeth_input *in,
                         ts_bevel_teeth_fault fault)
{
    ts_bevel_teeth t;

    assert_int_equal(ts_bevel_teeth_solve(pair, in, &t, NULL), fault);
    assert_nan(t.R_i);
    assert_nan(t.h_am[0]);
    assert_nan(t.h_amc[1]);
    assert_true(strlen(ts_bevel_teeth_fault_says(fault)) > 10);
}

static void impossible_teeth_are_refused(void **state)
{
    (void)state;
    const ts_bevel_pair        pair = paired(27, 41, 90.0, 35.0);
    const ts_bevel_teeth_input good = usual(&pair, TS_BEVEL_TAPER_STANDARD, 57e-3);
    ts_bevel_teeth_input       in;

    in               = good;
    in.profile.k_hap = (double)NAN;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_OUT_OF_RANGE);
    in               = good;
    in.profile.k_hfp = in.profile.k_hap;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_OUT_OF_RANGE);
    in               = good;
    in.profile.x_hm1 = 1.0;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_OUT_OF_RANGE);
    in      = good;
    in.r_c0 = 0.0;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_OUT_OF_RANGE);
    in      = good;
    in.j_mn = (double)NAN;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_OUT_OF_RANGE);
    in       = good;
    in.taper = TS_BEVEL_TAPER_TILTED;
    in.r_c0  = (double)NAN;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_NO_CUTTER);
    in       = good;
    in.taper = TS_BEVEL_TAPER_SLOT;
    in.r_c0  = 6e-3; /* turns the taper round and eats the outer end */
    expect_fault(&pair, &in, TS_BEVEL_TEETH_NO_DEPTH);
    in               = good;
    in.profile.x_smn = 0.95;
    expect_fault(&pair, &in, TS_BEVEL_TEETH_NO_THICKNESS);

    const ts_bevel_pair  few  = paired(4, 60, 90.0, 0.0);
    ts_bevel_teeth_input deep = usual(&few, TS_BEVEL_TAPER_STANDARD, (double)NAN);
    deep.profile.x_hm1        = -0.9;
    expect_fault(&few, &deep, TS_BEVEL_TEETH_NO_ROOT_CONE);
}

/* ---- tolerance ------------------------------------------------------------------------------- */

static void two_grades_double_the_tolerance(void **state)
{
    (void)state;
    const double fine = ts_bevel_pitch_tolerance(0.1, 2.5e-3, 4.0, 0, NULL);

    assert_close(fine, (0.003 * 100.0 + 0.3 * 2.5 + 5.0) * 1e-6, 1e-14); /* 6.05 um at grade 4 */
    assert_close(ts_bevel_pitch_tolerance(0.1, 2.5e-3, 6.0, 1, NULL), 2.0 * fine, 1e-14);
    assert_close(ts_bevel_cumulative_tolerance(0.1, 2.5e-3, 7.0, 0, NULL) /
                     ts_bevel_cumulative_tolerance(0.1, 2.5e-3, 6.0, 0, NULL),
                 sqrt(2.0), 1e-14);
    assert_nan(ts_bevel_pitch_tolerance(0.1, 2.5e-3, 1.0, 0, NULL));
    assert_nan(ts_bevel_pitch_tolerance(0.1, 2.5e-3, (double)NAN, 0, NULL));
    assert_true(ts_bevel_tolerance_within(0.1, 2.5e-3, 41.0));
    assert_false(ts_bevel_tolerance_within(0.1, 0.5e-3, 41.0));
    /* Where the standard ends: 1 to 50 mm, 5 to 400 teeth, 5 to 2500 mm (ISO 17485:2006, 1). */
    const double ends[6][3] = {{0.1, 1e-3, 41.0},    {0.1, 50e-3, 41.0},   {0.1, 2.5e-3, 5.0},
                               {0.1, 2.5e-3, 400.0}, {5e-3, 2.5e-3, 41.0}, {2.5, 2.5e-3, 41.0}};
    const int    which[6]   = {1, 1, 2, 2, 0, 0};
    for (int i = 0; i < 6; i++) {
        double past[3] = {ends[i][0], ends[i][1], ends[i][2]};
        assert_true(ts_bevel_tolerance_within(past[0], past[1], past[2]));
        past[which[i]] *= i % 2 == 0 ? 0.999 : 1.001;
        assert_false(ts_bevel_tolerance_within(past[0], past[1], past[2]));
    }
}

/* ---- the inner end --------------------------------------------------------------------------- */

static ts_bevel_toe toe_of(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth)
{
    ts_bevel_spiral spiral;
    ts_bevel_toe    toe;

    ts_bevel_spiral_solve(pair, teeth, &spiral, NULL);
    ts_bevel_toe_solve(pair, teeth, &spiral, &toe, NULL);
    return toe;
}

/* A face of next to nothing has the same teeth at its inner end as in its middle. */
static void toe_of_a_narrow_face_is_its_mean_section(void **state)
{
    (void)state;
    for (int taper = TS_BEVEL_TAPER_STANDARD; taper <= TS_BEVEL_TAPER_TILTED; taper++) {
        const ts_bevel_pair_input in = {
            .z_1     = 20,
            .z_2     = 44,
            .m_et    = 2.5e-3,
            .Sigma   = 90.0 * degree,
            .alpha_n = 20.0 * degree,
            .beta_m  = 30.0 * degree,
            .b       = 1e-9,
        };
        ts_bevel_pair pair;
        assert_int_equal(ts_bevel_pair_solve(&in, &pair, NULL), TS_BEVEL_FINE);
        const ts_bevel_teeth_input how   = usual(&pair, (ts_bevel_taper)taper, 60e-3);
        const ts_bevel_teeth       teeth = toothed(&pair, &how);
        const ts_bevel_toe         toe   = toe_of(&pair, &teeth);
        ts_bevel_virtual           virt;
        ts_bevel_virtual_solve(&pair, &teeth, 1.0, &virt, NULL);
        for (int g = 0; g < 2; g++) {
            assert_close(toe.s_ni[g], teeth.s_mn[g], 1e-6);
            assert_close(toe.s_ai[g], virt.s_van[g], 1e-6);
        }
        assert_close(toe.m_ni, pair.m_mn, 1e-6);
    }
}

/* derived: straight teeth of standard taper are the same picture at every cone distance, but for
 * the clearance, which stays; without it they would be so exactly. */
static void toe_of_tapered_straight_teeth_is_the_mean_section_made_small(void **state)
{
    (void)state;
    const ts_bevel_pair  pair = paired(20, 44, 90.0, 0.0);
    ts_bevel_teeth_input how  = usual(&pair, TS_BEVEL_TAPER_STANDARD, (double)NAN);
    ts_bevel_virtual     virt;

    how.profile.k_hfp          = how.profile.k_hap * (1.0 + 1e-9);
    const ts_bevel_teeth teeth = toothed(&pair, &how);
    const ts_bevel_toe   toe   = toe_of(&pair, &teeth);
    ts_bevel_virtual_solve(&pair, &teeth, 1.0, &virt, NULL);
    for (int g = 0; g < 2; g++) {
        assert_close(toe.s_ni[g], teeth.s_mn[g] * teeth.R_i / pair.R_m, 1e-12);
        assert_close(toe.s_ai[g], virt.s_van[g] * teeth.R_i / pair.R_m, 1e-6);
    }
}

/* What the slot keeps along the face the tooth loses. */
static void teeth_of_constant_slots_thin_down_faster(void **state)
{
    (void)state;
    const ts_bevel_pair        pair    = paired(20, 44, 90.0, 20.0);
    const ts_bevel_teeth_input tapered = usual(&pair, TS_BEVEL_TAPER_STANDARD, 70e-3);
    const ts_bevel_teeth_input slotted = usual(&pair, TS_BEVEL_TAPER_SLOT, 70e-3);
    const ts_bevel_teeth       a = toothed(&pair, &tapered), b = toothed(&pair, &slotted);
    const ts_bevel_toe         wide = toe_of(&pair, &a), thin = toe_of(&pair, &b);

    for (int g = 0; g < 2; g++) {
        assert_true(thin.s_ni[g] < wide.s_ni[g]);
        assert_close(pi * thin.m_ni - thin.s_ni[g], pi * b.m_mn - b.s_mn[g], 1e-12);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(toe_of_a_narrow_face_is_its_mean_section),
        cmocka_unit_test(toe_of_tapered_straight_teeth_is_the_mean_section_made_small),
        cmocka_unit_test(teeth_of_constant_slots_thin_down_faster),
        cmocka_unit_test(both_types_of_profile_data_mean_the_same_teeth),
        cmocka_unit_test(usual_addendum_of_the_wheel_falls_with_the_ratio),
        cmocka_unit_test(standard_taper_brings_root_lines_to_the_apex),
        cmocka_unit_test(uniform_depth_is_the_same_at_both_ends),
        cmocka_unit_test(slot_taper_keeps_the_slots_as_wide),
        cmocka_unit_test(tilted_taper_is_bound_by_the_standard_one),
        cmocka_unit_test(printed_blank_follows_from_the_mean_section),
        cmocka_unit_test(cones_pass_through_their_ends),
        cmocka_unit_test(spiral_angles_lie_on_the_cutters_circle),
        cmocka_unit_test(zerol_teeth_have_no_spiral_in_the_middle_alone),
        cmocka_unit_test(straight_teeth_have_no_spiral_and_unknown_cutters_leave_it_open),
        cmocka_unit_test(small_shaft_angle_gives_the_cylindrical_pair),
        cmocka_unit_test(relative_radius_agrees_with_the_flanks_own_curvature),
        cmocka_unit_test(normal_section_agrees_with_the_transverse_one),
        cmocka_unit_test(swapping_the_gears_swaps_the_teeth),
        cmocka_unit_test(workings_change_no_bit),
        cmocka_unit_test(impossible_teeth_are_refused),
        cmocka_unit_test(two_grades_double_the_tolerance),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
