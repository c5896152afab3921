/* Report: what was found, where, and what would close it? */
#include "report/report_chapter.h"

#include <math.h>
#include <string.h>

static const char *sign_of(const ts_finding *finding)
{
    static const char *const signs[] = {"[X]", "[!]", "[i]"};
    if (finding->state == TS_WAIVED)
        return "[/]";
    return finding->state == TS_NOT_COMPUTABLE ? "[?]" : signs[finding->level];
}

/* A sentence of a rule, with its full stop. */
static void sentence(ts_buffer *text, const char *says)
{
    const size_t length = strlen(says);
    ts_buffer_print(text, "%s%s", says, length > 0 && says[length - 1] == '.' ? "" : ".");
}

static void item(ts_chapter *chapter, const ts_finding *finding, size_t number)
{
    ts_buffer *text = &chapter->cell;
    ts_buffer_print(text, "#%zu %s, %s", number, finding->rule, ts_level_name(finding->level));
    if (finding->state != TS_OPEN)
        ts_buffer_print(text, ", %s", ts_state_name(finding->state));
    if (isfinite(finding->margin)) {
        ts_buffer_add(text, ", margin ");
        ts_chapter_margin(chapter, finding->margin);
    }
    ts_buffer_add(text, ". ");
    sentence(text, finding->says);
    if (finding->remedy != NULL) {
        ts_buffer_add(text, " What would close it: ");
        sentence(text, finding->remedy);
    }
    ts_buffer_print(text, " (%s:%u, ", chapter->answer->source->name,
                    chapter->answer->source->nodes[finding->node].line);
    ts_chapter_place(chapter, finding->node, finding->symbol, finding->condition);
    ts_buffer_print(text, "; %s)", finding->source);
    if (!text->failed)
        ts_manuscript_item(chapter->manuscript,
                           finding->state == TS_OPEN && finding->level != TS_NOTE ? TS_BLOCK_PLAIN
                                                                                  : TS_BLOCK_FAINT,
                           sign_of(finding), text->bytes);
    ts_buffer_clear(text);
}

void ts_chapter_findings(ts_chapter *chapter)
{
    const ts_check_outcome *outcome = chapter->answer->outcome;
    ts_manuscript_heading(chapter->manuscript, 1, "Findings");
    ts_manuscript_text(chapter->manuscript, TS_BLOCK_FAINT,
                       "[X] refuse, [!] warn, [i] note, [/] waived, [?] not computable; the worst "
                       "first, then in the order of the file.");
    if (outcome->finding_count == 0)
        ts_manuscript_text(chapter->manuscript, TS_BLOCK_PLAIN, "Nothing was found.");
    for (size_t i = 0; i < outcome->finding_count; i++)
        item(chapter, &outcome->findings[i], i + 1);
}
