/* motion/position.c: where does every axis stand, seen from behind? */
#include "motion/motion_parts.h"
#include "motion/value_note.h"

#include <math.h>

#define ON_THE_ARC  "derived: cosine rule between the arc's circle and the centre distance"
#define FROM_DRIVER "derived: centre distance laid off in a clock direction"
#define FROM_CLOCK  "derived: clock angles run clockwise from 12:00"

static const ts_formula phi_clockwise_formula = {
    .symbol  = "phi",
    .meaning = "clock angle of the axis, clockwise from 12:00 seen from behind",
    .unit    = "rad",
    .text    = "phi_1 + acos((R^2 + R_1^2 - a_w^2)/(2*R*R_1))",
    .source  = ON_THE_ARC,
};
static const ts_formula phi_anticlockwise_formula = {
    .symbol  = "phi",
    .meaning = "clock angle of the axis, clockwise from 12:00 seen from behind",
    .unit    = "rad",
    .text    = "phi_1 - acos((R^2 + R_1^2 - a_w^2)/(2*R*R_1))",
    .source  = ON_THE_ARC,
};
static const ts_formula phi_toward_formula = {
    .symbol  = "phi",
    .meaning = "clock angle of the axis, clockwise from 12:00 seen from behind",
    .unit    = "rad",
    .text    = "phi_1 + atan2(X*Y_1 - Y*X_1, X*X_1 + Y*Y_1)",
    .source  = FROM_CLOCK,
};
static const ts_formula R_toward_formula = {
    .symbol  = "R",
    .meaning = "distance of the axis from the engine axis",
    .unit    = "m",
    .text    = "sqrt(X^2 + Y^2)",
    .source  = FROM_CLOCK,
};
static const ts_formula R_tower_formula = {
    .symbol  = "R",
    .meaning = "distance of the radial shaft's outer end from the engine axis",
    .unit    = "m",
    .text    = "l*sin(Sigma)",
    .source  = FROM_CLOCK,
};
static const ts_formula X_formula = {
    .symbol  = "X",
    .meaning = "position of the axis, to the right seen from behind",
    .unit    = "m",
    .text    = "R*sin(phi)",
    .source  = FROM_CLOCK,
};
static const ts_formula Y_formula = {
    .symbol  = "Y",
    .meaning = "position of the axis, upwards",
    .unit    = "m",
    .text    = "R*cos(phi)",
    .source  = FROM_CLOCK,
};
static const ts_formula X_toward_formula = {
    .symbol  = "X",
    .meaning = "position of the axis, to the right seen from behind",
    .unit    = "m",
    .text    = "X_1 + a_w*sin(toward)",
    .source  = FROM_DRIVER,
};
static const ts_formula Y_toward_formula = {
    .symbol  = "Y",
    .meaning = "position of the axis, upwards",
    .unit    = "m",
    .text    = "Y_1 + a_w*cos(toward)",
    .source  = FROM_DRIVER,
};

static void leave_out(ts_shaft_motion *shaft, const char *fault)
{
    shaft->placed = false;
    shaft->fault  = fault;
    shaft->x = shaft->y = shaft->radius = shaft->clock = (double)NAN;
}

static void place_at(ts_shaft_motion *shaft, double R, double phi, ts_workings *workings)
{
    shaft->placed = true;
    shaft->fault  = NULL;
    shaft->radius = R;
    shaft->clock  = phi;
    shaft->x      = TS_STEP(workings, X_formula, R * sin(phi), R, phi);
    shaft->y      = TS_STEP(workings, Y_formula, R * cos(phi), R, phi);
}

static void place_tower(const ts_drive *drive, const ts_train *train, const ts_shaft *shaft,
                        ts_shaft_motion *motion, ts_workings *workings)
{
    const ts_tower_shaft *record = &drive->drive[shaft->drive].tower_shaft;
    const ts_mesh        *mesh   = &train->meshes[shaft->mesh];
    const ts_measure      angle  = mesh->bevels->shaft_angle;
    const double          phi = record->clock.value, l = record->length.value, Sigma = angle.value;

    TS_NOTE_MEASURE(workings, drive, "phi", record->clock, "rad", "clock");
    if (!ts_measure_known(record->clock) || !ts_measure_known(record->length) ||
        !ts_measure_known(angle)) {
        leave_out(motion, "clock angle, length or shaft angle of the radial shaft is not known");
        motion->clock = ts_measure_known(record->clock) ? phi : (double)NAN;
        return;
    }
    TS_NOTE_MEASURE(workings, drive, "l", record->length, "m", "length");
    ts_workings_borrow(workings, "Sigma", Sigma, (ts_subject){mesh->node, TS_EVERY_CONDITION},
                       "Sigma");
    place_at(motion, TS_STEP(workings, R_tower_formula, l * sin(Sigma), l, Sigma), phi, workings);
}

static void place_input(const ts_drive *drive, const ts_arc *arc, ts_shaft_motion *motion,
                        ts_workings *workings)
{
    if (!ts_measure_known(arc->clock) || !ts_measure_known(arc->radius)) {
        leave_out(motion, "radius or clock angle of the arc is not known");
        return;
    }
    TS_NOTE_MEASURE(workings, drive, "R", arc->radius, "m", "radius");
    TS_NOTE_MEASURE(workings, drive, "phi", arc->clock, "rad", "clock");
    place_at(motion, arc->radius.value, arc->clock.value, workings);
}

