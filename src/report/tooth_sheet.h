/* report/tooth_sheet.h: the data sheet of every gear, for its maker and its inspector. */
#ifndef TS_REPORT_TOOTH_SHEET_H
#define TS_REPORT_TOOTH_SHEET_H

#include "rating/tooth_data.h"
#include "report/report_chapter.h"

/* One chapter a gear, each on a page of its own; bevels too. */
void ts_tooth_sheets(ts_chapter *chapter, const ts_tooth_data *data);
/* All cylindrical gears in one table, for the report. */
void ts_tooth_data_cells(ts_chapter *chapter, const ts_tooth_data *data);

#endif
