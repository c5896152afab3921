/* power/balance.c: what does each spool give, and does all of it add up? */
#include "power/power_parts.h"
#include "power/sum_formula.h"

#include <math.h>

static const ts_formula P_formula = {
    .symbol  = "P",
    .meaning = "power taken from the spool; negative: the spool is driven",
    .unit    = "W",
    .text    = "T*n",
    .source  = "derived: power is torque times speed",
};
static const ts_formula P_most_formula = {
    .symbol  = "P_most",
    .meaning = "the largest power met, to which the imbalance is referred",
    .unit    = "W",
    .text    = "max(abs(P), P_driving, P_pads + P_driving)",
    .source  = "derived: of what the spool gives, the accessories give and the accessories take",
};
static const ts_formula imbalance_formula = {
    .symbol  = "imbalance",
    .meaning = "power that is given, not taken and not lost, over the largest power met",
    .unit    = "1",
    .text    = "abs(P - P_pads - P_lost)/P_most",
    .source  = "derived: conservation of energy; anything above rounding is a mistake",
};

/* ---- sums over the tree of a spool ----------------------------------------------------------- */

typedef const ts_formula *(*sum_of)(size_t count);

/* `symbol` names the lender's number. */
static double sum_terms(const ts_power_case *c, sum_of formula, size_t count, const char *none)
{
    const ts_input *terms = c->power->order->terms;
    double          sum   = 0.0;

    if (count == 0) {
        ts_workings_assumed(c->workings, formula(1)->symbol, 0.0, "W", none);
        return 0.0;
    }
    for (size_t i = 0; i < count; i++)
        sum += terms[i].value;
    if (formula == ts_driving_power_sum)
        sum = -sum;
    return ts_step_list(c->workings, formula(count), sum, terms, count);
}

static bool counts(const ts_power_case *c, uint32_t p, uint32_t spool, bool driving_only)
{
    const ts_pad *pad = &c->train->pads[p];

    return pad->use == TS_PAD_ACCESSORY && c->train->shafts[pad->shaft].spool == spool &&
           (!driving_only || c->pad[p].T < 0.0);
}

static double sum_pads(const ts_power_case *c, uint32_t spool, bool driving_only)
{
    ts_input *terms = c->power->order->terms;
    size_t    count = 0, named = 0;

    for (uint32_t p = 0; p < c->train->pad_count; p++)
        if (counts(c, p, spool, driving_only))
            count++;
    for (uint32_t p = 0; p < c->train->pad_count; p++) {
        if (!counts(c, p, spool, driving_only))
            continue;
        terms[named] = (ts_input){ts_power_term(named, count), c->pad[p].P};
        ts_workings_borrow(c->workings, terms[named].name, terms[named].value,
                           ts_in_condition(c, c->train->pads[p].node), "P");
        named++;
    }
    return driving_only
               ? sum_terms(c, ts_driving_power_sum, count, "no accessory drives")
               : sum_terms(c, ts_pad_power_sum, count, "no accessory is driven by this spool");
}

static double sum_losses(const ts_power_case *c, uint32_t spool)
{
    ts_input *terms = c->power->order->terms;
    size_t    count = 0, named = 0;

    for (uint32_t m = 0; m < c->train->mesh_count; m++)
        if (c->train->shafts[c->train->meshes[m].driver_shaft].spool == spool)
            count++;
    for (uint32_t m = 0; m < c->train->mesh_count; m++) {
        if (c->train->shafts[c->train->meshes[m].driver_shaft].spool != spool)
            continue;
        terms[named] = (ts_input){ts_power_term(named, count), c->mesh[m].loss};
        ts_workings_borrow(c->workings, terms[named].name, terms[named].value,
                           ts_in_condition(c, c->train->meshes[m].node), "P_loss");
        named++;
    }
    return sum_terms(c, ts_lost_power_sum, count, "the spool drives no gear");
}

static void balance_spool(const ts_power_case *c, uint32_t s)
{
    const ts_shaft *shaft = &c->train->shafts[s];
    ts_spool_load  *load  = &c->spool[shaft->spool];
    const double    T = c->T[s], n = c->speed[s];

    *load = (ts_spool_load){.T = T};
    if (isnan(n))
        return; /* the pads took nothing, since their speed is not known */
    ts_workings_about(c->workings, shaft->node, (int32_t)c->condition);
    const double P         = TS_STEP(c->workings, P_formula, T * n, T, n);
    const double P_pads    = sum_pads(c, shaft->spool, false);
    const double P_driving = sum_pads(c, shaft->spool, true);
    const double P_lost    = sum_losses(c, shaft->spool);
    const double P_most =
        TS_STEP(c->workings, P_most_formula, fmax(fabs(P), fmax(P_driving, P_pads + P_driving)), P,
                P_driving, P_pads);

    load->P         = P;
    load->P_pads    = P_pads;
    load->P_driving = P_driving;
    load->P_lost    = P_lost;
    if (!(P_most > 0.0)) {
        ts_workings_assumed(c->workings, "imbalance", 0.0, "1", "no power flows");
        return;
    }
    load->imbalance = TS_STEP(c->workings, imbalance_formula, fabs(P - P_pads - P_lost) / P_most, P,
                              P_pads, P_lost, P_most);
}

/* ---- torque of every shaft, from what is stored, in the opposite order ----------------------- */

static double most(double a, double b)
{
    return fabs(b) > a ? fabs(b) : a;
}

static void balance_shaft(const ts_power_case *c, uint32_t s)
{
    const ts_shaft *shaft = &c->train->shafts[s];
    const double    in =
        shaft->mesh == TS_NOWHERE ? c->spool[shaft->spool].T : c->mesh[shaft->mesh].T[1];
    double rest = in, largest = fabs(in);

    for (uint32_t m = c->power->order->first_mesh[s]; m != TS_NOWHERE;
         m          = c->power->order->next_mesh[m]) {
        rest -= c->mesh[m].T[0];
        largest = most(largest, c->mesh[m].T[0]);
    }
    for (int face = TS_REAR; face >= TS_FRONT; face--) {
        const uint32_t pad = shaft->pad[face];

        if (pad == TS_NOWHERE)
            continue;
        rest -= c->pad[pad].T;
        largest = most(largest, c->pad[pad].T);
    }
    c->shaft_imbalance[s] = largest > 0.0 ? fabs(rest) / largest : 0.0;
}

void ts_power_balances(const ts_power_case *c)
{
    for (uint32_t s = 0; s < c->train->shaft_count; s++)
        if (c->train->shafts[s].kind == TS_SHAFT_SPOOL)
            balance_spool(c, s);
    for (uint32_t s = 0; s < c->train->shaft_count; s++)
        balance_shaft(c, s);
}
