/* bank/bank_case.c: how does a binding read a case, and hand back what it computed? */
#include "bank/bank_run.h"

#include "base/number.h"

#include <math.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

void ts_case_spoil(ts_case *c, const char *why, const char *what)
{
    snprintf(c->trouble, sizeof c->trouble, "%s %s", what, why);
    longjmp(c->spoiled, 1);
}

/* ---- inputs ---------------------------------------------------------------------------------- */

static void note_reading(ts_case *c, const char *name, ts_reading reading)
{
    if (c->readings != NULL &&
        json_object_set_new(c->readings, name, json_integer((json_int_t)reading)) != 0)
        c->no_memory = true;
}

static const json_t *value_of(const json_t *inputs, const char *name)
{
    return json_object_get(json_object_get(inputs, name), "value");
}

static const char *unit_of(const json_t *fields, const char *name)
{
    const char *unit = json_string_value(json_object_get(json_object_get(fields, name), "unit"));

    return unit == NULL ? "" : unit;
}

bool ts_case_gives(const ts_case *c, const char *name)
{
    return value_of(c->inputs, name) != NULL;
}

static double number_of(ts_case *c, const char *name, const json_t *value)
{
    if (value == NULL)
        ts_case_spoil(c, "is missing among the inputs", name);
    if (!json_is_number(value))
        ts_case_spoil(c, "is not a number", name);
    if (fabs(json_number_value(value)) > 1e15)
        ts_case_spoil(c, "is beyond any range", name);
    return json_number_value(value);
}

static double in_si(ts_case *c, const char *name, double value, ts_kind kind)
{
    const ts_unit *unit = ts_bank_unit(unit_of(c->inputs, name), kind);

    if (unit == NULL)
        ts_case_spoil(c, "is given in a unit that does not fit", name);
    return ts_to_si(value, unit);
}

double ts_case_given(ts_case *c, const char *name, ts_kind kind)
{
    const double value = number_of(c, name, value_of(c->inputs, name));

    note_reading(c, name, TS_READ_REAL);
    return in_si(c, name, value, kind);
}

double ts_case_given_or(ts_case *c, const char *name, ts_kind kind, double otherwise)
{
    return ts_case_gives(c, name) ? ts_case_given(c, name, kind) : otherwise;
}

double ts_case_per(ts_case *c, const char *name, ts_kind kind)
{
    const double   value = number_of(c, name, value_of(c->inputs, name));
    const char    *unit  = unit_of(c->inputs, name);
    const bool     fits  = strncmp(unit, "1/", 2) == 0;
    const ts_unit *below = fits ? ts_bank_unit(unit + 2, kind) : NULL;

    note_reading(c, name, TS_READ_REAL);
    if (below == NULL)
        ts_case_spoil(c, "is given in a unit that does not fit", name);
    if (!(value > 0.0))
        ts_case_spoil(c, "must be above 0", name);
    return value / ts_to_si(1.0, below);
}

static int whole_of(ts_case *c, const char *name, const json_t *value)
{
    const double number = number_of(c, name, value);

    if (floor(number) < number || fabs(number) > 1e6)
        ts_case_spoil(c, "is not a whole number below a million", name);
    return (int)number;
}

int ts_case_whole(ts_case *c, const char *name)
{
    note_reading(c, name, TS_READ_WHOLE);
    return whole_of(c, name, value_of(c->inputs, name));
}

int ts_case_sign(ts_case *c, const char *name)
{
    const double number = number_of(c, name, value_of(c->inputs, name));

    note_reading(c, name, TS_READ_SIGN);
    return number < 0.0 ? -1 : 1;
}

const char *ts_case_word(ts_case *c, const char *name)
{
    const char *word = json_string_value(value_of(c->inputs, name));

    if (word == NULL)
        ts_case_spoil(c, "is missing among the inputs, or no word", name);
    return word;
}

size_t ts_case_length(ts_case *c, const char *name)
{
    const json_t *value = value_of(c->inputs, name);

    if (!json_is_array(value))
        ts_case_spoil(c, "is missing among the inputs, or no list", name);
    return json_array_size(value);
}

double ts_case_given_at(ts_case *c, const char *name, size_t index, ts_kind kind)
{
    const double value = number_of(c, name, json_array_get(value_of(c->inputs, name), index));

    note_reading(c, name, TS_READ_REAL);
    return in_si(c, name, value, kind);
}

