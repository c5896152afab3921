/* report/effects_evidence.c: which paragraphs of certification rules does the drive meet, what of
 * it bears on them, and with which reserves? */
#include "report/effects_report.h"

#include "catalog/evidence.h"
#include "report/check_page.h"
#include "report/json_quantity.h"
#include "report/report_chapter.h"

#include <math.h>

#define WORDS "In words of this project: the wording of the authority counts, and who applies it."

/* What all rules of a paragraph say of this drive. */
typedef struct standing {
    uint32_t            judged, passed;
    const ts_judgement *nearest; /* with the least reserve; NULL: none has one */
} standing;

static bool is_listed(const char *rules, const char *rule)
{
    ts_text list = ts_text_of(rules), id;

    while (ts_evidence_next(&list, &id))
        if (ts_text_is(id, rule))
            return true;
    return false;
}

static standing standing_of(const ts_check_outcome *outcome, const ts_evidence *row)
{
    standing out = {0, 0, NULL};

    for (size_t i = 0; i < outcome->judgement_count; i++) {
        const ts_judgement *one = &outcome->judgements[i];
        if (!is_listed(row->rules, one->rule))
            continue;
        out.judged++;
        out.passed += one->passed;
        if (!isnan(one->margin) && (out.nearest == NULL || one->margin < out.nearest->margin))
            out.nearest = one;
    }
    return out;
}

static void add_place(const ts_answer *answer, const ts_judgement *one, ts_buffer *out)
{
    ts_source_address(answer->source, one->node, out);
    if (one->condition >= 0)
        ts_buffer_print(out, "@%s", ts_answer_condition(answer, one->condition));
}

static void add_standing(const ts_answer *answer, const standing *of, ts_buffer *out)
{
    if (of->judged == 0) {
        ts_buffer_add(out, "no rule had anything to judge in this drive");
        return;
    }
    ts_buffer_print(out, "%u of %u judgements hold", of->passed, of->judged);
    if (of->nearest == NULL)
        return;
    ts_buffer_add(out, ", least reserve ");
    ts_buffer_fixed(out, 100.0 * of->nearest->margin, 1);
    ts_buffer_print(out, " %% by %s at ", of->nearest->rule);
    add_place(answer, of->nearest, out);
}

/* ---- a terminal ------------------------------------------------------------------------------ */

void ts_evidence_page(const ts_answer *answer, ts_page *page)
{
    ts_page_heading(page, "Evidence: paragraphs that the drive meets, and what bears on them");
    for (size_t i = 0; i < ts_evidence_count; i++) {
        const ts_evidence *row = &ts_evidences[i];
        const standing     of  = standing_of(answer->outcome, row);
        ts_buffer          text;

        ts_buffer_open(&text, page->out->allocator);
        ts_buffer_print(&text, "%s (%s): %s  ", row->paragraph, row->provenance, row->meaning);
        add_standing(answer, &of, &text);
        ts_buffer_print(&text, "; rules %s; shown by %s", row->rules, row->shown_by);
        ts_buffer_add(page->out, "  ");
        ts_page_wrap_made(page, &text, 4, 2);
    }
    ts_page_wrap(page, WORDS, 0, 0);
}

/* ---- a report -------------------------------------------------------------------------------- */

void ts_evidence_cells(ts_chapter *chapter)
{
    static const ts_column columns[] = {{"paragraph", false}, {"meaning", false},
                                        {"rules", false},     {"judgements that hold", false},
                                        {"shown by", false},  {"paragraph was", false}};

    ts_manuscript_heading(chapter->manuscript, 2, "Evidence");
    ts_manuscript_table(chapter->manuscript, WORDS, columns, sizeof columns / sizeof columns[0]);
    for (size_t i = 0; i < ts_evidence_count; i++) {
        const ts_evidence *row = &ts_evidences[i];
        const standing     of  = standing_of(chapter->answer->outcome, row);

        ts_chapter_word(chapter, row->paragraph);
        ts_chapter_word(chapter, row->meaning);
        ts_chapter_word(chapter, row->rules);
        add_standing(chapter->answer, &of, &chapter->cell);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, row->shown_by);
        ts_chapter_word(chapter, row->provenance);
    }
}

/* ---- JSON ------------------------------------------------------------------------------------ */

void ts_evidence_json(ts_json *json, const ts_answer *answer)
{
    ts_json_key(json, "evidence");
    ts_json_array(json);
    for (size_t i = 0; i < ts_evidence_count; i++) {
        const ts_evidence *row  = &ts_evidences[i];
        const standing     of   = standing_of(answer->outcome, row);
        ts_text            list = ts_text_of(row->rules), id;

        ts_json_object(json);
        ts_json_string_at(json, "paragraph", row->paragraph);
        ts_json_string_at(json, "meaning", row->meaning);
        ts_json_string_at(json, "provenance", row->provenance);
        ts_json_string_at(json, "shown_by", row->shown_by);
        ts_json_key(json, "rules");
        ts_json_array(json);
        while (ts_evidence_next(&list, &id))
            ts_json_text(json, id);
        ts_json_end(json, ']');
        ts_json_integer_at(json, "judged", of.judged);
        ts_json_integer_at(json, "passed", of.passed);
        if (of.nearest != NULL) {
            ts_json_number_at(json, "least_reserve", of.nearest->margin);
            ts_json_string_at(json, "by", of.nearest->rule);
            ts_json_node(json, answer, "at", of.nearest->node);
            ts_json_string_at(json, "condition",
                              ts_answer_condition(answer, of.nearest->condition));
        }
        ts_json_end(json, '}');
    }
    ts_json_end(json, ']');
}
