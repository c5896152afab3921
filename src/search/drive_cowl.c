/* search/drive_cowl.c: where could a body stand inside the cowl, and a gear outside the casing? */
#include "search/drive_cowl.h"

#include "check/cowl.h"

#include <math.h>
#include <string.h>

#define STEP 0.002 /* rad */

static bool is_waived(const ts_drive *drive)
{
    for (size_t i = 0; i < drive->waived_count; i++)
        if (drive->waived[i].rule.text != NULL &&
            strcmp(drive->waived[i].rule.text, "D2-cowl-line") == 0)
            return true;
    return false;
}

bool ts_drive_cowl_bars(const ts_drive *drive, size_t tapped, double side, double body)
{
    const ts_box    *box = &drive->drive[tapped].box;
    const ts_measure gap = drive->limits.body_gap;
    const double     R = box->arc.radius.value, phi = box->arc.clock.value;
    const size_t     steps   = (size_t)ceil(2.0 * side / STEP) + 1;
    bool             reached = false;

    if (drive->engine.cowl_count < 2 || !ts_measure_known(gap) ||
        !ts_measure_known(box->arc.radius) || !ts_measure_known(box->arc.clock) || !(body > 0.0) ||
        is_waived(drive))
        return false;
    for (size_t i = 0; i <= steps; i++) {
        const double        at   = phi - side + 2.0 * side * (double)i / (double)steps;
        const ts_cowl_place near = ts_cowl_nearest(&drive->engine, R, at);
        if (!near.reached)
            continue; /* not drawn there: not computable, which is no pass either */
        const double square =
            R * R + near.radius * near.radius - 2.0 * R * near.radius * cos(near.clock - at);
        const double apart = (near.outside ? -1.0 : 1.0) * sqrt(fmax(square, 0.0));
        reached            = true;
        /* Between two angles the distance differs by no more than half of the arc between them. */
        if (apart + R * STEP >= body + gap.value)
            return false;
    }
    return reached;
}

bool ts_drive_gear_meets_casing(const ts_drive *drive, size_t tapped, double m_t, double m_n,
                                uint32_t z)
{
    const ts_box    *box    = &drive->drive[tapped].box;
    const ts_measure casing = drive->engine.casing, gap = drive->limits.body_gap;
    const double     r_a = 0.5 * m_t * (double)z + box->gears.addendum.value * m_n;
    if (!ts_measure_known(casing) || !ts_measure_known(gap))
        return false;
    return box->arc.radius.value - r_a < casing.value + gap.value - 1e-9;
}
