/* rating/micropitting/micropitting_rate.c: is the oil film thick enough? */
#include "rating/micropitting/micropitting_parts.h"

#include "element/contact_friction.h"
#include "element/flank_body.h"
#include "element/hertz.h"
#include "element/tip_relief.h"
#include "element/tooth_force.h"
#include "rating/micropitting/local_film.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define ISO_22(what) "ISO/TS 6336-22:2018, " what " (from memory)"

static const ts_formula eps_1_formula = {
    .symbol  = "eps_1",
    .meaning = "contact ratio between the pitch point and the tip of gear 1",
    .unit    = "1",
    .text    = "g_a/p_bt",
    .source  = ISO_22("tooth loss factor"),
};
static const ts_formula eps_2_formula = {
    .symbol  = "eps_2",
    .meaning = "contact ratio between the pitch point and the tip of gear 2",
    .unit    = "1",
    .text    = "g_f/p_bt",
    .source  = ISO_22("tooth loss factor"),
};
static const ts_formula H_v_formula = {
    .symbol  = "H_v",
    .meaning = "tooth loss factor",
    .unit    = "1",
    .text    = "pi*(u + 1)/(z_1*u*cos(beta_b))*(1 - eps_alpha + eps_1^2 + eps_2^2)",
    .source  = ISO_22("tooth loss factor"),
};
static const ts_formula w_A_formula = {
    .symbol  = "w_A",
    .meaning = "specific load before its own dynamics and distribution",
    .unit    = "N/m",
    .text    = "F_t*K_A*K_gamma/b",
    .source  = ISO_22("load factors"),
};
static const ts_formula w_Bt_formula = {
    .symbol  = "w_Bt",
    .meaning = "specific load at the reference circle with all load factors",
    .unit    = "N/m",
    .text    = "F_t*K_A*K_gamma*K_v*K_Hbeta*K_Halpha/b",
    .source  = ISO_22("load factors"),
};
static const ts_formula w_Btmu_formula = {
    .symbol  = "w_Btmu",
    .meaning = "specific load that the friction goes by, at the base circle",
    .unit    = "N/m",
    .text    = "w_Bt*K_Bgamma/cos(alpha_t)",
    .source  = ISO_22("mean coefficient of friction"),
};
static const ts_formula P_formula = {
    .symbol  = "P",
    .meaning = "power through the mesh",
    .unit    = "W",
    .text    = "T_1*omega_1",
    .source  = "derived: definition of power",
};
static const ts_formula theta_M_formula = {
    .symbol  = "theta_M",
    .meaning = "bulk temperature",
    .unit    = "K",
    .text    = "theta_oil + 7400*(1e-9*P*mu_mC*H_v/(abs(a_w)*b))^0.72*X_S/(1.2*X_Ca)",
    .source  = ISO_22("bulk temperature"),
};
static const ts_formula theta_formula = {
    .symbol  = "theta",
    .meaning = "temperature of the oil at the flanks",
    .unit    = "K",
    .text    = "theta_M",
    .source  = ISO_22("material parameter"),
};
static const ts_formula eta_M_formula = {
    .symbol  = "eta_M",
    .meaning = "dynamic viscosity at the bulk temperature",
    .unit    = "Pa.s",
    .text    = "eta",
    .source  = ISO_22("local velocity parameter"),
};
static const ts_formula alpha_M_formula = {
    .symbol  = "alpha_M",
    .meaning = "pressure-viscosity coefficient at the bulk temperature",
    .unit    = "1/Pa",
    .text    = "alpha_theta",
    .source  = ISO_22("material parameter"),
};
static const ts_formula G_M_formula = {
    .symbol  = "G_M",
    .meaning = "material parameter",
    .unit    = "1",
    .text    = "alpha_M*E_r",
    .source  = ISO_22("material parameter"),
};
static const ts_formula lambda_GFmin_formula = {
    .symbol  = "lambda_GFmin",
    .meaning = "least specific film along the path of contact",
    .unit    = "1",
    .text    = "lambda_GFY",
    .source  = ISO_22("minimum specific lubricant film thickness"),
};
static const ts_formula S_lambda_formula = {
    .symbol  = "S_lambda",
    .meaning = "safety against micropitting",
    .unit    = "1",
    .text    = "lambda_GFmin/lambda_GFP",
    .source  = ISO_22("safety factor"),
};

/* ---- the mesh -------------------------------------------------------------------------------- */

static bool at_least(double value, double least, double most)
{
    return value >= least && value <= most;
}

