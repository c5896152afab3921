/* Does the rating of a bevel pair keep the laws that every rating must keep? */
#include "element/bevel_tolerance.h"
#include "rating/iso10300/bevel_strength.h"
#include "rating/iso10300/iso10300.h"
#include "rating/iso6336/single_contact.h"
#include "rating/iso6336/zone_factor.h"
#include "support/close.h"
#include "support/sequence.h"
#include "support/spoil.h"

#include <string.h>

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

/* ---- an invented pair ------------------------------------------------------------------------ */

typedef struct sample {
    ts_bevel_pair        pair;
    ts_bevel_teeth       teeth;
    ts_iso10300_mesh     mesh;
    ts_iso10300_load     load;
    ts_iso10300_prepared prepared;
    ts_iso10300_rating   rating;
} sample;

static const ts_bevel_pair_input sample_pair = {.z_1     = 27,
                                                .z_2     = 41,
                                                .m_et    = 2.5e-3,
                                                .Sigma   = 90.0 / 180.0 * 3.14159265358979323846,
                                                .alpha_n = 20.0 / 180.0 * 3.14159265358979323846,
                                                .beta_m  = 35.0 / 180.0 * 3.14159265358979323846,
                                                .b       = 18e-3};

static ts_iso10300_gear carburised(void)
{
    return (ts_iso10300_gear){.class      = TS_GEAR_CASE_HARDENED,
                              .sigma_Hlim = 1500e6,
                              .sigma_Flim = 500e6,
                              .E          = 206e9,
                              .nu         = 0.3,
                              .rho        = 7830.0,
                              .Z_NTlong   = 0.85,
                              .Y_NTlong   = 0.85,
                              .Z_W        = 1.0,
                              .f_pt       = 6e-6,
                              .R_z        = 3e-6,
                              .R_zF       = 10e-6,
                              .rho_a0     = 0.6e-3};
}

/* The geometry and the load, nothing computed yet. */
static sample sample_of(const ts_bevel_pair_input *in)
{
    sample s;

    assert_int_equal(ts_bevel_pair_solve(in, &s.pair, NULL), TS_BEVEL_FINE);
    const ts_bevel_teeth_input teeth = {.taper   = TS_BEVEL_TAPER_UNIFORM,
                                        .profile = ts_bevel_profile_usual(&s.pair, NULL),
                                        .j_mn    = 0.1e-3,
                                        .r_c0    = 57e-3};
    assert_int_equal(ts_bevel_teeth_solve(&s.pair, &teeth, &s.teeth, NULL), TS_BEVEL_TEETH_FINE);
    s.mesh = (ts_iso10300_mesh){.gear         = {carburised(), carburised()},
                                .nu_40        = 25e-6,
                                .b_veff_share = TS_ISO10300_SHARE,
                                .e            = TS_BEVEL_CROWNING_HIGH,
                                .Z_K          = TS_BEVEL_Z_K,
                                .pattern      = TS_BEVEL_PATTERN_LIGHT_LOAD};
    s.load = (ts_iso10300_load){.T_1     = 150.0,
                                .omega_1 = 500.0,
                                .K_A     = 1.0,
                                .N_L     = {1e7, 1e7 * in->z_1 / in->z_2},
                                .Y_M     = {1.0, 1.0},
                                .S_Hmin  = 1.0,
                                .S_Fmin  = 1.3};
    return s;
}

static void rate(sample *s)
{
    assert_true(ts_iso10300_prepare(&s->pair, &s->teeth, &s->mesh, &s->prepared, NULL));
    assert_true(ts_iso10300_rate(&s->prepared, &s->load, &s->rating, NULL));
    assert_null(s->rating.missing);
}

static sample rated(void)
{
    sample s = sample_of(&sample_pair);

    rate(&s);
    return s;
}

/* ---- limits ---------------------------------------------------------------------------------- */

/* derived: nearly parallel axes and straight teeth are a spur pair.  At the inner point of single
 * contact its contact stress is that of ISO 6336-2 with Z_B and without Z_eps; Z_K apart. */
