/* draw/chart_words.c: how do charts open their sheet, and say what they ask and rest on? */
#include "draw/chart_words.h"

#include "draw/lettering.h"
#include "draw/sheet.h"

static const double inset = 12.0, title_down = 24.0; /* px */

ts_status ts_chart_begin(ts_scene *scene, double wanted)
{
    const double height = ts_sheet_height(scene, wanted);

    ts_sheet_divide(scene, height);
    return ts_canvas_sheet(&scene->canvas, height,
                           scene->subject->title ? scene->subject->title
                                                 : scene->drive->title.text);
}

void ts_chart_title(ts_scene *scene)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_LEAD,
                              .bold   = true,
                              .colour = TS_COLOUR_INK,
                              .width  = scene->field.w - 2.0 * inset};

    ts_write(&scene->canvas, (ts_point){scene->field.x + inset, scene->field.y + title_down},
             ts_scene_kept(scene), &how);
}

void ts_chart_foot(ts_scene *scene, double up, int lines, const char *says)
{
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .colour = TS_COLOUR_INK2,
                              .width  = scene->field.w - 2.0 * inset,
                              .lines  = lines};

    ts_write(&scene->canvas,
             (ts_point){scene->field.x + inset, scene->field.y + scene->field.h - up}, says, &how);
}
