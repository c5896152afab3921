/* Do lines of contact lie in the zone of action as plane geometry says, and share the load? */
#include "element/bevel_teeth.h"
#include "rating/iso10300/contact_line.h"
#include "support/close.h"

static const double degree = 3.14159265358979323846 / 180.0;

static ts_bevel_virtual stand_in(double beta_m, double b, double share)
{
    const ts_bevel_pair_input in = {.z_1     = 27,
                                    .z_2     = 41,
                                    .m_et    = 2.5e-3,
                                    .Sigma   = 90.0 * degree,
                                    .alpha_n = 20.0 * degree,
                                    .beta_m  = beta_m * degree,
                                    .b       = b};
    ts_bevel_pair             pair;
    ts_bevel_teeth            teeth;
    ts_bevel_virtual          v;

    assert_int_equal(ts_bevel_pair_solve(&in, &pair, NULL), TS_BEVEL_FINE);
    const ts_bevel_teeth_input teeth_in = {.taper   = TS_BEVEL_TAPER_UNIFORM,
                                           .profile = ts_bevel_profile_usual(&pair, NULL),
                                           .r_c0    = (double)NAN};
    assert_int_equal(ts_bevel_teeth_solve(&pair, &teeth_in, &teeth, NULL), TS_BEVEL_TEETH_FINE);
    ts_bevel_virtual_solve(&pair, &teeth, share, &v, NULL);
    return v;
}

/* A second route: walk along the line in small steps and count those inside the rectangle. */
static double walked_length(const ts_bevel_virtual *v, double f)
{
    const double reach  = v->b_v + v->g_valpha;
    const int    steps  = 400000;
    int          inside = 0;

    for (int i = 0; i < steps; i++) {
        const double along = reach * (2.0 * (i + 0.5) / steps - 1.0);
        const double x     = f * sin(v->beta_vb) + along * cos(v->beta_vb);
        const double y     = f * cos(v->beta_vb) - along * sin(v->beta_vb);

        if (fabs(x) <= v->b_v / 2.0 && fabs(y) <= v->g_valpha / 2.0)
            inside++;
    }
    return 2.0 * reach * inside / steps;
}

static void lengths_agree_with_a_walk_along_the_line(void **state)
{
    (void)state;
    for (double beta = 0.0; beta < 50.0; beta += 12.0) {
        const ts_bevel_virtual v = stand_in(beta, 18e-3, 0.85);

        for (double f = -12.1e-3; f < 13e-3; f += 2.2e-3)
            assert_close_abs(ts_contact_line_length(&v, f), walked_length(&v, f), 1e-6);
    }
}

/* derived: all lines together sweep the zone of action once, so that their lengths over all places
 * add up to its area. */
static void lines_sweep_the_whole_zone(void **state)
{
    (void)state;
    for (double beta = 5.0; beta < 50.0; beta += 15.0) {
        const ts_bevel_virtual v     = stand_in(beta, 18e-3, 0.85);
        const double           reach = v.b_v + v.g_valpha;
        const int              steps = 20000;
        double                 area  = 0.0;

        for (int i = 0; i < steps; i++)
            area += ts_contact_line_length(&v, reach * (2.0 * (i + 0.5) / steps - 1.0));
        assert_close(area * 2.0 * reach / steps, v.b_v * v.g_valpha, 1e-5);
    }
}

/* derived: at the inner point of single contact one pair of straight teeth carries everything. */
static void straight_teeth_share_nothing(void **state)
{
    (void)state;
    const ts_bevel_virtual v     = stand_in(0.0, 18e-3, 1.0);
    const ts_contact_lines lines = ts_contact_lines_of(&v, TS_BEVEL_CROWNING_HIGH, NULL);

    assert_close(lines.Z_LS, 1.0, 1e-12);
    assert_close(lines.middle.l_b, v.b_v, 1e-15);
    assert_close(fabs(lines.middle.f), v.p_vet - v.g_valpha / 2.0, 1e-12);
    assert_close(lines.tip.f, v.g_valpha / 2.0, 1e-12);
}

