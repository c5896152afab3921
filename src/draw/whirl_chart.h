/* draw/whirl_chart.h: how do the whirl speeds of the radial shafts go with their speed, and which
 * radial shafts would be allowed? */
#ifndef TS_DRAW_WHIRL_CHART_H
#define TS_DRAW_WHIRL_CHART_H

#include "draw/scene.h"

ts_status ts_draw_campbell(ts_scene *scene);
ts_status ts_draw_reach(ts_scene *scene);

#endif
