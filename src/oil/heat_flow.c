/* oil/heat_flow.c: how do power and heat flow through a drive until both agree? */
#include "oil/heat_parts.h"

#include <math.h>

#define ROUNDS_MOST 60
#define RISE_MOST   400.0 /* K: no oil stays oil there */
#define AGREED      1e-13
#define SIZED       1e-9

static const ts_formula theta_out_formula = {
    .symbol  = "theta_out",
    .meaning = "temperature with which the oil leaves",
    .unit    = "K",
    .text    = "theta_in + dtheta",
    .source  = "derived: the oil that is fed, warmed by the heat",
};
static const ts_formula imbalance_formula = {
    .symbol  = "imbalance",
    .meaning = "power that is given, not taken and not lost, over the largest power met",
    .unit    = "1",
    .text    = "abs(P_spool - P_pads - P)/P_most",
    .source  = "derived: conservation of energy; anything above rounding is a mistake",
};

/* ---- power ----------------------------------------------------------------------------------- */

static void add_pads(const ts_heat_desk *desk, double *on)
{
    const ts_power *power = desk->heat->power;
    const ts_train *train = desk->heat->motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++)
        on[s] = 0.0;
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].use == TS_PAD_ACCESSORY)
            on[train->pads[p].shaft] +=
                power->pad[(size_t)desk->condition * train->pad_count + p].P;
}

static void add_drags(const ts_heat_desk *desk, double *on)
{
    const ts_heat *heat = desk->heat;

    for (uint32_t p = 0; p < heat->bearing_begin; p++)
        for (int g = 0; g < desk->quick[p].gear_count; g++)
            on[desk->quick[p].gear_shaft[g]] += desk->cases[p].windage[g];
    for (uint32_t p = heat->bearing_begin; p < heat->place_count; p++)
        on[desk->quick[p].shaft] += desk->cases[p].sum;
}

/* A driver stands before what it drives, so backwards every shaft has all that it passes on. */
double ts_heat_carry(const ts_heat_desk *desk)
{
    const ts_train  *train   = desk->heat->motion->train;
    ts_heat_scratch *scratch = desk->heat->scratch;
    double          *on = scratch->on, worst = 0.0;

    for (uint32_t d = 0; d < desk->heat->drive->drive_count; d++)
        scratch->change[d] = scratch->most[d] = 0.0;
    add_pads(desk, on);
    add_drags(desk, on);
    for (uint32_t s = train->shaft_count; s-- > 0;) {
        const uint32_t m = train->shafts[s].mesh, d = train->shafts[s].drive;
        if (m == TS_NOWHERE)
            continue;
        const double P_2 = on[s];
        const double P_1 = P_2 + desk->cases[m].P[TS_HEAT_TEETH] + desk->cases[m].P[TS_HEAT_OIL];

        scratch->change[d] =
            fmax(scratch->change[d], fmax(fabs(P_1 - desk->P[m][0]), fabs(P_2 - desk->P[m][1])));
        scratch->most[d] = fmax(scratch->most[d], fmax(fabs(P_1), fabs(P_2)));
        desk->P[m][0]    = P_1;
        desk->P[m][1]    = P_2;
        on[train->meshes[m].driver_shaft] += P_1;
    }
    for (uint32_t d = 0; d < desk->heat->drive->drive_count; d++)
        if (scratch->most[d] > 0.0)
            worst = fmax(worst, scratch->change[d] / scratch->most[d]);
    return worst;
}

/* ---- oil ------------------------------------------------------------------------------------- */

static void add_heat(const ts_heat_desk *desk, double *into)
{
    const ts_heat *heat = desk->heat;

    for (uint32_t d = 0; d < heat->drive->drive_count; d++)
        into[d] = 0.0;
    for (uint32_t p = 0; p < heat->place_count; p++)
        into[desk->quick[p].drive] += desk->cases[p].sum;
}

/* What the heat would warm the oil by, less what was supposed. */
static double left_over(const ts_heat_desk *desk, uint32_t d)
{
    const ts_heat_state *state = &desk->states[d];

    if (!(desk->heat->scratch->heat[d] > 0.0) || !(state->Q > 0.0))
        return -state->rise;
    return ts_oil_rise(desk->heat->scratch->heat[d], state->rho_in, state->Q, state->c, NULL) -
           state->rise;
}

/* The secant, held where it would not descend: warmer oil is thinner and makes less heat, so the
 * slope is about -1 or steeper. */
static double next_rise(const ts_heat_desk *desk, uint32_t d, double g, int round)
{
    const ts_heat_scratch *scratch = desk->heat->scratch;
    const double           x       = desk->states[d].rise;
    double                 slope   = -1.3;

    if (round > 0 && fabs(x - scratch->x[d]) > 0.0) {
        slope = (g - scratch->g[d]) / (x - scratch->x[d]);
        slope = fmin(fmax(slope, -6.0), -0.7);
    }
    scratch->x[d] = x;
    scratch->g[d] = g;
    return fmin(fmax(x - g / slope, 0.0), RISE_MOST);
}

