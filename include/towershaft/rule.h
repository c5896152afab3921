/* towershaft/rule.h: what the checks ask, why, and by which source. */
#ifndef TOWERSHAFT_RULE_H
#define TOWERSHAFT_RULE_H

#include "towershaft/status.h"

typedef struct ts_rule_view {
    const char *id;       /* "C2-hunting-tooth"                     */
    const char *title;    /* "Hunting tooth"                        */
    const char *question; /* one sentence                           */
    const char *why;      /* why it matters                         */
    const char *level;    /* "refuse", "warn", "note"               */
    const char *source;   /* standard and clause, or what stands in for one */
    const char *page;     /* the whole page of the manual, Markdown */
} ts_rule_view;

TS_API size_t       ts_rule_count(void);
TS_API ts_rule_view ts_rule_at(size_t index);
/* Index of the rule with this id, or SIZE_MAX; then *nearest (may be NULL) is the nearest id. */
TS_API size_t ts_rule_find(const char *id, const char **nearest);
/* Is it the capability of some rule, as "B2" is of "B2-speed-band"? */
TS_API bool ts_rule_topic(const char *topic);

#endif
