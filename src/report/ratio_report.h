/* report/ratio_report.h: tooth numbers for a ratio, for people and for programs. */
#ifndef TS_REPORT_RATIO_REPORT_H
#define TS_REPORT_RATIO_REPORT_H

#include "report/page.h"
#include "search/ratio_facts.h"

typedef struct ts_ratio_told {
    const ts_ratio_wish  *wish;
    const ts_ratio_facts *facts;
    int                   written[2]; /* teeth of "56/24" when both lie in the range, else 0 */
    double                tolerance;  /* NaN: a span was asked for */
    bool                  teeth_assumed, tolerance_assumed, angle_assumed;
    const char           *caution, *version;
} ts_ratio_told;

void ts_ratio_page(const ts_ratio_told *told, ts_page *page);
void ts_ratio_json(const ts_ratio_told *told, ts_buffer *out);

#endif
