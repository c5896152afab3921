/* rating/scuffing/integral_temperature.c: how hot are two flanks on average while they touch? */
#include "rating/scuffing/integral_temperature.h"

#include <math.h>
#include <stdbool.h>

#define ISO_21(what) "ISO/TS 6336-21:2017, " what " (from memory)"

static const ts_formula X_M_formula = {
    .symbol  = "X_M",
    .meaning = "thermo-elastic factor",
    .unit    = "K.m.s^0.5/N^0.75",
    .text    = "E_r^0.25/B_M",
    .source  = ISO_21("thermo-elastic factor"),
};
static const ts_formula X_M_pair_formula = {
    .symbol  = "X_M",
    .meaning = "thermo-elastic factor of both gears",
    .unit    = "K.m.s^0.5/N^0.75",
    .text    = "E_r^0.25*(sqrt(1 + Gamma_E) + sqrt(1 - Gamma_E/u))/(B_M1*sqrt(1 + Gamma_E) + "
               "B_M2*sqrt(1 - Gamma_E/u))",
    .source  = ISO_21("thermo-elastic factor"),
};
static const ts_formula X_BE_formula = {
    .symbol  = "X_BE",
    .meaning = "geometry factor at the tip of gear 1",
    .unit    = "1",
    .text    = "0.51*sqrt(abs(u + 1))*abs(sqrt(rho_E1) - sqrt(rho_E2/u))/(rho_E1*abs(rho_E2))^0.25",
    .source  = ISO_21("geometry factor at tip of pinion"),
};
static const ts_formula X_alphabeta_formula = {
    .symbol  = "X_alphabeta",
    .meaning = "angle factor",
    .unit    = "1",
    .text    = "1.22*(sin(alpha_wt)*cos(alpha_n)*cos(beta))^0.25/sqrt(cos(alpha_wt)*cos(alpha_t))",
    .source  = ISO_21("angle factor"),
};
static const ts_formula X_Q_formula = {
    .symbol  = "X_Q",
    .meaning = "approach factor",
    .unit    = "1",
    .text    = "max(0.6, min(1, 1.4 - 4/15*eps_f/eps_a))",
    .source  = ISO_21("approach factor"),
};
static const ts_formula X_E_formula = {
    .symbol  = "X_E",
    .meaning = "running-in factor",
    .unit    = "1",
    .text    = "1 + (1 - phi_E)*30*1000*Ra/rho_redC",
    .source  = ISO_21("running-in factor"),
};
static const ts_formula theta_flaE_formula = {
    .symbol  = "theta_flaE",
    .meaning = "flash temperature at the tip of gear 1, load not shared",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "mu_mC*X_M*X_BE*X_alphabeta*(K_Bgamma*w_Bt)^0.75*sqrt(v)/abs(a_w)^0.25*X_E/(X_Q*"
               "X_Ca)",
    .source  = ISO_21("flash temperature at tip of pinion"),
};
static const ts_formula theta_flaint_formula = {
    .symbol  = "theta_flaint",
    .meaning = "mean flash temperature",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "theta_flaE*X_eps",
    .source  = ISO_21("mean flash temperature"),
};
static const ts_formula theta_M_formula = {
    .symbol  = "theta_Mint",
    .meaning = "bulk temperature by the integral method",
    .unit    = "K",
    .text    = "max(theta_oil + 0.7*X_S*theta_flaint, 273.15 + (theta_oil - 273.15 + "
               "0.7*theta_flaint)*X_S)",
    .source  = ISO_21("bulk temperature; the higher of two readings, docs/method/scuffing.md"),
};
static const ts_formula theta_int_formula = {
    .symbol  = "theta_int",
    .meaning = "integral temperature",
    .unit    = "K",
    .text    = "theta_Mint + 1.5*theta_flaint",
    .source  = ISO_21("integral temperature"),
};
static const ts_formula T_1T_formula = {
    .symbol  = "T_1T",
    .meaning = "torque of the test pinion at the load stage",
    .unit    = "N.m",
    .text    = "3.726*S_FZG^2",
    .source  = ISO_21("test A/8.3/90 of ISO 14635-1"),
};
static const ts_formula theta_MT_formula = {
    .symbol  = "theta_MT",
    .meaning = "bulk temperature of the test gears",
    .unit    = "K",
    .text    = "273.15 + 80 + 0.23*T_1T*X_L",
    .source  = ISO_21("test A/8.3/90 of ISO 14635-1"),
};
static const ts_formula theta_flaintT_formula = {
    .symbol  = "theta_flaintT",
    .meaning = "mean flash temperature of the test gears",
    .unit    = TS_UNIT_DIFFERENCE,
    .text    = "0.2*T_1T*(100/(1e6*nu_40))^0.02*X_L",
    .source  = ISO_21("test A/8.3/90 of ISO 14635-1"),
};
static const ts_formula theta_intS_formula = {
    .symbol  = "theta_intS",
    .meaning = "scuffing integral temperature",
    .unit    = "K",
    .text    = "theta_MT + 1.5*X_W*theta_flaintT",
    .source  = ISO_21("scuffing integral temperature"),
};
static const ts_formula S_intS_formula = {
    .symbol  = "S_intS",
    .meaning = "safety against scuffing, of temperatures in degrees Celsius",
    .unit    = "1",
    .text    = "(theta_intS - 273.15)/(theta_int - 273.15)",
    .source  = ISO_21("safety factor"),
};
static const ts_formula S_Sl_formula = {
    .symbol  = "S_Sl",
    .meaning = "safety against scuffing, about that of the load",
    .unit    = "1",
    .text    = "(theta_intS - theta_oil)/(theta_int - theta_oil)",
    .source  = ISO_21("safety factor"),
};

