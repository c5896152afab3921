/* Does a whole rating by ANSI/AGMA 2101-D04 hang together, and does it say where it ends? */
#include "base/arena.h"
#include "rating/agma2101/agma2101.h"
#include "support/close.h"
#include "support/sequence.h"

#include <math.h>
#include <stddef.h>
#include <string.h>

static const double degree = 3.14159265358979323846 / 180.0;

/* An invented pair of an accessory drive: 2 mm module, carburised, ground. */
static ts_cylindrical_pair_input plain_input(void)
{
    return (ts_cylindrical_pair_input){
        .z_1     = 27,
        .z_2     = 61,
        .m_n     = 2e-3,
        .alpha_n = 25.0 * degree,
        .b_1     = 15e-3,
        .b_2     = 14e-3,
        .rack    = {.h_aPs = 1.0, .h_fPs = 1.25, .rho_fPs = 0.3},
    };
}

static ts_cylindrical_pair solved(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair pair;
    const ts_pair_fault fault = ts_cylindrical_pair_solve(in, &pair, NULL);

    assert_true(fault == TS_PAIR_FINE || fault == TS_PAIR_POINTED);
    return pair;
}

static ts_agma2101_input full_input(const ts_cylindrical_pair *geometry)
{
    ts_agma2101_input in = ts_agma2101_input_of(geometry);

    for (int gear = 0; gear < 2; gear++) {
        in.gear[gear].sigma_HP = 1551e6;
        in.gear[gear].sigma_FP = 448e6;
        in.gear[gear].E        = 206e9;
        in.gear[gear].nu       = 0.3;
        in.gear[gear].delta_sn = TS_AGMA_THINNING;
    }
    in.accuracy = 6.0;
    return in;
}

static const ts_agma2101_load plain_load = {.F_t = 3000.0,
                                            .v   = 35.0,
                                            .n_L = {4e8, 2e8},
                                            .q   = {0.0, 0.0},
                                            .K_o = 1.0,
                                            .K_H = NAN,
                                            .T_M = 373.0};

static ts_agma2101_rating rated(const ts_agma2101_input *in, const ts_agma2101_load *load)
{
    ts_agma2101_pair   pair;
    ts_agma2101_rating rating;

    (void)ts_agma2101_pair_prepare(in, &pair, NULL);
    ts_agma2101_rate(&pair, load, &rating, NULL);
    return rating;
}

static ts_agma2101_rating plain_rating(const ts_agma2101_load *load)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    const ts_agma2101_input         in       = full_input(&geometry);

    return rated(&in, load);
}

static bool remarks(uint32_t all, ts_agma_remark remark)
{
    return (all & TS_AGMA_REMARKED(remark)) != 0;
}

/* ---- the whole ---------------------------------------------------------------------------------
 */

/* derived: the fundamental formulas worked out here once more from the factors. */
static void a_rating_is_its_factors_multiplied(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    const ts_agma2101_input         in       = full_input(&geometry);
    ts_agma2101_pair                pair;
    ts_agma2101_rating              r;
    (void)state;

    assert_true(ts_agma2101_pair_prepare(&in, &pair, NULL));
    ts_agma2101_rate(&pair, &plain_load, &r, NULL);
    assert_null(r.missing);
    assert_int_equal(r.remarks, 0);
    assert_true(r.K_v > 1.0 && r.K_H > 1.0);
    const double load = 3000.0 * r.K_v * r.K_H;
    for (int gear = 0; gear < 2; gear++) {
        const ts_agma2101_gear_rating *g = &r.gear[gear];

        assert_close(g->sigma_F, load / (14e-3 * 2e-3 * pair.tooth[gear].Y_J), 1e-13);
        assert_close(g->sigma_H, pair.Z_E * sqrt(load / (54e-3 * 14e-3 * pair.Z_I)), 1e-13);
        assert_close(g->S_F, 448e6 * g->Y_N / g->sigma_F, 1e-13);
        assert_close(g->S_H, 1551e6 * g->Z_N / g->sigma_H, 1e-13);
    }
}

