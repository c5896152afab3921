/* study/place_text.h: which place does a question such as "fuel pump on lp rear" mean? */
#ifndef TS_STUDY_PLACE_TEXT_H
#define TS_STUDY_PLACE_TEXT_H

#include "search/drive_place.h"
#include "study/study.h"

/* ACCESSORY on PLACE, ACCESSORY with ACCESSORY, or both; PLACE is a spool or the address of a box
 * or branch, then any of front, rear, clockwise, anticlockwise, input.  False with a message of the
 * study. */
bool ts_place_read(ts_study *study, const ts_drive_problem *made, const char *text,
                   ts_drive_place *out);

#endif
