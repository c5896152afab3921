/* model/field_box.c: what does the file say of a box, its shafts and its gears? */
#include "model/drive.h"
#include "model/field.h"

#include "catalog/gear_material.h"

static const ts_field box_fields[] = {
    {.key  = "arc",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_box, arc),
     .record  = &ts_table_arc,
     .says    = "The circle about the engine axis on which the shafts stand.",
     .example = "{radius: 330 mm, clock: \"6:00\"}"},
    {.key  = "bevels",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_box, bevels),
     .record  = &ts_table_bevel_gears,
     .says    = "From the radial shaft to the box input.",
     .example = "{teeth: [37, 41], module: 2.5 mm, spiral: 35 deg, face: 18 mm}"},
    {.key  = "gears",
     .form = TS_FORM_RECORD,
     TS_AT(ts_box, gears),
     .record  = &ts_table_tooth_system,
     .says    = "What the gears of this box have in common.",
     .example = "{module: 2.0 mm, pressure angle: 25 deg}"},
    {.key  = "lubrication",
     .form = TS_FORM_PICK,
     TS_AT(ts_box, lubrication),
     .choices = ts_lubrications,
     .preset  = {"jets", "oil jets, as in engine gearboxes; common practice, no source"},
     .says    = "How oil comes to its teeth: by jets, or by dipping into it.",
     .example = "jets"},
    {.key  = "chip plug",
     .form = TS_FORM_PICK,
     TS_AT(ts_box, chip_plug),
     .choices = ts_answers_yes,
     .says =
         "Does a chip plug stand where the oil of this box collects?  Without the key it is not "
         "told, and its chips count as unseen.",
     .example = "yes"},
    {.key  = "drains to",
     .form = TS_FORM_WORD,
     TS_AT(ts_box, drains_to),
     .says    = "The sump of the oil pump pack into which the oil of this box runs; its chips then "
                "meet the plugs in the scavenge lines of that sump.",
     .example = "gearbox"},
    {.key  = "depth",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_box, depth),
     .range   = TS_ABOVE(0.0, 2.0, "mm"),
     .says    = "Between the front and the rear pad faces.",
     .example = "70 mm"},
    {.key  = "mounts",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_box, mounts, mount_count),
     .most   = 3,
     .record = &ts_table_mount,
     .says   = "Its three mounts: the first holds it in all directions, the second across the "
               "line to the first, the third across the plane of all three.  Without the key they "
               "are assumed at the two ends of the front face and behind the input.",
     .example =
         "[{clock: \"5:00\", radius: 330 mm, aft: -35 mm}, {clock: \"7:00\", radius: 330 mm, "
         "aft: -35 mm}, {clock: \"6:00\", radius: 330 mm, aft: 35 mm}]"},
    {.key  = "input",
     .form = TS_FORM_RECORD,
     .need = TS_REQUIRED,
     TS_AT(ts_box, input),
     .record  = &ts_table_box_input,
     .says    = "The shaft that the radial shaft drives.",
     .example = "{teeth: 52, face: 22 mm, rear: starter}"},
    {.key  = "clockwise",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_box, clockwise, clockwise_count),
     .most    = 5000,
     .record  = &ts_table_box_shaft,
     .says    = "The shafts clockwise of the input, in the file's `sight`, in order outwards; "
                "each is driven by the one before it.",
     .example = "[{teeth: 61, face: 18 mm, front: fuel pump}, {teeth: 45, face: 14 mm}]"},
    {.key  = "anticlockwise",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_box, anticlockwise, anticlockwise_count),
     .most    = 5000,
     .record  = &ts_table_box_shaft,
     .says    = "The shafts the other way.",
     .example = "[{teeth: 40, face: 12 mm, rear: breather}]"},
};

static const char *judge_box(const void *record, const char **key, const char **expected)
{
    const ts_box *box = record;

    if (box->mount_count == 0 || box->mount_count == 3)
        return NULL;
    *key      = "mounts";
    *expected = "three mounts, or none";
    return "a box stands on three mounts";
}

const ts_record_table ts_table_box = {
    .id   = "box",
    .name = "a box",
    .says = "A gearbox on the engine: one input, and a train of shafts either way of it.",
    TS_TABLE(ts_box, box_fields),
    .judge = judge_box,
};

