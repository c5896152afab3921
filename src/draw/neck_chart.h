/* draw/neck_chart.h: both chances of every designed neck over its diameter, and where they cross.
 */
#ifndef TS_DRAW_NECK_CHART_H
#define TS_DRAW_NECK_CHART_H

#include "draw/scene.h"

ts_status ts_draw_necks(ts_scene *scene);

#endif
