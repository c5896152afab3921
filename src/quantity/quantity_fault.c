/* quantity/quantity_fault.c: what is said when a quantity cannot be read, and what would help? */
#include "quantity/quantity_fault.h"

#include "base/number.h"
#include "quantity/marked_number.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

#define QUOTED_MOST TS_MARKED_MOST /* bytes of somebody's text that a message repeats */
#define NAMES_MOST  16             /* more units than any kind has                    */

static const struct {
    const char *spelling;
    const char *unit;
} spellings[] = {
#include "unit_spelling.inc"
};

/* A piece to repeat: cut at a code point, without what is not text. */
static ts_text quotable(ts_text text)
{
    if (text.length > QUOTED_MOST)
        text.length = QUOTED_MOST;
    text.length = ts_text_utf8_length(text);
    for (size_t i = 0; i < text.length; i++) {
        const unsigned char byte = (unsigned char)text.at[i];
        if (byte < 0x20 || byte == 0x7F)
            text.length = i;
    }
    return text;
}

static const char *article(const char *noun)
{
    return strchr("aeiou", noun[0]) != NULL ? "an" : "a";
}

/* "a torque such as 34 N.m": with the number as written when it is one that can be repeated. */
static void expect_such_as(ts_quantity_fault *fault, const ts_complaint *c, const char *number)
{
    const char    *name   = ts_kind_name(c->kind);
    const ts_unit *metric = ts_kind_shown(c->kind, TS_UNITS_METRIC);
    const ts_unit *us     = ts_kind_shown(c->kind, TS_UNITS_US);
    char           written[QUOTED_MOST + 1];
    if (number == NULL) {
        const ts_text given = c->number.length <= 24 ? c->number : TS_TEXT("");
        (void)snprintf(written, sizeof written, "%.*s", (int)given.length, given.at);
        number = given.length > 0 ? written : "12";
    }
    if (c->kind == TS_KIND_NUMBER)
        (void)snprintf(fault->expected, sizeof fault->expected, "a number such as %s", number);
    else if (metric == us)
        (void)snprintf(fault->expected, sizeof fault->expected, "%s %s such as %s %s",
                       article(name), name, number, metric->name);
    else
        (void)snprintf(fault->expected, sizeof fault->expected, "%s %s such as %s %s or %s %s",
                       article(name), name, number, metric->name, number, us->name);
}

static void start(ts_quantity_fault *fault, const ts_complaint *c, const char *code)
{
    *fault = (ts_quantity_fault){
        .code   = code,
        .at     = (size_t)(c->part.at - c->whole.at),
        .length = c->part.length > 0 ? c->part.length : 1,
    };
}

/* "3,5 kW" would be "3.5 kW"; before three digits a comma may as well part the thousands. */
static void say_comma(ts_quantity_fault *fault, const ts_complaint *c)
{
    static const char      says[] = "a comma stands inside the number";
    const ts_text          text   = quotable(c->part);
    const char            *comma  = memchr(text.at, ',', text.length);
    const ts_marked_number meant  = ts_read_marked_number(text);
    const size_t           whole  = comma != NULL ? (size_t)(comma - text.at) : text.length;
    const bool             decimal =
        comma != NULL && meant.marks == 1 && !meant.pointed && whole < meant.length;
    const int rest = decimal ? (int)(text.length - whole - 1) : 0;
    fault->code    = "decimal-comma";
    if (decimal && meant.thousands)
        (void)snprintf(fault->says, sizeof fault->says, "%s; write %s, or %.*s.%.*s", says,
                       meant.plain, (int)whole, text.at, rest, comma + 1);
    else if (decimal)
        (void)snprintf(fault->says, sizeof fault->says, "%s; write %.*s.%.*s", says, (int)whole,
                       text.at, rest, comma + 1);
    else if (meant.thousands)
        (void)snprintf(fault->says, sizeof fault->says, "%s; write %s", says, meant.plain);
    else
        (void)snprintf(fault->says, sizeof fault->says, "%s", says);
    if (!decimal && !meant.thousands)
        (void)snprintf(fault->expected, sizeof fault->expected,
                       "a decimal point and no marks between thousands");
}

