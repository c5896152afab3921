/* How does one value of a file become another? */
#include "study/study.h"

#include "model/edit.h"
#include "model/tree_read.h"

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

/* `edit` of the text behind `source`, and the tree of what comes of it where `again` asks for it.
 */
static ts_status propose(const ts_study *study, const ts_study_edit *edit, bool again,
                         ts_arena *arena, ts_source *source, ts_buffer *out)
{
    const ts_text value =
        edit->place == 0 && edit->value != NULL ? ts_text_of(edit->value) : (ts_text){NULL, 0};
    ts_buffer_clear(out);
    ts_status status =
        ts_edit_propose(source, ts_text_of(edit->address), value, edit->place, arena, out);
    if (status != TS_OK || !again)
        return status;
    const ts_text   bytes = {ts_arena_copy(arena, out->bytes, out->length), out->length};
    ts_diagnostics *quiet =
        bytes.at != NULL ? ts_diagnostics_open(arena, study->name, bytes) : NULL;
    if (quiet == NULL)
        return TS_NO_MEMORY;
    status = ts_read_tree(bytes, study->name, arena, quiet, source);
    return ts_arena_failed(arena) ? TS_NO_MEMORY : status;
}

ts_status ts_study_propose(ts_study *study, const ts_study_edit *edits, size_t count,
                           const ts_sink *sink)
{
    if (!study->solved)
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena  = ts_arena_open(study->allocator);
    ts_source source = study->told;
    ts_buffer out;
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_buffer_open(&out, study->allocator);
    ts_status status = count > 0 ? TS_OK : TS_NOT_UNDERSTOOD;
    for (size_t i = 0; i < count && status == TS_OK; i++)
        status = propose(study, &edits[i], i + 1 < count, arena, &source, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}
