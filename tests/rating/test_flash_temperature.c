/* Is the flash what heat conduction makes of friction, and does it scale as it must? */
#include "base/arena.h"
#include "element/hertz.h"
#include "rating/scuffing/flash_temperature.h"
#include "support/close.h"

static const double pi     = 3.14159265358979323846;
static const double degree = 3.14159265358979323846 / 180.0;

static const ts_flash_body steel = {.E = 206e9, .nu = 0.3, .B_M = 13795.0};

static ts_cylindrical_pair meshed(double m_n, double beta, double x)
{
    ts_cylindrical_pair_input in = {.z_1     = 23,
                                    .z_2     = 57,
                                    .m_n     = m_n,
                                    .alpha_n = 20.0 * degree,
                                    .beta    = beta * degree,
                                    .b_1     = 10.0 * m_n,
                                    .b_2     = 10.0 * m_n,
                                    .x_1     = x,
                                    .x_2     = x / 2.0,
                                    .rack    = ts_basic_rack_A};
    ts_cylindrical_pair       pair;

    assert_int_equal(ts_cylindrical_pair_solve(&in, &pair, NULL), TS_PAIR_FINE);
    return pair;
}

static void prepared_of(const ts_cylindrical_pair *pair, ts_flash_prepared *prepared)
{
    const ts_flash_body both[2] = {steel, steel};

    ts_flash_prepare(pair, both, 6, 1, prepared, NULL);
    assert_null(prepared->path.missing);
}

/* ---- second route: conduction of heat, step by step -------------------------------------------
 */

enum { DEPTHS = 400, STEPS = 4000 };

/* A point of a flank passes the band of contact, and heat flows into it for a while: explicit
 * differences in depth and time for a half space with the heat flux of half an ellipse, all
 * quantities reduced.  Returns the greatest surface temperature for flux 1 in the middle, length 1
 * of the band, speed 1, and lambda = rho*c = 1, so B = 1. */
static double conducted_greatest(void)
{
    static double theta[DEPTHS + 1], next[DEPTHS + 1];
    const double  dt = 1.0 / STEPS, dx = sqrt(2.5 * dt); /* stable below sqrt(2 dt) */
    double        greatest = 0.0;

    for (int i = 0; i <= DEPTHS; i++)
        theta[i] = 0.0;
    for (int k = 0; k < STEPS; k++) {
        const double s    = 2.0 * (k + 0.5) * dt - 1.0;
        const double flux = sqrt(fmax(0.0, 1.0 - s * s));

        next[0] = theta[0] + 2.0 * dt / dx * (flux - (theta[0] - theta[1]) / dx);
        for (int i = 1; i < DEPTHS; i++)
            next[i] = theta[i] + dt / (dx * dx) * (theta[i - 1] - 2.0 * theta[i] + theta[i + 1]);
        next[DEPTHS] = 0.0;
        for (int i = 0; i <= DEPTHS; i++)
            theta[i] = next[i];
        greatest = fmax(greatest, theta[0]);
    }
    return greatest;
}

/* Both bodies get the share of heat that makes their greatest temperatures equal (Blok): B1
 * sqrt(v1) over the sum of both.  The source rounds the number to 1.11; AGMA 925 rounds it to
 * 0.80*sqrt(2). */
static void constant_of_the_flash_is_that_of_conducted_heat(void **state)
{
    (void)state;
    /* theta = q0 * sqrt(2 b_H/v)/B * greatest with q0 = mu v_g 2 w/(pi b_H) */
    const double constant = conducted_greatest() * 2.0 * 2.0 / pi;

    assert_close(constant, 1.11, 0.005);
    assert_close(constant, 0.8 * sqrt(2.0), 0.03);
}

/* ---- closed forms ---------------------------------------------------------------------------- */

/* Notes of the bank case blok-fzgA: 1.11 (pi/2) mu p_H sqrt(b_H/2) |sqrt v1 - sqrt v2|/B_M. */
static void flash_by_pressure_is_flash_by_load(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = meshed(2.5e-3, 17.0, 0.1);
    const ts_flash_load       load = {.w_n = 3.1e5, .omega_1 = 900.0, .mu_m = 0.05};
    ts_flash_prepared         p;
    ts_flash                  flash;

    prepared_of(&pair, &p);
    ts_flash_along(&p, &load, &flash, NULL);
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        const double          v_1 = 900.0 * p.path.rho_1[i], v_2 = 900.0 * p.path.rho_2[i] / pair.u;
        const ts_line_contact c =
            ts_hertz_line(flash.X_Gamma[i] * load.w_n, p.path.rho_n[i], p.E_r, NULL);

        assert_close(flash.p_H[i], c.p_max, 1e-13);
        assert_close_abs(flash.theta_fl[i],
                         1.11 * pi / 2.0 * 0.05 * c.p_max * sqrt(c.b_H / 2.0) *
                             fabs(sqrt(v_1) - sqrt(v_2)) / 13795.0,
                         1e-12 * flash.theta_flmax);
    }
}

