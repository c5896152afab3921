/* rating/scuffing/scuffing.c: will the flanks weld and tear? */
#include "rating/scuffing/scuffing.h"

#include "element/contact_friction.h"
#include "element/cylindrical_contact.h"
#include "element/flank_body.h"
#include "element/tip_relief.h"
#include "element/tooth_force.h"
#include "rating/scuffing/integral_temperature.h"

#include <math.h>

#define ISO_20(what) "ISO/TS 6336-20:2017, " what " (from memory)"
#define ISO_21(what) "ISO/TS 6336-21:2017, " what " (from memory)"

static const ts_formula w_A_formula = {
    .symbol  = "w_A",
    .meaning = "specific load before its own dynamics and distribution",
    .unit    = "N/m",
    .text    = "F_t*K_A*K_gamma/b",
    .source  = ISO_20("load factors"),
};
static const ts_formula w_Bt_formula = {
    .symbol  = "w_Bt",
    .meaning = "specific load at the reference circle",
    .unit    = "N/m",
    .text    = "w_A*K_v*K_Hbeta*K_Halpha",
    .source  = ISO_20("load factors"),
};
static const ts_formula w_n_formula = {
    .symbol  = "w_n",
    .meaning = "load normal to the flanks, per length of contact",
    .unit    = "N/m",
    .text    = "w_Bt/cos(alpha_t)",
    .source  = "derived: F_t/(cos(alpha_t)*cos(beta_b)) on the length b/cos(beta_b)",
};
static const ts_formula C_over_formula = {
    .symbol  = "C_over",
    .meaning = "deflection that the relief of the entering tip leaves over",
    .unit    = "m",
    .text    = "max(0, C_eff - C_a)",
    .source  = ISO_20("approach factor"),
};
static const ts_formula theta_M_formula = {
    .symbol  = "theta_M",
    .meaning = "bulk temperature",
    .unit    = "K",
    .text    = "theta_oil + 0.47*X_S*X_mp*theta_flm",
    .source  = ISO_20("bulk temperature"),
};
static const ts_formula theta_Bmax_formula = {
    .symbol  = "theta_Bmax",
    .meaning = "greatest contact temperature",
    .unit    = "K",
    .text    = "theta_M + theta_flmax",
    .source  = ISO_20("contact temperature"),
};
static const ts_formula S_B_formula = {
    .symbol  = "S_B",
    .meaning = "safety against scuffing by the flash temperature",
    .unit    = "1",
    .text    = "(theta_S - theta_oil)/(theta_Bmax - theta_oil)",
    .source  = ISO_20("safety factor"),
};
static const ts_formula w_Btmu_formula = {
    .symbol  = "w_Btmu",
    .meaning = "specific load that the friction goes by",
    .unit    = "N/m",
    .text    = "max(150e3, w_Bt*K_Bgamma)",
    .source  = ISO_21("mean coefficient of friction"),
};

/* Too little to be a load is none. */
static bool rubs(const ts_scuffing_load *load)
{
    return load->T_1 > 1e-9 && load->omega_1 > 1e-9;
}

static bool helical(const ts_scuffing_prepared *p)
{
    return p->pair.eps_beta > 0.0;
}

static bool at_least(double value, double least, double most)
{
    return value >= least && value <= most; /* false for NaN */
}

static const char *fault_of_load(const ts_scuffing_prepared *p, const ts_scuffing_load *load)
{
    const double K = load->K_A * load->K_gamma * load->K_v * load->K_Hbeta * load->K_Halpha;

    if (!at_least(load->T_1, 0.0, 1e12))
        return "a torque from 0 up";
    if (!at_least(load->omega_1, 0.0, 1e6))
        return "a speed from 0 up";
    if (!at_least(load->theta_oil, 1.0, 2000.0))
        return "the oil temperature";
    if (!isnan(load->theta_M) && !at_least(load->theta_M, load->theta_oil, 5000.0))
        return "a bulk temperature that is not below that of the oil";
    if (!rubs(load))
        return NULL; /* nothing else is asked */
    if (!at_least(K, 1e-3, 1e6) || !(load->K_A > 1e-3 && load->K_gamma > 1e-3))
        return "load factors above 0";
    if (!ts_is_above(helical(p) ? load->c_gamma_alpha : load->cp, 1.0, 1e15))
        return helical(p) ? "the mesh stiffness" : "the single stiffness";
    return ts_is_above(load->eta_oil, 1e-9, 1e6) ? NULL : "the viscosity of the oil";
}

