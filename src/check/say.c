/* check/say.c: how is a finding put into words and numbers? */
#include "check/rule.h"

#include "base/assert.h"
#include "check/desk.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#define DIGITS_FEW  4
#define DIGITS_MOST 12

/* Only %s and %d occur, and those do not depend on any locale. */
const char *ts_phrase_list(ts_check *check, const char *format, va_list parts)
{
    char    usual[512]; /* nearly all sentences fit, and need not be measured before */
    va_list again;
    va_copy(again, parts);
    const int length = vsnprintf(usual, sizeof usual, format, parts);
    TS_ASSERT(length >= 0);
    char *text = ts_desk_text(check->desk, (size_t)length + 1);
    if (text != NULL && (size_t)length < sizeof usual)
        memcpy(text, usual, (size_t)length + 1);
    else if (text != NULL)
        (void)vsnprintf(text, (size_t)length + 1, format, again);
    va_end(again);
    return text != NULL ? text : "";
}

const char *ts_phrase(ts_check *check, const char *format, ...)
{
    va_list parts;
    va_start(parts, format);
    const char *text = ts_phrase_list(check, format, parts);
    va_end(parts);
    return text;
}

void ts_says(ts_check *check, ts_finding *finding, const char *format, ...)
{
    if (finding == NULL)
        return;
    va_list parts;
    va_start(parts, format);
    finding->says = ts_phrase_list(check, format, parts);
    va_end(parts);
}

void ts_remedy(ts_check *check, ts_finding *finding, const char *format, ...)
{
    if (finding == NULL)
        return;
    va_list parts;
    va_start(parts, format);
    finding->remedy = ts_phrase_list(check, format, parts);
    va_end(parts);
}

/* What stands in the scratch buffer, kept. */
static const char *kept(ts_check *check, const ts_buffer *scratch)
{
    if (scratch->failed) {
        check->desk->failed = true;
        return "";
    }
    char *text = ts_desk_text(check->desk, scratch->length + 1);
    if (text == NULL)
        return "";
    memcpy(text, scratch->bytes, scratch->length + 1);
    return text;
}

/* 35.00 says no more than 35 in a sentence; zeros before the point stay. */
static void drop_trailing_zeros(ts_buffer *number)
{
    if (number->failed || memchr(number->bytes, '.', number->length) == NULL ||
        memchr(number->bytes, 'e', number->length) != NULL)
        return;
    while (number->bytes[number->length - 1] == '0')
        number->length--;
    if (number->bytes[number->length - 1] == '.')
        number->length--;
    number->bytes[number->length] = '\0';
}

static const char *shown_with(ts_check *check, double si, ts_kind kind, int digits)
{
    ts_buffer     *scratch = ts_desk_scratch(check->desk);
    const ts_unit *unit    = ts_kind_shown(kind, check->units);
    if (!isfinite(si)) {
        ts_buffer_add(scratch, isnan(si) ? "not known" : "without end");
        return kept(check, scratch);
    }
    ts_buffer_significant(scratch, ts_from_si(si, unit), digits);
    drop_trailing_zeros(scratch);
    if (kind != TS_KIND_NUMBER) {
        ts_buffer_add(scratch, " ");
        ts_buffer_add(scratch, unit->name);
    }
    return kept(check, scratch);
}

const char *ts_shown(ts_check *check, double si, ts_kind kind)
{
    return shown_with(check, si, kind, DIGITS_FEW);
}

const char *ts_shown_apart(ts_check *check, double si, double other, ts_kind kind)
{
    for (int digits = DIGITS_FEW; digits < DIGITS_MOST; digits++) {
        const size_t before = check->desk->sentences.used;
        const char  *mine   = shown_with(check, si, kind, digits);
        const size_t after  = check->desk->sentences.used;
        if (strcmp(mine, shown_with(check, other, kind, digits)) != 0) {
            if (after > before)
                check->desk->sentences.used = after;
            return mine;
        }
        check->desk->sentences.used = before;
    }
    return shown_with(check, si, kind, DIGITS_MOST);
}

/* What is a round number but for the noise of its last bits is not rounded any further. */
#define NOISE 1e-13

const char *ts_shown_outward(ts_check *check, double si, ts_kind kind, int way)
{
    const ts_unit *unit  = ts_kind_shown(kind, check->units);
    const double   value = ts_from_si(si, unit);
    if (!isfinite(value) || !(fabs(value) > 0.0))
        return ts_shown(check, si, kind);
    const double step    = pow(10.0, floor(log10(fabs(value))) - (DIGITS_FEW - 1));
    const double count   = value / step;
    const double noise   = NOISE * fabs(count);
    const double rounded = (way > 0 ? ceil(count - noise) : floor(count + noise)) * step;
    return ts_shown(check, ts_to_si(rounded, unit), kind);
}

const char *ts_shown_percent(ts_check *check, double share)
{
    ts_buffer   *scratch = ts_desk_scratch(check->desk);
    const double percent = 100.0 * fabs(share);
    if (!isfinite(percent))
        return "a share without end";
    ts_buffer_significant(scratch, percent, percent >= 100.0 ? 3 : 2);
    ts_buffer_add(scratch, " %");
    return kept(check, scratch);
}

/* In the file's sight, to the minute of the dial: half a degree. */
const char *ts_shown_clock(ts_check *check, double clock)
{
    const double turn = 8.0 * atan(1.0);
    double       dial = check->drive->sight.value == TS_FROM_FRONT ? -clock : clock;
    dial              = dial / turn - floor(dial / turn);
    const int minutes = (int)floor(dial * 720.0 + 0.5) % 720;
    const int hour    = minutes / 60 == 0 ? 12 : minutes / 60;
    return ts_phrase(check, "%d:%d%d", hour, minutes % 60 / 10, minutes % 10);
}

const char *ts_condition_name(const ts_check *check, int32_t condition)
{
    if (condition < 0 || (size_t)condition >= check->drive->condition_count)
        return "every condition";
    return check->drive->conditions[condition].name;
}