static const ts_field arc_fields[] = {
    {.key  = "radius",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_LENGTH,
     TS_AT(ts_arc, radius),
     .range   = TS_ABOVE(0.0, 10.0, "mm"),
     .says    = "From the engine axis to the shafts' axes.",
     .example = "330 mm"},
    {.key  = "clock",
     .form = TS_FORM_CLOCK,
     .need = TS_REQUIRED,
     .kind = TS_KIND_ANGLE,
     .seen = true,
     TS_AT(ts_arc, clock),
     .says    = "Where on it the box input stands.",
     .example = "\"6:00\""},
};

const ts_record_table ts_table_arc = {
    .id   = "arc",
    .name = "the arc of a box",
    .says = "The circle on which the axes of a box stand.",
    TS_TABLE(ts_arc, arc_fields),
};

static const char *const turns[]    = {"cw", "ccw", NULL};
static const char *const supports[] = {"straddled", "overhung", NULL};
static const char *const drivers[]  = {"gear", "step", "step 2", "step 3", NULL};

/* What the main gear of a shaft and its further gears say alike: teeth, size, steel and rim. */
#define GEAR_FIELDS(type, gear, of_teeth, of_face)                                                 \
    {.key  = "teeth",                                                                              \
     .form = TS_FORM_TALLY,                                                                        \
     .need = TS_REQUIRED,                                                                          \
     TS_AT(type, teeth),                                                                           \
     .range   = TS_FROM(5, 2000, "1"),                                                             \
     .says    = "Tooth number of " gear ".",                                                       \
     .example = (of_teeth)},                                                                       \
        {.key  = "module",                                                                         \
         .form = TS_FORM_MEASURE,                                                                  \
         .kind = TS_KIND_LENGTH,                                                                   \
         TS_AT(type, module),                                                                      \
         .range   = TS_ABOVE(0.0, 0.1, "mm"),                                                      \
         .says    = "Normal module m_n of " gear "; without the key that of the box's gears.",     \
         .example = "2.0 mm"},                                                                     \
        {.key  = "face",                                                                           \
         .form = TS_FORM_MEASURE,                                                                  \
         .need = TS_STATED,                                                                        \
         .kind = TS_KIND_LENGTH,                                                                   \
         TS_AT(type, face),                                                                        \
         .range   = TS_ABOVE(0.0, 0.5, "mm"),                                                      \
         .says    = "Face width of " gear ".",                                                     \
         .example = (of_face)},                                                                    \
        {.key  = "shift",                                                                          \
         .form = TS_FORM_MEASURE,                                                                  \
         .kind = TS_KIND_NUMBER,                                                                   \
         TS_AT(type, shift),                                                                       \
         .range   = TS_FROM(-2.0, 2.0, "1"),                                                       \
         .preset  = {"0", "no profile shift; common practice, no source"},                         \
         .says    = "Profile shift coefficient x of " gear ".",                                    \
         .example = "0.2"},                                                                        \
        {.key  = "material",                                                                       \
         .form = TS_FORM_PICK,                                                                     \
         TS_AT(type, material),                                                                    \
         .choices = ts_gear_material_keys,                                                         \
         .says    = "What " gear " is made of; without the key as the gears of the box.",          \
         .example = "carburised 9310"},                                                            \
        {.key  = "rim",                                                                            \
         .form = TS_FORM_MEASURE,                                                                  \
         .kind = TS_KIND_LENGTH,                                                                   \
         TS_AT(type, rim),                                                                         \
         .range = TS_ABOVE(0.0, 0.5, "mm"),                                                        \
         .says =                                                                                   \
             "Thickness of its rim below the roots of the teeth; without the key it is solid.",    \
         .example = "6 mm"},                                                                       \
    {                                                                                              \
        .key = "web", .form = TS_FORM_MEASURE, .kind = TS_KIND_LENGTH, TS_AT(type, web),           \
        .range   = TS_ABOVE(0.0, 0.5, "mm"),                                                       \
        .says    = "Thickness of the web that holds the rim; read beside `rim` only.",             \
        .example = "4 mm"                                                                          \
    }

/* The last two are for shafts that another shaft of the box drives; the input has the others. */
#define SHAFT_ONLY_FIELDS 2

