/* rating/iso6336/root_prepare.c: what of the root stress does not depend on the load? */
#include "rating/iso6336/edition.h"
#include "rating/iso6336/gear_step.h"
#include "rating/iso6336/prepare_parts.h"
#include "rating/iso6336/root_thinning.h"

#include <math.h>
#include <stddef.h>

#define H_T_TEXT(I)     "(d_a" I " - d_f" I ")/2"
#define B_F_TEXT(I)     "min(b_" I ", b + 2*m_n)"
#define B_EASED_TEXT(I) "b"
#define Y_F_TEXT(I)     "Y_F0" I "*f_eps"
static const ts_formula h_t_formulas[2] =
    TS_OF_BOTH_GEARS("h_t", "tooth height", "m", H_T_TEXT, ISO_6336_1 "7.6" RECALLED);
static const ts_formula b_F_formulas[2] =
    TS_OF_BOTH_GEARS("b_F", "face width for bending", "m", B_F_TEXT, ISO_6336_3 "5.2" RECALLED);
static const ts_formula b_eased_formulas[2] = TS_OF_BOTH_GEARS(
    "b_F", "face width for bending, ends relieved", "m", B_EASED_TEXT, ISO_6336_3 "5.2" RECALLED);
static const ts_formula Y_F_formulas[2] =
    TS_OF_BOTH_GEARS("Y_F", "form factor", "1", Y_F_TEXT, ISO_6336_3 "6.1" RECALLED);

static bool prepare_form(ts_iso6336_prepared *p, int gear, ts_workings *workings)
{
    const ts_cylindrical_pair *pair = &p->pair;
    const ts_iso6336_gear     *g    = &p->mesh.gear[gear];
    ts_iso6336_gear_prepared  *out  = &p->gear[gear];

    out->x_E = ts_root_shift(gear == 0 ? pair->x_1 : pair->x_2, g->E_sni, pair->in.m_n,
                             pair->in.alpha_n, gear, workings);
    p->remarks |= ts_remark_when(ts_root_is_thinned(g->E_sni, pair->in.m_n), TS_REMARK_THIN_TEETH);
    const ts_root_form_input in = {
        .z         = gear == 0 ? pair->in.z_1 : pair->in.z_2,
        .x         = out->x_E,
        .d         = gear == 0 ? pair->d_1 : pair->d_2,
        .d_a       = gear == 0 ? pair->d_a1 : pair->d_a2,
        .m_n       = pair->in.m_n,
        .alpha_n   = pair->in.alpha_n,
        .beta      = pair->in.beta,
        .beta_b    = pair->beta_b,
        .eps_alpha = pair->eps_alpha,
        .rack      = pair->in.rack,
        .s_pr      = g->s_pr,
        .z_0       = g->z_0,
        .x_0       = g->x_0,
        .load      = TS_ROOT_LOAD_OUTER_SINGLE,
        .gear      = gear,
    };

    if (!ts_root_form_solve(&in, &out->form, workings)) {
        p->missing = "no critical section of the root is found";
        return false;
    }
    out->notch = ts_root_notch_of(out->form.s_Fn, out->form.h_Fe, out->form.rho_F, gear, workings);
    out->Y_S   = out->notch.Y_S;
    if (g->t_g > 0.0)
        out->Y_S = ts_grinding_notch(out->notch.Y_S, g->t_g, g->rho_g, gear, workings);
    if (isnan(out->Y_S))
        p->missing = "the grinding notch is too sharp for ISO 6336-3, clause 7.3";
    return p->missing == NULL;
}

static bool prepare_rim(ts_iso6336_prepared *p, int gear, double h_t, ts_workings *workings)
{
    const double s_R = p->mesh.gear[gear].s_R, m_n = p->pair.in.m_n;
    const bool   internal = gear == 1 && p->pair.in.z_2 < 0;

    if (!(s_R > 0.0)) {
        p->gear[gear].Y_B = 1.0;
        ts_workings_assumed(workings, gear == 0 ? "Y_B1" : "Y_B2", 1.0, "1", "the gear is solid");
        return true;
    }
    p->gear[gear].Y_B = internal ? ts_rim_factor_internal(s_R, m_n, gear, workings)
                                 : ts_rim_factor(s_R, h_t, gear, workings);
    if (isnan(p->gear[gear].Y_B))
        p->missing = internal ? "the rim is 1.75 modules or thinner, below ISO 6336-3, clause 9"
                              : "the rim is half a tooth height or thinner, below ISO 6336-3, "
                                "clause 9";
    return p->missing == NULL;
}

