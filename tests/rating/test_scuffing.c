/* Does a scuffing rating reproduce the test of the oil, keep its symmetries, and never pass what it
 * does not know?
 */
#include "base/arena.h"
#include "rating/scuffing/flash_agma925.h"
#include "rating/scuffing/integral_temperature.h"
#include "rating/scuffing/scoring_index.h"
#include "rating/scuffing/scuffing.h"
#include "support/close.h"
#include "support/sequence.h"

#include <string.h>

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;
static const double kelvin = 273.15; /* of 0 degrees Celsius */

static ts_scuffing_mesh usual_mesh(void)
{
    const ts_scuffing_gear gear = {
        .body = {.E = 206e9, .nu = 0.3, .B_M = 13795.0}, .Ra = 0.35e-6, .C_a = 0.0, .X_W = 1.0};
    const double none = NAN;

    return (ts_scuffing_mesh){.gear       = {gear, gear},
                              .driver     = 1,
                              .grade      = 5,
                              .mates      = 1,
                              .X_S        = 1.0,
                              .X_L        = 1.0,
                              .phi_E      = 1.0,
                              .S_FZG      = 9.0,
                              .nu_40      = 100e-6,
                              .theta_S    = none,
                              .theta_intS = none};
}

static ts_scuffing_load usual_load(void)
{
    const double none = NAN;

    return (ts_scuffing_load){.T_1           = 120.0,
                              .omega_1       = 800.0,
                              .K_A           = 1.0,
                              .K_gamma       = 1.0,
                              .K_v           = 1.1,
                              .K_Hbeta       = 1.2,
                              .K_Halpha      = 1.0,
                              .cp            = 14e9,
                              .c_gamma_alpha = 20e9,
                              .theta_oil     = kelvin + 90.0,
                              .eta_oil       = 0.0155,
                              .theta_M       = none};
}

static ts_cylindrical_pair_input usual_pair(double beta)
{
    return (ts_cylindrical_pair_input){.z_1     = 25,
                                       .z_2     = 61,
                                       .m_n     = 2.5e-3,
                                       .alpha_n = 20.0 * degree,
                                       .beta    = beta * degree,
                                       .b_1     = 22e-3,
                                       .b_2     = 20e-3,
                                       .x_1     = 0.25,
                                       .x_2     = 0.05,
                                       .rack    = ts_basic_rack_A};
}

static ts_cylindrical_pair solved(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair pair;

    assert_true(ts_cylindrical_pair_solve(in, &pair, NULL) <= TS_PAIR_POINTED);
    return pair;
}

static ts_scuffing rated(const ts_cylindrical_pair_input *in, const ts_scuffing_mesh *mesh,
                         const ts_scuffing_load *load)
{
    const ts_cylindrical_pair pair = solved(in);
    ts_scuffing_prepared      prepared;
    ts_scuffing               rating;

    assert_true(ts_scuffing_prepare(&pair, mesh, &prepared, NULL));
    assert_true(ts_scuffing_rate(&prepared, load, &rating, NULL));
    return rating;
}

/* ---- the oil's own test ---------------------------------------------------------------------- */

/* ISO 14635-1, test A/8.3/90: gears and torques (from memory; geometry as in the bank case
 * fzg-A-geometry). */
static ts_cylindrical_pair_input test_gears(void)
{
    return (ts_cylindrical_pair_input){.z_1     = 16,
                                       .z_2     = 24,
                                       .m_n     = 4.5e-3,
                                       .alpha_n = 20.0 * degree,
                                       .b_1     = 20e-3,
                                       .b_2     = 20e-3,
                                       .a_w     = 91.5e-3,
                                       .x_1     = 0.8532,
                                       .x_2     = -0.5,
                                       .d_a1    = 88.77e-3,
                                       .d_a2    = 112.5e-3,
                                       .tip     = TS_TIP_DIAMETERS,
                                       .rack    = ts_basic_rack_A};
}

