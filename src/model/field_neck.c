/* model/field_neck.c: what does the file say of a shear neck? */
#include "model/drive.h"
#include "model/field.h"

#include "catalog/metal.h"

static const char *const breakings[] = {"tough", "brittle", NULL};
static const char *const fragments[] = {"retained", "loose", NULL};

/* Nothing of a neck is assumed where no neck is designed. */
static ts_preset where_designed(const void *record, ts_preset preset)
{
    const ts_neck *neck = record;
    return neck->diameter.standing == TS_GIVEN ? preset : (ts_preset){NULL, NULL};
}

/* The manual shows the default, the reader asks the function. */
#define PRESET(name, ...)                                                                          \
    static const ts_preset name##_preset = {__VA_ARGS__};                                          \
    static ts_preset       name##_of(const void *record)                                           \
    {                                                                                              \
        return where_designed(record, name##_preset);                                              \
    }
#define DEFAULT(name, ...) .preset = {__VA_ARGS__}, .preset_of = name##_of

#define TOLERANCE                                                                                  \
    "0.02 mm", "plus or minus, ground; where a diameter is told; common practice, no source"
#define BORE "0 mm", "a neck of which no bore is told is taken as solid; where a diameter is told"
#define METAL                                                                                      \
    "low-alloy 160 ksi", "a tough steel of which shafts are made; where a diameter is told; "      \
                         "common practice, no source"
#define SCATTER                                                                                    \
    "3 %", "of the tensile strength of one specification from heat to heat; where a diameter is "  \
           "told; common practice, no source"
#define SHEAR                                                                                      \
    "0.58..0.62", "0.60 in design values of low-alloy steels, MMPDS-01 (2003), table "             \
                  "2.3.1.0(g2); its breadth: common practice, no source; where a diameter is told"
#define YIELDING                                                                                   \
    "0..1", "from the outside alone to the whole section: nothing is known of it; where a "        \
            "diameter is told"
#define TEMPERATURE                                                                                \
    "-40..120 degC", "cold oil to hot box; where a diameter is told; common practice, no source"
#define BREAKING "tough", "a tough steel does not feel the notch; where a diameter is told"
#define RIPPLE                                                                                     \
    "5 %", "of the steady torque, once a turn; where a diameter is told; common practice, no "     \
           "source"
#define OVERLOADS "1", "once a start; where a diameter is told; common practice, no source"
#define FRAGMENTS                                                                                  \
    "retained", "a stop behind the neck keeps both ends, as the public notes on SAE AS972 ask; "   \
                "where a diameter is told"

PRESET(tolerance, TOLERANCE)
PRESET(bore, BORE)
PRESET(metal, METAL)
PRESET(scatter, SCATTER)
PRESET(shear, SHEAR)
PRESET(yielding, YIELDING)
PRESET(temperature, TEMPERATURE)
PRESET(breaking, BREAKING)
PRESET(ripple, RIPPLE)
PRESET(overloads, OVERLOADS)
PRESET(fragments, FRAGMENTS)

static const ts_field neck_fields[] = {
    {.key    = "breaks",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_TORQUE,
     TS_AT(ts_neck, breaks),
     .range   = TS_ABOVE(0.0, 1e6, "N.m"),
     .says    = "The band in which it breaks, from the least torque to the greatest; a neck needs "
                "it or `diameter`.  With both, the computed band must lie inside of this one.",
     .example = "180..220 N.m"},
    {.key   = "diameter",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, diameter),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Its diameter at the root; the band then follows from metal, size and temperature.",
     .example = "9.5 mm"},
    {.key   = "tolerance",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, tolerance),
     .range = TS_FROM(0.0, 0.01, "mm"),
     DEFAULT(tolerance, TOLERANCE),
     .says    = "The diameter lies within plus or minus this.",
     .example = "0.02 mm"},
    {.key   = "bore",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, bore),
     .range = TS_FROM(0.0, 0.5, "mm"),
     DEFAULT(bore, BORE),
     .says    = "The diameter of its bore.",
     .example = "4 mm"},
    {.key   = "shank",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, shank),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "The outside diameter of the shaft beside it; with `notch radius` it gives the "
                "notch factor.",
     .example = "16 mm"},
    {.key   = "notch radius",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, notch_radius),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "The radius of the groove.",
     .example = "3 mm"},
    {.key   = "blank",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, blank),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "How thick its blank was when it was heat-treated: a thicker one than the 16 mm of "
                "the test hardens less at its heart (DIN 743-2, K_1).  Without the key as thick as "
                "the shank, or as the neck; a `strength` that is told is that of the neck itself.",
     .example = "40 mm"},
    {.key  = "metal",
     .form = TS_FORM_PICK,
     TS_AT(ts_neck, metal),
     .choices = ts_metal_keys,
     DEFAULT(metal, METAL),
     .says    = "What it is made of; the table says what its strength rests on.",
     .example = "low-alloy 160 ksi"},
    {.key    = "strength",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_STRESS,
     TS_AT(ts_neck, strength),
     .range   = TS_ABOVE(0.0, 1e10, "MPa"),
     .says    = "Its tensile strength from the least to the greatest, as tested; without the key "
                "it follows from `metal` and `scatter`.",
     .example = "1110..1190 MPa"},
    {.key   = "scatter",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_NUMBER,
     TS_AT(ts_neck, scatter),
     .range = TS_ABOVE(0.0, 0.2, "1"),
     DEFAULT(scatter, SCATTER),
     .says    = "Coefficient of variation of the tensile strength: a design minimum lies 2.33 of "
                "it below the mean, the greatest strength 3 of it above.",
     .example = "3 %"},
    {.key    = "shear ratio",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_NUMBER,
     TS_AT(ts_neck, shear_ratio),
     .range = TS_ABOVE(0.0, 1.0, "1"),
     DEFAULT(shear, SHEAR),
     .says    = "Shear strength over tensile strength.",
     .example = "0.58..0.62"},
    {.key    = "yielding",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_NUMBER,
     TS_AT(ts_neck, yielding),
     .range = TS_FROM(0.0, 1.0, "1"),
     DEFAULT(yielding, YIELDING),
     .says = "How much of the section yields before it breaks: 0 the outside alone, 1 all of it.",
     .example = "0.7..1"},
    {.key    = "temperature",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_TEMPERATURE,
     TS_AT(ts_neck, temperature),
     .range = TS_FROM(213.15, 473.15, "degC"),
     DEFAULT(temperature, TEMPERATURE),
     .says    = "Between which temperatures it works.",
     .example = "-40..120 degC"},
    {.key  = "breaking",
     .form = TS_FORM_PICK,
     TS_AT(ts_neck, breaking),
     .choices = breakings,
     DEFAULT(breaking, BREAKING),
     .says    = "Whether it yields before it breaks; a brittle neck feels its notch.",
     .example = "tough"},
    {.key   = "ripple",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_NUMBER,
     TS_AT(ts_neck, ripple),
     .range = TS_FROM(0.0, 1.0, "1"),
     DEFAULT(ripple, RIPPLE),
     .says = "Amplitude of its torque over the steady torque, for its fatigue; as often a turn as "
             "the ripple of its accessory, else once.",
     .example = "5 %"},
    {.key   = "overloads",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_NUMBER,
     TS_AT(ts_neck, overloads),
     .range = TS_FROM(0.0, 1e6, "1"),
     DEFAULT(overloads, OVERLOADS),
     .says    = "How many overloads or surges a start brings, for its fatigue.",
     .example = "2"},
    {.key   = "from tip",
     .form  = TS_FORM_MEASURE,
     .known = true,
     .kind  = TS_KIND_LENGTH,
     TS_AT(ts_neck, from_tip),
     .range   = TS_FROM(0.0, 2.0, "mm"),
     .says    = "From the tip of the splined shaft to the neck.",
     .example = "45 mm"},
    {.key  = "fragments",
     .form = TS_FORM_PICK,
     TS_AT(ts_neck, fragments),
     .choices = fragments,
     DEFAULT(fragments, FRAGMENTS),
     .says    = "Whether both ends stay where they are when it has broken.",
     .example = "retained"},
    {.key  = "why",
     .form = TS_FORM_WORD,
     TS_AT(ts_neck, why),
     .says    = "The reason for a neck where the rules allow none.",
     .example = "asked for by the pump's maker"},
};

