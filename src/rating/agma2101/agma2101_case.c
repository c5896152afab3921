/* rating/agma2101/agma2101_case.c: how does AGMA 2101 see a pair and a load that ISO 6336 rates? */
#include "rating/agma2101/agma2101_case.h"

#include "rating/agma2101/agma_step.h"

#include <math.h>

/* ---- steel ----------------------------------------------------------------------------------- */

ts_agma_life_line ts_agma_line_of(ts_gear_class class)
{
    switch (class) {
    case TS_GEAR_NITRIDED:
    case TS_GEAR_THROUGH_NITRIDED:
    case TS_GEAR_NITROCARBURISED:
        return TS_AGMA_LINE_NITRIDED;
    case TS_GEAR_THROUGH_HARDENED:
    case TS_GEAR_NORMALISED:
        return TS_AGMA_LINE_BY_HARDNESS;
    default:
        return TS_AGMA_LINE_CASE_CARBURISED;
    }
}

/* ---- accuracy -------------------------------------------------------------------------------- */

#define D_T_TEXT(I) "d_" I " - 2*m_n"
static const ts_formula d_T_formulas[2] =
    TS_OF_BOTH_GEARS("d_T", "tolerance diameter", "m", D_T_TEXT, AGMA_2101 "8" RECALLED);

static double tolerance_diameter(const ts_cylindrical_pair *pair, int gear)
{
    return fabs(gear == 0 ? pair->d_1 : pair->d_2) - 2.0 * pair->in.m_n;
}

int ts_agma_coarser_gear(const ts_cylindrical_pair *pair, const double f_pt[2])
{
    const double m_n    = pair->in.m_n;
    const double first  = ts_agma_accuracy_of(f_pt[0], m_n, tolerance_diameter(pair, 0), NULL);
    const double second = ts_agma_accuracy_of(f_pt[1], m_n, tolerance_diameter(pair, 1), NULL);

    return second > first ? 1 : 0;
}

double ts_agma_accuracy_of_gear(const ts_cylindrical_pair *pair, int gear, double f_pt,
                                ts_subject own, ts_workings *workings)
{
    const double d = fabs(gear == 0 ? pair->d_1 : pair->d_2), m_n = pair->in.m_n;
    const double d_T = TS_GEAR_STEP(workings, d_T_formulas, tolerance_diameter(pair, gear),
                                    TS_OWN("d_", d), TS_ALL(m_n));

    ts_workings_borrow(workings, "d_T", d_T, own, d_T_formulas[gear].symbol);
    return ts_agma_accuracy_of(f_pt, m_n, d_T, workings);
}

/* ---- thickness ------------------------------------------------------------------------------- */

#define DELTA_SN_TEXT(I) "max(0, -E_sni" I "/m_n)"
static const ts_formula delta_sn_formulas[2] =
    TS_OF_BOTH_GEARS("delta_sn", "thinning for backlash, in normal modules, by the lower allowance",
                     "1", DELTA_SN_TEXT, AGMA_908 "5" RECALLED);

double ts_agma_thinning_of(double E_sni, double m_n, int gear, ts_workings *workings)
{
    return TS_GEAR_STEP(workings, delta_sn_formulas, fmax(0.0, -E_sni / m_n),
                        TS_OWN("E_sni", E_sni), TS_ALL(m_n));
}

/* ---- load ------------------------------------------------------------------------------------ */

static const ts_formula F_t_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force at the operating pitch circle",
    .unit    = "N",
    .text    = "2*T_1/d_w1",
    .source  = AGMA_2101 "7" RECALLED,
};
static const ts_formula v_formula = {
    .symbol  = "v",
    .meaning = "pitch-line speed",
    .unit    = "m/s",
    .text    = "omega_1*d_w1/2",
    .source  = AGMA_2101 "8" RECALLED,
};
static const ts_formula K_o_formula = {
    .symbol  = "K_o",
    .meaning = "overload factor, of the busiest load path",
    .unit    = "1",
    .text    = "K_A*K_gamma",
    .source  = "derived: the standard knows one load path; K_gamma raises the force of a mesh",
};
#define Q_TEXT(I) "min(1, max(0, -R_" I "/1.2))"
static const ts_formula q_formulas[2] =
    TS_OF_BOTH_GEARS("q_", "bending of the other flank over the bending of this one,", "1", Q_TEXT,
                     "derived: R = -1.2 q of ISO 6336-3, annex B, solved for q");

ts_agma2101_load ts_agma2101_load_of(const ts_agma2101_case *in, ts_workings *workings)
{
    const double     T_1 = in->T_1, omega_1 = in->omega_1, d_w1 = in->d_w1;
    const double     K_A = in->K_A, K_gamma = in->K_gamma;
    ts_agma2101_load load = {
        .n_L = {in->N_L[0], in->N_L[1]}, .K_H = (double)NAN, .T_M = (double)NAN};

    load.F_t = TS_STEP(workings, F_t_formula, 2.0 * T_1 / d_w1, T_1, d_w1);
    load.v   = TS_STEP(workings, v_formula, omega_1 * d_w1 / 2.0, omega_1, d_w1);
    load.K_o = TS_STEP(workings, K_o_formula, K_A * K_gamma, K_A, K_gamma);
    for (int gear = 0; gear < 2; gear++) {
        const double R = in->R[gear];
        load.q[gear] =
            TS_GEAR_STEP(workings, q_formulas, fmin(1.0, fmax(0.0, -R / 1.2)), TS_OWN("R_", R));
    }
    return load;
}
