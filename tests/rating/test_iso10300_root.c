/* Is the critical section of bevel teeth where the cut fillet has its tangent at 30 degrees? */
#include "element/involute.h"
#include "rating/iso10300/bevel_root.h"
#include "rating/iso6336/root_form.h"
#include "support/close.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

/* A spur-like virtual gear: m_mn 2 mm, 20 degrees, cutter 1.25 deep. */
static ts_bevel_root_input tooth(double z_vn, double x_hm, double x_sm, double rho)
{
    const double m = 2e-3, alpha_n = 20.0 * degree;

    return (ts_bevel_root_input){
        .z_vn    = z_vn,
        .d_van   = m * (z_vn + 2.0 * (1.0 + x_hm)),
        .d_vbn   = m * z_vn * cos(alpha_n),
        .m_mn    = m,
        .alpha_n = alpha_n,
        .x_hm    = x_hm,
        .x_sm    = x_sm,
        .h_am    = m * (1.0 + x_hm),
        .s_mn    = m * (pi / 2.0 + 2.0 * (x_sm + x_hm * tan(alpha_n))),
        .h_a0    = 1.25 * m,
        .rho_a0  = rho * m,
    };
}

typedef struct section {
    double s_Fn, h_Fa;
} section;

/* The cutter's edge rolls: its centre stands at (u, y) from the rolling point, and the fillet lies
 * rho further out on the line from there.  `lean` is the fillet's tangent against the tooth. */
static double fillet_at(const ts_bevel_root_input *in, double u, double *across, double *along)
{
    const double m = in->m_mn, r = in->z_vn * m / 2.0, alpha = in->alpha_n;
    const double y = in->rho_a0 - in->h_a0 + in->x_hm * m;
    /* the edge touches the straight flank of the cutter from inside */
    const double half =
        (pi / 4.0 - in->x_sm) * m - (in->h_a0 - in->rho_a0) * tan(alpha) - in->rho_a0 / cos(alpha);
    const double turn = (u - half) / r + pi / in->z_vn, far = hypot(u, y);
    const double qx = u + in->rho_a0 * u / far, qy = r + y + in->rho_a0 * y / far;

    *across = fabs(qx * cos(turn) - qy * sin(turn));
    *along  = qx * sin(turn) + qy * cos(turn);
    return pi / 2.0 - atan2(u, -y) - turn; /* the tangent is square to the line */
}

static section searched(const ts_bevel_root_input *in)
{
    const double y   = in->h_a0 - in->rho_a0 - in->x_hm * in->m_mn;
    double       low = 1e-12, high = y / tan(in->alpha_n), across = 0.0, along = 0.0;

    for (int i = 0; i < 200; i++) {
        const double u = (low + high) / 2.0;

        if (fillet_at(in, u, &across, &along) > pi / 6.0)
            low = u;
        else
            high = u;
    }
    const double at_tip   = acos(in->d_vbn / in->d_van);
    const double half_tip = in->s_mn / (in->z_vn * in->m_mn) + ts_inv(in->alpha_n) - ts_inv(at_tip);
    return (section){2.0 * across, in->d_vbn / 2.0 / cos(at_tip - half_tip) - along};
}

static void the_tangent_is_found_on_the_rolled_fillet(void **state)
{
    (void)state;
    for (double z = 18.0; z < 200.0; z *= 1.7)
        for (double x = -0.3; x < 0.5; x += 0.3)
            for (double x_s = -0.05; x_s < 0.06; x_s += 0.05) {
                const ts_bevel_root_input in = tooth(z, x, x_s, 0.25);
                const section             s  = searched(&in);
                ts_bevel_root             root;

                assert_true(ts_bevel_root_solve(&in, 0, &root, NULL));
                assert_close(root.s_Fn, s.s_Fn, 1e-10);
                assert_close(root.h_Fa, s.h_Fa, 1e-10);
            }
}

/* ISO 6336-3 writes the same section for cylindrical gears: other code, load at the tip. */
static void the_form_is_that_of_the_cylindrical_gear(void **state)
{
    (void)state;
    for (double z = 18.0; z < 200.0; z *= 1.7) {
        const ts_bevel_root_input in   = tooth(z, 0.2, 0.0, 0.3);
        const double              m    = in.m_mn;
        const ts_root_form_input  twin = {.z       = z,
                                          .x       = 0.2,
                                          .d       = m * z,
                                          .d_a     = in.d_van,
                                          .m_n     = m,
                                          .alpha_n = in.alpha_n,
                                          .rack    = {1.0, 1.25, 0.3},
                                          .load    = TS_ROOT_LOAD_TIP};
        ts_bevel_root             root;
        ts_root_form              form;

        assert_true(ts_bevel_root_solve(&in, 1, &root, NULL));
        assert_true(ts_root_form_solve(&twin, &form, NULL));
        assert_close(root.Y_Fa, form.Y_F, 1e-12);
        assert_close(root.rho_F, form.rho_F, 1e-12);
    }
}

