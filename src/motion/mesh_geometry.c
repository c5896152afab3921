/* motion/mesh_geometry.c: how do the two gears of every mesh sit together? */
#include "motion/motion_parts.h"
#include "motion/value_note.h"

#include "element/helical_force.h"

#include <math.h>

static const ts_formula r_1_formula = {
    .symbol  = "r_1",
    .meaning = "radius of the driver at which the tooth force acts: its working pitch circle",
    .unit    = "m",
    .text    = "d_w1/2",
    .source  = "ISO 21771:2007 (definition of the working pitch circle)",
};
static const ts_formula r_2_formula = {
    .symbol  = "r_2",
    .meaning = "radius of the driven gear at which the tooth force acts: its working pitch circle",
    .unit    = "m",
    .text    = "d_w2/2",
    .source  = "ISO 21771:2007 (definition of the working pitch circle)",
};
/* Tooth numbers above this are far outside of what one gear can have; int is certain to hold it. */
#define TEETH_MOST 1000000

static int teeth_of(const ts_gear *gear)
{
    return gear->teeth.value > 0 && gear->teeth.value <= TEETH_MOST ? (int)gear->teeth.value : 0;
}

static const ts_backlash no_backlash = {{(double)NAN, (double)NAN, (double)NAN, (double)NAN},
                                        {(double)NAN, (double)NAN, (double)NAN, (double)NAN},
                                        (double)NAN};

static void forget(ts_mesh_motion *mesh, const char *fault)
{
    mesh->solved = false;
    mesh->fault  = fault;
    mesh->a_w = mesh->r_1 = mesh->r_2 = mesh->alpha_wn = mesh->beta_w = (double)NAN;
}

/* ---- cylindrical ----------------------------------------------------------------------------- */

/* Both values come from the same text of the file or are plainly different, so that exact
 * comparison is meant: a gear of 2 mm and one of 2.0001 mm do not mesh either. */
static bool differ(ts_measure a, ts_measure b)
{
    return a.value < b.value || a.value > b.value;
}

static const char *unknown_of(const ts_gear *gear)
{
    const ts_tooth_system *system = gear->system;

    if (!ts_measure_known(gear->m_n))
        return "the module of a gear is not known";
    if (!ts_measure_known(gear->alpha_n))
        return "the pressure angle of a gear is not known";
    if (!ts_measure_known(gear->beta))
        return "the helix angle of a gear is not known";
    if (!ts_measure_known(gear->x))
        return "the profile shift of a gear is not known";
    if (!ts_measure_known(system->addendum) || !ts_measure_known(system->dedendum) ||
        !ts_measure_known(system->root_radius))
        return "the basic rack of a gear is not known";
    return NULL;
}

static const char *mismatch_of(const ts_gear *driver, const ts_gear *driven)
{
    if (differ(driver->m_n, driven->m_n))
        return "the two gears have different modules";
    if (differ(driver->alpha_n, driven->alpha_n))
        return "the two gears have different pressure angles";
    if (differ(driver->beta, driven->beta))
        return "the two gears have different helix angles";
    return NULL;
}

/* A fillet that was merely assumed gives way where a larger pressure angle leaves no room for it;
 * one that stands in the file does not. */
static ts_basic_rack rack_of(const ts_tooth_system *system, double alpha_n)
{
    const ts_basic_rack rack = {
        .h_aPs   = system->addendum.value,
        .h_fPs   = system->dedendum.value,
        .rho_fPs = system->root_radius.value,
    };

    return system->root_radius.standing == TS_ASSUMED ? ts_basic_rack_fitted(&rack, alpha_n) : rack;
}

static void note_rack(const ts_drive *drive, const ts_tooth_system *system,
                      const ts_basic_rack *rack, ts_workings *workings)
{
    TS_NOTE_MEASURE(workings, drive, "h_aPs", system->addendum, "1", "addendum");
    TS_NOTE_MEASURE(workings, drive, "h_fPs", system->dedendum, "1", "dedendum");
    if (rack->rho_fPs < system->root_radius.value)
        ts_workings_assumed(workings, "rho_fPs", rack->rho_fPs, "1",
                            "the full root round, since a larger one does not fit "
                            "between the flanks of the rack");
    else
        TS_NOTE_MEASURE(workings, drive, "rho_fPs", system->root_radius, "1", "root radius");
}

/* A face width that is not known leaves the overlap of helical teeth open, and nothing else. */
static bool faces_known(const ts_gear *driver, const ts_gear *driven)
{
    return ts_measure_known(driver->face) && ts_measure_known(driven->face);
}

static void note_faces(const ts_drive *drive, const ts_gear *driver, const ts_gear *driven,
                       ts_workings *workings)
{
    if (faces_known(driver, driven)) {
        TS_NOTE_MEASURE(workings, drive, "b_1", driver->face, "m", "face");
        TS_NOTE_MEASURE(workings, drive, "b_2", driven->face, "m", "face");
        return;
    }
    static const char *const why = "a face width is not known: the overlap ratio is left open";

    ts_workings_assumed(workings, "b_1", 0.0, "m", why);
    ts_workings_assumed(workings, "b_2", 0.0, "m", why);
}

