/* model/field_bearing.c: what does the file say of the bearings of a shaft, and of its outline? */
#include "catalog/shaft_undercut.h"
#include "model/drive.h"
#include "model/field.h"

static const char *const forms[]  = {"deep groove", "angular contact", "cylindrical roller", "none",
                                     NULL};
static const char *const series[] = {"19", "10", "02", "03", NULL};

static const ts_field seat_fields[] = {
    {.key   = "form",
     .form  = TS_FORM_PICK,
     .known = true,
     TS_AT(ts_bearing_seat, form),
     .choices = forms,
     .says = "What rolls in it, and how; `none`: there is no bearing.  Without the key by what it "
             "must bear.",
     .example = "deep groove"},
    {.key   = "series",
     .form  = TS_FORM_PICK,
     .known = true,
     TS_AT(ts_bearing_seat, series),
     .choices = series,
     .says = "Dimension series of ISO 15; outside, width and a generic inside follow.  Without it "
             "the lightest that holds.",
     .example = "02"},
    {.key   = "bore",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_bearing_seat, bore),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Bore diameter, which is that of the journal.",
     .example = "30 mm"},
    {.key   = "rows",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_bearing_seat, rows),
     .range   = TS_FROM(1, 2, "1"),
     .says    = "2: a pair back to back or face to face, rated as one.",
     .example = "2"},
    {.key   = "angle",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_ANGLE,
     .known = true,
     TS_AT(ts_bearing_seat, angle),
     .range   = TS_FROM(0.0, 0.7853981633974483 /* 45 deg */, "deg"),
     .says    = "Contact angle of an angular contact bearing: 15 or from 20 to 45 degrees.",
     .example = "25 deg"},
    {.key   = "locates",
     .form  = TS_FORM_PICK,
     .known = true,
     TS_AT(ts_bearing_seat, locates),
     .choices = ts_answers_yes,
     .says    = "Does it hold the shaft along its axis?  One of the two does.",
     .example = "yes"},
    {.key   = "at",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_bearing_seat, at),
     .range = TS_FROM(0.0, 5.0, "mm"),
     .says  = "Its middle, from the front end of the shaft; of a radial shaft's gearshaft from the "
              "end that is nearer to the engine axis.",
     .example = "12 mm"},
    {.key   = "outside",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_bearing_seat, outside),
     .range   = TS_ABOVE(0.0, 1.0, "mm"),
     .says    = "Outside diameter; else by the `series`.",
     .example = "62 mm"},
    {.key   = "width",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_bearing_seat, width),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Width of one row; else by the `series`.",
     .example = "16 mm"},
    {.key   = "elements",
     .form  = TS_FORM_TALLY,
     .known = true,
     TS_AT(ts_bearing_seat, elements),
     .range   = TS_FROM(3, 200, "1"),
     .says    = "Balls or rollers in a row; else by the `series`.",
     .example = "9"},
    {.key   = "ball",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_bearing_seat, ball),
     .range   = TS_ABOVE(0.0, 0.2, "mm"),
     .says    = "Diameter of a ball or roller; else by the `series`.",
     .example = "9.525 mm"},
    {.key   = "roller length",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_bearing_seat, length),
     .range   = TS_ABOVE(0.0, 0.2, "mm"),
     .says    = "Effective length of a roller; else by the `series`.",
     .example = "10 mm"},
    {.key   = "capacity",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_FORCE,
     .known = true,
     TS_AT(ts_bearing_seat, capacity),
     .range   = TS_ABOVE(0.0, 1e8, "N"),
     .says    = "Dynamic capacity of all rows, where a maker states one; else from the inside.",
     .example = "19500 N"},
    {.key   = "static capacity",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_FORCE,
     .known = true,
     TS_AT(ts_bearing_seat, static_capacity),
     .range   = TS_ABOVE(0.0, 1e8, "N"),
     .says    = "Static capacity of all rows, where a maker states one; else from the inside.",
     .example = "11300 N"},
    {.key   = "stiffness",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_STIFFNESS,
     .known = true,
     TS_AT(ts_bearing_seat, stiffness),
     .range   = TS_ABOVE(0.0, 1e10, "N/mm"),
     .says    = "Radial stiffness with its housing; else from the inside, in a stiff housing.",
     .example = "100000 N/mm"},
};

const ts_record_table ts_table_bearing_seat = {
    .id   = "bearing_seat",
    .name = "a bearing of a shaft",
    .says = "One bearing, or a pair that is rated as one.",
    TS_TABLE(ts_bearing_seat, seat_fields),
};

