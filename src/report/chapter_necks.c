/* Report: does the neck of every pad break before anything else does? */
#include "report/report_chapter.h"

void ts_chapter_necks(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Necks and selectivity");
    if (chapter->answer->select == NULL || chapter->answer->select->count == 0) {
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, "There is no pad to look at.");
        return;
    }
    ts_selectivity_cells(chapter);
    ts_manuscript_figure(chapter->manuscript, "selectivity", NULL,
                         "What each pad must pass, where its neck breaks, what the way bears.");
}
