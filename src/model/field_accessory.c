/* model/field_accessory.c: what does the file say of an accessory? */
#include "model/curve_judge.h"
#include "model/drive.h"
#include "model/field.h"

static const char *const purposes[] = {"engine", "aircraft", "start", NULL};
static const char *const turns[]    = {"cw", "ccw", "either", NULL};
static const char *const clutches[] = {"none", "overrunning", NULL};

static const char *const shocks[] = {"uniform", "light", "intermittent", "heavy", NULL};

/* It matters where a spline is named; a pump is the commonest unit on a pad. */
static ts_preset shock_preset(const void *record)
{
    const ts_accessory *accessory = record;
    if (accessory->spline.text == NULL)
        return (ts_preset){NULL, NULL};
    return (ts_preset){"light", "as a pump; Machinery's Handbook, involute splines"};
}

/* A starter that stays coupled would be driven far beyond its cut-out speed. */
static ts_preset clutch_preset(const void *record)
{
    const ts_accessory *accessory = record;
    if (accessory->purpose.standing == TS_GIVEN && accessory->purpose.value == TS_FOR_START)
        return (ts_preset){"overrunning", "what serves the start only is let go when the engine "
                                          "outruns it; common practice, no source"};
    return (ts_preset){"none", "an accessory stays coupled; common practice, no source"};
}

static const ts_field accessory_fields[] = {
    {.key  = "for",
     .form = TS_FORM_PICK,
     .need = TS_REQUIRED,
     TS_AT(ts_accessory, purpose),
     .choices = purposes,
     .says    = "Whom it serves: the engine, which cannot run without it; the aircraft; or the "
                "start.",
     .example = "engine"},
    {.key  = "turns",
     .form = TS_FORM_PICK,
     .need = TS_STATED,
     TS_AT(ts_accessory, turns),
     .choices = turns,
     .says    = "Which way its pad must turn, seen by somebody who faces the pad.",
     .example = "cw"},
    {.key  = "speed",
     .form = TS_FORM_SPAN_BY_CONDITION,
     .kind = TS_KIND_ROTATIONAL_SPEED,
     TS_AT(ts_accessory, speed),
     .range = TS_FROM(0.0, 20943.951023931954923, "rpm"), /* 200 000 rpm */
     .says  = "The pad speed that it needs, in each condition; `always` stands for every condition "
              "that is not named.",
     .example = "{take-off: 6600..7300 rpm, always: ..7600 rpm}"},
    {.key  = "power",
     .form = TS_FORM_BY_CONDITION,
     .kind = TS_KIND_POWER,
     TS_AT(ts_accessory, power),
     .range   = TS_FROM(0.0, 1e8, "kW"),
     .says    = "The power that it absorbs in each condition.  In a condition that is not named it "
                "keeps the torque of the named one nearest in spool speed, which is an "
                "assumption.",
     .example = "{ground idle: 4.5 kW, take-off: 13 kW}"},
    {.key  = "drives",
     .form = TS_FORM_BY_CONDITION,
     .kind = TS_KIND_TORQUE,
     TS_AT(ts_accessory, drives),
     .range   = TS_FROM(0.0, 1e6, "N.m"),
     .says    = "The torque that it puts into its pad in each condition.",
     .example = "{crank: 220 N.m, light-off: 180 N.m}"},
    {.key  = "torque",
     .form = TS_FORM_RECORD,
     TS_AT(ts_accessory, torque),
     .record  = &ts_table_torque_limits,
     .says    = "What torques its drive must bear beyond the power above.",
     .example = "{overload: 34 N.m for 5 s, static: 130 N.m}"},
    {.key  = "body",
     .form = TS_FORM_RECORD,
     TS_AT(ts_accessory, body),
     .record  = &ts_table_body,
     .says    = "The cylinder about the pad axis that its body fills.",
     .example = "{radius: 72 mm, length: 190 mm}"},
    {.key  = "mass",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_MASS,
     TS_AT(ts_accessory, mass),
     .range   = TS_ABOVE(0.0, 2000.0, "kg"),
     .says    = "Its mass with its fluids.",
     .example = "9.4 kg"},
    {.key  = "overhang",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_accessory, overhang),
     .range   = TS_FROM(0.0, 3.0, "mm"),
     .says    = "From the pad face to its centre of mass.",
     .example = "84 mm"},
    {.key  = "inertia",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_INERTIA,
     TS_AT(ts_accessory, inertia),
     .range   = TS_FROM(0.0, 1000.0, "kg.m2"),
     .says    = "The moment of inertia that its pad feels.",
     .example = "0.0021 kg.m2"},
    {.key  = "ripple",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_accessory, ripple),
     .range   = TS_FROM(0.0, 2.0, "%"),
     .says    = "By how much its torque swings about its mean, as a share of it; without the key "
                "`twist` takes 5 %, which it says (common practice, no source).",
     .example = "8 %"},
    {.key  = "ripple order",
     .form = TS_FORM_TALLY,
     TS_AT(ts_accessory, ripple_order),
     .range   = TS_FROM(1, 200, "1"),
     .says    = "How many times a turn of its pad its torque swings, as the pistons of a pump; "
                "without the key once.",
     .example = "9"},
    {.key  = "clutch",
     .form = TS_FORM_PICK,
     TS_AT(ts_accessory, clutch),
     .choices   = clutches,
     .preset    = {"none", "an accessory stays coupled, and one `for: start` has an overrunning "
                              "clutch; common practice, no source"},
     .preset_of = clutch_preset,
     .says      = "How it is coupled to its pad.",
     .example   = "overrunning"},
    {.key  = "curve",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_accessory, curve, curve_count),
     .most    = 64,
     .record  = &ts_table_torque_point,
     .says    = "Of a starter: the torque that it puts into its pad, against the speed of the pad; "
                "without it the points of `drives` are joined by lines.",
     .example = "[{speed: 0 rpm, torque: 260 N.m}, {speed: 9000 rpm, torque: 0 N.m}]"},
    {.key  = "neck",
     .form = TS_FORM_RECORD,
     TS_AT(ts_accessory, neck),
     .record  = &ts_table_neck,
     .says    = "The shear neck of its drive shaft; without the key it has none.",
     .example = "{breaks: 180..220 N.m}"},
    {.key  = "spline",
     .form = TS_FORM_WORD,
     TS_AT(ts_accessory, spline),
     .says    = "The public standard number of its pad and spline.",
     .example = "B92.1 24T 16/32"},
    {.key   = "spline length",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_accessory, spline_length),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Length of that spline that is engaged; without it 0.93 of its pitch diameter is "
                "taken.",
     .example = "20 mm"},
    {.key   = "sleeve",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_accessory, sleeve),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Outside diameter of the sleeve about that spline; without it 1.35 of its major "
                "diameter is taken.",
     .example = "60 mm"},
    {.key  = "shock",
     .form = TS_FORM_PICK,
     TS_AT(ts_accessory, shock),
     .choices   = shocks,
     .preset_of = shock_preset,
     .says      = "How it loads that spline: evenly as a generator, lightly as a pump, by fits and "
                  "starts as a pump that actuates, or heavily.",
     .example   = "uniform"},
    {.key  = "serves",
     .form = TS_FORM_WORD,
     TS_AT(ts_accessory, serves),
     .says    = "What it serves, in your words.",
     .example = "engine fuel"},
    {.key  = "pumps",
     .form = TS_FORM_RECORD,
     TS_AT(ts_accessory, pumps),
     .record  = &ts_table_pumps,
     .says    = "Of an oil pump pack: its elements, and where they draw from.",
     .example = "{flow: 24 L/min, sumps: {gearbox: {share: 100 %, length: 180 mm, width: 90 mm, "
                "height: 60 mm, depth: 20 mm, scavenge: {fore: {rearward: 30 mm}}}}}"},
    {.key  = "separator",
     .form = TS_FORM_RECORD,
     TS_AT(ts_accessory, separator),
     .record  = &ts_table_separator,
     .says    = "Of a breather: its rotor.",
     .example = "{air: 600 L/min, radius: 40 mm, bore: 24 mm, length: 50 mm}"},
};

