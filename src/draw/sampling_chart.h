/* draw/sampling_chart.h: what samples of a drive tell: chances, distributions, what moves what. */
#ifndef TS_DRAW_SAMPLING_CHART_H
#define TS_DRAW_SAMPLING_CHART_H

#include "draw/scene.h"

ts_status ts_draw_samples(ts_scene *scene);

#endif
