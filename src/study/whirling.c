/* What do sections, bearings and weights of a study make of its critical speeds? */
#include "study/whirling.h"

#include "study/outlet.h"
#include "towershaft/whirl.h"

enum { SPEEDS = 200 };

ts_status ts_study_whirl(const ts_study *study, ts_arena *arena, ts_whirl_answer *out)
{
    ts_whirl_course *courses = TS_TAKE(arena, ts_whirl_course, study->whirls.count + 1);
    ts_webs         *webs    = TS_TAKE(arena, ts_webs, 1);
    ts_status        status  = courses != NULL && webs != NULL ? TS_OK : TS_NO_MEMORY;

    if (status == TS_OK)
        status = ts_webs_prepare(&study->drive, &study->motion, &study->mass, arena, webs);
    if (status != TS_OK)
        return status;
    ts_webs_solve(webs, true);
    *out = (ts_whirl_answer){&study->whirls, courses, webs};
    for (uint32_t i = 0; status == TS_OK && i < study->whirls.count; i++)
        status = ts_whirl_course_of(&study->whirls, i, SPEEDS, arena, &courses[i]);
    return status;
}

ts_status ts_whirl_write(ts_study *study, bool json, const ts_page_options *options, bool *computed,
                         const ts_sink *sink)
{
    *computed = false;
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_answer answer = ts_study_answer(study);
    ts_whirl_answer whirl;
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    ts_page   page   = ts_outlet_page(options, &out);
    ts_status status = ts_study_whirl(study, arena, &whirl);
    if (status == TS_OK && json)
        ts_whirl_json(&whirl, &answer, &out);
    else if (status == TS_OK)
        ts_whirl_page(&whirl, &answer, &page);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    *computed = status == TS_OK;
    for (uint32_t i = 0; i < study->whirls.count; i++)
        *computed = *computed && study->whirls.items[i].fault == NULL &&
                    study->whirls.items[i].missing == NULL;
    ts_buffer_close(&out);
    ts_arena_close(arena);
    return status;
}
