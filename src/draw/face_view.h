/* draw/face_view.h: the face views: from behind, from the front, and with ribbons of power. */
#ifndef TS_DRAW_FACE_VIEW_H
#define TS_DRAW_FACE_VIEW_H

#include "draw/scene.h"

/* Lays the whole sheet out and draws it. */
ts_status ts_draw_face_view(ts_scene *scene, bool front, bool ribbons);

#endif
