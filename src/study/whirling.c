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
        status = ts_whirl_course_of(&study->whirls, i, SPEEDS, TS_COURSE_SPEEDS | TS_COURSE_MAP,
                                    arena, &courses[i]);
    return status;
}

ts_status ts_study_course(const ts_study *study, unsigned wanted, ts_arena *arena,
                          const ts_whirl_course **out)
{
    ts_whirl_course *courses = TS_TAKE(arena, ts_whirl_course, study->whirls.count + 1);
    const uint32_t   nearest = ts_whirls_nearest(&study->whirls);

    *out = courses;
    if (courses == NULL)
        return TS_NO_MEMORY;
    for (uint32_t i = 0; i < study->whirls.count; i++)
        courses[i] = (ts_whirl_course){.item = &study->whirls.items[i]};
    if (nearest == UINT32_MAX)
        return TS_OK;
    return ts_whirl_course_of(&study->whirls, nearest, SPEEDS, wanted, arena, &courses[nearest]);
}

typedef struct wish {
    bool json, computed;
} wish;

static ts_status tell(ts_telling *it, void *about)
{
    const ts_whirls *whirls = &it->study->whirls;
    wish            *what   = about;
    ts_whirl_answer  whirl;
    const ts_status  status = ts_study_whirl(it->study, it->arena, &whirl);

    if (status != TS_OK)
        return status;
    if (what->json)
        ts_whirl_json(&whirl, &it->answer, it->page.out);
    else
        ts_whirl_page(&whirl, &it->answer, &it->page);
    what->computed = true;
    for (uint32_t i = 0; i < whirls->count; i++)
        what->computed =
            what->computed && whirls->items[i].fault == NULL && whirls->items[i].missing == NULL;
    return TS_OK;
}

ts_status ts_whirl_write(ts_study *study, bool json, const ts_page_options *options, bool *computed,
                         const ts_sink *sink)
{
    wish            what   = {.json = json};
    const ts_status status = ts_outlet_tell(study, options, tell, &what, sink);

    *computed = status == TS_OK && what.computed;
    return status;
}
