/* model/field_pumps.c: what does the file say of the oil pumps on one shaft? */
#include "model/drive.h"
#include "model/field_where_told.h"

/* Nothing of a pump is assumed where no pump is told. */
static ts_preset where_told(const void *record, ts_preset preset)
{
    const ts_pumps *pumps = record;
    return pumps->flow.standing != TS_ABSENT ? preset : (ts_preset){NULL, NULL};
}

#define ELSEWHERE "0 L/min", "all of it goes to the jets of the boxes"
#define PRESSURE  "5 bar", "held by relief valves of engines; common practice, no source"
#define BACK                                                                                       \
    "1 bar", "that filters, coolers and lines ask of scavenge elements; common practice, no "      \
             "source"
#define AIR     "5 %", "that a tank leaves in the oil; common practice, no source"
#define FILLING "92 %", "of a pressure element with its suction flooded; common practice, no source"
#define SCAVENGED                                                                                  \
    "85 %", "of a scavenge element that takes in oil and air; common practice, no source"
#define SLIP     "4.8e-8", "Wilson's C_s of an external gear pump (from memory)"
#define VISCOUS  "1.025e5", "Wilson's C_d of an external gear pump (from memory)"
#define FRICTION "0.0179", "Wilson's C_f of an external gear pump (from memory)"
#define TEETH    "12", "external gears of equal size; common practice, no source"
#define MODULE   "3 mm", "of the pump gears; common practice, no source"
#define ANGLE    "20 deg", "of the pump gears; common practice, no source"
#define PLATE    "8 mm", "between two elements; common practice, no source"
#define TIPS     "20 m/s", "beyond, tooth spaces no longer fill; common practice, no source"
#define COVER    "5 mm", "less draws air in a vortex; common practice, no source"

PRESET(elsewhere, ELSEWHERE)
PRESET(pressure, PRESSURE)
PRESET(back, BACK)
PRESET(air, AIR)
PRESET(filling, FILLING)
PRESET(scavenged, SCAVENGED)
PRESET(slip, SLIP)
PRESET(viscous, VISCOUS)
PRESET(friction, FRICTION)
PRESET(teeth, TEETH)
PRESET(module, MODULE)
PRESET(angle, ANGLE)
PRESET(plate, PLATE)
PRESET(tips, TIPS)
PRESET(cover, COVER)

/* ---- scavenge elements ----------------------------------------------------------------------- */

static const ts_field scavenge_fields[] = {
    {.key = "rearward",
     OF_KIND(LENGTH),
     .need = TS_STATED,
     TS_AT(ts_scavenge, rearward),
     .range   = TS_FROM(0.0, 5.0, "mm"),
     .says    = "Where the pick-up of the element lies in its sump, from the front wall.",
     .example = "40 mm"},
    {.key = "rightward",
     OF_KIND(LENGTH),
     TS_AT(ts_scavenge, rightward),
     .range   = TS_FROM(-5.0, 5.0, "mm"),
     .preset  = {"0 mm", "in the middle of the sump"},
     .says    = "... from the middle to the right, as seen from behind; to the left it counts "
                "negative.",
     .example = "-25 mm"},
    {.key = "above",
     OF_KIND(LENGTH),
     TS_AT(ts_scavenge, above),
     .range   = TS_FROM(0.0, 5.0, "mm"),
     .preset  = {"3 mm", "of its mouth above the floor of the sump; common practice, no source"},
     .says    = "... above the floor.",
     .example = "4 mm"},
    {.key = "width",
     OF_KIND(LENGTH),
     .known = true,
     TS_AT(ts_scavenge, width),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Face width of its gears; without the key it is sized.",
     .example = "18 mm"},
    {.key  = "chip plug",
     .form = TS_FORM_PICK,
     TS_AT(ts_scavenge, chip_plug),
     .choices = ts_answers_yes,
     .says    = "Does a magnetic plug stand in its line?  Without the key that is not told.",
     .example = "yes"},
};

const ts_record_table ts_table_scavenge = {
    .id   = "scavenge",
    .name = "a scavenge element",
    .says = "One scavenge element of the pack and its pick-up.",
    TS_TABLE(ts_scavenge, scavenge_fields),
};

