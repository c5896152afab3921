/* Does no number come of an input of which any one number is none, or cannot be? */
#include "element/bearing_geometry.h"
#include "element/bevel_pair.h"
#include "element/hertz.h"
#include "element/oil_viscosity.h"
#include "element/shaft_beam.h"
#include "element/shear_neck.h"
#include "rating/bearing/dynamic_capacity.h"
#include "rating/bearing/life_weibull.h"
#include "rating/bearing/static_capacity.h"
#include "rating/shaft/neck_chance.h"
#include "rating/spline/spline_stress.h"
#include "response/elastic_train.h"
#include "response/rotor.h"
#include "response/web_plate.h"
#include "support/close.h"
#include "support/spoil.h"

#define EACH(record, answers, all)                                                                 \
    spoil_each(&(record), sizeof(record), answers, all, sizeof(all) / sizeof((all)[0]))

/* ---- rolling bearings ------------------------------------------------------------------------ */

typedef struct bearing {
    double        gamma, f_i, f_e, level;
    ts_ball_set   balls;
    ts_roller_set rollers;
    double        f_0;
    double        D_pw;
} bearing;

static const bearing bearing_sound = {.gamma   = 0.2,
                                      .f_i     = 0.52,
                                      .f_e     = 0.53,
                                      .level   = 39.0,
                                      .balls   = {1, 9, 8e-3, 0.0, 1.3, 58.0},
                                      .rollers = {1, 13, 6e-3, 6e-3, 0.0, 1.1, 85.0},
                                      .f_0     = 14.0,
                                      .D_pw    = 40e-3};

static bool has_ball_factor(const void *record)
{
    const bearing *b = record;
    return isfinite(ts_ball_f_c(b->gamma, b->f_i, b->f_e, b->level, NULL));
}

static bool has_ball_capacity(const void *record)
{
    const bearing *b = record;
    return isfinite(ts_ball_capacity(&b->balls, NULL));
}

static bool has_roller_capacity(const void *record)
{
    const bearing *b = record;
    return isfinite(ts_roller_capacity(&b->rollers, NULL));
}

static bool has_standing_balls(const void *record)
{
    const bearing *b = record;
    return isfinite(ts_ball_static_capacity(b->f_0, b->balls.i, b->balls.Z, b->balls.D_w,
                                            b->balls.alpha, NULL));
}

static bool has_standing_rollers(const void *record)
{
    const bearing          *b    = record;
    const ts_static_rollers from = {b->rollers.i,    b->rollers.Z, b->rollers.D_we,
                                    b->rollers.L_we, b->D_pw,      b->rollers.alpha};
    return isfinite(ts_roller_static_capacity(&from, NULL));
}

static void no_capacity_comes_of_an_impossible_bearing(void **state)
{
    (void)state;
    static const spoil_at factor[] = {SPOIL(bearing, gamma, 0.5), SPOIL(bearing, f_i, 0.5),
                                      SPOIL(bearing, f_e, 0.5), SPOIL(bearing, level, 0.0)};
    static const spoil_at balls[]  = {SPOIL(bearing, balls.D_w, 0.0),
                                      SPOIL(bearing, balls.alpha, 1.6)};
    static const spoil_at ball[] = {SPOIL(bearing, balls.b_m, 0.0), SPOIL(bearing, balls.f_c, 0.0)};
    static const spoil_at rolls[]  = {SPOIL(bearing, rollers.D_we, 0.0),
                                      SPOIL(bearing, rollers.L_we, 0.0),
                                      SPOIL(bearing, rollers.alpha, 1.6)};
    static const spoil_at roll[]   = {SPOIL(bearing, rollers.b_m, 0.0),
                                      SPOIL(bearing, rollers.f_c, 0.0)};
    static const spoil_at still[]  = {SPOIL(bearing, f_0, 0.0)};
    static const spoil_at around[] = {SPOIL(bearing, D_pw, 6e-3)};
    bearing               none     = bearing_sound;

    EACH(bearing_sound, has_ball_factor, factor);
    EACH(bearing_sound, has_ball_capacity, balls);
    EACH(bearing_sound, has_ball_capacity, ball);
    EACH(bearing_sound, has_standing_balls, balls);
    EACH(bearing_sound, has_standing_balls, still);
    EACH(bearing_sound, has_roller_capacity, rolls);
    EACH(bearing_sound, has_roller_capacity, roll);
    EACH(bearing_sound, has_standing_rollers, rolls);
    EACH(bearing_sound, has_standing_rollers, around);
    none.balls.i = none.rollers.i = 0; /* no row */
    assert_false(has_ball_capacity(&none) || has_roller_capacity(&none));
    assert_false(has_standing_balls(&none) || has_standing_rollers(&none));
    none         = bearing_sound;
    none.balls.Z = none.rollers.Z = 0; /* an empty one */
    assert_false(has_ball_capacity(&none) || has_roller_capacity(&none));
    assert_false(has_standing_balls(&none) || has_standing_rollers(&none));
}