int ts_case_whole_at(ts_case *c, const char *name, size_t index)
{
    note_reading(c, name, TS_READ_WHOLE);
    return whole_of(c, name, json_array_get(value_of(c->inputs, name), index));
}

double ts_case_cell(ts_case *c, const char *name, size_t row, size_t column)
{
    const json_t *cells = json_array_get(value_of(c->inputs, name), row);

    note_reading(c, name, TS_READ_REAL);
    return number_of(c, name, json_array_get(cells, column));
}

size_t ts_case_member_count(ts_case *c, const char *name)
{
    const json_t *value = value_of(c->inputs, name);

    if (!json_is_object(value))
        ts_case_spoil(c, "is missing among the inputs, or no object", name);
    return json_object_size(value);
}

const char *ts_case_member_name(ts_case *c, const char *name, size_t index)
{
    json_t *value = json_object_get(json_object_get(c->inputs, name), "value");
    void   *at    = json_object_iter(value);

    while (at != NULL && index-- > 0)
        at = json_object_iter_next(value, at);
    return at == NULL ? "" : json_object_iter_key(at);
}

double ts_case_member(ts_case *c, const char *name, const char *member, ts_kind kind)
{
    const double value = number_of(c, name, json_object_get(value_of(c->inputs, name), member));

    note_reading(c, name, TS_READ_REAL);
    return in_si(c, name, value, kind);
}

const char *ts_case_printed_at(ts_case *c, const char *name, size_t index)
{
    const json_t *value = json_array_get(value_of(c->printed, name), index);

    c->label[0] = '\0';
    if (json_is_number(value))
        ts_number_print(c->label, json_number_value(value));
    return c->label;
}

int ts_case_printed_cell(ts_case *c, const char *name, size_t row, size_t column)
{
    const json_t *cells = json_array_get(value_of(c->printed, name), row);

    return whole_of(c, name, json_array_get(cells, column));
}

/* ---- results --------------------------------------------------------------------------------- */

bool ts_case_expects(const ts_case *c, const char *name)
{
    return json_object_get(c->expected, name) != NULL;
}

bool ts_case_expects_in(const ts_case *c, const char *name, const char *unit)
{
    return ts_case_expects(c, name) && strcmp(unit_of(c->expected, name), unit) == 0;
}

/* JSON knows no NaN: null stands for a value that could not be computed. */
static json_t *number_or_null(double value)
{
    return isfinite(value) ? json_real(value) : json_null();
}

static void keep(ts_case *c, const char *name, json_t *value)
{
    if (value == NULL || json_object_set_new(c->computed, name, value) != 0)
        c->no_memory = true;
}

static double as_expected(ts_case *c, const char *name, double si, ts_kind kind)
{
    const ts_unit *unit = ts_bank_unit(unit_of(c->expected, name), kind);

    if (unit == NULL)
        ts_case_spoil(c, "is expected in a unit that does not fit", name);
    return ts_from_si(si, unit);
}

void ts_case_computed(ts_case *c, const char *name, double si, ts_kind kind)
{
    if (ts_case_expects(c, name))
        keep(c, name, number_or_null(as_expected(c, name, si, kind)));
}

void ts_case_computed_as(ts_case *c, double si, ts_kind kind, const char *format, ...)
{
    char    name[128];
    va_list rest;

    va_start(rest, format);
    vsnprintf(name, sizeof name, format, rest);
    va_end(rest);
    ts_case_computed(c, name, si, kind);
}

void ts_case_counted(ts_case *c, const char *name, double count)
{
    if (ts_case_expects(c, name))
        keep(c, name, number_or_null(count));
}

static void append(ts_case *c, const char *name, json_t *value)
{
    json_t *list = json_object_get(c->computed, name);

    if (list == NULL) {
        list = json_array();
        keep(c, name, list);
    }
    if (list == NULL || value == NULL || json_array_append_new(list, value) != 0)
        c->no_memory = true;
}

void ts_case_listed(ts_case *c, const char *name, double si, ts_kind kind)
{
    if (ts_case_expects(c, name))
        append(c, name, number_or_null(as_expected(c, name, si, kind)));
}

void ts_case_listed_word(ts_case *c, const char *name, const char *word)
{
    if (ts_case_expects(c, name))
        append(c, name, json_string(word));
}

void ts_case_dissents(ts_case *c, const char *name, const char *why)
{
    if (c->dissents != NULL && ts_case_expects(c, name) &&
        json_object_set_new(c->dissents, name, json_string(why)) != 0)
        c->no_memory = true;
}
