/* rating/rubbing_scuffing.c: how hot do the flanks of a cylindrical mesh rub, condition by
 * condition? */
#include "rating/drive_rubbing_parts.h"

#include <math.h>

static ts_scuffing_gear gear_of(const ts_rubbing_desk *desk, uint32_t m,
                                const ts_rubbing_mesh *mesh, int g)
{
    const ts_iso6336_gear *gear = &desk->teeth->prepared[m].mesh.gear[g];
    const double           X_W  = ts_structure_factor(ts_usual_structure(gear->class));

    ts_workings_row(desk->workings, g == 0 ? "X_W1" : "X_W2", X_W, "1",
                    "ISO/TS 6336-20 and -21:2017, structural factor (from memory)");
    return (ts_scuffing_gear){.body = {.E = gear->E, .nu = gear->nu, .B_M = TS_STEEL_B_M},
                              .Ra   = mesh->Ra[g],
                              .C_a  = gear->C_a,
                              .X_W  = X_W};
}

static ts_scuffing_mesh mesh_of(const ts_rubbing_desk *desk, uint32_t m,
                                const ts_rubbing_mesh *mesh, int driver)
{
    const ts_rubbing_oil *oil = &desk->rubbing->oil;

    return (ts_scuffing_mesh){
        .gear       = {gear_of(desk, m, mesh, 0), gear_of(desk, m, mesh, 1)},
        .driver     = driver,
        .grade      = mesh->grade,
        .mates      = mesh->mates,
        .X_S        = mesh->X_S,
        .X_L        = oil->X_L,
        .phi_E      = mesh->phi_E,
        .S_FZG      = oil->S_FZG,
        .nu_40      = oil->law.oil.nu_40,
        .theta_S    = (double)NAN,
        .theta_intS = (double)NAN,
    };
}

static void rate(const ts_rubbing_desk *desk, uint32_t m, const void *ready, uint32_t condition)
{
    const ts_scuffing_prepared *prepared = ready;
    const ts_mesh_case         *one      = ts_rubbing_teeth_case(desk, m, condition);
    const ts_iso6336_rating    *r        = &one->rating;
    const ts_scuffing_load      load     = {.T_1           = one->load.T_1,
                                            .omega_1       = one->load.omega_1,
                                            .K_A           = one->load.K_A,
                                            .K_gamma       = one->load.K_gamma,
                                            .K_v           = r->K_v,
                                            .K_Hbeta       = r->K_Hbeta,
                                            .K_Halpha      = r->K_Halpha,
                                            .cp            = r->cp,
                                            .c_gamma_alpha = r->c_gamma_alpha,
                                            .theta_oil     = desk->rubbing->oil.theta_oil[condition],
                                            .eta_oil       = desk->rubbing->oil.eta_oil[condition],
                                            .theta_M       = (double)NAN};
    ts_scuffing                 rating;

    ts_rubbing_lend(desk, m, condition);
    (void)ts_scuffing_rate(prepared, &load, &rating, desk->workings);
    *ts_rubbing_case(desk, m, condition) = (ts_scuffing_case){
        .missing    = rating.missing,
        .driver     = prepared->mesh.driver,
        .theta_M    = rating.theta_M,
        .theta_Bmax = rating.theta_Bmax,
        .S_B        = rating.S_B,
        .theta_Mint = rating.theta_Mint,
        .theta_int  = rating.theta_int,
        .S_intS     = rating.S_intS,
        .hot_spot   = rating.hot_spot,
        .remarks    = rating.remarks,
    };
}

static void prepare(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *mesh,
                    int driver, void *prepared)
{
    const ts_scuffing_mesh in = mesh_of(desk, m, mesh, driver);

    (void)ts_scuffing_prepare(&desk->teeth->motion->meshes[m].pair, &in, prepared, desk->workings);
}

const char *ts_rubbing_rate_mesh(const ts_rubbing_desk *desk, uint32_t m)
{
    static const ts_rubbing_method method = {prepare, rate};
    ts_scuffing_prepared           prepared;

    return ts_rubbing_by_method(desk, m, &method, &prepared);
}
