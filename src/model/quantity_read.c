/* model/quantity_read.c: which SI value does a text with a unit stand for? */
#include "model/reading.h"

#include <string.h>

#define TURN 6.283185307179586477 /* 2 pi */

/* ---- messages ------------------------------------------------------------------------------- */

static bool complain_quantity(ts_reading *reading, const ts_target *target,
                              const ts_written *written, const ts_quantity_fault *fault)
{
    ts_complain(reading,
                &(ts_fault){.code     = fault->code,
                            .node     = written->at,
                            .at       = fault->at,
                            .length   = fault->length,
                            .expected = ts_field_expected(reading, target->field),
                            .nearest  = fault->nearest},
                "%s", fault->says);
    return false;
}

static bool complain_text(ts_reading *reading, const ts_target *target, const ts_written *written,
                          const char *code, const char *what)
{
    const ts_text text = ts_quoted(written->text);
    /* "the name of a spool" is told by the name that the file gives it. */
    const bool    own = strncmp(target->field->key, "the name of ", 12) == 0;
    const ts_text key =
        own ? reading->source->nodes[written->at].key : ts_text_of(target->field->key);
    ts_complain(reading,
                &(ts_fault){.code     = code,
                            .node     = written->at,
                            .expected = ts_field_expected(reading, target->field)},
                "`%.*s` %s `%.*s`", (int)text.length, text.at, what, (int)key.length, key.at);
    return false;
}

/* An open end of a span is infinite and lies in every range. */
static bool in_range(const ts_range *range, double value)
{
    if (range->unit == NULL || isinf(value))
        return true;
    return value <= range->most && (range->above ? value > range->least : value >= range->least);
}

/* ---- forms ---------------------------------------------------------------------------------- */

bool ts_read_measure(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    ts_quantity_fault fault;
    const ts_unit    *unit;
    double            si;
    if (!ts_quantity_parse(written->text, target->field->kind, &si, &unit, &fault))
        return complain_quantity(reading, target, written, &fault);
    if (!in_range(&target->field->range, si))
        return complain_text(reading, target, written, "out-of-range", "is out of range for");
    *(ts_measure *)target->to = (ts_measure){si, written->node, written->standing};
    return true;
}

/* "6:30", hours 0 to 12 and minutes 00 to 59, as the share of a turn. */
static bool parse_clock(ts_text text, double *turns)
{
    const char *colon = memchr(text.at, ':', text.length);
    if (colon == NULL)
        return false;
    const size_t hours = (size_t)(colon - text.at);
    if (hours < 1 || hours > 2 || text.length != hours + 3)
        return false;
    int hour = 0, minute = 0;
    for (size_t i = 0; i < text.length; i++) {
        const int digit = text.at[i] - '0';
        if (i == hours)
            continue;
        if (digit < 0 || digit > 9)
            return false;
        if (i < hours)
            hour = hour * 10 + digit;
        else
            minute = minute * 10 + digit;
    }
    if (hour > 12 || minute > 59)
        return false;
    *turns = (double)(hour % 12 * 60 + minute) / 720.0;
    return true;
}

bool ts_read_clock(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    double angle, turns;
    if (memchr(written->text.at, ':', written->text.length) != NULL) {
        if (!parse_clock(written->text, &turns))
            return complain_text(reading, target, written, "not-a-clock",
                                 "is no clock position for");
        angle = turns * TURN;
    } else {
        ts_quantity_fault fault;
        const ts_unit    *unit;
        if (!ts_quantity_parse(written->text, TS_KIND_ANGLE, &angle, &unit, &fault))
            return complain_quantity(reading, target, written, &fault);
        if (!(angle >= 0.0 && angle <= TURN))
            return complain_text(reading, target, written, "out-of-range",
                                 "is not from 0 to 360 deg, as is due for");
    }
    if (target->field->seen && reading->from_front)
        angle = TURN - angle;
    if (angle >= TURN)
        angle = 0.0;
    *(ts_measure *)target->to = (ts_measure){angle, written->node, written->standing};
    return true;
}

bool ts_read_span(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const ts_field   *field = target->field;
    ts_quantity_fault fault;
    const ts_unit    *unit;
    double            low, high;
    if (!ts_quantity_parse_range(written->text, field->kind, &low, &high, &unit, &fault))
        return complain_quantity(reading, target, written, &fault);
    if (field->closed && (isinf(low) || isinf(high)))
        return complain_text(reading, target, written, "open-range", "lacks an end for");
    if (!in_range(&field->range, low) || !in_range(&field->range, high))
        return complain_text(reading, target, written, "out-of-range", "is out of range for");
    *(ts_span *)target->to = (ts_span){low, high, written->node, written->standing};
    return true;
}

static size_t find_for(ts_text text)
{
    for (size_t i = 0; i + 5 <= text.length; i++) {
        if (memcmp(text.at + i, " for ", 5) == 0)
            return i;
    }
    return text.length;
}

bool ts_read_overload(ts_reading *reading, const ts_target *target, const ts_written *written)
{
    const ts_text text = written->text;
    const size_t  at   = find_for(text);
    if (at == text.length)
        return complain_text(reading, target, written, "missing-time",
                             "does not say for how long, as is due for");
    ts_quantity_fault fault;
    const ts_unit    *unit;
    double            torque, time;
    if (!ts_quantity_parse(ts_text_trim((ts_text){text.at, at}), TS_KIND_TORQUE, &torque, &unit,
                           &fault))
        return complain_quantity(reading, target, written, &fault);
    const ts_text rest = {text.at + at + 5, text.length - at - 5};
    if (!ts_quantity_parse(ts_text_trim(rest), TS_KIND_TIME, &time, &unit, &fault)) {
        fault.at += at + 5;
        return complain_quantity(reading, target, written, &fault);
    }
    if (!in_range(&target->field->range, torque) || !(time > 0.0))
        return complain_text(reading, target, written, "out-of-range", "is out of range for");
    *(ts_overload *)target->to = (ts_overload){torque, time, written->node, written->standing};
    return true;
}
