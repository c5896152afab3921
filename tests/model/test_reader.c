/* Does the reader take the whole notation, and does it say what is wrong, where, and what is right?
 */
#include "model/opened_drive.h"
#include "support/close.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

static const double pi = 3.14159265358979323846;

/* ---- what is read --------------------------------------------------------------------------- */

static void every_kind_of_value_is_read(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_drive     *d    = &o.drive;
    const ts_accessory *pump = &d->accessories[0];
    assert_int_equal(d->towershaft.value, 1);
    assert_string_equal(d->title.text, "Corncrake 33, accessory drive");
    assert_int_equal(d->condition_count, 6);
    assert_string_equal(d->conditions[2].name, "ground idle");
    /* derived: 1 rpm = 2 pi / 60 rad/s, 1 h = 3600 s */
    assert_close(d->conditions[0].speed[0].value, 2600.0 * 2.0 * pi / 60.0, 1e-15);
    assert_same_double(d->conditions[0].speed[1].value, 0.0);
    assert_int_equal(d->conditions[0].events.value, 18000);
    assert_close(d->conditions[2].hours.value, 4200.0 * 3600.0, 1e-15);
    assert_int_equal(d->spools[0].turns.value, TS_CCW);
    assert_close(d->spools[0].axial_travel.low, -0.0002, 1e-15);
    assert_close(d->spools[0].axial_travel.high, 0.0007, 1e-15);
    assert_int_equal(pump->purpose.value, TS_FOR_ENGINE);
    assert_close(pump->torque.overload.torque, 34.0, 1e-15);
    assert_close(pump->torque.overload.time, 5.0, 1e-15);
    assert_close(pump->torque.statically.value, 130.0, 1e-15);
    assert_close(pump->inertia.value, 0.0021, 1e-15);
    assert_string_equal(pump->spline.text, "AS 000, 14 teeth");
    close_drive(&o);
}

static void box_is_read_with_branches_and_steps(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_box *hp = &o.drive.drive[0].box, *lp = &o.drive.drive[1].box;
    assert_int_equal(hp->bevels.teeth[0].value, 37);
    assert_int_equal(hp->bevels.teeth[1].value, 41);
    assert_int_equal(hp->clockwise_count, 3);
    assert_int_equal(hp->input.rear.use, TS_PAD_ACCESSORY);
    assert_string_equal(o.drive.accessories[hp->input.rear.accessory].name, "starter");
    assert_int_equal(hp->anticlockwise[0].step_count, 1);
    assert_int_equal(hp->anticlockwise[0].steps[0].teeth.value, 27);
    assert_int_equal(hp->anticlockwise[1].branch_count, 2);
    assert_int_equal(hp->anticlockwise[1].branch[0].rear.use, TS_PAD_COVER);
    assert_int_equal(hp->anticlockwise[1].branch[1].front.use, TS_PAD_HAND);
    assert_int_equal(hp->anticlockwise[1].branch[1].from.value, 0);
    assert_int_equal(lp->clockwise[1].step_count, 2);
    assert_int_equal(lp->clockwise[1].rear.use, TS_PAD_OPEN);
    assert_int_equal(lp->clockwise[2].from.value, 1);
    assert_int_equal(o.drive.drive[1].spool, 1);
    close_drive(&o);
}

static void clock_positions_are_angles_from_the_top(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    assert_close(o.drive.drive[0].tower_shaft.clock.value, pi, 1e-15);
    assert_close(o.drive.drive[1].box.arc.clock.value, 2.0 / 3.0 * pi, 1e-15); /* 120 deg */
    assert_close(o.drive.engine.cowl[0].clock.value, 0.5 * pi, 1e-15);
    close_drive(&o);
    open_variant(&o, "clock: \"5:00\"", "clock: \"12:30\"");
    assert_close(o.drive.engine.keep_out[0].clock.value, pi / 12.0, 1e-15); /* 15 deg */
    close_drive(&o);
    open_variant(&o, "clock: \"5:00\"", "clock: 360 deg");
    assert_same_double(o.drive.engine.keep_out[0].clock.value, 0.0);
    close_drive(&o);
}