static void prepare_width(ts_iso6336_prepared *p, int gear, ts_workings *workings)
{
    const double b = p->b, m_n = p->pair.in.m_n;
    const double b_own = gear == 0 ? p->pair.in.b_1 : p->pair.in.b_2;

    p->gear[gear].b_F = ts_lead_design_eases_ends(p->mesh.lead)
                            ? TS_GEAR_STEP(workings, b_eased_formulas, b, TS_ALL(b))
                            : TS_GEAR_STEP(workings, b_F_formulas, fmin(b_own, b + 2.0 * m_n),
                                           TS_OWN("b_", b_own), TS_ALL(b), TS_ALL(m_n));
}

static void prepare_root_strength(ts_iso6336_prepared *p, int gear, ts_workings *workings)
{
    const ts_iso6336_gear    *g   = &p->mesh.gear[gear];
    ts_iso6336_gear_prepared *out = &p->gear[gear];

    out->rho_p       = ts_slip_layer(g->class, g->yield, gear, workings);
    out->Y_deltarelT = ts_notch_sensitivity(out->rho_p, out->notch.q_s, gear, workings);
    out->Y_deltastat =
        ts_notch_sensitivity_static(g->class, g->yield, out->notch.Y_S, gear, workings);
    out->Y_RrelT = ts_root_surface(g->class, g->R_zF, gear, workings);
    out->Y_X     = ts_root_size(g->class, p->pair.in.m_n, gear, workings);
    out->mean    = ts_mean_stress_of(g->class, g->shot_peened, out->notch.Y_S, gear, workings);
    const ts_life_nodes contact = ts_life_nodes_contact(g->class, g->pitting);
    const ts_life_nodes bending = ts_life_nodes_bending(g->class);
    out->life_H                 = ts_life_lines_of(&contact, g->Z_NTlong);
    out->life_F                 = ts_life_lines_of(&bending, g->Y_NTlong);
}

bool ts_iso6336_prepare_root(ts_iso6336_prepared *p, ts_workings *workings)
{
    const ts_cylindrical_pair *pair     = &p->pair;
    const ts_iso6336_edition  *year     = ts_iso6336_edition_of(p->mesh.year);
    const int                  accuracy = p->mesh.gear[0].accuracy > p->mesh.gear[1].accuracy
                                              ? p->mesh.gear[0].accuracy
                                              : p->mesh.gear[1].accuracy;
    double                     h_t[2];

    if (!prepare_form(p, 0, workings) || !prepare_form(p, 1, workings))
        return false;
    const double eps_alphan = p->gear[0].form.eps_alphan;
    p->f_eps                = year->load_share(eps_alphan, pair->eps_beta, workings);
    p->Y_beta               = year->helix_bending(pair->in.beta, pair->eps_beta, workings);
    p->Y_DT                 = year->deep_tooth(eps_alphan, accuracy, workings);
    if (p->Y_DT < 1.0 || (eps_alphan >= 2.0 && p->f_eps < 1.0))
        p->remarks |= TS_REMARK(TS_REMARK_DEEP_TOOTH);
    for (int gear = 0; gear < 2; gear++) {
        const double d_a  = gear == 0 ? pair->d_a1 : pair->d_a2;
        const double d_f  = gear == 0 ? pair->d_f1 : pair->d_f2;
        const double Y_F0 = p->gear[gear].form.Y_F, f_eps = p->f_eps;

        h_t[gear] = TS_GEAR_STEP(workings, h_t_formulas, (d_a - d_f) / 2.0, TS_OWN("d_a", d_a),
                                 TS_OWN("d_f", d_f));
        p->gear[gear].Y_F =
            TS_GEAR_STEP(workings, Y_F_formulas, Y_F0 * f_eps, TS_OWN("Y_F0", Y_F0), TS_ALL(f_eps));
        if (!prepare_rim(p, gear, h_t[gear], workings))
            return false;
        prepare_width(p, gear, workings);
        prepare_root_strength(p, gear, workings);
    }
    p->N_F = ts_face_load_exponent(pair->in.b_1, h_t[0], pair->in.b_2, h_t[1], workings);
    return true;
}
