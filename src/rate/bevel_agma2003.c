/* rate/bevel_agma2003.c: what does ANSI/AGMA 2003 say of a bevel pair, as a second opinion? */
#include "rate/bevel_parts.h"
#include "rating/agma2003/agma2003.h"

static const char *const asked[] = {
    "F_et",     "v_et",      "K_v",       "K_mb",      "K_Hbeta", "Z_E",   "Z_x",
    "Z_xc",     "Y_x",       "Y_beta",    "Z_Z",       "Y_Z",     "Z_NT1", "Z_NT2",
    "sigma_H",  "sigma_HP1", "sigma_HP2", "S_H1",      "S_H2",    "Y_NT1", "Y_NT2",
    "sigma_F1", "sigma_F2",  "sigma_FP1", "sigma_FP2", "S_F1",    "S_F2",  NULL};

static const ts_rated_section section = {
    .title     = "Load capacity, second opinion",
    .standard  = "ANSI/AGMA 2003-C10",
    .condition = TS_RATED_AGMA_2003,
    .asked     = asked,
    .advisory  = true,
};

static const char *const one_flank   = "the teeth are loaded on one flank";
static const char *const Y_J_keys[2] = {"Y_J1", "Y_J2"};

/* The stress numbers of this standard go with its charts and with nothing else, so that those of
 * the file, which are ISO's, are of no use here. */
static ts_agma2003_allowable take_strengths(ts_rate_desk *desk, const ts_rated_steel *steel,
                                            int gear)
{
    const bool                  hard       = ts_gear_class_surface_hardened(steel->class);
    const bool                  carburised = steel->class == TS_GEAR_CASE_HARDENED;
    const ts_agma2003_allowable none       = {NAN, NAN, true};

    if (!steel->from_row || desk->failed || (hard && !carburised)) {
        ts_rate_lack(desk, gear == 0 ? "material 1" : "material 2");
        return none;
    }
    return ts_agma2003_allowable_of_row(&steel->row, steel->HB, gear, desk->workings);
}

static ts_agma2003_gear take_gear(ts_rate_desk *desk, const ts_rated_bevels *rated, int gear)
{
    const ts_rated_steel       *steel     = &rated->steel[gear];
    const ts_agma2003_allowable allowable = take_strengths(desk, steel, gear);

    return (ts_agma2003_gear){.sigma_Hlim = allowable.sigma_Hlim,
                              .sigma_Flim = allowable.sigma_Flim,
                              .hardness   = steel->HB,
                              .hard       = ts_gear_class_surface_hardened(steel->class),
                              .overhung   = rated->overhung[gear],
                              .E          = steel->E,
                              .nu         = steel->nu,
                              .Z_W        = NAN,
                              .Y_J        = ts_rate_take(desk, Y_J_keys[gear])};
}

static void say_remarks(ts_rate_desk *desk, uint32_t remarks)
{
    static const char *const names[TS_AGMA2003_REMARK_COUNT] = {
        "agma-face",        "agma-module", "agma-accuracy", "agma-cutter", "agma-mixed",
        "agma-hardness",    "agma-Z_I",    "agma-Y_J",      "agma-speed",  "agma-few-cycles",
        "agma-many-cycles", "agma-hot",    "agma-no-load"};

    for (int i = 0; i < (int)TS_AGMA2003_REMARK_COUNT; i++) {
        const ts_agma2003_remark remark = (ts_agma2003_remark)i;
        if ((remarks & TS_AGMA2003_REMARKED(remark)) != 0)
            ts_rate_remark(desk, names[i], ts_agma2003_remark_says(remark),
                           ts_agma2003_remark_clause(remark), TS_NOTE);
    }
}

/* A root without its chart factor is not rated, and a remark says so. */
static void judge_safeties(ts_rate_desk *desk, const ts_rated_bevels *rated,
                           const ts_agma2003_rating *r)
{
    for (int gear = 0; gear < 2; gear++) {
        if (!isnan(r->gear[gear].S_H))
            ts_rate_contact_safety(desk, gear, r->gear[gear].S_H, rated->load.S_Hmin, TS_WARN);
        if (!isnan(r->gear[gear].S_F))
            ts_rate_bending_safety(desk, gear, r->gear[gear].S_F, rated->load.S_Fmin, TS_WARN);
    }
}

void ts_rate_bevel_agma2003(ts_rate_desk *desk, const ts_rated_bevels *rated)
{
    ts_agma2003_pair   pair;
    ts_agma2003_rating rating;

    ts_rate_open_section(desk, &section);
    const ts_agma2003_input in   = {.geometry = &rated->pair,
                                    .gear  = {take_gear(desk, rated, 0), take_gear(desk, rated, 1)},
                                    .Z_I   = ts_rate_take(desk, "Z_I"),
                                    .scale = TS_AGMA2003_ACCURACY_A_V,
                                    .accuracy = ts_rate_need(desk, "A_v"),
                                    .crowned  = ts_rate_choose(desk, "crowned") == (int)TS_YES,
                                    .r_c0     = rated->r_c0,
                                    .R        = ts_rate_take(desk, "R"),
                                    .critical = true};
    const ts_agma2003_load  load = {.T_1     = rated->load.T_1,
                                    .omega_1 = rated->load.omega_1,
                                    .K_A     = rated->load.K_A,
                                    .n_L     = {rated->load.N_L[0], rated->load.N_L[1]},
                                    .Y_M     = {1.0, 1.0},
                                    .T_M     = NAN};
    ts_rate_need_load(desk, &rated->load);
    ts_rate_borrow(desk, "n_L1", load.n_L[0], "N_L1");
    ts_rate_borrow(desk, "n_L2", load.n_L[1], "N_L2");
    if (!ts_rate_lacks(desk)) {
        ts_workings_assumed(desk->workings, "Y_M1", 1.0, "1", one_flank);
        ts_workings_assumed(desk->workings, "Y_M2", 1.0, "1", one_flank);
        if (ts_agma2003_pair_prepare(&in, &pair, desk->workings)) {
            (void)ts_agma2003_rate(&pair, &load, &rating, desk->workings);
            judge_safeties(desk, rated, &rating);
            say_remarks(desk, rating.remarks);
        } else {
            ts_rate_cannot(desk, "ANSI/AGMA 2003", pair.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
