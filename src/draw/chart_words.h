/* draw/chart_words.h: what charts have alike: a sheet, the question above, the ground below. */
#ifndef TS_DRAW_CHART_WORDS_H
#define TS_DRAW_CHART_WORDS_H

#include "draw/scene.h"

/* Divides and opens a sheet whose figure wants `wanted` px of field. */
ts_status ts_chart_begin(ts_scene *scene, double wanted);

/* What stands in the line of the canvas, as the question and its answer. */
void ts_chart_title(ts_scene *scene);

/* `says` in so many lines at most, the first `up` px above the lower edge of the field. */
void ts_chart_foot(ts_scene *scene, double up, int lines, const char *says);

#endif
