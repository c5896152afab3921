/* rating/rubbing_bevel.c: how hot do the flanks of a bevel mesh rub, condition by condition? */
#include "rating/drive_rubbing_parts.h"

#include "rating/scuffing/bevel_scuffing.h"

#include <math.h>

static const ts_bevels_mesh *bevels_of(const ts_rubbing_desk *desk, uint32_t m)
{
    const ts_bevels *bevels = &desk->teeth->bevels;
    return &bevels->meshes[bevels->number[m]];
}

static ts_scuffing_gear gear_of(const ts_rubbing_desk *desk, uint32_t m,
                                const ts_rubbing_mesh *mesh, int g)
{
    const ts_iso10300_gear *gear = &bevels_of(desk, m)->prepared.mesh.gear[g];
    const double            X_W  = ts_structure_factor(ts_usual_structure(gear->class));

    ts_workings_row(desk->workings, g == 0 ? "X_W1" : "X_W2", X_W, "1",
                    "ISO/TS 6336-20 and -21:2017, structural factor (from memory)");
    return (ts_scuffing_gear){
        .body = {.E = gear->E, .nu = gear->nu, .B_M = TS_STEEL_B_M}, .Ra = mesh->Ra[g], .X_W = X_W};
}

static void rate(const ts_rubbing_desk *desk, uint32_t m, const void *ready, uint32_t condition)
{
    const ts_bevel_scuffing_prepared *prepared = ready;
    const ts_bevels                  *bevels   = &desk->teeth->bevels;
    const ts_bevels_case             *one =
        &bevels->cases[(size_t)condition * bevels->count + bevels->number[m]];
    const ts_bevel_scuffing_load load = {
        .F_mt      = one->rating.F_mt,
        .v_mt      = one->rating.v_mt,
        .K_A       = one->load.K_A,
        .K_v       = one->rating.K_v,
        .K_Hbeta   = one->rating.K_Hbeta,
        .K_Halpha  = one->rating.K_Halpha,
        .theta_oil = desk->rubbing->oil.theta_oil[condition],
        .eta_oil   = desk->rubbing->oil.eta_oil[condition],
        .theta_M   = (double)NAN,
    };
    ts_bevel_scuffing rating;

    ts_rubbing_lend(desk, m, condition);
    (void)ts_bevel_scuffing_rate(prepared, &load, &rating, desk->workings);
    *ts_rubbing_case(desk, m, condition) = (ts_scuffing_case){
        .missing    = rating.missing,
        .driver     = prepared->mesh.driver,
        .theta_M    = (double)NAN,
        .theta_Bmax = (double)NAN,
        .S_B        = (double)NAN,
        .theta_Mint = rating.theta_Mint,
        .theta_int  = rating.theta_int,
        .S_intS     = rating.S_intS,
        .remarks    = rating.remarks,
    };
}

static void prepare(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *mesh,
                    int driver, void *prepared)
{
    const ts_iso10300_prepared *bevels = &bevels_of(desk, m)->prepared;
    const ts_rubbing_oil       *oil    = &desk->rubbing->oil;
    const ts_scuffing_mesh      in     = {
                 .gear       = {gear_of(desk, m, mesh, 0), gear_of(desk, m, mesh, 1)},
                 .driver     = driver,
                 .X_S        = mesh->X_S,
                 .X_L        = oil->X_L,
                 .phi_E      = mesh->phi_E,
                 .S_FZG      = oil->S_FZG,
                 .nu_40      = oil->law.oil.nu_40,
                 .theta_intS = (double)NAN,
    };

    (void)ts_bevel_scuffing_prepare(&bevels->virt, bevels->pair.in.alpha_n, bevels->pair.in.beta_m,
                                    &in, prepared, desk->workings);
}

const char *ts_rubbing_rate_bevels(const ts_rubbing_desk *desk, uint32_t m)
{
    static const ts_rubbing_method method = {prepare, rate};
    ts_bevel_scuffing_prepared     prepared;

    return ts_rubbing_by_method(desk, m, &method, &prepared);
}
