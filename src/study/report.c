/* How does the report on a drive come together, and to which outlet does it go? */
#include "towershaft/report.h"

#include "report/manuscript_page.h"
#include "report/report_chapter.h"
#include "report/results.h"
#include "report/shim_sheet.h"
#include "report/tooth_sheet.h"
#include "report/verdict_sentence.h"
#include "study/doctor_cases.h"
#include "study/failing.h"
#include "study/figures.h"
#include "study/oiling.h"
#include "study/outlet.h"
#include "study/publish.h"
#include "study/seizing.h"
#include "study/starting.h"
#include "study/twisting.h"
#include "study/whirling.h"

#include <math.h>

#define COUNT(list) (sizeof(list) / sizeof(list)[0])

#define GOVERNING_MOST 12
#define LINES_COLUMNS  112 /* that letters of one width find on A4 */

typedef enum outlet {
    OUTLET_PDF,
    OUTLET_HTML,
    OUTLET_CSV,
    OUTLET_WORKBOOK,
    OUTLET_TEXT, /* of sheets */
    OUTLET_JSON  /* of shims  */
} outlet;
typedef enum sheets { SHEETS_OF_TEETH, SHEETS_OF_SHIMS, SHEETS_NONE } sheets;
typedef enum depth { WORKINGS_GOVERNING, WORKINGS_ALL, WORKINGS_NONE } depth;

typedef struct wish {
    outlet   outlet;
    ts_paper paper;
    depth    workings;
    sheets   sheets;
    bool     seizures;
    ts_units units;
} wish;

typedef struct making {
    ts_study *study;
    wish      wish;
} making;

/* ---- what is asked for ----------------------------------------------------------------------- */

/* Text is for sheets, and JSON for the one that has an answer of its own. */
static bool outlet_fits(ts_study *study, const wish *asked)
{
    const bool text = asked->outlet == OUTLET_TEXT && asked->sheets == SHEETS_NONE;
    const bool json = asked->outlet == OUTLET_JSON && asked->sheets != SHEETS_OF_SHIMS;
    if (text || json)
        ts_study_say(study, "no-such-outlet",
                     text ? "the report is not written as .txt" : "this is not written as .json",
                     text ? "pdf, html, csv, xlsx, or sheets as txt"
                          : "pdf or html, or the shims (--sheets shims) as json",
                     NULL);
    return !text && !json;
}

static bool read_wish(ts_study *study, const ts_report_options *from, wish *to)
{
    static const char *const formats[]  = {"pdf", "html", "csv", "xlsx", "txt", "json"};
    static const char *const papers[]   = {"A4", "Letter"};
    static const char *const workings[] = {"governing", "all"};
    static const char *const kinds[]    = {"teeth", "shims"};
    const int format = ts_study_choose(study, "format", from->format, formats, COUNT(formats));
    if (format < 0)
        return false;
    const int paper = from->paper != NULL
                          ? ts_study_choose(study, "paper", from->paper, papers, COUNT(papers))
                          : TS_PAPER_A4;
    if (paper < 0)
        return false;
    const int kept  = from->workings != NULL
                          ? ts_study_choose(study, "choice of workings", from->workings, workings,
                                            COUNT(workings))
                          : WORKINGS_NONE;
    const int sheet = from->sheets != NULL ? ts_study_choose(study, "kind of sheet", from->sheets,
                                                             kinds, COUNT(kinds))
                                           : SHEETS_NONE;
    *to             = (wish){.outlet   = (outlet)format,
                             .paper    = (ts_paper)paper,
                             .workings = (depth)kept,
                             .seizures = from->seizures,
                             .sheets   = (sheets)sheet,
                             .units    = from->us ? TS_UNITS_US : TS_UNITS_METRIC};
    return kept >= 0 && sheet >= 0 && outlet_fits(study, to);
}

/* ---- chapters that only a study can write ---------------------------------------------------- */

