/* oil/heat_desk.c: what is settled at once? */
#include "oil/heat_parts.h"

bool ts_heat_lasts(const ts_drive *drive, uint32_t condition)
{
    return ts_condition_lasts(&drive->conditions[condition]);
}

ts_heat_desk ts_heat_open(ts_heat *heat, int method, uint32_t condition, ts_workings *workings)
{
    const uint32_t shafts = heat->motion->train->shaft_count;
    const size_t   row    = (size_t)method * heat->motion->condition_count + condition;

    return (ts_heat_desk){
        .heat      = heat,
        .method    = method,
        .condition = condition,
        .speed     = &heat->motion->speed[(size_t)condition * shafts],
        .P         = heat->scratch->P,
        .cases     = heat->scratch->cases,
        .states    = heat->scratch->states,
        .quick     = &heat->scratch->quick[row * heat->place_count],
        .workings  = workings,
    };
}

void ts_heat_oil_at(const ts_heat_desk *desk, uint32_t drive, double x)
{
    const ts_heat *heat  = desk->heat;
    ts_heat_state *state = &desk->states[drive];
    const ts_oil  *oil   = &heat->drive->oil;
    const double   feed  = heat->oil->theta_oil[desk->condition] + desk->warmer;

    state->theta_in = feed;
    state->rise     = x;
    state->theta    = feed + x / 2.0;
    state->eta      = ts_film_viscosity(&heat->oil->law, state->theta, NULL);
    state->nu       = ts_viscosity_at(&heat->oil->law.viscosity, state->theta, NULL);
    state->rho      = ts_oil_density(oil->rho_15.value, state->theta, NULL);
    state->rho_in   = ts_oil_density(oil->rho_15.value, feed, NULL);
    state->c        = ts_oil_heat_capacity(heat->c_100, state->theta, NULL);
}