typedef struct scattered {
    ts_life_scatter law;
    double          F, x_D, R, p;
} scattered;

static bool has_scattered_capacity(const void *record)
{
    const scattered *s = record;
    return isfinite(ts_scattered_capacity(&s->law, s->F, s->x_D, s->R, s->p, NULL));
}

static void no_capacity_comes_of_an_impossible_scatter(void **state)
{
    (void)state;
    const scattered       sound = {{0.02, 4.459, 1.483}, 2000.0, 500.0, 0.95, 3.0};
    static const spoil_at all[] = {
        SPOIL(scattered, law.x_0, -0.1), SPOIL(scattered, law.theta, 0.01),
        SPOIL(scattered, law.b, 0.0),    SPOIL(scattered, F, 0.0),
        SPOIL(scattered, x_D, 0.0),      SPOIL(scattered, R, 1.0),
        SPOIL(scattered, p, 0.0)};
    static const spoil_at low[] = {SPOIL(scattered, R, 0.0)};

    EACH(sound, has_scattered_capacity, all);
    EACH(sound, has_scattered_capacity, low);
}

/* ---- splines and necks ----------------------------------------------------------------------- */

typedef struct spline {
    ts_spline_load   load;
    ts_spline_sleeve sleeve;
} spline;

static bool has_bursting(const void *record)
{
    const spline *s = record;
    return isfinite(ts_spline_burst(&s->load, &s->sleeve, NULL).S_t);
}

static bool has_root_shear(const void *record)
{
    const spline *s = record;
    return isfinite(ts_spline_root_shear(&s->load, NULL));
}

static void no_stress_comes_of_an_impossible_spline(void **state)
{
    (void)state;
    const spline sound = {
        {70.0, 16.0, 0.02032, 0.01778, 0.008, 0.019, 0.002, 0.00127, 1.0, 1.0, 1.0, 1.0},
        {0.0216, 0.030, 0.004, 0.5236, 1.5, 7830.0, 1200.0}};
    static const spoil_at loaded[] = {
        SPOIL(spline, load.T, -1.0),    SPOIL(spline, load.N, 0.0),
        SPOIL(spline, load.D, 0.0),     SPOIL(spline, load.D_re, 8e-3),
        SPOIL(spline, load.D_h, -1e-3), SPOIL(spline, load.L_e, 0.0),
        SPOIL(spline, load.t, 0.0),     SPOIL(spline, load.h, 0.0),
        SPOIL(spline, load.K_a, 0.0),   SPOIL(spline, load.K_m, 0.0),
        SPOIL(spline, load.K_f, 0.0),   SPOIL(spline, load.K_w, 0.0)};
    static const spoil_at sleeve[] = {
        SPOIL(spline, sleeve.t_w, 0.0),      SPOIL(spline, sleeve.Y, 0.0),
        SPOIL(spline, sleeve.D_oi, 0.02),    SPOIL(spline, sleeve.D_ri, 0.0),
        SPOIL(spline, sleeve.rho, -1.0),     SPOIL(spline, sleeve.alpha_D, 0.0),
        SPOIL(spline, sleeve.n, (double)NAN)};
    static const spoil_at steep[] = {SPOIL(spline, sleeve.alpha_D, 1.5)};

    EACH(sound, has_root_shear, loaded);
    EACH(sound, has_bursting, loaded);
    EACH(sound, has_bursting, sleeve);
    EACH(sound, has_bursting, steep);
}

