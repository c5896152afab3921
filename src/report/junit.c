/* How are findings written for a build server that reads JUnit XML? */
#include "report/build_server.h"

#include "check/rulebook.h"
#include "report/page.h"

#include <string.h>

/* XML 1.0 has no way to write most control characters: they become a replacement sign. */
static void escape(ts_buffer *out, const char *text)
{
    for (; *text != '\0'; text++) {
        const unsigned char byte = (unsigned char)*text;
        if (byte == '&')
            ts_buffer_add(out, "&amp;");
        else if (byte == '<')
            ts_buffer_add(out, "&lt;");
        else if (byte == '>')
            ts_buffer_add(out, "&gt;");
        else if (byte == '"')
            ts_buffer_add(out, "&quot;");
        else if (byte == '\n')
            ts_buffer_add(out, "&#10;");
        else if (byte < 0x20 || byte == 0x7f)
            ts_buffer_add(out, "\xEF\xBF\xBD");
        else
            ts_buffer_bytes(out, text, 1);
    }
}

static bool fails(const ts_finding *finding)
{
    return finding->level == TS_REFUSE && finding->state != TS_WAIVED;
}

static size_t failing(const ts_check_outcome *outcome, const char *rule)
{
    size_t count = 0;
    for (size_t i = 0; i < outcome->finding_count; i++)
        count += fails(&outcome->findings[i]) &&
                 (rule == NULL || strcmp(outcome->findings[i].rule, rule) == 0);
    return count;
}

static void line(const ts_answer *answer, ts_buffer *out, const ts_finding *finding)
{
    const ts_node_place *place = &answer->source->nodes[finding->node];
    escape(out, answer->source->name);
    ts_buffer_print(out, ":%u:%u: %s: ", place->line, place->column, ts_level_name(finding->level));
    escape(out, finding->says);
    ts_buffer_add(out, "\n");
}

static void rule_case(const ts_answer *answer, ts_buffer *out, const ts_rule *rule)
{
    const ts_check_outcome *outcome = answer->outcome;
    ts_buffer_add(out, "  <testcase classname=\"towershaft\" name=\"");
    escape(out, rule->id);
    ts_buffer_add(out, "\">\n");
    if (failing(outcome, rule->id) > 0) {
        ts_buffer_add(out, "    <failure message=\"");
        escape(out, rule->question);
        ts_buffer_add(out, "\">");
        for (size_t i = 0; i < outcome->finding_count; i++)
            if (strcmp(outcome->findings[i].rule, rule->id) == 0 && fails(&outcome->findings[i]))
                line(answer, out, &outcome->findings[i]);
        ts_buffer_add(out, "</failure>\n");
    }
    ts_buffer_add(out, "    <system-out>");
    for (size_t i = 0; i < outcome->finding_count; i++)
        if (strcmp(outcome->findings[i].rule, rule->id) == 0 && !fails(&outcome->findings[i]))
            line(answer, out, &outcome->findings[i]);
    ts_buffer_add(out, "</system-out>\n  </testcase>\n");
}

static size_t failing_rules(const ts_check_outcome *outcome)
{
    const ts_rule *const *rules = ts_rulebook_rules();
    size_t                count = 0;
    for (size_t i = 0; i < ts_rulebook_count(); i++)
        count += failing(outcome, rules[i]->id) > 0;
    return count;
}

void ts_junit(const ts_answer *answer, ts_buffer *out)
{
    ts_buffer_add(out, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<testsuite name=\"");
    escape(out, answer->drive->title.text);
    ts_buffer_print(out, "\" tests=\"%zu\" failures=\"%zu\" errors=\"0\">\n", ts_rulebook_count(),
                    failing_rules(answer->outcome));
    for (size_t i = 0; i < ts_rulebook_count(); i++)
        rule_case(answer, out, ts_rulebook_rules()[i]);
    ts_buffer_add(out, "</testsuite>\n");
}
