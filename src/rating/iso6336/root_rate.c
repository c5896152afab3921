/* rating/iso6336/root_rate.c: how far are the roots from breaking? */
#include "rating/iso6336/gear_step.h"
#include "rating/iso6336/rate_parts.h"

#include <stddef.h>

#define SIGMA_F_TEXT(I) "sigma_F0" I "*K_A*K_gamma*K_v*K_Fbeta*K_Falpha"
#define FG_REF_TEXT(I)  "2*sigma_Flim" I "*Y_deltarelT" I "*Y_RrelT" I "*Y_X" I "*Y_M" I
#define FG_STAT_TEXT(I)                                                                            \
    "max(2*sigma_Flim" I "*Y_NTstat" I "*Y_deltastat" I "*Y_Mstat" I ", sigma_FGref" I ")"
#define SIGMA_FP_TEXT(I) "sigma_FG" I "/S_Fmin"
#define S_F_TEXT(I)      "sigma_FG" I "/sigma_F" I
static const ts_formula sigma_F_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_F", "root stress", "Pa", SIGMA_F_TEXT, ISO_6336_3 "5.2" RECALLED);
static const ts_formula FG_ref_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_FGref", "root stress limit of long life (Y_ST = 2)", "Pa", FG_REF_TEXT,
                     ISO_6336_3 "5.4.3" RECALLED);
static const ts_formula FG_stat_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_FGstat", "static root stress limit (Y_ST = 2)", "Pa", FG_STAT_TEXT,
                     ISO_6336_3 "5.4.3" RECALLED);
static const ts_formula sigma_FP_formulas[2] = TS_OF_BOTH_GEARS(
    "sigma_FP", "permissible root stress", "Pa", SIGMA_FP_TEXT, ISO_6336_3 "5.2" RECALLED);
static const ts_formula S_F_formulas[2] = TS_OF_BOTH_GEARS(
    "S_F", "safety against tooth breakage", "1", S_F_TEXT, ISO_6336_3 "5.1" RECALLED);

static ts_life_curve bending_curve(const ts_iso6336_prepared *p, const ts_iso6336_gear_rating *out,
                                   int gear, ts_workings *workings)
{
    const ts_iso6336_gear          *g     = &p->mesh.gear[gear];
    const ts_iso6336_gear_prepared *own   = &p->gear[gear];
    const ts_life_nodes            *nodes = &own->life_F.nodes;

    const double ref = TS_GEAR_STEP(
        workings, FG_ref_formulas,
        2.0 * g->sigma_Flim * own->Y_deltarelT * own->Y_RrelT * own->Y_X * out->Y_M,
        TS_OWN("sigma_Flim", g->sigma_Flim), TS_OWN("Y_deltarelT", own->Y_deltarelT),
        TS_OWN("Y_RrelT", own->Y_RrelT), TS_OWN("Y_X", own->Y_X), TS_OWN("Y_M", out->Y_M));
    const ts_life_curve curve = ts_life_curve_of(
        &own->life_F, 2.0 * g->sigma_Flim * nodes->at_stat * own->Y_deltastat * out->Y_Mstat, ref);
    (void)TS_GEAR_STEP(workings, FG_stat_formulas, curve.sigma_stat,
                       TS_OWN("sigma_Flim", g->sigma_Flim), TS_OWN("Y_NTstat", nodes->at_stat),
                       TS_OWN("Y_deltastat", own->Y_deltastat), TS_OWN("Y_Mstat", out->Y_Mstat),
                       TS_OWN("sigma_FGref", ref));
    return curve;
}

static void rate_gear(const ts_iso6336_prepared *p, const ts_iso6336_load *load, int gear,
                      ts_iso6336_rating *r, ts_workings *workings)
{
    const ts_iso6336_gear_prepared *own = &p->gear[gear];
    ts_iso6336_gear_rating         *out = &r->gear[gear];
    const double K_A = load->K_A, K_gamma = load->K_gamma, K_v = r->K_v, K_Fbeta = r->K_Fbeta;
    const double K_Falpha = r->K_Falpha, S_Fmin = load->S_Fmin, R = load->R[gear];
    const ts_root_stress_input nominal = {
        .F_t    = r->F_t,
        .b_F    = own->b_F,
        .m_n    = p->pair.in.m_n,
        .Y_F    = own->Y_F,
        .Y_S    = own->Y_S,
        .Y_beta = p->Y_beta,
        .Y_B    = own->Y_B,
        .Y_DT   = p->Y_DT,
    };

    const double sigma_F0  = ts_nominal_root_stress(&nominal, gear, workings);
    out->sigma_F0          = sigma_F0;
    out->sigma_F           = TS_GEAR_STEP(workings, sigma_F_formulas,
                                          sigma_F0 * K_A * K_gamma * K_v * K_Fbeta * K_Falpha,
                                          TS_OWN("sigma_F0", sigma_F0), TS_ALL(K_A), TS_ALL(K_gamma),
                                          TS_ALL(K_v), TS_ALL(K_Fbeta), TS_ALL(K_Falpha));
    out->Y_M               = ts_mean_stress_factor(R, own->mean.M, gear, workings);
    out->Y_Mstat           = ts_mean_stress_factor_static(R, own->mean.M_stat, gear, workings);
    const ts_cycles cycles = r->cycles[gear];
    out->Y_NT              = ts_life_factor(&own->life_F, cycles, TS_RATED_BENDING, gear, workings);
    out->bending           = bending_curve(p, out, gear, workings);
    const ts_life_question question = {cycles, out->Y_NT, TS_RATED_BENDING, gear};
    const double sigma_FG = ts_life_curve_stress(&out->bending, &own->life_F, &question, workings);
    const double sigma_F  = out->sigma_F;
    out->sigma_FG         = sigma_FG;
    out->sigma_FP         = TS_GEAR_STEP(workings, sigma_FP_formulas, sigma_FG / S_Fmin,
                                         TS_OWN("sigma_FG", sigma_FG), TS_ALL(S_Fmin));
    out->S_F              = TS_GEAR_STEP(workings, S_F_formulas, sigma_FG / sigma_F,
                                         TS_OWN("sigma_FG", sigma_FG), TS_OWN("sigma_F", sigma_F));
}

void ts_iso6336_rate_root(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                          ts_iso6336_rating *r, ts_workings *workings)
{
    rate_gear(p, load, 0, r, workings);
    rate_gear(p, load, 1, r, workings);
}
