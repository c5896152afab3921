/* mass/shaft_mass.c: what do a shaft and its bearings weigh?
 */
#include "mass/mass_parts.h"

#include "catalog/bearing_size.h"
#include "element/revolved_solid.h"
#include "motion/value_note.h"

#include <math.h>
#include <string.h>

#define REVOLVED "derived: solid of revolution"
#define RINGS                                                                                      \
    "rings up to their shoulders at 0.35 ball diameters from the pitch circle, grooves and cage "  \
    "set "                                                                                         \
    "off against each other; common practice, no source"

static const double pi = 3.14159265358979323846;

static const ts_formula shaft_formulas[2] = {
    {"m_shaft", "mass of the shaft without its gears", "kg", "rho_shaft*pi/4*l_s*(d_s^2 - d_i^2)",
     REVOLVED},
    {"J_shaft", "moment of inertia of the shaft", "kg.m2", "rho_shaft*pi/32*l_s*(d_s^4 - d_i^4)",
     REVOLVED},
};
static const ts_formula bearing_formulas[3] = {
    {"m_bearings", "mass of all bearings of the shaft", "kg",
     "n_b*rho_ring*(pi/4*B*(D^2 - (D_pw + 0.7*D_w)^2 + (D_pw - 0.7*D_w)^2 - d_s^2)"
     " + Z*pi/6*D_w^3)",
     RINGS},
    {"D_pw", "pitch diameter of the balls", "m", "(d_s + D)/2", "derived: midway"},
    {"J_bearings",
     "moment of inertia of what turns with the shaft: inner rings, and the balls at "
     "half its speed",
     "kg.m2", "n_b*rho_ring*(pi/32*B*((D_pw - 0.7*D_w)^4 - d_s^4) + Z*pi/6*D_w^3*(D_pw/2)^2/4)",
     RINGS},
};

static const ts_formula chosen_formulas[3] = {
    {"m_bearings", "mass of all bearings of the shaft", "kg",
     "rho_ring*sum(n_r*(pi/4*B*(D^2 - (D_pw + 0.7*D_w)^2 + (D_pw - 0.7*D_w)^2 - d_s^2) + Z*V))",
     RINGS},
    {"J_bearings",
     "moment of inertia of what turns with the shaft: inner rings, and the balls or rollers at "
     "half "
     "its speed",
     "kg.m2", "rho_ring*sum(n_r*(pi/32*B*((D_pw - 0.7*D_w)^4 - d_s^4) + Z*V*(D_pw/2)^2/4))", RINGS},
    {"V", "volume of a ball or roller", "m3", "pi/4*D_w^2*L_we", "derived: a cylinder"},
};
static const ts_formula ball_formula = {"V", "volume of a ball or roller", "m3", "pi/6*D_w^3",
                                        "derived: a sphere"};

/* ---- outlines -------------------------------------------------------------------------------- */

static const ts_formula outline_formulas[2] = {
    {"m_shaft", "mass of the shaft without its gears", "kg", "rho_shaft*pi/4*sum(l*w)", REVOLVED},
    {"J_shaft", "moment of inertia of the shaft", "kg.m2", "rho_shaft*pi/32*sum(l*v)", REVOLVED},
};

/* Sum over the sections of l (d_o^n - d_i^n), outside no thicker than the seat, `wide` times as
 * thick. */
static double sum_of(const ts_mass_outline *outline, double wide, double bore, int power)
{
    double sum = 0.0;

    for (int i = 0; i < outline->count; i++) {
        const ts_beam_section *s = &outline->sections[i];
        const double           d = fmin(s->d_o, outline->d_seat) * wide;
        sum += (s->x_2 - s->x_1) * (pow(d, power) - pow(fmin(s->d_i * bore, 0.95 * d), power));
    }
    return sum;
}

static void note_outline(const ts_mass_job *job, const ts_mass_outline *outline, int which,
                         double result, double rho_shaft)
{
    const char *name   = which == 0 ? "w" : "v";
    ts_input   *inputs = job->mass->inputs;
    size_t      count  = 0;

    inputs[count++] = (ts_input){"rho_shaft", rho_shaft};
    for (int i = 0; i < outline->count && i < TS_MASS_SECTIONS_MOST; i++) {
        const ts_beam_section *s = &outline->sections[i];
        const double           d = fmin(s->d_o, outline->d_seat), l = s->x_2 - s->x_1;
        const int              n = which == 0 ? 2 : 4;
        const double           w = pow(d, n) - pow(fmin(s->d_i, 0.95 * d), n);
        ts_workings_row(job->workings, "l", l, "m", "derived: length of a section of the outline");
        ts_workings_row(job->workings, name, w, which == 0 ? "m2" : "m4",
                        "derived: outside, at most the seat, less the bore, both to that power");
        inputs[count++] = (ts_input){"l", l};
        inputs[count++] = (ts_input){name, w};
    }
    ts_step_list(job->workings, &outline_formulas[which], result, inputs, count);
}

