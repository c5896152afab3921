/* rating/agma2101/agma908_mesh.c: which curvatures meet, and on how much line of contact? */
#include "rating/agma2101/agma908_mesh.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define CLAUSE_3 AGMA_908 "3" RECALLED
#define CLAUSE_4 AGMA_908 "4" RECALLED
#define CLAUSE_5 AGMA_908 "5" RECALLED

/* P is the index of the pinion, G that of its mate. */
#define OF_PINION(symbol, meaning, unit, text, source)                                             \
    {                                                                                              \
        {symbol("1", "2"), meaning, unit, text("1", "2"), source},                                 \
            {symbol("2", "1"), meaning, unit, text("2", "1"), source},                             \
    }
#define NAMED(value)                                                                               \
    {                                                                                              \
#value, (value)                                                                            \
    }

/* The input of a step whose name carries the index of the pinion (mate). */
#define OWN(name, value)                                                                           \
    {                                                                                              \
        p == 0 ? name "1" : name "2", (value)                                                      \
    }
#define MATE(name, value)                                                                          \
    {                                                                                              \
        p == 0 ? name "2" : name "1", (value)                                                      \
    }
#define PINION_STEP(formulas, result, ...)                                                         \
    ts_step_list(workings, &(formulas)[p], (result),                                               \
                 TS_STEP_NEEDS_INPUTS(workings) ? (const ts_input[]){__VA_ARGS__} : NULL,          \
                 sizeof((const ts_input[]){__VA_ARGS__}) / sizeof(ts_input))

/* ---- what the mesh is ------------------------------------------------------------------------ */

#define M_G_NAME(P, G) "m_G"
#define M_G_TEXT(P, G) "abs(z_" G ")/z_" P
static const ts_formula m_G_formulas[2] =
    OF_PINION(M_G_NAME, "ratio of teeth, pinion below", "1", M_G_TEXT, CLAUSE_3);

#define D_P_NAME(P, G) "d_P"
#define D_P_TEXT(P, G) "d_w" P
static const ts_formula d_P_formulas[2] =
    OF_PINION(D_P_NAME, "operating pitch diameter of the pinion", "m", D_P_TEXT, CLAUSE_3);

static const ts_formula b_formula = {
    .symbol  = "b",
    .meaning = "face width of the narrower gear",
    .unit    = "m",
    .text    = "min(b_1, b_2)",
    .source  = AGMA_2101 "5" RECALLED,
};
static const ts_formula beta_w_formula = {
    .symbol  = "beta_w",
    .meaning = "operating helix angle",
    .unit    = "rad",
    .text    = "atan(tan(beta_b)/cos(alpha_wt))",
    .source  = CLAUSE_3,
};
static const ts_formula alpha_wn_formula = {
    .symbol  = "alpha_wn",
    .meaning = "operating normal pressure angle",
    .unit    = "rad",
    .text    = "asin(cos(beta_b)*sin(alpha_wt))",
    .source  = CLAUSE_3,
};

/* With as many teeth on both, the gear whose lowest point of single contact is more curved. */
static int pinion_of(const ts_cylindrical_pair *pair)
{
    const int z_1 = pair->in.z_1, z_2 = pair->in.z_2 < 0 ? -pair->in.z_2 : pair->in.z_2;

    if (z_1 != z_2 || pair->in.z_2 < 0)
        return z_2 < z_1 && pair->in.z_2 > 0 ? 1 : 0;
    return pair->rho_T - pair->rho_D1 < pair->rho_B1 ? 1 : 0;
}

static ts_agma_overlap overlap_of(const ts_cylindrical_pair *pair)
{
    if (!(pair->in.beta > 0.0))
        return TS_AGMA_SPUR;
    return pair->eps_beta > 1.0 ? TS_AGMA_HELICAL : TS_AGMA_LOW_OVERLAP;
}

static void describe(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh, ts_workings *workings)
{
    const double z_1 = pair->in.z_1, z_2 = pair->in.z_2, b_1 = pair->in.b_1, b_2 = pair->in.b_2;
    const double beta_b = pair->beta_b, alpha_wt = pair->alpha_wt;
    const int    p   = mesh->pinion;
    const double m_G = p == 0 ? fabs(z_2) / z_1 : z_1 / z_2;
    const double d_w = p == 0 ? pair->d_w1 : pair->d_w2;

    mesh->m_G = PINION_STEP(m_G_formulas, m_G, NAMED(z_1), NAMED(z_2));
    mesh->d_w = PINION_STEP(d_P_formulas, d_w, OWN("d_w", d_w));
    mesh->b   = TS_STEP(workings, b_formula, fmin(b_1, b_2), b_1, b_2);
    mesh->beta_w =
        TS_STEP(workings, beta_w_formula, atan(tan(beta_b) / cos(alpha_wt)), beta_b, alpha_wt);
    mesh->alpha_wn =
        TS_STEP(workings, alpha_wn_formula, asin(cos(beta_b) * sin(alpha_wt)), beta_b, alpha_wt);
}

