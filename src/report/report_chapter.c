/* What do all chapters of a report write with? */
#include "report/report_chapter.h"

#include <math.h>
#include <string.h>

#define WIDE 1000000 /* columns of a page on which no sentence is broken */

void ts_chapter_open(ts_chapter *chapter, const ts_answer *answer, ts_units units,
                     ts_manuscript *manuscript)
{
    *chapter = (ts_chapter){.answer = answer, .manuscript = manuscript};
    ts_buffer_open(&chapter->cell, answer->allocator);
    chapter->page = (ts_page){.out = &chapter->cell, .columns = 400, .all = true, .units = units};
}

void ts_chapter_close(ts_chapter *chapter)
{
    chapter->manuscript->failed = chapter->manuscript->failed || chapter->cell.failed;
    ts_buffer_close(&chapter->cell);
}

void ts_chapter_sentences(ts_chapter *chapter, void (*part)(const ts_answer *answer, ts_page *page))
{
    ts_page page = chapter->page;
    page.columns = WIDE;
    part(chapter->answer, &page);
    char *at = chapter->cell.failed || chapter->cell.length == 0 ? NULL : chapter->cell.bytes;
    while (at != NULL && *at != '\0') {
        char *end = strchr(at, '\n');
        if (end != NULL)
            *end = '\0';
        at += strspn(at, " ");
        if (*at != '\0')
            ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, at);
        at = end != NULL ? end + 1 : NULL;
    }
    ts_buffer_clear(&chapter->cell);
}

void ts_chapter_cell(ts_chapter *chapter)
{
    ts_manuscript_made_cell(chapter->manuscript, &chapter->cell);
}

void ts_chapter_word(ts_chapter *chapter, const char *text)
{
    ts_manuscript_cell(chapter->manuscript, ts_text_of(text));
}

void ts_chapter_value(ts_chapter *chapter, double si, ts_kind kind, int digits)
{
    if (isfinite(si))
        ts_page_value_text(&chapter->page, &chapter->cell, si, kind, digits);
    else
        ts_buffer_add(&chapter->cell, isnan(si) ? "?" : "\xC2\xB7");
    ts_chapter_cell(chapter);
}

void ts_chapter_fine(ts_chapter *chapter, double si)
{
    const bool us = chapter->page.units == TS_UNITS_US;
    if (!isfinite(si))
        ts_buffer_add(&chapter->cell, "?");
    else
        ts_buffer_fixed(&chapter->cell, si * (us ? 1.0 / 0.0254 : 1e3), us ? 5 : 3);
}

void ts_chapter_place(ts_chapter *chapter, ts_node node, const char *symbol, int32_t condition)
{
    const ts_answer *answer = chapter->answer;
    ts_source_address(answer->source, node, &chapter->cell);
    if (chapter->cell.length == 0)
        ts_buffer_add(&chapter->cell, "the whole drive");
    if (symbol != NULL)
        ts_buffer_print(&chapter->cell, ":%s", symbol);
    if (condition >= 0)
        ts_buffer_print(&chapter->cell, "@%s", ts_answer_condition(answer, condition));
}

void ts_chapter_margin(ts_chapter *chapter, double margin)
{
    if (!isfinite(margin)) {
        ts_buffer_add(&chapter->cell, "\xC2\xB7");
        return;
    }
    ts_buffer_add(&chapter->cell, margin < 0.0 ? "" : "+");
    ts_buffer_fixed(&chapter->cell, 100.0 * margin, 1);
    ts_buffer_add(&chapter->cell, " %");
}
