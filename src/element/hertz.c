/* element/hertz.c: how hard do two smooth elastic bodies press where they touch? */
#include "element/hertz.h"

#include <math.h>
#include <stdbool.h>

static const double pi = 3.14159265358979323846;

#define JOHNSON(where) "K. L. Johnson, Contact Mechanics (1985), " where " (from memory)"

static const ts_formula E_r_formula = {
    .symbol  = "E_r",
    .meaning = "reduced modulus of elasticity",
    .unit    = "Pa",
    .text    = "2/((1 - nu_1^2)/E_1 + (1 - nu_2^2)/E_2)",
    .source  = "ISO/TS 6336-20:2017, list of symbols (from memory)",
};
static const ts_formula R_formula = {
    .symbol  = "R",
    .meaning = "reduced radius of curvature",
    .unit    = "m",
    .text    = "1/(1/R_1 + 1/R_2)",
    .source  = JOHNSON("4.1"),
};
static const ts_formula b_H_formula = {
    .symbol  = "b_H",
    .meaning = "half width of the band of contact",
    .unit    = "m",
    .text    = "sqrt(8*w*R/(pi*E_r))",
    .source  = JOHNSON("4.2"),
};
static const ts_formula p_line_formula = {
    .symbol  = "p_max",
    .meaning = "greatest pressure of a line contact",
    .unit    = "Pa",
    .text    = "sqrt(w*E_r/(2*pi*R))",
    .source  = JOHNSON("4.2"),
};
static const ts_formula a_formula = {
    .symbol  = "a_H",
    .meaning = "long semi-axis of the ellipse of contact",
    .unit    = "m",
    .text    = "(6*D*Q*R_long/(pi*E_r))^(1/3)",
    .source  = JOHNSON("4.2, with D = (K - E)/e^2"),
};
static const ts_formula b_formula = {
    .symbol  = "b_H",
    .meaning = "short semi-axis of the ellipse of contact",
    .unit    = "m",
    .text    = "k_H*a_H",
    .source  = JOHNSON("4.2"),
};
static const ts_formula p_point_formula = {
    .symbol  = "p_max",
    .meaning = "greatest pressure of a point contact",
    .unit    = "Pa",
    .text    = "3*Q/(2*pi*a_H*b_H)",
    .source  = JOHNSON("4.2"),
};

double ts_reduced_modulus(double E_1, double nu_1, double E_2, double nu_2, ts_workings *workings)
{
    const double E_r = 2.0 / ((1.0 - nu_1 * nu_1) / E_1 + (1.0 - nu_2 * nu_2) / E_2);

    return TS_STEP(workings, E_r_formula, E_r, nu_1, E_1, nu_2, E_2);
}

double ts_reduced_radius(double R_1, double R_2, ts_workings *workings)
{
    return TS_STEP(workings, R_formula, 1.0 / (1.0 / R_1 + 1.0 / R_2), R_1, R_2);
}

ts_line_contact ts_hertz_line(double w, double R, double E_r, ts_workings *workings)
{
    if (!(w >= 0.0 && w < 1e15 && R > 0.0 && R < 1e12 && E_r > 0.0 && E_r < 1e18))
        return (ts_line_contact){NAN, NAN};
    return (ts_line_contact){
        .b_H   = TS_STEP(workings, b_H_formula, sqrt(8.0 * w * R / (pi * E_r)), w, R, E_r),
        .p_max = TS_STEP(workings, p_line_formula, sqrt(w * E_r / (2.0 * pi * R)), w, E_r, R),
    };
}

/* ---- the ellipse ----------------------------------------------------------------------------- */

/* Carlson's R_D(0, y, z), by duplication until the arguments are equal to a thousandth; the series
 * that is left then errs by less than 1e-17.  B. C. Carlson, Numerische Mathematik 33 (1979), 1
 * (from memory).  y, z > 0. */