static void what_is_seen_from_the_front_is_mirrored_once(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "sight: from behind", "sight: from front");
    assert_int_equal(o.drive.spools[0].turns.value, TS_CW);
    assert_close(o.drive.engine.cowl[0].clock.value, 1.5 * pi, 1e-15); /* 3:00 */
    assert_close(o.drive.drive[1].box.arc.clock.value, 4.0 / 3.0 * pi, 1e-15);
    assert_close(o.drive.drive[0].box.anticlockwise[1].branch[0].toward.value, 1.5 * pi, 1e-15);
    assert_int_equal(o.drive.drive[1].box.clockwise[1].turns.value, TS_CCW);
    /* Somebody who faces a pad sees the same in either case. */
    assert_int_equal(o.drive.accessories[0].turns.value, TS_CW);
    close_drive(&o);
    open_variant(&o, "mid bearing: 150 mm}", "turns: cw}");
    assert_int_equal(o.drive.drive[0].tower_shaft.turns.value, TS_CW);
    close_drive(&o);
    open_variant(&o, "clock: \"5:00\"", "clock: \"12:00\"");
    assert_same_double(o.drive.engine.keep_out[0].clock.value, 0.0);
    close_drive(&o);
}

static void long_form_keeps_source_date_and_confidence(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_measure     mass  = o.drive.accessories[1].mass;
    const ts_node_place *place = &o.source.nodes[mass.node];
    assert_close(mass.value, 11.0, 1e-15);
    assert_int_equal(mass.standing, TS_GIVEN);
    assert_int_equal(mass.node, node_at(&o, "accessories/starter/mass"));
    assert_true(ts_text_is(place->scalar, "11 kg"));
    assert_true(ts_text_is(o.source.nodes[place->source].scalar, "maker's sheet 4"));
    assert_true(ts_text_is(o.source.nodes[place->date].scalar, "2026-02-01"));
    assert_true(ts_text_is(o.source.nodes[place->confidence].scalar, "low"));
    close_drive(&o);
}

static void dates_are_days_of_the_calendar(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    /* derived: 56 years of 365 days, 14 leap days 1972..2024, then 31 + 28 + 31 + 30 days of 2026
     */
    assert_int_equal(o.drive.assumptions[0].date.day, 56 * 365 + 14 + 31 + 28 + 31 + 30);
    close_drive(&o);
    open_variant(&o, "until: 2027-06-30", "until: 2028-02-29");
    assert_int_equal(o.status, TS_OK);
    close_drive(&o);
    open_variant(&o, "until: 2027-06-30", "until: 2027-02-29");
    assert_non_null(message_of(&o, "not-a-date"));
    close_drive(&o);
}

static void unknown_stays_unknown(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    assert_int_equal(o.drive.accessories[2].body.length.standing, TS_UNKNOWN);
    assert_nan(o.drive.accessories[2].body.length.value);
    assert_int_equal(o.drive.accessories[5].turns.standing, TS_UNKNOWN);
    assert_true(o.drive.accessories[5].turns.value < 0);
    close_drive(&o);
    open_variant(&o, "teeth: 52", "teeth: unknown");
    assert_non_null(message_of(&o, "must-be-known"));
    close_drive(&o);
    open_variant(&o, "side: rear}", "side: unknown}");
    assert_non_null(message_of(&o, "must-be-known"));
    close_drive(&o);
}

static void absent_values_hold_nothing(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_accessory *breather = &o.drive.accessories[4];
    assert_int_equal(breather->mass.standing, TS_ABSENT);
    assert_nan(breather->mass.value);
    assert_int_equal(breather->mass.node, breather->node);
    assert_int_equal(breather->neck.node, 0);
    assert_nan(breather->torque.overload.torque);
    assert_nan(breather->speed[0].low);
    assert_null(breather->serves.text);
    close_drive(&o);
}

static void always_fills_conditions_that_are_not_named(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_span *speed = o.drive.accessories[0].speed;
    assert_close(speed[1].low, 900.0 * pi / 30.0, 1e-15);
    assert_true(isinf(speed[0].low) && speed[0].low < 0.0);
    assert_close(speed[0].high, 7600.0 * pi / 30.0, 1e-15);
    assert_int_equal(speed[0].node, node_at(&o, "accessories/fuel pump/speed/always"));
    close_drive(&o);
}