double ts_thermoelastic_factor(double E_r, double B_M, ts_workings *workings)
{
    return TS_STEP(workings, X_M_formula, sqrt(sqrt(E_r)) / B_M, E_r, B_M);
}

double ts_thermoelastic_pair(const ts_thermoelastic_input *in, ts_workings *workings)
{
    const double E_r = in->E_r, B_M1 = in->B_M1, B_M2 = in->B_M2;
    const double Gamma_E = in->Gamma_E, u = in->u;
    const double root_1 = sqrt(1.0 + Gamma_E), root_2 = sqrt(1.0 - Gamma_E / u);

    return TS_STEP(workings, X_M_pair_formula,
                   sqrt(sqrt(E_r)) * (root_1 + root_2) / (B_M1 * root_1 + B_M2 * root_2), E_r,
                   Gamma_E, u, B_M1, B_M2);
}

double ts_geometry_factor_E(double rho_E1, double rho_E2, double u, ts_workings *workings)
{
    const double X_BE = 0.51 * sqrt(fabs(u + 1.0)) * fabs(sqrt(rho_E1) - sqrt(rho_E2 / u)) /
                        sqrt(sqrt(rho_E1 * fabs(rho_E2)));

    return TS_STEP(workings, X_BE_formula, X_BE, u, rho_E1, rho_E2);
}

double ts_angle_factor(const ts_angle_factor_input *in, ts_workings *workings)
{
    const double alpha_wt = in->alpha_wt, alpha_t = in->alpha_t, alpha_n = in->alpha_n;
    const double beta  = in->beta;
    const double above = sqrt(sqrt(sin(alpha_wt) * cos(alpha_n) * cos(beta)));

    return TS_STEP(workings, X_alphabeta_formula, 1.22 * above / sqrt(cos(alpha_wt) * cos(alpha_t)),
                   alpha_wt, alpha_n, beta, alpha_t);
}

double ts_approach_factor(double eps_f, double eps_a, ts_workings *workings)
{
    if (!(eps_a > 0.0)) { /* nothing but approach */
        ts_workings_row(workings, "X_Q", 0.6, "1", ISO_21("approach factor"));
        return 0.6;
    }
    return TS_STEP(workings, X_Q_formula, fmax(0.6, fmin(1.0, 1.4 - 4.0 / 15.0 * eps_f / eps_a)),
                   eps_f, eps_a);
}

double ts_running_in_factor(double phi_E, double Ra, double rho_redC, ts_workings *workings)
{
    return TS_STEP(workings, X_E_formula, 1.0 + (1.0 - phi_E) * 30.0 * 1000.0 * Ra / rho_redC,
                   phi_E, Ra, rho_redC);
}

/* ---- contact ratio --------------------------------------------------------------------------- */

