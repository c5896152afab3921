/* How is a drive file arranged, and every answer checked from scratch? */
#include "towershaft/arrange.h"

#include "base/sha256.h"
#include "study/added_text.h"
#include "study/arranging.h"
#include "study/outlet.h"

#include <string.h>

/* ---- what stays ------------------------------------------------------------------------------ */

static bool is_at_or_below(ts_text address, const char *place)
{
    const size_t length = strlen(place);
    return address.length >= length && memcmp(address.at, place, length) == 0 &&
           (address.length == length || address.at[length] == '/');
}

static ts_side_choice side_of(ts_text address)
{
    const char *branches[2] = {"/box/clockwise/", "/box/anticlockwise/"};
    for (int i = 0; i < 2; i++)
        for (size_t k = 0; k + strlen(branches[i]) <= address.length; k++)
            if (memcmp(address.at + k, branches[i], strlen(branches[i])) == 0)
                return i == 0 ? TS_CHOOSE_CLOCKWISE : TS_CHOOSE_ANTICLOCKWISE;
    return TS_CHOOSE_EITHER_SIDE;
}

static ts_extra_demand demand_of(const ts_study *study, const ts_pad *pad, ts_text address)
{
    const ts_shaft *shaft = &study->train.shafts[pad->shaft];
    return (ts_extra_demand){
        .accessory = pad->accessory,
        .spool     = (int32_t)shaft->spool,
        .face      = pad->face == TS_FRONT ? TS_CHOOSE_FRONT : TS_CHOOSE_REAR,
        .side      = side_of(address),
        .ratio     = ts_rational_value(study->motion.shafts[pad->shaft].ratio),
    };
}

/* Demands of every accessory that stands at or below the address; how many. */
static size_t keep_one(const ts_arranging *a, const char *place, ts_extra_demand *out)
{
    const ts_study *study = a->study;
    size_t          count = 0;
    for (uint32_t p = 0; p < study->train.pad_count; p++) {
        const ts_pad *pad = &study->train.pads[p];
        ts_buffer     address;
        if (pad->accessory < 0)
            continue;
        ts_buffer_open(&address, study->allocator);
        ts_source_address(&study->source, pad->node, &address);
        const ts_text at = {address.bytes != NULL ? address.bytes : "", address.length};
        if (is_at_or_below(at, place))
            out[count++] = demand_of(study, pad, at);
        ts_buffer_close(&address);
    }
    return count;
}

static ts_status keep_all(ts_arranging *a, ts_extra_demand **extra, size_t *count)
{
    const size_t pads = a->study->train.pad_count;
    *count            = 0;
    *extra            = TS_TAKE(a->arena, ts_extra_demand, pads * (a->options->keep_count + 1) + 1);
    if (*extra == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < a->options->keep_count; i++) {
        const size_t found = keep_one(a, a->options->keep[i], *extra + *count);
        if (found == 0) {
            ts_study_say(a->study, "nothing-to-keep", "no accessory stands at the address to keep",
                         "the address of a pad, shaft, branch or box, such as "
                         "drive/hp/box/clockwise/2",
                         NULL);
            return TS_NOT_UNDERSTOOD;
        }
        *count += found;
    }
    return TS_OK;
}

/* ---- the search ------------------------------------------------------------------------------ */

/* Which demands conflict, by speeds, senses and room alone: with the strength of teeth left out the
 * searches are quick, and what cannot be met without it cannot be met with it. */
static ts_status explain(ts_arranging *a, const ts_arrange_wish *wish)
{
    ts_arrange_problem light = a->problem.problem;
    light.model.width        = ts_drive_least_width;
    light.model.proportional = true;
    const ts_status status   = ts_arrange_explain(&light, wish, &a->conflict, a->arena);
    a->explained = status == TS_OK && (wish->stop == NULL || !wish->stop(wish->context));
    /* A proof without its explanation is still a proof. */
    return status == TS_NO_MEMORY && !ts_arena_failed(a->arena) ? TS_OK : status;
}

static ts_status search(ts_arranging *a)
{
    ts_extra_demand *extra;
    size_t           extra_count, workers = a->options->workers > 0 ? a->options->workers : 1;
    ts_status        status = keep_all(a, &extra, &extra_count);
    if (status != TS_OK)
        return status;
    const ts_drive_question question = {.drive       = &a->study->drive,
                                        .motion      = &a->study->motion,
                                        .extra       = extra,
                                        .extra_count = extra_count};
    status = ts_drive_problem_make(&question, a->arena, a->study->diagnostics, &a->problem);
    if (status != TS_OK)
        return status;
    status = ts_arranging_read_places(a);
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
    a->problem.problem.model = (ts_arrange_model){
        .context = a->widths, .width = ts_drive_width_of, .gear_mass = ts_drive_gear_mass};
    const ts_arrange_wish wish = ts_arranging_wish(a);
    status                     = ts_arrange_search(&a->problem.problem, &wish, &a->result);
    a->searched                = status == TS_OK;
    if (status == TS_OK) {
        a->certificate = ts_arrange_check_certificate(&a->problem.problem, &a->result);
        if (a->result.end == TS_ARRANGE_PROVEN && a->result.count == 0)
            status = explain(a, &wish);
    }
    if (status == TS_OK && ts_drive_width_failed(a->widths))
        return TS_NO_MEMORY;
    return status;
}