/* ---- defaults ------------------------------------------------------------------------------- */

static const ts_assumption *assumption_of(const opened_drive *o, const char *address,
                                          const char *key)
{
    const ts_node node = node_at(o, address);
    for (size_t i = 0; i < o->drive.assumed_count; i++) {
        const ts_assumption *each = &o->drive.assumed[i];
        if (each->node == node && strcmp(each->key, key) == 0)
            return each;
    }
    return NULL;
}

static void every_default_stands_in_the_register(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_assumption *bore = assumption_of(&o, "drive/lp/tower shaft", "bore");
    assert_non_null(bore);
    assert_string_equal(bore->value, "0 mm");
    assert_int_equal(o.drive.drive[1].tower_shaft.bore.standing, TS_ASSUMED);
    assert_same_double(o.drive.drive[1].tower_shaft.bore.value, 0.0);
    assert_null(assumption_of(&o, "drive/hp/tower shaft", "bore"));
    for (size_t i = 0; i < o.drive.assumed_count; i++) {
        assert_true(o.drive.assumed[i].node != 0);
        assert_true(strlen(o.drive.assumed[i].reason) > 10);
    }
    close_drive(&o);
}

static void root_radius_follows_the_pressure_angle(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    assert_close(o.drive.drive[0].box.gears.root_radius.value, 0.25, 1e-15); /* 25 deg */
    /* ISO 53:1998, table 2, profile A; from memory */
    assert_close(o.drive.drive[1].box.gears.root_radius.value, 0.38, 1e-15);
    close_drive(&o);
}

static void clutch_follows_the_purpose(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "    clutch: overrunning\n", "");
    assert_int_equal(o.drive.accessories[1].clutch.value, TS_CLUTCH_OVERRUNNING);
    assert_int_equal(o.drive.accessories[1].clutch.standing, TS_ASSUMED);
    assert_int_equal(o.drive.accessories[0].clutch.value, TS_CLUTCH_NONE);
    close_drive(&o);
}

static void limits_without_a_word_are_assumed_below_the_root(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "limits: {contact ratio: 1.2, wrap: 110 deg}\n", "");
    assert_int_equal(o.status, TS_OK);
    assert_close(o.drive.limits.contact_ratio.value, 1.2, 1e-15);
    assert_int_equal(o.drive.limits.contact_ratio.standing, TS_ASSUMED);
    assert_non_null(assumption_of(&o, "", "limits/contact ratio"));
    close_drive(&o);
}

static void fastest_spool_is_taken_as_cranked(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "cranked: yes, ", "");
    assert_int_equal(o.drive.spools[0].cranked.value, TS_YES);
    assert_int_equal(o.drive.spools[0].cranked.standing, TS_ASSUMED);
    assert_int_equal(o.drive.spools[1].cranked.value, TS_NO);
    assert_string_equal(assumption_of(&o, "spools/hp", "cranked")->value, "yes");
    close_drive(&o);
    open_variant(&o, "cranked: yes, ", "cranked: no, ");
    assert_int_equal(o.drive.spools[1].cranked.value, TS_YES);
    close_drive(&o);
}

static void power_keeps_the_torque_of_the_nearest_condition(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    const ts_measure *power = o.drive.accessories[0].power;
    assert_int_equal(power[1].standing, TS_GIVEN);
    assert_int_equal(power[0].standing, TS_ASSUMED);
    /* derived: P goes with n at constant torque; crank 2600 rpm is nearest to light-off 4200 rpm */
    assert_close(power[0].value, 1100.0 * 2600.0 / 4200.0, 1e-14);
    assert_close(power[5].value, 13000.0 * 24600.0 / 24300.0, 1e-14);
    assert_string_equal(assumption_of(&o, "accessories/fuel pump/power", "red line")->value,
                        "13.16 kW");
    /* A starter that drives absorbs nothing there, and nothing is assumed. */
    assert_int_equal(o.drive.accessories[1].power[0].standing, TS_ABSENT);
    assert_same_double(o.drive.accessories[1].power[3].value, 0.0);
    /* No power at all: nothing to go by. */
    assert_int_equal(o.drive.accessories[6].power[2].standing, TS_ABSENT);
    close_drive(&o);
}

