/* power/mesh_force.c: with what force do the teeth of a mesh press, and which flank carries it? */
#include "power/power_parts.h"

#include "element/bevel_force.h"
#include "element/helical_force.h"

#include <math.h>

#define STATICS "derived: the parts of the tooth force in engine axes"

static const ts_formula flow_formula = {
    .symbol  = "flow",
    .meaning = "1 when power flows away from the spool, -1 when it flows to it",
    .unit    = "1",
    .text    = "T_2/abs(T_2)",
    .source  = "derived: at rest too, the direction of power is that of the torque",
};
static const ts_formula F_t_outward_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force, of the side that power enters",
    .unit    = "N",
    .text    = "T_1/r_1",
    .source = "ISO 6336-1:2019, nominal tangential load (from memory), at the radius where it acts",
};
static const ts_formula F_t_inward_formula = {
    .symbol  = "F_t",
    .meaning = "tangential force, of the side that power enters",
    .unit    = "N",
    .text    = "-T_2/r_2",
    .source = "ISO 6336-1:2019, nominal tangential load (from memory), at the radius where it acts",
};
/* The forces of element/ under the names by which they are shown: driver, then driven gear. */
#define ROLE "derived: hand, sense and role of the gear"

static const ts_formula F_r_formulas[2] = {
    {"F_r1", "radial force on the driver, towards its axis", "N", "F_r", STATICS},
    {"F_r2", "radial force on the driven gear, towards its axis", "N", "F_r", STATICS},
};
static const ts_formula F_a_formulas[2] = {
    {"F_a1", "axial force on the driver, rearward positive", "N", "F_a", ROLE},
    {"F_a2", "axial force on the driven gear, rearward positive", "N", "F_a", ROLE},
};
static const ts_formula F_a_forward_formulas[2] = {
    {"F_a1", "axial force on the driver, rearward positive", "N", "-F_a", ROLE},
    {"F_a2", "axial force on the driven gear, rearward positive", "N", "-F_a", ROLE},
};
static const ts_formula F_a_bevel_formulas[2] = {
    {"F_a1", "axial force on the driver, away from its apex positive", "N", "F_a", ROLE},
    {"F_a2", "axial force on the driven gear, away from its apex positive", "N", "F_a", ROLE},
};
static const ts_formula F_x_formula = {
    .symbol  = "F_x",
    .meaning = "force on the driven gear to the right, seen from behind",
    .unit    = "N",
    .text    = "flow*F_t*tau_x + F_r2*e_x",
    .source  = STATICS,
};
static const ts_formula F_y_formula = {
    .symbol  = "F_y",
    .meaning = "force on the driven gear upwards",
    .unit    = "N",
    .text    = "flow*F_t*tau_y + F_r2*e_y",
    .source  = STATICS,
};
static const ts_formula F_z_formula = {
    .symbol  = "F_z",
    .meaning = "force on the driven gear rearwards",
    .unit    = "N",
    .text    = "F_a2",
    .source  = STATICS,
};
static const ts_formula F_z_bevel_formula = {
    .symbol  = "F_z",
    .meaning = "force on the box input's bevel rearwards",
    .unit    = "N",
    .text    = "side*F_a2",
    .source  = STATICS,
};
static const ts_formula F_x_tower_formula = {
    .symbol  = "F_x",
    .meaning = "force on the radial shaft's gear to the right, seen from behind",
    .unit    = "N",
    .text    = "flow*F_t*tau_x + (F_a2*sin(Sigma) + F_r2*cos(Sigma))*e_x",
    .source  = STATICS,
};
static const ts_formula F_y_tower_formula = {
    .symbol  = "F_y",
    .meaning = "force on the radial shaft's gear upwards",
    .unit    = "N",
    .text    = "flow*F_t*tau_y + (F_a2*sin(Sigma) + F_r2*cos(Sigma))*e_y",
    .source  = STATICS,
};
static const ts_formula F_z_tower_formula = {
    .symbol  = "F_z",
    .meaning = "force on the radial shaft's gear rearwards",
    .unit    = "N",
    .text    = "side*(F_a2*cos(Sigma) - F_r2*sin(Sigma))",
    .source  = STATICS,
};

