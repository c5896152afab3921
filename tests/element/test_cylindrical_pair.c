/* Is the geometry of a cylindrical pair that of the standard, and does it keep its symmetries? */
#include "base/arena.h"
#include "element/cylindrical_contact.h"
#include "element/cylindrical_gear.h"
#include "element/cylindrical_pair.h"
#include "element/involute.h"
#include "support/close.h"

#include <stdint.h>
#include <string.h>

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

/* Deterministic numbers in [low, high): a 64-bit linear congruence (Knuth's constants). */
static double drawn(uint64_t *seed, double low, double high)
{
    *seed = *seed * 6364136223846793005u + 1442695040888963407u;
    return low + (high - low) * (double)(*seed >> 11) / 9007199254740992.0;
}

/* Pairs without undercut, interference or pointed teeth. */
static ts_cylindrical_pair_input drawn_pair(uint64_t *seed)
{
    ts_cylindrical_pair_input in = {
        .z_1     = (int)drawn(seed, 22.0, 60.0),
        .z_2     = (int)drawn(seed, 22.0, 120.0),
        .m_n     = drawn(seed, 0.8e-3, 6e-3),
        .alpha_n = drawn(seed, 20.0, 26.0) * degree,
        .beta    = drawn(seed, 0.0, 35.0) * degree,
        .b_1     = drawn(seed, 5e-3, 40e-3),
        .b_2     = drawn(seed, 5e-3, 40e-3),
        .x_1     = drawn(seed, 0.0, 0.5),
        .x_2     = drawn(seed, 0.0, 0.5),
        .tip     = TS_TIP_CLEARANCE,
    };
    in.rack = ts_basic_rack_fitted(&ts_basic_rack_A, in.alpha_n);
    return in;
}

