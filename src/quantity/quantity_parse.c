/* quantity/quantity_parse.c: which quantity does "34 N.m" or "6600..7300 rpm" mean? */
#include "base/number.h"
#include "quantity/conversion.h"
#include "quantity/quantity_fault.h"

#include <math.h>
#include <string.h>

static ts_text rest_of(ts_text text, size_t from)
{
    return (ts_text){text.at + from, text.length - from};
}

/* A number at the start of `piece`, read but not yet converted; c->number becomes its text. */
static bool read_number(ts_text piece, ts_complaint *c, ts_decimal *decimal,
                        ts_quantity_fault *fault)
{
    size_t                taken;
    const ts_number_fault wrong = ts_number_parse_decimal(piece, decimal, &taken);

    c->part   = piece;
    c->number = (ts_text){piece.at, 0};
    if (wrong != TS_NUMBER_FINE)
        return ts_fault_number(fault, c, (int)wrong);
    c->number.length = taken;
    return true;
}

/* The unit named by all of `name`, NULL with a fault when there is none; an empty name stands for a
 * plain number's. */
static const ts_unit *read_unit(ts_text name, ts_complaint *c, ts_quantity_fault *fault)
{
    const ts_unit *plain = ts_kind_si(TS_KIND_NUMBER);
    c->part              = name;
    if (name.length == 0) {
        if (c->kind != TS_KIND_NUMBER) {
            c->part = c->number;
            ts_fault_missing_unit(fault, c);
            return NULL;
        }
        return plain;
    }
    const ts_unit *found = ts_unit_named(name, c->kind);
    if (found != NULL && found != plain)
        return found;
    const ts_unit *other = ts_unit_named_any(name);
    if (other != NULL && other != plain)
        ts_fault_wrong_kind(fault, c, other);
    else
        ts_fault_unknown_unit(fault, c);
    return NULL;
}

/* How many places before the point: 1 for "3.4", -2 for "0.0034". */
static int64_t magnitude_of(ts_decimal decimal)
{
    int64_t places = decimal.exponent;
    for (uint64_t left = decimal.digits; left > 0; left /= 10)
        places++;
    return places;
}

static bool convert(ts_text number, ts_decimal decimal, const ts_unit *unit, double *si)
{
    /* The correctly rounded reading, where nothing is converted. */
    size_t taken;
    if (unit == ts_kind_si(unit->kind))
        return ts_number_parse(number, si, &taken) == TS_NUMBER_FINE;
    *si = ts_decimal_to_si(decimal, unit);
    return true;
}

static bool to_si(ts_complaint *c, ts_decimal decimal, const ts_unit *unit, double *si,
                  ts_quantity_fault *fault)
{
    c->part = c->number;
    if (decimal.digits == 0) {
        *si = ts_decimal_to_si(decimal, unit);
        return true;
    }
    /* 1e-180..1e180, whatever the unit: no factor comes near the 20 powers of ten that are left. */
    const int64_t places = magnitude_of(decimal);
    if (places > 180 || places < -179)
        return ts_fault_size(fault, c, places > 0);
    return convert(c->number, decimal, unit, si);
}

bool ts_quantity_parse(ts_text text, ts_kind kind, double *si, const ts_unit **unit,
                       ts_quantity_fault *fault)
{
    const ts_text whole = ts_text_trim(text);
    ts_complaint  c     = {.whole = text, .kind = kind};
    ts_decimal    decimal;
    if (!read_number(whole, &c, &decimal, fault))
        return false;
    const ts_unit *found = read_unit(ts_text_trim(rest_of(whole, c.number.length)), &c, fault);
    if (found == NULL || !to_si(&c, decimal, found, si, fault))
        return false;
    if (unit != NULL)
        *unit = found;
    return true;
}

static bool find_dots(ts_text text, size_t *at)
{
    for (size_t i = 0; i + 1 < text.length; i++) {
        if (text.at[i] == '.' && text.at[i + 1] == '.') {
            *at = i;
            return true;
        }
    }
    return false;
}

/* One end of a range: a number, or nothing, and a unit, or nothing. */
typedef struct end {
    bool       closed;
    ts_decimal decimal;
    ts_text    number;
    ts_text    unit;
} end;

static bool read_end(ts_text piece, bool may_lack_number, ts_complaint *c, end *e,
                     ts_quantity_fault *fault)
{
    const bool starts =
        piece.length > 0 && strchr("+-.,0123456789", piece.at[0]) != NULL && piece.at[0] != '\0';
    *e = (end){.closed = starts, .unit = piece, .number = {piece.at, 0}};
    if (!starts && may_lack_number)
        return true;
    if (!read_number(piece, c, &e->decimal, fault))
        return false;
    e->closed = true;
    e->number = c->number;
    e->unit   = ts_text_trim(rest_of(piece, c->number.length));
    return true;
}

/* The unit stands at the end, or at both ends and is the same; NULL with a fault when there is
 * none. */
static const ts_unit *read_range_unit(const end *low, const end *high, ts_complaint *c,
                                      ts_quantity_fault *fault)
{
    if (!low->closed && low->unit.length > 0) {
        c->part = low->unit;
        ts_fault_number(fault, c, (int)TS_NUMBER_NOT_A_NUMBER);
        return NULL;
    }
    const bool only_low  = high->unit.length == 0 && !high->closed;
    c->number            = high->closed ? high->number : low->number;
    const ts_unit *found = read_unit(only_low ? low->unit : high->unit, c, fault);
    if (found == NULL || low->unit.length == 0 || only_low)
        return found;
    c->number            = low->number;
    const ts_unit *other = read_unit(low->unit, c, fault);
    if (other != NULL && other != found)
        ts_fault_range(fault, c, "two-units", "the ends of the range differ in unit");
    return other == found ? found : NULL;
}

static bool convert_end(const end *e, double open, const ts_unit *unit, ts_complaint *c, double *si,
                        ts_quantity_fault *fault)
{
    *si       = open;
    c->number = e->number;
    return !e->closed || to_si(c, e->decimal, unit, si, fault);
}

bool ts_quantity_parse_range(ts_text text, ts_kind kind, double *low, double *high,
                             const ts_unit **unit, ts_quantity_fault *fault)
{
    const ts_text whole = ts_text_trim(text);
    ts_complaint  c     = {.whole = text, .part = whole, .kind = kind};
    size_t        dots;
    if (!find_dots(whole, &dots))
        return ts_fault_range(fault, &c, "not-a-range", "a range is written with two dots");
    end left, right;
    if (!read_end(ts_text_trim((ts_text){whole.at, dots}), true, &c, &left, fault) ||
        !read_end(ts_text_trim(rest_of(whole, dots + 2)), true, &c, &right, fault))
        return false;
    c.part = whole;
    if (!left.closed && !right.closed)
        return ts_fault_range(fault, &c, "open-range", "a range needs a number at one end");
    const ts_unit *found = read_range_unit(&left, &right, &c, fault);
    if (found == NULL || !convert_end(&left, (double)-INFINITY, found, &c, low, fault) ||
        !convert_end(&right, (double)INFINITY, found, &c, high, fault))
        return false;
    c.part = whole;
    if (*low > *high)
        return ts_fault_range(fault, &c, "reversed-range", "the range begins above its own end");
    if (unit != NULL)
        *unit = found;
    return true;
}
