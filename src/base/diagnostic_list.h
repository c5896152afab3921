/* base/diagnostic_list.h: what a list of diagnostics holds, for the two files that work on it. */
#ifndef TS_BASE_DIAGNOSTIC_LIST_H
#define TS_BASE_DIAGNOSTIC_LIST_H

#include "base/diagnostic.h"

struct ts_diagnostics {
    ts_arena     *arena;
    const char   *name;
    ts_text       bytes;
    size_t        count; /* all that were met                          */
    size_t        kept;  /* the first of them, in the order they stand */
    ts_diagnostic items[TS_DIAGNOSTICS_MOST];
};

#endif
