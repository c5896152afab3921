/* Report: what does everything weigh, and what do the mounts bear? */
#include "report/check_page.h"
#include "report/report_chapter.h"

void ts_chapter_mass(ts_chapter *chapter)
{
    if (chapter->answer->mass == NULL)
        return;
    ts_manuscript_heading(chapter->manuscript, 1, "Mass and mounts");
    ts_chapter_page(chapter, ts_mass_table);
    ts_manuscript_figure(chapter->manuscript, "mass", NULL, "What weighs how much.");
}
