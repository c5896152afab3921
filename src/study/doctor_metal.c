/* study/doctor_metal.c: published values of roots, shafts, bearings, splines, oil and vibration. */
#include "study/doctor_cases.h"

#include "element/involute_spline.h"
#include "element/oil_viscosity.h"
#include "element/round_torsion.h"
#include "element/shaft_beam.h"
#include "oil/jet.h"
#include "quantity/quantity.h"
#include "rating/bearing/equivalent_load.h"
#include "rating/bearing/life_weibull.h"
#include "rating/bearing/rolling_life.h"
#include "rating/iso6336/root_form.h"
#include "response/rotor.h"
#include "response/torsion.h"

#include <math.h>

#define DEGREE (3.14159265358979323846 / 180.0)

/* `value` of a unit of the whitelist, in SI. */
static double si(double value, const char *unit, ts_kind kind)
{
    return ts_to_si(value, ts_unit_named(ts_text_of(unit), kind));
}

/* ---- teeth ----------------------------------------------------------------------------------- */

/* Load at the tip of 20 teeth without shift, as tables of method C have it. */
static double form_factor(void)
{
    const ts_root_form_input in = {
        .z       = 20.0,
        .d       = 20e-3,
        .d_a     = 22e-3,
        .m_n     = 1e-3,
        .alpha_n = 20.0 * DEGREE,
        .rack    = ts_basic_rack_A,
        .load    = TS_ROOT_LOAD_TIP,
    };
    ts_root_form form;
    return ts_root_form_solve(&in, &form, NULL) ? form.Y_F : (double)NAN;
}

/* ---- shafts and splines ---------------------------------------------------------------------- */

/* Steel of 30 million psi on two supports 11 in apart, 1449 lbf at 9 in: at the far support. */
static double shaft_slope(void)
{
    const double          inch = 25.4e-3, E = si(30e6, "psi", TS_KIND_STRESS);
    const ts_beam_section section    = {0.0, 11.0 * inch, 1.875 * inch, 0.0};
    const ts_beam_support supports[] = {{0.0, INFINITY, 0.0, true},
                                        {11.0 * inch, INFINITY, 0.0, false}};
    const double          place      = 9.0 * inch;
    const ts_beam_load    load       = {.x = place, .F_y = si(1449.0, "lbf", TS_KIND_FORCE)};
    const ts_beam         beam       = {.sections      = &section,
                                        .supports      = supports,
                                        .places        = &place,
                                        .section_count = 1,
                                        .support_count = 2,
                                        .place_count   = 1,
                                        .E             = E,
                                        .G             = E / 2.6};
    ts_beam_frame         frame;
    ts_beam_result        result;
    if (ts_beam_prepare(&beam, &frame) != TS_BEAM_FINE ||
        ts_beam_solve(&beam, &frame, &load, 1, &result) != TS_BEAM_FINE)
        return NAN;
    return fabs(result.right[result.count - 1].theta_y);
}

static double tube_stress(void)
{
    return ts_torsion_stress(500.0, 50e-3, 44e-3, NULL) / 1e6;
}

static double plastic_torque(void)
{
    return ts_torque_plastic(20e6, 100e-3, 60e-3, NULL);
}

static double spline_base(void)
{
    ts_spline s;
    return ts_spline_b921(36.0, 16.0 / 25.4e-3, 30.0 * DEGREE, TS_SPLINE_FILLET_ROOT, &s, NULL)
               ? s.D_b / 25.4e-3
               : (double)NAN;
}

/* ---- bearings -------------------------------------------------------------------------------- */

static double bearing_capacity(void)
{
    return ts_scattered_capacity(&ts_shigley_scatter, 1015.0, 1248.0, 0.95, TS_LIFE_BALL, NULL);
}

static double spectrum_capacity(void)
{
    const double          rpm     = 2.0 * 180.0 * DEGREE / 60.0;
    const ts_bearing_step steps[] = {
        {3000.0, 1440.0 * rpm, 0.25}, {4000.0, 1080.0 * rpm, 0.5}, {5000.0, 720.0 * rpm, 0.25}};
    double turning = 0.0;
    for (int i = 0; i < 3; i++)
        turning += steps[i].n * steps[i].t;
    return ts_capacity_for_life(ts_mean_bearing_load(steps, 3, TS_LIFE_BALL, NULL),
                                ts_life_in_turns(10000.0 * 3600.0, turning, NULL), 1.0,
                                TS_LIFE_BALL, NULL);
}

static double life_of_two(void)
{
    return ts_life_of_set((const double[]){37037.0, 37037.0}, 2, 1.5, NULL);
}

/* ---- oil ------------------------------------------------------------------------------------- */

static double viscosity(void)
{
    const ts_viscosity_law law = ts_viscosity_law_of(32e-6, 313.15, 5.4e-6, 373.15, NULL);
    return ts_viscosity_at(&law, 353.15, NULL) * 1e6;
}