static bool told(ts_standing standing)
{
    return standing == TS_GIVEN;
}

static const char *judge_neck(const void *record, const char **key, const char **expected)
{
    const ts_neck *neck = record;

    *key      = "breaks";
    *expected = "a break band, such as 180..220 N.m, or a `diameter`";
    if (neck->breaks.standing == TS_ABSENT && !told(neck->diameter.standing))
        return "a neck needs the key `breaks` or the key `diameter`";
    if (!told(neck->diameter.standing))
        return NULL;
    *key      = "bore";
    *expected = "a bore below the least diameter";
    if (neck->bore.value >= neck->diameter.value - neck->tolerance.value)
        return "the bore leaves no neck";
    *key      = "shank";
    *expected = "a shank wider than the neck";
    if (told(neck->shank.standing) && neck->shank.value <= neck->diameter.value)
        return "the shaft beside the neck is no wider than the neck";
    *key      = "blank";
    *expected = "a blank as thick as the neck at least";
    if (told(neck->blank.standing) && neck->blank.value < neck->diameter.value)
        return "the neck cannot be turned from its blank";
    return NULL;
}

const ts_record_table ts_table_neck = {
    .id   = "neck",
    .name = "a neck",
    .says = "A place that is meant to break before anything dearer does.  State its break band, or "
            "design it: then the band follows from metal, diameter, tolerance and temperature.",
    TS_TABLE(ts_neck, neck_fields),
    .judge = judge_neck,
};