/* One formula with other numbers in each range. */
typedef struct ratio_range {
    double     square_1, square_2, one_1, one_2, constant, product;
    ts_formula formula;
} ratio_range;

#define X_EPS(formula_text)                                                                        \
    {                                                                                              \
        .symbol = "X_eps", .meaning = "contact ratio factor", .unit = "1", .text = (formula_text), \
        .source = ISO_21("contact ratio factor")                                                   \
    }
#define BELOW "/(2*(eps_1 + eps_2)*eps_1)"

static const ratio_range below_1 = {
    1.0, 1.0, 0.0, 0.0, 0.0, 0.0, X_EPS("(eps_1^2 + eps_2^2)" BELOW)};
static const ratio_range both_short = {
    0.70,
    0.70,
    -0.22,
    -0.22,
    0.52,
    -0.60,
    X_EPS("(0.7*(eps_1^2 + eps_2^2) - 0.22*(eps_1 + eps_2) + 0.52 - 0.6*eps_1*eps_2)" BELOW)};
static const ratio_range long_1 = {
    0.18,
    0.70,
    0.82,
    -0.52,
    0.0,
    -0.30,
    X_EPS("(0.18*eps_1^2 + 0.7*eps_2^2 + 0.82*eps_1 - 0.52*eps_2 - 0.3*eps_1*eps_2)" BELOW)};
static const ratio_range long_2 = {
    0.70,
    0.18,
    -0.52,
    0.82,
    0.0,
    -0.30,
    X_EPS("(0.7*eps_1^2 + 0.18*eps_2^2 - 0.52*eps_1 + 0.82*eps_2 - 0.3*eps_1*eps_2)" BELOW)};
static const ratio_range above_2_long_1 = {
    0.44,
    0.59,
    0.30,
    -0.30,
    0.0,
    -0.15,
    X_EPS("(0.44*eps_1^2 + 0.59*eps_2^2 + 0.3*eps_1 - 0.3*eps_2 - 0.15*eps_1*eps_2)" BELOW)};
static const ratio_range above_2_long_2 = {
    0.59,
    0.44,
    -0.30,
    0.30,
    0.0,
    -0.15,
    X_EPS("(0.59*eps_1^2 + 0.44*eps_2^2 - 0.3*eps_1 + 0.3*eps_2 - 0.15*eps_1*eps_2)" BELOW)};

static const ratio_range *range_of(double eps_1, double eps_2)
{
    const double eps_alpha = eps_1 + eps_2;

    if (eps_alpha < 1.0)
        return &below_1;
    if (eps_alpha >= 2.0)
        return eps_1 >= eps_2 ? &above_2_long_1 : &above_2_long_2;
    if (eps_1 < 1.0 && eps_2 < 1.0)
        return &both_short;
    return eps_1 >= 1.0 ? &long_1 : &long_2;
}

double ts_contact_ratio_factor_scuffing(double eps_1, double eps_2, ts_workings *workings)
{
    if (!(eps_1 > 0.0 && eps_2 >= 0.0 && eps_1 + eps_2 < 3.0))
        return NAN;
    const ratio_range *range = range_of(eps_1, eps_2);
    const double       above = range->square_1 * eps_1 * eps_1 + range->square_2 * eps_2 * eps_2 +
                         range->one_1 * eps_1 + range->one_2 * eps_2 + range->constant +
                         range->product * eps_1 * eps_2;

    return TS_STEP(workings, range->formula, above / (2.0 * (eps_1 + eps_2) * eps_1), eps_1, eps_2);
}

/* ---- temperatures ---------------------------------------------------------------------------- */

double ts_mean_flash(const ts_integral_input *in, ts_workings *workings)
{
    const double mu_mC = in->mu_mC, X_M = in->X_M, X_BE = in->X_BE, X_alphabeta = in->X_alphabeta;
    const double X_E = in->X_E, X_Q = in->X_Q, X_Ca = in->X_Ca, X_eps = in->X_eps;
    const double w_Bt = in->w_Bt, K_Bgamma = in->K_Bgamma, v = in->v, a_w = in->a_w;

    const double root       = sqrt(K_Bgamma * w_Bt);
    const double load       = root * sqrt(root) * sqrt(v) / sqrt(sqrt(fabs(a_w)));
    const double theta_flaE = TS_STEP(
        workings, theta_flaE_formula, mu_mC * X_M * X_BE * X_alphabeta * load * X_E / (X_Q * X_Ca),
        mu_mC, X_M, X_BE, X_alphabeta, K_Bgamma, w_Bt, v, a_w, X_E, X_Q, X_Ca);
    return TS_STEP(workings, theta_flaint_formula, theta_flaE * X_eps, theta_flaE, X_eps);
}

