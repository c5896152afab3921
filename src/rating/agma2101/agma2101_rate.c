/* rating/agma2101/agma2101_rate.c: does a prepared pair hold in this load case? */
#include "rating/agma2101/agma2101.h"

#include "rating/agma2101/agma_strength.h"
#include "rating/agma2101/agma_stress.h"

#include <math.h>
#include <stddef.h>

static const ts_agma2101_gear_rating not_rated = {NAN, NAN, NAN, NAN, NAN, NAN, NAN};

static void remark_case(const ts_agma2101_pair *pair, const ts_agma2101_load *load,
                        ts_agma2101_rating *rating)
{
    const double fewest = fmin(load->n_L[0], load->n_L[1]);
    const double most   = fmax(load->n_L[0], load->n_L[1]);

    if (load->v > pair->dynamic.v_max)
        rating->remarks |= TS_AGMA_REMARKED(TS_AGMA_REMARK_SPEED);
    if (fewest < TS_AGMA_CYCLES_LEAST_CONTACT)
        rating->remarks |= TS_AGMA_REMARKED(TS_AGMA_REMARK_FEW_CYCLES);
    if (most > TS_AGMA_CYCLES_MOST)
        rating->remarks |= TS_AGMA_REMARKED(TS_AGMA_REMARK_MANY_CYCLES);
    if (load->T_M > TS_AGMA_TEMPERATURE_MOST)
        rating->remarks |= TS_AGMA_REMARKED(TS_AGMA_REMARK_HOT);
}

static const char *missing_of(const ts_agma2101_load *load)
{
    if (!(load->F_t >= 0.0))
        return "a tangential force from 0 up";
    if (!(load->v >= 0.0))
        return "a pitch line velocity from 0 up";
    if (!(load->n_L[0] > 0.0) || !(load->n_L[1] > 0.0))
        return "load cycles above 0";
    if (!(load->q[0] >= 0.0 && load->q[0] <= 1.0 && load->q[1] >= 0.0 && load->q[1] <= 1.0))
        return "a share of reversed bending from 0 to 1";
    return NULL;
}

static double temperature_factor(double T_M, ts_workings *workings)
{
    if (!isnan(T_M))
        return ts_agma_temperature_factor(T_M, workings);
    ts_workings_assumed(workings, "Y_theta", 1.0, "1",
                        "no temperature is given: not above 120 degC");
    return 1.0;
}

static void rate_gear(const ts_agma2101_pair *pair, const ts_agma2101_load *load, int gear,
                      ts_agma2101_rating *rating, ts_workings *workings)
{
    const ts_agma2101_tooth           *tooth   = &pair->tooth[gear];
    ts_agma2101_gear_rating           *out     = &rating->gear[gear];
    const double                       Y_theta = rating->Y_theta, Y_Z = pair->Y_Z;
    const ts_agma_overload             force   = {load->F_t, rating->K_o, rating->K_v, rating->K_H};
    const ts_agma_contact_input        contact = {.K_s = tooth->K_s,
                                                  .Z_E = pair->Z_E,
                                                  .Z_R = pair->Z_R,
                                                  .d_w = pair->mesh.d_w,
                                                  .b   = pair->mesh.b,
                                                  .Z_I = pair->Z_I};
    const ts_agma_bending_stress_input bending = {.K_s = tooth->K_s,
                                                  .K_B = tooth->K_B,
                                                  .m_t = pair->m_t,
                                                  .b   = pair->mesh.b,
                                                  .Y_J = tooth->Y_J};

    out->sigma_H = ts_agma_contact_stress(&force, &contact, gear, workings);
    out->sigma_F = ts_agma_bending_stress(&force, &bending, gear, workings);
    out->Z_N     = ts_agma_cycle_factor_contact(&tooth->life, load->n_L[gear], gear, workings);
    out->Y_N     = ts_agma_cycle_factor_bending(&tooth->life, load->n_L[gear], gear, workings);
    out->Y_M     = ts_agma_reversal_factor(load->q[gear], gear, workings);

    const ts_agma_contact_strength flank = {tooth->sigma_HP, out->Z_N, tooth->Z_W, Y_theta, Y_Z};
    const ts_agma_bending_strength root  = {tooth->sigma_FP, out->Y_N, out->Y_M, Y_theta, Y_Z};
    out->S_H = ts_agma_safety_contact(out->sigma_H, &flank, gear, workings);
    out->S_F = ts_agma_safety_bending(out->sigma_F, &root, gear, workings);
}

void ts_agma2101_rate(const ts_agma2101_pair *pair, const ts_agma2101_load *load,
                      ts_agma2101_rating *rating, ts_workings *workings)
{
    *rating = (ts_agma2101_rating){
        .K_v     = NAN,
        .K_o     = load->K_o,
        .K_H     = isnan(load->K_H) ? pair->K_H : load->K_H,
        .Y_theta = NAN,
        .gear    = {not_rated, not_rated},
        .remarks = pair->remarks,
        .missing = pair->missing,
    };
    /* A pair that cannot run was not prepared: it has no face width. */
    if (!(pair->mesh.b > 0.0))
        return;
    const char *missing = missing_of(load);
    if (missing != NULL) {
        rating->missing = missing;
        return;
    }
    remark_case(pair, load, rating);
    if (isnan(load->K_o)) {
        rating->K_o = 1.0;
        ts_workings_assumed(workings, "K_o", rating->K_o, "1",
                            "the forces are the peaks of their condition already");
    }
    rating->K_v     = ts_agma_dynamic_factor(&pair->dynamic, load->v, workings);
    rating->Y_theta = temperature_factor(load->T_M, workings);
    for (int gear = 0; gear < 2; gear++)
        rate_gear(pair, load, gear, rating, workings);
}