static void void_rating(ts_scuffing *r, const char *missing)
{
    const double none = NAN;

    *r = (ts_scuffing){
        .F_t          = none,
        .v            = none,
        .w_Bt         = none,
        .w_n          = none,
        .C_eff        = none,
        .r_1          = none,
        .r_2          = none,
        .v_gA         = none,
        .v_gE         = none,
        .mu_m         = none,
        .hot_spot     = "",
        .Gamma_hot    = none,
        .theta_M      = none,
        .theta_Bmax   = none,
        .theta_S      = none,
        .S_B          = none,
        .mu_mC        = none,
        .X_Ca         = none,
        .theta_flaint = none,
        .theta_Mint   = none,
        .theta_int    = none,
        .theta_intS   = none,
        .S_intS       = none,
        .S_Sl         = none,
        .flash        = {.theta_flmax = none, .theta_flm = none},
        .missing      = missing,
    };
    for (int i = 0; i < TS_FLANK_POINTS; i++)
        r->flash.X_Gamma[i] = r->flash.p_H[i] = r->flash.theta_fl[i] = NAN;
}

static void load_mesh(const ts_scuffing_prepared *p, const ts_scuffing_load *load, ts_scuffing *r,
                      ts_workings *workings)
{
    const double K_A = load->K_A, K_gamma = load->K_gamma, K_v = load->K_v, b = p->b;
    const double K_Hbeta = load->K_Hbeta, K_Halpha = load->K_Halpha, alpha_t = p->pair.alpha_t;
    const double F_t = ts_tangential_force(load->T_1, p->pair.d_1, workings);

    const double w_A =
        TS_STEP(workings, w_A_formula, F_t * K_A * K_gamma / b, F_t, K_A, K_gamma, b);
    const double w_Bt = TS_STEP(workings, w_Bt_formula, w_A * K_v * K_Hbeta * K_Halpha, w_A, K_v,
                                K_Hbeta, K_Halpha);
    r->F_t            = F_t;
    r->v              = ts_pitch_line_velocity(load->omega_1, p->pair.d_1, workings);
    r->w_Bt           = w_Bt;
    r->w_n            = TS_STEP(workings, w_n_formula, w_Bt / cos(alpha_t), w_Bt, alpha_t);
    r->v_gA           = ts_sliding_speed(load->omega_1, p->pair.u, p->pair.g_f, workings);
    r->v_gE           = ts_sliding_speed(load->omega_1, p->pair.u, p->pair.g_a, workings);
    r->C_eff = ts_effective_relief(w_A, helical(p) ? load->c_gamma_alpha : load->cp, workings);
    r->r_1   = ts_relief_part(p->mesh.gear[0].C_a, r->C_eff, 1, workings);
    r->r_2   = ts_relief_part(p->mesh.gear[1].C_a, r->C_eff, 2, workings);
    if (p->mesh.gear[0].C_a > r->C_eff || p->mesh.gear[1].C_a > r->C_eff)
        r->remarks |= TS_SCUFFING_RELIEF_OVER;
}

static ts_friction_input friction_of(const ts_scuffing_prepared *p, const ts_scuffing_load *load)
{
    return (ts_friction_input){
        .rho_redC = p->rho_redC,
        .eta_oil  = load->eta_oil,
        .Ra_1     = p->mesh.gear[0].Ra,
        .Ra_2     = p->mesh.gear[1].Ra,
        .X_L      = p->mesh.X_L,
    };
}

/* ---- flash temperature ----------------------------------------------------------------------- */

