/* rating/scuffing/bevel_scuffing.c: will the flanks of a bevel pair weld and tear? */
#include "rating/scuffing/bevel_scuffing.h"

#include "element/contact_friction.h"
#include "element/flank_body.h"
#include "element/hertz.h"

#include <math.h>

#define ISO_21(what) "ISO/TS 6336-21:2017, bevel gears, " what " (from memory)"
#define VIRTUAL      "ISO 10300-1:2014, annex A: of the virtual gears (from memory)"

#define FORMULA(name, what, in_unit, expression, from)                                             \
    static const ts_formula name##_formula = {.symbol  = #name,                                    \
                                              .meaning = (what),                                   \
                                              .unit    = (in_unit),                                \
                                              .text    = (expression),                             \
                                              .source  = (from)}

FORMULA(rho_T, "length of the line of action between the base circles", "m", "a_v*sin(alpha_vet)",
        VIRTUAL);
FORMULA(rho_C1, "curvature of gear 1 at the pitch point", "m", "d_v1/2*sin(alpha_vet)", VIRTUAL);
FORMULA(rho_a1, "curvature of gear 1 at its tip", "m", "sqrt(d_va1^2 - d_vb1^2)/2", VIRTUAL);
FORMULA(rho_A1, "curvature of gear 1 where contact begins", "m",
        "rho_T - sqrt(d_va2^2 - d_vb2^2)/2", VIRTUAL);
FORMULA(eps_1, "contact ratio between the pitch point and the tip of gear 1", "1",
        "(rho_a1 - rho_C1)/p_vet", ISO_21("addendum contact ratio"));
FORMULA(eps_2, "contact ratio between the pitch point and the tip of gear 2", "1",
        "(rho_C1 - rho_A1)/p_vet", ISO_21("addendum contact ratio"));
FORMULA(eps_gamma, "total contact ratio", "1", "eps_valpha + eps_vbeta", VIRTUAL);
FORMULA(u, "ratio of the virtual gears", "1", "u_v", VIRTUAL);
FORMULA(a_w, "centre distance of the virtual gears", "m", "a_v", VIRTUAL);
FORMULA(alpha_wt, "working pressure angle, transverse", "rad", "alpha_vet", VIRTUAL);
FORMULA(alpha_t, "pressure angle, transverse", "rad", "alpha_vet", VIRTUAL);
FORMULA(beta, "helix angle", "rad", "beta_m", VIRTUAL);
FORMULA(beta_b, "helix angle at the base circle", "rad", "beta_vb", VIRTUAL);
FORMULA(v, "pitch line velocity", "m/s", "v_mt", ISO_21("mean coefficient of friction"));
FORMULA(w_Bt, "specific load with all load factors, on the width that carries", "N/m",
        "F_mt*K_A*K_v*K_Hbeta*K_Halpha/b_veff", ISO_21("load factors"));
FORMULA(w_Btmu, "specific load that the friction goes by", "N/m", "max(150e3, w_Bt*K_Bgamma)",
        ISO_21("mean coefficient of friction"));

/* ---- the mesh -------------------------------------------------------------------------------- */

static const char *fault_of(const ts_bevel_virtual *virt, const ts_scuffing_mesh *mesh)
{
    for (int g = 0; g < 2; g++) {
        const ts_scuffing_gear *gear = &mesh->gear[g];

        if (!ts_is_above(gear->body.E, 1e6, 1e13) ||
            !(gear->body.nu >= 0.0 && gear->body.nu < 0.5) ||
            !ts_is_above(gear->body.B_M, 1e-3, 1e7))
            return "modulus, Poisson's ratio and thermal contact coefficient of both gears";
        if (!ts_is_above(gear->Ra, 1e-12, 1e-3) || !ts_is_above(gear->X_W, 1e-6, 100.0))
            return "roughness and structural factor of both gears";
        if (!(virt->d_va[g] > virt->d_vb[g]))
            return "teeth that reach beyond their base circles";
    }
    if (mesh->driver != 1 && mesh->driver != 2)
        return "which gear drives, 1 or 2";
    if (!ts_is_above(mesh->X_S, 1e-6, 10.0) || !ts_is_above(mesh->X_L, 1e-6, 100.0))
        return "the lubrication factors X_S and X_L";
    return mesh->phi_E >= 0.0 && mesh->phi_E <= 1.0 ? NULL : "a degree of running in from 0 to 1";
}