static void parallel_axes_and_straight_teeth_press_like_a_spur_pair(void **state)
{
    (void)state;
    const ts_bevel_pair_input in = {
        .z_1 = 23, .z_2 = 41, .m_et = 2.5e-3, .Sigma = 2e-5, .alpha_n = 20.0 * degree, .b = 18e-3};
    sample s = sample_of(&in);

    s.mesh.b_veff_share = 1.0;
    rate(&s);

    const double                  Z_H         = ts_zone_factor(in.alpha_n, in.alpha_n, 0.0, NULL);
    const double                  Z_E         = ts_elasticity_factor(206e9, 0.3, 206e9, 0.3, NULL);
    const ts_contact_stress_input spur        = {.F_t    = s.rating.F_mt,
                                                 .d_1    = s.pair.d_m1,
                                                 .b      = in.b,
                                                 .u      = 41.0 / 23.0,
                                                 .Z_H    = Z_H,
                                                 .Z_E    = Z_E,
                                                 .Z_eps  = 1.0,
                                                 .Z_beta = 1.0};
    const double                  pitch_point = ts_nominal_contact_stress(&spur, NULL);

    assert_close(s.rating.sigma_H0, pitch_point * s.prepared.mid.Z_MB * TS_BEVEL_Z_K, 1e-7);
    assert_close(s.prepared.Z_E, Z_E, 1e-15);
}

/* The mid-zone factor of straight teeth is Z_B of ISO 6336-2 (other code). */
static void straight_teeth_are_judged_at_the_inner_point_of_single_contact(void **state)
{
    (void)state;
    ts_bevel_virtual v = {.eps_valpha = 1.55, .eps_vbeta = 0.0, .alpha_vet = 20.0 * degree};
    const double     m = 2e-3;

    v.z_v[0] = 24.0;
    v.z_v[1] = 37.0;
    for (int gear = 0; gear < 2; gear++) {
        v.d_vb[gear] = m * v.z_v[gear] * cos(v.alpha_vet);
        v.d_va[gear] = m * (v.z_v[gear] + 2.0);
    }
    const ts_bevel_mid_zone mid  = ts_bevel_mid_zone_factor(&v, NULL);
    const double            on_1 = sqrt(pow(v.d_va[0] / v.d_vb[0], 2.0) - 1.0) - 2.0 * pi / 24.0;
    const double            on_2 =
        sqrt(pow(v.d_va[1] / v.d_vb[1], 2.0) - 1.0) - (1.55 - 1.0) * 2.0 * pi / 37.0;

    assert_close(mid.Z_MB, tan(v.alpha_vet) / sqrt(on_1 * on_2), 1e-14);
    assert_close(mid.F_1, 2.0, 1e-15);
    v.eps_vbeta = 1.0;
    assert_close(ts_bevel_mid_zone_factor(&v, NULL).F_1, 1.55, 1e-15);
    assert_close(ts_bevel_mid_zone_factor(&v, NULL).F_2, 1.55, 1e-15);
}

/* Z_E of steel, 189.8 sqrt(N/mm2): ISO 6336-2, table 1 (from memory). */
static void steel_on_steel_has_its_printed_elasticity(void **state)
{
    (void)state;
    assert_close(rated().prepared.Z_E / 1e3, 189.8, 3e-4);
}

/* ---- laws ------------------------------------------------------------------------------------ */

/* derived: Hertz and beam: nominal stresses grow with the root of the torque, and with it. */
static void torque_acts_by_its_root_on_flanks_and_directly_on_roots(void **state)
{
    (void)state;
    sample one = rated(), four = rated();

    four.load.T_1 = 4.0 * one.load.T_1;
    rate(&four);
    assert_close(four.rating.sigma_H0, 2.0 * one.rating.sigma_H0, 1e-14);
    for (int gear = 0; gear < 2; gear++)
        assert_close(four.rating.gear[gear].sigma_F0, 4.0 * one.rating.gear[gear].sigma_F0, 1e-14);
    assert_true(four.rating.K_v < one.rating.K_v); /* deviations matter less under load */
}

/* derived: a pair twice as large bears eight times the torque at the same stress. */
static void size_acts_by_its_cube(void **state)
{
    (void)state;
    ts_bevel_pair_input in = sample_pair;

    in.m_et *= 2.0;
    in.b *= 2.0;
    sample one = rated(), twice = sample_of(&sample_pair);
    assert_int_equal(ts_bevel_pair_solve(&in, &twice.pair, NULL), TS_BEVEL_FINE);
    ts_bevel_teeth_input teeth = one.teeth.in;
    teeth.j_mn *= 2.0;
    teeth.r_c0 *= 2.0;
    assert_int_equal(ts_bevel_teeth_solve(&twice.pair, &teeth, &twice.teeth, NULL),
                     TS_BEVEL_TEETH_FINE);
    twice.mesh.gear[0].rho_a0 *= 2.0;
    twice.mesh.gear[1].rho_a0 *= 2.0;
    twice.load.T_1 *= 8.0;
    rate(&twice);
    assert_close(twice.rating.sigma_H0, one.rating.sigma_H0, 1e-12);
    assert_close(twice.rating.gear[0].sigma_F0, one.rating.gear[0].sigma_F0, 1e-12);
    assert_close(twice.prepared.K_F0, one.prepared.K_F0, 1e-13);
}

