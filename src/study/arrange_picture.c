/* What do the arrangements that were found look like, side by side? */
#include "study/arranging.h"
#include "study/figures.h"

#include <math.h>
#include <stdio.h>
#include <string.h>

static const char *name_of(ts_arranging *a, size_t index)
{
    char text[32];
    (void)snprintf(text, sizeof text, "%zu", index + 1);
    return ts_arena_copy(a->arena, text, strlen(text));
}

/* Of the file as it was read, with what joined it. */
static void tell_findings(const ts_study *study, ts_candidate *item)
{
    for (size_t i = 0; i < study->outcome.finding_count; i++) {
        const ts_finding *f = &study->outcome.findings[i];
        item->warnings += f->state == TS_OPEN && f->level == TS_WARN ? 1 : 0;
        if (f->state == TS_OPEN && f->level == TS_REFUSE && item->finding == NULL)
            item->finding = f->says;
    }
}

/* The answers, and first what stands in the file, where it can be laid out. */
static bool gather(ts_arranging *a, ts_candidate *items, size_t *count)
{
    *count = 0;
    if (a->present.stands && a->present.beyond == NULL && isfinite(a->present.mass))
        items[(*count)++] = (ts_candidate){.name    = "in the file",
                                           .found   = &a->present.shafts,
                                           .problem = &a->present.problem,
                                           .mass    = a->present.mass,
                                           .judged  = true,
                                           .read    = true,
                                           .holds   = ts_study_verdict(a->study) == TS_HOLDS};
    if (*count > 0)
        tell_findings(a->study, &items[0]);
    for (size_t i = 0; i < a->result.count; i++) {
        const ts_arranged_verdict *v = &a->verdicts[i];
        items[*count]                = (ts_candidate){.name     = name_of(a, i),
                                                      .found    = &a->result.answers[i],
                                                      .problem  = &a->problem.problem,
                                                      .mass     = v->account.mass,
                                                      .judged   = true,
                                                      .read     = v->read,
                                                      .holds    = v->holds,
                                                      .warnings = v->warnings,
                                                      .finding  = v->first};
        if (items[(*count)++].name == NULL)
            return false;
    }
    return true;
}

static double wrap_of(const ts_arrangement *found, size_t boxes)
{
    double wrap = 0.0;
    for (size_t b = 0; b < boxes; b++)
        if (found->boxes[b].present)
            wrap = fmax(wrap, found->boxes[b].wrap);
    return wrap;
}

static ts_front_mark *front_of(const ts_arranging *a)
{
    const ts_front *front = &a->front;
    ts_front_mark  *marks = TS_TAKE(a->arena, ts_front_mark, front->count + 1);
    for (size_t i = 0; marks != NULL && i < front->count; i++) {
        const ts_front_point    *point = &front->points[i];
        const ts_arrange_account own =
            ts_arrange_account_as_found(&a->problem.problem, &point->found);
        marks[i] = (ts_front_mark){
            .wrap   = wrap_of(&front->points[i].found, a->problem.problem.box_count),
            .mass   = own.mass,
            .proven = front->points[i].end == TS_ARRANGE_PROVEN,
            .holds  = front->points[i].verdict.read && front->points[i].verdict.holds};
    }
    return marks;
}

static size_t refused_count(const ts_arranging *a)
{
    size_t count = 0;

    for (size_t i = 0; i < a->result.count; i++)
        count += a->verdicts[i].read && a->verdicts[i].holds ? 0 : 1;
    return count;
}

static void say(const ts_arranging *a, ts_buffer *out)
{
    const ts_arrange_result *r = &a->result;
    if (r->end == TS_ARRANGE_PROVEN)
        ts_buffer_add(out, r->count > 0 ? "proven: nothing is lighter" : "proven: nothing fits");
    if (r->end == TS_ARRANGE_PROVEN && refused_count(a) > 0)
        ts_buffer_print(out, ", but %zu of these do not hold by all rules", refused_count(a));
    if (r->end == TS_ARRANGE_PROVEN)
        return;
    if (r->count > 0 && r->bound > 0.0) {
        ts_buffer_add(out, "ended early, perhaps ");
        ts_buffer_fixed(out, 100.0 * (r->answers[0].mass / r->bound - 1.0), 1);
        ts_buffer_add(out, " % too heavy");
    } else
        ts_buffer_add(out, "ended early: no bound yet");
}

ts_status ts_arranging_draw(ts_arranging *a)
{
    const ts_figure_options *options = a->options->picture;
    ts_draw_options          drawn;
    ts_candidates            all   = {.made          = &a->problem,
                                      .front         = front_of(a),
                                      .front_count   = a->front.count,
                                      .nothing_below = a->front.nothing_below};
    ts_candidate            *items = TS_TAKE(a->arena, ts_candidate, a->result.count + 1);
    if (options == NULL)
        return TS_OK;
    if (items == NULL || all.front == NULL || !gather(a, items, &all.count))
        return TS_NO_MEMORY;
    if (!ts_study_figure(a->study, options, &drawn) || !ts_study_has_font(a->study))
        return TS_NOT_UNDERSTOOD;
    if (drawn.format == TS_PICTURE_DXF) {
        ts_study_say(a->study, "no-true-size",
                     "arrangements side by side have no true size, and a DXF wants one",
                     "svg, pdf, png", NULL);
        return TS_NOT_UNDERSTOOD;
    }
    if (a->result.count == 0)
        all.count = 0;
    all.items     = items;
    all.reference = all.count > a->result.count ? 1 : 0;
    ts_buffer claim;
    ts_buffer_open(&claim, a->study->allocator);
    say(a, &claim);
    ts_drawing_subject subject = ts_study_subject(a->study, claim.bytes);
    subject.candidates         = &all;
    subject.finding_count      = 0;
    drawn.figure               = TS_FIGURE_CANDIDATES;
    const ts_status status =
        claim.failed ? TS_NO_MEMORY : ts_draw(&subject, &drawn, a->options->picture_sink);
    ts_buffer_close(&claim);
    return status;
}
