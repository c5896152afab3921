/* rate/bevel_element.c: how do two bevel gears of a rate file sit together? */
#include "element/bevel_blank.h"
#include "rate/bevel_parts.h"

#define ISO_23509 "ISO 23509:2016"

static const ts_rated_section cones = {
    .title     = "Pitch cones",
    .standard  = ISO_23509,
    .condition = TS_EVERY_CONDITION,
};
static const char *const asked_teeth[] = {
    "h_mw",     "c",        "h_m",      "Sigma_theta_f", "h_am1",    "h_am2",    "h_fm1",
    "h_fm2",    "theta_a1", "theta_a2", "theta_f1",      "theta_f2", "delta_a1", "delta_a2",
    "delta_f1", "delta_f2", "h_ae1",    "h_ae2",         "h_fe1",    "h_fe2",    "s_mn1",
    "s_mn2",    "s_mnc1",   "s_mnc2",   "h_amc1",        "h_amc2",   "d_ae1",    "d_ae2",
    "d_fe1",    "d_fe2",    "d_ai1",    "d_ai2",         "t_xo1",    "t_xo2",    "t_xi1",
    "t_xi2",    "t_zF1",    "t_zF2",    "t_zR1",         "t_zR2",    NULL};
static const ts_rated_section teeth = {
    .title     = "Teeth and blanks",
    .standard  = ISO_23509,
    .condition = TS_EVERY_CONDITION,
    .asked     = asked_teeth,
};

/* ---- pitch cones -------------------------------------------------------------------------------
 */

/* Which limit a pair without cones has passed. */
static void say_fault(ts_rate_desk *desk, const ts_bevel_pair_input *in, ts_bevel_fault fault)
{
    ts_finding  *finding = ts_rate_judge(desk, false, "rate-no-geometry", TS_REFUSE);
    const double u       = (double)in->z_2 / in->z_1;

    if (finding == NULL)
        return;
    finding->source = ISO_23509;
    ts_rate_says(desk, finding, "%s", ts_bevel_fault_says(fault));
    if (fault == TS_BEVEL_TOO_WIDE) {
        const double delta_1 = ts_bevel_pitch_angle_1(in->Sigma, u, NULL);
        const double R_e     = in->z_1 * in->m_et / (2.0 * sin(delta_1));
        ts_rate_limit(finding, "b", in->b, R_e, TS_KIND_LENGTH);
        ts_rate_says(desk, finding, "a face of %s reaches the apex, which is %s from the outer end",
                     ts_rate_shown(desk, in->b, TS_KIND_LENGTH),
                     ts_rate_shown(desk, R_e, TS_KIND_LENGTH));
        ts_rate_remedy(
            desk, finding,
            "use b below %s; a third of it is the most that is usual (common practice, no "
            "source)",
            ts_rate_shown_outward(desk, R_e, TS_KIND_LENGTH, -1));
    } else if (fault == TS_BEVEL_NO_CONE) {
        /* The flat cone belongs to the larger gear: cos(Sigma) = -1/u or -u. */
        const double limit = acos(-fmin(u, 1.0 / u));
        ts_rate_limit(finding, "Sigma", in->Sigma, limit, TS_KIND_ANGLE);
        ts_rate_says(
            desk, finding,
            "at a shaft angle of %s and this ratio one pitch cone is flat or turned inside "
            "out; it is a cone below %s",
            ts_rate_shown(desk, in->Sigma, TS_KIND_ANGLE),
            ts_rate_shown(desk, limit, TS_KIND_ANGLE));
        ts_rate_remedy(desk, finding, "use Sigma below %s, or a ratio nearer to 1",
                       ts_rate_shown_outward(desk, limit, TS_KIND_ANGLE, -1));
    }
}

