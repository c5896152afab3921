/* rate/element_load.c: which torque, speed and cycles does a pair of a rate file see? */
#include "rate/element_load.h"

static const char *const asked[] = {"T_1", "omega_1", "N_L1", "N_L2", NULL};

static const ts_rated_section section = {
    .title     = "Load",
    .standard  = "common mechanics",
    .condition = TS_EVERY_CONDITION,
    .asked     = asked,
};

static const ts_formula omega_1_formula = {
    .symbol  = "omega_1",
    .meaning = "angular speed of gear 1",
    .unit    = "rad/s",
    .text    = "n_1",
    .source  = "the speed of gear 1 in SI units",
};
static const ts_formula T_1_of_power_formula = {
    .symbol  = "T_1",
    .meaning = "torque of gear 1",
    .unit    = "N.m",
    .text    = "P/omega_1",
    .source  = "derived: power is torque times angular speed",
};
static const ts_formula N_L2_formula = {
    .symbol  = "N_L2",
    .meaning = "load cycles of a tooth of gear 2",
    .unit    = "1",
    .text    = "N_L1/q_1*q_2/abs(u)",
    .source  = "derived: gear 2 turns u times as slowly; q of ANSI/AGMA 2101-D04, clause 17 (from "
               "memory)",
};
static const ts_formula N_L1_formula = {
    .symbol  = "N_L1",
    .meaning = "load cycles of a tooth of gear 1",
    .unit    = "1",
    .text    = "N_L2/q_2*q_1*abs(u)",
    .source  = "derived: gear 1 turns u times as fast; q of ANSI/AGMA 2101-D04, clause 17 (from "
               "memory)",
};
static const ts_formula N_L1_of_time_formula = {
    .symbol  = "N_L1",
    .meaning = "load cycles of a tooth of gear 1",
    .unit    = "1",
    .text    = "L_h*omega_1/(2*pi)*q_1",
    .source  = "ANSI/AGMA 2101-D04, clause 17 (from memory): one a turn and mate",
};

static const double pi = 3.14159265358979323846;

bool ts_rate_is_loaded(const ts_rate_desk *desk, const ts_load_arm *arm)
{
    return ts_rate_is_given(desk, "T_1") || ts_rate_is_given(desk, arm->force) ||
           ts_rate_is_given(desk, "P");
}

static double torque(ts_rate_desk *desk, const ts_load_arm *arm, double omega_1)
{
    const double   T_1 = ts_rate_take(desk, "T_1"), F = ts_rate_take(desk, arm->force);
    const double   P        = ts_rate_take(desk, "P");
    const ts_input inputs[] = {{arm->force, F}, {arm->d, arm->d_value}};

    if (!isnan(F) && !desk->failed)
        return ts_step_list(desk->workings, arm->T_1, F * arm->d_value / 2.0, inputs, 2);
    if (!isnan(P) && omega_1 > 0.0 && !desk->failed)
        return TS_STEP(desk->workings, T_1_of_power_formula, P / omega_1, P, omega_1);
    return T_1;
}

static void take_cycles(ts_rate_desk *desk, double u, ts_rated_load *load)
{
    const double L_h = ts_rate_take(desk, "L_h"), omega_1 = load->omega_1;
    const double q_1 = ts_rate_take(desk, "q_1"), q_2 = ts_rate_take(desk, "q_2");
    double       N_L1 = ts_rate_take(desk, "N_L1"), N_L2 = ts_rate_take(desk, "N_L2");

    load->q[0] = q_1;
    load->q[1] = q_2;
    if (!desk->failed && !isnan(L_h) && omega_1 > 0.0)
        N_L1 = TS_STEP(desk->workings, N_L1_of_time_formula, L_h * omega_1 / (2.0 * pi) * q_1, L_h,
                       omega_1, q_1);
    else if (!desk->failed && isnan(N_L1) && !isnan(N_L2))
        N_L1 = TS_STEP(desk->workings, N_L1_formula, N_L2 / q_2 * q_1 * fabs(u), N_L2, q_2, q_1, u);
    if (!desk->failed && isnan(N_L2) && !isnan(N_L1))
        N_L2 = TS_STEP(desk->workings, N_L2_formula, N_L1 / q_1 * q_2 / fabs(u), N_L1, q_1, q_2, u);
    load->N_L[0] = N_L1;
    load->N_L[1] = N_L2;
}

void ts_rate_load_section(ts_rate_desk *desk, const ts_load_arm *arm, ts_rated_load *load)
{
    ts_rate_open_section(desk, &section);
    const double n_1 = ts_rate_take(desk, "n_1");
    load->omega_1    = n_1;
    if (!desk->failed && !isnan(n_1))
        load->omega_1 = TS_STEP(desk->workings, omega_1_formula, n_1, n_1);
    load->T_1 = torque(desk, arm, load->omega_1);
    take_cycles(desk, arm->u, load);
    load->K_A    = ts_rate_take(desk, "K_A");
    load->S_Hmin = ts_rate_take(desk, "S_Hmin");
    load->S_Fmin = ts_rate_take(desk, "S_Fmin");
    (void)ts_rate_close_section(desk);
}

void ts_rate_need_load(ts_rate_desk *desk, const ts_rated_load *load)
{
    if (isnan(load->omega_1))
        ts_rate_lack(desk, "n_1");
    if (isnan(load->T_1) && !isnan(load->omega_1))
        ts_rate_lack(desk, "T_1");
    if (isnan(load->N_L[0]) || isnan(load->N_L[1]))
        ts_rate_lack(desk, "L_h");
}
