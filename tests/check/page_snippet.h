/* page_snippet.h: a page of docs/check as a test: its snippets applied to tests/check/base.yaml.
 *
 * A block `diff fails` or `diff holds` changes the drive: its lines that begin with '-' or ' '
 * stand there, in this order and once; those with '+' or ' ' take their place; "@@" parts two
 * changes.
 *
 * A block `text findings` prints what the page's rule says, "LEVEL STATE RULE ADDRESS: what is
 * wrong; what to do" each; a line that begins with blanks goes on with the one before; "also RULE"
 * names another rule that speaks as well.
 */
#ifndef TS_TEST_PAGE_SNIPPET_H
#define TS_TEST_PAGE_SNIPPET_H

#include "base/buffer.h"
#include "base/text.h"
#include "study/study.h"

#include <stdbool.h>

/* 2026-05-27, on which the pages are true. */
#define PAGE_DAY 20600

/* What stands between "```<info>" and "```"; length 0 and at NULL when the page has no such block.
 */
ts_text page_block(const char *page, const char *info);

/* Appends base.yaml with the changes of a diff block. */
void page_apply(ts_text diff, ts_buffer *drive);

/* Reads and solves; fails the test when the drive cannot be understood. */
ts_study *page_study(const ts_buffer *drive, int32_t today);

/* A drive that the test changes by diff text of its own. */
ts_study *changed_study(const char *diff);

/* "refuse open B2-speed-band drive/...@take-off: says; remedy" */
void finding_line(ts_study *study, size_t index, ts_buffer *out);

/* How many findings of this rule there are, whatever their state. */
size_t                 findings_of(const ts_study *study, const char *rule);
const ts_finding      *first_finding_of(const ts_study *study, const char *rule);
const ts_rule_outcome *outcome_of(const ts_study *study, const char *rule);

#endif
