/* model/field_rate.c: what stands at the top of a rate file, and in its smaller elements? */
#include "model/field_rate_parts.h"

#include "catalog/gear_material.h"

static const ts_field rate_fields[] = {
    {.key  = "towershaft rate",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_file, version),
     .range   = TS_FROM(1, 1, "1"),
     .says    = "The version of this notation.",
     .example = "1"},
    {.key  = "title",
     .form = TS_FORM_WORD,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_file, title),
     .says    = "What the file is called on every page.",
     .example = "First mesh of a demonstrator"},
    {.key  = "revision",
     .form = TS_FORM_WORD,
     TS_AT(ts_rate_file, revision),
     .says    = "Its revision, as your drawing office counts it.",
     .example = "C"},
    {.key  = "gear pair",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, pairs, pair_count),
     .most    = 200,
     .record  = &ts_table_rate_pair,
     .says    = "Pairs of spur or helical gears: geometry, measurement, backlash, load capacity.",
     .example = "{first mesh: {z_1: 25, z_2: 62, m_n: 2 mm, b_1: 22 mm}}"},
    {.key  = "bevel pair",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, bevels, bevel_count),
     .most    = 200,
     .record  = &ts_table_rate_bevels,
     .says    = "Pairs of bevel gears.",
     .example = "{take-off: {z_1: 37, z_2: 41, m_et: 2.5 mm, b: 18 mm}}"},
    {.key  = "tooth measurement",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, teeth, tooth_count),
     .most    = 200,
     .record  = &ts_table_rate_tooth,
     .says    = "Single gears: span, dimension over pins, chord, with their allowances.",
     .example = "{idler: {z: 45, m_n: 2 mm}}"},
    {.key  = "tolerance",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, tolerances, tolerance_count),
     .most    = 200,
     .record  = &ts_table_rate_tolerance,
     .says    = "Tolerances of flanks by ISO 1328.",
     .example = "{pinion: {z: 25, m_n: 2 mm, b: 22 mm, class: 5}}"},
    {.key  = "material",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, steels, steel_count),
     .most    = 200,
     .record  = &ts_table_rate_steel,
     .says    = "Rows of the catalogue of gear steels, with their sources.",
     .example = "{teeth: {row: carburised 9310}}"},
    {.key  = "bearing",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, bearings, bearing_count),
     .most    = 200,
     .record  = &ts_table_rate_bearing,
     .says    = "Rolling bearings: capacity, life, static safety, least load.",
     .example = "{idler: {form: deep groove, series: 02, d: 30 mm, F_r: 900 N, n: 9000 rpm}}"},
    {.key  = "shear neck",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, necks, neck_count),
     .most    = 200,
     .record  = &ts_table_rate_neck,
     .says    = "Shear necks: the guaranteed band of the break torque.",
     .example = "{hydraulic pump: {d: 10 mm, tol: 0.02 mm, Ftu_min: 1240 MPa, Ftu_max: 1380 MPa}}"},
    {.key  = "spline",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_rate_file, splines, spline_count),
     .most    = 200,
     .record  = &ts_table_rate_spline,
     .says    = "Involute splines, side fit: diameters, limits, pins, stress.",
     .example = "{pad: {N: 16, P: 20, T: 60 N.m, L_e: 19 mm}}"},
};

static const char *judge_file(const void *record, const char **key, const char **expected)
{
    const ts_rate_file *file = record;
    *key                     = "towershaft rate";
    *expected = "one of gear pair, bevel pair, tooth measurement, tolerance, material, bearing, "
                "shear neck, spline";
    if (file->pair_count + file->bevel_count + file->tooth_count + file->tolerance_count +
            file->steel_count + file->bearing_count + file->neck_count + file->spline_count >
        0)
        return NULL;
    return "the file describes no element";
}

const ts_record_table ts_table_rate = {
    .id   = "rate",
    .name = "a rate file",
    .says = "One document that describes elements by themselves, each by its standard's symbols.",
    TS_TABLE(ts_rate_file, rate_fields),
    .judge = judge_file,
};

