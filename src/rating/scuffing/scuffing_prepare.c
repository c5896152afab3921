/* rating/scuffing/scuffing_prepare.c: what of a scuffing rating do geometry, surfaces and oil
 * decide?
 */
#include "element/contact_friction.h"
#include "element/flank_body.h"
#include "rating/scuffing/integral_temperature.h"
#include "rating/scuffing/scuffing.h"

#include <math.h>

#define ISO_20(what) "ISO/TS 6336-20:2017, " what " (from memory)"
#define ISO_21(what) "ISO/TS 6336-21:2017, " what " (from memory)"

static const ts_formula eps_1_formula = {
    .symbol  = "eps_1",
    .meaning = "contact ratio between the pitch point and the tip of gear 1",
    .unit    = "1",
    .text    = "g_a/p_bt",
    .source  = ISO_21("addendum contact ratio"),
};
static const ts_formula eps_2_formula = {
    .symbol  = "eps_2",
    .meaning = "contact ratio between the pitch point and the tip of gear 2",
    .unit    = "1",
    .text    = "g_f/p_bt",
    .source  = ISO_21("addendum contact ratio"),
};
static const ts_formula X_mp_formula = {
    .symbol  = "X_mp",
    .meaning = "factor of multiple mating",
    .unit    = "1",
    .text    = "(1 + n_p)/2",
    .source  = ISO_20("bulk temperature"),
};
static const ts_formula theta_S_formula = {
    .symbol  = "theta_S",
    .meaning = "scuffing temperature",
    .unit    = "K",
    .text    = "273.15 + 80 + (0.85 + 1.4*X_W)*X_L*S_FZG^2",
    .source  = ISO_20("scuffing temperature, test A/8.3/90"),
};

static const char *fault_of_gear(const ts_scuffing_gear *gear)
{
    const ts_flank_body body  = {gear->body.E, gear->body.nu, gear->body.B_M, gear->Ra, gear->C_a};
    const char         *fault = ts_flank_body_fault(&body);

    if (fault != NULL)
        return fault;
    return ts_is_above(gear->X_W, 1e-6, 100.0) ? NULL : "the structural factor of both gears";
}

static const char *fault_of_mesh(const ts_scuffing_mesh *mesh, double b)
{
    const char *fault = fault_of_gear(&mesh->gear[0]);

    if (fault == NULL)
        fault = fault_of_gear(&mesh->gear[1]);
    if (fault == NULL)
        fault = ts_flank_mesh_fault(b, mesh->driver, mesh->grade, mesh->X_S, mesh->X_L);
    if (fault != NULL)
        return fault;
    if (mesh->mates < 1 || mesh->mates > 100)
        return "the number of mating gears, from 1 to 100";
    return mesh->phi_E >= 0.0 && mesh->phi_E <= 1.0 ? NULL : "a degree of running in from 0 to 1";
}

static void prepare_ends(ts_scuffing_prepared *p, ts_workings *workings)
{
    const ts_cylindrical_pair *pair = &p->pair;
    const double               g_a = pair->g_a, g_f = pair->g_f, p_bt = pair->p_bt;
    const ts_scuffing_gear    *gear = p->mesh.gear;

    p->eps_1 = TS_STEP(workings, eps_1_formula, g_a / p_bt, g_a, p_bt);
    p->eps_2 = TS_STEP(workings, eps_2_formula, g_f / p_bt, g_f, p_bt);
    if (!(p->eps_1 > 0.0 && p->eps_2 > 0.0)) {
        p->remarks |= TS_SCUFFING_PITCH_POINT;
        p->X_M = p->X_BE = p->X_Q = p->X_eps = NAN;
        return;
    }

    const ts_integral_path path = {
        .E_r    = p->flash.E_r,
        .B_M    = {gear[0].body.B_M, gear[1].body.B_M},
        .u      = pair->u,
        .rho_T  = pair->rho_T,
        .rho_A1 = pair->rho_A1,
        .rho_C1 = pair->rho_C1,
        .rho_E1 = pair->rho_E1,
        .eps_1  = p->eps_1,
        .eps_2  = p->eps_2,
        .driver = p->mesh.driver,
    };
    const ts_integral_ends ends = ts_integral_ends_of(&path, workings);

    p->X_M   = ends.X_M;
    p->X_BE  = ends.X_BE;
    p->X_Q   = ends.X_Q;
    p->X_eps = ends.X_eps;
    if (isnan(p->X_eps))
        p->remarks |= TS_SCUFFING_OVERLAP;
}

