/* Report: how do shafts, bearings and splines bear what the teeth ask? */
#include "report/report_chapter.h"

void ts_chapter_shafts(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Shafts, bearings and splines");
    if (chapter->answer->lines != NULL)
        ts_line_cells(chapter);
    else
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN,
                          "Shafts and bearings were not computed.");
    if (chapter->answer->splines != NULL && chapter->answer->splines->count > 0)
        ts_spline_cells(chapter);
    else
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN,
                          "No accessory tells the number of its spline, so none was rated.");
}
