/* model/field_take_off.c: what does the file say between a spool and its box? */
#include "model/drive.h"
#include "model/field.h"

static const ts_field spool_drive_fields[] = {
    {.key  = "take-off",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_spool_drive, take_off),
     .record  = &ts_table_take_off,
     .says    = "The bevels on the spool, and how they bear its movement.",
     .example = "{bevels: {teeth: [43, 46], module: 2.4 mm, spiral: 35 deg, face: 16 mm}}"},
    {.key  = "tower shaft",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_spool_drive, tower_shaft),
     .record  = &ts_table_tower_shaft,
     .says    = "The radial shaft from the spool out to the box.",
     .example = "{clock: \"6:00\", length: 305 mm, outside: 26 mm, bore: 18 mm}"},
    {.key  = "box",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_spool_drive, box),
     .record  = &ts_table_box,
     .says    = "The gearbox with its shafts and pads.",
     .example = "{arc: {...}, bevels: {...}, gears: {...}, input: {...}, clockwise: [...]}"},
};

const ts_record_table ts_table_spool_drive = {
    .id   = "spool_drive",
    .name = "the drive of a spool",
    .says = "Everything that one spool drives.",
    TS_TABLE(ts_spool_drive, spool_drive_fields),
};

static const char *const schemes[] = {"fixed bevel", "splined stub", "wide spur", NULL};

static const ts_field take_off_fields[] = {
    {.key  = "float",
     .form = TS_FORM_PICK,
     TS_AT(ts_take_off, scheme),
     .choices = schemes,
     .says    = "How the bevels bear the axial movement of the spool: the bevel held by the "
                "rotor's location bearing; on a splined stub shaft with bearings of its own; or "
                "driven through a wide-faced spur idler.",
     .example = "splined stub"},
    {.key  = "bevels",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_take_off, bevels),
     .record  = &ts_table_bevel_gears,
     .says    = "From the spool to the radial shaft.",
     .example = "{teeth: [43, 46], module: 2.4 mm, spiral: 35 deg, face: 16 mm}"},
    {.key  = "backlash",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_take_off, backlash),
     .range   = TS_FROM(0.0, 0.01, "mm"),
     .says    = "Normal backlash of these bevels as built, cold.",
     .example = "0.2 mm"},
    {.key  = "backlash tolerance",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_take_off, tolerance),
     .range   = TS_FROM(0.0, 0.001, "mm"),
     .preset  = {"0.03 mm", "what shims in steps leave; common practice, no source"},
     .says    = "By how much that backlash may be more or less as built.",
     .example = "0.03 mm"},
    {.key   = "engaged",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_take_off, engaged),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Length of the spline of a splined stub that is engaged at the cold build; without "
                "it 0.6 of its pitch diameter is taken.",
     .example = "24 mm"},
    {.key    = "slide",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_LENGTH,
     TS_AT(ts_take_off, slide),
     .range   = TS_FROM(-0.1, 0.1, "mm"),
     .says    = "How far the spline of a splined stub may slide.",
     .example = "-3..3 mm"},
    {.key  = "overlap",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_take_off, overlap),
     .range   = TS_FROM(0.0, 0.2, "mm"),
     .says    = "Face width of a wide spur beyond what its load needs.",
     .example = "6 mm"},
    {.key  = "bearings",
     .form = TS_FORM_RECORD,
     TS_AT(ts_take_off, bearings),
     .record = &ts_table_stub_seats,
     .says   = "Of the shaft that carries the bevel gear of a splined stub or a wide spur; what is "
               "not said is chosen.",
     .example = "{gear: {form: cylindrical roller, series: 10, bore: 60 mm}}"},
    {.key  = "lubrication",
     .form = TS_FORM_PICK,
     TS_AT(ts_take_off, lubrication),
     .choices = ts_lubrications,
     .preset  = {"jets", "oil jets, as in engine gearboxes; common practice, no source"},
     .says    = "How oil comes to these bevels: by jets, or by dipping into it.",
     .example = "jets"},
    {.key  = "chip plug",
     .form = TS_FORM_PICK,
     TS_AT(ts_take_off, chip_plug),
     .choices = ts_answers_yes,
     .says = "Does a chip plug stand where the oil of these bevels collects?  Without the key it "
             "is not told, and its chips count as unseen.",
     .example = "yes"},
    {.key  = "drains to",
     .form = TS_FORM_WORD,
     TS_AT(ts_take_off, drains_to),
     .says = "The sump of the oil pump pack into which the oil of these bevels runs; their chips "
             "then meet the plugs in the scavenge lines of that sump.",
     .example = "hp bearings"},
};

