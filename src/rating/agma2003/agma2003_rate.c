/* rating/agma2003/agma2003_rate.c: does a bevel pair bear this load, by AGMA? */
#include "rating/agma2003/agma2003.h"
#include "rating/agma2003/agma2003_step.h"

#include <math.h>
#include <stddef.h>

AGMA2003_FORMULA(F_et, "tangential force at the outer pitch diameter", "N", "2*T_1/d_e1", "scope");
AGMA2003_FORMULA(v_et, "speed at the outer pitch diameter", "m/s", "omega_1*d_e1/2", "scope");
static const ts_formula d_e_formulas[2] = {
    {"d_e", "outer pitch diameter of the pinion", "m", "1*d_e1", AGMA2003 ", pitting resistance"},
    {"d_e", "outer pitch diameter of the pinion", "m", "1*d_e2", AGMA2003 ", pitting resistance"},
};
#define S_H_TEXT(I, M) "sigma_HP" I "/sigma_H"
#define S_F_TEXT(I, M) "sigma_FP" I "/sigma_F" I
AGMA2003_FORMULAS(S_H, "safety against pitting", "1", S_H_TEXT, "pitting resistance");
AGMA2003_FORMULAS(S_F, "safety against tooth breakage", "1", S_F_TEXT, "bending strength");

static const char *unfit(const ts_agma2003_load *load)
{
    if (!(load->T_1 >= 0.0 && load->T_1 < 1e30) || !(load->omega_1 >= 0.0 && load->omega_1 < 1e30))
        return "torque and speed must be known, and not below 0";
    if (!(load->K_A > 0.0 && load->K_A < 1e30))
        return "the overload factor K_A must be above 0";
    for (int gear = 0; gear < 2; gear++) {
        if (!(load->n_L[gear] > 0.0 && load->n_L[gear] < 1e300))
            return "the load cycles must be above 0";
        if (!(load->Y_M[gear] > 0.0 && load->Y_M[gear] <= 1.0))
            return "the factor Y_M of two-sided bending must be above 0 and not above 1";
    }
    return isnan(load->T_M) || (load->T_M > 0.0 && load->T_M < 2000.0)
               ? NULL
               : "the temperature of the teeth must be above 0 K and below 2000 K";
}

static void forget(ts_agma2003_rating *r)
{
    static const ts_agma2003_gear_rating nothing = {NAN, NAN, NAN, NAN, NAN, NAN, NAN};

    *r = (ts_agma2003_rating){.F_et = NAN, .v_et = NAN, .K_v = NAN, .K_theta = NAN, .sigma_H = NAN};
    r->gear[0] = nothing;
    r->gear[1] = nothing;
}

static uint32_t when(bool holds, ts_agma2003_remark remark)
{
    return holds ? TS_AGMA2003_REMARKED(remark) : 0;
}

static uint32_t remarks_of(const ts_agma2003_pair *p, const ts_agma2003_load *load, double v_et)
{
    const double least = fmin(load->n_L[0], load->n_L[1]), most = fmax(load->n_L[0], load->n_L[1]);

    return when(v_et > p->dynamic.v_max, TS_AGMA2003_REMARK_SPEED) |
           when(least < 1e3, TS_AGMA2003_REMARK_FEW_CYCLES) |
           when(most > 1e10, TS_AGMA2003_REMARK_MANY_CYCLES) |
           when(load->T_M > 393.15, TS_AGMA2003_REMARK_HOT);
}

static void rate_flank(const ts_agma2003_pair *p, const ts_agma2003_force *force,
                       ts_agma2003_rating *r, ts_workings *workings)
{
    const int                 gear    = p->pinion;
    const ts_agma2003_contact contact = {
        .d_e  = TS_BEVEL_STEP(workings, d_e_formulas, p->d_e, TS_BEVEL_SELF("d_e", p->d_e)),
        .Z_E  = p->Z_E,
        .Z_x  = p->Z_x,
        .Z_xc = p->Z_xc,
        .Z_I  = p->in.Z_I,
    };

    r->sigma_H = ts_agma2003_contact_stress(force, &contact, workings);
}