static ts_scuffing_load test_load(double stage)
{
    ts_scuffing_load load = usual_load();

    load.T_1     = 3.726 * stage * stage;
    load.omega_1 = 2170.0 * pi / 30.0;
    load.K_v = load.K_Hbeta = 1.0;
    load.cp                 = 1e15; /* the standard's constants know no approach factor */
    return load;
}

/* The standard's short forms for the test gears, 1.4 S^2 for the flash and 0.2 T_1 for its mean,
 * follow from its whole chain on their geometry (both from memory: had one factor been recalled
 * wrongly, they would not). */
static void chain_leads_to_the_short_forms_of_the_test(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = test_gears();
    ts_scuffing_mesh                mesh = usual_mesh();

    for (double stage = 7.0; stage <= 12.0; stage += 1.0) {
        const ts_scuffing_load load = test_load(stage);
        mesh.S_FZG                  = stage;
        const ts_scuffing r         = rated(&in, &mesh, &load);

        assert_close(r.v, 8.2, 0.02);
        assert_close(r.flash.theta_flmax, 1.4 * stage * stage, 0.05);
        assert_close(r.theta_flaint, 0.2 * load.T_1, 0.13);
    }
}

/* An oil that scuffs at a stage has a safety of 1 in the test at that stage, with the bulk
 * temperature that the standard gives the test gears. */
static void oil_fails_in_its_own_test(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = test_gears();
    ts_scuffing_mesh                mesh = usual_mesh();
    ts_scuffing_load                load = test_load(10.0);

    mesh.S_FZG          = 10.0;
    load.theta_M        = kelvin + 80.0 + 0.85 * 100.0;
    const ts_scuffing r = rated(&in, &mesh, &load);
    assert_close(r.S_B, 1.0, 0.03);
    assert_close(r.S_intS, 1.0, 0.06);
    assert_same_double(r.theta_M, load.theta_M);
    assert_same_double(r.theta_Mint, load.theta_M);
}

/* derived: the short forms at stage 9, 302 N.m, VG 100 */
static void limits_of_a_stage(void **state)
{
    (void)state;
    const ts_integral_limit_input   limit = {.S_FZG = 9.0, .nu_40 = 100e-6, .X_L = 1.0, .X_W = 1.0};
    const double                    T_1   = 3.726 * 81.0;
    const ts_cylindrical_pair_input in    = usual_pair(0.0);
    const ts_scuffing_mesh          mesh  = usual_mesh();
    const ts_scuffing_load          load  = usual_load();
    const ts_scuffing               r     = rated(&in, &mesh, &load);

    assert_close(ts_integral_limit(&limit, NULL), kelvin + 80.0 + (0.23 + 0.3) * T_1, 1e-14);
    assert_close(r.theta_S, kelvin + 80.0 + 2.25 * 81.0, 1e-14);
    assert_same_double(r.theta_intS, ts_integral_limit(&limit, NULL));
}

/* ---- symmetries and limits ------------------------------------------------------------------- */

static ts_cylindrical_pair_input turned_round(const ts_cylindrical_pair_input *in)
{
    ts_cylindrical_pair_input out = *in;

    out.z_1 = in->z_2;
    out.z_2 = in->z_1;
    out.x_1 = in->x_2;
    out.x_2 = in->x_1;
    out.b_1 = in->b_2;
    out.b_2 = in->b_1;
    return out;
}