static void prepare_path(ts_bevel_scuffing_prepared *p, ts_workings *workings)
{
    const ts_bevel_virtual *virt = &p->virt;
    const ts_scuffing_gear *gear = p->mesh.gear;
    const double a_v = virt->a_v, alpha_vet = virt->alpha_vet, p_vet = virt->p_vet, u_v = virt->u_v;
    const double d_v1 = virt->d_v[0], d_va1 = virt->d_va[0], d_va2 = virt->d_va[1];
    const double d_vb1 = virt->d_vb[0], d_vb2 = virt->d_vb[1];

    const double rho_T = TS_STEP(workings, rho_T_formula, a_v * sin(alpha_vet), a_v, alpha_vet);
    const double rho_C1 =
        TS_STEP(workings, rho_C1_formula, d_v1 / 2.0 * sin(alpha_vet), d_v1, alpha_vet);
    const double rho_a1 =
        TS_STEP(workings, rho_a1_formula, sqrt(d_va1 * d_va1 - d_vb1 * d_vb1) / 2.0, d_va1, d_vb1);
    const double rho_A1 =
        TS_STEP(workings, rho_A1_formula, rho_T - sqrt(d_va2 * d_va2 - d_vb2 * d_vb2) / 2.0, rho_T,
                d_va2, d_vb2);
    p->eps_1 = TS_STEP(workings, eps_1_formula, (rho_a1 - rho_C1) / p_vet, rho_a1, rho_C1, p_vet);
    p->eps_2 = TS_STEP(workings, eps_2_formula, (rho_C1 - rho_A1) / p_vet, rho_C1, rho_A1, p_vet);
    if (!(p->eps_1 > 0.0 && p->eps_2 > 0.0 && rho_A1 > 0.0 && rho_a1 < rho_T)) {
        p->remarks |= TS_SCUFFING_PITCH_POINT;
        p->ends = (ts_integral_ends){NAN, NAN, NAN, NAN};
        return;
    }
    const ts_integral_path path = {
        .E_r = ts_reduced_modulus(gear[0].body.E, gear[0].body.nu, gear[1].body.E, gear[1].body.nu,
                                  workings),
        .B_M = {gear[0].body.B_M, gear[1].body.B_M},
        .u   = TS_STEP(workings, u_formula, u_v, u_v),
        .rho_T  = rho_T,
        .rho_A1 = rho_A1,
        .rho_C1 = rho_C1,
        .rho_E1 = rho_a1,
        .eps_1  = p->eps_1,
        .eps_2  = p->eps_2,
        .driver = p->mesh.driver,
    };
    p->ends = ts_integral_ends_of(&path, workings);
    if (isnan(p->ends.X_eps))
        p->remarks |= TS_SCUFFING_OVERLAP;
}

static void prepare_factors(ts_bevel_scuffing_prepared *p, double alpha_n, double beta_m,
                            ts_workings *workings)
{
    const ts_bevel_virtual *virt = &p->virt;
    const ts_scuffing_mesh *mesh = &p->mesh;
    const double            a_v = virt->a_v, u_v = virt->u_v, alpha_vet = virt->alpha_vet;
    const double beta_vb = virt->beta_vb, Ra = (mesh->gear[0].Ra + mesh->gear[1].Ra) / 2.0;
    const double eps_valpha = virt->eps_valpha, eps_vbeta = virt->eps_vbeta;

    const ts_angle_factor_input angle = {
        .alpha_wt = TS_STEP(workings, alpha_wt_formula, alpha_vet, alpha_vet),
        .alpha_t  = TS_STEP(workings, alpha_t_formula, alpha_vet, alpha_vet),
        .alpha_n  = alpha_n,
        .beta     = TS_STEP(workings, beta_formula, beta_m, beta_m),
    };
    const double a_w    = TS_STEP(workings, a_w_formula, a_v, a_v);
    const double u      = TS_STEP(workings, u_formula, u_v, u_v);
    const double beta_b = TS_STEP(workings, beta_b_formula, beta_vb, beta_vb);
    const double eps_gamma =
        TS_STEP(workings, eps_gamma_formula, eps_valpha + eps_vbeta, eps_valpha, eps_vbeta);

    p->X_W = fmin(mesh->gear[0].X_W, mesh->gear[1].X_W);
    ts_workings_row(workings, "X_W", p->X_W, "1",
                    "the smaller of both gears: common practice, no source");
    p->X_alphabeta = ts_angle_factor(&angle, workings);
    p->rho_redC    = ts_pitch_point_radius(a_w, u, angle.alpha_wt, beta_b, workings);
    p->K_Bgamma    = ts_helical_load_factor(eps_gamma, workings);
    ts_workings_row(workings, "Ra", Ra, "m", "mean of both flanks");
    p->X_E = ts_running_in_factor(mesh->phi_E, Ra, p->rho_redC, workings);
}

