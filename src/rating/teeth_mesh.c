/* rating/teeth_mesh.c: what of the rating of a mesh follows before any load? */
#include "rating/drive_teeth_parts.h"
#include "rating/iso6336/gear_step.h"

#include "motion/value_note.h"

#include <math.h>
#include <stddef.h>

/* ---- what the mesh itself has computed already ----------------------------------------------- */

static const struct {
    const char *name;
    size_t      offset;
} pair_values[] = {
    {"m_t", offsetof(ts_cylindrical_pair, m_t)},
    {"alpha_t", offsetof(ts_cylindrical_pair, alpha_t)},
    {"beta_b", offsetof(ts_cylindrical_pair, beta_b)},
    {"p_bt", offsetof(ts_cylindrical_pair, p_bt)},
    {"u", offsetof(ts_cylindrical_pair, u)},
    {"a", offsetof(ts_cylindrical_pair, a)},
    {"a_w", offsetof(ts_cylindrical_pair, a_w)},
    {"alpha_wt", offsetof(ts_cylindrical_pair, alpha_wt)},
    {"inv_alpha_wt", offsetof(ts_cylindrical_pair, inv_alpha_wt)},
    {"y", offsetof(ts_cylindrical_pair, y)},
    {"sum_x", offsetof(ts_cylindrical_pair, sum_x)},
    {"x_1", offsetof(ts_cylindrical_pair, x_1)},
    {"x_2", offsetof(ts_cylindrical_pair, x_2)},
    {"k_1", offsetof(ts_cylindrical_pair, k_1)},
    {"k_2", offsetof(ts_cylindrical_pair, k_2)},
    {"d_1", offsetof(ts_cylindrical_pair, d_1)},
    {"d_2", offsetof(ts_cylindrical_pair, d_2)},
    {"d_b1", offsetof(ts_cylindrical_pair, d_b1)},
    {"d_b2", offsetof(ts_cylindrical_pair, d_b2)},
    {"d_w1", offsetof(ts_cylindrical_pair, d_w1)},
    {"d_w2", offsetof(ts_cylindrical_pair, d_w2)},
    {"d_a1", offsetof(ts_cylindrical_pair, d_a1)},
    {"d_a2", offsetof(ts_cylindrical_pair, d_a2)},
    {"d_f1", offsetof(ts_cylindrical_pair, d_f1)},
    {"d_f2", offsetof(ts_cylindrical_pair, d_f2)},
    {"s_t1", offsetof(ts_cylindrical_pair, s_t1)},
    {"s_t2", offsetof(ts_cylindrical_pair, s_t2)},
    {"rho_Ff1", offsetof(ts_cylindrical_pair, rho_Ff1)},
    {"rho_Ff2", offsetof(ts_cylindrical_pair, rho_Ff2)},
    {"d_Ff1", offsetof(ts_cylindrical_pair, d_Ff1)},
    {"d_Ff2", offsetof(ts_cylindrical_pair, d_Ff2)},
    {"rho_T", offsetof(ts_cylindrical_pair, rho_T)},
    {"rho_A1", offsetof(ts_cylindrical_pair, rho_A1)},
    {"rho_B1", offsetof(ts_cylindrical_pair, rho_B1)},
    {"rho_C1", offsetof(ts_cylindrical_pair, rho_C1)},
    {"rho_D1", offsetof(ts_cylindrical_pair, rho_D1)},
    {"g_alpha", offsetof(ts_cylindrical_pair, g_alpha)},
    {"g_f", offsetof(ts_cylindrical_pair, g_f)},
    {"g_a", offsetof(ts_cylindrical_pair, g_a)},
    {"eps_alpha", offsetof(ts_cylindrical_pair, eps_alpha)},
    {"eps_beta", offsetof(ts_cylindrical_pair, eps_beta)},
    {"eps_gamma", offsetof(ts_cylindrical_pair, eps_gamma)},
    {"m_n", offsetof(ts_cylindrical_pair, in.m_n)},
    {"alpha_n", offsetof(ts_cylindrical_pair, in.alpha_n)},
    {"beta", offsetof(ts_cylindrical_pair, in.beta)},
    {"b_1", offsetof(ts_cylindrical_pair, in.b_1)},
    {"b_2", offsetof(ts_cylindrical_pair, in.b_2)},
    {"h_aPs", offsetof(ts_cylindrical_pair, in.rack.h_aPs)},
    {"h_fPs", offsetof(ts_cylindrical_pair, in.rack.h_fPs)},
    {"rho_fPs", offsetof(ts_cylindrical_pair, in.rack.rho_fPs)},
};

void ts_teeth_borrow_pair(const ts_motion *motion, uint32_t m, ts_workings *workings)
{
    const ts_cylindrical_pair *pair   = &motion->meshes[m].pair;
    const ts_subject           lender = {motion->train->meshes[m].node, TS_EVERY_CONDITION};
    const double               z_1 = pair->in.z_1, z_2 = pair->in.z_2;

    for (size_t i = 0; i < sizeof pair_values / sizeof pair_values[0]; i++) {
        const double value = *(const double *)((const char *)pair + pair_values[i].offset);

        if (!isnan(value))
            ts_workings_borrow(workings, pair_values[i].name, value, lender, pair_values[i].name);
    }
    ts_workings_borrow(workings, "z_1", z_1, lender, "z_1");
    ts_workings_borrow(workings, "z_2", z_2, lender, "z_2");
}

/* ---- misalignment ---------------------------------------------------------------------------- */

