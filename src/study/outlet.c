/* How does an answer go from its question to the sink of a caller? */
#include "study/outlet.h"

ts_page ts_outlet_page(const ts_page_options *options, ts_buffer *out)
{
    const int columns = options == NULL || options->columns == 0 ? 100 : options->columns;
    return (ts_page){
        .out     = out,
        .columns = columns < 60 ? 60 : (columns > 400 ? 400 : columns),
        .colour  = options != NULL && options->colour,
        .all     = options != NULL && options->all,
        .units   = options != NULL && options->us ? TS_UNITS_US : TS_UNITS_METRIC,
    };
}

ts_status ts_outlet_tell(ts_study *study, const ts_page_options *look, ts_teller *tell, void *about,
                         const ts_sink *sink)
{
    ts_telling it = {.study = study};
    ts_buffer  out;

    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    it.arena = ts_arena_open(study->allocator);
    if (it.arena == NULL)
        return TS_NO_MEMORY;
    it.answer = ts_study_answer(study);
    ts_buffer_open(&out, study->allocator);
    it.page          = ts_outlet_page(look, &out);
    ts_status status = tell(&it, about);
    if (status == TS_OK && ts_arena_failed(it.arena))
        status = TS_NO_MEMORY; /* a part of the answer is not there, whoever noticed it */
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    ts_arena_close(it.arena);
    return status;
}