static void prepare_limit(ts_bevel_scuffing_prepared *p, ts_workings *workings)
{
    const ts_scuffing_mesh *mesh = &p->mesh;

    p->theta_intS = ts_is_above(mesh->theta_intS, 0.0, 5000.0) ? mesh->theta_intS : (double)NAN;
    if (isnan(p->theta_intS) && ts_is_above(mesh->S_FZG, 1e-6, 100.0) &&
        ts_is_above(mesh->nu_40, 1e-9, 1.0)) {
        const ts_integral_limit_input limit = {
            .S_FZG = mesh->S_FZG, .nu_40 = mesh->nu_40, .X_L = mesh->X_L, .X_W = p->X_W};

        p->theta_intS = ts_integral_limit(&limit, workings);
        if (!(mesh->S_FZG >= 1.0 && mesh->S_FZG <= 12.0))
            p->remarks |= TS_SCUFFING_STAGE;
    }
    if (isnan(p->theta_intS))
        p->remarks |= TS_SCUFFING_NO_LIMIT;
}

bool ts_bevel_scuffing_prepare(const ts_bevel_virtual *virt, double alpha_n, double beta_m,
                               const ts_scuffing_mesh *mesh, ts_bevel_scuffing_prepared *prepared,
                               ts_workings *workings)
{
    prepared->mesh    = *mesh;
    prepared->virt    = *virt;
    prepared->remarks = 0;
    prepared->missing = fault_of(virt, mesh);
    if (prepared->missing != NULL)
        return false;
    prepare_path(prepared, workings);
    prepare_factors(prepared, alpha_n, beta_m, workings);
    prepare_limit(prepared, workings);
    return true;
}

/* ---- one load case --------------------------------------------------------------------------- */

/* Too little to be a load is none. */
static bool rubs(const ts_bevel_scuffing_load *load)
{
    return load->F_mt > 1e-9 && load->v_mt > 1e-9;
}

static const char *fault_of_load(const ts_bevel_scuffing_load *load)
{
    const double K = load->K_A * load->K_v * load->K_Hbeta * load->K_Halpha;

    if (!(load->F_mt >= 0.0 && load->F_mt < 1e12))
        return "a tooth force from 0 up";
    if (!(load->v_mt >= 0.0 && load->v_mt < 1e6))
        return "a speed from 0 up";
    if (!ts_is_above(load->theta_oil, 1.0, 2000.0))
        return "the oil temperature";
    if (!isnan(load->theta_M) && !(load->theta_M >= load->theta_oil && load->theta_M < 5000.0))
        return "a bulk temperature that is not below that of the oil";
    if (!rubs(load))
        return NULL; /* nothing else is asked */
    if (!(K >= 1e-3 && K <= 1e6))
        return "load factors above 0";
    return ts_is_above(load->eta_oil, 1e-9, 1e6) ? NULL : "the viscosity of the oil";
}

