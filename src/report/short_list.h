/* report/short_list.h: the answers of a search of arrangements, a line each. */
#ifndef TS_REPORT_SHORT_LIST_H
#define TS_REPORT_SHORT_LIST_H

#include "report/arrange_report.h"

/* Mass, what it is above the first, wrap, what counts beside mass, idlers, step shafts, clashes and
 * what the rules say of each answer. */
void ts_short_list(const ts_arrange_told *told, ts_page *page);

#endif
