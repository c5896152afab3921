/* rating/float_mass.c: what does a take-off bear, and what do the parts weigh that its bevel needs
 * beyond one on the rotor? */
#include "rating/float_parts.h"

#include <math.h>

static const double pi = 3.14159265358979323846;

#define STEEL 7850.0 /* kg/m3 */
#define FULL                                                                                       \
    0.65 /* of the ring between bore and outside of a bearing; common practice, no source */

#define STANDS_IN                                                                                  \
    "derived: of the bevel's own shaft, else of the gearshaft that its mate has; by its shape"

static const ts_formula shaft_formula    = {"m_shaft", "mass of the shaft of the bevel", "kg",
                                            "rho*V_shaft", "derived: density times volume"};
static const ts_formula bearings_formula = {"m_bearings", "mass of its bearings", "kg",
                                            "full*rho*V_bearings", "derived: density times volume"};

void ts_float_note_loads(ts_float_job *job)
{
    const char *most = "derived: the greatest of all conditions, either way of the power";

    ts_workings_row(job->workings, "T_1", job->T_1, "N.m", most);
    ts_workings_row(job->workings, "F_a", job->F_a, "N", most);
    ts_workings_row(job->workings, "F_r", job->F_r, "N", most);
}

static bool stands(const ts_float_job *job)
{
    return job->stand_in != NULL && job->stand_in->section_count > 0;
}

double ts_float_shaft_mass(ts_float_job *job)
{
    const double rho     = STEEL;
    double       V_shaft = 0.0;

    for (int i = 0; stands(job) && i < job->stand_in->section_count; i++) {
        const ts_beam_section *s = &job->stand_in->sections[i];
        V_shaft += pi / 4.0 * (s->d_o * s->d_o - s->d_i * s->d_i) * (s->x_2 - s->x_1);
    }
    ts_workings_assumed(job->workings, "rho", rho, "kg/m3", "steel; common practice, no source");
    ts_workings_row(job->workings, "V_shaft", V_shaft, "m3", STANDS_IN);
    return TS_FLOAT_STEP(job, shaft_formula, rho * V_shaft, rho, V_shaft);
}

double ts_float_bearing_mass(ts_float_job *job)
{
    const double rho = STEEL, full = FULL;
    double       V_bearings = 0.0;

    for (int k = 0; stands(job) && k < job->stand_in->bearing_count; k++) {
        const ts_line_bearing *b = &job->stand_in->bearings[k];
        if (b->there && b->bearing.D > b->bearing.d)
            V_bearings +=
                pi / 4.0 * (b->bearing.D * b->bearing.D - b->bearing.d * b->bearing.d) * b->width;
    }
    ts_workings_assumed(job->workings, "full", full, "1",
                        "share of a bearing's ring that is metal; common practice, no source");
    ts_workings_row(job->workings, "V_bearings", V_bearings, "m3", STANDS_IN);
    return TS_FLOAT_STEP(job, bearings_formula, full * rho * V_bearings, full, rho, V_bearings);
}

double ts_float_ring(ts_float_job *job, const ts_formula *formula, double d_o, double d_h, double L)
{
    const double rho = STEEL;

    ts_workings_row(job->workings, "d_o", d_o, "m", "derived: by the shape");
    ts_workings_row(job->workings, "d_h", d_h, "m", "derived: by the shape");
    ts_workings_row(job->workings, "L", L, "m", "derived: by the shape");
    return TS_FLOAT_STEP(job, *formula, rho * pi / 4.0 * (d_o * d_o - d_h * d_h) * L, rho, d_o, d_h,
                         L);
}
