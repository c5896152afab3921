/* bank/bind_rotor.c: published cases about whirling rotors. */
#include "bank/bank_case.h"
#include "response/rotor.h"

#include <math.h>

static const double pi   = 3.14159265358979323846;
static const double inch = 0.0254, lbf = 4.4482216152605; /* NIST SP 811 */

#define RIGID 1e18 /* N/m or N.m/rad: stiff enough for a support that does not give */

static double length(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_LENGTH);
}

static double modulus(ts_case *c)
{
    return ts_case_given(c, "E", TS_KIND_STRESS);
}

static double number(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_NUMBER);
}

static double turning(ts_case *c)
{
    return ts_case_given(c, "n", TS_KIND_ROTATIONAL_SPEED);
}

static double density(ts_case *c)
{
    return ts_case_given(c, "rho", TS_KIND_DENSITY);
}

static double whirl(const ts_rotor_frame *frame, double Omega, ts_whirl_sense sense, int number)
{
    return ts_rotor_whirl(frame, Omega, sense, number, 0.0, NULL);
}

/* Stations, radii, one disc at the fifth station and two bearings, as its paper has them. */
static void nelson_mcvaugh(ts_case *c)
{
    ts_rotor_section sections[32];
    const int        count = (int)ts_case_length(c, "ro");
    ts_rotor_frame   frame;

    if (count > 32 || (int)ts_case_length(c, "stations") != count + 1)
        ts_case_spoil(c, "sections do not fit the stations", "ro");
    for (int i = 0; i < count; i++) {
        const size_t k   = (size_t)i;
        const double d_o = 2.0 * ts_case_given_at(c, "ro", k, TS_KIND_LENGTH);
        sections[i] =
            (ts_rotor_section){ts_case_given_at(c, "stations", k, TS_KIND_LENGTH),
                               ts_case_given_at(c, "stations", k + 1, TS_KIND_LENGTH), d_o,
                               2.0 * ts_case_given_at(c, "ri", k, TS_KIND_LENGTH), d_o};
    }
    const ts_rotor_disc    disc       = {sections[4].x_1, ts_case_given(c, "m_d", TS_KIND_MASS),
                                         ts_case_given(c, "I_p", TS_KIND_INERTIA),
                                         ts_case_given(c, "I_d", TS_KIND_INERTIA)};
    const double           k_b        = ts_case_given(c, "k_b", TS_KIND_STIFFNESS);
    const ts_rotor_bearing bearings[] = {{.x = sections[10].x_1 + 0.0, .k_r = k_b},
                                         {.x = sections[14].x_1 + 0.0, .k_r = k_b}};
    const ts_rotor         rotor      = {.sections      = sections,
                                         .section_count = count,
                                         .discs         = &disc,
                                         .disc_count    = 1,
                                         .bearings      = bearings,
                                         .bearing_count = 2,
                                         .E             = modulus(c),
                                         .G             = modulus(c) / 2.6,
                                         .rho           = density(c),
                                         .shearless     = true};
    if (ts_rotor_prepare(&rotor, &frame) != TS_ROTOR_FINE)
        return;
    for (int i = 0; i < 3; i++) {
        ts_case_computed_as(c, whirl(&frame, turning(c), TS_WHIRL_FORWARD, i),
                            TS_KIND_ROTATIONAL_SPEED, "F%d", i + 1);
        ts_case_computed_as(c, whirl(&frame, turning(c), TS_WHIRL_BACKWARD, i),
                            TS_KIND_ROTATIONAL_SPEED, "B%d", i + 1);
    }
}

typedef struct pinned {
    ts_rotor_section section;
    ts_rotor_bearing bearings[2];
    ts_rotor         rotor;
    ts_rotor_frame   frame;
} pinned;

static bool pin(ts_case *c, pinned *p, double d_o, double d_i, bool slopeless)
{
    const double L = length(c, "L");

    p->section     = (ts_rotor_section){0.0, L, d_o, d_i, d_o};
    p->bearings[0] = (ts_rotor_bearing){.x = 0.0, .k_r = RIGID};
    p->bearings[1] = (ts_rotor_bearing){.x = L, .k_r = RIGID};
    p->rotor       = (ts_rotor){.sections      = &p->section,
                                .section_count = 1,
                                .bearings      = p->bearings,
                                .bearing_count = 2,
                                .E             = modulus(c),
                                .G             = modulus(c) / 2.6,
                                .rho           = density(c),
                                .shearless     = true,
                                .slopeless     = slopeless};
    return ts_rotor_prepare(&p->rotor, &p->frame) == TS_ROTOR_FINE;
}

