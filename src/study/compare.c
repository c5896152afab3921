/* How do two studies become one comparison? */
#include "study/study.h"

#include "report/comparison.h"
#include "study/outlet.h"

ts_status ts_compare_write(ts_study *before, ts_study *after, bool json,
                           const ts_page_options *options, const ts_sink *sink)
{
    if (!ts_study_ask(before, TS_WANT_DRIVE) || !ts_study_ask(after, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(after->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_answer then = ts_study_answer(before), now = ts_study_answer(after);
    ts_buffer       out;
    ts_buffer_open(&out, after->allocator);
    ts_page       page = ts_outlet_page(options, &out);
    ts_comparison comparison;
    ts_status     status = ts_compare(&then, &now, page.units, arena, &comparison);
    if (status == TS_OK && json)
        ts_comparison_json(&comparison, &then, &now, &out);
    else if (status == TS_OK)
        ts_comparison_page(&comparison, &then, &now, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}
