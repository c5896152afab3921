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

/* Of the gears of a mesh that turn with the shaft, and of its oil if the mesh drives it. */
static void add_mesh(const ts_heat *heat, uint32_t p, uint32_t shaft, const ts_heat_state *oil,
                     ts_shaft_drag *drag)
{
    const ts_heat_place *place = &heat->places[p];
    const ts_mesh       *mesh  = &heat->motion->train->meshes[place->mesh];
    const double         r     = heat->motion->meshes[place->mesh].r_2;

    for (int g = 0; g < place->gear_count; g++)
        if (place->gears[g].shaft == shaft)
            drag->wind +=
                ts_windage_by_loewenthal(place->gears[g].R, place->gears[g].F, 1.0, oil->eta, NULL);
    if (mesh->driven_shaft != shaft)
        return;
    if (place->dips) {
        const double dip = 2.25 * place->m;
        drag->churn      = ts_churning_torque(place->b, dip, 0.0, NULL);
        drag->rate       = log(ts_churning_torque(place->b, dip, r, NULL) / drag->churn);
    } else {
        /* A spool that is not cranked turns at a speed of its own when the flow is full. */
        const double n =
            heat->motion->speed[(size_t)heat->full_at * heat->motion->train->shaft_count + shaft];
        drag->full   = n > 0.0 ? n : heat->n_full * ratio_of(heat, shaft);
        drag->thrown = ts_thrown_oil_power(heat->scratch->Q[p], oil->rho, r, NULL) / drag->full;
    }
}

static double drag_of_seal(const ts_heat *heat, const ts_heat_place *place,
                           const ts_heat_state *oil)
{
    const double P =
        ts_seal_power(place->d_sh, 1.0, oil->theta, heat->drive->oil.nu_40.value, NULL);

    return isnan(P) ? ts_seal_torque(place->d_sh, NULL) : P;
}

static ts_shaft_drag drag_of(const ts_heat *heat, uint32_t shaft, const ts_heat_state *oil)
{
    ts_shaft_drag drag = {.full = (double)INFINITY};

    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_place *place = &heat->places[p];

        if (place->missing != NULL)
            continue;
        if (place->site == TS_HEAT_AT_MESH)
            add_mesh(heat, p, shaft, oil, &drag);
        else if (place->site == TS_HEAT_AT_PAD && place->shaft == shaft && place->d_sh > 0.0)
            drag.seal += drag_of_seal(heat, place, oil);
    }
    return drag;
}

ts_shaft_drag ts_heat_shaft_drag(const ts_heat *heat, uint32_t shaft, double theta)
{
    if (heat->missing != NULL || !(theta > 0.0))
        return (ts_shaft_drag){.seal = (double)NAN};
    const ts_heat_state oil = oil_at(heat, theta);
    return drag_of(heat, shaft, &oil);
}

double ts_heat_drag_at(const ts_heat *heat, uint32_t spool, double n, double theta)
{
    const ts_train *train = heat->motion->train;
    const double    slow  = fmax(n, 1e-3); /* rad/s: power over speed has its limit there */
    double          T     = 0.0;

    if (heat->missing != NULL || !(n >= 0.0) || !(theta > 0.0))
        return (double)NAN;
    const ts_heat_state oil = oil_at(heat, theta);
    for (uint32_t p = heat->bearing_begin; p < heat->pad_begin; p++) {
        const ts_heat_place *place = &heat->places[p];
        const double         i     = ratio_of(heat, place->shaft);

        if (place->missing == NULL && train->shafts[place->shaft].spool == spool)
            T += ts_bearing_drag_0(place->f_0, oil.nu, slow * i, place->d_m, NULL) * i;
    }
    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const double        i    = ratio_of(heat, s);
        const ts_shaft_drag drag = drag_of(heat, s, &oil);

        if (train->shafts[s].spool == spool)
            T += ts_shaft_drag_at(&drag, slow * i) * i;
    }
    return T;
}
