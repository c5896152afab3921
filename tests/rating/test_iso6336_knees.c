/* Do the lines of ISO 6336 bend where they are printed to bend, and end where they end? */
#include "rating/iso6336/root_stress.h"
#include "rating/iso6336/stress_cycle.h"
#include "rating/sample_mesh.h"
#include "support/close.h"

#include <math.h>

/* ISO 6336-2, table of Z_NT, and -3, table of Y_NT (from memory): where each line begins to fall,
 * where it bends, and where it is 1. */
typedef struct printed {
    ts_gear_class class;
    ts_rated_stress stress;
    bool            pitting;
    double          N[3], factor[3]; /* static end, knee (0: none), reference */
} printed;

static const printed lines[] = {
    {TS_GEAR_CASE_HARDENED, TS_RATED_CONTACT, true, {6e5, 1e7, 1e9}, {1.6, 1.3, 1.0}},
    {TS_GEAR_INDUCTION_HARDENED, TS_RATED_CONTACT, true, {6e5, 1e7, 1e9}, {1.6, 1.3, 1.0}},
    {TS_GEAR_THROUGH_HARDENED, TS_RATED_CONTACT, true, {6e5, 1e7, 1e9}, {1.6, 1.3, 1.0}},
    {TS_GEAR_NORMALISED, TS_RATED_CONTACT, true, {6e5, 1e7, 1e9}, {1.6, 1.3, 1.0}},
    {TS_GEAR_CASE_HARDENED, TS_RATED_CONTACT, false, {1e5, 0.0, 5e7}, {1.6, 0.0, 1.0}},
    {TS_GEAR_INDUCTION_HARDENED, TS_RATED_CONTACT, false, {1e5, 0.0, 5e7}, {1.6, 0.0, 1.0}},
    {TS_GEAR_THROUGH_HARDENED, TS_RATED_CONTACT, false, {1e5, 0.0, 5e7}, {1.6, 0.0, 1.0}},
    {TS_GEAR_NORMALISED, TS_RATED_CONTACT, false, {1e5, 0.0, 5e7}, {1.6, 0.0, 1.0}},
    {TS_GEAR_NITRIDED, TS_RATED_CONTACT, false, {1e5, 0.0, 2e6}, {1.3, 0.0, 1.0}},
    {TS_GEAR_THROUGH_NITRIDED, TS_RATED_CONTACT, false, {1e5, 0.0, 2e6}, {1.3, 0.0, 1.0}},
    {TS_GEAR_NITROCARBURISED, TS_RATED_CONTACT, false, {1e5, 0.0, 2e6}, {1.1, 0.0, 1.0}},
    {TS_GEAR_THROUGH_HARDENED, TS_RATED_BENDING, false, {1e4, 0.0, 3e6}, {2.5, 0.0, 1.0}},
    {TS_GEAR_NORMALISED, TS_RATED_BENDING, false, {1e4, 0.0, 3e6}, {2.5, 0.0, 1.0}},
    {TS_GEAR_CASE_HARDENED, TS_RATED_BENDING, false, {1e3, 0.0, 3e6}, {2.5, 0.0, 1.0}},
    {TS_GEAR_INDUCTION_HARDENED, TS_RATED_BENDING, false, {1e3, 0.0, 3e6}, {2.5, 0.0, 1.0}},
    {TS_GEAR_NITRIDED, TS_RATED_BENDING, false, {1e3, 0.0, 3e6}, {1.6, 0.0, 1.0}},
    {TS_GEAR_THROUGH_NITRIDED, TS_RATED_BENDING, false, {1e3, 0.0, 3e6}, {1.6, 0.0, 1.0}},
    {TS_GEAR_NITROCARBURISED, TS_RATED_BENDING, false, {1e3, 0.0, 3e6}, {1.1, 0.0, 1.0}},
};
#define LINES (sizeof lines / sizeof lines[0])

static double factor_at(const printed *of, double N)
{
    const ts_life_nodes nodes = of->stress == TS_RATED_CONTACT
                                    ? ts_life_nodes_contact(of->class, of->pitting)
                                    : ts_life_nodes_bending(of->class);
    const ts_life_lines at    = ts_life_lines_of(&nodes, 0.85);

    return ts_life_factor(&at, ts_cycles_of(N), of->stress, 0, NULL);
}

/* Decades of the factor in a decade of cycles, from N a little way on. */
static double slope_at(const printed *of, double N, double step)
{
    return log(factor_at(of, N * step) / factor_at(of, N)) / log(step);
}

