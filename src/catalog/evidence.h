/* catalog/evidence.h: which paragraphs of certification rules does an accessory drive meet, and
 * which rules of this program bear on them?  data/evidence.tsv
 *
 * Caution   Pointers in words of this project: the wording of the authority counts.
 */
#ifndef TS_CATALOG_EVIDENCE_H
#define TS_CATALOG_EVIDENCE_H

#include "base/text.h"

#include <stdbool.h>
#include <stddef.h>

typedef struct ts_evidence {
    const char *paragraph;  /* "14 CFR 33.75"                               */
    const char *meaning;    /* one line                                     */
    const char *rules;      /* ids of this program, with blanks between     */
    const char *shown_by;   /* commands, in words                           */
    const char *provenance; /* "read": the paragraph was seen in print; "memory" */
} ts_evidence;

extern const ts_evidence ts_evidences[];
extern const size_t      ts_evidence_count;

/* Takes the next id off a list of ids; false: there is none. */
bool ts_evidence_next(ts_text *rules, ts_text *id);

#endif