/* ---- sumps ----------------------------------------------------------------------------------- */

static const ts_field sump_fields[] = {
    {.key = "share",
     OF_KIND(NUMBER),
     .need = TS_REQUIRED,
     TS_AT(ts_sump, share),
     .range   = TS_ABOVE(0.0, 1.0, "%"),
     .says    = "Of all oil that the pressure element gives, what comes back to this sump; all "
                "sumps together 100 %.",
     .example = "55 %"},
    {.key = "ratio",
     OF_KIND(NUMBER),
     TS_AT(ts_sump, ratio),
     .range   = TS_FROM(1.0, 20.0, "1"),
     .preset  = {"2.5", "oil and air over the oil alone; common practice, no source"},
     .says    = "How much its elements together must take, over the oil that comes to it.",
     .example = "3"},
    {.key = "length",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_sump, length),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "Inside of the sump along the engine.",
     .example = "180 mm"},
    {.key = "width",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_sump, width),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "... across it.",
     .example = "90 mm"},
    {.key = "height",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_sump, height),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "... and upward.",
     .example = "60 mm"},
    {.key = "depth",
     OF_KIND(LENGTH),
     .need = TS_REQUIRED,
     TS_AT(ts_sump, depth),
     .range   = TS_ABOVE(0.0, 5.0, "mm"),
     .says    = "How deep the oil that runs lies in it while it is level.",
     .example = "20 mm"},
    {.key  = "scavenge",
     .form = TS_FORM_NAMED,
     .need = TS_REQUIRED,
     TS_LIST_AT(ts_sump, elements, element_count),
     .most    = TS_SCAVENGE_MOST,
     .record  = &ts_table_scavenge,
     .says    = "The scavenge elements that draw from it, by the name of each.",
     .example = "{fore: {rearward: 30 mm}, aft: {rearward: 150 mm, chip plug: yes}}"},
};

static bool reaches(ts_measure place, double most)
{
    return !ts_measure_known(place) || place.value <= most;
}

static const char *judge_sump(const void *record, const char **key, const char **expected)
{
    const ts_sump *sump = record;

    *key      = "depth";
    *expected = "a depth below its height";
    if (sump->depth.value >= sump->height.value)
        return "the sump runs over";
    *key      = "scavenge";
    *expected = "places of pick-ups within `length`, `width` and `height`";
    for (size_t i = 0; i < sump->element_count; i++) {
        const ts_scavenge *one     = &sump->elements[i];
        ts_measure         aside   = one->rightward;
        const double       measure = aside.value;
        aside.value                = measure < 0.0 ? -measure : measure;
        if (!reaches(one->rearward, sump->length.value) ||
            !reaches(aside, sump->width.value / 2.0) || !reaches(one->above, sump->height.value))
            return "a pick-up lies outside of its sump";
    }
    return NULL;
}

const ts_record_table ts_table_sump = {
    .id   = "sump",
    .name = "a sump",
    .says = "A place where oil gathers, taken as a box in the axes of the engine.",
    TS_TABLE(ts_sump, sump_fields),
    .judge = judge_sump,
};

static const ts_field attitude_fields[] = {
    {.key = "pitch",
     OF_KIND(ANGLE),
     TS_AT(ts_attitude, pitch),
     .range   = TS_FROM(-3.14159265358979323846, 3.14159265358979323846, "deg"),
     .preset  = {"0 deg", "level along the engine"},
     .says    = "Nose up, of what the oil feels: speeding up counts as nose up.",
     .example = "20 deg"},
    {.key = "roll",
     OF_KIND(ANGLE),
     TS_AT(ts_attitude, roll),
     .range   = TS_FROM(-3.14159265358979323846, 3.14159265358979323846, "deg"),
     .preset  = {"0 deg", "level across the engine"},
     .says    = "Right side down, of what the oil feels; 180 deg is on its back.",
     .example = "-15 deg"},
};

const ts_record_table ts_table_attitude = {
    .id   = "attitude",
    .name = "an attitude",
    .says = "An attitude in which oil must be fed.",
    TS_TABLE(ts_attitude, attitude_fields),
};

/* ---- the pack -------------------------------------------------------------------------------- */