/* derived: a wheel cut without generation has the teeth of a rack. */
static void endless_teeth_are_those_cut_without_generation(void **state)
{
    (void)state;
    const ts_bevel_root_input generated = tooth(1e7, -0.15, 0.02, 0.25);
    ts_bevel_root_input       formed    = generated;
    ts_bevel_root             a, b;

    formed.formed = true;
    assert_true(ts_bevel_root_solve(&generated, 0, &a, NULL));
    assert_true(ts_bevel_root_solve(&formed, 0, &b, NULL));
    assert_close(b.s_Fn, a.s_Fn, 1e-6);
    assert_close(b.h_Fa, a.h_Fa, 1e-5);
    assert_close(b.Y_Fa, a.Y_Fa, 1e-5);
    assert_close(b.Y_Sa, a.Y_Sa, 1e-5);
}

static void thicker_teeth_and_rounder_fillets_are_stronger(void **state)
{
    (void)state;
    const ts_bevel_root_input plain    = tooth(40.0, 0.0, 0.0, 0.2),
                              thick    = tooth(40.0, 0.0, 0.05, 0.2);
    const ts_bevel_root_input round    = tooth(40.0, 0.0, 0.0, 0.35);
    ts_bevel_root_input       relieved = plain;
    ts_bevel_root             a, b, c, d;

    relieved.s_pr = 0.05e-3;
    assert_true(ts_bevel_root_solve(&plain, 0, &a, NULL));
    assert_true(ts_bevel_root_solve(&thick, 0, &b, NULL));
    assert_true(ts_bevel_root_solve(&round, 0, &c, NULL));
    assert_true(ts_bevel_root_solve(&relieved, 0, &d, NULL));
    assert_true(b.Y_Fa < a.Y_Fa);
    assert_true(c.Y_Fa * c.Y_Sa < a.Y_Fa * a.Y_Sa);
    assert_true(d.s_Fn < a.s_Fn);
}

static void an_edge_too_round_for_its_slot_is_refused(void **state)
{
    (void)state;
    const ts_bevel_root_input fat = tooth(40.0, 0.0, 0.0, 0.6),
                              odd = tooth((double)NAN, 0.0, 0.0, 0.2);
    ts_bevel_root root;

    assert_false(ts_bevel_root_solve(&fat, 0, &root, NULL));
    assert_nan(root.E);
    assert_nan(root.Y_Sa);
    assert_false(ts_bevel_root_solve(&odd, 0, &root, NULL));
    assert_nan(root.Y_Fa);
}

/* ---- overlap, slant -------------------------------------------------------------------------- */

static void overlap_factor_joins_its_cases(void **state)
{
    (void)state;
    assert_close(ts_bevel_bending_overlap(1.6, 0.0, NULL), 0.25 + 0.75 / 1.6, 1e-15);
    assert_close(ts_bevel_bending_overlap(1.6, 1.0, NULL), 0.625, 1e-15);
    assert_close(ts_bevel_bending_overlap(1.6, 1.7, NULL), 0.625, 1e-15);
    assert_close(ts_bevel_bending_overlap(2.5, 0.0, NULL), 0.625, 1e-15);
    assert_close(ts_bevel_bending_overlap(1.2, 0.999999999, NULL), 0.625, 1e-8);
}

static void the_slant_factor_is_least_where_its_line_covers_most_of_the_face(void **state)
{
    (void)state;
    ts_bevel_slant_input in   = {.b_v = 18e-3, .beta_m = 35.0 * degree, .h_m = 4e-3};
    double               last = 10.0;

    in.beta_vb = asin(sin(in.beta_m) * cos(20.0 * degree));
    for (in.l_bm = 8e-3; in.l_bm < 18e-3; in.l_bm += 1e-3) {
        const ts_bevel_slant s = ts_bevel_slant_factor(&in, NULL);

        assert_true(s.Y_BS >= 1.0 && s.Y_BS < last);
        assert_close(s.b_a, 18e-3 / cos(in.beta_m), 1e-15);
        last = s.Y_BS;
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_tangent_is_found_on_the_rolled_fillet),
        cmocka_unit_test(the_form_is_that_of_the_cylindrical_gear),
        cmocka_unit_test(endless_teeth_are_those_cut_without_generation),
        cmocka_unit_test(thicker_teeth_and_rounder_fillets_are_stronger),
        cmocka_unit_test(an_edge_too_round_for_its_slot_is_refused),
        cmocka_unit_test(overlap_factor_joins_its_cases),
        cmocka_unit_test(the_slant_factor_is_least_where_its_line_covers_most_of_the_face),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
