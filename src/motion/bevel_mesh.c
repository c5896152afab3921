/* motion/bevel_mesh.c: how do two bevel gears sit together, and what teeth do they have? */
#include "motion/motion_parts.h"
#include "motion/value_note.h"

#include <math.h>

static const ts_formula r_m1_formula = {
    .symbol  = "r_1",
    .meaning = "radius of the driver at which the tooth force acts: the middle of its face",
    .unit    = "m",
    .text    = "d_m1/2",
    .source  = "ISO 23509:2016 (definition of the mean pitch diameter)",
};
static const ts_formula r_m2_formula = {
    .symbol  = "r_2",
    .meaning = "radius of the driven gear at which the tooth force acts: the middle of its face",
    .unit    = "m",
    .text    = "d_m2/2",
    .source  = "ISO 23509:2016 (definition of the mean pitch diameter)",
};

/* What is not known is NaN and lies in no range. */
static double or_nan(ts_measure measure)
{
    return ts_measure_known(measure) ? measure.value : (double)NAN;
}

/* ---- cones ----------------------------------------------------------------------------------- */

static ts_bevel_fault solve_cones(const ts_drive *drive, const ts_bevel_gears *bevels,
                                  const int z[2], ts_bevel_pair *pair, ts_workings *workings)
{
    const ts_bevel_pair_input in = {
        .z_1     = z[0],
        .z_2     = z[1],
        .m_et    = or_nan(bevels->module),
        .Sigma   = or_nan(bevels->shaft_angle),
        .alpha_n = or_nan(bevels->pressure_angle),
        .beta_m  = or_nan(bevels->spiral),
        .b       = or_nan(bevels->face),
    };

    TS_NOTE_MEASURE(workings, drive, "m_et", bevels->module, "m", "module");
    TS_NOTE_MEASURE(workings, drive, "Sigma", bevels->shaft_angle, "rad", "shaft angle");
    TS_NOTE_MEASURE(workings, drive, "alpha_n", bevels->pressure_angle, "rad", "pressure angle");
    TS_NOTE_MEASURE(workings, drive, "beta_m", bevels->spiral, "rad", "spiral");
    TS_NOTE_MEASURE(workings, drive, "b", bevels->face, "m", "face");
    return ts_bevel_pair_solve(&in, pair, workings);
}

/* ---- teeth ----------------------------------------------------------------------------------- */

static const char *unknown_of(const ts_bevel_gears *bevels)
{
    if (!ts_pick_known(bevels->depth_taper))
        return "the depth taper is not known";
    if (!ts_measure_known(bevels->addendum) || !ts_measure_known(bevels->dedendum))
        return "the addendum or the dedendum is not known";
    if (bevels->profile_shift.standing == TS_UNKNOWN || !ts_measure_known(bevels->thickness_shift))
        return "the profile shift or the thickness shift is not known";
    if (bevels->cutter_radius.standing == TS_UNKNOWN)
        return "the cutter radius is not known";
    return ts_measure_known(bevels->pattern_length) ? NULL : "the pattern length is not known";
}

static ts_bevel_profile profile_of(const ts_drive *drive, const ts_bevel_gears *bevels,
                                   const ts_bevel_pair *pair, ts_workings *workings)
{
    const double k_hap = bevels->addendum.value;

    TS_NOTE_MEASURE(workings, drive, "k_hap", bevels->addendum, "1", "addendum");
    TS_NOTE_MEASURE(workings, drive, "k_hfp", bevels->dedendum, "1", "dedendum");
    TS_NOTE_MEASURE(workings, drive, "x_hm1", bevels->profile_shift, "1", "profile shift");
    TS_NOTE_MEASURE(workings, drive, "x_smn", bevels->thickness_shift, "1", "thickness shift");
    return (ts_bevel_profile){
        .k_hap = k_hap,
        .k_hfp = bevels->dedendum.value,
        .x_hm1 = ts_measure_known(bevels->profile_shift)
                     ? bevels->profile_shift.value
                     : ts_bevel_shift_usual(pair, k_hap, workings),
        .x_smn = bevels->thickness_shift.value,
    };
}

/* The file tells the play of the bevels on the spool, which moves; those of a box are taken as
 * without. */
static double backlash_of(const ts_drive *drive, const ts_bevel_gears *bevels,
                          ts_workings *workings)
{
    for (size_t d = 0; d < drive->drive_count; d++) {
        const ts_take_off *off = &drive->drive[d].take_off;

        if (&off->bevels != bevels || !ts_measure_known(off->backlash))
            continue;
        TS_NOTE_MEASURE(workings, drive, "j_mn", off->backlash, "m", "backlash");
        return off->backlash.value;
    }
    ts_workings_assumed(workings, "j_mn", 0.0, "m", "no backlash of these teeth is told");
    return 0.0;
}

static const char *solve_teeth(const ts_drive *drive, const ts_bevel_gears *bevels,
                               ts_mesh_motion *mesh, ts_workings *workings)
{
    const char *unknown = unknown_of(bevels);

    if (unknown != NULL)
        return unknown;
    const ts_bevel_teeth_input in = {
        .taper   = (ts_bevel_taper)bevels->depth_taper.value,
        .profile = profile_of(drive, bevels, &mesh->bevel, workings),
        .j_mn    = backlash_of(drive, bevels, workings),
        .r_c0    = or_nan(bevels->cutter_radius),
    };
    TS_NOTE_MEASURE(workings, drive, "r_c0", bevels->cutter_radius, "m", "cutter radius");
    TS_NOTE_MEASURE(workings, drive, "b_veff_share", bevels->pattern_length, "1", "pattern length");
    const ts_bevel_teeth_fault fault =
        ts_bevel_teeth_solve(&mesh->bevel, &in, &mesh->teeth, workings);

    if (fault != TS_BEVEL_TEETH_FINE)
        return ts_bevel_teeth_fault_says(fault);
    ts_bevel_virtual_solve(&mesh->bevel, &mesh->teeth, bevels->pattern_length.value, &mesh->virt,
                           workings);
    ts_bevel_spiral_solve(&mesh->bevel, &mesh->teeth, &mesh->ends, workings);
    ts_bevel_toe_solve(&mesh->bevel, &mesh->teeth, &mesh->ends, &mesh->toe, workings);
    return NULL;
}

/* ---- the mesh -------------------------------------------------------------------------------- */

bool ts_motion_bevel(const ts_drive *drive, const ts_bevel_gears *bevels, const int z[2],
                     ts_mesh_motion *mesh, ts_workings *workings)
{
    const ts_bevel_fault fault = solve_cones(drive, bevels, z, &mesh->bevel, workings);

    mesh->solved      = fault == TS_BEVEL_FINE;
    mesh->fault       = mesh->solved ? NULL : ts_bevel_fault_says(fault);
    mesh->teeth_fault = mesh->fault;
    if (!mesh->solved)
        return false;
    const double d_m1 = mesh->bevel.d_m1, d_m2 = mesh->bevel.d_m2;

    mesh->a_w         = 0.0;
    mesh->r_1         = TS_STEP(workings, r_m1_formula, d_m1 / 2.0, d_m1);
    mesh->r_2         = TS_STEP(workings, r_m2_formula, d_m2 / 2.0, d_m2);
    mesh->alpha_wn    = mesh->bevel.in.alpha_n;
    mesh->beta_w      = mesh->bevel.in.beta_m;
    mesh->teeth_fault = solve_teeth(drive, bevels, mesh, workings);
    return true;
}
