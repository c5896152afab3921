/* report/comparison.h: what changed between two answers, in the order of consequence. */
#ifndef TS_REPORT_COMPARISON_H
#define TS_REPORT_COMPARISON_H

#include "base/arena.h"
#include "report/answer.h"
#include "report/page.h"

typedef enum ts_change_kind {
    TS_CHANGE_VERDICT,
    TS_CHANGE_FINDING_APPEARED,
    TS_CHANGE_FINDING_CHANGED, /* same fingerprint, another level, state or value */
    TS_CHANGE_FINDING_WENT,
    TS_CHANGE_PAD_APPEARED,
    TS_CHANGE_PAD_WENT,
    TS_CHANGE_PAD_MOVED, /* another shaft or face */
    TS_CHANGE_PAD_SENSE,
    TS_CHANGE_PAD_SPEED, /* where a finding on the pad appeared, else the largest change */
    TS_CHANGE_RATIO,
    TS_CHANGE_POWER,  /* of a spool, the largest over the conditions */
    TS_CHANGE_MASS,   /* of all, with the parts that made it */
    TS_CHANGE_CENTRE, /* centre distance of a mesh */
    TS_CHANGE_INPUT,  /* a scalar of the file */
    TS_CHANGE_KINDS
} ts_change_kind;

typedef struct ts_change {
    ts_change_kind kind;
    const char    *subject;   /* accessory, shaft, spool or address        */
    const char    *condition; /* NULL when it does not vary                */
    const char    *before;    /* as shown; NULL when there was none        */
    const char    *after;
    double         relative; /* after / before - 1; NaN when meaningless  */
} ts_change;

typedef struct ts_comparison {
    ts_change *changes; /* by kind, then in the order of the file */
    size_t     count;
} ts_comparison;

/* Everything it keeps is in `arena`.  Condition, spool and pad are matched by name, shafts by
 * address, findings by fingerprint. */
ts_status ts_compare(const ts_answer *before, const ts_answer *after, ts_units units,
                     ts_arena *arena, ts_comparison *out);

void ts_comparison_page(const ts_comparison *comparison, const ts_answer *before,
                        const ts_answer *after, ts_page *page);
void ts_comparison_json(const ts_comparison *comparison, const ts_answer *before,
                        const ts_answer *after, ts_buffer *out);

/* "pad speed", "finding appeared", ... */
const char *ts_change_name(ts_change_kind kind);

#endif
