/* mass/casing_mass.c: what does a casing weigh, by the developed area of its wall?
 *
 * Seen along the engine every axis of the box has a disc, as wide as its gears and a gap, and two
 * neighbours have the band that is stretched round both.  All bands together, less the discs that
 * several of them share, are one face; two faces and the rim between them, in the middle of its
 * wall, are the developed area.
 */
#include "mass/mass_parts.h"

#include "motion/value_note.h"

#include <math.h>

#define BANDS "derived: bands round neighbouring axes, less the discs that they share"

static const double pi = 3.14159265358979323846;

static const ts_formula area_formula = {
    .symbol  = "A_face",
    .meaning = "area of one face of the casing",
    .unit    = "m2",
    .text    = "sum(t*(r_1 + r_2) + (pi/2 + phi)*r_1^2 + (pi/2 - phi)*r_2^2) - pi*Q_shared",
    .source  = BANDS,
};
static const ts_formula alone_area_formula = {
    .symbol  = "A_face",
    .meaning = "area of one face of the casing, round a single axis",
    .unit    = "m2",
    .text    = "pi*Q_alone",
    .source  = "derived: a disc",
};
static const ts_formula rim_formula = {
    .symbol  = "U",
    .meaning = "length round the face",
    .unit    = "m",
    .text    = "sum(2*t + (pi + 2*phi)*r_1 + (pi - 2*phi)*r_2) - 2*pi*R_shared",
    .source  = BANDS,
};
static const ts_formula alone_rim_formula = {
    .symbol  = "U",
    .meaning = "length round the face, round a single axis",
    .unit    = "m",
    .text    = "2*pi*R_alone",
    .source  = "derived: a disc",
};
static const ts_formula m_formula = {
    .symbol  = "m_casing",
    .meaning = "mass of the casing",
    .unit    = "kg",
    .text    = "rho_c*wall*(2*A_face + (U - pi*turns*wall)*max(depth - 2*wall, 0))*(1 + extra)",
    .source =
        "derived: developed area times wall, the rim in the middle of its wall and between the "
        "faces; ribs, bosses and flanges in `casing extra`",
};

enum { NOTED_MOST = 64 };

/* Round two axes: the edges are tangents, which leave the larger disc by phi later. */
typedef struct band {
    double t, phi, r_1, r_2; /* m, rad, m, m */
} band;

/* Sums over all bands; a disc that k of them share is counted k times there and k - 1 times here,
 * that of a lone axis -1 times. */
typedef struct face {
    double   A, U;               /* m2, m                     */
    double   Q_shared, R_shared; /* of squares, of radii      */
    double   x, y;               /* first moments of the area */
    uint32_t axes;
    band     bands[NOTED_MOST];
    size_t   count;
} face;

static double half_width(const ts_mass_job *job, uint32_t shaft)
{
    return job->mass->shape[shaft].r_tip + job->drive->mass.casing_gap.value;
}

static uint32_t neighbours(const ts_mass_job *job, uint32_t shaft)
{
    uint32_t count = 0;

    for (uint32_t m = 0; m < job->train->mesh_count; m++)
        if (job->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            (job->train->meshes[m].driver_shaft == shaft ||
             job->train->meshes[m].driven_shaft == shaft))
            count++;
    return count;
}

static void add_disc(const ts_mass_job *job, face *sum, uint32_t shaft, double times)
{
    const ts_shaft_motion *at   = &job->motion->shafts[shaft];
    const double           r    = half_width(job, shaft);
    const double           area = times * pi * r * r;

    sum->Q_shared -= times * r * r;
    sum->R_shared -= times * r;
    sum->A += area;
    sum->U += times * 2.0 * pi * r;
    sum->x += area * at->x;
    sum->y += area * at->y;
}

/* Two right trapezoids from the axes to the tangents, and a sector about either axis.  A disc
 * within the other leaves that alone: t is 0 then, and phi a right angle. */
