/* draw/speed_chart.c: how do the pads of all spools share the sheet? */
#include "draw/speed_chart.h"

#include "draw/chart_key.h"
#include "draw/face.h"
#include "draw/lettering.h"
#include "draw/sheet.h"

#include <math.h>

static const double lane_least = 20.0, lane_most = 40.0, line_height = 14.0, row_gap = 8.0,
                    row_least = 36.0, title = 24.0, foot = 14.0;

static double lane_height(const ts_speed_lane *lane, double one)
{
    return fmax(one, line_height * (double)lane->lines + 4.0);
}

static double row_height(const ts_speed_row *row, double one)
{
    double sum = 0.0;
    for (size_t i = 0; i < row->count; i++)
        sum += lane_height(&row->lanes[i], one);
    return fmax(sum, row_least) + row_gap;
}

/* Rows of all sections with lanes of this height. */
static double set_heights(ts_speed_section *sections, size_t count, double one)
{
    double sum = 0.0;
    for (size_t s = 0; s < count; s++) {
        sections[s].chart.h = 0.0;
        for (size_t i = 0; i < sections[s].count; i++) {
            sections[s].rows[i].height = row_height(&sections[s].rows[i], one);
            sections[s].chart.h += sections[s].rows[i].height;
        }
        sections[s].height = title + sections[s].head + sections[s].chart.h + foot;
        sum += sections[s].height;
    }
    return sum;
}

/* ---- one row ----------------------------------------------------------------------------- */

static void write_name(const ts_speed_section *section, const ts_speed_row *row, double top)
{
    ts_scene          *scene = section->scene;
    const ts_pad      *pad   = &scene->train->pads[row->pad];
    const double       x     = section->chart.x - section->name;
    const ts_lettering bold  = {
         .bold = true, .colour = TS_COLOUR_INK, .width = section->name - 56.0};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK2, .width = section->name - 56.0};
    ts_draw_number_circle(&scene->canvas, (ts_point){x + 20.0, top + 15.0}, 9.0,
                          scene->train->shafts[pad->shaft].number);
    ts_write(&scene->canvas, (ts_point){x + 38.0, top + 15.0}, pad->name, &bold);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_speed_add_place(section, row, line);
    ts_write(&scene->canvas, (ts_point){x + 38.0, top + 29.0}, line->bytes ? line->bytes : "",
             &small);
}

/* No demand: the travel of the pad in words, so that the row is not taken for a pass. */
static void write_travel(const ts_speed_section *section, const ts_speed_row *row, double top)
{
    ts_scene    *scene = section->scene;
    double       least = INFINITY, most = -INFINITY;
    const double left = section->chart.x + section->chart.w + 60.0;
    for (uint32_t c = 0; c < scene->drive->condition_count; c++) {
        const double speed = ts_scene_speed_in(scene, scene->train->pads[row->pad].shaft, c);
        least              = fmin(least, speed);
        most               = fmax(most, speed);
    }
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_buffer_add(line, "no speed is demanded; it runs ");
    ts_add_value(line, scene, least, TS_KIND_ROTATIONAL_SPEED);
    ts_buffer_add(line, " .. ");
    ts_add_value(line, scene, most, TS_KIND_ROTATIONAL_SPEED);
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_SMALL,
                              .colour = TS_COLOUR_INK2,
                              .width  = section->numbers - 68.0,
                              .lines  = 2};
    ts_write(&scene->canvas, (ts_point){left, top + 0.5 * row->height - 2.0},
             line->bytes ? line->bytes : "", &how);
    ts_draw_dot(&scene->canvas,
                (ts_point){section->chart.x + 0.5 * section->chart.w, top + 0.5 * row->height}, 1.3,
                TS_COLOUR_INK3);
}

static void draw_row(const ts_speed_section *section, const ts_speed_row *row, double top)
{
    ts_canvas   *canvas = &section->scene->canvas;
    const double left   = section->chart.x - section->name;
    const double right  = section->chart.x + section->chart.w + section->numbers;
    double       sum    = 0.0;
    for (size_t i = 0; i < row->count; i++)
        sum += fmax(1.0, (double)row->lanes[i].lines);
    double y = top + 0.5 * row_gap;
    for (size_t i = 0; i < row->count; i++) {
        /* Lanes share the row by their lines of numbers. */
        const double high = (row->height - row_gap) * (double)row->lanes[i].lines / sum;
        ts_speed_draw_lane(section, row, &row->lanes[i],
                           (ts_area){section->chart.x, y, section->chart.w, high});
        y += high;
    }
    write_name(section, row, top + 0.5 * (row->height - row_least));
    if (row->count == 0)
        write_travel(section, row, top);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_HAIR);
    ts_draw_line(canvas, (ts_point){left, top + row->height}, (ts_point){right, top + row->height});
    ts_note_area(&canvas->places, TS_PLACE_ROW, row->pad,
                 (ts_area){left, top, right - left, row->height});
}

