/* rating/rubbing_mesh.c: how rough, how worn in and how oiled are the flanks of a mesh, and what do
 * its other ratings lend? */
#include "rating/drive_rubbing_parts.h"

#include "motion/value_note.h"
#include "rating/iso6336/flank_film.h"

#include <math.h>

/* How the mesh is oiled, from its box or its take-off. */
static ts_pick lubrication_of(const ts_rubbing_desk *desk, uint32_t m)
{
    const ts_mesh        *mesh = &desk->train->meshes[m];
    const ts_spool_drive *drive =
        &desk->drive->drive[desk->train->shafts[mesh->driven_shaft].drive];

    return mesh->bevels == &drive->take_off.bevels ? drive->take_off.lubrication
                                                   : drive->box.lubrication;
}

/* How many meshes the busier of both gears has. */
static int mates_of(const ts_rubbing_desk *desk, uint32_t m)
{
    const uint32_t gears[2] = {desk->train->meshes[m].driver, desk->train->meshes[m].driven};
    int            most     = 1;

    for (int g = 0; g < 2; g++) {
        int mates = 0;
        for (uint32_t other = 0; other < desk->train->mesh_count; other++)
            mates += desk->train->meshes[other].driver == gears[g] ||
                     desk->train->meshes[other].driven == gears[g];
        most = mates > most ? mates : most;
    }
    return most;
}

typedef struct flank_values {
    ts_measure R_z, run_in;
    ts_tally   accuracy;
} flank_values;

static flank_values flank_of(const ts_rubbing_desk *desk, uint32_t m, int g)
{
    const ts_mesh         *mesh   = &desk->train->meshes[m];
    const ts_bevel_gears  *bevels = mesh->bevels;
    const ts_tooth_system *system = desk->train->gears[g == 0 ? mesh->driver : mesh->driven].system;

    if (mesh->kind == TS_MESH_BEVEL)
        return (flank_values){bevels->flank_roughness, bevels->run_in, bevels->accuracy};
    return (flank_values){system->flank_roughness, system->run_in, system->accuracy};
}

static void lend_path(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *out)
{
    const ts_cylindrical_pair *pair   = &desk->teeth->motion->meshes[m].pair;
    const ts_subject           own    = ts_rubbing_subject(desk, m, TS_EVERY_CONDITION);
    const ts_subject           lender = {desk->train->meshes[m].node, TS_EVERY_CONDITION};

    ts_workings_borrow(desk->workings, "rho_a1", pair->rho_E1, lender, "rho_a1");
    ts_workings_borrow(desk->workings, "d", pair->d_1, own, "d_1");
    ts_workings_borrow(desk->workings, "g", pair->g_f, own, "g_f");
    ts_workings_borrow(desk->workings, "g", pair->g_a, own, "g_a");
    ts_workings_borrow(desk->workings, "Q", out->grade, own, "A");
}

