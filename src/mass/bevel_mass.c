/* mass/bevel_mass.c: what does a bevel gear weigh, as a bored frustum of its pitch cone?
 */
#include "mass/mass_parts.h"

#include "catalog/gear_material.h"
#include "element/revolved_solid.h"
#include "motion/value_note.h"

#include <math.h>

#define CONE                                                                                       \
    "the frustum of the pitch cone between heel and toe: teeth beyond it fill the spaces below "   \
    "it; "                                                                                         \
    "common practice, no source"
#define SPOOL_BORE 0.6 /* of the toe radius, of a bevel on a spool; common practice, no source */

static const ts_formula size_formulas[2][3] = {
    {{"R_heel1", "pitch radius at the heel", "m", "d_e1/2", "derived: half of the diameter"},
     {"R_toe1", "pitch radius at the toe", "m", "R_heel1 - b*sin(delta_1)", "derived: cone"},
     {"h_1", "length of the cone along its axis", "m", "b*cos(delta_1)", "derived: cone"}},
    {{"R_heel2", "pitch radius at the heel", "m", "d_e2/2", "derived: half of the diameter"},
     {"R_toe2", "pitch radius at the toe", "m", "R_heel2 - b*sin(delta_2)", "derived: cone"},
     {"h_2", "length of the cone along its axis", "m", "b*cos(delta_2)", "derived: cone"}},
};
static const ts_formula mass_formulas[2][2] = {
    {{"m_bevel1", "mass of the bevel gear on the spool's side", "kg",
      "rho_1*pi*h_1*((R_heel1^2 + R_heel1*R_toe1 + R_toe1^2)/3 - r_s1^2)", CONE},
     {"J_bevel1", "its moment of inertia", "kg.m2",
      "rho_1*pi*h_1*((R_heel1^4 + R_heel1^3*R_toe1 + R_heel1^2*R_toe1^2 + R_heel1*R_toe1^3"
      " + R_toe1^4)/10 - r_s1^4/2)",
      CONE}},
    {{"m_bevel2", "mass of the bevel gear on the far side", "kg",
      "rho_2*pi*h_2*((R_heel2^2 + R_heel2*R_toe2 + R_toe2^2)/3 - r_s2^2)", CONE},
     {"J_bevel2", "its moment of inertia", "kg.m2",
      "rho_2*pi*h_2*((R_heel2^4 + R_heel2^3*R_toe2 + R_heel2^2*R_toe2^2 + R_heel2*R_toe2^3"
      " + R_toe2^4)/10 - r_s2^4/2)",
      CONE}},
};

typedef struct cone {
    double R_heel, R_toe, h, r_s, m_et; /* m */
} cone;

static ts_solid frustum(const cone *it, double bore)
{
    const ts_ring ring = {
        .h = it->h, .R_1 = it->R_heel, .R_2 = it->R_toe, .r_1 = bore, .r_2 = bore};

    return ts_ring_solid(&ring);
}

/* What is left when no more stays than a rim below the teeth, and what there is with a disc as
 * thick as the teeth are high behind the heel. */
static void ends_of(const cone *it, ts_solid *low, ts_solid *high)
{
    const double  height = 2.25 * it->m_et;
    const double  bore   = fmax(it->r_s, it->R_toe - 2.0 * height);
    const ts_ring disc   = {.z   = -height,
                            .h   = height,
                            .R_1 = it->R_heel,
                            .R_2 = it->R_heel,
                            .r_1 = it->r_s,
                            .r_2 = it->r_s};

    *low  = frustum(it, bore);
    *high = ts_solid_sum(frustum(it, it->r_s), ts_ring_solid(&disc));
}

double ts_mass_bevel_bore(const ts_mass *mass, const ts_train *train, uint32_t shaft, double R_toe)
{
    return train->shafts[shaft].kind == TS_SHAFT_SPOOL ? SPOOL_BORE * R_toe
                                                       : mass->shape[shaft].section.d_o / 2.0;
}

/* The bore is the shaft; of a bevel on a spool, whose shaft is not drawn, a share of the toe. */
static double bore_of(const ts_mass_job *job, uint32_t shaft, int side, double R_toe)
{
    static const char *const names[2] = {"r_s1", "r_s2"};
    const ts_shaft          *on       = &job->train->shafts[shaft];
    const double             r        = ts_mass_bevel_bore(job->mass, job->train, shaft, R_toe);

    if (on->kind == TS_SHAFT_SPOOL)
        ts_workings_assumed(job->workings, names[side], r, "m",
                            "0.6 of the toe radius, for a spool shaft; common practice, no source");
    else
        ts_workings_borrow(job->workings, names[side], r,
                           (ts_subject){on->node, TS_EVERY_CONDITION}, "r_s");
    return r;
}

