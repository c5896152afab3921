/* What does a reviewer get who wants to redo every number of a report? */
#include "towershaft/report.h"

#include "report/recheck_json.h"
#include "study/study.h"

typedef struct embedded_file {
    const char          *name, *says;
    const unsigned char *bytes;
    size_t               length;
} embedded_file;

#include "recheck_script.inc"

ts_status ts_recheck_write(ts_study *study, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE) || study->workings == NULL) {
        ts_study_say(study, "no-workings", "no workings were kept", "a drive that could be solved",
                     NULL);
        return TS_NOT_UNDERSTOOD;
    }
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    ts_recheck_json(&answer, &out);
    const ts_status status = out.failed || !ts_workings_complete(study->workings)
                                 ? TS_NO_MEMORY
                                 : ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_recheck_script_write(const ts_sink *sink)
{
    const embedded_file *script = &embedded_files[0];
    return sink->write(sink->context, (const char *)script->bytes, script->length) == 0
               ? TS_OK
               : TS_NO_OUTPUT;
}
