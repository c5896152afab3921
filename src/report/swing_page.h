/* report/swing_page.h: by how much the torque of a tree swings, for people and as JSON. */
#ifndef TS_REPORT_SWING_PAGE_H
#define TS_REPORT_SWING_PAGE_H

#include "base/json_writer.h"
#include "report/report_chapter.h"
#include "report/twist_report.h"

/* Spring by spring, in the condition in which each swings most. */
void ts_swing_page(const ts_drive_forced *forced, const ts_answer *answer, ts_page *page);
void ts_swing_chapter(ts_chapter *chapter, const ts_drive_forced *forced);
/* "swings" of one spring, in every condition of its state. */
void ts_swing_json(ts_json *json, const ts_answer *answer, const ts_drive_forced *forced,
                   size_t spring);

/* "mesh hp box input > generator", "shaft to generator, rotor", "tube to hp tower shaft, outer end"
 */
void ts_twist_add_joint(ts_buffer *text, const ts_drive_twist *twist, size_t joint);

#endif
