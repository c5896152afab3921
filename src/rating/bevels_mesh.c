/* rating/bevels_mesh.c: what of the rating of a bevel mesh follows before any load? */
#include "rating/drive_teeth_parts.h"

#include "element/bevel_tolerance.h"
#include "motion/value_note.h"

#include <math.h>
#include <stddef.h>

ts_status ts_bevels_prepare(const ts_train *train, size_t conditions, ts_arena *arena,
                            ts_bevels *out)
{
    *out = (ts_bevels){.number = TS_TAKE(arena, uint32_t, train->mesh_count)};
    if (out->number == NULL)
        return TS_NO_MEMORY;
    for (uint32_t m = 0; m < train->mesh_count; m++)
        out->number[m] = train->meshes[m].kind == TS_MESH_BEVEL ? out->count++ : TS_NOWHERE;
    out->meshes = TS_TAKE(arena, ts_bevels_mesh, out->count);
    out->cases  = TS_TAKE(arena, ts_bevels_case, conditions * out->count);
    return out->meshes != NULL && out->cases != NULL ? TS_OK : TS_NO_MEMORY;
}

/* ---- what the mesh itself has computed already ----------------------------------------------- */

#define OF_CONES(symbol, member)                                                                   \
    {                                                                                              \
        symbol, offsetof(ts_mesh_motion, bevel.member)                                             \
    }
#define OF_TEETH(symbol, member)                                                                   \
    {                                                                                              \
        symbol, offsetof(ts_mesh_motion, teeth.member)                                             \
    }

static const struct {
    const char *name;
    size_t      offset;
} mesh_values[] = {
    OF_CONES("m_et", in.m_et),
    OF_CONES("alpha_n", in.alpha_n),
    OF_CONES("beta_m", in.beta_m),
    OF_CONES("b", in.b),
    OF_CONES("u", u),
    OF_CONES("delta_1", delta_1),
    OF_CONES("delta_2", delta_2),
    OF_CONES("d_e1", d_e1),
    OF_CONES("d_e2", d_e2),
    OF_CONES("R_e", R_e),
    OF_CONES("R_m", R_m),
    OF_CONES("d_m1", d_m1),
    OF_CONES("d_m2", d_m2),
    OF_CONES("m_mn", m_mn),
    OF_CONES("z_v1", z_v1),
    OF_CONES("z_v2", z_v2),
    OF_TEETH("r_c0", in.r_c0),
    OF_TEETH("k_hfp", in.profile.k_hfp),
    OF_TEETH("h_m", h_m),
    OF_TEETH("h_am1", h_am[0]),
    OF_TEETH("h_am2", h_am[1]),
    OF_TEETH("x_hm1", x_hm[0]),
    OF_TEETH("x_hm2", x_hm[1]),
    OF_TEETH("x_sm1", x_sm[0]),
    OF_TEETH("x_sm2", x_sm[1]),
    OF_TEETH("s_mn1", s_mn[0]),
    OF_TEETH("s_mn2", s_mn[1]),
};

static void borrow_geometry(const ts_teeth_case *c, uint32_t m)
{
    const ts_mesh_motion *turn   = &c->teeth->motion->meshes[m];
    const ts_subject      lender = {c->train->meshes[m].node, TS_EVERY_CONDITION};

    for (size_t i = 0; i < sizeof mesh_values / sizeof mesh_values[0]; i++) {
        const double value = *(const double *)((const char *)turn + mesh_values[i].offset);

        if (!isnan(value))
            ts_workings_borrow(c->workings, mesh_values[i].name, value, lender,
                               mesh_values[i].name);
    }
    ts_workings_borrow(c->workings, "z_1", turn->bevel.in.z_1, lender, "z_1");
    ts_workings_borrow(c->workings, "z_2", turn->bevel.in.z_2, lender, "z_2");
}

/* ---- one gear -------------------------------------------------------------------------------- */

static const char *unknown_of(const ts_bevel_gears *bevels)
{
    if (!ts_pick_known(bevels->mounting))
        return "the mounting";
    if (!ts_pick_known(bevels->pattern_checked) || !ts_pick_known(bevels->profile_crowning))
        return "the contact pattern or the profile crowning";
    if (!ts_measure_known(bevels->edge_radius))
        return "the edge radius of the cutter";
    if (bevels->accuracy.standing != TS_GIVEN && bevels->accuracy.standing != TS_ASSUMED)
        return "the accuracy";
    if (!ts_measure_known(bevels->flank_roughness) || !ts_measure_known(bevels->root_roughness))
        return "a roughness";
    if (!ts_measure_known(bevels->long_life_factor))
        return "the long life factor";
    return ts_measure_known(bevels->application_factor) ? NULL : "the application factor";
}