static void note_pair(const ts_drive *drive, const ts_gear *driver, const ts_gear *driven,
                      const ts_basic_rack *rack, ts_workings *workings)
{
    static const char *const why_k =
        "tips keep the full addendum of the rack, so that an idler is the same gear in "
        "both of its meshes";

    TS_NOTE_MEASURE(workings, drive, "m_n", driver->m_n, "m", "module");
    TS_NOTE_MEASURE(workings, drive, "alpha_n", driver->alpha_n, "rad", "pressure angle");
    TS_NOTE_MEASURE(workings, drive, "beta", driver->beta, "rad", "helix angle");
    note_faces(drive, driver, driven, workings);
    TS_NOTE_MEASURE(workings, drive, "x_1", driver->x, "1", "shift");
    TS_NOTE_MEASURE(workings, drive, "x_2", driven->x, "1", "shift");
    ts_workings_assumed(workings, "k_1", 0.0, "1", why_k);
    ts_workings_assumed(workings, "k_2", 0.0, "1", why_k);
    note_rack(drive, driver->system, rack, workings);
}

static void solve_cylindrical(const ts_drive *drive, const ts_gear *driver, const ts_gear *driven,
                              ts_mesh_motion *mesh, ts_workings *workings)
{
    const bool                      faces = faces_known(driver, driven);
    const ts_basic_rack             rack  = rack_of(driver->system, driver->alpha_n.value);
    const ts_cylindrical_pair_input in    = {
           .z_1     = teeth_of(driver),
           .z_2     = teeth_of(driven),
           .m_n     = driver->m_n.value,
           .alpha_n = driver->alpha_n.value,
           .beta    = driver->beta.value,
           .b_1     = faces ? driver->face.value : 0.0,
           .b_2     = faces ? driven->face.value : 0.0,
           .x_1     = driver->x.value,
           .x_2     = driven->x.value,
           .shift   = TS_SHIFT_GIVEN,
           .tip     = TS_TIP_GIVEN,
           .rack    = rack,
    };

    if (workings != NULL)
        note_pair(drive, driver, driven, &rack, workings);
    const ts_pair_fault fault = ts_cylindrical_pair_solve(&in, &mesh->pair, workings);

    if (fault != TS_PAIR_FINE && fault != TS_PAIR_POINTED) {
        forget(mesh, ts_pair_fault_says(fault));
        return;
    }
    if (!faces)
        mesh->pair.eps_beta = mesh->pair.eps_gamma = (double)NAN;
    const double d_w1 = mesh->pair.d_w1, d_w2 = mesh->pair.d_w2;

    mesh->solved   = true;
    mesh->fault    = fault == TS_PAIR_FINE ? NULL : ts_pair_fault_says(fault);
    mesh->a_w      = mesh->pair.a_w;
    mesh->r_1      = TS_STEP(workings, r_1_formula, d_w1 / 2.0, d_w1);
    mesh->r_2      = TS_STEP(workings, r_2_formula, d_w2 / 2.0, d_w2);
    mesh->alpha_wn = ts_working_normal_angle(mesh->pair.beta_b, mesh->pair.alpha_wt, workings);
    mesh->beta_w   = ts_working_helix_angle(mesh->pair.beta_b, mesh->pair.alpha_wt, workings);
}

/* An empty input is out of range, which leaves NaN in every result of the pair. */
static void leave_cylindrical(ts_mesh_motion *mesh, const char *fault)
{
    const ts_cylindrical_pair_input empty = {.z_1 = 0};

    ts_cylindrical_pair_solve(&empty, &mesh->pair, NULL);
    forget(mesh, fault);
}

/* ---- bevels ---------------------------------------------------------------------------------- */

static void solve_bevel(const ts_drive *drive, const ts_mesh *record, const ts_gear *const gears[2],
                        ts_mesh_motion *mesh, ts_workings *workings)
{
    const int z[2] = {teeth_of(gears[0]), teeth_of(gears[1])};

    if (!ts_motion_bevel(drive, record->bevels, z, mesh, workings))
        forget(mesh, mesh->fault);
}

static void hunt(const ts_gear *const gears[2], ts_mesh_motion *mesh)
{
    const int z_1 = teeth_of(gears[0]), z_2 = teeth_of(gears[1]);

    mesh->hunting =
        z_1 > 0 && z_2 > 0 ? ts_hunting_of(z_1, z_2) : (ts_hunting){.share = (double)NAN};
    mesh->gcd = mesh->hunting.gcd;
}

void ts_motion_meshes(const ts_drive *drive, ts_motion *motion, ts_workings *workings)
{
    const ts_train *train = motion->train;

    for (uint32_t m = 0; m < train->mesh_count; m++) {
        const ts_mesh       *record   = &train->meshes[m];
        const ts_gear *const gears[2] = {&train->gears[record->driver],
                                         &train->gears[record->driven]};
        ts_mesh_motion      *mesh     = &motion->meshes[m];

        ts_workings_about(workings, record->node, TS_EVERY_CONDITION);
        hunt(gears, mesh);
        mesh->backlash         = no_backlash;
        mesh->backlash_missing = "the geometry";
        if (record->kind == TS_MESH_BEVEL) {
            solve_bevel(drive, record, gears, mesh, workings);
            continue;
        }
        const char *fault = unknown_of(gears[0]);

        fault = fault != NULL ? fault : unknown_of(gears[1]);
        fault = fault != NULL ? fault : mismatch_of(gears[0], gears[1]);
        if (fault != NULL)
            leave_cylindrical(mesh, fault);
        else
            solve_cylindrical(drive, gears[0], gears[1], mesh, workings);
        if (mesh->solved)
            ts_motion_backlash(drive, gears, mesh, workings);
    }
}
