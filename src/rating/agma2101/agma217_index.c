/* rating/agma2101/agma217_index.c: what does the oldest scoring rule of aircraft gears say? */
#include "rating/agma2101/agma217_index.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define AGMA_217                                                                                   \
    "AGMA 217.01 (formula from memory; P_d^0.25 in Z_t derived: the printed Z_t is of a gear of "  \
    "pitch 1)"

/* The rule is in inches, pounds, rev/min and degF; 1/P_d is the module in inches. */
static const ts_formula Z_t_formula = {
    .symbol  = "Z_t",
    .meaning = "scoring geometry factor",
    .unit    = "1",
    .text   = "0.0175*(sqrt(rho_1/0.0254) - sqrt(rho_2/(0.0254*u)))*(cos(alpha_t)*0.0254/m_t)^0.25/"
              "(cos(alpha_n)^0.75*(rho_1*rho_2/((rho_1 + rho_2)*0.0254))^0.25)",
    .source = AGMA_217,
};
static const ts_formula T_f_formula = {
    .symbol  = "T_f",
    .meaning = "flash temperature index",
    .unit    = "K",
    .text    = "T_i + abs(Z_t)*(W_te/b_e*0.0254/4.4482216152605)^0.75*50/(50 - s_rms/0.0254e-6)*"
               "sqrt(omega_1*30/pi)*(m_t/0.0254)^0.25*5/9",
    .source  = AGMA_217,
};

#define INCH        0.0254
#define POUND_FORCE 4.4482216152605
#define ROUGHEST    50.0 /* microinches */

static double fourth_root(double x)
{
    return sqrt(sqrt(x));
}

double ts_agma217_geometry(const ts_agma217_point *at, ts_workings *workings)
{
    const double rho_1 = at->rho_1, rho_2 = at->rho_2, u = at->u, m_t = at->m_t;
    const double alpha_t = at->alpha_t, alpha_n = at->alpha_n;

    if (!(rho_1 > 0.0) || !(rho_2 > 0.0) || !(u > 0.0) || !(m_t > 0.0))
        return NAN;
    if (!isfinite(rho_1 + rho_2 + u + m_t) || !(cos(alpha_t) > 0.0) || !(cos(alpha_n) > 0.0))
        return NAN;
    const double slide  = sqrt(rho_1 / INCH) - sqrt(rho_2 / (INCH * u));
    const double reduce = rho_1 * rho_2 / ((rho_1 + rho_2) * INCH);
    const double Z_t    = 0.0175 * slide * fourth_root(cos(alpha_t) * INCH / m_t) /
                       (pow(cos(alpha_n), 0.75) * fourth_root(reduce));
    if (!isfinite(Z_t))
        return NAN;
    return TS_STEP(workings, Z_t_formula, Z_t, rho_1, rho_2, u, alpha_t, m_t, alpha_n);
}

double ts_agma217_flash(double Z_t, double m_t, const ts_agma217_load *load, ts_workings *workings)
{
    const double T_i = load->T_i, W_te = load->W_te, b_e = load->b_e, s_rms = load->s_rms;
    const double omega_1 = load->omega_1, microinches = s_rms / 0.0254e-6;

    if (!(W_te >= 0.0) || !(b_e > 0.0) || !(m_t > 0.0) || !(omega_1 >= 0.0) || isnan(Z_t) ||
        isnan(T_i) || !(microinches >= 0.0 && microinches < ROUGHEST))
        return NAN;
    const double load_per_inch = W_te / b_e * INCH / POUND_FORCE;
    const double rise = fabs(Z_t) * pow(load_per_inch, 0.75) * 50.0 / (ROUGHEST - microinches) *
                        sqrt(omega_1 * 30.0 / pi) * fourth_root(m_t / INCH) * 5.0 / 9.0;
    if (!isfinite(T_i + rise))
        return NAN;
    return TS_STEP(workings, T_f_formula, T_i + rise, T_i, Z_t, W_te, b_e, s_rms, omega_1, m_t);
}