static const char *const names_of[2][8] = {
    {"B_1", "R_z1", "R_zF1", "Z_NTlong1", "Y_NTlong1", "s_pr1", "Z_W1", "rho_a01"},
    {"B_2", "R_z2", "R_zF2", "Z_NTlong2", "Y_NTlong2", "s_pr2", "Z_W2", "rho_a02"},
};
enum { N_B, N_RZ, N_RZF, N_ZLONG, N_YLONG, N_SPR, N_ZW, N_EDGE };

static void note_gear(const ts_teeth_case *c, const ts_bevel_gears *bevels, int g)
{
    const char *const *name = names_of[g];

    ts_note_value(c->workings, c->drive,
                  &(ts_value_note){name[N_B], (double)bevels->accuracy.value, "1", "accuracy",
                                   bevels->accuracy.standing, bevels->accuracy.node});
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_RZ], bevels->flank_roughness, "m",
                    "flank roughness");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_RZF], bevels->root_roughness, "m",
                    "root roughness");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_ZLONG], bevels->long_life_factor, "1",
                    "long life factor");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_YLONG], bevels->long_life_factor, "1",
                    "long life factor");
    ts_workings_assumed(c->workings, name[N_SPR], 0.0, "m", "the cutter has no protuberance");
    ts_workings_assumed(c->workings, name[N_ZW], 1.0, "1",
                        "both gears are of one steel: neither hardens the other");
}

static const ts_formula rho_a0_formulas[2] = {
    {"rho_a01", "edge radius of the cutter of gear 1", "m", "edge_radius*m_mn",
     "derived: what the file says in modules"},
    {"rho_a02", "edge radius of the cutter of gear 2", "m", "edge_radius*m_mn",
     "derived: what the file says in modules"},
};

static const char *fill_gear(const ts_teeth_case *c, uint32_t m, int g, ts_iso10300_gear *out)
{
    const ts_mesh        *mesh        = &c->train->meshes[m];
    const ts_bevel_gears *bevels      = mesh->bevels;
    const ts_bevel_pair  *pair        = &c->teeth->motion->meshes[m].bevel;
    const double          edge_radius = bevels->edge_radius.value, m_mn = pair->m_mn;
    const double          d_m = g == 0 ? pair->d_m1 : pair->d_m2;
    ts_iso6336_gear       steel;
    const char           *missing =
        ts_teeth_fill_steel(c, &c->train->gears[g == 0 ? mesh->driver : mesh->driven], g, &steel);

    if (missing != NULL)
        return missing;
    if (c->workings != NULL)
        note_gear(c, bevels, g);
    *out = (ts_iso10300_gear){
        .class      = steel.class,
        .sigma_Hlim = steel.sigma_Hlim,
        .sigma_Flim = steel.sigma_Flim,
        .yield      = steel.yield,
        .E          = steel.E,
        .nu         = steel.nu,
        .rho        = steel.rho,
        .Z_NTlong   = bevels->long_life_factor.value,
        .Y_NTlong   = bevels->long_life_factor.value,
        .Z_W        = 1.0,
        .f_pt = ts_bevel_pitch_tolerance(d_m, m_mn, (double)bevels->accuracy.value, g, c->workings),
        .R_z  = bevels->flank_roughness.value,
        .R_zF = bevels->root_roughness.value,
        .rho_a0   = TS_STEP(c->workings, rho_a0_formulas[g], edge_radius * m_mn, edge_radius, m_mn),
        .overhung = g < bevels->mounting.value,
    };
    return NULL;
}

/* ---- the pair -------------------------------------------------------------------------------- */

#define PEAK                                                                                       \
    "ISO 10300-1:2014, annex A: 3 with little profile crowning, 1.5 with much (from memory)"
#define TESTS "ISO 10300-2:2014, 6.4.5: bevel gears against tests (from memory)"

