/* rating/iso6336/mesh_stiffness.c: how far do teeth give way under load? */
#include "rating/iso6336/mesh_stiffness.h"

#include "base/assert.h"
#include "rating/iso6336/gear_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

/* P is the index of the pinion, W that of the wheel; a wheel with inside teeth stands for one with
 * infinitely many, and its terms go. */
#define FLEXIBILITY_EXTERNAL(P, W)                                                                 \
    "1e-9*(0.04723 + 0.15551/z_n" P " + 0.25791/z_n" W " - 0.00635*x_" P " - 0.11654*x_" P         \
    "/z_n" P " - 0.00193*x_" W " - 0.24188*x_" W "/z_n" W " + 0.00529*x_" P "^2 + 0.00182*x_" W    \
    "^2)"
#define FLEXIBILITY_INTERNAL                                                                       \
    "1e-9*(0.04723 + 0.15551/z_n1 - 0.00635*x_1 - 0.11654*x_1/z_n1 - 0.00193*x_2"                  \
    " + 0.00529*x_1^2 + 0.00182*x_2^2)"
#define FLEXIBILITY(expression)                                                                    \
    {                                                                                              \
        .symbol = "qp", .meaning = "least flexibility of a pair of teeth (1 mm um/N is 1e-9)",     \
        .unit = "m2/N", .text = (expression), .source = ISO_6336_1 "9.3.1" RECALLED,               \
    }
static const ts_formula qp_formulas[2]      = {FLEXIBILITY(FLEXIBILITY_EXTERNAL("1", "2")),
                                               FLEXIBILITY(FLEXIBILITY_EXTERNAL("2", "1"))};
static const ts_formula qp_internal_formula = FLEXIBILITY(FLEXIBILITY_INTERNAL);

double ts_tooth_flexibility(const ts_tooth_flexibility_input *in, ts_workings *workings)
{
    const double z_n1 = in->z_n1, z_n2 = in->z_n2, x_1 = in->x_1, x_2 = in->x_2;
    const bool   first = in->pinion == 0;
    const double z_p = first ? z_n1 : z_n2, z_w = first ? z_n2 : z_n1;
    const double x_p = first ? x_1 : x_2, x_w = first ? x_2 : x_1;

    if (z_n2 < 0.0) {
        const double qp = 1e-9 * (0.04723 + 0.15551 / z_n1 - 0.00635 * x_1 - 0.11654 * x_1 / z_n1 -
                                  0.00193 * x_2 + 0.00529 * (x_1 * x_1) + 0.00182 * (x_2 * x_2));
        return TS_STEP(workings, qp_internal_formula, qp, z_n1, x_1, x_2);
    }
    const double qp = 1e-9 * (0.04723 + 0.15551 / z_p + 0.25791 / z_w - 0.00635 * x_p -
                              0.11654 * x_p / z_p - 0.00193 * x_w - 0.24188 * x_w / z_w +
                              0.00529 * (x_p * x_p) + 0.00182 * (x_w * x_w));
    return TS_STEP(workings, qp_formulas[in->pinion], qp, z_n1, z_n2, x_1, x_2);
}

#define BLANK_TEXT(I) "1 + ln(max(0.2, min(1.2, b_s" I "/b_" I ")))/(5*exp(max(1, s_R" I "/m_n)/5))"
static const ts_formula C_R_formulas[2] =
    TS_OF_BOTH_GEARS("C_R", "gear blank factor", "1", BLANK_TEXT, ISO_6336_1 "9.3.1" RECALLED);

double ts_blank_factor(double b_s, double b, double s_R, double m_n, int gear,
                       ts_workings *workings)
{
    const double web = fmax(0.2, fmin(1.2, b_s / b)), rim = fmax(1.0, s_R / m_n);

    return TS_GEAR_STEP(workings, C_R_formulas, 1.0 + log(web) / (5.0 * exp(rim / 5.0)),
                        TS_OWN("b_s", b_s), TS_OWN("b_", b), TS_OWN("s_R", s_R), TS_ALL(m_n));
}

