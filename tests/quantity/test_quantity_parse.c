/* Is a quantity read as it was meant, and is a slip answered with what would help? */
#include "quantity/quantity.h"

#include "support/close.h"
#include "support/sequence.h"

#include <stdio.h>
#include <string.h>

static double read_as(const char *text, ts_kind kind, const char *unit_name)
{
    double            si = 0.0;
    const ts_unit    *unit;
    ts_quantity_fault fault;
    if (!ts_quantity_parse(ts_text_of(text), kind, &si, &unit, &fault))
        fail_msg("%s: %s", text, fault.says);
    assert_string_equal(unit->name, unit_name);
    return si;
}

static void quantities_are_read_in_si(void **state)
{
    (void)state;
    assert_same_double(read_as("34 N.m", TS_KIND_TORQUE, "N.m"), 34.0);
    assert_same_double(read_as("34N.m", TS_KIND_TORQUE, "N.m"), 34.0);
    assert_same_double(read_as("  34 \t N.m ", TS_KIND_TORQUE, "N.m"), 34.0);
    assert_same_double(read_as("4200 h", TS_KIND_TIME, "h"), 15120000.0);
    assert_same_double(read_as("-0.4 mm", TS_KIND_LENGTH, "mm"), -4e-4);
    assert_same_double(read_as("1.1 kW", TS_KIND_POWER, "kW"), 1100.0);
    assert_same_double(read_as("0.95", TS_KIND_NUMBER, "1"), 0.95);
    assert_same_double(read_as("95 %", TS_KIND_NUMBER, "%"), 0.95);
    assert_same_double(read_as("95%", TS_KIND_NUMBER, "%"), 0.95);
    assert_same_double(read_as("2e3 rpm", TS_KIND_ROTATIONAL_SPEED, "rpm"),
                       209.43951023931954923); /* derived: 200*pi/3 */
    assert_same_double(read_as("15 degC", TS_KIND_TEMPERATURE, "degC"), 288.15);
    assert_same_double(read_as("15 K", TS_KIND_TEMPERATURE_DIFFERENCE, "K"), 15.0);
}

static void minus_nothing_is_nothing(void **state)
{
    (void)state;
    const double si = read_as("-0 mm", TS_KIND_LENGTH, "mm");
    assert_same_double(si, 0.0);
    assert_false(signbit(si));
    assert_false(signbit(read_as("-0.0", TS_KIND_NUMBER, "1")));
    assert_false(signbit(read_as("-0 m", TS_KIND_LENGTH, "m")));
}

/* The written decimal is converted, not the double nearest to it. */
static void equal_texts_in_two_units_are_the_same_double(void **state)
{
    (void)state;
    sequence random = {61};
    for (int i = 0; i < 20000; i++) {
        char      in_mm[40], in_m[40];
        const int whole    = (int)sequence_below(&random, 100000);
        const int fraction = (int)sequence_below(&random, 1000);
        (void)snprintf(in_mm, sizeof in_mm, "%d.%03d mm", whole, fraction);
        (void)snprintf(in_m, sizeof in_m, "%d.%03d%03d m", whole / 1000, whole % 1000, fraction);
        assert_same_double(read_as(in_mm, TS_KIND_LENGTH, "mm"),
                           read_as(in_m, TS_KIND_LENGTH, "m"));
    }
    assert_same_double(read_as("0.1 mm", TS_KIND_LENGTH, "mm"), 0.0001);
    assert_same_double(read_as("25.4 mm", TS_KIND_LENGTH, "mm"),
                       read_as("1 in", TS_KIND_LENGTH, "in"));
    assert_same_double(read_as("59 degF", TS_KIND_TEMPERATURE, "degF"),
                       read_as("15 degC", TS_KIND_TEMPERATURE, "degC"));
}

typedef struct slip {
    const char *text;
    ts_kind     kind;
    const char *code;
    size_t      at;
    size_t      length;
    const char *expected; /* a part of what is expected */
    const char *nearest;
} slip;