static void swapping_the_gears_swaps_their_safeties(void **state)
{
    (void)state;
    ts_bevel_pair_input in = sample_pair;

    in.z_1   = sample_pair.z_2;
    in.z_2   = sample_pair.z_1;
    sample a = sample_of(&sample_pair), b = sample_of(&in);
    a.mesh.gear[0].sigma_Flim = 430e6;
    a.mesh.gear[0].f_pt       = 9e-6;
    a.mesh.gear[1].overhung   = true;
    a.load.Y_M[1]             = 0.8;
    b.mesh.gear[0]            = a.mesh.gear[1];
    b.mesh.gear[1]            = a.mesh.gear[0];
    b.load.T_1                = a.load.T_1 * 41.0 / 27.0;
    b.load.omega_1            = a.load.omega_1 * 27.0 / 41.0;
    b.load.N_L[0]             = a.load.N_L[1];
    b.load.N_L[1]             = a.load.N_L[0];
    b.load.Y_M[0]             = 0.8;
    b.load.Y_M[1]             = 1.0;
    rate(&a);
    rate(&b);
    assert_close(a.rating.N, b.rating.N, 1e-13);
    assert_close(a.rating.K_v, b.rating.K_v, 1e-13);
    for (int gear = 0; gear < 2; gear++) {
        assert_close(a.rating.gear[gear].S_H, b.rating.gear[1 - gear].S_H, 1e-12);
        assert_close(a.rating.gear[gear].S_F, b.rating.gear[1 - gear].S_F, 1e-12);
        assert_close(a.rating.gear[gear].N_F, b.rating.gear[1 - gear].N_F, 1e-9);
    }
}

/* A width of 18 mm at 2.5 mm module is common in small bevels; 10 m/s, 150 N m.  Not a check value:
 * a factor that is wrong by its unit would show here. */
static void the_sample_has_plausible_stresses(void **state)
{
    (void)state;
    const sample s = rated();

    assert_true(s.rating.sigma_H > 700e6 && s.rating.sigma_H < 1800e6);
    assert_true(s.rating.gear[0].sigma_F > 150e6 && s.rating.gear[0].sigma_F < 900e6);
    assert_true(s.rating.K_v > 1.0 && s.rating.K_v < 1.5);
    assert_true(s.prepared.gear[0].root.Y_Fa > 1.8 && s.prepared.gear[0].root.Y_Fa < 3.5);
    assert_true(s.prepared.virt.eps_vgamma > 1.3 && s.prepared.virt.eps_vgamma < 2.5);
    assert_close(s.prepared.K_Hbeta, 1.5 * 1.05, 1e-14);
}

static void a_narrower_contact_pattern_is_rated_worse(void **state)
{
    (void)state;
    sample wide = rated(), narrow = rated();

    narrow.mesh.b_veff_share = 0.6;
    rate(&narrow);
    assert_close(narrow.prepared.K_Hbeta, wide.prepared.K_Hbeta * 0.85 / 0.6, 1e-14);
    assert_true(narrow.rating.sigma_H > wide.rating.sigma_H);
}

static void bearings_on_one_side_cost_strength(void **state)
{
    (void)state;
    sample none = rated(), one = rated(), both = rated();

    one.mesh.gear[1].overhung  = true;
    both.mesh.gear[0].overhung = true;
    both.mesh.gear[1].overhung = true;
    rate(&one);
    rate(&both);
    assert_close(one.prepared.K_Hbeta / none.prepared.K_Hbeta, 1.10 / 1.05, 1e-14);
    assert_close(both.prepared.K_Hbeta / none.prepared.K_Hbeta, 1.25 / 1.05, 1e-14);
}

static void two_sided_bending_lowers_the_root_alone(void **state)
{
    (void)state;
    sample one = rated(), both = rated();

    both.load.Y_M[0] = 0.7;
    rate(&both);
    assert_close(both.rating.gear[0].S_F, 0.7 * one.rating.gear[0].S_F, 1e-14);
    assert_same_double(both.rating.gear[1].S_F, one.rating.gear[1].S_F);
    assert_same_double(both.rating.gear[0].S_H, one.rating.gear[0].S_H);
}

/* ---- life ------------------------------------------------------------------------------------ */

