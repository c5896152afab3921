/* check/finding_order.c: which finding does a reader meet first, and how is it known again? */
#include "check/finding_order.h"

#include "base/sha256.h"

#include <stdbool.h>
#include <string.h>

static int rank(const ts_finding *finding)
{
    static const int open[] = {[TS_REFUSE] = 0, [TS_WARN] = 2, [TS_NOTE] = 4};
    if (finding->state == TS_NOT_COMPUTABLE)
        return 1;
    return finding->state == TS_WAIVED ? 3 : open[finding->level];
}

static int order(size_t a, size_t b)
{
    return (a > b) - (a < b);
}

/* Negative when a stands before b.  Rule, object and condition tell any two findings apart. */
static int compare(const ts_finding *a, const ts_finding *b, const ts_source *source)
{
    int first = rank(a) - rank(b);
    if (first == 0)
        first = (int)a->level - (int)b->level;
    if (first == 0)
        first = order(source->nodes[a->node].start, source->nodes[b->node].start);
    if (first == 0)
        first = order(a->node, b->node);
    if (first == 0)
        first = strcmp(a->rule, b->rule);
    if (first == 0)
        first = (a->condition > b->condition) - (a->condition < b->condition);
    return first;
}

/* Lets the item at `at` sink to its place in a heap with the last-in-order on top. */
static void sink(ts_finding *heap, size_t at, size_t count, const ts_source *source)
{
    for (;;) {
        size_t child = 2 * at + 1;
        if (child >= count)
            return;
        if (child + 1 < count && compare(&heap[child], &heap[child + 1], source) < 0)
            child++;
        if (compare(&heap[at], &heap[child], source) >= 0)
            return;
        const ts_finding kept = heap[at];
        heap[at]              = heap[child];
        heap[child]           = kept;
        at                    = child;
    }
}

void ts_findings_sort(ts_finding *findings, size_t count, const ts_source *source)
{
    for (size_t i = count / 2; i > 0; i--)
        sink(findings, i - 1, count, source);
    for (size_t end = count; end > 1; end--) {
        const ts_finding last = findings[0];
        findings[0]           = findings[end - 1];
        findings[end - 1]     = last;
        sink(findings, 0, end - 1, source);
    }
}

bool ts_finding_sign(ts_finding *finding, const ts_source *source, const ts_drive *drive,
                     ts_buffer *scratch)
{
    char digest[65];
    ts_buffer_clear(scratch);
    ts_buffer_add(scratch, finding->rule);
    ts_buffer_add(scratch, "\n");
    ts_source_address(source, finding->node, scratch);
    ts_buffer_add(scratch, "\n");
    if (finding->condition >= 0)
        ts_buffer_add(scratch, drive->conditions[finding->condition].name);
    if (scratch->failed)
        return false;
    ts_sha256((ts_text){scratch->bytes, scratch->length}, digest);
    memcpy(finding->fingerprint, digest, sizeof finding->fingerprint - 1);
    finding->fingerprint[sizeof finding->fingerprint - 1] = '\0';
    return true;
}
