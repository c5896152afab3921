/* check/finding.h: the answer of one rule about one object. */
#ifndef TS_CHECK_FINDING_H
#define TS_CHECK_FINDING_H

#include "model/value.h"

#include <stdint.h>

typedef enum ts_level { TS_REFUSE, TS_WARN, TS_NOTE } ts_level;
typedef enum ts_state { TS_OPEN, TS_WAIVED, TS_NOT_COMPUTABLE } ts_state;

typedef struct ts_finding {
    const char *rule; /* "B2-speed-band"                                                     */
    ts_level    level;
    ts_state    state;
    ts_node     node;      /* the object it is about                                              */
    int32_t     condition; /* index or -1                                                         */
    const char *says;      /* one sentence with numbers in the units of the file's house (metric) */
    const char *remedy;   /* what would close it, with numbers; NULL when nothing can be said     */
    double      value;    /* SI; NaN when the finding has no number                              */
    double      limit;    /* SI; NaN when none                                                   */
    double      margin;   /* capacity / demand - 1, negative when violated; NaN when none         */
    const char *symbol;   /* of the value; NULL when none                                        */
    const char *unit;     /* SI unit of value and limit; NULL when none                          */
    const char *source;   /* of the limit                                                        */
    ts_node     waiver;   /* the waiver that covers it, or 0                                     */
    char fingerprint[17]; /* 16 hex digits of rule + address + condition name: stable       */
} ts_finding;

#endif
