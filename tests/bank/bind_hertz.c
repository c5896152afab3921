/* bank/bind_hertz.c: published cases about pressed bodies and the films between them. */
#include "bank/bank_case.h"
#include "element/film_thickness.h"
#include "element/hertz.h"

#include <math.h>

/* Two bodies of one material. */
static double read_modulus(ts_case *c)
{
    const double E  = ts_case_given(c, "E", TS_KIND_STRESS);
    const double nu = ts_case_given(c, "nu", TS_KIND_NUMBER);

    if (!(E > 1.0 && E < 1e18 && nu >= 0.0 && nu < 0.5))
        ts_case_spoil(c, "are out of range", "E or nu");
    return ts_reduced_modulus(E, nu, E, nu, NULL);
}

/* A ball in a groove that is bent round a race. */
static void ball_in_groove(ts_case *c)
{
    const double R_b = ts_case_given(c, "Rb", TS_KIND_LENGTH);
    const double R_g = ts_case_given(c, "Rg", TS_KIND_LENGTH);
    const double R_r = ts_case_given(c, "Rr", TS_KIND_LENGTH);
    const double Q   = ts_case_given(c, "Q", TS_KIND_FORCE);
    const double E_r = read_modulus(c);

    if (!(R_b > 0.0 && R_g < -R_b && R_r > 0.0))
        ts_case_spoil(c, "are out of range: the ball must lie loosely in its groove", "the radii");
    const ts_point_contact contact = ts_hertz_point(Q, ts_reduced_radius(R_b, R_r, NULL),
                                                    ts_reduced_radius(R_b, R_g, NULL), E_r, NULL);
    ts_case_computed(c, "p0", contact.p_max, TS_KIND_STRESS);
    ts_case_computed(c, "a", contact.a, TS_KIND_LENGTH);
    ts_case_computed(c, "b", contact.b, TS_KIND_LENGTH);
}

static void circle(ts_case *c)
{
    const double Q   = ts_case_given(c, "Q", TS_KIND_FORCE);
    const double R   = ts_case_given(c, "R", TS_KIND_LENGTH);
    const double E_r = read_modulus(c);

    const ts_point_contact contact = ts_hertz_point(Q, R, R, E_r, NULL);
    ts_case_computed(c, "p0", contact.p_max, TS_KIND_STRESS);
    ts_case_computed(c, "a", contact.a, TS_KIND_LENGTH);
}

/* The coefficient has w in N/mm and R in mm. */
static void line(ts_case *c)
{
    const double w   = ts_case_given(c, "w", TS_KIND_STIFFNESS);
    const double R   = ts_case_given(c, "R", TS_KIND_LENGTH);
    const double E_r = read_modulus(c);

    const ts_line_contact contact = ts_hertz_line(w, R, E_r, NULL);
    const ts_unit        *printed = ts_unit_named(TS_TEXT("N/mm2"), TS_KIND_STRESS);
    ts_case_computed(c, "p0", contact.p_max, TS_KIND_STRESS);
    ts_case_computed(c, "coef",
                     ts_hertz_line(1.0, 1.0, E_r, NULL).p_max / sqrt(ts_to_si(1.0, printed)),
                     TS_KIND_NUMBER);
}

/* Two equal gears at the pitch point, w_t along the pitch circle. */
static void pitch_point(ts_case *c)
{
    const double r_1   = ts_case_given(c, "r1", TS_KIND_LENGTH);
    const double r_2   = ts_case_given(c, "r2", TS_KIND_LENGTH);
    const double alpha = ts_case_given(c, "alpha", TS_KIND_ANGLE);
    const double w_t   = ts_case_given(c, "w_t", TS_KIND_STIFFNESS);
    const double E_r   = read_modulus(c);

    if (!(r_1 > 0.0 && r_2 > 0.0 && alpha > 0.0 && alpha < 1.5))
        ts_case_spoil(c, "are out of range", "radii or angle");
    const double R = ts_reduced_radius(r_1 * sin(alpha), r_2 * sin(alpha), NULL);
    ts_case_computed(c, "p_max", ts_hertz_line(w_t / cos(alpha), R, E_r, NULL).p_max,
                     TS_KIND_STRESS);
}