/* Out of a tank, under a head of 0.61 m and a gas of 13.78 kPa. */
static double orifice_speed(void)
{
    return ts_jet_speed(13780.0 + 900.0 * 9.81 * 0.61, 900.0, NULL);
}

/* ---- vibration ------------------------------------------------------------------------------- */

static double two_discs(void)
{
    const ts_twist_body   bodies[] = {{22.6, 0, 1.0}, {5.66, 1, 1.0}};
    const ts_twist_spring spring   = {
          0, 1, 1.0, 1.0, ts_torsion_of_twist(1.0, 0.6, 80e9, ts_torsion_J(0.1, 0.0, NULL), NULL)};
    const ts_twist_model model = {.bodies           = bodies,
                                  .springs          = &spring,
                                  .body_count       = 2,
                                  .spring_count     = 1,
                                  .coordinate_count = 2};
    ts_arena            *arena = ts_arena_open(NULL);
    ts_twist_modes       modes;
    const double omega = arena != NULL && ts_twist_solve(&model, arena, &modes) == TS_TWIST_FINE
                             ? modes.omega[1]
                             : (double)NAN;
    ts_arena_close(arena);
    return omega;
}

/* Its higher whirl at rest, in units of sqrt(3 E I/(m l^3)), where 3 I_d/(m l^2) is 1. */
static double overhung_disc(void)
{
    const double d = 0.02, l = 0.3, E = 2e11, m = 2.0;
    const double unit = sqrt(3.0 * E * (ts_torsion_J(d, 0.0, NULL) / 2.0) / (m * l * l * l));
    const double I_d  = m * l * l / 3.0;
    const ts_rotor_section section = {0.0, l, d, 0.0, d};
    const ts_rotor_disc    disc    = {l, m, 2.0 * I_d, I_d};
    const ts_rotor_bearing held    = {.x = 0.0, .k_r = 1e15, .k_t = 1e15};
    const ts_rotor         rotor   = {.sections      = &section,
                                      .section_count = 1,
                                      .discs         = &disc,
                                      .disc_count    = 1,
                                      .bearings      = &held,
                                      .bearing_count = 1,
                                      .E             = E,
                                      .G             = E / 2.6,
                                      .rho           = 1e-9,
                                      .shearless     = true,
                                      .longest       = l};
    ts_rotor_frame         frame;
    return ts_rotor_prepare(&rotor, &frame) == TS_ROTOR_FINE
               ? ts_rotor_whirl(&frame, 0.0, TS_WHIRL_FORWARD, 1, 0.0, NULL) / unit
               : (double)NAN;
}

const ts_doctor_case ts_doctor_metal[] = {
    {"strength of teeth", "form factor Y_Fa of 20 teeth",
     "Pu Lianggui et al., Mechanical Design, table 10-5", 2.80, 2e-3, form_factor},
    {"shafts and splines", "slope of a shaft at its support, rad",
     "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 8th ed., solution 7-8",
     0.0004342, 2e-4, shaft_slope},
    {"shafts and splines", "shear stress of a tube in torsion, MPa",
     "Boresi and Schmidt, Advanced Mechanics of Materials, 6th ed., example 6.1", 50.89, 1e-4,
     tube_stress},
    {"shafts and splines", "fully plastic torque of a tube, N.m",
     "Hibbeler, Mechanics of Materials, example 5.14", 4110.0, 1.5e-3, plastic_torque},
    {"shafts and splines", "base diameter of a spline of 36 teeth 16/32, in", "ANSI B92.1", 1.949,
     3e-4, spline_base},
    {"bearings", "capacity for 95 % reliability, lbf",
     "Budynas and Nisbett, Shigley's Mechanical Engineering Design, 10th ed., solution 11-5",
     12822.0, 1e-4, bearing_capacity},
    {"bearings", "capacity for three loads in turn, N", "Jindal, Machine Design, example 18-9",
     34219.0, 2e-5, spectrum_capacity},
    {"bearings", "life of two bearings of 37037 h together, h",
     "API 610, life of a system of bearings (from memory)", 23300.0, 2.2e-3, life_of_two},
    {"oil", "viscosity at 80 degC of 32 and 5.4 cSt at 40 and 100 degC, cSt",
     "ASTM D341, through two points (from memory)", 8.5, 6e-3, viscosity},
    {"oil", "speed out of an orifice under head and gas pressure, m/s",
     "speed of an orifice under head and pressure, a textbook question (from memory)", 6.53, 8e-4,
     orifice_speed},
    {"vibration", "torsion of two discs on a shaft, rad/s",
     "Tiwari, lecture notes on rotor dynamics, example 2.1", 537.97, 5e-4, two_discs},
    {"vibration", "higher whirl of an overhung disc at rest, over its unit",
     "Tiwari, lecture notes on rotor dynamics, module 5, figure 5.31", 2.73, 1.9e-3, overhung_disc},
};
const size_t ts_doctor_metal_count = sizeof ts_doctor_metal / sizeof ts_doctor_metal[0];
