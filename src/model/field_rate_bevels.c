/* model/field_rate_bevels.c: what does a rate file say of a bevel pair? */
#include "model/field_rate_parts.h"

#define MEASURE(of)                TS_RATE_MEASURE(of)
#define OF_BOTH(name, member, ...) TS_RATE_OF_BOTH(ts_rate_bevels, name, member, __VA_ARGS__)

/* In the order of ts_bevel_taper and ts_bevel_pattern. */
static const char *const tapers[] = {"standard", "uniform", "slot width", "tilted root line", NULL};
static const char *const patterns[] = {"each pair, full load", "each pair, light load",
                                       "sample pair", NULL};

static const ts_field bevel_fields[] = {
    {.key  = "z_1",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_bevels, gear[0].z),
     .range   = TS_FROM(1, 1e6, "1"),
     .says    = "Teeth of gear 1.",
     .example = "37"},
    {.key  = "z_2",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_bevels, gear[1].z),
     .range   = TS_FROM(1, 1e6, "1"),
     .says    = "Teeth of gear 2.",
     .example = "41"},
    {.key  = "m_et",
     .need = TS_REQUIRED,
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_bevels, m_et),
     .range   = TS_FROM(1e-5, 0.1, "mm"),
     .says    = "Outer transverse module.",
     .example = "2.5 mm"},
    {.key = "Sigma",
     MEASURE(TS_KIND_ANGLE),
     TS_AT(ts_rate_bevels, Sigma),
     .range   = TS_FROM(0.17453292519943295 /* 10 deg */, 2.9670597283903604 /* 170 deg */, "deg"),
     .preset  = {"90 deg", "crossing at a right angle; common practice, no source"},
     .says    = "Shaft angle.",
     .example = "90 deg"},
    {.key = "alpha_n",
     MEASURE(TS_KIND_ANGLE),
     TS_AT(ts_rate_bevels, alpha_n),
     .range   = TS_FROM(0.17453292519943295 /* 10 deg */, 0.6108652381980153 /* 35 deg */, "deg"),
     .preset  = {"20 deg", "ISO 23509:2016, annex C (from memory)"},
     .says    = "Normal pressure angle.",
     .example = "20 deg"},
    {.key = "beta_m",
     MEASURE(TS_KIND_ANGLE),
     TS_AT(ts_rate_bevels, beta_m),
     .range   = TS_FROM(0.0, 1.0471975511965979 /* 60 deg */, "deg"),
     .preset  = {"0 deg", "straight or zerol teeth; common practice, no source"},
     .says    = "Mean spiral angle.",
     .example = "35 deg"},
    {.key  = "b",
     .need = TS_REQUIRED,
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_bevels, b),
     .range   = TS_ABOVE(0.0, 2.0, "mm"),
     .says    = "Face width of both gears.",
     .example = "18 mm"},

    /* teeth */
    {.key  = "taper",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_bevels, taper),
     .choices = tapers,
     .preset  = {"standard", "root lines that meet at the apex; common practice, no source"},
     .says    = "How the depth of the teeth changes along the face.",
     .example = "uniform"},
    {.key = "k_hap",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, k_hap),
     .range = TS_ABOVE(0.0, 5.0, "1"),
     .says  = "Addendum factor of the basic crown gear; with the next three, or none of them: then "
              "those of ISO 23509, annex C.",
     .example = "1"},
    {.key = "k_hfp",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, k_hfp),
     .range   = TS_ABOVE(0.0, 5.0, "1"),
     .says    = "Dedendum factor of the basic crown gear.",
     .example = "1.25"},
    {.key = "x_hm1",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, x_hm1),
     .range   = TS_FROM(-2.0, 2.0, "1"),
     .says    = "Profile shift of gear 1; gear 2 has its negative.",
     .example = "0.2"},
    {.key = "x_smn",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, x_smn),
     .range   = TS_FROM(-1.0, 1.0, "1"),
     .says    = "Thickness modification of gear 1; gear 2 has its negative.",
     .example = "0.03"},
    {.key = "j_mn",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_bevels, j_mn),
     .range   = TS_FROM(0.0, 0.01, "mm"),
     .preset  = {"0 mm", "teeth without play; common practice, no source"},
     .says    = "Normal backlash in the middle of the face.",
     .example = "0.1 mm"},
    {.key = "r_c0",
     MEASURE(TS_KIND_LENGTH),
     TS_AT(ts_rate_bevels, r_c0),
     .range   = TS_ABOVE(0.0, 2.0, "mm"),
     .says    = "Mean radius of the cutter; asked of spiral teeth with slot width taper.",
     .example = "76.2 mm"},

    /* load capacity */
    TS_RATE_LOAD_FIELDS(ts_rate_bevels, "F_mt"),
    TS_RATE_STEEL_FIELDS(ts_rate_bevels),
    OF_BOTH("accuracy ", accuracy, .form = TS_FORM_TALLY, .known = true,
            .range = TS_FROM(2, 11, "1"), .says = "Accuracy grade of ISO 17485.", .example = "5"),
    OF_BOTH("f_pt", f_pt, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.001, "um"),
            .says    = "Single pitch deviation; else the tolerance of its grade.",
            .example = "6.5 um"),
    OF_BOTH("rho_a0", rho_a0, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.1, "mm"),
            .says = "Edge radius of the cutter.", .example = "0.6 mm"),
    OF_BOTH("s_pr", s_pr, MEASURE(TS_KIND_LENGTH), .range = TS_FROM(0.0, 0.01, "mm"),
            .preset = {"0 mm", "no protuberance is spoken of"},
            .says = "Protuberance that is left after grinding.", .example = "0.05 mm"),
    OF_BOTH("overhung ", overhung, .form = TS_FORM_PICK, .choices = ts_rate_answers,
            .preset = {"no", "bearings on both sides; no more than a start"},
            .says = "Does the gear have bearings on one side only?", .example = "yes"),
    {.key  = "pattern",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_bevels, pattern),
     .choices = patterns,
     .preset  = {"sample pair", "the contact pattern of a sample; on the safe side"},
     .says    = "How the contact pattern was looked after.",
     .example = "each pair, full load"},
    {.key = "b_veff share",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, b_veff_share),
     .range   = TS_ABOVE(0.0, 1.0, "1"),
     .preset  = {"0.85", "usual under load; ISO 10300-1:2014, annex A (from memory)"},
     .says    = "Length of the contact pattern over the face width.",
     .example = "0.9"},
    {.key = "e",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, e),
     .range   = TS_ABOVE(0.0, 10.0, "1"),
     .preset  = {"3", "little profile crowning; ISO 10300-1:2014, annex A (from memory)"},
     .says    = "Exponent of the peak load over the path of contact: 3 with little, 1.5 with much "
                "profile crowning.",
     .example = "1.5"},
    {.key = "Z_K",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, Z_K),
     .range   = TS_ABOVE(0.0, 2.0, "1"),
     .preset  = {"0.85", "bevel gears against tests; ISO 10300-2:2014, 6.4.5 (from memory)"},
     .says    = "Bevel factor.",
     .example = "0.85"},

    /* second opinion, ANSI/AGMA 2003 */
    {.key = "Z_I",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, Z_I),
     .range   = TS_ABOVE(0.0, 1.0, "1"),
     .says    = "Geometry factor of the flank, from the charts of ANSI/AGMA 2003; asks for its "
                "opinion.",
     .example = "0.09"},
    OF_BOTH("Y_J", Y_J, MEASURE(TS_KIND_NUMBER), .range = TS_ABOVE(0.0, 1.0, "1"),
            .says    = "Geometry factor of the root, from the charts of ANSI/AGMA 2003.",
            .example = "0.24"),
    {.key = "A_v",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, A_v),
     .range   = TS_FROM(1.0, 20.0, "1"),
     .says    = "Transmission accuracy of ANSI/AGMA 2003.",
     .example = "6"},
    {.key  = "crowned",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_bevels, crowned),
     .choices = ts_rate_answers,
     .preset  = {"yes", "bevel teeth are crowned; common practice, no source"},
     .says    = "Are the teeth crowned?",
     .example = "yes"},
    {.key = "R",
     MEASURE(TS_KIND_NUMBER),
     TS_AT(ts_rate_bevels, reliability),
     .range   = TS_FROM(0.9, 0.9999, "1"),
     .preset  = {"0.99", "fewer than one failure in a hundred; ANSI/AGMA 2003-C10 (from memory)"},
     .says    = "Reliability wanted by ANSI/AGMA 2003.",
     .example = "0.999"},
};

