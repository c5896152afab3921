/* oil/heat_size.c: how much oil does each place need, and through which jets does it come? */
#include "oil/heat_parts.h"

#include <math.h>

static double v_t_of(const ts_heat *heat, uint32_t condition, const ts_heat_place *place)
{
    const uint32_t meshes = heat->motion->train->mesh_count;

    return place->site == TS_HEAT_AT_MESH
               ? heat->motion->velocity[(size_t)condition * meshes + place->mesh]
               : 0.0;
}

/* ---- what is needed -------------------------------------------------------------------------- */

static void need_in(const ts_heat_desk *desk)
{
    const ts_heat   *heat    = desk->heat;
    ts_heat_scratch *scratch = heat->scratch;
    const double     share   = heat->feed_share[desk->condition];
    const double     rise    = heat->drive->oil.rise.value;

    for (uint32_t p = heat->pad_begin; p < heat->place_count; p++)
        desk->cases[heat->places[p].fed].sum += desk->cases[p].sum;
    for (uint32_t p = 0; p < heat->pad_begin; p++) {
        const ts_heat_place *place = &heat->places[p];
        const ts_heat_state *state = &desk->states[place->drive];
        const double         v_t   = place->dips ? 0.0 : v_t_of(heat, desk->condition, place);
        double               Q     = 0.0;

        if (desk->cases[p].sum > 0.0)
            Q = ts_oil_flow(desk->cases[p].sum, state->rho_in, state->c, rise, v_t, NULL);
        /* Throwing the oil off alone would warm it as much. */
        scratch->need[p] = fmax(scratch->need[p], isnan(Q) ? (double)INFINITY : Q / share);
    }
}

/* ---- holes ----------------------------------------------------------------------------------- */

/* The condition that lasts in which the teeth are fastest. */
static int32_t fastest(const ts_heat *heat, const ts_heat_place *place)
{
    int32_t at   = 0;
    double  most = -1.0;

    for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
        const double v =
            heat->motion->speed[(size_t)c * heat->motion->train->shaft_count + place->shaft];
        if (ts_heat_lasts(heat->drive, c) && heat->feed_share[c] > 0.0 && v > most) {
            most = v;
            at   = (int32_t)c;
        }
    }
    return at;
}

/* As many again where both sides of the mesh are fed. */
static int holes_of(const ts_heat *heat, const ts_heat_place *place)
{
    if (place->site == TS_HEAT_AT_BEARING)
        return 1;
    const double v_t = v_t_of(heat, (uint32_t)fastest(heat, place), place);
    return (1 + (int)(place->b / TS_HEAT_JET_FACE)) * (ts_jet_side_at(v_t) == TS_JET_BOTH ? 2 : 1);
}

/* Through the smallest holes, at the oil of the condition that its jets are told for. */
static double least_flow(const ts_heat *heat, uint32_t p)
{
    const ts_heat_place *place = &heat->places[p];
    const ts_oil        *oil   = &heat->drive->oil;
    const double         theta = heat->oil->theta_oil[fastest(heat, place)];
    const double         rho   = ts_oil_density(oil->rho_15.value, theta, NULL);
    const double         v     = ts_jet_speed(oil->jet_pressure.value, rho, NULL);
    const double         hole  = ts_jet_flow(TS_HEAT_C_D, oil->least_jet.value, v, NULL);

    return place->missing != NULL ? 0.0 : holes_of(heat, place) * hole;
}

static void give(ts_heat *heat)
{
    ts_heat_scratch *scratch = heat->scratch;
    const ts_measure flow    = heat->drive->oil.flow;

    heat->Q = 0.0;
    for (uint32_t p = 0; p < heat->place_count; p++) {
        const bool   jets = p < heat->pad_begin && !heat->places[p].dips;
        const double need = isfinite(scratch->need[p]) ? scratch->need[p] : 0.0;

        scratch->Q[p] = p >= heat->pad_begin ? 0.0 : jets ? fmax(need, least_flow(heat, p)) : need;
        heat->Q += scratch->Q[p];
    }
    if (!ts_measure_known(flow) || !(heat->Q > 0.0))
        return;
    for (uint32_t p = 0; p < heat->place_count; p++)
        scratch->Q[p] *= flow.value / heat->Q;
    heat->Q = flow.value;
}

void ts_heat_size(ts_heat *heat)
{
    for (uint32_t p = 0; p < heat->place_count; p++)
        heat->scratch->need[p] = 0.0;
    for (int method = 0; method < TS_HEAT_METHODS; method++)
        for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
            ts_heat_desk desk = ts_heat_open(heat, method, c, NULL);

            desk.sizing = true;
            if (!ts_heat_lasts(heat->drive, c) || !(heat->feed_share[c] > 0.0))
                continue;
            ts_heat_settle(&desk);
            need_in(&desk);
        }
    give(heat);
}