/* derived: a pair that runs as long as its load allows has the safety 1. */
static void the_allowed_life_leaves_no_reserve(void **state)
{
    (void)state;
    for (double T = 40.0; T < 900.0; T *= 1.5) {
        sample s = rated();

        s.load.T_1 = T;
        rate(&s);
        for (int gear = 0; gear < 2; gear++) {
            const double N_H = s.rating.gear[gear].N_H, N_F = s.rating.gear[gear].N_F;
            sample       again = s;

            if (N_H > 2e5 && isfinite(N_H)) {
                again.load.N_L[gear] = N_H;
                rate(&again);
                assert_close(again.rating.gear[gear].S_H, 1.0, 1e-10);
            }
            if (N_F > 2e3 && isfinite(N_F) && N_F < 1e200) {
                again.load.N_L[gear] = N_F;
                rate(&again);
                assert_close(again.rating.gear[gear].S_F, 1.0, 1e-10);
            }
        }
    }
}

/* ISO 6336-5/-2/-3 nodes, as ISO 10300 has them (from memory). */
static void life_lines_pass_through_their_nodes(void **state)
{
    (void)state;
    const ts_bevel_life H = ts_bevel_life_of(TS_GEAR_CASE_HARDENED, TS_BEVEL_CONTACT, false, 0.85);
    const ts_bevel_life P = ts_bevel_life_of(TS_GEAR_CASE_HARDENED, TS_BEVEL_CONTACT, true, 0.85);
    const ts_bevel_life F = ts_bevel_life_of(TS_GEAR_CASE_HARDENED, TS_BEVEL_BENDING, false, 1.0);
    const ts_bevel_life T = ts_bevel_life_of(TS_GEAR_NITRIDED, TS_BEVEL_CONTACT, true, 0.85);

    assert_close(ts_bevel_life_factor(&H, 1e3, TS_BEVEL_CONTACT, 0, NULL), 1.6, 1e-15);
    assert_close(ts_bevel_life_factor(&H, 5e7, TS_BEVEL_CONTACT, 0, NULL), 1.0, 1e-13);
    assert_close(ts_bevel_life_factor(&H, 1e10, TS_BEVEL_CONTACT, 1, NULL), 0.85, 1e-13);
    assert_close(ts_bevel_life_factor(&P, 1e7, TS_BEVEL_CONTACT, 0, NULL), 1.3, 1e-13);
    assert_close(ts_bevel_life_factor(&F, 1e3, TS_BEVEL_BENDING, 0, NULL), 2.5, 1e-15);
    assert_close(ts_bevel_life_factor(&F, 3e6, TS_BEVEL_BENDING, 0, NULL), 1.0, 1e-13);
    assert_close(ts_bevel_life_factor(&T, 1e5, TS_BEVEL_CONTACT, 0, NULL), 1.3, 1e-13);
    assert_close(ts_bevel_life_cycles(&H, 1.0), 5e7, 1e-9);
    assert_same_double(ts_bevel_life_cycles(&H, 1.7), 0.0);
    assert_true(isinf(ts_bevel_life_cycles(&F, 0.99)));
    assert_nan(ts_bevel_life_cycles(&F, (double)NAN));
}

/* ---- reserve --------------------------------------------------------------------------------- */

static void the_least_safety_decides(void **state)
{
    (void)state;
    sample          s      = rated();
    ts_bevel_stress stress = TS_BEVEL_CONTACT;
    int             gear   = -1;

    s.mesh.gear[1].sigma_Flim = 100e6;
    rate(&s);
    const double reserve = ts_iso10300_reserve(&s.rating, &s.load, &stress, &gear);
    assert_close(reserve, s.rating.gear[1].S_F / 1.3 - 1.0, 1e-14);
    assert_int_equal(stress, TS_BEVEL_BENDING);
    assert_int_equal(gear, 1);
    s.load.S_Fmin = (double)NAN;
    assert_nan(ts_iso10300_reserve(&s.rating, &s.load, NULL, NULL));
}

static void a_case_without_torque_is_no_danger(void **state)
{
    (void)state;
    sample s = rated();

    s.load.T_1 = 0.0;
    rate(&s);
    assert_same_double(s.rating.sigma_H, 0.0);
    assert_true(isinf(s.rating.gear[0].S_H) && isinf(s.rating.gear[1].S_F));
    assert_true(ts_bevel_remarks_have(s.rating.remarks, TS_BEVEL_REMARK_NO_LOAD));
    assert_true(isinf(ts_iso10300_reserve(&s.rating, &s.load, NULL, NULL)));
}

/* ---- workings -------------------------------------------------------------------------------- */