static void published_cases(ts_chapter *chapter)
{
    static const ts_column columns[] = {{"case", false},
                                        {"printed", true},
                                        {"computed", true},
                                        {"agrees", false},
                                        {"source", false}};
    ts_manuscript_heading(chapter->manuscript, 1, "Published cases that this build reproduces");
    ts_manuscript_table(chapter->manuscript, "Computed anew while this report was written", columns,
                        5);
    for (size_t i = 0; i < ts_doctor_case_count(); i++) {
        const ts_doctor_case *one   = ts_doctor_case_at(i);
        const double          value = one->compute();
        const bool good = fabs(value - one->expected) <= one->tol_rel * fabs(one->expected);
        ts_chapter_word(chapter, one->says);
        ts_buffer_number(&chapter->cell, one->expected);
        ts_chapter_cell(chapter);
        if (isfinite(value))
            ts_buffer_significant(&chapter->cell, value, 8);
        else
            ts_buffer_add(&chapter->cell, "?");
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, good ? "yes" : "NO");
        ts_chapter_word(chapter, one->source);
    }
}

/* Was a judgement of the same rule and symbol at that place told before, in another condition? */
static bool seen_before(const ts_check_outcome *outcome, size_t index)
{
    const ts_judgement *now = &outcome->judgements[index];
    for (size_t i = 0; i < index; i++) {
        const ts_judgement *one = &outcome->judgements[i];
        if (one->rule == now->rule && one->node == now->node && one->symbol == now->symbol &&
            one->condition == now->condition)
            return true;
    }
    return false;
}

/* The judgement with the next greater margin after `last`, of those that have a working. */
static size_t next_governing(const ts_check_outcome *outcome, size_t last)
{
    size_t found = SIZE_MAX;
    for (size_t i = 0; i < outcome->judgement_count; i++) {
        const ts_judgement *one = &outcome->judgements[i];
        if (!isfinite(one->margin) || one->symbol == NULL)
            continue;
        if (last != SIZE_MAX) {
            const double before = outcome->judgements[last].margin;
            if (one->margin < before || (!(one->margin > before) && i <= last))
                continue;
        }
        if (found == SIZE_MAX || one->margin < outcome->judgements[found].margin)
            found = i;
    }
    return found;
}

/* The working of what one judgement was about; nothing when it has none. */
static bool working(ts_chapter *chapter, ts_study *study, const ts_judgement *one)
{
    ts_buffer             text;
    const ts_page_options page = {
        .us = chapter->page.units == TS_UNITS_US, .columns = 116, .all = true};
    const ts_sink sink = {ts_study_keep, &text};
    ts_buffer_open(&text, study->allocator);
    ts_chapter_place(chapter, one->node, one->symbol, one->condition);
    const bool told = !chapter->cell.failed &&
                      ts_study_write_working(study, chapter->cell.bytes, &page, &sink) == TS_OK;
    if (told && !text.failed) {
        ts_buffer head;
        ts_buffer_open(&head, study->allocator);
        ts_buffer_print(&head, "%s (%s)", chapter->cell.bytes, one->rule);
        if (!head.failed)
            ts_manuscript_heading(chapter->manuscript, 2, head.bytes);
        ts_manuscript_lines(chapter->manuscript, text.bytes);
        chapter->manuscript->failed = chapter->manuscript->failed || head.failed;
        ts_buffer_close(&head);
    }
    chapter->manuscript->failed = chapter->manuscript->failed || text.failed;
    ts_buffer_clear(&chapter->cell);
    ts_buffer_close(&text);
    return told;
}

static void governing_workings(ts_chapter *chapter, ts_study *study)
{
    size_t at = SIZE_MAX;
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "The numbers nearest to their limits, down to the lines of the file.");
    for (int told = 0; told < GOVERNING_MOST;) {
        at = next_governing(&study->outcome, at);
        if (at == SIZE_MAX)
            return;
        if (!seen_before(&study->outcome, at))
            told += working(chapter, study, &study->outcome.judgements[at]);
    }
}