static void weigh_outline(const ts_mass_job *job, const ts_mass_outline *outline,
                          const ts_metal *metal, ts_mass_part *part)
{
    const double per_m = metal->rho * pi / 4.0, per_J = metal->rho * pi / 32.0;
    const double m = per_m * sum_of(outline, 1.0, 1.0, 2), J = per_J * sum_of(outline, 1.0, 1.0, 4);

    ts_workings_about(job->workings, part->node, TS_EVERY_CONDITION);
    ts_workings_row(job->workings, "rho_shaft", metal->rho, "kg/m3", metal->source);
    note_outline(job, outline, 0, m, metal->rho);
    note_outline(job, outline, 1, J, metal->rho);
    part->m =
        ts_band_of(per_m * sum_of(outline, 0.9, 1.1, 2), m, per_m * sum_of(outline, 1.1, 0.9, 2));
    part->J =
        ts_band_of(per_J * sum_of(outline, 0.9, 1.1, 4), J, per_J * sum_of(outline, 1.1, 0.9, 4));
}

/* ---- shafts ---------------------------------------------------------------------------------- */

/* A tenth thinner or thicker, with a wider or a narrower bore. */
static double tube_of(const ts_beam_section *section, double wide, double bore, int power)
{
    const double d = section->d_o * wide, i = bore > 0.0 ? d * bore : section->d_i;

    return pow(d, power) - pow(i, power);
}

void ts_mass_of_shaft(const ts_mass_job *job, uint32_t shaft, ts_mass_part *part)
{
    ts_workings         *workings  = job->workings;
    const ts_mass_shape *shape     = &job->mass->shape[shaft];
    const ts_metal       metal     = ts_mass_metal(ts_shaft_metals, job->drive->mass.shaft_metal);
    const double         rho_shaft = metal.rho, d_s = shape->section.d_o, d_i = shape->section.d_i;
    const double         l_s = shape->section.x_2 - shape->section.x_1;

    part->missing = shape->missing;
    if (part->missing != NULL)
        return;
    part->rho = rho_shaft;
    if (shape->outline != NULL) {
        weigh_outline(job, shape->outline, &metal, part);
        return;
    }
    ts_workings_about(workings, part->node, TS_EVERY_CONDITION);
    ts_workings_row(workings, "rho_shaft", rho_shaft, "kg/m3", metal.source);
    if (shape->assumed) {
        ts_workings_assumed(workings, "l_s", l_s, "m", "from pad face to pad face");
        ts_workings_assumed(workings, "d_i", d_i, "m",
                            "0.6 of the outside; common practice, no source");
    } else {
        const ts_tower_shaft *tower = &job->drive->drive[part->drive].tower_shaft;
        TS_NOTE_MEASURE(workings, job->drive, "l_s", tower->length, "m", "length");
        TS_NOTE_MEASURE(workings, job->drive, "d_i", tower->bore, "m", "bore");
    }
    const double m =
        TS_STEP(workings, shaft_formulas[0], rho_shaft * pi / 4.0 * l_s * (d_s * d_s - d_i * d_i),
                rho_shaft, l_s, d_s, d_i);
    const double J     = TS_STEP(workings, shaft_formulas[1],
                                 rho_shaft * pi / 32.0 * l_s * (pow(d_s, 4.0) - pow(d_i, 4.0)),
                                 rho_shaft, l_s, d_s, d_i);
    const double per_m = rho_shaft * pi / 4.0 * l_s, per_J = rho_shaft * pi / 32.0 * l_s;
    const bool   wide = shape->assumed;
    part->m           = ts_band_of(wide ? per_m * tube_of(&shape->section, 0.9, 0.7, 2) : m, m,
                         wide ? per_m * tube_of(&shape->section, 1.1, 0.5, 2) : m);
    part->J           = ts_band_of(wide ? per_J * tube_of(&shape->section, 0.9, 0.7, 4) : J, J,
                         wide ? per_J * tube_of(&shape->section, 1.1, 0.5, 4) : J);
}

