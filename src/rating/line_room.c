/* rating/line_room.c: how much room does a shaft of a box take along its axis?
 *
 * Where the program lays the shaft out between its bearings, the least that its parts can be pushed
 * together to: what more the box is deep only parts the bearings.  Where the file tells places or
 * sections, or bearings stand on one side, from the first to the last edge as it lies. */
#include "rating/drive_lines_parts.h"

#include <math.h>

static const ts_formula stack_formula = {
    "L_stack", "gears and bearings of the shaft along its axis, pushed together", "m", "sum(b)",
    "derived: parts and the gaps between them, one behind the other"};
static const ts_formula laid_formula = {
    "L_stack", "from the first to the last edge of gears and bearings", "m", "x_last - x_first",
    "derived: as the shaft is laid out"};
static const ts_formula room_formula = {
    "L_ax", "room that the shaft takes along its axis, with both walls of its box", "m",
    "L_stack + 2*wall", "derived; the wall with its seal: common practice, no source"};

static bool is_as_told(const ts_lines_case *c, const ts_line *line)
{
    const ts_box_shaft *record = c->train->shafts[line->shaft].record;

    if (record->section_count > 0 || record->support.value == TS_OVERHUNG)
        return true;
    for (int k = 0; k < line->bearing_count; k++)
        if (ts_measure_known(line->bearings[k].seat->at))
            return true;
    return false;
}

static double pushed_together(const ts_lines_case *c, const ts_line *line)
{
    ts_input parts[2 * (TS_LINE_GEARS_MOST + TS_LINE_BEARINGS_MOST)];
    size_t   count = 0;
    double   sum   = 0.0;

    for (int g = 0; g < line->gear_count; g++)
        parts[count++] = (ts_input){"b", line->gears[g].width};
    for (int k = 0; k < line->bearing_count; k++)
        if (line->bearings[k].there)
            parts[count++] = (ts_input){"b", line->bearings[k].width};
    const size_t solid = count;
    for (size_t i = 1; i < solid; i++)
        parts[count++] = (ts_input){"b", TS_LINE_GAP};
    for (size_t i = 0; i < count; i++) {
        sum += parts[i].value;
        if (i < solid)
            ts_workings_row(c->workings, "b", parts[i].value, "m",
                            "derived: width of a gear or of a bearing along the shaft");
        else
            ts_workings_assumed(c->workings, "b", parts[i].value, "m",
                                "gap between two of them; common practice, no source");
    }
    return ts_step_list(c->workings, &stack_formula, sum, parts, count);
}

static double as_it_lies(const ts_lines_case *c, const ts_line *line)
{
    double x_first = INFINITY, x_last = -(double)INFINITY;

    for (int g = 0; g < line->gear_count; g++) {
        x_first = fmin(x_first, line->gears[g].x - line->gears[g].width / 2.0);
        x_last  = fmax(x_last, line->gears[g].x + line->gears[g].width / 2.0);
    }
    for (int k = 0; k < line->bearing_count; k++) {
        const ts_line_bearing *b = &line->bearings[k];
        if (!b->there)
            continue;
        x_first = fmin(x_first, b->x - b->width / 2.0);
        x_last  = fmax(x_last, b->x + b->width / 2.0);
    }
    ts_workings_row(c->workings, "x_first", x_first, "m", "derived: by the shape of the shaft");
    ts_workings_row(c->workings, "x_last", x_last, "m", "derived: by the shape of the shaft");
    return TS_STEP(c->workings, laid_formula, x_last - x_first, x_last, x_first);
}

void ts_line_take_room(const ts_lines_case *c, uint32_t number)
{
    ts_line     *line = &c->lines->lines[number];
    const double wall = TS_LINE_WALL;

    if (line->kind != TS_LINE_BOX || line->missing != NULL || line->gear_count == 0)
        return;
    ts_workings_about(c->workings, line->node, TS_EVERY_CONDITION);
    line->lies_as_told   = is_as_told(c, line);
    const double L_stack = line->lies_as_told ? as_it_lies(c, line) : pushed_together(c, line);
    ts_workings_assumed(c->workings, "wall", wall, "m",
                        "wall and seal at either end; common practice, no source");
    line->L_stack = L_stack;
    line->L_ax    = TS_STEP(c->workings, room_formula, L_stack + 2.0 * wall, L_stack, wall);
}