static void ratings_are_bit_equal_with_and_without_workings(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    const ts_agma2101_input         in       = full_input(&geometry);
    ts_arena                       *arena    = ts_arena_open(NULL);
    ts_workings                    *workings = ts_workings_open(arena);
    ts_agma2101_pair                silent, noted;
    ts_agma2101_rating              a, b;
    (void)state;

    (void)ts_agma2101_pair_prepare(&in, &silent, NULL);
    (void)ts_agma2101_pair_prepare(&in, &noted, workings);
    ts_agma2101_rate(&silent, &plain_load, &a, NULL);
    ts_agma2101_rate(&noted, &plain_load, &b, workings);
    assert_same_double(silent.Z_I, noted.Z_I);
    assert_same_double(silent.tooth[0].Y_J, noted.tooth[0].Y_J);
    assert_same_double(a.K_v, b.K_v);
    for (int gear = 0; gear < 2; gear++) {
        assert_same_double(a.gear[gear].S_H, b.gear[gear].S_H);
        assert_same_double(a.gear[gear].S_F, b.gear[gear].S_F);
    }
    assert_true(ts_workings_complete(workings));
    assert_true(ts_workings_count(workings) > 80);
    ts_arena_close(arena);
}

/* Every input of every step is noted before, but for what only the caller knows. */
static void every_number_can_be_traced(void **state)
{
    static const char *const callers[] = {
        "sigma_HP", "sigma_FP", "E_",  "nu_",      "F_t",  "v",      "n_L",     "q_",
        "K_o",      "T_M",      "A_v", "delta_sn", "m_n",  "m_t",    "alpha_n", "beta",
        "b_",       "z_",       "x_",  "R",        "h_a0", "rho_a0", "delta_a0"};
    const ts_cylindrical_pair_input pair_in  = plain_input();
    ts_arena                       *arena    = ts_arena_open(NULL);
    ts_workings                    *workings = ts_workings_open(arena);
    ts_cylindrical_pair             geometry;
    ts_agma2101_pair                pair;
    ts_agma2101_rating              rating;
    (void)state;

    (void)ts_cylindrical_pair_solve(&pair_in, &geometry, workings);
    const ts_agma2101_input in = full_input(&geometry);
    (void)ts_agma2101_pair_prepare(&in, &pair, workings);
    ts_agma2101_rate(&pair, &plain_load, &rating, workings);
    for (size_t i = 0; i < ts_workings_count(workings); i++) {
        const ts_note *note = ts_workings_at(workings, i);

        if (note->formula == NULL || strstr(note->formula->source, "AGMA") == NULL ||
            note->kind == TS_NOTE_SEARCHED)
            continue;
        for (uint32_t j = 0; j < note->input_count; j++) {
            bool known =
                ts_origin(workings, i, note->inputs[j].name, note->inputs[j].value) != SIZE_MAX;
            for (size_t k = 0; k < sizeof callers / sizeof callers[0]; k++)
                known = known || strncmp(note->inputs[j].name, callers[k], strlen(callers[k])) == 0;
            if (!known)
                print_error("%s of %s has no origin\n", note->inputs[j].name, note->symbol);
            assert_true(known);
        }
    }
    ts_arena_close(arena);
}

/* ---- laws --------------------------------------------------------------------------------------
 */

static void stresses_follow_the_load(void **state)
{
    ts_agma2101_load twice = plain_load;
    (void)state;

    twice.F_t *= 2.0;
    const ts_agma2101_rating one = plain_rating(&plain_load), two = plain_rating(&twice);
    for (int gear = 0; gear < 2; gear++) {
        assert_close(two.gear[gear].sigma_F, 2.0 * one.gear[gear].sigma_F, 1e-14);
        assert_close(two.gear[gear].sigma_H, sqrt(2.0) * one.gear[gear].sigma_H, 1e-14);
        assert_close(two.gear[gear].S_F, one.gear[gear].S_F / 2.0, 1e-14);
    }
}

/* derived: with K_v and K_H held, stresses of similar gears under loads of similar area agree. */
static void similar_gears_bear_similar_loads(void **state)
{
    ts_cylindrical_pair_input pair_in = plain_input();
    ts_agma2101_load          load    = plain_load;
    (void)state;

    load.K_H                        = 1.2;
    const ts_cylindrical_pair small = solved(&pair_in);
    ts_agma2101_input         in    = full_input(&small);
    in.scale                        = TS_AGMA_ACCURACY_K_V;
    in.accuracy                     = 1.15;
    const ts_agma2101_rating one    = rated(&in, &load);
    pair_in.m_n *= 3.0;
    pair_in.b_1 *= 3.0;
    pair_in.b_2 *= 3.0;
    load.F_t *= 9.0;
    const ts_cylindrical_pair large = solved(&pair_in);
    in.geometry                     = &large;
    const ts_agma2101_rating nine   = rated(&in, &load);
    for (int gear = 0; gear < 2; gear++) {
        assert_close(nine.gear[gear].sigma_F, one.gear[gear].sigma_F, 1e-12);
        assert_close(nine.gear[gear].sigma_H, one.gear[gear].sigma_H, 1e-12);
    }
}

