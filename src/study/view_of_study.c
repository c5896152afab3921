/* What does a page that moves get of a solved drive? */
#include "towershaft/view.h"

#include "draw/view.h"
#include "report/verdict_sentence.h"
#include "study/figures.h"

ts_status ts_study_write_view(ts_study *study, const ts_view_options *options, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    const ts_draw_options drawn = {.condition = -1,
                                   .units     = options->us ? TS_UNITS_US : TS_UNITS_METRIC,
                                   .caution   = ts_caution(),
                                   .allocator = study->allocator};
    ts_buffer             verdict, out;
    ts_buffer_open(&verdict, study->allocator);
    ts_buffer_open(&out, study->allocator);
    ts_verdict_sentence(&study->outcome, &verdict);
    const ts_drawing_subject subject = ts_study_subject(study, verdict.bytes);
    ts_status status = verdict.failed ? TS_NO_MEMORY : ts_view_write(&subject, &drawn, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&verdict);
    ts_buffer_close(&out);
    return status;
}