static const ts_field pumps_fields[] = {
    {.key = "flow",
     OF_KIND(VOLUME_FLOW),
     .need = TS_STATED,
     TS_AT(ts_pumps, flow),
     .range   = TS_ABOVE(0.0, 1.0, "L/min"),
     .says    = "Oil behind the pressure element, from the slowest condition with `hours` on.",
     .example = "24 L/min"},
    {.key = "elsewhere",
     OF_KIND(VOLUME_FLOW),
     TS_AT(ts_pumps, elsewhere),
     .range = TS_FROM(0.0, 1.0, "L/min"),
     DEFAULT(elsewhere, ELSEWHERE),
     .says    = "What of it goes to the bearings of the spools and not to the boxes.",
     .example = "8 L/min"},
    {.key = "pressure",
     OF_KIND(STRESS),
     TS_AT(ts_pumps, pressure),
     .range = TS_ABOVE(0.0, 1e8, "bar"),
     DEFAULT(pressure, PRESSURE),
     .says    = "By how much the pressure element raises the oil while its relief valve is open.",
     .example = "4.5 bar"},
    {.key = "scavenge pressure",
     OF_KIND(STRESS),
     TS_AT(ts_pumps, back),
     .range = TS_FROM(0.0, 1e8, "bar"),
     DEFAULT(back, BACK),
     .says    = "By how much every scavenge element raises what it takes.",
     .example = "1.2 bar"},
    {.key = "air",
     OF_KIND(NUMBER),
     TS_AT(ts_pumps, air),
     .range = TS_FROM(0.0, 0.9, "%"),
     DEFAULT(air, AIR),
     .says    = "Share of air in what the pressure element takes in.",
     .example = "8 %"},
    {.key = "filling",
     OF_KIND(NUMBER),
     TS_AT(ts_pumps, filling),
     .range = TS_ABOVE(0.0, 1.0, "%"),
     DEFAULT(filling, FILLING),
     .says    = "How full the spaces of the pressure element become; with what slips back it makes "
                "the volumetric efficiency.",
     .example = "95 %"},
    {.key = "scavenge filling",
     OF_KIND(NUMBER),
     TS_AT(ts_pumps, scavenged),
     .range = TS_ABOVE(0.0, 1.0, "%"),
     DEFAULT(scavenged, SCAVENGED),
     .says    = "The same of the scavenge elements.",
     .example = "80 %"},
    {.key = "slip",
     OF_KIND(NUMBER),
     TS_AT(ts_pumps, slip),
     .range = TS_FROM(0.0, 1e-5, "1"),
     DEFAULT(slip, SLIP),
     .says    = "Wilson's coefficient of slip C_s: what runs back is C_s dp/(eta n) of the "
                "displacement.",
     .example = "6e-8"},
    {.key = "viscous drag",
     OF_KIND(NUMBER),
     TS_AT(ts_pumps, viscous),
     .range = TS_FROM(0.0, 1e8, "1"),
     DEFAULT(viscous, VISCOUS),
     .says = "Wilson's coefficient of viscous drag C_d: a torque of C_d eta n for a displacement "
             "of 1 a radian.",
     .example = "9e4"},
    {.key = "friction",
     OF_KIND(NUMBER),
     TS_AT(ts_pumps, friction),
     .range = TS_FROM(0.0, 1.0, "1"),
     DEFAULT(friction, FRICTION),
     .says    = "Wilson's coefficient of friction C_f: a share of the torque by pressure.",
     .example = "0.05"},
    {.key  = "teeth",
     .form = TS_FORM_TALLY,
     TS_AT(ts_pumps, teeth),
     .range = TS_FROM(6, 40, "1"),
     DEFAULT(teeth, TEETH),
     .says    = "Of each gear of each element: two equal external gears.",
     .example = "11"},
    {.key = "module",
     OF_KIND(LENGTH),
     TS_AT(ts_pumps, module),
     .range = TS_FROM(0.0005, 0.02, "mm"),
     DEFAULT(module, MODULE),
     .says    = "Their module.",
     .example = "3.5 mm"},
    {.key = "pressure angle",
     OF_KIND(ANGLE),
     TS_AT(ts_pumps, pressure_angle),
     .range = TS_FROM(0.17453292519943295, 0.6108652381980153, "deg"),
     DEFAULT(angle, ANGLE),
     .says    = "Their pressure angle.",
     .example = "22.5 deg"},
    {.key = "width",
     OF_KIND(LENGTH),
     .known = true,
     TS_AT(ts_pumps, width),
     .range   = TS_ABOVE(0.0, 0.5, "mm"),
     .says    = "Face width of the pressure element; without the key it is sized.",
     .example = "16 mm"},
    {.key = "plate",
     OF_KIND(LENGTH),
     TS_AT(ts_pumps, plate),
     .range = TS_FROM(0.0, 0.2, "mm"),
     DEFAULT(plate, PLATE),
     .says    = "Between two elements, and at both ends.",
     .example = "10 mm"},
    {.key = "tip speed",
     OF_KIND(VELOCITY),
     TS_AT(ts_pumps, tip_speed),
     .range = TS_ABOVE(0.0, 200.0, "m/s"),
     DEFAULT(tips, TIPS),
     .says    = "How fast the tips of the gears may be.",
     .example = "18 m/s"},
    {.key = "cover",
     OF_KIND(LENGTH),
     TS_AT(ts_pumps, cover),
     .range = TS_FROM(0.0, 0.5, "mm"),
     DEFAULT(cover, COVER),
     .says    = "How deep a pick-up must lie below the oil to count as covered.",
     .example = "8 mm"},
    {.key   = "windmill",
     .known = true,
     OF_KIND(ROTATIONAL_SPEED),
     TS_AT(ts_pumps, windmill),
     .range   = TS_ABOVE(0.0, 20943.951023931954923, "rpm"),
     .says    = "Speed of its spool while air alone turns it; without the key nothing is told of "
                "that.",
     .example = "1100 rpm"},
    {.key  = "sumps",
     .form = TS_FORM_NAMED,
     .need = TS_REQUIRED,
     TS_LIST_AT(ts_pumps, sumps, sump_count),
     .most    = TS_SCAVENGE_MOST,
     .record  = &ts_table_sump,
     .says    = "Where the oil gathers, and the scavenge elements that draw it from there.",
     .example = "{gearbox: {share: 100 %, length: 180 mm, width: 90 mm, height: 60 mm, "
                "depth: 20 mm, scavenge: {fore: {rearward: 30 mm}}}}"},
    {.key  = "attitudes",
     .form = TS_FORM_NAMED,
     TS_LIST_AT(ts_pumps, attitudes, attitude_count),
     .most    = 64,
     .record  = &ts_table_attitude,
     .says    = "Attitudes in which it must draw oil; level is always looked at.",
     .example = "{climbing: {pitch: 20 deg}, inverted: {roll: 180 deg}}"},
};

