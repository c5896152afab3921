/* draw/start_chart.h: how does the engine come from rest to idle? */
#ifndef TS_DRAW_START_CHART_H
#define TS_DRAW_START_CHART_H

#include "draw/scene.h"

ts_status ts_draw_start(ts_scene *scene);

#endif
