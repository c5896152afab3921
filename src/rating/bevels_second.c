/* rating/bevels_second.c: what does ANSI/AGMA 2003 say of the bevels, beside ISO 10300? */
#include "rating/drive_teeth_parts.h"

#include "catalog/hardness.h"
#include "motion/value_note.h"

#include <math.h>

static const ts_formula A_v_formula = {
    .symbol  = "A_v",
    .meaning = "transmission accuracy, for which that of the teeth is taken; the curves begin at 6",
    .unit    = "1",
    .text    = "max(B_1, 6)",
    .source  = "common practice, no source",
};

/* ---- what the file says ---------------------------------------------------------------------- */

/* The standard has numbers of carburised and of through-hardened steel alone. */
static bool fill_strength(const ts_gear_material *row, int gear, ts_agma2003_gear *out,
                          ts_workings *workings)
{
    const bool hard = ts_gear_class_surface_hardened(row->class);

    out->hard     = hard;
    out->hardness = hard ? (double)NAN
                    : row->class == TS_GEAR_NORMALISED
                        ? row->hardness
                        : ts_hardness_in(TS_HARDNESS_HBW, row->hardness, TS_HARDNESS_HV);
    if (!isnan(out->hardness))
        ts_workings_row(workings, gear == 0 ? "HB_1" : "HB_2", out->hardness, "1",
                        "data/gear_material.tsv, turned into Brinell by data/hardness.tsv");
    const ts_agma2003_allowable allowable =
        ts_agma2003_allowable_of_row(row, out->hardness, gear, workings);
    out->sigma_Hlim = allowable.sigma_Hlim;
    out->sigma_Flim = allowable.sigma_Flim;
    return !isnan(out->sigma_Hlim) && !isnan(out->sigma_Flim);
}