static void add_band(const ts_mass_job *job, face *sum, uint32_t mesh)
{
    const ts_mesh         *one = &job->train->meshes[mesh];
    const ts_shaft_motion *a   = &job->motion->shafts[one->driver_shaft],
                          *b   = &job->motion->shafts[one->driven_shaft];
    const double r = half_width(job, one->driver_shaft), s = half_width(job, one->driven_shaft);
    const double a_w = job->motion->meshes[mesh].a_w, lean = fmin(1.0, fmax(-1.0, (r - s) / a_w));
    const double phi = asin(lean), upright = sqrt(1.0 - lean * lean), t = a_w * upright;
    const double area = t * (r + s) + (pi / 2.0 + phi) * r * r + (pi / 2.0 - phi) * s * s;
    const double P = r * lean, Q = a_w + s * lean; /* of the tangent points, from a towards b */
    const double moment = t * (r * (P + Q) + s * (Q + a_w)) / 3.0 +
                          2.0 / 3.0 * upright * (s * s * s - r * r * r) +
                          (pi / 2.0 - phi) * s * s * a_w;
    const double share = moment / a_w; /* of the way from a to b, times the area */

    if (sum->count < NOTED_MOST)
        sum->bands[sum->count] = (band){t, phi, r, s};
    sum->count++;
    sum->A += area;
    sum->U += 2.0 * t + (pi + 2.0 * phi) * r + (pi - 2.0 * phi) * s;
    sum->x += area * a->x + share * (b->x - a->x);
    sum->y += area * a->y + share * (b->y - a->y);
}

static const char *missing_of(const ts_mass_job *job, uint32_t drive)
{
    const ts_weighing *mass = &job->drive->mass;

    for (uint32_t s = 0; s < job->train->shaft_count; s++) {
        const ts_shaft *shaft = &job->train->shafts[s];
        if (shaft->kind != TS_SHAFT_BOX || shaft->drive != drive)
            continue;
        if (!job->motion->shafts[s].placed)
            return "the place of a shaft";
        if (isnan(job->mass->shape[s].r_tip) && neighbours(job, s) > 0)
            return "the size of a gear";
    }
    if (!ts_measure_known(job->drive->drive[drive].box.depth))
        return "the depth of the box";
    if (!ts_measure_known(mass->casing_wall) || !ts_measure_known(mass->casing_gap) ||
        !ts_measure_known(mass->casing_extra))
        return "wall, gap or extra of the casing";
    return NULL;
}

static void gather(const ts_mass_job *job, uint32_t drive, face *sum)
{
    for (uint32_t s = 0; s < job->train->shaft_count; s++) {
        const ts_shaft *shaft = &job->train->shafts[s];
        if (shaft->kind != TS_SHAFT_BOX || shaft->drive != drive ||
            isnan(job->mass->shape[s].r_tip))
            continue;
        sum->axes++;
        add_disc(job, sum, s, 1.0 - (double)neighbours(job, s));
    }
    for (uint32_t m = 0; m < job->train->mesh_count; m++)
        if (job->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            job->train->shafts[job->train->meshes[m].driven_shaft].drive == drive)
            add_band(job, sum, m);
}