/* ---- helix ----------------------------------------------------------------------------------- */

static const ts_formula omega_formula = {
    .symbol  = "omega_h",
    .meaning = "inclination of the load line, in degrees",
    .unit    = "1",
    .text    = "atan(tan(beta)*sin(alpha_n))*180/pi",
    .source  = CLAUSE_5,
};
static const ts_formula C_h_formula = {
    .symbol  = "C_h",
    .meaning = "helical factor",
    .unit    = "1",
    .text    = "1/(1 - sqrt(omega_h/100*(1 - omega_h/100)))",
    .source  = CLAUSE_5,
};
static const ts_formula K_psi_formula = {
    .symbol  = "K_psi",
    .meaning = "helix angle factor",
    .unit    = "1",
    .text    = "cos(beta_w)*cos(beta)",
    .source  = CLAUSE_5,
};

#define NO_OVERLAP AGMA_908 "3 to 5 (from memory): 1 for spur gears and for eps_beta <= 1"

static double no_overlap(ts_workings *workings, const char *symbol)
{
    ts_workings_row(workings, symbol, 1.0, "1", NO_OVERLAP);
    return 1.0;
}

static void solve_helix(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh, ts_workings *workings)
{
    const double beta = pair->in.beta, alpha_n = pair->in.alpha_n, beta_w = mesh->beta_w;

    if (mesh->overlap != TS_AGMA_HELICAL) {
        mesh->C_h   = no_overlap(workings, "C_h");
        mesh->K_psi = no_overlap(workings, "K_psi");
        return;
    }
    const double omega_h = TS_STEP(workings, omega_formula,
                                   atan(tan(beta) * sin(alpha_n)) * 180.0 / pi, beta, alpha_n);
    const double share   = omega_h / 100.0;

    mesh->C_h = TS_STEP(workings, C_h_formula, 1.0 / (1.0 - sqrt(share * (1.0 - share))), omega_h);
    mesh->K_psi = TS_STEP(workings, K_psi_formula, cos(beta_w) * cos(beta), beta_w, beta);
}

/* ---- load sharing ---------------------------------------------------------------------------- */

static const ts_formula n_alpha_formula = {
    .symbol  = "n_alpha",
    .meaning = "part of the transverse contact ratio beyond a whole number",
    .unit    = "1",
    .text    = "eps_alpha - whole_alpha",
    .source  = CLAUSE_3,
};
static const ts_formula n_beta_formula = {
    .symbol  = "n_beta",
    .meaning = "part of the overlap ratio beyond a whole number",
    .unit    = "1",
    .text    = "eps_beta - whole_beta",
    .source  = CLAUSE_3,
};
static const ts_formula p_x_formula = {
    .symbol  = "p_x",
    .meaning = "axial pitch",
    .unit    = "m",
    .text    = "pi*m_n/sin(beta)",
    .source  = CLAUSE_3,
};
static const ts_formula L_min_formula = {
    .symbol  = "L_min",
    .meaning = "least length of the lines of contact, n_alpha + n_beta <= 1",
    .unit    = "m",
    .text    = "(eps_alpha*b - n_beta*n_alpha*p_x)/cos(beta_b)",
    .source  = CLAUSE_3,
};
static const ts_formula L_min_over_formula = {
    .symbol  = "L_min",
    .meaning = "least length of the lines of contact, n_alpha + n_beta > 1",
    .unit    = "m",
    .text    = "(eps_alpha*b - (1 - n_beta)*(1 - n_alpha)*p_x)/cos(beta_b)",
    .source  = CLAUSE_3,
};
static const ts_formula m_N_formula = {
    .symbol  = "m_N",
    .meaning = "load sharing ratio",
    .unit    = "1",
    .text    = "b/L_min",
    .source  = CLAUSE_3,
};