/* ---- messages ------------------------------------------------------------------------------- */

typedef struct slip {
    const char *old, *new;
    const char *code;
    const char *pointed; /* the text at which the message points */
    const char *nearest; /* NULL: none is looked for             */
} slip;

/* The text of the file at the place of a message. */
static const char *text_at(const opened_drive *o, const ts_diagnostic *message)
{
    const char *at = o->bytes.at;
    for (uint32_t line = 1; line < message->line; line++)
        at = strchr(at, '\n') + 1;
    for (uint32_t column = 1; column < message->column; column++) {
        at++;
        while ((*at & 0xC0) == 0x80)
            at++;
    }
    return at;
}

static void assert_slip(const slip *each)
{
    opened_drive o;
    open_variant(&o, each->old, each->new);
    assert_int_equal(o.status, TS_NOT_UNDERSTOOD);
    const ts_diagnostic *message = message_of(&o, each->code);
    const char          *text    = text_at(&o, message);
    if (strncmp(text, each->pointed, strlen(each->pointed)) != 0)
        fail_msg("%s points at `%.30s`, not at `%s`", each->code, text, each->pointed);
    if (each->nearest != NULL) {
        assert_non_null(message->nearest);
        assert_string_equal(message->nearest, each->nearest);
    }
    assert_true(strlen(message->says) > 5);
    assert_int_equal(strchr(message->says, '%') == NULL || strstr(each->new, "%") != NULL, 1);
    close_drive(&o);
}

