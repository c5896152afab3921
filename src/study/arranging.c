/* What does one call that arranges a drive begin with? */
#include "study/arranging.h"

#include "base/sha256.h"
#include "study/added_text.h"

#include <string.h>

#define ANSWERS_USUAL 5

ts_arrange_wish ts_arranging_wish(const ts_arranging *a)
{
    const size_t asked = a->options->answers > 0 ? a->options->answers : ANSWERS_USUAL;
    return (ts_arrange_wish){.allocator = &a->shared,
                             /* The tables of widths come from what is left. */
                             .memory_most = a->options->memory - a->options->memory / 4,
                             .workers     = a->options->workers > 0 ? a->options->workers : 1,
                             .answers     = a->further > 0 ? a->further : (uint32_t)asked,
                             .stop        = a->options->stop,
                             .context     = a->options->context};
}

/* ---- the problem ------------------------------------------------------------------------------
 */

ts_status ts_arranging_prepare(ts_arranging *a)
{
    ts_extra_demand *extra;
    size_t           extra_count, workers = a->options->workers > 0 ? a->options->workers : 1;
    ts_status        status = ts_arranging_keep(a, &extra, &extra_count);
    if (status != TS_OK)
        return status;
    const ts_drive_question question = {.drive       = &a->study->drive,
                                        .motion      = &a->study->motion,
                                        .extra       = extra,
                                        .extra_count = extra_count};
    status = ts_drive_problem_make(&question, a->arena, a->study->diagnostics, &a->problem);
    if (status != TS_OK)
        return status;
    for (size_t i = 0; i < extra_count; i++)
        extra[i].ratio = 0.0;
    status = ts_drive_problem_make(&question, a->arena, a->study->diagnostics, &a->loose);
    if (status != TS_OK)
        return status;
    const ts_drive_width_wish widths = {.drive     = &a->study->drive,
                                        .problem   = &a->problem.problem,
                                        .tapped    = a->problem.tapped,
                                        .m_n       = a->problem.m_n,
                                        .density   = a->problem.density,
                                        .workers   = workers,
                                        .allocator = &a->shared};
    status                           = ts_drive_width_open(&widths, &a->widths);
    if (status != TS_OK)
        return status;
    a->problem.problem.model = (ts_arrange_model){.context   = a->widths,
                                                  .width     = ts_drive_width_of,
                                                  .least     = ts_drive_width_least,
                                                  .gear_mass = ts_drive_gear_mass};
    return TS_OK;
}

/* Further accessories, before anything else. */
static ts_status add(ts_arranging *a)
{
    ts_text   bytes;
    ts_status status =
        ts_added_text(a->study, (ts_text){a->options->added, a->options->added_length},
                      a->options->added_name, a->arena, &bytes);
    ts_buffer name;
    if (status != TS_OK)
        return status;
    ts_buffer_open(&name, a->study->allocator);
    ts_buffer_print(&name, "%s with %s", a->study->name, a->options->added_name);
    const ts_study_options options = a->study->options;
    status                         = name.failed ? TS_NO_MEMORY
                                                 : ts_study_read(a->study, name.bytes, bytes.at, bytes.length, &options);
    ts_buffer_close(&name);
    return status;
}

ts_status ts_arranging_open(ts_arranging *a)
{
    const ts_arrange_options *options = a->options;
    a->arena                          = ts_arena_open(a->study->allocator);
    if (a->arena == NULL)
        return TS_NO_MEMORY;
    a->is_locked = ts_locked_memory_open(&a->locked, a->study->allocator, options->memory);
    if (!a->is_locked)
        return TS_NO_MEMORY;
    a->shared = ts_locked_memory_allocator(&a->locked);
    memcpy(a->sha256, ts_study_sha256(a->study), sizeof a->sha256);
    if (options->added == NULL)
        return TS_OK;
    ts_sha256((ts_text){options->added, options->added_length}, a->added_sha256);
    return add(a);
}

void ts_arranging_close(ts_arranging *a)
{
    if (a->searched)
        ts_arrange_result_close(&a->result);
    ts_drive_width_close(a->widths);
    if (a->is_locked)
        ts_locked_memory_close(&a->locked);
    ts_arena_close(a->arena);
}
