/* bank/bind_shaft.c: published cases about shafts, their necks and their supports. */
#include "bank/bank_case.h"
#include "element/notch_factor.h"
#include "element/round_torsion.h"
#include "element/shaft_beam.h"
#include "rating/shaft/distortion_energy.h"

#include <math.h>

static double length(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_LENGTH);
}

static double stress(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_STRESS);
}

static double torque(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_TORQUE);
}

static double number(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_NUMBER);
}

/* ---- distortion energy ----------------------------------------------------------------------- */

static void four_lines(ts_case *c)
{
    static const char *const names[TS_MEAN_LINE_COUNT] = {
        [TS_MEAN_GOODMAN]   = "goodman",
        [TS_MEAN_GERBER]    = "gerber",
        [TS_MEAN_ELLIPTIC]  = "elliptic",
        [TS_MEAN_SODERBERG] = "soderberg",
    };
    const ts_shaft_moments moments = {
        .M_a  = torque(c, "Ma"),
        .M_m  = torque(c, "Mm"),
        .T_a  = torque(c, "Ta"),
        .T_m  = torque(c, "Tm"),
        .K_f  = number(c, "Kf"),
        .K_fs = number(c, "Kfs"),
    };
    const ts_shaft_strength   strength = {stress(c, "Se"), stress(c, "Sut"), stress(c, "Sy")};
    const double              n_f      = number(c, "n");
    const ts_shaft_equivalent both     = ts_shaft_equivalent_of(&moments, NULL);

    ts_case_computed(c, "A", both.A, TS_KIND_TORQUE);
    ts_case_computed(c, "B", both.B, TS_KIND_TORQUE);
    for (int line = 0; line < TS_MEAN_LINE_COUNT; line++)
        ts_case_computed(c, names[line],
                         ts_shaft_diameter((ts_mean_line)line, both, &strength, n_f, NULL),
                         TS_KIND_LENGTH);
}

