/* draw/mode_chart.h: how do the parts of a drive swing in torsion, mode by mode? */
#ifndef TS_DRAW_MODE_CHART_H
#define TS_DRAW_MODE_CHART_H

#include "draw/scene.h"

ts_status ts_draw_modes(ts_scene *scene);

#endif
