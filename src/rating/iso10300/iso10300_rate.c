/* rating/iso10300/iso10300_rate.c: does a bevel pair bear this load for this long? */
#include "rating/iso10300/bevel_source.h"
#include "rating/iso10300/bevel_strength.h"
#include "rating/iso10300/iso10300.h"

#include <math.h>
#include <stddef.h>

#define GENERAL ISO_10300_1 "6"

BEVEL_FORMULA(F_mt, "tangential force at the mean pitch diameter", "N", "2*T_1/d_m1", GENERAL);
BEVEL_FORMULA(v_mt, "speed at the mean pitch diameter", "m/s", "omega_1*d_m1/2", GENERAL);
BEVEL_FORMULA(cp, "single stiffness (1 N/(mm um) is 1 GPa)", "Pa", "14e9*C_F", ISO_10300_1 "9");
BEVEL_FORMULA(c_gamma, "mesh stiffness (1 N/(mm um) is 1 GPa)", "Pa", "20e9*C_F", ISO_10300_1 "9");
BEVEL_FORMULA(n_E1, "resonance speed of gear 1", "rad/s", "sqrt(c_gamma/m_red)/z_1",
              ISO_10300_1 "7.5");
BEVEL_FORMULA(N, "resonance ratio", "1", "omega_1/n_E1", ISO_10300_1 "7.5");
BEVEL_FORMULA(y_p, "running-in allowance of the pair", "m", "(y_p1 + y_p2)/2", ISO_10300_1 "9.5");
BEVEL_FORMULA(f_peff, "pitch deviation after running in", "m", "f_pt - y_p", ISO_10300_1 "7.4");
BEVEL_FORMULA(B_p, "pitch deviation over the deflection under load", "1",
              "b_v*f_peff*cp/(F_mt*K_A)", ISO_10300_1 "7.6");
BEVEL_FORMULA(F_mtH, "force that decides how teeth share it", "N", "F_mt*K_A*K_v*K_Hbeta",
              ISO_10300_1 "9.4");

#define S_H_TEXT(I, M) "sigma_HP" I "/sigma_H"
#define S_F_TEXT(I, M) "sigma_FP" I "/sigma_F" I
BEVEL_FORMULAS(S_H, "safety against pitting", "1", S_H_TEXT, ISO_10300_2 "6.3");
BEVEL_FORMULAS(S_F, "safety against tooth breakage", "1", S_F_TEXT, ISO_10300_3 "6.3");

/* ---- before anything ------------------------------------------------------------------------- */

static const char *unfit(const ts_iso10300_load *load)
{
    if (!(load->T_1 >= 0.0 && load->T_1 < 1e30) || !(load->omega_1 >= 0.0 && load->omega_1 < 1e30))
        return "torque and speed must be known, and not below 0";
    if (!(load->K_A > 0.0 && load->K_A < 1e30))
        return "the application factor K_A must be above 0";
    for (int gear = 0; gear < 2; gear++) {
        if (!(load->N_L[gear] > 0.0 && load->N_L[gear] < 1e300))
            return "the load cycles must be above 0";
        if (!(load->Y_M[gear] > 0.0 && load->Y_M[gear] <= 1.0))
            return "the mean stress factor Y_M must be above 0 and not above 1";
    }
    return NULL;
}

static void forget(ts_iso10300_rating *r)
{
    static const ts_iso10300_gear_rating nothing = {NAN, NAN, NAN, NAN, NAN,
                                                    NAN, NAN, NAN, NAN, NAN};

    *r      = (ts_iso10300_rating){.range = TS_BEVEL_SPEED_SUBCRITICAL};
    r->F_mt = r->v_mt = r->C_F = r->cp = r->c_gamma = r->n_E1 = r->N = NAN;
    r->y_p = r->f_peff = r->B_p = r->Z_v = r->F_n = r->sigma_H0 = r->sigma_H = NAN;
    r->K_v = r->K_Hbeta = r->K_Fbeta = r->K_Halpha = r->K_Falpha = NAN;
    r->gear[0]                                                   = nothing;
    r->gear[1]                                                   = nothing;
}