static int sign_of(int value)
{
    return (value > 0) - (value < 0);
}

/* ---- cylindrical ----------------------------------------------------------------------------- */

static void press_cylindrical(const ts_power_case *c, const ts_mesh *mesh,
                              const ts_mesh_motion *geometry, ts_mesh_load *load)
{
    const uint32_t shafts[2] = {mesh->driver_shaft, mesh->driven_shaft};
    const uint32_t gears[2]  = {mesh->driver, mesh->driven};
    const bool     drives[2] = {load->flow == TS_FLOW_OUTWARD, load->flow == TS_FLOW_INWARD};
    const ts_helical_force force =
        ts_helical_forces(load->F_t, geometry->alpha_wn, geometry->beta_w, c->workings);
    const double F_r = force.F_r, F_a = force.F_a;

    for (int g = 0; g < 2; g++) {
        const int way = ts_helical_thrust_sense(c->train->gears[gears[g]].hand,
                                                c->motion->shafts[shafts[g]].sense, drives[g]);

        load->F_r[g] = TS_STEP(c->workings, F_r_formulas[g], F_r, F_r);
        load->F_a[g] = way < 0 ? TS_STEP(c->workings, F_a_forward_formulas[g], -F_a, F_a)
                               : TS_STEP(c->workings, F_a_formulas[g], F_a, F_a);
    }
}

/* ---- bevels ---------------------------------------------------------------------------------- */

/* Sense of the gear about the direction from the apex to its back: anticlockwise, for somebody who
 * looks from the back to the apex, is positive.  The gear on the engine-parallel shaft has its back
 * on `side`; the radial shaft's gear has it outwards at the take-off and inwards at the box. */
static int sense_about_back(const ts_power_case *c, const ts_mesh *mesh, uint32_t shaft)
{
    const int  sense = sign_of(c->motion->shafts[shaft].sense);
    const bool tower = c->train->shafts[shaft].kind == TS_SHAFT_TOWER;

    if (!tower)
        return mesh->bevels->side.value == TS_REAR ? sense : -sense;
    return shaft == mesh->driven_shaft ? sense : -sense;
}

static void press_bevel(const ts_power_case *c, const ts_mesh *mesh, const ts_bevel_pair *pair,
                        ts_mesh_load *load)
{
    static const char *const delta_name[2]  = {"delta_1", "delta_2"};
    const double             delta[2]       = {pair->delta_1, pair->delta_2};
    const bool               driver_drives  = load->flow == TS_FLOW_OUTWARD;
    const int                hand           = sign_of(c->train->gears[mesh->driver].hand);
    const int                turns          = sense_about_back(c, mesh, mesh->driver_shaft);
    const bool               concave_driver = ts_bevel_concave_loaded(hand, turns, driver_drives);
    const bool               concave[2]     = {concave_driver, hand != 0 && !concave_driver};

    ts_workings_borrow(c->workings, "F_mt", load->F_t, ts_in_condition(c, mesh->node), "F_t");
    for (int g = 0; g < 2; g++) {
        ts_workings_borrow(c->workings, "delta", delta[g], ts_in_all_conditions(mesh->node),
                           delta_name[g]);
        const ts_bevel_force force = ts_bevel_forces(load->F_t, pair->in.alpha_n, pair->in.beta_m,
                                                     delta[g], concave[g], c->workings);
        const double         F_r = force.F_r, F_a = force.F_a;

        load->F_r[g] = TS_STEP(c->workings, F_r_formulas[g], F_r, F_r);
        load->F_a[g] = TS_STEP(c->workings, F_a_bevel_formulas[g], F_a, F_a);
    }
}

/* ---- in engine axes -------------------------------------------------------------------------- */