static double least_length(const ts_cylindrical_pair *pair, const ts_agma_mesh *mesh,
                           ts_workings *workings)
{
    const double eps_alpha = pair->eps_alpha, eps_beta = pair->eps_beta, beta_b = pair->beta_b;
    const double b = mesh->b, m_n = pair->in.m_n, beta = pair->in.beta;
    const double whole_alpha = floor(eps_alpha), whole_beta = floor(eps_beta);

    ts_workings_row(workings, "whole_alpha", whole_alpha, "1", "the whole part of eps_alpha");
    ts_workings_row(workings, "whole_beta", whole_beta, "1", "the whole part of eps_beta");
    const double n_alpha =
        TS_STEP(workings, n_alpha_formula, eps_alpha - whole_alpha, eps_alpha, whole_alpha);
    const double n_beta =
        TS_STEP(workings, n_beta_formula, eps_beta - whole_beta, eps_beta, whole_beta);
    const double p_x = TS_STEP(workings, p_x_formula, pi * m_n / sin(beta), m_n, beta);

    if (n_beta <= 1.0 - n_alpha)
        return TS_STEP(workings, L_min_formula,
                       (eps_alpha * b - n_beta * n_alpha * p_x) / cos(beta_b), eps_alpha, b, n_beta,
                       n_alpha, p_x, beta_b);
    return TS_STEP(workings, L_min_over_formula,
                   (eps_alpha * b - (1.0 - n_beta) * (1.0 - n_alpha) * p_x) / cos(beta_b),
                   eps_alpha, b, n_beta, n_alpha, p_x, beta_b);
}

/* Spur gears up to a contact ratio of 2 carry on one tooth somewhere; low overlap is told by C_psi
 * instead. */
static void share_load(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh, ts_workings *workings)
{
    const double b = mesh->b;

    mesh->L_min = b;
    if (mesh->overlap != TS_AGMA_HELICAL) {
        mesh->m_N = no_overlap(workings, "m_N");
        return;
    }
    const double L_min = least_length(pair, mesh, workings);
    mesh->L_min        = L_min;
    mesh->m_N          = TS_STEP(workings, m_N_formula, b / L_min, b, L_min);
}

/* ---- curvatures ------------------------------------------------------------------------------ */

#define RHO_NAME(P, G)        "rho_" P
#define RHO_MATE_NAME(P, G)   "rho_" G
#define RHO_LOW_TEXT_1        "rho_B1"
#define RHO_LOW_TEXT_2        "rho_T - rho_D1"
#define RHO_MATE_TEXT(P, G)   "rho_T - rho_" P
#define R_M_NAME(P, G)        "r_m" P
#define R_M_TEXT(P, G)        "(d_a" P "/2 + a_w - d_a" G "/2)/2"
#define RHO_M_NAME(P, G)      "rho_m" P
#define RHO_M_TEXT(P, G)      "sqrt(r_m" P "^2 - d_b" P "^2/4)"
#define RHO_M_MATE_NAME(P, G) "rho_m" G
#define RHO_M_MATE_TEXT(P, G) "rho_T - rho_m" P
#define RHO_SAME_TEXT(P, G)   "rho_m" P
#define RHO_SAME_MATE(P, G)   "rho_m" G

static const ts_formula rho_low_formulas[2] = {
    {"rho_1", "curvature of gear 1 at its lowest point of single contact", "m", RHO_LOW_TEXT_1,
     CLAUSE_4},
    {"rho_2", "curvature of gear 2 at its lowest point of single contact", "m", RHO_LOW_TEXT_2,
     CLAUSE_4},
};
static const ts_formula rho_mate_formulas[2] =
    OF_PINION(RHO_MATE_NAME, "curvature of the mate there", "m", RHO_MATE_TEXT, CLAUSE_4);
static const ts_formula r_m_formulas[2] =
    OF_PINION(R_M_NAME, "mean radius of the pinion's working flank", "m", R_M_TEXT, CLAUSE_4);
static const ts_formula rho_m_formulas[2] =
    OF_PINION(RHO_M_NAME, "curvature of the pinion at its mean radius", "m", RHO_M_TEXT, CLAUSE_4);
static const ts_formula rho_m_mate_formulas[2] =
    OF_PINION(RHO_M_MATE_NAME, "curvature of the mate there", "m", RHO_M_MATE_TEXT, CLAUSE_4);
static const ts_formula rho_same_formulas[2] =
    OF_PINION(RHO_NAME, "curvature where contact is judged", "m", RHO_SAME_TEXT, CLAUSE_4);
static const ts_formula rho_same_mate_formulas[2] =
    OF_PINION(RHO_MATE_NAME, "curvature where contact is judged", "m", RHO_SAME_MATE, CLAUSE_4);