static void slips_are_said_where_they_are(void **state)
{
    (void)state;
    static const slip slips[] = {
        {"mass: 9.4 kg", "mas: 9.4 kg", "unknown-key", "mas:", "mass"},
        {"overhang: 84 mm", "overlap: 84 mm", "unknown-key", "overlap:", NULL},
        {"    for: aircraft\n", "", "missing-key", "hydraulic pump", NULL},
        {"mass: 9.4 kg", "mass: 9,4 kg", "decimal-comma", "", NULL},
        {"mass: 9.4 kg", "mass: 9.4", "missing-unit", "", NULL},
        {"mass: 9.4 kg", "mass: 9.4 kgs", "unknown-unit", "kgs", "kg"},
        {"mass: 9.4 kg", "mass: 9.4 mm", "wrong-kind", "mm", NULL},
        {"mass: 9.4 kg", "mass: 94000 kg", "out-of-range", "94000 kg", NULL},
        {"mass: 9.4 kg", "mass: [9.4 kg]", "wrong-form", "mass", NULL},
        {"mass: 9.4 kg", "mass:", "no-value", "mass", NULL},
        {"mass: 9.4 kg", "mass: ''", "no-value", "mass", NULL},
        {"mass: 9.4 kg", "mass: {source: x}", "missing-key", "mass", NULL},
        {"mass: 9.4 kg", "mass: {value: 9 kg, conf: low}", "unknown-key", "conf:", NULL},
        {"confidence: low", "confidence: lo", "not-a-choice", "lo}", "low"},
        {"date: 2026-02-01", "date: 2026-02-30", "not-a-date", "2026-02-30", NULL},
        {"teeth: 52", "teeth: 52.5", "not-a-whole-number", "52.5", NULL},
        {"teeth: 52", "teeth: -52", "not-a-whole-number", "-52", NULL},
        {"teeth: 52", "teeth: 4", "out-of-range", "4,", NULL},
        {"teeth: 52", "teeth: 2001", "out-of-range", "2001", NULL},
        {"[43, 46]", "[43, 46, 47]", "wrong-form", "teeth", NULL},
        {"[43, 46]", "43", "wrong-form", "teeth", NULL},
        {"[43, 46]", "[43, x]", "not-a-whole-number", "x", NULL},
        {"float: splined stub", "float: spline stub", "not-a-choice", "spline stub",
         "splined stub"},
        {"cranked: yes", "cranked: true", "not-a-choice", "true", NULL},
        {"6600..7300 rpm", "7300..6600 rpm", "reversed-range", "", NULL},
        {"6600..7300 rpm", "6600 rpm", "not-a-range", "", NULL},
        {"-0.2..0.7 mm", "..0.7 mm", "open-range", "..0.7 mm", NULL},
        {"34 N.m for 5 s", "34 N.m", "missing-time", "34 N.m", NULL},
        {"34 N.m for 5 s", "34 N.m for 5 kg", "wrong-kind", "kg", NULL},
        {"34 N.m for 5 s", "34 N.m for 0 s", "out-of-range", "34", NULL},
        {"clock: \"5:00\"", "clock: \"13:00\"", "not-a-clock", "\"13:00\"", NULL},
        {"clock: \"5:00\"", "clock: \"5:60\"", "not-a-clock", "\"5:60\"", NULL},
        {"clock: \"5:00\"", "clock: 361 deg", "out-of-range", "361", NULL},
        {"rear: starter", "rear: startr", "unknown-accessory", "startr", "starter"},
        {"rear: starter", "rear: fuel pump", "pad-used-twice", "fuel pump, rear", NULL},
        {"  hp:\n    take-off", "  ip:\n    take-off", "unknown-spool", "ip:", "hp"},
        {"{hp: 2600 rpm,  lp", "{lp", "missing-speed", "crank", NULL},
        {"{hp: 2600 rpm,", "{hp: unknown,", "missing-speed", "unknown", NULL},
        {"{light-off: 1.1 kW,", "{lightoff: 1.1 kW,", "unknown-condition", "lightoff", "light-off"},
        {"drives: {crank: 220 N.m,", "drives: {krank: 220 N.m,", "unknown-condition", "krank",
         "crank"},
        {"speed: {always:", "speed: {allways:", "unknown-condition", "allways", NULL},
        {"    drives: {crank: 220 N.m, light-off: 180 N.m}     #", "    #",
         "starter-without-drives", "starter", NULL},
        {"bore: 18 mm", "bore: 26 mm", "contradiction", "26 mm", NULL},
        {"mid bearing: 150 mm", "mid bearing: 350 mm", "contradiction", "350 mm", NULL},
        {"gears: {module: 2.0 mm, pressure angle: 25 deg, ", "gears: {pressure angle: 25 deg, ",
         "missing-module", "input", NULL},
        {"front: hand turning, from: gear", "front: hand turning, from: step 2", "missing-step",
         "step 2", NULL},
        {"step: {teeth: 27, module: 2.0 mm, face: 10 mm}", "step: []", "wrong-form", "step", NULL},
        {"step: {teeth: 27, module: 2.0 mm, face: 10 mm}",
         "step: [{teeth: 9, face: 1 mm}, {teeth: 9, face: 1 mm}, {teeth: 9, face: 1 mm}, {teeth: "
         "9, face: 1 mm}]",
         "too-many", "step", NULL},
        {"input:         {teeth: 52,", "input:         {toward: \"3:00\", teeth: 52,",
         "unknown-key", "toward", NULL},
        {"  fuel pump:\n", "  always:\n", "bad-name", "always", NULL},
        {"  fuel pump:\n", "  a/b:\n", "bad-name", "a/b", NULL},
        {"  fuel pump:\n", "  ' fuel pump':\n", "bad-name", "' fuel", NULL},
        {"  fuel pump:\n", "  fuel pump that has a much too long name of its own:\n", "bad-name",
         "fuel pump that", NULL},
        {"material: carburised 9310", "material: carburized 9310", "not-a-choice", "carburized",
         "carburised 9310"},
        {"towershaft: 1", "towershaft: 2", "out-of-range", "2", NULL},
        {"sight: from behind", "sight: from the front", "not-a-choice", "from the front",
         "from front"},
    };
    for (size_t i = 0; i < sizeof slips / sizeof slips[0]; i++)
        assert_slip(&slips[i]);
}