static void gears_can_be_exchanged(void **state)
{
    (void)state;
    for (double beta = 0.0; beta < 30.0; beta += 9.0) {
        const ts_cylindrical_pair_input in = usual_pair(beta), out = turned_round(&in);
        ts_scuffing_mesh                mesh = usual_mesh(), other = mesh;
        ts_scuffing_load                load = usual_load(), loaded = load;

        mesh.gear[0].C_a = other.gear[1].C_a = 8e-6;
        mesh.gear[1].C_a = other.gear[0].C_a = 3e-6;
        mesh.gear[0].body.B_M = other.gear[1].body.B_M = 12000.0;
        other.driver                                   = 2;
        loaded.T_1                                     = load.T_1 * 61.0 / 25.0;
        loaded.omega_1                                 = load.omega_1 * 25.0 / 61.0;
        const ts_scuffing a = rated(&in, &mesh, &load), b = rated(&out, &other, &loaded);
        assert_close(b.theta_Bmax, a.theta_Bmax, 1e-10);
        assert_close(b.theta_M, a.theta_M, 1e-10);
        assert_close(b.theta_int, a.theta_int, 1e-10);
        assert_close(b.S_B, a.S_B, 1e-9);
        assert_close(b.S_intS, a.S_intS, 1e-9);
        assert_close(b.v_gA, a.v_gE, 1e-10);
    }
}

/* Where the range of one formula ends the next one begins: derived, exact for the published
 * numbers, which shows that they were recalled rightly. */
static void contact_ratio_factor_has_no_steps(void **state)
{
    (void)state;
    const double hair = 1e-11;

    for (double e = 0.05; e < 0.95; e += 0.1) {
        assert_close(ts_contact_ratio_factor_scuffing(1.0 - hair, e, NULL),
                     ts_contact_ratio_factor_scuffing(1.0 + hair, e, NULL), 1e-8);
        assert_close(ts_contact_ratio_factor_scuffing(e, 1.0 - hair, NULL),
                     ts_contact_ratio_factor_scuffing(e, 1.0 + hair, NULL), 1e-8);
        assert_close(ts_contact_ratio_factor_scuffing(1.0 - e - hair, e, NULL),
                     ts_contact_ratio_factor_scuffing(1.0 - e + hair, e, NULL), 1e-8);
        assert_close(ts_contact_ratio_factor_scuffing(2.0 - e - hair, e, NULL),
                     ts_contact_ratio_factor_scuffing(2.0 - e + hair, e, NULL), 1e-8);
        assert_close(ts_contact_ratio_factor_scuffing(e, 2.0 - e - hair, NULL),
                     ts_contact_ratio_factor_scuffing(e, 2.0 - e + hair, NULL), 1e-8);
    }
    assert_close(ts_contact_ratio_factor_scuffing(1.3 + hair, 1.3, NULL),
                 ts_contact_ratio_factor_scuffing(1.3, 1.3 + hair, NULL), 1e-8);
    assert_nan(ts_contact_ratio_factor_scuffing(1.5, 1.5, NULL));
    assert_nan(ts_contact_ratio_factor_scuffing(-0.1, 1.5, NULL));
    assert_nan(ts_contact_ratio_factor_scuffing(NAN, 0.5, NULL));
}

/* Both standards say the same of a pair, within what two simplifications of one theory differ by.
 */
static void both_methods_see_the_same_heat(void **state)
{
    (void)state;
    for (double beta = 0.0; beta < 30.0; beta += 12.0) {
        const ts_cylindrical_pair_input in   = usual_pair(beta);
        const ts_scuffing_mesh          mesh = usual_mesh();
        const ts_scuffing_load          load = usual_load();
        const ts_scuffing               r    = rated(&in, &mesh, &load);

        assert_close(r.theta_flaint, r.flash.theta_flm, 0.3);
        assert_close(r.mu_mC, r.mu_m, 0.15);
    }
}

static void more_load_more_heat_and_less_safety(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(15.0);
    const ts_scuffing_mesh          mesh = usual_mesh();
    ts_scuffing_load                load = usual_load();
    ts_scuffing                     last = rated(&in, &mesh, &load);

    for (int i = 0; i < 8; i++) {
        load.T_1 *= 1.3;
        const ts_scuffing r = rated(&in, &mesh, &load);

        assert_true(r.theta_Bmax > last.theta_Bmax && r.theta_int > last.theta_int);
        assert_true(r.S_B < last.S_B && r.S_intS < last.S_intS && r.S_Sl < last.S_Sl);
        /* Without approach factor the flash grows as the power 0.75 + 0.2; with it, faster. */
        assert_true(r.flash.theta_flmax > last.flash.theta_flmax * pow(1.3, 0.949));
        last = r;
    }
}