typedef struct curvatures {
    double own, mate; /* of the pinion, of its mate; NaN: no flank there */
} curvatures;

static const curvatures nowhere = {NAN, NAN};

/* Both flanks are involutes there: the mate's curvature is negative on an internal gear only. */
static bool on_flanks(const ts_cylindrical_pair *pair, double own, double mate)
{
    return own > 0.0 && mate / pair->u > 0.0;
}

static curvatures at_lowest_single(const ts_cylindrical_pair *pair, int p, ts_workings *workings)
{
    const double rho_T = pair->rho_T, rho_B1 = pair->rho_B1, rho_D1 = pair->rho_D1;
    const double own = p == 0 ? rho_B1 : rho_T - rho_D1, mate = rho_T - own;

    if (!on_flanks(pair, own, mate))
        return nowhere;
    if (p == 0)
        TS_STEP(workings, rho_low_formulas[0], own, rho_B1);
    else
        TS_STEP(workings, rho_low_formulas[1], own, rho_T, rho_D1);
    PINION_STEP(rho_mate_formulas, mate, NAMED(rho_T), OWN("rho_", own));
    return (curvatures){own, mate};
}

static curvatures at_mean_radius(const ts_cylindrical_pair *pair, int p, ts_workings *workings)
{
    const double rho_T = pair->rho_T, a_w = pair->a_w;
    const double d_a = p == 0 ? pair->d_a1 : pair->d_a2, d_b = p == 0 ? pair->d_b1 : pair->d_b2;
    const double d_mate = p == 0 ? pair->d_a2 : pair->d_a1;
    const double r_m    = (d_a / 2.0 + a_w - d_mate / 2.0) / 2.0;
    const double own = sqrt(r_m * r_m - d_b * d_b / 4.0), mate = rho_T - own;

    if (!on_flanks(pair, own, mate))
        return nowhere;
    PINION_STEP(r_m_formulas, r_m, OWN("d_a", d_a), NAMED(a_w), MATE("d_a", d_mate));
    PINION_STEP(rho_m_formulas, own, OWN("r_m", r_m), OWN("d_b", d_b));
    PINION_STEP(rho_m_mate_formulas, mate, NAMED(rho_T), OWN("rho_m", own));
    return (curvatures){own, mate};
}

static const ts_formula C_psi_formula = {
    .symbol  = "C_psi",
    .meaning = "helical overlap factor",
    .unit    = "1",
    .text    = "sqrt(1 - eps_beta*(1 - rho_m1*rho_m2*g_alpha/(rho_1*rho_2*p_bn)))",
    .source  = CLAUSE_4,
};
static const ts_formula p_bn_formula = {
    .symbol  = "p_bn",
    .meaning = "normal base pitch",
    .unit    = "m",
    .text    = "pi*m_n*cos(alpha_n)",
    .source  = CLAUSE_3,
};

static double overlap_factor(const ts_cylindrical_pair *pair, curvatures low, curvatures mean,
                             ts_workings *workings)
{
    const double eps_beta = pair->eps_beta, g_alpha = pair->g_alpha;
    const double m_n = pair->in.m_n, alpha_n = pair->in.alpha_n;
    /* The products do not ask which of the two is the pinion. */
    const double rho_1 = low.own, rho_2 = low.mate, rho_m1 = mean.own, rho_m2 = mean.mate;

    if (isnan(rho_1) || isnan(rho_m1))
        return NAN;
    const double p_bn  = TS_STEP(workings, p_bn_formula, pi * m_n * cos(alpha_n), m_n, alpha_n);
    const double share = rho_m1 * rho_m2 * g_alpha / (rho_1 * rho_2 * p_bn);
    return TS_STEP(workings, C_psi_formula, sqrt(1.0 - eps_beta * (1.0 - share)), eps_beta, rho_m1,
                   rho_m2, g_alpha, rho_1, rho_2, p_bn);
}

/* ---- I --------------------------------------------------------------------------------------- */

static const ts_formula Z_I_formula = {
    .symbol  = "Z_I",
    .meaning = "geometry factor for pitting resistance",
    .unit    = "1",
    .text    = "cos(alpha_wt)*C_psi^2/((1/rho_1 + 1/rho_2)*d_P*m_N)",
    .source  = CLAUSE_4,
};