/* Between braces a comma cuts a number in two; that is one slip, and one message. */
static void comma_in_a_number_between_braces_is_one_message(void **state)
{
    (void)state;
    static const struct {
        const char *old, *new, *pointed, *says;
    } slips[] = {
        {"module: 2.4 mm", "module: 2,4 mm", "2,4 mm",
         "a comma stands inside the number; write 2.4 mm"},
        {"{hp: 24300 rpm", "{hp: 24,300 rpm", "24,300 rpm",
         "a comma stands inside the number; write 24300 rpm, or 24.300 rpm"},
        {"ground idle: 4.5 kW", "ground idle: 4,5 kW", "4,5 kW",
         "a comma stands inside the number; write 4.5 kW"},
        {"shift: 0.1,", "shift: 0,1,", "0,1,", "a comma stands inside the number; write 0.1"},
        {"{value: 11 kg", "{value: 10,5 kg", "10,5 kg",
         "a comma stands inside the number; write 10.5 kg"},
        {"static: 130 N.m", "static: 1,234,567 N.m", "1,234,567 N.m",
         "a comma stands inside the number; write 1234567 N.m"},
        {"overload: 34 N.m for 5 s", "overload: 34,5 N.m for 5 s", "34,5 N.m for",
         "a comma stands inside the number; write 34.5 N.m for 5 s"},
        {"take-off: 6600..7300 rpm", "take-off: 6600,5..7300,5 rpm", "6600,5..7300,5 rpm",
         "a comma stands inside a number of this range"},
    };
    for (size_t i = 0; i < sizeof slips / sizeof slips[0]; i++) {
        opened_drive o;
        open_variant(&o, slips[i].old, slips[i].new);
        assert_int_equal(ts_diagnostics_count(o.list), 1);
        const ts_diagnostic *message = message_of(&o, "decimal-comma");
        assert_string_equal(message->says, slips[i].says);
        assert_memory_equal(text_at(&o, message), slips[i].pointed, strlen(slips[i].pointed));
        assert_non_null(message->address);
        close_drive(&o);
    }
}

/* Keys that begin with a digit, and numbers before them, which are no cut numbers. */
static void keys_that_begin_with_a_digit_are_keys(void **state)
{
    (void)state;
    static const char *const news[] = {
        "{radius: 72, 5 mm, length: 190 mm}",
        "{radius: 72,5: mm, length: 190 mm}",
        "{radius: 72 mm,5 mm, length: 190 mm}",
        "{radius: '72',5 mm, length: 190 mm}",
    };
    for (size_t i = 0; i < sizeof news / sizeof news[0]; i++) {
        opened_drive o;
        open_variant(&o, "{radius: 72 mm, length: 190 mm}", news[i]);
        assert_non_null(message_of(&o, "unknown-key"));
        close_drive(&o);
    }
}

static void key_of_another_record_is_sent_there(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "overhang: 84 mm", "overlap: 84 mm");
    assert_string_equal(message_of(&o, "unknown-key")->says,
                        "`overlap` is not a key of an accessory; it belongs to a take-off");
    close_drive(&o);
}

static void message_names_range_and_example(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "bore: 18 mm", "bore: 18");
    assert_string_equal(message_of(&o, "missing-unit")->expected,
                        "a length from 0 mm to 500 mm, such as 18 mm");
    assert_string_equal(message_of(&o, "missing-unit")->address, "drive/hp/tower shaft/bore");
    close_drive(&o);
    open_variant(&o, "drives: {crank: 220 N.m", "drives: {crank: 220 Nmm");
    assert_string_equal(message_of(&o, "unknown-unit")->expected,
                        "a torque from 0 N.m to 1000000 N.m, such as 220 N.m");
    close_drive(&o);
    open_variant(&o, "6600..7300 rpm", "6600..7300");
    assert_string_equal(
        message_of(&o, "missing-unit")->expected,
        "a range of rotational speed from 0 rpm to 200000 rpm, such as 6600..7300 rpm");
    close_drive(&o);
    open_variant(&o, "drives: {crank: 220 N.m, light-off: 180 N.m}", "drives: 220 N.m");
    assert_string_equal(message_of(&o, "wrong-form")->expected,
                        "values by condition from 0 N.m to 1000000 N.m, such as {crank: 220 N.m, "
                        "light-off: 180 N.m}");
    close_drive(&o);
    open_variant(&o, "teeth: 52", "teeth: many");
    assert_string_equal(message_of(&o, "not-a-whole-number")->expected,
                        "a whole number from 5 to 2000, such as 61");
    close_drive(&o);
}

