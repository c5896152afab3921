/* model/field_rate_tooth.c: what does a rate file say of one gear that is measured? */
#include "model/field.h"
#include "model/rate_file.h"

#include <stddef.h>

static const ts_field tooth_fields[] = {
    {.key  = "z",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_tooth, z),
     .range   = TS_FROM(-1e6, 1e6, "1"),
     .says    = "Teeth; negative for an internal gear, as in ISO 21771.",
     .example = "45"},
    {.key  = "m_n",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_rate_tooth, m_n),
     .range   = TS_FROM(1e-5, 0.1, "mm"),
     .says    = "Normal module.",
     .example = "2 mm"},
    {.key   = "alpha_n",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_ANGLE,
     .known = true,
     TS_AT(ts_rate_tooth, alpha_n),
     .range   = TS_FROM(0.08726646259971647 /* 5 deg */, 0.7853981633974483 /* 45 deg */, "deg"),
     .preset  = {"20 deg", "ISO 53:1998, standard basic rack"},
     .says    = "Normal pressure angle.",
     .example = "25 deg"},
    {.key   = "beta",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_ANGLE,
     .known = true,
     TS_AT(ts_rate_tooth, beta),
     .range   = TS_FROM(0.0, 1.0471975511965979 /* 60 deg */, "deg"),
     .preset  = {"0 deg", "a spur gear; common practice, no source"},
     .says    = "Helix angle, without its hand.",
     .example = "15 deg"},
    {.key   = "x",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_rate_tooth, x),
     .range   = TS_FROM(-5.0, 5.0, "1"),
     .preset  = {"0", "no profile shift; common practice, no source"},
     .says    = "Profile shift coefficient.",
     .example = "0.2"},
    {.key   = "h_aPs",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_rate_tooth, h_aPs),
     .range   = TS_ABOVE(0.0, 3.0, "1"),
     .preset  = {"1", "ISO 53:1998, table A.1 (from memory)"},
     .says    = "Addendum of the rack in modules.",
     .example = "1"},
    {.key   = "h_fPs",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_rate_tooth, h_fPs),
     .range   = TS_ABOVE(0.0, 3.0, "1"),
     .preset  = {"1.25", "ISO 53:1998, table A.1, profile A (from memory)"},
     .says    = "Dedendum of the rack in modules.",
     .example = "1.4"},
    {.key   = "k",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_rate_tooth, k),
     .range   = TS_FROM(-3.0, 3.0, "1"),
     .preset  = {"0", "the tips keep the full addendum of the rack"},
     .says    = "Tip alteration coefficient, negative where tips are shortened.",
     .example = "-0.05"},
    {.key   = "k_W",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_rate_tooth, k_W),
     .range   = TS_FROM(1, 1e6, "1"),
     .says    = "Teeth under the span; the nearest whole number to the best when left out.",
     .example = "6"},
    {.key   = "D_M",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_rate_tooth, D_M),
     .range   = TS_ABOVE(0.0, 1.0, "mm"),
     .says    = "Diameter of the pins; 1.728 (internal gears: 1.68) modules when left out.",
     .example = "3.5 mm"},
    {.key   = "E_sns",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_rate_tooth, E_sns),
     .range   = TS_FROM(-0.01, 0.01, "mm"),
     .says    = "Upper allowance of the normal tooth thickness, negative where it is thinner.",
     .example = "-0.04 mm"},
    {.key   = "E_sni",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_rate_tooth, E_sni),
     .range   = TS_FROM(-0.01, 0.01, "mm"),
     .says    = "Lower allowance of the normal tooth thickness.",
     .example = "-0.07 mm"},
};

static const char *judge_tooth(const void *record, const char **key, const char **expected)
{
    const ts_rate_tooth *tooth = record;
    *key                       = "z";
    *expected                  = "another number of teeth than 0";
    if (tooth->z.standing == TS_GIVEN && tooth->z.value == 0)
        return "a gear has teeth";
    *key      = "E_sni";
    *expected = "a lower allowance that is not above the upper one";
    if (ts_measure_known(tooth->E_sns) && ts_measure_known(tooth->E_sni) &&
        tooth->E_sni.value > tooth->E_sns.value)
        return "the lower allowance lies above the upper one";
    return NULL;
}

const ts_record_table ts_table_rate_tooth = {
    .id   = "rate_tooth",
    .name = "a tooth measurement",
    .says = "One cylindrical gear on the inspector's table; ISO 21771:2007.",
    TS_TABLE(ts_rate_tooth, tooth_fields),
    .judge = judge_tooth,
};