static void insist_on_groups(ts_case *c, double U, double G, double W)
{
    if (!(U > 0.0 && G > 0.0 && W > 0.0))
        ts_case_spoil(c, "must be above 0", "the groups U, G and W");
}

static void film_at_ellipticities(ts_case *c)
{
    const double U = ts_case_given(c, "U", TS_KIND_NUMBER);
    const double G = ts_case_given(c, "G", TS_KIND_NUMBER);
    const double W = ts_case_given(c, "W", TS_KIND_NUMBER);

    insist_on_groups(c, U, G, W);
    for (int k = 1; k <= 10; k++) {
        ts_case_computed_as(c, ts_film_point_least(U, G, W, k, NULL), TS_KIND_NUMBER, "Hmin%d", k);
        ts_case_computed_as(c, ts_film_point_central(U, G, W, k, NULL), TS_KIND_NUMBER, "Hc%d", k);
    }
}

static void film_of_line(ts_case *c)
{
    const double U = ts_case_given(c, "U", TS_KIND_NUMBER);
    const double G = ts_case_given(c, "G", TS_KIND_NUMBER);
    const double W = ts_case_given(c, "W", TS_KIND_NUMBER);

    insist_on_groups(c, U, G, W);
    ts_case_computed(c, "H", ts_film_line_least(U, G, W, NULL), TS_KIND_NUMBER);
}

typedef struct rolling_ball {
    double eta_0, alpha_p, d, E_r, weight, slope;
} rolling_ball;

/* The book's own choice: the reduced radius of both directions, d/4, in every group. */
static double film_after(const rolling_ball *ball, double way)
{
    const double g = 9.80665, R = ball->d / 4.0;
    const double speed = sqrt(2.0 * g * sin(ball->slope) * way * 5.0 / 7.0);
    const double load  = ball->weight * cos(ball->slope);

    const double U = ts_film_speed_group(ball->eta_0, speed / 2.0, ball->E_r, R, NULL);
    const double G = ts_film_material_group(ball->alpha_p, ball->E_r, NULL);
    const double W = ts_film_load_group_point(load, ball->E_r, R, NULL);
    return R * ts_film_point_least(U, G, W, ts_ellipticity_brewe(R, R, NULL), NULL);
}

/* A ball that rolls down an oiled slope from rest. */
static void ball_on_slope(ts_case *c)
{
    const double pi = 3.14159265358979323846, g = 9.80665;
    rolling_ball ball = {
        .eta_0   = ts_case_given(c, "eta0", TS_KIND_NUMBER),
        .alpha_p = ts_case_given(c, "alpha", TS_KIND_NUMBER),
        .d       = ts_case_given(c, "d", TS_KIND_LENGTH),
        .E_r     = read_modulus(c),
        .slope   = ts_case_given(c, "slope", TS_KIND_ANGLE),
    };

    if (!(ball.eta_0 > 0.0 && ball.alpha_p > 0.0 && ball.d > 0.0 && ball.slope > 0.0 &&
          ball.slope < pi / 2.0))
        ts_case_spoil(c, "are out of range", "oil, ball or slope");
    ball.weight     = g * ts_case_given(c, "rho", TS_KIND_DENSITY) * pi / 6.0 * pow(ball.d, 3.0);
    const double s1 = ts_case_given(c, "s1", TS_KIND_LENGTH);
    const double s2 = ts_case_given(c, "s2", TS_KIND_LENGTH);
    if (!(ball.weight > 0.0 && s1 > 0.0 && s2 > 0.0))
        ts_case_spoil(c, "must be above 0", "density or way");
    ts_case_computed(c, "h1", film_after(&ball, s1), TS_KIND_LENGTH);
    ts_case_computed(c, "h2", film_after(&ball, s2), TS_KIND_LENGTH);
}

static const ts_binding bindings[] = {
    {"hertz-boresi-17-2", ball_in_groove},
    {"hertz-sphere-exact", circle},
    {"hertz-line-190", line},
    {"hertz_pitch", pitch_point},
    {"ehl-hd-reference", film_at_ellipticities},
    {"ehl-dh-line", film_of_line},
    {"ehl-stachowiak-ball-incline", ball_on_slope},
};
TS_BINDINGS(bindings);