/* A block that cannot be read is one slip, and what refers to it is none. */
static void misspelt_block_is_one_message(void **state)
{
    (void)state;
    static const struct {
        const char *old, *new, *says, *nearest;
    } slips[] = {
        {"\naccessories:\n", "\nacessories:\n", "`acessories` is not a key of a drive file",
         "accessories"},
        {"\nconditions:  ", "\ncondition:  ", "`condition` is not a key of a drive file",
         "conditions"},
        {"\nspools:\n", "\nspool:\n", "`spool` is not a key of a drive file", "spools"},
        {"  hp:\n    take-off:", "  hp:\n    take-of:",
         "`take-of` is not a key of the drive of a spool", "take-off"},
    };
    for (size_t i = 0; i < sizeof slips / sizeof slips[0]; i++) {
        opened_drive o;
        open_variant(&o, slips[i].old, slips[i].new);
        const ts_diagnostic *message = message_of(&o, "unknown-key");
        assert_int_equal(ts_diagnostics_count(o.list), 1);
        assert_string_equal(message->says, slips[i].says);
        assert_string_equal(message->nearest, slips[i].nearest);
        close_drive(&o);
    }
}

/* A block that is not there, under a name that is near to nothing. */
static void missing_block_is_one_message(void **state)
{
    (void)state;
    static const char *const blocks[] = {"\naccessories:\n", "\nspools:\n", "\nconditions:  "};
    for (size_t i = 0; i < sizeof blocks / sizeof blocks[0]; i++) {
        opened_drive o;
        open_variant(&o, blocks[i], "\nzzz:\n");
        (void)message_of(&o, "missing-key");
        (void)message_of(&o, "unknown-key");
        assert_int_equal(ts_diagnostics_count(o.list), 2);
        close_drive(&o);
    }
}

static void second_waiver_for_the_same_is_refused(void **state)
{
    (void)state;
    opened_drive o;
    open_extended(&o, "  - {rule: C2-hunting-tooth, at: drive/hp/box/clockwise/2, why: again}");
    const ts_diagnostic *message = message_of(&o, "duplicate-waiver");
    assert_int_equal(message->line, o.source.nodes[o.drive.waived[1].node].line);
    close_drive(&o);
}

static void all_errors_come_in_one_run(void **state)
{
    (void)state;
    static const char faulty[] = "towershaft: 1\n"
                                 "titel: x\n"
                                 "spools:\n"
                                 "  hp: {turns: left}\n"
                                 "conditions:\n"
                                 "  a: {hp: 100, lp: 3 rpm}\n"
                                 "accessories:\n"
                                 "  pump: {for: engines, turns: cw, mass: 3,5 kg}\n"
                                 "drive: {ip: {}}\n";
    opened_drive      o;
    open_bytes(&o, TS_TEXT(faulty));
    static const struct {
        const char *code;
        uint32_t    line, column;
    } expected[] = {
        {"unknown-key", 2, 1},    /* titel                     */
        {"not-a-choice", 4, 15},  /* left                      */
        {"missing-unit", 6, 11},  /* 100                       */
        {"unknown-key", 6, 16},   /* lp                        */
        {"not-a-choice", 8, 15},  /* engines                   */
        {"decimal-comma", 8, 41}, /* 3,5 kg                   */
        {"unknown-spool", 9, 9},  /* ip                        */
        {"missing-key", 9, 9},    /* take-off, tower shaft box */
    };
    for (size_t i = 0; i < sizeof expected / sizeof expected[0]; i++) {
        bool found = false;
        for (size_t k = 0; k < ts_diagnostics_kept(o.list); k++) {
            const ts_diagnostic *m = ts_diagnostics_at(o.list, k);
            found =
                found || (strcmp(m->code, expected[i].code) == 0 && m->line == expected[i].line &&
                          (expected[i].column == 0 || m->column == expected[i].column));
        }
        if (!found)
            fail_msg("no %s at %u:%u", expected[i].code, expected[i].line, expected[i].column);
    }
    assert_true(ts_diagnostics_count(o.list) >= 10);
    close_drive(&o);
}