static void swapping_the_gears_swaps_the_ratings(void **state)
{
    ts_cylindrical_pair_input pair_in = plain_input();
    ts_agma2101_load          load    = plain_load;
    (void)state;

    pair_in.x_1                     = 0.2;
    const ts_cylindrical_pair there = solved(&pair_in);
    ts_agma2101_input         in    = full_input(&there);
    in.gear[0].sigma_FP             = 500e6;
    in.gear[1].t_R                  = 3e-3;
    load.q[1]                       = 0.6;
    const ts_agma2101_rating a      = rated(&in, &load);

    pair_in.z_1                    = 61;
    pair_in.z_2                    = 27;
    pair_in.x_1                    = 0.0;
    pair_in.x_2                    = 0.2;
    const ts_cylindrical_pair back = solved(&pair_in);
    const ts_agma2101_gear    kept = in.gear[0];
    in.geometry                    = &back;
    in.gear[0]                     = in.gear[1];
    in.gear[1]                     = kept;
    load.n_L[0]                    = plain_load.n_L[1];
    load.n_L[1]                    = plain_load.n_L[0];
    load.q[0]                      = 0.6;
    load.q[1]                      = 0.0;
    const ts_agma2101_rating b     = rated(&in, &load);
    for (int gear = 0; gear < 2; gear++) {
        assert_close(a.gear[gear].S_H, b.gear[1 - gear].S_H, 1e-12);
        assert_close(a.gear[gear].S_F, b.gear[1 - gear].S_F, 1e-12);
        assert_close(a.gear[gear].sigma_F, b.gear[1 - gear].sigma_F, 1e-12);
    }
}

static void an_idler_bears_seven_tenths_in_bending_only(void **state)
{
    ts_agma2101_load idler = plain_load;
    (void)state;

    idler.q[1]                   = 1.0;
    const ts_agma2101_rating one = plain_rating(&plain_load), both = plain_rating(&idler);
    assert_close(both.gear[1].S_F, 0.7 * one.gear[1].S_F, 1e-13);
    assert_same_double(both.gear[0].S_F, one.gear[0].S_F);
    assert_same_double(both.gear[1].S_H, one.gear[1].S_H);
}

static void less_accurate_faster_hotter_longer_is_never_better(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    ts_agma2101_input               in       = full_input(&geometry);
    const ts_agma2101_rating        base     = rated(&in, &plain_load);
    ts_agma2101_load                loads[3] = {plain_load, plain_load, plain_load};
    (void)state;

    loads[0].v      = 40.0;
    loads[1].T_M    = 420.0;
    loads[2].n_L[0] = 4e9;
    for (int i = 0; i < 3; i++) {
        assert_true(rated(&in, &loads[i]).gear[0].S_F < base.gear[0].S_F);
        assert_true(rated(&in, &loads[i]).gear[0].S_H < base.gear[0].S_H);
    }
    in.accuracy = 8.0;
    assert_true(rated(&in, &plain_load).gear[0].S_F < base.gear[0].S_F);
    in.accuracy   = 6.0;
    in.load_point = TS_AGMA_LOAD_TIP;
    assert_true(rated(&in, &plain_load).gear[0].S_F < base.gear[0].S_F);
    assert_same_double(rated(&in, &plain_load).gear[0].S_H, base.gear[0].S_H);
    in.R = 0.9999;
    assert_close(rated(&in, &plain_load).gear[0].S_H, base.gear[0].S_H / 1.5, 1e-12);
}

/* ---- given instead of computed -----------------------------------------------------------------
 */

