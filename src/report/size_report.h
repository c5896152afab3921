/* report/size_report.h: what sizing did to face widths, bearings or necks, for people and as JSON.
 */
#ifndef TS_REPORT_SIZE_REPORT_H
#define TS_REPORT_SIZE_REPORT_H

#include "base/json_writer.h"
#include "report/answer.h"
#include "report/page.h"
#include "search/bearing_choice.h"
#include "search/neck_diameter.h"
#include "search/tooth_width.h"

/* `answer` is that of the sized drive, whose train is the one that was sized. */
void ts_size_page(const ts_width_plan *plan, double step, const ts_answer *answer, ts_page *page);
void ts_size_json(const ts_width_plan *plan, double step, const ts_answer *answer, ts_buffer *out);

/* Likewise; the lines and necks of the answer are those that were sized. */
typedef struct ts_size_masses {
    double shafts, drive; /* kg, box shafts alone, and all but the accessories; NaN: not known */
} ts_size_masses;
ts_size_masses ts_size_masses_of(const ts_mass *mass);
/* before: what the drive weighed with the bearings that it had. */
void ts_size_bearings_page(const ts_bearing_plan *plan, const ts_size_masses *before,
                           const ts_answer *answer, ts_page *page);
void ts_size_bearings_json(const ts_bearing_plan *plan, const ts_size_masses *before,
                           const ts_answer *answer, ts_buffer *out);
void ts_size_necks_page(const ts_neck_plan *plan, double step, const ts_answer *answer,
                        ts_page *page);
void ts_size_necks_json(const ts_neck_plan *plan, double step, const ts_answer *answer,
                        ts_buffer *out);

/* How each of them begins: program, caution, the sized file with its verdict, and whether all fits.
 * The object stays open. */
void ts_size_json_head(ts_json *json, const ts_answer *answer, bool fits, ts_buffer *out);

#endif
