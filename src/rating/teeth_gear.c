/* rating/teeth_gear.c: of what steel, how exact and how thick is one gear of a mesh? */
#include "rating/drive_teeth_parts.h"
#include "rating/iso6336/gear_step.h"

#include "catalog/hardness.h"
#include "element/tooth_tolerance.h"
#include "motion/value_note.h"

#include <math.h>
#include <stddef.h>

/* ---- steel ----------------------------------------------------------------------------------- */

static const char *const names_of[2][13] = {
    {"E_1", "nu_1", "rho_1", "hardness_1", "sigma_y1", "Z_NTlong1", "Y_NTlong1", "C_a1", "R_z1",
     "R_zF1", "s_R1", "b_s1", "E_sni1"},
    {"E_2", "nu_2", "rho_2", "hardness_2", "sigma_y2", "Z_NTlong2", "Y_NTlong2", "C_a2", "R_z2",
     "R_zF2", "s_R2", "b_s2", "E_sni2"},
};
enum {
    N_E,
    N_NU,
    N_RHO,
    N_HARDNESS,
    N_YIELD,
    N_ZLONG,
    N_YLONG,
    N_RELIEF,
    N_RZ,
    N_RZF,
    N_RIM,
    N_WEB,
    N_THIN
};

static void note_material(const ts_teeth_case *c, const ts_gear_material *material, int g)
{
    const char *const *name = names_of[g];

    ts_workings_row(c->workings, name[N_E], material->E, "Pa", material->source);
    ts_workings_row(c->workings, name[N_NU], material->nu, "1", material->source);
    ts_workings_row(c->workings, name[N_RHO], material->rho, "kg/m3", material->source);
    ts_workings_row(c->workings, name[N_HARDNESS], material->hardness, "1", material->source);
    if (!isnan(material->yield))
        ts_workings_row(c->workings, name[N_YIELD], material->yield, "Pa", material->source);
}

/* Asked of soft gears only; 0: not known.  The table keeps normalised steel in Brinell. */
static double brinell_of(const ts_gear_material *material)
{
    if (ts_gear_class_surface_hardened(material->class))
        return 0.0;
    if (material->class == TS_GEAR_NORMALISED)
        return material->hardness;
    const double HB = ts_hardness_in(TS_HARDNESS_HBW, material->hardness, TS_HARDNESS_HV);
    return isnan(HB) ? 0.0 : HB;
}

static const ts_formula HB_ratio_formulas[2] = {
    {"HB_ratio", "hardness of gear 1 over that of gear 2", "1", "HB_1/HB_2",
     ISO_6336_2 "13.3" RECALLED},
    {"HB_ratio", "hardness of gear 2 over that of gear 1", "1", "HB_2/HB_1",
     ISO_6336_2 "13.3" RECALLED},
};

/* What the influence of work hardening asks of soft gears and of their hard mates. */
void ts_teeth_note_soft(const ts_teeth_case *c, ts_subject own, const ts_iso6336_mesh *in)
{
    const double HB_1 = in->gear[0].HB, HB_2 = in->gear[1].HB;
    const char  *from = "data/gear_material.tsv, turned into Brinell by data/hardness.tsv";

    if (HB_1 > 0.0) {
        ts_workings_row(c->workings, "HB_1", HB_1, "1", from);
        ts_workings_row(c->workings, "HB", HB_1, "1", from);
    }
    if (HB_2 > 0.0) {
        ts_workings_row(c->workings, "HB_2", HB_2, "1", from);
        ts_workings_row(c->workings, "HB", HB_2, "1", from);
    }
    for (int g = 0; g < 2 && (HB_1 > 0.0 || HB_2 > 0.0); g++) {
        ts_workings_borrow(c->workings, "R_zhard", in->gear[g].R_z, own, names_of[g][N_RZ]);
        ts_workings_borrow(c->workings, "R_zsoft", in->gear[g].R_z, own, names_of[g][N_RZ]);
    }
    if (!(HB_1 > 0.0 && HB_2 > 0.0))
        return;
    (void)TS_STEP(c->workings, HB_ratio_formulas[0], HB_1 / HB_2, HB_1, HB_2);
    (void)TS_STEP(c->workings, HB_ratio_formulas[1], HB_2 / HB_1, HB_2, HB_1);
}

const char *ts_teeth_fill_steel(const ts_teeth_case *c, const ts_gear *gear, int g,
                                ts_iso6336_gear *out)
{
    ts_gear_strength strength;

    if (gear->material.standing != TS_GIVEN && gear->material.standing != TS_ASSUMED)
        return "the material";
    const ts_gear_material material = ts_gear_material_at((size_t)gear->material.value);
    if (c->workings != NULL)
        note_material(c, &material, g);
    if (!ts_gear_strength_of(&material, material.hardness, g + 1, &strength, c->workings))
        return "the strength of the material";
    out->class      = material.class;
    out->sigma_Hlim = strength.sigma_Hlim;
    out->sigma_Flim = strength.sigma_Flim;
    out->yield      = isnan(material.yield) ? 0.0 : material.yield;
    out->HB         = brinell_of(&material);
    out->E          = material.E;
    out->nu         = material.nu;
    out->rho        = material.rho;
    return NULL;
}

/* ---- exactness ------------------------------------------------------------------------------- */

