/* draw/stop_view.h: the drive as a tree, greyed to what still turns after a failure. */
#ifndef TS_DRAW_STOP_VIEW_H
#define TS_DRAW_STOP_VIEW_H

#include "draw/scene.h"

/* Lays the whole sheet out and draws it; without failures it says so. */
ts_status ts_draw_stops(ts_scene *scene);

#endif
