/* rate/pair_teeth.c: what does ISO 6336 need of a pair of a rate file, and where does it end? */
#include "rate/pair_parts.h"

/* ---- inputs ------------------------------------------------------------------------------------
 */

typedef struct gear_keys {
    const char *peened, *pitting, *Z_NTlong, *Y_NTlong, *accuracy, *C_a, *R_z, *R_zF, *s_pr, *t_g,
        *rho_g, *s_R, *b_s, *d_web, *R, *E_sni, *E_sns;
} gear_keys;

static const gear_keys keys[2] = {
    {"peened 1", "pitting 1", "Z_NTlong1", "Y_NTlong1", "accuracy 1", "C_a1", "R_z1", "R_zF1",
     "s_pr1", "t_g1", "rho_g1", "s_R1", "b_s1", "d_web1", "R_1", "E_sni1", "E_sns1"},
    {"peened 2", "pitting 2", "Z_NTlong2", "Y_NTlong2", "accuracy 2", "C_a2", "R_z2", "R_zF2",
     "s_pr2", "t_g2", "rho_g2", "s_R2", "b_s2", "d_web2", "R_2", "E_sni2", "E_sns2"},
};

static double or_none(double value)
{
    return isnan(value) ? 0.0 : value;
}

static void take_gear(ts_rate_desk *desk, const ts_rated_pair *rated, int gear,
                      ts_iso6336_gear *out)
{
    const gear_keys      *key   = &keys[gear];
    const ts_rated_steel *steel = &rated->steel[gear];
    const ts_rated_make  *make  = &rated->make[gear];

    *out = (ts_iso6336_gear){
        .class       = steel->class,
        .sigma_Hlim  = steel->sigma_Hlim,
        .sigma_Flim  = steel->sigma_Flim,
        .yield       = steel->yield,
        .HB          = or_none(steel->HB),
        .E           = steel->E,
        .nu          = steel->nu,
        .rho         = steel->rho,
        .shot_peened = ts_rate_choose(desk, key->peened) == (int)TS_YES,
        .pitting     = ts_rate_choose(desk, key->pitting) == (int)TS_YES,
        .Z_NTlong    = ts_rate_take(desk, key->Z_NTlong),
        .Y_NTlong    = ts_rate_take(desk, key->Y_NTlong),
        .accuracy    = make->accuracy,
        .f_pt        = make->f_pt,
        .f_falpha    = make->f_falpha,
        .C_a         = ts_rate_take(desk, key->C_a),
        .R_z         = ts_rate_need(desk, key->R_z),
        .R_zF        = ts_rate_need(desk, key->R_zF),
        .E_sni       = ts_rate_allowance(desk, key->E_sni, key->E_sns),
        .s_pr        = ts_rate_take(desk, key->s_pr),
        .t_g         = ts_rate_take(desk, key->t_g),
        .s_R         = ts_rate_take(desk, key->s_R),
    };
    if (out->t_g > 0.0)
        out->rho_g = ts_rate_need(desk, key->rho_g);
    if (out->s_R > 0.0)
        out->b_s = ts_rate_take(desk, key->b_s);
    /* Of a solid gear a bore changes nothing, but it may be larger than the gear. */
    if (out->s_R > 0.0 || ts_rate_is_given(desk, key->d_web))
        out->d_web = ts_rate_take(desk, key->d_web);
    if (make->accuracy == 0)
        ts_rate_lack(desk, key->accuracy);
    ts_rate_need_steel(desk, gear, steel);
}

/* What leaves no blank to rate: the limit, and what is nearest to it.  First a rim that is too thin
 * for the standard, or thicker than there is metal. */
