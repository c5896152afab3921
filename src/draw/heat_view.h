/* draw/heat_view.h: where the drive turns power into heat, over the face seen from behind. */
#ifndef TS_DRAW_HEAT_VIEW_H
#define TS_DRAW_HEAT_VIEW_H

#include "draw/scene.h"

/* Lays the whole sheet out and draws it; without losses it says so. */
ts_status ts_draw_heat(ts_scene *scene);

#endif