static void given_geometry_factors_are_taken_as_they_are(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    ts_agma2101_input               in       = full_input(&geometry);
    ts_agma2101_pair                pair;
    (void)state;

    in.Z_I         = 0.11;
    in.gear[0].Y_J = 0.41;
    in.gear[0].K_s = 1.05;
    in.K_H         = 1.33;
    assert_true(ts_agma2101_pair_prepare(&in, &pair, NULL));
    assert_same_double(pair.Z_I, 0.11);
    assert_same_double(pair.tooth[0].Y_J, 0.41);
    assert_same_double(pair.tooth[0].K_s, 1.05);
    assert_same_double(pair.K_H, 1.33);
    assert_nan(pair.face.K_H);
}

static void a_soft_wheel_gains_under_a_hard_pinion(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    ts_agma2101_input               in       = full_input(&geometry);
    ts_agma2101_pair                pair;
    (void)state;

    in.gear[1].hard     = false;
    in.gear[1].hardness = 300.0;
    in.gear[0].R_a      = 0.4e-6;
    assert_true(ts_agma2101_pair_prepare(&in, &pair, NULL));
    assert_same_double(pair.tooth[0].Z_W, 1.0);
    assert_true(pair.tooth[1].Z_W > 1.05 && pair.tooth[1].Z_W < 1.1125);
    in.gear[1].hardness = 420.0;
    assert_true(ts_agma2101_pair_prepare(&in, &pair, NULL));
    assert_true(remarks(pair.remarks, TS_AGMA_REMARK_WHEEL_HARDNESS));
}

/* ---- where it ends -----------------------------------------------------------------------------
 */

static void what_is_missing_is_named_and_never_passes(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    const ts_agma2101_input         nothing  = ts_agma2101_input_of(&geometry);
    ts_agma2101_input               in       = full_input(&geometry);
    (void)state;

    ts_agma2101_rating r = rated(&nothing, &plain_load);
    assert_non_null(r.missing);
    assert_false(r.gear[0].S_H >= 1.0 || r.gear[0].S_F >= 1.0);

    in.gear[1].sigma_FP = NAN;
    r                   = rated(&in, &plain_load);
    assert_string_equal(r.missing, "sigma_FP of gear 2");
    assert_nan(r.gear[1].S_F);
    assert_true(r.gear[0].S_F > 0.0 && r.gear[1].S_H > 0.0);

    in          = full_input(&geometry);
    in.accuracy = NAN;
    r           = rated(&in, &plain_load);
    assert_string_equal(r.missing, "an accuracy (A_v or Q_v), or K_v");
    assert_nan(r.gear[0].S_H);
}

static void a_load_that_cannot_be_is_refused(void **state)
{
    ts_agma2101_load bad[6] = {plain_load, plain_load, plain_load,
                               plain_load, plain_load, plain_load};
    (void)state;

    bad[0].F_t    = -1.0;
    bad[1].F_t    = NAN;
    bad[2].v      = NAN;
    bad[3].n_L[1] = 0.0;
    bad[4].q[0]   = 1.01;
    bad[5].q[1]   = NAN;
    for (int i = 0; i < 6; i++) {
        const ts_agma2101_rating r = plain_rating(&bad[i]);

        assert_non_null(r.missing);
        assert_nan(r.gear[0].S_H);
        assert_nan(r.gear[1].S_F);
    }
}

static void no_load_is_no_stress(void **state)
{
    ts_agma2101_load idle = plain_load;
    (void)state;

    idle.F_t                   = 0.0;
    const ts_agma2101_rating r = plain_rating(&idle);
    assert_null(r.missing);
    assert_same_double(r.gear[0].sigma_H, 0.0);
    assert_true(isinf(r.gear[0].S_F));
}

static void an_internal_gear_needs_its_bending_factor_given(void **state)
{
    ts_cylindrical_pair_input pair_in = plain_input();
    (void)state;

    pair_in.z_2                        = -79;
    pair_in.k_2                        = -0.2;
    const ts_cylindrical_pair geometry = solved(&pair_in);
    ts_agma2101_input         in       = full_input(&geometry);
    ts_agma2101_rating        r        = rated(&in, &plain_load);
    assert_true(remarks(r.remarks, TS_AGMA_REMARK_INTERNAL_J));
    assert_nan(r.gear[1].S_F);
    assert_true(r.gear[0].S_F > 0.0 && r.gear[0].S_H > 0.0 && r.gear[1].S_H > 0.0);
    in.gear[1].Y_J = 0.5;
    r              = rated(&in, &plain_load);
    assert_null(r.missing);
    assert_true(r.gear[1].S_F > 0.0);
}