static const ts_formula f_ma_formula = {
    .symbol  = "f_ma",
    .meaning = "misalignment by making, what the helix tolerances of both gears allow",
    .unit    = "m",
    .text    = "sqrt(f_Hbeta1^2 + f_Hbeta2^2)",
    .source  = ISO_6336_1 "7.5, of two gears that are not paired by trial" RECALLED,
};

/* What every load case of the mesh has in common. */
static void fill_face(const ts_teeth_case *c, const ts_tooth_system *system, double f_Hbeta1,
                      double f_Hbeta2, ts_iso6336_load *load)
{
    if (ts_measure_known(system->face_load_factor)) {
        load->face    = TS_FACE_LOAD_GIVEN;
        load->K_Hbeta = system->face_load_factor.value;
        TS_NOTE_MEASURE(c->workings, c->drive, "K_Hbeta", system->face_load_factor, "1",
                        "face load factor");
        return;
    }
    if (ts_measure_known(system->misalignment)) {
        load->face    = TS_FACE_LOAD_MISALIGNED;
        load->F_betax = system->misalignment.value;
        TS_NOTE_MEASURE(c->workings, c->drive, "F_betax", system->misalignment, "m",
                        "misalignment");
        return;
    }
    load->face = TS_FACE_LOAD_PARTS;
    load->f_sh = 0.0; /* until a condition bends the shafts */
    load->f_ma = TS_STEP(c->workings, f_ma_formula, sqrt(f_Hbeta1 * f_Hbeta1 + f_Hbeta2 * f_Hbeta2),
                         f_Hbeta1, f_Hbeta2);
}

static ts_iso6336_load common_load(const ts_teeth_case *c, const ts_tooth_system *system,
                                   double f_Hbeta1, double f_Hbeta2)
{
    const ts_limits *limits = &c->drive->limits;
    ts_iso6336_load  load   = {.K_A     = system->application_factor.value,
                               .K_gamma = 1.0,
                               .S_Hmin  = c->teeth->S_Hmin,
                               .S_Fmin  = c->teeth->S_Fmin};

    TS_NOTE_MEASURE(c->workings, c->drive, "K_A", system->application_factor, "1",
                    "application factor");
    ts_workings_assumed(c->workings, "K_gamma", 1.0, "1", "all power passes through this mesh");
    TS_NOTE_MEASURE(c->workings, c->drive, "S_Hmin", limits->contact_safety, "1", "contact safety");
    TS_NOTE_MEASURE(c->workings, c->drive, "S_Fmin", limits->bending_safety, "1", "bending safety");
    fill_face(c, system, f_Hbeta1, f_Hbeta2, &load);
    return load;
}

/* ---- the mesh -------------------------------------------------------------------------------- */

/* Returns what is missing; in *fault why the standard cannot rate it. */
static const char *prepare(const ts_teeth_case *c, uint32_t m, ts_iso6336_load *load,
                           const char **fault)
{
    const ts_mesh        *mesh   = &c->train->meshes[m];
    const ts_gear        *driver = &c->train->gears[mesh->driver];
    const ts_gear        *driven = &c->train->gears[mesh->driven];
    const ts_mesh_motion *turn   = &c->teeth->motion->meshes[m];
    ts_iso6336_mesh       in     = {.year    = c->drive->method.teeth.value == TS_TEETH_ISO_2006
                                                   ? TS_ISO6336_2006
                                                   : TS_ISO6336_2019,
                                    .nu_40   = c->drive->oil.nu_40.value,
                                    .profile = TS_PROFILE_PLAIN,
                                    .lead    = (ts_lead_design)driver->system->lead.value};
    double                f_Hbeta[2];

    if (!turn->solved)
        return "the geometry";
    if (!ts_measure_known(driver->face) || !ts_measure_known(driven->face))
        return "a face width";
    if (!ts_measure_known(c->drive->oil.nu_40))
        return "the viscosity of the oil";
    ts_workings_about(c->workings, c->teeth->strength[m].subject, TS_EVERY_CONDITION);
    if (c->workings != NULL)
        ts_teeth_borrow_pair(c->teeth->motion, m, c->workings);
    TS_NOTE_MEASURE(c->workings, c->drive, "nu_40", c->drive->oil.nu_40, "m2/s",
                    ts_oil_key(c->drive, "oil/viscosity at 40"));
    for (int g = 0; g < 2; g++) {
        const char *missing = ts_teeth_fill_gear(c, m, g, &in.gear[g], &f_Hbeta[g]);

        if (missing != NULL)
            return missing;
    }
    if (c->workings != NULL)
        ts_teeth_note_soft(c, ts_teeth_subject(c, m, TS_EVERY_CONDITION), &in);
    *load                         = common_load(c, driver->system, f_Hbeta[0], f_Hbeta[1]);
    ts_iso6336_prepared *prepared = &c->teeth->prepared[m];
    if (!ts_iso6336_prepare(&turn->pair, &in, prepared, c->workings))
        *fault = prepared->missing;
    return NULL;
}

void ts_teeth_prepare_mesh(const ts_teeth_case *c, uint32_t m)
{
    const char     *fault   = NULL;
    ts_iso6336_load load    = {.K_A = (double)NAN};
    const char     *missing = prepare(c, m, &load, &fault);

    c->teeth->strength[m].missing = missing;
    c->teeth->strength[m].fault   = fault;
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++)
        *ts_teeth_at(c, m, condition) =
            (ts_mesh_case){.missing = missing, .fault = fault, .load = load};
}