static void no_wear_comes_of_less_than_nothing(void **state)
{
    (void)state;
    for (int bad = 0; bad < 4; bad++)
        assert_nan(ts_spline_wear_depth(bad == 0 ? -1.0 : 1e-15, bad == 1 ? -1.0 : 1e6,
                                        bad == 2 ? -1.0 : 1e-4, bad == 3 ? -1.0 : 1e6, NULL));
    assert_close(ts_spline_wear_depth(1e-15, 1e6, 1e-4, 1e6, NULL), 1e-7, 1e-14);
}

typedef struct neck {
    ts_neck_make make;
    double       T_legit, T_capacity, d;
} neck;

static bool has_chance(const void *record)
{
    const neck          *n    = record;
    const ts_neck_cycles once = {60.0, 60.0, 2000.0};
    const ts_neck_duty   duty = {n->T_legit, n->T_capacity, &once, 1};
    return isfinite(ts_neck_chance_of(&n->make, &duty, n->d, NULL).late);
}

static void no_chance_comes_of_an_impossible_neck(void **state)
{
    (void)state;
    const neck sound = {{10e-3, 170.0, 0.04, 45.0, 1e6, 5.0, 0.08, 0.0, 0.0}, 130.0, 230.0, 10e-3};
    static const spoil_at all[] = {SPOIL(neck, make.d_0, 0.0),   SPOIL(neck, make.T_mid, 0.0),
                                   SPOIL(neck, make.cov, 1.0),   SPOIL(neck, make.T_W, 0.0),
                                   SPOIL(neck, make.N_W, 0.0),   SPOIL(neck, make.k, 0.5),
                                   SPOIL(neck, make.s_ln, 0.0),  SPOIL(neck, T_legit, -1.0),
                                   SPOIL(neck, T_capacity, 0.0), SPOIL(neck, d, 0.0)};
    static const spoil_at far[] = {SPOIL(neck, make.cov, 0.0), SPOIL(neck, make.k, 100.0),
                                   SPOIL(neck, d, 11.0), SPOIL(neck, d, 1e-6)};

    EACH(sound, has_chance, all);
    EACH(sound, has_chance, far);
}

/* ---- what swings ----------------------------------------------------------------------------- */

static bool has_frequency(const void *record)
{
    ts_web_modes modes;
    ts_web_open(record, &modes);
    return isfinite(ts_web_frequency(&modes, 2));
}

static void no_frequency_comes_of_an_impossible_web(void **state)
{
    (void)state;
    const ts_web_plate    sound = {0.018, 0.060, 0.070, 0.006, 0.020, 206e9, 0.3, 7830.0, 0.0, 0.0};
    static const spoil_at all[] = {
        SPOIL(ts_web_plate, b, 0.0),      SPOIL(ts_web_plate, a, 0.071),
        SPOIL(ts_web_plate, R, 0.018),    SPOIL(ts_web_plate, h, 0.0),
        SPOIL(ts_web_plate, w, 0.0),      SPOIL(ts_web_plate, E, 0.0),
        SPOIL(ts_web_plate, nu, -0.1),    SPOIL(ts_web_plate, rho, 0.0),
        SPOIL(ts_web_plate, teeth, -1.0), SPOIL(ts_web_plate, arm, -1.0)};
    static const spoil_at far[] = {SPOIL(ts_web_plate, a, 0.017), SPOIL(ts_web_plate, nu, 0.5),
                                   SPOIL(ts_web_plate, teeth, (double)INFINITY)};

    EACH(sound, has_frequency, all);
    EACH(sound, has_frequency, far);
}

typedef struct rotor {
    ts_rotor         whole;
    ts_rotor_section sections[2];
    ts_rotor_disc    disc;
    ts_rotor_bearing bearings[2];
    ts_rotor_joint   joint;
} rotor;

static bool is_a_rotor(const void *record)
{
    static ts_rotor_frame frame;
    rotor                 it = *(const rotor *)record;
    it.whole.sections        = it.sections;
    it.whole.section_count   = 2;
    it.whole.discs           = &it.disc;
    it.whole.disc_count      = 1;
    it.whole.bearings        = it.bearings;
    it.whole.bearing_count   = 2;
    it.whole.joints          = &it.joint;
    it.whole.joint_count     = 1;
    return ts_rotor_prepare(&it.whole, &frame) == TS_ROTOR_FINE;
}

