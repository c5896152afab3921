/* draw/value_table.c: how does a table of quantities stand on the sheet? */
#include "draw/value_table.h"

#include "draw/lettering.h"

#include <math.h>

static const double head_height = 20.0, row_height = 16.0;

double ts_value_table_height(const ts_value_table *table)
{
    return head_height + row_height * (double)table->count + 4.0;
}

const char *ts_value_ratio(ts_scene *scene, double value, int decimals)
{
    ts_add_number(ts_canvas_line(&scene->canvas), value, decimals);
    return ts_scene_kept(scene);
}

const char *ts_value_length(ts_scene *scene, double si)
{
    return ts_value_ratio(scene, ts_scene_in_unit(scene, si, TS_KIND_LENGTH),
                          scene->units == TS_UNITS_US ? 4 : 3);
}

const char *ts_value_angle(ts_scene *scene, double rad)
{
    return ts_value_ratio(scene, rad * 180.0 / M_PI, 3);
}

const char *ts_value_count(ts_scene *scene, int64_t count)
{
    ts_buffer_integer(ts_canvas_line(&scene->canvas), count);
    return ts_scene_kept(scene);
}

static double right_of(const ts_value_table *table, ts_area area, size_t column)
{
    return area.x + area.w - table->column * (double)(table->columns - 1 - column) - 6.0;
}

static void write_head(ts_scene *scene, const ts_value_table *table, ts_area area)
{
    ts_canvas         *canvas = &scene->canvas;
    const double       y      = area.y + 14.0;
    const ts_lettering bold   = {.size = TS_LOOK_TYPE_PX_SMALL, .bold = true};
    const ts_lettering title  = {.size   = bold.size,
                                 .bold   = true,
                                 .colour = TS_COLOUR_INK,
                                 .width  = area.w - table->column * (double)table->columns - 8.0};
    ts_write(canvas, (ts_point){area.x + 6.0, y}, table->title, &title);
    for (size_t i = 0; i < table->columns; i++) {
        const ts_lettering how = {.size   = bold.size,
                                  .bold   = true,
                                  .anchor = TS_ANCHOR_RIGHT,
                                  .colour = TS_COLOUR_INK,
                                  .width  = table->column - 6.0};
        if (table->heads[i])
            ts_write(canvas, (ts_point){right_of(table, area, i), y}, table->heads[i], &how);
    }
    ts_use_pen(canvas, TS_PEN_2, TS_COLOUR_INK);
    ts_draw_line(canvas, (ts_point){area.x, area.y + head_height},
                 (ts_point){area.x + area.w, area.y + head_height});
}

static void write_row(ts_scene *scene, const ts_value_table *table, const ts_value_row *row,
                      ts_area area)
{
    ts_canvas         *canvas = &scene->canvas;
    const double       y      = area.y + 12.0;
    const ts_lettering words  = {.size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2};
    const ts_lettering number = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .anchor = TS_ANCHOR_RIGHT,
                                 .colour = TS_COLOUR_INK,
                                 .width  = table->column - 6.0};
    const ts_area      set    = ts_write(canvas, (ts_point){area.x + 6.0, y}, row->words, &words);
    double             right  = set.x + set.w;
    if (row->symbol)
        right = ts_write_symbol(canvas, (ts_point){right + 5.0, y}, row->symbol, row->subscript,
                                TS_COLOUR_INK2);
    if (row->unit)
        ts_write(canvas, (ts_point){right + 5.0, y}, row->unit, &words);
    for (size_t i = 0; i < table->columns; i++)
        if (row->value[i])
            ts_write(canvas, (ts_point){right_of(table, area, i), y}, row->value[i], &number);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
    ts_draw_line(canvas, (ts_point){area.x, area.y + area.h},
                 (ts_point){area.x + area.w, area.y + area.h});
}

void ts_value_table_draw(ts_scene *scene, const ts_value_table *table, ts_area area)
{
    write_head(scene, table, area);
    for (size_t i = 0; i < table->count; i++)
        write_row(
            scene, table, &table->rows[i],
            (ts_area){area.x, area.y + head_height + row_height * (double)i, area.w, row_height});
}
