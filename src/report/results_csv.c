/* How does a spreadsheet get every number of the answer? */
#include "report/results_csv.h"

#include "report/answer_json.h"
#include "report/json_quantity.h"
#include "report/page.h"

#include <math.h>
#include <string.h>

typedef struct writer {
    const ts_answer *answer;
    ts_units         units;
    ts_buffer       *out;
    ts_buffer        text; /* of one cell */
} writer;

/* What a spreadsheet may take for the begin of a formula, and blanks before it. */
static bool is_formula(const char *text)
{
    text += strspn(text, " \t\r\n");
    return *text != '\0' && strchr("=+-@|%", *text) != NULL;
}

/* A text in quotes where it needs them, and with an apostrophe where it might come alive. */
static void put_word(ts_buffer *out, const char *text)
{
    const bool alive = is_formula(text);
    if (!alive && strpbrk(text, ",\"\r\n\t;'") == NULL) {
        ts_buffer_add(out, text);
        return;
    }
    ts_buffer_add(out, alive ? "\"'" : "\"");
    for (; *text != '\0'; text++) {
        const bool control = (unsigned char)*text < 0x20 || *text == 0x7F;
        ts_buffer_bytes(out, control ? " " : text, 1);
        if (*text == '"')
            ts_buffer_add(out, "\"");
    }
    ts_buffer_add(out, "\"");
}

static void next(writer *w)
{
    ts_buffer_add(w->out, ",");
}

static void end(writer *w)
{
    ts_buffer_add(w->out, "\r\n");
}

/* What was put together in w->text, as a word. */
static void put_made(writer *w)
{
    put_word(w->out, w->text.bytes != NULL ? w->text.bytes : "");
    w->out->failed = w->out->failed || w->text.failed;
    ts_buffer_clear(&w->text);
}

/* The shortest number that means the same in this unit. */
static void put_number(writer *w, double si, const ts_unit *unit)
{
    if (!isfinite(si))
        return;
    if (unit == NULL || unit == ts_kind_si(unit->kind)) {
        ts_buffer_number(w->out, si);
        return;
    }
    ts_quantity_print(&w->text, si, unit);
    const size_t digits = w->text.bytes != NULL ? strcspn(w->text.bytes, " ") : 0;
    ts_buffer_bytes(w->out, w->text.bytes != NULL ? w->text.bytes : "", digits);
    w->out->failed = w->out->failed || w->text.failed;
    ts_buffer_clear(&w->text);
}

/* address, symbol, condition, value, unit, what */
static void row(writer *w, ts_node node, const char *symbol, int32_t condition)
{
    const char *at = condition >= 0 ? ts_answer_condition(w->answer, condition) : "";
    ts_source_address(w->answer->source, node, &w->text);
    put_made(w);
    next(w);
    put_word(w->out, symbol != NULL ? symbol : "");
    next(w);
    put_word(w->out, at != NULL ? at : "");
    next(w);
}

static void hear(void *context, double si, ts_kind kind, ts_node node, const char *symbol,
                 int32_t condition)
{
    writer        *w    = context;
    const ts_unit *unit = ts_kind_shown(kind, w->units);
    row(w, node, symbol, condition);
    put_number(w, si, unit);
    next(w);
    put_word(w->out, unit != NULL ? unit->name : "");
    ts_buffer_add(w->out, ",,,,result");
    end(w);
}

static void judgement(writer *w, const ts_judgement *one)
{
    const ts_unit *si    = one->unit != NULL ? ts_unit_named_any(ts_text_of(one->unit)) : NULL;
    const bool     is_si = si != NULL && si == ts_kind_si(si->kind);
    const ts_unit *unit  = is_si ? ts_kind_shown(si->kind, w->units) : NULL;
    row(w, one->node, one->symbol, one->condition);
    put_number(w, one->value, unit);
    next(w);
    put_word(w->out, unit != NULL ? unit->name : one->unit != NULL ? one->unit : "");
    next(w);
    put_number(w, one->limit, unit);
    next(w);
    put_number(w, one->margin, NULL);
    next(w);
    put_word(w->out, one->rule);
    next(w);
    ts_buffer_add(w->out, one->passed ? "passed" : "not passed");
    end(w);
}

void ts_results_csv(const ts_answer *answer, ts_units units, ts_buffer *out)
{
    writer            w        = {.answer = answer, .units = units, .out = out};
    const ts_listener listener = {hear, &w};
    ts_answer         heard    = *answer;
    ts_buffer         unread;
    heard.listener = &listener;
    ts_buffer_open(&w.text, answer->allocator);
    ts_buffer_open(&unread, answer->allocator);
    ts_buffer_add(out, "address,symbol,condition,value,unit,limit,margin,rule,is\r\n");
    ts_answer_json(&heard, &unread);
    for (size_t i = 0; i < answer->outcome->judgement_count; i++)
        judgement(&w, &answer->outcome->judgements[i]);
    out->failed = out->failed || w.text.failed || unread.failed;
    ts_buffer_close(&unread);
    ts_buffer_close(&w.text);
}
