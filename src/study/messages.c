/* What could not be understood, and how is it said? */
#include "study/study.h"

#include "base/json_writer.h"

size_t ts_study_message_count(const ts_study *study)
{
    return study->diagnostics != NULL ? ts_diagnostics_kept(study->diagnostics) : 0;
}

ts_message ts_study_message(const ts_study *study, size_t index)
{
    const ts_diagnostic *from = ts_diagnostics_at(study->diagnostics, index);
    return (ts_message){
        .code     = from->code,
        .line     = from->line,
        .column   = from->column,
        .says     = from->says,
        .expected = from->expected,
        .nearest  = from->nearest,
        .address  = from->address,
    };
}

void ts_study_say(ts_study *study, const char *code, const char *says, const char *expected,
                  const char *nearest)
{
    const ts_diagnostic own = {
        .code = code, .columns = 1, .says = says, .expected = expected, .nearest = nearest};
    ts_diagnose(study->diagnostics, &own);
}

static void messages_json(const ts_study *study, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_string_at(&json, "tool", "towershaft");
    ts_json_string_at(&json, "version", ts_version());
    ts_json_string_at(&json, "caution", ts_caution());
    ts_json_key(&json, "input");
    ts_json_object(&json);
    ts_json_string_at(&json, "path", study->name);
    ts_json_end(&json, '}');
    ts_json_string_at(&json, "verdict", "not computable");
    ts_json_key(&json, "messages");
    ts_json_array(&json);
    for (size_t i = 0; i < ts_study_message_count(study); i++) {
        const ts_message message = ts_study_message(study, i);
        ts_json_object(&json);
        ts_json_string_at(&json, "code", message.code);
        ts_json_key(&json, "line");
        ts_json_integer(&json, message.line);
        ts_json_key(&json, "column");
        ts_json_integer(&json, message.column);
        ts_json_string_at(&json, "says", message.says);
        ts_json_string_at(&json, "expected", message.expected);
        ts_json_string_at(&json, "nearest", message.nearest);
        ts_json_string_at(&json, "address", message.address);
        ts_json_end(&json, '}');
    }
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}

ts_status ts_study_write_messages(const ts_study *study, bool json, int columns,
                                  const ts_sink *sink)
{
    if (study == NULL || study->diagnostics == NULL)
        return TS_OK;
    ts_buffer out;
    ts_buffer_open(&out, study->allocator);
    if (json)
        messages_json(study, &out);
    else
        ts_diagnostics_print(study->diagnostics, columns > 0 ? (size_t)columns : 0, &out);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