static bool rate_idle(ts_iso10300_rating *r)
{
    r->remarks |= TS_BEVEL_REMARK(TS_BEVEL_REMARK_NO_LOAD);
    r->sigma_H0 = r->sigma_H = 0.0;
    for (int gear = 0; gear < 2; gear++) {
        r->gear[gear].sigma_F0 = r->gear[gear].sigma_F = 0.0;
        r->gear[gear].S_H = r->gear[gear].S_F = INFINITY;
        r->gear[gear].N_H = r->gear[gear].N_F = INFINITY;
    }
    return true;
}

/* ---- load factors ---------------------------------------------------------------------------- */

static void rate_speed(const ts_iso10300_prepared *p, const ts_iso10300_load *load,
                       ts_iso10300_rating *r, ts_workings *workings)
{
    const double F_mt = r->F_mt, K_A = load->K_A, omega_1 = load->omega_1, m_red = p->m_red;
    const double z_1 = p->pair.in.z_1, b_v = p->virt.b_v, f_pt = p->f_pt;

    const double C_F     = ts_bevel_stiffness_share(F_mt, K_A, p->virt.b_veff, workings);
    const double cp      = TS_STEP(workings, cp_formula, TS_BEVEL_CP_0 * C_F, C_F);
    const double c_gamma = TS_STEP(workings, c_gamma_formula, TS_BEVEL_CGAMMA_0 * C_F, C_F);
    const double n_E1 =
        TS_STEP(workings, n_E1_formula, sqrt(c_gamma / m_red) / z_1, c_gamma, m_red, z_1);
    const double N = TS_STEP(workings, N_formula, omega_1 / n_E1, omega_1, n_E1);

    const ts_iso10300_gear *g = p->mesh.gear;
    const double            y_p1 =
        ts_bevel_running_in(g[0].class, g[0].sigma_Hlim, g[0].f_pt, r->v_mt, 0, workings);
    const double y_p2 =
        ts_bevel_running_in(g[1].class, g[1].sigma_Hlim, g[1].f_pt, r->v_mt, 1, workings);
    const double y_p    = TS_STEP(workings, y_p_formula, (y_p1 + y_p2) / 2.0, y_p1, y_p2);
    const double f_peff = TS_STEP(workings, f_peff_formula, f_pt - y_p, f_pt, y_p);
    const double B_p = TS_STEP(workings, B_p_formula, b_v * f_peff * cp / (F_mt * K_A), b_v, f_peff,
                               cp, F_mt, K_A);

    r->C_F     = C_F;
    r->cp      = cp;
    r->c_gamma = c_gamma;
    r->n_E1    = n_E1;
    r->N       = N;
    r->range   = ts_bevel_speed_of(N);
    r->y_p     = y_p;
    r->f_peff  = f_peff;
    r->B_p     = B_p;
    r->K_v     = ts_bevel_dynamic_factor(N, &p->c_v, B_p, workings);
}

static void rate_shares(const ts_iso10300_prepared *p, const ts_iso10300_load *load,
                        ts_iso10300_rating *r, ts_workings *workings)
{
    const double F_mt = r->F_mt, K_A = load->K_A, K_v = r->K_v, K_Hbeta = p->K_Hbeta;

    const ts_bevel_transverse_input in = {
        .eps_valpha = p->virt.eps_valpha,
        .eps_vgamma = p->virt.eps_vgamma,
        .c_gamma    = r->c_gamma,
        .f_peff     = r->f_peff,
        .b_v        = p->virt.b_v,
        .F_mtH =
            TS_STEP(workings, F_mtH_formula, F_mt * K_A * K_v * K_Hbeta, F_mt, K_A, K_v, K_Hbeta),
        .Z_LS  = p->lines.Z_LS,
        .Y_eps = p->Y_eps,
    };
    const ts_bevel_transverse spread = ts_bevel_transverse_load(&in, workings);

    r->K_Hbeta  = K_Hbeta;
    r->K_Fbeta  = p->K_Fbeta;
    r->K_Halpha = spread.K_Halpha;
    r->K_Falpha = spread.K_Falpha;
    r->remarks |=
        ts_bevel_remark_when(spread.K_Halpha < spread.K_alpha, TS_BEVEL_REMARK_CONTACT_SHARING) |
        ts_bevel_remark_when(spread.K_Falpha < spread.K_alpha, TS_BEVEL_REMARK_BENDING_SHARING);
}

