/* draw/plain_view.h: the face seen from behind with names and without any number, to learn from. */
#ifndef TS_DRAW_PLAIN_VIEW_H
#define TS_DRAW_PLAIN_VIEW_H

#include "draw/scene.h"

ts_status ts_draw_plain(ts_scene *scene);

#endif
