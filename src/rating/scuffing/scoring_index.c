/* rating/scuffing/scoring_index.c: what was the flash temperature index of older drives? */
#include "rating/scuffing/scoring_index.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define AGMA_217 "AGMA 217.01, gear scoring design guide for aerospace (from memory)"

static const ts_formula Z_t_formula = {
    .symbol  = "Z_t",
    .meaning = "scoring geometry factor, in the units of its source",
    .unit    = "1",
    .text    = "0.0175*(sqrt(rho_y1/0.0254) - sqrt(z_1/z_2*rho_y2/0.0254))*cos(alpha_t)^0.25*"
               "(0.0254/m_n)^0.25/(cos(alpha_n)^0.75*(rho_y1*rho_y2/(rho_y1 + "
               "rho_y2)/0.0254)^0.25)",
    .source  = AGMA_217,
};
static const ts_formula T_f_formula = {
    .symbol  = "T_f",
    .meaning = "flash temperature index",
    .unit    = "K",
    .text    = "T_i + 5/9*(w_te*0.0254/4.4482216152605)^0.75*50/(50 - s_rms/0.0254e-6)*abs(Z_t)*"
               "sqrt(omega_1*30/pi)/(0.0254/m_n)^0.25",
    .source  = AGMA_217,
};

double ts_scoring_geometry_factor(const ts_scoring_input *in, ts_workings *workings)
{
    const double inch   = 0.0254;
    const double rho_y1 = in->rho_1, rho_y2 = in->rho_2, z_1 = in->z_1, z_2 = in->z_2;
    const double alpha_t = in->alpha_t, alpha_n = in->alpha_n, m_n = in->m_n;

    const double slide   = sqrt(rho_y1 / inch) - sqrt(z_1 / z_2 * rho_y2 / inch);
    const double reduced = rho_y1 * rho_y2 / (rho_y1 + rho_y2) / inch;
    const double Z_t     = 0.0175 * slide * pow(cos(alpha_t), 0.25) * pow(inch / m_n, 0.25) /
                       (pow(cos(alpha_n), 0.75) * pow(reduced, 0.25));
    return TS_STEP(workings, Z_t_formula, Z_t, rho_y1, z_1, z_2, rho_y2, alpha_t, m_n, alpha_n);
}

double ts_scoring_index(double Z_t, const ts_scoring_load *load, ts_workings *workings)
{
    const double inch = 0.0254, pound = 4.4482216152605;
    const double w_te = load->w_te, omega_1 = load->omega_1, s_rms = load->s_rms;
    const double T_i = load->T_i, m_n = load->m_n;

    if (!(s_rms >= 0.0 && s_rms < 50e-6 * inch))
        return NAN;
    const double rise = pow(w_te * inch / pound, 0.75) * 50.0 / (50.0 - s_rms / (inch * 1e-6)) *
                        fabs(Z_t) * sqrt(omega_1 * 30.0 / pi) / pow(inch / m_n, 0.25);
    return TS_STEP(workings, T_f_formula, T_i + 5.0 / 9.0 * rise, T_i, w_te, s_rms, Z_t, omega_1,
                   m_n);
}
