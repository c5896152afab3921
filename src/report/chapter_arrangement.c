/* Report: where does everything stand? */
#include "report/report_chapter.h"

void ts_chapter_arrangement(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Arrangement");
    ts_manuscript_figure(chapter->manuscript, "behind", NULL, "Seen from behind, looking forward.");
    ts_manuscript_figure(chapter->manuscript, "front", NULL,
                         "Seen from the front, looking rearward.");
    ts_manuscript_figure(chapter->manuscript, "pads", NULL,
                         "The faces that bear pads, each as who faces it sees it.");
    ts_manuscript_figure(chapter->manuscript, "unrolled", NULL,
                         "The arc laid flat: face widths, bodies on both faces, gaps.");
}
