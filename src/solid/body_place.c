/* solid/body_place.c: where does a part stand, and how is its section kept? */
#include "solid/body_parts.h"

#include <math.h>

double ts_scene_station(const ts_scene_job *job, uint32_t drive)
{
    const ts_measure station = job->drive->drive[drive].tower_shaft.station;

    return ts_measure_known(station) ? station.value : (double)NAN;
}

static void set(double *to, double x, double y, double z)
{
    to[0] = x;
    to[1] = y;
    to[2] = z;
}

void ts_place_along(const ts_scene_job *job, ts_part *part, double sign)
{
    const ts_shaft_motion *at = &job->motion->shafts[part->shaft];

    set(part->origin, at->x, at->y, ts_scene_station(job, part->drive));
    set(part->axis, 0.0, 0.0, sign);
    set(part->right, 1.0, 0.0, 0.0);
}

void ts_place_across(const ts_scene_job *job, ts_part *part, double clock, double radius,
                     double sign)
{
    const double s = sin(clock), c = cos(clock);

    set(part->origin, radius * s, radius * c, ts_scene_station(job, part->drive));
    set(part->axis, sign * s, sign * c, 0.0);
    set(part->right, c, -s, 0.0);
}

static bool same_point(ts_section_point a, ts_section_point b)
{
    return fabs(a.z - b.z) < 1e-9 && fabs(a.r - b.r) < 1e-9;
}

void ts_keep_section(const ts_scene_job *job, const ts_section_point *points, size_t count,
                     ts_part *part)
{
    ts_section_point *kept = TS_TAKE(job->arena, ts_section_point, count);
    size_t            used = 0;

    for (size_t i = 0; kept != NULL && i < count; i++)
        if (used == 0 || !same_point(points[i], kept[used - 1]))
            kept[used++] = points[i];
    while (used > 1 && same_point(kept[used - 1], kept[0]))
        used--;
    part->section       = kept;
    part->section_count = used;
    part->V             = ts_revolve(kept, used).V;
}