const ts_record_table ts_table_take_off = {
    .id   = "take_off",
    .name = "a take-off",
    .says = "Where power leaves the spool.",
    TS_TABLE(ts_take_off, take_off_fields),
};

static const char *const turns[] = {"cw", "ccw", NULL};

static const ts_field tower_shaft_fields[] = {
    {.key  = "clock",
     .form = TS_FORM_CLOCK,
     .need = TS_REQUIRED,
     .kind = TS_KIND_ANGLE,
     .seen = true,
     TS_AT(ts_tower_shaft, clock),
     .says    = "Where round the engine it stands.",
     .example = "\"6:00\""},
    {.key  = "length",
     .form = TS_FORM_MEASURE,
     .need = TS_STATED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tower_shaft, length),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "From bevel apex to bevel apex.",
     .example = "305 mm"},
    {.key  = "outside",
     .form = TS_FORM_MEASURE,
     .need = TS_STATED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tower_shaft, outside),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Its outside diameter.",
     .example = "26 mm"},
    {.key  = "bore",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tower_shaft, bore),
     .range   = TS_FROM(0.0, 0.5, "mm"),
     .preset  = {"0 mm", "a shaft of which no bore is told is taken as solid"},
     .says    = "The diameter of its bore; 0 mm when it is solid.",
     .example = "18 mm"},
    {.key  = "mid bearing",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tower_shaft, mid_bearing),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "How far from the spool end a third bearing stands; without the key there is "
                "none.",
     .example = "150 mm"},
    {.key  = "station",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_tower_shaft, station),
     .range   = TS_FROM(-20.0, 20.0, "mm"),
     .preset  = {"0 mm", "the datum is put there; a choice of origin"},
     .says    = "Where along the engine its axis lies, rearward of the engine's datum.",
     .example = "1240 mm"},
    {.key  = "turns",
     .form = TS_FORM_PICK,
     TS_AT(ts_tower_shaft, turns),
     .choices = turns,
     .says    = "Which way you believe that it turns, seen from outside looking to the engine "
                "axis; the program holds it against the train.",
     .example = "cw"},
    {.key  = "neck",
     .form = TS_FORM_RECORD,
     TS_AT(ts_tower_shaft, neck),
     .record  = &ts_table_neck,
     .says    = "A shear neck in the radial shaft.",
     .example = "{breaks: 900..1100 N.m}"},
    {.key  = "bearings",
     .form = TS_FORM_RECORD,
     TS_AT(ts_tower_shaft, bearings),
     .record = &ts_table_tower_seats,
     .says   = "Two of the gearshaft at either end, and the one of `mid bearing`; what is not said "
               "is chosen.",
     .example = "{mid: {form: deep groove, series: 10, bore: 45 mm}}"},
};

/* A wall needs some thickness, and a bearing between two ends stands between them. */
static const char *judge_tower_shaft(const void *record, const char **key, const char **expected)
{
    const ts_tower_shaft *shaft = record;
    if (shaft->bore.value >= shaft->outside.value) {
        *key      = "bore";
        *expected = "a bore smaller than `outside`";
        return "the bore is as wide as the radial shaft, or wider";
    }
    if (shaft->mid_bearing.value >= shaft->length.value) {
        *key      = "mid bearing";
        *expected = "a distance from the spool end smaller than `length`";
        return "the mid bearing stands beyond the end of the radial shaft";
    }
    return NULL;
}

const ts_record_table ts_table_tower_shaft = {
    .id   = "tower_shaft",
    .name = "a tower shaft",
    .says = "The fast thin shaft from the spool out to the box.",
    TS_TABLE(ts_tower_shaft, tower_shaft_fields),
    .judge = judge_tower_shaft,
};
