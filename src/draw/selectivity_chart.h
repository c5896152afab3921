/* draw/selectivity_chart.h: does the right neck break first?  Torque against duration, pad by pad.
 */
#ifndef TS_DRAW_SELECTIVITY_CHART_H
#define TS_DRAW_SELECTIVITY_CHART_H

#include "draw/scene.h"

ts_status ts_draw_selectivity(ts_scene *scene);

#endif
