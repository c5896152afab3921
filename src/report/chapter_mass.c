/* Report: what does everything weigh, and what do the mounts bear? */
#include "report/report_chapter.h"

void ts_chapter_mass(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Mass and mounts");
    if (chapter->answer->mass == NULL || !(chapter->answer->mass->total.value > 0.0)) {
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, "Nothing could be weighed.");
        return;
    }
    ts_mass_cells(chapter);
    ts_manuscript_figure(chapter->manuscript, "mass", NULL, "What weighs how much.");
}
