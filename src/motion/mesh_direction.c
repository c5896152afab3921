/* motion/mesh_direction.c: which way do the flanks of every mesh move where they touch? */
#include "motion/motion_parts.h"

#include <math.h>

#define TURNED "derived: a point that turns about an axis moves square to its radius"

static const ts_formula e_x_formula = {
    .symbol  = "e_x",
    .meaning = "direction from the driver's axis to this one, part to the right",
    .unit    = "1",
    .text    = "(X - X_1)/a_w",
    .source  = "derived: the axes stand the centre distance apart",
};
static const ts_formula e_y_formula = {
    .symbol  = "e_y",
    .meaning = "direction from the driver's axis to this one, part upwards",
    .unit    = "1",
    .text    = "(Y - Y_1)/a_w",
    .source  = "derived: the axes stand the centre distance apart",
};
static const ts_formula u_x_formula = {
    .symbol  = "e_x",
    .meaning = "direction outwards along the radial shaft, part to the right",
    .unit    = "1",
    .text    = "sin(phi)",
    .source  = "derived: clock angles run clockwise from 12:00",
};
static const ts_formula u_y_formula = {
    .symbol  = "e_y",
    .meaning = "direction outwards along the radial shaft, part upwards",
    .unit    = "1",
    .text    = "cos(phi)",
    .source  = "derived: clock angles run clockwise from 12:00",
};
/* The point of mesh lies along e from the axis of the driver: sense_1 * (z x e). */
static const ts_formula tau_x_driver_formula = {
    .symbol  = "tau_x",
    .meaning = "way of the flanks at the point of mesh, part to the right",
    .unit    = "1",
    .text    = "-sense_1*e_y",
    .source  = TURNED,
};
static const ts_formula tau_y_driver_formula = {
    .symbol  = "tau_y",
    .meaning = "way of the flanks at the point of mesh, part upwards",
    .unit    = "1",
    .text    = "sense_1*e_x",
    .source  = TURNED,
};
/* The point of mesh lies along -e from the axis of the driven gear: sense_2 * (z x -e). */
static const ts_formula tau_x_driven_formula = {
    .symbol  = "tau_x",
    .meaning = "way of the flanks at the point of mesh, part to the right",
    .unit    = "1",
    .text    = "sense_2*e_y",
    .source  = TURNED,
};
static const ts_formula tau_y_driven_formula = {
    .symbol  = "tau_y",
    .meaning = "way of the flanks at the point of mesh, part upwards",
    .unit    = "1",
    .text    = "-sense_2*e_x",
    .source  = TURNED,
};

static void leave_out(ts_mesh_motion *mesh)
{
    mesh->e[0] = mesh->e[1] = mesh->tau[0] = mesh->tau[1] = (double)NAN;
}

static ts_subject subject_of(const ts_train *train, uint32_t shaft)
{
    return (ts_subject){train->shafts[shaft].node, TS_EVERY_CONDITION};
}

static void turn_driver(const ts_motion *motion, const ts_mesh *record, ts_mesh_motion *mesh,
                        ts_workings *workings)
{
    const double e_x = mesh->e[0], e_y = mesh->e[1];
    const double sense_1 = motion->shafts[record->driver_shaft].sense;

    ts_workings_borrow(workings, "sense_1", sense_1,
                       subject_of(motion->train, record->driver_shaft), "sense");
    mesh->tau[0] = TS_STEP(workings, tau_x_driver_formula, -sense_1 * e_y, sense_1, e_y);
    mesh->tau[1] = TS_STEP(workings, tau_y_driver_formula, sense_1 * e_x, sense_1, e_x);
}

static void turn_driven(const ts_motion *motion, const ts_mesh *record, ts_mesh_motion *mesh,
                        ts_workings *workings)
{
    const double e_x = mesh->e[0], e_y = mesh->e[1];
    const double sense_2 = motion->shafts[record->driven_shaft].sense;

    ts_workings_borrow(workings, "sense_2", sense_2,
                       subject_of(motion->train, record->driven_shaft), "sense");
    mesh->tau[0] = TS_STEP(workings, tau_x_driven_formula, sense_2 * e_y, sense_2, e_y);
    mesh->tau[1] = TS_STEP(workings, tau_y_driven_formula, -sense_2 * e_x, sense_2, e_x);
}

static void direct_cylindrical(const ts_motion *motion, const ts_mesh *record, ts_mesh_motion *mesh,
                               ts_workings *workings)
{
    const ts_shaft_motion *driver = &motion->shafts[record->driver_shaft];
    const ts_shaft_motion *driven = &motion->shafts[record->driven_shaft];
    const double           X = driven->x, Y = driven->y, X_1 = driver->x, Y_1 = driver->y;
    const double           a_w = mesh->a_w;

    mesh->e[0] = TS_STEP(workings, e_x_formula, (X - X_1) / a_w, X, X_1, a_w);
    mesh->e[1] = TS_STEP(workings, e_y_formula, (Y - Y_1) / a_w, Y, Y_1, a_w);
    turn_driver(motion, record, mesh, workings);
}

/* Both bevel meshes of a radial shaft lie in the plane of its clock angle. */
static void direct_bevel(const ts_motion *motion, const ts_mesh *record, ts_mesh_motion *mesh,
                         ts_workings *workings)
{
    const bool     take_off = motion->train->shafts[record->driven_shaft].kind == TS_SHAFT_TOWER;
    const uint32_t tower    = take_off ? record->driven_shaft : record->driver_shaft;
    const double   phi      = motion->shafts[tower].clock;

    if (isnan(phi)) {
        leave_out(mesh);
        return;
    }
    ts_workings_borrow(workings, "phi", phi, subject_of(motion->train, tower), "phi");
    mesh->e[0] = TS_STEP(workings, u_x_formula, sin(phi), phi);
    mesh->e[1] = TS_STEP(workings, u_y_formula, cos(phi), phi);
    if (take_off)
        turn_driver(motion, record, mesh, workings);
    else
        turn_driven(motion, record, mesh, workings);
}

void ts_motion_directions(ts_motion *motion, ts_workings *workings)
{
    for (uint32_t m = 0; m < motion->train->mesh_count; m++) {
        const ts_mesh  *record = &motion->train->meshes[m];
        ts_mesh_motion *mesh   = &motion->meshes[m];

        ts_workings_about(workings, record->node, TS_EVERY_CONDITION);
        if (record->kind == TS_MESH_BEVEL)
            direct_bevel(motion, record, mesh, workings);
        else if (motion->shafts[record->driver_shaft].placed &&
                 motion->shafts[record->driven_shaft].placed)
            direct_cylindrical(motion, record, mesh, workings);
        else
            leave_out(mesh);
    }
}