static double density_of(const ts_mass_job *job, ts_pick material, int side)
{
    static const char *const names[2] = {"rho_1", "rho_2"};

    if (ts_pick_known(material)) {
        const ts_gear_material steel = ts_gear_material_at((size_t)material.value);
        ts_workings_row(job->workings, names[side], steel.rho, "kg/m3", steel.source);
        return steel.rho;
    }
    const ts_metal metal = ts_mass_metal(ts_shaft_metals, job->drive->mass.shaft_metal);
    ts_workings_row(job->workings, names[side], metal.rho, "kg/m3", metal.source);
    return metal.rho;
}

static const char *missing_of(const ts_mass_job *job, uint32_t mesh, uint32_t shaft)
{
    if (!job->motion->meshes[mesh].solved)
        return "the geometry of its cone";
    if (job->train->shafts[shaft].kind == TS_SHAFT_SPOOL)
        return NULL;
    return job->mass->shape[shaft].missing;
}

void ts_mass_of_bevel(const ts_mass_job *job, uint32_t m, int side, ts_mass_part *part)
{
    const ts_mesh       *mesh     = &job->train->meshes[m];
    const ts_bevel_pair *pair     = &job->motion->meshes[m].bevel;
    ts_workings         *workings = job->workings;
    const uint32_t       shaft    = side == 0 ? mesh->driver_shaft : mesh->driven_shaft;

    part->missing = missing_of(job, m, shaft);
    if (part->missing != NULL)
        return;
    ts_workings_about(workings, mesh->node, TS_EVERY_CONDITION);
    const double d_e1 = pair->d_e1, d_e2 = pair->d_e2, b = pair->in.b;
    const double delta_1 = pair->delta_1, delta_2 = pair->delta_2;
    TS_NOTE_MEASURE(workings, job->drive, "b", mesh->bevels->face, "m", "face");
    const double R_heel1 = d_e1 / 2.0, R_heel2 = d_e2 / 2.0;
    const double R_toe1 = R_heel1 - b * sin(delta_1), R_toe2 = R_heel2 - b * sin(delta_2);
    const double h_1 = b * cos(delta_1), h_2 = b * cos(delta_2);
    cone         it = {.m_et = pair->in.m_et};
    if (side == 0) {
        it.R_heel = TS_STEP(workings, size_formulas[0][0], R_heel1, d_e1);
        it.R_toe  = TS_STEP(workings, size_formulas[0][1], R_toe1, R_heel1, b, delta_1);
        it.h      = TS_STEP(workings, size_formulas[0][2], h_1, b, delta_1);
    } else {
        it.R_heel = TS_STEP(workings, size_formulas[1][0], R_heel2, d_e2);
        it.R_toe  = TS_STEP(workings, size_formulas[1][1], R_toe2, R_heel2, b, delta_2);
        it.h      = TS_STEP(workings, size_formulas[1][2], h_2, b, delta_2);
    }
    it.r_s            = bore_of(job, shaft, side, it.R_toe);
    const double rho  = density_of(job, mesh->bevels->material, side);
    part->rho         = rho;
    const double r_s1 = it.r_s, r_s2 = it.r_s, rho_1 = rho, rho_2 = rho;
    if (!(it.r_s < it.R_toe)) {
        part->missing = "a shaft thinner than its toe";
        return;
    }
    const ts_solid solid = frustum(&it, it.r_s);
    ts_solid       low, high;
    if (side == 0) {
        (void)TS_STEP(workings, mass_formulas[0][0], rho * solid.V, rho_1, h_1, R_heel1, R_toe1,
                      r_s1);
        (void)TS_STEP(workings, mass_formulas[0][1], rho * solid.I_z, rho_1, h_1, R_heel1, R_toe1,
                      r_s1);
    } else {
        (void)TS_STEP(workings, mass_formulas[1][0], rho * solid.V, rho_2, h_2, R_heel2, R_toe2,
                      r_s2);
        (void)TS_STEP(workings, mass_formulas[1][1], rho * solid.I_z, rho_2, h_2, R_heel2, R_toe2,
                      r_s2);
    }
    ends_of(&it, &low, &high);
    part->m = ts_band_of(rho * low.V, rho * solid.V, rho * high.V);
    part->J = ts_band_of(rho * low.I_z, rho * solid.I_z, rho * high.I_z);
}