static void judge_rim(ts_rate_desk *desk, const ts_rated_pair *rated, int gear, double s_R)
{
    static const char *const   thin[2]  = {"rate-thin-rim-1", "rate-thin-rim-2"};
    static const char *const   thick[2] = {"rate-thick-rim-1", "rate-thick-rim-2"};
    const ts_cylindrical_pair *pair     = &rated->pair;
    const char                *key      = keys[gear].s_R;
    const double               d_f      = gear == 0 ? pair->d_f1 : pair->d_f2;
    const double               d_a      = gear == 0 ? pair->d_a1 : pair->d_a2;
    const double               least    = d_f > 0.0 ? (d_a - d_f) / 4.0 : 1.75 * pair->in.m_n;
    const char                *shown    = ts_rate_shown(desk, s_R, TS_KIND_LENGTH);
    ts_finding                *finding  = ts_rate_judge(desk, s_R > least, thin[gear], TS_REFUSE);

    ts_rate_limit(finding, key, s_R, least, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "the rim of gear %d is %s thick below its roots; the standard ends at %s (%s)",
                 gear + 1, shown, ts_rate_shown(desk, least, TS_KIND_LENGTH),
                 d_f > 0.0 ? "half a tooth height" : "1.75 modules");
    ts_rate_remedy(desk, finding, "use %s above %s", key,
                   ts_rate_shown_outward(desk, least, TS_KIND_LENGTH, +1));
    if (finding != NULL)
        finding->source = "ISO 6336-3:2019, clause 9 (from memory)";
    if (!(d_f > 0.0))
        return;
    finding = ts_rate_judge(desk, s_R < d_f / 2.0, thick[gear], TS_REFUSE);
    ts_rate_limit(finding, key, s_R, d_f / 2.0, TS_KIND_LENGTH);
    ts_rate_says(desk, finding,
                 "the rim of gear %d is %s thick, where %s stand between its axis and its roots",
                 gear + 1, shown, ts_rate_shown(desk, d_f / 2.0, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "use %s below %s, or 0 for a solid gear", key,
                   ts_rate_shown_outward(desk, d_f / 2.0, TS_KIND_LENGTH, -1));
}

static void judge_bore(ts_rate_desk *desk, const ts_rated_pair *rated, int gear,
                       const ts_iso6336_gear *of)
{
    static const char *const bore[2] = {"rate-bore-1", "rate-bore-2"};
    const char              *key     = keys[gear].d_web;
    const double             d_f     = gear == 0 ? rated->pair.d_f1 : rated->pair.d_f2;
    const bool               rimmed  = of->s_R > 0.0;
    const double             most    = rimmed ? d_f - 2.0 * of->s_R : d_f;

    if (!(d_f > 0.0) || !(of->d_web > 0.0) || !(most > 0.0))
        return;
    ts_finding *finding = ts_rate_judge(desk, of->d_web < most || (rimmed && of->d_web <= most),
                                        bore[gear], TS_REFUSE);

    ts_rate_limit(finding, key, of->d_web, most, TS_KIND_LENGTH);
    ts_rate_says(desk, finding, "the bore of gear %d is %s, as large as %s, %s, or larger",
                 gear + 1, ts_rate_shown(desk, of->d_web, TS_KIND_LENGTH),
                 rimmed ? "the inside of its rim" : "its root circle",
                 ts_rate_shown(desk, most, TS_KIND_LENGTH));
    ts_rate_remedy(desk, finding, "use %s below %s", key,
                   ts_rate_shown_outward(desk, most, TS_KIND_LENGTH, -1));
}

static void take_mesh(ts_rate_desk *desk, const ts_rated_pair *rated, ts_iso6336_mesh *mesh)
{
    *mesh = (ts_iso6336_mesh){
        .year           = (ts_iso6336_year)ts_rate_choose(desk, "edition"),
        .nu_40          = ts_rate_need(desk, "nu_40"),
        .profile        = TS_PROFILE_PLAIN,
        .lead           = TS_LEAD_STRAIGHT,
        .relief_matched = ts_rate_choose(desk, "relief") == (int)TS_YES,
    };
    if (rated->in.beta > 0.0)
        mesh->profile = (ts_profile_design)ts_rate_choose(desk, "profile");
    mesh->lead = (ts_lead_design)ts_rate_choose(desk, "lead");
    take_gear(desk, rated, 0, &mesh->gear[0]);
    take_gear(desk, rated, 1, &mesh->gear[1]);
    if (rated->in.z_2 < 0) {
        mesh->gear[1].z_0 = or_none(ts_rate_take(desk, "z_02"));
        if (mesh->gear[1].z_0 > 0.0)
            mesh->gear[1].x_0 = ts_rate_take(desk, "x_02");
    }
}

static void take_face_load(ts_rate_desk *desk, ts_iso6336_load *load)
{
    load->K_Hbeta = ts_rate_take(desk, "K_Hbeta");
    load->F_betax = ts_rate_take(desk, "F_betax");
    load->f_sh    = ts_rate_take(desk, "f_sh");
    load->f_ma    = ts_rate_take(desk, "f_ma");
    if (!isnan(load->K_Hbeta)) {
        load->face = TS_FACE_LOAD_GIVEN;
    } else if (!isnan(load->F_betax)) {
        load->face = TS_FACE_LOAD_MISALIGNED;
    } else {
        load->face = TS_FACE_LOAD_PARTS;
        if (isnan(load->f_sh) && isnan(load->f_ma))
            ts_rate_lack(desk, "K_Hbeta");
        else if (isnan(load->f_sh))
            ts_rate_lack(desk, "f_sh");
        else if (isnan(load->f_ma))
            ts_rate_lack(desk, "f_ma");
    }
}

static void take_load(ts_rate_desk *desk, const ts_rated_pair *rated, ts_iso6336_load *load)
{
    *load = (ts_iso6336_load){
        .omega_1 = rated->load.omega_1,
        .K_A     = rated->load.K_A,
        .K_gamma = ts_rate_take(desk, "K_gamma"),
        .R       = {ts_rate_take(desk, keys[0].R), ts_rate_take(desk, keys[1].R)},
    };
    take_face_load(desk, load);
}

void ts_rate_pair_take_teeth(ts_rate_desk *desk, const ts_rated_pair *rated, ts_rated_teeth *teeth)
{
    take_mesh(desk, rated, &teeth->mesh);
    take_load(desk, rated, &teeth->load);
}

/* Work hardening knows the soft gear and the hard one, not gear 1 and gear 2. */
static void lend_hardness(ts_rate_desk *desk, const ts_iso6336_mesh *mesh)
{
    const bool hard[2] = {ts_gear_class_surface_hardened(mesh->gear[0].class),
                          ts_gear_class_surface_hardened(mesh->gear[1].class)};
    const int  soft    = hard[0] ? 1 : 0;

    if (hard[0] == hard[1])
        return;
    ts_rate_borrow(desk, "HB", mesh->gear[soft].HB, soft == 0 ? "HB_1" : "HB_2");
    ts_rate_borrow(desk, "R_zsoft", mesh->gear[soft].R_z, keys[soft].R_z);
    ts_rate_borrow(desk, "R_zhard", mesh->gear[1 - soft].R_z, keys[1 - soft].R_z);
}

void ts_rate_pair_prepare(ts_rate_desk *desk, const ts_cylindrical_pair *pair,
                          ts_rated_teeth *teeth)
{
    lend_hardness(desk, &teeth->mesh);
    (void)ts_iso6336_prepare(pair, &teeth->mesh, &teeth->prepared, desk->workings);
}

void ts_rate_pair_blanks(ts_rate_desk *desk, const ts_rated_pair *rated,
                         const ts_iso6336_mesh *mesh)
{
    for (int gear = 0; gear < 2; gear++) {
        if (mesh->gear[gear].s_R > 0.0)
            judge_rim(desk, rated, gear, mesh->gear[gear].s_R);
        judge_bore(desk, rated, gear, &mesh->gear[gear]);
    }
}

/* ---- findings ----------------------------------------------------------------------------------
 */

/* What is told by the way, where others say that the result is in doubt. */
static bool is_by_the_way(ts_remark_kind kind)
{
    switch (kind) {
    case TS_REMARK_RELIEF_UNUSED:
    case TS_REMARK_HELIX_ENDS:
    case TS_REMARK_RING_HELD:
    case TS_REMARK_SHIFT_ORDER:
    case TS_REMARK_INTERNAL_ROOT:
    case TS_REMARK_STATIC_BELOW_LONG:
    case TS_REMARK_THIN_TEETH:
    case TS_REMARK_DEEP_TOOTH:
    case TS_REMARK_RELIEF_UNEVEN:
    case TS_REMARK_HARDNESS_UNKNOWN:
    case TS_REMARK_NO_LOAD:
    case TS_REMARK_LOAD_LOW:
        return true;
    default:
        return false;
    }
}

void ts_rate_pair_remarks(ts_rate_desk *desk, ts_rated_pair *rated, ts_remarks remarks)
{
    const ts_remarks fresh = remarks & ~rated->remarked;

    rated->remarked |= remarks;
    for (int kind = 0; kind < (int)TS_REMARK_COUNT; kind++) {
        const ts_remark_text *text = ts_remark_text_of((ts_remark_kind)kind);
        if (!ts_remarks_have(fresh, (ts_remark_kind)kind))
            continue;
        ts_rate_remark(desk, text->name, text->says, text->clause,
                       is_by_the_way((ts_remark_kind)kind) ? TS_NOTE : TS_WARN);
    }
}
