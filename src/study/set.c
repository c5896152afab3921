/* How does one value of a file become another? */
#include "study/study.h"

#include "model/edit.h"

ts_status ts_study_set_bytes(ts_study *study, const char *name, const char *bytes, size_t length,
                             const char *address, const char *value, const ts_sink *sink)
{
    ts_status status = ts_study_begin(study, name, bytes, length);
    if (status != TS_OK)
        return status;
    ts_buffer out;
    ts_buffer_open(&out, study->allocator);
    const ts_text at = ts_text_of(address);
    status           = value != NULL ? ts_edit_set(study->bytes, study->name, at, ts_text_of(value),
                                                   study->arena, study->diagnostics, &out)
                                     : ts_edit_unset(study->bytes, study->name, at, study->arena,
                                                     study->diagnostics, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_study_move_bytes(ts_study *study, const char *name, const char *bytes, size_t length,
                              const char *address, uint32_t place, const ts_sink *sink)
{
    ts_status status = ts_study_begin(study, name, bytes, length);
    if (status != TS_OK)
        return status;
    ts_buffer out;
    ts_buffer_open(&out, study->allocator);
    status = ts_edit_move(study->bytes, study->name, ts_text_of(address), place, study->arena,
                          study->diagnostics, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