/* Radial shaft at the take-off: with u outwards and z rearwards its axis points along
 * sin(Sigma)*u + side*cos(Sigma)*z, and square to that, towards the spool's gear, lies
 * side*sin(Sigma)*z - cos(Sigma)*u, against which F_r2 points. */
static void direct_tower(const ts_power_case *c, const ts_mesh_motion *geometry, double side,
                         ts_mesh_load *load)
{
    const double flow = load->flow, F_t = load->F_t, F_a2 = load->F_a[1], F_r2 = load->F_r[1];
    const double tau_x = geometry->tau[0], tau_y = geometry->tau[1];
    const double e_x = geometry->e[0], e_y = geometry->e[1], Sigma = geometry->bevel.in.Sigma;
    const double outward = F_a2 * sin(Sigma) + F_r2 * cos(Sigma);

    load->force[0] = TS_STEP(c->workings, F_x_tower_formula, flow * F_t * tau_x + outward * e_x,
                             flow, F_t, tau_x, F_a2, Sigma, F_r2, e_x);
    load->force[1] = TS_STEP(c->workings, F_y_tower_formula, flow * F_t * tau_y + outward * e_y,
                             flow, F_t, tau_y, F_a2, Sigma, F_r2, e_y);
    load->force[2] =
        TS_STEP(c->workings, F_z_tower_formula, side * (F_a2 * cos(Sigma) - F_r2 * sin(Sigma)),
                side, F_a2, Sigma, F_r2);
}

/* Box shafts, the input included: their axis points rearwards, and e points from the point of mesh
 * to the driven gear's axis, along F_r2. */
static void direct_parallel(const ts_power_case *c, const ts_mesh_motion *geometry,
                            ts_mesh_load *load)
{
    const double flow = load->flow, F_t = load->F_t, F_r2 = load->F_r[1];
    const double tau_x = geometry->tau[0], tau_y = geometry->tau[1];
    const double e_x = geometry->e[0], e_y = geometry->e[1];

    load->force[0] = TS_STEP(c->workings, F_x_formula, flow * F_t * tau_x + F_r2 * e_x, flow, F_t,
                             tau_x, F_r2, e_x);
    load->force[1] = TS_STEP(c->workings, F_y_formula, flow * F_t * tau_y + F_r2 * e_y, flow, F_t,
                             tau_y, F_r2, e_y);
}

static void direct_cylindrical(const ts_power_case *c, const ts_mesh_motion *geometry,
                               ts_mesh_load *load)
{
    const double F_a2 = load->F_a[1];

    direct_parallel(c, geometry, load);
    load->force[2] = TS_STEP(c->workings, F_z_formula, F_a2, F_a2);
}

/* A bevel's F_a2 points from its apex to its back, which is on `side`. */
static void direct_bevel(const ts_power_case *c, const ts_mesh *mesh,
                         const ts_mesh_motion *geometry, ts_mesh_load *load)
{
    const ts_shaft *driven = &c->train->shafts[mesh->driven_shaft];
    const double    side = mesh->bevels->side.value == TS_REAR ? 1.0 : -1.0, F_a2 = load->F_a[1];

    ts_workings_borrow(c->workings, "side", side, ts_in_all_conditions(driven->node), "side");
    if (driven->kind == TS_SHAFT_TOWER) {
        direct_tower(c, geometry, side, load);
        return;
    }
    direct_parallel(c, geometry, load);
    load->force[2] = TS_STEP(c->workings, F_z_bevel_formula, side * F_a2, side, F_a2);
}

/* ---- the mesh -------------------------------------------------------------------------------- */

/* A driver presses with the flank that faces its rotation on the one that looks back. */
static void choose_flanks(ts_mesh_load *load)
{
    const bool outward = load->flow == TS_FLOW_OUTWARD;

    load->flank[0] = outward ? TS_FLANK_LEADING : TS_FLANK_TRAILING;
    load->flank[1] = outward ? TS_FLANK_TRAILING : TS_FLANK_LEADING;
}

