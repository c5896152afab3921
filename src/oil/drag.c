/* oil/drag.c: what do air, oil, bearings, seals and splines take, load or no load? */
#include "oil/drag.h"

#include <math.h>

#define PI 3.14159265358979323846

/* ---- gears ----------------------------------------------------------------------------------- */

static const ts_formula loewenthal_formula = {
    .symbol  = "P_WA",
    .meaning = "power that a gear gives to air and oil around it",
    .unit    = "W",
    .text    = "2.82e-4*(1 + 2.3*F/R)*(30/pi*n)^2.8*R^4.6*(28*eta_oil + 0.019)^0.2",
    .source  = "Anderson and Loewenthal, NASA TP-1622, windage (constants from memory)",
};
static const ts_formula dawson_formula = {
    .symbol  = "P_WD",
    .meaning = "power that a gear gives to air and oil around it",
    .unit    = "W",
    .text    = "1e-17*(30/pi*n)^2.9*(0.16*(1000*d_f)^3.9 + (1000*d_f)^2.9*(1000*F)^0.75*(1000*m_n)^"
               "1.15)",
    .source  = "Dawson 1984, windage of spur gears, without a casing near (from memory)",
};
static const ts_formula churning_formula = {
    .symbol  = "M_churn",
    .meaning = "torque that a gear takes through the oil it dips into",
    .unit    = "N.m",
    .text    = "(0.063*dip/0.01 + 0.0128*(b/0.01)^3)*exp((dip/0.8 + 0.2)*v_t/10)",
    .source  = "ISO/TR 14179-2:2001, hydraulic loss of dipping gears (from memory)",
};
static const ts_formula carried_formula = {
    .symbol  = "M_churn",
    .meaning = "torque that carries the oil in the tooth spaces round and throws it off",
    .unit    = "N.m",
    .text    = "rho_oil*b*min(dip, 2.25*m_n)/2*(n*r_a)^2*r_a",
    .source =
        "derived: momentum of the oil that fills half of the tooth spaces as deep as they dip",
};
static const ts_formula thrown_formula = {
    .symbol  = "P_thrown",
    .meaning = "power that speeds the oil up to the speed of the teeth",
    .unit    = "W",
    .text    = "rho_oil*Q*v_t^2",
    .source = "derived: momentum of the oil times the speed of the teeth; half becomes heat in the "
              "mesh, half where it lands",
};

double ts_windage_by_loewenthal(double R, double F, double n, double eta_oil, ts_workings *workings)
{
    const double P_windage = 2.82e-4 * (1.0 + 2.3 * F / R) * pow(30.0 / PI * n, 2.8) * pow(R, 4.6) *
                             pow(28.0 * eta_oil + 0.019, 0.2);

    return TS_STEP(workings, loewenthal_formula, P_windage, F, R, n, eta_oil);
}

double ts_windage_by_dawson(double d_f, double F, double m_n, double n, ts_workings *workings)
{
    const double P_windage =
        1e-17 * pow(30.0 / PI * n, 2.9) *
        (0.16 * pow(1000.0 * d_f, 3.9) +
         pow(1000.0 * d_f, 2.9) * pow(1000.0 * F, 0.75) * pow(1000.0 * m_n, 1.15));

    return TS_STEP(workings, dawson_formula, P_windage, n, d_f, F, m_n);
}

double ts_churning_torque(double b, double dip, double v_t, ts_workings *workings)
{
    const double C_1 = 0.063 * dip / 0.01 + 0.0128 * (b / 0.01) * (b / 0.01) * (b / 0.01);
    const double M   = C_1 * exp((dip / 0.8 + 0.2) * v_t / 10.0);

    return TS_STEP(workings, churning_formula, M, dip, b, v_t);
}

double ts_carried_oil_torque(double b, double m_n, double r_a, double n, double rho_oil, double dip,
                             ts_workings *workings)
{
    const double M = rho_oil * b * fmin(dip, 2.25 * m_n) / 2.0 * (n * r_a) * (n * r_a) * r_a;

    return TS_STEP(workings, carried_formula, M, rho_oil, b, m_n, dip, n, r_a);
}