static void columns_count_characters_not_bytes(void **state)
{
    (void)state;
    opened_drive o;
    open_variant(&o, "{radius: 72 mm, length: 190 mm}",
                 "{radius: {value: 72 mm, source: \"\xC3\xA9\xE2\x82\xAC\"}, length: 190}");
    const ts_diagnostic *message = message_of(&o, "missing-unit");
    assert_int_equal(strncmp(text_at(&o, message), "190}", 4), 0);
    close_drive(&o);
}

/* ---- addresses ------------------------------------------------------------------------------ */

static void every_node_is_found_by_its_address(void **state)
{
    (void)state;
    opened_drive o;
    open_sample(&o);
    for (ts_node node = 1; node <= o.source.node_count; node++) {
        ts_buffer address;
        ts_node   deepest;
        ts_buffer_open(&address, NULL);
        ts_source_address(&o.source, node, &address);
        const ts_text text = {address.bytes != NULL ? address.bytes : "", address.length};
        assert_int_equal(ts_source_find(&o.source, text, &deepest), node);
        assert_int_equal(deepest, node);
        ts_buffer_close(&address);
    }
    close_drive(&o);
}

static void address_that_leads_nowhere_tells_how_far_it_goes(void **state)
{
    (void)state;
    static const char *const nowhere[] = {
        "drive/hp/box/clockwise/9",
        "drive/hp/box/clockwise/02",
        "drive/hp/box/clockwise/0",
        "drive/hp/box/clockwise/2/",
        "drive/hp//box",
        "/drive",
        "drive/hp/box/clockwise/-1",
        "title/x",
    };
    opened_drive o;
    open_sample(&o);
    ts_node deepest;
    for (size_t i = 0; i < sizeof nowhere / sizeof nowhere[0]; i++)
        assert_int_equal(ts_source_find(&o.source, ts_text_of(nowhere[i]), &deepest), 0);
    (void)ts_source_find(&o.source, TS_TEXT("drive/hp/box/clockwise/9/teeth"), &deepest);
    assert_int_equal(deepest, node_at(&o, "drive/hp/box/clockwise"));
    close_drive(&o);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_kind_of_value_is_read),
        cmocka_unit_test(box_is_read_with_branches_and_steps),
        cmocka_unit_test(clock_positions_are_angles_from_the_top),
        cmocka_unit_test(what_is_seen_from_the_front_is_mirrored_once),
        cmocka_unit_test(long_form_keeps_source_date_and_confidence),
        cmocka_unit_test(dates_are_days_of_the_calendar),
        cmocka_unit_test(unknown_stays_unknown),
        cmocka_unit_test(absent_values_hold_nothing),
        cmocka_unit_test(always_fills_conditions_that_are_not_named),
        cmocka_unit_test(every_default_stands_in_the_register),
        cmocka_unit_test(root_radius_follows_the_pressure_angle),
        cmocka_unit_test(clutch_follows_the_purpose),
        cmocka_unit_test(limits_without_a_word_are_assumed_below_the_root),
        cmocka_unit_test(fastest_spool_is_taken_as_cranked),
        cmocka_unit_test(power_keeps_the_torque_of_the_nearest_condition),
        cmocka_unit_test(slips_are_said_where_they_are),
        cmocka_unit_test(comma_in_a_number_between_braces_is_one_message),
        cmocka_unit_test(keys_that_begin_with_a_digit_are_keys),
        cmocka_unit_test(key_of_another_record_is_sent_there),
        cmocka_unit_test(message_names_range_and_example),
        cmocka_unit_test(misspelt_block_is_one_message),
        cmocka_unit_test(missing_block_is_one_message),
        cmocka_unit_test(second_waiver_for_the_same_is_refused),
        cmocka_unit_test(all_errors_come_in_one_run),
        cmocka_unit_test(columns_count_characters_not_bytes),
        cmocka_unit_test(every_node_is_found_by_its_address),
        cmocka_unit_test(address_that_leads_nowhere_tells_how_far_it_goes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