static double allowed(const ts_heat_desk *desk)
{
    return desk->heat->drive->oil.rise.value;
}

/* Returns whether every temperature stands. */
static bool warm(const ts_heat_desk *desk, int round)
{
    bool stands = true;

    add_heat(desk, desk->heat->scratch->heat);
    for (uint32_t d = 0; d < desk->heat->drive->drive_count; d++) {
        ts_heat_state *state = &desk->states[d];
        const double   g     = left_over(desk, d);

        if (!(fabs(g) <= AGREED * 1e3)) {
            stands = state->rise >= RISE_MOST && g > 0.0 && stands;
            ts_heat_oil_at(desk, d, next_rise(desk, d, g, round));
        }
    }
    return stands;
}

static void begin(const ts_heat_desk *desk)
{
    const ts_heat  *heat  = desk->heat;
    const ts_train *train = heat->motion->train;

    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh_load *load =
            &heat->power->mesh[(size_t)desk->condition * train->mesh_count + m];
        desk->P[m][0] = load->P[0];
        desk->P[m][1] = load->P[1];
    }
    for (uint32_t d = 0; d < heat->drive->drive_count; d++) {
        desk->states[d] = (ts_heat_state){0};
        ts_heat_oil_at(desk, d, allowed(desk));
    }
    if (desk->sizing)
        return;
    for (uint32_t p = 0; p < heat->place_count; p++)
        desk->states[heat->places[p].drive].Q +=
            heat->scratch->Q[p] * heat->feed_share[desk->condition];
}

static void note_state(const ts_heat_desk *desk, uint32_t d, double P_most)
{
    static const char   *found   = "found by repetition: docs/method/oil.md";
    const ts_heat_state *state   = &desk->states[d];
    const double         P_spool = state->P_spool, P_pads = state->P_pads, P = state->heat;
    const double         theta_in = state->theta_in;
    ts_workings         *w        = desk->workings;

    ts_workings_about(w, desk->heat->nodes[d][desk->method], (int32_t)desk->condition);
    ts_workings_assumed(w, "P", P, "W", "sum of P_heat of all places of this drive");
    ts_workings_assumed(w, "P_spool", P_spool, "W", found);
    ts_workings_assumed(w, "P_pads", P_pads, "W", "sum of P of all its pads");
    ts_workings_assumed(w, "P_most", P_most, "W", "the largest of given and taken");
    if (P_most > 0.0)
        (void)TS_STEP(w, imbalance_formula, state->imbalance, P_spool, P_pads, P, P_most);
    ts_workings_assumed(w, "theta_in", theta_in, "K", "`feed` of the oil in this condition");
    if (state->dry || !(P > 0.0)) {
        ts_workings_assumed(w, "dtheta", state->rise, TS_UNIT_DIFFERENCE, "no heat, or no oil");
    } else {
        ts_workings_assumed(w, "rho_oil", state->rho_in, "kg/m3", "of the feed");
        ts_workings_assumed(w, "c_oil", state->c, "J/(kg.K)", "half way between feed and return");
        ts_workings_assumed(w, "Q", state->Q, "m3/s", "of all jets of this drive");
        (void)ts_oil_rise(P, state->rho_in, state->Q, state->c, w);
    }
    const double dtheta = state->rise;
    (void)TS_STEP(w, theta_out_formula, theta_in + dtheta, theta_in, dtheta);
}

/* Power of the spool that a drive hangs on, and what its pads take. */
static void balance(const ts_heat_desk *desk, uint32_t d, bool settled)
{
    const ts_heat  *heat    = desk->heat;
    const ts_train *train   = heat->motion->train;
    ts_heat_state  *state   = &desk->states[d];
    double          driving = 0.0;

    state->P_spool = state->P_pads = 0.0;
    for (uint32_t p = 0; p < train->pad_count; p++) {
        const double P = heat->power->pad[(size_t)desk->condition * train->pad_count + p].P;
        if (train->pads[p].use != TS_PAD_ACCESSORY ||
            train->shafts[train->pads[p].shaft].drive != d)
            continue;
        state->P_pads += P;
        driving += fmax(-P, 0.0);
    }
    for (uint32_t s = 0; s < train->shaft_count; s++)
        if (train->shafts[s].kind == TS_SHAFT_SPOOL &&
            (int32_t)train->shafts[s].spool == heat->drive->drive[d].spool)
            state->P_spool = heat->scratch->on[s];
    state->heat    = heat->scratch->heat[d];
    state->dry     = state->heat > 0.0 && !(state->Q > 0.0);
    state->settled = settled && state->rise < RISE_MOST;
    if (state->heat > 0.0 && !state->dry)
        state->rise = ts_oil_rise(state->heat, state->rho_in, state->Q, state->c, NULL);
    const double P_most = fmax(fabs(state->P_spool), fmax(driving, state->P_pads + driving));
    state->imbalance =
        P_most > 0.0 ? fabs(state->P_spool - state->P_pads - state->heat) / P_most : 0.0;
    if (desk->workings != NULL)
        note_state(desk, d, P_most);
}

