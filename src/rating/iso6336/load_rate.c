/* rating/iso6336/load_rate.c: how much more than the nominal load do the teeth carry? */
#include "rating/iso6336/gear_step.h"
#include "rating/iso6336/mesh_stiffness.h"
#include "rating/iso6336/prepare_parts.h"
#include "rating/iso6336/rate_parts.h"
#include "rating/iso6336/reduced_mass.h"
#include "rating/iso6336/running_in.h"
#include "rating/iso6336/transverse_load.h"

#include <math.h>

static const ts_formula F_t_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force at the reference circle",
    .unit    = "N",
    .text    = "2*T_1/d_1",
    .source  = ISO_6336_1 "4.2" RECALLED,
};
static const ts_formula v_formula = {
    .symbol  = "v",
    .meaning = "speed of the reference circle",
    .unit    = "m/s",
    .text    = "omega_1*d_1/2",
    .source  = ISO_6336_1 "4.2" RECALLED,
};
static const ts_formula w_t_formula = {
    .symbol  = "w_t",
    .meaning = "specific load",
    .unit    = "N/m",
    .text    = "F_t*K_A*K_gamma/b",
    .source  = ISO_6336_1 "6.5.2" RECALLED,
};
static const ts_formula f_pbeff_formula = {
    .symbol  = "f_pbeff",
    .meaning = "base pitch deviation after running in",
    .unit    = "m",
    .text    = "f_pb - y_alpha",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula f_falphaeff_formula = {
    .symbol  = "f_falphaeff",
    .meaning = "profile form deviation after running in",
    .unit    = "m",
    .text    = "f_falpha - y_f",
    .source  = ISO_6336_1 "6.5.4" RECALLED,
};
static const ts_formula f_pbhalf_formula = {
    .symbol  = "f_pbeff",
    .meaning = "half of the base pitch deviation, for the relief suits the load",
    .unit    = "m",
    .text    = "f_pbeff/2",
    .source  = ISO_6336_1 "8.3.1" RECALLED,
};
static const ts_formula F_mb_formula = {
    .symbol  = "F_mb",
    .meaning = "mean load over the face width",
    .unit    = "N/m",
    .text    = "w_t*K_v",
    .source  = ISO_6336_1 "7.2" RECALLED,
};
static const ts_formula F_tHb_formula = {
    .symbol  = "F_tHb",
    .meaning = "determinant load over the face width",
    .unit    = "N/m",
    .text    = "F_mb*K_Hbeta",
    .source  = ISO_6336_1 "8.3.2" RECALLED,
};

static void rate_force(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                       ts_iso6336_rating *r, ts_workings *workings)
{
    const double T_1 = load->T_1, omega_1 = load->omega_1, d_1 = p->pair.d_1, b = p->b;
    const double K_A = load->K_A, K_gamma = load->K_gamma;

    const double F_t = TS_STEP(workings, F_t_formula, 2.0 * T_1 / d_1, T_1, d_1);
    r->F_t           = F_t;
    r->v             = TS_STEP(workings, v_formula, omega_1 * d_1 / 2.0, omega_1, d_1);
    r->w_t = TS_STEP(workings, w_t_formula, F_t * K_A * K_gamma / b, F_t, K_A, K_gamma, b);
}

static void rate_swing(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                       ts_iso6336_rating *r, ts_workings *workings)
{
    const ts_iso6336_gear    *g        = p->mesh.gear;
    const ts_running_in_flank flank[2] = {{g[0].class, g[0].sigma_Hlim},
                                          {g[1].class, g[1].sigma_Hlim}};
    const double              f_pb = p->f_pb, f_falpha = p->f_falpha;

    r->cp            = ts_single_stiffness_loaded(p->cp_100, r->w_t, workings);
    r->c_gamma_alpha = ts_mesh_stiffness(r->cp, p->pair.eps_alpha, workings);
    r->c_gamma_beta  = ts_mesh_stiffness_lead(r->c_gamma_alpha, workings);
    r->n_E1          = ts_resonance_speed(r->c_gamma_alpha, p->m_red, p->pair.in.z_1, workings);
    r->N             = ts_resonance_ratio(load->omega_1, r->n_E1, workings);
    r->N_S           = ts_resonance_start(r->w_t, workings);
    r->range         = ts_speed_range_of(r->N, r->N_S);

    const double y_alpha = ts_running_in_pitch(flank, r->v, f_pb, workings);
    const double y_f     = ts_running_in_profile(flank, r->v, f_falpha, workings);
    r->y_alpha           = y_alpha;
    r->y_f               = y_f;
    r->f_pbeff           = TS_STEP(workings, f_pbeff_formula, f_pb - y_alpha, f_pb, y_alpha);
    const ts_dynamic_parameters_input in = {
        .cp          = r->cp,
        .w_t         = r->w_t,
        .f_pbeff     = r->f_pbeff,
        .f_falphaeff = TS_STEP(workings, f_falphaeff_formula, f_falpha - y_f, f_falpha, y_f),
        .C_a         = p->C_a,
    };
    r->B             = ts_dynamic_parameters_of(&in, workings);
    r->K_v           = ts_dynamic_factor(r->N, r->N_S, &p->C_v, &r->B, workings);
    const double w_t = r->w_t, K_v = r->K_v;
    r->F_mb = TS_STEP(workings, F_mb_formula, w_t * K_v, w_t, K_v);
}

static void rate_face(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                      ts_iso6336_rating *r, ts_workings *workings)
{
    const ts_iso6336_gear    *g        = p->mesh.gear;
    const ts_running_in_flank flank[2] = {{g[0].class, g[0].sigma_Hlim},
                                          {g[1].class, g[1].sigma_Hlim}};

    r->F_betax = r->y_beta = r->F_betay = NAN;
    if (load->face == TS_FACE_LOAD_GIVEN) {
        r->K_Hbeta = load->K_Hbeta;
    } else {
        r->F_betax =
            load->face == TS_FACE_LOAD_MISALIGNED
                ? load->F_betax
                : ts_mesh_misalignment(load->f_sh, load->f_ma, p->mesh.lead, r->F_mb, workings);
        r->y_beta  = ts_running_in_lead(flank, r->v, r->F_betax, workings);
        r->F_betay = ts_misalignment_run_in(r->F_betax, r->y_beta, workings);
        r->K_Hbeta = ts_face_load_contact(r->F_betay, r->c_gamma_beta, r->F_mb, workings);
    }
    r->K_Fbeta = ts_face_load_bending(r->K_Hbeta, p->N_F, workings);
}

static void rate_sharing(const ts_iso6336_prepared *p, ts_iso6336_rating *r, ts_workings *workings)
{
    const double                   F_mb = r->F_mb, K_Hbeta = r->K_Hbeta, f_pbeff = r->f_pbeff;
    const ts_transverse_load_input in = {
        .eps_alpha     = p->pair.eps_alpha,
        .eps_gamma     = p->pair.eps_gamma,
        .Z_eps         = p->Z_eps,
        .c_gamma_alpha = r->c_gamma_alpha,
        .f_pbeff       = p->mesh.relief_matched
                             ? TS_STEP(workings, f_pbhalf_formula, f_pbeff / 2.0, f_pbeff)
                             : f_pbeff,
        .F_tHb         = TS_STEP(workings, F_tHb_formula, F_mb * K_Hbeta, F_mb, K_Hbeta),
    };
    const ts_transverse_load out = ts_transverse_load_of(&in, workings);

    r->q_alpha  = out.q_alpha;
    r->K_Halpha = out.K_Halpha;
    r->K_Falpha = out.K_Falpha;
    r->remarks |= ts_remark_when(out.H_limited, TS_REMARK_H_LIMITED) |
                  ts_remark_when(out.F_limited, TS_REMARK_F_LIMITED);
}

void ts_iso6336_rate_load(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                          ts_iso6336_rating *r, ts_workings *workings)
{
    rate_force(p, load, r, workings);
    rate_swing(p, load, r, workings);
    rate_face(p, load, r, workings);
    rate_sharing(p, r, workings);
}