static ts_cylindrical_pair solved(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair pair;

    assert_int_equal(ts_cylindrical_pair_solve(in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

static ts_cylindrical_pair_input turned_round(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair_input out = *in;

    out.z_1  = in->z_2;
    out.z_2  = in->z_1;
    out.x_1  = in->x_2;
    out.x_2  = in->x_1;
    out.b_1  = in->b_2;
    out.b_2  = in->b_1;
    out.k_1  = in->k_2;
    out.k_2  = in->k_1;
    out.d_a1 = in->d_a2;
    out.d_a2 = in->d_a1;
    return out;
}

/* "Elements of Metric Gear Technology" (SDP/SI) and the same table elsewhere, m 3, 12/24 teeth,
 * x 0.6/0.36 (from memory, every figure reproduced). */
static void printed_example_of_shifted_spur_gears(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = {.z_1     = 12,
                                            .z_2     = 24,
                                            .m_n     = 3e-3,
                                            .alpha_n = 20.0 * degree,
                                            .x_1     = 0.6,
                                            .x_2     = 0.36,
                                            .tip     = TS_TIP_CLEARANCE,
                                            .rack    = ts_basic_rack_A};
    const ts_cylindrical_pair       pair = solved(&in);

    assert_close(pair.inv_alpha_wt, 0.034316, 2e-5);
    assert_close(pair.alpha_wt / degree, 26.0886, 3e-6);
    assert_close(pair.a_w, 56.4999e-3, 2e-6);
    assert_close(pair.d_a1, 44.84e-3, 1e-5);
    assert_close(pair.d_a2, 79.4e-3, 1e-5);
    assert_close(pair.d_f1, 32.1e-3, 2e-5);
    assert_close(pair.d_f2, 66.66e-3, 1e-5);
    assert_close(pair.c_1, 0.25 * 3e-3, 1e-12);
    assert_close(pair.c_2, 0.25 * 3e-3, 1e-12);
}

/* Norton, Machine Design, example 12-1: 19/37 teeth, 6 to the inch (from memory). */
static void printed_contact_ratio_of_a_textbook_mesh(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = {.z_1     = 19,
                                            .z_2     = 37,
                                            .m_n     = 0.0254 / 6.0,
                                            .alpha_n = 20.0 * degree,
                                            .rack    = ts_basic_rack_A};
    const ts_cylindrical_pair       pair = solved(&in);

    assert_close(pair.g_alpha, 0.798 * 0.0254, 7e-4);
    assert_close(pair.eps_alpha, 1.62, 6e-4);
}

/* FZG type A test pair, notes of the bank case fzg-A-geometry (derived there from ISO 14635-1). */
static void printed_sliding_of_the_scuffing_test_pair(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = {.z_1     = 16,
                                            .z_2     = 24,
                                            .m_n     = 4.5e-3,
                                            .alpha_n = 20.0 * degree,
                                            .a_w     = 91.5e-3,
                                            .x_1     = 0.8532,
                                            .x_2     = -0.5,
                                            .d_a1    = 88.77e-3,
                                            .d_a2    = 112.5e-3,
                                            .tip     = TS_TIP_DIAMETERS,
                                            .rack    = ts_basic_rack_A};
    const ts_cylindrical_pair       pair = solved(&in);

    assert_close(pair.sum_x, 0.3532, 1e-4);
    assert_close(pair.eps_alpha, 1.3611, 1e-4);
    assert_close(pair.zeta_A1, -0.519, 1e-3);
    assert_close(pair.zeta_E2, -5.961, 1e-3);
    assert_close(pair.d_a1, 88.77e-3, 1e-15);
}

/* derived: the names 1 and 2 are free; what begins contact on one ends it on the other. */
static void swapping_the_gears_swaps_the_results(void **state)
{
    (void)state;
    uint64_t seed = 1;

    for (int round = 0; round < 300; round++) {
        const ts_cylindrical_pair_input in = drawn_pair(&seed), back = turned_round(&in);
        const ts_cylindrical_pair       p = solved(&in), q = solved(&back);

        assert_close(p.a_w, q.a_w, 1e-14);
        assert_close(p.eps_alpha, q.eps_alpha, 1e-11);
        assert_close(p.eps_beta, q.eps_beta, 1e-14);
        assert_close(p.zeta_A1, q.zeta_E2, 1e-10);
        assert_close(p.zeta_E1, q.zeta_A2, 1e-10);
        assert_close(p.g_f, q.g_a, 1e-10);
        assert_close(p.d_a1, q.d_a2, 1e-14);
        assert_close(p.s_an2, q.s_an1, 1e-11);
        assert_close_abs(p.clear_Ff1, q.clear_Ff2, 1e-15);
        assert_close_abs(p.j_wt, q.j_wt, 1e-17);
    }
}

/* derived: cos(beta) leaves 1 by beta^2/2. */
static void a_vanishing_helix_angle_gives_the_spur_gear(void **state)
{
    (void)state;
    uint64_t seed = 2;

    for (int round = 0; round < 100; round++) {
        ts_cylindrical_pair_input in = drawn_pair(&seed);

        in.beta                     = 0.0;
        const ts_cylindrical_pair p = solved(&in);
        in.beta                     = 1e-8;
        const ts_cylindrical_pair q = solved(&in);
        assert_close(q.a_w, p.a_w, 1e-13);
        assert_close(q.eps_alpha, p.eps_alpha, 1e-11);
        assert_close(q.s_an1, p.s_an1, 1e-11);
        assert_same_double(p.eps_beta, 0.0);
        assert_true(q.eps_beta > 0.0);
    }
}

static void shift_to_centre_to_shift_returns(void **state)
{
    (void)state;
    uint64_t seed = 3;

    for (int round = 0; round < 300; round++) {
        ts_cylindrical_pair_input in    = drawn_pair(&seed);
        const ts_cylindrical_pair there = solved(&in);

        in.a_w                         = there.a_w;
        in.shift                       = round % 2 == 0 ? TS_SHIFT_REST_1 : TS_SHIFT_REST_2;
        const ts_cylindrical_pair back = solved(&in);
        assert_close_abs(back.sum_x, there.sum_x, 1e-12);
        assert_close_abs(back.x_1, there.x_1, 1e-12);
        assert_close_abs(back.x_2, there.x_2, 1e-12);
        assert_close_abs(back.j_wt, 0.0, 1e-15);
        assert_close(back.eps_alpha, there.eps_alpha, 1e-10);
    }
}

/* Scaling by a power of two is exact in binary, so every length must double and every number stay.
 */
static void doubling_the_module_doubles_every_length(void **state)
{
    (void)state;
    uint64_t seed = 4;

    for (int round = 0; round < 100; round++) {
        ts_cylindrical_pair_input in    = drawn_pair(&seed);
        const ts_cylindrical_pair small = solved(&in);

        in.m_n *= 2.0;
        in.b_1 *= 2.0;
        in.b_2 *= 2.0;
        const ts_cylindrical_pair large = solved(&in);
        assert_same_double(large.a_w, 2.0 * small.a_w);
        assert_same_double(large.d_a1, 2.0 * small.d_a1);
        assert_same_double(large.s_an2, 2.0 * small.s_an2);
        assert_same_double(large.g_alpha, 2.0 * small.g_alpha);
        assert_same_double(large.clear_Ff1, 2.0 * small.clear_Ff1);
        assert_same_double(large.eps_gamma, small.eps_gamma);
        assert_same_double(large.zeta_A1, small.zeta_A1);
        assert_same_double(large.x_min1, small.x_min1);
    }
}

/* derived: identities of meshing gears that the code does not use. */
static void circles_and_path_fit_together(void **state)
{
    (void)state;
    uint64_t seed = 5;

    for (int round = 0; round < 300; round++) {
        const ts_cylindrical_pair_input in = drawn_pair(&seed);
        const ts_cylindrical_pair       p  = solved(&in);

        assert_close(p.d_w1 + p.d_w2, 2.0 * p.a_w, 1e-14);
        assert_close(p.d_w2 / p.d_w1, p.u, 1e-14);
        assert_close(p.d_w1 * cos(p.alpha_wt), p.d_b1, 1e-13);
        assert_close(p.g_f + p.g_a, p.g_alpha, 1e-11);
        assert_close(p.rho_E1 - p.rho_A1, p.g_alpha, 1e-11);
        assert_close(pi * p.d_b2 / in.z_2, p.p_bt, 1e-14);
        assert_close(ts_specific_sliding_1(&p, p.rho_C1) + 1.0, 1.0, 1e-12);
        assert_close(tan(p.beta_b), tan(in.beta) * cos(p.alpha_t), 1e-13);
    }
}

/* A second route to the backlash: pitch less both tooth thicknesses on the working circles. */
static void backlash_is_pitch_less_thicknesses(void **state)
{
    (void)state;
    uint64_t seed = 6;

    for (int round = 0; round < 300; round++) {
        ts_cylindrical_pair_input in     = drawn_pair(&seed);
        const ts_cylindrical_pair closed = solved(&in);
        ts_cylindrical_frame      frame;
        ts_cylindrical_gear       gear_1, gear_2;

        in.a_w                      = closed.a_w * drawn(&seed, 1.0, 1.004);
        const ts_cylindrical_pair p = solved(&in);
        ts_cylindrical_pair_gear(&p, TS_GEAR_1, &frame, &gear_1);
        ts_cylindrical_pair_gear(&p, TS_GEAR_2, &frame, &gear_2);
        const double p_wt = pi * p.d_w1 / in.z_1;
        const double s_1  = ts_gear_thickness(&frame, &gear_1, p.d_w1);
        const double s_2  = ts_gear_thickness(&frame, &gear_2, p.d_w2);
        assert_close_abs(p.j_wt, p_wt - s_1 - s_2, 1e-13 * p_wt + 1e-16);
        assert_close(p.j_bn, p.j_wt * cos(p.alpha_wt) * cos(p.beta_b), 1e-14);
    }
}

/* derived: shaft distance opened by delta opens 2*delta*tan(alpha_wt) of backlash at first. */
static void small_growth_of_centre_opens_the_first_order_backlash(void **state)
{
    (void)state;
    uint64_t seed = 7;

    for (int round = 0; round < 50; round++) {
        ts_cylindrical_pair_input in     = drawn_pair(&seed);
        const ts_cylindrical_pair closed = solved(&in);
        const double              delta  = 1e-6 * closed.a_w;

        in.a_w                         = closed.a_w + delta;
        const ts_cylindrical_pair open = solved(&in);
        assert_close(open.j_wt, ts_backlash_opened(delta, closed.alpha_wt, NULL), 2e-5);
    }
}

/* The undercut limit is where the rack leaves the involute on the base circle. */
static void undercut_begins_at_x_min(void **state)
{
    (void)state;
    uint64_t seed = 8;

    for (int round = 0; round < 200; round++) {
        ts_cylindrical_pair_input in = drawn_pair(&seed);

        in.z_1 = (int)drawn(&seed, 6.0, 40.0);
        in.tip = TS_TIP_GIVEN;
        in.k_1 = -0.3;
        ts_cylindrical_pair p;
        const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &p, NULL);
        assert_true(fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED);
        assert_int_equal(p.rho_Ff1 < 0.0, in.x_1 < p.x_min1);
        assert_int_equal(isnan(p.d_Ff1), in.x_1 < p.x_min1);
    }
}

/* Two ways of one standard: a gear without shift is undercut below z_min teeth, helical ones too.
 */
static void least_tooth_number_is_that_without_shift(void **state)
{
    (void)state;
    uint64_t            seed = 11;
    const ts_basic_rack A    = ts_basic_rack_A;

    /* by hand: alpha_t = 22.795877 deg, h = 0.9999676545 */
    assert_close(ts_gear_z_min(&A, 20.0 * degree, 30.0 * degree, NULL), 11.537638439, 1e-9);
    for (int round = 0; round < 200; round++) {
        ts_cylindrical_pair_input in = drawn_pair(&seed);

        in.z_1                    = (int)drawn(&seed, 6.0, 40.0);
        in.tip                    = TS_TIP_GIVEN;
        in.k_1                    = -0.3;
        const double        z_min = ts_gear_z_min(&in.rack, in.alpha_n, in.beta, NULL);
        ts_cylindrical_pair p;
        const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &p, NULL);
        assert_true(fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED);
        assert_int_equal(p.x_min1 > 0.0, in.z_1 < z_min);
    }
}

/* An internal pair by ISO signs: everything about gear 2 and the centre is negative. */
static void internal_gear_keeps_the_standards_signs(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in = {.z_1     = 20,
                                          .z_2     = -61,
                                          .m_n     = 2e-3,
                                          .alpha_n = 20.0 * degree,
                                          .x_1     = 0.2,
                                          .x_2     = -0.3,
                                          .rack    = ts_basic_rack_A};
    const ts_cylindrical_pair       p  = solved(&in);

    assert_true(p.a_w < 0.0 && p.d_2 < 0.0 && p.d_a2 < 0.0 && p.u < 0.0);
    assert_true(-p.d_a2 < -p.d_2 && -p.d_f2 > -p.d_2);
    assert_close(p.d_w1 * cos(p.alpha_wt), p.d_b1, 1e-13);
    assert_close(p.d_w2 * cos(p.alpha_wt), p.d_b2, 1e-13);
    assert_true(p.eps_alpha > 1.5 && p.eps_alpha < 2.5); /* longer than 1.6 of the external pair */
    assert_true(p.zeta_A1 < 1.0 && p.zeta_E2 < 1.0);
    assert_nan(p.x_min2);
    assert_nan(p.clear_Ff2);
    assert_true(p.c_1 > 0.0 && p.c_2 > 0.0);
}

/* derived: the balance itself. */
static void equal_sliding_splits_the_sum_of_shifts(void **state)
{
    (void)state;
    uint64_t seed = 9;

    for (int round = 0; round < 50; round++) {
        ts_cylindrical_pair_input in    = drawn_pair(&seed);
        const ts_cylindrical_pair first = solved(&in);
        ts_cylindrical_pair       p;

        in.a_w                    = first.a_w;
        in.shift                  = TS_SHIFT_EQUAL_SLIDING;
        const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &p, NULL);
        assert_true(fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED);
        assert_close_abs(p.zeta_A1, p.zeta_E2, 1e-7);
        assert_close_abs(p.x_1 + p.x_2, first.x_1 + first.x_2, 1e-12);
        if (in.z_1 == in.z_2)
            assert_close_abs(p.x_1, p.x_2, 1e-9);
    }
}

