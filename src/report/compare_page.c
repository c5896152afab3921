/* How is a comparison told? */
#include "report/comparison.h"

#include "base/json_writer.h"
#include "report/verdict_sentence.h"

#include <math.h>

#define INDENT 4

static const char *const names[TS_CHANGE_KINDS] = {
    "verdict",         "finding appeared",
    "finding changed", "finding went",
    "pad appeared",    "pad went",
    "pad moved",       "pad sense",
    "pad speed",       "ratio",
    "power",           "mass",
    "centre distance", "input",
};

static const char *const headings[TS_CHANGE_KINDS] = {
    "Verdict",
    "Findings that appeared",
    "Findings that changed",
    "Findings that went",
    "Pads that appeared",
    "Pads that went",
    "Pads that moved",
    "Senses that turned",
    "Pad speeds",
    "Ratios to the spool",
    "Power taken from a spool",
    "Mass",
    "Centre distances",
    "Inputs",
};

const char *ts_change_name(ts_change_kind kind)
{
    return names[kind];
}

static void relative(ts_buffer *out, double value)
{
    if (isnan(value))
        return;
    ts_buffer_add(out, value < 0.0 ? "  -" : "  +");
    ts_buffer_significant(out, 100.0 * fabs(value), 3);
    ts_buffer_add(out, " %");
}

static void line(ts_page *page, const ts_change *change)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, change->subject);
    if (change->condition != NULL)
        ts_buffer_print(&text, " at %s", change->condition);
    ts_buffer_add(&text, ": ");
    if (change->before != NULL && change->after != NULL)
        ts_buffer_print(&text, "%s -> %s", change->before, change->after);
    else if (change->after != NULL)
        ts_buffer_print(&text, "%s%s", change->kind == TS_CHANGE_INPUT ? "new, " : "",
                        change->after);
    else
        ts_buffer_print(&text, "%s%s", change->kind == TS_CHANGE_INPUT ? "gone, was " : "was ",
                        change->before);
    relative(&text, change->relative);
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, 2 * INDENT, INDENT);
}

static void verdict(ts_page *page, const char *when, const ts_answer *answer)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_verdict_sentence(answer->outcome, &text);
    ts_page_left(page, ts_text_of(when), 2 * INDENT);
    ts_page_wrap_made(page, &text, 2 * INDENT, 2 * INDENT);
}

void ts_comparison_page(const ts_comparison *comparison, const ts_answer *before,
                        const ts_answer *after, ts_page *page)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "From %s (%.*s) to %s (%.*s)", before->source->name, 12, before->sha256,
                    after->source->name, 12, after->sha256);
    ts_page_wrap_made(page, &text, INDENT, 0);
    ts_page_wrap(page, after->caution, 0, 0);
    int kind = -1;
    for (size_t i = 0; i < comparison->count; i++) {
        const ts_change *change = &comparison->changes[i];
        if ((int)change->kind != kind)
            ts_page_heading(page, headings[change->kind]);
        kind = (int)change->kind;
        line(page, change);
    }
    if (comparison->count == 0)
        ts_buffer_add(page->out, "\nNothing changed but, perhaps, comments and layout.\n");
    ts_buffer_add(page->out, "\n");
    verdict(page, "Before:", before);
    verdict(page, "After:", after);
}

static void input(ts_json *json, const char *key, const ts_answer *answer)
{
    static const char *const verdicts[] = {"holds", "does not hold", "not computable"};
    ts_json_key(json, key);
    ts_json_object(json);
    ts_json_string_at(json, "path", answer->source->name);
    ts_json_string_at(json, "sha256", answer->sha256);
    ts_json_string_at(json, "verdict", verdicts[answer->outcome->verdict]);
    ts_json_end(json, '}');
}

void ts_comparison_json(const ts_comparison *comparison, const ts_answer *before,
                        const ts_answer *after, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_string_at(&json, "tool", "towershaft");
    ts_json_string_at(&json, "version", after->version);
    ts_json_string_at(&json, "caution", after->caution);
    input(&json, "before", before);
    input(&json, "after", after);
    ts_json_key(&json, "changes");
    ts_json_array(&json);
    for (size_t i = 0; i < comparison->count; i++) {
        const ts_change *change = &comparison->changes[i];
        ts_json_object(&json);
        ts_json_string_at(&json, "kind", ts_change_name(change->kind));
        ts_json_string_at(&json, "subject", change->subject);
        ts_json_string_at(&json, "condition", change->condition);
        ts_json_string_at(&json, "before", change->before);
        ts_json_string_at(&json, "after", change->after);
        ts_json_key(&json, "relative");
        if (isfinite(change->relative))
            ts_json_number(&json, change->relative);
        else
            ts_json_null(&json);
        ts_json_end(&json, '}');
    }
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