static const char *fault_of_gear(const ts_film_gear *gear)
{
    const ts_flank_body body  = {gear->E, gear->nu, gear->B_M, gear->Ra, gear->C_a};
    const char         *fault = ts_flank_body_fault(&body);

    if (fault != NULL)
        return fault;
    return ts_is_above(gear->W_W, 1e-6, 100.0) ? NULL : "the material factor of both gears";
}

static const char *fault_of_mesh(const ts_micropitting_mesh *mesh, double b)
{
    const char *fault = fault_of_gear(&mesh->gear[0]);

    if (fault == NULL)
        fault = fault_of_gear(&mesh->gear[1]);
    return fault != NULL ? fault
                         : ts_flank_mesh_fault(b, mesh->driver, mesh->grade, mesh->X_S, mesh->X_L);
}

static void prepare_losses(ts_micropitting_prepared *p, ts_workings *workings)
{
    const ts_cylindrical_pair *pair = &p->pair;
    const double               g_a = pair->g_a, g_f = pair->g_f, p_bt = pair->p_bt, u = pair->u;
    const double z_1 = pair->in.z_1, beta_b = pair->beta_b, eps_alpha = pair->eps_alpha;

    const double eps_1 = TS_STEP(workings, eps_1_formula, g_a / p_bt, g_a, p_bt);
    const double eps_2 = TS_STEP(workings, eps_2_formula, g_f / p_bt, g_f, p_bt);
    const double slide = 1.0 - eps_alpha + eps_1 * eps_1 + eps_2 * eps_2;
    p->eps_1           = eps_1;
    p->eps_2           = eps_2;
    p->H_v = TS_STEP(workings, H_v_formula, pi * (u + 1.0) / (z_1 * u * cos(beta_b)) * slide, u,
                     z_1, beta_b, eps_alpha, eps_1, eps_2);
}

bool ts_micropitting_prepare_mesh(const ts_cylindrical_pair *pair, const ts_micropitting_mesh *mesh,
                                  ts_micropitting_prepared *prepared, ts_workings *workings)
{
    const ts_film_gear *gear = mesh->gear;

    prepared->mesh    = *mesh;
    prepared->pair    = *pair;
    prepared->b       = fmin(pair->in.b_1, pair->in.b_2);
    prepared->remarks = 0;
    prepared->missing = fault_of_mesh(mesh, prepared->b);
    if (prepared->missing != NULL)
        return false;
    if (!ts_film_law_of(&mesh->oil, &prepared->law, workings)) {
        prepared->missing = "viscosities, density and pressure-viscosity coefficient of the oil";
        return false;
    }
    ts_flank_path_lay(pair, &prepared->path, workings);
    prepared->missing = prepared->path.missing;
    if (prepared->missing != NULL)
        return false;
    ts_load_share_lay(pair, &prepared->path, mesh->grade, &prepared->share);
    if (ts_load_share_high_ratio(pair))
        prepared->remarks |= TS_MICROPITTING_HIGH_RATIO;
    prepared->E_r = ts_reduced_modulus(gear[0].E, gear[0].nu, gear[1].E, gear[1].nu, workings);
    prepared->Ra  = (gear[0].Ra + gear[1].Ra) / 2.0;
    prepared->rho_redC =
        ts_pitch_point_radius(pair->a_w, pair->u, pair->alpha_wt, pair->beta_b, workings);
    prepared->K_Bgamma = ts_helical_load_factor(pair->eps_gamma, workings);
    prepare_losses(prepared, workings);
    prepared->lambda_GFP = (double)NAN;
    return true;
}

/* ---- one load case --------------------------------------------------------------------------- */

static bool relieved(const ts_micropitting_prepared *p)
{
    return p->mesh.gear[0].C_a > 0.0 || p->mesh.gear[1].C_a > 0.0;
}

static double stiffness_of(const ts_micropitting_prepared *p, const ts_micropitting_load *load)
{
    return p->pair.eps_beta > 0.0 ? load->c_gamma_alpha : load->cp;
}

/* Too little to be a load is none. */
static bool rubs(const ts_micropitting_load *load)
{
    return load->T_1 > 1e-9 && load->omega_1 > 1e-9;
}

static const char *fault_of_load(const ts_micropitting_prepared *p,
                                 const ts_micropitting_load     *load)
{
    const double K = load->K_A * load->K_gamma * load->K_v * load->K_Hbeta * load->K_Halpha;

    if (!at_least(load->T_1, 0.0, 1e12))
        return "a torque from 0 up";
    if (!at_least(load->omega_1, 0.0, 1e6))
        return "a speed from 0 up";
    if (!at_least(load->theta_oil, 200.0, 600.0))
        return "the oil temperature";
    if (!isnan(load->theta_M) && !at_least(load->theta_M, load->theta_oil, 600.0))
        return "a bulk temperature that is not below that of the oil";
    if (!rubs(load))
        return NULL; /* nothing else is asked */
    if (!at_least(K, 1e-3, 1e6) || !(load->K_A > 1e-3 && load->K_gamma > 1e-3))
        return "load factors above 0";
    if (relieved(p) && !ts_is_above(stiffness_of(p, load), 1.0, 1e15))
        return "the stiffness of the teeth, which says what tip relief is worth";
    return NULL;
}