static curvatures find_curvatures(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh,
                                  ts_workings *workings)
{
    const int p = mesh->pinion;

    mesh->C_psi = 1.0;
    if (mesh->overlap != TS_AGMA_LOW_OVERLAP)
        ts_workings_row(workings, "C_psi", mesh->C_psi, "1",
                        AGMA_908 "4 (from memory): 1 for spur gears and for eps_beta > 1");
    if (mesh->overlap != TS_AGMA_HELICAL) {
        const curvatures low = at_lowest_single(pair, p, workings);

        if (mesh->overlap == TS_AGMA_LOW_OVERLAP)
            mesh->C_psi = overlap_factor(pair, low, at_mean_radius(pair, p, workings), workings);
        return low;
    }
    const curvatures mean = at_mean_radius(pair, p, workings);
    if (!isnan(mean.own)) {
        PINION_STEP(rho_same_formulas, mean.own, OWN("rho_m", mean.own));
        PINION_STEP(rho_same_mate_formulas, mean.mate, MATE("rho_m", mean.mate));
    }
    return mean;
}

static void solve_pitting(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh,
                          ts_workings *workings)
{
    const int        p   = mesh->pinion;
    const curvatures rho = find_curvatures(pair, mesh, workings);

    mesh->rho[p]       = rho.own;
    mesh->rho[1 - p]   = rho.mate;
    const double rho_1 = mesh->rho[0], rho_2 = mesh->rho[1], d_P = mesh->d_w;
    const double alpha_wt = pair->alpha_wt, C_psi = mesh->C_psi, m_N = mesh->m_N;

    mesh->Z_I = NAN;
    if (isnan(rho_1) || isnan(C_psi) || isnan(m_N))
        return;
    const double Z_I = cos(alpha_wt) * (C_psi * C_psi) / ((1.0 / rho_1 + 1.0 / rho_2) * d_P * m_N);
    mesh->Z_I        = TS_STEP(workings, Z_I_formula, Z_I, alpha_wt, C_psi, rho_1, rho_2, d_P, m_N);
}

void ts_agma_mesh_solve(const ts_cylindrical_pair *pair, ts_agma_mesh *mesh, ts_workings *workings)
{
    *mesh = (ts_agma_mesh){.overlap = overlap_of(pair), .pinion = pinion_of(pair)};
    describe(pair, mesh, workings);
    solve_helix(pair, mesh, workings);
    share_load(pair, mesh, workings);
    solve_pitting(pair, mesh, workings);
}

/* ---- textbooks ------------------------------------------------------------------------------- */

static const ts_formula pitch_point_formula = {
    .symbol  = "I_C",
    .meaning = "geometry factor for pitting resistance at the pitch point",
    .unit    = "1",
    .text    = "sin(alpha_t)*cos(alpha_t)/(2*m_N)*m_G/(m_G + 1)",
    .source  = "Shigley's Mechanical Engineering Design, chapter 14 (from memory)",
};
static const ts_formula pitch_point_internal_formula = {
    .symbol  = "I_C",
    .meaning = "geometry factor for pitting resistance at the pitch point, internal wheel",
    .unit    = "1",
    .text    = "sin(alpha_t)*cos(alpha_t)/(2*m_N)*m_G/(m_G - 1)",
    .source  = "Shigley's Mechanical Engineering Design, chapter 14 (from memory)",
};
static const ts_formula m_N_simple_formula = {
    .symbol  = "m_N",
    .meaning = "load sharing ratio of helical gears in textbooks",
    .unit    = "1",
    .text    = "p_bn/(0.95*g_alpha)",
    .source  = "Shigley's Mechanical Engineering Design, chapter 14 (from memory)",
};

double ts_agma_pitch_point_factor(double alpha_t, double m_G, double m_N, bool internal,
                                  ts_workings *workings)
{
    const double flank = sin(alpha_t) * cos(alpha_t) / (2.0 * m_N);

    if (!isfinite(flank) || !(m_G > 0.0) || !isfinite(m_G) || (internal && !(m_G > 1.0)))
        return NAN;
    if (internal)
        return TS_STEP(workings, pitch_point_internal_formula, flank * m_G / (m_G - 1.0), alpha_t,
                       m_N, m_G);
    return TS_STEP(workings, pitch_point_formula, flank * m_G / (m_G + 1.0), alpha_t, m_N, m_G);
}

double ts_agma_load_share_simple(double p_bn, double g_alpha, ts_workings *workings)
{
    if (!(p_bn > 0.0) || !(g_alpha > 0.0))
        return NAN;
    return TS_STEP(workings, m_N_simple_formula, p_bn / (0.95 * g_alpha), p_bn, g_alpha);
}