static void more_overlap_leaves_less_on_the_middle_line(void **state)
{
    (void)state;
    double last = 1.0;

    for (double b = 14e-3; b < 40e-3; b += 4e-3) {
        const ts_bevel_virtual v     = stand_in(35.0, b, 0.85);
        const ts_contact_lines lines = ts_contact_lines_of(&v, TS_BEVEL_CROWNING_HIGH, NULL);

        assert_true(lines.Z_LS < last && lines.Z_LS > 0.3);
        assert_close(lines.Y_LS, lines.Z_LS * lines.Z_LS, 1e-15);
        last = lines.Z_LS;
    }
}

/* derived: from overlap 1 on the middle line passes through the centre, and the outer two are
 * images of each other. */
static void full_overlap_puts_the_middle_line_in_the_centre(void **state)
{
    (void)state;
    const ts_bevel_virtual v     = stand_in(35.0, 20e-3, 0.85);
    const ts_contact_lines lines = ts_contact_lines_of(&v, TS_BEVEL_CROWNING_LOW, NULL);

    assert_true(v.eps_vbeta > 1.0);
    assert_close_abs(lines.middle.f, 0.0, 1e-18);
    assert_close(lines.middle.ps, 1.0, 1e-15);
    assert_close(lines.tip.As, lines.root.As, 1e-13);
    assert_close(lines.middle.l_b, lines.middle.l_b0 * sqrt(0.85), 1e-13);
}

/* The peak falls faster from the centre when the profile is crowned much. */
static void much_crowning_loads_the_middle_line_more(void **state)
{
    (void)state;
    const ts_bevel_virtual v = stand_in(35.0, 20e-3, 0.85);

    assert_true(ts_contact_lines_of(&v, TS_BEVEL_CROWNING_HIGH, NULL).Z_LS >
                ts_contact_lines_of(&v, TS_BEVEL_CROWNING_LOW, NULL).Z_LS);
}

/* Nothing jumps where one of the cases of the standard goes over into the next. */
static void cases_of_the_overlap_join(void **state)
{
    (void)state;
    const ts_bevel_virtual some = stand_in(35.0, 10e-3, 0.85);
    const double           b_1  = 10e-3 / some.eps_vbeta; /* width, nearly, of overlap 1 */
    double                 low = 8e-3, high = 2.0 * b_1;

    for (int i = 0; i < 60; i++) {
        const double middle = (low + high) / 2.0;

        if (stand_in(35.0, middle, 0.85).eps_vbeta < 1.0)
            low = middle;
        else
            high = middle;
    }
    const ts_bevel_virtual below = stand_in(35.0, low - 1e-12, 0.85);
    const ts_bevel_virtual above = stand_in(35.0, high + 1e-12, 0.85);
    const ts_bevel_virtual zerol = stand_in(1e-9, 18e-3, 0.85), zero = stand_in(0.0, 18e-3, 0.85);

    assert_close(ts_contact_lines_of(&below, 1.5, NULL).Z_LS,
                 ts_contact_lines_of(&above, 1.5, NULL).Z_LS, 1e-9);
    assert_close(ts_contact_lines_of(&zerol, 1.5, NULL).Z_LS,
                 ts_contact_lines_of(&zero, 1.5, NULL).Z_LS, 1e-9);
    assert_close(ts_contact_lines_of(&zerol, 1.5, NULL).middle.l_b,
                 ts_contact_lines_of(&zero, 1.5, NULL).middle.l_b, 1e-9);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(lengths_agree_with_a_walk_along_the_line),
        cmocka_unit_test(lines_sweep_the_whole_zone),
        cmocka_unit_test(straight_teeth_share_nothing),
        cmocka_unit_test(more_overlap_leaves_less_on_the_middle_line),
        cmocka_unit_test(full_overlap_puts_the_middle_line_in_the_centre),
        cmocka_unit_test(much_crowning_loads_the_middle_line_more),
        cmocka_unit_test(cases_of_the_overlap_join),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
