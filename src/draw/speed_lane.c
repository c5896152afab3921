/* draw/speed_lane.c: is the speed inside its band?  A band as a bar between walls, the speed as a
 * dot on it; what is missed is hatched. */
#include "draw/lettering.h"
#include "draw/speed_chart.h"
#include "draw/symbol.h"
#include "draw/target.h"

#include <math.h>
#include <string.h>

/* ---- the bar ----------------------------------------------------------------------------- */

/* The spool speed of an end of the band, or of the end of the axis that it lies beyond. */
static double end_x(const ts_speed_section *section, const ts_speed_row *row, double end, bool high)
{
    if (!isfinite(end) || !(row->ratio > 0.0))
        return high ? section->chart.x + section->chart.w
                    : ts_speed_x(section, section->rest ? 0.0 : section->least);
    return ts_speed_x(section, end / row->ratio);
}

static bool on_axis(const ts_speed_section *section, const ts_speed_row *row, double end)
{
    const double speed = end / row->ratio;
    return isfinite(speed) && speed > section->least && speed < section->most;
}

static void draw_bar(const ts_speed_section *section, const ts_speed_row *row,
                     const ts_speed_lane *lane, ts_area bar)
{
    ts_canvas   *canvas = &section->scene->canvas;
    const double low    = end_x(section, row, lane->low, false);
    const double high   = end_x(section, row, lane->high, true);
    if (!(high >= low))
        return;
    ts_path_area(canvas, (ts_area){low, bar.y, high - low, bar.h});
    ts_fill(canvas, TS_COLOUR_SELECT_BG);
    ts_use_pen(canvas, TS_PEN_1, TS_COLOUR_INK2);
    ts_draw_line(canvas, (ts_point){low, bar.y}, (ts_point){high, bar.y});
    ts_draw_line(canvas, (ts_point){low, bar.y + bar.h}, (ts_point){high, bar.y + bar.h});
    /* Walked downwards, the forbidden side of the lower wall is on the right hand. */
    const double   top = bar.y - 3.0, foot = bar.y + bar.h + 3.0;
    const ts_point left[2] = {{low, top}, {low, foot}}, right[2] = {{high, top}, {high, foot}};
    if (on_axis(section, row, lane->low))
        ts_draw_wall(canvas, left, 2, true);
    if (on_axis(section, row, lane->high))
        ts_draw_wall(canvas, right, 2, false);
}

/* The open finding about this pad's band in this condition, or NULL. */
static const ts_finding *finding_of(const ts_scene *scene, uint32_t pad, uint32_t condition,
                                    size_t *number)
{
    const ts_drawing_subject *subject = scene->subject;
    for (size_t i = 0; subject->findings && i < subject->finding_count; i++) {
        const ts_finding *one    = &subject->findings[i];
        const ts_target   target = ts_finding_target(scene, one);
        if (!one->rule || !strstr(one->rule, "speed-band") ||
            one->condition != (int32_t)condition || target.kind != TS_TARGET_PAD)
            continue;
        if (scene->train->pads[target.index].accessory == scene->train->pads[pad].accessory) {
            *number = i + 1;
            return one;
        }
    }
    return NULL;
}

static void draw_mark(const ts_speed_section *section, const ts_speed_row *row,
                      const ts_speed_lane *lane, const ts_speed_mark *mark, ts_area bar)
{
    ts_canvas   *canvas = &section->scene->canvas;
    const double x =
        ts_speed_x(section, ts_scene_speed_in(section->scene, section->shaft, mark->condition));
    const double y = bar.y + 0.5 * bar.h;
    if (isnan(mark->speed) || isnan(mark->reserve))
        return;
    if (mark->missed) {
        const bool   below = mark->speed < lane->low;
        const double wall  = end_x(section, row, below ? lane->low : lane->high, !below);
        ts_path_area(canvas, (ts_area){fmin(x, wall), bar.y, fabs(wall - x), bar.h});
        ts_hatch(canvas, TS_COLOUR_INK);
    }
    ts_path_circle(canvas, (ts_point){x, y}, 4.2);
    ts_fill_and_stroke(canvas, mark->missed ? TS_COLOUR_PAPER : TS_COLOUR_INK, TS_PEN_3,
                       mark->missed ? TS_COLOUR_INK : TS_COLOUR_PAPER);
}

/* ---- the numbers ------------------------------------------------------------------------- */

static double rpm_of(const ts_scene *scene, double si)
{
    return ts_scene_in_unit(scene, si, TS_KIND_ROTATIONAL_SPEED);
}

/* Enough decimals that a speed and an end of the band that differ do not look the same. */
static int decimals_of(const ts_scene *scene, const ts_speed_lane *lane, const ts_speed_mark *mark)
{
    const double ends[2] = {lane->low, lane->high};
    for (int decimals = 0; decimals < 4; decimals++) {
        bool apart = true;
        for (int i = 0; i < 2; i++) {
            const double gap = fabs(rpm_of(scene, mark->speed) - rpm_of(scene, ends[i]));
            if (isfinite(gap) && gap > 0.0 && gap < 0.6 * pow(10.0, -decimals))
                apart = false;
        }
        if (apart)
            return decimals;
    }
    return 4;
}