static void borrow_driver(const ts_shaft_motion *driver, ts_node node, ts_workings *workings)
{
    const ts_subject lender = {node, TS_EVERY_CONDITION};

    ts_workings_borrow(workings, "R_1", driver->radius, lender, "R");
    ts_workings_borrow(workings, "phi_1", driver->clock, lender, "phi");
    ts_workings_borrow(workings, "X_1", driver->x, lender, "X");
    ts_workings_borrow(workings, "Y_1", driver->y, lender, "Y");
}

static void place_toward(double toward, double a_w, const ts_shaft_motion *driver,
                         ts_shaft_motion *motion, ts_workings *workings)
{
    const double X_1 = driver->x, Y_1 = driver->y, phi_1 = driver->clock;
    const double X = TS_STEP(workings, X_toward_formula, X_1 + a_w * sin(toward), X_1, a_w, toward);
    const double Y = TS_STEP(workings, Y_toward_formula, Y_1 + a_w * cos(toward), Y_1, a_w, toward);

    motion->placed = true;
    motion->fault  = NULL;
    motion->x      = X;
    motion->y      = Y;
    motion->radius = TS_STEP(workings, R_toward_formula, sqrt(X * X + Y * Y), X, Y);
    motion->clock =
        TS_STEP(workings, phi_toward_formula, phi_1 + atan2(X * Y_1 - Y * X_1, X * X_1 + Y * Y_1),
                phi_1, X, Y, X_1, Y_1);
}

static void place_on_arc(const ts_drive *drive, const ts_arc *arc, ts_way way, double a_w,
                         const ts_shaft_motion *driver, ts_shaft_motion *motion,
                         ts_workings *workings)
{
    const double R = arc->radius.value, R_1 = driver->radius, phi_1 = driver->clock;

    if (!ts_measure_known(arc->radius) || way == TS_WAY_NONE) {
        leave_out(motion, way == TS_WAY_NONE ? "nothing says which way along the arc it lies"
                                             : "the radius of the arc is not known");
        return;
    }
    const double cosine = (R * R + R_1 * R_1 - a_w * a_w) / (2.0 * R * R_1);

    if (!(fabs(cosine) <= 1.0)) {
        leave_out(motion, "the arc is out of reach of the centre distance");
        return;
    }
    TS_NOTE_MEASURE(workings, drive, "R", arc->radius, "m", "radius");
    const double phi = way == TS_WAY_CLOCKWISE ? TS_STEP(workings, phi_clockwise_formula,
                                                         phi_1 + acos(cosine), phi_1, R, R_1, a_w)
                                               : TS_STEP(workings, phi_anticlockwise_formula,
                                                         phi_1 - acos(cosine), phi_1, R, R_1, a_w);

    place_at(motion, R, phi, workings);
}

static void place_box_shaft(const ts_drive *drive, ts_motion *motion, uint32_t s,
                            ts_workings *workings)
{
    const ts_train        *train  = motion->train;
    const ts_shaft        *shaft  = &train->shafts[s];
    const uint32_t         before = train->meshes[shaft->mesh].driver_shaft;
    const ts_shaft_motion *driver = &motion->shafts[before];
    ts_shaft_motion       *placed = &motion->shafts[s];
    const ts_arc          *arc    = &drive->drive[shaft->drive].box.arc;
    const double           a_w    = motion->meshes[shaft->mesh].a_w;

    if (!driver->placed || !motion->meshes[shaft->mesh].solved) {
        leave_out(placed, !driver->placed ? "its driver has no position"
                                          : "its centre distance cannot be computed");
        return;
    }
    if (workings != NULL)
        borrow_driver(driver, train->shafts[before].node, workings);
    if (ts_measure_known(shaft->record->toward)) {
        TS_NOTE_MEASURE(workings, drive, "toward", shaft->record->toward, "rad", "toward");
        place_toward(shaft->record->toward.value, a_w, driver, placed, workings);
        return;
    }
    place_on_arc(drive, arc, shaft->way, a_w, driver, placed, workings);
}

void ts_motion_places(const ts_drive *drive, ts_motion *motion, ts_workings *workings)
{
    const ts_train *train = motion->train;

    for (uint32_t s = 0; s < train->shaft_count; s++) {
        const ts_shaft  *shaft  = &train->shafts[s];
        ts_shaft_motion *placed = &motion->shafts[s];

        ts_workings_about(workings, shaft->node, TS_EVERY_CONDITION);
        if (shaft->kind == TS_SHAFT_SPOOL) {
            placed->placed = true; /* on the engine axis: x, y, radius and clock are 0 */
            continue;
        }
        if (shaft->kind == TS_SHAFT_TOWER)
            place_tower(drive, train, shaft, placed, workings);
        else if (train->shafts[train->meshes[shaft->mesh].driver_shaft].kind == TS_SHAFT_TOWER)
            place_input(drive, &drive->drive[shaft->drive].box.arc, placed, workings);
        else
            place_box_shaft(drive, motion, s, workings);
    }
}