double ts_thrown_oil_power(double Q, double rho_oil, double v_t, ts_workings *workings)
{
    return TS_STEP(workings, thrown_formula, rho_oil * Q * v_t * v_t, rho_oil, Q, v_t);
}

/* ---- rolling bearings ------------------------------------------------------------------------ */

#define PALMGREN "Palmgren, as ISO/TR 14179-2:2001 has it (from memory)"

static const ts_formula M_0_fast_formula = {
    .symbol  = "M_0",
    .meaning = "torque that the oil in the bearing takes",
    .unit    = "N.m",
    .text    = "0.1*f_0*(3e7/pi*nu*n)^(2/3)*d_m^3",
    .source  = PALMGREN,
};
static const ts_formula M_0_slow_formula = {
    .symbol  = "M_0",
    .meaning = "torque that the oil in the bearing takes",
    .unit    = "N.m",
    .text    = "16*f_0*d_m^3",
    .source  = PALMGREN,
};
static const ts_formula P_1_formula = {
    .symbol  = "P_1",
    .meaning = "load that the friction of the bearing is computed with",
    .unit    = "N",
    .text    = "max(F_r, 0.9*F_a/tan(alpha) - 0.1*F_r)",
    .source  = "Harris, Rolling Bearing Analysis, load for the friction torque (from memory)",
};
static const ts_formula P_1_radial_formula = {
    .symbol  = "P_1",
    .meaning = "load that the friction of the bearing is computed with",
    .unit    = "N",
    .text    = "max(F_r, 3*F_a - 0.1*F_r)",
    .source  = "Harris, Rolling Bearing Analysis, load for the friction torque (from memory)",
};
static const ts_formula f_1_formula = {
    .symbol  = "f_1",
    .meaning = "factor of the load",
    .unit    = "1",
    .text    = "z*(P_0/C_0r)^y",
    .source  = "Harris, Rolling Bearing Analysis, friction torque (from memory)",
};
static const ts_formula M_1_formula = {
    .symbol  = "M_1",
    .meaning = "torque that the load of the bearing takes",
    .unit    = "N.m",
    .text    = "f_1*P_1*d_m",
    .source  = PALMGREN,
};
static const ts_formula M_mu_formula = {
    .symbol  = "M_mu",
    .meaning = "torque of the bearing by a constant coefficient of friction",
    .unit    = "N.m",
    .text    = "mu*P_1*d/2",
    .source  = "ISO/TR 14179-1:2001, bearing loss by a coefficient of friction (from memory)",
};
static const ts_formula power_formula = {
    .symbol  = "P_VL",
    .meaning = "power that the bearing turns into heat",
    .unit    = "W",
    .text    = "(M_0 + M_1)*n",
    .source  = "derived: torque times speed",
};
static const ts_formula power_mu_formula = {
    .symbol  = "P_mu",
    .meaning = "power that the bearing turns into heat by a constant coefficient of friction",
    .unit    = "W",
    .text    = "M_mu*n",
    .source  = "derived: torque times speed",
};

/* nu n below 2000 mm2/s rpm, as printed, the torque no longer falls; here where both laws meet, at
 * 160^1.5, for a torque that jumps by 0.8 % lets no balance settle. */
#define NU_N_SLOW 2023.8577025077631
double ts_bearing_drag_0(double f_0, double nu, double n, double d_m, ts_workings *workings)
{
    const double cube = d_m * d_m * d_m;

    if (3e7 / PI * nu * n < NU_N_SLOW)
        return TS_STEP(workings, M_0_slow_formula, 16.0 * f_0 * cube, f_0, d_m);
    const double root = cbrt(3e7 / PI * nu * n);
    return TS_STEP(workings, M_0_fast_formula, 0.1 * f_0 * root * root * cube, f_0, nu, n, d_m);
}

