/* draw/interference_chart.h: which excitation meets which natural frequency of torsion, and for how
 * long? */
#ifndef TS_DRAW_INTERFERENCE_CHART_H
#define TS_DRAW_INTERFERENCE_CHART_H

#include "draw/scene.h"

ts_status ts_draw_interference(ts_scene *scene);

#endif