/* ---- bearings -------------------------------------------------------------------------------- */

/* The bearing of that series with the bore, or the next larger one; d 0: there is none. */
static ts_bearing_size size_of(const char *series, double bore)
{
    ts_bearing_size size;

    return ts_bearing_size_from(series, bore, &size) ? size : (ts_bearing_size){0};
}

typedef struct bearing_mass {
    double m, J;
} bearing_mass;

/* Of one ball or roller. */
static double volume_of(const ts_bearing_inside *inside)
{
    return isnan(inside->L_we) ? pi / 6.0 * pow(inside->D_w, 3.0)
                               : pi / 4.0 * inside->D_w * inside->D_w * inside->L_we;
}

static bearing_mass one_bearing(const ts_bearing_size *size, const ts_bearing_inside *inside,
                                double rho)
{
    const double balls = inside->Z * volume_of(inside);
    const double inner = inside->D_pw - 0.7 * inside->D_w, outer = inside->D_pw + 0.7 * inside->D_w;

    return (bearing_mass){
        .m = rho * (pi / 4.0 * size->B *
                        (size->D * size->D - outer * outer + inner * inner - size->d * size->d) +
                    balls),
        .J = rho * (pi / 32.0 * size->B * (pow(inner, 4.0) - pow(size->d, 4.0)) +
                    balls * inside->D_pw * inside->D_pw / 16.0),
    };
}

double ts_mass_of_one_bearing(const ts_bearing_size *size, const ts_bearing_inside *inside)
{
    ts_metal steel;

    if (!ts_metal_named(TS_TEXT("52100"), &steel))
        return (double)NAN;
    return one_bearing(size, inside, steel.rho).m;
}

/* Of another series, for an end of the band; the one in hand where that has none of the bore. */
static bearing_mass of_series(const char *series, double bore, double rho, bearing_mass otherwise)
{
    ts_bearing_inside     inside;
    const ts_bearing_size size = size_of(series, bore);

    if (!(size.d > 0.0) || !ts_bearing_inside_of(TS_BEARING_DEEP_GROOVE, &size, &inside))
        return otherwise;
    return one_bearing(&size, &inside, rho);
}

static void note_bearing(const ts_mass_job *job, const ts_bearing_size *size,
                         const ts_bearing_inside *inside, double rho)
{
    ts_workings *workings = job->workings;
    const char  *table    = "data/bearing_size.tsv, ISO 15, series 10";
    const char  *assumed  = "data/bearing_inside.tsv, a generic deep groove bearing";

    ts_workings_row(workings, "rho_ring", rho, "kg/m3", "data/metal.tsv, 52100");
    ts_workings_row(workings, "D", size->D, "m", table);
    ts_workings_row(workings, "B", size->B, "m", table);
    ts_workings_row(workings, "D_w", inside->D_w, "m", assumed);
    ts_workings_row(workings, "Z", (double)inside->Z, "1", assumed);
}

#define INPUTS 9 /* of a bearing */

/* One bearing's symbols into the list of inputs. */
static size_t note_chosen(const ts_mass_job *job, const ts_mass_bearing *b, ts_input *inputs,
                          size_t at)
{
    ts_workings   *workings = job->workings;
    const char    *chosen   = "rating/drive_lines.h: as the file tells it, or as it is chosen";
    const double   D_w = b->inside.D_w, L_we = b->inside.L_we, V = volume_of(&b->inside);
    const ts_input of[INPUTS - 1] = {
        {"n_r", (double)b->rows},  {"B", b->size.B}, {"D", b->size.D},
        {"D_pw", b->inside.D_pw},  {"D_w", D_w},     {"d_s", b->size.d},
        {"Z", (double)b->inside.Z}};

    for (int i = 0; i < INPUTS - 2; i++) {
        ts_workings_row(workings, of[i].name, of[i].value, i == 0 || i == 6 ? "1" : "m", chosen);
        inputs[at++] = of[i];
    }
    if (isnan(L_we)) {
        (void)TS_STEP(workings, ball_formula, V, D_w);
    } else {
        ts_workings_row(workings, "L_we", L_we, "m", chosen);
        (void)TS_STEP(workings, chosen_formulas[2], V, D_w, L_we);
    }
    inputs[at++] = (ts_input){"V", V};
    return at;
}

