/* model/field_start.c: what does the file say of starts? */
#include "model/drive.h"
#include "model/field.h"

static const ts_field point_fields[] = {
    {.key  = "speed",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_ROTATIONAL_SPEED,
     TS_AT(ts_torque_point, speed),
     .range   = TS_FROM(0.0, 20943.951023931954923, "rpm"), /* 200 000 rpm */
     .says    = "At which speed.",
     .example = "2000 rpm"},
    {.key  = "torque",
     .form = TS_FORM_MEASURE,
     .need = TS_REQUIRED,
     .kind = TS_KIND_TORQUE,
     TS_AT(ts_torque_point, torque),
     .range   = TS_FROM(-1e6, 1e6, "N.m"),
     .says    = "Which torque.",
     .example = "180 N.m"},
};

const ts_record_table ts_table_torque_point = {
    .id   = "torque_point",
    .name = "a point of a torque curve",
    .says = "One point of a torque curve; between two points the torque changes evenly with the "
            "speed, and beyond the last it goes on as before it.",
    TS_TABLE(ts_torque_point, point_fields),
};

static const ts_field start_fields[] = {
    {.key  = "light-off",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ROTATIONAL_SPEED,
     TS_AT(ts_start, light_off),
     .range   = TS_ABOVE(0.0, 20943.951023931954923, "rpm"),
     .says    = "Speed of the cranked spool at which the fuel burns; without the key the highest "
                "at which a starter drives in a condition.",
     .example = "2000 rpm"},
    {.key  = "cut-out",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ROTATIONAL_SPEED,
     TS_AT(ts_start, cut_out),
     .range   = TS_ABOVE(0.0, 20943.951023931954923, "rpm"),
     .says    = "Speed of the cranked spool at which the starter is shut off; without the key half "
                "of the highest that it has in any condition.",
     .example = "5200 rpm"},
    {.key  = "idle",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ROTATIONAL_SPEED,
     TS_AT(ts_start, idle),
     .range   = TS_ABOVE(0.0, 20943.951023931954923, "rpm"),
     .says    = "Speed of the cranked spool at which the start is done; without the key the lowest "
                "at which no starter drives in a condition.",
     .example = "6300 rpm"},
    {.key  = "ambient",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TEMPERATURE,
     TS_AT(ts_start, ambient),
     .range   = TS_FROM(200.0, 340.0, "degC"),
     .preset  = {"15 degC", "a standard day at sea level, ISO 2533"},
     .says    = "Temperature of the air.",
     .example = "-20 degC"},
    {.key  = "oil",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TEMPERATURE,
     TS_AT(ts_start, oil),
     .range   = TS_FROM(220.0, 450.0, "degC"),
     .preset  = {"15 degC",
                 "an engine that has stood is as warm as a standard day; common practice, "
                  "no source"},
     .says    = "Temperature of the oil in the bearings, from rest to idle.",
     .example = "-20 degC"},
    {.key  = "curves at",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TEMPERATURE,
     TS_AT(ts_start, tables),
     .range   = TS_FROM(200.0, 340.0, "degC"),
     .preset  = {"15 degC", "a standard day at sea level, ISO 2533"},
     .says    = "Temperature of the air at which the curves of the spool hold.",
     .example = "15 degC"},
    {.key  = "pressure",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_start, pressure),
     .range   = TS_FROM(0.1, 1.5, "1"),
     .preset  = {"1", "as where the curves of the spool hold; common practice, no source"},
     .says    = "Ambient pressure over that at which the curves of the spool hold.",
     .example = "0.8"},
    {.key    = "ambients",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_TEMPERATURE,
     TS_AT(ts_start, ambients),
     .range   = TS_FROM(200.0, 340.0, "degC"),
     .preset  = {"-40..50 degC", "the air in which engines are started on the ground; common "
                                  "practice, no source"},
     .says    = "Temperatures of the air that --grid goes through.",
     .example = "-40..50 degC"},
    {.key    = "oils",
     .form   = TS_FORM_SPAN,
     .closed = true,
     .kind   = TS_KIND_TEMPERATURE,
     TS_AT(ts_start, oils),
     .range   = TS_FROM(220.0, 450.0, "degC"),
     .preset  = {"-40..50 degC", "as the air; common practice, no source"},
     .says    = "Temperatures of the oil that --grid goes through.",
     .example = "-40..50 degC"},
    {.key  = "grid",
     .form = TS_FORM_TALLY,
     TS_AT(ts_start, grid),
     .range   = TS_FROM(2, 19, "1"),
     .preset  = {"7", "steps of 15 K; common practice, no source"},
     .says    = "How many temperatures of each.",
     .example = "7"},
    {.key  = "hung below",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_ROTATIONAL_ACCELERATION,
     TS_AT(ts_start, hung),
     .range   = TS_FROM(0.0, 104719.75511965977462, "rpm/s") /* 1 000 000 rpm/s */,
     .preset  = {"20 rpm/s", "a spool that gains less is not waited for; common practice, no "
                              "source"},
     .says    = "Acceleration of the cranked spool at which the start is taken to hang.",
     .example = "20 rpm/s"},
    {.key  = "gives up after",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TIME,
     TS_AT(ts_start, gives_up),
     .range   = TS_ABOVE(0.0, 1800.0, "s"),
     .preset  = {"120 s", "longer than a starter may run; common practice, no source"},
     .says    = "How long a start may take.",
     .example = "90 s"},
    {.key  = "from idle in",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_TIME,
     TS_AT(ts_start, gains_in),
     .range   = TS_FROM(0.1, 600.0, "s"),
     .preset  = {"5 s", "at most as long from minimum flight idle to 95 % of take-off power or "
                         "thrust: 14 CFR 33.73(b), from memory; here from `idle` to the speed of the "
                         "condition, evenly: common practice, no source"},
     .says    = "How long the cranked spool takes from idle to the condition that --to names; its "
                "control accelerates it evenly.",
     .example = "5 s"},
    {.key  = "bearing factor",
     .form = TS_FORM_MEASURE,
     .kind = TS_KIND_NUMBER,
     TS_AT(ts_start, f_0),
     .range   = TS_FROM(0.0, 100.0, "1"),
     .preset  = {"2", "ball bearings oiled by jets or splash; Palmgren, 1.5 to 3 by kind (from "
                       "memory)"},
     .says    = "f_0 of Palmgren for a row of the bearings of the boxes: what oil takes in them.",
     .example = "2"},
};

/* What is left out follows from conditions, so only what is told can be held together here. */
static const char *judge_start(const void *record, const char **key, const char **expected)
{
    const ts_start *start = record;

    if (start->light_off.value >= start->idle.value) {
        *key      = "light-off";
        *expected = "a speed below `idle`";
        return "the engine lights no earlier than it idles";
    }
    return NULL;
}

const ts_record_table ts_table_start = {
    .id   = "start",
    .name = "the start",
    .says =
        "How the engine is started: from rest over light-off and the starter's cut-out to idle.",
    TS_TABLE(ts_start, start_fields),
    .judge = judge_start,
};
