/* draw/seizure_chart.h: what do parts of a drive bear when an accessory seizes? */
#ifndef TS_DRAW_SEIZURE_CHART_H
#define TS_DRAW_SEIZURE_CHART_H

#include "draw/scene.h"

ts_status ts_draw_seizure(ts_scene *scene);

#endif