/* ISO/TS 6336-20 gathers the same into X_G = 0.51 X_alphabeta ... and X_M = 50 (from memory), its
 * two numbers rounded: w_Bt in N/mm, v_t at the reference circle, a in mm. */
static void flash_by_gathered_factors_is_the_same(void **state)
{
    (void)state;
    for (double beta = 0.0; beta < 35.0; beta += 16.0) {
        const ts_cylindrical_pair pair = meshed(2.5e-3, beta, 0.3);
        const double              w_Bt = 240.0, mu = 0.06, omega = 700.0, u = pair.u;
        const ts_flash_load       load = {
                  .w_n = 1000.0 * w_Bt / cos(pair.alpha_t), .omega_1 = omega, .mu_m = mu};
        ts_flash_prepared p;
        ts_flash          flash;

        prepared_of(&pair, &p);
        ts_flash_along(&p, &load, &flash, NULL);
        const double X_ab = 1.22 *
                            pow(sin(pair.alpha_wt) * cos(20.0 * degree) * cos(pair.in.beta), 0.25) /
                            sqrt(cos(pair.alpha_wt) * cos(pair.alpha_t));
        for (int i = 0; i < TS_FLANK_POINTS; i++) {
            const double G   = p.path.Gamma[i];
            const double X_G = 0.51 * X_ab * sqrt(u + 1.0) *
                               fabs(sqrt(1.0 + G) - sqrt(1.0 - G / u)) /
                               pow((1.0 + G) * (u - G), 0.25);
            const double gathered = mu * 50.0 * X_G * pow(flash.X_Gamma[i] * w_Bt, 0.75) *
                                    sqrt(omega * pair.d_1 / 2.0) / pow(1000.0 * pair.a_w, 0.25);

            assert_close_abs(flash.theta_fl[i], gathered, 0.004 * flash.theta_flmax);
        }
    }
}

/* Derived: at equal pressure and speed of rotation the band, and both surface speeds, grow with the
 * size, and so does the flash. */
static void flash_grows_with_the_size(void **state)
{
    (void)state;
    const ts_cylindrical_pair one = meshed(2e-3, 0.0, 0.1), three = meshed(6e-3, 0.0, 0.1);
    ts_flash_load             load = {.w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05};
    ts_flash_prepared         p, q;
    ts_flash                  a, b;

    prepared_of(&one, &p);
    prepared_of(&three, &q);
    ts_flash_along(&p, &load, &a, NULL);
    load.w_n *= 3.0;
    ts_flash_along(&q, &load, &b, NULL);
    assert_close(b.p_H[7], a.p_H[7], 1e-12);
    assert_close(b.theta_flmax, 3.0 * a.theta_flmax, 1e-11);
    assert_close(b.theta_flm, 3.0 * a.theta_flm, 1e-11);
}

static void flash_follows_its_powers(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = meshed(2e-3, 0.0, 0.1);
    const ts_flash_load       load = {.w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05};
    ts_flash_load             other;
    ts_flash_prepared         p;
    ts_flash                  a, b;

    prepared_of(&pair, &p);
    ts_flash_along(&p, &load, &a, NULL);
    other     = load;
    other.w_n = 16.0 * load.w_n;
    ts_flash_along(&p, &other, &b, NULL);
    assert_close(b.theta_flmax, 8.0 * a.theta_flmax, 1e-13);
    assert_close(b.p_H[3], 4.0 * a.p_H[3], 1e-13);
    other         = load;
    other.omega_1 = 4.0 * load.omega_1;
    ts_flash_along(&p, &other, &b, NULL);
    assert_close(b.theta_flmax, 2.0 * a.theta_flmax, 1e-13);
    other      = load;
    other.mu_m = 3.0 * load.mu_m;
    ts_flash_along(&p, &other, &b, NULL);
    assert_close(b.theta_flm, 3.0 * a.theta_flm, 1e-13);
}

static void nothing_flashes_at_the_pitch_point(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = meshed(2e-3, 0.0, 0.1);
    const ts_flash_load       load = {.w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05};
    ts_flash_prepared         p;
    ts_flash                  flash;

    prepared_of(&pair, &p);
    ts_flash_along(&p, &load, &flash, NULL);
    assert_close_abs(flash.theta_fl[p.path.C], 0.0, 1e-9 * flash.theta_flmax);
    for (int i = 0; i < TS_FLANK_POINTS; i++)
        assert_true(flash.theta_fl[i] <= flash.theta_flmax && flash.theta_fl[i] >= 0.0);
    assert_true(flash.theta_flmax < 1.01 * flash.theta_fl[flash.hot]);
}

