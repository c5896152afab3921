/* How is a drive file arranged, and every answer checked from scratch? */
#include "towershaft/arrange.h"

#include "study/arranging.h"
#include "study/figures.h"
#include "study/outlet.h"

#include <math.h>
#include <string.h>

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

/* Beginnings of one way to drive a box, after which the lightest of all is proven by itself first.
 * Counted, not timed, so that the answer is the same on any machine. */
#define BEGINNINGS_AT_FIRST 50000000

/* Where memory ran out for the tables of widths, meshes were taken as impossible that may not be:
 * nothing that was found or ruled out can be told. */
static void doubt_all(ts_arranging *a)
{
    a->result.end   = TS_ARRANGE_NO_MEMORY;
    a->result.bound = 0.0;
    a->result.count = 0;
}

static ts_status search_once(ts_arranging *a)
{
    ts_arrange_wish wish = ts_arranging_wish(a);
    wish.progress        = a->options->progress;
    const ts_status status =
        ts_arrange_search_in_turns(&a->problem.problem, &wish, BEGINNINGS_AT_FIRST, &a->result);
    a->searched = status == TS_OK;
    if (status == TS_OK && ts_drive_width_failed(a->widths))
        doubt_all(a);
    return status;
}

/* Does one of the answers hold by all rules?  Looked at in copies, for their faces are widened. */
static ts_status find_holding(ts_arranging *a, ts_arranged_verdict *verdicts, bool *holds)
{
    ts_arrangement *found = TS_TAKE(a->arena, ts_arrangement, 1);
    *holds                = false;
    if (found == NULL)
        return TS_NO_MEMORY;
    for (size_t i = 0; i < a->result.count && !*holds; i++) {
        ts_text text           = {0};
        *found                 = a->result.answers[i];
        verdicts[i]            = (ts_arranged_verdict){0};
        const ts_status status = ts_arranging_judge(a, found, &text, &verdicts[i]);
        if (status != TS_OK)
            return status;
        *holds = verdicts[i].holds;
    }
    return TS_OK;
}

static void forget_result(ts_arranging *a)
{
    ts_arrange_result_close(&a->result);
    a->searched = false;
}

/* Bevels and radial shafts that the rules refuse are left out, so that others get their turn. */
static ts_status search_with_sound_take_offs(ts_arranging *a, bool *holds)
{
    ts_arranged_verdict *verdicts =
        TS_TAKE(a->arena, ts_arranged_verdict, (size_t)TS_ARRANGE_ANSWERS);
    if (verdicts == NULL)
        return TS_NO_MEMORY;
    for (;;) {
        ts_status status = search_once(a);
        *holds           = true;
        if (status == TS_OK && a->result.end == TS_ARRANGE_PROVEN && a->result.count > 0)
            status = find_holding(a, verdicts, holds);
        if (status != TS_OK || *holds || !ts_arranging_strike(a, verdicts))
            return status;
        forget_result(a);
    }
}

/* What the search leaves to the rules may strike out every answer that was asked for; then as many
 * are looked for as there can be.  Those that were found stay the first of them. */
static ts_status search_until_one_holds(ts_arranging *a)
{
    bool            holds  = false;
    const ts_status status = search_with_sound_take_offs(a, &holds);
    if (status != TS_OK || holds || a->result.others_open ||
        a->result.count < ts_arranging_wish(a).answers || a->result.count == TS_ARRANGE_ANSWERS)
        return status;
    forget_result(a);
    a->further = TS_ARRANGE_ANSWERS;
    return search_once(a);
}

static ts_status search(ts_arranging *a)
{
    ts_draw_options drawn; /* read here, so that a word that is no format is told at once */
    if (a->options->picture != NULL && !ts_study_figure(a->study, a->options->picture, &drawn))
        return TS_NOT_UNDERSTOOD;
    ts_status status = ts_arranging_prepare(a);
    if (status == TS_OK)
        status = ts_arranging_read_places(a);
    if (status == TS_OK && !(ts_arranging_read_robust(a) && ts_arranging_read_samples(a)))
        status = TS_NOT_UNDERSTOOD;
    if (status != TS_OK)
        return status;
    status = search_until_one_holds(a);
    if (status == TS_OK) {
        const ts_arrange_wish wish = ts_arranging_wish(a);
        a->certificate             = ts_arrange_check_certificate(&a->problem.problem, &a->result);
        if (a->result.end == TS_ARRANGE_PROVEN && a->result.count == 0)
            status = explain(a, &wish);
    }
    return status;
}

/* What stands in the file, by room, speeds and senses; its strength is a matter of the rules. */
static ts_status look_at_present(ts_arranging *a)
{
    if (!ts_drive_present(&a->study->drive, &a->problem, a->arena, &a->present))
        return TS_NO_MEMORY;
    ts_arrange_problem light = a->present.problem;
    light.model.width        = ts_drive_least_width;
    light.model.proportional = true;
    if (isfinite(a->present.mass))
        a->present_rule = ts_arrange_verify(&light, &a->present.shafts);
    return TS_OK;
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
            (a->chosen == count || a->verdicts[i].account.sum < a->verdicts[a->chosen].account.sum))
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
        .present       = &a->present,
        .present_rule  = a->present_rule,
        .conflict      = a->explained ? &a->conflict : NULL,
        .caution       = ts_caution(),
        .version       = ts_version(),
        .robust        = a->robust.asked ? &a->robust : NULL,
        .front         = a->options->front > 0 && a->result.count > 0 ? &a->front : NULL,
        .why_not       = a->why_not,
        .why_not_count = a->why_not_count,
        .struck        = a->struck,
        .struck_count  = a->struck_count,
        .kept          = a->options->keep,
        .kept_count    = a->options->keep_count,
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

static void tell_texts(const ts_arranging *a)
{
    if (a->options->answer == NULL)
        return;
    for (size_t i = 0; i < a->result.count; i++)
        a->options->answer(a->options->context, i, a->verdicts[i].holds,
                           a->texts[i].at != NULL ? a->texts[i].at : "", a->texts[i].length);
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
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_status status = ts_arranging_open(&a);
    if (status == TS_OK)
        status = search(&a);
    if (status == TS_OK)
        status = ts_arranging_find_robust(&a);
    if (status == TS_OK)
        status = check_all(&a);
    if (status == TS_OK)
        status = ts_arranging_find_samples(&a);
    if (status == TS_OK)
        status = ts_arranging_find_front(&a);
    if (status == TS_OK)
        status = ts_arranging_answer_places(&a);
    if (status == TS_OK)
        status = look_at_present(&a);
    if (status == TS_OK)
        status = ts_arranging_draw(&a);
    if (status == TS_OK)
        status = tell(&a, page, sink);
    if (status == TS_OK) {
        *ended = end_of(&a.result);
        tell_texts(&a);
        status = hand_over(&a, file);
    }
    ts_arranging_close(&a);
    return status;
}