static void relief_helps_and_a_bare_entry_does_not(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(0.0);
    ts_scuffing_mesh                mesh = usual_mesh();
    const ts_scuffing_load          load = usual_load();
    const ts_scuffing               bare = rated(&in, &mesh, &load);

    mesh.gear[0].C_a = mesh.gear[1].C_a = bare.C_eff;
    const ts_scuffing relieved          = rated(&in, &mesh, &load);
    assert_true(relieved.theta_Bmax < bare.theta_Bmax);
    assert_true(relieved.theta_flaint < bare.theta_flaint);
    assert_same_double(relieved.r_1, 1.0);
    assert_int_equal(relieved.remarks & TS_SCUFFING_RELIEF_OVER, 0);
    mesh.gear[0].C_a = 2.0 * bare.C_eff;
    assert_true((rated(&in, &mesh, &load).remarks & TS_SCUFFING_RELIEF_OVER) != 0);
    mesh.grade               = 8;
    const ts_scuffing coarse = rated(&in, &mesh, &load);
    assert_true((coarse.remarks & TS_SCUFFING_GRADE) != 0);
    assert_same_double(coarse.X_Ca, 1.0);
}

static void ring_gears_are_cooler(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input outside = usual_pair(0.0);
    ts_cylindrical_pair_input       ring    = outside;
    const ts_scuffing_mesh          mesh    = usual_mesh();
    const ts_scuffing_load          load    = usual_load();

    ring.z_2            = -87;
    ring.x_1            = 0.3;
    ring.x_2            = -0.3;
    const ts_scuffing r = rated(&ring, &mesh, &load);
    assert_true(r.theta_Bmax > load.theta_oil && r.theta_int > load.theta_oil);
    assert_true(r.theta_Bmax < rated(&outside, &mesh, &load).theta_Bmax);
    assert_true(r.S_B > 0.0 && r.S_intS > 0.0);
}

static void many_pairs_give_numbers(void **state)
{
    (void)state;
    sequence s = {20251};

    for (int i = 0; i < 300; i++) {
        ts_cylindrical_pair_input in   = usual_pair((double)sequence_below(&s, 30));
        ts_scuffing_mesh          mesh = usual_mesh();
        ts_scuffing_load          load = usual_load();

        in.z_1              = 20 + (int)sequence_below(&s, 60);
        in.z_2              = 20 + (int)sequence_below(&s, 80);
        in.m_n              = 1e-3 + 1e-5 * (double)sequence_below(&s, 400);
        in.x_1              = -0.1 + 0.01 * (double)sequence_below(&s, 50);
        mesh.driver         = 1 + (int)sequence_below(&s, 2);
        mesh.grade          = 3 + (int)sequence_below(&s, 9);
        mesh.gear[0].C_a    = 1e-6 * (double)sequence_below(&s, 40);
        load.T_1            = 1.0 + (double)sequence_below(&s, 3000);
        load.omega_1        = 10.0 + (double)sequence_below(&s, 3000);
        const ts_scuffing r = rated(&in, &mesh, &load);
        assert_true(isfinite(r.theta_Bmax) && r.theta_Bmax > load.theta_oil);
        assert_true(r.flash.theta_flm > 0.0 && r.flash.theta_flm < r.flash.theta_flmax);
        assert_true(isfinite(r.S_B) && isfinite(r.S_intS));
        assert_true(strlen(r.hot_spot) > 5);
        for (int k = 0; k < TS_FLANK_POINTS; k++)
            assert_true(r.flash.X_Gamma[k] >= 0.0 && r.flash.X_Gamma[k] <= 1.31);
    }
}