/* Bending reverses, torsion is steady. */
static void shoulder(ts_case *c)
{
    const ts_shaft_moments moments = {
        .M_a  = torque(c, "M"),
        .T_m  = torque(c, "T"),
        .K_f  = number(c, "Kf"),
        .K_fs = number(c, "Kfs"),
    };
    const ts_shaft_strength strength = {stress(c, "Se"), stress(c, "Sut"), stress(c, "Sy")};
    const double            d        = length(c, "d");
    const double            sigma    = ts_shaft_first_cycle(&moments, d, NULL);

    ts_case_computed(c, "n",
                     ts_shaft_safety(TS_MEAN_GOODMAN, ts_shaft_equivalent_of(&moments, NULL),
                                     &strength, d, NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "sigma", sigma, TS_KIND_STRESS);
    ts_case_computed(c, "ny", strength.S_y / sigma, TS_KIND_NUMBER);
}

/* The case takes the yield in shear, so that the ellipse sees sqrt(3) of it in tension. */
static void ellipse(ts_case *c)
{
    const ts_shaft_moments moments = {
        .M_a = torque(c, "M"), .T_m = torque(c, "T"), .K_f = 1.0, .K_fs = 1.0};
    const ts_shaft_strength strength = {
        .S_e = stress(c, "Se"), .S_ut = 1.0, .S_y = sqrt(3.0) * stress(c, "Sys")};

    ts_case_computed(c, "n",
                     ts_shaft_safety(TS_MEAN_ELLIPTIC, ts_shaft_equivalent_of(&moments, NULL),
                                     &strength, length(c, "d"), NULL),
                     TS_KIND_NUMBER);
}

static void endurance(ts_case *c)
{
    const double S_ut = stress(c, "Sut");
    const double k_a = ts_surface_factor(S_ut, NULL), k_b = ts_size_factor(length(c, "d"), NULL);

    ts_case_computed(c, "ka", k_a, TS_KIND_NUMBER);
    ts_case_computed(c, "kb", k_b, TS_KIND_NUMBER);
    ts_case_computed(c, "Se", ts_endurance_limit(S_ut, k_a, k_b, NULL), TS_KIND_STRESS);
}

/* Yield in shear by distortion energy as the book rounds it, 0.577. */
static void old_code(ts_case *c)
{
    const double T = torque(c, "T");
    const double T_e =
        ts_equivalent_torque(number(c, "Kb"), torque(c, "MC"), number(c, "Kt"), T, NULL);
    const double tau = 0.577 * stress(c, "Sy") / number(c, "FOS");
    const double d   = ts_torsion_diameter(T_e, tau, NULL);
    const double J   = ts_torsion_J(d, 0.0, NULL);

    ts_case_computed(c, "d", d, TS_KIND_LENGTH);
    ts_case_computed(c, "theta", ts_torsion_twist(T, length(c, "L"), stress(c, "G"), J, NULL),
                     TS_KIND_ANGLE);
}

/* ---- torsion --------------------------------------------------------------------------------- */

static void part_yield(ts_case *c)
{
    const ts_part_yield part = ts_part_yield_of(torque(c, "T"), length(c, "d"), length(c, "L"),
                                                stress(c, "G"), stress(c, "tauY"), NULL);

    ts_case_computed(c, "TY", part.T_Y, TS_KIND_TORQUE);
    ts_case_computed(c, "rhoY", part.rho_Y, TS_KIND_LENGTH);
    ts_case_computed(c, "phi", part.twist, TS_KIND_ANGLE);
    ts_case_computed(c, "phi_p", part.twist_p, TS_KIND_ANGLE);
}

static void plastic_tube(ts_case *c)
{
    const double d_o = 2.0 * length(c, "ro"), d_i = 2.0 * length(c, "ri"), tau = stress(c, "tauY");

    ts_case_computed(c, "Ty", ts_torque_elastic(tau, d_o, d_i, NULL), TS_KIND_TORQUE);
    /* A thousand pounds times an inch is no unit of the whitelist. */
    if (ts_case_expects_in(c, "Tp", "kip.in"))
        ts_case_counted(c, "Tp",
                        ts_from_si(ts_torque_plastic(tau, d_o, d_i, NULL),
                                   ts_unit_named(TS_TEXT("lbf.in"), TS_KIND_TORQUE)) /
                            1000.0);
    else
        ts_case_computed(c, "Tp", ts_torque_plastic(tau, d_o, d_i, NULL), TS_KIND_TORQUE);
}

static void tube(ts_case *c)
{
    const double d_o = length(c, "do"), d_i = length(c, "di"), T = torque(c, "T");
    const double J = ts_torsion_J(d_o, d_i, NULL);

    ts_case_computed(c, "tau", ts_torsion_stress(T, d_o, d_i, NULL), TS_KIND_STRESS);
    if (ts_case_expects_in(c, "theta", "rad/m"))
        ts_case_counted(c, "theta", ts_torsion_twist(T, 1.0, stress(c, "G"), J, NULL));
}

static void tube_with_safety(ts_case *c)
{
    const double d_o = length(c, "do"), d_i = length(c, "di"), SF = number(c, "SF");
    const double J = ts_torsion_J(d_o, d_i, NULL);

    ts_case_computed(c, "T1", ts_torque_elastic(stress(c, "tauY") / SF, d_o, d_i, NULL),
                     TS_KIND_TORQUE);
    ts_case_computed(c, "T2",
                     ts_torsion_of_twist(ts_case_given(c, "psi", TS_KIND_ANGLE) / SF,
                                         length(c, "L"), stress(c, "G"), J, NULL),
                     TS_KIND_TORQUE);
}

static void groove(ts_case *c)
{
    ts_case_computed(c, "K",
                     ts_groove_torsion_factor(TS_GROOVE_PILKEY, length(c, "D"), length(c, "d"),
                                              length(c, "r"), NULL),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "K2",
                     ts_groove_torsion_factor(TS_GROOVE_PILKEY, length(c, "D2"), length(c, "d2"),
                                              length(c, "r2"), NULL),
                     TS_KIND_NUMBER);
}

/* ---- beams ----------------------------------------------------------------------------------- */

typedef struct thin_shaft {
    ts_beam_section section;
    ts_beam_support supports[3];
    double          places[2];
    ts_beam_load    loads[2];
    int             supports_given, loads_given;
    double          E;
} thin_shaft;

static ts_beam_result solve(ts_case *c, const thin_shaft *shaft)
{
    const ts_beam beam = {
        .sections      = &shaft->section,
        .supports      = shaft->supports,
        .places        = shaft->places,
        .section_count = 1,
        .support_count = shaft->supports_given,
        .place_count   = shaft->loads_given,
        .E             = shaft->E,
        .G             = shaft->E / 2.6,
    };
    ts_beam_frame  frame;
    ts_beam_result result;
    ts_beam_fault  fault = ts_beam_prepare(&beam, &frame);

    if (fault == TS_BEAM_FINE)
        fault = ts_beam_solve(&beam, &frame, shaft->loads, shaft->loads_given, &result);
    if (fault != TS_BEAM_FINE)
        ts_case_spoil(c, ts_beam_fault_says(fault), "the shaft:");
    return result;
}

static void slope(ts_case *c)
{
    const double     l = length(c, "l"), a = length(c, "a"), d = length(c, "d");
    const thin_shaft shaft = {
        .section        = {0.0, l, d, 0.0},
        .supports       = {{0.0, INFINITY, 0.0, true}, {l, INFINITY, 0.0, false}},
        .places         = {a},
        .loads          = {{.x = a, .F_y = ts_case_given(c, "F", TS_KIND_FORCE)}},
        .supports_given = 2,
        .loads_given    = 1,
        .E              = stress(c, "E"),
    };
    const ts_beam_result result = solve(c, &shaft);
    const double         theta  = fabs(result.right[result.count - 1].theta_y);

    ts_case_computed(c, "theta", theta, TS_KIND_ANGLE);
    ts_case_computed(c, "n_fs", 0.0008 / theta, TS_KIND_NUMBER);
}

static void three_supports(ts_case *c)
{
    const double     L = length(c, "L"), W = ts_case_given(c, "W", TS_KIND_FORCE);
    const thin_shaft shaft = {
        .section        = {0.0, 2.0 * L, 0.05, 0.0},
        .supports       = {{0.0, INFINITY, 0.0, true},
                           {L, INFINITY, 0.0, false},
                           {2.0 * L, INFINITY, 0.0, false}},
        .places         = {L / 2.0, 1.5 * L},
        .loads          = {{.x = L / 2.0, .F_y = -W}, {.x = 1.5 * L, .F_y = -W}},
        .supports_given = 3,
        .loads_given    = 2,
        .E              = 206e9,
    };
    const ts_beam_result result = solve(c, &shaft);

    ts_case_computed(c, "RA", result.reaction[0].F_y, TS_KIND_FORCE);
    ts_case_computed(c, "RB", result.reaction[1].F_y, TS_KIND_FORCE);
    ts_case_computed(c, "MB", result.left[2].M_y, TS_KIND_TORQUE);
}

static const ts_binding bindings[] = {
    {"sft-shigley8-p7-1", four_lines},
    {"sft-shigley-7-1-goodman", shoulder},
    {"sft-jindal-15-7", ellipse},
    {"sft-sm8-p7-2-se", endurance},
    {"sft-jindal-15-6", old_code},
    {"sft-beer-3-08-partial-plastic", part_yield},
    {"sft-hibbeler-5-14-plastic-hollow", plastic_tube},
    {"sft-hibbeler-5-16-plastic", plastic_tube},
    {"sft-boresi-6-1", tube},
    {"sft-boresi-6-3", tube_with_safety},
    {"sft-u-groove-torsion", groove},
    {"sft-sm8-p7-8-slope", slope},
    {"sft-three-support", three_supports},
};
TS_BINDINGS(bindings);