double ts_bulk_integral(double theta_oil, double theta_flaint, double X_S, ts_workings *workings)
{
    const double inside  = theta_oil + 0.7 * X_S * theta_flaint;
    const double outside = 273.15 + (theta_oil - 273.15 + 0.7 * theta_flaint) * X_S;

    return TS_STEP(workings, theta_M_formula,
                   isnan(inside) || isnan(outside) ? (double)NAN : fmax(inside, outside), theta_oil,
                   X_S, theta_flaint);
}

double ts_integral_temperature(double theta_M, double theta_flaint, ts_workings *workings)
{
    const double theta_Mint = theta_M;

    return TS_STEP(workings, theta_int_formula, theta_Mint + 1.5 * theta_flaint, theta_Mint,
                   theta_flaint);
}

double ts_integral_limit(const ts_integral_limit_input *in, ts_workings *workings)
{
    const double S_FZG = in->S_FZG, nu_40 = in->nu_40, X_L = in->X_L, X_W = in->X_W;

    const double T_1T = TS_STEP(workings, T_1T_formula, 3.726 * S_FZG * S_FZG, S_FZG);
    const double theta_MT =
        TS_STEP(workings, theta_MT_formula, 273.15 + 80.0 + 0.23 * T_1T * X_L, T_1T, X_L);
    const double theta_flaintT =
        TS_STEP(workings, theta_flaintT_formula,
                0.2 * T_1T * pow(100.0 / (1e6 * nu_40), 0.02) * X_L, T_1T, nu_40, X_L);
    return TS_STEP(workings, theta_intS_formula, theta_MT + 1.5 * X_W * theta_flaintT, theta_MT,
                   X_W, theta_flaintT);
}

double ts_integral_safety(double theta_intS, double theta_int, ts_workings *workings)
{
    if (isnan(theta_intS) || isnan(theta_int))
        return NAN;
    if (theta_int <= 273.15) /* a ratio of degrees Celsius has no sense here */
        return theta_int < theta_intS ? (double)INFINITY : 0.0;
    return TS_STEP(workings, S_intS_formula, (theta_intS - 273.15) / (theta_int - 273.15),
                   theta_intS, theta_int);
}

double ts_integral_load_safety(double theta_intS, double theta_int, double theta_oil,
                               ts_workings *workings)
{
    return TS_STEP(workings, S_Sl_formula, (theta_intS - theta_oil) / (theta_int - theta_oil),
                   theta_intS, theta_oil, theta_int);
}

/* ---- the path -------------------------------------------------------------------------------- */

#define PINION "derived: the pinion is gear 2, seen from which all is told"

static const ts_formula u_turned_formula = {
    .symbol  = "u",
    .meaning = "ratio, seen from the pinion",
    .unit    = "1",
    .text    = "1/u",
    .source  = PINION,
};
static const ts_formula rho_E1_formulas[2] = {
    {"rho_E1", "curvature of the pinion at its tip", "m", "rho_a1", "derived: contact ends there"},
    {"rho_E1", "curvature of the pinion at its tip", "m", "rho_T - rho_A1", PINION},
};
static const ts_formula rho_E2_formula = {
    .symbol  = "rho_E2",
    .meaning = "curvature of the mate there",
    .unit    = "m",
    .text    = "rho_T - rho_E1",
    .source  = "derived: both curvatures fill the line of action",
};
static const ts_formula Gamma_E_formulas[2] = {
    {"Gamma_E", "place of the tip of the pinion on the line of action", "1", "rho_E1/rho_C1 - 1",
     ISO_21("thermo-elastic factor")},
    {"Gamma_E", "place of the tip of the pinion on the line of action", "1",
     "rho_E1/(rho_T - rho_C1) - 1", ISO_21("thermo-elastic factor")},
};