/* ---- stresses -------------------------------------------------------------------------------- */

static void rate_contact(const ts_iso10300_prepared *p, const ts_iso10300_load *load,
                         ts_iso10300_rating *r, ts_workings *workings)
{
    const double K[4] = {load->K_A, r->K_v, r->K_Hbeta, r->K_Halpha};

    r->F_n = ts_bevel_normal_force(r->F_mt, p->pair.in.alpha_n, p->pair.in.beta_m, workings);
    const ts_bevel_contact_input in = {
        .F_n     = r->F_n,
        .l_bm    = p->lines.middle.l_b,
        .rho_rel = p->virt.rho_rel,
        .Z_MB    = p->mid.Z_MB,
        .Z_LS    = p->lines.Z_LS,
        .Z_E     = p->Z_E,
        .Z_K     = p->mesh.Z_K,
    };
    r->sigma_H0 = ts_bevel_contact_nominal(&in, workings);
    r->sigma_H  = ts_bevel_contact_stress(r->sigma_H0, K, workings);
    r->Z_v      = ts_bevel_film_speed(p->C_Zv, r->v_mt, workings);
}

static void judge_contact(const ts_iso10300_prepared *p, const ts_iso10300_load *load, int gear,
                          ts_iso10300_rating *r, ts_workings *workings)
{
    const ts_iso10300_gear  *g       = &p->mesh.gear[gear];
    ts_iso10300_gear_rating *out     = &r->gear[gear];
    const double             sigma_H = r->sigma_H;
    const ts_bevel_life     *life    = &p->gear[gear].life_H;

    out->Z_NT = ts_bevel_life_factor(life, load->N_L[gear], TS_BEVEL_CONTACT, gear, workings);
    const ts_bevel_flank_strength strength = {
        .sigma_Hlim = g->sigma_Hlim,
        .Z_NT       = out->Z_NT,
        .Z_X        = p->Z_X,
        .Z_L        = p->Z_L,
        .Z_v        = r->Z_v,
        .Z_R        = p->Z_R,
        .Z_W        = g->Z_W,
        .Z_Hyp      = p->Z_Hyp,
    };
    const double sigma_HP = ts_bevel_flank_permitted(&strength, gear, workings);

    out->sigma_HP = sigma_HP;
    out->S_H      = TS_BEVEL_STEP(workings, S_H_formulas, sigma_HP / sigma_H,
                                  TS_BEVEL_SELF("sigma_HP", sigma_HP), TS_BEVEL_PAIR(sigma_H));
    out->N_H      = ts_bevel_life_cycles(life, out->Z_NT / out->S_H);
}

static void judge_bending(const ts_iso10300_prepared *p, const ts_iso10300_load *load, int gear,
                          ts_iso10300_rating *r, ts_workings *workings)
{
    const ts_iso10300_gear_prepared *g    = &p->gear[gear];
    ts_iso10300_gear_rating         *out  = &r->gear[gear];
    const double                     K[4] = {load->K_A, r->K_v, r->K_Fbeta, r->K_Falpha};
    const ts_bevel_bending_input     in   = {
              .F_mt  = r->F_mt,
              .b_v   = p->virt.b_v,
              .m_mn  = p->pair.m_mn,
              .Y_Fa  = g->root.Y_Fa,
              .Y_Sa  = g->root.Y_Sa,
              .Y_eps = p->Y_eps,
              .Y_BS  = p->slant.Y_BS,
              .Y_LS  = p->lines.Y_LS,
    };

    out->sigma_F0        = ts_bevel_bending_nominal(&in, gear, workings);
    const double sigma_F = ts_bevel_bending_stress(out->sigma_F0, K, gear, workings);
    out->Y_NT = ts_bevel_life_factor(&g->life_F, load->N_L[gear], TS_BEVEL_BENDING, gear, workings);

    const ts_bevel_root_strength strength = {
        .sigma_Flim  = p->mesh.gear[gear].sigma_Flim,
        .Y_NT        = out->Y_NT,
        .Y_deltarelT = g->Y_deltarelT,
        .Y_RrelT     = g->Y_RrelT,
        .Y_X         = g->Y_X,
        .Y_M         = load->Y_M[gear],
    };
    const double sigma_FP = ts_bevel_root_permitted(&strength, gear, workings);

    out->sigma_F  = sigma_F;
    out->sigma_FP = sigma_FP;
    out->S_F =
        TS_BEVEL_STEP(workings, S_F_formulas, sigma_FP / sigma_F,
                      TS_BEVEL_SELF("sigma_FP", sigma_FP), TS_BEVEL_SELF("sigma_F", sigma_F));
    out->N_F = ts_bevel_life_cycles(&g->life_F, out->Y_NT / out->S_F);
}

