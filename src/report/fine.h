/* report/fine.h: lengths and unbalances that are small beside the unit in which people see others.
 */
#ifndef TS_REPORT_FINE_H
#define TS_REPORT_FINE_H

#include "quantity/quantity.h"

/* What a length in m is multiplied with, and the name of what it is then: um, or mil (1/1000 in).
 */
double      ts_fine_scale(ts_units units);
const char *ts_fine_unit(ts_units units);
/* The same of an unbalance in kg.m: g.mm, or oz.in (avoirdupois). */
double      ts_unbalance_scale(ts_units units);
const char *ts_unbalance_unit(ts_units units);

#endif
