/* Does a certificate hold, when other code reads it back? */
#include "report/arrange_report.h"

#include <math.h>

#define INDENT 4

static void line(ts_page *page, ts_buffer *text)
{
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, text, INDENT, INDENT);
}

void ts_reverified_page(const ts_reverified *told, ts_page *page)
{
    ts_buffer text;
    ts_page_tone(page, TS_TONE_STRONG);
    ts_buffer_add(page->out,
                  told->count == 0 ? "The certificate holds" : "The certificate does NOT hold");
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    ts_page_tone(page, TS_TONE_FAINT);
    ts_page_wrap(page, told->caution, 0, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_page_line_end(page);
    for (size_t i = 0; i < told->count; i++) {
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_add(&text, told->reasons[i]);
        line(page, &text);
    }
    if (told->ways == 0)
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(
        &text,
        "Looked at: %zu answer%s (laid out again, weighed, every demand and all rules), "
        "%zu way%s to drive a box, and the account of ",
        told->answers, told->answers == 1 ? "" : "s", told->ways, told->ways == 1 ? "" : "s");
    ts_buffer_integer(&text, (int64_t)told->labels);
    ts_buffer_add(&text,
                  " beginnings of branches.  The bounds are taken as they stand; what speaks "
                  "for them is told in docs/method/arrange.md.");
    line(page, &text);
    if (told->count > 0 || !isfinite(told->mass))
        return;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_add(&text, "Nothing under the demands of this file is lighter than ");
    ts_arrange_kg(page, told->mass, &text);
    if (told->struck > 0)
        ts_buffer_print(&text,
                        ", but for what could be done with %zu choice%s of bevels and radial "
                        "shaft, left out for what the rules said of them",
                        told->struck, told->struck == 1 ? "" : "s");
    ts_buffer_add(&text, ".");
    line(page, &text);
}

void ts_reverified_json(const ts_reverified *told, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_key(&json, "tool");
    ts_json_string(&json, "towershaft");
    ts_json_key(&json, "version");
    ts_json_string(&json, told->version);
    ts_json_key(&json, "caution");
    ts_json_string(&json, told->caution);
    ts_json_key(&json, "sha256");
    ts_json_string(&json, told->sha256);
    ts_json_key(&json, "certificate");
    ts_json_string(&json, told->certificate);
    ts_json_key(&json, "holds");
    ts_json_bool(&json, told->count == 0);
    ts_json_key(&json, "reasons");
    ts_json_array(&json);
    for (size_t i = 0; i < told->count; i++)
        ts_json_string(&json, told->reasons[i]);
    ts_json_end(&json, ']');
    ts_json_key(&json, "answers");
    ts_json_integer(&json, (int64_t)told->answers);
    ts_json_key(&json, "ways");
    ts_json_integer(&json, (int64_t)told->ways);
    ts_json_key(&json, "struck");
    ts_json_integer(&json, (int64_t)told->struck);
    ts_json_key(&json, "labels");
    ts_json_integer(&json, (int64_t)told->labels);
    ts_json_key(&json, "mass");
    if (isfinite(told->mass))
        ts_json_number(&json, told->mass);
    else
        ts_json_null(&json);
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}