static void results_are_the_same_with_and_without_workings(void **state)
{
    (void)state;
    ts_arena    *arena    = ts_arena_open(NULL);
    ts_workings *workings = ts_workings_open(arena);
    uint64_t     seed     = 10;

    for (int round = 0; round < 20; round++) {
        const ts_cylindrical_pair_input in = drawn_pair(&seed);
        const ts_cylindrical_pair       p  = solved(&in);
        ts_cylindrical_pair             q;

        ts_cylindrical_pair_solve(&in, &q, workings);
        const size_t at = offsetof(ts_cylindrical_pair, m_t);
        assert_memory_equal((const char *)&p + at, (const char *)&q + at, sizeof p - at);
    }
    assert_true(ts_workings_complete(workings));
    ts_arena_close(arena);
}

/* Every symbol that a step uses was noted before, or is an input of the pair. */
static void every_symbol_of_the_workings_has_an_origin(void **state)
{
    (void)state;
    static const char *const        inputs[] = {"z_1", "z_2", "m_n", "alpha_n", "beta",  "b_1",
                                                "b_2", "x_1", "x_2", "h_aPs",   "h_fPs", "rho_fPs"};
    ts_arena                       *arena    = ts_arena_open(NULL);
    ts_workings                    *workings = ts_workings_open(arena);
    uint64_t                        seed     = 11;
    const ts_cylindrical_pair_input in       = drawn_pair(&seed);
    ts_cylindrical_pair             p;

    ts_cylindrical_pair_solve(&in, &p, workings);
    assert_true(ts_workings_count(workings) > 40);
    for (size_t i = 0; i < ts_workings_count(workings); i++) {
        const ts_note *note = ts_workings_at(workings, i);

        for (uint32_t k = 0; k < note->input_count; k++) {
            bool known =
                note->kind == TS_NOTE_SEARCHED && strcmp(note->inputs[k].name, note->symbol) == 0;

            for (size_t n = 0; n < sizeof inputs / sizeof inputs[0]; n++)
                known = known || strcmp(note->inputs[k].name, inputs[n]) == 0;
            if (!known &&
                ts_origin(workings, i, note->inputs[k].name, note->inputs[k].value) == SIZE_MAX)
                fail_msg("%s of %s has no origin", note->inputs[k].name, note->symbol);
        }
    }
    ts_arena_close(arena);
}

