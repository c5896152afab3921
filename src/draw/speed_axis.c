/* draw/speed_axis.c: where does a spool speed stand, and which conditions lie where? */
#include "draw/lettering.h"
#include "draw/speed_chart.h"
#include "draw/tick.h"

#include <math.h>

static const double rest_width = 46.0;  /* px at the left end for a spool at rest */
static const double name_most  = 260.0; /* px of a condition's name */

double ts_speed_x(const ts_speed_section *section, double spool_speed)
{
    const ts_area chart = section->chart;
    const double  left  = chart.x + (section->rest ? rest_width : 0.0);
    const double  wide  = chart.x + chart.w - left;
    if (!(spool_speed > 0.0))
        return section->rest ? chart.x + 0.4 * rest_width : left;
    const double share = log(spool_speed / section->least) / log(section->most / section->least);
    return left + wide * fmin(1.0, fmax(0.0, share));
}

/* ---- names of conditions ----------------------------------------------------------------- */

typedef struct name_tag {
    uint32_t condition;
    double   x;     /* of the cursor          */
    double   at;    /* where the name stands  */
    double   width; /* px                     */
} name_tag;

static double name_width(const ts_speed_section *section, uint32_t condition)
{
    ts_canvas         *canvas = &section->scene->canvas;
    const ts_lettering how    = {.size = TS_LOOK_TYPE_PX_SMALL, .bold = true};
    const ts_area      area   = ts_text_area(canvas, (ts_point){0, 0},
                                             section->scene->drive->conditions[condition].name, &how);
    return fmin(fmax(area.w, 40.0), name_most) + 10.0;
}

double ts_speed_measure_head(ts_speed_section *section)
{
    double sum = 0.0, longest = 0.0;
    for (uint32_t c = 0; c < section->scene->drive->condition_count; c++) {
        const double width = name_width(section, c);
        sum += width;
        longest = fmax(longest, width);
    }
    section->upright = sum > section->chart.w;
    return (section->upright ? longest : 28.0) + 22.0 + 26.0;
}

/* From left to right by cursor. */
static size_t list_names(const ts_speed_section *section, name_tag *names)
{
    size_t count = 0;
    for (uint32_t c = 0; c < section->scene->drive->condition_count; c++) {
        const double speed = ts_scene_speed_in(section->scene, section->shaft, c);
        if (isnan(speed))
            continue;
        const name_tag one = {c, ts_speed_x(section, speed), 0.0,
                              section->upright ? 13.0 : name_width(section, c)};
        size_t         i   = count++;
        for (; i > 0 && names[i - 1].x > one.x; i--)
            names[i] = names[i - 1];
        names[i] = one;
    }
    return count;
}

/* Each as near over its cursor as its neighbours let it, in the order of the cursors, so that no
 * two leaders cross.  With the widths before each taken off, that is the nearest rising sequence:
 * runs that would fall are pooled at their mean. */
static void spread_names(name_tag *names, size_t count, double left, double right)
{
    double before = 0.0;
    for (size_t i = 0; i < count; i++) {
        double sum = names[i].x - before - 0.5 * names[i].width;
        size_t n   = 1;
        /* Until all are pooled, names[k].at is the mean of its pool. */
        while (n <= i && names[i - n].at > sum / (double)n)
            sum += names[i - n].at, n++;
        for (size_t k = i + 1 - n; k <= i; k++)
            names[k].at = sum / (double)n;
        before += names[i].width;
    }
    double offset = 0.0;
    for (size_t i = 0; i < count; i++) {
        const double most = right - before + offset, least = left + offset;
        const double at = names[i].at + offset;
        offset += names[i].width;
        names[i].at = fmax(least, fmin(most, at)) + 0.5 * names[i].width;
    }
}

static void write_name(const ts_speed_section *section, const name_tag *name, double bottom)
{
    ts_scene          *scene = section->scene;
    const ts_lettering bold  = {.size    = TS_LOOK_TYPE_PX_SMALL,
                                .bold    = true,
                                .upright = section->upright,
                                .anchor  = section->upright ? TS_ANCHOR_LEFT : TS_ANCHOR_MIDDLE,
                                .colour  = TS_COLOUR_INK,
                                .width   = name_most};
    const ts_lettering small = {
        .size = TS_LOOK_TYPE_PX_TICK, .anchor = TS_ANCHOR_MIDDLE, .colour = TS_COLOUR_INK2};
    const char *text = scene->drive->conditions[name->condition].name;
    if (section->upright) {
        ts_write(&scene->canvas, (ts_point){name->at + 4.0, bottom - 4.0}, text, &bold);
        return;
    }
    ts_write(&scene->canvas, (ts_point){name->at, bottom - 18.0}, text, &bold);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_add_value(line, scene, ts_scene_speed_in(scene, section->shaft, name->condition),
                 TS_KIND_ROTATIONAL_SPEED);
    ts_write(&scene->canvas, (ts_point){name->at, bottom - 5.0}, line->bytes ? line->bytes : "",
             &small);
}