static void pinned_euler(ts_case *c)
{
    pinned p;

    if (pin(c, &p, length(c, "d"), 0.0, true))
        for (int i = 0; i < 3; i++)
            ts_case_computed_as(c, whirl(&p.frame, 0.0, TS_WHIRL_FORWARD, i),
                                TS_KIND_ROTATIONAL_SPEED, "n%d", i + 1);
}

static void pinned_spinning(ts_case *c)
{
    pinned p;

    if (!pin(c, &p, length(c, "do"), length(c, "di"), false))
        return;
    for (int i = 0; i < 2; i++) {
        ts_case_computed_as(c, whirl(&p.frame, turning(c), TS_WHIRL_FORWARD, i),
                            TS_KIND_ROTATIONAL_SPEED, "F%d", i + 1);
        ts_case_computed_as(c, whirl(&p.frame, turning(c), TS_WHIRL_BACKWARD, i),
                            TS_KIND_ROTATIONAL_SPEED, "B%d", i + 1);
    }
    ts_case_computed(c, "forward_critical_rpm",
                     ts_rotor_critical(&p.frame, TS_WHIRL_FORWARD, 0, NULL),
                     TS_KIND_ROTATIONAL_SPEED);
}

/* With the shear coefficient of the case.  What elements leave out falls with even powers of their
 * length: four divisions, three of Richardson's steps. */
static void pinned_timoshenko(ts_case *c)
{
    double w[4][3];
    pinned p;

    (void)pin(c, &p, length(c, "d"), 0.0, false);
    p.rotor.shearless = false;
    p.rotor.G         = ts_case_given(c, "G", TS_KIND_STRESS);
    p.rotor.kappa     = number(c, "kappa");
    for (int division = 0; division < 4; division++) {
        p.rotor.longest = p.section.x_2 / (double)(10 << division);
        if (ts_rotor_prepare(&p.rotor, &p.frame) != TS_ROTOR_FINE)
            return;
        for (int i = 0; i < 3; i++)
            w[division][i] = whirl(&p.frame, 0.0, TS_WHIRL_FORWARD, i) / (2.0 * pi);
    }
    for (int i = 0; i < 3; i++) {
        double power = 1.0;
        for (int step = 1; step < 4; step++) {
            power *= 4.0;
            for (int k = 3; k >= step; k--)
                w[k][i] = (power * w[k][i] - w[k - 1][i]) / (power - 1.0);
        }
        ts_case_computed_as(c, w[3][i], TS_KIND_FREQUENCY, "f%d", i + 1);
    }
}

/* ---- a shaft without weight in two bearings ---------------------------------------------------
 */

typedef struct light {
    ts_rotor_section sections[3];
    ts_rotor_disc    discs[3];
    ts_rotor_bearing bearings[2];
    ts_rotor         rotor;
    ts_rotor_frame   frame;
} light;

/* Of one diameter; further sections and discs are the caller's, who prepares it. */
static void lay_light(light *it, double L, double d, double E)
{
    *it       = (light){.sections = {{0.0, L, d, 0.0, d}},
                        .bearings = {{.x = 0.0, .k_r = RIGID}, {.x = L, .k_r = RIGID}}};
    it->rotor = (ts_rotor){.sections      = it->sections,
                           .section_count = 1,
                           .discs         = it->discs,
                           .bearings      = it->bearings,
                           .bearing_count = 2,
                           .E             = E,
                           .G             = E / 2.6,
                           .rho           = 1e-9,
                           .shearless     = true,
                           .longest       = L};
}

/* Deflection at one disc under a force of 1 at another: an unbalance that turns so slowly that no
 * inertia has a part in it. */
static double influence(const light *it, double x, double x_force)
{
    const double             slow = 1e-6;
    const ts_rotor_unbalance U    = {ts_rotor_node(&it->frame, x_force), 1.0 / (slow * slow)};
    double                   re[TS_ROTOR_NODES_MOST], im[TS_ROTOR_NODES_MOST];

    (void)ts_rotor_respond(&it->rotor, &it->frame, slow, &U, 1, re, im);
    return re[ts_rotor_node(&it->frame, x)];
}

/* Two gears, and a disc of no mass that keeps a node in the middle. */
static bool two_gears(ts_case *c, light *it)
{
    const double l = length(c, "l");

    lay_light(it, l, length(c, "d"), modulus(c));
    it->discs[0]         = (ts_rotor_disc){.x = length(c, "a1")};
    it->discs[1]         = (ts_rotor_disc){.x = length(c, "a2")};
    it->discs[2]         = (ts_rotor_disc){.x = l / 2.0};
    it->rotor.disc_count = 3;
    return ts_rotor_prepare(&it->rotor, &it->frame) == TS_ROTOR_FINE;
}