bool ts_fault_number(ts_quantity_fault *fault, const ts_complaint *c, int number_fault)
{
    if (fault == NULL)
        return false;
    const ts_text seen = quotable(c->part);
    start(fault, c, "not-a-number");
    expect_such_as(fault, c, NULL);
    if (number_fault == TS_NUMBER_DECIMAL_COMMA) {
        say_comma(fault, c);
    } else if (c->part.length == 0) {
        fault->code = "missing-number";
        (void)snprintf(fault->says, sizeof fault->says, "a number is missing");
    } else {
        const bool begins = strchr("+-.0123456789", seen.length > 0 ? seen.at[0] : 'x') != NULL;
        (void)snprintf(fault->says, sizeof fault->says, "`%.*s` %s", (int)seen.length, seen.at,
                       begins ? "is not a decimal number" : "does not begin with a number");
    }
    return false;
}

bool ts_fault_size(ts_quantity_fault *fault, const ts_complaint *c, bool large)
{
    if (fault == NULL)
        return false;
    start(fault, c, large ? "too-large" : "too-small");
    (void)snprintf(fault->says, sizeof fault->says, "the number is too %s to be meant",
                   large ? "large" : "small");
    (void)snprintf(fault->expected, sizeof fault->expected,
                   "0 or a magnitude between 1e-180 and 1e180");
    return false;
}

bool ts_fault_missing_unit(ts_quantity_fault *fault, const ts_complaint *c)
{
    if (fault == NULL)
        return false;
    start(fault, c, "missing-unit");
    (void)snprintf(fault->says, sizeof fault->says, "%s %s needs its unit",
                   article(ts_kind_name(c->kind)), ts_kind_name(c->kind));
    expect_such_as(fault, c, NULL);
    return false;
}

/* A common other spelling of a unit of this kind, else what is nearest by its letters. */
static const char *nearest_unit(ts_text name, ts_kind kind)
{
    for (size_t i = 0; i < sizeof spellings / sizeof spellings[0]; i++) {
        const ts_unit *unit = ts_unit_named(ts_text_of(spellings[i].unit), kind);
        if (unit != NULL && ts_text_is(name, spellings[i].spelling))
            return unit->name;
    }
    const char *names[NAMES_MOST];
    size_t      count = 0;
    for (size_t i = 0; i < ts_unit_count() && count < NAMES_MOST; i++) {
        const ts_unit *unit = ts_unit_at(i);
        if (unit->kind == kind && unit != ts_kind_si(TS_KIND_NUMBER))
            names[count++] = unit->name;
    }
    return ts_text_nearest(name, names, count);
}

/* "23 500 g": what stands where a unit is due goes on with the number. */
static bool says_number_goes_on(ts_quantity_fault *fault, const ts_complaint *c)
{
    const char            *end   = c->part.at + c->part.length;
    const ts_text          text  = {c->number.at, (size_t)(end - c->number.at)};
    const ts_marked_number meant = ts_read_marked_number(quotable(text));
    const bool digits = c->part.length > 0 && c->part.at[0] >= '0' && c->part.at[0] <= '9';
    if (c->number.length == 0 || (meant.marks == 0 && !digits))
        return false;
    ts_complaint whole = *c;
    whole.part         = meant.marks > 0 ? (ts_text){text.at, meant.length} : text;
    start(fault, &whole, "blank-in-number");
    (void)snprintf(fault->says, sizeof fault->says, "blanks and marks inside a number are not %s%s",
                   meant.thousands ? "allowed; write " : "allowed",
                   meant.thousands ? meant.plain : "");
    expect_such_as(fault, c, NULL);
    return true;
}

bool ts_fault_unknown_unit(ts_quantity_fault *fault, const ts_complaint *c)
{
    if (fault == NULL || says_number_goes_on(fault, c))
        return false;
    const ts_text seen = quotable(c->part);
    start(fault, c, "unknown-unit");
    (void)snprintf(fault->says, sizeof fault->says, "there is no unit `%.*s`", (int)seen.length,
                   seen.at);
    fault->nearest = nearest_unit(c->part, c->kind);
    expect_such_as(fault, c, NULL);
    return false;
}

static bool pair_is(ts_kind a, ts_kind b, ts_kind x, ts_kind y)
{
    return (a == x && b == y) || (a == y && b == x);
}

