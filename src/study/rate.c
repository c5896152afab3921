/* How are the elements of a rate file computed and told? */
#include "study/study.h"

#include "report/rate_report.h"
#include "study/outlet.h"
#include "towershaft/rate.h"

bool ts_study_is_rate(const ts_study *study)
{
    return study->rated;
}

/* Addresses, findings and workings ask a drive for its title and its conditions; the sections of
 * the elements stand there instead. */
ts_status ts_study_rate(ts_study *study)
{
    const ts_units units  = study->options.us ? TS_UNITS_US : TS_UNITS_METRIC;
    ts_status      status = TS_NO_MEMORY;
    if (study->workings == NULL)
        study->workings = ts_workings_open(study->arena);
    if (study->workings != NULL)
        status = ts_rate_run(&study->rate, units, study->arena, study->workings, &study->elements);
    if (status != TS_OK)
        return status;
    study->outcome = study->elements.outcome;
    study->drive   = (ts_drive){.title           = study->rate.title,
                                .revision        = study->rate.revision,
                                .conditions      = study->elements.conditions,
                                .condition_count = TS_RATED_CONDITION_COUNT,
                                .source          = &study->source};
    study->rated   = true;
    return TS_OK;
}

ts_status ts_rate_write(ts_study *study, bool json, const ts_page_options *options,
                        const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_RATE))
        return TS_NOT_UNDERSTOOD;
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    ts_page page = ts_outlet_page(options, &out);
    if (json)
        ts_rate_json(&study->elements, &answer, &out);
    else
        ts_rate_page(&study->elements, &answer, &page);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
