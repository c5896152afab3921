/* rating/drive_lines.c: in which order are the shafts and bearings of a drive computed, and in what
 * memory? */
#include "rating/drive_lines.h"

#include "rating/bearing/rolling_life.h"
#include "rating/drive_lines_parts.h"
#include "rating/drive_teeth.h"

#include <math.h>

/* ---- memory ---------------------------------------------------------------------------------- */

ts_status ts_lines_prepare(const ts_drive *drive, const ts_power *power, ts_source *source,
                           ts_lines_catalog *catalog, ts_arena *arena, ts_lines *out)
{
    const ts_train *train = power->motion->train;
    const uint32_t  count = ts_lines_count(drive, train);

    *out         = (ts_lines){.motion = power->motion, .power = power};
    out->lines   = TS_TAKE(arena, ts_line, count);
    out->cases   = TS_TAKE(arena, ts_line_case, (size_t)count * drive->condition_count);
    out->of_gear = TS_TAKE(arena, uint32_t, train->gear_count);
    out->seat_of = TS_TAKE(arena, int, train->gear_count);
    out->askew   = TS_TAKE(arena, double, (size_t)train->mesh_count * drive->condition_count);
    out->lives   = TS_TAKE(arena, double, (size_t)count *TS_LINE_BEARINGS_MOST);
    out->nu      = TS_TAKE(arena, double, drive->condition_count);
    out->catalog = catalog != NULL ? catalog : ts_lines_catalog_open(arena);
    if (out->lines == NULL || out->cases == NULL || out->of_gear == NULL || out->seat_of == NULL ||
        out->askew == NULL || out->lives == NULL || out->nu == NULL || out->catalog == NULL)
        return TS_NO_MEMORY;
    if (source != NULL && source->node_count > 0 &&
        ts_source_make_room(source, count * TS_LINE_NODES_MOST + 1, arena) != TS_OK)
        return TS_NO_MEMORY;
    return ts_lines_list(drive, source != NULL && source->node_count > 0 ? source : NULL, arena,
                         out);
}

/* ---- all together ---------------------------------------------------------------------------- */

static double life_of_drive(const ts_drive *drive)
{
    double sum = 0.0;

    for (size_t i = 0; i < drive->condition_count; i++)
        sum += ts_condition_seconds(&drive->conditions[i]);
    return sum;
}

/* The steeper law of rollers for all would be milder; the slope of balls is the lower one. */
static void add_lives(ts_lines *lines)
{
    int count = 0;

    for (uint32_t l = 0; l < lines->count; l++)
        for (int k = 0; k < lines->lines[l].bearing_count; k++) {
            const ts_line_bearing *b = &lines->lines[l].bearings[k];
            if (!b->there || b->fault != NULL || lines->lines[l].missing != NULL)
                continue;
            lines->lives[count++] = b->rating.L_nmh;
        }
    lines->set_life =
        count > 0 ? ts_life_of_set(lines->lives, count, TS_SLOPE_BALL, NULL) : (double)NAN;
}

void ts_lines_solve(const ts_drive *drive, ts_lines *lines, ts_workings *workings)
{
    const ts_lines_case c = {drive, lines->motion->train, lines, workings};

    lines->life = life_of_drive(drive);
    ts_lines_solve_oil(&c);
    ts_lines_load(&c);
    for (uint32_t l = 0; l < lines->count; l++) {
        lines->lines[l].L_stack = lines->lines[l].L_ax = (double)NAN;
        if (!ts_line_settle(&c, l))
            continue;
        ts_line_take_room(&c, l);
        if (lines->lines[l].fault == NULL && lines->lines[l].missing == NULL &&
            ts_line_outline(&c, l))
            ts_line_bend(&c, l);
        if (lines->lines[l].fault == NULL && lines->lines[l].missing == NULL) {
            ts_line_hold(&c, l);
            ts_line_last(&c, l);
        }
        if (workings != NULL && lines->lines[l].fault == NULL && lines->lines[l].missing == NULL)
            ts_line_note(&c, l);
    }
    ts_lines_lay_askew(&c);
    add_lives(lines);
}