static void workings(ts_chapter *chapter, ts_study *study, depth which)
{
    if (which == WORKINGS_NONE)
        return;
    ts_manuscript_heading(chapter->manuscript, 1, "Workings");
    if (study->workings == NULL)
        ts_manuscript_box(chapter->manuscript, TS_BLOCK_WARNING,
                          "No workings were kept while this drive was solved.");
    else if (which == WORKINGS_ALL)
        ts_chapter_all_workings(chapter);
    else
        governing_workings(chapter, study);
}

/* A chapter that cannot be written is a boxed sentence under its heading; without memory there is
 * no report at all. */
static void instead(ts_chapter *chapter, ts_status status, const char *heading, const char *says)
{
    if (status == TS_NO_MEMORY) {
        chapter->manuscript->failed = true;
        return;
    }
    ts_manuscript_heading(chapter->manuscript, 1, heading);
    ts_manuscript_box(chapter->manuscript, TS_BLOCK_WARNING, says);
}

/* The seizure that stops most, as the picture that `draw --figure stops` chooses by itself. */
static void draw_stops(ts_chapter *chapter, ts_study *study, ts_drawing_subject *subject)
{
    if (ts_study_show_failure(study, NULL, chapter->manuscript->arena, subject) != TS_OK) {
        chapter->manuscript->failed = true;
        return;
    }
    if (subject->failed == NULL)
        return; /* nothing may seize */
    ts_buffer_print(&chapter->cell,
                    "What still turns after the seizure that stops most: %s. Any other failure: "
                    "towershaft draw --figure stops --at 'PART: FAILURE'.",
                    subject->failed);
    if (!chapter->cell.failed)
        ts_manuscript_figure(chapter->manuscript, "stops", NULL, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

static void effects(ts_chapter *chapter, ts_study *study, ts_drawing_subject *subject)
{
    ts_effects      told;
    ts_arena       *arena = chapter->manuscript->arena;
    const ts_status status =
        ts_effects_solve(&study->drive, &study->motion, &study->select, arena, &told);
    if (status == TS_OK) {
        ts_chapter_effects(chapter, &told);
        draw_stops(chapter, study, subject);
    } else
        instead(chapter, status, "What stops when a part fails",
                "The effects of failures could not be followed in this drive.");
}

static void teeth(ts_chapter *chapter, ts_study *study)
{
    ts_tooth_data data;
    if (ts_tooth_data_solve(&study->motion, chapter->manuscript->arena, &data) == TS_OK)
        ts_chapter_teeth(chapter, &data);
    else
        chapter->manuscript->failed = true;
}

/* Instead of a report: what makers and inspectors of its gears need. */
static void write_tooth_sheets(making *it, ts_manuscript *manuscript)
{
    const ts_answer answer = ts_study_answer(it->study);
    ts_chapter      chapter;
    ts_tooth_data   data;
    ts_study_entitle(manuscript, "tooth data sheets");
    ts_chapter_open(&chapter, &answer, it->wish.units, manuscript);
    if (ts_tooth_data_solve(&it->study->motion, manuscript->arena, &data) == TS_OK)
        ts_tooth_sheets(&chapter, &data);
    else
        manuscript->failed = true;
    ts_chapter_close(&chapter);
}

static bool plan_shims(ts_study *study, ts_arena *arena, ts_shim_plan *plan)
{
    return ts_shims_solve(&study->drive, &study->motion, &study->floats, arena, plan) == TS_OK;
}

static void shims(ts_chapter *chapter, ts_study *study)
{
    ts_shim_plan plan;
    if (plan_shims(study, chapter->manuscript->arena, &plan))
        ts_shim_sheet(chapter, &plan);
    else
        chapter->manuscript->failed = true;
}

/* Instead of a report: what the builder of its meshes needs. */
static void write_shim_sheet(making *it, ts_manuscript *manuscript)
{
    const ts_answer answer = ts_study_answer(it->study);
    ts_chapter      chapter;
    ts_study_entitle(manuscript, "shims and backlash");
    ts_chapter_open(&chapter, &answer, it->wish.units, manuscript);
    shims(&chapter, it->study);
    ts_chapter_close(&chapter);
}

static ts_status send_plain(ts_study *study, const wish *wanted, const ts_manuscript *manuscript,
                            const ts_sink *sink)
{
    const ts_answer       answer  = ts_study_answer(study);
    const ts_page_options options = {.us = wanted->units == TS_UNITS_US, .columns = LINES_COLUMNS};
    ts_shim_plan          plan;
    ts_buffer             out;
    ts_status             status = manuscript->failed ? TS_NO_MEMORY : TS_OK;
    ts_buffer_open(&out, study->allocator);
    ts_page page = ts_outlet_page(&options, &out);
    if (status == TS_OK && wanted->outlet == OUTLET_TEXT)
        ts_manuscript_page(manuscript, &page);
    else if (status == TS_OK && plan_shims(study, manuscript->arena, &plan))
        ts_shim_json(&answer, &plan, &out);
    else
        status = TS_NO_MEMORY;
    if (out.failed)
        status = TS_NO_MEMORY;
    if (status == TS_OK)
        status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

static void oil_and_heat(ts_chapter *chapter, ts_study *study)
{
    ts_oil_answer   told;
    const ts_status status = ts_study_ask_oil(study, -1, chapter->manuscript->arena, &told);
    if (status == TS_OK)
        ts_chapter_heat(chapter, &told);
    else
        instead(chapter, status, "Oil and heat", "The heat of this drive was not found.");
}

/* What happens from rest to idle, by the file; where it says too little the page says what lacks.
 */
static void start(ts_chapter *chapter, making *it, ts_drawing_subject *subject)
{
    const ts_start_wish wished = {(double)NAN, (double)NAN, TS_START_SAMPLES, false, TS_NOWHERE};
    ts_start_answer     told;
    const ts_status status = ts_study_start(it->study, &wished, chapter->manuscript->arena, &told);
    if (status != TS_OK) {
        instead(chapter, status, "Start", "The start of this drive was not followed.");
        return;
    }
    ts_chapter_start(chapter, &told);
    subject->start = told.it;
    if (told.it->missing == NULL && told.it->run.fault != TS_START_BAD_NUMBER)
        ts_manuscript_figure(chapter->manuscript, "start", NULL,
                             "From rest to idle: speeds and torques.");
}

/* One accessory after the other, each in memory of its own. */
static bool seizure(ts_chapter *chapter, ts_study *study, const char *accessory)
{
    ts_arena       *arena = ts_arena_open(study->allocator);
    const ts_status status =
        arena != NULL ? ts_study_tell_seizure(study, accessory, arena, chapter) : TS_NO_MEMORY;
    if (status != TS_OK) {
        ts_buffer_print(&chapter->cell, "The seizure of %s could not be followed.", accessory);
        if (!chapter->cell.failed)
            ts_manuscript_box(chapter->manuscript, TS_BLOCK_WARNING, chapter->cell.bytes);
        ts_buffer_clear(&chapter->cell);
    }
    ts_arena_close(arena);
    return status != TS_NO_MEMORY;
}

static void seizures(ts_chapter *chapter, making *it)
{
    const ts_train *train = &it->study->train;
    if (!it->wish.seizures)
        return;
    ts_manuscript_heading(chapter->manuscript, 1, "Seizures");
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "Every accessory stops at once, where its pad turns fastest; followed in "
                       "time with play, neck and teeth as events.");
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].accessory >= 0 && !seizure(chapter, it->study, train->pads[p].name))
            chapter->manuscript->failed = true;
}