static const char *judge_accessory(const void *record, const char **key, const char **expected)
{
    const ts_accessory *accessory = record;

    return ts_curve_rises(accessory->curve, accessory->curve_count)
               ? NULL
               : ts_curve_falls("curve", key, expected);
}

const ts_record_table ts_table_accessory = {
    .id   = "accessory",
    .name = "an accessory",
    .says = "One accessory and its demands on the pad.",
    TS_TABLE(ts_accessory, accessory_fields),
    .judge = judge_accessory,
};

static const ts_field torque_limits_fields[] = {
    {.key  = "overload",
     .form = TS_FORM_OVERLOAD,
     TS_AT(ts_torque_limits, overload),
     .range   = TS_ABOVE(0.0, 1e6, "N.m"),
     .says    = "A torque and for how long it may last.",
     .example = "34 N.m for 5 s"},
    {.key  = "static",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TORQUE,
     TS_AT(ts_torque_limits, statically),
     .range   = TS_ABOVE(0.0, 1e6, "N.m"),
     .says    = "The torque that its drive must hold without yielding.",
     .example = "130 N.m"},
};

const ts_record_table ts_table_torque_limits = {
    .id   = "torque_limits",
    .name = "the torque of an accessory",
    .says = "Torques beyond the continuous one.",
    TS_TABLE(ts_torque_limits, torque_limits_fields),
};

static const ts_field body_fields[] = {
    {.key  = "radius",
     .form = TS_FORM_MEASURE,
     .need = TS_STATED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_body, radius),
     .range   = TS_ABOVE(0.0, 2.0, "mm"),
     .says    = "Of the smallest cylinder about the pad axis that holds the body.",
     .example = "72 mm"},
    {.key  = "length",
     .form = TS_FORM_MEASURE,
     .need = TS_STATED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_body, length),
     .range   = TS_ABOVE(0.0, 3.0, "mm"),
     .says    = "From the pad face to the far end of the body.",
     .example = "190 mm"},
};

const ts_record_table ts_table_body = {
    .id   = "body",
    .name = "the body of an accessory",
    .says = "The room that an accessory takes.",
    TS_TABLE(ts_body, body_fields),
};
