/* draw/chart_key.c: how is a chart read? */
#include "draw/chart_key.h"

#include "draw/lettering.h"

static ts_lettering letters_of(const ts_scene *scene)
{
    return (ts_lettering){.size   = TS_LOOK_TYPE_PX_SMALL,
                          .colour = TS_COLOUR_INK2,
                          .width  = scene->canvas.width -
                                   2.0 * (TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER) - 24.0,
                          .lines = 6};
}

double ts_chart_key_height(ts_scene *scene, const char *words)
{
    const ts_lettering how = letters_of(scene);
    return ts_text_area(&scene->canvas, (ts_point){0, 0}, words, &how).h + 12.0;
}

void ts_chart_key_write(ts_scene *scene, const char *words, double height)
{
    const ts_lettering how = letters_of(scene);
    ts_write(&scene->canvas,
             (ts_point){scene->field.x + 12.0,
                        scene->field.y + scene->field.h - height + TS_LOOK_TYPE_PX_SMALL + 4.0},
             words, &how);
}