static void torsion(ts_chapter *chapter, making *it, ts_drawing_subject *subject)
{
    ts_twist_answer told   = {0};
    const ts_status status = ts_study_twist(it->study, chapter->manuscript->arena, &told);
    subject->twists        = told.items;
    subject->twist_count   = status == TS_OK ? told.count : 0;
    if (status == TS_OK)
        ts_chapter_torsion(chapter, &told);
    else
        instead(chapter, status, "Torsion", "The torsional modes of this drive were not found.");
}

static void whirl(ts_chapter *chapter, making *it)
{
    ts_whirl_answer told;
    const ts_status status = ts_study_whirl(it->study, chapter->manuscript->arena, &told);
    if (status == TS_OK)
        ts_chapter_whirl(chapter, &told);
    else
        instead(chapter, status, "Whirl", "The critical speeds of this drive were not found.");
}

/* ---- the whole ------------------------------------------------------------------------------- */

static void write_chapters(making *it, ts_drawing_subject *subject, ts_manuscript *manuscript)
{
    ts_study       *study  = it->study;
    const ts_answer answer = ts_study_answer(study);
    ts_chapter      chapter;
    ts_chapter_open(&chapter, &answer, it->wish.units, manuscript);
    ts_chapter_summary(&chapter);
    ts_chapter_findings(&chapter);
    ts_chapter_assumptions(&chapter);
    ts_chapter_turning(&chapter);
    ts_chapter_arrangement(&chapter);
    teeth(&chapter, study);
    shims(&chapter, study);
    ts_chapter_shafts(&chapter);
    ts_chapter_float(&chapter);
    ts_chapter_necks(&chapter);
    oil_and_heat(&chapter, study);
    start(&chapter, it, subject);
    torsion(&chapter, it, subject);
    whirl(&chapter, it);
    seizures(&chapter, it);
    ts_chapter_mass(&chapter);
    effects(&chapter, study, subject);
    ts_chapter_reserves(&chapter);
    ts_chapter_rules(&chapter);
    published_cases(&chapter);
    workings(&chapter, study, it->wish.workings);
    ts_chapter_close(&chapter);
}

