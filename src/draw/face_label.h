/* draw/face_label.h: words on the face view, each where it covers least. */
#ifndef TS_DRAW_FACE_LABEL_H
#define TS_DRAW_FACE_LABEL_H

#include "draw/face.h"
#include "draw/obstacles.h"

/* What is drawn and must not be covered: axes, gears, bodies, tower shafts, casing. */
void ts_face_collect(const ts_face *face, ts_obstacles *obstacles);
/* Spools and tower shafts, unless ribbons say what they are about; keep-outs, cowl. */
void ts_face_draw_labels(const ts_face *face, ts_obstacles *obstacles);

#endif
