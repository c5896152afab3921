/* draw/tag.h: marks of findings on the face view, and the list of them beside it. */
#ifndef TS_DRAW_TAG_H
#define TS_DRAW_TAG_H

#include "draw/face.h"
#include "draw/obstacles.h"
#include "draw/target.h"

/* Where the finding's thing stands on the sheet; x NaN when it has no place there. */
ts_point ts_target_point(const ts_face *face, ts_target target);

/* One tag a thing, with the marks of all its findings, near to it and clear of everything else. */
void ts_face_draw_tags(const ts_face *face, ts_obstacles *obstacles);

/* The findings as a column of text, worst first as they come. */
void ts_face_draw_findings(const ts_face *face);

#endif
