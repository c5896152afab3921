/* What do the checks ask, and how is the list of them told? */
#include "towershaft/act.h"
#include "towershaft/rule.h"
#include "towershaft/study.h"

#include "base/json_writer.h"
#include "check/rulebook.h"
#include "report/page.h"

#include <string.h>

#define WRITTEN_COLUMNS 100 /* of the pages of the manual */

size_t ts_rule_count(void)
{
    return ts_rulebook_count();
}

ts_rule_view ts_rule_at(size_t index)
{
    const ts_rule *rule = ts_rulebook_rules()[index];
    return (ts_rule_view){
        .id       = rule->id,
        .title    = rule->title,
        .question = rule->question,
        .why      = rule->why,
        .level    = ts_level_name(rule->level),
        .source   = rule->source,
        .page     = ts_rulebook_page(index),
    };
}

size_t ts_rule_find(const char *id, const char **nearest)
{
    return ts_rulebook_find(ts_text_of(id), nearest);
}

static void rule_json(ts_json *json, size_t index)
{
    const ts_rule_view rule = ts_rule_at(index);
    ts_json_object(json);
    ts_json_string_at(json, "id", rule.id);
    ts_json_string_at(json, "title", rule.title);
    ts_json_string_at(json, "question", rule.question);
    ts_json_string_at(json, "why", rule.why);
    ts_json_string_at(json, "level", rule.level);
    ts_json_string_at(json, "source", rule.source);
    ts_json_string_at(json, "page", rule.page);
    ts_json_end(json, '}');
}

/* Does `id` start with `topic` and a hyphen?  "B2" holds the rules of one capability. */
static bool within(const char *id, const char *topic)
{
    const size_t length = strlen(topic);
    return strncmp(id, topic, length) == 0 && id[length] == '-';
}

bool ts_rule_topic(const char *topic)
{
    for (size_t i = 0; i < ts_rule_count(); i++)
        if (within(ts_rulebook_rules()[i]->id, topic))
            return true;
    return false;
}

static void rules_json(const char *only, ts_buffer *out)
{
    ts_json json;
    ts_json_begin(&json, out, false);
    ts_json_object(&json);
    ts_json_string_at(&json, "tool", "towershaft");
    ts_json_string_at(&json, "version", ts_version());
    ts_json_key(&json, "rules");
    ts_json_array(&json);
    for (size_t i = 0; i < ts_rule_count(); i++)
        if (only == NULL || strcmp(only, ts_rule_at(i).id) == 0 || within(ts_rule_at(i).id, only))
            rule_json(&json, i);
    ts_json_end(&json, ']');
    ts_json_end(&json, '}');
    ts_buffer_add(out, "\n");
}

static void rules_list(const char *topic, ts_buffer *out, int columns)
{
    ts_page page  = {.out = out, .columns = columns < 60 ? 60 : columns};
    size_t  count = 0;
    for (size_t i = 0; i < ts_rule_count(); i++) {
        const ts_rule_view rule = ts_rule_at(i);
        if (topic != NULL && !within(rule.id, topic))
            continue;
        count++;
        ts_page_left(&page, ts_text_of(rule.id), 32);
        ts_page_left(&page, ts_text_of(rule.level), 8);
        ts_page_wrap(&page, rule.question, 40, 40);
    }
    ts_buffer_print(out, "\n%zu rule%s.  towershaft rules RULE explains one.\n", count,
                    count == 1 ? "" : "s");
}

static bool is_paragraph(ts_text line)
{
    return line.length > 0 && strchr("#|-`>\t ", line.at[0]) == NULL;
}

static ts_text first_line(const char *text)
{
    return (ts_text){text, strcspn(text, "\n")};
}

/* The lines of one paragraph as a single one; returns what follows them. */
static const char *join_paragraph(const char *text, ts_buffer *out)
{
    while (is_paragraph(first_line(text))) {
        const ts_text line = first_line(text);
        ts_buffer_add(out, out->length > 0 ? " " : "");
        ts_buffer_text(out, line);
        text += line.length + (text[line.length] == '\n' ? 1 : 0);
    }
    return text;
}

/* The page as it is written; on a terminal that is narrower its paragraphs are set anew, and all
 * that is code, list, table or heading stays as it is but for lines that are too long. */
static void rule_page(const char *text, int columns, ts_buffer *out)
{
    ts_page page = {.out = out, .columns = columns < 60 ? 60 : columns};
    bool    code = false;
    if (page.columns >= WRITTEN_COLUMNS) {
        ts_buffer_add(out, text);
        return;
    }
    while (*text != '\0') {
        const ts_text line = first_line(text);
        ts_buffer     made;
        ts_buffer_open(&made, NULL);
        code = code != (line.length >= 3 && memcmp(line.at, "```", 3) == 0);
        if (!code && is_paragraph(line)) {
            text = join_paragraph(text, &made);
        } else {
            ts_buffer_text(&made, line);
            text += line.length + (text[line.length] == '\n' ? 1 : 0);
        }
        ts_page_wrap_made(&page, &made, is_paragraph(line) ? 0 : 4, 0);
    }
}

ts_status ts_rules_write(const char *only, bool json, int columns, const ts_sink *sink)
{
    const size_t index = only != NULL ? ts_rule_find(only, NULL) : SIZE_MAX;
    if (only != NULL && index == SIZE_MAX && !ts_rule_topic(only))
        return TS_NOT_UNDERSTOOD;
    ts_buffer out;
    ts_buffer_open(&out, NULL);
    if (json)
        rules_json(only, &out);
    else if (index == SIZE_MAX)
        rules_list(only, &out, columns);
    else
        rule_page(ts_rule_at(index).page, columns, &out);
    const ts_status status = ts_buffer_send(&out, sink);
    ts_buffer_close(&out);
    return status;
}
