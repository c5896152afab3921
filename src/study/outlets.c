/* Through which outlet does the answer leave? */
#include "study/study.h"

#include "report/answer_json.h"
#include "report/build_server.h"
#include "report/check_page.h"
#include "study/outlet.h"

ts_status ts_study_write(ts_study *study, ts_document document, const ts_page_options *options,
                         const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_rubbing_films(&study->drive, &study->rubbing, NULL);
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    ts_page page = ts_outlet_page(options, &out);
    switch (document) {
    case TS_DOCUMENT_PAGE:
        ts_check_page(&answer, &page);
        break;
    case TS_DOCUMENT_JSON:
        ts_answer_json(&answer, &out);
        break;
    case TS_DOCUMENT_SARIF:
        ts_sarif(&answer, &out);
        break;
    case TS_DOCUMENT_JUNIT:
        ts_junit(&answer, &out);
        break;
    }
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