static double carlson_R_D(double y, double z)
{
    double x = 0.0, sum = 0.0, weight = 1.0;

    for (;;) {
        const double mean = (x + y + 3.0 * z) / 5.0;
        const double X = (mean - x) / mean, Y = (mean - y) / mean, Z = (mean - z) / mean;

        if (fmax(fabs(X), fmax(fabs(Y), fabs(Z))) < 1e-3) {
            const double ea = X * Y, eb = Z * Z, ec = ea - eb, ed = ea - 6.0 * eb;
            const double ee = ed + ec + ec;
            const double s1 = ed * (-3.0 / 14.0 + 9.0 / 88.0 * ed - 4.5 / 26.0 * Z * ee);
            const double s2 = Z * (ee / 6.0 + Z * (-9.0 / 22.0 * ec + Z * 3.0 / 26.0 * ea));

            return 3.0 * sum + weight * (1.0 + s1 + s2) / (mean * sqrt(mean));
        }
        const double root_x = sqrt(x), root_y = sqrt(y), root_z = sqrt(z);
        const double step = root_x * (root_y + root_z) + root_y * root_z;

        sum += weight / (root_z * (z + step));
        weight /= 4.0;
        x = (x + step) / 4.0;
        y = (y + step) / 4.0;
        z = (z + step) / 4.0;
    }
}

/* (E/k^2 - K)/(K - E) without its 0/0 for the circle, k = 1. */
static double ratio_of_radii(double k)
{
    return carlson_R_D(1.0, k * k) / carlson_R_D(k * k, 1.0);
}

/* The logarithm of the ratio is nearly a straight line over that of k: false position with the
 * halving that keeps both ends moving (Illinois). */
static double axes_of_ratio(double ratio)
{
    const double goal = log(ratio);
    double       low = -log(ratio) - 1.0, high = 0.0; /* of ln k: ratio(low) > ratio > 1 */
    double       at_low = log(ratio_of_radii(exp(low))) - goal, at_high = -goal;
    double       ln_k = 0.0;

    for (int i = 0; i < 100 && high - low > 1e-15 && at_low > 0.0 && at_high < 0.0; i++) {
        ln_k             = (low * at_high - high * at_low) / (at_high - at_low);
        const double gap = log(ratio_of_radii(exp(ln_k))) - goal;

        if (gap > 0.0) {
            low    = ln_k;
            at_low = gap;
            at_high /= 2.0;
        } else {
            high    = ln_k;
            at_high = gap;
            at_low /= 2.0;
        }
        if (fabs(gap) < 1e-15)
            break;
    }
    return exp(ln_k);
}

/* Between a circle and an ellipse so slender that the contact is a line. */
static bool has_ellipse(double Q, double R_x, double R_y, double E_r)
{
    const double ratio = R_y / R_x;

    return Q >= 0.0 && Q < 1e15 && R_x > 0.0 && R_y > 0.0 && ratio > 1e-12 && ratio < 1e12 &&
           E_r > 0.0 && E_r < 1e18;
}

ts_point_contact ts_hertz_point(double Q, double R_x, double R_y, double E_r, ts_workings *workings)
{
    if (!has_ellipse(Q, R_x, R_y, E_r))
        return (ts_point_contact){NAN, NAN, NAN, NAN};

    const double R_long = fmax(R_x, R_y);
    const double k_H    = axes_of_ratio(R_long / fmin(R_x, R_y));
    const double D      = carlson_R_D(k_H * k_H, 1.0) / 3.0;

    ts_workings_row(workings, "R_long", R_long, "m", "the larger of R_x and R_y");
    ts_workings_row(workings, "k_H", k_H, "1",
                    "short over long semi-axis, found where the complete elliptic integrals K and "
                    "E satisfy (E/k^2 - K)/(K - E) = R_long/R_short: " JOHNSON("4.2"));
    ts_workings_row(workings, "D", D, "1", "(K - E)/(1 - k_H^2), complete elliptic integrals");
    const double a_H =
        TS_STEP(workings, a_formula, cbrt(6.0 * D * Q * R_long / (pi * E_r)), D, Q, R_long, E_r);
    const double b_H = TS_STEP(workings, b_formula, k_H * a_H, k_H, a_H);
    if (!(Q > 0.0))
        return (ts_point_contact){k_H, a_H, b_H, 0.0};
    return (ts_point_contact){
        .k     = k_H,
        .a     = a_H,
        .b     = b_H,
        .p_max = TS_STEP(workings, p_point_formula, 3.0 * Q / (2.0 * pi * a_H * b_H), Q, a_H, b_H),
    };
}