/* Along the path the flash has no steps but those of the load share at B and D. */
static void flash_has_no_steps_within_a_zone(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = meshed(2e-3, 12.0, 0.1);
    const ts_flash_load       load = {.w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05};
    ts_flash_prepared         p;
    ts_flash                  flash;

    prepared_of(&pair, &p);
    ts_flash_along(&p, &load, &flash, NULL);
    for (int i = 1; i < TS_FLANK_POINTS; i++)
        if (p.path.zone[i] == p.path.zone[i - 1])
            assert_true(fabs(flash.theta_fl[i] - flash.theta_fl[i - 1]) < 0.35 * flash.theta_flmax);
}

static void relief_cools_the_ends_and_knocking_heats_the_entry(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair = meshed(2e-3, 0.0, 0.1);
    ts_flash_load             load = {.w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05};
    ts_flash_prepared         p;
    ts_flash                  bare, relieved, knocked;

    prepared_of(&pair, &p);
    ts_flash_along(&p, &load, &bare, NULL);
    load.r_1 = load.r_2 = 1.0;
    ts_flash_along(&p, &load, &relieved, NULL);
    load.r_1 = load.r_2 = 0.0;
    load.C_over         = 10e-6;
    ts_flash_along(&p, &load, &knocked, NULL);
    assert_close_abs(relieved.theta_fl[p.path.A], 0.0, 1e-9);
    assert_close_abs(relieved.theta_fl[p.path.E], 0.0, 1e-9);
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        if (p.path.Gamma[i] >= 0.0)
            assert_same_double(knocked.theta_fl[i], bare.theta_fl[i]);
        else
            assert_true(knocked.theta_fl[i] > bare.theta_fl[i]);
    }
    /* ISO/TS 6336-20, approach factor (from memory). */
    const double part = -p.path.Gamma_A / (p.path.Gamma_E - p.path.Gamma_A);
    assert_close(knocked.theta_fl[0] / bare.theta_fl[0], 1.0 + 10.0 / 50.0 * part * part * part,
                 1e-13);
}

/* A body that takes up no heat leaves it all to the other. */
static void cold_body_takes_the_heat(void **state)
{
    (void)state;
    const ts_cylindrical_pair pair    = meshed(2e-3, 0.0, 0.1);
    const ts_flash_body       poor    = {206e9, 0.3, 1e-6};
    const ts_flash_body       both[2] = {steel, steel}, one[2] = {steel, poor};
    const ts_flash_load       load = {.w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05};
    ts_flash_prepared         p, q;
    ts_flash                  a, b;

    ts_flash_prepare(&pair, both, 6, 1, &p, NULL);
    ts_flash_prepare(&pair, one, 6, 1, &q, NULL);
    ts_flash_along(&p, &load, &a, NULL);
    ts_flash_along(&q, &load, &b, NULL);
    for (int i = 0; i < TS_FLANK_POINTS; i++)
        assert_close_abs(b.theta_fl[i], a.theta_fl[i] * (1.0 + p.path.root_2[i] / p.path.root_1[i]),
                         1e-8 * a.theta_flmax);
}

static void notes_change_nothing(void **state)
{
    (void)state;
    ts_arena                 *arena    = ts_arena_open(NULL);
    ts_workings              *workings = ts_workings_open(arena);
    const ts_cylindrical_pair pair     = meshed(2e-3, 21.0, 0.1);
    const ts_flash_load       load     = {
                  .w_n = 2e5, .omega_1 = 1000.0, .mu_m = 0.05, .r_1 = 0.4, .r_2 = 0.7, .C_over = 2e-6};
    const ts_subject  whole = {0, TS_EVERY_CONDITION};
    ts_flash_prepared p;
    ts_flash          silent, noted;

    prepared_of(&pair, &p);
    ts_flash_along(&p, &load, &silent, NULL);
    ts_flash_along(&p, &load, &noted, workings);
    assert_memory_equal(silent.theta_fl, noted.theta_fl, sizeof silent.theta_fl);
    assert_same_double(silent.theta_flm, noted.theta_flm);
    const size_t at = ts_workings_find(workings, whole, "theta_flmax");
    assert_true(at != SIZE_MAX);
    assert_same_double(ts_workings_at(workings, at)->value, noted.theta_flmax);
    assert_true(ts_workings_complete(workings));
    ts_arena_close(arena);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(constant_of_the_flash_is_that_of_conducted_heat),
        cmocka_unit_test(flash_by_pressure_is_flash_by_load),
        cmocka_unit_test(flash_by_gathered_factors_is_the_same),
        cmocka_unit_test(flash_grows_with_the_size),
        cmocka_unit_test(flash_follows_its_powers),
        cmocka_unit_test(nothing_flashes_at_the_pitch_point),
        cmocka_unit_test(flash_has_no_steps_within_a_zone),
        cmocka_unit_test(relief_cools_the_ends_and_knocking_heats_the_entry),
        cmocka_unit_test(cold_body_takes_the_heat),
        cmocka_unit_test(notes_change_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
