/* mass/gear_mass.c: what does a cylindrical gear weigh, tooth by tooth, rim, web and hub?
 */
#include "mass/mass_parts.h"

#include "catalog/gear_material.h"
#include "element/cylindrical_pair.h"
#include "element/revolved_solid.h"
#include "element/tooth_volume.h"
#include "motion/value_note.h"

#include <math.h>

#define HALF      "derived: half of the diameter"
#define REVOLVED  "derived: solid of revolution"
#define LIGHT_WEB 0.25 /* of the face width; a lightened gear; common practice, no source */

static const ts_formula radius_formulas[] = {
    {"r_b", "base radius", "m", "d_b/2", HALF},
    {"r_f", "root radius", "m", "d_f/2", HALF},
    {"r_a", "tip radius", "m", "d_a/2", HALF},
    {"r_F", "radius where the involute begins", "m", "max(max(d_Ff, d_b), d_f)/2", HALF},
    {"r_F", "radius where the involute begins, undercut left aside", "m", "max(d_b, d_f)/2", HALF},
};
static const ts_formula psi_formula = {
    .symbol  = "psi_b",
    .meaning = "half angle of a tooth at its base circle",
    .unit    = "rad",
    .text    = "s_t/d + inv(alpha_t)",
    .source  = "ISO 21771:2007, tooth thickness half angle at the base circle",
};
static const ts_formula round_formula = {
    .symbol  = "rho",
    .meaning = "round in the corners at the root",
    .unit    = "m",
    .text    = "rho_fPs*m_n",
    .source  = "ISO 53:1998",
};
static const ts_formula V_teeth_formula = {
    .symbol  = "V_teeth",
    .meaning = "volume of the teeth beyond the root circle",
    .unit    = "m3",
    .text    = "z*b*A_tooth",
    .source  = "derived: the transverse section is the same all along the face",
};
static const ts_formula V_solid_formula = {
    .symbol  = "V_blank",
    .meaning = "volume of the solid gear from shaft to roots",
    .unit    = "m3",
    .text    = "pi*b*(r_f^2 - r_s^2)",
    .source  = REVOLVED,
};
static const ts_formula I_solid_formula = {
    .symbol  = "I_blank",
    .meaning = "its moment of inertia over its density",
    .unit    = "m5",
    .text    = "pi*b*(r_f^4 - r_s^4)/2",
    .source  = REVOLVED,
};
static const ts_formula r_R_formula = {
    .symbol  = "r_R",
    .meaning = "inner radius of the rim",
    .unit    = "m",
    .text    = "r_f - s_R",
    .source  = "derived: thickness below the roots",
};
static const ts_formula V_light_formula = {
    .symbol  = "V_blank",
    .meaning = "volume of rim and web",
    .unit    = "m3",
    .text    = "pi*b*(r_f^2 - r_R^2) + pi*b_s*(r_R^2 - r_s^2)",
    .source  = REVOLVED,
};
static const ts_formula I_light_formula = {
    .symbol  = "I_blank",
    .meaning = "their moment of inertia over the density",
    .unit    = "m5",
    .text    = "pi*b*(r_f^4 - r_R^4)/2 + pi*b_s*(r_R^4 - r_s^4)/2",
    .source  = REVOLVED,
};
static const ts_formula m_formula = {
    .symbol  = "m_gear",
    .meaning = "mass of the gear without its shaft",
    .unit    = "kg",
    .text    = "rho_steel*(V_teeth + V_blank)",
    .source  = "derived: density times volume",
};
static const ts_formula J_formula = {
    .symbol  = "J_gear",
    .meaning = "moment of inertia of the gear about its axis",
    .unit    = "kg.m2",
    .text    = "rho_steel*(z*b*J_tooth + I_blank)",
    .source  = "derived: density times second moment",
};

/* ---- dimensions ------------------------------------------------------------------------------ */

static const char *const lent[2][6] = {
    {"d_b1", "d_f1", "d_a1", "d_Ff1", "s_t1", "d_1"},
    {"d_b2", "d_f2", "d_a2", "d_Ff2", "s_t2", "d_2"},
};

/* The first mesh of the gear whose geometry is known; its index in the pair, 1 or 2; 0: none. */
static int mesh_of(const ts_mass_job *job, uint32_t gear, uint32_t *mesh)
{
    for (uint32_t m = 0; m < job->train->mesh_count; m++) {
        const ts_mesh *one = &job->train->meshes[m];
        if (one->kind != TS_MESH_CYLINDRICAL || !job->motion->meshes[m].solved)
            continue;
        *mesh = m;
        if (one->driver == gear || one->driven == gear)
            return one->driver == gear ? 1 : 2;
    }
    return 0;
}

typedef struct lending {
    const ts_mass_job *job;
    ts_node            about, lender;
} lending;