static void flash_path(const ts_scuffing_prepared *p, const ts_scuffing_load *load, ts_scuffing *r,
                       ts_workings *workings)
{
    ts_friction_input friction = friction_of(p, load);
    const double      C_a      = p->mesh.gear[p->mesh.driver == 1 ? 1 : 0].C_a;
    const double      C_eff    = r->C_eff;

    friction.w_Bt     = r->w_Bt;
    friction.v_SigmaC = ts_sum_of_speeds(r->v, p->pair.alpha_wt, p->pair.alpha_t, workings);
    r->mu_m           = ts_friction_flash(&friction, workings);
    ts_workings_row(workings, "C_a", C_a, "m", "relief of the driven gear, whose tip enters");
    const ts_flash_load flash = {
        .w_n     = r->w_n,
        .omega_1 = load->omega_1,
        .mu_m    = r->mu_m,
        .r_1     = r->r_1,
        .r_2     = r->r_2,
        .C_over  = TS_STEP(workings, C_over_formula, fmax(0.0, C_eff - C_a), C_eff, C_a),
    };
    ts_flash_along(&p->flash, &flash, &r->flash, workings);
    r->Gamma_hot = p->flash.path.Gamma[r->flash.hot];
    r->hot_spot  = ts_flank_point_says(&p->flash.path, r->flash.hot);
}

static void flash_safety(const ts_scuffing_prepared *p, const ts_scuffing_load *load,
                         ts_scuffing *r, ts_workings *workings)
{
    const double theta_oil = load->theta_oil, theta_flm = r->flash.theta_flm;
    const double X_S = p->mesh.X_S, X_mp = p->X_mp, theta_flmax = r->flash.theta_flmax;
    const double theta_S = p->theta_S;
    double       theta_M = load->theta_M;

    if (isnan(theta_M))
        theta_M = TS_STEP(workings, theta_M_formula, theta_oil + 0.47 * X_S * X_mp * theta_flm,
                          theta_oil, X_S, X_mp, theta_flm);
    const double theta_Bmax =
        TS_STEP(workings, theta_Bmax_formula, theta_M + theta_flmax, theta_M, theta_flmax);
    r->theta_M    = theta_M;
    r->theta_Bmax = theta_Bmax;
    r->theta_S    = theta_S;
    r->S_B        = NAN;
    if (!isnan(theta_S) && theta_Bmax > theta_oil)
        r->S_B = TS_STEP(workings, S_B_formula, (theta_S - theta_oil) / (theta_Bmax - theta_oil),
                         theta_S, theta_oil, theta_Bmax);
}

/* ---- integral temperature -------------------------------------------------------------------- */

/* NaN and its remark where the method has no formula. */
static double tip_relief_of(const ts_scuffing_prepared *p, ts_scuffing *r, ts_workings *workings)
{
    const int which = ts_relief_that_counts(p->mesh.driver, p->eps_1, p->eps_2);
    double    part  = which == 1 ? r->r_1 : r->r_2;

    if (p->mesh.grade > 6) {
        if (part > 0.0)
            r->remarks |= TS_SCUFFING_GRADE;
        ts_workings_row(workings, "X_Ca", 1.0, "1",
                        ISO_21("tip relief factor, class 7 and coarser"));
        return 1.0;
    }
    ts_workings_row(workings, "r", part, "1", "of the gear whose relief counts");
    return ts_tip_relief_factor(part, p->eps_1, p->eps_2, workings);
}

static double integral_friction(const ts_scuffing_prepared *p, const ts_scuffing_load *load,
                                ts_scuffing *r, ts_workings *workings)
{
    ts_friction_input friction = friction_of(p, load);
    const double      w_Bt = r->w_Bt, K_Bgamma = p->K_Bgamma, held = 50.0;

    friction.w_Bt = TS_STEP(workings, w_Btmu_formula, fmax(150e3, w_Bt * K_Bgamma), w_Bt, K_Bgamma);
    if (w_Bt * K_Bgamma < 150e3)
        r->remarks |= TS_SCUFFING_LOAD_HELD;
    if (r->v > held) {
        r->remarks |= TS_SCUFFING_SPEED_HELD;
        ts_workings_row(workings, "v", held, "m/s", ISO_21("limit of the friction formula"));
    }
    friction.v_SigmaC =
        ts_sum_of_speeds(fmin(r->v, held), p->pair.alpha_wt, p->pair.alpha_t, workings);
    return ts_friction_integral(&friction, workings);
}

