/* mass/casing_mass.c: what does a casing weigh, by the developed area of its wall?
 *
 * Seen along the engine the casing is a strip round the axes of the box, as wide as the gears and a
 * gap: between two neighbours a trapezoid, at every end half a disc.  Two such faces and the wall
 * between them, as deep as the box, are the developed area.
 */
#include "mass/mass_parts.h"

#include "motion/value_note.h"

#include <math.h>

#define STRIP "derived: trapezoids between neighbouring axes, half discs at the ends"

static const double pi = 3.14159265358979323846;

static const ts_formula area_formula = {
    .symbol  = "A_face",
    .meaning = "area of one face of the casing",
    .unit    = "m2",
    .text    = "sum(a_w*w) + pi/2*Q_ends",
    .source  = STRIP,
};
static const ts_formula alone_area_formula = {
    .symbol  = "A_face",
    .meaning = "area of one face of the casing, round a single axis",
    .unit    = "m2",
    .text    = "pi/2*Q_ends",
    .source  = STRIP,
};
static const ts_formula rim_formula = {
    .symbol  = "U",
    .meaning = "length round the face",
    .unit    = "m",
    .text    = "2*sum(t) + pi*R_ends",
    .source  = STRIP,
};
static const ts_formula alone_rim_formula = {
    .symbol  = "U",
    .meaning = "length round the face, round a single axis",
    .unit    = "m",
    .text    = "pi*R_ends",
    .source  = STRIP,
};
static const ts_formula m_formula = {
    .symbol  = "m_casing",
    .meaning = "mass of the casing",
    .unit    = "kg",
    .text    = "rho_c*wall*(2*A_face + U*depth)*(1 + extra)",
    .source  = "derived: developed area times wall; ribs, bosses and flanges in `casing extra`",
};

/* Sums over the strip; `ends` counts a lone axis twice, for it has two half discs. */
typedef struct strip {
    double   A, U;           /* m2, m                     */
    double   Q_ends, R_ends; /* of squares, of radii      */
    double   x, y;           /* first moments of the area */
    uint32_t axes;
    ts_input areas[2 * 64], edges[64];
    size_t   spans;
} strip;

enum { NOTED_MOST = 64 };

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

static void add_end(const ts_mass_job *job, strip *sum, uint32_t shaft, double halves)
{
    const ts_shaft_motion *at   = &job->motion->shafts[shaft];
    const double           r    = half_width(job, shaft);
    const double           area = halves * pi / 2.0 * r * r;

    sum->Q_ends += halves * r * r;
    sum->R_ends += halves * r;
    sum->A += area;
    sum->U += halves * pi * r;
    sum->x += area * at->x;
    sum->y += area * at->y;
}