static void note_bands(ts_workings *workings, const face *sum)
{
    const double Q_shared = sum->Q_shared, R_shared = sum->R_shared;
    ts_input     inputs[4 * NOTED_MOST + 1];
    size_t       n = 0;

    ts_workings_row(
        workings, "Q_shared", Q_shared, "m2",
        "derived: squares of the half widths of discs, once less than bands share them");
    ts_workings_row(workings, "R_shared", R_shared, "m",
                    "derived: half widths of discs, once less than bands share them");
    for (size_t i = 0; i < sum->count; i++) {
        const band *one = &sum->bands[i];
        ts_workings_row(workings, "t", one->t, "m", "derived: the tangent between two discs");
        ts_workings_row(workings, "phi", one->phi, "rad",
                        "derived: by which it leaves the first disc beyond a half");
        ts_workings_row(workings, "r_1", one->r_1, "m", "derived: tip of the gear and the gap");
        ts_workings_row(workings, "r_2", one->r_2, "m", "derived: tip of the gear and the gap");
        inputs[n++] = (ts_input){"t", one->t};
        inputs[n++] = (ts_input){"phi", one->phi};
        inputs[n++] = (ts_input){"r_1", one->r_1};
        inputs[n++] = (ts_input){"r_2", one->r_2};
    }
    inputs[n] = (ts_input){"Q_shared", Q_shared};
    ts_step_list(workings, &area_formula, sum->A, inputs, n + 1);
    inputs[n] = (ts_input){"R_shared", R_shared};
    ts_step_list(workings, &rim_formula, sum->U, inputs, n + 1);
}

/* More bands than fit the list keep their sums. */
static void note_face(ts_workings *workings, const face *sum)
{
    const double Q_alone = -sum->Q_shared, R_alone = -sum->R_shared;

    if (sum->count > NOTED_MOST) {
        ts_workings_row(workings, "A_face", sum->A, "m2", BANDS);
        ts_workings_row(workings, "U", sum->U, "m", BANDS);
    } else if (sum->count > 0) {
        note_bands(workings, sum);
    } else {
        ts_workings_row(workings, "Q_alone", Q_alone, "m2", "derived: square of its half width");
        ts_workings_row(workings, "R_alone", R_alone, "m", "derived: its half width");
        (void)TS_STEP(workings, alone_area_formula, sum->A, Q_alone);
        (void)TS_STEP(workings, alone_rim_formula, sum->U, R_alone);
    }
}

void ts_mass_of_casing(const ts_mass_job *job, uint32_t drive, ts_mass_part *part)
{
    const ts_weighing *mass     = &job->drive->mass;
    ts_workings       *workings = job->workings;
    const ts_box      *box      = &job->drive->drive[drive].box;
    face               sum      = {0};

    part->missing = missing_of(job, drive);
    if (part->missing != NULL)
        return;
    gather(job, drive, &sum);
    if (sum.axes == 0) {
        part->missing = "any gear of the box";
        return;
    }
    const ts_metal metal = ts_mass_metal(ts_casing_metals, mass->casing_metal);
    const double   rho_c = metal.rho, wall = mass->casing_wall.value, depth = box->depth.value;
    const double   extra = mass->casing_extra.value, A_face = sum.A, U = sum.U;
    ts_workings_about(workings, box->node, TS_EVERY_CONDITION);
    note_face(workings, &sum);
    ts_workings_row(workings, "rho_c", rho_c, "kg/m3", metal.source);
    TS_NOTE_MEASURE(workings, job->drive, "wall", mass->casing_wall, "m", "casing wall");
    TS_NOTE_MEASURE(workings, job->drive, "depth", box->depth, "m", "depth");
    TS_NOTE_MEASURE(workings, job->drive, "extra", mass->casing_extra, "1", "casing extra");
    /* a rim that lies half a wall further in is shorter by pi times the wall for each full turn */
    const double turns = (double)sum.axes - (double)sum.count;
    ts_workings_row(workings, "turns", turns, "1", "derived: axes less bands, 1 of one chain");
    const double rim  = (U - pi * turns * wall) * fmax(depth - 2.0 * wall, 0.0);
    const double bare = rho_c * wall * (2.0 * A_face + rim);
    const double m    = TS_STEP(workings, m_formula, bare * (1.0 + extra), rho_c, wall, A_face, U,
                                turns, depth, extra);
    part->rho         = rho_c;
    part->m           = ts_band_of(bare, m, bare * (1.0 + 2.0 * extra));
    part->x           = sum.x / sum.A;
    part->y           = sum.y / sum.A;
}