#define SEAT(type, member, name, where)                                                            \
    {                                                                                              \
        .key = (name), .form = TS_FORM_RECORD, TS_AT(type, member),                                \
        .record = &ts_table_bearing_seat, .says = (where),                                         \
        .example = "{form: deep groove, series: 02, bore: 30 mm}"                                  \
    }

static const ts_field box_seat_fields[] = {
    SEAT(ts_two_seats, seat[0], "front", "The one nearer to the inlet of the engine."),
    SEAT(ts_two_seats, seat[1], "rear", "The other one."),
};

const ts_record_table ts_table_box_seats = {
    .id   = "box_bearings",
    .name = "the bearings of a box shaft",
    .says = "Front and rear; of an overhung shaft the front one stands next to the gears.",
    TS_TABLE(ts_two_seats, box_seat_fields),
};

static const ts_field stub_seat_fields[] = {
    SEAT(ts_two_seats, seat[0], "gear", "The one next to the bevel gear."),
    SEAT(ts_two_seats, seat[1], "away", "The one away from it."),
};

const ts_record_table ts_table_stub_seats = {
    .id   = "take_off_bearings",
    .name = "the bearings of a take-off",
    .says = "Those of the shaft that carries the bevel gear of a splined stub or a wide spur.",
    TS_TABLE(ts_two_seats, stub_seat_fields),
};

static const ts_field tower_seat_fields[] = {
    SEAT(ts_tower_seats, inner[0], "inner gear", "Next to the bevel gear at the spool."),
    SEAT(ts_tower_seats, inner[1], "inner away", "The other one of that gear."),
    SEAT(ts_tower_seats, mid, "mid", "That of `mid bearing`."),
    SEAT(ts_tower_seats, outer[0], "outer gear", "Next to the bevel gear at the box."),
    SEAT(ts_tower_seats, outer[1], "outer away", "The other one of that gear."),
};

const ts_record_table ts_table_tower_seats = {
    .id   = "tower_shaft_bearings",
    .name = "the bearings of a tower shaft",
    .says = "A gearshaft on two bearings at either end, and perhaps one between them.",
    TS_TABLE(ts_tower_seats, tower_seat_fields),
};

static const ts_field section_fields[] = {
    {.key  = "length",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     .need = TS_REQUIRED,
     TS_AT(ts_shaft_section, length),
     .range   = TS_ABOVE(0.0, 2.0, "mm"),
     .says    = "Along the shaft.",
     .example = "18 mm"},
    {.key  = "outside",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     .need = TS_REQUIRED,
     TS_AT(ts_shaft_section, outside),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Outside diameter.",
     .example = "35 mm"},
    {.key   = "bore",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_shaft_section, bore),
     .range   = TS_FROM(0.0, 0.5, "mm"),
     .says    = "Diameter of its bore; without the key that of the shaft.",
     .example = "20 mm"},
    {.key   = "undercut",
     .form  = TS_FORM_PICK,
     .known = true,
     TS_AT(ts_shaft_section, undercut),
     .choices = ts_undercut_keys,
     .says    = "Undercut of DIN 509 at the foot of every step up from it, a row of "
                "data/shaft_undercut.tsv: form, radius x depth in mm; without the key a fillet.",
     .example = "F 0.6x0.3"},
};

static const char *judge_undercut(const ts_shaft_section *section, const char **key,
                                  const char **expected)
{
    if (section->undercut.standing != TS_GIVEN)
        return NULL;
    const ts_undercut cut = ts_undercut_at((size_t)section->undercut.value);
    *key                  = "undercut";
    if (cut.f > section->length.value) {
        *expected = "a narrower one, or a longer section";
        return "the undercut is wider than its section is long";
    }
    if (section->outside.value - 2.0 * cut.t_1 <= section->bore.value) {
        *expected = "a shallower one, or a smaller bore";
        return "the undercut reaches the bore";
    }
    if (section->outside.value < cut.d_from || section->outside.value > cut.d_to) {
        *expected = "a row of data/shaft_undercut.tsv for that diameter";
        return "DIN 509 has this undercut for journals of another diameter";
    }
    return NULL;
}

static const char *judge_section(const void *record, const char **key, const char **expected)
{
    const ts_shaft_section *section = record;
    if (!(section->bore.value >= section->outside.value))
        return judge_undercut(section, key, expected);
    *key      = "bore";
    *expected = "a bore smaller than `outside`";
    return "the bore is as wide as the shaft, or wider";
}

const ts_record_table ts_table_shaft_section = {
    .id   = "shaft_section",
    .name = "a section of a shaft",
    .says = "A piece of a shaft of one diameter; they follow each other from the front end.",
    TS_TABLE(ts_shaft_section, section_fields),
    .judge = judge_section,
};
