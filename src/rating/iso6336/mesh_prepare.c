/* rating/iso6336/mesh_prepare.c: what of a rating does not depend on the load? */
#include "rating/iso6336/edition.h"
#include "rating/iso6336/flank_film.h"
#include "rating/iso6336/gear_step.h"
#include "rating/iso6336/prepare_parts.h"
#include "rating/iso6336/work_hardening.h"
#include "rating/iso6336/zone_factor.h"

#include <math.h>
#include <stddef.h>

static const double degree = 3.14159265358979323846 / 180.0;

static const ts_formula b_formula = {
    .symbol  = "b",
    .meaning = "common face width",
    .unit    = "m",
    .text    = "min(b_1, b_2)",
    .source  = ISO_6336_2 "5.2" RECALLED,
};

/* ---- contact --------------------------------------------------------------------------------- */

static const ts_formula soft_formula = {
    .symbol  = "sigma_Hlim",
    .meaning = "allowable stress number of the softer flank",
    .unit    = "Pa",
    .text    = "min(sigma_Hlim1, sigma_Hlim2)",
    .source  = ISO_6336_2 "12.3" RECALLED,
};

static double no_hardening(ts_iso6336_prepared *p)
{
    p->Z_Wstat = 1.0;
    return 1.0;
}

/* Z_W of a soft gear whose mate has a hardened surface follows from the speed, case by case. */
static double prepare_work_hardening(ts_iso6336_prepared *p, ts_workings *workings)
{
    const ts_iso6336_gear *g       = p->mesh.gear;
    const bool             hard[2] = {ts_gear_class_surface_hardened(g[0].class),
                                      ts_gear_class_surface_hardened(g[1].class)};

    if (hard[0] && hard[1])
        return no_hardening(p);
    if (hard[0] != hard[1]) {
        const int soft = hard[0] ? 1 : 0;

        if (!(g[soft].HB > 0.0)) {
            p->remarks |= TS_REMARK(TS_REMARK_HARDNESS_UNKNOWN);
            return no_hardening(p);
        }
        if (g[soft].HB < 130.0 || g[soft].HB > 470.0)
            p->remarks |= TS_REMARK(TS_REMARK_HARDNESS_RANGE);
        p->gear[soft].softened = true;
        p->Z_Wstat             = ts_work_hardening_surface_static(g[soft].HB, workings);
        return NAN;
    }
    const int    pinion = ts_iso6336_pinion(&p->pair), wheel = 1 - pinion;
    const double ratio = g[wheel].HB > 0.0 ? g[pinion].HB / g[wheel].HB : 0.0;
    const double u     = fabs(p->pair.u);

    (void)no_hardening(p);
    if (!(ratio >= 1.2))
        return 1.0;
    p->gear[wheel].softened = true;
    return ts_work_hardening_through(ratio, pinion == 0 ? u : 1.0 / u, workings);
}

static void prepare_contact(ts_iso6336_prepared *p, ts_workings *workings)
{
    const ts_cylindrical_pair *pair        = &p->pair;
    const ts_iso6336_gear     *g           = p->mesh.gear;
    const ts_iso6336_edition  *year        = ts_iso6336_edition_of(p->mesh.year);
    const double               sigma_Hlim1 = g[0].sigma_Hlim, sigma_Hlim2 = g[1].sigma_Hlim;

    p->Z_H    = ts_zone_factor(pair->alpha_t, pair->alpha_wt, pair->beta_b, workings);
    p->Z_E    = ts_elasticity_factor(g[0].E, g[0].nu, g[1].E, g[1].nu, workings);
    p->Z_eps  = ts_contact_ratio_factor(pair->eps_alpha, pair->eps_beta, workings);
    p->Z_beta = ts_helix_factor_contact(pair->in.beta, workings);
    p->ends   = year->ends(pair, ts_profile_design_f_ZCa(p->mesh.profile), workings);
    if (year->rates_helix_ends && pair->eps_beta > 0.0 && p->mesh.profile == TS_PROFILE_PLAIN)
        p->remarks |= TS_REMARK(TS_REMARK_HELIX_ENDS);

    const double sigma_Hlim =
        TS_STEP(workings, soft_formula, fmin(sigma_Hlim1, sigma_Hlim2), sigma_Hlim1, sigma_Hlim2);
    p->rho_red = ts_relative_radius(pair->d_b1, pair->d_b2, pair->alpha_wt, workings);
    p->Z_L     = ts_lubricant_factor(sigma_Hlim, p->mesh.nu_40, workings);
    p->C_Zv    = ts_velocity_constant(sigma_Hlim, workings);
    p->Z_R     = ts_roughness_factor(sigma_Hlim, g[0].R_z, g[1].R_z, p->rho_red, workings);
    p->Z_W     = prepare_work_hardening(p, workings);
}

