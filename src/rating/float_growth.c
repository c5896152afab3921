/* rating/float_growth.c: how far do the bevels of a take-off close as everything grows warm or
 * cold? */
#include "rating/float_parts.h"

#include "element/backlash_bounds.h"
#include "motion/value_note.h"

#include <math.h>

#define GROWTH                                                                                     \
    "derived: the casing carries the bearing that locates a gear, at L from the apex, by e*L; a "  \
    "gear that is drawn from its apex opens by the sine of its pitch angle"

static const ts_formula e_formulas[2] = {
    {"e_least", "least growth of the casing over that of the gears, relative", "1",
     "alpha_casing*(theta + dtheta - 293.15) - alpha_gears*(theta - 293.15)", GROWTH},
    {"e_most", "greatest growth of the casing over that of the gears, relative", "1",
     "alpha_casing*(theta + dtheta - 293.15) - alpha_gears*(theta - 293.15)", GROWTH},
};
static const ts_formula arm_formula = {"A_warm", "length on which that growth opens the teeth", "m",
                                       "L_1*sin(delta_1) + L_2*sin(delta_2)", GROWTH};
static const ts_formula cool_formula = {"c_cool", "least closing by growth", "m",
                                        "min(-e_least*A_warm, -e_most*A_warm)", GROWTH};
static const ts_formula warm_formula = {"c_warm", "greatest closing by growth", "m",
                                        "max(-e_least*A_warm, -e_most*A_warm)", GROWTH};

static bool is_known(const ts_span *span)
{
    return span->standing == TS_GIVEN || span->standing == TS_ASSUMED;
}

/* From the apex to the bearing that locates the gear, along the line; without such a line as far as
 * the back of the gear and its face once more. */
static double locating(const ts_line *line, double along, double face)
{
    for (int k = 0; line != NULL && k < line->bearing_count; k++)
        if (line->bearings[k].there && line->bearings[k].locates && line->gear_count > 0)
            return line->bearings[k].x - line->gears[0].x + along;
    return along + 1.5 * face;
}

static void note_temperature(ts_float_job *job, double theta, double dtheta,
                             const ts_temperatures *warm)
{
    ts_note_value(
        job->workings, job->drive,
        &(ts_value_note){"theta", theta, "K", "gears", warm->gears.standing, warm->gears.node});
    ts_note_value(job->workings, job->drive,
                  &(ts_value_note){"dtheta", dtheta, TS_UNIT_DIFFERENCE, "casing above gears",
                                   warm->casing.standing, warm->casing.node});
}

static double growth(ts_float_job *job, const ts_temperatures *warm, int end)
{
    const double alpha_casing = warm->casing_expansion.value;
    const double alpha_gears  = warm->gears_expansion.value;
    const bool   hot          = (end == 1) == (alpha_casing >= alpha_gears);
    const double theta        = hot ? warm->gears.high : warm->gears.low;
    const double dtheta       = end == 1 ? warm->casing.high : warm->casing.low;
    const double built        = TS_TEMPERATURE_BUILT;

    note_temperature(job, theta, dtheta, warm);
    return TS_FLOAT_STEP(job, e_formulas[end],
                         alpha_casing * (theta + dtheta - built) - alpha_gears * (theta - built),
                         alpha_casing, theta, dtheta, alpha_gears);
}

/* A bevel on the rotor moves by the travel alone; its own bearing adds what its seat grows. */
static double arm(ts_float_job *job, bool rides)
{
    const ts_bevel_pair *b       = &job->turn->bevel;
    const double         delta_1 = b->delta_1, delta_2 = b->delta_2, face = b->in.b;
    const double         L_1 =
        rides ? 0.0 : locating(job->stand_in, b->R_m * cos(delta_1), face * cos(delta_1));
    const double     L_2  = locating(job->inner, b->R_m * cos(delta_2), face * cos(delta_2));
    const ts_subject mesh = {job->mesh->node, TS_EVERY_CONDITION};

    ts_workings_row(
        job->workings, "L_1", L_1, "m",
        rides ? "derived: the axial travel has it already"
              : "derived: from the apex to the bearing that locates bevel 1, by the shape");
    ts_workings_row(job->workings, "L_2", L_2, "m",
                    "derived: from the apex to the bearing that locates bevel 2, by the shape");
    ts_workings_borrow(job->workings, "delta_1", delta_1, mesh, "delta_1");
    ts_workings_borrow(job->workings, "delta_2", delta_2, mesh, "delta_2");
    return TS_FLOAT_STEP(job, arm_formula, L_1 * sin(delta_1) + L_2 * sin(delta_2), L_1, delta_1,
                         L_2, delta_2);
}

void ts_float_grow(ts_float_job *job, const ts_float_option *option)
{
    const ts_temperatures *warm  = &job->drive->drive[job->item->drive].box.gears.temperatures;
    const bool             rides = option == &job->item->options[TS_FLOAT_FIXED_BEVEL];

    if (warm->node == 0 || !is_known(&warm->gears) || !is_known(&warm->casing) ||
        !ts_measure_known(warm->gears_expansion) || !ts_measure_known(warm->casing_expansion)) {
        ts_workings_assumed(job->workings, "c_warm", 0.0, "m", "no temperatures are told");
        ts_workings_assumed(job->workings, "c_cool", 0.0, "m", "no temperatures are told");
        job->item->warm[0] = job->item->warm[1] = 0.0;
        return;
    }
    TS_NOTE_MEASURE(job->workings, job->drive, "alpha_gears", warm->gears_expansion, "1/K",
                    "expansion of gears");
    TS_NOTE_MEASURE(job->workings, job->drive, "alpha_casing", warm->casing_expansion, "1/K",
                    "expansion of casing");
    const double e_least = growth(job, warm, 0), e_most = growth(job, warm, 1);
    const double A_warm = arm(job, rides);

    job->item->warm[0] = TS_FLOAT_STEP(job, cool_formula, fmin(-e_least * A_warm, -e_most * A_warm),
                                       e_least, A_warm, e_most);
    job->item->warm[1] = TS_FLOAT_STEP(job, warm_formula, fmax(-e_least * A_warm, -e_most * A_warm),
                                       e_least, A_warm, e_most);
}