/* The inputs without those of that name. */
static size_t drop(ts_input *inputs, size_t count, const char *name)
{
    size_t left = 0;

    for (size_t i = 0; i < count; i++)
        if (strcmp(inputs[i].name, name) != 0)
            inputs[left++] = inputs[i];
    return left;
}

/* The bearings that somebody laid the shaft in. */
static void weigh_chosen(const ts_mass_job *job, const ts_mass_outline *outline, double rho_ring,
                         ts_mass_part *part)
{
    ts_workings *workings                                   = job->workings;
    ts_input     inputs[INPUTS * TS_MASS_BEARINGS_MOST + 1] = {{"rho_ring", rho_ring}};
    size_t       at                                         = 1;
    double       m = 0.0, J = 0.0;

    ts_workings_about(workings, part->node, TS_EVERY_CONDITION);
    ts_workings_row(workings, "rho_ring", rho_ring, "kg/m3", "data/metal.tsv, 52100");
    for (int i = 0; i < outline->bearing_count; i++) {
        const ts_mass_bearing *b   = &outline->bearings[i];
        const bearing_mass     one = one_bearing(&b->size, &b->inside, rho_ring);

        m += b->rows * one.m;
        J += b->rows * one.J;
        if (workings != NULL)
            at = note_chosen(job, b, inputs, at);
    }
    if (workings != NULL) {
        (void)ts_step_list(workings, &chosen_formulas[0], m, inputs, at);
        at = drop(inputs, at, "D");
        (void)ts_step_list(workings, &chosen_formulas[1], J, inputs, at);
    }
    part->m = ts_band_of(0.9 * m, m, 1.1 * m);
    part->J = ts_band_of(0.9 * J, J, 1.1 * J);
}

void ts_mass_of_bearings(const ts_mass_job *job, uint32_t shaft, ts_mass_part *part)
{
    ts_workings          *workings = job->workings;
    const ts_mass_shape  *shape    = &job->mass->shape[shaft];
    const ts_bearing_size size     = size_of("10", shape->d_journal);
    ts_bearing_inside     inside;
    ts_metal              steel;

    part->missing = shape->missing;
    if (part->missing == NULL && job->mass->outlines[shaft].bearing_count > 0 &&
        ts_metal_named(TS_TEXT("52100"), &steel)) {
        weigh_chosen(job, &job->mass->outlines[shaft], steel.rho, part);
        return;
    }
    if (part->missing == NULL &&
        (!(size.d > 0.0) || !ts_bearing_inside_of(TS_BEARING_DEEP_GROOVE, &size, &inside) ||
         !ts_metal_named(TS_TEXT("52100"), &steel)))
        part->missing = "a bearing of the thickness of the shaft";
    if (part->missing != NULL)
        return;
    const double       d_s = size.d, D = size.D, B = size.B, D_w = inside.D_w, Z = (double)inside.Z;
    const double       n_b = (double)shape->bearings, rho_ring = steel.rho;
    const bearing_mass one = one_bearing(&size, &inside, rho_ring);

    ts_workings_about(workings, part->node, TS_EVERY_CONDITION);
    note_bearing(job, &size, &inside, rho_ring);
    ts_workings_row(workings, "d_s", d_s, "m",
                    "data/bearing_size.tsv: the bore that fits the shaft");
    ts_workings_assumed(workings, "n_b", n_b, "1",
                        "one bearing at either end, and one in the middle "
                        "where the file says so");
    const double D_pw = TS_STEP(workings, bearing_formulas[1], (d_s + D) / 2.0, d_s, D);
    const double m =
        TS_STEP(workings, bearing_formulas[0], n_b * one.m, n_b, rho_ring, B, D, D_pw, D_w, d_s, Z);
    const double J =
        TS_STEP(workings, bearing_formulas[2], n_b * one.J, n_b, rho_ring, B, D_pw, D_w, d_s, Z);
    const bearing_mass less = of_series("19", size.d, rho_ring, one);
    const bearing_mass more = of_series("02", size.d, rho_ring, one);
    part->m                 = ts_band_of(n_b * fmin(less.m, one.m), m, n_b * fmax(more.m, one.m));
    part->J                 = ts_band_of(n_b * fmin(less.J, one.J), J, n_b * fmax(more.J, one.J));
}