/* ---- faults ---------------------------------------------------------------------------------- */

static const ts_cylindrical_pair_input sound = {.z_1     = 25,
                                                .z_2     = 40,
                                                .m_n     = 2e-3,
                                                .alpha_n = 0.35,
                                                .b_1     = 0.01,
                                                .b_2     = 0.01,
                                                .rack    = {1.0, 1.25, 0.38}};

static void expect_fault(const ts_cylindrical_pair_input *in, ts_pair_fault fault)
{
    ts_cylindrical_pair pair;

    assert_int_equal(ts_cylindrical_pair_solve(in, &pair, NULL), fault);
    assert_true(strlen(ts_pair_fault_says(fault)) > 10);
    assert_nan(pair.m_t);
    assert_nan(pair.a_w);
    assert_nan(pair.eps_alpha);
    assert_nan(pair.clear_Ff2);
    assert_int_equal(pair.in.z_1, in->z_1);
}

static void inputs_out_of_range_are_refused(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in[18];

    for (size_t i = 0; i < 18; i++)
        in[i] = sound;
    in[0].z_1     = 0;
    in[1].z_2     = 0;
    in[2].z_2     = -25; /* as many as the pinion: no centre distance at all */
    in[3].m_n     = 0.0;
    in[4].alpha_n = pi / 2.0;
    in[5].beta    = -0.1;
    in[6].x_1     = (double)NAN;
    in[7].a_w     = (double)INFINITY;
    in[8].b_2     = -1e-3;
    in[9].m_n     = (double)NAN;
    in[10].z_2    = 2000000;
    in[11].k_1    = 2e3;
    in[12].k_2    = 2e3;
    in[13].x_2    = -2e3;
    in[14].d_a2   = 2e6;
    in[15].b_1    = -1e-3;
    in[16].b_2    = 2e6;
    in[17].z_1    = 2000000;
    for (size_t i = 0; i < 18; i++)
        expect_fault(&in[i], TS_PAIR_OUT_OF_RANGE);
}