static void an_impossible_rotor_is_refused(void **state)
{
    (void)state;
    const rotor           sound = {.whole = {.E = 207e9, .G = 79.6e9, .rho = 7850.0, .kappa = 0.9},
                                   .sections = {{0.0, 0.25, 0.06, 0.01, 0.06}, {0.25, 0.5, 0.05, 0.0, 0.05}},
                                   .disc     = {0.2, 1.0, 1e-3, 6e-4},
                                   .bearings = {{0.0, 1e8, 0.0, 0.0, 0.0}, {0.5, 1e8, 0.0, 0.0, 0.0}},
                                   .joint    = {0.3, 1e5}};
    static const spoil_at all[] = {
        SPOIL(rotor, whole.E, 0.0),          SPOIL(rotor, whole.G, 0.0),
        SPOIL(rotor, whole.rho, 0.0),        SPOIL(rotor, whole.kappa, -0.1),
        SPOIL(rotor, sections[0].x_2, -0.1), SPOIL(rotor, sections[0].d_i, -0.01),
        SPOIL(rotor, sections[0].d_o, 0.01), SPOIL(rotor, sections[0].d_m, 0.005),
        SPOIL(rotor, sections[1].x_1, 0.3),  SPOIL(rotor, disc.m, -1.0),
        SPOIL(rotor, disc.I_p, -1.0),        SPOIL(rotor, disc.I_d, -1.0),
        SPOIL(rotor, bearings[1].k_r, 0.0),  SPOIL(rotor, bearings[1].k_t, -1.0),
        SPOIL(rotor, bearings[1].c_r, -1.0), SPOIL(rotor, bearings[1].loss, -0.1),
        SPOIL(rotor, joint.k_t, -1.0),       SPOIL(rotor, disc.x, 0.6),
        SPOIL(rotor, bearings[0].x, -0.1),   SPOIL(rotor, joint.x, 0.6)};
    static const spoil_at endless[] = {
        SPOIL(rotor, whole.E, (double)INFINITY), SPOIL(rotor, sections[1].x_2, (double)INFINITY),
        SPOIL(rotor, disc.m, (double)INFINITY), SPOIL(rotor, bearings[0].k_r, (double)INFINITY),
        SPOIL(rotor, joint.k_t, (double)INFINITY)};

    EACH(sound, is_a_rotor, all);
    EACH(sound, is_a_rotor, endless);
}

typedef struct train {
    ts_elastic_train whole;
    ts_turning_body  bodies[2];
    ts_bond          bond;
    ts_torque_pulse  pulse;
} train;

static bool runs(const void *record)
{
    train        it = *(const train *)record;
    ts_train_run run;
    ts_arena    *arena = ts_arena_open(NULL);
    assert_non_null(arena);
    it.whole.bodies      = it.bodies;
    it.whole.body_count  = 2;
    it.whole.bonds       = &it.bond;
    it.whole.bond_count  = 1;
    it.whole.pulses      = &it.pulse;
    it.whole.pulse_count = 1;
    it.whole.stops       = TS_NO_BODY;
    ts_elastic_train_run(&it.whole, arena, &run);
    const ts_run_fault fault = run.fault;
    ts_arena_close(arena);
    assert_true(fault == TS_RUN_FINE || fault == TS_RUN_BAD_NUMBER);
    return fault == TS_RUN_FINE;
}

