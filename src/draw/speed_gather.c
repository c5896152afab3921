/* draw/speed_gather.c: which bands does each pad demand, and how far inside does it run? */
#include "draw/speed_chart.h"

#include <math.h>

static double reserve_of(double speed, double low, double high)
{
    double reserve = INFINITY;
    if (isfinite(low) && low > 0.0)
        reserve = fmin(reserve, speed / low - 1.0);
    if (isfinite(high) && speed > 0.0)
        reserve = fmin(reserve, high / speed - 1.0);
    return reserve;
}

static ts_speed_mark mark_of(const ts_scene *scene, uint32_t shaft, uint32_t condition, double low,
                             double high)
{
    ts_speed_mark mark = {.condition = condition,
                          .speed     = ts_scene_speed_in(scene, shaft, condition)};
    mark.reserve       = reserve_of(mark.speed, low, high);
    mark.missed        = mark.speed < low || mark.speed > high;
    if (!isfinite(mark.speed) || isnan(low) || isnan(high))
        mark.reserve = (double)NAN;
    return mark;
}

/* Not computable first, then by reserve. */
static bool comes_before(const ts_speed_mark *a, const ts_speed_mark *b)
{
    if (isnan(a->reserve) || isnan(b->reserve))
        return isnan(a->reserve) && !isnan(b->reserve);
    return a->reserve < b->reserve;
}

static void insert_mark(ts_speed_lane *lane, ts_speed_mark mark)
{
    size_t i = lane->count++;
    for (; i > 0 && comes_before(&mark, &lane->marks[i - 1]); i--)
        lane->marks[i] = lane->marks[i - 1];
    lane->marks[i] = mark;
}

/* Bands are the same when both ends are bit for bit: they come from one value of the file, or were
 * written alike.  An unknown band is a lane of its own. */
static bool same_band(const ts_speed_lane *lane, double low, double high)
{
    if (isnan(low) || isnan(high))
        return isnan(lane->low) || isnan(lane->high);
    return !(lane->low < low || lane->low > low || lane->high < high || lane->high > high) &&
           !isnan(lane->low) && !isnan(lane->high);
}

static ts_speed_lane *lane_of(ts_scene *scene, ts_speed_row *row, double low, double high)
{
    for (size_t i = 0; i < row->count; i++)
        if (same_band(&row->lanes[i], low, high))
            return &row->lanes[i];
    ts_speed_lane *lane = &row->lanes[row->count++];
    *lane               = (ts_speed_lane){.low = low, .high = high};
    lane->marks         = TS_TAKE(scene->arena, ts_speed_mark, scene->drive->condition_count);
    return lane;
}

static bool gather_row(ts_scene *scene, ts_speed_section *out, uint32_t p)
{
    const ts_pad       *pad  = &scene->train->pads[p];
    const ts_accessory *what = &scene->drive->accessories[pad->accessory];
    ts_speed_row       *row  = &out->rows[out->count++];
    *row                     = (ts_speed_row){.pad   = p,
                                              .ratio = fabs(ts_rational_value(scene->motion->shafts[pad->shaft].ratio)),
                                              .lanes =
                                                  TS_TAKE(scene->arena, ts_speed_lane, scene->drive->condition_count)};
    if (!row->lanes)
        return false;
    for (uint32_t c = 0; what->speed && c < scene->drive->condition_count; c++) {
        const ts_span *band = &what->speed[c];
        if (band->standing == TS_ABSENT)
            continue;
        const bool     known = band->standing != TS_UNKNOWN;
        const double   low   = known ? band->low : (double)NAN;
        const double   high  = known ? band->high : (double)NAN;
        ts_speed_lane *lane  = lane_of(scene, row, low, high);
        if (!lane->marks)
            return false;
        insert_mark(lane, mark_of(scene, pad->shaft, c, low, high));
    }
    for (size_t i = 0; i < row->count; i++) {
        ts_speed_lane *lane = &row->lanes[i];
        for (size_t k = 0; k < lane->count; k++)
            lane->lines += lane->marks[k].missed || isnan(lane->marks[k].reserve);
        if (lane->lines == 0)
            lane->lines = 1;
    }
    return true;
}

static void hold_speed(ts_speed_section *out, double speed)
{
    if (!isfinite(speed) || !(speed > 0.0))
        return;
    out->least = fmin(out->least, speed);
    out->most  = fmax(out->most, speed);
}

/* The axis holds the travel of the spool, and the ends of bands where they are not far out. */
static void find_ends(ts_speed_section *out)
{
    const ts_scene *scene = out->scene;
    out->least            = INFINITY;
    out->most             = 0.0;
    for (uint32_t c = 0; c < scene->drive->condition_count; c++) {
        const double speed = ts_scene_speed_in(scene, out->shaft, c);
        hold_speed(out, speed);
        if (speed <= 0.0)
            out->rest = true;
    }
    if (!(out->most > 0.0)) {
        out->least = 1.0;
        out->most  = 10.0;
    }
    const double low = out->least / 1.6, high = out->most * 1.5;
    for (size_t r = 0; r < out->count; r++)
        for (size_t i = 0; i < out->rows[r].count; i++) {
            const ts_speed_lane *lane = &out->rows[r].lanes[i];
            if (isfinite(lane->low) && lane->low > 0.0)
                hold_speed(out, fmin(high, fmax(low, lane->low / out->rows[r].ratio)));
            if (isfinite(lane->high))
                hold_speed(out, fmin(high, fmax(low, lane->high / out->rows[r].ratio)));
        }
    out->least /= 1.06;
    out->most *= 1.06;
}

ts_status ts_speed_gather(ts_scene *scene, uint32_t spool_shaft, ts_speed_section *out)
{
    const ts_train *train = scene->train;
    *out                  = (ts_speed_section){.scene = scene, .shaft = spool_shaft};
    out->rows             = TS_TAKE(scene->arena, ts_speed_row, train->pad_count);
    if (!out->rows)
        return TS_NO_MEMORY;
    for (uint32_t p = 0; p < train->pad_count; p++)
        if (train->pads[p].use == TS_PAD_ACCESSORY &&
            train->shafts[train->pads[p].shaft].spool == train->shafts[spool_shaft].spool &&
            !gather_row(scene, out, p))
            return TS_NO_MEMORY;
    find_ends(out);
    return TS_OK;
}
