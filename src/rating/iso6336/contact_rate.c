/* rating/iso6336/contact_rate.c: how far are the flanks from pitting? */
#include "rating/iso6336/flank_film.h"
#include "rating/iso6336/gear_step.h"
#include "rating/iso6336/rate_parts.h"
#include "rating/iso6336/work_hardening.h"
#include "rating/iso6336/zone_factor.h"

#include <math.h>
#include <stddef.h>

#define SIGMA_H_TEXT(Z) Z "*sigma_H0*sqrt(K_A*K_gamma*K_v*K_Hbeta*K_Halpha)"
static const ts_formula sigma_H_formulas[2] = {
    {"sigma_H1", "contact stress of gear 1", "Pa", SIGMA_H_TEXT("Z_B"), ISO_6336_2 "5.2" RECALLED},
    {"sigma_H2", "contact stress of gear 2", "Pa", SIGMA_H_TEXT("Z_D"), ISO_6336_2 "5.2" RECALLED},
};
#define HG_REF_TEXT(I)  "sigma_Hlim" I "*Z_L*Z_v*Z_R*Z_W" I
#define HG_STAT_TEXT(I) "max(sigma_Hlim" I "*Z_NTstat" I "*Z_Wstat" I ", sigma_HGref" I ")"
#define HG_MID_TEXT(I)                                                                             \
    "sigma_HGref" I "*(sigma_HGstat" I "/sigma_HGref" I ")^(ln(Z_NTmid" I ")/ln(Z_NTstat" I "))"
#define SIGMA_HP_TEXT(I) "sigma_HG" I "/S_Hmin"
#define S_H_TEXT(I)      "sigma_HG" I "/sigma_H" I
static const ts_formula HG_ref_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_HGref", "contact stress limit of long life", "Pa", HG_REF_TEXT,
                     ISO_6336_2 "5.4.3" RECALLED);
static const ts_formula HG_stat_formulas[2] = TS_OF_BOTH_GEARS(
    "sigma_HGstat", "static contact stress limit", "Pa", HG_STAT_TEXT, ISO_6336_2 "5.4.3" RECALLED);
static const ts_formula HG_mid_formulas[2] =
    TS_OF_BOTH_GEARS("sigma_HGmid", "contact stress limit at 1e7 cycles", "Pa", HG_MID_TEXT,
                     ISO_6336_2 "5.4.3" RECALLED);
static const ts_formula sigma_HP_formulas[2] = TS_OF_BOTH_GEARS(
    "sigma_HP", "permissible contact stress", "Pa", SIGMA_HP_TEXT, ISO_6336_2 "5.2" RECALLED);
static const ts_formula S_H_formulas[2] =
    TS_OF_BOTH_GEARS("S_H", "safety against pitting", "1", S_H_TEXT, ISO_6336_2 "5.1" RECALLED);

#define Z_W_TEXT(I) "Z_W"
static const ts_formula Z_W_formulas[2] =
    TS_OF_BOTH_GEARS("Z_W", "work hardening factor", "1", Z_W_TEXT, ISO_6336_2 "13.1" RECALLED);

/* Z_W of the soft gear; 1 for the other. */
static double work_hardening(const ts_iso6336_prepared *p, const ts_iso6336_rating *r, int gear,
                             ts_workings *workings)
{
    const ts_iso6336_gear *soft = &p->mesh.gear[gear], *hard = &p->mesh.gear[1 - gear];
    double                 Z_W = 1.0;

    if (p->gear[gear].softened && isnan(p->Z_W)) {
        const ts_work_hardening_input in = {
            .HB      = soft->HB,
            .R_zhard = hard->R_z,
            .R_zsoft = soft->R_z,
            .rho_red = p->rho_red,
            .nu_40   = p->mesh.nu_40,
            .v       = r->v,
        };
        Z_W = ts_work_hardening_surface(soft->HB, ts_equivalent_roughness(&in, workings), workings);
    } else if (p->gear[gear].softened) {
        Z_W = p->Z_W;
    }
    if (p->gear[gear].softened)
        return TS_GEAR_STEP(workings, Z_W_formulas, Z_W, TS_ALL(Z_W));
    TS_ROW(workings, gear == 0 ? "Z_W1" : "Z_W2", Z_W, "1",
           "1 for a gear that is not the softer, " ISO_6336_2 "13.1" RECALLED);
    return Z_W;
}

