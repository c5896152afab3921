/* page_snippet.c: how do the snippets of a page become drives? */
#include "page_snippet.h"

#include "support/read_file.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

static ts_text line_at(const char *at)
{
    const char *end = strchr(at, '\n');
    return (ts_text){at, end != NULL ? (size_t)(end - at) + 1 : strlen(at)};
}

ts_text page_block(const char *page, const char *info)
{
    char fence[64];
    (void)snprintf(fence, sizeof fence, "\n```%s\n", info);
    const char *begin = strstr(page, fence);
    if (begin == NULL)
        return (ts_text){NULL, 0};
    begin += strlen(fence);
    const char *end = strstr(begin, "```\n");
    assert_non_null(end);
    return (ts_text){begin, (size_t)(end - begin)};
}

/* Lines of the hunk that begin with ' ' or `sign`, without that mark. */
static void side_of(ts_text hunk, char sign, ts_buffer *out)
{
    for (size_t at = 0; at < hunk.length;) {
        const ts_text line = line_at(hunk.at + at);
        if (line.at[0] == ' ' || line.at[0] == sign)
            ts_buffer_bytes(out, line.at + 1, line.length - 1);
        at += line.length;
    }
}

static void replace_once(ts_buffer *drive, const char *before, const char *after)
{
    char *place = strstr(drive->bytes, before);
    if (place == NULL)
        fail_msg("base.yaml has no lines\n%s", before);
    if (strstr(place + 1, before) != NULL)
        fail_msg("base.yaml has more than once the lines\n%s", before);
    ts_buffer rest;
    ts_buffer_open(&rest, NULL);
    ts_buffer_add(&rest, place + strlen(before));
    drive->length               = (size_t)(place - drive->bytes);
    drive->bytes[drive->length] = '\0';
    ts_buffer_add(drive, after);
    ts_buffer_add(drive, rest.bytes != NULL ? rest.bytes : "");
    ts_buffer_close(&rest);
}

static void apply_hunk(ts_text hunk, ts_buffer *drive)
{
    ts_buffer before, after;
    ts_buffer_open(&before, NULL);
    ts_buffer_open(&after, NULL);
    ts_buffer_add(&after, "");
    side_of(hunk, '-', &before);
    side_of(hunk, '+', &after);
    assert_true(before.length > 0);
    replace_once(drive, before.bytes, after.bytes);
    ts_buffer_close(&before);
    ts_buffer_close(&after);
}

void page_apply(ts_text diff, ts_buffer *drive)
{
    const ts_text base = read_file("tests/check/base.yaml");
    ts_buffer_text(drive, base);
    free_file(base);
    size_t begin = 0;
    for (size_t at = 0; at < diff.length;) {
        const ts_text line = line_at(diff.at + at);
        if (line.at[0] == '@') {
            apply_hunk((ts_text){diff.at + begin, at - begin}, drive);
            begin = at + line.length;
        }
        at += line.length;
    }
    apply_hunk((ts_text){diff.at + begin, diff.length - begin}, drive);
    assert_false(drive->failed);
}

static int to_stderr(void *context, const char *bytes, size_t length)
{
    (void)context;
    return fwrite(bytes, 1, length, stderr) == length ? 0 : 1;
}

ts_study *page_study(const ts_buffer *drive, int32_t today)
{
    ts_study *study = NULL;
    assert_int_equal(ts_study_open(NULL, &study), TS_OK);
    const ts_study_options options = {.today = today, .workings = true};
    const ts_status        status =
        ts_study_read(study, "page.yaml", drive->bytes, drive->length, &options);
    if (status != TS_OK) {
        const ts_sink sink = {to_stderr, NULL};
        (void)ts_study_write_messages(study, false, 0, &sink);
    }
    assert_int_equal(status, TS_OK);
    return study;
}

ts_study *changed_study(const char *diff)
{
    ts_buffer drive;
    ts_buffer_open(&drive, NULL);
    page_apply(ts_text_of(diff), &drive);
    ts_study *study = page_study(&drive, PAGE_DAY);
    ts_buffer_close(&drive);
    return study;
}

void finding_line(ts_study *study, size_t index, ts_buffer *out)
{
    const ts_finding_view view = ts_study_finding(study, index);
    ts_buffer_print(out, "%s %s %s %s", view.level, view.state, view.rule, view.address);
    if (view.condition != NULL)
        ts_buffer_print(out, "@%s", view.condition);
    ts_buffer_print(out, ": %s; %s", view.says, view.remedy);
}

const ts_finding *first_finding_of(const ts_study *study, const char *rule)
{
    for (size_t i = 0; i < study->outcome.finding_count; i++)
        if (strcmp(study->outcome.findings[i].rule, rule) == 0)
            return &study->outcome.findings[i];
    return NULL;
}

size_t findings_of(const ts_study *study, const char *rule)
{
    size_t count = 0;
    for (size_t i = 0; i < study->outcome.finding_count; i++)
        count += strcmp(study->outcome.findings[i].rule, rule) == 0;
    return count;
}

const ts_rule_outcome *outcome_of(const ts_study *study, const char *rule)
{
    for (size_t i = 0; i < study->outcome.rule_count; i++)
        if (strcmp(study->outcome.rules[i].rule, rule) == 0)
            return &study->outcome.rules[i];
    fail_msg("there is no rule %s", rule);
    return NULL;
}
