/* Does an arrangement hold by all rules, and how wide must its faces be? */
#include "study/arranging.h"

#include "search/arranged_face.h"

#include <string.h>

static const char *copy(ts_arranging *a, const char *text)
{
    return text != NULL ? ts_arena_copy(a->arena, text, strlen(text)) : NULL;
}

static void judge(ts_arranging *a, ts_study *own, ts_arranged_verdict *out)
{
    out->read  = own->solved;
    out->holds = ts_study_verdict(own) == TS_HOLDS;
    for (size_t i = 0; i < ts_study_finding_count(own); i++) {
        const ts_finding_view f = ts_study_finding(own, i);
        if (strcmp(f.state, "open") != 0)
            continue;
        out->refusals += strcmp(f.level, "refuse") == 0;
        out->warnings += strcmp(f.level, "warn") == 0;
        out->clashes += strncmp(f.rule, "D2-", 3) == 0 && strcmp(f.level, "note") != 0;
        if (strcmp(f.level, "refuse") != 0)
            continue;
        const char *says = copy(a, f.says), *address = copy(a, f.address);
        if (says == NULL || address == NULL)
            continue;
        ts_arranging_note_refusal(a, says, address, out);
        if (out->first == NULL) {
            out->first   = says;
            out->address = address;
        }
    }
}

/* ---- faces that the whole drive asks to be wider --------------------------------------------- */

#define WIDENINGS_MOST 40

/* Writes an answer into the file and reads that; `own` is solved when it could be. */
static ts_status read_answer(ts_arranging *a, const ts_arrangement *found, ts_text *text,
                             ts_study *own)
{
    ts_diagnostics *list = ts_diagnostics_open(a->arena, a->study->name, a->study->bytes);
    if (list == NULL)
        return TS_NO_MEMORY;
    ts_status status = ts_arranged_text(a->study, &a->problem, found, a->arena, list, text);
    if (status != TS_OK)
        return status;
    ts_study_options options = a->study->options;
    options.workings         = false;
    return ts_study_read(own, a->study->name, text->at, text->length, &options);
}

ts_status ts_arranging_judge(ts_arranging *a, ts_arrangement *found, ts_text *text,
                             ts_arranged_verdict *out)
{
    ts_study *own    = NULL;
    ts_status status = ts_study_open(a->study->allocator, &own);
    if (status == TS_OK)
        status = read_answer(a, found, text, own);
    for (size_t i = 0; i < WIDENINGS_MOST && status == TS_OK; i++) {
        const ts_arranged_drive read  = {&own->drive, &own->train, &own->teeth};
        const size_t            steps = ts_arranged_widen(&a->problem, &read, found);
        out->widened += steps;
        if (steps == 0)
            break;
        status = read_answer(a, found, text, own);
    }
    out->account = ts_arrange_account_of(&a->problem.problem, found);
    if (status == TS_OK)
        judge(a, own, out);
    ts_study_close(own);
    return status == TS_NOT_UNDERSTOOD ? TS_OK : status;
}