/* Why these two are kept apart although a slip between them is easy; NULL for any other two. */
static const char *why_apart(ts_kind due, ts_kind given)
{
    if (pair_is(due, given, TS_KIND_TORQUE, TS_KIND_ENERGY))
        return "torque and energy do not mix";
    if (pair_is(due, given, TS_KIND_ROTATIONAL_SPEED, TS_KIND_FREQUENCY))
        return "a shaft may have many cycles a turn";
    if (pair_is(due, given, TS_KIND_TEMPERATURE, TS_KIND_TEMPERATURE_DIFFERENCE))
        return "a difference has no zero of its own";
    if (pair_is(due, given, TS_KIND_PRESSURE_ABSOLUTE, TS_KIND_PRESSURE_GAUGE))
        return "they differ by the ambient pressure";
    if (given == TS_KIND_STRESS &&
        (due == TS_KIND_PRESSURE_ABSOLUTE || due == TS_KIND_PRESSURE_GAUGE))
        return "write (a) for absolute or (g) for gauge behind it";
    if (pair_is(due, given, TS_KIND_MASS, TS_KIND_FORCE))
        return "a mass is in kg or lb, a force in N or lbf";
    return NULL;
}

/* The same thing said in the kind that is due, where that is a plain sum: 120 Hz is 7200 rpm. */
static bool said_in_due_kind(const ts_complaint *c, const ts_unit *given, char out[TS_NUMBER_ROOM])
{
    double value = 0.0;
    size_t taken = 0;
    if (ts_number_parse(c->number, &value, &taken) != TS_NUMBER_FINE)
        return false;
    const double si = ts_to_si(value, given);
    double       due;
    if (c->kind == TS_KIND_ROTATIONAL_SPEED && given->kind == TS_KIND_FREQUENCY)
        due = si * 60.0;
    else if (c->kind == TS_KIND_FREQUENCY && given->kind == TS_KIND_ROTATIONAL_SPEED)
        due = ts_from_si(si, ts_kind_shown(TS_KIND_ROTATIONAL_SPEED, TS_UNITS_METRIC)) / 60.0;
    else
        return false;
    /* Ten digits, then the shortest form: the last bits of the sum are nobody's business. */
    if (!isfinite(due))
        return false;
    const size_t length = ts_number_significant(out, due, 10);
    (void)ts_number_parse((ts_text){out, length}, &due, &taken);
    (void)ts_number_print(out, due);
    return true;
}

bool ts_fault_wrong_kind(ts_quantity_fault *fault, const ts_complaint *c, const ts_unit *unit)
{
    if (fault == NULL)
        return false;
    const char *due = ts_kind_name(c->kind), *given = ts_kind_name(unit->kind);
    const char *why = why_apart(c->kind, unit->kind);
    char        number[TS_NUMBER_ROOM];
    start(fault, c, "wrong-kind");
    if (c->kind == TS_KIND_NUMBER)
        (void)snprintf(fault->says, sizeof fault->says,
                       "%s is a unit of %s, and a plain number was due", unit->name, given);
    else
        (void)snprintf(fault->says, sizeof fault->says, "%s is a unit of %s, not of %s%s%s",
                       unit->name, given, due, why != NULL ? "; " : "", why != NULL ? why : "");
    fault->nearest = nearest_unit(c->part, c->kind);
    expect_such_as(fault, c, said_in_due_kind(c, unit, number) ? number : NULL);
    return false;
}

bool ts_fault_range(ts_quantity_fault *fault, const ts_complaint *c, const char *code,
                    const char *says)
{
    if (fault == NULL)
        return false;
    const char *unit = ts_kind_shown(c->kind, TS_UNITS_METRIC)->name;
    start(fault, c, code);
    (void)snprintf(fault->says, sizeof fault->says, "%s", says);
    (void)snprintf(fault->expected, sizeof fault->expected,
                   "a range such as 10..12%s%s, 10..%s%s or ..12%s%s",
                   c->kind == TS_KIND_NUMBER ? "" : " ", c->kind == TS_KIND_NUMBER ? "" : unit,
                   c->kind == TS_KIND_NUMBER ? "" : " ", c->kind == TS_KIND_NUMBER ? "" : unit,
                   c->kind == TS_KIND_NUMBER ? "" : " ", c->kind == TS_KIND_NUMBER ? "" : unit);
    return false;
}