/* Sizing: at one temperature. */
static void settle_power(const ts_heat_desk *desk)
{
    for (int round = 0; round < ROUNDS_MOST; round++) {
        ts_heat_lose_quickly(desk);
        if (ts_heat_carry(desk) <= SIZED)
            break;
    }
}

void ts_heat_settle(const ts_heat_desk *desk)
{
    ts_heat_desk quiet   = *desk;
    bool         settled = false;

    quiet.workings = NULL;
    begin(&quiet);
    if (desk->sizing) {
        settle_power(&quiet);
        return;
    }
    for (int round = 0; round < ROUNDS_MOST && !settled; round++) {
        ts_heat_lose_quickly(&quiet);
        const double change = ts_heat_carry(&quiet);
        settled             = warm(&quiet, round) && change <= AGREED;
    }
    /* By the laws themselves, from the loads that carry the losses: so the balance is that of two
     * numbers and not of one with itself. */
    ts_heat_lose(desk);
    add_heat(desk, desk->heat->scratch->heat);
    for (uint32_t d = 0; d < desk->heat->drive->drive_count; d++)
        balance(desk, d, settled);
}

/* ---- paths ----------------------------------------------------------------------------------- */

/* W that enter every shaft, from wherever, and W that drag there. */
static void gather_shafts(const ts_heat *heat, uint32_t condition, double *in, double *drag)
{
    const ts_train *train = heat->motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++)
        in[s] = drag[s] = 0.0;
    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const double *P = ts_heat_power_at(heat, 0, condition, m);
        in[train->meshes[m].driven_shaft] += fmax(P[1], 0.0);
        in[train->meshes[m].driver_shaft] += fmax(-P[0], 0.0);
    }
    for (uint32_t p = 0; p < train->pad_count; p++)
        in[train->pads[p].shaft] +=
            fmax(-heat->power->pad[(size_t)condition * train->pad_count + p].P, 0.0);
    for (uint32_t p = 0; p < heat->bearing_begin; p++)
        for (int g = 0; g < heat->places[p].gear_count; g++)
            drag[heat->places[p].gears[g].shaft] += ts_heat_at(heat, 0, condition, p)->windage[g];
    for (uint32_t p = heat->bearing_begin; p < heat->place_count; p++)
        drag[heat->places[p].shaft] += ts_heat_at(heat, 0, condition, p)->sum;
}

/* Up the tree from a pad; NaN where power does not flow one way. */
static double share_of(const ts_heat *heat, uint32_t condition, uint32_t pad)
{
    const ts_train *train   = heat->motion->train;
    const double    P       = heat->power->pad[(size_t)condition * train->pad_count + pad].P;
    const bool      outward = P > 0.0;
    double          share   = 1.0;

    if (!(fabs(P) > 0.0))
        return (double)NAN;
    for (uint32_t s = train->pads[pad].shaft; train->shafts[s].kind != TS_SHAFT_SPOOL;
         s          = train->meshes[train->shafts[s].mesh].driver_shaft) {
        const double *mesh = ts_heat_power_at(heat, 0, condition, train->shafts[s].mesh);
        const double  in   = heat->scratch->in[s];

        if (outward ? !(mesh[0] > 0.0 && mesh[1] > 0.0) : !(mesh[0] < 0.0 && mesh[1] < 0.0))
            return (double)NAN;
        share *=
            (1.0 - heat->scratch->on[s] / in) * (outward ? mesh[1] / mesh[0] : mesh[0] / mesh[1]);
    }
    return share;
}

/* W that shaft s passes on: to its pads, and to the meshes that it drives. */
static double passed_on(const ts_heat *heat, int method, uint32_t condition, uint32_t s)
{
    const ts_train *train = heat->motion->train;
    double          P     = 0.0;

    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].shaft == s && train->pads[p].use == TS_PAD_ACCESSORY)
            P += heat->power->pad[(size_t)condition * train->pad_count + p].P;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        if (train->meshes[m].driver_shaft == s)
            P += ts_heat_power_at(heat, method, condition, m)[0];
    return P;
}

double ts_heat_share_lost(const ts_heat *heat, int method, uint32_t condition, uint32_t mesh)
{
    const double in = ts_heat_power_at(heat, method, condition, mesh)[0];
    const double on =
        passed_on(heat, method, condition, heat->motion->train->meshes[mesh].driven_shaft);

    if (in > 0.0 && on > 0.0)
        return 1.0 - on / in;
    return in < 0.0 && on < 0.0 ? 1.0 - in / on : (double)NAN;
}

void ts_heat_paths(ts_heat *heat)
{
    const ts_train *train = heat->motion->train;

    for (uint32_t c = 0; c < heat->motion->condition_count; c++) {
        gather_shafts(heat, c, heat->scratch->in, heat->scratch->on);
        for (uint32_t p = 0; p < train->pad_count; p++)
            heat->share[(size_t)c * train->pad_count + p] =
                train->pads[p].use == TS_PAD_ACCESSORY ? share_of(heat, c, p) : (double)NAN;
    }
}