/* ---- what is missing ------------------------------------------------------------------------- */

static void at_rest_nothing_is_heated(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(0.0);
    ts_scuffing_mesh                mesh = usual_mesh();
    ts_scuffing_load                load = usual_load();

    load.omega_1        = 0.0;
    load.eta_oil        = NAN; /* nobody asks */
    const ts_scuffing r = rated(&in, &mesh, &load);
    assert_true((r.remarks & TS_SCUFFING_NOTHING_RUBS) != 0);
    assert_same_double(r.theta_Bmax, load.theta_oil);
    assert_true(isinf(r.S_B) && isinf(r.S_intS));
    load.theta_M = kelvin + 600.0; /* hotter than the oil stands */
    assert_same_double(rated(&in, &mesh, &load).S_B, 0.0);
    mesh.S_FZG = NAN;
    assert_nan(rated(&in, &mesh, &load).S_B);
}

/* derived: friction only adds heat, so that no way of oiling makes teeth cooler than their oil; of
 * two readings of the method the higher temperature, docs/method/scuffing.md */
static void no_way_of_oiling_makes_teeth_cooler_than_their_oil(void **state)
{
    static const double ways[] = {0.2, 1.0, 1.2};
    (void)state;
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++)
        for (double oil = -40.0; oil < 130.0; oil += 48.0) {
            const ts_cylindrical_pair_input in   = usual_pair(0.0);
            ts_scuffing_mesh                mesh = usual_mesh();
            ts_scuffing_load                load = usual_load();

            mesh.X_S            = ways[i];
            load.theta_oil      = kelvin + oil;
            const ts_scuffing r = rated(&in, &mesh, &load);
            assert_true(r.theta_Mint > load.theta_oil);
            const double heat = 0.7 * r.theta_flaint;
            assert_close(r.theta_Mint - load.theta_oil,
                         fmax(ways[i] * heat, ways[i] * (oil + heat) - oil), 1e-10);
            assert_true(r.S_intS > 0.0 && r.S_Sl > 0.0);
        }
}

/* derived: the ratio of degrees Celsius grows without end as the teeth cool down to 0 */
static void teeth_below_zero_degrees_do_not_scuff(void **state)
{
    const double freezing = kelvin;
    (void)state;
    assert_true(ts_integral_safety(kelvin + 200.0, freezing + 1e-9, NULL) > 1e10);
    assert_true(isinf(ts_integral_safety(kelvin + 200.0, freezing, NULL)));
    assert_true(isinf(ts_integral_safety(kelvin + 200.0, freezing - 30.0, NULL)));
    assert_nan(ts_integral_safety((double)NAN, freezing - 30.0, NULL));
    assert_nan(ts_integral_safety(kelvin + 200.0, (double)NAN, NULL));
}

static void unknown_oil_has_no_safety(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(0.0);
    ts_scuffing_mesh                mesh = usual_mesh();
    const ts_scuffing_load          load = usual_load();

    mesh.S_FZG    = NAN;
    ts_scuffing r = rated(&in, &mesh, &load);
    assert_nan(r.S_B);
    assert_nan(r.S_intS);
    assert_true(r.theta_Bmax > load.theta_oil);
    assert_true((r.remarks & TS_SCUFFING_NO_LIMIT) != 0);
    mesh.theta_S = kelvin + 260.0;
    r            = rated(&in, &mesh, &load);
    assert_close(r.S_B, (kelvin + 260.0 - load.theta_oil) / (r.theta_Bmax - load.theta_oil), 1e-14);
    assert_nan(r.S_intS);
    mesh.S_FZG = 14.0;
    assert_true((rated(&in, &mesh, &load).remarks & TS_SCUFFING_STAGE) != 0);
}