/* A tip 10 m wide asks for an addendum of thousands of modules, of the one gear or of the other. */
static void a_tip_that_no_gear_has_is_refused(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound;

    in.tip  = TS_TIP_DIAMETERS;
    in.d_a1 = 54e-3;
    in.d_a2 = 10.0;
    expect_fault(&in, TS_PAIR_OUT_OF_RANGE);
    in.d_a1 = 10.0;
    in.d_a2 = 84e-3;
    expect_fault(&in, TS_PAIR_OUT_OF_RANGE);
}

static void centre_distance_inside_the_base_circles_is_refused(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound;

    in.a_w = 0.9 * 65e-3; /* below (d_b1 + d_b2)/2 = 61.06 mm */
    expect_fault(&in, TS_PAIR_NO_CENTRE);
    in.a_w = -65e-3;
    expect_fault(&in, TS_PAIR_NO_CENTRE);
    in.a_w = 0.0;
    in.x_1 = in.x_2 = -1.0; /* inv(alpha_wt) would be negative */
    expect_fault(&in, TS_PAIR_NO_CENTRE);
}

static void tip_inside_the_base_circle_is_refused(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound;

    in.k_2 = -3.5;
    expect_fault(&in, TS_PAIR_NO_TIP);
}

static void impossible_rack_is_refused(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound;

    in.alpha_n = 25.0 * degree;
    expect_fault(&in, TS_PAIR_NO_RACK);
}

