/* What does a study tell, and ask, those who learn the drive? */
#include "towershaft/brief.h"

#include "draw/moving.h"
#include "report/brief.h"
#include "report/verdict_sentence.h"
#include "study/figures.h"
#include "study/publish.h"

typedef struct briefing {
    ts_answer  answer;
    ts_effects effects;
    ts_quiz    quiz;
} briefing;

static ts_status prepare(const ts_study *study, bool numbers, ts_arena *arena, briefing *out)
{
    out->answer = ts_study_answer(study);
    const ts_status status =
        ts_effects_solve(&study->drive, &study->motion, &study->select, arena, &out->effects);

    return status == TS_OK ? ts_quiz_make(&out->answer, &out->effects, numbers, arena, &out->quiz)
                           : status;
}

/* ---- the hand-out ---------------------------------------------------------------------------- */

static bool choose(ts_study *study, const ts_brief_options *options, ts_paper_wish *out)
{
    static const char *const formats[] = {"pdf", "html"};
    static const char *const papers[]  = {"A4", "Letter"};
    const int                format = ts_study_choose(study, "format", options->format, formats, 2);
    int                      paper  = TS_PAPER_A4;

    if (format >= 0 && options->paper != NULL)
        paper = ts_study_choose(study, "paper", options->paper, papers, 2);
    *out = (ts_paper_wish){.pdf   = format == 0,
                           .paper = (ts_paper)paper,
                           .large = options->large,
                           .units = options->us ? TS_UNITS_US : TS_UNITS_METRIC};
    return format >= 0 && paper >= 0;
}

static void write(ts_study *study, const briefing *told, const ts_brief *brief, ts_units units,
                  ts_arena *arena, ts_manuscript *manuscript)
{
    ts_chapter chapter;

    ts_study_manuscript(study, arena, manuscript);
    ts_study_entitle(manuscript, "how it works");
    ts_chapter_open(&chapter, &told->answer, units, manuscript);
    ts_brief_chapters(&chapter, brief);
    ts_chapter_close(&chapter);
}

static ts_status publish(ts_study *study, const ts_brief_options *options,
                         const ts_paper_wish *paper, ts_arena *arena, const ts_sink *sink)
{
    briefing        told;
    ts_manuscript   manuscript;
    const ts_status status = prepare(study, options->numbers, arena, &told);
    const ts_brief  brief  = {.effects = &told.effects,
                              .quiz    = &told.quiz,
                              .numbers = options->numbers,
                              .key     = options->key,
                              .moving  = !paper->pdf};
    ts_buffer       verdict;

    if (status != TS_OK)
        return status;
    write(study, &told, &brief, paper->units, arena, &manuscript);
    ts_buffer_open(&verdict, study->allocator);
    ts_verdict_sentence(&study->outcome, &verdict);
    const ts_drawing_subject subject = ts_study_subject(study, verdict.bytes);
    const ts_status          sent =
        verdict.failed ? TS_NO_MEMORY : ts_study_publish(study, &manuscript, paper, &subject, sink);
    ts_buffer_close(&verdict);
    return sent;
}

ts_status ts_brief_write(ts_study *study, const ts_brief_options *options, const ts_sink *sink)
{
    ts_paper_wish paper;

    if (!ts_study_ask(study, TS_WANT_DRIVE) || !choose(study, options, &paper))
        return ts_study_refused(study);
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_status status = publish(study, options, &paper, arena, sink);
    ts_arena_close(arena);
    return status;
}

/* ---- the quiz -------------------------------------------------------------------------------- */

static ts_status write_quiz(ts_study *study, bool numbers, ts_arena *arena, const ts_sink *sink)
{
    briefing        told;
    ts_manuscript   manuscript;
    ts_buffer       out;
    const ts_status prepared = prepare(study, numbers, arena, &told);
    const ts_brief  brief    = {.effects = &told.effects, .quiz = &told.quiz, .numbers = numbers};

    if (prepared != TS_OK)
        return prepared;
    write(study, &told, &brief, TS_UNITS_METRIC, arena, &manuscript);
    ts_buffer_open(&out, study->allocator);
    ts_brief_json(&told.answer, &manuscript, &told.quiz, &out);
    const ts_status status =
        out.failed || manuscript.failed ? TS_NO_MEMORY : ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_brief_quiz(ts_study *study, bool numbers, const ts_sink *sink)
{
    if (!ts_study_ask(study, TS_WANT_DRIVE))
        return TS_NOT_UNDERSTOOD;
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_status status = write_quiz(study, numbers, arena, sink);
    ts_arena_close(arena);
    return status;
}

/* ---- the picture that moves ------------------------------------------------------------------ */

ts_status ts_brief_picture(ts_study *study, const char *condition, const char *ground,
                           const ts_sink *sink)
{
    const ts_figure_options from = {
        .figure = "behind", .format = "svg", .condition = condition, .ground = ground};
    ts_draw_options options;
    ts_buffer       out;

    if (!ts_study_ask(study, TS_WANT_DRIVE) || !ts_study_figure(study, &from, &options))
        return ts_study_refused(study);
    const ts_drawing_subject subject = ts_study_subject(study, NULL);
    ts_buffer_open(&out, study->allocator);
    ts_status status = ts_draw_moving(&subject, &options, &out);
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
