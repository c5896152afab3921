/* draw/swing_view.h: one mode of torsion over the face seen from behind. */
#ifndef TS_DRAW_SWING_VIEW_H
#define TS_DRAW_SWING_VIEW_H

#include "draw/scene.h"

/* Lays the whole sheet out and draws it; without modes it says so. */
ts_status ts_draw_swing(ts_scene *scene);

#endif
