/* rating/micropitting/local_film.c: how thick is the film at one point of the path of contact? */
#include "rating/micropitting/local_film.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ISO_22(what) "ISO/TS 6336-22:2018, " what " (from memory)"

static const ts_formula X_Y_formula = {
    .symbol  = "X_Y",
    .meaning = "load sharing factor",
    .unit    = "1",
    .text    = "X_bare + r_1*X_tip1 + r_2*X_tip2",
    .source  = ISO_22("load sharing factor"),
};
static const ts_formula p_formula = {
    .symbol  = "p_dynHY",
    .meaning = "local Hertz pressure with all load factors",
    .unit    = "Pa",
    .text    = "sqrt(E_r/(2*pi)*w_Bt*X_Y/(rho_n*cos(alpha_t)*cos(beta_b)))",
    .source  = ISO_22("local Hertzian contact stress"),
};
static const ts_formula v_1_formula = {
    .symbol  = "v_r1",
    .meaning = "surface speed of gear 1",
    .unit    = "m/s",
    .text    = "omega_1*rho_y1",
    .source  = ISO_22("velocities"),
};
static const ts_formula v_2_formula = {
    .symbol  = "v_r2",
    .meaning = "surface speed of gear 2",
    .unit    = "m/s",
    .text    = "omega_1*rho_y2/u",
    .source  = ISO_22("velocities"),
};
static const ts_formula theta_fl_formula = {
    .symbol  = "theta_flY",
    .meaning = "local flash temperature",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "sqrt(pi)/2*mu_mC*p_dynHY*abs(v_r1 - v_r2)/(B_M1*sqrt(v_r1) + "
               "B_M2*sqrt(v_r2))*sqrt(8*rho_n*p_dynHY/E_r)",
    .source  = ISO_22("local flash temperature"),
};
static const ts_formula theta_B_formula = {
    .symbol  = "theta_BY",
    .meaning = "local contact temperature",
    .unit    = "K",
    .text    = "theta_M + theta_flY",
    .source  = ISO_22("local contact temperature"),
};
static const ts_formula theta_formula = {
    .symbol  = "theta",
    .meaning = "temperature of the oil in the contact",
    .unit    = "K",
    .text    = "theta_BY",
    .source  = ISO_22("local sliding parameter"),
};
static const ts_formula U_formula = {
    .symbol  = "U_Y",
    .meaning = "local speed parameter",
    .unit    = "1",
    .text    = "eta_M*(v_r1 + v_r2)/(2*E_r*rho_n)",
    .source  = ISO_22("local velocity parameter"),
};
static const ts_formula W_formula = {
    .symbol  = "W_Y",
    .meaning = "local load parameter",
    .unit    = "1",
    .text    = "2*pi*p_dynHY^2/E_r^2",
    .source  = ISO_22("local load parameter"),
};
static const ts_formula S_formula = {
    .symbol  = "S_GFY",
    .meaning = "local sliding parameter",
    .unit    = "1",
    .text    = "alpha_theta*eta/(alpha_M*eta_M)",
    .source  = ISO_22("local sliding parameter"),
};
static const ts_formula h_formula = {
    .symbol  = "h_Y",
    .meaning = "local film thickness",
    .unit    = "m",
    .text    = "1.6*rho_n*G_M^0.6*U_Y^0.7*W_Y^-0.13*S_GFY^0.22",
    .source  = ISO_22("local lubricant film thickness"),
};
static const ts_formula lambda_formula = {
    .symbol  = "lambda_GFY",
    .meaning = "local specific film thickness",
    .unit    = "1",
    .text    = "h_Y/Ra",
    .source  = ISO_22("local specific lubricant film thickness"),
};

/* Beyond it the law for the stiffness of the oil under pressure has no meaning. */
static const double theta_most = 700.0;

static double share_at(const ts_micropitting_prepared *p, const ts_film_case *load, int point,
                       ts_workings *workings)
{
    const double X_bare = p->share.bare[point], X_tip1 = p->share.tip_1[point];
    const double X_tip2 = p->share.tip_2[point], r_1 = load->r_1, r_2 = load->r_2;
    const double X_Y = X_bare + r_1 * X_tip1 + r_2 * X_tip2;

    if (!(X_Y > 1e-12)) /* full relief: what is left are bits of rounding */
        return 0.0;
    return TS_STEP(workings, X_Y_formula, X_Y, X_bare, r_1, X_tip1, r_2, X_tip2);
}

