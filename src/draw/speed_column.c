/* draw/speed_column.c: how wide are the names and numbers beside the bars?  As wide as the longest,
 * so that none is cut, as long as the bars keep room of their own. */
#include "draw/lettering.h"
#include "draw/speed_chart.h"

#include <math.h>

static const double chart_least = 200.0, name_least = 160.0, name_most = 340.0,
                    condition_least = 122.0, condition_most = 280.0, band_least = 112.0,
                    band_most = 180.0;

/* What the number columns take besides names of conditions and bands: mark, speed, reserve. */
static const double others = 42.0 + 58.0 + 12.0 + 96.0 + 8.0;

static double width_of(ts_scene *scene, const char *text, double size, bool bold)
{
    const ts_lettering how = {.size = size, .bold = bold};
    return ts_text_area(&scene->canvas, (ts_point){0, 0}, text, &how).w;
}

static double line_width(ts_scene *scene)
{
    const ts_buffer *line = &scene->canvas.line;
    char *text = line->bytes ? ts_arena_copy(scene->arena, line->bytes, line->length) : NULL;
    return text ? ceil(width_of(scene, text, TS_LOOK_TYPE_PX_SMALL, true)) : 0.0;
}

static void measure_row(ts_speed_section *section, const ts_speed_row *row)
{
    ts_scene *scene = section->scene;
    section->name   = fmax(section->name, 58.0 + width_of(scene, scene->train->pads[row->pad].name,
                                                          TS_LOOK_TYPE_PX_BODY, true));
    ts_speed_add_place(section, row, ts_canvas_line(&scene->canvas));
    section->name = fmax(section->name, 58.0 + line_width(scene));
    for (size_t i = 0; i < row->count; i++)
        for (size_t k = 0; k < row->lanes[i].lines; k++) {
            const ts_speed_lane *lane = &row->lanes[i];
            ts_speed_add_condition(section, lane, k, ts_canvas_line(&scene->canvas));
            section->condition = fmax(section->condition, 4.0 + line_width(scene));
            ts_speed_add_band(section, lane, k, ts_canvas_line(&scene->canvas));
            section->band = fmax(section->band, 4.0 + line_width(scene));
        }
}

/* Gives back what is over the sheet. */
static void save(double *width, double least, double *over)
{
    const double give = fmax(0.0, fmin(*over, *width - least));
    *width -= give;
    *over -= give;
}

/* The columns of all sections stand under each other. */
static void share(ts_speed_section *sections, size_t count)
{
    ts_speed_section all = {.name = name_least, .condition = condition_least, .band = band_least};
    for (size_t s = 0; s < count; s++) {
        for (size_t i = 0; i < sections[s].count; i++)
            measure_row(&sections[s], &sections[s].rows[i]);
        all.name      = fmax(all.name, sections[s].name);
        all.condition = fmax(all.condition, sections[s].condition);
        all.band      = fmax(all.band, sections[s].band);
    }
    for (size_t s = 0; s < count; s++) {
        sections[s].name      = fmin(all.name, name_most);
        sections[s].condition = fmin(all.condition, condition_most);
        sections[s].band      = fmin(all.band, band_most);
    }
}

void ts_speed_measure_columns(ts_speed_section *sections, size_t count)
{
    const double edge = TS_LOOK_SHEET_MARGIN + TS_LOOK_SHEET_BORDER;
    share(sections, count);
    for (size_t s = 0; s < count; s++) {
        ts_speed_section *one   = &sections[s];
        const double      sheet = one->scene->canvas.width - 2.0 * edge;
        double over = one->name + one->condition + one->band + others + chart_least - sheet;
        save(&one->condition, condition_least, &over);
        save(&one->name, name_least, &over);
        one->numbers = one->condition + one->band + others;
        one->chart.x = edge + one->name;
        one->chart.w = sheet - one->name - one->numbers;
    }
}
