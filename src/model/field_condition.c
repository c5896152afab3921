/* model/field_condition.c: what does the file say of conditions and spools? */
#include "model/curve_judge.h"
#include "model/drive.h"
#include "model/field.h"

/* Time is asked of events alone, and only where no hours are told. */
static ts_preset lasts_preset(const void *record)
{
    const ts_condition *condition = record;
    if (condition->events.standing == TS_GIVEN && condition->hours.standing == TS_ABSENT)
        return (ts_preset){"30 s",
                           "about as long as an engine is cranked; common practice, no source"};
    return (ts_preset){NULL, NULL};
}

static const ts_field condition_fields[] = {
    {.key  = "the name of a spool",
     .form = TS_FORM_SPOOL_SPEEDS,
     .kind = TS_KIND_ROTATIONAL_SPEED,
     TS_AT(ts_condition, speed),
     .range   = TS_FROM(0.0, 20943.951023931954923, "rpm"), /* 200 000 rpm */
     .says    = "How fast that spool turns in this condition.  Every spool that is tapped needs "
                "one.",
     .example = "13400 rpm"},
    {.key  = "events",
     .form = TS_FORM_TALLY,
     TS_AT(ts_condition, events),
     .range   = TS_FROM(0, 1e9, "1"),
     .says    = "How often the condition is met in the life of the drive.",
     .example = "18000"},
    {.key  = "hours",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TIME,
     TS_AT(ts_condition, hours),
     .range   = TS_FROM(0.0, 3.6e9, "h"),
     .says    = "How long the drive stays in it, in its whole life.",
     .example = "4200 h"},
    {.key  = "lasts",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TIME,
     TS_AT(ts_condition, lasts),
     .range     = TS_ABOVE(0.0, 3.6e7, "s"),
     .preset    = {"30 s", "asked for by `events` without `hours`: about as long as an engine is "
                              "cranked; common practice, no source"},
     .preset_of = lasts_preset,
     .says      = "How long each of the events lasts.",
     .example   = "25 s"},
};

const ts_record_table ts_table_condition = {
    .id   = "condition",
    .name = "a condition",
    .says = "One operating condition: the speed of each spool, and how much of its life the drive "
            "spends there.",
    TS_TABLE(ts_condition, condition_fields),
};

static const char *const turns[]          = {"cw", "ccw", NULL};
const char *const        ts_answers_yes[] = {"yes", "no", NULL};

static const ts_field spool_fields[] = {
    {.key  = "turns",
     .form = TS_FORM_PICK,
     .need = TS_REQUIRED,
     .seen = true,
     TS_AT(ts_spool, turns),
     .choices = turns,
     .says    = "Which way it turns, in the file's `sight`.",
     .example = "ccw"},
    {.key  = "cranked",
     .form = TS_FORM_PICK,
     TS_AT(ts_spool, cranked),
     .choices = ts_answers_yes,
     .preset  = {"yes or no", "without a word the spool that turns fastest in the first condition "
                               "is taken to be cranked, and no other; common practice, no source"},
     .says    = "Does the starter turn this spool?",
     .example = "yes"},
    {.key  = "inertia",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_INERTIA,
     TS_AT(ts_spool, inertia),
     .range   = TS_ABOVE(0.0, 1e5, "kg.m2"),
     .says    = "Its moment of inertia about the engine axis.",
     .example = "0.82 kg.m2"},
    {.key    = "axial travel",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_LENGTH,
     TS_AT(ts_spool, axial_travel),
     .range   = TS_FROM(-0.1, 0.1, "mm"),
     .says    = "How far it moves along the engine axis against the casing, rearward counted "
                "positive and the cold build as 0.",
     .example = "-0.2..0.7 mm"},
    {.key    = "radial travel",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_LENGTH,
     TS_AT(ts_spool, radial_travel),
     .range   = TS_FROM(-0.1, 0.1, "mm"),
     .preset  = {"0..0 mm", "no movement across the engine axis is told"},
     .says    = "How far it moves across the engine axis.",
     .example = "-0.1..0.1 mm"},
    {.key  = "unlit drag",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_spool, unlit, unlit_count),
     .most    = 64,
     .record  = &ts_table_torque_point,
     .says    = "Of the cranked spool: the torque that brakes it while no fuel burns, against its "
                "speed, 0 or more, without what its gearbox takes.",
     .example = "[{speed: 0 rpm, torque: 20 N.m}, {speed: 6300 rpm, torque: 600 N.m}]"},
    {.key  = "lit torque",
     .form = TS_FORM_LIST,
     TS_LIST_AT(ts_spool, lit, lit_count),
     .most    = 64,
     .record  = &ts_table_torque_point,
     .says    = "Of the cranked spool: what the gases put on it while fuel burns as it does during "
                "a start, its own losses taken off.",
     .example = "[{speed: 2000 rpm, torque: -40 N.m}, {speed: 6300 rpm, torque: 900 N.m}]"},
    {.key  = "air torque",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TORQUE,
     TS_AT(ts_spool, air),
     .range   = TS_FROM(0.0, 1e6, "N.m"),
     .says    = "Of a spool that is not cranked: what the air of the cranked one puts on it at "
                "standstill, when that one idles; without the key it stays at rest in a start.",
     .example = "700 N.m"},
    {.key  = "oil drag",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TORQUE,
     TS_AT(ts_spool, oil_drag),
     .range   = TS_FROM(0.0, 1e6, "N.m"),
     .says    = "What the oil in its own bearings takes at idle and 100 degC beyond the curves; it "
                "grows as the oil gets cold.",
     .example = "6 N.m"},
};

static const char *judge_spool(const void *record, const char **key, const char **expected)
{
    const ts_spool *spool = record;

    if (!ts_curve_rises(spool->unlit, spool->unlit_count))
        return ts_curve_falls("unlit drag", key, expected);
    if (!ts_curve_takes(spool->unlit, spool->unlit_count)) {
        *key      = "unlit drag";
        *expected = "torques of 0 or more";
        return "without fuel nothing drives the spool, and a torque of its drag is below 0";
    }
    if (!ts_curve_rises(spool->lit, spool->lit_count))
        return ts_curve_falls("lit torque", key, expected);
    return NULL;
}

const ts_record_table ts_table_spool = {
    .id   = "spool",
    .name = "a spool",
    .says = "One spool of the engine.",
    TS_TABLE(ts_spool, spool_fields),
    .judge = judge_spool,
};