static void an_impossible_train_is_not_run(void **state)
{
    (void)state;
    const double endless = (double)INFINITY;
    const train  sound   = {
           .whole  = {.until = 1e-4, .tolerance = 1e-8},
           .bodies = {{0.015, 1200.0, 0.0, 0.0, 0.0, 0.0}, {1e-4, 1200.0, 0.0, 0.0, 0.0, 0.0}},
           .bond   = {TS_BOND_SHAFT, 0, 1, 1.0, 1.0, 22000.0, 0.0, 0.0, endless},
           .pulse  = {1, 5.0, 10.0, 100.0, 0.0, 0.0}};
    static const spoil_at all[] = {
        SPOIL(train, bodies[1].J, 0.0),     SPOIL(train, bodies[1].speed, -1.0),
        SPOIL(train, bodies[1].slope, 1.0), SPOIL(train, bond.k, 0.0),
        SPOIL(train, bond.c, -1.0),         SPOIL(train, bond.gap, -1e-6),
        SPOIL(train, bond.breaks, 0.0),     SPOIL(train, bond.g_b, 0.0),
        SPOIL(train, pulse.decay, -1.0),    SPOIL(train, pulse.omega, -1.0),
        SPOIL(train, pulse.rise, -1.0),     SPOIL(train, whole.until, 0.0),
        SPOIL(train, whole.tolerance, 0.0), SPOIL(train, whole.ramp, -1.0)};
    static const spoil_at far[]    = {SPOIL(train, bodies[0].J, (double)INFINITY),
                                      SPOIL(train, bodies[0].speed, (double)INFINITY),
                                      SPOIL(train, bodies[0].torque, (double)INFINITY),
                                      SPOIL(train, bodies[0].slope, -(double)INFINITY),
                                      SPOIL(train, bodies[0].q, (double)INFINITY),
                                      SPOIL(train, bodies[0].v, (double)INFINITY),
                                      SPOIL(train, bond.k, (double)INFINITY),
                                      SPOIL(train, bond.c, (double)INFINITY),
                                      SPOIL(train, bond.gap, (double)INFINITY),
                                      SPOIL(train, bond.g_a, (double)INFINITY),
                                      SPOIL(train, bond.g_b, (double)INFINITY),
                                      SPOIL(train, pulse.A, (double)INFINITY),
                                      SPOIL(train, pulse.decay, (double)INFINITY),
                                      SPOIL(train, pulse.omega, (double)INFINITY),
                                      SPOIL(train, pulse.phase, (double)INFINITY),
                                      SPOIL(train, pulse.rise, (double)INFINITY),
                                      SPOIL(train, whole.until, (double)INFINITY)};
    train                 stranger = sound;

    EACH(sound, runs, all);
    EACH(sound, runs, far);
    stranger.bond.b = 2; /* there are two bodies, 0 and 1 */
    assert_false(runs(&stranger));
    stranger.bond.b     = 1;
    stranger.pulse.body = 2;
    assert_false(runs(&stranger));
}

/* ---- elements -------------------------------------------------------------------------------- */

typedef struct roller_bed {
    double D_w, D_pw, alpha, f_i, f_e, gamma;
} roller_bed;

static bool has_gamma(const void *record)
{
    const roller_bed *r = record;
    return isfinite(ts_bearing_gamma(r->D_w, r->D_pw, r->alpha, NULL));
}

static bool has_inner_race(const void *record)
{
    const roller_bed *r = record;
    return isfinite(ts_inner_race_curvature(r->D_w, r->f_i, r->gamma, NULL).sum_rho);
}

static bool has_outer_race(const void *record)
{
    const roller_bed *r = record;
    return isfinite(ts_outer_race_curvature(r->D_w, r->f_e, r->gamma, NULL).sum_rho);
}

static void no_curvature_comes_of_an_impossible_race(void **state)
{
    (void)state;
    const roller_bed      sound   = {8e-3, 40e-3, 0.1, 0.52, 0.53, 0.2};
    static const spoil_at gamma[] = {SPOIL(roller_bed, D_w, 0.0), SPOIL(roller_bed, D_pw, 8e-3),
                                     SPOIL(roller_bed, alpha, -0.1)};
    static const spoil_at steep[] = {SPOIL(roller_bed, alpha, 1.6)};
    static const spoil_at inner[] = {SPOIL(roller_bed, D_w, 0.0), SPOIL(roller_bed, f_i, 0.5),
                                     SPOIL(roller_bed, gamma, 0.0)};
    static const spoil_at outer[] = {SPOIL(roller_bed, D_w, 0.0), SPOIL(roller_bed, f_e, 10.0),
                                     SPOIL(roller_bed, gamma, 1.0)};

    EACH(sound, has_gamma, gamma);
    EACH(sound, has_gamma, steep);
    EACH(sound, has_inner_race, inner);
    EACH(sound, has_outer_race, outer);
}

static bool is_a_bevel_pair(const void *record)
{
    ts_bevel_pair pair;
    return ts_bevel_pair_solve(record, &pair, NULL) == TS_BEVEL_FINE;
}

