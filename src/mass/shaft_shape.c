/* mass/shaft_shape.c: how thick and long is a shaft of which the file says nothing?
 */
#include "mass/mass_parts.h"

#include "catalog/bearing_size.h"
#include "element/cylindrical_pair.h"
#include "motion/value_note.h"

#include <math.h>

#define BORE       0.6   /* of the outside, of a hollow shaft; common practice, no source */
#define LEAST_WIDE 0.020 /* m, room for the spline of a pad; common practice, no source   */
#define USUAL_ROW  "10"  /* dimension series of ISO 15; common practice, no source        */

static const double pi = 3.14159265358979323846;

static const ts_formula wanted_formula = {
    .symbol  = "d_T",
    .meaning = "outside diameter that the highest torque asks for",
    .unit    = "m",
    .text    = "(16*T_most/(pi*tau*(1 - k_bore^4)))^(1/3)",
    .source  = "derived: elastic torsion of a tube",
};
static const ts_formula r_s_formula = {
    .symbol  = "r_s",
    .meaning = "outside radius of the shaft",
    .unit    = "m",
    .text    = "d_s/2",
    .source  = "derived: half of the diameter",
};

/* The largest torque that the shaft passes on or gives to its pads, in any condition. */
static double torque_most(const ts_mass_job *job, uint32_t shaft)
{
    const ts_train *train = job->train;
    double          most  = 0.0;

    for (size_t c = 0; c < job->drive->condition_count; c++) {
        most = fmax(most, fabs(job->power->T[c * train->shaft_count + shaft]));
        for (int face = 0; face < 2; face++) {
            const uint32_t pad = train->shafts[shaft].pad[face];
            if (pad != TS_NOWHERE)
                most = fmax(most, fabs(job->power->pad[c * train->pad_count + pad].T));
        }
    }
    return most;
}

/* The smallest bore of the series that is no smaller than `wanted`; where it is above `most`, the
 * largest that is not; NaN: there is none. */
static double bore_for(double wanted, double most)
{
    double best = NAN, below = NAN;

    for (size_t i = 0; i < ts_bearing_size_count(); i++) {
        const ts_bearing_size size = ts_bearing_size_at(i);
        if (!ts_text_is(ts_text_of(size.series), USUAL_ROW) || size.d > most + 1e-9)
            continue;
        below = !(size.d <= below) ? size.d : below;
        if (size.d >= wanted - 1e-9)
            best = !(size.d >= best) ? size.d : best;
    }
    return isnan(best) ? below : best;
}

/* Nine tenths of the smallest root or toe circle of the gears on the shaft, which must pass through
 * them; INFINITY: none is known. */
static double room_of(const ts_mass_job *job, uint32_t shaft)
{
    double least = INFINITY;

    for (uint32_t m = 0; m < job->train->mesh_count; m++) {
        const ts_mesh        *mesh  = &job->train->meshes[m];
        const ts_mesh_motion *moved = &job->motion->meshes[m];
        const bool            first = mesh->driver_shaft == shaft;
        if (!moved->solved || (!first && mesh->driven_shaft != shaft))
            continue;
        const ts_bevel_pair *bevel = &moved->bevel;
        const double         toe   = first ? bevel->d_e1 - 2.0 * bevel->in.b * sin(bevel->delta_1)
                                           : bevel->d_e2 - 2.0 * bevel->in.b * sin(bevel->delta_2);
        const double         root  = first ? moved->pair.d_f1 : moved->pair.d_f2;
        least                      = fmin(least, mesh->kind == TS_MESH_BEVEL ? toe : root);
    }
    return 0.9 * least;
}

/* Half of the tip diameter of the largest gear of the shaft; NaN: not known. */
static double tip_radius(const ts_mass_job *job, uint32_t shaft)
{
    double most = 0.0;

    for (uint32_t m = 0; m < job->train->mesh_count; m++) {
        const ts_mesh             *mesh = &job->train->meshes[m];
        const ts_cylindrical_pair *pair = &job->motion->meshes[m].pair;
        if (mesh->kind != TS_MESH_CYLINDRICAL || !job->motion->meshes[m].solved)
            continue;
        if (mesh->driver_shaft == shaft)
            most = fmax(most, pair->d_a1 / 2.0);
        if (mesh->driven_shaft == shaft)
            most = fmax(most, pair->d_a2 / 2.0);
    }
    return most > 0.0 ? most : (double)NAN;
}

static void take_outline(const ts_mass_job *job, const ts_mass_outline *outline, ts_mass_shape *out)
{
    const double d_s = outline->d_seat, d_i = outline->d_bore;
    const double first = outline->sections[0].x_1, last = outline->sections[outline->count - 1].x_2;

    ts_workings_assumed(job->workings, "d_s", d_s, "m",
                        "seat of the gears on the outline that bears their bending "
                        "(docs/method/drive_lines.md)");
    (void)TS_STEP(job->workings, r_s_formula, d_s / 2.0, d_s);
    out->outline   = outline;
    out->section   = (ts_beam_section){first, last, d_s, d_i};
    out->d_journal = outline->d_journal;
    out->bearings  = 2;
}

