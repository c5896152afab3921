/* model/field_separator.c: what does the file say of the rotor of a breather? */
#include "model/drive.h"
#include "model/field_where_told.h"

/* Nothing of it is assumed where none is told. */
static ts_preset where_told(const void *record, ts_preset preset)
{
    const ts_separator *separator = record;
    return separator->air.standing != TS_ABSENT ? preset : (ts_preset){NULL, NULL};
}

#define CHAMBER "1.1 bar(a)", "a vented gearbox at ground level; common practice, no source"
#define DROPLET "3 um", "finer drops leave as smoke; common practice, no source"
#define DROP    "0.15 bar", "that seals of bearing chambers bear; common practice, no source"

PRESET(chamber, CHAMBER)
PRESET(droplet, DROPLET)
PRESET(drop, DROP)

static const ts_field separator_fields[] = {
    {.key = "air",
     OF_KIND(VOLUME_FLOW),
     .need = TS_STATED,
     TS_AT(ts_separator, air),
     .range   = TS_FROM(0.0, 10.0, "L/min"),
     .says    = "Air that leaves through it, at the pressure of its chamber.",
     .example = "600 L/min"},
    {.key  = "air at",
     .form = TS_FORM_BY_CONDITION,
     .kind = TS_KIND_VOLUME_FLOW,
     TS_AT(ts_separator, air_at),
     .range   = TS_FROM(0.0, 10.0, "L/min"),
     .says    = "The same in single conditions, where it is not `air`.",
     .example = "{crank: 20 L/min, ground idle: 250 L/min}"},
    {.key = "radius",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_separator, radius),
     .range   = TS_ABOVE(0.0, 1.0, "mm"),
     .says    = "Of the rotor, where the air enters it.",
     .example = "40 mm"},
    {.key = "bore",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_separator, bore),
     .range   = TS_ABOVE(0.0, 1.0, "mm"),
     .says    = "Diameter of the hollow shaft through which the air leaves.",
     .example = "24 mm"},
    {.key = "length",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_separator, length),
     .range   = TS_ABOVE(0.0, 2.0, "mm"),
     .says    = "Of the rotor, over which the air enters.",
     .example = "50 mm"},
    {.key = "chamber",
     OF_KIND(PRESSURE_ABSOLUTE),
     TS_AT(ts_separator, chamber),
     .range = TS_ABOVE(0.0, 1e7, "bar(a)"),
     DEFAULT(chamber, CHAMBER),
     .says    = "Pressure before it.",
     .example = "1.2 bar(a)"},
    {.key = "droplet",
     OF_KIND(LENGTH),
     TS_AT(ts_separator, droplet),
     .range = TS_ABOVE(0.0, 1e-3, "um"),
     DEFAULT(droplet, DROPLET),
     .says    = "Drops of this diameter and larger must be thrown out in every condition with "
                "`hours`.",
     .example = "2 um"},
    {.key = "drop",
     OF_KIND(STRESS),
     TS_AT(ts_separator, drop),
     .range = TS_ABOVE(0.0, 1e7, "bar"),
     DEFAULT(drop, DROP),
     .says    = "How much pressure may drop over it.",
     .example = "0.1 bar"},
};

static const char *judge_separator(const void *record, const char **key, const char **expected)
{
    const ts_separator *separator = record;

    *key      = "bore";
    *expected = "a bore below twice the `radius`";
    return separator->bore.value >= 2.0 * separator->radius.value
               ? "the bore is no narrower than the rotor"
               : NULL;
}

const ts_record_table ts_table_separator = {
    .id   = "separator",
    .name = "a separator",
    .says = "The rotor of a breather: air enters at its rim and leaves through its shaft, drops "
            "are thrown back.  Where the accessory tells no `power`, its torque is its load.",
    TS_TABLE(ts_separator, separator_fields),
    .judge = judge_separator,
};