static void equivalent_loads(ts_case *c)
{
    const double l    = length(c, "l");
    const double w[2] = {ts_case_given(c, "w1", TS_KIND_FORCE),
                         ts_case_given(c, "w2", TS_KIND_FORCE)};
    light        it;

    if (!two_gears(c, &it))
        return;
    const double middle = influence(&it, l / 2.0, l / 2.0);
    const double EI     = l * l * l / (48.0 * middle);
    for (int i = 0; i < 2; i++)
        ts_case_computed_as(c, w[i] * influence(&it, it.discs[i].x, it.discs[i].x) / middle,
                            TS_KIND_FORCE, "w%dc", i + 1);
    ts_case_computed(c, "I", EI / modulus(c) / pow(inch, 4.0), TS_KIND_NUMBER);
    ts_case_computed(c, "six_EI_l", 6.0 * EI * l / (lbf * pow(inch, 3.0)), TS_KIND_NUMBER);
}

static double slowest(light *it)
{
    return ts_rotor_prepare(&it->rotor, &it->frame) == TS_ROTOR_FINE
               ? whirl(&it->frame, 0.0, TS_WHIRL_FORWARD, 0)
               : (double)NAN;
}

/* Dunkerley's and Rayleigh's bounds, of influence coefficients and of whirl speeds of the parts. */
static void two_gears_critical(ts_case *c)
{
    const double g    = number(c, "g") * inch;
    const double w[2] = {ts_case_given(c, "w1", TS_KIND_FORCE),
                         ts_case_given(c, "w2", TS_KIND_FORCE)};
    double       y[2] = {0.0}, alone[3];
    light        it;

    if (!two_gears(c, &it))
        return;
    for (int i = 0; i < 2; i++)
        for (int j = 0; j < 2; j++)
            y[i] += w[j] * influence(&it, it.discs[i].x, it.discs[j].x);
    ts_case_computed(
        c, "rayleigh",
        sqrt(g * (w[0] * y[0] + w[1] * y[1]) / (w[0] * y[0] * y[0] + w[1] * y[1] * y[1])),
        TS_KIND_ROTATIONAL_SPEED);
    for (int i = 0; i < 2; i++) {
        it.discs[i].m     = w[i] / g;
        it.discs[1 - i].m = 0.0;
        alone[i]          = slowest(&it);
        ts_case_computed_as(c, alone[i], TS_KIND_ROTATIONAL_SPEED, "omega%d%d", i + 1, i + 1);
    }
    it.discs[1].m      = 0.0;
    it.rotor.rho       = number(c, "gamma") * lbf / pow(inch, 3.0) / g;
    it.rotor.slopeless = true;
    it.rotor.longest   = 0.0;
    alone[2]           = slowest(&it);
    const double discs = 1.0 / (alone[0] * alone[0]) + 1.0 / (alone[1] * alone[1]);
    ts_case_computed(c, "shaft_alone", alone[2], TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "dunkerley", 1.0 / sqrt(discs), TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "dunkerley_with_shaft", 1.0 / sqrt(discs + 1.0 / (alone[2] * alone[2])),
                     TS_KIND_ROTATIONAL_SPEED);
}

/* End quarters of a second moment I, the middle half of twice that, and a load in the middle. */
static void lay_stepped(ts_case *c, light *it, double m)
{
    const double L = length(c, "L"), I = number(c, "I");
    const double d = pow(64.0 * I / pi, 0.25), D = pow(128.0 * I / pi, 0.25);

    lay_light(it, L, d, modulus(c));
    it->sections[0]         = (ts_rotor_section){0.0, L / 4.0, d, 0.0, d};
    it->sections[1]         = (ts_rotor_section){L / 4.0, 0.75 * L, D, 0.0, D};
    it->sections[2]         = (ts_rotor_section){0.75 * L, L, d, 0.0, d};
    it->discs[0]            = (ts_rotor_disc){.x = L / 2.0, .m = m};
    it->rotor.section_count = 3;
    it->rotor.disc_count    = 1;
}

static void stepped_deflection(ts_case *c)
{
    const double L = length(c, "L");
    light        it;

    lay_stepped(c, &it, 0.0);
    if (ts_rotor_prepare(&it.rotor, &it.frame) != TS_ROTOR_FINE)
        return;
    const double a = influence(&it, L / 2.0, L / 2.0);
    ts_case_computed(c, "coefficient", a * modulus(c) * number(c, "I") / (L * L * L),
                     TS_KIND_NUMBER);
    ts_case_computed(c, "delta", a * ts_case_given(c, "W", TS_KIND_FORCE), TS_KIND_LENGTH);
}