static double pressure_at(const ts_micropitting_prepared *p, double w_Bt, double X_Y, double rho_n,
                          ts_workings *workings)
{
    const double alpha_t = p->pair.alpha_t, beta_b = p->pair.beta_b, E_r = p->E_r;
    const double curved = rho_n * cos(alpha_t) * cos(beta_b);

    return TS_STEP(workings, p_formula, sqrt(E_r / (2.0 * pi) * w_Bt * X_Y / curved), E_r, w_Bt,
                   X_Y, rho_n, alpha_t, beta_b);
}

ts_local_film ts_film_at(const ts_micropitting_prepared *prepared, const ts_film_case *load,
                         int point, ts_workings *workings)
{
    const double rho_y1 = prepared->path.rho_1[point], rho_y2 = prepared->path.rho_2[point];
    const double rho_n = prepared->path.rho_n[point], u = prepared->path.u;
    const double omega_1 = load->omega_1, mu_mC = load->mu_m, theta_M = load->theta_M;
    const double E_r = prepared->E_r, Ra = prepared->Ra, G_M = load->G_M;
    const double B_M1 = prepared->mesh.gear[0].B_M, B_M2 = prepared->mesh.gear[1].B_M;
    const double eta_M = load->eta_M, alpha_M = load->alpha_M;

    const double X_Y = share_at(prepared, load, point, workings);
    if (!(X_Y > 0.0))
        return (ts_local_film){theta_M, INFINITY, INFINITY};
    const double p_dynHY = pressure_at(prepared, load->w_Bt, X_Y, rho_n, workings);
    const double v_r1    = TS_STEP(workings, v_1_formula, omega_1 * rho_y1, omega_1, rho_y1);
    const double v_r2    = TS_STEP(workings, v_2_formula, omega_1 * rho_y2 / u, omega_1, rho_y2, u);
    const double taken   = B_M1 * sqrt(v_r1) + B_M2 * sqrt(v_r2);
    const double theta_flY = TS_STEP(workings, theta_fl_formula,
                                     sqrt(pi) / 2.0 * mu_mC * p_dynHY * fabs(v_r1 - v_r2) / taken *
                                         sqrt(8.0 * rho_n * p_dynHY / E_r),
                                     mu_mC, p_dynHY, v_r1, v_r2, B_M1, B_M2, rho_n, E_r);
    const double theta_BY =
        TS_STEP(workings, theta_B_formula, theta_M + theta_flY, theta_M, theta_flY);
    if (!(theta_BY < theta_most))
        return (ts_local_film){theta_BY, NAN, NAN};

    const double theta       = TS_STEP(workings, theta_formula, theta_BY, theta_BY);
    const double eta         = ts_film_viscosity(&prepared->law, theta, workings);
    const double alpha_theta = ts_film_pressure_coefficient(&prepared->law, theta, workings);
    const double U_Y = TS_STEP(workings, U_formula, eta_M * (v_r1 + v_r2) / (2.0 * E_r * rho_n),
                               eta_M, v_r1, v_r2, E_r, rho_n);
    const double W_Y =
        TS_STEP(workings, W_formula, 2.0 * pi * p_dynHY * p_dynHY / (E_r * E_r), p_dynHY, E_r);
    const double S_GFY = TS_STEP(workings, S_formula, alpha_theta * eta / (alpha_M * eta_M),
                                 alpha_theta, eta, alpha_M, eta_M);
    const double h_Y =
        TS_STEP(workings, h_formula,
                1.6 * rho_n * pow(G_M, 0.6) * pow(U_Y, 0.7) * pow(W_Y, -0.13) * pow(S_GFY, 0.22),
                rho_n, G_M, U_Y, W_Y, S_GFY);
    return (ts_local_film){theta_BY, h_Y, TS_STEP(workings, lambda_formula, h_Y / Ra, h_Y, Ra)};
}