static void void_rating(ts_micropitting *r, const char *missing)
{
    const double none = NAN;

    *r = (ts_micropitting){
        .v            = none,
        .w_Bt         = none,
        .mu_m         = none,
        .theta_M      = none,
        .lambda_GFmin = none,
        .h_min        = none,
        .where        = "",
        .lambda_GFP   = none,
        .S_lambda     = none,
        .missing      = missing,
    };
    for (int i = 0; i < TS_FLANK_POINTS; i++)
        r->lambda[i] = r->theta_B[i] = NAN;
}

/* Fills what all points share, but for the bulk temperature and what follows from it. */
static void load_case(const ts_micropitting_prepared *p, const ts_micropitting_load *load,
                      ts_film_case *film, ts_micropitting *r, ts_workings *workings)
{
    const double K_A = load->K_A, K_gamma = load->K_gamma, K_v = load->K_v, b = p->b;
    const double K_Hbeta = load->K_Hbeta, K_Halpha = load->K_Halpha;
    const double F_t = ts_tangential_force(load->T_1, p->pair.d_1, workings);

    r->v       = ts_pitch_line_velocity(load->omega_1, p->pair.d_1, workings);
    r->w_Bt    = TS_STEP(workings, w_Bt_formula, F_t * K_A * K_gamma * K_v * K_Hbeta * K_Halpha / b,
                         F_t, K_A, K_gamma, K_v, K_Hbeta, K_Halpha, b);
    film->w_Bt = r->w_Bt;
    film->omega_1 = load->omega_1;
    film->r_1 = film->r_2 = 0.0;
    if (relieved(p)) {
        const double w_A =
            TS_STEP(workings, w_A_formula, F_t * K_A * K_gamma / b, F_t, K_A, K_gamma, b);
        const double C_eff = ts_effective_relief(w_A, stiffness_of(p, load), workings);

        film->r_1 = ts_relief_part(p->mesh.gear[0].C_a, C_eff, 1, workings);
        film->r_2 = ts_relief_part(p->mesh.gear[1].C_a, C_eff, 2, workings);
        return;
    }
    ts_workings_row(workings, "r_1", 0.0, "1", "no tip is relieved");
    ts_workings_row(workings, "r_2", 0.0, "1", "no tip is relieved");
}

static double friction(const ts_micropitting_prepared *p, const ts_micropitting_load *load,
                       const ts_micropitting *r, ts_workings *workings)
{
    const double w_Bt = r->w_Bt, K_Bgamma = p->K_Bgamma, alpha_t = p->pair.alpha_t;

    const ts_friction_input in = {
        .w_Bt = TS_STEP(workings, w_Btmu_formula, w_Bt * K_Bgamma / cos(alpha_t), w_Bt, K_Bgamma,
                        alpha_t),
        .v_SigmaC = ts_sum_of_speeds(r->v, p->pair.alpha_wt, alpha_t, workings),
        .rho_redC = p->rho_redC,
        .eta_oil  = ts_film_viscosity(&p->law, load->theta_oil, workings),
        .Ra_1     = p->mesh.gear[0].Ra,
        .Ra_2     = p->mesh.gear[1].Ra,
        .X_L      = p->mesh.X_L,
    };
    return ts_friction_integral(&in, workings);
}

static double bulk(const ts_micropitting_prepared *p, const ts_micropitting_load *load,
                   const ts_film_case *film, ts_workings *workings)
{
    const double T_1 = load->T_1, omega_1 = load->omega_1, theta_oil = load->theta_oil;
    const double mu_mC = film->mu_m, H_v = p->H_v, a_w = p->pair.a_w, b = p->b, X_S = p->mesh.X_S;
    const int    which = ts_relief_that_counts(p->mesh.driver, p->eps_1, p->eps_2);
    const double r     = which == 1 ? film->r_1 : film->r_2;

    if (!isnan(load->theta_M))
        return load->theta_M;
    ts_workings_row(workings, "r", r, "1",
                    which == 1 ? "r_1, the relief of the tip that counts"
                               : "r_2, the relief of the tip that counts");
    const double X_Ca =
        p->mesh.grade > 6 ? 1.0 : ts_tip_relief_factor(r, p->eps_1, p->eps_2, workings);
    const double P    = TS_STEP(workings, P_formula, T_1 * omega_1, T_1, omega_1);
    const double lost = fmax(0.0, 1e-9 * P * mu_mC * H_v / (fabs(a_w) * b));
    return TS_STEP(workings, theta_M_formula,
                   theta_oil + 7400.0 * pow(lost, 0.72) * X_S / (1.2 * X_Ca), theta_oil, P, mu_mC,
                   H_v, a_w, b, X_S, X_Ca);
}

