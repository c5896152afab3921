/* report/oil_report.h: losses, heat and oil of a drive for people and as JSON. */
#ifndef TS_REPORT_OIL_REPORT_H
#define TS_REPORT_OIL_REPORT_H

#include "oil/drive_heat.h"
#include "report/answer.h"
#include "report/page.h"

#define TS_OIL_FEEDS 3 /* feeds that are tried: colder, as it is, warmer */
#define TS_OIL_COLDS 6 /* temperatures of oil at which the cranked spool is dragged */

typedef struct ts_oil_answer {
    const ts_heat       *heat;
    uint32_t             condition;          /* whose places are shown */
    double               more[TS_OIL_FEEDS]; /* K, of the feed         */
    const ts_heat_state *feeds;              /* [drive * TS_OIL_FEEDS + which], at `condition` */
    uint32_t             cranked;            /* spool                  */
    int32_t              crank;              /* condition in which the starter turns it, or -1 */
    double               cold[TS_OIL_COLDS]; /* K    */
    double               drag[TS_OIL_COLDS]; /* N.m  */
} ts_oil_answer;

void ts_oil_page(const ts_oil_answer *oil, const ts_answer *answer, ts_page *page);
void ts_oil_json(const ts_oil_answer *oil, const ts_answer *answer, ts_buffer *out);

#endif
