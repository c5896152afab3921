/* base/table_line.h: what stands between two entries of a printed table?
 *
 * Shapes    x ascending, strictly; y beside it; count >= 1.
 * Ranges    Below the first and above the last x the end value holds; the caller says so where it
 *           matters.  NaN in, NaN out.
 */
#ifndef TS_BASE_TABLE_LINE_H
#define TS_BASE_TABLE_LINE_H

#include <stddef.h>

/* Straight lines between the entries. */
double ts_table_between(const double *x, const double *y, size_t count, double at);

#endif
