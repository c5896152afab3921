/* draw/face_note.h: the note of a face view: from where it is seen, and its scales. */
#ifndef TS_DRAW_FACE_NOTE_H
#define TS_DRAW_FACE_NOTE_H

#include "draw/face.h"
#include "draw/obstacles.h"
#include "draw/ribbon.h"

/* "Seen from behind, looking forward" with the bar of scale; that of the ribbons too, if any. */
void ts_face_draw_note(const ts_face *face, ts_obstacles *obstacles, const ts_ribbons *ribbons);

#endif
