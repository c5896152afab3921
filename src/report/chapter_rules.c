/* Report: which rules were put to the drive, and by which source? */
#include "report/report_chapter.h"

#include "check/rulebook.h"

void ts_chapter_rules(ts_chapter *chapter)
{
    static const ts_column  columns[] = {{"rule", false}, {"question", false}, {"level", false},
                                         {"put", true},   {"passed", true},    {"source", false}};
    const ts_check_outcome *outcome   = chapter->answer->outcome;
    ts_manuscript_heading(chapter->manuscript, 1, "Rules and their evidence");
    ts_manuscript_heading(chapter->manuscript, 2, "Rules");
    ts_manuscript_table(
        chapter->manuscript,
        "put: how often the question was put to this drive; where it is 0, the rule "
        "has nothing to judge here",
        columns, 6);
    for (size_t r = 0; r < outcome->rule_count; r++) {
        const ts_rule_outcome *one  = &outcome->rules[r];
        const ts_rule         *rule = ts_rulebook_rules()[r];
        ts_chapter_word(chapter, rule->id);
        ts_chapter_word(chapter, rule->question);
        ts_chapter_word(chapter, ts_level_name(rule->level));
        ts_buffer_print(&chapter->cell, "%u", one->judged);
        ts_chapter_cell(chapter);
        ts_buffer_print(&chapter->cell, "%u", one->passed);
        ts_chapter_cell(chapter);
        ts_chapter_word(chapter, rule->source);
    }
    if (chapter->answer->workings != NULL)
        ts_chapter_sources(chapter);
}