static void what_a_mesh_lacks_is_named(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(0.0);
    const ts_cylindrical_pair       pair = solved(&in);
    const ts_scuffing_load          load = usual_load();
    static const char *const words[] = {"modulus", "thermal", "roughness", "relief", "structural",
                                        "drives",  "class",   "mating",    "X_S",    "running in"};

    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        ts_scuffing_mesh     mesh = usual_mesh();
        ts_scuffing_prepared prepared;
        ts_scuffing          r;

        switch (i) {
        case 0:
            mesh.gear[1].body.E = NAN;
            break;
        case 1:
            mesh.gear[0].body.B_M = 0.0;
            break;
        case 2:
            mesh.gear[1].Ra = 0.0;
            break;
        case 3:
            mesh.gear[0].C_a = -1e-6;
            break;
        case 4:
            mesh.gear[0].X_W = NAN;
            break;
        case 5:
            mesh.driver = 0;
            break;
        case 6:
            mesh.grade = 13;
            break;
        case 7:
            mesh.mates = 0;
            break;
        case 8:
            mesh.X_S = NAN;
            break;
        default:
            mesh.phi_E = 1.1;
            break;
        }
        assert_false(ts_scuffing_prepare(&pair, &mesh, &prepared, NULL));
        assert_non_null(strstr(prepared.missing, words[i]));
        assert_false(ts_scuffing_rate(&prepared, &load, &r, NULL));
        assert_string_equal(r.missing, prepared.missing);
        assert_nan(r.S_B);
        assert_nan(r.S_intS);
        assert_nan(r.flash.theta_fl[3]);
    }
}

static void what_a_load_lacks_is_named(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(0.0);
    const ts_cylindrical_pair       pair = solved(&in);
    const ts_scuffing_mesh          mesh = usual_mesh();
    static const char *const words[]     = {"torque",    "speed", "oil temperature", "load factors",
                                            "stiffness", "bulk",  "viscosity"};
    ts_scuffing_prepared     prepared;

    assert_true(ts_scuffing_prepare(&pair, &mesh, &prepared, NULL));
    for (size_t i = 0; i < sizeof words / sizeof words[0]; i++) {
        ts_scuffing_load load = usual_load();
        double *const    at[] = {&load.T_1, &load.omega_1, &load.theta_oil, &load.K_v,
                                 &load.cp,  &load.theta_M, &load.eta_oil};
        ts_scuffing      r;

        *at[i] = i == 5 ? kelvin + 20.0 : -1.0;
        assert_false(ts_scuffing_rate(&prepared, &load, &r, NULL));
        assert_non_null(strstr(r.missing, words[i]));
        assert_nan(r.S_B);
        if (i == 5)
            continue;
        *at[i] = NAN;
        assert_false(ts_scuffing_rate(&prepared, &load, &r, NULL));
        assert_non_null(strstr(r.missing, words[i]));
    }
}

static void every_remark_has_its_clause(void **state)
{
    (void)state;
    for (unsigned i = 0; i < TS_SCUFFING_REMARKS; i++) {
        const ts_scuffing_remark remark = (ts_scuffing_remark)(1U << i);

        assert_true(strlen(ts_scuffing_remark_says(remark)) > 20);
        assert_true(strlen(ts_scuffing_remark_clause(remark)) > 10);
    }
    for (int i = 0; i < TS_STRUCTURE_COUNT; i++) {
        assert_true(ts_structure_factor((ts_flank_structure)i) > 0.4);
        assert_true(strlen(ts_structure_name((ts_flank_structure)i)) > 5);
    }
}

static void friction_is_held_outside_its_measurements(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(0.0);
    const ts_scuffing_mesh          mesh = usual_mesh();
    ts_scuffing_load                load = usual_load();

    load.omega_1    = 60.0 * 2.0 / 62.5e-3;
    const double mu = rated(&in, &mesh, &load).mu_mC;
    load.omega_1 *= 1.5;
    ts_scuffing r = rated(&in, &mesh, &load);
    assert_same_double(r.mu_mC, mu);
    assert_true((r.remarks & TS_SCUFFING_SPEED_HELD) != 0);
    load.T_1 = 1.0;
    r        = rated(&in, &mesh, &load);
    assert_true((r.remarks & TS_SCUFFING_LOAD_HELD) != 0);
}