static const char *judge_bevels(const void *record, const char **key, const char **expected)
{
    const ts_rate_bevels *pair      = record;
    const ts_measure      profile[] = {pair->k_hap, pair->k_hfp, pair->x_hm1, pair->x_smn};
    const ts_measure      loads[]   = {pair->load.T_1, pair->load.F, pair->load.P};
    size_t                given     = 0;
    for (size_t i = 0; i < 4; i++)
        given += profile[i].standing == TS_GIVEN ? 1 : 0;
    *key      = "k_hap";
    *expected = "all of `k_hap`, `k_hfp`, `x_hm1` and `x_smn`, or none";
    if (given != 0 && given != 4)
        return "the profile is given in part";
    given = 0;
    for (size_t i = 0; i < 3; i++)
        given += loads[i].standing == TS_GIVEN ? 1 : 0;
    *key      = pair->load.P.standing == TS_GIVEN ? "P" : "F_mt";
    *expected = "one of `T_1`, `F_mt` and `P`";
    return given > 1 ? "the load is given more than once" : NULL;
}

const ts_record_table ts_table_rate_bevels = {
    .id   = "rate_bevels",
    .name = "a bevel pair",
    .says =
        "Two bevel gears whose axes meet.  Geometry is that of ISO 23509:2016; load capacity is "
        "told when `T_1`, `F_mt` or `P` is given.",
    TS_TABLE(ts_rate_bevels, bevel_fields),
    .judge = judge_bevels,
};
