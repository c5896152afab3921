/* rating/iso10300/iso10300_prepare.c: what of a bevel rating does not depend on the load? */
#include "rating/iso10300/bevel_source.h"
#include "rating/iso10300/bevel_strength.h"
#include "rating/iso10300/iso10300.h"

#include "element/bevel_spiral.h"

#include <math.h>
#include <stddef.h>

static const double degree = 3.14159265358979323846 / 180.0;

/* ---- is it fit to be rated? ------------------------------------------------------------------ */

static bool positive(double value)
{
    return value > 0.0 && value < 1e30;
}

static bool unit_share(double value)
{
    return value > 0.0 && value <= 1.0;
}

static const char *unfit_gear(const ts_iso10300_gear *g)
{
    if (!positive(g->sigma_Hlim) || !positive(g->sigma_Flim))
        return "the allowable stress numbers sigma_Hlim and sigma_Flim must be above 0";
    if (!positive(g->E) || !(g->nu > -1.0 && g->nu < 0.5) || !positive(g->rho))
        return "modulus and density must be above 0, Poisson's ratio between -1 and 0.5";
    if (!unit_share(g->Z_NTlong) || !unit_share(g->Y_NTlong) || !positive(g->Z_W))
        return "the life factors at 1e10 cycles must be above 0 and not above 1, Z_W above 0";
    if (!(g->f_pt >= 0.0 && g->f_pt < 1.0))
        return "the single pitch deviation f_pt must be known";
    if (!positive(g->R_z) || !positive(g->R_zF))
        return "the roughness of flank and fillet must be above 0";
    if (!(g->rho_a0 >= 0.0 && g->rho_a0 < 1e3) || !(g->s_pr >= 0.0 && g->s_pr < 1e3))
        return "edge radius and protuberance of the cutter must not be below 0";
    if ((unsigned)g->class >= TS_GEAR_CLASS_COUNT)
        return "the class of the steel is not known";
    if ((g->class == TS_GEAR_THROUGH_HARDENED || g->class == TS_GEAR_NORMALISED) &&
        !positive(g->yield))
        return "through-hardened and normalised steel needs its yield stress";
    return NULL;
}

static const char *unfit(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                         const ts_iso10300_mesh *mesh)
{
    if (!(pair->R_m > 0.0) || !(teeth->h_am[0] > 0.0) || !(teeth->h_am[1] > 0.0))
        return "the geometry of the pair is not solved";
    if (!positive(mesh->nu_40))
        return "the viscosity at 40 degrees Celsius must be above 0";
    if (!unit_share(mesh->b_veff_share))
        return "the contact pattern must cover a part of the face, above 0 and up to 1";
    if (!positive(mesh->e) || !positive(mesh->Z_K))
        return "the exponent of the peak load and the bevel factor Z_K must be above 0";
    if ((unsigned)mesh->pattern >= TS_BEVEL_PATTERN_COUNT)
        return "how the contact pattern was looked after is not known";
    const char *wrong = unfit_gear(&mesh->gear[0]);
    return wrong != NULL ? wrong : unfit_gear(&mesh->gear[1]);
}

/* ---- swing, face, flank ---------------------------------------------------------------------- */

BEVEL_FORMULA(f_pt, "single pitch deviation of the pair", "m", "max(f_pt1, f_pt2)",
              ISO_10300_1 "7.4");

static void prepare_swing(ts_iso10300_prepared *p, ts_workings *workings)
{
    const ts_iso10300_gear *g       = p->mesh.gear;
    const double            alpha_n = p->pair.in.alpha_n, f_pt1 = g[0].f_pt, f_pt2 = g[1].f_pt;

    p->gear[0].ms = ts_bevel_mass(g[0].rho, p->pair.d_m1, alpha_n, 0, workings);
    p->gear[1].ms = ts_bevel_mass(g[1].rho, p->pair.d_m2, alpha_n, 1, workings);
    p->m_red      = ts_bevel_reduced_mass(p->gear[0].ms, p->gear[1].ms, workings);
    p->c_v        = ts_bevel_dynamic_constants_of(p->virt.eps_vgamma, workings);
    p->f_pt       = TS_STEP(workings, f_pt_formula, fmax(f_pt1, f_pt2), f_pt1, f_pt2);
}

static void prepare_face(ts_iso10300_prepared *p, double r_c0, ts_workings *workings)
{
    const ts_iso10300_gear *g        = p->mesh.gear;
    const int               overhung = (g[0].overhung ? 1 : 0) + (g[1].overhung ? 1 : 0);
    const double            K_be = ts_bevel_mounting_factor(p->mesh.pattern, overhung, workings);

    p->K_Hbeta = ts_bevel_face_load(K_be, p->virt.b_v, p->virt.b_veff, workings);
    p->K_F0    = ts_bevel_curvature_factor(r_c0, p->pair.R_m, p->pair.in.beta_m, workings);
    p->K_Fbeta = ts_bevel_face_load_root(p->K_Hbeta, p->K_F0, workings);
}