static const ts_field box_shaft_fields[] = {
    {.key  = "name",
     .form = TS_FORM_WORD,
     TS_AT(ts_box_shaft, name),
     .says    = "What the shaft is called; without one, after its accessories.",
     .example = "scavenge idler"},
    GEAR_FIELDS(ts_box_shaft, "its main gear", "61", "18 mm"),
    {.key  = "front",
     .form = TS_FORM_PAD,
     TS_AT(ts_box_shaft, front),
     .says    = "What stands on its front pad: the name of an accessory, `cover` for a sealed "
                "cover, `hand turning`, or `open`.  Without the key there is no pad.",
     .example = "fuel pump"},
    {.key  = "rear",
     .form = TS_FORM_PAD,
     TS_AT(ts_box_shaft, rear),
     .says    = "The same for its rear pad.",
     .example = "cover"},
    {.key  = "step",
     .form = TS_FORM_ONE_OR_LIST,
     TS_LIST_AT(ts_box_shaft, steps, step_count),
     .most    = 3,
     .record  = &ts_table_step_gear,
     .says    = "Further gears on the same shaft; the next shaft is driven by the last of them "
                "unless it says otherwise with `from`.",
     .example = "{teeth: 27, face: 10 mm}"},
    {.key  = "branch",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_box_shaft, branch, branch_count),
     .most    = 5000,
     .record  = &ts_table_box_shaft,
     .says    = "A side chain of shafts that this one drives as well, in order outwards.",
     .example = "[{teeth: 31, face: 8 mm, toward: \"3:00\", rear: cover}]"},
    {.key  = "turns",
     .form = TS_FORM_PICK,
     .seen = true,
     TS_AT(ts_box_shaft, turns),
     .choices = turns,
     .says    = "Which way you believe that it turns, in the file's `sight`; the program holds "
                "it against the train.",
     .example = "cw"},
    {.key  = "support",
     .form = TS_FORM_PICK,
     TS_AT(ts_box_shaft, support),
     .choices = supports,
     .preset  = {"straddled", "gears between their bearings; common practice, no source"},
     .says    = "Do its bearings stand on both sides of its gears, or on one?",
     .example = "straddled"},
    {.key   = "outside",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_box_shaft, outside),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Diameter between its bearings, beside the gears; without the key by the load.",
     .example = "36 mm"},
    {.key   = "bore",
     .form  = TS_FORM_MEASURE,
     .kind  = TS_KIND_LENGTH,
     .known = true,
     TS_AT(ts_box_shaft, bore),
     .range   = TS_FROM(0.0, 0.5, "mm"),
     .says    = "Diameter of its bore; without the key half of its journals; 0 mm: solid.",
     .example = "15 mm"},
    {.key  = "bearings",
     .form = TS_FORM_RECORD,
     TS_AT(ts_box_shaft, bearings),
     .record  = &ts_table_box_seats,
     .says    = "Its two bearings; what is not said is chosen.",
     .example = "{front: {form: deep groove, series: 02, bore: 30 mm}}"},
    {.key  = "sections",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_box_shaft, sections, section_count),
     .most    = 12,
     .record  = &ts_table_shaft_section,
     .says    = "Its outline from the front end to the rear, in place of the one that follows from "
                "its gears and bearings.",
     .example = "[{length: 20 mm, outside: 30 mm}, {length: 40 mm, outside: 36 mm}]"},
    {.key   = "toward",
     .form  = TS_FORM_CLOCK,
     .kind  = TS_KIND_ANGLE,
     .seen  = true,
     .known = true,
     TS_AT(ts_box_shaft, toward),
     .says    = "In which clock direction from its driver it stands; without the key it stands "
                "on the arc, further along.",
     .example = "\"3:00\""},
    {.key   = "from",
     .form  = TS_FORM_PICK,
     .known = true,
     TS_AT(ts_box_shaft, from),
     .choices = drivers,
     .says    = "Which gear of its driver drives it; without the key its last step, or its main "
                "gear when it has no step.",
     .example = "gear"},
};

#define BOX_SHAFT_FIELDS (sizeof box_shaft_fields / sizeof box_shaft_fields[0])

const ts_record_table ts_table_box_shaft = {
    .id   = "box_shaft",
    .name = "a box shaft",
    .says = "A shaft of a box that another shaft of the box drives, with its gears and pads.",
    TS_TABLE(ts_box_shaft, box_shaft_fields),
};

const ts_record_table ts_table_box_input = {
    .id          = "box_input",
    .name        = "a box input",
    .says        = "The shaft of a box that the radial shaft drives.",
    .fields      = box_shaft_fields,
    .field_count = BOX_SHAFT_FIELDS - SHAFT_ONLY_FIELDS,
    .size        = sizeof(ts_box_shaft),
    .node_offset = offsetof(ts_box_shaft, node),
};

static const ts_field step_gear_fields[] = {GEAR_FIELDS(ts_step_gear, "this gear", "27", "10 mm")};

const ts_record_table ts_table_step_gear = {
    .id   = "step_gear",
    .name = "a step gear",
    .says = "A further gear on a shaft.",
    TS_TABLE(ts_step_gear, step_gear_fields),
};