static const slip slips[] = {
    {"34", TS_KIND_TORQUE, "missing-unit", 0, 2, "a torque such as 34 N.m or 34 lbf.in", NULL},
    {" 34 ", TS_KIND_TORQUE, "missing-unit", 1, 2, "34 N.m", NULL},
    {"0", TS_KIND_LENGTH, "missing-unit", 0, 1, "a length such as 0 mm or 0 in", NULL},
    {"3,5 kW", TS_KIND_POWER, "decimal-comma", 0, 6, "a power such as 12 kW", NULL},
    {"1,234.5 kW", TS_KIND_POWER, "decimal-comma", 0, 10, "a power", NULL},
    {"1,234,567 W", TS_KIND_POWER, "decimal-comma", 0, 11, "a power", NULL},
    {"1,23,456 W", TS_KIND_POWER, "decimal-comma", 0, 10, "no marks between thousands", NULL},
    {"34 Nm", TS_KIND_TORQUE, "unknown-unit", 3, 2, "34 N.m", "N.m"},
    {"34 N*m", TS_KIND_TORQUE, "unknown-unit", 3, 3, "34 N.m", "N.m"},
    {"34 N\xc2\xb7m", TS_KIND_TORQUE, "unknown-unit", 3, 4, "34 N.m", "N.m"},
    {"34 in-lb", TS_KIND_TORQUE, "unknown-unit", 3, 5, "34 lbf.in", "lbf.in"},
    {"24600 RPM", TS_KIND_ROTATIONAL_SPEED, "unknown-unit", 6, 3, "24600 rpm", "rpm"},
    {"24600 rev/min", TS_KIND_ROTATIONAL_SPEED, "unknown-unit", 6, 7, "24600 rpm", "rpm"},
    {"5 kw", TS_KIND_POWER, "unknown-unit", 2, 2, "5 kW", "kW"},
    {"5 mw", TS_KIND_POWER, "unknown-unit", 2, 2, "5 kW", "MW"},
    {"5 furlongs", TS_KIND_LENGTH, "unknown-unit", 2, 8, "5 mm", NULL},
    {"5 1", TS_KIND_NUMBER, "blank-in-number", 0, 3, "a number such as 5", NULL},
    {"23 500 g", TS_KIND_MASS, "blank-in-number", 0, 6, "a mass such as", NULL},
    {"2.5 500 g", TS_KIND_MASS, "blank-in-number", 0, 9, "a mass such as 2.5", NULL},
    {"15 \xc2\xb0"
     "C",
     TS_KIND_TEMPERATURE, "unknown-unit", 3, 3, "15 degC", "degC"},
    {"34 lbf.ft", TS_KIND_ENERGY, "wrong-kind", 3, 6, "an energy such as 34 J", NULL},
    {"34 J", TS_KIND_TORQUE, "wrong-kind", 3, 1, "34 N.m", NULL},
    {"120 Hz", TS_KIND_ROTATIONAL_SPEED, "wrong-kind", 4, 2, "such as 7200 rpm", NULL},
    {"0.1 kHz", TS_KIND_ROTATIONAL_SPEED, "wrong-kind", 4, 3, "such as 6000 rpm", NULL},
    {"7200 rpm", TS_KIND_FREQUENCY, "wrong-kind", 5, 3, "a frequency such as 120 Hz", NULL},
    {"40 degC", TS_KIND_TEMPERATURE_DIFFERENCE, "wrong-kind", 3, 4, "40 K or 40 degR", "K"},
    {"40 degF", TS_KIND_TEMPERATURE_DIFFERENCE, "wrong-kind", 3, 4, "40 K", "degR"},
    {"3 bar", TS_KIND_PRESSURE_ABSOLUTE, "wrong-kind", 2, 3, "3 bar(a)", "bar(a)"},
    {"3 bar", TS_KIND_PRESSURE_GAUGE, "wrong-kind", 2, 3, "3 bar(g)", "bar(g)"},
    {"3 bar(g)", TS_KIND_PRESSURE_ABSOLUTE, "wrong-kind", 2, 6, "3 bar(a)", "bar(a)"},
    {"3 bar(a)", TS_KIND_PRESSURE_GAUGE, "wrong-kind", 2, 6, "3 bar(g)", "bar(g)"},
    {"35 deg", TS_KIND_NUMBER, "wrong-kind", 3, 3, "a number such as 35", NULL},
    {"35 %", TS_KIND_ANGLE, "wrong-kind", 3, 1, "an angle such as 35 deg", NULL},
    {"5 lb", TS_KIND_FORCE, "wrong-kind", 2, 2, "5 N or 5 lbf", "lbf"},
    {"", TS_KIND_TORQUE, "missing-number", 0, 1, "12 N.m", NULL},
    {"  ", TS_KIND_TORQUE, "missing-number", 2, 1, "12 N.m", NULL},
    {"N.m", TS_KIND_TORQUE, "not-a-number", 0, 3, "12 N.m", NULL},
    {".5 N.m", TS_KIND_TORQUE, "not-a-number", 0, 6, "12 N.m", NULL},
    {"1.2.3 N.m", TS_KIND_TORQUE, "not-a-number", 0, 9, "12 N.m", NULL},
    {"0x20 N.m", TS_KIND_TORQUE, "not-a-number", 0, 8, "12 N.m", NULL},
    {"nan N.m", TS_KIND_TORQUE, "not-a-number", 0, 7, "12 N.m", NULL},
    {"1e181 N.m", TS_KIND_TORQUE, "too-large", 0, 5, "between", NULL},
    {"1e999999999999999999999 N.m", TS_KIND_TORQUE, "too-large", 0, 23, "between", NULL},
    {"1e-181 N.m", TS_KIND_TORQUE, "too-small", 0, 6, "between", NULL},
    {"1e-999999999999999999999 %", TS_KIND_NUMBER, "too-small", 0, 24, "between", NULL},
};