static void workings_change_no_bit(void **state)
{
    (void)state;
    ts_arena          *arena    = ts_arena_open(NULL);
    ts_workings       *workings = ts_workings_open(arena);
    sample             s        = rated();
    ts_iso10300_rating with;

    for (double T = 0.0; T < 700.0; T += 69.0)
        for (double omega = 0.0; omega < 4000.0; omega += 310.0) {
            s.load.T_1     = T;
            s.load.omega_1 = omega;
            assert_true(ts_iso10300_prepare(&s.pair, &s.teeth, &s.mesh, &s.prepared, workings));
            assert_true(ts_iso10300_rate(&s.prepared, &s.load, &with, workings));
            rate(&s);
            assert_same_double(with.sigma_H, s.rating.sigma_H);
            for (int gear = 0; gear < 2; gear++)
                assert_memory_equal(&with.gear[gear], &s.rating.gear[gear], sizeof with.gear[gear]);
        }
    assert_true(ts_workings_complete(workings));
    ts_arena_close(arena);
}

/* Everything that a contact stress is made of can be followed, but for what the file says. */
static void every_input_of_a_stress_is_noted(void **state)
{
    (void)state;
    static const char *const given[] = {
        "T_1",         "omega_1",     "K_A",         "Z_K",   "E_1",     "E_2",   "nu_1",
        "nu_2",        "rho_1",       "rho_2",       "f_pt1", "f_pt2",   "e",     "b_veff_share",
        "alpha_n",     "beta_m",      "b",           "z_1",   "z_2",     "m_et",  "Sigma",
        "k_hap",       "k_hfp",       "x_hm1",       "x_smn", "j_mn",    "r_c0",  "sigma_Hlim1",
        "sigma_Hlim2", "sigma_Flim1", "sigma_Flim2", "R_z1",  "R_z2",    "R_zF1", "R_zF2",
        "nu_40",       "N_L1",        "N_L2",        "Y_M1",  "Y_M2",    "Z_W1",  "Z_W2",
        "rho_a01",     "rho_a02",     "s_pr1",       "s_pr2", "depth_w", "depth"};
    ts_arena    *arena    = ts_arena_open(NULL);
    ts_workings *workings = ts_workings_open(arena);
    sample       s        = rated();

    assert_int_equal(ts_bevel_pair_solve(&sample_pair, &s.pair, workings), TS_BEVEL_FINE);
    assert_int_equal(ts_bevel_teeth_solve(&s.pair, &s.teeth.in, &s.teeth, workings),
                     TS_BEVEL_TEETH_FINE);
    assert_true(ts_iso10300_prepare(&s.pair, &s.teeth, &s.mesh, &s.prepared, workings));
    assert_true(ts_iso10300_rate(&s.prepared, &s.load, &s.rating, workings));
    for (size_t i = 0; i < ts_workings_count(workings); i++) {
        const ts_note *note = ts_workings_at(workings, i);

        for (uint32_t k = 0; k < note->input_count; k++) {
            const ts_input *in    = &note->inputs[k];
            bool            known = note->kind == TS_NOTE_SEARCHED ||
                         ts_origin(workings, i, in->name, in->value) != SIZE_MAX;

            for (size_t g = 0; g < sizeof given / sizeof given[0] && !known; g++)
                known = strcmp(in->name, given[g]) == 0;
            if (!known)
                print_error("%s needs %s\n", note->symbol, in->name);
            assert_true(known);
        }
    }
    ts_arena_close(arena);
}

/* ---- ranges and bad input -------------------------------------------------------------------- */

static void ranges_of_the_standard_are_told(void **state)
{
    (void)state;
    ts_bevel_pair_input in = sample_pair;
    sample              s  = rated();

    assert_false(ts_bevel_remarks_have(s.prepared.remarks, TS_BEVEL_REMARK_FACE_WIDTH));
    assert_false(ts_bevel_remarks_have(s.prepared.remarks, TS_BEVEL_REMARK_CUTTER_UNKNOWN));
    in.b            = 25e-3;
    in.beta_m       = 46.0 * degree;
    s               = sample_of(&in);
    s.teeth.in.r_c0 = (double)NAN;
    rate(&s);
    assert_true(ts_bevel_remarks_have(s.prepared.remarks, TS_BEVEL_REMARK_FACE_WIDTH));
    assert_true(ts_bevel_remarks_have(s.prepared.remarks, TS_BEVEL_REMARK_SPIRAL_ANGLE));
    assert_true(ts_bevel_remarks_have(s.prepared.remarks, TS_BEVEL_REMARK_CUTTER_UNKNOWN));
    assert_same_double(s.prepared.K_F0, 1.0);
    in                    = sample_pair;
    in.z_1                = 9;
    in.z_2                = 9;
    in.beta_m             = 0.0;
    in.m_et               = 5e-3;
    s                     = sample_of(&in);
    s.mesh.gear[0].rho_a0 = 0.2e-3;
    rate(&s);
    assert_true(ts_bevel_remarks_have(s.prepared.remarks, TS_BEVEL_REMARK_UNDERCUT));
    for (int kind = 0; kind < TS_BEVEL_REMARK_COUNT; kind++) {
        const ts_bevel_remark_text *text = ts_bevel_remark_text_of((ts_bevel_remark_kind)kind);

        assert_true(strlen(text->name) > 3 && strlen(text->says) > 20 && strlen(text->clause) > 8);
    }
}

