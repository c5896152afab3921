/* What does a command take for granted that reads a record of its own? */
#include "report/register.h"

enum { INDENT = 2 };

void ts_register_page(ts_page *page, const ts_assumption *items, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        ts_buffer text;
        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "%s = %s: %s", items[i].key, items[i].value, items[i].reason);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &text, 2 * INDENT, INDENT);
    }
}

void ts_register_cells(ts_chapter *chapter, const ts_assumption *items, size_t count)
{
    static const ts_column columns[] = {{"assumed", false}, {"value", false}, {"why", false}};

    if (count == 0)
        return;
    ts_manuscript_table(chapter->manuscript, "", columns, 3);
    for (size_t i = 0; i < count; i++) {
        ts_chapter_word(chapter, items[i].key);
        ts_chapter_word(chapter, items[i].value);
        ts_chapter_word(chapter, items[i].reason);
    }
}

void ts_register_json(ts_json *json, const ts_assumption *items, size_t count)
{
    ts_register_json_at(json, "assumptions", items, count);
}

void ts_register_json_at(ts_json *json, const char *key, const ts_assumption *items, size_t count)
{
    ts_json_key(json, key);
    ts_json_array(json);
    for (size_t i = 0; i < count; i++) {
        ts_json_object(json);
        ts_json_string_at(json, "key", items[i].key);
        ts_json_string_at(json, "value", items[i].value);
        ts_json_string_at(json, "reason", items[i].reason);
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
