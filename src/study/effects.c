/* What does a study say of parts that fail? */
#include "towershaft/effects.h"

#include "report/effects_report.h"
#include "study/entitle.h"
#include "study/failing.h"
#include "study/figures.h"
#include "study/lone_chapter.h"
#include "study/outlet.h"
#include "study/publish.h"

/* The condition in which the part turns fastest, unless one is named. */
static ts_status choose_condition(ts_study *study, const char *name, const ts_found_part *part,
                                  int32_t *condition)
{
    const ts_train *train = &study->train;
    const uint32_t  shaft = part->of == TS_FAILING_SHAFT  ? part->at
                            : part->of == TS_FAILING_MESH ? train->meshes[part->at].driven_shaft
                                                          : train->pads[part->at].shaft;

    if (!ts_study_choose_condition(study, name, condition))
        return ts_study_refused(study);
    if (*condition >= 0)
        return TS_OK;
    *condition = 0;
    for (uint32_t c = 0; c < study->drive.condition_count; c++)
        if (study->motion.speed[c * train->shaft_count + shaft] >
            study->motion.speed[(uint32_t)*condition * train->shaft_count + shaft])
            *condition = (int32_t)c;
    return TS_OK;
}

/* ---- one part, on a card --------------------------------------------------------------------- */

typedef struct card {
    const ts_effects *effects;
    ts_found_part     part;
    uint32_t          condition;
} card;

static void write_card(ts_chapter *chapter, const void *about)
{
    const card *one = about;
    ts_effects_card(one->effects, one->part.of, one->part.at, one->condition, chapter);
}

static bool choose_paper(ts_study *study, const ts_effects_options *options, ts_paper_wish *paper)
{
    static const char *const formats[] = {"pdf", "html"}, *const papers[] = {"A4", "Letter"};
    const int format = ts_study_choose(study, "format", options->format, formats, 2);
    const int size   = options->paper != NULL
                           ? ts_study_choose(study, "paper", options->paper, papers, 2)
                           : (int)TS_PAPER_A4;
    *paper           = (ts_paper_wish){.pdf = format == 0, .paper = (ts_paper)size};
    return format >= 0 && size >= 0;
}

/* Drawn or set, it goes to its sink at once. */
static ts_status publish_card(ts_study *study, const card *one, const ts_effects_options *options,
                              bool us, ts_arena *arena, const ts_sink *sink)
{
    const ts_answer answer = ts_study_answer(study);
    ts_manuscript   manuscript;
    ts_chapter      chapter;
    ts_paper_wish   paper;
    if (!choose_paper(study, options, &paper))
        return ts_study_refused(study);
    ts_study_manuscript(study, arena, &manuscript);
    ts_study_entitle(&manuscript, "effects of one part");
    ts_chapter_open(&chapter, &answer, us ? TS_UNITS_US : TS_UNITS_METRIC, &manuscript);
    write_card(&chapter, one);
    ts_chapter_close(&chapter);
    const ts_drawing_subject subject = ts_study_subject(study, NULL); /* it has no picture */
    return ts_study_publish(study, &manuscript, &paper, &subject, sink);
}

static ts_status tell_part(ts_telling *it, const ts_effects *effects,
                           const ts_effects_options *options)
{
    card          one  = {.effects = effects};
    const ts_sink sink = {ts_study_keep, it->page.out};
    int32_t       condition;
    ts_status     status =
        ts_study_choose_part(it->study, effects, options->part, it->arena, &one.part);
    if (status == TS_OK)
        status = choose_condition(it->study, options->condition, &one.part, &condition);
    if (status != TS_OK)
        return status;
    one.condition = (uint32_t)condition;
    if (options->format != NULL)
        return publish_card(it->study, &one, options, it->page.units == TS_UNITS_US, it->arena,
                            &sink);
    return ts_study_lone_chapter(it->study, it->arena, write_card, &one, &it->page);
}

typedef struct wish {
    const ts_effects_options *options;
    bool                      json;
} wish;

static ts_status tell(ts_telling *it, void *about)
{
    const wish               *what    = about;
    const ts_effects_options *options = what->options;
    const bool      whole = options == NULL || options->part == NULL || options->part[0] == '\0';
    ts_effects      effects;
    const ts_status status = ts_effects_solve(&it->study->drive, &it->study->motion,
                                              &it->study->select, it->arena, &effects);

    if (status == TS_OK && what->json)
        ts_effects_json(&effects, &it->answer, it->page.out);
    else if (status == TS_OK && whole)
        ts_effects_page(&effects, &it->answer, &it->page);
    if (status != TS_OK || what->json || whole)
        return status;
    return tell_part(it, &effects, options);
}

ts_status ts_effects_write(ts_study *study, const ts_effects_options *options, bool json,
                           const ts_page_options *page, const ts_sink *sink)
{
    wish what = {options, json};

    return ts_outlet_tell(study, page, tell, &what, sink);
}