/* Contact ratios by another name: [of gear 1 or 2]. */
typedef struct ratio_alias {
    ts_formula of[2];
} ratio_alias;
#define ALIAS(symbol, meaning, source)                                                             \
    {                                                                                              \
        {                                                                                          \
            {symbol, meaning, "1", "eps_1", source},                                               \
            {                                                                                      \
                symbol, meaning, "1", "eps_2", source                                              \
            }                                                                                      \
        }                                                                                          \
    }
static const ratio_alias eps_f_alias =
    ALIAS("eps_f", "contact ratio of the approach", ISO_21("approach factor"));
static const ratio_alias eps_a_alias =
    ALIAS("eps_a", "contact ratio of the recess", ISO_21("approach factor"));
static const ratio_alias eps_p_alias =
    ALIAS("eps_1", "contact ratio at the tip of the pinion", PINION);
static const ratio_alias eps_w_alias =
    ALIAS("eps_2", "contact ratio at the tip of the wheel", PINION);

static double ratio_of(const ts_integral_path *path, const ratio_alias *alias, int gear,
                       ts_workings *workings)
{
    const double eps_1 = path->eps_1, eps_2 = path->eps_2;

    if (gear == 1)
        return TS_STEP(workings, alias->of[0], eps_1, eps_1);
    return TS_STEP(workings, alias->of[1], eps_2, eps_2);
}

typedef struct pinion_tip {
    double u, rho_1, rho_2, Gamma;
} pinion_tip;

static pinion_tip tip_of_gear_1(const ts_integral_path *path, ts_workings *workings)
{
    const double rho_T = path->rho_T, rho_a1 = path->rho_E1, rho_C1 = path->rho_C1;
    const double rho_E1 = TS_STEP(workings, rho_E1_formulas[0], rho_a1, rho_a1);

    return (pinion_tip){
        .u     = path->u,
        .rho_1 = rho_E1,
        .rho_2 = TS_STEP(workings, rho_E2_formula, rho_T - rho_E1, rho_T, rho_E1),
        .Gamma = TS_STEP(workings, Gamma_E_formulas[0], rho_E1 / rho_C1 - 1.0, rho_E1, rho_C1),
    };
}

static pinion_tip tip_of_gear_2(const ts_integral_path *path, ts_workings *workings)
{
    const double u = path->u, rho_T = path->rho_T, rho_A1 = path->rho_A1, rho_C1 = path->rho_C1;
    const double rho_E1 = TS_STEP(workings, rho_E1_formulas[1], rho_T - rho_A1, rho_T, rho_A1);

    return (pinion_tip){
        .u     = TS_STEP(workings, u_turned_formula, 1.0 / u, u),
        .rho_1 = rho_E1,
        .rho_2 = TS_STEP(workings, rho_E2_formula, rho_T - rho_E1, rho_T, rho_E1),
        .Gamma = TS_STEP(workings, Gamma_E_formulas[1], rho_E1 / (rho_T - rho_C1) - 1.0, rho_E1,
                         rho_T, rho_C1),
    };
}

ts_integral_ends ts_integral_ends_of(const ts_integral_path *path, ts_workings *workings)
{
    const bool       turned = fabs(path->u) < 1.0; /* gear 2 is the pinion */
    const pinion_tip tip   = turned ? tip_of_gear_2(path, workings) : tip_of_gear_1(path, workings);
    const double     eps_f = ratio_of(path, &eps_f_alias, 3 - path->driver, workings);
    const double     eps_a = ratio_of(path, &eps_a_alias, path->driver, workings);
    const ts_thermoelastic_input body = {
        .E_r     = path->E_r,
        .B_M1    = path->B_M[turned ? 1 : 0],
        .B_M2    = path->B_M[turned ? 0 : 1],
        .Gamma_E = tip.Gamma,
        .u       = tip.u,
    };
    const ts_integral_ends ends = {
        .X_M   = ts_thermoelastic_pair(&body, workings),
        .X_BE  = ts_geometry_factor_E(tip.rho_1, tip.rho_2, tip.u, workings),
        .X_Q   = ts_approach_factor(eps_f, eps_a, workings),
        .X_eps = turned ? ts_contact_ratio_factor_scuffing(
                              ratio_of(path, &eps_p_alias, 2, workings),
                              ratio_of(path, &eps_w_alias, 1, workings), workings)
                        : ts_contact_ratio_factor_scuffing(path->eps_1, path->eps_2, workings),
    };
    return ends;
}