static void borrow(const lending *by, const char *name, double value, const char *theirs)
{
    ts_mass_borrow(by->job, by->about, (ts_input){name, value}, by->lender, theirs);
}

static ts_tooth_section section_of(const ts_mass_job *job, ts_node about, uint32_t mesh, int index)
{
    const ts_cylindrical_pair *pair     = &job->motion->meshes[mesh].pair;
    const lending              by       = {job, about, job->train->meshes[mesh].node};
    ts_workings               *workings = job->workings;
    const char *const         *from     = lent[index - 1];
    ts_cylindrical_frame       frame;
    ts_cylindrical_gear        gear;

    ts_cylindrical_pair_gear(pair, index == 1 ? TS_GEAR_1 : TS_GEAR_2, &frame, &gear);
    const double d_b = gear.d_b, d_f = gear.d_f, d_a = gear.d_a, d_Ff = gear.d_Ff, d = gear.d;
    const double s_t = gear.s_t, alpha_t = frame.alpha_t, m_n = frame.m_n;
    const double rho_fPs = gear.in.rack.rho_fPs;

    borrow(&by, "d_b", d_b, from[0]);
    borrow(&by, "d_f", d_f, from[1]);
    borrow(&by, "d_a", d_a, from[2]);
    borrow(&by, "s_t", s_t, from[4]);
    borrow(&by, "d", d, from[5]);
    borrow(&by, "alpha_t", alpha_t, "alpha_t");
    borrow(&by, "m_n", m_n, "m_n");
    borrow(&by, "rho_fPs", rho_fPs, "rho_fPs");
    ts_tooth_section out = {
        .r_b   = TS_STEP(workings, radius_formulas[0], d_b / 2.0, d_b),
        .r_f   = TS_STEP(workings, radius_formulas[1], d_f / 2.0, d_f),
        .r_a   = TS_STEP(workings, radius_formulas[2], d_a / 2.0, d_a),
        .psi_b = TS_STEP(workings, psi_formula, s_t / d + frame.inv_alpha_t, s_t, d, alpha_t),
        .rho   = TS_STEP(workings, round_formula, rho_fPs * m_n, rho_fPs, m_n),
    };
    if (!isnan(d_Ff)) {
        borrow(&by, "d_Ff", d_Ff, from[3]);
        out.r_F =
            TS_STEP(workings, radius_formulas[3], fmax(fmax(d_Ff, d_b), d_f) / 2.0, d_Ff, d_b, d_f);
    } else {
        out.r_F = TS_STEP(workings, radius_formulas[4], fmax(d_b, d_f) / 2.0, d_b, d_f);
    }
    return out;
}

/* ---- the blank ------------------------------------------------------------------------------- */

typedef ts_gear_blank blank;

bool ts_gear_blank_is_light(const ts_gear_blank *it)
{
    return it->s_R > 0.0 && it->r_f - it->s_R > it->r_s;
}

ts_gear_blank ts_mass_gear_blank(const ts_mass *mass, const ts_gear *gear, double r_f)
{
    blank it = {
        .r_f = r_f, .r_s = mass->shape[gear->shaft].section.d_o / 2.0, .b = gear->face.value};

    if (!ts_measure_known(gear->rim))
        return it;
    it.s_R = gear->rim.value;
    it.b_s = ts_measure_known(gear->web) ? gear->web.value : LIGHT_WEB * it.b;
    return it;
}

/* Without workings, for the ends of the band. */
static ts_solid blank_solid(const blank *it)
{
    const double  r_R = ts_gear_blank_is_light(it) ? it->r_f - it->s_R : it->r_s;
    const ts_ring rim = {.h = it->b, .R_1 = it->r_f, .R_2 = it->r_f, .r_1 = r_R, .r_2 = r_R};
    const ts_ring web = {.h = it->b_s, .R_1 = r_R, .R_2 = r_R, .r_1 = it->r_s, .r_2 = it->r_s};
    ts_solid      sum = ts_ring_solid(&rim);

    return ts_gear_blank_is_light(it) ? ts_solid_sum(sum, ts_ring_solid(&web)) : sum;
}

static ts_solid blank_steps(const blank *it, ts_workings *workings)
{
    const double   r_f = it->r_f, r_s = it->r_s, b = it->b, s_R = it->s_R, b_s = it->b_s;
    const ts_solid solid = blank_solid(it);

    if (!ts_gear_blank_is_light(it)) {
        (void)TS_STEP(workings, V_solid_formula, solid.V, b, r_f, r_s);
        (void)TS_STEP(workings, I_solid_formula, solid.I_z, b, r_f, r_s);
        return solid;
    }
    const double r_R = TS_STEP(workings, r_R_formula, r_f - s_R, r_f, s_R);
    (void)TS_STEP(workings, V_light_formula, solid.V, b, r_f, r_R, b_s, r_s);
    (void)TS_STEP(workings, I_light_formula, solid.I_z, b, r_f, r_R, b_s, r_s);
    return solid;
}