static void add_span(const ts_mass_job *job, strip *sum, uint32_t mesh)
{
    const ts_mesh         *one = &job->train->meshes[mesh];
    const ts_shaft_motion *a   = &job->motion->shafts[one->driver_shaft],
                          *b   = &job->motion->shafts[one->driven_shaft];
    const double r = half_width(job, one->driver_shaft), s = half_width(job, one->driven_shaft);
    const double a_w = job->motion->meshes[mesh].a_w, w = r + s;
    const double t    = sqrt(fmax(0.0, a_w * a_w - (r - s) * (r - s)));
    const double near = (2.0 * r + s) / (3.0 * w); /* of the trapezoid's centre, from b to a */

    if (sum->spans < NOTED_MOST) {
        sum->areas[2 * sum->spans]     = (ts_input){"a_w", a_w};
        sum->areas[2 * sum->spans + 1] = (ts_input){"w", w};
        sum->edges[sum->spans]         = (ts_input){"t", t};
    }
    sum->spans++;
    sum->A += a_w * w;
    sum->U += 2.0 * t;
    sum->x += a_w * w * (near * a->x + (1.0 - near) * b->x);
    sum->y += a_w * w * (near * a->y + (1.0 - near) * b->y);
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

static void gather(const ts_mass_job *job, uint32_t drive, strip *sum)
{
    for (uint32_t s = 0; s < job->train->shaft_count; s++) {
        const ts_shaft *shaft = &job->train->shafts[s];
        if (shaft->kind != TS_SHAFT_BOX || shaft->drive != drive ||
            isnan(job->mass->shape[s].r_tip))
            continue;
        sum->axes++;
        const uint32_t count = neighbours(job, s);
        if (count < 2)
            add_end(job, sum, s, count == 0 ? 2.0 : 1.0);
    }
    for (uint32_t m = 0; m < job->train->mesh_count; m++)
        if (job->train->meshes[m].kind == TS_MESH_CYLINDRICAL &&
            job->train->shafts[job->train->meshes[m].driven_shaft].drive == drive)
            add_span(job, sum, m);
}

/* Only strips whose spans fit the list are noted step by step; longer ones keep their sums. */
static void note_strip(ts_workings *workings, const strip *sum)
{
    const double Q_ends = sum->Q_ends, R_ends = sum->R_ends;
    ts_input     inputs[2 * NOTED_MOST + 1];

    ts_workings_row(workings, "Q_ends", Q_ends, "m2",
                    "derived: squares of the half widths at the ends of the strip");
    ts_workings_row(workings, "R_ends", R_ends, "m",
                    "derived: half widths at the ends of the strip");
    if (sum->spans == 0) {
        (void)TS_STEP(workings, alone_area_formula, sum->A, Q_ends);
        (void)TS_STEP(workings, alone_rim_formula, sum->U, R_ends);
        return;
    }
    if (sum->spans > NOTED_MOST) {
        ts_workings_row(workings, "A_face", sum->A, "m2", STRIP);
        ts_workings_row(workings, "U", sum->U, "m", STRIP);
        return;
    }
    for (size_t i = 0; i < sum->spans; i++) {
        ts_workings_row(workings, "a_w", sum->areas[2 * i].value, "m", "derived: centre distance");
        ts_workings_row(workings, "w", sum->areas[2 * i + 1].value, "m",
                        "derived: half widths of two neighbours together");
        ts_workings_row(workings, "t", sum->edges[i].value, "m",
                        "derived: the edge between them, tangent to both");
    }
    for (size_t i = 0; i < 2 * sum->spans; i++)
        inputs[i] = sum->areas[i];
    inputs[2 * sum->spans] = (ts_input){"Q_ends", Q_ends};
    ts_step_list(workings, &area_formula, sum->A, inputs, 2 * sum->spans + 1);
    for (size_t i = 0; i < sum->spans; i++)
        inputs[i] = sum->edges[i];
    inputs[sum->spans] = (ts_input){"R_ends", R_ends};
    ts_step_list(workings, &rim_formula, sum->U, inputs, sum->spans + 1);
}

void ts_mass_of_casing(const ts_mass_job *job, uint32_t drive, ts_mass_part *part)
{
    const ts_weighing *mass     = &job->drive->mass;
    ts_workings       *workings = job->workings;
    const ts_box      *box      = &job->drive->drive[drive].box;
    strip              sum      = {0};

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
    note_strip(workings, &sum);
    ts_workings_row(workings, "rho_c", rho_c, "kg/m3", metal.source);
    TS_NOTE_MEASURE(workings, job->drive, "wall", mass->casing_wall, "m", "casing wall");
    TS_NOTE_MEASURE(workings, job->drive, "depth", box->depth, "m", "depth");
    TS_NOTE_MEASURE(workings, job->drive, "extra", mass->casing_extra, "1", "casing extra");
    const double bare = rho_c * wall * (2.0 * A_face + U * depth);
    const double m =
        TS_STEP(workings, m_formula, bare * (1.0 + extra), rho_c, wall, A_face, U, depth, extra);
    part->rho = rho_c;
    part->m   = ts_band_of(bare, m, bare * (1.0 + 2.0 * extra));
    part->x   = sum.x / sum.A;
    part->y   = sum.y / sum.A;
}
