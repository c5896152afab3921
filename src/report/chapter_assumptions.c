/* Report: what is taken for granted? */
#include "report/register.h"
#include "report/report_chapter.h"

#include <string.h>

static bool same(const ts_assumption *a, const ts_assumption *b)
{
    return strcmp(a->key, b->key) == 0 && strcmp(a->value, b->value) == 0 &&
           strcmp(a->reason, b->reason) == 0;
}

/* How many records share a default, counted at the first of them; 0 at a later one. */
static size_t how_many(const ts_drive *drive, size_t index)
{
    size_t count = 0;
    for (size_t i = 0; i < drive->assumed_count; i++) {
        if (!same(&drive->assumed[i], &drive->assumed[index]))
            continue;
        if (i < index)
            return 0;
        count++;
    }
    return count;
}

static void defaults(ts_chapter *chapter)
{
    static const ts_column columns[] = {
        {"key", false}, {"value", false}, {"places", true}, {"first at", false}, {"why", false}};
    const ts_drive *drive = chapter->answer->drive;
    ts_manuscript_table(chapter->manuscript, "What the file does not say", columns, 5);
    for (size_t i = 0; i < drive->assumed_count; i++) {
        const size_t places = how_many(drive, i);
        if (places == 0)
            continue;
        ts_chapter_word(chapter, drive->assumed[i].key);
        ts_register_value(&drive->assumed[i], chapter->page.units, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%zu", places);
        ts_chapter_cell(chapter);
        ts_chapter_place(chapter, drive->assumed[i].node, NULL, -1);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, drive->assumed[i].reason);
    }
}

void ts_chapter_assumptions(ts_chapter *chapter)
{
    const ts_drive *drive = chapter->answer->drive;
    ts_manuscript_heading(chapter->manuscript, 1, "Assumptions");
    for (size_t i = 0; i < drive->assumption_count; i++)
        ts_manuscript_item(chapter->manuscript, TS_BLOCK_PLAIN, "said",
                           drive->assumptions[i].says.text);
    if (drive->assumed_count > 0)
        defaults(chapter);
    if (drive->assumed_count + drive->assumption_count == 0)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, "None.");
}
