/* bank/bind_web.c: published cases about swinging webs and their waves. */
#include "bank/bank_case.h"
#include "response/annular_plate.h"

#include <math.h>

static const double two_pi = 6.28318530717958647693;

static double number(ts_case *c, const char *name)
{
    return ts_case_given(c, name, TS_KIND_NUMBER);
}

/* lambda^2 of a whole disc: f = lambda^2/(2 pi a^2) sqrt(D/(rho h)). */
static double lambda2(ts_plate_hold hold, double nu, int n, int circles)
{
    const ts_annular_plate plate = {
        .hold = hold, .a = 1.0, .h = 0.01, .E = 2e11, .nu = nu, .rho = 7800.0};
    const double D = plate.E * 1e-6 / (12.0 * (1.0 - nu * nu));

    return ts_plate_frequency(&plate, n, circles) * two_pi / sqrt(D / (7800.0 * 0.01));
}

static void free_disc(ts_case *c)
{
    const double nu = number(c, "nu");

    ts_case_computed(c, "n2", lambda2(TS_PLATE_FREE, nu, 2, 0), TS_KIND_NUMBER);
    ts_case_computed(c, "n0", lambda2(TS_PLATE_FREE, nu, 0, 1), TS_KIND_NUMBER);
    ts_case_computed(c, "n3", lambda2(TS_PLATE_FREE, nu, 3, 0), TS_KIND_NUMBER);
}

/* w = B sqrt(E t^2/(rho d^4 (1 - nu^2))) with the diameter d: B = 4 lambda^2/sqrt(12), whatever nu.
 */
static void clamped_disc(ts_case *c)
{
    static const int modes[][2] = {{0, 0}, {1, 0}, {2, 0}, {0, 1}};

    for (int i = 0; i < 4; i++)
        ts_case_computed_as(
            c, lambda2(TS_PLATE_EDGE, 0.3, modes[i][0], modes[i][1]) * 4.0 / sqrt(12.0),
            TS_KIND_NUMBER, "B%d", i + 1);
}

static void web(ts_case *c)
{
    const ts_annular_plate plate = {.hold = TS_PLATE_HUB,
                                    .b    = ts_case_given(c, "b", TS_KIND_LENGTH),
                                    .a    = ts_case_given(c, "a", TS_KIND_LENGTH),
                                    .h    = ts_case_given(c, "h", TS_KIND_LENGTH),
                                    .E    = ts_case_given(c, "E", TS_KIND_STRESS),
                                    .nu   = number(c, "nu"),
                                    .rho  = ts_case_given(c, "rho", TS_KIND_DENSITY)};

    for (int n = 0; n < 4; n++)
        ts_case_listed(c, "f", ts_plate_frequency(&plate, n, 0), TS_KIND_FREQUENCY);
}

static void waves(ts_case *c)
{
    const double f_0 = ts_case_given(c, "f0", TS_KIND_FREQUENCY), B = number(c, "B");
    const int    z = ts_case_whole(c, "z"), n = ts_case_whole(c, "n"), k = ts_case_whole(c, "k");
    const double fore = ts_wave_speed(f_0, B, z, n, k, 1),
                 back = ts_wave_speed(f_0, B, z, n, k, -1);

    ts_case_computed(c, "rpm_forward", fore * two_pi, TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "rpm_backward", back * two_pi, TS_KIND_ROTATIONAL_SPEED);
    ts_case_computed(c, "f_fixed_forward", ts_wave_frequency(f_0, B, fore, n, 1),
                     TS_KIND_FREQUENCY);
    ts_case_computed(c, "f_fixed_backward", ts_wave_frequency(f_0, B, back, n, -1),
                     TS_KIND_FREQUENCY);
}

/* What a force fixed in space shakes in a web at this speed: a wave of n diameters that runs either
 * way, k z N = f +- n N. */
static void lines_of_force(ts_case *c)
{
    const double N = number(c, "rev_per_s");
    const int    z = ts_case_whole(c, "z"), n = ts_case_whole(c, "n"), k = ts_case_whole(c, "k");

    for (int sense = 1; sense >= -1; sense -= 2) {
        const double lines = 1.0 / ts_wave_speed(1.0, 0.0, z, n, k, sense);
        ts_case_listed(c, "lines_per_rev", lines, TS_KIND_NUMBER);
        ts_case_listed(c, "f_Hz", lines * N, TS_KIND_FREQUENCY);
    }
}

static const ts_binding bindings[] = {
    {"web-free-disc-low-modes", free_disc},
    {"web-gear-blank-nodal-diameters", web},
    {"web-travelling-wave-resonance", waves},
    {"web-disc-clamped-edge-handbook", clamped_disc},
    {"web-mesh-force-in-rotating-frame", lines_of_force},
};
TS_BINDINGS(bindings);
