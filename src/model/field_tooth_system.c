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
                "allows the teeth of both gears.",
     .example = "8 um"},
};

const ts_record_table ts_table_tooth_system = {
    .id   = "tooth_system",
    .name = "the gears of a box",
    .says = "What the cylindrical gears of a box have in common.",
    TS_TABLE(ts_tooth_system, tooth_system_fields),
};
