/* What changed between two answers? */
#include "report/comparison.h"

#include "report/comparison_parts.h"

#include <math.h>

static void verdict(ts_changes *list, const ts_answer *before, const ts_answer *after)
{
    static const char *const words[] = {"holds", "does not hold", "not computable"};
    if (before->outcome->verdict == after->outcome->verdict)
        return;
    ts_change_add(list, (ts_change){.kind     = TS_CHANGE_VERDICT,
                                    .subject  = "the drive",
                                    .before   = words[before->outcome->verdict],
                                    .after    = words[after->outcome->verdict],
                                    .relative = NAN});
}

/* Kinds in order of consequence, each in the order in which it was met. */
static bool sort_by_kind(ts_changes *list, ts_comparison *out)
{
    out->changes = TS_TAKE(list->arena, ts_change, list->count);
    out->count   = 0;
    if (out->changes == NULL)
        return false;
    for (int kind = 0; kind < TS_CHANGE_KINDS; kind++)
        for (size_t i = 0; i < list->count; i++)
            if ((int)list->changes[i].kind == kind)
                out->changes[out->count++] = list->changes[i];
    return true;
}

ts_status ts_compare(const ts_answer *before, const ts_answer *after, ts_units units,
                     ts_arena *arena, ts_comparison *out)
{
    ts_changes list = {.arena = arena, .allocator = after->allocator, .units = units};
    verdict(&list, before, after);
    ts_compare_findings(&list, before, after);
    ts_compare_pads(&list, before, after);
    ts_compare_train(&list, before, after);
    ts_compare_mass(&list, before, after);
    ts_compare_inputs(&list, before, after);
    return sort_by_kind(&list, out) && !list.failed ? TS_OK : TS_NO_MEMORY;
}