/* ---- each answer from scratch ---------------------------------------------------------------- */

static ts_status check_all(ts_arranging *a)
{
    const size_t count = a->result.count;
    a->texts           = TS_TAKE(a->arena, ts_text, count + 1);
    a->verdicts        = TS_TAKE(a->arena, ts_arranged_verdict, count + 1);
    a->chosen          = count;
    if (a->texts == NULL || a->verdicts == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < count; i++) {
        const ts_status status =
            ts_arranging_judge(a, &a->result.answers[i], &a->texts[i], &a->verdicts[i]);
        if (status != TS_OK)
            return status;
        if (a->verdicts[i].holds &&
            (a->chosen == count || a->verdicts[i].mass < a->verdicts[a->chosen].mass))
            a->chosen = i;
    }
    return TS_OK;
}

/* ---- the answer ------------------------------------------------------------------------------ */

static ts_status tell(const ts_arranging *a, const ts_page_options *shown, const ts_sink *sink)
{
    const ts_arrange_told told = {
        .drive         = &a->study->drive,
        .motion        = &a->study->motion,
        .problem       = &a->problem,
        .result        = &a->result,
        .verdicts      = a->verdicts,
        .chosen        = a->chosen,
        .laws          = ts_drive_width_laws(a->widths),
        .certificate   = a->certificate,
        .conflict      = a->explained ? &a->conflict : NULL,
        .caution       = ts_caution(),
        .version       = ts_version(),
        .front         = a->options->front > 0 && a->result.count > 0 ? &a->front : NULL,
        .why_not       = a->why_not,
        .why_not_count = a->why_not_count,
        .added         = a->options->added != NULL ? a->options->added_name : NULL,
        .added_sha256  = a->options->added != NULL ? a->added_sha256 : NULL,
        .sha256        = a->sha256};
    ts_buffer out;
    ts_buffer_open(&out, a->study->allocator);
    ts_page page = ts_outlet_page(shown, &out);
    if (a->options->json)
        ts_arrange_json(&told, &out);
    else
        ts_arrange_page(&told, &page);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

/* The best that holds, else the best. */
static ts_status hand_over(const ts_arranging *a, const ts_sink *file)
{
    const size_t index = a->chosen < a->result.count ? a->chosen : 0;
    if (a->result.count == 0 || a->texts[index].at == NULL)
        return TS_OK;
    const ts_text bytes = a->texts[index];
    /* What does not hold is shown and never written. */
    if (file != NULL && a->chosen < a->result.count &&
        file->write(file->context, bytes.at, bytes.length) != 0)
        return TS_NO_OUTPUT;
    if (!a->verdicts[index].read)
        return TS_OK;
    const ts_study_options options = a->study->options;
    const char            *name = ts_arena_copy(a->arena, a->study->name, strlen(a->study->name));
    if (name == NULL)
        return TS_NO_MEMORY;
    return ts_study_read(a->study, name, bytes.at, bytes.length, &options);
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

static ts_arranged end_of(const ts_arrange_result *result)
{
    if (result->end != TS_ARRANGE_PROVEN)
        return TS_ARRANGED_SO_FAR;
    return result->count > 0 ? TS_ARRANGED : TS_ARRANGED_NOTHING;
}

ts_status ts_arrange_write(ts_study *study, const ts_arrange_options *options,
                           const ts_page_options *page, ts_arranged *ended, const ts_sink *sink,
                           const ts_sink *file)
{
    ts_arranging a = {.study = study, .options = options};
    *ended         = TS_ARRANGED_SO_FAR;
    if (!study->solved)
        return TS_NOT_UNDERSTOOD;
    a.arena = ts_arena_open(study->allocator);
    if (a.arena == NULL)
        return TS_NO_MEMORY;
    if (!ts_locked_memory_open(&a.locked, study->allocator, options->memory)) {
        ts_arena_close(a.arena);
        return TS_NO_MEMORY;
    }
    a.shared = ts_locked_memory_allocator(&a.locked);
    memcpy(a.sha256, study->sha256, sizeof a.sha256);
    if (options->added != NULL)
        ts_sha256((ts_text){options->added, options->added_length}, a.added_sha256);
    ts_status status = options->added != NULL ? add(&a) : TS_OK;
    if (status == TS_OK)
        status = search(&a);
    if (status == TS_OK)
        status = check_all(&a);
    if (status == TS_OK)
        status = ts_arranging_find_front(&a);
    if (status == TS_OK)
        status = ts_arranging_answer_places(&a);
    if (status == TS_OK)
        status = tell(&a, page, sink);
    if (status == TS_OK) {
        *ended = end_of(&a.result);
        status = hand_over(&a, file);
    }
    if (a.searched)
        ts_arrange_result_close(&a.result);
    ts_drive_width_close(a.widths);
    ts_locked_memory_close(&a.locked);
    ts_arena_close(a.arena);
    return status;
}
