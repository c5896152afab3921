/* Through which outlet does the answer leave? */
#include "study/study.h"

#include "report/answer_json.h"
#include "report/build_server.h"
#include "report/check_page.h"
#include "study/outlet.h"

/* What stops after each failure alone: told by page and JSON in a few words. */
static ts_status follow_failures(ts_study *study, ts_document document, ts_arena *arena,
                                 ts_effects *effects, ts_answer *answer)
{
    if (document != TS_DOCUMENT_PAGE && document != TS_DOCUMENT_JSON)
        return TS_OK;
    ts_status status =
        ts_effects_prepare(&study->drive, &study->motion, &study->select, arena, effects);
    if (status == TS_OK)
        status = ts_effects_each(effects, arena);
    answer->effects = effects;
    return status;
}

static void write_document(const ts_answer *answer, ts_document document,
                           const ts_page_options *options, ts_buffer *out)
{
    ts_page page = ts_outlet_page(options, out);

    switch (document) {
    case TS_DOCUMENT_PAGE:
        ts_check_page(answer, &page);
        break;
    case TS_DOCUMENT_JSON:
        ts_answer_json(answer, out);
        break;
    case TS_DOCUMENT_SARIF:
        ts_sarif(answer, out);
        break;
    case TS_DOCUMENT_JUNIT:
        ts_junit(answer, out);
        break;
    }
}

ts_status ts_study_write(ts_study *study, ts_document document, const ts_page_options *options,
                         const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    ts_rubbing_films(&study->drive, &study->rubbing, NULL);
    ts_answer  answer = ts_study_answer(study);
    ts_effects effects;
    ts_buffer  out;
    ts_buffer_open(&out, study->allocator);
    ts_status status = follow_failures(study, document, arena, &effects, &answer);
    if (status == TS_OK) {
        write_document(&answer, document, options, &out);
        status = ts_buffer_send(&out, sink);
    }
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}
