/* rate/judge_element.c: what is found about an element, and how is it put into words? */
#include "rate/rate_desk.h"

#include <stdarg.h>
#include <stdio.h>
#include <string.h>

#define DIGITS 6

/* ---- findings ----------------------------------------------------------------------------------
 */

static bool make_room(ts_rate_desk *desk)
{
    ts_check_outcome *outcome = &desk->rated->outcome;
    if (outcome->finding_count < desk->finding_room)
        return true;
    const size_t room = desk->finding_room == 0 ? 32 : 2 * desk->finding_room;
    ts_finding  *more = TS_TAKE(desk->arena, ts_finding, room);
    desk->failed      = desk->failed || more == NULL;
    if (more == NULL)
        return false;
    if (outcome->finding_count > 0)
        memcpy(more, outcome->findings, outcome->finding_count * sizeof *more);
    outcome->findings  = more;
    desk->finding_room = room;
    return true;
}

ts_finding *ts_rate_judge(ts_rate_desk *desk, bool holds, const char *rule, ts_level level)
{
    if (desk->failed)
        return NULL;
    ts_check_outcome *outcome = &desk->rated->outcome;
    outcome->judgement_count++;
    outcome->passed += holds ? 1 : 0;
    if (holds || !make_room(desk))
        return NULL;
    ts_finding *finding = &outcome->findings[outcome->finding_count++];
    *finding            = (ts_finding){
                   .rule      = rule,
                   .level     = level,
                   .state     = TS_OPEN,
                   .node      = desk->element->node,
                   .condition = desk->condition,
                   .says      = "",
                   .value     = NAN,
                   .limit     = NAN,
                   .margin    = NAN,
                   .source    = "common practice, no source",
    };
    return finding;
}

void ts_rate_limit(ts_finding *finding, const char *symbol, double value, double limit,
                   ts_kind kind)
{
    if (finding == NULL)
        return;
    finding->symbol = symbol;
    finding->value  = value;
    finding->limit  = limit;
    finding->unit   = ts_kind_si(kind)->name;
}

/* ---- words -------------------------------------------------------------------------------------
 */

/* Only %s, %d and %zu occur, and those do not depend on any locale. */
static const char *phrase(ts_rate_desk *desk, const char *format, va_list parts)
{
    va_list again;
    va_copy(again, parts);
    const int length = vsnprintf(NULL, 0, format, parts);
    char     *text   = length < 0 ? NULL : TS_TAKE(desk->arena, char, (size_t)length + 1);
    if (text != NULL)
        (void)vsnprintf(text, (size_t)length + 1, format, again);
    va_end(again);
    desk->failed = desk->failed || text == NULL;
    return text != NULL ? text : "";
}

void ts_rate_says(ts_rate_desk *desk, ts_finding *finding, const char *format, ...)
{
    if (finding == NULL)
        return;
    va_list parts;
    va_start(parts, format);
    finding->says = phrase(desk, format, parts);
    va_end(parts);
}

void ts_rate_remedy(ts_rate_desk *desk, ts_finding *finding, const char *format, ...)
{
    if (finding == NULL)
        return;
    va_list parts;
    va_start(parts, format);
    finding->remedy = phrase(desk, format, parts);
    va_end(parts);
}

/* ---- usual findings ----------------------------------------------------------------------------
 */

void ts_rate_remark(ts_rate_desk *desk, const char *name, const char *says, const char *clause,
                    ts_level level)
{
    ts_buffer rule;
    ts_buffer_open(&rule, ts_arena_allocator(desk->arena));
    ts_buffer_print(&rule, "rate-range-%s", name);
    const char *kept = rule.failed ? NULL : ts_arena_copy(desk->arena, rule.bytes, rule.length);
    ts_buffer_close(&rule);
    desk->failed        = desk->failed || kept == NULL;
    ts_finding *finding = ts_rate_judge(desk, false, kept, level);
    if (finding == NULL)
        return;
    finding->source = clause;
    ts_rate_says(desk, finding, "%s", says);
}

