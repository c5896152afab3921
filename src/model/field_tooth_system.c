/* model/field_tooth_system.c: what does the file say that the gears of a box have in common? */
#include "model/drive.h"
#include "model/field.h"

#include "catalog/gear_material.h"

static const char *const hands[] = {"left", "right", NULL};

/* 20 degrees, within what a file can write: 20 deg reads as the nearest double. */
static bool is_profile_A(const ts_tooth_system *gears)
{
    return fabs(gears->pressure_angle.value - 0.3490658503988659) < 1e-9;
}

static ts_preset root_radius_preset(const void *record)
{
    if (is_profile_A(record))
        return (ts_preset){"0.38", "ISO 53:1998, basic rack profile A"};
    return (ts_preset){"0.25", "a cutter tip that suits every pressure angle to 25 deg; common "
                               "practice, no source"};
}

static ts_preset hand_preset(const void *record)
{
    const ts_tooth_system *gears = record;
    if (gears->helix_angle.value > 0.0)
        return (ts_preset){"left", "no more than a start; common practice, no source"};
    return (ts_preset){NULL, NULL};
}

#define PLAY_REASON                                                                                \
    "about the least backlash that ISO/TR 10064-2, annex A, recommends for this size, and as "     \
    "much "                                                                                        \
    "room again to make it (from memory)"

static ts_preset thickness_preset(const void *record)
{
    const ts_tooth_system *gears = record;
    if (gears->module.value > 0.00325)
        return (ts_preset){"-0.18..-0.13 mm", PLAY_REASON};
    if (gears->module.value > 0.00225)
        return (ts_preset){"-0.13..-0.09 mm", PLAY_REASON};
    return (ts_preset){"-0.1..-0.06 mm", PLAY_REASON};
}

static const ts_field temperatures_fields[] = {
    {.key    = "gears",
     .form   = TS_FORM_SPAN,
     .need   = TS_STATED,
     .kind   = TS_KIND_TEMPERATURE,
     .closed = true,
     TS_AT(ts_temperatures, gears),
     .range   = TS_FROM(173.15, 623.15, "degC"),
     .says    = "From the coldest to the warmest that the gears ever are while they turn.",
     .example = "-40..120 degC"},
    {.key    = "casing above gears",
     .form   = TS_FORM_SPAN,
     .need   = TS_STATED,
     .kind   = TS_KIND_TEMPERATURE_DIFFERENCE,
     .closed = true,
     TS_AT(ts_temperatures, casing),
     .range   = TS_FROM(-300.0, 300.0, "K"),
     .says    = "By how much the casing is warmer than its gears, least and most; below 0 where it "
                "is cooler.",
     .example = "-30..0 K"},
    {.key  = "expansion of gears",
     .form = TS_FORM_MEASURE,
     .need = TS_STATED,
     .kind = TS_KIND_THERMAL_EXPANSION,
     TS_AT(ts_temperatures, gears_expansion),
     .range   = TS_FROM(0.0, 1e-4, "ppm/K"),
     .says    = "Linear expansion of the gears, the mean over that range.",
     .example = "11.5 ppm/K"},
    {.key  = "expansion of casing",
     .form = TS_FORM_MEASURE,
     .need = TS_STATED,
     .kind = TS_KIND_THERMAL_EXPANSION,
     TS_AT(ts_temperatures, casing_expansion),
     .range   = TS_FROM(0.0, 1e-4, "ppm/K"),
     .says    = "Linear expansion of the casing that holds their axes.",
     .example = "23 ppm/K"},
};

const ts_record_table ts_table_temperatures = {
    .id   = "temperatures",
    .name = "the temperatures of the gears",
    .says = "How warm the gears of a box and its casing become: what backlash is left then.",
    TS_TABLE(ts_temperatures, temperatures_fields),
};

const char *const ts_lead_keys[] = {
    "straight", "crowned", "crowned well", "corrected", "corrected, crowned", "end relief", NULL};

