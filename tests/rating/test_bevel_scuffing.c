/* Does the integral temperature of bevels become that of the cylindrical gears that stand for them,
 * and keep its symmetries?
 */
#include "rating/scuffing/bevel_scuffing.h"
#include "support/close.h"
#include "support/spoil.h"

#include <string.h>

static const double degree = 3.14159265358979323846 / 180.0;
static const double kelvin = 273.15; /* of 0 degrees Celsius */

static ts_cylindrical_pair spur_pair(void)
{
    const ts_cylindrical_pair_input in = {.z_1     = 29,
                                          .z_2     = 48,
                                          .m_n     = 2.25e-3,
                                          .alpha_n = 20.0 * degree,
                                          .b_1     = 16e-3,
                                          .b_2     = 16e-3,
                                          .rack    = ts_basic_rack_A};
    ts_cylindrical_pair             pair;

    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

/* Virtual gears that are a spur pair without shift. */
static ts_bevel_virtual virtual_of(const ts_cylindrical_pair *pair)
{
    return (ts_bevel_virtual){.z_v        = {pair->in.z_1, pair->in.z_2},
                              .d_v        = {pair->d_1, pair->d_2},
                              .d_va       = {pair->d_a1, pair->d_a2},
                              .d_vb       = {pair->d_b1, pair->d_b2},
                              .u_v        = pair->u,
                              .a_v        = pair->a_w,
                              .alpha_vet  = pair->alpha_t,
                              .beta_vb    = 0.0,
                              .p_vet      = pair->p_bt,
                              .b_v        = pair->in.b_1,
                              .b_veff     = pair->in.b_1,
                              .eps_valpha = pair->eps_alpha,
                              .eps_vbeta  = 0.0};
}

static ts_bevel_virtual turned(const ts_bevel_virtual *v)
{
    ts_bevel_virtual out = *v;

    for (int g = 0; g < 2; g++) {
        out.z_v[g]  = v->z_v[1 - g];
        out.d_v[g]  = v->d_v[1 - g];
        out.d_va[g] = v->d_va[1 - g];
        out.d_vb[g] = v->d_vb[1 - g];
    }
    out.u_v = 1.0 / v->u_v;
    return out;
}

/* Of class 7, for which relief does not count by either method. */
static ts_scuffing_mesh usual_mesh(int driver)
{
    const ts_scuffing_gear gear = {
        .body = {.E = 206e9, .nu = 0.3, .B_M = 13795.0}, .Ra = 0.5e-6, .X_W = 1.0};
    const double none = NAN;

    return (ts_scuffing_mesh){.gear       = {gear, gear},
                              .driver     = driver,
                              .grade      = 7,
                              .mates      = 1,
                              .X_S        = 1.2,
                              .X_L        = 1.0,
                              .phi_E      = 1.0,
                              .S_FZG      = 8.0,
                              .nu_40      = 27e-6,
                              .theta_S    = none,
                              .theta_intS = none};
}

static ts_bevel_scuffing_load load_of(double F_mt, double v_mt)
{
    const double none = NAN;

    return (ts_bevel_scuffing_load){.F_mt      = F_mt,
                                    .v_mt      = v_mt,
                                    .K_A       = 1.0,
                                    .K_v       = 1.1,
                                    .K_Hbeta   = 1.3,
                                    .K_Halpha  = 1.05,
                                    .theta_oil = kelvin + 90.0,
                                    .eta_oil   = 0.0055,
                                    .theta_M   = none};
}

static ts_bevel_scuffing rated(const ts_bevel_virtual *virt, int driver, double F_mt, double v_mt)
{
    const ts_scuffing_mesh       mesh = usual_mesh(driver);
    const ts_bevel_scuffing_load load = load_of(F_mt, v_mt);
    ts_bevel_scuffing_prepared   prepared;
    ts_bevel_scuffing            rating;

    assert_true(ts_bevel_scuffing_prepare(virt, 20.0 * degree, 0.0, &mesh, &prepared, NULL));
    assert_true(ts_bevel_scuffing_rate(&prepared, &load, &rating, NULL));
    return rating;
}

/* derived: cones of no angle are cylinders, so the second route is the room of cylindrical pairs */
static void virtual_gears_that_are_a_spur_pair_are_rated_as_one(void **state)
{
    const ts_cylindrical_pair pair = spur_pair();
    const ts_bevel_virtual    virt = virtual_of(&pair);
    (void)state;
    for (int driver = 1; driver <= 2; driver++) {
        const ts_scuffing_mesh       mesh  = usual_mesh(driver);
        const ts_bevel_scuffing_load bevel = load_of(4000.0, 20.0);
        const ts_scuffing_load       load  = {.T_1           = 4000.0 * pair.d_1 / 2.0,
                                              .omega_1       = 20.0 * 2.0 / pair.d_1,
                                              .K_A           = 1.0,
                                              .K_gamma       = 1.0,
                                              .K_v           = bevel.K_v,
                                              .K_Hbeta       = bevel.K_Hbeta,
                                              .K_Halpha      = bevel.K_Halpha,
                                              .cp            = 14e9,
                                              .c_gamma_alpha = 20e9,
                                              .theta_oil     = bevel.theta_oil,
                                              .eta_oil       = bevel.eta_oil,
                                              .theta_M       = (double)NAN};
        ts_scuffing_prepared         prepared;
        ts_scuffing                  spur;

        assert_true(ts_scuffing_prepare(&pair, &mesh, &prepared, NULL));
        assert_true(ts_scuffing_rate(&prepared, &load, &spur, NULL));
        const ts_bevel_scuffing of = rated(&virt, driver, 4000.0, 20.0);
        assert_close(of.w_Bt, spur.w_Bt, 1e-12);
        assert_close(of.mu_mC, spur.mu_mC, 1e-12);
        assert_close(of.theta_flaint, spur.theta_flaint, 1e-11);
        assert_close(of.theta_int, spur.theta_int, 1e-12);
        assert_close(of.S_intS, spur.S_intS, 1e-12);
        assert_close(of.theta_Mint - 273.15,
                     mesh.X_S * (bevel.theta_oil - 273.15 + 0.7 * of.theta_flaint), 1e-10);
    }
}

/* derived: which gear is told first is a matter of words */
static void gears_can_change_places(void **state)
{
    const ts_cylindrical_pair pair  = spur_pair();
    const ts_bevel_virtual    virt  = virtual_of(&pair);
    const ts_bevel_virtual    other = turned(&virt);
    (void)state;
    for (int driver = 1; driver <= 2; driver++)
        assert_close(rated(&virt, driver, 3000.0, 15.0).theta_int,
                     rated(&other, 3 - driver, 3000.0, 15.0).theta_int, 1e-12);
}

/* derived: the flash goes with w^0.75 times the friction's w^0.2, v^0.5 times its v^-0.2 */
static void flash_rises_with_load_and_speed_by_its_powers(void **state)
{
    const ts_cylindrical_pair pair = spur_pair();
    const ts_bevel_virtual    virt = virtual_of(&pair);
    const ts_bevel_scuffing   one  = rated(&virt, 1, 3000.0, 15.0);
    (void)state;
    assert_close(rated(&virt, 1, 6000.0, 15.0).theta_flaint / one.theta_flaint, pow(2.0, 0.95),
                 1e-12);
    assert_close(rated(&virt, 1, 3000.0, 30.0).theta_flaint / one.theta_flaint, pow(2.0, 0.3),
                 1e-12);
    assert_true(rated(&virt, 1, 6000.0, 15.0).S_intS < one.S_intS);
}

static void limits_of_the_friction_are_held_and_told(void **state)
{
    const ts_cylindrical_pair pair = spur_pair();
    const ts_bevel_virtual    virt = virtual_of(&pair);
    (void)state;
    assert_close(rated(&virt, 1, 3000.0, 60.0).mu_mC, rated(&virt, 1, 3000.0, 50.0).mu_mC, 1e-12);
    assert_true((rated(&virt, 1, 3000.0, 60.0).remarks & TS_SCUFFING_SPEED_HELD) != 0);
    assert_true((rated(&virt, 1, 300.0, 20.0).remarks & TS_SCUFFING_LOAD_HELD) != 0);
    assert_true((rated(&virt, 1, 3000.0, 20.0).remarks & TS_SCUFFING_SPEED_HELD) == 0);
    assert_close(rated(&virt, 1, 100.0, 20.0).mu_mC, rated(&virt, 1, 300.0, 20.0).mu_mC, 1e-12);
}

static void nothing_rubs_at_rest_and_nothing_unknown_passes(void **state)
{
    const ts_cylindrical_pair  pair = spur_pair();
    const ts_bevel_virtual     virt = virtual_of(&pair);
    ts_scuffing_mesh           mesh = usual_mesh(1);
    ts_bevel_scuffing_load     load = load_of(3000.0, 15.0);
    ts_bevel_scuffing_prepared prepared;
    ts_bevel_scuffing          rating;
    (void)state;
    assert_true(isinf(rated(&virt, 1, 0.0, 15.0).S_intS));
    assert_close(rated(&virt, 1, 3000.0, 0.0).theta_int, kelvin + 90.0, 1e-15);
    mesh.S_FZG = NAN;
    assert_true(ts_bevel_scuffing_prepare(&virt, 20.0 * degree, 0.0, &mesh, &prepared, NULL));
    assert_true(ts_bevel_scuffing_rate(&prepared, &load, &rating, NULL));
    assert_true(isnan(rating.S_intS) && (rating.remarks & TS_SCUFFING_NO_LIMIT) != 0);
    load.theta_oil = NAN;
    assert_false(ts_bevel_scuffing_rate(&prepared, &load, &rating, NULL));
    assert_string_equal(rating.missing, "the oil temperature");
    mesh.gear[1].Ra = 0.0;
    assert_false(ts_bevel_scuffing_prepare(&virt, 20.0 * degree, 0.0, &mesh, &prepared, NULL));
    assert_false(ts_bevel_scuffing_rate(&prepared, &load, &rating, NULL));
    assert_true(isnan(rating.theta_int) && strstr(rating.missing, "roughness") != NULL);
}

typedef struct question {
    ts_bevel_virtual       virt;
    ts_scuffing_mesh       mesh;
    ts_bevel_scuffing_load load;
} question;

static bool is_rated(const void *record)
{
    const question            *q = record;
    ts_bevel_scuffing_prepared prepared;
    ts_bevel_scuffing          rating;
    return ts_bevel_scuffing_prepare(&q->virt, 20.0 * degree, 0.0, &q->mesh, &prepared, NULL) &&
           ts_bevel_scuffing_rate(&prepared, &q->load, &rating, NULL);
}

static void no_impossible_number_is_rated(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair  = spur_pair();
    const question            sound = {virtual_of(&pair), usual_mesh(1), load_of(3000.0, 15.0)};
    static const spoil_at     all[] = {SPOIL(question, mesh.gear[0].body.E, 0.0),
                                       SPOIL(question, mesh.gear[1].body.nu, 0.5),
                                       SPOIL(question, mesh.gear[0].body.B_M, 0.0),
                                       SPOIL(question, mesh.gear[1].Ra, 0.0),
                                       SPOIL(question, mesh.gear[0].X_W, 0.0),
                                       SPOIL(question, virt.d_va[1], 0.0),
                                       SPOIL(question, mesh.X_S, 0.0),
                                       SPOIL(question, mesh.X_L, 0.0),
                                       SPOIL(question, mesh.phi_E, 1.1),
                                       SPOIL(question, load.F_mt, -1.0),
                                       SPOIL(question, load.v_mt, -1.0),
                                       SPOIL(question, load.theta_oil, 0.0),
                                       SPOIL(question, load.K_A, 0.0),
                                       SPOIL(question, load.eta_oil, 0.0)};
    static const spoil_at     far[] = {
            SPOIL(question, mesh.gear[0].body.nu, -0.1),  SPOIL(question, mesh.phi_E, -0.1),
            SPOIL(question, load.F_mt, (double)INFINITY), SPOIL(question, load.v_mt, (double)INFINITY),
            SPOIL(question, load.K_v, (double)INFINITY),  SPOIL(question, load.theta_oil, 3000.0)};
    question odd[3] = {sound, sound, sound};

    spoil_each(&sound, sizeof sound, is_rated, all, sizeof all / sizeof all[0]);
    spoil_each(&sound, sizeof sound, is_rated, far, sizeof far / sizeof far[0]);
    odd[0].mesh.driver  = 3;
    odd[1].load.theta_M = sound.load.theta_oil - 1.0; /* gears colder than their oil */
    odd[2].load.theta_M = 6000.0;
    for (int i = 0; i < 3; i++)
        assert_false(is_rated(&odd[i]));
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(virtual_gears_that_are_a_spur_pair_are_rated_as_one),
        cmocka_unit_test(gears_can_change_places),
        cmocka_unit_test(flash_rises_with_load_and_speed_by_its_powers),
        cmocka_unit_test(limits_of_the_friction_are_held_and_told),
        cmocka_unit_test(nothing_rubs_at_rest_and_nothing_unknown_passes),
        cmocka_unit_test(no_impossible_number_is_rated),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