static double factor(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

static bool fill_gear(const ts_teeth_case *c, uint32_t m, int g, ts_agma2003_gear *out)
{
    static const char *const E_names[2] = {"E_1", "E_2"}, *const nu_names[2] = {"nu_1", "nu_2"};
    const ts_bevel_gears  *bevels = c->train->meshes[m].bevels;
    const ts_gear_material row    = ts_gear_material_at((size_t)bevels->material.value);

    *out = (ts_agma2003_gear){.overhung = g < bevels->mounting.value,
                              .E        = row.E,
                              .nu       = row.nu,
                              .Z_W      = NAN,
                              .Y_J      = factor(g == 0 ? bevels->J_factor_1 : bevels->J_factor_2)};
    ts_workings_row(c->workings, E_names[g], row.E, "Pa", row.source);
    ts_workings_row(c->workings, nu_names[g], row.nu, "1", row.source);
    return fill_strength(&row, g, out, c->workings);
}

static void note_geometry(const ts_teeth_case *c, uint32_t m)
{
    const ts_bevel_gears *bevels = c->train->meshes[m].bevels;
    const ts_mesh_motion *turn   = &c->teeth->motion->meshes[m];
    const ts_bevel_pair  *pair   = &turn->bevel;
    const ts_subject      lender = {c->train->meshes[m].node, TS_EVERY_CONDITION};
    const ts_subject      iso    = ts_teeth_subject(c, m, TS_EVERY_CONDITION);

    ts_workings_borrow(c->workings, "m_et", pair->in.m_et, lender, "m_et");
    ts_workings_borrow(c->workings, "b", pair->in.b, lender, "b");
    ts_workings_borrow(c->workings, "beta_m", pair->in.beta_m, lender, "beta_m");
    ts_workings_borrow(c->workings, "d_e1", pair->d_e1, lender, "d_e1");
    ts_workings_borrow(c->workings, "d_e2", pair->d_e2, lender, "d_e2");
    ts_workings_borrow(c->workings, "R_m", pair->R_m, lender, "R_m");
    ts_workings_borrow(c->workings, "u", pair->u, lender, "u");
    if (!isnan(turn->teeth.in.r_c0))
        ts_workings_borrow(c->workings, "r_c0", turn->teeth.in.r_c0, lender, "r_c0");
    ts_workings_borrow(c->workings, "B_1", (double)bevels->accuracy.value, iso, "B_1");
    ts_workings_borrow(c->workings, "K_A", bevels->application_factor.value, iso, "K_A");
    TS_NOTE_MEASURE(c->workings, c->drive, "Z_I", bevels->I_factor, "1", "I factor");
    TS_NOTE_MEASURE(c->workings, c->drive, "Y_J1", bevels->J_factor_1, "1", "J factor 1");
    TS_NOTE_MEASURE(c->workings, c->drive, "Y_J2", bevels->J_factor_2, "1", "J factor 2");
}

/* ---- the pair -------------------------------------------------------------------------------- */

static const char *prepare(const ts_teeth_case *c, uint32_t m)
{
    const ts_bevel_gears *bevels = c->train->meshes[m].bevels;
    const ts_mesh_motion *turn   = &c->teeth->motion->meshes[m];
    ts_bevels_mesh       *out    = ts_bevels_of(c, m);
    const double          B_1    = (double)bevels->accuracy.value;
    ts_agma2003_input     in     = {.geometry = &turn->bevel,
                                    .Z_I      = factor(bevels->I_factor),
                                    .scale    = TS_AGMA2003_ACCURACY_A_V,
                                    .crowned  = true,
                                    .r_c0     = turn->teeth.in.r_c0,
                                    .R        = (double)NAN,
                                    .critical = true};

    if (c->workings != NULL)
        note_geometry(c, m);
    if (!fill_gear(c, m, 0, &in.gear[0]) || !fill_gear(c, m, 1, &in.gear[1]))
        return "it has stress numbers of carburised and of through-hardened steel alone";
    in.accuracy = TS_STEP(c->workings, A_v_formula, fmax(B_1, 6.0), B_1);
    return ts_agma2003_pair_prepare(&in, &out->second, c->workings) ? NULL : out->second.missing;
}

void ts_bevels_prepare_second(const ts_teeth_case *c, uint32_t m)
{
    const ts_bevel_gears *bevels = c->train->meshes[m].bevels;
    const ts_gear        *driver = &c->train->gears[c->train->meshes[m].driver];
    ts_bevels_mesh       *out    = ts_bevels_of(c, m);

    out->second_asked = ts_measure_known(bevels->I_factor) ||
                        ts_measure_known(bevels->J_factor_1) ||
                        ts_measure_known(bevels->J_factor_2);
    out->second_missing = NULL;
    out->second_subject = (ts_subject){driver->teeth.node, TS_EVERY_CONDITION};
    if (!out->second_asked)
        return;
    ts_workings_about(c->workings, out->second_subject.object, TS_EVERY_CONDITION);
    out->second_missing = prepare(c, m);
}

/* ---- one case -------------------------------------------------------------------------------- */

/* Any load at all on the other flank counts as an equal one, on the safe side. */
static double both_ways(const ts_teeth_case *c, double R, const char *name)
{
    const double Y_M = R < 0.0 ? 0.7 : 1.0;

    ts_workings_row(c->workings, name, Y_M, "1",
                    R < 0.0 ? "loaded on both flanks: 0.7, ANSI/AGMA 2003-C10 (from memory)"
                            : "loaded on one flank only");
    return Y_M;
}

void ts_bevels_rate_second(const ts_teeth_case *c, uint32_t m, uint32_t condition)
{
    const ts_bevels_mesh *mesh = ts_bevels_of(c, m);
    const ts_mesh_case   *one  = ts_teeth_at(c, m, condition);
    ts_bevels_case       *out  = ts_bevels_at(c, m, condition);
    const ts_subject      iso  = ts_teeth_subject(c, m, (int32_t)condition);

    ts_workings_about(c->workings, mesh->second_subject.object, (int32_t)condition);
    ts_workings_borrow(c->workings, "T_1", one->load.T_1, iso, "T_1");
    ts_workings_borrow(c->workings, "omega_1", one->load.omega_1, iso, "omega_1");
    ts_workings_borrow(c->workings, "n_L1", one->load.N_L[0], iso, "N_L1");
    ts_workings_borrow(c->workings, "n_L2", one->load.N_L[1], iso, "N_L2");
    const ts_agma2003_load load = {
        .T_1     = one->load.T_1,
        .omega_1 = one->load.omega_1,
        .K_A     = mesh->K_A,
        .n_L     = {one->load.N_L[0], one->load.N_L[1]},
        .Y_M     = {both_ways(c, one->load.R[0], "Y_M1"), both_ways(c, one->load.R[1], "Y_M2")},
        .T_M     = (double)NAN};
    for (int g = 0; g < 2; g++)
        out->second_Y_M[g] = load.Y_M[g];
    (void)ts_agma2003_rate(&mesh->second, &load, &out->second, c->workings);
    ts_workings_about(c->workings, iso.object, iso.condition);
}
