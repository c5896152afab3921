/* model/field_bevel.c: what does the file say of a pair of bevel gears? */
#include "model/drive.h"
#include "model/field.h"

static const char *const hands[] = {"left", "right", NULL};
static const char *const sides[] = {"front", "rear", NULL};

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
};

const ts_record_table ts_table_bevel_gears = {
    .id   = "bevel_gears",
    .name = "a bevel pair",
    .says = "Two bevel gears; the first is the one nearer to the spool.",
    TS_TABLE(ts_bevel_gears, bevel_gears_fields),
};