static void note_pair(const ts_teeth_case *c, const ts_bevel_gears *bevels,
                      const ts_iso10300_mesh *in)
{
    const ts_limits *limits = &c->drive->limits;

    TS_NOTE_MEASURE(c->workings, c->drive, "nu_40", c->drive->oil.nu_40, "m2/s",
                    ts_oil_key(c->drive, "oil/viscosity at 40"));
    TS_NOTE_MEASURE(c->workings, c->drive, "b_veff_share", bevels->pattern_length, "1",
                    "pattern length");
    TS_NOTE_MEASURE(c->workings, c->drive, "edge_radius", bevels->edge_radius, "1", "edge radius");
    TS_NOTE_MEASURE(c->workings, c->drive, "K_A", bevels->application_factor, "1",
                    "application factor");
    TS_NOTE_MEASURE(c->workings, c->drive, "S_Hmin", limits->contact_safety, "1", "contact safety");
    TS_NOTE_MEASURE(c->workings, c->drive, "S_Fmin", limits->bending_safety, "1", "bending safety");
    ts_workings_row(c->workings, "e", in->e, "1", PEAK);
    ts_workings_row(c->workings, "Z_K", in->Z_K, "1", TESTS);
}

/* What each root makes of a load on its other side; ISO 10300-3 points to ISO 6336-3, annex B. */
static void prepare_mean_stress(const ts_teeth_case *c, uint32_t m)
{
    static const char *const names[2][2] = {{"Y_S1", "Y_Sa1"}, {"Y_S2", "Y_Sa2"}};
    ts_bevels_mesh          *bevels      = ts_bevels_of(c, m);
    const ts_subject         own         = ts_teeth_subject(c, m, TS_EVERY_CONDITION);

    for (int g = 0; g < 2; g++) {
        const double Y_S = bevels->prepared.gear[g].root.Y_Sa;

        ts_workings_borrow(c->workings, names[g][0], Y_S, own, names[g][1]);
        bevels->mean[g] =
            ts_mean_stress_of(bevels->prepared.mesh.gear[g].class, false, Y_S, g, c->workings);
    }
}

/* Returns what is missing; in *fault why there are no such teeth, or no rating of them. */
static const char *prepare(const ts_teeth_case *c, uint32_t m, const char **fault)
{
    const ts_mesh_motion *turn   = &c->teeth->motion->meshes[m];
    const ts_bevel_gears *bevels = c->train->meshes[m].bevels;
    ts_bevels_mesh       *out    = ts_bevels_of(c, m);
    ts_iso10300_mesh      in     = {.Z_K = 0.85};

    if (!turn->solved)
        return "the geometry";
    *fault = turn->teeth_fault;
    if (turn->teeth_fault != NULL)
        return NULL;
    if (!ts_measure_known(c->drive->oil.nu_40))
        return "the viscosity of the oil";
    const char *missing = unknown_of(bevels);
    if (missing != NULL)
        return missing;
    in.nu_40        = c->drive->oil.nu_40.value;
    in.b_veff_share = bevels->pattern_length.value;
    in.e            = bevels->profile_crowning.value == TS_BEVELS_MUCH_CROWNED ? 1.5 : 3.0;
    in.pattern      = (ts_bevel_pattern)bevels->pattern_checked.value;
    out->K_A        = bevels->application_factor.value;
    ts_workings_about(c->workings, c->teeth->strength[m].subject, TS_EVERY_CONDITION);
    if (c->workings != NULL) {
        borrow_geometry(c, m);
        note_pair(c, bevels, &in);
    }
    for (int g = 0; g < 2 && missing == NULL; g++)
        missing = fill_gear(c, m, g, &in.gear[g]);
    if (missing != NULL)
        return missing;
    if (!ts_iso10300_prepare(&turn->bevel, &turn->teeth, &in, &out->prepared, c->workings))
        *fault = out->prepared.missing;
    else
        prepare_mean_stress(c, m);
    return NULL;
}

void ts_bevels_prepare_mesh(const ts_teeth_case *c, uint32_t m)
{
    const char *fault   = NULL;
    const char *missing = prepare(c, m, &fault);

    c->teeth->strength[m].missing = missing;
    c->teeth->strength[m].fault   = fault;
    const ts_iso6336_load load    = {
           .K_A = ts_bevels_of(c, m)->K_A, .S_Hmin = c->teeth->S_Hmin, .S_Fmin = c->teeth->S_Fmin};
    for (uint32_t condition = 0; condition < c->drive->condition_count; condition++)
        *ts_teeth_at(c, m, condition) =
            (ts_mesh_case){.missing = missing, .fault = fault, .load = load};
    if (missing == NULL && fault == NULL)
        ts_bevels_prepare_second(c, m);
}