double ts_bearing_friction_load(double F_r, double F_a, double alpha, ts_workings *workings)
{
    if (!(alpha > 0.0))
        return TS_STEP(workings, P_1_radial_formula, fmax(F_r, 3.0 * F_a - 0.1 * F_r), F_r, F_a);
    return TS_STEP(workings, P_1_formula, fmax(F_r, 0.9 * F_a / tan(alpha) - 0.1 * F_r), F_r, F_a,
                   alpha);
}

double ts_bearing_f_1(double z, double y, double P_0, double C_0r, ts_workings *workings)
{
    return TS_STEP(workings, f_1_formula, z * pow(P_0 / C_0r, y), z, P_0, C_0r, y);
}

double ts_bearing_drag_1(double f_1, double P_1, double d_m, ts_workings *workings)
{
    return TS_STEP(workings, M_1_formula, f_1 * P_1 * d_m, f_1, P_1, d_m);
}

double ts_bearing_drag_by_friction(double mu, double P_1, double d, ts_workings *workings)
{
    return TS_STEP(workings, M_mu_formula, mu * P_1 * d / 2.0, mu, P_1, d);
}

double ts_bearing_power(double M_0, double M_1, double n, ts_workings *workings)
{
    return TS_STEP(workings, power_formula, (M_0 + M_1) * n, M_0, M_1, n);
}

double ts_bearing_power_by_friction(double M_mu, double n, ts_workings *workings)
{
    return TS_STEP(workings, power_mu_formula, M_mu * n, M_mu, n);
}

/* ---- seals and splines ----------------------------------------------------------------------- */

static const ts_formula seal_power_formula = {
    .symbol  = "P_VD",
    .meaning = "power that a shaft seal turns into heat",
    .unit    = "W",
    .text    = "0.1*(145 - 1.6*(theta - 273.15) + 350*ln(ln(1e6*nu_40 + 0.8)/ln(10))/ln(10))"
               "*d_sh^2*30/pi*n",
    .source  = "ISO/TR 14179-2:2001, loss of a shaft seal (from memory)",
};
static const ts_formula seal_torque_formula = {
    .symbol  = "M_seal",
    .meaning = "torque of a shaft seal of fluorocarbon rubber",
    .unit    = "N.m",
    .text    = "3.737*d_sh",
    .source  = "ISO/TR 14179-1:2001, oil seals (from memory)",
};
static const ts_formula seal_by_torque_formula = {
    .symbol  = "P_seal",
    .meaning = "power that a shaft seal turns into heat",
    .unit    = "W",
    .text    = "M_seal*n",
    .source  = "derived: torque times speed",
};
static const ts_formula spline_formula = {
    .symbol  = "k_spline",
    .meaning = "share of the power that a misaligned spline turns into heat",
    .unit    = "1",
    .text    = "2*mu_spline*phi/(pi*cos(alpha_D))",
    .source  = "derived: each tooth slides to and fro by 2 r phi a turn under the force "
               "T/(r cos(alpha_D))",
};

double ts_seal_power(double d_sh, double n, double theta, double nu_40, ts_workings *workings)
{
    const double level = 145.0 - 1.6 * (theta - 273.15) + 350.0 * log10(log10(1e6 * nu_40 + 0.8));

    if (!(level > 0.0)) /* hotter and thinner than the oils it was measured with */
        return (double)NAN;
    return TS_STEP(workings, seal_power_formula, 0.1 * level * d_sh * d_sh * 30.0 / PI * n, theta,
                   nu_40, d_sh, n);
}

double ts_seal_torque(double d_sh, ts_workings *workings)
{
    return TS_STEP(workings, seal_torque_formula, 3.737 * d_sh, d_sh);
}

double ts_seal_power_by_torque(double M_seal, double n, ts_workings *workings)
{
    return TS_STEP(workings, seal_by_torque_formula, M_seal * n, M_seal, n);
}

double ts_spline_share(double mu_spline, double phi, double alpha_D, ts_workings *workings)
{
    return TS_STEP(workings, spline_formula, 2.0 * mu_spline * phi / (PI * cos(alpha_D)), mu_spline,
                   phi, alpha_D);
}
