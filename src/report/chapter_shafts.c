/* Report: how do shafts and bearings bear what the teeth ask? */
#include "report/check_page.h"
#include "report/report_chapter.h"

void ts_chapter_shafts(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Shafts and bearings");
    ts_chapter_page(chapter, ts_line_table);
    ts_chapter_page(chapter, ts_spline_table);
    ts_chapter_page(chapter, ts_float_table);
}