static bool stage_known(const ts_scuffing_mesh *mesh)
{
    return ts_is_above(mesh->S_FZG, 1e-6, 100.0);
}

static void prepare_limits(ts_scuffing_prepared *p, ts_workings *workings)
{
    const ts_scuffing_mesh *mesh = &p->mesh;
    const double            X_L = mesh->X_L, X_W = p->X_W, S_FZG = mesh->S_FZG;

    p->theta_S = ts_is_above(mesh->theta_S, 0.0, 5000.0) ? mesh->theta_S : (double)NAN;
    if (isnan(p->theta_S) && stage_known(mesh))
        p->theta_S =
            TS_STEP(workings, theta_S_formula,
                    273.15 + 80.0 + (0.85 + 1.4 * X_W) * X_L * S_FZG * S_FZG, X_W, X_L, S_FZG);
    p->theta_intS = ts_is_above(mesh->theta_intS, 0.0, 5000.0) ? mesh->theta_intS : (double)NAN;
    if (isnan(p->theta_intS) && stage_known(mesh) && ts_is_above(mesh->nu_40, 1e-9, 1.0)) {
        const ts_integral_limit_input limit = {
            .S_FZG = S_FZG, .nu_40 = mesh->nu_40, .X_L = X_L, .X_W = X_W};

        p->theta_intS = ts_integral_limit(&limit, workings);
    }
    if (isnan(p->theta_S) || isnan(p->theta_intS))
        p->remarks |= TS_SCUFFING_NO_LIMIT;
    if (stage_known(mesh) && !(S_FZG >= 1.0 && S_FZG <= 12.0))
        p->remarks |= TS_SCUFFING_STAGE;
}

static void prepare_factors(ts_scuffing_prepared *p, ts_workings *workings)
{
    const ts_cylindrical_pair  *pair  = &p->pair;
    const ts_scuffing_mesh     *mesh  = &p->mesh;
    const double                n_p   = mesh->mates;
    const double                Ra    = (mesh->gear[0].Ra + mesh->gear[1].Ra) / 2.0;
    const ts_angle_factor_input angle = {.alpha_wt = pair->alpha_wt,
                                         .alpha_t  = pair->alpha_t,
                                         .alpha_n  = pair->in.alpha_n,
                                         .beta     = pair->in.beta};

    p->X_W = fmin(mesh->gear[0].X_W, mesh->gear[1].X_W);
    ts_workings_row(workings, "X_W", p->X_W, "1",
                    "the smaller of both gears: common practice, no source");
    p->X_mp     = TS_STEP(workings, X_mp_formula, (1.0 + n_p) / 2.0, n_p);
    p->rho_redC = ts_pitch_point_radius(pair->a_w, pair->u, pair->alpha_wt, pair->beta_b, workings);
    p->K_Bgamma = ts_helical_load_factor(pair->eps_gamma, workings);
    p->X_alphabeta = ts_angle_factor(&angle, workings);
    ts_workings_row(workings, "Ra", Ra, "m", "mean of both flanks");
    p->X_E = ts_running_in_factor(mesh->phi_E, Ra, p->rho_redC, workings);
}

bool ts_scuffing_prepare(const ts_cylindrical_pair *pair, const ts_scuffing_mesh *mesh,
                         ts_scuffing_prepared *prepared, ts_workings *workings)
{
    const ts_flash_body body[2] = {mesh->gear[0].body, mesh->gear[1].body};

    prepared->mesh    = *mesh;
    prepared->pair    = *pair;
    prepared->b       = fmin(pair->in.b_1, pair->in.b_2);
    prepared->remarks = 0;
    prepared->missing = fault_of_mesh(mesh, prepared->b);
    if (prepared->missing != NULL)
        return false;
    ts_flash_prepare(&prepared->pair, body, mesh->grade, mesh->driver, &prepared->flash, workings);
    prepared->missing = prepared->flash.path.missing;
    if (prepared->missing != NULL)
        return false;
    if (ts_load_share_high_ratio(pair))
        prepared->remarks |= TS_SCUFFING_HIGH_RATIO;
    prepare_factors(prepared, workings);
    prepare_ends(prepared, workings);
    prepare_limits(prepared, workings);
    return true;
}