static void no_equal_sliding_for_fixed_tips(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound;

    in.shift = TS_SHIFT_EQUAL_SLIDING;
    in.tip   = TS_TIP_DIAMETERS;
    in.d_a1  = 54e-3;
    in.d_a2  = 84e-3;
    expect_fault(&in, TS_PAIR_NO_SPLIT);
}

static void pointed_tooth_is_computed_and_said(void **state)
{
    (void)state;
    ts_cylindrical_pair_input in = sound;
    ts_cylindrical_pair       pair;

    in.z_1 = 12;
    in.x_1 = 1.0;
    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_POINTED);
    assert_true(pair.s_an1 < 0.0);
    assert_true(pair.eps_alpha > 0.0);
}

/* derived: shifts that set the distance leave no play, not even that of a rounding. */
static void shifts_that_set_the_distance_leave_no_play(void **state)
{
    (void)state;
    const double shifts[4][2] = {{0.3, 0.1}, {0.1, 0.2}, {-0.35, 0.7}, {0.123, -0.456}};

    for (int i = 0; i < 4; i++) {
        ts_cylindrical_pair_input in = {.z_1     = 24,
                                        .z_2     = i % 2 == 0 ? -72 : 61,
                                        .m_n     = 2e-3,
                                        .alpha_n = 0.35,
                                        .x_1     = shifts[i][0],
                                        .x_2     = shifts[i][1],
                                        .rack    = ts_basic_rack_A};
        ts_cylindrical_pair       pair;

        assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
        assert_true(!(fabs(pair.j_wt) > 0.0) && !(fabs(pair.j_bn) > 0.0));
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(printed_example_of_shifted_spur_gears),
        cmocka_unit_test(printed_contact_ratio_of_a_textbook_mesh),
        cmocka_unit_test(printed_sliding_of_the_scuffing_test_pair),
        cmocka_unit_test(swapping_the_gears_swaps_the_results),
        cmocka_unit_test(a_vanishing_helix_angle_gives_the_spur_gear),
        cmocka_unit_test(shift_to_centre_to_shift_returns),
        cmocka_unit_test(doubling_the_module_doubles_every_length),
        cmocka_unit_test(circles_and_path_fit_together),
        cmocka_unit_test(backlash_is_pitch_less_thicknesses),
        cmocka_unit_test(small_growth_of_centre_opens_the_first_order_backlash),
        cmocka_unit_test(undercut_begins_at_x_min),
        cmocka_unit_test(least_tooth_number_is_that_without_shift),
        cmocka_unit_test(internal_gear_keeps_the_standards_signs),
        cmocka_unit_test(equal_sliding_splits_the_sum_of_shifts),
        cmocka_unit_test(results_are_the_same_with_and_without_workings),
        cmocka_unit_test(every_symbol_of_the_workings_has_an_origin),
        cmocka_unit_test(inputs_out_of_range_are_refused),
        cmocka_unit_test(a_tip_that_no_gear_has_is_refused),
        cmocka_unit_test(centre_distance_inside_the_base_circles_is_refused),
        cmocka_unit_test(tip_inside_the_base_circle_is_refused),
        cmocka_unit_test(impossible_rack_is_refused),
        cmocka_unit_test(no_equal_sliding_for_fixed_tips),
        cmocka_unit_test(pointed_tooth_is_computed_and_said),
        cmocka_unit_test(shifts_that_set_the_distance_leave_no_play),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