static void stepped_critical(ts_case *c)
{
    light it;

    lay_stepped(c, &it, ts_case_given(c, "W", TS_KIND_FORCE) / number(c, "g"));
    ts_case_computed(c, "n_cr", slowest(&it), TS_KIND_ROTATIONAL_SPEED);
}

/* a_12/a_11 of two equal discs at the share s of the span from either end: from 1/2 at the bearings
 * to 1 in the middle, rising.  The span in which it is as told, by halving, and the thickness that
 * then makes a_11 right. */
static void two_flywheels(ts_case *c)
{
    const double a_11 = number(c, "a11"), a_12 = number(c, "a12");
    const double m   = ts_case_given(c, "W", TS_KIND_FORCE) / number(c, "g");
    double       low = 1e-3, high = 0.5 - 1e-3, d = 0.02;
    light        it;

    for (int round = 0; round < 60; round++) {
        const double s = (low + high) / 2.0;
        lay_light(&it, 1.0, d, 2e11);
        it.discs[0]         = (ts_rotor_disc){.x = s};
        it.discs[1]         = (ts_rotor_disc){.x = 1.0 - s};
        it.rotor.disc_count = 2;
        if (ts_rotor_prepare(&it.rotor, &it.frame) != TS_ROTOR_FINE)
            return;
        const double a = influence(&it, s, s), b = influence(&it, 1.0 - s, s);
        *(b / a < a_12 / a_11 ? &low : &high) = s;
        d *= pow(a / a_11, 0.25);
    }
    const double lone = (it.discs[0].m = m, slowest(&it));
    it.discs[1].m     = m;
    ts_case_computed(c, "omega1", slowest(&it), TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "omega2", whirl(&it.frame, 0.0, TS_WHIRL_FORWARD, 1),
                     TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "dunkerley", lone / sqrt(2.0), TS_KIND_ROTATIONAL_SPEED);
}

/* A shaft without weight, held at one end, with a disc at the other: one element is exact. */
static bool overhang(double d, double L, double E, const ts_rotor_disc *disc, ts_rotor_frame *frame)
{
    const ts_rotor_section section = {0.0, L, d, 0.0, d};
    const ts_rotor_bearing held    = {.x = 0.0, .k_r = RIGID, .k_t = RIGID};
    const ts_rotor         rotor   = {.sections      = &section,
                                      .section_count = 1,
                                      .discs         = disc,
                                      .disc_count    = 1,
                                      .bearings      = &held,
                                      .bearing_count = 1,
                                      .E             = E,
                                      .G             = E / 2.6,
                                      .rho           = 1e-9,
                                      .shearless     = true,
                                      .longest       = L};

    return ts_rotor_prepare(&rotor, frame) == TS_ROTOR_FINE;
}

static void overhung_disc(ts_case *c)
{
    const double        L    = length(c, "L");
    const ts_rotor_disc disc = {L, ts_case_given(c, "m", TS_KIND_MASS),
                                ts_case_given(c, "Ip", TS_KIND_INERTIA),
                                ts_case_given(c, "Id", TS_KIND_INERTIA)};
    ts_rotor_frame      frame;

    if (!overhang(length(c, "d"), L, modulus(c), &disc, &frame))
        return;
    for (int i = 0; i < 2; i++) {
        ts_case_computed_as(c, whirl(&frame, turning(c), TS_WHIRL_FORWARD, i),
                            TS_KIND_ROTATIONAL_SPEED, "F%d", i + 1);
        ts_case_computed_as(c, whirl(&frame, turning(c), TS_WHIRL_BACKWARD, i),
                            TS_KIND_ROTATIONAL_SPEED, "B%d", i + 1);
        ts_case_listed(c, "bwd_critical_rpm", ts_rotor_critical(&frame, TS_WHIRL_BACKWARD, i, NULL),
                       TS_KIND_ROTATIONAL_SPEED);
    }
    ts_case_computed(c, "fwd_critical_rpm", ts_rotor_critical(&frame, TS_WHIRL_FORWARD, 0, NULL),
                     TS_KIND_ROTATIONAL_SPEED);
    ts_case_counted(c, "n_fwd_criticals", ts_rotor_criticals_below(&frame, TS_WHIRL_FORWARD, 1e5));
}

