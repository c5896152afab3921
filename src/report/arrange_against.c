/* How is what an answer changes told, and what stands in the file? */
#include "report/arrange_report.h"

#include <math.h>

#define INDENT 4

/* Each on a line of its own, what it comes to first. */
void ts_arrange_changes_page(const ts_arrange_told *told, ts_page *page,
                             const ts_arrangement *found, double weighs)
{
    ts_buffer lines;
    size_t    from = 0;
    ts_buffer_open(&lines, page->out->allocator);
    const size_t count = ts_arrange_changes(told, page, found, weighs, &lines);
    for (size_t i = 0; count > 0 && i <= lines.length; i++) {
        ts_buffer one;
        if (i < lines.length && lines.bytes[i] != '\n')
            continue;
        ts_buffer_open(&one, page->out->allocator);
        ts_buffer_add(&one, from == 0 ? "Against the file: " : "- ");
        ts_buffer_text(&one, (ts_text){lines.bytes + from, i - from});
        const int indent = from == 0 ? INDENT : INDENT + 2;
        ts_buffer_fill(page->out, ' ', (size_t)indent);
        ts_page_wrap_made(page, &one, indent + 2, indent);
        from = i + 1;
    }
    page->out->failed = page->out->failed || lines.failed;
    ts_buffer_close(&lines);
}

void ts_present_page(const ts_arrange_told *told, ts_page *page)
{
    const ts_present *present = told->present;
    ts_buffer         text;
    if (present == NULL || !present->stands)
        return;
    ts_buffer_open(&text, page->out->allocator);
    if (present->beyond != NULL) {
        ts_buffer_print(&text,
                        "The file has %s, which the search does not make: what stands in it "
                        "is not compared shaft by shaft (towershaft compare does).",
                        present->beyond);
    } else {
        ts_buffer_add(&text, "In the file stands: ");
        ts_arrange_order(told, &present->shafts, &text);
        if (isfinite(present->mass)) {
            ts_buffer_add(&text, "; ");
            ts_arrange_kg(page, present->mass, &text);
            ts_buffer_add(&text, " as the search weighs it");
        }
        ts_buffer_print(&text, ".  By the demands of the search: %s.",
                        ts_arrange_rule_says(told->present_rule));
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap_made(page, &text, INDENT, INDENT);
}

void ts_arrange_changes_json(const ts_arrange_told *told, ts_json *json,
                             const ts_arrangement *found, double weighs)
{
    ts_page   page = {.out = json->out, .columns = 100, .units = TS_UNITS_METRIC};
    ts_buffer lines;
    size_t    from = 0;
    ts_buffer_open(&lines, json->out->allocator);
    const size_t count = ts_arrange_changes(told, &page, found, weighs, &lines);
    ts_json_key(json, "changes");
    if (told->present == NULL || !told->present->stands || told->present->beyond != NULL) {
        ts_json_null(json);
    } else {
        ts_json_object(json);
        ts_json_number_at(json, "mass", weighs - told->present->mass);
        ts_json_key(json, "says");
        ts_json_array(json);
        for (size_t i = 0; count > 0 && i <= lines.length; i++) {
            if (i < lines.length && lines.bytes[i] != '\n')
                continue;
            ts_json_text(json, (ts_text){lines.bytes + from, i - from});
            from = i + 1;
        }
        ts_json_end(json, ']');
        ts_json_end(json, '}');
    }
    json->out->failed = json->out->failed || lines.failed;
    ts_buffer_close(&lines);
}
