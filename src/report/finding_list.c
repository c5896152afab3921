/* What was found, where, and what would close it? */
#include "report/check_page.h"

#include <math.h>

#define INDENT 6 /* of what is said under the head of a finding */

/* "file:line:column  address:symbol@condition", the address on a line of its own where both do not
 * fit. */
static void place(const ts_answer *answer, ts_page *page, const ts_finding *finding)
{
    const ts_node_place *at = &answer->source->nodes[finding->node];
    ts_buffer            text;
    ts_buffer_open(&text, page->out->allocator);
    ts_buffer_print(&text, "%s:%u:%u  ", answer->source->name, at->line, at->column);
    const size_t file = text.length;
    ts_source_address(answer->source, finding->node, &text);
    if (finding->symbol != NULL) {
        ts_buffer_print(&text, ":%s", finding->symbol);
        if (finding->condition >= 0)
            ts_buffer_print(&text, "@%s", ts_answer_condition(answer, finding->condition));
    }
    page->out->failed = page->out->failed || text.failed;
    if (page->out->failed) {
        ts_buffer_close(&text);
        return;
    }
    ts_buffer_fill(page->out, ' ', INDENT);
    if (INDENT + ts_text_columns((ts_text){text.bytes, text.length}) <= (size_t)page->columns) {
        ts_buffer_add(page->out, text.bytes);
    } else {
        ts_buffer_bytes(page->out, text.bytes, file - 2);
        ts_buffer_add(page->out, "\n");
        ts_buffer_fill(page->out, ' ', INDENT + 2);
        (void)ts_page_spread(page, ts_text_of(text.bytes + file), INDENT + 4, INDENT + 2);
    }
    ts_page_line_end(page);
    ts_buffer_close(&text);
}

static void margin(ts_page *page, const ts_finding *finding)
{
    if (!isfinite(finding->margin))
        return;
    ts_buffer_add(page->out, "  ");
    ts_buffer_add(page->out, finding->margin >= 0.0 ? "+" : "-");
    ts_buffer_significant(page->out, 100.0 * fabs(finding->margin), 3);
    ts_buffer_add(page->out, " %");
}

static void item(const ts_answer *answer, ts_page *page, const ts_finding *finding, size_t number)
{
    ts_page_sign(page, finding);
    ts_buffer_print(page->out, " #%zu ", number);
    ts_page_tone(page, TS_TONE_STRONG);
    ts_buffer_add(page->out, finding->rule);
    ts_page_tone(page, TS_TONE_PLAIN);
    ts_buffer_print(page->out, "  %s", ts_level_name(finding->level));
    if (finding->state != TS_OPEN)
        ts_buffer_print(page->out, ", %s", ts_state_name(finding->state));
    margin(page, finding);
    ts_buffer_add(page->out, "\n");
    ts_buffer_fill(page->out, ' ', INDENT);
    ts_page_wrap(page, finding->says, INDENT, INDENT);
    if (finding->remedy != NULL) {
        ts_buffer_fill(page->out, ' ', INDENT);
        ts_buffer_add(page->out, "> ");
        ts_page_wrap(page, finding->remedy, INDENT + 2, INDENT + 2);
    }
    ts_page_tone(page, TS_TONE_FAINT);
    place(answer, page, finding);
    ts_page_tone(page, TS_TONE_PLAIN);
}

void ts_finding_list(const ts_answer *answer, ts_page *page)
{
    const ts_check_outcome *outcome = answer->outcome;
    ts_page_heading(page, "Findings");
    if (outcome->finding_count == 0)
        ts_buffer_add(page->out, "none\n");
    for (size_t i = 0; i < outcome->finding_count; i++)
        item(answer, page, &outcome->findings[i], i + 1);
}
