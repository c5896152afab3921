/* response/rigid_sound.c: can what is told of a start be computed with? */
#include "response/rigid_parts.h"

#include <math.h>

static bool is_curve(const ts_torque_curve *curve)
{
    for (size_t i = 0; i < curve->count; i++)
        if (!isfinite(curve->w[i]) || !isfinite(curve->T[i]) ||
            (i > 0 && !(curve->w[i] > curve->w[i - 1])))
            return false;
    return true;
}

static bool is_drag(const ts_shaft_drag *drag)
{
    const double most = drag->seal + drag->wind + drag->thrown + drag->churn + drag->rate;

    return isfinite(most) && drag->seal >= 0.0 && drag->wind >= 0.0 && drag->thrown >= 0.0 &&
           drag->full >= 0.0 && drag->churn >= 0.0 && drag->rate >= 0.0;
}

static bool is_shaft(const ts_rigid_start *start, uint32_t at)
{
    const ts_start_shaft *s = &start->shafts[at];

    return s->spool < start->spool_count && s->ratio > 0.0 && isfinite(s->ratio) && s->J >= 0.0 &&
           isfinite(s->J) && s->loss >= 0.0 && s->loss < 1.0 && s->oil_slow >= 0.0 &&
           isfinite(s->oil_slow) && s->oil_fast >= 0.0 && isfinite(s->oil_fast) &&
           is_drag(&s->drag) &&
           (s->driver == TS_NO_DRIVER
                ? s->J > 0.0
                : s->driver < at && start->shafts[s->driver].spool == s->spool);
}

static bool is_pad(const ts_rigid_start *start, uint32_t at)
{
    const ts_start_pad *pad = &start->pads[at];

    return pad->shaft < start->shaft_count && is_curve(&pad->drive) && is_curve(&pad->load) &&
           isfinite(pad->J) && (ts_start_has_clutch(pad) ? pad->J > 0.0 : pad->J >= 0.0);
}

static bool is_spool(const ts_rigid_start *start, uint32_t at)
{
    const ts_start_spool *one   = &start->spools[at];
    uint32_t              roots = 0;

    for (uint32_t s = 0; s < start->shaft_count; s++)
        roots += start->shafts[s].spool == at && start->shafts[s].driver == TS_NO_DRIVER ? 1 : 0;
    return roots == 1 && one->idle > 0.0 && isfinite(one->idle) && one->air >= 0.0 &&
           isfinite(one->air) && is_curve(&one->unlit) && is_curve(&one->lit) &&
           (!(start->beyond > 0.0 && one->air > 0.0) ||
            (one->beyond > 0.0 && isfinite(one->beyond)));
}

static bool are_limits(const ts_rigid_start *start, uint32_t cranked)
{
    return cranked < start->spool_count && start->theta > 0.0 && isfinite(start->theta) &&
           start->delta > 0.0 && isfinite(start->delta) && start->light_off > 0.0 &&
           start->light_off < start->spools[cranked].idle && start->cut_out > 0.0 &&
           isfinite(start->cut_out) && start->least >= 0.0 && isfinite(start->least) &&
           start->until > 0.0 && isfinite(start->until) && start->tolerance > 0.0 &&
           (start->beyond == 0.0 ||
            (start->beyond > start->spools[cranked].idle && isfinite(start->beyond) &&
             start->rate > 0.0 && isfinite(start->rate)));
}

bool ts_rigid_start_is_sound(const ts_rigid_start *start, uint32_t *cranked, uint32_t *at)
{
    uint32_t many = 0;

    *cranked = start->spool_count;
    for (uint32_t k = 0; k < start->spool_count; k++)
        if (start->spools[k].cranked) {
            *cranked = k;
            many++;
        }
    if (many != 1 || !are_limits(start, *cranked))
        return false;
    for (*at = 0; *at < start->shaft_count; ++*at)
        if (!is_shaft(start, *at))
            return false;
    for (uint32_t p = 0; p < start->pad_count; p++, ++*at)
        if (!is_pad(start, p))
            return false;
    for (uint32_t k = 0; k < start->spool_count; k++, ++*at)
        if (!is_spool(start, k))
            return false;
    return true;
}
