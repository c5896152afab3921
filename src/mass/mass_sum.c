/* mass/mass_sum.c: what do all parts weigh together, where is their centre, and how hard are they
 * to spin from the spool?
 */
#include "mass/mass_parts.h"

#include "motion/value_note.h"

#include <math.h>

#define BY_SUM "derived: sum over the parts"

static const ts_formula sum_formulas[] = {
    {"m_metal", "mass of the drive without its accessories", "kg", "sum(m)", BY_SUM},
    {"m_total", "mass of the drive with its accessories", "kg", "sum(m)", BY_SUM},
    {"x_m", "centre of mass, to the right seen from behind", "m", "sum(m*x)/m_total", BY_SUM},
    {"y_m", "centre of mass, upwards", "m", "sum(m*y)/m_total", BY_SUM},
    {"z_m", "centre of mass, rearward", "m", "sum(m*z)/m_total", BY_SUM},
};
static const ts_formula box_formulas[] = {
    {"m_box", "mass of the box with its accessories", "kg", "sum(m)", BY_SUM},
    {"x_box", "its centre of mass, to the right seen from behind", "m", "sum(m*x)/m_box", BY_SUM},
    {"y_box", "its centre of mass, upwards", "m", "sum(m*y)/m_box", BY_SUM},
    {"z_box", "its centre of mass, rearward", "m", "sum(m*z)/m_box", BY_SUM},
};
static const ts_formula overhang_formula = {
    .symbol  = "e_m",
    .meaning = "centre of mass of the box behind the middle of its depth",
    .unit    = "m",
    .text    = "z_box - station",
    .source  = "derived: the middle of the depth lies at the radial shaft's axis, an assumption",
};
static const ts_formula J_seen_formula = {
    .symbol  = "J_seen",
    .meaning = "inertia of all that the spool drives, seen from the spool, running",
    .unit    = "kg.m2",
    .text    = "sum(J*i_2)",
    .source  = "derived: equal kinetic energy; exact ratios to the spool, squared",
};
static const ts_formula J_cranked_formula = {
    .symbol  = "J_cranked",
    .meaning = "the same with what the clutches let go once they are overrun",
    .unit    = "kg.m2",
    .text    = "sum(J*i_2)",
    .source  = "derived: equal kinetic energy; exact ratios to the spool, squared",
};

/* ---- mass and centre --------------------------------------------------------------------------
 */

typedef enum count_of { ALL_PARTS, METAL_ONLY, IN_THE_BOX } count_of;

static bool counts(const ts_mass_part *part, count_of what, uint32_t drive, const ts_train *train)
{
    if (part->missing != NULL)
        return false;
    if (what == METAL_ONLY)
        return part->kind != TS_MASS_ACCESSORY;
    if (what == ALL_PARTS)
        return true;
    /* What the mounts of the box carry: the radial shaft and the take-off hang on the engine. */
    return part->drive == drive &&
           (part->shaft == TS_NOWHERE || train->shafts[part->shaft].kind == TS_SHAFT_BOX);
}

typedef struct heap {
    ts_band m;
    double  x, y, z; /* first moments */
} heap;

static void borrow_part(const ts_mass_job *job, const ts_mass_part *part)
{
    const ts_subject lender = {part->node, TS_EVERY_CONDITION};

    ts_workings_borrow(job->workings, "m", part->m.value, lender, part->m_name);
}

static heap heap_of(const ts_mass_job *job, count_of what, uint32_t drive)
{
    heap sum = {0};

    for (size_t i = 0; i < job->mass->part_count; i++) {
        const ts_mass_part *part = &job->mass->parts[i];
        if (!counts(part, what, drive, job->train))
            continue;
        sum.m = ts_band_sum(sum.m, part->m);
        sum.x += part->m.value * part->x;
        sum.y += part->m.value * part->y;
        sum.z += part->m.value * part->z;
    }
    return sum;
}

static double place_of(const ts_mass_part *part, char axis)
{
    return axis == 'x' ? part->x : axis == 'y' ? part->y : part->z;
}

/* One formula over all parts that count; `axis` 0 sums masses alone.  Inputs live in the arena of
 * the workings only, so they are made on a list of the caller's. */
static void note_sum(const ts_mass_job *job, const ts_formula *formula, double result,
                     count_of what, uint32_t drive, char axis, double whole, ts_input *inputs)
{
    static const char *const axes[3]   = {"x", "y", "z"};
    static const char *const wholes[2] = {"m_total", "m_box"};
    size_t                   count     = 0;

    for (size_t i = 0; i < job->mass->part_count; i++) {
        const ts_mass_part *part = &job->mass->parts[i];
        if (!counts(part, what, drive, job->train))
            continue;
        borrow_part(job, part);
        inputs[count++] = (ts_input){"m", part->m.value};
        if (axis == 0)
            continue;
        ts_workings_assumed(job->workings, axes[axis - 'x'], place_of(part, axis), "m",
                            "where the centre of the part lies; its axis, and the middle of the "
                            "depth for what is in the box");
        inputs[count++] = (ts_input){axes[axis - 'x'], place_of(part, axis)};
    }
    if (axis != 0)
        inputs[count++] = (ts_input){wholes[what == IN_THE_BOX], whole};
    if (count > 0)
        ts_step_list(job->workings, formula, result, inputs, count);
}

static void note_heap(const ts_mass_job *job, const ts_formula *formulas, const heap *sum,
                      count_of what, uint32_t drive)
{
    ts_input    *inputs = job->mass->inputs;
    const double m      = sum->m.value;

    if (job->workings == NULL || !(m > 0.0))
        return;
    note_sum(job, &formulas[0], m, what, drive, 0, m, inputs);
    if (isnan(sum->x + sum->y + sum->z))
        return;
    note_sum(job, &formulas[1], sum->x / m, what, drive, 'x', m, inputs);
    note_sum(job, &formulas[2], sum->y / m, what, drive, 'y', m, inputs);
    note_sum(job, &formulas[3], sum->z / m, what, drive, 'z', m, inputs);
}