static void teeth_that_do_not_hand_over_are_not_rated(void **state)
{
    ts_cylindrical_pair_input pair_in = plain_input();
    ts_agma2101_pair          pair;
    ts_agma2101_rating        r;
    (void)state;

    pair_in.k_1 = pair_in.k_2          = -0.5;
    const ts_cylindrical_pair geometry = solved(&pair_in);
    const ts_agma2101_input   in       = full_input(&geometry);
    assert_true(geometry.eps_alpha < 1.0);
    assert_false(ts_agma2101_pair_prepare(&in, &pair, NULL));
    ts_agma2101_rate(&pair, &plain_load, &r, NULL);
    assert_nan(r.gear[0].S_H);
    assert_non_null(r.missing);
    pair_in                             = plain_input();
    pair_in.b_2                         = 0.0;
    const ts_cylindrical_pair widthless = solved(&pair_in);
    const ts_agma2101_input   none      = full_input(&widthless);
    assert_false(ts_agma2101_pair_prepare(&none, &pair, NULL));
}

/* Each departure from the plain pair, and the remark that it earns. */
typedef struct departure {
    ts_agma_remark remark;
    void (*leave)(ts_cylindrical_pair_input *pair, ts_agma2101_input *in, ts_agma2101_load *load);
} departure;

#define LEAVE(name, change)                                                                        \
    static void name(ts_cylindrical_pair_input *pair, ts_agma2101_input *in,                       \
                     ts_agma2101_load *load)                                                       \
    {                                                                                              \
        (void)pair;                                                                                \
        (void)in;                                                                                  \
        (void)load;                                                                                \
        change;                                                                                    \
    }
LEAVE(twist, (pair->beta = 51.0 * degree, pair->alpha_n = 15.0 * degree))
LEAVE(lean, pair->beta = 10.0 * degree)
LEAVE(widen, pair->b_1 = pair->b_2 = 0.12)
LEAVE(widen_more, pair->b_1 = pair->b_2 = 1.1)
LEAVE(hang, in->overhung = true)
LEAVE(refine, in->accuracy = 5.0)
LEAVE(coarsen, in->accuracy = 13.0)
LEAVE(thin, in->gear[1].t_R = 1e-3)
LEAVE(trust, in->R = 0.99999)
LEAVE(speed_up, load->v = 90.0)
LEAVE(start_only, load->n_L[0] = 500.0)
LEAVE(last_long, load->n_L[1] = 2e10)
LEAVE(heat, load->T_M = 410.0)
LEAVE(shift_out, pair->x_1 = -0.9)
LEAVE(sharpen, (pair->x_1 = 1.4, pair->x_2 = -1.4))
LEAVE(press, pair->a_w = 87.8e-3)
LEAVE(bottom, (pair->rack.h_fPs = 0.9, pair->rack.rho_fPs = 0.1))

static void leaving_the_range_earns_its_remark(void **state)
{
    static const departure departures[] = {
        {TS_AGMA_REMARK_HELIX, twist},
        {TS_AGMA_REMARK_LOW_OVERLAP, lean},
        {TS_AGMA_REMARK_FACE_DIAMETER, widen},
        {TS_AGMA_REMARK_FACE, widen_more},
        {TS_AGMA_REMARK_OVERHUNG, hang},
        {TS_AGMA_REMARK_VERY_ACCURATE, refine},
        {TS_AGMA_REMARK_COARSE, coarsen},
        {TS_AGMA_REMARK_THIN_RIM, thin},
        {TS_AGMA_REMARK_RELIABILITY, trust},
        {TS_AGMA_REMARK_SPEED, speed_up},
        {TS_AGMA_REMARK_FEW_CYCLES, start_only},
        {TS_AGMA_REMARK_MANY_CYCLES, last_long},
        {TS_AGMA_REMARK_HOT, heat},
        {TS_AGMA_REMARK_INTERFERENCE, shift_out},
        {TS_AGMA_REMARK_POINTED, sharpen},
        {TS_AGMA_REMARK_NO_BACKLASH, press},
        {TS_AGMA_REMARK_NO_CLEARANCE, bottom},
    };
    (void)state;
    for (size_t i = 0; i < sizeof departures / sizeof departures[0]; i++) {
        ts_cylindrical_pair_input pair_in = plain_input();
        ts_agma2101_load          load    = plain_load;
        ts_cylindrical_pair       geometry;
        ts_agma2101_input         in = full_input(&geometry);

        departures[i].leave(&pair_in, &in, &load);
        geometry                   = solved(&pair_in);
        const ts_agma2101_rating r = rated(&in, &load);
        if (!remarks(r.remarks, departures[i].remark))
            print_error("no remark: %s\n", ts_agma_remark_says(departures[i].remark));
        assert_true(remarks(r.remarks, departures[i].remark));
    }
}