typedef struct question {
    ts_iso10300_mesh mesh;
    ts_iso10300_load load;
} question;

static bool is_rated(const void *record)
{
    sample s = sample_of(&sample_pair);
    s.mesh   = ((const question *)record)->mesh;
    s.load   = ((const question *)record)->load;
    return ts_iso10300_prepare(&s.pair, &s.teeth, &s.mesh, &s.prepared, NULL) &&
           ts_iso10300_rate(&s.prepared, &s.load, &s.rating, NULL);
}

static void no_impossible_number_is_rated(void **state)
{
    (void)state;
    const sample          whole  = sample_of(&sample_pair);
    const question        sound  = {whole.mesh, whole.load};
    static const spoil_at all[]  = {SPOIL(question, mesh.gear[0].sigma_Hlim, 0.0),
                                    SPOIL(question, mesh.gear[1].sigma_Flim, 0.0),
                                    SPOIL(question, mesh.gear[0].E, 0.0),
                                    SPOIL(question, mesh.gear[1].nu, 0.5),
                                    SPOIL(question, mesh.gear[0].rho, 0.0),
                                    SPOIL(question, mesh.gear[1].Z_NTlong, 1.1),
                                    SPOIL(question, mesh.gear[0].Y_NTlong, 0.0),
                                    SPOIL(question, mesh.gear[1].Z_W, 0.0),
                                    SPOIL(question, mesh.gear[0].f_pt, -1e-6),
                                    SPOIL(question, mesh.gear[1].R_z, 0.0),
                                    SPOIL(question, mesh.gear[0].R_zF, 0.0),
                                    SPOIL(question, mesh.gear[1].rho_a0, -1e-4),
                                    SPOIL(question, mesh.gear[0].s_pr, -1e-4),
                                    SPOIL(question, mesh.nu_40, 0.0),
                                    SPOIL(question, mesh.b_veff_share, 1.1),
                                    SPOIL(question, mesh.e, 0.0),
                                    SPOIL(question, mesh.Z_K, 0.0),
                                    SPOIL(question, load.T_1, -1.0),
                                    SPOIL(question, load.omega_1, -1.0),
                                    SPOIL(question, load.K_A, 0.0),
                                    SPOIL(question, load.N_L[0], 0.0),
                                    SPOIL(question, load.Y_M[1], 1.5)};
    static const spoil_at far[]  = {SPOIL(question, mesh.gear[0].nu, -1.0),
                                    SPOIL(question, mesh.gear[0].f_pt, 1.0),
                                    SPOIL(question, mesh.gear[0].rho_a0, 1e3),
                                    SPOIL(question, mesh.gear[1].s_pr, 1e3),
                                    SPOIL(question, mesh.gear[1].E, (double)INFINITY),
                                    SPOIL(question, load.T_1, (double)INFINITY),
                                    SPOIL(question, load.omega_1, (double)INFINITY),
                                    SPOIL(question, load.K_A, (double)INFINITY),
                                    SPOIL(question, load.N_L[1], (double)INFINITY),
                                    SPOIL(question, load.Y_M[0], 0.0)};
    question              odd[4] = {sound, sound, sound, sound};

    spoil_each(&sound, sizeof sound, is_rated, all, sizeof all / sizeof all[0]);
    spoil_each(&sound, sizeof sound, is_rated, far, sizeof far / sizeof far[0]);
    odd[0].mesh.gear[1].class = (ts_gear_class)TS_GEAR_CLASS_COUNT;
    odd[1].mesh.pattern       = (ts_bevel_pattern)TS_BEVEL_PATTERN_COUNT;
    for (int i = 2; i < 4; i++) { /* steels of which the yield stress is asked */
        odd[i].mesh.gear[1].class = i == 2 ? TS_GEAR_THROUGH_HARDENED : TS_GEAR_NORMALISED;
        odd[i].mesh.gear[1].yield = (double)NAN;
    }
    for (int i = 0; i < 4; i++)
        assert_false(is_rated(&odd[i]));
}