/* Wider faces than these carry their load on one end. */
static void judge_width(ts_rate_desk *desk, const ts_bevel_pair *pair)
{
    ts_finding *finding =
        ts_rate_judge(desk, pair->b_over_R_e <= 1.0 / 3.0, "rate-wide-face", TS_WARN);

    ts_rate_limit(finding, "b_over_R_e", pair->b_over_R_e, 1.0 / 3.0, TS_KIND_NUMBER);
    ts_rate_says(desk, finding, "the face is %s of the outer cone distance, where a third is usual",
                 ts_rate_shown(desk, pair->b_over_R_e, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "use b of at most %s",
                   ts_rate_shown_outward(desk, pair->R_e / 3.0, TS_KIND_LENGTH, -1));
}

static bool solve_cones(ts_rate_desk *desk, ts_bevel_pair *pair)
{
    ts_rate_open_section(desk, &cones);
    const ts_bevel_pair_input in    = {.z_1     = ts_rate_take_whole(desk, "z_1"),
                                       .z_2     = ts_rate_take_whole(desk, "z_2"),
                                       .m_et    = ts_rate_take(desk, "m_et"),
                                       .Sigma   = ts_rate_take(desk, "Sigma"),
                                       .alpha_n = ts_rate_take(desk, "alpha_n"),
                                       .beta_m  = ts_rate_take(desk, "beta_m"),
                                       .b       = ts_rate_take(desk, "b")};
    ts_bevel_fault            fault = TS_BEVEL_OUT_OF_RANGE;

    if (!desk->failed) {
        fault = ts_bevel_pair_solve(&in, pair, desk->workings);
        if (fault == TS_BEVEL_FINE)
            judge_width(desk, pair);
        else
            say_fault(desk, &in, fault);
    }
    (void)ts_rate_close_section(desk);
    return fault == TS_BEVEL_FINE;
}

/* ---- teeth -------------------------------------------------------------------------------------
 */

static ts_bevel_profile take_profile(ts_rate_desk *desk, const ts_bevel_pair *pair)
{
    if (!ts_rate_is_given(desk, "k_hap"))
        return ts_bevel_profile_usual(pair, desk->workings);
    return (ts_bevel_profile){.k_hap = ts_rate_take(desk, "k_hap"),
                              .k_hfp = ts_rate_take(desk, "k_hfp"),
                              .x_hm1 = ts_rate_take(desk, "x_hm1"),
                              .x_smn = ts_rate_take(desk, "x_smn")};
}

static const char *remedy_of(ts_bevel_teeth_fault fault)
{
    switch (fault) {
    case TS_BEVEL_TEETH_NO_CUTTER:
        return "give r_c0, or use the standard or the uniform taper";
    case TS_BEVEL_TEETH_NO_DEPTH:
    case TS_BEVEL_TEETH_NO_ROOT_CONE:
        return "use a narrower face, another taper, or lower teeth (k_hap, k_hfp)";
    case TS_BEVEL_TEETH_NO_THICKNESS:
        return "use less backlash j_mn or a smaller x_smn";
    default:
        return "use k_hfp above k_hap, and x_hm1 between -k_hap and k_hap";
    }
}

static bool solve_teeth(ts_rate_desk *desk, ts_rated_bevels *rated)
{
    ts_bevel_blank       blank;
    ts_bevel_teeth_fault fault = TS_BEVEL_TEETH_OUT_OF_RANGE;

    ts_rate_open_section(desk, &teeth);
    rated->r_c0                = ts_rate_take(desk, "r_c0");
    const ts_bevel_taper taper = (ts_bevel_taper)ts_rate_choose(desk, "taper");
    const double         j_mn  = ts_rate_take(desk, "j_mn");
    if (!desk->failed) {
        const ts_bevel_teeth_input in = {.taper   = taper,
                                         .profile = take_profile(desk, &rated->pair),
                                         .j_mn    = j_mn,
                                         .r_c0    = rated->r_c0};
        fault = ts_bevel_teeth_solve(&rated->pair, &in, &rated->teeth, desk->workings);
        ts_finding *finding =
            ts_rate_judge(desk, fault == TS_BEVEL_TEETH_FINE, "rate-no-teeth", TS_REFUSE);
        if (fault == TS_BEVEL_TEETH_FINE)
            ts_bevel_blank_solve(&rated->pair, &rated->teeth, &blank, desk->workings);
        if (finding != NULL)
            finding->source = ISO_23509;
        ts_rate_says(desk, finding, "%s", ts_bevel_teeth_fault_says(fault));
        ts_rate_remedy(desk, finding, "%s", remedy_of(fault));
    }
    (void)ts_rate_close_section(desk);
    return fault == TS_BEVEL_TEETH_FINE;
}

/* ---- the whole element -------------------------------------------------------------------------
 */

static const ts_formula T_1_formula = {
    .symbol  = "T_1",
    .meaning = "torque of gear 1",
    .unit    = "N.m",
    .text    = "F_mt*d_m1/2",
    .source  = "derived: force at the mean pitch diameter",
};

static void rate_capacity(ts_rate_desk *desk, ts_rated_bevels *rated)
{
    const ts_load_arm arm = {.force   = "F_mt",
                             .d       = "d_m1",
                             .d_value = rated->pair.d_m1,
                             .u       = rated->pair.u,
                             .T_1     = &T_1_formula};

    if (!ts_rate_is_loaded(desk, &arm))
        return;
    ts_rate_load_section(desk, &arm, &rated->load);
    ts_rate_bevel_make(desk, rated);
    ts_rate_bevel_iso10300(desk, rated);
    if (ts_rate_is_given(desk, "Z_I"))
        ts_rate_bevel_agma2003(desk, rated);
}

void ts_rate_bevel_element(ts_rate_desk *desk, const ts_rate_bevels *given)
{
    ts_rated_bevels rated = {.r_c0 = NAN};

    ts_rate_open_element(desk, "bevel pair", &ts_table_rate_bevels, given);
    if (!desk->failed && solve_cones(desk, &rated.pair) && solve_teeth(desk, &rated))
        rate_capacity(desk, &rated);
    ts_rate_close_element(desk);
}