static void an_impossible_bevel_pair_is_refused(void **state)
{
    (void)state;
    const ts_bevel_pair_input sound = {27, 41, 2.5e-3, 1.5708, 0.35, 0.6, 18e-3};
    static const spoil_at     low[] = {
            SPOIL(ts_bevel_pair_input, m_et, 0.0), SPOIL(ts_bevel_pair_input, Sigma, 0.0),
            SPOIL(ts_bevel_pair_input, alpha_n, 0.0), SPOIL(ts_bevel_pair_input, beta_m, -0.1),
            SPOIL(ts_bevel_pair_input, b, -1e-3)};
    static const spoil_at high[] = {
        SPOIL(ts_bevel_pair_input, m_et, 2e3), SPOIL(ts_bevel_pair_input, Sigma, 3.15),
        SPOIL(ts_bevel_pair_input, alpha_n, 1.6), SPOIL(ts_bevel_pair_input, beta_m, 1.6),
        SPOIL(ts_bevel_pair_input, b, 1.0)};
    ts_bevel_pair_input odd = sound;

    EACH(sound, is_a_bevel_pair, low);
    EACH(sound, is_a_bevel_pair, high);
    odd.z_1 = 0;
    assert_false(is_a_bevel_pair(&odd));
    odd.z_1 = 27;
    odd.z_2 = 2000000;
    assert_false(is_a_bevel_pair(&odd));
}

typedef struct touch {
    double Q, R_x, R_y, E_r;
} touch;

static bool has_ellipse(const void *record)
{
    const touch *h = record;
    return isfinite(ts_hertz_point(h->Q, h->R_x, h->R_y, h->E_r, NULL).p_max);
}

static void no_pressure_comes_of_an_impossible_touch(void **state)
{
    (void)state;
    const touch           sound  = {1000.0, 5e-3, 20e-3, 226e9};
    static const spoil_at low[]  = {SPOIL(touch, Q, -1.0), SPOIL(touch, R_x, 0.0),
                                    SPOIL(touch, R_y, 0.0), SPOIL(touch, E_r, 0.0)};
    static const spoil_at high[] = {SPOIL(touch, Q, 2e15), SPOIL(touch, R_x, 1e12),
                                    SPOIL(touch, R_y, 1e12), SPOIL(touch, E_r, 2e18)};

    EACH(sound, has_ellipse, low);
    EACH(sound, has_ellipse, high);
}

typedef struct beam {
    ts_beam         whole;
    ts_beam_section sections[2];
    ts_beam_support supports[2];
} beam;

static bool is_a_beam(const void *record)
{
    static ts_beam_frame frame;
    beam                 it = *(const beam *)record;
    it.whole.sections       = it.sections;
    it.whole.section_count  = 2;
    it.whole.supports       = it.supports;
    it.whole.support_count  = 2;
    return ts_beam_prepare(&it.whole, &frame) == TS_BEAM_FINE;
}

static void an_impossible_beam_is_refused(void **state)
{
    (void)state;
    const beam            sound = {.whole    = {.E = 207e9, .G = 79.6e9},
                                   .sections = {{0.0, 0.2, 0.03, 0.01}, {0.2, 0.4, 0.025, 0.0}},
                                   .supports = {{0.05, 1e8, 0.0, true}, {0.35, 1e8, 0.0, false}}};
    static const spoil_at all[] = {
        SPOIL(beam, whole.E, 0.0),           SPOIL(beam, whole.G, 0.0),
        SPOIL(beam, sections[0].x_1, -2e3),  SPOIL(beam, sections[1].x_2, 2e3),
        SPOIL(beam, sections[0].d_i, -1e-3), SPOIL(beam, sections[0].d_o, 5e-3),
        SPOIL(beam, sections[1].x_1, 0.21),  SPOIL(beam, supports[0].k_r, 0.0),
        SPOIL(beam, supports[1].k_t, -1.0),  SPOIL(beam, supports[1].x, 0.05)};
    static const spoil_at far[] = {SPOIL(beam, whole.E, 2e15), SPOIL(beam, sections[0].d_o, 2e3),
                                   SPOIL(beam, supports[0].x, 0.5),
                                   SPOIL(beam, supports[0].x, -0.1)};
    beam                  two   = sound;

    EACH(sound, is_a_beam, all);
    EACH(sound, is_a_beam, far);
    two.supports[1].locates = true; /* only one may */
    assert_false(is_a_beam(&two));
}

static bool has_band(const void *record)
{
    const ts_neck_limits limits = ts_neck_band(record, NULL);
    return isfinite(limits.low) && isfinite(limits.high);
}