static void expect_nothing(sample *s, bool prepares)
{
    assert_true(ts_iso10300_prepare(&s->pair, &s->teeth, &s->mesh, &s->prepared, NULL) == prepares);
    assert_false(ts_iso10300_rate(&s->prepared, &s->load, &s->rating, NULL));
    assert_non_null(s->rating.missing);
    assert_nan(s->rating.sigma_H);
    assert_nan(s->rating.gear[0].S_H);
    assert_nan(s->rating.gear[1].S_F);
    assert_nan(s->rating.gear[1].N_F);
    assert_nan(ts_iso10300_reserve(&s->rating, &s->load, NULL, NULL));
}

static void what_is_missing_is_said_and_never_passes(void **state)
{
    (void)state;
    const double nothing = (double)NAN;
    sample       s       = rated();

    s.mesh.gear[0].sigma_Hlim = nothing;
    expect_nothing(&s, false);
    s                   = rated();
    s.mesh.gear[1].f_pt = nothing;
    expect_nothing(&s, false);
    s                    = rated();
    s.mesh.gear[1].class = TS_GEAR_THROUGH_HARDENED;
    s.mesh.gear[1].yield = nothing;
    expect_nothing(&s, false);
    s                     = rated();
    s.mesh.gear[0].rho_a0 = 2e-3; /* no such edge fits the slot */
    expect_nothing(&s, false);
    s            = rated();
    s.mesh.nu_40 = 0.0;
    expect_nothing(&s, false);
    s                   = rated();
    s.mesh.b_veff_share = 1.01;
    expect_nothing(&s, false);
    s          = rated();
    s.load.T_1 = nothing;
    expect_nothing(&s, true);
    s          = rated();
    s.load.K_A = 0.0;
    expect_nothing(&s, true);
    s             = rated();
    s.load.N_L[1] = nothing;
    expect_nothing(&s, true);
    s             = rated();
    s.load.Y_M[0] = 1.2;
    expect_nothing(&s, true);
}

/* ---- any pair at all ------------------------------------------------------------------------- */

static double drawn(sequence *q, double least, double most)
{
    return least + (most - least) * (double)sequence_below(q, 1000001) / 1e6;
}

/* Every number has one chance in sixty to be missing. */
static double drawn_or_nothing(sequence *q, double least, double most)
{
    const double value = drawn(q, least, most);

    return sequence_below(q, 60) == 0 ? (double)NAN : value;
}

static ts_iso10300_gear drawn_gear(sequence *q)
{
    ts_iso10300_gear g = carburised();

    g.class      = (ts_gear_class)sequence_below(q, TS_GEAR_CLASS_COUNT);
    g.sigma_Hlim = drawn_or_nothing(q, 300e6, 1700e6);
    g.sigma_Flim = drawn_or_nothing(q, 100e6, 600e6);
    g.yield      = drawn_or_nothing(q, 250e6, 1100e6);
    g.pitting    = sequence_below(q, 2) == 0;
    g.Z_NTlong   = drawn(q, 0.85, 1.0);
    g.f_pt       = drawn_or_nothing(q, 0.0, 60e-6);
    g.R_zF       = drawn(q, 0.2e-6, 60e-6);
    g.rho_a0     = drawn(q, 0.0, 1.5e-3);
    g.s_pr       = sequence_below(q, 3) == 0 ? drawn(q, 0.0, 0.2e-3) : 0.0;
    g.formed     = sequence_below(q, 6) == 0;
    g.overhung   = sequence_below(q, 2) == 0;
    return g;
}

/* Geometry that may be impossible; false when it is. */
static bool drawn_pair(sequence *q, sample *s)
{
    const ts_bevel_pair_input in = {
        .z_1     = (int)sequence_below(q, 90) + 5,
        .z_2     = (int)sequence_below(q, 90) + 5,
        .m_et    = drawn(q, 1e-3, 9e-3),
        .Sigma   = drawn(q, 20.0, 150.0) * degree,
        .alpha_n = drawn(q, 10.0, 32.0) * degree,
        .beta_m  = sequence_below(q, 4) == 0 ? 0.0 : drawn(q, 0.0, 50.0) * degree,
        .b       = drawn(q, 2e-3, 60e-3)};
    const ts_bevel_teeth_input teeth = {.taper   = (ts_bevel_taper)sequence_below(q, 4),
                                        .profile = {.k_hap = drawn(q, 0.7, 1.2),
                                                    .k_hfp = drawn(q, 1.1, 1.5),
                                                    .x_hm1 = drawn(q, -0.6, 0.6),
                                                    .x_smn = drawn(q, -0.1, 0.1)},
                                        .j_mn    = drawn(q, 0.0, 0.3e-3),
                                        .r_c0    = drawn_or_nothing(q, 5e-3, 200e-3)};

    return ts_bevel_pair_solve(&in, &s->pair, NULL) == TS_BEVEL_FINE &&
           ts_bevel_teeth_solve(&s->pair, &teeth, &s->teeth, NULL) == TS_BEVEL_TEETH_FINE;
}