/* ---- a section --------------------------------------------------------------------------- */

static void write_captions(const ts_speed_section *section)
{
    const double speed = 60.0 + section->condition + 58.0;
    const struct {
        double      x;
        ts_anchor   anchor;
        const char *text;
    } captions[]        = {{60.0, TS_ANCHOR_LEFT, "nearest condition"},
                           {speed, TS_ANCHOR_RIGHT, "pad, rpm"},
                           {speed + 12.0, TS_ANCHOR_LEFT, "band, rpm"}};
    ts_canvas   *canvas = &section->scene->canvas;
    const double left = section->chart.x + section->chart.w, y = section->chart.y - 10.0;
    for (size_t i = 0; i < sizeof captions / sizeof *captions; i++) {
        const ts_lettering how = {
            .size = TS_LOOK_TYPE_PX_TICK, .anchor = captions[i].anchor, .colour = TS_COLOUR_INK3};
        ts_write(canvas, (ts_point){left + captions[i].x, y}, captions[i].text, &how);
    }
    const ts_lettering last = {
        .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_RIGHT, .colour = TS_COLOUR_INK3};
    ts_write(canvas, (ts_point){left + section->numbers - 8.0, y}, "reserve", &last);
}

static void draw_section(const ts_speed_section *section)
{
    ts_scene          *scene = section->scene;
    const ts_area      chart = section->chart;
    const ts_lettering lead  = {.size   = TS_LOOK_TYPE_PX_LEAD,
                                .bold   = true,
                                .colour = TS_COLOUR_INK,
                                .width  = section->name - 20.0};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_TICK, .colour = TS_COLOUR_INK3, .width = section->name - 20.0};
    const double x = chart.x - section->name + 11.0;
    ts_write(&scene->canvas, (ts_point){x, chart.y - 26.0},
             scene->train->shafts[section->shaft].name, &lead);
    ts_write(&scene->canvas, (ts_point){x, chart.y - 10.0}, "its speed, rpm, logarithmic", &small);
    ts_speed_draw_axis(section);
    write_captions(section);
    double y = chart.y;
    for (size_t i = 0; i < section->count; i++) {
        draw_row(section, &section->rows[i], y);
        y += section->rows[i].height;
    }
}

static void place_sections(ts_speed_section *sections, size_t count, ts_area room)
{
    double y = room.y;
    for (size_t s = 0; s < count; s++) {
        sections[s].chart.y = y + title + sections[s].head;
        y += sections[s].height;
    }
}

static size_t gather_sections(ts_scene *scene, ts_speed_section *sections, bool *memory)
{
    size_t count = 0;
    for (uint32_t s = 0; s < scene->train->shaft_count; s++) {
        if (scene->train->shafts[s].kind != TS_SHAFT_SPOOL)
            continue;
        ts_speed_section *one = &sections[count];
        *memory               = *memory && ts_speed_gather(scene, s, one) == TS_OK;
        if (!*memory || one->count == 0)
            continue;
        count++;
    }
    ts_speed_measure_columns(sections, count);
    for (size_t s = 0; s < count; s++)
        sections[s].head = ts_speed_measure_head(&sections[s]);
    return count;
}

static const char key_words[] =
    "Bar: band that the pad demands, as speeds of its spool; wall: its end, ticks on the forbidden "
    "side; dot: where the spool runs in a condition that demands the band; open dot and hatching: "
    "missed. Reserve: capacity / demand \xE2\x88\x92 1.";

ts_status ts_draw_speed_chart(ts_scene *scene)
{
    ts_speed_section *sections =
        TS_TAKE(scene->arena, ts_speed_section, scene->drive->spool_count + 1);
    bool memory = sections != NULL;
    if (!memory)
        return TS_NO_MEMORY;
    const size_t count = gather_sections(scene, sections, &memory);
    if (!memory)
        return TS_NO_MEMORY;
    const double key    = ts_chart_key_height(scene, key_words);
    const double height = ts_sheet_height(scene, set_heights(sections, count, lane_least) + key);
    ts_sheet_divide(scene, height);
    double lane = lane_most;
    while (lane > lane_least && set_heights(sections, count, lane) + key > scene->field.h)
        lane = fmax(lane - 1.0, lane_least);
    set_heights(sections, count, lane);
    place_sections(sections, count, scene->field);
    const ts_status status =
        ts_canvas_sheet(&scene->canvas, height,
                        scene->subject->title ? scene->subject->title : scene->drive->title.text);
    if (status != TS_OK)
        return status;
    for (size_t s = 0; s < count; s++)
        draw_section(&sections[s]);
    ts_chart_key_write(scene, key_words, key);
    ts_sheet_draw(scene, "Speeds", "pad bands against spool travel");
    return TS_OK;
}
