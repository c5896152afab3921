/* check/rulebook.c: which rules are there?  Those whose files stand in src/check/rule/. */
#include "check/rulebook.h"

#include <stdint.h>
#include <string.h>

/* Made by tools/rules_to_c.py: page_<name>[] of every rule, and RULEBOOK, which applies a macro to
 * every name in the order of the ids. */
#include "rulebook.inc"

#define DECLARE(name) extern const ts_rule ts_rule_##name;
RULEBOOK(DECLARE)

#define RULE_OF(name) &ts_rule_##name,
static const ts_rule *const rules[] = {RULEBOOK(RULE_OF)};

#define PAGE_OF(name) page_##name,
static const char *const pages[] = {RULEBOOK(PAGE_OF)};

#define COUNT (sizeof rules / sizeof rules[0])

size_t ts_rulebook_count(void)
{
    return COUNT;
}

const ts_rule *const *ts_rulebook_rules(void)
{
    return rules;
}

const char *ts_rulebook_page(size_t index)
{
    return pages[index];
}

size_t ts_rulebook_find(ts_text id, const char **nearest)
{
    const char *ids[COUNT];
    for (size_t i = 0; i < COUNT; i++) {
        ids[i] = rules[i]->id;
        if (ts_text_is(id, ids[i]))
            return i;
    }
    if (nearest != NULL)
        *nearest = ts_text_nearest(id, ids, COUNT);
    return SIZE_MAX;
}