const char *ts_rubbing_open_mesh(const ts_rubbing_desk *desk, uint32_t m, ts_rubbing_mesh *out)
{
    static const double     X_S[2]   = {[TS_OILED_BY_JETS] = 1.2, [TS_OILED_BY_DIPPING] = 1.0};
    const ts_pick           way      = lubrication_of(desk, m);
    const ts_rubbing_oil   *oil      = &desk->rubbing->oil;
    const flank_values      flank[2] = {flank_of(desk, m, 0), flank_of(desk, m, 1)};
    const ts_mesh_strength *strength = &desk->teeth->strength[m];

    if (strength->missing != NULL || strength->fault != NULL)
        return strength->missing != NULL ? strength->missing : "a rating of the teeth";
    if (oil->missing != NULL)
        return oil->missing;
    if (!ts_pick_known(way))
        return "the lubrication";
    if (!ts_measure_known(flank[0].run_in) || !ts_measure_known(flank[1].run_in))
        return "how far the flanks are run in";
    ts_workings_about(desk->workings, strength->subject, TS_EVERY_CONDITION);
    *out = (ts_rubbing_mesh){
        .Ra    = {ts_mean_roughness(flank[0].R_z.value, 0, desk->workings),
                  ts_mean_roughness(flank[1].R_z.value, 1, desk->workings)},
        .X_S   = X_S[way.value],
        .phi_E = fmin(flank[0].run_in.value, flank[1].run_in.value),
        .mates = mates_of(desk, m),
        .grade = (int)(flank[0].accuracy.value > flank[1].accuracy.value ? flank[0].accuracy.value
                                                                         : flank[1].accuracy.value),
    };
    if (desk->workings == NULL)
        return NULL;
    const int less = flank[1].run_in.value < flank[0].run_in.value ? 1 : 0;
    TS_NOTE_MEASURE(desk->workings, desk->drive, "phi_E", flank[less].run_in, "1", "run in");
    ts_workings_row(desk->workings, "X_S", out->X_S, "1",
                    way.value == TS_OILED_BY_JETS
                        ? "oil jets, ISO/TS 6336-20:2017, lubrication system factor (from memory)"
                        : "dipping, ISO/TS 6336-20:2017, lubrication system factor (from memory)");
    ts_workings_row(desk->workings, "B_M1", TS_STEEL_B_M, "J/(m2.K.s^0.5)",
                    "13795 for steel, ISO/TS 6336-20:2017 (from memory)");
    ts_workings_row(desk->workings, "B_M2", TS_STEEL_B_M, "J/(m2.K.s^0.5)",
                    "13795 for steel, ISO/TS 6336-20:2017 (from memory)");
    ts_workings_row(desk->workings, "n_p", out->mates, "1", "meshes of the busier gear, counted");
    ts_workings_borrow(desk->workings, "X_L", oil->X_L, oil->subject, "X_L");
    ts_workings_borrow(desk->workings, "S_FZG", oil->S_FZG, oil->subject, "S_FZG");
    ts_workings_borrow(desk->workings, "nu_100", oil->law.oil.nu_100, oil->subject, "nu_100");
    ts_workings_borrow(desk->workings, "rho_15", oil->law.oil.rho_15, oil->subject, "rho_15");
    ts_workings_borrow(desk->workings, "alpha_38", oil->law.oil.alpha_38, oil->subject, "alpha_38");
    if (desk->train->meshes[m].kind == TS_MESH_CYLINDRICAL)
        lend_path(desk, m, out);
    return NULL;
}

void ts_rubbing_lend(const ts_rubbing_desk *desk, uint32_t m, uint32_t condition)
{
    const ts_rubbing_oil *oil  = &desk->rubbing->oil;
    const ts_mesh_case   *one  = ts_rubbing_teeth_case(desk, m, condition);
    const ts_subject      own  = ts_rubbing_subject(desk, m, (int32_t)condition);
    const ts_subject      here = {oil->subject.object, (int32_t)condition};
    ts_workings          *w    = desk->workings;

    if (w == NULL)
        return;
    ts_workings_about(w, own.object, own.condition);
    ts_workings_borrow(w, "theta_oil", oil->theta_oil[condition], here, "theta_oil");
    ts_workings_borrow(w, "theta", oil->theta_oil[condition], here, "theta_oil");
    ts_workings_borrow(w, "eta_oil", oil->eta_oil[condition], here, "eta_oil");
    ts_workings_borrow(w, "T", one->load.T_1, own, "T_1");
    ts_workings_borrow(w, "omega", one->load.omega_1, own, "omega_1");
    if (desk->teeth->motion->meshes[m].pair.eps_beta > 0.0)
        ts_workings_borrow(w, "c_mesh", one->rating.c_gamma_alpha, own, "c_gamma_alpha");
    else
        ts_workings_borrow(w, "c_mesh", one->rating.cp, own, "cp");
}

static void rate_driver(const ts_rubbing_desk *desk, uint32_t m, const ts_rubbing_mesh *mesh,
                        int driver, const ts_rubbing_method *method, void *prepared)
{
    bool ready = false;

    for (uint32_t c = 0; c < desk->drive->condition_count; c++) {
        if (!ts_rubbing_stands(desk->rubbing, m, c) || ts_rubbing_driver(desk, m, c) != driver)
            continue;
        if (!ready) {
            ts_workings_about(desk->workings, desk->teeth->strength[m].subject, TS_EVERY_CONDITION);
            method->prepare(desk, m, mesh, driver, prepared);
            ready = true;
        }
        method->rate(desk, m, prepared, c);
    }
}

const char *ts_rubbing_by_method(const ts_rubbing_desk *desk, uint32_t m,
                                 const ts_rubbing_method *method, void *prepared)
{
    ts_rubbing_mesh mesh;
    const char     *missing = ts_rubbing_open_mesh(desk, m, &mesh);

    if (missing != NULL)
        return missing;
    rate_driver(desk, m, &mesh, 1, method, prepared);
    rate_driver(desk, m, &mesh, 2, method, prepared);
    return NULL;
}