static void no_band_comes_of_an_impossible_neck(void **state)
{
    (void)state;
    const ts_shear_neck   sound = {.d        = {TS_SPREAD_NORMAL, 9.9e-3, 10.1e-3, 10e-3, 3e-5},
                                   .d_i      = {TS_SPREAD_UNIFORM, 3.9e-3, 4.1e-3, 4e-3, 0.0},
                                   .Ftu      = {TS_SPREAD_NORMAL, 900e6, 1100e6, 1000e6, 30e6},
                                   .ratio    = {TS_SPREAD_UNIFORM, 0.58, 0.62, 0.6, 0.0},
                                   .warmth   = {TS_SPREAD_UNIFORM, 0.95, 1.0, 0.97, 0.0},
                                   .yielding = {TS_SPREAD_UNIFORM, 0.8, 1.0, 0.9, 0.0},
                                   .K_ts     = 1.2};
    static const spoil_at all[] = {
        SPOIL(ts_shear_neck, d.low, 4.05e-3),     SPOIL(ts_shear_neck, d.high, 9.8e-3),
        SPOIL(ts_shear_neck, d.mean, 9.8e-3),     SPOIL(ts_shear_neck, d.sigma, 0.0),
        SPOIL(ts_shear_neck, d_i.low, -1e-3),     SPOIL(ts_shear_neck, d_i.high, 3.8e-3),
        SPOIL(ts_shear_neck, Ftu.low, 0.0),       SPOIL(ts_shear_neck, Ftu.high, 2e15),
        SPOIL(ts_shear_neck, ratio.low, 0.0),     SPOIL(ts_shear_neck, warmth.low, 0.0),
        SPOIL(ts_shear_neck, yielding.low, -0.1), SPOIL(ts_shear_neck, yielding.high, 1.1),
        SPOIL(ts_shear_neck, K_ts, 0.9)};
    static const spoil_at far[] = {SPOIL(ts_shear_neck, d.mean, 10.2e-3),
                                   SPOIL(ts_shear_neck, d.low, -2e15)};

    EACH(sound, has_band, all);
    EACH(sound, has_band, far);
}

/* ---- oil ------------------------------------------------------------------------------------- */

typedef struct viscosity {
    double nu_a, theta_a, nu_b, theta_b;
} viscosity;

static bool has_law(const void *record)
{
    const viscosity *v = record;
    return isfinite(ts_viscosity_law_of(v->nu_a, v->theta_a, v->nu_b, v->theta_b, NULL).B);
}

static void no_viscosity_law_comes_of_impossible_points(void **state)
{
    (void)state;
    const viscosity       sound  = {27e-6, 313.15, 5e-6, 373.15};
    static const spoil_at low[]  = {SPOIL(viscosity, nu_a, 0.3e-6), SPOIL(viscosity, nu_b, 0.3e-6),
                                    SPOIL(viscosity, theta_a, 0.5), SPOIL(viscosity, theta_b, 0.5)};
    static const spoil_at high[] = {SPOIL(viscosity, nu_a, 2e3), SPOIL(viscosity, nu_b, 2e3),
                                    SPOIL(viscosity, theta_a, 2e5), SPOIL(viscosity, theta_b, 2e5),
                                    SPOIL(viscosity, theta_b, 313.15)};

    EACH(sound, has_law, low);
    EACH(sound, has_law, high);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(no_capacity_comes_of_an_impossible_bearing),
        cmocka_unit_test(no_capacity_comes_of_an_impossible_scatter),
        cmocka_unit_test(no_stress_comes_of_an_impossible_spline),
        cmocka_unit_test(no_wear_comes_of_less_than_nothing),
        cmocka_unit_test(no_chance_comes_of_an_impossible_neck),
        cmocka_unit_test(no_frequency_comes_of_an_impossible_web),
        cmocka_unit_test(an_impossible_rotor_is_refused),
        cmocka_unit_test(an_impossible_train_is_not_run),
        cmocka_unit_test(no_curvature_comes_of_an_impossible_race),
        cmocka_unit_test(an_impossible_bevel_pair_is_refused),
        cmocka_unit_test(no_pressure_comes_of_an_impossible_touch),
        cmocka_unit_test(an_impossible_beam_is_refused),
        cmocka_unit_test(no_band_comes_of_an_impossible_neck),
        cmocka_unit_test(no_viscosity_law_comes_of_impossible_points),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