/* Deep teeth: the addendum of 1.35 modules at 17.5 degrees reaches a contact ratio above 2. */
static void deep_teeth_are_rated_at_the_tip_and_marked(void **state)
{
    ts_cylindrical_pair_input pair_in = plain_input();
    (void)state;

    pair_in.alpha_n                    = 17.5 * degree;
    pair_in.z_1                        = 41;
    pair_in.rack                       = (ts_basic_rack){1.3, 1.55, 0.25};
    const ts_cylindrical_pair geometry = solved(&pair_in);
    ts_agma2101_input         in       = full_input(&geometry);
    assert_true(geometry.eps_alpha > 2.0);
    const ts_agma2101_rating deep = rated(&in, &plain_load);
    in.load_point                 = TS_AGMA_LOAD_TIP;
    const ts_agma2101_rating tip  = rated(&in, &plain_load);
    assert_true(remarks(deep.remarks, TS_AGMA_REMARK_CONTACT_RATIO));
    assert_same_double(deep.gear[0].S_F, tip.gear[0].S_F);
}

static void every_remark_says_a_sentence_and_names_a_clause(void **state)
{
    (void)state;
    for (int i = 0; i < TS_AGMA_REMARK_COUNT; i++) {
        const char *says = ts_agma_remark_says((ts_agma_remark)i);

        assert_non_null(says);
        assert_true(strlen(says) > 20 && says[strlen(says) - 1] != '.');
        assert_non_null(strstr(ts_agma_remark_clause((ts_agma_remark)i), "clause"));
    }
}

/* ---- strange inputs ----------------------------------------------------------------------------
 */

static double odd(sequence *s)
{
    static const double values[] = {0.0, -0.0, -1.0, 1e-308, 1e-30,    1e-3,  0.5,       1.0,
                                    5.0, 1e3,  1e15, 1e308,  INFINITY, -1e15, -INFINITY, NAN};

    return values[sequence_below(s, sizeof values / sizeof values[0])];
}

static void disturb(sequence *s, ts_agma2101_input *in, ts_agma2101_load *load)
{
    ts_agma2101_gear *g        = &in->gear[sequence_below(s, 2)];
    double           *fields[] = {&g->tool.h_a0,
                                  &g->tool.rho_a0,
                                  &g->tool.delta_a0,
                                  &g->delta_sn,
                                  &g->sigma_HP,
                                  &g->sigma_FP,
                                  &g->hardness,
                                  &g->R_a,
                                  &g->t_R,
                                  &g->E,
                                  &g->nu,
                                  &g->K_s,
                                  &g->Y_J,
                                  &in->accuracy,
                                  &in->K_H,
                                  &in->mounting.offset,
                                  &in->mounting.alignment.A,
                                  &in->mounting.alignment.B,
                                  &in->mounting.alignment.C,
                                  &in->Z_R,
                                  &in->Z_I,
                                  &in->R,
                                  &load->F_t,
                                  &load->v,
                                  &load->n_L[0],
                                  &load->n_L[1],
                                  &load->q[0],
                                  &load->q[1],
                                  &load->K_o,
                                  &load->K_H,
                                  &load->T_M};

    for (uint64_t n = 1 + sequence_below(s, 3); n > 0; n--)
        *fields[sequence_below(s, sizeof fields / sizeof fields[0])] = odd(s);
    g->hard   = sequence_below(s, 2) == 0;
    g->line   = (ts_agma_life_line)sequence_below(s, 3);
    in->scale = (ts_agma_accuracy_scale)sequence_below(s, 3);
}

