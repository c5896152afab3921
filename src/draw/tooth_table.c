/* draw/tooth_table.c: which teeth does every shaft carry?  The tooth sheet below the strips. */
#include "draw/tooth_table.h"

#include "draw/face.h"
#include "draw/lettering.h"

#include <math.h>

enum { ROW_TEETH, ROW_MODULE, ROW_FACE, ROW_SHIFT, ROW_TIP, ROWS };
static const double row_height = 17.0, label_width = 112.0;

/* Gears of boxes, by the number of their shaft, main gear before steps. */
static size_t list_gears(ts_scene *scene, uint32_t *order)
{
    const ts_train *train = scene->train;
    size_t          count = 0;
    for (uint32_t g = 0; g < train->gear_count; g++) {
        if (train->gears[g].role == TS_GEAR_BEVEL)
            continue;
        const uint32_t number = train->shafts[train->gears[g].shaft].number;
        size_t         i      = count++;
        for (; i > 0 && train->shafts[train->gears[order[i - 1]].shaft].number > number; i--)
            order[i] = order[i - 1];
        order[i] = g;
    }
    return count;
}

static ts_lettering name_letters(const ts_tooth_table *table)
{
    return (ts_lettering){.size   = TS_LOOK_TYPE_PX_TICK,
                          .anchor = TS_ANCHOR_MIDDLE,
                          .colour = TS_COLOUR_INK2,
                          .width  = table->column - 6.0,
                          .lines  = 5};
}

/* Names of shafts take as many lines as the longest one needs. */
static double head_of(ts_scene *scene, const ts_tooth_table *table)
{
    const ts_lettering how  = name_letters(table);
    double             most = 2.0 * TS_LOOK_TYPE_PX_TICK * TS_LOOK_TYPE_LINE_HEIGHT_TIGHT;
    for (size_t i = 0; i < table->count; i++) {
        const ts_gear *gear = &scene->train->gears[table->order[i]];
        most                = fmax(most, ts_text_area(&scene->canvas, (ts_point){0, 0},
                                                      scene->train->shafts[gear->shaft].name, &how)
                                             .h);
    }
    return ceil(29.0 + most);
}

ts_status ts_tooth_table_measure(ts_scene *scene, double width, ts_tooth_table *out)
{
    *out = (ts_tooth_table){.order = TS_TAKE(scene->arena, uint32_t, scene->train->gear_count)};
    if (!out->order)
        return TS_NO_MEMORY;
    out->count   = list_gears(scene, out->order);
    out->columns = (size_t)fmax(1.0, floor((width - label_width) / 56.0));
    if (out->columns > out->count && out->count > 0)
        out->columns = out->count;
    const size_t bands = out->count ? (out->count + out->columns - 1) / out->columns : 0;
    out->column        = (width - label_width) / (double)out->columns;
    out->head          = head_of(scene, out);
    out->height        = (double)bands * (out->head + ROWS * row_height + 6.0);
    return TS_OK;
}

static double tip_diameter(const ts_scene *scene, uint32_t gear)
{
    for (uint32_t m = 0; m < scene->train->mesh_count; m++) {
        const ts_mesh        *mesh   = &scene->train->meshes[m];
        const ts_mesh_motion *motion = &scene->motion->meshes[m];
        if (mesh->kind != TS_MESH_CYLINDRICAL || !motion->solved)
            continue;
        if (mesh->driver == gear)
            return motion->pair.d_a1;
        if (mesh->driven == gear)
            return motion->pair.d_a2;
    }
    return (double)NAN;
}

static void add_cell(ts_buffer *line, const ts_scene *scene, uint32_t g, int row)
{
    const ts_gear *gear = &scene->train->gears[g];
    switch (row) {
    case ROW_TEETH:
        ts_buffer_integer(line, gear->teeth.value);
        return;
    case ROW_MODULE:
        if (ts_measure_known(gear->m_n))
            ts_buffer_significant(line, 1e3 * gear->m_n.value, 3);
        else
            ts_buffer_add(line, "?");
        return;
    case ROW_FACE:
        if (ts_measure_known(gear->face))
            ts_add_value(line, scene, gear->face.value, TS_KIND_LENGTH);
        else
            ts_buffer_add(line, "?");
        return;
    case ROW_SHIFT:
        if (ts_measure_known(gear->x))
            ts_add_number(line, gear->x.value, fabs(gear->x.value) > 0.0 ? 2 : 0);
        else
            ts_buffer_add(line, "?");
        return;
    default: {
        const double tip = tip_diameter(scene, g);
        if (isfinite(tip))
            ts_add_value(line, scene, tip, TS_KIND_LENGTH);
        else
            ts_buffer_add(line, "?");
        return;
    }
    }
}