/* What the file says, and where it does not say a web, a quarter of the face. */
static blank blank_of(const ts_mass_job *job, const ts_gear *gear, double r_f)
{
    const blank it = ts_mass_gear_blank(job->mass, gear, r_f);

    TS_NOTE_MEASURE(job->workings, job->drive, "b", gear->face, "m", "face");
    ts_mass_borrow(job, gear->node, (ts_input){"r_s", it.r_s}, job->train->shafts[gear->shaft].node,
                   "r_s");
    if (!ts_measure_known(gear->rim))
        return it;
    TS_NOTE_MEASURE(job->workings, job->drive, "s_R", gear->rim, "m", "rim");
    if (ts_measure_known(gear->web))
        TS_NOTE_MEASURE(job->workings, job->drive, "b_s", gear->web, "m", "web");
    else
        ts_workings_assumed(job->workings, "b_s", it.b_s, "m",
                            "a web a quarter as thick as the face; common practice, no source");
    return it;
}

/* A solid gear may yet be lightened: a rim as thick as the limits want it, a web of a quarter of
 * the face.  A gear with a rim and no web has one between a tenth and a half of the face. */
static void ends_of(const ts_mass_job *job, const ts_gear *gear, const blank *it, double r_a,
                    blank *low, blank *high)
{
    const ts_measure rim = job->drive->limits.rim_to_tooth;

    *low = *high = *it;
    if (!ts_measure_known(gear->rim)) {
        low->s_R = (ts_measure_known(rim) ? rim.value : 1.2) * (r_a - it->r_f);
        low->b_s = LIGHT_WEB * it->b;
    } else if (!ts_measure_known(gear->web)) {
        low->b_s  = 0.1 * it->b;
        high->b_s = 0.5 * it->b;
    }
}

static const char *missing_of(const ts_mass_job *job, const ts_gear *gear)
{
    if (!ts_measure_known(gear->face))
        return "the face width";
    if (gear->rim.standing == TS_UNKNOWN || gear->web.standing == TS_UNKNOWN)
        return "the rim";
    if (!ts_pick_known(gear->material))
        return "the material";
    return job->mass->shape[gear->shaft].missing;
}

void ts_mass_of_gear(const ts_mass_job *job, uint32_t index, ts_mass_part *part)
{
    const ts_gear *gear     = &job->train->gears[index];
    ts_workings   *workings = job->workings;
    uint32_t       mesh     = 0;
    const int      which    = mesh_of(job, index, &mesh);

    part->missing = which == 0 ? "the geometry of its teeth" : missing_of(job, gear);
    if (part->missing != NULL)
        return;
    ts_workings_about(workings, gear->node, TS_EVERY_CONDITION);
    const ts_gear_material steel     = ts_gear_material_at((size_t)gear->material.value);
    const ts_tooth_section teeth     = section_of(job, gear->node, mesh, which);
    const ts_tooth_area    tooth     = ts_tooth_area_of(&teeth, workings);
    const blank            it        = blank_of(job, gear, teeth.r_f);
    const double           rho_steel = steel.rho, z = (double)gear->teeth.value, b = it.b;
    const double           A_tooth = tooth.A, J_tooth = tooth.J;
    blank                  low, high;

    if (!(it.r_s < it.r_f)) {
        part->missing = "a shaft thinner than its roots";
        return;
    }
    part->rho = rho_steel;
    ts_workings_row(workings, "rho_steel", rho_steel, "kg/m3", steel.source);
    ts_workings_given(workings, "z", z, "1", gear->teeth.node);
    const ts_solid solid   = blank_steps(&it, workings);
    const double   V_blank = solid.V, I_blank = solid.I_z;
    const double   V_teeth = TS_STEP(workings, V_teeth_formula, z * b * A_tooth, z, b, A_tooth);
    const double   m =
        TS_STEP(workings, m_formula, rho_steel * (V_teeth + V_blank), rho_steel, V_teeth, V_blank);
    const double J = TS_STEP(workings, J_formula, rho_steel * (z * b * J_tooth + I_blank),
                             rho_steel, z, b, J_tooth, I_blank);
    ends_of(job, gear, &it, teeth.r_a, &low, &high);
    const ts_solid less = blank_solid(&low), more = blank_solid(&high);
    part->m = ts_band_of(rho_steel * (V_teeth + fmin(less.V, V_blank)), m,
                         rho_steel * (V_teeth + more.V));
    part->J = ts_band_of(rho_steel * (z * b * J_tooth + fmin(less.I_z, I_blank)), J,
                         rho_steel * (z * b * J_tooth + more.I_z));
}
