/* power/torque_path.c: how does torque pass through shafts and meshes, in either direction? */
#include "power/power_parts.h"
#include "power/sum_formula.h"

#include <math.h>

#define LOSSES                                                                                     \
    "derived: equal velocity at the mesh; the share `loss` of the power that enters is lost"

static const ts_formula T_outward_formula = {
    .symbol  = "T_1",
    .meaning = "torque taken from the driver's shaft",
    .unit    = "N.m",
    .text    = "T_2*z_1/(z_2*(1 - loss))",
    .source  = LOSSES,
};
static const ts_formula T_inward_formula = {
    .symbol  = "T_1",
    .meaning = "torque taken from the driver's shaft; negative: given to it",
    .unit    = "N.m",
    .text    = "T_2*z_1*(1 - loss)/z_2",
    .source  = LOSSES,
};
static const ts_formula P_1_formula = {
    .symbol  = "P_1",
    .meaning = "power at the driver, outward positive",
    .unit    = "W",
    .text    = "T_1*n_1",
    .source  = "derived: power is torque times speed",
};
static const ts_formula P_2_formula = {
    .symbol  = "P_2",
    .meaning = "power at the driven gear, outward positive",
    .unit    = "W",
    .text    = "T_2*n_2",
    .source  = "derived: power is torque times speed",
};
static const ts_formula P_loss_outward_formula = {
    .symbol  = "P_loss",
    .meaning = "power lost in the mesh",
    .unit    = "W",
    .text    = "P_1*loss",
    .source  = LOSSES,
};
static const ts_formula P_loss_inward_formula = {
    .symbol  = "P_loss",
    .meaning = "power lost in the mesh",
    .unit    = "W",
    .text    = "-P_2*loss",
    .source  = LOSSES,
};

/* ---- one shaft: what hangs on it ------------------------------------------------------------- */

static size_t gather(const ts_power_case *c, uint32_t s, ts_input *terms)
{
    const ts_shaft *shaft = &c->train->shafts[s];
    size_t          count = 0;

    for (int face = TS_FRONT; face <= TS_REAR; face++) {
        const uint32_t pad = shaft->pad[face];

        if (pad != TS_NOWHERE && c->train->pads[pad].use == TS_PAD_ACCESSORY)
            terms[count++].value = c->pad[pad].T;
    }
    for (uint32_t m = c->power->order->first_mesh[s]; m != TS_NOWHERE;
         m          = c->power->order->next_mesh[m])
        terms[count++].value = c->mesh[m].T[0];
    for (size_t i = 0; i < count; i++)
        terms[i].name = ts_torque_term(i, count);
    return count;
}

static void borrow_terms(const ts_power_case *c, uint32_t s, const ts_input *terms)
{
    const ts_shaft *shaft = &c->train->shafts[s];

    for (int face = TS_FRONT; face <= TS_REAR; face++) {
        const uint32_t pad = shaft->pad[face];

        if (pad == TS_NOWHERE || c->train->pads[pad].use != TS_PAD_ACCESSORY)
            continue;
        ts_workings_borrow(c->workings, terms->name, terms->value,
                           ts_in_condition(c, c->train->pads[pad].node), "T");
        terms++;
    }
    for (uint32_t m = c->power->order->first_mesh[s]; m != TS_NOWHERE;
         m          = c->power->order->next_mesh[m], terms++)
        ts_workings_borrow(c->workings, terms->name, terms->value,
                                    ts_in_condition(c, c->train->meshes[m].node), "T_1");
}

static double sum_shaft(const ts_power_case *c, uint32_t s)
{
    ts_input    *terms = c->power->order->terms;
    const size_t count = gather(c, s, terms);
    double       T     = 0.0;

    ts_workings_about(c->workings, c->train->shafts[s].node, (int32_t)c->condition);
    if (count == 0) {
        ts_workings_assumed(c->workings, "T", 0.0, "N.m", "nothing hangs on the shaft");
        return 0.0;
    }
    if (c->workings != NULL)
        borrow_terms(c, s, terms);
    for (size_t i = 0; i < count; i++)
        T += terms[i].value;
    return ts_step_list(c->workings, ts_torque_sum(count), T, terms, count);
}

/* ---- one mesh: from its driven side to its driver -------------------------------------------- */

static void borrow_sides(const ts_power_case *c, const ts_mesh *mesh, double T_2)
{
    const ts_node driver = c->train->shafts[mesh->driver_shaft].node;
    const ts_node driven = c->train->shafts[mesh->driven_shaft].node;

    ts_workings_about(c->workings, mesh->node, (int32_t)c->condition);
    ts_workings_borrow(c->workings, "T_2", T_2, ts_in_condition(c, driven), "T");
    ts_workings_borrow(c->workings, "n_1", c->speed[mesh->driver_shaft], ts_in_condition(c, driver),
                       "n");
    ts_workings_borrow(c->workings, "n_2", c->speed[mesh->driven_shaft], ts_in_condition(c, driven),
                       "n");
}

static ts_mesh_load load_mesh(const ts_power_case *c, const ts_mesh *mesh, double T_2)
{
    const double z_1     = (double)c->train->gears[mesh->driver].teeth.value;
    const double z_2     = (double)c->train->gears[mesh->driven].teeth.value;
    /* NaN where it is not known (the reader refuses that): no torque is then shown as computed. */
    const double loss    = mesh->loss.value;
    const double n_1     = c->speed[mesh->driver_shaft];
    const double n_2     = c->speed[mesh->driven_shaft];
    const bool   outward = T_2 >= 0.0;
    ts_mesh_load load    = {.flow = (T_2 > 0.0) - (T_2 < 0.0)};

    if (isnan(n_1) || isnan(n_2))
        return load; /* nothing is taken at a speed that is not known */
    const double T_1 = outward ? TS_STEP(c->workings, T_outward_formula,
                                         T_2 * z_1 / (z_2 * (1.0 - loss)), T_2, z_1, z_2, loss)
                               : TS_STEP(c->workings, T_inward_formula,
                                         T_2 * z_1 * (1.0 - loss) / z_2, T_2, z_1, loss, z_2);
    const double P_1 = TS_STEP(c->workings, P_1_formula, T_1 * n_1, T_1, n_1);
    const double P_2 = TS_STEP(c->workings, P_2_formula, T_2 * n_2, T_2, n_2);

    load.T[0] = T_1;
    load.T[1] = T_2;
    load.P[0] = P_1;
    load.P[1] = P_2;
    load.loss = outward ? TS_STEP(c->workings, P_loss_outward_formula, P_1 * loss, P_1, loss)
                        : TS_STEP(c->workings, P_loss_inward_formula, -P_2 * loss, P_2, loss);
    return load;
}

/* A driver stands before what it drives, so backwards every shaft has all its terms. */
void ts_power_torques(const ts_power_case *c)
{
    for (uint32_t s = c->train->shaft_count; s-- > 0;) {
        const uint32_t m = c->train->shafts[s].mesh;

        c->T[s] = sum_shaft(c, s);
        if (m == TS_NOWHERE)
            continue;
        if (c->workings != NULL)
            borrow_sides(c, &c->train->meshes[m], c->T[s]);
        c->mesh[m] = load_mesh(c, &c->train->meshes[m], c->T[s]);
        ts_power_forces(c, m);
    }
}
