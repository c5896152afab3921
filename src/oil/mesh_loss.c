/* oil/mesh_loss.c: how much power does a mesh turn into heat? */
#include "oil/mesh_loss.h"

#include <math.h>

#define TR_2(what) "ISO/TR 14179-2:2001, " what " (from memory)"
#define AL(what)   "Anderson and Loewenthal, NASA TP-1622, " what " (from memory)"

/* ---- ISO/TR 14179-2 -------------------------------------------------------------------------- */

static const ts_formula eps_formulas[2] = {
    {
        .symbol  = "eps_1",
        .meaning = "tip contact ratio of gear 1",
        .unit    = "1",
        .text    = "(sqrt(d_a^2 - d_b^2) - d_b*tan(alpha_wt))/(2*p_bt)",
        .source  = TR_2("tip contact ratio"),
    },
    {
        .symbol  = "eps_2",
        .meaning = "tip contact ratio of gear 2",
        .unit    = "1",
        .text    = "(sqrt(d_a^2 - d_b^2) - d_b*tan(alpha_wt))/(2*p_bt)",
        .source  = TR_2("tip contact ratio"),
    },
};
static const ts_formula H_v_formula = {
    .symbol  = "H_v",
    .meaning = "tooth loss factor",
    .unit    = "1",
    .text    = "pi*(u + 1)/(z_1*u*cos(beta_b))*(1 - eps_1 - eps_2 + eps_1^2 + eps_2^2)",
    .source  = TR_2("tooth loss factor, after Ohlendorf"),
};
static const ts_formula v_SigmaC_formula = {
    .symbol  = "v_SigmaC",
    .meaning = "sum of the surface speeds at the pitch point",
    .unit    = "m/s",
    .text    = "2*v_t*sin(alpha_wt)",
    .source  = TR_2("mean coefficient of friction"),
};
static const ts_formula rho_formula = {
    .symbol  = "rho_redC",
    .meaning = "reduced radius of curvature at the pitch point",
    .unit    = "m",
    .text    = "0.5*d_1*u*sin(alpha_wt)/((u + 1)*cos(beta_b))",
    .source  = TR_2("mean coefficient of friction"),
};
static const ts_formula w_within_formula = {
    .symbol  = "w_Bt",
    .meaning = "load over face width, not below that at which friction was measured",
    .unit    = "N/m",
    .text    = "max(w_mesh, 150000)",
    .source  = TR_2("limits of the coefficient of friction"),
};
static const ts_formula v_within_formula = {
    .symbol  = "v_SigmaC",
    .meaning = "sum of the surface speeds, not above that at which friction was measured",
    .unit    = "m/s",
    .text    = "min(v_sum, 50)",
    .source  = TR_2("limits of the coefficient of friction"),
};
static const ts_formula mu_formula = {
    .symbol  = "mu_mz",
    .meaning = "mean coefficient of friction of the mesh",
    .unit    = "1",
    .text    = "0.048*(w_Bt/(1e6*v_SigmaC*rho_redC))^0.2*(1000*eta_oil)^-0.05*(1e6*Ra)^0.25*X_L",
    .source  = TR_2("mean coefficient of friction"),
};
static const ts_formula P_VZP_formula = {
    .symbol  = "P_VZP",
    .meaning = "power that sliding teeth turn into heat",
    .unit    = "W",
    .text    = "P_a*mu_mz*H_v",
    .source  = TR_2("load-dependent loss of a mesh"),
};

double ts_tip_contact_ratio(double d_a, double d_b, double alpha_wt, double p_bt, int gear,
                            ts_workings *workings)
{
    const ts_formula *formula = &eps_formulas[gear == 2];
    const double      eps     = (sqrt(d_a * d_a - d_b * d_b) - d_b * tan(alpha_wt)) / (2.0 * p_bt);

    return TS_STEP(workings, *formula, eps, d_a, d_b, alpha_wt, p_bt);
}

double ts_tooth_loss_factor(const ts_loss_mesh *mesh, ts_workings *workings)
{
    const double z_1 = mesh->z_1, u = mesh->u, beta_b = mesh->beta_b;
    const double eps_1 = mesh->eps_1, eps_2 = mesh->eps_2;
    const double H_v = 3.14159265358979323846 * (u + 1.0) / (z_1 * u * cos(beta_b)) *
                       (1.0 - eps_1 - eps_2 + eps_1 * eps_1 + eps_2 * eps_2);

    return TS_STEP(workings, H_v_formula, H_v, z_1, u, beta_b, eps_1, eps_2);
}

double ts_loss_sum_of_speeds(double v_t, double alpha_wt, ts_workings *workings)
{
    return TS_STEP(workings, v_SigmaC_formula, 2.0 * v_t * sin(alpha_wt), v_t, alpha_wt);
}

double ts_loss_radius(double d_1, double u, double alpha_wt, double beta_b, ts_workings *workings)
{
    return TS_STEP(workings, rho_formula, 0.5 * d_1 * u * sin(alpha_wt) / ((u + 1.0) * cos(beta_b)),
                   d_1, u, alpha_wt, beta_b);
}