static double friction(const ts_bevel_scuffing_prepared *p, const ts_bevel_scuffing_load *load,
                       ts_bevel_scuffing *r, ts_workings *workings)
{
    const double w_Bt = r->w_Bt, K_Bgamma = p->K_Bgamma, held = 50.0;

    if (w_Bt * K_Bgamma < 150e3)
        r->remarks |= TS_SCUFFING_LOAD_HELD;
    const double w_Btmu =
        TS_STEP(workings, w_Btmu_formula, fmax(150e3, w_Bt * K_Bgamma), w_Bt, K_Bgamma);
    if (load->v_mt > held) {
        r->remarks |= TS_SCUFFING_SPEED_HELD;
        ts_workings_row(workings, "v", held, "m/s", ISO_21("limit of the friction formula"));
    }
    const ts_friction_input in = {
        .w_Bt     = w_Btmu,
        .v_SigmaC = ts_sum_of_speeds(fmin(load->v_mt, held), p->virt.alpha_vet, p->virt.alpha_vet,
                                     workings),
        .rho_redC = p->rho_redC,
        .eta_oil  = load->eta_oil,
        .Ra_1     = p->mesh.gear[0].Ra,
        .Ra_2     = p->mesh.gear[1].Ra,
        .X_L      = p->mesh.X_L,
    };
    return ts_friction_integral(&in, workings);
}

static void heat(const ts_bevel_scuffing_prepared *p, const ts_bevel_scuffing_load *load,
                 ts_bevel_scuffing *r, ts_workings *workings)
{
    const double F_mt = load->F_mt, K_A = load->K_A, K_v = load->K_v, b_veff = p->virt.b_veff;
    const double K_Hbeta = load->K_Hbeta, K_Halpha = load->K_Halpha, v_mt = load->v_mt;

    r->w_Bt = TS_STEP(workings, w_Bt_formula, F_mt * K_A * K_v * K_Hbeta * K_Halpha / b_veff, F_mt,
                      K_A, K_v, K_Hbeta, K_Halpha, b_veff);
    const double v = TS_STEP(workings, v_formula, v_mt, v_mt);
    r->mu_mC       = friction(p, load, r, workings);
    ts_workings_row(workings, "X_Ca", 1.0, "1", "crowning counts as no relief, on the safe side");
    const ts_integral_input in = {
        .mu_mC       = r->mu_mC,
        .X_M         = p->ends.X_M,
        .X_BE        = p->ends.X_BE,
        .X_alphabeta = p->X_alphabeta,
        .X_E         = p->X_E,
        .X_Q         = p->ends.X_Q,
        .X_Ca        = 1.0,
        .X_eps       = p->ends.X_eps,
        .w_Bt        = r->w_Bt,
        .K_Bgamma    = p->K_Bgamma,
        .v           = v,
        .a_w         = p->virt.a_v,
    };
    if (isnan(p->ends.X_eps))
        return;
    r->theta_flaint = ts_mean_flash(&in, workings);
    r->theta_Mint   = load->theta_M;
    if (isnan(load->theta_M))
        r->theta_Mint = ts_bulk_integral(load->theta_oil, r->theta_flaint, p->mesh.X_S, workings);
    r->theta_int = ts_integral_temperature(r->theta_Mint, r->theta_flaint, workings);
    r->S_intS    = ts_integral_safety(p->theta_intS, r->theta_int, workings);
}

bool ts_bevel_scuffing_rate(const ts_bevel_scuffing_prepared *prepared,
                            const ts_bevel_scuffing_load *load, ts_bevel_scuffing *rating,
                            ts_workings *workings)
{
    const double none = NAN;

    *rating = (ts_bevel_scuffing){
        none,
        none,
        none,
        none,
        none,
        none,
        prepared->remarks,
        prepared->missing != NULL ? prepared->missing : fault_of_load(load),
    };
    if (rating->missing != NULL)
        return false;
    if (rubs(load)) {
        heat(prepared, load, rating, workings);
        return true;
    }
    rating->remarks |= TS_SCUFFING_NOTHING_RUBS;
    rating->theta_flaint = 0.0;
    rating->theta_int = rating->theta_Mint = isnan(load->theta_M) ? load->theta_oil : load->theta_M;
    if (!isnan(prepared->theta_intS))
        rating->S_intS = rating->theta_int < prepared->theta_intS ? (double)INFINITY : 0.0;
    return true;
}