static void integral_safety(const ts_scuffing_prepared *p, const ts_scuffing_load *load,
                            ts_scuffing *r, ts_workings *workings)
{
    r->theta_intS = p->theta_intS;
    r->S_intS = r->S_Sl = NAN;
    if (isnan(p->theta_intS) || isnan(r->theta_int))
        return;
    r->S_intS = ts_integral_safety(p->theta_intS, r->theta_int, workings);
    if (r->theta_int > load->theta_oil)
        r->S_Sl = ts_integral_load_safety(p->theta_intS, r->theta_int, load->theta_oil, workings);
}

static void integral(const ts_scuffing_prepared *p, const ts_scuffing_load *load, ts_scuffing *r,
                     ts_workings *workings)
{
    r->mu_mC = integral_friction(p, load, r, workings);
    r->X_Ca = r->theta_flaint = r->theta_Mint = r->theta_int = NAN;
    if (!isnan(p->X_eps)) {
        r->X_Ca                       = tip_relief_of(p, r, workings);
        const ts_integral_input flash = {
            .mu_mC       = r->mu_mC,
            .X_M         = p->X_M,
            .X_BE        = p->X_BE,
            .X_alphabeta = p->X_alphabeta,
            .X_E         = p->X_E,
            .X_Q         = p->X_Q,
            .X_Ca        = r->X_Ca,
            .X_eps       = p->X_eps,
            .w_Bt        = r->w_Bt,
            .K_Bgamma    = p->K_Bgamma,
            .v           = r->v,
            .a_w         = p->pair.a_w,
        };
        r->theta_flaint = ts_mean_flash(&flash, workings);
        r->theta_Mint   = load->theta_M;
        if (isnan(load->theta_M))
            r->theta_Mint =
                ts_bulk_integral(load->theta_oil, r->theta_flaint, p->mesh.X_S, workings);
        r->theta_int = ts_integral_temperature(r->theta_Mint, r->theta_flaint, workings);
    }
    integral_safety(p, load, r, workings);
}

/* ---- all ------------------------------------------------------------------------------------- */

static double safety_at_rest(double limit, double theta_M)
{
    if (isnan(limit))
        return NAN;
    return theta_M < limit ? (double)INFINITY : 0.0;
}

/* Nothing rubs: the oil is the hottest thing there is, unless a bulk temperature was given. */
static void rate_at_rest(const ts_scuffing_prepared *p, const ts_scuffing_load *load,
                         ts_scuffing *r)
{
    void_rating(r, NULL);
    r->remarks           = p->remarks | TS_SCUFFING_NOTHING_RUBS;
    r->hot_spot          = "nowhere";
    r->theta_S           = p->theta_S;
    r->theta_intS        = p->theta_intS;
    r->theta_M           = isnan(load->theta_M) ? load->theta_oil : load->theta_M;
    r->theta_Mint        = r->theta_M;
    r->theta_Bmax        = r->theta_M;
    r->theta_int         = r->theta_M;
    r->flash.theta_flmax = r->flash.theta_flm = r->theta_flaint = 0.0;
    r->S_B    = safety_at_rest(p->theta_S, r->theta_M);
    r->S_intS = r->S_Sl = safety_at_rest(p->theta_intS, r->theta_M);
}

bool ts_scuffing_rate(const ts_scuffing_prepared *prepared, const ts_scuffing_load *load,
                      ts_scuffing *rating, ts_workings *workings)
{
    const char *missing =
        prepared->missing != NULL ? prepared->missing : fault_of_load(prepared, load);

    if (missing != NULL) {
        void_rating(rating, missing);
        return false;
    }
    if (!rubs(load)) {
        rate_at_rest(prepared, load, rating);
        return true;
    }
    rating->remarks = prepared->remarks;
    rating->missing = NULL;
    load_mesh(prepared, load, rating, workings);
    flash_path(prepared, load, rating, workings);
    flash_safety(prepared, load, rating, workings);
    integral(prepared, load, rating, workings);
    return true;
}