static void leave_out(ts_mesh_load *load)
{
    load->F_t = (double)NAN;
    for (int g = 0; g < 2; g++)
        load->F_r[g] = load->F_a[g] = (double)NAN;
    for (int i = 0; i < 3; i++)
        load->force[i] = (double)NAN;
}

#define REST(name, of)                                                                             \
    {                                                                                              \
        .symbol = (name), .meaning = of ", in a mesh at rest", .unit = "N", .text = "0*F_t",       \
        .source = "derived: without a tangential force the teeth do not press",                    \
    }
static const ts_formula rest_formulas[] = {
    REST("F_r1", "radial force on the driver"),
    REST("F_r2", "radial force on the driven gear"),
    REST("F_a1", "axial force on the driver"),
    REST("F_a2", "axial force on the driven gear"),
};

/* No torque, no force: every one stands in the workings all the same. */
static void rest(const ts_power_case *c, ts_mesh_load *load)
{
    const double F_t = load->F_t;
    load->F_r[0]     = TS_STEP(c->workings, rest_formulas[0], 0.0 * F_t, F_t);
    load->F_r[1]     = TS_STEP(c->workings, rest_formulas[1], 0.0 * F_t, F_t);
    load->F_a[0]     = TS_STEP(c->workings, rest_formulas[2], 0.0 * F_t, F_t);
    load->F_a[1]     = TS_STEP(c->workings, rest_formulas[3], 0.0 * F_t, F_t);
}

static void press(const ts_power_case *c, uint32_t m, ts_mesh_load *load)
{
    const ts_mesh        *mesh     = &c->train->meshes[m];
    const ts_mesh_motion *geometry = &c->motion->meshes[m];
    const double          T_1 = load->T[0], T_2 = load->T[1];
    const double          r_1 = geometry->r_1, r_2 = geometry->r_2;

    if (load->flow != TS_FLOW_NONE)
        choose_flanks(load);
    if (!geometry->solved || c->motion->shafts[mesh->driver_shaft].sense == 0) {
        leave_out(load);
        return;
    }
    /* Without torque the teeth do not press: every force stays 0. */
    load->F_t = load->flow == TS_FLOW_INWARD
                    ? TS_STEP(c->workings, F_t_inward_formula, -T_2 / r_2, T_2, r_2)
                    : TS_STEP(c->workings, F_t_outward_formula, T_1 / r_1, T_1, r_1);
    if (load->flow == TS_FLOW_NONE) {
        rest(c, load);
        return;
    }
    TS_STEP(c->workings, flow_formula, (double)load->flow, T_2);
    if (mesh->kind == TS_MESH_BEVEL)
        press_bevel(c, mesh, &geometry->bevel, load);
    else
        press_cylindrical(c, mesh, geometry, load);
    if (isnan(geometry->tau[0]))
        load->force[0] = load->force[1] = load->force[2] = (double)NAN;
    else if (mesh->kind == TS_MESH_BEVEL)
        direct_bevel(c, mesh, geometry, load);
    else
        direct_cylindrical(c, geometry, load);
}

void ts_power_forces(const ts_power_case *c, uint32_t m)
{
    press(c, m, &c->mesh[m]);
}

ts_mesh_load ts_power_load_of(const ts_power *power, uint32_t m, double T_2)
{
    const ts_power_case c       = {.motion = power->motion, .train = power->motion->train};
    const ts_mesh      *mesh    = &c.train->meshes[m];
    const double        z_1     = (double)c.train->gears[mesh->driver].teeth.value;
    const double        z_2     = (double)c.train->gears[mesh->driven].teeth.value;
    const bool          outward = T_2 >= 0.0;
    const double        keeps   = 1.0 - mesh->loss.value;
    ts_mesh_load        load    = {.flow = (T_2 > 0.0) - (T_2 < 0.0)};

    load.T[0] = T_2 * z_1 / z_2 * (outward ? 1.0 / keeps : keeps);
    load.T[1] = T_2;
    press(&c, m, &load);
    return load;
}