/* In units of sqrt(3 E I/(m l^3)) with mu = 3 I_d/(m l^2). */
static void overhung_at_rest(ts_case *c)
{
    const double        d = 0.02, L = 0.3, E = 2e11, m = 2.0;
    const double        I    = pi / 64.0 * d * d * d * d;
    const double        I_d  = ts_case_given(c, "mu", TS_KIND_NUMBER) * m * L * L / 3.0;
    const ts_rotor_disc disc = {L, m, 2.0 * I_d, I_d};
    const double        unit = sqrt(3.0 * E * I / (m * L * L * L));
    ts_rotor_frame      frame;

    if (!overhang(d, L, E, &disc, &frame))
        return;
    ts_case_computed(c, "nu_low", whirl(&frame, 0.0, TS_WHIRL_FORWARD, 0) / unit, TS_KIND_NUMBER);
    ts_case_computed(c, "nu_high", whirl(&frame, 0.0, TS_WHIRL_FORWARD, 1) / unit, TS_KIND_NUMBER);
}

/* ---- unbalance --------------------------------------------------------------------------------
 */

/* A point mass on a spring: a stub without weight in one bearing that holds it from tilting. */
static void jeffcott(ts_case *c)
{
    const double           zeta = ts_case_given(c, "zeta", TS_KIND_NUMBER);
    const double           m = 3.0, k = 2e6, natural = sqrt(k / m);
    const ts_rotor_section section = {0.0, 0.1, 0.05, 0.0, 0.05};
    const ts_rotor_disc    disc    = {0.0, m, 0.0, 0.0};
    const ts_rotor_bearing bearing = {
        .x = 0.0, .k_r = k, .k_t = RIGID, .c_r = 2.0 * zeta * sqrt(k * m)};
    const ts_rotor           rotor = {.sections      = &section,
                                      .section_count = 1,
                                      .discs         = &disc,
                                      .disc_count    = 1,
                                      .bearings      = &bearing,
                                      .bearing_count = 1,
                                      .E             = 2e11,
                                      .G             = 8e10,
                                      .rho           = 1e-9,
                                      .shearless     = true,
                                      .longest       = 0.1};
    const ts_rotor_unbalance U     = {0, m}; /* an eccentricity of 1 */
    ts_rotor_frame           frame;
    double                   re[TS_ROTOR_NODES_MOST], im[TS_ROTOR_NODES_MOST];

    if (ts_rotor_prepare(&rotor, &frame) != TS_ROTOR_FINE)
        return;
    for (size_t i = 0; i < ts_case_length(c, "r"); i++) {
        const double r = ts_case_given_at(c, "r", i, TS_KIND_NUMBER);
        (void)ts_rotor_respond(&rotor, &frame, r * natural, &U, 1, re, im);
        ts_case_listed(c, "amplitude", hypot(re[0], im[0]), TS_KIND_NUMBER);
        ts_case_listed(c, "phase_lag_deg", atan2(-im[0], re[0]), TS_KIND_ANGLE);
    }
    /* The peak, by halving where the amplitude still rises. */
    double low = 1.0, high = 1.2;
    while (high - low > 1e-9) {
        const double r[2] = {low + (high - low) * 0.45, low + (high - low) * 0.55};
        double       a[2];
        for (int i = 0; i < 2; i++) {
            (void)ts_rotor_respond(&rotor, &frame, r[i] * natural, &U, 1, re, im);
            a[i] = hypot(re[0], im[0]);
        }
        *(a[0] < a[1] ? &low : &high) = a[0] < a[1] ? r[0] : r[1];
    }
    (void)ts_rotor_respond(&rotor, &frame, low * natural, &U, 1, re, im);
    ts_case_computed(c, "r_peak", low, TS_KIND_NUMBER);
    ts_case_computed(c, "peak", hypot(re[0], im[0]), TS_KIND_NUMBER);
}

static const ts_binding bindings[] = {
    {"lat-nelson-mcvaugh-whirl-70000rpm", nelson_mcvaugh},
    {"lat-pinned-uniform-euler", pinned_euler},
    {"lat-pinned-rayleigh-spinning", pinned_spinning},
    {"lat-overhung-disc-whirl", overhung_disc},
    {"lat-overhung-disc-tiwari-mu1", overhung_at_rest},
    {"lat-jeffcott-unbalance", jeffcott},
    {"lat-pinned-uniform-timoshenko", pinned_timoshenko},
    {"lat-shigley-7-5-equivalent-loads", equivalent_loads},
    {"lat-shigley-7-5-critical-speeds", two_gears_critical},
    {"lat-ugural-9-6-stepped-deflection", stepped_deflection},
    {"lat-ugural-9-6-stepped-critical-speed", stepped_critical},
    {"lat-two-flywheels-symmetric", two_flywheels},
};
TS_BINDINGS(bindings);