static const char *unknown_of(const ts_tooth_system *system)
{
    if (system->accuracy.standing == TS_UNKNOWN)
        return "the accuracy";
    if (!ts_measure_known(system->flank_roughness) || !ts_measure_known(system->root_roughness))
        return "a roughness";
    if (!ts_measure_known(system->tip_relief))
        return "the tip relief";
    if (!ts_measure_known(system->long_life_factor))
        return "the long life factor";
    if (!ts_measure_known(system->application_factor))
        return "the application factor";
    if (system->face_load_factor.standing == TS_UNKNOWN)
        return "the face load factor";
    if (system->thickness.standing == TS_UNKNOWN)
        return "the tooth thickness allowance";
    return system->misalignment.standing == TS_UNKNOWN ? "the misalignment" : NULL;
}

static void borrow_own(const ts_teeth_case *c, ts_subject subject, const char *name, double value,
                       const char *from)
{
    ts_workings_borrow(c->workings, name, value, subject, from);
}

/* Returns the tolerance of the helix slope. */
static double fill_tolerances(const ts_teeth_case *c, uint32_t m, int g, ts_iso6336_gear *out)
{
    const ts_cylindrical_pair *pair    = &c->teeth->motion->meshes[m].pair;
    const ts_subject           subject = ts_teeth_subject(c, m, TS_EVERY_CONDITION);
    const double               d       = g == 0 ? pair->d_1 : pair->d_2;
    const double               b       = g == 0 ? pair->in.b_1 : pair->in.b_2;
    const ts_tolerance_input   in      = {
               .m_n = pair->in.m_n, .d = d, .b = b, .beta = pair->in.beta, .class = out->accuracy};

    borrow_own(c, subject, "d", d, g == 0 ? "d_1" : "d_2");
    borrow_own(c, subject, "b", b, g == 0 ? "b_1" : "b_2");
    const ts_tooth_tolerance tolerance = ts_tooth_tolerance_2013(&in, c->workings);
    out->f_pt                          = tolerance.f_p;
    out->f_falpha                      = tolerance.f_falpha;
    borrow_own(c, subject, g == 0 ? "f_pt1" : "f_pt2", tolerance.f_p, "f_pT");
    borrow_own(c, subject, g == 0 ? "f_falpha1" : "f_falpha2", tolerance.f_falpha, "f_falphaT");
    borrow_own(c, subject, g == 0 ? "f_Hbeta1" : "f_Hbeta2", tolerance.f_Hbeta, "f_HbetaT");
    return tolerance.f_Hbeta;
}

static void fill_system(const ts_teeth_case *c, const ts_tooth_system *system, int g,
                        ts_iso6336_gear *out)
{
    const char *const *name = names_of[g];

    out->accuracy = (int)system->accuracy.value;
    out->R_z      = system->flank_roughness.value;
    out->R_zF     = system->root_roughness.value;
    out->C_a      = system->tip_relief.value;
    out->E_sni    = system->thickness.low;
    out->Z_NTlong = out->Y_NTlong = system->long_life_factor.value;
    out->pitting                  = false;
    if (c->workings == NULL)
        return;
    ts_note_value(c->workings, c->drive,
                  &(ts_value_note){"A", (double)system->accuracy.value, "1", "accuracy",
                                   system->accuracy.standing, system->accuracy.node});
    ts_note_value(c->workings, c->drive,
                  &(ts_value_note){name[N_THIN], system->thickness.low, "m",
                                   "tooth thickness allowance", system->thickness.standing,
                                   system->thickness.node});
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_RZ], system->flank_roughness, "m",
                    "flank roughness");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_RZF], system->root_roughness, "m",
                    "root roughness");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_RELIEF], system->tip_relief, "m", "tip relief");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_ZLONG], system->long_life_factor, "1",
                    "long life factor");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_YLONG], system->long_life_factor, "1",
                    "long life factor");
}

static const char *fill_blank(const ts_teeth_case *c, const ts_gear *gear, int g,
                              ts_iso6336_gear *out)
{
    const char *const *name = names_of[g];

    if (gear->rim.standing == TS_UNKNOWN || gear->web.standing == TS_UNKNOWN)
        return "the rim";
    out->s_R = ts_measure_known(gear->rim) ? gear->rim.value : 0.0;
    out->b_s = ts_measure_known(gear->web) ? gear->web.value : 0.0;
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_RIM], gear->rim, "m", "rim");
    TS_NOTE_MEASURE(c->workings, c->drive, name[N_WEB], gear->web, "m", "web");
    ts_workings_assumed(c->workings, g == 0 ? "d_web1" : "d_web2", 0.0, "m",
                        "the web reaches the axis");
    ts_workings_assumed(c->workings, g == 0 ? "s_pr1" : "s_pr2", 0.0, "m",
                        "the tool has no protuberance");
    return NULL;
}

/* ---- the gear
 * ------------------------------------------------------------------------------------ */

const char *ts_teeth_fill_gear(const ts_teeth_case *c, uint32_t m, int g, ts_iso6336_gear *out,
                               double *f_Hbeta)
{
    const ts_mesh *mesh    = &c->train->meshes[m];
    const ts_gear *gear    = &c->train->gears[g == 0 ? mesh->driver : mesh->driven];
    const char    *missing = ts_teeth_fill_steel(c, gear, g, out);

    if (missing == NULL)
        missing = unknown_of(gear->system);
    if (missing == NULL)
        missing = fill_blank(c, gear, g, out);
    if (missing != NULL)
        return missing;
    fill_system(c, gear->system, g, out);
    *f_Hbeta = fill_tolerances(c, m, g, out);
    return NULL;
}