/* ---- second opinions ------------------------------------------------------------------------- */

static void second_opinion_differs_by_its_own_constants(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in   = usual_pair(18.0);
    const ts_cylindrical_pair       pair = solved(&in);
    ts_scuffing_mesh                mesh = usual_mesh();
    const ts_scuffing_load          load = usual_load();
    ts_scuffing_prepared            prepared;
    ts_scuffing                     r;
    ts_agma925                      a, b;

    mesh.gear[0].C_a = mesh.gear[1].C_a = 30e-6; /* no approach factor, which AGMA lacks */
    assert_true(ts_scuffing_prepare(&pair, &mesh, &prepared, NULL));
    assert_true(ts_scuffing_rate(&prepared, &load, &r, NULL));
    ts_agma925_rate(&prepared, &load, &r, ts_aerospace_limit(TS_AEROSPACE_MIL_23699), 1.2, &a,
                    NULL);
    assert_close(a.mu_m, 0.06 * 1.13 / (1.13 - 0.35), 1e-13);
    assert_close(a.theta_flmax / r.flash.theta_fl[r.flash.hot],
                 0.8 * sqrt(2.0) / 1.11 * a.mu_m / r.mu_m, 1e-12);
    assert_close(a.theta_Bmax, kelvin + 1.2 * 90.0 + 1.56 * a.theta_flmax, 1e-12);
    assert_int_equal(a.hot, r.flash.hot);
    /* A contact at the mean scuffing temperature scuffs in one half of all cases. */
    ts_agma925_rate(&prepared, &load, &r, a.theta_Bmax, 1.2, &b, NULL);
    assert_close(b.risk, 0.5, 1e-12);
    /* Two standard deviations below: 2.275 % (tables of the normal distribution). */
    ts_agma925_rate(&prepared, &load, &r, kelvin + (a.theta_Bmax - kelvin) / 0.7, 1.2, &b, NULL);
    assert_close(b.risk, 0.02275, 1e-3);
    ts_agma925_rate(&prepared, &load, &r, NAN, 1.2, &b, NULL);
    assert_nan(b.risk);
    for (int i = 0; i < TS_AEROSPACE_COUNT; i++) {
        assert_true(ts_aerospace_limit((ts_aerospace_oil)i) > kelvin + 100.0);
        assert_true(strlen(ts_aerospace_name((ts_aerospace_oil)i)) > 5);
    }
    assert_close(ts_mineral_limit(100e-6, false, NULL), kelvin + 63.0 + 33.0 * log(100.0), 1e-14);
    assert_close(ts_mineral_limit(100e-6, true, NULL) - ts_mineral_limit(100e-6, false, NULL), 55.0,
                 1e-11);
}

/* The bank case agma217-index, carried on to the index in the customary units of its source
 * (derived): 120 degF + (900/0.25)^0.75*50/34*0.0158655*100/8^0.25. */
static void older_index_in_its_own_units(void **state)
{
    (void)state;
    const double           inch = 0.0254, pound = 4.4482216152605;
    const ts_scoring_input in   = {.rho_1   = 0.8725 * inch,
                                   .rho_2   = 0.3245 * inch,
                                   .z_1     = 28.0,
                                   .z_2     = 28.0,
                                   .alpha_t = 20.0 * degree,
                                   .alpha_n = 20.0 * degree,
                                   .m_n     = inch / 8.0};
    ts_scoring_load        load = {.w_te    = 3600.0 * pound / inch,
                                   .omega_1 = 10000.0 * pi / 30.0,
                                   .s_rms   = 16e-6 * inch,
                                   .T_i     = (120.0 + 459.67) / 1.8,
                                   .m_n     = inch / 8.0};
    const double           Z_t  = ts_scoring_geometry_factor(&in, NULL);
    const double           index =
        120.0 + pow(3600.0, 0.75) * 50.0 / 34.0 * 0.0158655 * 100.0 / pow(8.0, 0.25);

    assert_close(Z_t, 0.0158655, 1e-5);
    assert_close(ts_scoring_index(Z_t, &load, NULL) * 1.8 - 459.67, index, 1e-5);
    load.s_rms = 50e-6 * inch;
    assert_nan(ts_scoring_index(Z_t, &load, NULL));
    load.s_rms = NAN;
    assert_nan(ts_scoring_index(Z_t, &load, NULL));
}