static void check_slip(const slip *s)
{
    double            si   = 77.0;
    const ts_unit    *unit = NULL;
    ts_quantity_fault fault;
    memset(&fault, 0x5A, sizeof fault);
    if (ts_quantity_parse(ts_text_of(s->text), s->kind, &si, &unit, &fault))
        fail_msg("'%s' was accepted", s->text);
    assert_string_equal(fault.code, s->code);
    if (fault.at != s->at || fault.length != s->length)
        fail_msg("'%s': at %zu, length %zu", s->text, fault.at, fault.length);
    if (strstr(fault.expected, s->expected) == NULL)
        fail_msg("'%s': expected %s", s->text, fault.expected);
    if (s->nearest == NULL)
        assert_null(fault.nearest);
    else
        assert_string_equal(fault.nearest, s->nearest);
    assert_true(strlen(fault.says) > 10);
}

static void slips_are_answered_with_what_would_help(void **state)
{
    (void)state;
    for (size_t i = 0; i < sizeof slips / sizeof slips[0]; i++)
        check_slip(&slips[i]);
    /* nobody has to take unit and fault */
    double si;
    assert_false(ts_quantity_parse(TS_TEXT("5"), TS_KIND_LENGTH, &si, NULL, NULL));
    assert_true(ts_quantity_parse(TS_TEXT("5 mm"), TS_KIND_LENGTH, &si, NULL, NULL));
}

