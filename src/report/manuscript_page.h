/* report/manuscript_page.h: a manuscript for a terminal. */
#ifndef TS_REPORT_MANUSCRIPT_PAGE_H
#define TS_REPORT_MANUSCRIPT_PAGE_H

#include "base/manuscript.h"
#include "report/page.h"

/* Title, caution, then block by block; tables as wide as their cells, the last column wrapped.  A
 * figure is its caption. */
void ts_manuscript_page(const ts_manuscript *manuscript, ts_page *page);

#endif