static void notes_change_nothing(void **state)
{
    (void)state;
    const ts_cylindrical_pair_input in       = usual_pair(18.0);
    const ts_cylindrical_pair       pair     = solved(&in);
    ts_arena                       *arena    = ts_arena_open(NULL);
    ts_workings                    *workings = ts_workings_open(arena);
    ts_scuffing_mesh                mesh     = usual_mesh();
    const ts_scuffing_load          load     = usual_load();
    const ts_subject                whole    = {0, TS_EVERY_CONDITION};
    ts_scuffing_prepared            p, q;
    ts_scuffing                     silent, noted;

    mesh.gear[1].C_a = 5e-6;
    assert_true(ts_scuffing_prepare(&pair, &mesh, &p, NULL));
    assert_true(ts_scuffing_prepare(&pair, &mesh, &q, workings));
    assert_true(ts_scuffing_rate(&p, &load, &silent, NULL));
    assert_true(ts_scuffing_rate(&q, &load, &noted, workings));
    assert_same_double(silent.S_B, noted.S_B);
    assert_same_double(silent.S_intS, noted.S_intS);
    assert_same_double(silent.theta_M, noted.theta_M);
    assert_memory_equal(silent.flash.theta_fl, noted.flash.theta_fl, sizeof noted.flash.theta_fl);
    static const char *const symbols[] = {"S_B",  "theta_Bmax", "theta_fl",  "X_Gamma",
                                          "mu_m", "S_Sl",       "theta_int", "X_eps",
                                          "X_BE", "theta_intS"};
    for (size_t i = 0; i < sizeof symbols / sizeof symbols[0]; i++)
        assert_true(ts_workings_find(workings, whole, symbols[i]) != SIZE_MAX);
    assert_same_double(ts_workings_at(workings, ts_workings_find(workings, whole, "S_B"))->value,
                       noted.S_B);
    assert_true(ts_workings_complete(workings));
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(chain_leads_to_the_short_forms_of_the_test),
        cmocka_unit_test(oil_fails_in_its_own_test),
        cmocka_unit_test(limits_of_a_stage),
        cmocka_unit_test(gears_can_be_exchanged),
        cmocka_unit_test(contact_ratio_factor_has_no_steps),
        cmocka_unit_test(both_methods_see_the_same_heat),
        cmocka_unit_test(more_load_more_heat_and_less_safety),
        cmocka_unit_test(relief_helps_and_a_bare_entry_does_not),
        cmocka_unit_test(ring_gears_are_cooler),
        cmocka_unit_test(many_pairs_give_numbers),
        cmocka_unit_test(at_rest_nothing_is_heated),
        cmocka_unit_test(no_way_of_oiling_makes_teeth_cooler_than_their_oil),
        cmocka_unit_test(teeth_below_zero_degrees_do_not_scuff),
        cmocka_unit_test(unknown_oil_has_no_safety),
        cmocka_unit_test(what_a_mesh_lacks_is_named),
        cmocka_unit_test(what_a_load_lacks_is_named),
        cmocka_unit_test(every_remark_has_its_clause),
        cmocka_unit_test(friction_is_held_outside_its_measurements),
        cmocka_unit_test(second_opinion_differs_by_its_own_constants),
        cmocka_unit_test(older_index_in_its_own_units),
        cmocka_unit_test(notes_change_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
