/* What is this page about, and what does it not replace? */
#include "report/check_page.h"

/* Which file and program the answer is of; below the title where both do not fit one line. */
static void origin(const ts_answer *answer, const char *state, ts_page *page, size_t taken)
{
    ts_buffer text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%s%s   SHA-256 %.*s   towershaft %s", answer->source->name, state, 12,
                    answer->sha256, answer->version);
    const ts_text line = {text.bytes != NULL ? text.bytes : "", text.length};
    const bool    fits = taken + 3 + ts_text_columns(line) <= (size_t)page->columns;
    ts_buffer_add(page->out, fits ? "   " : "\n");
    if (fits)
        ts_buffer_text(page->out, line);
    else
        ts_page_spread(page, line, 2, 0);
    ts_buffer_add(page->out, "\n");
    page->out->failed = page->out->failed || text.failed;
    ts_buffer_close(&text);
}

static void title_of(const ts_answer *answer, const char *state, ts_page *page)
{
    const char *revision = answer->drive->revision.text;
    ts_buffer   title;
    ts_buffer_open(&title, page->out->allocator);
    ts_buffer_add(&title, answer->drive->title.text);
    if (revision != NULL)
        ts_buffer_print(&title, ", revision %s", revision);
    const ts_text line = {title.bytes != NULL ? title.bytes : "", title.length};
    ts_page_tone(page, TS_TONE_STRONG);
    const size_t taken = ts_page_spread(page, line, 2, 0);
    ts_page_tone(page, TS_TONE_PLAIN);
    page->out->failed = page->out->failed || title.failed;
    ts_buffer_close(&title);
    origin(answer, state, page, taken);
    ts_page_wrap(page, answer->caution, 0, 0);
}

void ts_answer_title(const ts_answer *answer, ts_page *page)
{
    title_of(answer, "", page);
}

void ts_sized_title(const ts_answer *answer, ts_page *page)
{
    title_of(answer, ", as sized", page);
}
