/* draw/chart_key.h: the words under a chart that say how to read it. */
#ifndef TS_DRAW_CHART_KEY_H
#define TS_DRAW_CHART_KEY_H

#include "draw/scene.h"

/* px that the words need at the foot of the field, in up to six lines. */
double ts_chart_key_height(ts_scene *scene, const char *words);
/* Writes them there; `height` is what ts_chart_key_height gave. */
void ts_chart_key_write(ts_scene *scene, const char *words, double height);

#endif
