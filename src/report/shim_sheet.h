/* report/shim_sheet.h: mounting distances, shims and backlash of every mesh, for who builds it. */
#ifndef TS_REPORT_SHIM_SHEET_H
#define TS_REPORT_SHIM_SHEET_H

#include "base/json_writer.h"
#include "rating/drive_shims.h"
#include "report/report_chapter.h"

/* A chapter: bevels with their shims, cylindrical meshes, how both are measured, what is assumed. */
void ts_shim_sheet(ts_chapter *chapter, const ts_shim_plan *plan);

/* The same as an object by docs/schema/shims.schema.json; lengths in m. */
void ts_shim_json(const ts_answer *answer, const ts_shim_plan *plan, ts_buffer *out);

#endif