/* ---- the whole ------------------------------------------------------------------------------- */

static ts_bevel_remarks remarks_of_case(const ts_iso10300_load *load, const ts_iso10300_rating *r)
{
    return ts_bevel_remark_when(r->C_F < 1.0, TS_BEVEL_REMARK_LOAD_LOW) |
           ts_bevel_remark_when(r->range == TS_BEVEL_SPEED_RESONANCE, TS_BEVEL_REMARK_RESONANCE) |
           ts_bevel_remark_when(r->range == TS_BEVEL_SPEED_INTERMEDIATE,
                                TS_BEVEL_REMARK_INTERMEDIATE) |
           ts_bevel_remark_when(r->range == TS_BEVEL_SPEED_SUPERCRITICAL,
                                TS_BEVEL_REMARK_SUPERCRITICAL) |
           ts_bevel_remark_when(load->N_L[0] > 1e10 || load->N_L[1] > 1e10, TS_BEVEL_REMARK_CYCLES);
}

bool ts_iso10300_rate(const ts_iso10300_prepared *prepared, const ts_iso10300_load *load,
                      ts_iso10300_rating *rating, ts_workings *workings)
{
    const ts_iso10300_prepared *p   = prepared;
    ts_iso10300_rating         *r   = rating;
    const double                T_1 = load->T_1, omega_1 = load->omega_1, d_m1 = p->pair.d_m1;

    forget(r);
    r->missing = p->missing != NULL ? p->missing : unfit(load);
    if (r->missing != NULL)
        return false;
    r->F_mt = TS_STEP(workings, F_mt_formula, 2.0 * T_1 / d_m1, T_1, d_m1);
    r->v_mt = TS_STEP(workings, v_mt_formula, omega_1 * d_m1 / 2.0, omega_1, d_m1);
    if (!(r->F_mt > 0.0))
        return rate_idle(r);
    rate_speed(p, load, r, workings);
    rate_shares(p, load, r, workings);
    rate_contact(p, load, r, workings);
    for (int gear = 0; gear < 2; gear++) {
        judge_contact(p, load, gear, r, workings);
        judge_bending(p, load, gear, r, workings);
    }
    r->remarks |= remarks_of_case(load, r);
    return true;
}

double ts_iso10300_reserve(const ts_iso10300_rating *rating, const ts_iso10300_load *load,
                           ts_bevel_stress *stress, int *gear)
{
    double least = INFINITY;

    if (!(load->S_Hmin > 0.0) || !(load->S_Fmin > 0.0))
        return NAN;
    for (int i = 0; i < 4; i++) {
        const ts_iso10300_gear_rating *of = &rating->gear[i % 2];
        const double ratio                = i < 2 ? of->S_H / load->S_Hmin : of->S_F / load->S_Fmin;

        if (isnan(ratio))
            return NAN;
        if (i > 0 && !(ratio < least))
            continue;
        least = ratio;
        if (stress != NULL)
            *stress = i < 2 ? TS_BEVEL_CONTACT : TS_BEVEL_BENDING;
        if (gear != NULL)
            *gear = i % 2;
    }
    return least - 1.0;
}
