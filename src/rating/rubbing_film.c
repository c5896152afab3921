/* rating/rubbing_film.c: how thin does the oil between the flanks of a cylindrical mesh get,
 * condition by condition? */
#include "rating/drive_rubbing_parts.h"

#include "motion/value_note.h"

#include <math.h>

static ts_film_gear gear_of(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *mesh,
                            int g)
{
    const ts_iso6336_gear *gear = &desk->teeth->prepared[m].mesh.gear[g];
    const ts_gear         *record =
        &desk->train->gears[g == 0 ? desk->train->meshes[m].driver : desk->train->meshes[m].driven];
    const ts_gear_material steel = ts_gear_material_at((size_t)record->material.value);

    return (ts_film_gear){.E   = gear->E,
                          .nu  = gear->nu,
                          .B_M = TS_STEEL_B_M,
                          .Ra  = mesh->Ra[g],
                          .C_a = gear->C_a,
                          .W_W = ts_film_material_factor(steel.class, steel.hardness)};
}

static ts_micropitting_mesh mesh_of(const ts_rubbing_desk *desk, uint32_t m,
                                    const ts_rubbing_mesh *mesh, int driver)
{
    const ts_oil *oil   = &desk->drive->oil;
    const bool    known = oil->micropitting_stage.standing == TS_GIVEN;

    return (ts_micropitting_mesh){
        .gear       = {gear_of(desk, m, mesh, 0), gear_of(desk, m, mesh, 1)},
        .driver     = driver,
        .grade      = mesh->grade,
        .X_S        = mesh->X_S,
        .X_L        = desk->rubbing->oil.X_L,
        .oil        = desk->rubbing->oil.law.oil,
        .lambda_GFP = (double)NAN,
        .SKS        = known ? (int)oil->micropitting_stage.value : 0,
        .theta_test =
            ts_measure_known(oil->micropitting_test) ? oil->micropitting_test.value : (double)NAN,
    };
}

static void rate(const ts_rubbing_desk *desk, uint32_t m, const void *ready, uint32_t condition)
{
    const ts_micropitting_prepared *prepared = ready;
    const ts_mesh_case             *one      = ts_rubbing_teeth_case(desk, m, condition);
    const ts_iso6336_rating        *r        = &one->rating;
    const ts_micropitting_load      load     = {.T_1           = one->load.T_1,
                                                .omega_1       = one->load.omega_1,
                                                .K_A           = one->load.K_A,
                                                .K_gamma       = one->load.K_gamma,
                                                .K_v           = r->K_v,
                                                .K_Hbeta       = r->K_Hbeta,
                                                .K_Halpha      = r->K_Halpha,
                                                .cp            = r->cp,
                                                .c_gamma_alpha = r->c_gamma_alpha,
                                                .theta_oil = desk->rubbing->oil.theta_oil[condition],
                                                .theta_M   = (double)NAN};
    ts_micropitting                 rating;

    ts_rubbing_lend(desk, m, condition);
    (void)ts_micropitting_rate(prepared, &load, &rating, desk->workings);
    *ts_rubbing_film(desk, m, condition) = (ts_film_of_case){
        .missing      = rating.missing,
        .theta_M      = rating.theta_M,
        .lambda_GFmin = rating.lambda_GFmin,
        .h_min        = rating.h_min,
        .S_lambda     = rating.S_lambda,
        .where        = rating.where,
        .remarks      = rating.remarks,
    };
}

static void prepare(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *mesh,
                    int driver, void *prepared)
{
    const ts_micropitting_mesh in = mesh_of(desk, m, mesh, driver);

    (void)ts_micropitting_prepare(&desk->teeth->motion->meshes[m].pair, &in, prepared,
                                  desk->workings);
}

const char *ts_rubbing_film_mesh(const ts_rubbing_desk *desk, uint32_t m)
{
    static const ts_rubbing_method method = {prepare, rate};
    ts_micropitting_prepared       prepared;

    return ts_rubbing_by_method(desk, m, &method, &prepared);
}
