/* element/tooth_volume.c: how much metal stands in the teeth of a cylindrical gear?
 */
#include "element/tooth_volume.h"

#include <math.h>

#define BY_INTEGRATION "derived: r = r_b*sqrt(1 + u^2), half angle psi_b - u + atan(u)"
#define ROOT_SHAPE                                                                                 \
    "radial flanks below the involute, a round in each corner; common practice, no source"

static const double pi = 3.14159265358979323846;

static const ts_formula u_formulas[2] = {
    {"u_F", "tangent of the profile angle where the involute begins", "1", "sqrt((r_F/r_b)^2 - 1)",
     BY_INTEGRATION},
    {"u_a", "tangent of the profile angle at the tip", "1", "sqrt((r_a/r_b)^2 - 1)",
     BY_INTEGRATION},
};
static const ts_formula A_flank_formula = {
    .symbol  = "A_flank",
    .meaning = "area of a tooth between its involutes",
    .unit    = "m2",
    .text    = "psi_b*(r_a^2 - r_F^2) - 2*r_b^2*(u_a^3/3 + u_a/2 - (1 + u_a^2)/2*atan(u_a)"
               " - u_F^3/3 - u_F/2 + (1 + u_F^2)/2*atan(u_F))",
    .source  = BY_INTEGRATION,
};
static const ts_formula J_flank_formula = {
    .symbol  = "J_flank",
    .meaning = "second moment of that area about the axis",
    .unit    = "m4",
    .text    = "psi_b*(r_a^4 - r_F^4)/2 - 2*r_b^4*(u_a^3/3 + u_a^5/5 + u_a/4 + u_a^3/12"
               " - (1 + u_a^2)^2/4*atan(u_a) - u_F^3/3 - u_F^5/5 - u_F/4 - u_F^3/12"
               " + (1 + u_F^2)^2/4*atan(u_F))",
    .source  = BY_INTEGRATION,
};
static const ts_formula A_root_formula = {
    .symbol  = "A_root",
    .meaning = "area of a tooth below its involutes",
    .unit    = "m2",
    .text    = "(psi_b - u_F + atan(u_F))*(r_F^2 - r_f^2) + (2 - pi/2)*rho^2",
    .source  = ROOT_SHAPE,
};
static const ts_formula J_root_formula = {
    .symbol  = "J_root",
    .meaning = "second moment of that area about the axis",
    .unit    = "m4",
    .text    = "(psi_b - u_F + atan(u_F))*(r_F^4 - r_f^4)/2 + (2 - pi/2)*rho^2*r_f^2",
    .source  = ROOT_SHAPE,
};
static const ts_formula A_formula = {
    .symbol  = "A_tooth",
    .meaning = "area of one tooth beyond the root circle, transverse section",
    .unit    = "m2",
    .text    = "A_flank + A_root",
    .source  = "derived: sum",
};
static const ts_formula J_formula = {
    .symbol  = "J_tooth",
    .meaning = "its second moment about the axis of the gear",
    .unit    = "m4",
    .text    = "J_flank + J_root",
    .source  = "derived: sum",
};

/* Integrals of (u - atan u) times u, and times u + u^3. */
static double area_primitive(double u)
{
    return u * u * u / 3.0 + u / 2.0 - (1.0 + u * u) / 2.0 * atan(u);
}

static double moment_primitive(double u)
{
    const double square = 1.0 + u * u;

    return u * u * u / 3.0 + u * u * u * u * u / 5.0 + u / 4.0 + u * u * u / 12.0 -
           square * square / 4.0 * atan(u);
}

ts_tooth_area ts_tooth_area_of(const ts_tooth_section *in, ts_workings *workings)
{
    const double r_b = in->r_b, r_f = in->r_f, r_F = in->r_F, r_a = in->r_a, psi_b = in->psi_b;
    const double rho = in->rho;
    const double u_F =
        TS_STEP(workings, u_formulas[0], sqrt((r_F / r_b) * (r_F / r_b) - 1.0), r_F, r_b);
    const double u_a =
        TS_STEP(workings, u_formulas[1], sqrt((r_a / r_b) * (r_a / r_b) - 1.0), r_a, r_b);
    const double A_flank =
        TS_STEP(workings, A_flank_formula,
                psi_b * (r_a * r_a - r_F * r_F) -
                    2.0 * r_b * r_b * (area_primitive(u_a) - area_primitive(u_F)),
                psi_b, r_a, r_F, r_b, u_a, u_F);
    const double J_flank =
        TS_STEP(workings, J_flank_formula,
                psi_b * (pow(r_a, 4.0) - pow(r_F, 4.0)) / 2.0 -
                    2.0 * pow(r_b, 4.0) * (moment_primitive(u_a) - moment_primitive(u_F)),
                psi_b, r_a, r_F, r_b, u_a, u_F);
    const double psi    = psi_b - u_F + atan(u_F);
    const double corner = (2.0 - pi / 2.0) * rho * rho;
    const double A_root = TS_STEP(workings, A_root_formula, psi * (r_F * r_F - r_f * r_f) + corner,
                                  psi_b, u_F, r_F, r_f, rho);
    const double J_root = TS_STEP(workings, J_root_formula,
                                  psi * (pow(r_F, 4.0) - pow(r_f, 4.0)) / 2.0 + corner * r_f * r_f,
                                  psi_b, u_F, r_F, r_f, rho);

    return (ts_tooth_area){
        .A = TS_STEP(workings, A_formula, A_flank + A_root, A_flank, A_root),
        .J = TS_STEP(workings, J_formula, J_flank + J_root, J_flank, J_root),
    };
}
