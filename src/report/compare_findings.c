/* Which findings appeared, changed or went? */
#include "report/comparison_parts.h"

#include <math.h>
#include <string.h>

const ts_finding *ts_finding_same(const ts_check_outcome *outcome, const ts_finding *wanted)
{
    for (size_t i = 0; i < outcome->finding_count; i++)
        if (strcmp(outcome->findings[i].fingerprint, wanted->fingerprint) == 0)
            return &outcome->findings[i];
    return NULL;
}

static const char *sentence(ts_changes *list, const ts_finding *finding)
{
    ts_buffer made;
    ts_buffer_open(&made, list->allocator);
    ts_buffer_print(&made, "%s, %s: %s", ts_level_name(finding->level),
                    ts_state_name(finding->state), finding->says);
    const char *kept = ts_change_keep(list, &made);
    ts_buffer_close(&made);
    return kept;
}

/* `of` is the answer that `shown` stands in. */
static void add(ts_changes *list, ts_change_kind kind, const ts_answer *of, const ts_finding *shown,
                const ts_finding *before, const ts_finding *after)
{
    ts_change_add(list, (ts_change){
                            .kind      = kind,
                            .subject   = shown->rule,
                            .condition = ts_answer_condition(of, shown->condition),
                            .before    = before != NULL ? sentence(list, before) : NULL,
                            .after     = after != NULL ? sentence(list, after) : NULL,
                            .relative  = NAN,
                        });
}

static bool changed(const ts_finding *a, const ts_finding *b)
{
    return a->level != b->level || a->state != b->state || strcmp(a->says, b->says) != 0;
}

void ts_compare_findings(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    for (size_t i = 0; i < after->outcome->finding_count; i++) {
        const ts_finding *now  = &after->outcome->findings[i];
        const ts_finding *then = ts_finding_same(before->outcome, now);
        if (then == NULL)
            add(list, TS_CHANGE_FINDING_APPEARED, after, now, NULL, now);
        else if (changed(then, now))
            add(list, TS_CHANGE_FINDING_CHANGED, after, now, then, now);
    }
    for (size_t i = 0; i < before->outcome->finding_count; i++) {
        const ts_finding *then = &before->outcome->findings[i];
        if (ts_finding_same(after->outcome, then) == NULL)
            add(list, TS_CHANGE_FINDING_WENT, before, then, then, NULL);
    }
}