void ts_speed_add_condition(const ts_speed_section *section, const ts_speed_lane *lane,
                            size_t index, ts_buffer *line)
{
    ts_buffer_add(line, section->scene->drive->conditions[lane->marks[index].condition].name);
    if (index + 1 == lane->lines && lane->count > lane->lines)
        ts_buffer_print(line, " (and %zu)", lane->count - lane->lines);
}

void ts_speed_add_band(const ts_speed_section *section, const ts_speed_lane *lane, size_t index,
                       ts_buffer *line)
{
    const ts_scene *scene    = section->scene;
    const int       decimals = decimals_of(scene, lane, &lane->marks[index]);
    if (isnan(lane->low) || isnan(lane->high)) {
        ts_buffer_add(line, "unknown");
        return;
    }
    if (isfinite(lane->low) && lane->low > 0.0)
        ts_add_number(line, rpm_of(scene, lane->low), decimals);
    ts_buffer_add(line, " .. ");
    if (isfinite(lane->high))
        ts_add_number(line, rpm_of(scene, lane->high), decimals);
}

static void write_at(const ts_speed_section *section, double x, double y, double width,
                     ts_anchor anchor, bool bold)
{
    ts_canvas         *canvas = &section->scene->canvas;
    const ts_lettering how    = {.size   = TS_LOOK_TYPE_PX_SMALL,
                                 .bold   = bold,
                                 .anchor = anchor,
                                 .colour = bold ? TS_COLOUR_INK : TS_COLOUR_INK2,
                                 .width  = width};
    char              *text   = canvas->line.bytes
                                    ? ts_arena_copy(section->scene->arena, canvas->line.bytes, canvas->line.length)
                                    : NULL;
    if (text)
        ts_write(canvas, (ts_point){x, y}, text, &how);
}

static void write_reserve(const ts_speed_section *section, const ts_speed_mark *mark, double right,
                          double y)
{
    ts_buffer *line = ts_canvas_line(&section->scene->canvas);
    if (isnan(mark->reserve)) {
        ts_buffer_add(line, "not computable");
    } else if (isinf(mark->reserve)) {
        ts_buffer_add(line, "open");
    } else if (mark->reserve > 2.0) {
        ts_buffer_add(line, "over 200 %");
    } else {
        if (mark->reserve >= 0.0)
            ts_buffer_add(line, "+");
        ts_add_number(line, 100.0 * mark->reserve, fabs(mark->reserve) < 0.0995 ? 1 : 0);
        ts_buffer_add(line, " %");
    }
    write_at(section, right, y, 0.0, TS_ANCHOR_RIGHT, mark->missed);
}

static void draw_state(const ts_speed_section *section, const ts_speed_row *row,
                       const ts_speed_mark *mark, double x, double y)
{
    ts_canvas        *canvas = &section->scene->canvas;
    size_t            number = 0;
    const ts_finding *found  = finding_of(section->scene, row->pad, mark->condition, &number);
    if (!found)
        return;
    ts_draw_symbol(canvas, ts_symbol_of(found), (ts_point){x, y - 10.5}, 12.0);
    ts_buffer *line = ts_canvas_line(canvas);
    ts_buffer_print(line, "#%zu", number);
    write_at(section, x + 15.0, y, 0.0, TS_ANCHOR_LEFT, true);
}

/* condition, speed, band, reserve; and how many more conditions the band holds for. */
static void write_line(const ts_speed_section *section, const ts_speed_row *row,
                       const ts_speed_lane *lane, size_t index, double y)
{
    ts_scene            *scene    = section->scene;
    const ts_speed_mark *mark     = &lane->marks[index];
    const int            decimals = decimals_of(scene, lane, mark);
    const double         left     = section->chart.x + section->chart.w + 18.0;
    const double         speed    = left + 42.0 + section->condition + 58.0; /* its right end */
    draw_state(section, row, mark, left, y);
    ts_buffer *line = ts_canvas_line(&scene->canvas);
    ts_speed_add_condition(section, lane, index, line);
    write_at(section, left + 42.0, y, section->condition, TS_ANCHOR_LEFT, mark->missed);
    line = ts_canvas_line(&scene->canvas);
    ts_add_number(line, rpm_of(scene, mark->speed), decimals);
    write_at(section, speed, y, 0.0, TS_ANCHOR_RIGHT, true);
    line = ts_canvas_line(&scene->canvas);
    ts_speed_add_band(section, lane, index, line);
    write_at(section, speed + 12.0, y, section->band, TS_ANCHOR_LEFT, false);
    write_reserve(section, mark, section->chart.x + section->chart.w + section->numbers - 8.0, y);
}

void ts_speed_draw_lane(const ts_speed_section *section, const ts_speed_row *row,
                        const ts_speed_lane *lane, ts_area area)
{
    const ts_area bar = {area.x, area.y + 0.5 * area.h - 5.0, area.w, 10.0};
    if (!isnan(lane->low) && !isnan(lane->high))
        draw_bar(section, row, lane, bar);
    for (size_t i = lane->count; i-- > 0;)
        draw_mark(section, row, lane, &lane->marks[i], bar);
    const double first = area.y + 0.5 * area.h + 4.0 - 7.0 * (double)(lane->lines - 1);
    for (size_t i = 0; i < lane->lines; i++)
        write_line(section, row, lane, i, first + 14.0 * (double)i);
}