/* Checked builds prove every step, so that a formula that leaves its text aborts here. */
static void strange_inputs_give_a_number_or_none(void **state)
{
    const ts_cylindrical_pair_input pair_in  = plain_input();
    const ts_cylindrical_pair       geometry = solved(&pair_in);
    sequence                        s        = {.state = 0x9e3779b97f4a7c15u};
    (void)state;

    for (int round = 0; round < 20000; round++) {
        ts_agma2101_input in   = full_input(&geometry);
        ts_agma2101_load  load = plain_load;

        disturb(&s, &in, &load);
        const ts_agma2101_rating r = rated(&in, &load);
        for (int gear = 0; gear < 2; gear++) {
            assert_true(isnan(r.gear[gear].S_H) || r.gear[gear].S_H >= 0.0);
            assert_true(isnan(r.gear[gear].S_F) || r.gear[gear].S_F >= 0.0);
        }
    }
}

/* Any pair that the geometry accepts, not only sensible ones. */
static void strange_pairs_give_a_number_or_none(void **state)
{
    sequence s = {.state = 0x2545f4914f6cdd1du};
    (void)state;

    for (int round = 0; round < 20000; round++) {
        const double beta =
            sequence_below(&s, 2) == 0 ? 0.0 : (double)sequence_below(&s, 140) / 100.0;
        ts_cylindrical_pair_input pair_in = {
            .z_1     = 1 + (int)sequence_below(&s, 150),
            .z_2     = (int)sequence_below(&s, 400) - 150,
            .m_n     = 1e-3,
            .alpha_n = 0.05 + (double)sequence_below(&s, 100) / 100.0,
            .beta    = beta,
            .b_1     = 1e-4 * (double)(1 + sequence_below(&s, 1000)),
            .b_2     = 1e-4 * (double)(1 + sequence_below(&s, 1000)),
            .x_1     = (double)sequence_below(&s, 300) / 100.0 - 1.5,
            .x_2     = (double)sequence_below(&s, 300) / 100.0 - 1.5,
            .tip     = sequence_below(&s, 2) == 0 ? TS_TIP_GIVEN : TS_TIP_CLEARANCE,
        };
        ts_cylindrical_pair geometry;

        pair_in.rack              = ts_basic_rack_fitted(&ts_basic_rack_A, pair_in.alpha_n);
        const ts_pair_fault fault = ts_cylindrical_pair_solve(&pair_in, &geometry, NULL);
        if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED)
            continue;
        const ts_agma2101_input  in = full_input(&geometry);
        const ts_agma2101_rating r  = rated(&in, &plain_load);
        for (int gear = 0; gear < 2; gear++) {
            assert_true(isnan(r.gear[gear].S_H) || r.gear[gear].S_H > 0.0);
            assert_true(isnan(r.gear[gear].S_F) || r.gear[gear].S_F > 0.0);
            assert_true(!isnan(r.gear[gear].S_F) || r.missing != NULL);
        }
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_rating_is_its_factors_multiplied),
        cmocka_unit_test(ratings_are_bit_equal_with_and_without_workings),
        cmocka_unit_test(every_number_can_be_traced),
        cmocka_unit_test(stresses_follow_the_load),
        cmocka_unit_test(similar_gears_bear_similar_loads),
        cmocka_unit_test(swapping_the_gears_swaps_the_ratings),
        cmocka_unit_test(an_idler_bears_seven_tenths_in_bending_only),
        cmocka_unit_test(less_accurate_faster_hotter_longer_is_never_better),
        cmocka_unit_test(given_geometry_factors_are_taken_as_they_are),
        cmocka_unit_test(a_soft_wheel_gains_under_a_hard_pinion),
        cmocka_unit_test(what_is_missing_is_named_and_never_passes),
        cmocka_unit_test(a_load_that_cannot_be_is_refused),
        cmocka_unit_test(no_load_is_no_stress),
        cmocka_unit_test(an_internal_gear_needs_its_bending_factor_given),
        cmocka_unit_test(teeth_that_do_not_hand_over_are_not_rated),
        cmocka_unit_test(leaving_the_range_earns_its_remark),
        cmocka_unit_test(deep_teeth_are_rated_at_the_tip_and_marked),
        cmocka_unit_test(every_remark_says_a_sentence_and_names_a_clause),
        cmocka_unit_test(strange_inputs_give_a_number_or_none),
        cmocka_unit_test(strange_pairs_give_a_number_or_none),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
