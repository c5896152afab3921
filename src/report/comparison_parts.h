/* report/comparison_parts.h: the list that the parts of a comparison fill, for its own files. */
#ifndef TS_REPORT_COMPARISON_PARTS_H
#define TS_REPORT_COMPARISON_PARTS_H

#include "report/comparison.h"

typedef struct ts_changes {
    ts_arena           *arena;
    const ts_allocator *allocator;
    ts_units            units;
    ts_change          *changes;
    size_t              count, room;
    bool                failed;
} ts_changes;

void        ts_change_add(ts_changes *list, ts_change change);
const char *ts_change_keep(ts_changes *list, const ts_buffer *made);
const char *ts_change_quantity(ts_changes *list, double si, ts_kind kind);
const char *ts_change_address(ts_changes *list, const ts_answer *answer, ts_node node);
double      ts_change_relative(double before, double after);             /* NaN when before is 0 */
int32_t     ts_condition_match(const ts_drive *drive, const char *name); /* -1: none */

/* The finding with the same fingerprint, or NULL. */
const ts_finding *ts_finding_same(const ts_check_outcome *outcome, const ts_finding *wanted);

void ts_compare_findings(ts_changes *list, const ts_answer *before, const ts_answer *after);
void ts_compare_pads(ts_changes *list, const ts_answer *before, const ts_answer *after);
void ts_compare_train(ts_changes *list, const ts_answer *before, const ts_answer *after);
void ts_compare_mass(ts_changes *list, const ts_answer *before, const ts_answer *after);
void ts_compare_inputs(ts_changes *list, const ts_answer *before, const ts_answer *after);

#endif
