/* rate/pair_iso6336.c: are the teeth of a pair of a rate file strong enough by ISO 6336? */
#include "rate/pair_parts.h"

static const char *const asked[] = {
    "F_t",          "v",         "w_t",       "cp",        "c_gamma_alpha",
    "m_red",        "n_E1",      "N",         "N_S",       "K_v",
    "F_betax",      "F_betay",   "K_Hbeta",   "K_Fbeta",   "K_Halpha",
    "K_Falpha",     "Z_H",       "Z_E",       "Z_eps",     "Z_beta",
    "Z_B",          "Z_D",       "Z_L",       "Z_v",       "Z_R",
    "Z_W1",         "Z_W2",      "Z_NT1",     "Z_NT2",     "sigma_H0",
    "sigma_H1",     "sigma_H2",  "sigma_HG1", "sigma_HG2", "sigma_HP1",
    "sigma_HP2",    "S_H1",      "S_H2",      "x_E1",      "x_E2",
    "Y_F1",         "Y_F2",      "Y_S1",      "Y_S2",      "f_eps",
    "Y_beta",       "Y_B1",      "Y_B2",      "Y_DT",      "Y_deltarelT1",
    "Y_deltarelT2", "Y_RrelT1",  "Y_RrelT2",  "Y_X1",      "Y_X2",
    "Y_M1",         "Y_M2",      "Y_NT1",     "Y_NT2",     "sigma_F01",
    "sigma_F02",    "sigma_F1",  "sigma_F2",  "sigma_FG1", "sigma_FG2",
    "sigma_FP1",    "sigma_FP2", "S_F1",      "S_F2",      NULL};

static const ts_rated_section section = {
    .title     = "Load capacity",
    .standard  = "ISO 6336-1, -2, -3, method B",
    .condition = TS_RATED_ISO_6336,
    .asked     = asked,
};

static void judge_safeties(ts_rate_desk *desk, const ts_iso6336_rating *r,
                           const ts_iso6336_load *load)
{
    for (int gear = 0; gear < 2; gear++) {
        ts_rate_contact_safety(desk, gear, r->gear[gear].S_H, load->S_Hmin, TS_REFUSE);
        ts_rate_bending_safety(desk, gear, r->gear[gear].S_F, load->S_Fmin, TS_REFUSE);
    }
}

void ts_rate_pair_iso6336(ts_rate_desk *desk, ts_rated_pair *rated)
{
    ts_rated_teeth teeth;

    ts_rate_open_section(desk, &section);
    ts_rate_pair_take_teeth(desk, rated, &teeth);
    ts_rate_need_load(desk, &rated->load);
    if (!ts_rate_lacks(desk)) {
        ts_iso6336_load *load = &teeth.load;

        load->T_1    = rated->load.T_1;
        load->N_L[0] = rated->load.N_L[0];
        load->N_L[1] = rated->load.N_L[1];
        load->S_Hmin = rated->load.S_Hmin;
        load->S_Fmin = rated->load.S_Fmin;
        ts_rate_pair_blanks(desk, rated, &teeth.mesh);
        ts_rate_pair_prepare(desk, &rated->pair, &teeth);
        rated->by_iso6336 = ts_iso6336_rate(&teeth.prepared, load, &rated->iso6336, desk->workings);
        rated->iso6336_pair = teeth.prepared;
        if (rated->by_iso6336) {
            judge_safeties(desk, &rated->iso6336, load);
            ts_rate_pair_remarks(desk, rated, teeth.prepared.remarks | rated->iso6336.remarks);
            ts_rate_fact(desk, "speed", ts_speed_range_says(rated->iso6336.range));
        } else {
            ts_rate_cannot(desk, "ISO 6336", rated->iso6336.missing);
        }
    }
    (void)ts_rate_close_section(desk);
}