ts_loss_friction ts_mesh_friction_within(const ts_loss_friction *in, ts_workings *workings)
{
    const double     w_mesh = in->w_Bt, v_sum = in->v_SigmaC;
    ts_loss_friction out = *in;

    out.w_Bt     = TS_STEP(workings, w_within_formula, fmax(w_mesh, 150000.0), w_mesh);
    out.v_SigmaC = TS_STEP(workings, v_within_formula, fmin(v_sum, 50.0), v_sum);
    return out;
}

double ts_mesh_friction(const ts_loss_friction *in, ts_workings *workings)
{
    const double w_Bt = in->w_Bt, v_SigmaC = in->v_SigmaC, rho_redC = in->rho_redC;
    const double eta_oil = in->eta_oil, Ra = in->Ra, X_L = in->X_L;
    const double mu_mz = 0.048 * pow(w_Bt / (1e6 * v_SigmaC * rho_redC), 0.2) *
                         pow(1000.0 * eta_oil, -0.05) * sqrt(sqrt(1e6 * Ra)) * X_L;

    return TS_STEP(workings, mu_formula, mu_mz, w_Bt, v_SigmaC, rho_redC, eta_oil, Ra, X_L);
}

double ts_mesh_loss_power(double P_a, double mu_mz, double H_v, ts_workings *workings)
{
    return TS_STEP(workings, P_VZP_formula, P_a * mu_mz * H_v, P_a, mu_mz, H_v);
}

/* ---- Anderson and Loewenthal ----------------------------------------------------------------- */

static const ts_formula f_formula = {
    .symbol  = "f",
    .meaning = "coefficient of friction of Benedict and Kelley",
    .unit    = "1",
    .text    = "0.0127*ln(29.66*w/(1000*eta_oil*V_s*V_T^2))/ln(10)",
    .source  = AL("sliding friction"),
};
static const ts_formula V_s_formula = {
    .symbol  = "V_s",
    .meaning = "mean sliding speed over the path of contact",
    .unit    = "m/s",
    .text    = "omega_1*(1 + 1/u)*g_alpha/4",
    .source  = AL("mean sliding velocity, 0.02618 n g (m + 1)/m"),
};
static const ts_formula V_T_formula = {
    .symbol  = "V_T",
    .meaning = "mean rolling speed over the path of contact",
    .unit    = "m/s",
    .text    = "abs(2*omega_1*(r_w1*sin(alpha_wt) - 0.125*g_alpha*(u - 1)/u))",
    .source  = AL("mean rolling velocity"),
};
static const ts_formula P_S_formula = {
    .symbol  = "P_S",
    .meaning = "power that sliding teeth turn into heat",
    .unit    = "W",
    .text    = "f*F_bt*V_s",
    .source  = AL("sliding loss"),
};
static const ts_formula h_formula = {
    .symbol  = "h_film",
    .meaning = "oil film that the rolling loss is computed with",
    .unit    = "m",
    .text    = "2.051e-7*(1000*eta_oil*V_T)^0.67*w^-0.067*rho_redC^0.464",
    .source  = AL("isothermal film"),
};
static const ts_formula P_R_formula = {
    .symbol  = "P_R",
    .meaning = "power that drawing the oil into the contact takes",
    .unit    = "W",
    .text    = "9e7*h_film*V_T*b",
    .source  = AL("rolling loss"),
};

double ts_sliding_friction(double w, double eta_oil, double V_s, double V_T, ts_workings *workings)
{
    if (!(w > 0.0 && eta_oil > 0.0 && V_s > 0.0 && V_T > 0.0) ||
        !(29.66 * w > 1000.0 * eta_oil * V_s * V_T * V_T))
        return (double)NAN;
    return TS_STEP(workings, f_formula,
                   0.0127 * log(29.66 * w / (1000.0 * eta_oil * V_s * V_T * V_T)) / log(10.0), w,
                   eta_oil, V_s, V_T);
}

double ts_mean_sliding(double omega_1, double u, double g_alpha, ts_workings *workings)
{
    return TS_STEP(workings, V_s_formula, omega_1 * (1.0 + 1.0 / u) * g_alpha / 4.0, omega_1, u,
                   g_alpha);
}

double ts_mean_rolling(double omega_1, double u, double g_alpha, double r_w1, double alpha_wt,
                       ts_workings *workings)
{
    const double V_T =
        fabs(2.0 * omega_1 * (r_w1 * sin(alpha_wt) - 0.125 * g_alpha * (u - 1.0) / u));

    return TS_STEP(workings, V_T_formula, V_T, omega_1, r_w1, alpha_wt, g_alpha, u);
}

double ts_sliding_power(double f, double F_bt, double V_s, ts_workings *workings)
{
    return TS_STEP(workings, P_S_formula, f * F_bt * V_s, f, F_bt, V_s);
}

double ts_rolling_film(double V_T, double eta_oil, double w, double rho_redC, ts_workings *workings)
{
    const double h_film =
        2.051e-7 * pow(1000.0 * eta_oil * V_T, 0.67) * pow(w, -0.067) * pow(rho_redC, 0.464);

    return TS_STEP(workings, h_formula, h_film, eta_oil, V_T, w, rho_redC);
}

double ts_rolling_power(double h_film, double V_T, double b, ts_workings *workings)
{
    return TS_STEP(workings, P_R_formula, 9e7 * h_film * V_T * b, h_film, V_T, b);
}
