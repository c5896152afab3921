/* Report: how is the movement of the spools borne? */
#include "report/report_chapter.h"

void ts_chapter_float(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Float of the take-offs");
    if (chapter->answer->floats == NULL || chapter->answer->floats->count == 0) {
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_PLAIN, "There is no take-off to compare.");
        return;
    }
    ts_float_cells(chapter);
    ts_manuscript_figure(chapter->manuscript, "float", NULL,
                         "The take-offs in section, the travel of their spools to scale.");
}