/* ---- tolerance ------------------------------------------------------------------------------ */

static const char *const tolerance_editions[] = {"2013", "1995", NULL};

static const ts_field tolerance_fields[] = {
    {.key  = "m_n",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_rate_tolerance, m_n),
     .range   = TS_FROM(1e-5, 0.1, "mm"),
     .says    = "Normal module.",
     .example = "2 mm"},
    {.key   = "z",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_rate_tolerance, z),
     .range   = TS_FROM(-1e6, 1e6, "1"),
     .says    = "Teeth; the reference diameter follows from them.  Either this or `d`.",
     .example = "25"},
    {.key   = "d",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_rate_tolerance, d),
     .range   = TS_ABOVE(0.0, 100.0, "mm"),
     .says    = "Reference diameter, where no tooth number is given.",
     .example = "50 mm"},
    {.key   = "beta",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_ANGLE,
     .known = true,
     TS_AT(ts_rate_tolerance, beta),
     .range   = TS_FROM(0.0, 1.0471975511965979 /* 60 deg */, "deg"),
     .preset  = {"0 deg", "spur teeth; common practice, no source"},
     .says    = "Helix angle.",
     .example = "0 deg"},
    {.key  = "b",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_rate_tolerance, b),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "Face width; without it the tolerances of the helix are left out.",
     .example = "22 mm"},
    {.key  = "class",
     .form = TS_FORM_TALLY,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_tolerance, class),
     .range   = TS_FROM(0, 12, "1"),
     .says    = "Flank tolerance class (accuracy grade), finest first.",
     .example = "5"},
    {.key  = "edition",
     .form = TS_FORM_PICK,
     TS_AT(ts_rate_tolerance, edition),
     .choices = tolerance_editions,
     .preset  = {"2013", "ISO 1328-1:2013 is the valid edition"},
     .says    = "Year of ISO 1328-1; with 1995 the radial composite deviations of ISO 1328-2:1997 "
                "are told as well.",
     .example = "2013"},
};

static const char *judge_tolerance(const void *record, const char **key, const char **expected)
{
    const ts_rate_tolerance *tolerance = record;
    const bool               teeth     = tolerance->z.standing == TS_GIVEN;
    const bool               diameter  = tolerance->d.standing == TS_GIVEN;
    *key                               = teeth ? "d" : "m_n";
    *expected                          = "either `z` or `d`";
    if (teeth && diameter)
        return "the diameter is given twice, by `z` and by `d`";
    if (teeth && tolerance->z.value == 0) {
        *key = "z";
        return "a gear has teeth";
    }
    return teeth || diameter ? NULL : "the diameter is given by neither `z` nor `d`";
}

const ts_record_table ts_table_rate_tolerance = {
    .id   = "rate_tolerance",
    .name = "a tolerance",
    .says = "The permitted deviations of one cylindrical gear; ISO 1328.",
    TS_TABLE(ts_rate_tolerance, tolerance_fields),
    .judge = judge_tolerance,
};

/* ---- material ------------------------------------------------------------------------------- */

static const ts_field steel_fields[] = {
    {.key  = "row",
     .form = TS_FORM_PICK,
     .need = TS_REQUIRED,
     TS_AT(ts_rate_steel, row),
     .choices = ts_gear_material_keys,
     .says    = "The row of the catalogue, by its key; `material 1` and `material 2` of pairs take "
                "the same.",
     .example = "carburised 9310"},
    {.key   = "hardness",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_NUMBER,
     .known = true,
     TS_AT(ts_rate_steel, hardness),
     .range   = TS_ABOVE(0.0, 2000.0, "1"),
     .says    = "Hardness of the flank in Vickers, of normalised steel in Brinell; without it that "
                "of the row.",
     .example = "700"},
};

const ts_record_table ts_table_rate_steel = {
    .id   = "rate_steel",
    .name = "a material",
    .says = "A gear steel of the catalogue, with its allowable stress numbers; ISO 6336-5.",
    TS_TABLE(ts_rate_steel, steel_fields),
};