static void generate_box_shaft(const ts_mass_job *job, uint32_t s, ts_mass_shape *out)
{
    ts_workings     *workings = job->workings;
    const ts_shaft  *shaft    = &job->train->shafts[s];
    const ts_measure depth    = job->drive->drive[shaft->drive].box.depth;
    const double     tau      = job->drive->mass.shaft_stress.value;
    const double     T_most = torque_most(job, s), k_bore = BORE;

    out->assumed = true;
    out->r_tip   = tip_radius(job, s);
    if (job->mass->outlines[s].count > 0) {
        take_outline(job, &job->mass->outlines[s], out);
        return;
    }
    if (!ts_measure_known(depth) || !ts_measure_known(job->drive->mass.shaft_stress)) {
        out->missing = !ts_measure_known(depth) ? "the depth of the box" : "the shaft stress";
        return;
    }
    TS_NOTE_MEASURE(workings, job->drive, "tau", job->drive->mass.shaft_stress, "Pa",
                    "shaft stress");
    ts_workings_row(
        workings, "T_most", T_most, "N.m",
        "derived: the highest torque of the shaft or of one of its pads in any condition");
    ts_workings_assumed(workings, "k_bore", k_bore, "1",
                        "bore over outside of a hollow shaft; common practice, no source");
    const double d_T = TS_STEP(
        workings, wanted_formula,
        pow(16.0 * T_most / (pi * tau * (1.0 - k_bore * k_bore * k_bore * k_bore)), 1.0 / 3.0),
        T_most, tau, k_bore);
    const double d_s = bore_for(fmax(d_T, LEAST_WIDE), room_of(job, s));
    if (isnan(d_s)) {
        out->missing = "a shaft that passes through its gears";
        return;
    }
    ts_workings_row(
        workings, "d_s", d_s, "m",
        "data/bearing_size.tsv, series 10: the next bore, no less than 20 mm, and no more "
        "than nine tenths of the roots of its gears");
    out->section = (ts_beam_section){-depth.value / 2.0, depth.value / 2.0, d_s, k_bore * d_s};
    (void)TS_STEP(workings, r_s_formula, d_s / 2.0, d_s);
    out->d_journal = d_s;
    out->bearings  = 2;
}

static void take_tower(const ts_mass_job *job, uint32_t s, ts_mass_shape *out)
{
    const ts_tower_shaft *tower = &job->drive->drive[job->train->shafts[s].drive].tower_shaft;

    if (!ts_measure_known(tower->length) || !ts_measure_known(tower->outside) ||
        !ts_measure_known(tower->bore)) {
        out->missing = !ts_measure_known(tower->length)    ? "its length"
                       : !ts_measure_known(tower->outside) ? "its outside diameter"
                                                           : "its bore";
        return;
    }
    const double d_s = tower->outside.value;
    out->section     = (ts_beam_section){0.0, tower->length.value, d_s, tower->bore.value};
    out->bearings    = ts_measure_known(tower->mid_bearing) ? 3 : 2;
    out->d_journal   = d_s;
    TS_NOTE_MEASURE(job->workings, job->drive, "d_s", tower->outside, "m", "outside");
    (void)TS_STEP(job->workings, r_s_formula, d_s / 2.0, d_s);
}

double ts_mass_tip_radius(const ts_mass *mass, uint32_t shaft)
{
    return mass->shape[shaft].r_tip;
}

ts_beam_section ts_mass_section(const ts_mass *mass, uint32_t shaft)
{
    const ts_mass_shape  *shape = &mass->shape[shaft];
    const ts_beam_section none  = {0.0, 0.0, (double)NAN, (double)NAN};

    if (shape->missing != NULL)
        return none;
    return (ts_beam_section){shape->section.x_1, shape->section.x_2, shape->d_journal,
                             shape->section.d_i};
}

void ts_mass_generate_shafts(const ts_mass_job *job)
{
    for (uint32_t s = 0; s < job->train->shaft_count; s++) {
        const ts_shaft *shaft = &job->train->shafts[s];
        ts_mass_shape  *out   = &job->mass->shape[s];
        *out                  = (ts_mass_shape){.r_tip = (double)NAN};
        ts_workings_about(job->workings, shaft->node, TS_EVERY_CONDITION);
        if (shaft->kind == TS_SHAFT_BOX)
            generate_box_shaft(job, s, out);
        else if (shaft->kind == TS_SHAFT_TOWER)
            take_tower(job, s, out);
        else
            out->missing = "the shaft of the spool";
    }
}