static bool prepare_flank(ts_iso10300_prepared *p, ts_workings *workings)
{
    const ts_iso10300_gear *g      = p->mesh.gear;
    const double            R_z[2] = {g[0].R_z, g[1].R_z};

    p->mid = ts_bevel_mid_zone_factor(&p->virt, workings);
    p->Z_E = ts_bevel_elasticity_factor(g[0].E, g[0].nu, g[1].E, g[1].nu, workings);

    const double soft = ts_bevel_soft_limit(g[0].sigma_Hlim, g[1].sigma_Hlim, workings);
    p->Z_L            = ts_bevel_lubricant(soft, p->mesh.nu_40, workings);
    p->C_Zv           = ts_bevel_speed_constant(soft, workings);
    p->Z_R            = ts_bevel_smoothness(soft, R_z, p->virt.rho_rel, workings);
    p->Z_X            = 1.0;
    p->Z_Hyp          = 1.0;
    ts_workings_row(workings, "Z_X", p->Z_X, "1", ISO_10300_2 "6.5, size factor" BEVEL_RECALLED);
    ts_workings_row(workings, "Z_Hyp", p->Z_Hyp, "1",
                    ISO_10300_2 "6.5, no sliding along the teeth without offset" BEVEL_RECALLED);
    if (isnan(p->mid.Z_MB)) {
        p->missing = "the path of contact reaches past a base circle";
        return false;
    }
    return true;
}

/* ---- the roots ------------------------------------------------------------------------------- */

BEVEL_FORMULA(h_a0, "addendum of the cutter", "m", "k_hfp*m_mn", ISO_10300_3 "6.4.1");

static bool prepare_root(ts_iso10300_prepared *p, const ts_bevel_teeth *teeth, int gear,
                         ts_workings *workings)
{
    const ts_iso10300_gear    *g     = &p->mesh.gear[gear];
    ts_iso10300_gear_prepared *out   = &p->gear[gear];
    const double               k_hfp = teeth->in.profile.k_hfp, m_mn = p->pair.m_mn;

    const ts_bevel_root_input in = {
        .z_vn    = p->virt.z_vn[gear],
        .d_van   = p->virt.d_van[gear],
        .d_vbn   = p->virt.d_vbn[gear],
        .m_mn    = m_mn,
        .alpha_n = p->pair.in.alpha_n,
        .x_hm    = teeth->x_hm[gear],
        .x_sm    = teeth->x_sm[gear],
        .h_am    = teeth->h_am[gear],
        .s_mn    = teeth->s_mn[gear],
        .h_a0    = TS_STEP(workings, h_a0_formula, k_hfp * m_mn, k_hfp, m_mn),
        .rho_a0  = g->rho_a0,
        .s_pr    = g->s_pr,
        .formed  = g->formed,
    };
    if (!(p->virt.s_van[gear] > 0.0)) {
        p->missing = "a tooth ends in a point below its tip";
        return false;
    }
    if (!ts_bevel_root_solve(&in, gear, &out->root, workings)) {
        p->missing = "the root has no critical section: the cutter's edge does not fit its slot";
        return false;
    }
    out->rho_p       = ts_bevel_slip_layer(g->class, g->yield, gear, workings);
    out->Y_deltarelT = ts_bevel_notch(out->rho_p, out->root.q_s, gear, workings);
    out->Y_RrelT     = ts_bevel_root_surface(g->class, g->R_zF, gear, workings);
    out->Y_X         = ts_bevel_root_size(g->class, m_mn, gear, workings);
    out->life_H      = ts_bevel_life_of(g->class, TS_BEVEL_CONTACT, g->pitting, g->Z_NTlong);
    out->life_F      = ts_bevel_life_of(g->class, TS_BEVEL_BENDING, false, g->Y_NTlong);
    return true;
}

static bool prepare_roots(ts_iso10300_prepared *p, const ts_bevel_teeth *teeth,
                          ts_workings *workings)
{
    const ts_bevel_slant_input in = {
        .b_v     = p->virt.b_v,
        .beta_m  = p->pair.in.beta_m,
        .beta_vb = p->virt.beta_vb,
        .l_bm    = p->lines.middle.l_b,
        .h_m     = teeth->h_m,
    };

    p->Y_eps = ts_bevel_bending_overlap(p->virt.eps_valpha, p->virt.eps_vbeta, workings);
    p->slant = ts_bevel_slant_factor(&in, workings);
    if (!(p->slant.a_BS > 0.0 && p->slant.c_BS > 0.0)) {
        p->missing = "the face is so wide for its depth that the spiral angle factor has no value";
        return false;
    }
    return prepare_root(p, teeth, 0, workings) && prepare_root(p, teeth, 1, workings);
}

/* ---- ranges of validity ---------------------------------------------------------------------- */

