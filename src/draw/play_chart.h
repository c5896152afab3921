/* draw/play_chart.h: how does play between teeth change as a drive grows hot? */
#ifndef TS_DRAW_PLAY_CHART_H
#define TS_DRAW_PLAY_CHART_H

#include "draw/scene.h"

ts_status ts_draw_play(ts_scene *scene);

#endif