static void sum_box(const ts_mass_job *job, uint32_t d)
{
    ts_box_mass     *box     = &job->mass->boxes[d];
    const ts_measure station = job->drive->drive[d].tower_shaft.station;
    const heap       all     = heap_of(job, IN_THE_BOX, d);

    *box   = (ts_box_mass){.installed = all.m};
    box->x = all.x / all.m.value;
    box->y = all.y / all.m.value;
    box->z = all.z / all.m.value;
    for (size_t i = 0; i < job->mass->part_count; i++)
        if (counts(&job->mass->parts[i], IN_THE_BOX, d, job->train) &&
            job->mass->parts[i].kind != TS_MASS_ACCESSORY)
            box->metal = ts_band_sum(box->metal, job->mass->parts[i].m);
    ts_workings_about(job->workings, job->drive->drive[d].box.node, TS_EVERY_CONDITION);
    note_heap(job, box_formulas, &all, IN_THE_BOX, d);
    const double z_box = box->z, station_z = station.value;
    box->overhang = z_box - station_z;
    if (isnan(box->overhang + box->x + box->y))
        return;
    TS_NOTE_MEASURE(job->workings, job->drive, "station", station, "m", "station");
    (void)ts_step_list(job->workings, &overhang_formula, box->overhang,
                       (const ts_input[]){{"z_box", z_box}, {"station", station_z}}, 2);
}

void ts_mass_sums(const ts_mass_job *job)
{
    ts_mass   *mass  = job->mass;
    const heap all   = heap_of(job, ALL_PARTS, 0);
    const heap metal = heap_of(job, METAL_ONLY, 0);

    mass->total       = all.m;
    mass->metal       = metal.m;
    mass->accessories = ts_band_sum(all.m, ts_band_times(metal.m, -1.0));
    mass->x           = all.x / all.m.value;
    mass->y           = all.y / all.m.value;
    mass->z           = all.z / all.m.value;
    mass->missing = mass->J_missing = 0;
    for (size_t i = 0; i < mass->part_count; i++) {
        mass->missing += mass->parts[i].missing != NULL;
        mass->J_missing += mass->parts[i].J_missing != NULL && mass->parts[i].J_name != NULL;
    }
    ts_workings_about(job->workings, 0, TS_EVERY_CONDITION);
    if (job->workings != NULL && metal.m.value > 0.0)
        note_sum(job, &sum_formulas[0], metal.m.value, METAL_ONLY, 0, 0, 0.0, mass->inputs);
    note_heap(job, &sum_formulas[1], &all, ALL_PARTS, 0);
    for (uint32_t d = 0; d < job->drive->drive_count; d++)
        sum_box(job, d);
}

/* ---- inertia ----------------------------------------------------------------------------------
 */

/* The exact ratio, squared; its value when the square no longer fits 64 bits. */
static double square_of(ts_rational ratio)
{
    const ts_rational square = ts_rational_times(ratio, ratio);
    const double      value  = ts_rational_value(ratio);

    return ts_rational_valid(square) ? ts_rational_value(square) : value * value;
}

static bool spins(const ts_mass_job *job, const ts_mass_part *part, uint32_t spool)
{
    return part->J_name != NULL && part->shaft != TS_NOWHERE && part->J_missing == NULL &&
           job->train->shafts[part->shaft].spool == spool;
}

static void note_seen(const ts_mass_job *job, uint32_t spool, bool cranked, double result)
{
    ts_input *inputs = job->mass->inputs;
    size_t    count  = 0;

    for (size_t i = 0; i < job->mass->part_count; i++) {
        const ts_mass_part *part = &job->mass->parts[i];
        if (!spins(job, part, spool) || (part->clutch && !cranked))
            continue;
        const double i_2 = square_of(job->motion->shafts[part->shaft].ratio);
        ts_workings_borrow(job->workings, "J", part->J.value,
                           (ts_subject){part->node, TS_EVERY_CONDITION}, part->J_name);
        ts_workings_row(job->workings, "i_2", i_2, "1",
                        "derived: square of the exact ratio of its shaft to the spool");
        inputs[count++] = (ts_input){"J", part->J.value};
        inputs[count++] = (ts_input){"i_2", i_2};
    }
    if (count > 0)
        ts_step_list(job->workings, cranked ? &J_cranked_formula : &J_seen_formula, result, inputs,
                     count);
}

void ts_mass_seen(const ts_mass_job *job)
{
    for (uint32_t s = 0; s < job->drive->spool_count; s++) {
        ts_spool_inertia *out = &job->mass->spools[s];
        const ts_measure  own = job->drive->spools[s].inertia;
        *out                  = (ts_spool_inertia){.own = own.value};
        for (size_t i = 0; i < job->mass->part_count; i++) {
            const ts_mass_part *part = &job->mass->parts[i];
            if (!spins(job, part, s))
                continue;
            const double  i_2  = square_of(job->motion->shafts[part->shaft].ratio);
            const ts_band seen = ts_band_times(part->J, i_2);
            out->cranked       = ts_band_sum(out->cranked, seen);
            if (!part->clutch)
                out->J = ts_band_sum(out->J, seen);
        }
        if (job->workings == NULL)
            continue;
        ts_workings_about(job->workings, job->drive->spools[s].node, TS_EVERY_CONDITION);
        TS_NOTE_MEASURE(job->workings, job->drive, "J_spool", own, "kg.m2", "inertia");
        note_seen(job, s, false, out->J.value);
        note_seen(job, s, true, out->cranked.value);
    }
}