static void what_stands_inside_a_number_is_taken_out_again(void **state)
{
    (void)state;
    static const struct {
        const char *text, *says;
    } cases[] = {
        {"2,25 mm", "a comma stands inside the number; write 2.25 mm"},
        {"-0,5 mm", "a comma stands inside the number; write -0.5 mm"},
        {"0,500 mm", "a comma stands inside the number; write 0.500 mm"},
        {"24,300 mm", "a comma stands inside the number; write 24300 mm, or 24.300 mm"},
        {"1,234.5 mm", "a comma stands inside the number; write 1234.5 mm"},
        {"1,234,567 mm", "a comma stands inside the number; write 1234567 mm"},
        {"12,34,56 mm", "a comma stands inside the number"},
        {"23 500 mm", "blanks and marks inside a number are not allowed; write 23500 mm"},
        {"-1 234 567 mm", "blanks and marks inside a number are not allowed; write -1234567 mm"},
        {"23'500 mm", "blanks and marks inside a number are not allowed; write 23500 mm"},
        {"23_500 mm", "blanks and marks inside a number are not allowed; write 23500 mm"},
        {"23\xE2\x80\xAF"
         "500.5 mm",
         "blanks and marks inside a number are not allowed; write 23500.5 mm"},
        {"23 50 mm", "blanks and marks inside a number are not allowed"},
        {"0.5 500 mm", "blanks and marks inside a number are not allowed"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        double            si;
        ts_quantity_fault fault;
        assert_false(
            ts_quantity_parse(ts_text_of(cases[i].text), TS_KIND_LENGTH, &si, NULL, &fault));
        assert_string_equal(fault.says, cases[i].says);
    }
}

static void kinds_that_must_not_mix_say_why(void **state)
{
    (void)state;
    static const struct {
        const char *text;
        ts_kind     kind;
        const char *says;
    } cases[] = {
        {"34 lbf.ft", TS_KIND_ENERGY, "torque and energy do not mix"},
        {"34 J", TS_KIND_TORQUE, "torque and energy do not mix"},
        {"120 Hz", TS_KIND_ROTATIONAL_SPEED, "many cycles a turn"},
        {"40 degC", TS_KIND_TEMPERATURE_DIFFERENCE, "no zero of its own"},
        {"3 bar(g)", TS_KIND_PRESSURE_ABSOLUTE, "ambient pressure"},
        {"3 psi", TS_KIND_PRESSURE_GAUGE, "(a) for absolute or (g) for gauge"},
        {"3 deg", TS_KIND_NUMBER, "a plain number was due"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        double            si;
        ts_quantity_fault fault;
        assert_false(
            ts_quantity_parse(ts_text_of(cases[i].text), cases[i].kind, &si, NULL, &fault));
        if (strstr(fault.says, cases[i].says) == NULL)
            fail_msg("%s: %s", cases[i].text, fault.says);
    }
}

/* Every unit in every kind's place: accepted there and nowhere else. */
static void a_unit_is_accepted_for_its_own_kinds_only(void **state)
{
    (void)state;
    for (size_t i = 0; i < ts_unit_count(); i++) {
        const ts_unit *unit = ts_unit_at(i);
        if (strcmp(unit->name, "1") == 0)
            continue;
        char text[40];
        (void)snprintf(text, sizeof text, "5 %s", unit->name);
        for (int k = 0; k < TS_KIND_COUNT; k++) {
            double            si;
            ts_quantity_fault fault;
            const bool        fits = ts_unit_named(ts_text_of(unit->name), (ts_kind)k) != NULL;
            const bool read = ts_quantity_parse(ts_text_of(text), (ts_kind)k, &si, NULL, &fault);
            assert_int_equal(read, fits);
            if (!read)
                assert_string_equal(fault.code, "wrong-kind");
        }
    }
}

static void messages_repeat_only_what_can_be_shown(void **state)
{
    (void)state;
    double            si;
    ts_quantity_fault fault;
    assert_false(ts_quantity_parse(TS_TEXT("5 \x1b[2J"), TS_KIND_LENGTH, &si, NULL, &fault));
    assert_null(strchr(fault.says, '\x1b'));
    assert_false(ts_quantity_parse(TS_TEXT("5 mm\xff"), TS_KIND_LENGTH, &si, NULL, &fault));
    assert_string_equal(fault.says, "there is no unit `mm`");
    char text[5000] = "5 ";
    for (size_t i = 2; i + 2 < sizeof text; i += 2)
        memcpy(text + i, "\xc3\xa4", 2);
    assert_false(ts_quantity_parse((ts_text){text, 4999}, TS_KIND_LENGTH, &si, NULL, &fault));
    assert_true(strlen(fault.says) < 100);
    assert_int_equal(ts_text_utf8_length(ts_text_of(fault.says)), strlen(fault.says));
}

static void read_range(const char *text, double low, double high)
{
    double            low_read = 0.0, high_read = 0.0;
    const ts_unit    *unit;
    ts_quantity_fault fault;
    if (!ts_quantity_parse_range(ts_text_of(text), TS_KIND_LENGTH, &low_read, &high_read, &unit,
                                 &fault))
        fail_msg("%s: %s", text, fault.says);
    assert_same_double(low_read, low);
    assert_same_double(high_read, high);
    assert_string_equal(unit->name, "mm");
}

static void ranges_may_be_open_at_one_end(void **state)
{
    (void)state;
    const double infinity = (double)INFINITY;
    read_range("66..73 mm", 0.066, 0.073);
    read_range("66 mm..73 mm", 0.066, 0.073);
    read_range(" 66 .. 73 mm ", 0.066, 0.073);
    read_range("..73 mm", -infinity, 0.073);
    read_range("66.. mm", 0.066, infinity);
    read_range("66 mm..", 0.066, infinity);
    read_range("66..66 mm", 0.066, 0.066);
    read_range("-0.4..-0.2 mm", -4e-4, -2e-4);
    read_range("1.5..2.5 mm", 1.5e-3, 2.5e-3);
    double low, high;
    assert_true(
        ts_quantity_parse_range(TS_TEXT("0.9..1.1"), TS_KIND_NUMBER, &low, &high, NULL, NULL));
    assert_same_double(low, 0.9);
    assert_true(ts_quantity_parse_range(TS_TEXT("-40..120 degC"), TS_KIND_TEMPERATURE, &low, &high,
                                        NULL, NULL));
    assert_same_double(low, 233.15);
    assert_same_double(high, 393.15);
}

static void ranges_that_make_no_sense_are_refused(void **state)
{
    (void)state;
    static const slip refused[] = {
        {"5 mm", TS_KIND_LENGTH, "not-a-range", 0, 4, "10..12 mm", NULL},
        {"", TS_KIND_LENGTH, "not-a-range", 0, 1, "10..12 mm", NULL},
        {"5-7 mm", TS_KIND_LENGTH, "not-a-range", 0, 6, "10..12 mm", NULL},
        {"..", TS_KIND_LENGTH, "open-range", 0, 2, "10..12 mm", NULL},
        {".. mm", TS_KIND_LENGTH, "open-range", 0, 5, "10.. mm or ..12 mm", NULL},
        {"7..5 mm", TS_KIND_LENGTH, "reversed-range", 0, 7, "10..12 mm", NULL},
        {"5 mm..7 in", TS_KIND_LENGTH, "two-units", 2, 2, "10..12 mm", NULL},
        {"5..7", TS_KIND_LENGTH, "missing-unit", 3, 1, "7 mm", NULL},
        {"5 mm..7", TS_KIND_LENGTH, "missing-unit", 6, 1, "7 mm", NULL},
        {"5..", TS_KIND_LENGTH, "missing-unit", 0, 1, "5 mm", NULL},
        {"5...7 mm", TS_KIND_LENGTH, "not-a-number", 3, 5, "12 mm", NULL},
        {"a..7 mm", TS_KIND_LENGTH, "not-a-number", 0, 1, "7 mm", NULL},
        {"mm..7", TS_KIND_LENGTH, "not-a-number", 0, 2, "7 mm", NULL},
        {"5..7..9 mm", TS_KIND_LENGTH, "unknown-unit", 4, 6, "7 mm", NULL},
        {"5..7 rpm", TS_KIND_LENGTH, "wrong-kind", 5, 3, "7 mm", NULL},
        {"5 rpm..7 mm", TS_KIND_LENGTH, "wrong-kind", 2, 3, "5 mm", NULL},
        {"3,5..4 mm", TS_KIND_LENGTH, "decimal-comma", 0, 3, "12 mm", NULL},
        {"6 600..7 300 mm", TS_KIND_LENGTH, "blank-in-number", 7, 5, "7 mm", NULL},
        {"1e200..1e201 mm", TS_KIND_LENGTH, "too-large", 0, 5, "between", NULL},
    };
    for (size_t i = 0; i < sizeof refused / sizeof refused[0]; i++) {
        const slip       *s = &refused[i];
        double            low, high;
        ts_quantity_fault fault;
        if (ts_quantity_parse_range(ts_text_of(s->text), s->kind, &low, &high, NULL, &fault))
            fail_msg("'%s' was accepted", s->text);
        if (strcmp(fault.code, s->code) != 0 || fault.at != s->at || fault.length != s->length)
            fail_msg("'%s': %s at %zu, length %zu", s->text, fault.code, fault.at, fault.length);
        if (strstr(fault.expected, s->expected) == NULL)
            fail_msg("'%s': expected %s", s->text, fault.expected);
    }
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(quantities_are_read_in_si),
        cmocka_unit_test(minus_nothing_is_nothing),
        cmocka_unit_test(equal_texts_in_two_units_are_the_same_double),
        cmocka_unit_test(slips_are_answered_with_what_would_help),
        cmocka_unit_test(what_stands_inside_a_number_is_taken_out_again),
        cmocka_unit_test(kinds_that_must_not_mix_say_why),
        cmocka_unit_test(a_unit_is_accepted_for_its_own_kinds_only),
        cmocka_unit_test(messages_repeat_only_what_can_be_shown),
        cmocka_unit_test(ranges_may_be_open_at_one_end),
        cmocka_unit_test(ranges_that_make_no_sense_are_refused),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