static ts_bevel_remarks remarks_of_gear(const ts_iso10300_prepared *p, int gear)
{
    const ts_iso10300_gear *g = &p->mesh.gear[gear], *mate = &p->mesh.gear[1 - gear];
    const double            q_s = p->gear[gear].root.q_s;
    const bool              soft =
        !ts_gear_class_surface_hardened(g->class) && ts_gear_class_surface_hardened(mate->class);

    return ts_bevel_remark_when(!(q_s >= 1.0 && q_s < 8.0), TS_BEVEL_REMARK_NOTCH_RANGE) |
           ts_bevel_remark_when(soft && !(g->Z_W > 1.0), TS_BEVEL_REMARK_HARDENING_UNUSED) |
           ts_bevel_remark_when(g->R_z < 0.5e-6 || g->R_z > 20e-6, TS_BEVEL_REMARK_FLANK_ROUGH) |
           ts_bevel_remark_when(g->R_zF > 40e-6, TS_BEVEL_REMARK_FILLET_ROUGH) |
           ts_bevel_remark_when(fabs(g->E / 206e9 - 1.0) > 0.1, TS_BEVEL_REMARK_NOT_STEEL);
}

static ts_bevel_remarks remarks_of_mesh(const ts_iso10300_prepared *p, const ts_bevel_teeth *teeth)
{
    const ts_bevel_pair_input *in = &p->pair.in;
    ts_bevel_spiral            spiral;

    ts_bevel_spiral_solve(&p->pair, teeth, &spiral, NULL);
    return ts_bevel_remark_when(in->beta_m > (45.0 + 1e-9) * degree, TS_BEVEL_REMARK_SPIRAL_ANGLE) |
           ts_bevel_remark_when(in->alpha_n > (30.0 + 1e-9) * degree,
                                TS_BEVEL_REMARK_PRESSURE_ANGLE) |
           ts_bevel_remark_when(in->b > 13.0 * p->pair.m_mn, TS_BEVEL_REMARK_FACE_WIDTH) |
           ts_bevel_remark_when(p->virt.eps_valpha >= 2.0, TS_BEVEL_REMARK_CONTACT_RATIO_HIGH) |
           ts_bevel_remark_when(p->virt.eps_valpha < 1.0, TS_BEVEL_REMARK_CONTACT_RATIO_LOW) |
           ts_bevel_remark_when(!(spiral.clear_undercut_1 >= 0.0 && spiral.clear_undercut_2 >= 0.0),
                                TS_BEVEL_REMARK_UNDERCUT) |
           ts_bevel_remark_when(p->pair.m_mn > 7.5e-3, TS_BEVEL_REMARK_MODULE_LARGE) |
           ts_bevel_remark_when(in->beta_m > 0.0 && isnan(teeth->in.r_c0),
                                TS_BEVEL_REMARK_CUTTER_UNKNOWN) |
           ts_bevel_remark_when(p->mesh.nu_40 < 10e-6 || p->mesh.nu_40 > 500e-6,
                                TS_BEVEL_REMARK_VISCOSITY) |
           remarks_of_gear(p, 0) | remarks_of_gear(p, 1);
}

/* ---- the whole ------------------------------------------------------------------------------- */

/* A rating that is not possible must not leave zeros behind. */
static bool fail(ts_iso10300_prepared *p)
{
    p->K_Hbeta = p->K_F0 = p->K_Fbeta = p->m_red = p->f_pt = NAN;
    p->Z_E = p->Z_L = p->C_Zv = p->Z_R = p->Z_X = p->Z_Hyp = p->Y_eps = p->mid.Z_MB = NAN;
    p->lines.Z_LS = p->lines.Y_LS = p->slant.Y_BS = NAN;
    for (int gear = 0; gear < 2; gear++)
        p->gear[gear].root.Y_Fa = p->gear[gear].root.Y_Sa = p->gear[gear].Y_X = NAN;
    return false;
}

bool ts_iso10300_prepare(const ts_bevel_pair *pair, const ts_bevel_teeth *teeth,
                         const ts_iso10300_mesh *mesh, ts_iso10300_prepared *prepared,
                         ts_workings *workings)
{
    ts_iso10300_prepared *p = prepared;

    *p         = (ts_iso10300_prepared){.mesh = *mesh, .pair = *pair};
    p->missing = unfit(pair, teeth, mesh);
    if (p->missing != NULL)
        return fail(p);
    ts_bevel_virtual_solve(pair, teeth, mesh->b_veff_share, &p->virt, workings);
    if (!(p->virt.eps_vgamma > 1.0)) {
        p->missing = "the contact ratio is not above 1: the teeth leave before the next ones meet";
        return fail(p);
    }
    p->lines = ts_contact_lines_of(&p->virt, mesh->e, workings);
    if (!(p->lines.middle.As > 0.0)) {
        p->missing = "the middle line of contact lies outside the zone of action";
        return fail(p);
    }
    prepare_swing(p, workings);
    prepare_face(p, teeth->in.r_c0, workings);
    if (!prepare_flank(p, workings) || !prepare_roots(p, teeth, workings))
        return fail(p);
    p->remarks = remarks_of_mesh(p, teeth);
    return true;
}