static void draw_cursor(const ts_speed_section *section, const name_tag *name, double top)
{
    ts_canvas     *canvas  = &section->scene->canvas;
    const ts_area  chart   = section->chart;
    const ts_point path[4] = {{name->at, top}, {name->x, top + 20.0}, {name->x, chart.y}};
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    for (int i = 0; i < 3; i++)
        ts_line_to(canvas, path[i]);
    ts_stroke(canvas);
    for (int i = 0; i < 2; i++)
        ts_note_line(&canvas->places, TS_PLACE_LEADER, name->condition, path[i], path[i + 1]);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_RULE);
    ts_draw_line(canvas, (ts_point){name->x, chart.y}, (ts_point){name->x, chart.y + chart.h});
}

/* ---- the axis ---------------------------------------------------------------------------- */

static void draw_tick(const ts_speed_section *section, double shown, bool label)
{
    ts_scene    *scene = section->scene;
    const double unit  = ts_scene_in_unit(scene, 1.0, TS_KIND_ROTATIONAL_SPEED);
    const double x = ts_speed_x(section, shown / unit), y = section->chart.y;
    ts_use_pen(&scene->canvas, TS_PEN_1, TS_COLOUR_INK);
    ts_draw_line(&scene->canvas, (ts_point){x, y}, (ts_point){x, y - (label ? 6.0 : 3.0)});
    if (!label)
        return;
    const ts_lettering how  = {.size   = TS_LOOK_TYPE_PX_TICK,
                               .halo   = true,
                               .anchor = TS_ANCHOR_MIDDLE,
                               .colour = TS_COLOUR_INK3};
    ts_buffer         *line = ts_canvas_line(&scene->canvas);
    ts_add_number(line, shown, shown < 10.0 ? 1 : 0);
    ts_write(&scene->canvas, (ts_point){x, y - 10.0}, line->bytes ? line->bytes : "", &how);
}

static void draw_ticks(const ts_speed_section *section)
{
    const double unit  = ts_scene_in_unit(section->scene, 1.0, TS_KIND_ROTATIONAL_SPEED);
    const double least = section->least * unit, most = section->most * unit;
    for (int decade = ts_decade_of(least); decade <= ts_decade_of(most); decade++)
        for (int k = 1; k < 10; k++) {
            const double n = k * pow(10.0, decade);
            if (n >= least && n <= most)
                draw_tick(section, n, k == 1 || k == 2 || k == 5);
        }
}

void ts_speed_draw_axis(const ts_speed_section *section)
{
    ts_scene     *scene = section->scene;
    const ts_area chart = section->chart;
    name_tag     *names = TS_TAKE(scene->arena, name_tag, scene->drive->condition_count);
    if (!names)
        return;
    const size_t count = list_names(section, names);
    const double top   = chart.y - 22.0 - 20.0;
    spread_names(names, count, chart.x - 30.0, chart.x + chart.w + 30.0);
    for (size_t i = 0; i < count; i++)
        draw_cursor(section, &names[i], top);
    draw_ticks(section);
    for (size_t i = 0; i < count; i++)
        write_name(section, &names[i], top);
    ts_use_pen(&scene->canvas, TS_PEN_3, TS_COLOUR_INK);
    ts_draw_line(&scene->canvas, (ts_point){chart.x, chart.y},
                 (ts_point){chart.x + chart.w, chart.y});
    if (!section->rest)
        return;
    const ts_lettering how = {.size   = TS_LOOK_TYPE_PX_TICK,
                              .halo   = true,
                              .anchor = TS_ANCHOR_MIDDLE,
                              .colour = TS_COLOUR_INK3};
    ts_write(&scene->canvas, (ts_point){chart.x + 0.4 * rest_width, chart.y - 10.0}, "0", &how);
    /* The break between rest and the logarithmic part. */
    const double x = chart.x + rest_width - 6.0;
    ts_use_pen(&scene->canvas, TS_PEN_2, TS_COLOUR_INK);
    for (int i = 0; i < 2; i++)
        ts_draw_line(&scene->canvas, (ts_point){x - 6.0 + 5.0 * i, chart.y + 5.0},
                     (ts_point){x - 1.0 + 5.0 * i, chart.y - 5.0});
}