static void every_life_line_bends_at_its_printed_abscissae(void **state)
{
    (void)state;
    const double step = 1.0 + 1e-4;

    for (size_t i = 0; i < LINES; i++) {
        for (int k = 0; k < 3; k++) {
            const double N = lines[i].N[k];

            if (!(N > 0.0))
                continue;
            assert_close(factor_at(&lines[i], N), lines[i].factor[k], 1e-13);
            const double before = slope_at(&lines[i], N, 1.0 / step);
            const double after  = slope_at(&lines[i], N, step);
            assert_true(fabs(after - before) > 0.005); /* it does bend here */
            /* and nowhere near: the line goes on straight on either side */
            assert_close_abs(slope_at(&lines[i], N * 0.9, 1.0 / step), before, 1e-9);
            assert_close_abs(slope_at(&lines[i], N * 1.1, step), after, 1e-9);
        }
        assert_close(factor_at(&lines[i], 1.0), lines[i].factor[0], 1e-15); /* static: level */
        assert_close(factor_at(&lines[i], 1e10), 0.85, 1e-13);
    }
}

/* ISO 6336-3, clause 9 (from memory): 1.6 ln(2.242 h_t/s_R) from 0.5 to 1.2 h_t, and of internal
 * gears 1.15 ln(8.324 m_n/s_R) from 1.75 to 3.5 m_n; 1 above. */
static void rim_factors_begin_and_end_where_they_are_printed_to(void **state)
{
    (void)state;
    const double h_t = 4.5e-3, m_n = 2e-3;

    assert_close(ts_rim_factor(1.2 * h_t, h_t, 0, NULL), 1.0, 1e-15);
    assert_close(ts_rim_factor(1.2 * h_t * (1.0 - 1e-12), h_t, 0, NULL), 1.0, 1e-3);
    assert_close(ts_rim_factor(0.8 * h_t, h_t, 1, NULL), 1.6 * log(2.242 / 0.8), 1e-13);
    assert_close(ts_rim_factor(0.5 * h_t * (1.0 + 1e-12), h_t, 1, NULL), 2.400, 1e-3);
    assert_nan(ts_rim_factor(0.5 * h_t, h_t, 0, NULL));
    assert_close(ts_rim_factor_internal(3.5 * m_n, m_n, 1, NULL), 1.0, 1e-15);
    assert_close(ts_rim_factor_internal(3.5 * m_n * (1.0 - 1e-12), m_n, 1, NULL), 1.0, 5e-3);
    assert_close(ts_rim_factor_internal(2.5 * m_n, m_n, 1, NULL), 1.15 * log(8.324 / 2.5), 1e-13);
    assert_nan(ts_rim_factor_internal(1.75 * m_n, m_n, 1, NULL));
    for (double part = 0.52; part < 1.2; part += 0.02)
        assert_true(ts_rim_factor(part * h_t, h_t, 0, NULL) >
                    ts_rim_factor((part + 0.02) * h_t, h_t, 0, NULL) - 1e-12);
}

/* ISO 6336-3:2006, clause 10 (from memory): 2.366 - 0.666 eps from 2.05 to 2.5 for grade 4 and
 * better; in 2019 f_eps says it. */
static void deep_teeth_share_where_they_are_printed_to(void **state)
{
    (void)state;
    assert_same_double(ts_deep_tooth_2006(2.05, 4, NULL), 1.0);
    assert_close(ts_deep_tooth_2006(2.3, 4, NULL), 2.366 - 0.666 * 2.3, 1e-13);
    assert_close(ts_deep_tooth_2006(2.8, 3, NULL), 0.7, 1e-13);
    assert_same_double(ts_deep_tooth_2006(2.3, 5, NULL), 1.0);
    assert_same_double(ts_deep_tooth_2019(2.3, 4, NULL), 1.0);
}

/* derived: a wheel of very many teeth is a rack, so that twice as many change next to nothing, and
 * each step towards it halves what is left of the way. */
static void a_wheel_of_very_many_teeth_is_a_rack(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in     = sample_pair();
    const ts_iso6336_mesh     mesh   = sample_mesh();
    ts_iso6336_load           load   = sample_load();
    static const int          many[] = {20000, 40000, 80000};
    double                    S[3][4];

    load.omega_1 = 1.0; /* K_v aside: the blank of a rack has no end of mass */
    load.face    = TS_FACE_LOAD_GIVEN;
    load.K_Hbeta = 1.2;
    in.x_2       = 0.0;
    for (int i = 0; i < 3; i++) {
        in.z_2                    = many[i];
        const ts_iso6336_rating r = rated(&in, &mesh, &load);
        S[i][0]                   = r.gear[0].sigma_H;
        S[i][1]                   = r.gear[1].sigma_H;
        S[i][2]                   = r.gear[0].sigma_F;
        S[i][3]                   = r.gear[1].sigma_F;
    }
    for (int k = 0; k < 4; k++) {
        const double first = S[1][k] - S[0][k], second = S[2][k] - S[1][k];

        assert_close(S[2][k], S[1][k], 2e-4);
        assert_close(first / second, 2.0, 0.05);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_life_line_bends_at_its_printed_abscissae),
        cmocka_unit_test(rim_factors_begin_and_end_where_they_are_printed_to),
        cmocka_unit_test(deep_teeth_share_where_they_are_printed_to),
        cmocka_unit_test(a_wheel_of_very_many_teeth_is_a_rack),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
