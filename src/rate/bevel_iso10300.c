/* rate/bevel_iso10300.c: are the teeth of a bevel pair strong enough by ISO 10300? */
#include "rate/bevel_parts.h"
#include "rating/iso10300/iso10300.h"

static const char *const asked[] = {
    "F_mt",     "v_mt",      "c_gamma",   "n_E1",     "N",          "K_v",       "K_Hbeta",
    "K_F0",     "K_Fbeta",   "K_Halpha",  "K_Falpha", "eps_valpha", "eps_vbeta", "eps_vgamma",
    "rho_rel",  "Z_MB",      "Z_LS",      "Z_E",      "Z_K",        "Z_L",       "Z_v",
    "Z_R",      "Z_NT1",     "Z_NT2",     "sigma_H0", "sigma_H",    "sigma_HP1", "sigma_HP2",
    "S_H1",     "S_H2",      "Y_Fa1",     "Y_Fa2",    "Y_Sa1",      "Y_Sa2",     "Y_eps",
    "Y_BS",     "Y_LS",      "Y_NT1",     "Y_NT2",    "sigma_F01",  "sigma_F02", "sigma_F1",
    "sigma_F2", "sigma_FP1", "sigma_FP2", "S_F1",     "S_F2",       NULL};

static const ts_rated_section section = {
    .title     = "Load capacity",
    .standard  = "ISO 10300-1, -2, -3:2014, method B1",
    .condition = TS_RATED_ISO_10300,
    .asked     = asked,
};

/* ---- inputs ------------------------------------------------------------------------------------
 */

typedef struct gear_keys {
    const char *pitting, *Z_NTlong, *Y_NTlong, *accuracy, *R_z, *R_zF, *rho_a0, *s_pr, *Z_W, *Y_M;
} gear_keys;

static const gear_keys keys[2] = {
    {"pitting 1", "Z_NTlong1", "Y_NTlong1", "accuracy 1", "R_z1", "R_zF1", "rho_a01", "s_pr1",
     "Z_W1", "Y_M1"},
    {"pitting 2", "Z_NTlong2", "Y_NTlong2", "accuracy 2", "R_z2", "R_zF2", "rho_a02", "s_pr2",
     "Z_W2", "Y_M2"},
};

static ts_iso10300_gear take_gear(ts_rate_desk *desk, const ts_rated_bevels *rated, int gear)
{
    const gear_keys       *key   = &keys[gear];
    const ts_rated_steel  *steel = &rated->steel[gear];
    const ts_iso10300_gear out   = {
          .class      = steel->class,
          .sigma_Hlim = steel->sigma_Hlim,
          .sigma_Flim = steel->sigma_Flim,
          .yield      = steel->yield,
          .E          = steel->E,
          .nu         = steel->nu,
          .rho        = steel->rho,
          .pitting    = ts_rate_choose(desk, key->pitting) == (int)TS_YES,
          .Z_NTlong   = ts_rate_take(desk, key->Z_NTlong),
          .Y_NTlong   = ts_rate_take(desk, key->Y_NTlong),
          .Z_W        = 1.0,
          .f_pt       = rated->f_pt[gear],
          .R_z        = ts_rate_need(desk, key->R_z),
          .R_zF       = ts_rate_need(desk, key->R_zF),
          .rho_a0     = ts_rate_need(desk, key->rho_a0),
          .s_pr       = ts_rate_take(desk, key->s_pr),
          .overhung   = rated->overhung[gear],
    };

    if (isnan(rated->f_pt[gear]))
        ts_rate_lack(desk, key->accuracy);
    ts_rate_need_steel(desk, gear, steel);
    return out;
}

static ts_iso10300_mesh take_mesh(ts_rate_desk *desk, const ts_rated_bevels *rated)
{
    return (ts_iso10300_mesh){
        .gear         = {take_gear(desk, rated, 0), take_gear(desk, rated, 1)},
        .nu_40        = ts_rate_need(desk, "nu_40"),
        .b_veff_share = ts_rate_take(desk, "b_veff share"),
        .e            = ts_rate_take(desk, "e"),
        .Z_K          = ts_rate_take(desk, "Z_K"),
        .pattern      = (ts_bevel_pattern)ts_rate_choose(desk, "pattern"),
    };
}

/* What the rating asks and this file leaves at its plain value. */
static void assume_plain(ts_rate_desk *desk)
{
    for (int gear = 0; gear < 2 && !desk->failed; gear++) {
        ts_workings_assumed(desk->workings, keys[gear].Z_W, 1.0, "1",
                            "no work hardening by the mate is counted, on the safe side");
        ts_workings_assumed(desk->workings, keys[gear].Y_M, 1.0, "1",
                            "the teeth are loaded on one flank");
    }
}

/* ---- findings ----------------------------------------------------------------------------------
 */

static void say_remarks(ts_rate_desk *desk, ts_bevel_remarks remarks)
{
    for (int kind = 0; kind < (int)TS_BEVEL_REMARK_COUNT; kind++) {
        const ts_bevel_remark_text *text = ts_bevel_remark_text_of((ts_bevel_remark_kind)kind);
        if (ts_bevel_remarks_have(remarks, (ts_bevel_remark_kind)kind))
            ts_rate_remark(desk, text->name, text->says, text->clause,
                           kind >= (int)TS_BEVEL_REMARK_LOAD_LOW ? TS_NOTE : TS_WARN);
    }
}

static void judge_safeties(ts_rate_desk *desk, const ts_iso10300_rating *r,
                           const ts_iso10300_load *load)
{
    for (int gear = 0; gear < 2; gear++) {
        ts_rate_contact_safety(desk, gear, r->gear[gear].S_H, load->S_Hmin, TS_REFUSE);
        ts_rate_bending_safety(desk, gear, r->gear[gear].S_F, load->S_Fmin, TS_REFUSE);
    }
}

void ts_rate_bevel_iso10300(ts_rate_desk *desk, const ts_rated_bevels *rated)
{
    ts_iso10300_prepared prepared;
    ts_iso10300_rating   rating;

    ts_rate_open_section(desk, &section);
    const ts_iso10300_mesh mesh = take_mesh(desk, rated);
    const ts_iso10300_load load = {.T_1     = rated->load.T_1,
                                   .omega_1 = rated->load.omega_1,
                                   .K_A     = rated->load.K_A,
                                   .N_L     = {rated->load.N_L[0], rated->load.N_L[1]},
                                   .Y_M     = {1.0, 1.0},
                                   .S_Hmin  = rated->load.S_Hmin,
                                   .S_Fmin  = rated->load.S_Fmin};
    ts_rate_need_load(desk, &rated->load);
    if (!ts_rate_lacks(desk)) {
        assume_plain(desk);
        (void)ts_iso10300_prepare(&rated->pair, &rated->teeth, &mesh, &prepared, desk->workings);
        if (ts_iso10300_rate(&prepared, &load, &rating, desk->workings)) {
            judge_safeties(desk, &rating, &load);
            say_remarks(desk, prepared.remarks | rating.remarks);
        } else {
            ts_rate_cannot(desk, "ISO 10300", rating.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