static ts_life_curve contact_curve(const ts_iso6336_prepared *p, const ts_iso6336_rating *r,
                                   double Z_W, int gear, ts_workings *workings)
{
    const ts_iso6336_gear *g          = &p->mesh.gear[gear];
    const ts_life_nodes   *nodes      = &p->gear[gear].life_H.nodes;
    const double           sigma_Hlim = g->sigma_Hlim, Z_L = p->Z_L, Z_v = r->Z_v, Z_R = p->Z_R;
    const double           Z_Wstat = p->gear[gear].softened ? p->Z_Wstat : 1.0;

    const double ref = TS_GEAR_STEP(workings, HG_ref_formulas, sigma_Hlim * Z_L * Z_v * Z_R * Z_W,
                                    TS_OWN("sigma_Hlim", sigma_Hlim), TS_ALL(Z_L), TS_ALL(Z_v),
                                    TS_ALL(Z_R), TS_OWN("Z_W", Z_W));
    TS_ROW(workings, gear == 0 ? "Z_Wstat1" : "Z_Wstat2", Z_Wstat, "1",
           ISO_6336_2 "13.2 (from memory)");
    const ts_life_curve curve =
        ts_life_curve_of(&p->gear[gear].life_H, sigma_Hlim * nodes->at_stat * Z_Wstat, ref);
    (void)TS_GEAR_STEP(workings, HG_stat_formulas, curve.sigma_stat,
                       TS_OWN("sigma_Hlim", sigma_Hlim), TS_OWN("Z_NTstat", nodes->at_stat),
                       TS_OWN("Z_Wstat", Z_Wstat), TS_OWN("sigma_HGref", ref));
    if (curve.N_mid > 0.0)
        (void)TS_GEAR_STEP(workings, HG_mid_formulas, curve.sigma_mid, TS_OWN("sigma_HGref", ref),
                           TS_OWN("sigma_HGstat", curve.sigma_stat),
                           TS_OWN("Z_NTmid", nodes->at_mid), TS_OWN("Z_NTstat", nodes->at_stat));
    return curve;
}

static void rate_flank(const ts_iso6336_prepared *p, const ts_iso6336_load *load, int gear,
                       ts_iso6336_rating *r, ts_workings *workings)
{
    ts_iso6336_gear_rating *out = &r->gear[gear];
    const double   sigma_H0 = r->sigma_H0, K_A = load->K_A, K_gamma = load->K_gamma, K_v = r->K_v;
    const double   K_Hbeta = r->K_Hbeta, K_Halpha = r->K_Halpha, S_Hmin = load->S_Hmin;
    const double   raised  = gear == 0 ? p->ends.Z_B : p->ends.Z_D;
    const ts_input at_ends = {gear == 0 ? "Z_B" : "Z_D", raised};

    out->sigma_H                = TS_GEAR_STEP(workings, sigma_H_formulas,
                                               raised * sigma_H0 * sqrt(K_A * K_gamma * K_v * K_Hbeta * K_Halpha),
                                               at_ends, TS_ALL(sigma_H0), TS_ALL(K_A), TS_ALL(K_gamma),
                                               TS_ALL(K_v), TS_ALL(K_Hbeta), TS_ALL(K_Halpha));
    out->Z_W                    = work_hardening(p, r, gear, workings);
    const ts_life_lines *lines  = &p->gear[gear].life_H;
    const ts_cycles      cycles = r->cycles[gear];
    out->Z_NT                   = ts_life_factor(lines, cycles, TS_RATED_CONTACT, gear, workings);
    out->contact                = contact_curve(p, r, out->Z_W, gear, workings);
    const ts_life_question question = {cycles, out->Z_NT, TS_RATED_CONTACT, gear};
    const double sigma_HG = ts_life_curve_stress(&out->contact, lines, &question, workings);
    const double sigma_H  = out->sigma_H;
    out->sigma_HG         = sigma_HG;
    out->sigma_HP         = TS_GEAR_STEP(workings, sigma_HP_formulas, sigma_HG / S_Hmin,
                                         TS_OWN("sigma_HG", sigma_HG), TS_ALL(S_Hmin));
    out->S_H              = TS_GEAR_STEP(workings, S_H_formulas, sigma_HG / sigma_H,
                                         TS_OWN("sigma_HG", sigma_HG), TS_OWN("sigma_H", sigma_H));
}

void ts_iso6336_rate_contact(const ts_iso6336_prepared *p, const ts_iso6336_load *load,
                             ts_iso6336_rating *r, ts_workings *workings)
{
    const ts_contact_stress_input nominal = {
        .F_t    = r->F_t,
        .d_1    = p->pair.d_1,
        .b      = p->b,
        .u      = p->pair.u,
        .Z_H    = p->Z_H,
        .Z_E    = p->Z_E,
        .Z_eps  = p->Z_eps,
        .Z_beta = p->Z_beta,
    };

    r->sigma_H0 = ts_nominal_contact_stress(&nominal, workings);
    r->Z_v      = ts_velocity_factor(p->C_Zv, r->v, workings);
    rate_flank(p, load, 0, r, workings);
    rate_flank(p, load, 1, r, workings);
}
