/* check/rulebook.h: all rules with their pages, in the order of their ids. */
#ifndef TS_CHECK_RULEBOOK_H
#define TS_CHECK_RULEBOOK_H

#include "base/text.h"
#include "check/rule.h"

#include <stddef.h>

size_t                ts_rulebook_count(void);
const ts_rule *const *ts_rulebook_rules(void);
/* docs/check/<name>.md as it stands, Markdown. */
const char *ts_rulebook_page(size_t index);
/* Index of the rule with this id, or SIZE_MAX; then *nearest (unless NULL) is the nearest id. */
size_t ts_rulebook_find(ts_text id, const char **nearest);

#endif