static const ts_formula C_B_formula = {
    .symbol  = "C_B",
    .meaning = "basic rack factor",
    .unit    = "1",
    .text    = "(1 + 0.5*(1.2 - h_fPs))*(1 - 0.02*(20 - alpha_n*180/pi))",
    .source  = ISO_6336_1 "9.3.1" RECALLED,
};

double ts_rack_factor(double h_fPs, double alpha_n, ts_workings *workings)
{
    const double C_B = (1.0 + 0.5 * (1.2 - h_fPs)) * (1.0 - 0.02 * (20.0 - alpha_n * 180.0 / pi));

    return TS_STEP(workings, C_B_formula, C_B, h_fPs, alpha_n);
}

/* C_M = 0.8 corrects the theory by measurements; the polynomial is that of steel at 206 GPa. */
static const ts_formula cp_100_formula = {
    .symbol  = "cp_100",
    .meaning = "single stiffness at 100 N/mm and more (1 N/(mm um) is 1 GPa)",
    .unit    = "Pa",
    .text    = "0.8*C_R*C_B*cos(beta)/qp*(2*E_1*E_2/(E_1 + E_2)/206e9)",
    .source  = ISO_6336_1 "9.3.1" RECALLED,
};

double ts_single_stiffness(const ts_single_stiffness_input *in, ts_workings *workings)
{
    const double qp = in->qp, C_R = in->C_R, C_B = in->C_B, beta = in->beta;
    const double E_1 = in->E_1, E_2 = in->E_2;
    TS_ASSERT(!(qp <= 0.0));

    const double to_steel = 2.0 * E_1 * E_2 / (E_1 + E_2) / 206e9;
    return TS_STEP(workings, cp_100_formula, 0.8 * C_R * C_B * cos(beta) / qp * to_steel, qp, C_R,
                   C_B, beta, E_1, E_2);
}

static const ts_formula cp_formula = {
    .symbol  = "cp",
    .meaning = "single stiffness",
    .unit    = "Pa",
    .text    = "cp_100",
    .source  = ISO_6336_1 "9.3.1" RECALLED,
};
static const ts_formula cp_low_formula = {
    .symbol  = "cp",
    .meaning = "single stiffness below 100 N/mm",
    .unit    = "Pa",
    .text    = "cp_100*(w_t/1e5)^0.25",
    .source  = ISO_6336_1 "9.3.1 (exponent 0.25 from memory; doubted, see docs/method/iso6336.md)",
};

double ts_single_stiffness_loaded(double cp_100, double w_t, ts_workings *workings)
{
    if (w_t < 1e5) /* N/m */
        return TS_STEP(workings, cp_low_formula, cp_100 * sqrt(sqrt(w_t / 1e5)), cp_100, w_t);
    return TS_STEP(workings, cp_formula, cp_100, cp_100);
}

static const ts_formula c_gamma_alpha_formula = {
    .symbol  = "c_gamma_alpha",
    .meaning = "mesh stiffness (1 N/(mm um) is 1 GPa)",
    .unit    = "Pa",
    .text    = "cp*(0.75*eps_alpha + 0.25)",
    .source  = ISO_6336_1 "9.3.2" RECALLED,
};
static const ts_formula c_gamma_beta_formula = {
    .symbol  = "c_gamma_beta",
    .meaning = "mesh stiffness for the load over the face width",
    .unit    = "Pa",
    .text    = "0.85*c_gamma_alpha",
    .source  = ISO_6336_1 "9.3.2" RECALLED,
};

double ts_mesh_stiffness(double cp, double eps_alpha, ts_workings *workings)
{
    return TS_STEP(workings, c_gamma_alpha_formula, cp * (0.75 * eps_alpha + 0.25), cp, eps_alpha);
}

double ts_mesh_stiffness_lead(double c_gamma_alpha, ts_workings *workings)
{
    return TS_STEP(workings, c_gamma_beta_formula, 0.85 * c_gamma_alpha, c_gamma_alpha);
}