static ts_status send_results(ts_study *study, const wish *wanted, const ts_sink *sink)
{
    const ts_answer answer = ts_study_answer(study);
    ts_buffer       out;
    ts_buffer_open(&out, study->allocator);
    if (wanted->outlet == OUTLET_CSV)
        ts_results_csv(&answer, wanted->units, &out);
    else
        ts_results_workbook(&answer, wanted->units, &out);
    const ts_status status = out.failed ? TS_NO_MEMORY : ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}

ts_status ts_report_write(ts_study *study, const ts_report_options *options, const ts_sink *sink)
{
    making        it = {.study = study};
    ts_manuscript manuscript;
    ts_buffer     verdict;
    if (!ts_study_ask(study, TS_WANT_DRIVE) || !read_wish(study, options, &it.wish))
        return TS_NOT_UNDERSTOOD;
    if (it.wish.outlet == OUTLET_CSV || it.wish.outlet == OUTLET_WORKBOOK)
        return send_results(study, &it.wish, sink);
    ts_arena *arena = ts_arena_open(study->allocator);
    if (arena == NULL)
        return TS_NO_MEMORY;
    const ts_paper_wish paper = {
        .pdf = it.wish.outlet == OUTLET_PDF, .paper = it.wish.paper, .units = it.wish.units};
    ts_study_manuscript(study, arena, &manuscript);
    ts_buffer_open(&verdict, study->allocator);
    ts_verdict_sentence(&study->outcome, &verdict);
    ts_drawing_subject subject = ts_study_subject(study, verdict.bytes);
    if (it.wish.sheets == SHEETS_OF_TEETH)
        write_tooth_sheets(&it, &manuscript);
    else if (it.wish.sheets == SHEETS_OF_SHIMS)
        write_shim_sheet(&it, &manuscript);
    else
        write_chapters(&it, &subject, &manuscript);
    const bool plain  = it.wish.outlet == OUTLET_TEXT || it.wish.outlet == OUTLET_JSON;
    ts_status  status = verdict.failed ? TS_NO_MEMORY : TS_OK;
    if (status == TS_OK)
        status = plain ? send_plain(study, &it.wish, &manuscript, sink)
                       : ts_study_publish(study, &manuscript, &paper, &subject, sink);
    ts_buffer_close(&verdict);
    ts_arena_close(arena);
    return status;
}
