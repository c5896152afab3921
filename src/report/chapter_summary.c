/* Report: does the drive hold, and where is it nearest to a limit? */
#include "report/report_chapter.h"

#include "check/rulebook.h"
#include "report/verdict_sentence.h"

#include <math.h>

#define NEAREST 12

static void verdict(ts_chapter *chapter)
{
    const ts_check_outcome *outcome = chapter->answer->outcome;
    ts_verdict_sentence(outcome, &chapter->cell);
    ts_buffer_print(&chapter->cell, " %zu judgements by %zu rules, %zu passed.",
                    outcome->judgement_count, outcome->rules_run, outcome->passed);
    if (!chapter->cell.failed)
        ts_manuscript_box(chapter->manuscript,
                          outcome->verdict == TS_HOLDS ? TS_BLOCK_PLAIN : TS_BLOCK_WARNING,
                          chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* Notes are told among the findings; here stands what may refuse or warn. */
static bool decides(const char *rule)
{
    const size_t index = ts_rulebook_find(ts_text_of(rule), NULL);
    return index != SIZE_MAX && ts_rulebook_rules()[index]->level != TS_NOTE;
}

/* The judgement with the least margin of those after `last` in the order of margins. */
static size_t next_nearest(const ts_check_outcome *outcome, size_t last)
{
    size_t found = SIZE_MAX;
    for (size_t i = 0; i < outcome->judgement_count; i++) {
        const double margin = outcome->judgements[i].margin;
        if (!isfinite(margin) || !decides(outcome->judgements[i].rule))
            continue;
        if (last != SIZE_MAX) {
            const double before = outcome->judgements[last].margin;
            if (margin < before || (!(margin > before) && i <= last))
                continue;
        }
        if (found == SIZE_MAX || margin < outcome->judgements[found].margin)
            found = i;
    }
    return found;
}

static void nearest(ts_chapter *chapter)
{
    static const ts_column  columns[] = {{"rule", false}, {"at", false}, {"margin", true}};
    const ts_check_outcome *outcome   = chapter->answer->outcome;
    ts_manuscript_table(chapter->manuscript, "Nearest to a limit (margin = capacity / demand - 1)",
                        columns, 3);
    size_t at = SIZE_MAX;
    for (int i = 0; i < NEAREST; i++) {
        at = next_nearest(outcome, at);
        if (at == SIZE_MAX)
            return;
        const ts_judgement *one = &outcome->judgements[at];
        ts_chapter_word(chapter, one->rule);
        ts_chapter_place(chapter, one->node, one->symbol, one->condition);
        ts_chapter_cell(chapter);
        ts_chapter_margin(chapter, one->margin);
        ts_chapter_cell(chapter);
    }
}

/* "1 value is", "2 values are" */
static void counted(ts_buffer *out, size_t count, const char *what, const char *verb_one,
                    const char *verb_many)
{
    ts_buffer_print(out, "%zu %s%s %s", count, what, count == 1 ? "" : "s",
                    count == 1 ? verb_one : verb_many);
}

static void scope(ts_chapter *chapter)
{
    const ts_answer *answer = chapter->answer;
    const ts_drive  *drive  = answer->drive;
    ts_buffer_print(&chapter->cell, "%zu conditions, %zu accessories, %u shafts, %u meshes; ",
                    drive->condition_count, drive->accessory_count, answer->train->shaft_count,
                    answer->train->mesh_count);
    counted(&chapter->cell, drive->assumed_count, "value", "is", "are");
    ts_buffer_add(&chapter->cell, " assumed and ");
    counted(&chapter->cell, drive->assumption_count, "assumption", "is", "are");
    ts_buffer_add(&chapter->cell, " stated (chapter 3).");
    if (!chapter->cell.failed)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, chapter->cell.bytes);
    ts_buffer_clear(&chapter->cell);
}

/* ---- what a reviewer asks first -------------------------------------------------------------- */

/* A life in hours, in which people tell it. */
static void life_fact(ts_chapter *chapter, const char *what, double seconds)
{
    ts_chapter_word(chapter, what);
    if (isfinite(seconds)) {
        ts_page_short(&chapter->cell, seconds / 3600.0, 6);
        ts_buffer_add(&chapter->cell, " h");
    } else {
        ts_buffer_add(&chapter->cell, "?");
    }
    ts_chapter_cell(chapter);
}

static void fact(ts_chapter *chapter, const char *what, double si, ts_kind kind, int digits)
{
    ts_chapter_word(chapter, what);
    ts_page_value_text(&chapter->page, &chapter->cell, si, kind, digits);
    if (isfinite(si))
        ts_buffer_print(&chapter->cell, " %s", ts_kind_shown(kind, chapter->page.units)->name);
    ts_chapter_cell(chapter);
}

/* The most that a spool gives, the pads that drive left aside, and the most that it gets. */
static void spool_facts(ts_chapter *chapter, size_t spool)
{
    const ts_answer *answer = chapter->answer;
    const char      *name   = answer->drive->spools[spool].name;
    double           most = 0.0, least = 0.0;
    int32_t          at[2] = {-1, -1};
    for (size_t c = 0; c < answer->drive->condition_count; c++) {
        const double P = answer->power->spool[c * answer->drive->spool_count + spool].P;
        at[0]          = P > most ? (int32_t)c : at[0];
        at[1]          = P < least ? (int32_t)c : at[1];
        most           = fmax(most, P);
        least          = fmin(least, P);
    }
    for (int way = 0; way < 2; way++) {
        if (at[way] < 0)
            continue;
        ts_buffer_print(&chapter->cell, "most power %s the %s spool", way == 0 ? "from" : "to",
                        name);
        ts_chapter_cell(chapter);
        ts_page_value_text(&chapter->page, &chapter->cell, way == 0 ? most : -least, TS_KIND_POWER,
                           4);
        ts_buffer_print(&chapter->cell, " %s at %s",
                        ts_kind_shown(TS_KIND_POWER, chapter->page.units)->name,
                        ts_answer_condition(answer, at[way]));
        ts_chapter_cell(chapter);
    }
}

static void mass_fact(ts_chapter *chapter)
{
    const ts_band m = chapter->answer->mass->metal;
    ts_chapter_word(chapter, "mass of the drive itself");
    ts_page_value_text(&chapter->page, &chapter->cell, m.value, TS_KIND_MASS, 3);
    ts_buffer_add(&chapter->cell, " (");
    ts_page_value_text(&chapter->page, &chapter->cell, m.low, TS_KIND_MASS, 3);
    ts_buffer_add(&chapter->cell, " to ");
    ts_page_value_text(&chapter->page, &chapter->cell, m.high, TS_KIND_MASS, 3);
    ts_buffer_print(&chapter->cell, ") %s", ts_kind_shown(TS_KIND_MASS, chapter->page.units)->name);
    ts_chapter_cell(chapter);
}

static void facts(ts_chapter *chapter)
{
    static const ts_column columns[] = {{"of", false}, {"value", false}};
    const ts_answer       *answer    = chapter->answer;
    ts_manuscript_table(chapter->manuscript, "At a glance", columns, 2);
    for (size_t s = 0; s < answer->drive->spool_count; s++)
        spool_facts(chapter, s);
    if (answer->mass != NULL && answer->mass->total.value > 0.0) {
        mass_fact(chapter);
        fact(chapter, "mass with its accessories", answer->mass->total.value, TS_KIND_MASS, 4);
    }
    if (answer->lines != NULL) {
        life_fact(chapter, "life of all bearings together, 90 %", answer->lines->set_life);
        life_fact(chapter, "life that the file asks for", answer->lines->life);
    }
}

/* One line each; chapter 2 has their remedies. */
static void open_findings(ts_chapter *chapter)
{
    static const char *const signs[] = {"[X]", "[!]"};
    const ts_check_outcome  *outcome = chapter->answer->outcome;
    size_t                   told    = 0;
    for (size_t i = 0; i < outcome->finding_count; i++) {
        const ts_finding *one     = &outcome->findings[i];
        const bool        unknown = one->state == TS_NOT_COMPUTABLE;
        if (!unknown && (one->state != TS_OPEN || one->level == TS_NOTE))
            continue;
        if (told++ == 0)
            ts_manuscript_heading(chapter->manuscript, 2, "Open findings");
        ts_buffer_print(&chapter->cell, "#%zu %s: %s", i + 1, one->rule, one->says);
        if (!chapter->cell.failed)
            ts_manuscript_item(chapter->manuscript, TS_BLOCK_PLAIN,
                               unknown ? "[?]" : signs[one->level], chapter->cell.bytes);
        ts_buffer_clear(&chapter->cell);
    }
    if (told == 0)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN,
                           "No finding at level refuse or warn is open.");
}

void ts_chapter_summary(ts_chapter *chapter)
{
    ts_manuscript_heading(chapter->manuscript, 1, "Summary");
    verdict(chapter);
    scope(chapter);
    facts(chapter);
    open_findings(chapter);
    nearest(chapter);
}