/* The oil at the bulk temperature. */
static void thicken(const ts_micropitting_prepared *p, ts_film_case *film, ts_workings *workings)
{
    const double theta_M = film->theta_M, E_r = p->E_r;

    const double theta       = TS_STEP(workings, theta_formula, theta_M, theta_M);
    const double eta         = ts_film_viscosity(&p->law, theta, workings);
    const double alpha_theta = ts_film_pressure_coefficient(&p->law, theta, workings);
    const double alpha_M     = TS_STEP(workings, alpha_M_formula, alpha_theta, alpha_theta);

    film->eta_M   = TS_STEP(workings, eta_M_formula, eta, eta);
    film->alpha_M = alpha_M;
    film->G_M     = TS_STEP(workings, G_M_formula, alpha_M * E_r, alpha_M, E_r);
}

static void film_along(const ts_micropitting_prepared *p, const ts_film_case *film,
                       ts_micropitting *r, ts_workings *workings)
{
    ts_workings *const silent = NULL;

    r->thinnest = 0;
    for (int i = 0; i < TS_FLANK_POINTS; i++) {
        const ts_local_film here = ts_film_at(p, film, i, silent);

        r->lambda[i]  = here.lambda;
        r->theta_B[i] = here.theta_B;
        /* A point without a film would win every comparison that it must lose. */
        if (isnan(here.lambda) || here.lambda < r->lambda[r->thinnest])
            r->thinnest = i;
        if (isnan(here.lambda))
            break;
    }
    if (workings != NULL) {
        ts_flank_point_note(&p->pair, &p->path, r->thinnest, workings);
        ts_load_share_note(&p->pair, &p->path, p->mesh.grade, r->thinnest, workings);
    }
    const ts_local_film least      = ts_film_at(p, film, r->thinnest, workings);
    const double        lambda_GFY = least.lambda;
    r->lambda_GFmin                = lambda_GFY;
    if (isfinite(lambda_GFY))
        r->lambda_GFmin = TS_STEP(workings, lambda_GFmin_formula, lambda_GFY, lambda_GFY);
    r->h_min = least.h;
    r->where = ts_flank_point_says(&p->path, r->thinnest);
}

static void judge(const ts_micropitting_prepared *p, ts_micropitting *r, ts_workings *workings)
{
    const double lambda_GFmin = r->lambda_GFmin, lambda_GFP = p->lambda_GFP;

    r->lambda_GFP = lambda_GFP;
    r->S_lambda   = NAN;
    if (isnan(lambda_GFP) || isnan(lambda_GFmin))
        return;
    r->S_lambda =
        TS_STEP(workings, S_lambda_formula, lambda_GFmin / lambda_GFP, lambda_GFmin, lambda_GFP);
}

bool ts_micropitting_rate(const ts_micropitting_prepared *prepared,
                          const ts_micropitting_load *load, ts_micropitting *rating,
                          ts_workings *workings)
{
    const char *missing =
        prepared->missing != NULL ? prepared->missing : fault_of_load(prepared, load);
    ts_film_case film;

    void_rating(rating, missing);
    if (missing != NULL)
        return false;
    rating->remarks = prepared->remarks;
    if (!rubs(load)) {
        rating->remarks |= TS_MICROPITTING_NOTHING_RUBS;
        rating->lambda_GFP = prepared->lambda_GFP;
        rating->S_lambda   = isnan(prepared->lambda_GFP) ? (double)NAN : (double)INFINITY;
        return true;
    }
    load_case(prepared, load, &film, rating, workings);
    film.mu_m       = friction(prepared, load, rating, workings);
    film.theta_M    = bulk(prepared, load, &film, workings);
    rating->mu_m    = film.mu_m;
    rating->theta_M = film.theta_M;
    if (!(film.theta_M < 700.0)) {
        rating->missing = "a bulk temperature at which the oil is still an oil";
        return false;
    }
    thicken(prepared, &film, workings);
    if (film.eta_M < 2e-6 * prepared->law.oil.rho_15)
        rating->remarks |= TS_MICROPITTING_THIN_OIL;
    film_along(prepared, &film, rating, workings);
    judge(prepared, rating, workings);
    return true;
}
