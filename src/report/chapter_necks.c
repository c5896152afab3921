/* Report: does the neck of every pad break before anything else does? */
#include "report/check_page.h"
#include "report/report_chapter.h"

void ts_chapter_necks(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Necks and selectivity");
    ts_chapter_page(chapter, ts_selectivity_table);
    ts_manuscript_figure(chapter->manuscript, "selectivity", NULL,
                         "What each pad must pass, where its neck breaks, what the way bears.");
}