/* ---- ranges of validity ---------------------------------------------------------------------- */

static ts_remarks remarks_of_pair(const ts_cylindrical_pair *pair)
{
    const double alpha_n = pair->in.alpha_n / degree, beta = pair->in.beta / degree;
    const bool   pinion_1 = ts_iso6336_pinion(pair) == 0;

    return ts_remark_when(!(alpha_n >= 15.0 - 1e-9 && alpha_n <= 25.0 + 1e-9),
                          TS_REMARK_PRESSURE_ANGLE) |
           ts_remark_when(beta > 30.0 + 1e-9, TS_REMARK_HELIX_ANGLE) |
           ts_remark_when(pair->eps_alpha > 2.5, TS_REMARK_CONTACT_RATIO_HIGH) |
           ts_remark_when(pair->eps_alpha < 1.2, TS_REMARK_CONTACT_RATIO_LOW) |
           ts_remark_when(pair->x_1 + pair->x_2 < -0.5 || pair->x_1 + pair->x_2 > 2.0,
                          TS_REMARK_SHIFT_SUM) |
           ts_remark_when(pinion_1 ? pair->x_1 < pair->x_2 : pair->x_2 < pair->x_1,
                          TS_REMARK_SHIFT_ORDER) |
           ts_remark_when(pair->rho_Ff1 < 0.0 || pair->rho_Ff2 < 0.0, TS_REMARK_UNDERCUT);
}

static ts_remarks remarks_of_gear(const ts_iso6336_prepared *p, int gear)
{
    const ts_iso6336_gear          *g   = &p->mesh.gear[gear];
    const ts_iso6336_gear_prepared *out = &p->gear[gear];

    return ts_remark_when(!out->form.on_fillet, TS_REMARK_NOT_ON_FILLET) |
           ts_remark_when(!(out->notch.q_s >= 1.0 && out->notch.q_s < 8.0), TS_REMARK_NOTCH_RANGE) |
           ts_remark_when(gear == 1 && p->pair.in.z_2 < 0 && !(g->z_0 > 0.0),
                          TS_REMARK_INTERNAL_ROOT) |
           ts_remark_when(g->R_z < 0.5e-6 || g->R_z > 20e-6, TS_REMARK_FLANK_ROUGH) |
           ts_remark_when(g->R_zF > 40e-6, TS_REMARK_FILLET_ROUGH);
}

/* A rating that is not possible must not leave zeros behind. */
static bool fail(ts_iso6336_prepared *p)
{
    p->Z_H = p->Z_E = p->Z_eps = p->Z_beta = p->ends.Z_B = p->ends.Z_D = NAN;
    p->Z_L = p->Z_R = p->Z_W = p->Z_Wstat = p->Y_beta = p->Y_DT = p->f_eps = NAN;
    p->cp_100 = p->m_red = p->N_F = NAN;
    for (int gear = 0; gear < 2; gear++)
        p->gear[gear].Y_F = p->gear[gear].Y_S = p->gear[gear].Y_B = NAN;
    return false;
}

bool ts_iso6336_prepare(const ts_cylindrical_pair *pair, const ts_iso6336_mesh *mesh,
                        ts_iso6336_prepared *prepared, ts_workings *workings)
{
    const double b_1 = pair->in.b_1, b_2 = pair->in.b_2;

    *prepared         = (ts_iso6336_prepared){.mesh = *mesh, .pair = *pair};
    prepared->missing = ts_iso6336_unfit(pair, mesh);
    if (prepared->missing != NULL)
        return fail(prepared);
    prepared->b = TS_STEP(workings, b_formula, fmin(b_1, b_2), b_1, b_2);
    if (!ts_iso6336_prepare_root(prepared, workings))
        return fail(prepared);
    ts_iso6336_prepare_swing(prepared, workings);
    prepare_contact(prepared, workings);
    if (isnan(prepared->ends.Z_B) || isnan(prepared->ends.Z_D)) {
        prepared->missing = "the path of contact reaches past a base circle";
        return fail(prepared);
    }
    prepared->remarks |=
        remarks_of_pair(pair) | remarks_of_gear(prepared, 0) | remarks_of_gear(prepared, 1) |
        ts_remark_when(mesh->nu_40 < 10e-6 || mesh->nu_40 > 500e-6, TS_REMARK_VISCOSITY);
    return true;
}
