/* How does one chapter read by itself? */
#include "study/lone_chapter.h"

#include "report/manuscript_page.h"
#include "study/entitle.h"

ts_status ts_study_lone_chapter(const ts_study *study, ts_arena *arena,
                                void (*write)(ts_chapter *chapter, const void *about),
                                const void *about, ts_page *page)
{
    const ts_answer answer = ts_study_answer(study);
    ts_manuscript   manuscript;
    ts_chapter      chapter;

    ts_study_manuscript(study, arena, &manuscript);
    ts_chapter_open(&chapter, &answer, page->units, &manuscript);
    write(&chapter, about);
    ts_chapter_close(&chapter);
    ts_manuscript_page(&manuscript, page);
    return manuscript.failed ? TS_NO_MEMORY : TS_OK;
}
