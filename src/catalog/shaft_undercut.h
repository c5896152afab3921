/* catalog/shaft_undercut.h: how deep, wide and round are the undercuts of DIN 509, forms E and F?
 *
 * Source: data/shaft_undercut.tsv (from memory).
 */
#ifndef TS_CATALOG_SHAFT_UNDERCUT_H
#define TS_CATALOG_SHAFT_UNDERCUT_H

#include <stddef.h>

typedef struct ts_undercut {
    const char *key;          /* "E 0.6x0.3"                                                */
    double      r, t_1, f;    /* m   radius, depth below the journal, width along it         */
    double      t_2;          /* m   depth into the face; NaN: form E, which leaves the face */
    double      d_from, d_to; /* m   journals for which it is recommended; NaN: no end       */
    const char *source;
} ts_undercut;

/* The keys in the order of the rows, NULL at the end. */
extern const char *const ts_undercut_keys[];

size_t      ts_undercut_count(void);
ts_undercut ts_undercut_at(size_t index); /* < ts_undercut_count() */

#endif