void ts_rate_cannot(ts_rate_desk *desk, const char *method, const char *why)
{
    ts_finding *finding =
        ts_rate_judge(desk, false, "rate-not-computable", ts_rate_lack_level(desk));
    if (finding == NULL)
        return;
    finding->state = TS_NOT_COMPUTABLE;
    ts_rate_says(desk, finding, "%s cannot be computed: %s", method,
                 why != NULL ? why : "an input is outside its range");
}

void ts_rate_safety(ts_rate_desk *desk, const ts_safety_words *words, double S, double least,
                    ts_level level)
{
    ts_finding *finding = ts_rate_judge(desk, S >= least, words->rule, level);
    if (finding == NULL)
        return;
    ts_rate_limit(finding, words->symbol, S, least, TS_KIND_NUMBER);
    if (isnan(S)) {
        finding->state = TS_NOT_COMPUTABLE;
        ts_rate_says(desk, finding, "the safety of %s against %s cannot be computed", words->what,
                     words->harm);
        return;
    }
    finding->margin = S / least - 1.0;
    ts_rate_says(desk, finding, "the safety of %s against %s is %s, less than %s", words->what,
                 words->harm, ts_rate_shown(desk, S, TS_KIND_NUMBER),
                 ts_rate_shown(desk, least, TS_KIND_NUMBER));
    ts_rate_remedy(desk, finding, "widen the face, choose a stronger steel, or lower the load");
}

void ts_rate_contact_safety(ts_rate_desk *desk, int gear, double S_H, double least, ts_level level)
{
    static const ts_safety_words words[2] = {
        {"rate-contact-safety-1", "S_H1", "the flanks of gear 1", "pitting"},
        {"rate-contact-safety-2", "S_H2", "the flanks of gear 2", "pitting"}};

    ts_rate_safety(desk, &words[gear], S_H, least, level);
}

void ts_rate_bending_safety(ts_rate_desk *desk, int gear, double S_F, double least, ts_level level)
{
    static const ts_safety_words words[2] = {
        {"rate-bending-safety-1", "S_F1", "the teeth of gear 1", "breakage"},
        {"rate-bending-safety-2", "S_F2", "the teeth of gear 2", "breakage"}};

    ts_rate_safety(desk, &words[gear], S_F, least, level);
}

/* 35.0000 says no more than 35 in a sentence. */
static void drop_trailing_zeros(ts_buffer *number)
{
    if (number->failed || memchr(number->bytes, '.', number->length) == NULL ||
        memchr(number->bytes, 'e', number->length) != NULL)
        return;
    while (number->bytes[number->length - 1] == '0')
        number->length--;
    number->length -= number->bytes[number->length - 1] == '.' ? 1 : 0;
    number->bytes[number->length] = '\0';
}

const char *ts_rate_shown(ts_rate_desk *desk, double si, ts_kind kind)
{
    const ts_unit *unit = ts_kind_shown(kind, desk->units);
    ts_buffer      text;
    if (!isfinite(si))
        return isnan(si) ? "not known" : "without end";
    ts_buffer_open(&text, ts_arena_allocator(desk->arena));
    ts_buffer_significant(&text, ts_from_si(si, unit), DIGITS);
    drop_trailing_zeros(&text);
    if (kind != TS_KIND_NUMBER)
        ts_buffer_print(&text, " %s", unit->name);
    const char *copy = text.failed ? NULL : ts_arena_copy(desk->arena, text.bytes, text.length);
    desk->failed     = desk->failed || copy == NULL;
    ts_buffer_close(&text);
    return copy != NULL ? copy : "";
}

/* What is a round number but for the noise of its last bits is not rounded any further. */
#define NOISE 1e-13

const char *ts_rate_shown_outward(ts_rate_desk *desk, double si, ts_kind kind, int way)
{
    const ts_unit *unit  = ts_kind_shown(kind, desk->units);
    const double   value = ts_from_si(si, unit);
    if (!isfinite(value) || !(fabs(value) > 0.0))
        return ts_rate_shown(desk, si, kind);
    const double step    = pow(10.0, floor(log10(fabs(value))) - (DIGITS - 1));
    const double count   = value / step;
    const double noise   = NOISE * fabs(count);
    const double rounded = (way > 0 ? ceil(count - noise) : floor(count + noise)) * step;
    return ts_rate_shown(desk, ts_to_si(rounded, unit), kind);
}
