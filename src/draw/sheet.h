/* draw/sheet.h: the frame with its zones, the title block, the cautions. */
#ifndef TS_DRAW_SHEET_H
#define TS_DRAW_SHEET_H

#include "draw/scene.h"

/* Height of a sheet whose figure wants `wanted` px of field; never less than the ratio of the look
 * asks for. */
double ts_sheet_height(ts_scene *scene, double wanted);
/* Sets scene->frame and scene->field for a sheet of this height. */
void ts_sheet_divide(ts_scene *scene, double height);
/* Draws frame, zones and title block.  `view` and `sight` say what is shown and from where. */
void ts_sheet_draw(ts_scene *scene, const char *view, const char *sight);

/* The zone of the sheet in which a point lies: "D4". */
typedef struct ts_zone {
    char name[4];
} ts_zone;
ts_zone ts_sheet_zone(const ts_scene *scene, ts_point at);

#endif
