/* model/value.h: a value of the drive file, with its standing and its place.
 *
 * Unknown stays unknown: a measure that is absent or unknown holds NaN, a span NaN at both ends, a
 * tally or pick INT_MIN-like sentinels that no computation accepts.  What the file leaves out and a
 * documented default fills in is TS_ASSUMED and stands in the register of assumptions.
 */
#ifndef TS_MODEL_VALUE_H
#define TS_MODEL_VALUE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* A place in the file: index into the node table of model/source.h.  0: not from the file. */
typedef uint32_t ts_node;

typedef enum ts_standing {
    TS_ABSENT,  /* the file does not say, and nothing is assumed */
    TS_GIVEN,   /* stands in the file */
    TS_ASSUMED, /* a documented default: see the register of assumptions */
    TS_UNKNOWN  /* the file says `unknown` */
} ts_standing;

/* For every type below: `node` is the value's own node when given or unknown, the node of the
 * record that lacks it when assumed or absent. */
typedef struct ts_measure {
    double      value; /* SI */
    ts_node     node;
    ts_standing standing;
} ts_measure;

typedef struct ts_span {
    double      low; /* SI; -INFINITY when open below */
    double      high;
    ts_node     node;
    ts_standing standing;
} ts_span;

typedef struct ts_tally {
    int64_t     value;
    ts_node     node;
    ts_standing standing;
} ts_tally;

typedef struct ts_tally_span { /* 31..47, both ends counted; 43 alone is 43..43 */
    int64_t     low, high;
    ts_node     node;
    ts_standing standing;
} ts_tally_span;

/* Several values that may be chosen from, in the order of the file. */
typedef struct ts_tally_spans {
    const ts_tally_span *items;
    size_t               count;
    ts_node              node;
    ts_standing          standing;
} ts_tally_spans;

typedef struct ts_measures {
    const ts_measure *items;
    size_t            count;
    ts_node           node;
    ts_standing       standing;
} ts_measures;

typedef struct ts_pick { /* one of the choices of its field, by index */
    int         value;
    ts_node     node;
    ts_standing standing;
} ts_pick;

typedef struct ts_word {
    const char *text; /* zero-terminated UTF-8; NULL unless given */
    ts_node     node;
    ts_standing standing;
} ts_word;

typedef struct ts_date {
    int32_t     day; /* days since 1970-01-01 */
    ts_node     node;
    ts_standing standing;
} ts_date;

/* An accessory, condition or spool named elsewhere in the file. */
typedef struct ts_reference {
    const char *text;
    int32_t     index; /* into the list it names; -1 when absent */
    ts_node     node;
    ts_standing standing;
} ts_reference;

static inline bool ts_measure_known(ts_measure m)
{
    return m.standing == TS_GIVEN || m.standing == TS_ASSUMED;
}
static inline bool ts_pick_known(ts_pick pick)
{
    return pick.standing == TS_GIVEN || pick.standing == TS_ASSUMED;
}

#endif