static void judge_flank(const ts_agma2003_pair *p, const ts_agma2003_load *load, int gear,
                        ts_agma2003_rating *r, ts_workings *workings)
{
    ts_agma2003_gear_rating *out     = &r->gear[gear];
    const double             sigma_H = r->sigma_H;

    out->Z_NT = ts_agma2003_life_contact(load->n_L[gear], gear, workings);
    const ts_agma2003_contact_strength strength = {p->in.gear[gear].sigma_Hlim, out->Z_NT,
                                                   p->Z_W[gear], r->K_theta, p->Z_Z};
    const double sigma_HP = ts_agma2003_contact_permitted(&strength, gear, workings);

    out->sigma_HP = sigma_HP;
    if (sigma_H > 0.0)
        out->S_H = TS_BEVEL_STEP(workings, S_H_formulas, sigma_HP / sigma_H,
                                 TS_BEVEL_SELF("sigma_HP", sigma_HP), TS_BEVEL_PAIR(sigma_H));
}

static void judge_root(const ts_agma2003_pair *p, const ts_agma2003_load *load,
                       const ts_agma2003_force *force, int gear, ts_agma2003_rating *r,
                       ts_workings *workings)
{
    ts_agma2003_gear_rating  *out  = &r->gear[gear];
    const ts_agma2003_bending root = {p->geometry.in.m_et, p->Y_x, p->Y_beta, p->in.gear[gear].Y_J};

    out->Y_NT = ts_agma2003_life_bending(load->n_L[gear], p->in.critical, gear, workings);
    const ts_agma2003_bending_strength strength = {p->in.gear[gear].sigma_Flim, out->Y_NT,
                                                   r->K_theta, p->Y_Z, load->Y_M[gear]};
    const double sigma_FP = ts_agma2003_bending_permitted(&strength, gear, workings);

    out->sigma_FP = sigma_FP;
    if (isnan(root.Y_J))
        return;
    const double sigma_F = ts_agma2003_bending_stress(force, &root, gear, workings);
    out->sigma_F         = sigma_F;
    out->S_F =
        TS_BEVEL_STEP(workings, S_F_formulas, sigma_FP / sigma_F,
                      TS_BEVEL_SELF("sigma_FP", sigma_FP), TS_BEVEL_SELF("sigma_F", sigma_F));
}

static bool rate_idle(ts_agma2003_rating *r)
{
    r->remarks |= TS_AGMA2003_REMARKED(TS_AGMA2003_REMARK_NO_LOAD);
    r->missing = NULL;
    r->sigma_H = 0.0;
    for (int gear = 0; gear < 2; gear++) {
        r->gear[gear].sigma_F = 0.0;
        r->gear[gear].S_H = r->gear[gear].S_F = INFINITY;
    }
    return true;
}

static double temperature_of(const ts_agma2003_load *load, ts_workings *workings)
{
    if (!isnan(load->T_M))
        return ts_agma2003_temperature(load->T_M, workings);
    ts_workings_assumed(workings, "K_theta", 1.0, "1", "the teeth stay below 120 degC");
    return 1.0;
}

bool ts_agma2003_rate(const ts_agma2003_pair *pair, const ts_agma2003_load *load,
                      ts_agma2003_rating *rating, ts_workings *workings)
{
    const ts_agma2003_pair *p   = pair;
    ts_agma2003_rating     *r   = rating;
    const double            T_1 = load->T_1, omega_1 = load->omega_1, d_e1 = p->geometry.d_e1;
    const char             *wrong = unfit(load);

    forget(r);
    r->remarks = p->remarks;
    r->missing = wrong != NULL ? wrong : p->missing;
    if (wrong != NULL || !p->rateable)
        return false;
    r->F_et = TS_STEP(workings, F_et_formula, 2.0 * T_1 / d_e1, T_1, d_e1);
    r->v_et = TS_STEP(workings, v_et_formula, omega_1 * d_e1 / 2.0, omega_1, d_e1);
    if (!(r->F_et > 0.0))
        return rate_idle(r);
    r->remarks |= remarks_of(p, load, r->v_et);
    r->K_theta = temperature_of(load, workings);
    r->K_v = isnan(p->K_v) ? ts_agma2003_dynamic_factor(&p->dynamic, r->v_et, workings) : p->K_v;

    const ts_agma2003_force force = {r->F_et, p->geometry.in.b, load->K_A, r->K_v, p->K_Hbeta};
    if (!isnan(p->in.Z_I))
        rate_flank(p, &force, r, workings);
    for (int gear = 0; gear < 2; gear++) {
        judge_flank(p, load, gear, r, workings);
        judge_root(p, load, &force, gear, r, workings);
    }
    return r->missing == NULL;
}