/* ---- jets ------------------------------------------------------------------------------------ */

static const ts_formula held_formula = {
    .symbol  = "depth",
    .meaning = "how deep the jet comes into a tooth space, no deeper than it is",
    .unit    = "m",
    .text    = "min(depth_rack, h)",
    .source  = "derived: the bottom of the tooth space",
};

/* How deep it comes between the teeth. */
static void reach(const ts_heat_place *place, ts_heat_jet *jet, ts_workings *w)
{
    const double m_n = place->m, alpha = place->alpha_n, v_t = jet->v_t, h = 2.25 * m_n;

    ts_workings_assumed(w, "m_n", m_n, "m", "of the teeth");
    ts_workings_assumed(w, "alpha", alpha, "rad", "of the teeth");
    ts_workings_assumed(w, "v_t", v_t, "m/s", "of the teeth");
    ts_workings_assumed(w, "h", h, "m", "2.25 modules");
    const double depth_rack = ts_jet_depth(m_n, alpha, v_t, jet->v, NULL);
    ts_workings_assumed(w, "depth_rack", depth_rack, "m",
                        "rack model of the radial jet of Akin, Mross and Townsend 1975");
    jet->h     = h;
    jet->depth = TS_STEP(w, held_formula, fmin(depth_rack, h), depth_rack, h);
}

/* Air turns as fast as the teeth, and in a bearing with the cage: with half of the shaft's speed,
 * half way out. */
static void drift(const ts_heat *heat, const ts_heat_place *place, ts_heat_jet *jet, double rho_oil,
                  ts_workings *w)
{
    const bool     mesh   = place->site == TS_HEAT_AT_MESH;
    const uint32_t shafts = heat->motion->train->shaft_count;
    const double   n      = heat->motion->speed[(size_t)jet->at * shafts + place->shaft];
    const double   u      = mesh ? jet->v_t : n / 2.0 * place->d_m / 2.0;
    const double   gap    = heat->drive->oil.jet_gap.value;

    ts_workings_assumed(w, "gap", gap, "m", "`jet gap` of the oil");
    ts_workings_assumed(w, "u", u, "m/s",
                        mesh ? "the wind is as fast as the teeth"
                             : "the wind is as fast as the cage; common practice, no source");
    ts_workings_assumed(w, "v_jet", jet->v, "m/s", "of the jet");
    ts_workings_assumed(w, "d_jet", jet->d, "m", "of the hole");
    jet->u     = u;
    jet->drift = ts_jet_drift(gap, jet->v, jet->d, u, rho_oil, w);
}

static void aim(ts_heat *heat, uint32_t p, ts_workings *w)
{
    const ts_heat_place *place   = &heat->places[p];
    ts_heat_jet         *jet     = &heat->jets[p];
    const ts_oil        *oil     = &heat->drive->oil;
    const uint32_t       c       = (uint32_t)jet->at;
    const double         rho_oil = ts_oil_density(oil->rho_15.value, heat->oil->theta_oil[c], NULL);
    /* Flow follows the speed of the pump, pressure its square. */
    const double share = heat->feed_share[c];
    const double dp    = oil->jet_pressure.value * share * share;
    const double C_d = TS_HEAT_C_D, Q = jet->Q / jet->count * share;

    ts_workings_about(w, place->node[0], TS_EVERY_CONDITION);
    ts_workings_assumed(w, "dp", dp, "Pa",
                        "`jet pressure` of the oil, less where the pump is slow");
    ts_workings_assumed(w, "rho_oil", rho_oil, "kg/m3", "of the oil that is fed");
    ts_workings_assumed(w, "C_d", C_d, "1",
                        "small round holes: 0.62 to 0.88 measured (from memory)");
    ts_workings_assumed(w, "Q", Q, "m3/s", "what the place is given, a hole");
    jet->dp   = dp;
    jet->v    = ts_jet_speed(dp, rho_oil, w);
    jet->d    = ts_jet_diameter(Q, C_d, jet->v, w);
    jet->v_t  = v_t_of(heat, c, place);
    jet->side = ts_jet_side_at(jet->v_t);
    if (place->site == TS_HEAT_AT_MESH && jet->v_t > 0.0)
        reach(place, jet, w);
    drift(heat, place, jet, rho_oil, w);
}

void ts_heat_jets(ts_heat *heat, ts_workings *workings)
{
    for (uint32_t p = 0; p < heat->place_count; p++) {
        const ts_heat_place *place = &heat->places[p];
        ts_heat_jet         *jet   = &heat->jets[p];

        *jet = (ts_heat_jet){.need = heat->scratch->need[p], .Q = heat->scratch->Q[p]};
        if (place->missing != NULL || place->dips || !(jet->Q > 0.0))
            continue;
        jet->count = holes_of(heat, place);
        jet->at    = fastest(heat, place);
        aim(heat, p, workings);
    }
}
