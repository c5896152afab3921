/* draw/mass_chart.h: what weighs how much, heaviest first, each with the band of what is assumed.
 */
#ifndef TS_DRAW_MASS_CHART_H
#define TS_DRAW_MASS_CHART_H

#include "draw/scene.h"

ts_status ts_draw_mass(ts_scene *scene);

#endif