static void write_captions(ts_scene *scene, const ts_tooth_table *table, ts_point at)
{
    static const struct {
        const char *words, *symbol, *subscript;
        int         unit; /* 0 none, 1 mm whatever is shown, 2 the unit of lengths */
    } captions[ROWS]       = {{"teeth", "z", NULL, 0},
                              {"module", "m", "n", 1},
                              {"face width", "b", NULL, 2},
                              {"profile shift", "x", NULL, 0},
                              {"tip circle", "d", "a", 2}};
    const ts_lettering how = {.size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2};
    for (int row = 0; row < ROWS; row++) {
        const double  y = at.y + table->head + 12.0 + row * row_height;
        const ts_area set =
            ts_write(&scene->canvas, (ts_point){at.x + 8.0, y}, captions[row].words, &how);
        const double right =
            ts_write_symbol(&scene->canvas, (ts_point){set.x + set.w + 5.0, y},
                            captions[row].symbol, captions[row].subscript, TS_COLOUR_INK2);
        const char *unit = captions[row].unit == 1 ? "mm" : ts_scene_unit(scene, TS_KIND_LENGTH);
        if (captions[row].unit)
            ts_write(&scene->canvas, (ts_point){right + 5.0, y}, unit, &how);
    }
}

static void write_column(ts_scene *scene, const ts_tooth_table *table, uint32_t g, ts_point at)
{
    const double   width = table->column;
    const ts_gear *gear  = &scene->train->gears[g];
    ts_draw_number_circle(&scene->canvas, (ts_point){at.x, at.y + 13.0}, 8.0,
                          scene->train->shafts[gear->shaft].number);
    if (gear->step > 0) {
        const ts_lettering how  = {.size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2};
        ts_buffer         *line = ts_canvas_line(&scene->canvas);
        ts_buffer_add(line, width > 84.0 ? "step" : "s");
        if (gear->step > 1 || width <= 84.0)
            ts_buffer_print(line, "%u", gear->step);
        ts_write(&scene->canvas, (ts_point){at.x + 11.0, at.y + 17.0},
                 line->bytes ? line->bytes : "", &how);
    }
    const ts_lettering name = name_letters(table);
    ts_write(&scene->canvas, (ts_point){at.x, at.y + 36.0}, scene->train->shafts[gear->shaft].name,
             &name);
    for (int row = 0; row < ROWS; row++) {
        const ts_lettering how  = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                   .bold   = row == ROW_TEETH,
                                   .anchor = TS_ANCHOR_MIDDLE,
                                   .colour = TS_COLOUR_INK,
                                   .width  = width - 4.0};
        ts_buffer         *line = ts_canvas_line(&scene->canvas);
        add_cell(line, scene, g, row);
        ts_write(&scene->canvas, (ts_point){at.x, at.y + table->head + 12.0 + row * row_height},
                 line->bytes ? line->bytes : "", &how);
    }
}

void ts_tooth_table_draw(ts_scene *scene, const ts_tooth_table *table, ts_area area)
{
    const double column = table->column;
    const double band   = table->head + ROWS * row_height + 6.0;
    for (size_t i = 0; i < table->count; i++) {
        const size_t   row = i / table->columns;
        const ts_point at  = {area.x + label_width + ((double)(i % table->columns) + 0.5) * column,
                              area.y + (double)row * band};
        if (i % table->columns == 0) {
            write_captions(scene, table, (ts_point){area.x, at.y});
            ts_use_pen(&scene->canvas, row ? TS_PEN_1 : TS_PEN_3, TS_COLOUR_INK);
            ts_draw_line(&scene->canvas, (ts_point){area.x, at.y},
                         (ts_point){area.x + area.w, at.y});
        }
        write_column(scene, table, table->order[i], at);
        ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_HAIR);
        ts_draw_line(&scene->canvas, (ts_point){at.x - 0.5 * column, at.y + 1.0},
                     (ts_point){at.x - 0.5 * column, at.y + band});
    }
}