static const ts_field tooth_system_fields[] = {
    {.key  = "module",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tooth_system, module),
     .range   = TS_ABOVE(0.0, 0.1, "mm"),
     .says    = "Normal module m_n of every gear that gives none of its own.",
     .example = "2.0 mm"},
    {.key  = "pressure angle",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ANGLE,
     TS_AT(ts_tooth_system, pressure_angle),
     .range   = TS_FROM(0.17453292519943295769, 0.61086523819801535192, "deg"), /* 10 to 35 deg */
     .preset  = {"20 deg", "ISO 53:1998, standard basic rack"},
     .says    = "Normal pressure angle alpha_n.",
     .example = "25 deg"},
    {.key  = "helix angle",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ANGLE,
     TS_AT(ts_tooth_system, helix_angle),
     .range   = TS_FROM(0.0, 0.78539816339744830962, "deg"), /* 45 deg */
     .preset  = {"0 deg", "spur gears; common practice, no source"},
     .says    = "Helix angle beta; 0 deg for spur gears.",
     .example = "0 deg"},
    {.key  = "hand",
     .form = TS_FORM_PICK,
     TS_AT(ts_tooth_system, hand),
     .choices   = hands,
     .preset    = {"left", "asked for by helical gears only, and no more than a start; common "
                              "practice, no source"},
     .preset_of = hand_preset,
     .says      = "Hand of helix of the box input's gear; gears in mesh alternate.",
     .example   = "left"},
    {.key  = "addendum",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, addendum),
     .range   = TS_ABOVE(0.0, 2.0, "1"),
     .preset  = {"1", "ISO 53:1998, h_aP = 1.00 m_n"},
     .says    = "Addendum of the basic rack over the module, h_aP / m_n.",
     .example = "1"},
    {.key  = "dedendum",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, dedendum),
     .range   = TS_ABOVE(0.0, 2.5, "1"),
     .preset  = {"1.25", "ISO 53:1998, h_fP = 1.25 m_n"},
     .says    = "Dedendum of the basic rack over the module, h_fP / m_n.",
     .example = "1.25"},
    {.key  = "root radius",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, root_radius),
     .range     = TS_FROM(0.0, 1.0, "1"),
     .preset    = {"0.25", "0.38 at 20 deg (ISO 53:1998, basic rack profile A); elsewhere 0.25, "
                              "common practice, no source"},
     .preset_of = root_radius_preset,
     .says      = "Root fillet radius of the basic rack over the module, rho_fP / m_n.",
     .example   = "0.38"},
    {.key    = "tooth thickness allowance",
     .form   = TS_FORM_SPAN,
     .kind   = TS_KIND_LENGTH,
     .closed = true,
     TS_AT(ts_tooth_system, thickness),
     .range     = TS_FROM(-2e-3, 2e-3, "mm"),
     .preset    = {"-0.1..-0.06 mm", "-0.1..-0.06 mm to a module of 2.25 mm, -0.13..-0.09 mm to "
                                        "3.25 mm, -0.18..-0.13 mm above: " PLAY_REASON},
     .preset_of = thickness_preset,
     .says    = "How much thicker the teeth of each gear are than without backlash, normal at the "
                "reference circle: lower to upper allowance, E_sni..E_sns (ISO/TR 10064-2).  "
                "Below 0 they are thinner.",
     .example = "-0.1..-0.06 mm"},
    {.key    = "centre distance allowance",
     .form   = TS_FORM_SPAN,
     .kind   = TS_KIND_LENGTH,
     .closed = true,
     TS_AT(ts_tooth_system, centre),
     .range   = TS_FROM(-2e-3, 2e-3, "mm"),
     .preset  = {"-0.02..0.02 mm", "js7 of ISO 286-2 between 120 and 180 mm (from memory)"},
     .says    = "By how much the axes are farther apart than without backlash, A_ai..A_ae: bores, "
                "bearings and shafts together.",
     .example = "-0.02..0.02 mm"},
    {.key  = "temperatures",
     .form = TS_FORM_RECORD,
     TS_AT(ts_tooth_system, temperatures),
     .record  = &ts_table_temperatures,
     .says    = "How warm the gears and their casing become; without the key backlash is judged as "
                "built, at 20 degC.",
     .example = "{gears: -40..120 degC, casing above gears: -30..0 K, expansion of gears: 11.5 "
                "ppm/K, expansion of casing: 23 ppm/K}"},
    {.key   = "loss",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_tooth_system, loss),
     .range   = TS_FROM(0.0, 0.2, "%"),
     .preset  = {"0.5 %", "of the transmitted power; common practice, no source"},
     .says    = "Share of the transmitted power that is lost in each mesh.",
     .example = "0.5 %"},
    {.key  = "material",
     .form = TS_FORM_PICK,
     TS_AT(ts_tooth_system, material),
     .choices = ts_gear_material_keys,
     .preset  = {"case-carburised MQ", "what most gears of aircraft engines are made of, in the "
                                        "middle grade of ISO 6336-5; common practice, no source"},
     .says    = "What the gears are made of: a grade of ISO 6336-5, or a steel that is taken to "
                "meet one.",
     .example = "carburised 9310"},
    {.key  = "accuracy",
     .form = TS_FORM_TALLY,
     TS_AT(ts_tooth_system, accuracy),
     .range   = TS_FROM(1, 11, "1"),
     .preset  = {"5", "ground gears of aircraft engines; common practice, no source"},
     .says    = "Tolerance class of the flanks, ISO 1328-1:2013.",
     .example = "5"},
    {.key  = "flank roughness",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tooth_system, flank_roughness),
     .range   = TS_ABOVE(0.0, 1e-4, "um"),
     .preset  = {"3 um", "of the test gears of ISO 6336-2, clause 12 (from memory), and what "
                          "grinding leaves"},
     .says    = "Mean peak-to-valley roughness R_z of the flanks.",
     .example = "3 um"},
    {.key  = "root roughness",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tooth_system, root_roughness),
     .range   = TS_ABOVE(0.0, 1e-4, "um"),
     .preset  = {"10 um", "of the test gears of ISO 6336-3, clause 14 (from memory)"},
     .says    = "Mean peak-to-valley roughness R_z of the root fillets.",
     .example = "10 um"},
    {.key  = "run in",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, run_in),
     .range   = TS_FROM(0.0, 1.0, "%"),
     .preset  = {"100 %", "flanks that have passed the acceptance run of the engine; common "
                           "practice, no source"},
     .says    = "How far the flanks are run in, 0 % as made: the integral temperature asks.",
     .example = "50 %"},
    {.key  = "tip relief",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tooth_system, tip_relief),
     .range   = TS_FROM(0.0, 1e-3, "um"),
     .preset  = {"0 um", "none but what running in wears off; common practice, no source"},
     .says    = "Tip relief C_a of both gears of a mesh; read up to class 5.",
     .example = "15 um"},
    {.key  = "long life factor",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, long_life_factor),
     .range   = TS_FROM(0.5, 1.0, "1"),
     .preset  = {"0.85",
                 "1 asks for the best of steel, make and oil; ISO 6336-2 and -3 (from memory)"},
     .says    = "Life factors Z_NT and Y_NT at 1e10 load cycles.",
     .example = "0.85"},
    {.key  = "application factor",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, application_factor),
     .range   = TS_ABOVE(0.0, 10.0, "1"),
     .preset  = {"1", "the loads of the file are taken as the peaks of each condition; common "
                       "practice, no source"},
     .says    = "Application factor K_A of ISO 6336-1: peaks of load over the loads of the file.",
     .example = "1.0"},
    {.key  = "face load factor",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_tooth_system, face_load_factor),
     .range   = TS_FROM(1.0, 20.0, "1"),
     .says    = "Face load factor K_Hbeta of ISO 6336-1, where it is known from elsewhere; without "
                "the key it follows from `misalignment`.",
     .example = "1.2"},
    {.key  = "misalignment",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tooth_system, misalignment),
     .range   = TS_FROM(0.0, 0.001, "um"),
     .says    = "Misalignment F_betax of the teeth over the face width before running in, of "
                "shafts, bearings, bores and teeth together; without the key what `accuracy` "
                "allows the teeth of both gears, and how far the shafts give way.",
     .example = "8 um"},
    {.key  = "lead",
     .form = TS_FORM_PICK,
     TS_AT(ts_tooth_system, lead),
     .choices = ts_lead_keys,
     .preset  = {"straight", "no crowning or correction is spoken of"},
     .says = "How the lead is made to suit: which share of deflection and of making it leaves as "
             "misalignment (ISO 6336-1, 7.5), where that follows from both.",
     .example = "crowned"},
};

const ts_record_table ts_table_tooth_system = {
    .id   = "tooth_system",
    .name = "the gears of a box",
    .says = "What the cylindrical gears of a box have in common.",
    TS_TABLE(ts_tooth_system, tooth_system_fields),
};
