/* What is taken for granted? */
#include "report/check_page.h"
#include "report/register.h"

#include <string.h>

#define INDENT 4

/* The same default in many records is one line: "shift = 0 (13 records)". */
static bool seen_before(const ts_drive *drive, size_t index)
{
    const ts_assumption *now = &drive->assumed[index];
    for (size_t i = 0; i < index; i++) {
        const ts_assumption *earlier = &drive->assumed[i];
        if (strcmp(earlier->key, now->key) == 0 && strcmp(earlier->value, now->value) == 0 &&
            strcmp(earlier->reason, now->reason) == 0)
            return true;
    }
    return false;
}

static size_t how_often(const ts_drive *drive, size_t index)
{
    const ts_assumption *now   = &drive->assumed[index];
    size_t               count = 0;
    for (size_t i = index; i < drive->assumed_count; i++)
        count += strcmp(drive->assumed[i].key, now->key) == 0 &&
                 strcmp(drive->assumed[i].value, now->value) == 0 &&
                 strcmp(drive->assumed[i].reason, now->reason) == 0;
    return count;
}

/* Nothing for a record that the file does not have: its key is the whole way. */
static void add_address(const ts_source *source, ts_node node, const char *before, ts_buffer *out)
{
    ts_buffer address;

    ts_buffer_open(&address, out->allocator);
    ts_source_address(source, node, &address);
    if (!address.failed && address.length > 0)
        ts_buffer_print(out, "%s%s", before, address.bytes);
    out->failed = out->failed || address.failed;
    ts_buffer_close(&address);
}

void ts_assumption_words(const ts_answer *answer, size_t index, bool all, ts_units units,
                         ts_buffer *out)
{
    const ts_assumption *one   = &answer->drive->assumed[index];
    const size_t         often = all ? 1 : how_often(answer->drive, index);

    ts_buffer_print(out, "%s = ", one->key);
    ts_register_value(one, units, out);
    if (often > 1)
        ts_buffer_print(out, " (%zu places", often);
    add_address(answer->source, one->node, often > 1 ? ", the first " : " at ", out);
    ts_buffer_print(out, "%s: %s", often > 1 ? ")" : "", one->reason);
}

static void defaults(const ts_answer *answer, ts_page *page)
{
    const ts_drive *drive = answer->drive;
    for (size_t i = 0; i < drive->assumed_count; i++) {
        if (!page->all && seen_before(drive, i))
            continue;
        ts_buffer line;
        ts_buffer_open(&line, page->out->allocator);
        ts_assumption_words(answer, i, page->all, page->units, &line);
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_page_wrap_made(page, &line, 2 * INDENT, INDENT);
    }
}

void ts_assumption_list(const ts_answer *answer, ts_page *page)
{
    const ts_drive *drive = answer->drive;
    ts_page_heading(page, "Assumptions (what the file does not say)");
    if (drive->assumed_count + drive->assumption_count == 0)
        ts_buffer_add(page->out, "    none\n");
    defaults(answer, page);
    for (size_t i = 0; i < drive->assumption_count; i++) {
        const ts_assumption_line *line = &drive->assumptions[i];
        ts_buffer_add(page->out, "    stated: ");
        ts_page_wrap(page, line->says.text, 2 * INDENT, 12);
    }
}
