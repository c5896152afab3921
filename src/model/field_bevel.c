/* model/field_bevel.c: what does the file say of a pair of bevel gears? */
#include "model/drive.h"
#include "model/field.h"

#include "catalog/gear_material.h"

static const char *const hands[] = {"left", "right", NULL};
static const char *const sides[] = {"front", "rear", NULL};
/* In the order of ts_bevel_taper, and of the enums of model/drive.h. */
static const char *const tapers[] = {"standard", "uniform", "slot width", "tilted root line", NULL};
static const char *const mountings[] = {"straddled", "one overhung", "both overhung", NULL};
static const char *const checks[]    = {"under full load", "under light load", "on a sample", NULL};
static const char *const crownings[] = {"little", "much", NULL};

/* Straight bevels have no hand. */
static ts_preset hand_preset(const void *record)
{
    const ts_bevel_gears *bevels = record;
    if (bevels->spiral.value > 0.0)
        return (ts_preset){"left",
                           "no more than a start: the bevel thrust check says whether it is "
                           "right; common practice, no source"};
    return (ts_preset){NULL, NULL};
}

#define OF_KIND(of) .form = TS_FORM_MEASURE, .kind = TS_KIND_##of

static const ts_field bevel_gears_fields[] = {
    {.key  = "teeth",
     .form = TS_FORM_TEETH,
     .need = TS_REQUIRED,
     TS_AT(ts_bevel_gears, teeth),
     .range   = TS_FROM(5, 2000, "1"),
     .says    = "Tooth numbers, the gear nearer to the spool first.",
     .example = "[43, 46]"},
    {.key  = "module",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_bevel_gears, module),
     .range   = TS_ABOVE(0.0, 0.1, "mm"),
     .says    = "Outer transverse module m_et.",
     .example = "2.4 mm"},
    {.key  = "pressure angle",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ANGLE,
     TS_AT(ts_bevel_gears, pressure_angle),
     .range   = TS_FROM(0.17453292519943295769, 0.61086523819801535192, "deg"), /* 10 to 35 deg */
     .preset  = {"20 deg", "the usual normal pressure angle of bevels; common practice, no "
                            "source"},
     .says    = "Normal pressure angle alpha_n.",
     .example = "20 deg"},
    {.key  = "spiral",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_ANGLE,
     TS_AT(ts_bevel_gears, spiral),
     .range   = TS_FROM(0.0, 0.95993108859688126730, "deg"), /* 55 deg */
     .says    = "Mean spiral angle beta_m; 0 deg for straight bevels.",
     .example = "35 deg"},
    {.key  = "hand",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, hand),
     .choices   = hands,
     .preset    = {"left", "asked for by spiral bevels only, and no more than a start; common "
                              "practice, no source"},
     .preset_of = hand_preset,
     .says      = "Hand of spiral of the first gear; the second has the other.",
     .example   = "left"},
    {.key  = "face",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_bevel_gears, face),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Face width of both gears.",
     .example = "16 mm"},
    {.key  = "shaft angle",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ANGLE,
     TS_AT(ts_bevel_gears, shaft_angle),
     .range   = TS_FROM(0.52359877559829887307, 2.61799387799149436539, "deg"), /* 30 to 150 deg */
     .preset  = {"90 deg", "a radial shaft stands square to the engine axis; common practice, no "
                            "source"},
     .says    = "Angle between the two axes.",
     .example = "90 deg"},
    {.key  = "side",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, side),
     .choices = sides,
     .preset  = {"rear", "equal sides at spool and box make the box input turn against the spool; "
                          "common practice, no source"},
     .says    = "On which side of the radial shaft's axis the gear on the engine-parallel shaft "
                "lies; front is towards the inlet.",
     .example = "rear"},
    {.key   = "loss",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_bevel_gears, loss),
     .range   = TS_FROM(0.0, 0.2, "%"),
     .preset  = {"1 %", "of the transmitted power; common practice, no source"},
     .says    = "Share of the transmitted power that is lost in this mesh.",
     .example = "1 %"},
    /* teeth */
    {.key  = "depth taper",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, depth_taper),
     .choices = tapers,
     .preset  = {"standard", "root lines that meet at the apex; common practice, no source"},
     .says    = "How the depth of the teeth changes along the face, ISO 23509.",
     .example = "standard"},
    {.key = "addendum",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, addendum),
     .range   = TS_ABOVE(0.0, 2.0, "1"),
     .preset  = {"1", "ISO 23509:2016, annex C: working depth of 2 modules (from memory)"},
     .says    = "Addendum of the basic crown gear over the mean normal module, k_hap.",
     .example = "1"},
    {.key = "dedendum",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, dedendum),
     .range   = TS_ABOVE(0.0, 2.5, "1"),
     .preset  = {"1.25", "ISO 23509:2016, annex C: clearance of an eighth of the working depth "
                          "(from memory)"},
     .says    = "Dedendum of the basic crown gear over the mean normal module, k_hfp.",
     .example = "1.25"},
    {.key = "profile shift",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, profile_shift),
     .range   = TS_FROM(-1.5, 1.5, "1"),
     .says    = "Profile shift x_hm1 of the first gear, the second has its negative; without the "
                "key what ISO 23509, annex C, gives to the ratio.",
     .example = "0.2"},
    {.key = "thickness shift",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, thickness_shift),
     .range   = TS_FROM(-0.5, 0.5, "1"),
     .preset  = {"0", "teeth of both gears equally thick but for their profile shift; common "
                       "practice, no source"},
     .says    = "Thickness modification x_smn of the first gear, the second has its negative.",
     .example = "0.03"},
    {.key = "cutter radius",
     OF_KIND(LENGTH),
     TS_AT(ts_bevel_gears, cutter_radius),
     .range = TS_ABOVE(0.0, 1.0, "mm"),
     .says  = "Mean radius r_c0 of the face mill that cuts curved teeth; without the key straight "
              "teeth when `spiral` is 0 deg, and else no credit for their curve, which is on the "
              "safe side.",
     .example = "76.2 mm"},
    {.key = "edge radius",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, edge_radius),
     .range  = TS_FROM(0.0, 0.5, "1"),
     .preset = {"0.25", "a cutter edge that suits every pressure angle to 25 deg; common practice, "
                        "no source"},
     .says   = "Edge radius of the cutter over the mean normal module, rho_a0 / m_mn.",
     .example = "0.25"},

    /* strength */
    {.key  = "mounting",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, mounting),
     .choices = mountings,
     .preset = {"one overhung", "one gear at the end of its shaft, the other between its bearings; "
                                "common practice, no source"},
     .says   = "Do bearings stand on both sides of the gears?",
     .example = "straddled"},
    {.key  = "pattern checked",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, pattern_checked),
     .choices = checks,
     .preset  = {"under light load", "every pair on a testing machine; common practice, no source"},
     .says    = "How the contact pattern of each pair was looked after.",
     .example = "under full load"},
    {.key = "pattern length",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, pattern_length),
     .range   = TS_ABOVE(0.0, 1.0, "1"),
     .preset  = {"0.85", "usual under load; ISO 10300-1:2014, annex A (from memory)"},
     .says    = "Length of the contact pattern under load over the face width, b_veff / b_v.",
     .example = "0.85"},
    {.key  = "profile crowning",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, profile_crowning),
     .choices = crownings,
     .preset  = {"little", "the usual one; common practice, no source"},
     .says    = "How much the profiles are crowned: the peak of the load along the path of contact "
                "has the exponent 3 with little and 1.5 with much of it.",
     .example = "much"},
    {.key  = "material",
     .form = TS_FORM_PICK,
     TS_AT(ts_bevel_gears, material),
     .choices = ts_gear_material_keys,
     .preset  = {"case-carburised MQ", "what most bevels of aircraft engines are made of, in the "
                                        "middle grade of ISO 6336-5; common practice, no source"},
     .says    = "What both gears are made of: a grade of ISO 6336-5, or a steel that is taken to "
                "meet one.",
     .example = "carburised 9310"},
    {.key  = "accuracy",
     .form = TS_FORM_TALLY,
     TS_AT(ts_bevel_gears, accuracy),
     .range   = TS_FROM(2, 11, "1"),
     .preset  = {"5", "ground bevels of aircraft engines; common practice, no source"},
     .says    = "Tolerance grade of the teeth, ISO 17485:2006.",
     .example = "5"},
    {.key = "flank roughness",
     OF_KIND(LENGTH),
     TS_AT(ts_bevel_gears, flank_roughness),
     .range   = TS_ABOVE(0.0, 1e-4, "um"),
     .preset  = {"3 um", "what grinding leaves; common practice, no source"},
     .says    = "Mean peak-to-valley roughness R_z of the flanks.",
     .example = "3 um"},
    {.key = "root roughness",
     OF_KIND(LENGTH),
     TS_AT(ts_bevel_gears, root_roughness),
     .range   = TS_ABOVE(0.0, 1e-4, "um"),
     .preset  = {"10 um", "of the test gears of ISO 6336-3 and ISO 10300-3 (from memory)"},
     .says    = "Mean peak-to-valley roughness R_z of the root fillets.",
     .example = "10 um"},
    {.key  = "run in",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_bevel_gears, run_in),
     .range   = TS_FROM(0.0, 1.0, "%"),
     .preset  = {"100 %", "flanks that have passed the acceptance run of the engine; common "
                           "practice, no source"},
     .says    = "How far the flanks are run in, 0 % as made: the integral temperature asks.",
     .example = "50 %"},
    {.key = "long life factor",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, long_life_factor),
     .range   = TS_FROM(0.5, 1.0, "1"),
     .preset  = {"0.85", "1 asks for the best of steel, make and oil; ISO 10300-2 and -3 (from "
                          "memory)"},
     .says    = "Life factors Z_NT and Y_NT at 1e10 load cycles.",
     .example = "0.85"},
    {.key = "application factor",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, application_factor),
     .range   = TS_ABOVE(0.0, 10.0, "1"),
     .preset  = {"1", "the loads of the file are taken as the peaks of each condition; common "
                       "practice, no source"},
     .says    = "Application factor K_A of ISO 10300-1: peaks of load over the loads of the file.",
     .example = "1.0"},

    /* second opinion */
    {.key = "I factor",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, I_factor),
     .range = TS_ABOVE(0.0, 1.0, "1"),
     .says  = "Geometry factor Z_I of the flanks, from the charts of ANSI/AGMA 2003; asks for the "
              "opinion of that standard.",
     .example = "0.09"},
    {.key = "J factor 1",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, J_factor_1),
     .range   = TS_ABOVE(0.0, 1.0, "1"),
     .says    = "Geometry factor Y_J of the roots of the first gear, from the same charts.",
     .example = "0.24"},
    {.key = "J factor 2",
     OF_KIND(NUMBER),
     TS_AT(ts_bevel_gears, J_factor_2),
     .range   = TS_ABOVE(0.0, 1.0, "1"),
     .says    = "The same of the second gear.",
     .example = "0.22"},
};

/* A tooth that is not deeper below its pitch cone than its mate stands above it has no clearance.
 */
static const char *judge_bevels(const void *record, const char **key, const char **expected)
{
    const ts_bevel_gears *bevels = record;
    if (!(bevels->dedendum.value <= bevels->addendum.value))
        return NULL;
    *key      = "dedendum";
    *expected = "more than `addendum`";
    return "the teeth have no clearance";
}

const ts_record_table ts_table_bevel_gears = {
    .id   = "bevel_gears",
    .name = "a bevel pair",
    .says = "Two bevel gears; the first is the one nearer to the spool.",
    TS_TABLE(ts_bevel_gears, bevel_gears_fields),
    .judge = judge_bevels,
};