static const char *judge_pumps(const void *record, const char **key, const char **expected)
{
    const ts_pumps *pumps = record;
    size_t          count = 0;
    double          share = 0.0;

    for (size_t i = 0; i < pumps->sump_count; i++) {
        count += pumps->sumps[i].element_count;
        share += pumps->sumps[i].share.value;
    }
    *key      = "sumps";
    *expected = "1 to 7 scavenge elements in all sumps together";
    if (count > TS_SCAVENGE_MOST)
        return "the pack has more than 7 scavenge elements";
    *expected = "shares that add up to 100 %";
    if (pumps->sump_count > 0 && !(share > 1.0 - 1e-6 && share < 1.0 + 1e-6))
        return "oil that is fed comes back to the sumps, no more and no less";
    *key      = "elsewhere";
    *expected = "no more than `flow`";
    if (ts_measure_known(pumps->flow) && pumps->elsewhere.value > pumps->flow.value)
        return "more oil goes elsewhere than is fed";
    return NULL;
}

const ts_record_table ts_table_pumps = {
    .id   = "pumps",
    .name = "a pump pack",
    .says = "One pressure element and 1 to 7 scavenge elements on the shaft of this pad.  Where "
            "the accessory tells no `power`, the torque of the pack is its load.",
    TS_TABLE(ts_pumps, pumps_fields),
    .judge = judge_pumps,
};
