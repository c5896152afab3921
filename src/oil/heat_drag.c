/* oil/heat_drag.c: what does a drive ask of its spool while nothing is asked of it? */
#include "oil/drag.h"
#include "oil/heat_parts.h"

#include <math.h>

/* The oil that all places of a condition would have at this temperature. */
static ts_heat_state oil_at(const ts_heat *heat, double theta)
{
    return (ts_heat_state){
        .theta = theta,
        .eta   = ts_film_viscosity(&heat->oil->law, theta, NULL),
        .nu    = ts_viscosity_at(&heat->oil->law.viscosity, theta, NULL),
        .rho   = ts_oil_density(heat->drive->oil.rho_15.value, theta, NULL),
    };
}

/* Speed of a shaft over that of its spool. */
static double ratio_of(const ts_heat *heat, uint32_t shaft)
{
    return fabs(ts_rational_value(heat->motion->shafts[shaft].ratio));
}

static double drag_of_mesh(const ts_heat *heat, uint32_t p, const ts_heat_state *oil, double n,
                           double share)
{
    const ts_heat_place *place = &heat->places[p];
    const ts_mesh       *mesh  = &heat->motion->train->meshes[place->mesh];
    const double         n_2   = n * ratio_of(heat, mesh->driven_shaft);
    const double         v_t   = n_2 * heat->motion->meshes[place->mesh].r_2;
    double               P     = 0.0;

    for (int g = 0; g < place->gear_count; g++) {
        const ts_heat_gear *gear = &place->gears[g];
        P += ts_windage_by_loewenthal(gear->R, gear->F, n * ratio_of(heat, gear->shaft), oil->eta,
                                      NULL);
    }
    if (place->dips)
        return P + ts_churning_torque(place->b, 2.25 * place->m, v_t, NULL) * n_2;
    return P + ts_thrown_oil_power(heat->scratch->Q[p] * share, oil->rho, v_t, NULL);
}

static double drag_of_seal(const ts_heat *heat, const ts_heat_place *place,
                           const ts_heat_state *oil, double n)
{
    const double P = ts_seal_power(place->d_sh, n, oil->theta, heat->drive->oil.nu_40.value, NULL);

    return isnan(P) ? ts_seal_torque(place->d_sh, NULL) * n : P;
}

double ts_heat_drag_at(const ts_heat *heat, uint32_t spool, double n, double theta)
{
    const ts_train *train = heat->motion->train;
    const double    slow  = fmax(n, 1e-3); /* rad/s: power over speed has its limit there */
    double          P     = 0.0;

    if (heat->missing != NULL || !(n >= 0.0) || !(theta > 0.0))
        return (double)NAN;
    const ts_heat_state oil   = oil_at(heat, theta);
    const double        share = fmin(slow / heat->n_full, 1.0);
    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_place *place = &heat->places[p];
        const double         n_p   = slow * ratio_of(heat, place->shaft);

        if (place->missing != NULL || train->shafts[place->shaft].spool != spool)
            continue;
        if (place->site == TS_HEAT_AT_MESH)
            P += drag_of_mesh(heat, p, &oil, slow, share);
        else if (place->site == TS_HEAT_AT_BEARING)
            P += ts_bearing_drag_0(place->f_0, oil.nu, n_p, place->d_m, NULL) * n_p;
        else if (place->d_sh > 0.0)
            P += drag_of_seal(heat, place, &oil, n_p);
    }
    return P / slow;
}
