/* model/field_mass.c: what does the file say of weights, and of what holds them? */
#include "model/drive.h"
#include "model/field.h"

const char *const ts_shaft_metals[] = {
    "9310 core",         "low-alloy 125 ksi", "low-alloy 140 ksi",
    "low-alloy 150 ksi", "low-alloy 160 ksi", "low-alloy 180 ksi",
    "low-alloy 200 ksi", "4330v 220 ksi",     NULL};
const char *const ts_casing_metals[] = {"ze41a-t5", "we43-t6", "ez33a-t5", "a357-t61", NULL};

#define FACTOR(member, word, preset_value, why)                                                    \
    {                                                                                              \
        .key = (word), .form = TS_FORM_MEASURE, .kind = TS_KIND_NUMBER,                            \
        TS_AT(ts_weighing, member), .range = TS_FROM(0.0, 100.0, "1"),                             \
        .preset  = {preset_value, why},                                                            \
        .says    = "Load factor " word ", of accelerations of the engine in units of g.",          \
        .example = (preset_value)                                                                  \
    }

#define CRASH "emergency landing, acting by itself; 14 CFR 25.561(b)(3), from memory"

static const ts_field weighing_fields[] = {
    {.key  = "shaft metal",
     .form = TS_FORM_PICK,
     TS_AT(ts_weighing, shaft_metal),
     .choices = ts_shaft_metals,
     .preset  = {"9310 core", "shafts that are one with their gears; common practice, no source"},
     .says    = "Of the shafts, a row of data/metal.tsv.",
     .example = "9310 core"},
    {.key  = "shaft stress",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_STRESS,
     TS_AT(ts_weighing, shaft_stress),
     .range   = TS_ABOVE(0.0, 2e9, "MPa"),
     .preset  = {"100 MPa", "nominal torsion, bending left aside; common practice, no source"},
     .says    = "Nominal torsion under the highest torque, by which a box shaft gets a thickness "
                "where nothing else says one.",
     .example = "100 MPa"},
    {.key  = "casing metal",
     .form = TS_FORM_PICK,
     TS_AT(ts_weighing, casing_metal),
     .choices = ts_casing_metals,
     .preset  = {"ze41a-t5", "a magnesium alloy for castings; common practice, no source"},
     .says    = "Of the casings, a row of data/metal.tsv.",
     .example = "a357-t61"},
    {.key  = "casing wall",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_weighing, casing_wall),
     .range   = TS_ABOVE(0.0, 0.1, "mm"),
     .preset  = {"4 mm", "of a cast casing, as `arrange` takes it; common practice, no source"},
     .says    = "Mean thickness of the casings' walls.",
     .example = "4 mm"},
    {.key  = "casing gap",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_weighing, casing_gap),
     .range   = TS_FROM(0.0, 0.2, "mm"),
     .preset  = {"6 mm", "room for oil and growth; common practice, no source"},
     .says    = "Between the tips of the gears and the inside of the casing.",
     .example = "6 mm"},
    {.key  = "casing extra",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_weighing, casing_extra),
     .range   = TS_FROM(0.0, 5.0, "%"),
     .preset  = {"30 %",
                 "ribs, bosses and flanges, between none and twice that; common practice, no "
                  "source"},
     .says    = "What ribs, bosses and flanges add to the developed wall.",
     .example = "30 %"},
    FACTOR(down, "down", "6", CRASH),
    FACTOR(up, "up", "3", CRASH),
    FACTOR(forward, "forward", "9", CRASH),
    FACTOR(rearward, "rearward", "1.5", CRASH),
    FACTOR(sideward, "sideward", "3", CRASH),
};

const ts_record_table ts_table_weighing = {
    .id   = "weighing",
    .name = "the weighing",
    .says = "What is not drawn and yet weighs: metals, walls, and how hard the engine shakes.",
    TS_TABLE(ts_weighing, weighing_fields),
};

static const ts_field mount_fields[] = {
    {.key  = "clock",
     .form = TS_FORM_CLOCK,
     .need = TS_REQUIRED,
     .kind = TS_KIND_ANGLE,
     .seen = true,
     TS_AT(ts_mount, clock),
     .says    = "Where round the engine.",
     .example = "\"5:00\""},
    {.key  = "radius",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_mount, radius),
     .range   = TS_ABOVE(0.0, 10.0, "mm"),
     .says    = "How far from the engine axis.",
     .example = "330 mm"},
    {.key  = "aft",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_mount, aft),
     .range   = TS_FROM(-10.0, 10.0, "mm"),
     .says    = "How far rearward of the radial shaft's axis.",
     .example = "-35 mm"},
};

const ts_record_table ts_table_mount = {
    .id   = "mount",
    .name = "a mount",
    .says = "A point on which a box stands.",
    TS_TABLE(ts_mount, mount_fields),
};
