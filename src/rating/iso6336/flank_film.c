/* rating/iso6336/flank_film.c: what do oil, speed and a smooth flank save? */
#include "rating/iso6336/flank_film.h"

#include "rating/iso6336/gear_step.h"

#include <math.h>

/* The constants are straight between 850 and 1200 N/mm2 and level outside. */

static const ts_formula C_ZL_formula = {
    .symbol  = "C_ZL",
    .meaning = "constant of the lubricant factor",
    .unit    = "1",
    .text    = "min(0.91, max(0.83, sigma_Hlim/4375e6 + 0.6357))",
    .source  = ISO_6336_2 "12.3.1" RECALLED,
};
static const ts_formula Z_L_formula = {
    .symbol  = "Z_L",
    .meaning = "lubricant factor",
    .unit    = "1",
    .text    = "C_ZL + 4*(1 - C_ZL)/(1.2 + 134e-6/nu_40)^2",
    .source  = ISO_6336_2 "12.3.1" RECALLED,
};
static const ts_formula C_Zv_formula = {
    .symbol  = "C_Zv",
    .meaning = "constant of the velocity factor",
    .unit    = "1",
    .text    = "min(0.93, max(0.85, sigma_Hlim/4375e6 + 0.6557))",
    .source  = ISO_6336_2 "12.3.2" RECALLED,
};
static const ts_formula Z_v_formula = {
    .symbol  = "Z_v",
    .meaning = "velocity factor",
    .unit    = "1",
    .text    = "C_Zv + 2*(1 - C_Zv)/sqrt(0.8 + 32/v)",
    .source  = ISO_6336_2 "12.3.2" RECALLED,
};

double ts_lubricant_factor(double sigma_Hlim, double nu_40, ts_workings *workings)
{
    const double C_ZL = TS_STEP(workings, C_ZL_formula,
                                fmin(0.91, fmax(0.83, sigma_Hlim / 4375e6 + 0.6357)), sigma_Hlim);
    const double thin = 1.2 + 134e-6 / nu_40;

    return TS_STEP(workings, Z_L_formula, C_ZL + 4.0 * (1.0 - C_ZL) / (thin * thin), C_ZL, nu_40);
}

double ts_velocity_constant(double sigma_Hlim, ts_workings *workings)
{
    return TS_STEP(workings, C_Zv_formula, fmin(0.93, fmax(0.85, sigma_Hlim / 4375e6 + 0.6557)),
                   sigma_Hlim);
}

double ts_velocity_factor(double C_Zv, double v, ts_workings *workings)
{
    return TS_STEP(workings, Z_v_formula, C_Zv + 2.0 * (1.0 - C_Zv) / sqrt(0.8 + 32.0 / v), C_Zv,
                   v);
}

static const ts_formula R_z10_formula = {
    .symbol  = "R_z10",
    .meaning = "mean roughness, related to a radius of 10 mm",
    .unit    = "m",
    .text    = "(R_z1 + R_z2)/2*(0.01/rho_red)^(1/3)",
    .source  = ISO_6336_2 "12.3.3" RECALLED,
};
static const ts_formula C_ZR_formula = {
    .symbol  = "C_ZR",
    .meaning = "exponent of the roughness factor",
    .unit    = "1",
    .text    = "min(0.15, max(0.08, 0.32 - 0.0002e-6*sigma_Hlim))",
    .source  = ISO_6336_2 "12.3.3" RECALLED,
};
static const ts_formula Z_R_formula = {
    .symbol  = "Z_R",
    .meaning = "roughness factor",
    .unit    = "1",
    .text    = "(3e-6/R_z10)^C_ZR",
    .source  = ISO_6336_2 "12.3.3" RECALLED,
};
static const ts_formula rho_red_formula = {
    .symbol  = "rho_red",
    .meaning = "radius of relative curvature at the pitch point",
    .unit    = "m",
    .text    = "0.5*tan(alpha_wt)*d_b1*d_b2/(d_b1 + d_b2)",
    .source  = ISO_6336_2 "12.3.3" RECALLED,
};

double ts_roughness_factor(double sigma_Hlim, double R_z1, double R_z2, double rho_red,
                           ts_workings *workings)
{
    const double R_z10 = TS_STEP(workings, R_z10_formula,
                                 (R_z1 + R_z2) / 2.0 * cbrt(0.01 / rho_red), R_z1, R_z2, rho_red);
    const double C_ZR  = TS_STEP(workings, C_ZR_formula,
                                 fmin(0.15, fmax(0.08, 0.32 - 0.0002e-6 * sigma_Hlim)), sigma_Hlim);

    return TS_STEP(workings, Z_R_formula, pow(3e-6 / R_z10, C_ZR), R_z10, C_ZR);
}

double ts_relative_radius(double d_b1, double d_b2, double alpha_wt, ts_workings *workings)
{
    return TS_STEP(workings, rho_red_formula, 0.5 * tan(alpha_wt) * d_b1 * d_b2 / (d_b1 + d_b2),
                   alpha_wt, d_b1, d_b2);
}

#define RA_TEXT(I) "R_z" I "/6"
static const ts_formula Ra_formulas[2] =
    TS_OF_BOTH_GEARS("Ra_", "mean roughness of the flank", "m", RA_TEXT,
                     "ISO 6336-2, clause 12.3: Ra is a sixth of Rz (from memory)");

double ts_mean_roughness(double R_z, int gear, ts_workings *workings)
{
    return TS_GEAR_STEP(workings, Ra_formulas, R_z / 6.0, TS_OWN("R_z", R_z));
}