static bool drawn_sample(sequence *q, sample *s)
{
    if (!drawn_pair(q, s))
        return false;
    s->mesh =
        (ts_iso10300_mesh){.gear         = {drawn_gear(q), drawn_gear(q)},
                           .nu_40        = drawn_or_nothing(q, 3e-6, 900e-6),
                           .b_veff_share = drawn(q, 0.3, 1.0),
                           .e            = drawn(q, 1.5, 3.0),
                           .Z_K          = TS_BEVEL_Z_K,
                           .pattern = (ts_bevel_pattern)sequence_below(q, TS_BEVEL_PATTERN_COUNT)};
    s->load =
        (ts_iso10300_load){.T_1     = drawn_or_nothing(q, 0.0, 3000.0),
                           .omega_1 = drawn_or_nothing(q, 0.0, 4000.0),
                           .K_A     = drawn(q, 0.9, 2.0),
                           .N_L = {pow(10.0, drawn(q, 1.0, 11.0)), pow(10.0, drawn(q, 1.0, 11.0))},
                           .Y_M = {drawn(q, 0.5, 1.0), 1.0},
                           .S_Hmin = 1.0,
                           .S_Fmin = 1.0};
    return true;
}

/* An answer, or a reason: never neither, and every formula proves itself on the way. */
static void any_drawn_pair_is_rated_or_says_why(void **state)
{
    (void)state;
    sequence q     = {20250611};
    int      rated = 0, said = 0;

    for (int i = 0; i < 6000; i++) {
        sample s;

        if (!drawn_sample(&q, &s))
            continue;
        const bool   fit     = ts_iso10300_prepare(&s.pair, &s.teeth, &s.mesh, &s.prepared, NULL);
        const bool   ok      = ts_iso10300_rate(&s.prepared, &s.load, &s.rating, NULL);
        const double reserve = ts_iso10300_reserve(&s.rating, &s.load, NULL, NULL);

        assert_true(fit == (s.prepared.missing == NULL));
        assert_true(ok == (s.rating.missing == NULL));
        assert_true(ok == !isnan(reserve));
        for (int gear = 0; gear < 2; gear++) {
            assert_true(ok == (s.rating.gear[gear].S_H > 0.0));
            assert_true(ok == (s.rating.gear[gear].S_F > 0.0));
            assert_true(ok == (s.rating.gear[gear].N_F >= 0.0));
        }
        if (ok)
            rated++;
        else
            said++;
    }
    assert_true(rated > 800 && said > 100);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parallel_axes_and_straight_teeth_press_like_a_spur_pair),
        cmocka_unit_test(straight_teeth_are_judged_at_the_inner_point_of_single_contact),
        cmocka_unit_test(steel_on_steel_has_its_printed_elasticity),
        cmocka_unit_test(torque_acts_by_its_root_on_flanks_and_directly_on_roots),
        cmocka_unit_test(size_acts_by_its_cube),
        cmocka_unit_test(swapping_the_gears_swaps_their_safeties),
        cmocka_unit_test(the_sample_has_plausible_stresses),
        cmocka_unit_test(a_narrower_contact_pattern_is_rated_worse),
        cmocka_unit_test(bearings_on_one_side_cost_strength),
        cmocka_unit_test(two_sided_bending_lowers_the_root_alone),
        cmocka_unit_test(the_allowed_life_leaves_no_reserve),
        cmocka_unit_test(life_lines_pass_through_their_nodes),
        cmocka_unit_test(the_least_safety_decides),
        cmocka_unit_test(a_case_without_torque_is_no_danger),
        cmocka_unit_test(workings_change_no_bit),
        cmocka_unit_test(every_input_of_a_stress_is_noted),
        cmocka_unit_test(no_impossible_number_is_rated),
        cmocka_unit_test(ranges_of_the_standard_are_told),
        cmocka_unit_test(what_is_missing_is_said_and_never_passes),
        cmocka_unit_test(any_drawn_pair_is_rated_or_says_why),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
