/* How is a small answer about what was done written? */
#include "towershaft/act.h"
#include "towershaft/study.h"

#include "base/json_writer.h"

ts_status ts_act_write(const char *command, const ts_act_field *fields, size_t count,
                       const ts_sink *sink)
{
    ts_buffer out;
    ts_json   json;
    ts_buffer_open(&out, NULL);
    ts_json_begin(&json, &out, false);
    ts_json_object(&json);
    ts_json_key(&json, "tool");
    ts_json_string(&json, "towershaft");
    ts_json_key(&json, "version");
    ts_json_string(&json, ts_version());
    ts_json_key(&json, "command");
    ts_json_string(&json, command);
    for (size_t i = 0; i < count; i++) {
        ts_json_key(&json, fields[i].key);
        ts_json_string(&json, fields[i].value);
    }
    ts_json_end(&json, '}');
    ts_buffer_add(&out, "\n");
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
